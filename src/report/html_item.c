/* SPDX-License-Identifier: MIT
 * One item on a page: an article with an anchor of its own, so that a letter can point at it.
 */
#include "html_item.h"

#include "excerpt.h"

#include <string.h>

enum { MOST_PLACES = 60 };

static void put_span(Markup *page, const char *kind, const char *text)
{
	OPEN(page, "span");
	ATTRIBUTE(page, "class", kind);
	markup_text(page, text);
	CLOSE(page, "span");
}

/* What stands in the way of an approval is told from notes by its frame, not by a color. */
static const char *kind_of_action(const Finding *item)
{
	int action = counted_action(item);
	return action < 0 ? "action closed" : action <= ACTION_NOT_REVIEWED ? "action" : "action note";
}

static void put_title(Pen *pen, const Finding *item)
{
	Markup *page = pen->page;
	const char *number = item_number(item, pen->arena);
	OPEN(page, "h3");
	if (number != NULL)
		put_span(page, "number", number);
	put_span(page, kind_of_action(item), item_heading(item));
	put_span(page, "where", item_where(item, &item->spot[0], pen->arena));
	put_span(page, "code", item->code);
	CLOSE(page, "h3");
}

static void put_place_text(Pen *pen, const Place *place)
{
	markup_text(pen->page, ""); /* ends the tag */
	put_place(pen->page->out, place_file(pen->verdict, place), place);
}

/* The line of the file; the reviewer's file is his own. */
static void put_source_line(Pen *pen, const Finding *item)
{
	const Place *place = &item->spot[0].place;
	OPEN(pen->page, "pre");
	put_place_text(pen, place);
	SAY(pen->page->out, "\n");
	if (place->source != SOURCE_REVIEWER)
		put_excerpt(pen->page->out, verdict_source(pen->verdict, place->source), place, 2);
	CLOSE(pen->page, "pre");
}

void begin_item(Pen *pen, const Finding *item)
{
	Markup *page = pen->page;
	OPEN(page, "article");
	ATTRIBUTE(page, "class", "item");
	ATTRIBUTE(page, "id", item_anchor(pen->verdict, item, pen->arena));
	put_title(pen, item);
	OPEN(page, "p");
	ATTRIBUTE(page, "class", "finding");
	markup_text(page, item->finding);
	CLOSE(page, "p");
	put_source_line(pen, item);
}

static void put_further_place(Pen *pen, const Finding *item, uint32_t number)
{
	const Spot *spot = &item->spot[number];
	OPEN(pen->page, "li");
	put_span(pen->page, "letter", place_letter(number, pen->arena));
	put_place_text(pen, &spot->place);
	markup_text(pen->page, " ");
	markup_text(pen->page, item_where(item, spot, pen->arena));
	CLOSE(pen->page, "li");
}

void end_item(Pen *pen, const Finding *item)
{
	Markup *page = pen->page;
	pen_gap(pen);
	uint32_t shown = item->spots < MOST_PLACES ? item->spots : MOST_PLACES;
	if (shown > 1) {
		OPEN(page, "p");
		ATTRIBUTE(page, "class", "places");
		markup_text(page, "The same at:");
		CLOSE(page, "p");
		OPEN(page, "ul");
		ATTRIBUTE(page, "class", "places");
		for (uint32_t i = 1; i < shown; i++)
			put_further_place(pen, item, i);
		CLOSE(page, "ul");
	}
	if (shown < item->spots)
		pen_say(pen, arena_printf(pen->arena, "and %u more places", item->spots - shown));
	CLOSE(page, "article");
}
