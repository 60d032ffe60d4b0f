/* SPDX-License-Identifier: MIT
 * The letter: head, items grouped by roof area with the whole package first, foot. A reviewer could send it as it is. Before a
 * bid the items are grouped by what an estimator does about them.
 */
#include "formats.h"
#include "text.h"

#include <stdlib.h>

/* The roof area an item stands in: 0 for the whole package. */
typedef struct {
	uint32_t area, number;
} Filed;

static const Case *area_of(const Finding *item)
{
	const Case *where = item->spot[0].where;
	return where != NULL ? case_outward(where, KIND_roof_area) : NULL;
}

static int by_area(const void *a, const void *b)
{
	const Filed *x = a, *y = b;
	if (x->area != y->area)
		return x->area < y->area ? -1 : 1;
	return (x->number > y->number) - (x->number < y->number);
}

static const Filed *file_items(const Verdict *verdict, Arena *arena)
{
	Filed *filed = TAKE(arena, Filed, verdict->items);
	for (uint32_t i = 0; i < verdict->items; i++) {
		const Case *area = area_of(&verdict->item[i]);
		filed[i] = (Filed){ area != NULL ? area->order + 1 : 0, i };
	}
	qsort(filed, verdict->items, sizeof *filed, by_area);
	return filed;
}

static void put_heading(Pen *pen, const Finding *item)
{
	const Case *area = area_of(item);
	if (area == NULL)
		PEN_HEADING(pen, "WHOLE PACKAGE");
	else
		pen_area(pen, area->name);
}

static void put_left_out(Pen *pen, const Verdict *verdict, Arena *arena)
{
	if (verdict->left_out == 0)
		return;
	pen_gap(pen);
	pen_say(pen, arena_printf(arena, "%u more items are not listed. Mend these first and run again.", verdict->left_out));
}

/* Where rounds are followed, what is closed is one line at the end. */
static bool is_closed(const Verdict *verdict, const Finding *item)
{
	return verdict->earlier != NULL && item_state(item) == ITEM_CLOSED;
}

static void put_closed(Pen *pen, const Verdict *verdict, Arena *arena)
{
	uint32_t count = 0;
	for (uint32_t i = 0; i < verdict->items; i++) {
		const Finding *item = &verdict->item[i];
		if (!is_closed(verdict, item))
			continue;
		if (count++ == 0)
			PEN_HEADING(pen, "CLOSED");
		const char *why = item->disposition != NULL ? item->disposition : item->note != NULL ? item->note : "closed";
		pen_item_line(pen, item, arena_printf(arena, "%s  %s  [%s]: in round %u: %s", item_number(item, arena),
			item_where(item, &item->spot[0], arena), item->code, item->settled, why));
	}
}

static void put_by_area(Pen *pen, const Verdict *verdict, Arena *arena)
{
	const Filed *filed = file_items(verdict, arena);
	uint32_t area = UINT32_MAX;
	for (uint32_t i = 0; i < verdict->items; i++) {
		const Finding *item = &verdict->item[filed[i].number];
		if (is_closed(verdict, item))
			continue;
		if (filed[i].area != area)
			put_heading(pen, item);
		area = filed[i].area;
		pen_gap(pen);
		put_item(pen, verdict, item, arena);
	}
	put_left_out(pen, verdict, arena);
	put_closed(pen, verdict, arena);
}

/* Each group is named even where nothing stands in it, so that the estimator need not look for it. */
static void put_bid_group(Pen *pen, const Verdict *verdict, BidGroup group, Arena *arena)
{
	static const char *const headings[BID_GROUPS] = { "CANNOT BE MET", "WILL COST MONEY", "ASK BEFORE BID" };
	const Filed *filed = file_items(verdict, arena);
	uint32_t found = 0;
	pen_heading(pen, headings[group]);
	for (uint32_t i = 0; i < verdict->items; i++) {
		const Finding *item = &verdict->item[filed[i].number];
		if (bid_group(item) != group)
			continue;
		pen_gap(pen);
		put_item(pen, verdict, item, arena);
		found++;
	}
	if (found == 0)
		pen_line(pen, "nothing found");
}

static void put_bid(Pen *pen, const Verdict *verdict, Arena *arena)
{
	for (int group = 0; group < BID_GROUPS; group++)
		put_bid_group(pen, verdict, (BidGroup)group, arena);
	put_left_out(pen, verdict, arena);
}

void put_items(Pen *pen, const Verdict *verdict, Arena *arena)
{
	if (verdict->stage == STAGE_bid && !verdict->broken_file)
		put_bid(pen, verdict, arena);
	else if (verdict->items > 0)
		put_by_area(pen, verdict, arena);
}

void write_text(Out *out, const Verdict *verdict, Arena *arena)
{
	Pen pen = { .out = out, .verdict = verdict, .arena = arena };
	put_head(&pen, verdict, arena);
	put_items(&pen, verdict, arena);
	put_foot(&pen, verdict, arena);
}
