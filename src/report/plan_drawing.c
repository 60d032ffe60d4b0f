/* SPDX-License-Identifier: MIT
 * The roof plan to scale: one inch of paper is a round number of feet, as on an engineer's ruler, where the page is printed as it
 * is.
 */
#include "plan_drawing.h"

#include "number.h"

#include <math.h>
#include <string.h>

enum { LEFT = 72, RIGHT = 128, TOP = 58, MOST_HIGH = 430, LEGEND_ROW = 36, LEGEND_COLUMNS = 4 };

At on_plan(const PlanSheet *plan, PlanPoint at)
{
	return (At){ plan->corner.x + at.along_ft * plan->scale, plan->corner.y + (plan->area->plan.width_ft - at.up_ft) * plan->scale };
}

Box text_box(At at, TextAnchor anchor, double width)
{
	double left = anchor == TEXT_FROM ? at.x : anchor == TEXT_AROUND ? at.x - width / 2 : at.x - width;
	return (Box){ left - 2, at.y - PLAN_TEXT, left + width + 2, at.y + 3 };
}

/* The largest scale at which the roof fits on the sheet. */
static double feet_to_an_inch(const RoofPlan *plan)
{
	static const double feet[] = { 1, 2, 4, 5, 8, 10, 15, 20, 30, 40, 50, 60, 80, 100, 150, 200, 300, 400, 500, 600, 800, 1000 };
	size_t last = sizeof feet / sizeof *feet - 1;
	double wide = SVG_WIDTH - LEFT - RIGHT, high = MOST_HIGH;
	for (size_t i = 0; i < last; i++)
		if (plan->length_ft * SVG_INCH / feet[i] <= wide && plan->width_ft * SVG_INCH / feet[i] <= high)
			return feet[i];
	return feet[last];
}

/* ---- legend ---- */

static uint32_t shown_zones(const PlanSheet *plan)
{
	return plan->area->plan.layout == LAYOUTS ? 0 : plan->area->zones;
}

static double legend_height(const PlanSheet *plan)
{
	return LEGEND_ROW * (double)((shown_zones(plan) + LEGEND_COLUMNS - 1) / LEGEND_COLUMNS);
}

static void put_legend_entry(PlanSheet *plan, const DrawnZone *zone, int hatch, At at)
{
	const Sight *sight = plan->sight;
	const Zone *row = zone->at->row;
	Markup *page = sight->page;
	OPEN(page, "rect");
	ATTRIBUTE(page, "class", "zone");
	ATTRIBUTE(page, "x", svg_number(sight->arena, at.x));
	ATTRIBUTE(page, "y", svg_number(sight->arena, at.y));
	ATTRIBUTE(page, "width", "30");
	ATTRIBUTE(page, "height", "24");
	ATTRIBUTE(page, "fill", hatch_fill(hatch, sight->arena));
	CLOSE(page, "rect");
	const char *places = is_value(&row->places.given) ? row->places.text : "";
	TextStyle name = { "strong", TEXT_FROM, PLAN_TEXT, 128 }, line = { "plain", TEXT_FROM, PLAN_TEXT, 132 };
	svg_text(&plan->svg, &name, (At){ at.x + 36, at.y + 10 }, arena_printf(sight->arena, "zone %s: %s", zone_name(zone), places));
	const char *ratio = zone->ratio->state == FACT_KNOWN
		? arena_printf(sight->arena, "ratio %s", ratio_text(sight, zone->ratio->value)) : zone_verdict(zone);
	svg_text(&plan->svg, &line, (At){ at.x + 36, at.y + 23 }, arena_printf(sight->arena, "%s, %s", short_spacing(sight, zone),
		ratio));
}

static void put_legend(PlanSheet *plan, double top)
{
	const int *hatch = zone_hatches(plan->area, plan->sight->arena);
	for (uint32_t i = 0; i < shown_zones(plan); i++) {
		At at = { 4 + i % LEGEND_COLUMNS * 173, top + LEGEND_ROW * (double)(i / LEGEND_COLUMNS) };
		put_legend_entry(plan, &plan->area->zone[i], hatch[i], at);
	}
}

/* ---- scale ---- */

/* A bar of a round number of feet, about two inches long. */
static void put_scale(PlanSheet *plan, double top)
{
	Svg *svg = &plan->svg;
	Arena *arena = plan->sight->arena;
	double feet = plan->feet_per_inch * 2, length = feet * plan->scale;
	At left = { LEFT, top };
	svg_box(svg, "scale dark", left, (At){ length / 4, 5 });
	svg_box(svg, "scale", (At){ left.x + length / 4, top }, (At){ length / 4, 5 });
	svg_box(svg, "scale dark", (At){ left.x + length / 2, top }, (At){ length / 2, 5 });
	svg_line(svg, "scale-bar", (At){ left.x, top + 5 }, (At){ left.x + length, top + 5 });
	TextStyle style = { "plain", TEXT_AROUND, PLAN_TEXT, 0 };
	svg_text(svg, &style, (At){ left.x, top + 17 }, "0");
	svg_text(svg, &style, (At){ left.x + length / 2, top + 17 }, number_print(arena, feet / 2, 2));
	svg_text(svg, &style, (At){ left.x + length, top + 17 }, measure(plan->sight, feet, "ft"));
	style.anchor = TEXT_FROM;
	svg_text(svg, &style, (At){ left.x + length + 60, top + 8 }, arena_printf(arena,
		"Scale: 1 in = %s ft where this drawing is printed 7 in wide", number_print(arena, plan->feet_per_inch, 2)));
}

/* ---- the whole ---- */

static void draw(PlanSheet *plan)
{
	const RoofPlan *size = &plan->area->plan;
	At measures = { size->length_ft * plan->scale, size->width_ft * plan->scale };
	double bottom = plan->corner.y + measures.y;
	plan->svg.height = bottom + 104 + legend_height(plan);
	plan->room.within = (Box){ 2, 2, SVG_WIDTH - 2, bottom + 40 };
	svg_begin(&plan->svg, "plan", arena_printf(plan->sight->arena, "Roof plan of %s", plan->area->at->name));
	draw_zone_areas(plan);
	svg_box(&plan->svg, "roof", plan->corner, measures);
	draw_dimensions(plan);
	draw_openings(plan);
	draw_roof_lines(plan);
	draw_opening_names(plan);
	draw_zone_names(plan);
	put_scale(plan, bottom + 46);
	put_legend(plan, bottom + 98);
	svg_end(&plan->svg);
}

static const char *missing_measures(const DrawnArea *area)
{
	const RoofPlan *plan = &area->plan;
	if (plan->length_ft <= 0 && plan->width_ft <= 0)
		return "No plan: length and width are not stated.";
	if (plan->length_ft <= 0)
		return "No plan: the length is not stated.";
	return plan->width_ft <= 0 ? "No plan: the width is not stated." : NULL;
}

/* What the drawing goes by where the papers do not say. */
static void put_notes(const Sight *sight, const DrawnArea *area)
{
	const RoofArea *row = area->at->row;
	const Word *shape = &row->building.shape;
	Markup *page = sight->page;
	OPEN(page, "figcaption");
	ELEMENT(page, "p", arena_printf(sight->arena, "Slope %s, in plan %s by %s.", said_text(&row->building.slope_in_12.given,
		sight->arena),
		measure(sight, area->plan.length_ft, "ft"), measure(sight, area->plan.width_ft, "ft")));
	if (area->plan.layout == LAYOUTS)
		ELEMENT(page, "p", arena_printf(sight->arena, "No zones are drawn: %s.", area->why_no_zones));
	if (!is_value(&shape->given) || is_word(shape, "other"))
		ELEMENT(page, "p", "The shape of the roof is not told: its outline alone is drawn, as a rectangle.");
	else if (is_word(shape, "flat"))
		ELEMENT(page, "p", "Which way a flat roof falls is not stated: no slope arrow is drawn.");
	if (row->penetrations.of.given.said == SAID_VALUE && (is_word(shape, "gable") || is_word(shape, "hip")))
		ELEMENT(page, "p", "Openings are measured from the eave below them, in plan; on which plane they lie is not stated: they are "
			"drawn on the lower one. A number in plain type is that of an opening in the table below.");
	CLOSE(page, "figcaption");
}

void put_plan(const Sight *sight, const DrawnArea *area)
{
	const char *missing = missing_measures(area);
	if (missing != NULL) {
		ELEMENT(sight->page, "p", missing);
		return;
	}
	PlanSheet plan = { .svg = { sight->page, sight->arena, SVG_WIDTH, 0 }, .sight = sight, .area = area, .row = area->at->row };
	plan.feet_per_inch = feet_to_an_inch(&area->plan);
	plan.scale = SVG_INCH / plan.feet_per_inch;
	plan.corner = (At){ LEFT, TOP };
	OPEN(sight->page, "figure");
	draw(&plan);
	put_notes(sight, area);
	CLOSE(sight->page, "figure");
}
