/* SPDX-License-Identifier: MIT
 * A line of a file and a caret under the place in it. Columns count code points; the caret stands by the width that the escaped
 * text takes on a terminal. Tabs go out as they are, in both lines, so that any tab stop lines up.
 */
#include "excerpt.h"

#include "parts.h"

#include <string.h>

/* No excerpt beyond this column: the way there is walked for every item, and a file may be one line long. */
enum { FARTHEST_COLUMN = 2000, MOST_CHARACTERS = 400, TAB_WIDTH = 8 };

typedef struct {
	const char *text;
	size_t start, place, place_end, end; /* bytes: what is shown, and what is marked of it */
	bool cut_before, cut_after;
} Slice;

static size_t next_character(const char *text, size_t length, size_t at)
{
	at++;
	while (at < length && ((unsigned char)text[at] & 0xC0) == 0x80)
		at++;
	return at;
}

static size_t skip_characters(const char *text, size_t length, size_t at, uint32_t count)
{
	for (; count > 0 && at < length; count--)
		at = next_character(text, length, at);
	return at;
}

/* The columns of one character, a tab taken as widest. */
static int width_at(const char *text, size_t at, size_t next)
{
	return text[at] == '\t' ? TAB_WIDTH : out_width(text + at, next - at);
}

static int width_of(const char *text, size_t from, size_t to)
{
	int width = 0;
	for (size_t at = from, next; at < to; at = next) {
		next = next_character(text, to, at);
		width += width_at(text, at, next);
	}
	return width;
}

/* Drops characters from the left until the place is near enough to the left margin; no word is cut if a blank stands there. */
static void cut_before(Slice *slice, int room)
{
	int width = width_of(slice->text, slice->start, slice->place);
	while (slice->start < slice->place && width > room) {
		size_t next = next_character(slice->text, slice->place, slice->start);
		width -= width_at(slice->text, slice->start, next);
		slice->start = next;
		slice->cut_before = true;
	}
	const char *blank = slice->cut_before ? memchr(slice->text + slice->start, ' ', slice->place - slice->start) : NULL;
	if (blank != NULL)
		slice->start = (size_t)(blank - slice->text) + 1;
}

/* Ends the slice where the room ends, behind a whole word if a blank stands there. */
static void cut_after(Slice *slice, size_t length, int room)
{
	size_t at = slice->start;
	int width = 0;
	for (int count = 0; at < length && count < MOST_CHARACTERS; count++) {
		size_t next = next_character(slice->text, length, at);
		width += width_at(slice->text, at, next);
		if (width > room)
			break;
		at = next;
	}
	slice->cut_after = at < length;
	if (slice->place_end > at)
		slice->place_end = at;
	slice->end = at;
	while (slice->cut_after && at > slice->place_end && slice->text[at] != ' ')
		at--;
	if (at > slice->place_end)
		slice->end = at;
}

/* The text of a slice with its tabs as they are; or as many spaces as it is wide. */
static void put_slice(Out *out, const Slice *slice, size_t to, bool blank)
{
	for (size_t at = slice->start; at < to;) {
		size_t tab = at;
		while (tab < to && slice->text[tab] != '\t')
			tab++;
		if (blank)
			put_spaces(out, out_width(slice->text + at, tab - at));
		else
			put_part(out, slice->text + at, tab - at);
		if (tab < to)
			SAY(out, "\t");
		at = tab + (tab < to);
	}
}

static void put_marked(Out *out, const Slice *slice, int indent)
{
	put_spaces(out, indent);
	if (slice->cut_before)
		SAY(out, "... ");
	put_slice(out, slice, slice->end, false);
	if (slice->cut_after)
		SAY(out, " ...");
	SAY(out, "\n");
	put_spaces(out, indent + (slice->cut_before ? 4 : 0));
	put_slice(out, slice, slice->place, true);
	int carets = width_of(slice->text, slice->place, slice->place_end);
	do
		SAY(out, "^");
	while (--carets > 0);
	SAY(out, "\n");
}

void put_excerpt(Out *out, const Source *source, const Place *place, int indent)
{
	if (source == NULL || place->line == 0 || place->line > source->lines || place->column > FARTHEST_COLUMN)
		return;
	size_t length;
	Slice slice = { .text = source_line(source, place->line, &length) };
	slice.place = skip_characters(slice.text, length, 0, place->column > 0 ? place->column - 1 : 0);
	uint32_t marked = place->length < MOST_CHARACTERS ? place->length : MOST_CHARACTERS;
	slice.place_end = skip_characters(slice.text, length, slice.place, marked);
	if (length == 0)
		return;
	while (slice.start < slice.place && slice.text[slice.start] == ' ')
		slice.start++;
	int room = PAGE_WIDTH - indent - 8;
	cut_before(&slice, room / 2);
	cut_after(&slice, length, room);
	put_marked(out, &slice, indent);
}
