/* SPDX-License-Identifier: MIT
 * Numbers with units in the notations of drawings: `1-1/2 in`, `20'-6"`, `0.60 mm`, `1:12`, `1/2 in 12`, `14 deg`.
 *
 * A unit is looked for in the dimension that is wanted; one that is found only in another is told apart from one that is none.
 */
#include "quantity.h"

#include "number.h"

#include <ctype.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>

/* Signs that editors and other documents put in place of plain ones. */
static const struct {
	const char *sign, *plain;
} signs[] = {
	{ "\xe2\x88\x92", "-" }, { "\xe2\x80\x93", "-" }, /* minus, dash */
	{ "\xc2\xa0", " " }, { "\xc3\x97", "x" },
	{ "\xe2\x80\xb2", "'" }, { "\xe2\x80\x99", "'" }, { "\xe2\x80\xb3", "\"" }, { "\xe2\x80\x9d", "\"" },
	{ "\xc2\xbd", " 1/2" }, { "\xc2\xbc", " 1/4" }, { "\xc2\xbe", " 3/4" },
	{ "\xe2\x85\x9b", " 1/8" }, { "\xe2\x85\x9c", " 3/8" }, { "\xe2\x85\x9d", " 5/8" }, { "\xe2\x85\x9e", " 7/8" },
};

/* The plain text for the sign at `at`, and the sign's length; the byte itself if it is none of ours. */
static const char *plain_for(const char *at, size_t left, char self[2], size_t *used)
{
	for (size_t i = 0; i < sizeof signs / sizeof *signs && (unsigned char)*at >= 0x80; i++) {
		size_t n = strlen(signs[i].sign);
		if (n <= left && memcmp(at, signs[i].sign, n) == 0) {
			*used = n;
			return signs[i].plain;
		}
	}
	self[0] = *at;
	*used = 1;
	return self;
}

bool plain_text(const char *text, size_t length, char plain[QUANTITY_LONGEST])
{
	size_t n = 0, used = 0;
	for (size_t i = 0; i < length; i += used) {
		char self[2] = "";
		const char *part = plain_for(text + i, length - i, self, &used);
		size_t size = strlen(part);
		if (size == 0 || n + size >= QUANTITY_LONGEST)
			return false; /* a NUL, or too long for any quantity */
		if (n == 0 && *part == ' ')
			part++, size--;
		memcpy(plain + n, part, size);
		n += size;
	}
	while (n > 0 && plain[n - 1] == ' ')
		n--;
	plain[n] = '\0';
	return true;
}

/* ---- numbers ---- */

static bool is_digit(char c)
{
	return isdigit((unsigned char)c) != 0;
}

static const char *skip_blanks(const char *at)
{
	while (*at == ' ')
		at++;
	return at;
}

static size_t decimal_length(const char *at)
{
	size_t n = 0;
	while (is_digit(at[n]) || at[n] == '.' || (at[n] == ',' && is_digit(at[n + 1])))
		n++;
	if (n > 0 && (at[n] == 'e' || at[n] == 'E')) {
		size_t sign = at[n + 1] == '-' || at[n + 1] == '+';
		if (is_digit(at[n + 1 + sign]))
			for (n += 1 + sign; is_digit(at[n]);)
				n++;
	}
	return n;
}

/* "3/8" at `at`: at most five digits on each side, and no more of it. */
static bool scan_fraction(const char **at, Scanned *s)
{
	char *end;
	if (!is_digit(**at))
		return false;
	unsigned long above = strtoul(*at, &end, 10);
	if (*end != '/' || !is_digit(end[1]))
		return false;
	unsigned long below = strtoul(end + 1, &end, 10);
	if (below == 0 || above > 99999 || below > 99999)
		return false;
	s->numerator = (unsigned)above;
	s->denominator = (unsigned)below;
	s->value = (double)above / (double)below;
	*at = end;
	return true;
}

bool scan_number(const char **at, Scanned *scanned)
{
	bool is_negative = **at == '-';
	const char *from = *at + is_negative;
	*scanned = (Scanned){ 0 };
	if (!scan_fraction(&from, scanned)) {
		size_t n = decimal_length(from);
		if (n == 0 || !number_read(from, n, &scanned->value))
			return false;
		bool is_whole = strspn(from, "0123456789") >= n;
		from += n;
		const char *rest = from + (*from == '-' || *from == ' ');
		Scanned part;
		if (is_whole && rest > from && scan_fraction(&rest, &part) && part.numerator < part.denominator) {
			scanned->value += part.value;
			from = rest;
		}
	}
	if (is_negative)
		scanned->value = -scanned->value;
	*at = from;
	return true;
}

/* ---- units ---- */

static bool is_unit_of(const char *text, Dimension dimension)
{
	Unit unit;
	return unit_find(text, strlen(text), dimension, &unit);
}

static bool is_gauge(const char *unit)
{
	static const char *const spellings[] = { "ga", "ga.", "gauge", "gage", "gauges" };
	for (size_t i = 0; i < sizeof spellings / sizeof *spellings; i++)
		if (strcasecmp(unit, spellings[i]) == 0)
			return true;
	return false;
}

static bool is_slope_or_angle(Dimension dimension)
{
	return dimension == DIMENSION_SLOPE || dimension == DIMENSION_ANGLE;
}

/* `12' - 6 1/2"`: the feet in `first`, the inches in the text behind their sign. */
static bool scan_feet_and_inches(double first, const char *rest, double *inches)
{
	static const char *const feet[] = { "'", "feet", "foot", "ft.", "ft" };
	for (size_t i = 0; i < sizeof feet / sizeof *feet; i++) {
		size_t n = strlen(feet[i]);
		if (strncasecmp(rest, feet[i], n) != 0)
			continue;
		const char *at = skip_blanks(rest + n);
		at = skip_blanks(at + (*at == '-' || *at == ','));
		Scanned s;
		if (!scan_number(&at, &s) || s.value < 0 || s.value >= 12)
			return false;
		at = skip_blanks(at);
		Unit unit = UNIT_in;
		if (*at != '\0' && (!unit_find(at, strlen(at), DIMENSION_LENGTH, &unit) || unit != UNIT_in))
			return false;
		*inches = signbit(first) ? first * 12 - s.value : first * 12 + s.value;
		return true;
	}
	return false;
}

/* A slope as its rise in 12: `1:12`, `3/12`, `1/2 in 12`, `1/4 in per ft`, `14 deg`, `8.3 %`. */
static bool scan_slope(const Scanned *s, const char *rest, double *in_12)
{
	Unit unit;
	size_t length = strlen(rest);
	if (*rest == '\0' && s->denominator == 12)
		*in_12 = s->value * 12;
	else if (strcasecmp(rest, "in per ft") == 0 || strcasecmp(rest, "in/ft") == 0 || unit_find(rest, length, DIMENSION_SLOPE, &unit))
		*in_12 = s->value;
	else if (unit_find(rest, length, DIMENSION_ANGLE, &unit) && fabs(s->value) < 90)
		*in_12 = 12 * tan(s->value * (acos(-1) / 180));
	else if (unit_find(rest, length, DIMENSION_SHARE, &unit))
		*in_12 = s->value * 12 / 100;
	else if (*rest == ':') {
		Scanned run;
		const char *at = skip_blanks(rest + 1);
		if (!scan_number(&at, &run) || *at != '\0' || !(run.value > 0))
			return false;
		*in_12 = s->value * 12 / run.value;
	} else
		return false;
	return true;
}

/* What is wrong with a unit that the wanted dimension does not have. */
static Quantity fault_of(const char *rest)
{
	if (is_digit(*rest) || *rest == '-' || *rest == '.' || *rest == '/')
		return QUANTITY_NO_NUMBER;
	for (Unit u = 0; u < UNIT_COUNT; u++)
		if (unit_row(u)->dimension != DIMENSION_PURE && is_unit_of(rest, unit_row(u)->dimension))
			return QUANTITY_OTHER_DIMENSION;
	return is_gauge(rest) ? QUANTITY_OTHER_DIMENSION : QUANTITY_UNKNOWN_UNIT;
}

Quantity read_quantity(const char *text, size_t length, Unit unit, double *value)
{
	char plain[QUANTITY_LONGEST];
	const char *at = plain;
	Scanned s;
	if (!plain_text(text, length, plain) || !scan_number(&at, &s) || !isfinite(s.value))
		return QUANTITY_NO_NUMBER;
	at = skip_blanks(at);
	*value = s.value;
	Dimension wanted = unit_row(unit)->dimension;
	double other;
	Unit found;
	if (unit_find(at, strlen(at), wanted, &found)) {
		*value = unit_convert(s.value, found, unit);
		return QUANTITY_READ;
	}
	if (is_slope_or_angle(wanted) && scan_slope(&s, at, &other)) {
		*value = wanted == DIMENSION_SLOPE ? other : atan(other / 12) * (180 / acos(-1));
		return QUANTITY_READ;
	}
	if (*at == '\0')
		return wanted == DIMENSION_PURE ? QUANTITY_READ : QUANTITY_BARE;
	if (wanted == DIMENSION_LENGTH && is_gauge(at))
		return QUANTITY_GAUGE;
	if (wanted == DIMENSION_LENGTH && scan_feet_and_inches(s.value, at, &other)) {
		*value = unit_convert(other, UNIT_in, unit);
		return QUANTITY_READ;
	}
	return fault_of(at);
}
