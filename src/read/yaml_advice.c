/* SPDX-License-Identifier: MIT
 * Why a file broke, said at the place where a person would look, with the corrected line. libyaml names what it expected next,
 * which helps nobody who wrote `3/8" x 7/8`; so each of its words is traced to what is usually written there.
 */
#include "yaml_parts.h"

#include <ctype.h>
#include <string.h>

typedef struct {
	const Source *source;
	const Break *at;
	Arena *arena;
	Complaints *complaints;
	const char *line; /* the line of the problem */
	size_t length, byte; /* byte of the problem in it */
} Advice;

static bool is_blank(char c)
{
	return c == ' ' || c == '\t';
}

static bool says(const char *text, const char *words)
{
	return strstr(text, words) != NULL;
}

static Place place_of(const Advice *a, uint32_t line, uint32_t column)
{
	return (Place){ line, column, 1, a->source->id };
}

static Place place_of_byte(const Advice *a, uint32_t line, size_t byte)
{
	return source_place(a->source, source_offset(a->source, line, 1) + byte, 1);
}

static void say(const Advice *a, MessageId id, Place place, About about)
{
	complain(a->complaints, id, place, about);
}

static size_t indent_of(const char *line, size_t length)
{
	size_t n = 0;
	while (n < length && (is_blank(line[n]) || (line[n] == '-' && n + 1 < length && is_blank(line[n + 1]))))
		n++;
	return n;
}

/* A piece of a line without blanks around it, nor a comment behind it. */
static const char *piece(const Advice *a, const char *line, size_t from, size_t to)
{
	while (from < to && is_blank(line[from]))
		from++;
	for (size_t i = from + 1; i < to; i++)
		if (line[i] == '#' && is_blank(line[i - 1]))
			to = i;
	while (to > from && is_blank(line[to - 1]))
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
static size_t behind_colon(const char *line, size_t length, size_t from)
{
	for (size_t i = from; i < length; i++)
		if (line[i] == ':' && (i + 1 == length || is_blank(line[i + 1])))
			return i + 1;
	return 0;
}

/* Where the value around `byte` begins: behind the nearest colon, comma, bracket or dash before it. */
static size_t value_start(const char *line, size_t byte)
{
	for (size_t i = byte; i > 0; i--) {
		char c = line[i - 1];
		if ((is_blank(line[i]) && (c == ':' || c == ',' || c == '-')) || c == '[' || c == '{')
			return i;
	}
	return 0;
}

/* Where a value that begins at `from` ends when its line is in brackets. */
static size_t value_end(const Advice *a, size_t from)
{
	if (!says(a->at->context, "flow"))
		return a->length;
	size_t to = from;
	while (to < a->length && a->line[to] != ',' && a->line[to] != '}' && a->line[to] != ']')
		to++;
	return to;
}

/* ---- one function a kind of mistake; true: it was this one ---- */

static bool is_tab(const Advice *a)
{
	size_t indent = indent_of(a->line, a->length);
	const char *tab = memchr(a->line, '\t', indent);
	if (tab == NULL && !(a->byte < a->length && a->line[a->byte] == '\t'))
		return false;
	say(a, MESSAGE_YML_24, place_of_byte(a, a->at->line, tab != NULL ? (size_t)(tab - a->line) : a->byte), (About){ 0 });
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
	say(a, MESSAGE_YML_28, place_of_byte(a, a->at->line, byte), (About){ .value = value });
	return true;
}

static bool is_open_quote(const Advice *a)
{
	if (!says(a->at->context, "while scanning a quoted scalar"))
		return false;
	say(a, MESSAGE_YML_18, place_of(a, a->at->context_line, a->at->context_column), (About){ 0 });
	return true;
}

static bool is_behind_dash(const char *line, size_t from)
{
	return from > 1 && is_blank(line[from - 1]) && strchr("-,", line[from - 2]) != NULL;
}

/* The key on the line in front of a value that begins at `start`, with its colon: `mark: `. */
static const char *key_before(const Advice *a, const char *line, size_t start)
{
	size_t colon = start;
	while (colon > 0 && is_blank(line[colon - 1]))
		colon--;
	if (colon == 0 || line[colon - 1] != ':')
		return "";
	size_t from = colon - 1;
	while (from > 0 && strchr("{[,\t", line[from - 1]) == NULL && !is_behind_dash(line, from))
		from--;
	return arena_printf(a->arena, "%s: ", piece(a, line, from, colon - 1));
}

/* `key: "whole value"`, for the value around a byte of the problem's line. */
static const char *cured(const Advice *a, size_t start, const char *value)
{
	return arena_printf(a->arena, "%s%s", key_before(a, a->line, start), in_quotes(a, value));
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
	const char *value = piece(a, line, byte, value_end(&there, byte));
	say(a, is_block ? MESSAGE_YML_19 : MESSAGE_YML_20, place_of(a, number, column),
		(About){ .value = arena_text(a->arena, line + byte, 1), .want = cured(&there, byte, value) });
	return true;
}

/* `"3/8" x 7/8`: a quote closed right before the place where libyaml stopped. */
static bool is_half_quoted(const Advice *a)
{
	size_t i = a->byte;
	while (i > 0 && is_blank(a->line[i - 1]))
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
	const char *rest = piece(a, a->line, a->byte, value_end(a, a->byte));
	const char *value = piece(a, a->line, start, value_end(&in_block, a->byte));
	size_t last = strlen(value);
	bool is_apostrophe = quote == '\'' && a->byte == i && isalpha((unsigned char)a->line[i]) && last > 2 && value[last - 1] == quote;
	if (is_apostrophe)
		value = arena_text(a->arena, value + 1, last - 2);
	say(a, MESSAGE_YML_17, place_of_byte(a, a->at->line, a->byte), (About){ .value = rest, .want = cured(a, start, value) });
	return true;
}

/* `[12] ft` */
static bool is_half_bracketed(const Advice *a)
{
	size_t i = a->byte;
	while (i > 0 && is_blank(a->line[i - 1]))
		i--;
	if (i == 0 || a->byte >= a->length || (a->line[i - 1] != ']' && a->line[i - 1] != '}'))
		return false;
	say(a, MESSAGE_YML_30, place_of(a, a->at->line, a->at->column), (About){ .value = piece(a, a->line, a->byte, a->length) });
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
			if (line[i] != '#' || strchr(" \t[{,", line[i - 1]) == NULL || is_blank(line[i + 1]))
				continue;
			size_t end = i + 1;
			while (end < length && strchr(",]} \t", line[end]) == NULL)
				end++;
			const char *lost = arena_text(a->arena, line + i, end - i);
			say(a, MESSAGE_YML_14, place_of_byte(a, number, i), (About){ .value = lost,
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
	while (start < a->length && is_blank(a->line[start]))
		start++;
	const char *value = piece(a, a->line, start, value_end(a, start));
	const char *key = key_before(a, a->line, start);
	if (is_answer(value))
		say(a, MESSAGE_YML_22, place_of_byte(a, a->at->line, start),
			(About){ .value = value, .want = arena_printf(a->arena, "%s{%s} or %s\"%s\"", key, value, key, value) });
	else
		say(a, MESSAGE_YML_21, place_of(a, a->at->line, a->at->column), (About){ .want = cured(a, start, value) });
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
	say(a, MESSAGE_YML_26, place_of(a, a->at->context_line, a->at->context_column),
		(About){ .value = is_square ? "[" : "{", .want = is_square ? "]" : "}" });
	return true;
}

/* `a:1`: the colon without a blank, on this line or on the last one before it that holds anything. */
static bool is_glued_colon(const Advice *a, uint32_t number)
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
		if (is_blank(line[i]) || line[i] == '"' || line[i] == '\'')
			return false;
	const char *key = piece(a, line, start, at), *value = piece(a, line, at + 1, length);
	say(a, MESSAGE_YML_23, place_of_byte(a, number, at),
		(About){ .key = key, .value = piece(a, line, start, length), .want = arena_printf(a->arena, "%s: %s", key, value) });
	return true;
}

static bool is_missing_colon(const Advice *a)
{
	if (!says(a->at->problem, "could not find expected ':'"))
		return false;
	uint32_t number = a->at->context_line > 0 ? a->at->context_line : a->at->line;
	if (is_glued_colon(a, number))
		return true;
	size_t length;
	const char *line = source_line(a->source, number, &length);
	say(a, MESSAGE_YML_27, place_of(a, number, a->at->context_line > 0 ? a->at->context_column : a->at->column),
		(About){ .key = piece(a, line, indent_of(line, length), length) });
	return true;
}

/* A line without any colon, in front of one that has one: `name Main roof`. */
static bool is_line_without_colon(const Advice *a)
{
	uint32_t number = a->at->line > 1 ? a->at->line - 1 : 1;
	size_t length;
	const char *line = source_line(a->source, number, &length);
	size_t start = indent_of(line, length);
	if (start == length || line[start] == '#' || behind_colon(line, length, 0) > 0)
		return false;
	say(a, MESSAGE_YML_27, place_of_byte(a, number, start), (About){ .key = piece(a, line, start, length) });
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
static bool is_indentation(const Advice *a)
{
	size_t indent = indent_of(a->line, a->length), column = 1;
	if (a->at->line < 2 || indent == a->length || strchr("]},", a->line[indent]) != NULL)
		return false;
	bool is_deeper = says(a->at->problem, "not allowed in this context");
	if (!is_deeper && (a->byte > indent || !says(a->at->problem, "did not find expected")))
		return false;
	uint32_t first = !is_deeper && a->at->context_line > 0 ? a->at->context_line : 1;
	uint32_t number = nearest_line(a, indent, first, &column);
	say(a, MESSAGE_YML_25, place_of_byte(a, a->at->line, indent),
		(About){ .also = place_of(a, number, (uint32_t)column), .want = arena_printf(a->arena, "%u", (unsigned)column) });
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
	say(&a, MESSAGE_YML_29, place_of(&a, at->line, at->column), (About){ .value = at->problem });
}
