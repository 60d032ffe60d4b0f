/* SPDX-License-Identifier: MIT
 * Cells: the rows of a CSV table for spreadsheets. Texts stand in quotation marks and are escaped by the Out they go to; numbers
 * of the program's own stand plain, so that a spreadsheet can add them up.
 */
#ifndef REPORT_CELLS_H
#define REPORT_CELLS_H

#include "out.h"

typedef struct {
	Out *out; /* made with OUT_CSV */
	bool begun;
} Cells;

/* NULL: an empty cell. */
void cell(Cells *row, const char *text);

/* A number as printed: digits, sign, point, exponent; NULL: none. */
void cell_number(Cells *row, const char *digits);

void row_end(Cells *row);

#endif
