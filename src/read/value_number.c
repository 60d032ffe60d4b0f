/* SPDX-License-Identifier: MIT
 * Numbers of a field, in its unit and range, and screw sizes. What was typed decides the complaint: no unit, one of another
 * kind, no number.
 */
#include "filling.h"
#include "number.h"

#include <string.h>

static const char *dimension_words(Dimension dimension)
{
	static const char *const words[] = { "a plain number", "yes or no", "a time", "a length", "an area", "a pressure", "a force",
		"a force per length", "a speed", "a slope", "an angle", "a temperature", "a difference of temperatures", "a share",
		"a potential" };
	return words[dimension];
}

/* `24 psf` for a length: the dimension that its unit has. */
static const char *kind_of_quantity(const char *text, size_t length)
{
	double value;
	for (Unit u = 0; u < UNIT_COUNT; u++) {
		Dimension dimension = unit_row(u)->dimension;
		Quantity q = dimension != DIMENSION_PURE ? read_quantity(text, length, u, &value) : QUANTITY_UNKNOWN_UNIT;
		if (q == QUANTITY_READ)
			return dimension_words(dimension);
		if (q == QUANTITY_GAUGE)
			return "a gauge";
	}
	return "of another kind";
}

/* `thickness`, `tested_thickness`: the keys that take a gauge. */
static bool is_thickness(const char *key)
{
	static const char word[] = "thickness";
	size_t length = strlen(key), tail = sizeof word - 1;
	return length >= tail && strcmp(key + length - tail, word) == 0;
}

static void refuse_quantity(Cell *cell, Quantity why)
{
	Dimension wanted = unit_row(cell->field->unit)->dimension;
	if (why == QUANTITY_BARE)
		refuse_cell_like(cell, MESSAGE_FRM_10);
	else if (why == QUANTITY_NO_NUMBER)
		refuse_cell_like(cell, MESSAGE_FRM_11);
	else if (wanted == DIMENSION_PURE)
		refuse_cell_like(cell, MESSAGE_FRM_14);
	else if (why == QUANTITY_UNKNOWN_UNIT)
		refuse_cell_like(cell, MESSAGE_FRM_12);
	else {
		cell->given->said = SAID_UNREADABLE;
		const char *kind = kind_of_quantity(cell->text, cell->length);
		const char *value = arena_printf(cell->reading->arena, "%s, %s", cell->given->typed, kind);
		reading_complain(cell->reading, MESSAGE_FRM_13, cell->given->place,
			(About){ .key = cell->key, .value = value, .want = dimension_words(wanted) });
	}
}

static const char *range_words(const Field *field, Arena *arena)
{
	const char *unit = unit_row(field->unit)->printed;
	const char *blank = *unit == '\0' || *unit == ':' ? "" : " ";
	const char *low = number_shortest(arena, field->low), *high = number_shortest(arena, field->high);
	return arena_printf(arena, "%s%s%s and %s%s%s", low, blank, unit, high, blank, unit);
}

static bool is_in_range(const Field *field, double value)
{
	if (field->low >= field->high && !(field->low > 0)) /* 0, 0: no range */
		return true;
	return (value >= field->low || number_same(value, field->low)) && (value <= field->high || number_same(value, field->high));
}

/* The unit of a column's header stands for the one a cell leaves out. */
static bool take_header_unit(const Cell *cell, double *value)
{
	Unit bare = cell->reading->bare;
	if (bare == UNIT_one || unit_row(bare)->dimension != unit_row(cell->field->unit)->dimension)
		return false;
	*value = unit_convert(*value, bare, cell->field->unit);
	return true;
}

bool read_number(Cell *cell, double *value)
{
	const Field *field = cell->field;
	double number = 0;
	Quantity q = read_quantity(cell->text, cell->length, field->unit, &number);
	if (q == QUANTITY_BARE && take_header_unit(cell, &number))
		q = QUANTITY_READ;
	if (q == QUANTITY_GAUGE && field->kind == IS_NUMBER && is_thickness(field->key) && number > 0) {
		cell->given->said = SAID_UNREADABLE; /* until finish_record */
		*value = number;
		return true;
	}
	if (q == QUANTITY_GAUGE)
		refuse_cell(cell, MESSAGE_FRM_24, NULL);
	else if (q != QUANTITY_READ)
		refuse_quantity(cell, q);
	else if (!is_in_range(field, number))
		refuse_cell(cell, MESSAGE_FRM_15, range_words(field, cell->reading->arena));
	else {
		*value = number;
		return accept_cell(cell);
	}
	return false;
}

bool read_size(Cell *cell, Number *number)
{
	double diameter = 0;
	if (read_screw_size(cell->text, cell->length, cell->reading->reference, &diameter)) {
		if (!is_in_range(cell->field, diameter)) {
			refuse_cell(cell, MESSAGE_FRM_15, range_words(cell->field, cell->reading->arena));
			return false;
		}
		number->value = diameter;
		return accept_cell(cell);
	}
	bool is_digits = cell->length > 0 && cell->length < 3 && strspn(cell->given->typed, "0123456789") == cell->length;
	if (is_digits) /* 12 was meant as #12, or as 12 mm */
		refuse_cell(cell, MESSAGE_FRM_19, arena_printf(cell->reading->arena, "\"#%s\"", cell->given->typed));
	else
		refuse_cell_like(cell, MESSAGE_FRM_19);
	return false;
}
