/* SPDX-License-Identifier: MIT
 * Why a file broke, said at the place where a person would look, with the corrected line. libyaml names what it expected next,
 * which helps nobody who wrote `3/8" x 7/8`; so each of its words is traced to what is usually written there.
 */
#include "advice.h"

#include <ctype.h>
#include <string.h>

/* ---- one function a kind of mistake; true: it was this one ---- */

static bool is_tab(const Advice *a)
{
	size_t indent = indent_of(a->line, a->length);
	const char *tab = memchr(a->line, '\t', indent);
	if (tab == NULL && !(a->byte < a->length && a->line[a->byte] == '\t'))
		return false;
	size_t byte = tab != NULL ? (size_t)(tab - a->line) : a->byte;
	give_advice(a, MESSAGE_YML_24, advice_place_of_byte(a, a->at->line, byte), (About){ 0 });
	return true;
}

static bool is_backslash(const Advice *a)
{
	if (!says(a->at->context, "while parsing a quoted scalar"))
		return false;
	const char *slash = a->byte < a->length && a->line[a->byte] == '\\' ? a->line + a->byte : memchr(a->line, '\\', a->length);
	size_t byte = slash != NULL ? (size_t)(slash - a->line) : a->byte;
	size_t end = byte + 2 < a->length ? byte + 2 : a->length;
	const char *value = arena_text(a->arena, a->line + byte, end - byte);
	give_advice(a, MESSAGE_YML_28, advice_place_of_byte(a, a->at->line, byte), (About){ .value = value });
	return true;
}

static bool is_open_quote(const Advice *a)
{
	if (!says(a->at->context, "while scanning a quoted scalar"))
		return false;
	give_advice(a, MESSAGE_YML_18, advice_place(a, a->at->context_line, a->at->context_column), (About){ 0 });
	return true;
}

/* `>12 in`, `|12`, `@`, `%`, a backtick, `*`, `&`, `!`: each means something to YAML at the start of a value. */
static bool is_sign(const Advice *a)
{
	bool is_block = says(a->at->context, "while scanning a block scalar");
	bool is_mark = says(a->at->context, "while scanning an alias") || says(a->at->context, "while scanning an anchor") ||
		says(a->at->context, "tag");
	bool is_dash = says(a->at->problem, "block sequence entries are not allowed") && indent_of(a->line, a->length) < a->byte;
	if (!is_block && !is_mark && !is_dash && !says(a->at->problem, "cannot start any token"))
		return false;
	uint32_t number = is_block || is_mark ? a->at->context_line : a->at->line;
	uint32_t column = is_block || is_mark ? a->at->context_column : a->at->column;
	size_t length;
	const char *line = source_line(a->source, number, &length);
	size_t byte = source_offset(a->source, number, column) - source_offset(a->source, number, 1);
	if (byte >= length)
		return false;
	Advice there = *a;
	there.line = line;
	there.length = length;
	const char *value = piece_of(a, line, byte, value_end(&there, byte));
	give_advice(a, is_block ? MESSAGE_YML_19 : MESSAGE_YML_20, advice_place(a, number, column),
		(About){ .value = arena_text(a->arena, line + byte, 1), .want = cured(&there, byte, value) });
	return true;
}

/* `"3/8" x 7/8`: a quote closed right before the place where libyaml stopped. */
static bool is_half_quoted(const Advice *a)
{
	size_t i = a->byte;
	while (i > 0 && is_blank_byte(a->line[i - 1]))
		i--;
	if (i == 0 || i > a->length || (a->line[i - 1] != '"' && a->line[i - 1] != '\'') || a->byte >= a->length)
		return false;
	char quote = a->line[i - 1];
	size_t open = i - 1;
	while (open > 0 && a->line[open - 1] != quote)
		open--;
	if (open == 0)
		return false;
	size_t start = open - 1;
	Advice in_block = *a;
	const char *rest = piece_of(a, a->line, a->byte, value_end(a, a->byte));
	const char *value = piece_of(a, a->line, start, value_end(&in_block, a->byte));
	size_t last = strlen(value);
	bool is_apostrophe = quote == '\'' && a->byte == i && isalpha((unsigned char)a->line[i]) && last > 2 && value[last - 1] == quote;
	if (is_apostrophe)
		value = arena_text(a->arena, value + 1, last - 2);
	give_advice(a, MESSAGE_YML_17, advice_place_of_byte(a, a->at->line, a->byte),
		(About){ .value = rest, .want = cured(a, start, value) });
	return true;
}

/* `[12] ft` */
static bool is_half_bracketed(const Advice *a)
{
	size_t i = a->byte;
	while (i > 0 && is_blank_byte(a->line[i - 1]))
		i--;
	if (i == 0 || a->byte >= a->length || (a->line[i - 1] != ']' && a->line[i - 1] != '}'))
		return false;
	give_advice(a, MESSAGE_YML_30, advice_place(a, a->at->line, a->at->column),
		(About){ .value = piece_of(a, a->line, a->byte, a->length) });
	return true;
}

/* A bracket that never closed because ` #12` took the rest of its line, closing bracket and all. */
static bool is_bracket_in_comment(const Advice *a)
{
	for (uint32_t i = a->complaints->count; i > 0; i--) {
		const Complaint *c = &a->complaints->at[i - 1];
		if ((c->id == MESSAGE_YML_14 || c->id == MESSAGE_YML_15) && c->place.line >= a->at->context_line)
			return true; /* it has its message */
	}
	for (uint32_t number = a->at->context_line; number <= a->at->line; number++) {
		size_t length;
		const char *line = source_line(a->source, number, &length);
		for (size_t i = 1; i + 1 < length; i++) {
			if (line[i] != '#' || strchr(" \t[{,", line[i - 1]) == NULL || is_blank_byte(line[i + 1]))
				continue;
			size_t end = i + 1;
			while (end < length && strchr(",]} \t", line[end]) == NULL)
				end++;
			const char *lost = arena_text(a->arena, line + i, end - i);
			give_advice(a, MESSAGE_YML_14, advice_place_of_byte(a, number, i), (About){ .value = lost,
				.want = arena_printf(a->arena, "%s\"%s\"", key_before(a, line, i), lost) });
			return true;
		}
	}
	return false;
}

static bool is_answer(const char *text)
{
	return strncmp(text, "by others", 9) == 0 || strncmp(text, "not applicable", 14) == 0;
}

/* `note: see sheet: 3`; and `by others: NAME`, which has a way of its own. */
static bool is_colon_in_value(const Advice *a)
{
	if (a->byte >= a->length || a->line[a->byte] != ':')
		return false;
	size_t first = behind_colon(a->line, a->byte, 0);
	if (first == 0)
		return false;
	size_t start = value_start(a->line, a->byte - 1);
	if (start < first && !says(a->at->context, "flow"))
		start = first;
	while (start < a->length && is_blank_byte(a->line[start]))
		start++;
	const char *value = piece_of(a, a->line, start, value_end(a, start));
	const char *key = key_before(a, a->line, start);
	if (is_answer(value))
		give_advice(a, MESSAGE_YML_22, advice_place_of_byte(a, a->at->line, start),
			(About){ .value = value, .want = arena_printf(a->arena, "%s{%s} or %s\"%s\"", key, value, key, value) });
	else
		give_advice(a, MESSAGE_YML_21, advice_place(a, a->at->line, a->at->column), (About){ .want = cured(a, start, value) });
	return true;
}

static bool is_unclosed_bracket(const Advice *a)
{
	if (!says(a->at->context, "while parsing a flow"))
		return false;
	size_t length;
	const char *line = source_line(a->source, a->at->context_line, &length);
	size_t line_start = source_offset(a->source, a->at->context_line, 1);
	size_t byte = source_offset(a->source, a->at->context_line, a->at->context_column) - line_start;
	bool is_square = byte < length && line[byte] == '[';
	give_advice(a, MESSAGE_YML_26, advice_place(a, a->at->context_line, a->at->context_column),
		(About){ .value = is_square ? "[" : "{", .want = is_square ? "]" : "}" });
	return true;
}

void advise_break(const Source *source, const Break *at, Arena *arena, Complaints *complaints)
{
	Advice a = { .source = source, .at = at, .arena = arena, .complaints = complaints };
	a.line = source_line(source, at->line, &a.length);
	a.byte = source_offset(source, at->line, at->column) - source_offset(source, at->line, 1);
	bool is_flow = says(at->context, "while parsing a flow");
	if (is_tab(&a) || is_backslash(&a) || is_open_quote(&a) || (is_flow && is_bracket_in_comment(&a)) || is_sign(&a) ||
		is_half_quoted(&a) || is_half_bracketed(&a) || is_colon_in_value(&a) || is_unclosed_bracket(&a))
		return;
	bool is_mapping = says(at->problem, "mapping values are not allowed") && at->line > 1;
	if (is_mapping && (is_glued_colon(&a, at->line - 1) || is_line_without_colon(&a)))
		return;
	if (is_missing_colon(&a) || is_indentation(&a))
		return;
	give_advice(&a, MESSAGE_YML_29, advice_place(&a, at->line, at->column), (About){ .value = at->problem });
}
