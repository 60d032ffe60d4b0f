/* SPDX-License-Identifier: MIT
 * One line an item for editors: `file:line:column: ACTION: finding [CODE]`, further places of the same item behind it.
 */
#include "formats.h"
#include "parts.h"

enum { MOST_PLACES = 20 };

static void put_further_places(Out *out, const Verdict *verdict, const Finding *item)
{
	if (item->spots < 2)
		return;
	SAY(out, " (also ");
	uint32_t shown = item->spots < MOST_PLACES ? item->spots : MOST_PLACES;
	for (uint32_t i = 1; i < shown; i++) {
		const Place *place = &item->spot[i].place;
		if (i > 1)
			SAY(out, ", ");
		if (place->source != item->spot[0].place.source) {
			put(out, place_file(verdict, place));
			SAY(out, ":");
		}
		put_count(out, place_line(place));
		SAY(out, ":");
		put_count(out, place_column(place));
	}
	if (shown < item->spots) {
		SAY(out, " and ");
		put_count(out, item->spots - shown);
		SAY(out, " more");
	}
	SAY(out, ")");
}

/* Where earlier rounds are known: " 1.03 open since round 1: not judged again" */
static void put_state(Out *out, const Verdict *verdict, const Finding *item, Arena *arena)
{
	const char *number = item_number(item, arena);
	if ((verdict->earlier == NULL && item->note == NULL) || number == NULL)
		return;
	SAY(out, " ");
	put(out, number);
	SAY(out, " ");
	put(out, item_state_words(item_state(item)));
	if (item->note != NULL) {
		SAY(out, ": ");
		put(out, item->note);
	}
}

void write_lines(Out *out, const Verdict *verdict, Arena *arena)
{
	for (uint32_t i = 0; i < verdict->items; i++) {
		const Finding *item = &verdict->item[i];
		const Spot *spot = &item->spot[0];
		put_place(out, place_file(verdict, &spot->place), &spot->place);
		SAY(out, " ");
		put(out, item_heading(item));
		SAY(out, ": ");
		put(out, item->finding);
		SAY(out, " [");
		put(out, item->code);
		SAY(out, "]");
		put_state(out, verdict, item, arena);
		put_further_places(out, verdict, item);
		SAY(out, "\n");
	}
	if (verdict->left_out > 0) {
		Place none = { 0 };
		put_place(out, verdict->source->name, &none);
		SAY(out, " NOT REVIEWED: ");
		put_count(out, verdict->left_out);
		SAY(out, " more items are not listed\n");
	}
}
