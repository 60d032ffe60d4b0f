/* SPDX-License-Identifier: MIT
 * The lines of a broken file: pieces of them, and the line as it should read.
 */
#include "advice.h"

#include <string.h>

bool is_blank_byte(char c)
{
	return c == ' ' || c == '\t';
}

bool says(const char *text, const char *words)
{
	return strstr(text, words) != NULL;
}

Place advice_place(const Advice *a, uint32_t line, uint32_t column)
{
	return (Place){ line, column, 1, a->source->id };
}

Place advice_place_of_byte(const Advice *a, uint32_t line, size_t byte)
{
	return source_place(a->source, source_offset(a->source, line, 1) + byte, 1);
}

void give_advice(const Advice *a, MessageId id, Place place, About about)
{
	complain(a->complaints, id, place, about);
}

size_t indent_of(const char *line, size_t length)
{
	size_t n = 0;
	while (n < length && (is_blank_byte(line[n]) || (line[n] == '-' && n + 1 < length && is_blank_byte(line[n + 1]))))
		n++;
	return n;
}

/* A piece of a line without blanks around it, nor a comment behind it. */
const char *piece_of(const Advice *a, const char *line, size_t from, size_t to)
{
	while (from < to && is_blank_byte(line[from]))
		from++;
	for (size_t i = from + 1; i < to; i++)
		if (line[i] == '#' && is_blank_byte(line[i - 1]))
			to = i;
	while (to > from && is_blank_byte(line[to - 1]))
		to--;
	return arena_text(a->arena, line + from, to - from);
}

/* In whichever quotes the text does not hold itself. */
static const char *in_quotes(const Advice *a, const char *text)
{
	if (strchr(text, '"') == NULL && strchr(text, '\\') == NULL)
		return arena_printf(a->arena, "\"%s\"", text);
	if (strchr(text, '\'') == NULL)
		return arena_printf(a->arena, "'%s'", text);
	return arena_printf(a->arena, "it in single quotes, each ' in it written twice");
}

/* The byte behind the first `: ` of a line from `from` on, or 0. */
size_t behind_colon(const char *line, size_t length, size_t from)
{
	for (size_t i = from; i < length; i++)
		if (line[i] == ':' && (i + 1 == length || is_blank_byte(line[i + 1])))
			return i + 1;
	return 0;
}

/* Where the value around `byte` begins: behind the nearest colon, comma, bracket or dash before it. */
size_t value_start(const char *line, size_t byte)
{
	for (size_t i = byte; i > 0; i--) {
		char c = line[i - 1];
		if ((is_blank_byte(line[i]) && (c == ':' || c == ',' || c == '-')) || c == '[' || c == '{')
			return i;
	}
	return 0;
}

/* Where a value that begins at `from` ends when its line is in brackets. */
size_t value_end(const Advice *a, size_t from)
{
	if (!says(a->at->context, "flow"))
		return a->length;
	size_t to = from;
	while (to < a->length && a->line[to] != ',' && a->line[to] != '}' && a->line[to] != ']')
		to++;
	return to;
}

static bool is_behind_dash(const char *line, size_t from)
{
	return from > 1 && is_blank_byte(line[from - 1]) && strchr("-,", line[from - 2]) != NULL;
}

/* The key on the line in front of a value that begins at `start`, with its colon: `mark: `. */
const char *key_before(const Advice *a, const char *line, size_t start)
{
	size_t colon = start;
	while (colon > 0 && is_blank_byte(line[colon - 1]))
		colon--;
	if (colon == 0 || line[colon - 1] != ':')
		return "";
	size_t from = colon - 1;
	while (from > 0 && strchr("{[,\t", line[from - 1]) == NULL && !is_behind_dash(line, from))
		from--;
	return arena_printf(a->arena, "%s: ", piece_of(a, line, from, colon - 1));
}

/* `key: "whole value"`, for the value around a byte of the problem's line. */
const char *cured(const Advice *a, size_t start, const char *value)
{
	return arena_printf(a->arena, "%s%s", key_before(a, a->line, start), in_quotes(a, value));
}
