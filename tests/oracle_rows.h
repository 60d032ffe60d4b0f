/* SPDX-License-Identifier: MIT
 * Rows of questions with answers that the scripts of tests/oracle write: the Makefile has them written to $(BUILD)/oracle before
 * the programs that read them are built. Cells hold no quotes and no commas.
 */
#ifndef ORACLE_ROWS_H
#define ORACLE_ROWS_H

#include "check.h"

#include <errno.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>

enum { ORACLE_CELLS = 40, ORACLE_LINE = 2048 };

typedef struct {
	FILE *file;
	char name[256], header[ORACLE_LINE], line[ORACLE_LINE];
	const char *column[ORACLE_CELLS], *cell[ORACLE_CELLS];
	size_t columns;
	unsigned row, step;
} OracleRows;

static inline size_t oracle_split(char *line, const char **cell)
{
	size_t count = 0;
	line[strcspn(line, "\r\n")] = '\0';
	for (char *rest = line; rest != NULL && count < ORACLE_CELLS;)
		cell[count++] = strsep(&rest, ",");
	return count;
}

/* ORACLE names another folder than the one of the build. Under another program (valgrind) every 50th row is enough. */
static inline void oracle_open(OracleRows *rows, const char *table)
{
	const char *folder = getenv("ORACLE"), *build = getenv("BUILD"), *under = getenv("UNDER");
	if (folder != NULL)
		snprintf(rows->name, sizeof rows->name, "%s/%s.csv", folder, table);
	else
		snprintf(rows->name, sizeof rows->name, "%s/oracle/%s.csv", build != NULL ? build : "build", table);
	rows->row = 0;
	rows->step = under != NULL && under[0] != '\0' ? 50 : 1;
	rows->file = fopen(rows->name, "r");
	if (rows->file == NULL)
		fail_msg("%s: %s (set BUILD to the folder of the build)", rows->name, strerror(errno));
	assert_non_null(fgets(rows->header, sizeof rows->header, rows->file));
	rows->columns = oracle_split(rows->header, rows->column);
}

static inline bool oracle_next(OracleRows *rows)
{
	for (unsigned i = 0; i < rows->step; i++) {
		if (fgets(rows->line, sizeof rows->line, rows->file) == NULL) {
			fclose(rows->file);
			return false;
		}
		rows->row++;
	}
	size_t cells = oracle_split(rows->line, rows->cell);
	assert_int_equal(cells, rows->columns);
	return true;
}

static inline const char *oracle_text(const OracleRows *rows, const char *column)
{
	for (size_t i = 0; i < rows->columns; i++)
		if (strcmp(rows->column[i], column) == 0)
			return rows->cell[i];
	fail_msg("%s has no column %s", rows->name, column);
	return NULL;
}

static inline bool oracle_is(const OracleRows *rows, const char *column, const char *text)
{
	return strcmp(oracle_text(rows, column), text) == 0;
}

static inline double oracle_number(const OracleRows *rows, const char *column)
{
	const char *cell = oracle_text(rows, column);
	char *end;
	double value = strtod(cell, &end);
	if (end == cell || *end != '\0')
		fail_msg("%s row %u: %s is no number: %s", rows->name, rows->row, column, cell);
	return value;
}

/* Equal within a part of the expected value, or of `scale` where that is greater. Says which row differs. */
static inline void oracle_same(const OracleRows *rows, const char *column, double ours, double scale)
{
	double expected = oracle_number(rows, column);
	if (fabs(ours - expected) <= 1e-9 * fmax(fabs(expected), scale))
		return;
	print_error("%s row %u: %s is %.17g here, %.17g there\n", rows->name, rows->row, column, ours, expected);
	for (size_t i = 0; i < rows->columns; i++)
		if (rows->cell[i][0] != '\0')
			print_error("  %s: %s\n", rows->column[i], rows->cell[i]);
	fail();
}

#endif
