/* SPDX-License-Identifier: MIT
 * The zones of a roof area as a table: what pulls, what holds, and the ratio as a bar whose end mark is what is allowed.
 */
#include "drawn.h"

#include "pen.h"
#include "svg.h"

#include <math.h>

/* The bar: full length 1.25, the mark at 1. */
enum { BAR_LENGTH = 100, BAR_ALLOWED = 80, BAR_HEIGHT = 12 };

static void put_bar(const Sight *sight, const Fact *ratio)
{
	Svg bar = { sight->page, sight->arena, BAR_LENGTH + 2, BAR_HEIGHT };
	double length = fmin(ratio->value * BAR_ALLOWED, BAR_LENGTH);
	const char *words = arena_printf(sight->arena, "ratio %s of 1 allowed", ratio_text(sight, ratio->value));
	svg_begin(&bar, "bar", words);
	svg_box(&bar, "empty", (At){ 0.5, 2 }, (At){ BAR_ALLOWED, BAR_HEIGHT - 4 });
	svg_box(&bar, ratio->value > 1 ? "full over" : "full", (At){ 0.5, 2 }, (At){ length, BAR_HEIGHT - 4 });
	svg_line(&bar, "allowed", (At){ BAR_ALLOWED + 0.5, 0 }, (At){ BAR_ALLOWED + 0.5, BAR_HEIGHT });
	svg_end(&bar);
}

static void put_swatch(const Sight *sight, int hatch)
{
	Svg swatch = { sight->page, sight->arena, 34, 18 };
	svg_begin(&swatch, "swatch", "hatching of the zone on the plan");
	OPEN(sight->page, "rect");
	ATTRIBUTE(sight->page, "class", "zone");
	ATTRIBUTE(sight->page, "x", "0.5");
	ATTRIBUTE(sight->page, "y", "0.5");
	ATTRIBUTE(sight->page, "width", "33");
	ATTRIBUTE(sight->page, "height", "17");
	ATTRIBUTE(sight->page, "fill", hatch_fill(hatch, sight->arena));
	CLOSE(sight->page, "rect");
	svg_end(&swatch);
}

static void put_name(const Sight *sight, const DrawnZone *zone, int hatch)
{
	Markup *page = sight->page;
	const Zone *row = zone->at->row;
	OPEN(page, "th");
	ATTRIBUTE(page, "scope", "row");
	if (is_value(&row->figure.given))
		put_swatch(sight, hatch);
	KIND_ELEMENT(page, "b", "zone-name", zone_name(zone));
	if (is_value(&row->places.given))
		KIND_ELEMENT(page, "span", "places", row->places.text);
	if (is_value(&row->places_not_named.given))
		KIND_ELEMENT(page, "span", "places", arena_printf(sight->arena, "no spacing named for %s", row->places_not_named.text));
	CLOSE(page, "th");
}

static void put_ratio(const Sight *sight, const DrawnZone *zone)
{
	Markup *page = sight->page;
	OPEN(page, "td");
	ATTRIBUTE(page, "class", "ratio");
	if (zone->ratio->state == FACT_KNOWN) {
		KIND_ELEMENT(page, "span", "figure", ratio_text(sight, zone->ratio->value));
		put_bar(sight, zone->ratio);
	} else {
		markup_text(page, "-");
	}
	CLOSE(page, "td");
}

static const char *verdict_text(const Sight *sight, const DrawnZone *zone)
{
	const char *words = zone_verdict(zone), *numbers = numbers_at(sight, zone->at);
	if (zone->waits != NULL)
		words = arena_printf(sight->arena, "%s: waits for %s", words, zone->waits);
	else if (zone->ratio->state != FACT_KNOWN && zone->ratio->reason != NULL)
		words = arena_printf(sight->arena, "%s: %s", words, zone->ratio->reason);
	return numbers != NULL ? arena_printf(sight->arena, "%s; items here: %s", words, numbers) : words;
}

static void put_row(const Sight *sight, const DrawnZone *zone, int hatch)
{
	Markup *page = sight->page;
	const char *number = sight->verdict->si ? "both" : "number", *strong = sight->verdict->si ? "both strong" : "number strong";
	OPEN(page, "tr");
	put_name(sight, zone, hatch);
	KIND_ELEMENT(page, "td", number, spacing_text(sight, zone));
	KIND_ELEMENT(page, "td", number, fact_text(sight, zone->letter, "psf"));
	KIND_ELEMENT(page, "td", number, fact_text(sight, zone->computed, "psf"));
	KIND_ELEMENT(page, "td", strong, fact_text(sight, zone->demand, "psf"));
	KIND_ELEMENT(page, "td", strong, fact_text(sight, zone->allowable, "psf"));
	put_ratio(sight, zone);
	OPEN(page, "td");
	put_linked(page, verdict_text(sight, zone), sight->verdict, sight->arena);
	CLOSE(page, "td");
	CLOSE(page, "tr");
}

void put_zone_table(const Sight *sight, const DrawnArea *area)
{
	static const char *const heads[] = { "Zone", "Clips at", "Letter", "Computed", "To hold", "Allowed", "Ratio", "Verdict" };
	enum { MOST_ROWS = 60 };
	if (area->zones == 0) {
		ELEMENT(sight->page, "p", arena_printf(sight->arena, "No zones: %s.", area->why_no_zones));
		return;
	}
	const int *hatch = zone_hatches(area, sight->arena);
	begin_table(sight->page, "Uplift by zone. All pressures are at allowable level (ASD); what is to be held is the greater of the "
		"sealed letter and the computed one; the ratio is that over what is allowed, and the mark at the end of its bar is 1.",
			heads, sizeof heads / sizeof *heads);
	for (uint32_t i = 0; i < area->zones && i < MOST_ROWS; i++)
		put_row(sight, &area->zone[i], hatch[i]);
	end_table(sight->page);
	if (area->zones > MOST_ROWS)
		ELEMENT(sight->page, "p", arena_printf(sight->arena, "and %u more zones", area->zones - MOST_ROWS));
}
