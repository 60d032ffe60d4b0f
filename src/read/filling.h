/* SPDX-License-Identifier: MIT
 * What filling a record shares with reading its values.
 */
#ifndef FILLING_H
#define FILLING_H

#include "fill.h"

enum { MOST_SUGGESTIONS = 50 };

/* The record around a record, for naming it to people and for knowing whether absent keys are assumed. */
struct Standing {
	const struct Standing *up;
	const Node *map;
	const Record *record;
	const char *key; /* under which it stands */
	uint32_t index; /* in a list, from 1; else 0 */
	bool overrides; /* it only says what differs from another record: nothing is assumed in it */
};

/* One text on its way into a field. */
typedef struct {
	const Field *field;
	const char *key; /* as complaints name it: the field's, or a zone's */
	const char *text;
	size_t length;
	Given *given; /* the value begins with it */
	Reading *reading;
} Cell;

/* The example of a field as it may be typed into a file: quoted where YAML needs it, one zone's of a value by zone. */
const char *example_of(const Field *field, Arena *arena);

/* The three ways in which a cell ends. `want` fills {want}; refuse_cell_like takes the field's example. accept_cell is true. */
bool accept_cell(Cell *cell);
void refuse_cell(Cell *cell, MessageId id, const char *want);
void refuse_cell_like(Cell *cell, MessageId id);

/* Takes over what a cell says that is no value; `rest` is the name or reason. */
void take_said(Cell *cell, Said said, const char *rest);

/* Reads the cell as a number of its field's unit and range; `*value` is set, and the cell's given. */
bool read_number(Cell *cell, double *value);

/* Reads the cell as a screw size. */
bool read_size(Cell *cell, Number *number);

#endif
