/* SPDX-License-Identifier: MIT
 * The options as a table for spreadsheets: one line a construction and zone, one line a place and item.
 */
#include "offers_page.h"

#include "cells.h"
#include "number.h"

static void put_zone(Cells *row, const Construction *made, uint32_t number, uint32_t zone, Arena *arena)
{
	cell(row, made->area->name);
	cell(row, "construction");
	cell_number(row, arena_printf(arena, "%u", number));
	cell(row, made->class_listing != NULL ? made->class_listing->listing.text : NULL);
	cell(row, made->capacity_listing->listing.text);
	cell(row, made->panel);
	cell(row, made->clip);
	cell(row, made->fastener);
	cell_number(row, number_shortest(arena, made->per_clip));
	cell(row, made->zone[zone].zone);
	cell_number(row, number_shortest(arena, made->zone[zone].spacing_in));
	cell(row, made->zone[zone].binds);
	row_end(row);
}

static void put_choice(Cells *row, const PlaceOffer *choice, const char *item)
{
	cell(row, choice->area->name);
	cell(row, choice->kind);
	cell(row, choice->where);
	for (int i = 0; i < 4; i++)
		cell(row, NULL);
	cell(row, item);
	for (int i = 0; i < 4; i++)
		cell(row, NULL);
	row_end(row);
}

/* An area with nothing on offer says so, and why, in the last column. */
static void put_none(Cells *row, const Case *area, const char *why)
{
	cell(row, area->name);
	cell(row, "no construction");
	for (int i = 0; i < 9; i++)
		cell(row, NULL);
	cell(row, why);
	row_end(row);
}

void write_offers_csv(Out *out, const Page *page, Arena *arena)
{
	const Offers *offers = page->offers;
	SAY(out, "area,kind,number or place,class,capacity,panel,clip,item,per clip,zone,greatest spacing [in],binds\r\n");
	Cells row = { .out = out };
	for (uint32_t i = 0; i < offers->constructions; i++)
		for (uint32_t z = 0; z < offers->construction[i].zones; z++)
			put_zone(&row, &offers->construction[i], i + 1, z, arena);
	const Cases *cases = offers->verdict->cases;
	for (uint32_t i = 0; i < cases->of[KIND_roof_area].count; i++)
		if (offers->none[i] != NULL)
			put_none(&row, cases->of[KIND_roof_area].at[i], offers->none[i]);
	for (uint32_t i = 0; i < offers->choices; i++)
		for (uint32_t n = 0; n < offers->choice[i].items; n++)
			put_choice(&row, &offers->choice[i], offers->choice[i].item[n]);
}
