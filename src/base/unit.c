/* SPDX-License-Identifier: MIT
 * Units by their spellings, and conversion between units of one dimension.
 */
#include "unit.h"

#include <assert.h>
#include <ctype.h>
#include <string.h>

/* Letters of either case; a full stop after a letter ("in.", "sq. ft") does not count. No two units of one dimension differ by
 * case alone. */
static bool is_spelt(const char *text, size_t length, const char *spelling, size_t spelling_length)
{
	size_t j = 0;
	for (size_t i = 0; i < length; i++) {
		if (text[i] == '.' && i > 0 && isalpha((unsigned char)text[i - 1]))
			continue;
		if (j == spelling_length || tolower((unsigned char)text[i]) != tolower((unsigned char)spelling[j]))
			return false;
		j++;
	}
	return j == spelling_length && j > 0;
}

static bool is_spelling_of(const UnitRow *row, const char *text, size_t length)
{
	if (is_spelt(text, length, row->printed, strlen(row->printed)))
		return true;
	for (const char *s = row->spellings; *s != '\0';) {
		size_t one = strcspn(s, "|");
		if (is_spelt(text, length, s, one))
			return true;
		s += one + (s[one] == '|');
	}
	return false;
}

bool unit_find(const char *text, size_t length, Dimension dimension, Unit *unit)
{
	for (int u = 0; u < UNIT_COUNT; u++) {
		const UnitRow *row = unit_row((Unit)u);
		if (row->dimension == dimension && is_spelling_of(row, text, length)) {
			*unit = (Unit)u;
			return true;
		}
	}
	return false;
}

double unit_convert(double value, Unit from, Unit to)
{
	const UnitRow *a = unit_row(from), *b = unit_row(to);
	assert(a->dimension == b->dimension);
	if (from == to)
		return value;
	return (value * a->factor + a->offset - b->offset) / b->factor;
}
