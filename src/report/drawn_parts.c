/* SPDX-License-Identifier: MIT
 * The small pieces that tables and drawings of a roof area share.
 */
#include "drawn.h"

#include "number.h"
#include "svg.h"

#include <math.h>
#include <string.h>

void put_kind(Markup *page, const char *name, const char *kind, const char *text)
{
	markup_open(page, name);
	ATTRIBUTE(page, "class", kind);
	markup_text(page, text);
	markup_close(page, name);
}

void begin_table(Markup *page, const char *caption, const char *const head[], int columns)
{
	OPEN(page, "div"); /* scrolls where the screen is narrow */
	ATTRIBUTE(page, "class", "wide");
	markup_table(page, caption, head, (size_t)columns);
}

void end_table(Markup *page)
{
	markup_table_end(page);
	CLOSE(page, "div");
}

const char *measure(const Sight *sight, double value, const char *unit)
{
	const char *text = arena_printf(sight->arena, "%s %s", number_print(sight->arena, value, number_digits(&value, 1)), unit);
	const char *si = sight->verdict->si ? si_text(value, unit, sight->arena) : NULL;
	return si != NULL ? arena_printf(sight->arena, "%s (%s)", text, si) : text;
}

const char *fact_text(const Sight *sight, const Fact *fact, const char *unit)
{
	if (fact->state == FACT_KNOWN)
		return measure(sight, fact->value, unit);
	return fact->state == FACT_WAITING ? "waits" : fact->state == FACT_REFUSED ? "refused" : "-";
}

const char *ratio_text(const Sight *sight, double ratio)
{
	double told[] = { ratio, 1 };
	int digits = ratio > 0.995 && ratio < 1.005 && !number_same(ratio, 1) ? number_digits(told, 2) : 2;
	return arena_printf(sight->arena, "%.*f", digits, ratio);
}

const char *zone_verdict(const DrawnZone *zone)
{
	const Fact *ratio = zone->ratio;
	if (ratio->state == FACT_KNOWN && ratio->borrowed)
		return "not judged: the assembly differs from the tested one";
	if (ratio->state == FACT_KNOWN)
		return ratio->value <= 1 || number_same(ratio->value, 1) ? "holds" : "does not hold";
	if (ratio->state == FACT_WAITING)
		return "not judged";
	return ratio->state == FACT_REFUSED ? "not judged" : "no ratio";
}

const char *zone_name(const DrawnZone *zone)
{
	return ((const Zone *)zone->at->row)->name.text;
}

const char *spacing_text(const Sight *sight, const DrawnZone *zone)
{
	const Number *spacing = &((const Zone *)zone->at->row)->spacing_in;
	return is_value(&spacing->given) ? measure(sight, spacing->value, "in") : said_text(&spacing->given, sight->arena);
}

const char *short_spacing(const Sight *sight, const DrawnZone *zone)
{
	const Number *spacing = &((const Zone *)zone->at->row)->spacing_in;
	if (!is_value(&spacing->given))
		return said_text(&spacing->given, sight->arena);
	return arena_printf(sight->arena, "%s in", number_print(sight->arena, spacing->value, number_digits(&spacing->value, 1)));
}

const int *zone_hatches(const DrawnArea *area, Arena *arena)
{
	int *hatch = TAKE(arena, int, area->zones + 1), seen[4] = { 0 };
	for (uint32_t i = 0; i < area->zones; i++) {
		const char *name = zone_name(&area->zone[i]);
		int family = *name >= '1' && *name <= '3' ? *name - '0' : 0;
		hatch[i] = hatch_of(name, seen[family]++);
	}
	return hatch;
}

const char *numbers_at(const Sight *sight, const Case *where)
{
	enum { MOST_NUMBERS = 6 };
	size_t count;
	const Standing *at = items_at(sight->items, where, &count);
	const char *numbers = NULL;
	for (size_t i = 0; i < count && i < MOST_NUMBERS; i++) {
		const char *number = item_number(at[i].item, sight->arena);
		const char *named = number != NULL ? number : at[i].item->code;
		numbers = numbers == NULL ? named : arena_printf(sight->arena, "%s, %s", numbers, named);
	}
	return count > MOST_NUMBERS ? arena_printf(sight->arena, "%s and %u more", numbers, (unsigned)(count - MOST_NUMBERS)) : numbers;
}

const char *clearance_of(const Sight *sight, const Case *part)
{
	const PartLine *line = part_line_at(sight->items, part);
	const char *numbers = numbers_at(sight, part);
	if (line != NULL)
		return clearance_text(line, sight->arena);
	return numbers != NULL ? arena_printf(sight->arena, "items here: %s", numbers) : "not judged one by one";
}

/* Records of a kind stand in the order of their roof areas. */
const Case *first_in(const DrawnArea *area, RecordKind kind)
{
	const Cases *all = area->at->all;
	size_t low = 0, high = all->of[kind].count;
	while (low < high) {
		size_t middle = low + (high - low) / 2;
		if (all->of[kind].at[middle]->up->order < area->at->order)
			low = middle + 1;
		else
			high = middle;
	}
	const Case *at = low < all->of[kind].count ? all->of[kind].at[low] : NULL;
	return at != NULL && at->up == area->at ? at : NULL;
}
