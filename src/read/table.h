/* SPDX-License-Identifier: MIT
 * One CSV file to rows of one Record, by the Field tables: the loader of every table of editions, registers and reference.
 */
#ifndef TABLE_H
#define TABLE_H

#include "csv.h"
#include "fill.h"

enum { COLUMN_STEPS = 4 };

typedef enum { COLUMN_VALUE, COLUMN_LEAST, COLUMN_MOST } ColumnSort;

/* A header cell, bound: the fields to go through, the last one holds the value. */
typedef struct {
	const Field *step[COLUMN_STEPS];
	uint32_t steps;
	ColumnSort sort;
	const char *key; /* the path as a rule would write it: "panel.thickness" */
	Unit unit;       /* of cells that have none; UNIT_one: none */
	Place place;
} Column;

/* A cell of a column that ends in `.least` or `.most`: what a listing itself allows. */
typedef struct {
	uint32_t row;
	const Column *column;
	const char *value;
	Place place;
} TermCell;

/* What every reader of tables has at hand. */
typedef struct {
	Arena *arena;
	const Reference *reference; /* NULL while the reference itself is read */
	Complaints *complaints;
} Loading;

typedef struct {
	const Record *record;
	const Source *source;
	uint32_t count, room;
	void *row;
	bool whole; /* no row and no column that is due was lost: what is not here is nowhere */
	TermCell *term;
	uint32_t terms, term_room;
} Rows;

/* Reads `source` to rows of `rows->record`; what is wrong is in the complaints. */
void read_table(const Loading *loading, Rows *rows);

/* Row number `i`. */
static inline void *row_at(const Rows *rows, uint32_t i)
{
	return (char *)rows->row + (size_t)i * rows->record->size;
}

#endif
