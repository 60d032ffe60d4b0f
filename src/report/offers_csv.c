/* SPDX-License-Identifier: MIT
 * The options as a table for spreadsheets: one line a construction and zone, one line a place and item.
 */
#include "offers_page.h"

#include "number.h"

static void put_cell(Out *out, const char *text, bool first)
{
	if (first)
		SAY(out, "\"");
	else
		SAY(out, ",\"");
	put(out, text != NULL ? text : "");
	SAY(out, "\"");
}

static void put_zone(Out *out, const Construction *made, uint32_t number, uint32_t zone, Arena *arena)
{
	put_cell(out, made->area->name, true);
	put_cell(out, "construction", false);
	put_cell(out, arena_printf(arena, "%u", number), false);
	put_cell(out, made->class_listing != NULL ? made->class_listing->listing.text : NULL, false);
	put_cell(out, made->capacity_listing->listing.text, false);
	put_cell(out, made->panel, false);
	put_cell(out, made->clip, false);
	put_cell(out, made->fastener, false);
	put_cell(out, number_shortest(arena, made->per_clip), false);
	put_cell(out, made->zone[zone].zone, false);
	put_cell(out, number_shortest(arena, made->zone[zone].spacing_in), false);
	put_cell(out, made->zone[zone].binds, false);
	SAY(out, "\r\n");
}

static void put_choice(Out *out, const PlaceOffer *choice, const char *item)
{
	put_cell(out, choice->area->name, true);
	put_cell(out, choice->kind, false);
	put_cell(out, choice->where, false);
	for (int i = 0; i < 4; i++)
		put_cell(out, NULL, false);
	put_cell(out, item, false);
	for (int i = 0; i < 4; i++)
		put_cell(out, NULL, false);
	SAY(out, "\r\n");
}

void write_offers_csv(Out *out, const Page *page, Arena *arena)
{
	const Offers *offers = page->offers;
	SAY(out, "area,kind,number or place,class,capacity,panel,clip,item,per clip,zone,greatest spacing [in],binds\r\n");
	for (uint32_t i = 0; i < offers->constructions; i++)
		for (uint32_t z = 0; z < offers->construction[i].zones; z++)
			put_zone(out, &offers->construction[i], i + 1, z, arena);
	for (uint32_t i = 0; i < offers->choices; i++)
		for (uint32_t n = 0; n < offers->choice[i].items; n++)
			put_choice(out, &offers->choice[i], offers->choice[i].item[n]);
}
