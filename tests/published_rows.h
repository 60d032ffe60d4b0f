/* SPDX-License-Identifier: MIT
 * Rows of the tables in tests/published/ by the names of their columns.
 */
#ifndef PUBLISHED_ROWS_H
#define PUBLISHED_ROWS_H

#include "wind_roof.h"

#include "quantity.h"

#include <stdlib.h>

typedef struct {
	const char *file;
	const char *const *column, *const *cell;
	uint32_t columns;
	const char *kind, *what, *standard; /* standard: NULL where the file has none */
	const Submittal *submittal; /* of a roof in the wind, read once */
} PublishedRow;

/* NULL where the file has no such column. */
static inline const char *cell_or_null(const PublishedRow *row, const char *column)
{
	for (uint32_t i = 0; i < row->columns; i++)
		if (strcmp(row->column[i], column) == 0)
			return row->cell[i];
	return NULL;
}

static inline const char *cell_of(const PublishedRow *row, const char *column)
{
	const char *cell = cell_or_null(row, column);
	if (cell == NULL)
		fail_msg("%s has no column %s", row->file, column);
	return cell;
}

static inline double number_in(const char *cell)
{
	char *end;
	double value = strtod(cell, &end);
	assert_true(end != cell);
	return value;
}

static inline double quantity_in(const char *cell, Unit unit)
{
	double value = 0;
	assert_int_equal(read_quantity(cell, strlen(cell), unit, &value), QUANTITY_READ);
	return value;
}

static inline double number_of(const PublishedRow *row, const char *column)
{
	return number_in(cell_of(row, column));
}

/* "24.2 psf + 20.8 psf", "0.60 mm", "1.005 kPa", or a plain number. */
static inline double printed_in(const char *text)
{
	double sum = 0;
	while (*text != '\0') {
		const char *plus = strstr(text, " + ");
		size_t length = plus != NULL ? (size_t)(plus - text) : strlen(text);
		double value = 0;
		if (read_quantity(text, length, UNIT_psf, &value) != QUANTITY_READ &&
		    read_quantity(text, length, UNIT_in, &value) != QUANTITY_READ)
			value = number_in(text);
		sum += value;
		text += length + (plus != NULL ? 3 : 0);
	}
	return sum;
}

#endif
