/* SPDX-License-Identifier: MIT
 * The header of a table, bound to fields.
 */
#ifndef HEADER_H
#define HEADER_H

#include "table.h"

typedef struct {
	Column *column; /* one for each header cell; steps 0: not bound, its cells are passed over */
	uint32_t count;
	bool whole; /* every column that is due is there */
} Header;

/* Binds the cells of a header. */
Header header_bind(const Loading *loading, const Rows *rows, const Cell *cell, uint32_t cells);

/* A field as a header cell would write it: blanks for underscores, its unit in brackets. */
const char *header_name(Arena *arena, const Field *field);

/* Whether a field of a row must be filled: in a catalogue the item, else what the form requires. */
bool is_due_in_table(const Record *record, const Field *field);

#endif
