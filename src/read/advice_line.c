/* SPDX-License-Identifier: MIT
 * Breaks that lie in a whole line: no colon, no blank behind it, indentation.
 */
#include "advice.h"

#include <string.h>

/* `a:1`: the colon without a blank, on this line or on the last one before it that holds anything. */
bool is_glued_colon(const Advice *a, uint32_t number)
{
	size_t length;
	const char *line = source_line(a->source, number, &length);
	while (number > 1 && indent_of(line, length) == length)
		line = source_line(a->source, --number, &length);
	size_t start = indent_of(line, length);
	const char *colon = start < length ? memchr(line + start, ':', length - start) : NULL;
	if (colon == NULL || behind_colon(line, length, start) > 0)
		return false;
	size_t at = (size_t)(colon - line);
	for (size_t i = start; i < at; i++)
		if (is_blank_byte(line[i]) || line[i] == '"' || line[i] == '\'')
			return false;
	const char *key = piece_of(a, line, start, at), *value = piece_of(a, line, at + 1, length);
	give_advice(a, MESSAGE_YML_23, advice_place_of_byte(a, number, at),
		(About){ .key = key, .value = piece_of(a, line, start, length), .want = arena_printf(a->arena, "%s: %s", key, value) });
	return true;
}

bool is_missing_colon(const Advice *a)
{
	if (!says(a->at->problem, "could not find expected ':'"))
		return false;
	uint32_t number = a->at->context_line > 0 ? a->at->context_line : a->at->line;
	if (is_glued_colon(a, number))
		return true;
	size_t length;
	const char *line = source_line(a->source, number, &length);
	give_advice(a, MESSAGE_YML_27, advice_place(a, number, a->at->context_line > 0 ? a->at->context_column : a->at->column),
		(About){ .key = piece_of(a, line, indent_of(line, length), length) });
	return true;
}

/* A line without any colon, in front of one that has one: `name Main roof`. */
bool is_line_without_colon(const Advice *a)
{
	uint32_t number = a->at->line > 1 ? a->at->line - 1 : 1;
	size_t length;
	const char *line = source_line(a->source, number, &length);
	size_t start = indent_of(line, length);
	if (start == length || line[start] == '#' || behind_colon(line, length, 0) > 0)
		return false;
	give_advice(a, MESSAGE_YML_27, advice_place_of_byte(a, number, start), (About){ .key = piece_of(a, line, start, length) });
	return true;
}

/* The line before this one, down to `first`, whose indentation comes nearest to it: what the writer lined it up with. */
static uint32_t nearest_line(const Advice *a, size_t indent, uint32_t first, size_t *column)
{
	size_t least = SIZE_MAX;
	uint32_t nearest = first;
	for (uint32_t number = a->at->line - 1; number >= first && number > 0; number--) {
		size_t length;
		const char *line = source_line(a->source, number, &length);
		size_t n = indent_of(line, length), apart = n > indent ? n - indent : indent - n;
		if (n == length || line[n] == '#' || apart >= least)
			continue;
		least = apart;
		nearest = number;
		*column = n + 1;
	}
	return nearest;
}

/* The line begins at a column at which nothing around it begins. */
bool is_indentation(const Advice *a)
{
	size_t indent = indent_of(a->line, a->length), column = 1;
	if (a->at->line < 2 || indent == a->length || strchr("]},", a->line[indent]) != NULL)
		return false;
	bool is_deeper = says(a->at->problem, "not allowed in this context");
	if (!is_deeper && (a->byte > indent || !says(a->at->problem, "did not find expected")))
		return false;
	uint32_t first = !is_deeper && a->at->context_line > 0 ? a->at->context_line : 1;
	uint32_t number = nearest_line(a, indent, first, &column);
	give_advice(a, MESSAGE_YML_25, advice_place_of_byte(a, a->at->line, indent),
		(About){ .also = advice_place(a, number, (uint32_t)column), .want = arena_printf(a->arena, "%u", (unsigned)column) });
	return true;
}
