/* SPDX-License-Identifier: MIT
 * What a `#` or a comma did to a value that YAML still could read: `mark: #12` is empty to YAML, `no. #12` is `no.`.
 *
 * A comment that a person meant begins with `# `. One that begins with `#12`, or alone behind a key with `#A`, is a lost value.
 */
#include "yaml_parts.h"

#include <ctype.h>
#include <string.h>

static bool is_blank(char c)
{
	return c == ' ' || c == '\t';
}

bool has_comments(const Source *source)
{
	const char *end = source->bytes + source->length;
	for (const char *at = source->bytes; (at = memchr(at, '#', (size_t)(end - at))) != NULL; at++)
		if (at > source->bytes && strchr(" \t[{,", at[-1]) != NULL)
			return true;
	return false;
}

/* The byte of a column that counts code points from 0. */
static size_t byte_of(const char *line, size_t length, size_t column)
{
	size_t at = 0;
	while (column > 0 && at < length) {
		for (at++; at < length && ((unsigned char)line[at] & 0xc0) == 0x80;)
			at++;
		column--;
	}
	return at;
}

static size_t skip_blanks(const char *line, size_t length, size_t at)
{
	while (at < length && is_blank(line[at]))
		at++;
	return at;
}

bool has_colon(const Source *source, const yaml_mark_t *end)
{
	size_t length;
	const char *line = source_line(source, (uint32_t)end->line + 1, &length);
	size_t at = skip_blanks(line, length, byte_of(line, length, end->column));
	return at < length && line[at] == ':';
}

/* Where the text of a lost value ends: before a comment of its own, without the blanks behind it. */
static size_t lost_end(const char *line, size_t length, size_t at)
{
	size_t end = at + 1;
	while (end < length && !(line[end] == '#' && is_blank(line[end - 1])))
		end++;
	while (end > at && is_blank(line[end - 1]))
		end--;
	return end;
}

/* In braces the sign that closes them was lost with the value; it is no part of it. */
static size_t without_closers(const char *line, size_t at, size_t end)
{
	size_t comma = at;
	while (comma < end && line[comma] != ',' && line[comma] != '}' && line[comma] != ']')
		comma++;
	return comma > at + 1 ? comma : end;
}

/* An empty value: `mark: #12` or `mark: # 12`, but not `mark: # as on the box`. */
static bool is_lost_value(const char *line, size_t length, size_t at)
{
	size_t next = skip_blanks(line, length, at + 1);
	if (next == length || line[next] == '#')
		return false;
	return next == at + 1 || isdigit((unsigned char)line[next]);
}

/* The byte at which to look behind a value: an empty one has no place of its own, so behind the colon of its key. */
static size_t look_at(const char *line, size_t length, const Node *key, const yaml_mark_t *end)
{
	if (key == NULL)
		return byte_of(line, length, end->column);
	size_t at = skip_blanks(line, length, byte_of(line, length, key->place.column + key->place.length - 1));
	return at < length && line[at] == ':' ? at + 1 : at;
}

static Place place_at(const Source *source, uint32_t line, const char *text, const size_t span[2])
{
	Place place = { .line = line, .column = 1, .source = source->id };
	for (size_t i = 0; i < span[1]; i++)
		if (((unsigned char)text[i] & 0xc0) != 0x80) {
			place.column += i < span[0];
			place.length += i >= span[0];
		}
	return place;
}

/* The text from `#` on that was lost behind byte `from` of the line; false: nothing was. */
static bool find_lost(const Written *w, const char *line, size_t length, size_t span[2])
{
	bool is_empty = w->scalar->length == 0;
	size_t behind = is_empty ? look_at(line, length, w->key, &w->end) : byte_of(line, length, w->end.column);
	size_t at = skip_blanks(line, length, behind);
	if (at >= length || line[at] != '#')
		return false;
	if (is_empty ? !is_lost_value(line, length, at) : at == behind || at + 1 >= length || !isdigit((unsigned char)line[at + 1]))
		return false;
	span[0] = at;
	span[1] = without_closers(line, at, lost_end(line, length, at));
	return true;
}

void notice_comment(const Source *source, const Written *written, Complaints *complaints)
{
	Node *scalar = written->scalar;
	const Node *key = written->key;
	bool is_empty = scalar->length == 0;
	/* In braces an empty value is noticed only at the next sign, which may stand lines below. */
	uint32_t number = is_empty && key != NULL ? key->place.line : (uint32_t)written->end.line + 1;
	size_t length, span[2];
	const char *line = source_line(source, number, &length);
	if (memchr(line, '#', length) == NULL || !find_lost(written, line, length, span))
		return;
	Arena *arena = complaints->arena;
	const char *lost = arena_text(arena, line + span[0], span[1] - span[0]);
	const char *whole = is_empty ? lost : arena_printf(arena, "%s %s", scalar->text, lost);
	const char *front = key != NULL ? arena_printf(arena, "%s: ", key->text) : "- ";
	Place place = place_at(source, number, line, span);
	complain(complaints, is_empty ? MESSAGE_YML_14 : MESSAGE_YML_15, place,
		(About){ .key = key != NULL ? key->text : NULL, .value = is_empty ? lost : scalar->text,
			.want = arena_printf(arena, "%s\"%s\"", front, whole) });
	scalar->fault = NODE_CUT_BY_COMMENT;
	scalar->place = place; /* an unreadable value stands where its message stands */
}
