/* SPDX-License-Identifier: MIT
 * The cells of a CSV file with their places, handed over row by row.
 */
#ifndef CSV_CELLS_H
#define CSV_CELLS_H

#include "complaint.h"

typedef struct {
	const char *text; /* without its quotation marks, NUL-terminated */
	uint32_t length;  /* bytes of text */
	Place place;      /* of the cell as written, from its quotation mark on */
} Cell;

/* Takes one row, the header first; false ends the reading. The cells are gone when it returns, their texts stay. */
typedef bool CsvRow(void *user, const Cell *cell, uint32_t cells);

typedef struct {
	Arena *arena;
	const Source *source;
	Complaints *complaints;
	CsvRow *row;
	void *user;
} CsvFile;

/* Reads the whole file. False if a row was lost on the way; the complaint says which and why. */
bool csv_read(const CsvFile *file);

/* The same for a list kept by hand: with another separator, and blank lines may stand. */
bool csv_read_list(const CsvFile *file, char separator);

/* The place of `length` bytes of a cell's text, blanks around it taken off, that begin at byte `index`: for a caret inside. */
Place csv_place_within(const Source *source, Place cell, size_t index, size_t length);

#endif
