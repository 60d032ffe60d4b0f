/* SPDX-License-Identifier: MIT
 * The greatest clip spacing of each zone of an item, with what keeps it from being wider.
 */
#include "advising.h"
#include "facts.h"
#include "number.h"

#include <string.h>

static const Fact *greatest_of(const Finding *item, uint32_t spot)
{
	const Case *zone = item->spot[spot].where;
	bool is_zone = zone != NULL && zone->kind == KIND_zone;
	const Fact *fact = is_zone ? fact_of((Case *)zone, FACT_zone_greatest_spacing) : NULL;
	return fact != NULL && fact->state == FACT_KNOWN ? fact : NULL;
}

static const char *one_text(const Fact *fact, Arena *arena)
{
	return arena_printf(arena, "%s in (limited by %s)", number_shortest(arena, fact->value), fact->note);
}

/* One text where all places of the item have the same; NULL where a zone has none. */
const char *greatest_spacings(Advising *advising, const Finding *item)
{
	const char *all = NULL, *first = NULL;
	bool same = true;
	if (item->spots == 0 || item->spots > MOST_SPOTS)
		return NULL;
	for (uint32_t i = 0; i < item->spots; i++) {
		const Fact *fact = greatest_of(item, i);
		if (fact == NULL)
			return NULL;
		const char *text = one_text(fact, advising->arena);
		if (first == NULL)
			first = text;
		same &= strcmp(first, text) == 0;
		const char *before = all != NULL ? arena_printf(advising->arena, "%s, ", all) : "";
		all = arena_printf(advising->arena, "%s%s: %s", before, item->spot[i].where->name, text);
	}
	return same ? first : all;
}
