/* SPDX-License-Identifier: MIT
 * `12-14 x 1-1/2` is a No. 12 screw of 14 threads an inch, 1-1/2 in long; sizes of 1/4 in and more are written by their diameter.
 */
#include "screw_mark.h"

#include "quantity.h"

#include <ctype.h>
#include <string.h>
#include <strings.h>

static const char *skip_blanks(const char *at)
{
	while (*at == ' ')
		at++;
	return at;
}

/* The number behind `#`, `No.` or `No`, with at most two digits; NULL if none stands there. */
static const char *behind_sign(const char *at)
{
	size_t n = *at == '#' ? 1 : strncasecmp(at, "no.", 3) == 0 ? 3 : strncasecmp(at, "no", 2) == 0 ? 2 : 0;
	at = skip_blanks(at + n);
	return n > 0 && isdigit((unsigned char)*at) ? at : NULL;
}

static size_t digits(const char *at)
{
	return strspn(at, "0123456789");
}

/* ---- the parts of a mark, each taken from the front of what is left ---- */

static bool take_size(const char **at, const Reading *reading, ScrewMark *mark)
{
	const char *number = behind_sign(*at);
	const char *from = number != NULL ? number : *at;
	size_t n = digits(from);
	if (n == 0)
		return false;
	if (number == NULL && from[n] == '/') {
		n += 1 + digits(from + n + 1);
		mark->size = arena_text(reading->arena, from, n);
	} else
		mark->size = arena_printf(reading->arena, "#%.*s", (int)n, from);
	*at = from + n;
	return read_screw_size(mark->size, strlen(mark->size), reading->reference, &mark->size_in);
}

static bool take_threads(const char **at, const Reading *reading, ScrewMark *mark)
{
	const char *from = skip_blanks(*at);
	if (*from != '-')
		return true;
	from = skip_blanks(from + 1);
	size_t n = digits(from);
	if (n == 0 || n > 2)
		return false;
	mark->threads = arena_text(reading->arena, from, n);
	mark->threads_per_in = n == 1 ? from[0] - '0' : (from[0] - '0') * 10 + (from[1] - '0');
	*at = from + n;
	return true;
}

/* `x 1-1/2`: inches unless a unit stands behind it. */
static bool take_length(const char **at, const Reading *reading, ScrewMark *mark)
{
	const char *from = skip_blanks(*at);
	if (tolower((unsigned char)*from) != 'x')
		return true;
	from = skip_blanks(from + 1);
	const char *end = from;
	Scanned s;
	if (!scan_number(&end, &s))
		return false;
	const char *unit = skip_blanks(end);
	size_t n = *unit == '"' ? 1 : strcspn(unit, " ,#0123456789");
	Unit found = UNIT_in;
	if (n > 0 && unit_find(unit, n, DIMENSION_LENGTH, &found))
		end = unit + n;
	mark->length = end > unit ? arena_text(reading->arena, from, (size_t)(end - from)) :
		arena_printf(reading->arena, "%.*s in", (int)(end - from), from);
	mark->length_in = unit_convert(s.value, found, UNIT_in);
	*at = end;
	return mark->length_in > 0;
}

/* `DP3`, `DP 3`, `#3`, `point 3`, `#3 point`. */
static bool take_point(const char **at, const Reading *reading, ScrewMark *mark)
{
	static const char *const words[] = { "dp", "point", "pt", "#" };
	const char *from = skip_blanks(*at);
	from = skip_blanks(from + (*from == ','));
	for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
		size_t n = strlen(words[i]);
		if (strncasecmp(from, words[i], n) != 0)
			continue;
		from = skip_blanks(from + n);
		from = skip_blanks(from + (*from == '#'));
		if (digits(from) != 1)
			return false;
		mark->point = arena_text(reading->arena, from, 1);
		mark->point_number = *from - '0';
		from = skip_blanks(from + 1);
		*at = from + (strncasecmp(from, "point", 5) == 0 ? 5 : 0);
		return true;
	}
	return true;
}

bool read_screw_mark(const char *text, size_t length, const Reading *reading, ScrewMark *mark)
{
	char plain[QUANTITY_LONGEST];
	*mark = (ScrewMark){ 0 };
	if (!plain_text(text, length, plain))
		return false;
	const char *at = plain;
	bool is_named = behind_sign(at) != NULL || strchr(at, '/') != NULL;
	if (!take_size(&at, reading, mark) || !take_threads(&at, reading, mark) || !take_length(&at, reading, mark) ||
		!take_point(&at, reading, mark))
		return false;
	/* A lone 12 may be anything. */
	return *skip_blanks(at) == '\0' && (is_named || mark->threads != NULL || mark->length != NULL);
}
