/* SPDX-License-Identifier: MIT
 * Rows of CSV, with the line ends of RFC 4180.
 */
#include "cells.h"

#include <assert.h>
#include <string.h>

static void begin_cell(Cells *row)
{
	if (row->begun)
		SAY(row->out, ",");
	row->begun = true;
}

void cell(Cells *row, const char *text)
{
	begin_cell(row);
	SAY(row->out, "\"");
	put(row->out, text != NULL ? text : "");
	SAY(row->out, "\"");
}

/* A sign in front makes no formula of a number. */
void cell_number(Cells *row, const char *digits)
{
	begin_cell(row);
	if (digits == NULL)
		return;
	assert(strspn(digits, "+-.0123456789e") == strlen(digits));
	out_literal(row->out, digits, strlen(digits));
}

void row_end(Cells *row)
{
	SAY(row->out, "\r\n");
	row->begun = false;
}
