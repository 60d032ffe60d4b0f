/* SPDX-License-Identifier: MIT
 * The letter: head, items grouped by roof area with the whole package first, foot. A reviewer could send it as it is.
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

static void put_heading(Out *out, const Finding *item)
{
	const Case *area = area_of(item);
	if (area == NULL) {
		SAY(out, "\nWHOLE PACKAGE\n");
		return;
	}
	SAY(out, "\nROOF AREA: ");
	put_cut(out, area->name, PAGE_WIDTH - 11);
	SAY(out, "\n");
}

static void put_items(Out *out, const Verdict *verdict, Arena *arena)
{
	const Filed *filed = file_items(verdict, arena);
	for (uint32_t i = 0; i < verdict->items; i++) {
		const Finding *item = &verdict->item[filed[i].number];
		if (i == 0 || filed[i].area != filed[i - 1].area)
			put_heading(out, item);
		SAY(out, "\n");
		put_item(out, verdict, item, arena);
	}
	if (verdict->left_out > 0) {
		SAY(out, "\n");
		put_count(out, verdict->left_out);
		SAY(out, " more items are not listed. Mend these first and run again.\n");
	}
}

void write_text(Out *out, const Verdict *verdict, Arena *arena)
{
	put_head(out, verdict, arena);
	if (verdict->items > 0)
		put_items(out, verdict, arena);
	put_foot(out, verdict, arena);
}
