/* SPDX-License-Identifier: MIT
 * Out: a growing text with one way in for literals and one for everything else, which escapes. Plain ASCII is copied in runs; the
 * rest goes by shown_at.
 */
#include "out.h"
#include "escape.h"
#include "fail.h"

#include <stdio.h>
#include <string.h>

enum { FIRST_ROOM = 8192 };

struct Out {
	Arena *arena;
	OutEscape escape;
	char *bytes;
	size_t used, room;
};

Out *out_make(Arena *arena, OutEscape escape)
{
	Out *out = TAKE(arena, Out, 1);
	out->arena = arena;
	out->escape = escape;
	out->room = FIRST_ROOM;
	out->bytes = arena_take(arena, out->room, 1);
	return out;
}

/* Room for `more` bytes and the NUL behind them. */
static void make_room(Out *out, size_t more)
{
	if (more < out->room - out->used)
		return;
	size_t room = out->room;
	while (room - out->used <= more)
		if (__builtin_mul_overflow(room, (size_t)2, &room))
			fail("out of memory", NULL);
	char *wider = arena_take(out->arena, room, 1);
	memcpy(wider, out->bytes, out->used);
	out->bytes = wider;
	out->room = room;
}

void out_literal(Out *out, const char *literal, size_t length)
{
	make_room(out, length);
	memcpy(out->bytes + out->used, literal, length);
	out->used += length;
}

/* ---- what is escaped beyond what a terminal needs ---- */

static const char *entity_of(char c)
{
	switch (c) {
	case '&':
		return "&amp;";
	case '<':
		return "&lt;";
	case '>':
		return "&gt;";
	case '"':
		return "&quot;";
	case '\'':
		return "&#39;";
	default:
		return NULL;
	}
}

/* What a plain character becomes in this kind of text; NULL: itself. */
static const char *replacement(const Out *out, const char *text, size_t length)
{
	if (out->escape == OUT_MARKUP)
		return entity_of(*text);
	if (*text == '"' && out->escape == OUT_CSV)
		return "\"\"";
	/* Build servers take commands such as ##[error] from anywhere in a line. */
	if (*text == '#' && length > 2 && text[1] == '#' && (text[2] == '[' || text[2] == 'v'))
		return "\\x23";
	return NULL;
}

static bool needs_look(const Out *out, char c)
{
	if (!is_plain((unsigned char)c) || c == '#')
		return true;
	return out->escape != OUT_TERMINAL && (c == '"' || (out->escape == OUT_MARKUP && entity_of(c) != NULL));
}

static size_t plain_run(const Out *out, const char *text, size_t length)
{
	size_t run = 0;
	while (run < length && !needs_look(out, text[run]))
		run++;
	return run;
}

static void put_one(Out *out, const char *text, size_t length, size_t *taken)
{
	const char *instead = replacement(out, text, length);
	if (instead != NULL) {
		out_literal(out, instead, strlen(instead));
		*taken = 1;
		return;
	}
	Shown shown = shown_at(text, length);
	if (shown.escape[0] != '\0')
		out_literal(out, shown.escape, strlen(shown.escape));
	else
		out_literal(out, text, shown.bytes);
	*taken = shown.bytes;
}

/* Whether nothing but blanks stands before the end of what was written in its line. */
static bool at_line_start(const Out *out)
{
	size_t i = out->used;
	while (i > 0 && out->bytes[i - 1] == ' ')
		i--;
	return i == 0 || out->bytes[i - 1] == '\n';
}

/* Build servers take commands such as ::error:: at the start of a line; a text from a file must not give one. */
static void guard_start(Out *out, const char **text, size_t *length)
{
	size_t blanks = 0;
	while (blanks < *length && (*text)[blanks] == ' ')
		blanks++;
	if (*length - blanks < 2 || memcmp(*text + blanks, "::", 2) != 0 || !at_line_start(out))
		return;
	put_spaces(out, (int)blanks);
	SAY(out, "\\x3a");
	*text += blanks + 1;
	*length -= blanks + 1;
}

/* Spreadsheets take a cell that begins so, also after blanks, for a formula. */
static bool is_formula(const char *text, size_t length)
{
	size_t i = 0;
	while (i < length && text[i] == ' ')
		i++;
	return i < length && text[i] != '\0' && strchr("=+-@\t\r", text[i]) != NULL;
}

void put_part(Out *out, const char *text, size_t length)
{
	if (out->escape == OUT_CSV && is_formula(text, length))
		SAY(out, "'");
	guard_start(out, &text, &length);
	while (length > 0) {
		size_t taken = plain_run(out, text, length);
		if (taken > 0)
			out_literal(out, text, taken);
		else
			put_one(out, text, length, &taken);
		text += taken;
		length -= taken;
	}
}

void put(Out *out, const char *text)
{
	put_part(out, text, strlen(text));
}

int out_width(const char *text, size_t length)
{
	int width = 0;
	while (length > 0) {
		if (is_plain((unsigned char)*text)) {
			width++;
			text++;
			length--;
			continue;
		}
		Shown shown = shown_at(text, length);
		width += shown.width;
		text += shown.bytes;
		length -= shown.bytes;
	}
	return width;
}

int put_wrapped(Out *out, const char *text, int at, int indent, int width)
{
	while (*text != '\0') {
		size_t blanks = strspn(text, " ");
		size_t word = strcspn(text + blanks, " ");
		int columns = out_width(text + blanks, word);
		if (at + (int)blanks + columns > width && at > indent) {
			SAY(out, "\n");
			put_spaces(out, indent);
			at = indent;
		} else {
			put_spaces(out, (int)blanks);
			at += (int)blanks;
		}
		put_part(out, text + blanks, word);
		at += columns;
		text += blanks + word;
	}
	return at;
}

void put_count(Out *out, unsigned long value)
{
	char digits[24];
	int length = snprintf(digits, sizeof digits, "%lu", value);
	out_literal(out, digits, (size_t)length);
}

void put_spaces(Out *out, int count)
{
	static const char spaces[] = "                                ";
	for (; count > 0; count -= (int)sizeof spaces - 1)
		out_literal(out, spaces, count < (int)sizeof spaces - 1 ? (size_t)count : sizeof spaces - 1);
}

const char *out_text(const Out *out, size_t *length)
{
	if (length != NULL)
		*length = out->used;
	return out->bytes; /* memory behind `used` is zero */
}
