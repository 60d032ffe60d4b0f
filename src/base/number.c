/* SPDX-License-Identifier: MIT
 * Numbers in and out: strict reading, the shortest form for machines, a form for people in which values that differ look
 * different.
 */
#include "number.h"

#include <errno.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { LONGEST_NUMBER = 64, MOST_DIGITS = 15 };

/* Digits with or without commas between groups of three; the commas are left out of `plain`. */
static size_t whole_part(const char *text, size_t length, char *plain, size_t *used)
{
	size_t i = 0, group = 0;
	bool grouped = false;
	for (; i < length; i++) {
		if (text[i] == ',') {
			if (grouped ? group != 3 : group < 1 || group > 3)
				return 0;
			grouped = true;
			group = 0;
		} else if (text[i] >= '0' && text[i] <= '9') {
			plain[(*used)++] = text[i];
			group++;
		} else {
			break;
		}
	}
	return grouped && group != 3 ? 0 : i;
}

static size_t digits_of(const char *text, size_t length)
{
	size_t i = 0;
	while (i < length && text[i] >= '0' && text[i] <= '9')
		i++;
	return i;
}

/* The bytes of an exponent ("e3", "E-2"); 0 if there is none or it has no digits. */
static size_t exponent_of(const char *text, size_t length)
{
	if (length < 2 || (*text != 'e' && *text != 'E'))
		return 0;
	size_t sign = text[1] == '-' || text[1] == '+';
	size_t digits = digits_of(text + 1 + sign, length - 1 - sign);
	return digits > 0 ? 1 + sign + digits : 0;
}

/* A short number without exponent is exact in a double, and so is its power of ten: one division rounds once, as strtod does. */
static bool short_number(const char *plain, size_t used, double *value)
{
	static const double power[] = { 1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15 };
	if (used > 15)
		return false;
	int64_t mantissa = 0;
	size_t behind = 0;
	for (size_t i = *plain == '-'; i < used; i++) {
		if (plain[i] == 'e')
			return false;
		if (plain[i] == '.')
			behind = used - i - 1;
		else
			mantissa = mantissa * 10 + (plain[i] - '0');
	}
	*value = (double)mantissa / power[behind];
	if (*plain == '-')
		*value = -*value;
	return true;
}

bool number_read(const char *text, size_t length, double *value)
{
	char plain[LONGEST_NUMBER + 1];
	size_t used = 0, at = 0;
	if (length == 0 || length > LONGEST_NUMBER)
		return false;
	if (text[0] == '-')
		plain[used++] = '-';
	at += text[0] == '-' || text[0] == '+';
	size_t whole = whole_part(text + at, length - at, plain, &used);
	at += whole;
	size_t behind = at < length && text[at] == '.' ? digits_of(text + at + 1, length - at - 1) : 0;
	if (behind > 0) {
		memcpy(plain + used, text + at, behind + 1);
		used += behind + 1;
		at += behind + 1;
	}
	if (whole == 0 && behind == 0)
		return false;
	size_t exponent = exponent_of(text + at, length - at);
	if (exponent > 0) {
		memcpy(plain + used, text + at, exponent);
		plain[used] = 'e';
		used += exponent;
	}
	if (at + exponent != length)
		return false;
	if (short_number(plain, used, value))
		return true;
	plain[used] = '\0';
	errno = 0;
	*value = strtod(plain, NULL);
	return errno == 0 && isfinite(*value);
}

const char *number_shortest(Arena *arena, double value)
{
	char text[32];
	for (int digits = 15; digits <= 17; digits++) {
		snprintf(text, sizeof text, "%.*g", digits, value);
		if (strtod(text, NULL) == value)
			break;
	}
	return arena_text(arena, text, strlen(text));
}

bool number_same(double a, double b)
{
	return a == b || fabs(a - b) <= 1e-9 * fmax(fabs(a), fabs(b));
}

/* The digits behind the point that show three significant ones. */
static int three_significant(double value)
{
	if (value == 0 || !isfinite(value))
		return 0;
	int digits = 2 - (int)floor(log10(fabs(value)));
	return digits < 0 ? 0 : digits > MOST_DIGITS ? MOST_DIGITS : digits;
}

static bool look_alike(double a, double b, int digits)
{
	char x[400], y[400]; /* the largest double has 309 digits before its point */
	snprintf(x, sizeof x, "%.*f", digits, a);
	snprintf(y, sizeof y, "%.*f", digits, b);
	return strcmp(x, y) == 0;
}

int number_digits(const double *value, size_t count)
{
	int digits = 0;
	for (size_t i = 0; i < count; i++) {
		int own = three_significant(value[i]);
		digits = own > digits ? own : digits;
	}
	for (size_t i = 0; i < count; i++)
		for (size_t j = 0; j < i; j++)
			while (digits < MOST_DIGITS && !number_same(value[i], value[j]) && look_alike(value[i], value[j], digits))
				digits++;
	return digits;
}

const char *number_print(Arena *arena, double value, int digits)
{
	if (!(fabs(value) < 1e15))
		return number_shortest(arena, value);
	char text[64];
	int length = snprintf(text, sizeof text, "%.*f", digits, value);
	if (digits > 0) {
		while (text[length - 1] == '0')
			length--;
		length -= text[length - 1] == '.';
	}
	if (length == 2 && text[0] == '-' && text[1] == '0')
		return "0";
	return arena_text(arena, text, (size_t)length);
}
