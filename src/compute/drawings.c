/* SPDX-License-Identifier: MIT
 * What is drawn of each roof area: facts that were worked out for its rules, set side by side.
 */
#include "drawing.h"

#include "below.h"
#include "capacity.h"
#include "pipeline.h"

#include <math.h>

typedef struct {
	Verdict *verdict;
	Arena *arena;
	uint32_t next; /* comparison of the sorted ones */
	const DrawnComparison *compared;
	uint32_t comparisons;
} Drawer;

/* ---- zones ---- */

/* The first fields the ratio waits for. */
static const char *waits_of(const Case *zone, const Fact *ratio, Arena *arena)
{
	enum { MOST_NAMED = 3 };
	const char *named = NULL;
	const Field *before[MOST_NAMED] = { NULL };
	int count = 0;
	if (ratio->state != FACT_WAITING)
		return NULL;
	const Use *use = fact_waits(zone->all, ratio, NULL);
	for (; use != NULL && count < MOST_NAMED; use = fact_waits(zone->all, ratio, use)) {
		bool is_known = use->what.field == NULL;
		for (int i = 0; i < count; i++)
			is_known |= before[i] == use->what.field;
		if (is_known)
			continue;
		before[count++] = use->what.field;
		const char *title = use->what.field->title;
		named = named == NULL ? title : arena_printf(arena, "%s; %s", named, title);
	}
	return named != NULL ? named : "what is not stated";
}

static DrawnZone draw_zone(Case *zone, Arena *arena)
{
	return (DrawnZone){
		.at = zone,
		.plan_area = fact_of(zone, FACT_zone_plan_area),
		.strength = fact_of(zone, FACT_zone_strength_uplift),
		.computed = fact_of(zone, FACT_zone_asd_uplift),
		.letter = fact_of(zone, FACT_zone_letter_uplift),
		.demand = fact_of(zone, FACT_zone_demand),
		.tested = fact_of(zone, FACT_zone_tested_uplift),
		.allowable = fact_of(zone, FACT_zone_allowable_uplift),
		.ratio = fact_of(zone, FACT_zone_uplift_ratio),
		.class_ratio = fact_of(zone, FACT_zone_class_spacing_ratio),
		.fastening_ratio = fact_of(zone, FACT_zone_fastening_ratio),
		.waits = waits_of(zone, fact_of(zone, FACT_zone_uplift_ratio), arena),
	};
}

static void draw_zones(DrawnArea *drawn, Arena *arena)
{
	uint32_t count = 0;
	for (Case *zone = first_below(drawn->at, KIND_zone); zone != NULL; zone = zone->next)
		count++;
	DrawnZone *made = TAKE(arena, DrawnZone, count);
	for (Case *zone = first_below(drawn->at, KIND_zone); zone != NULL; zone = zone->next)
		made[drawn->zones++] = draw_zone(zone, arena);
	drawn->zone = made;
}

/* ---- the plan ---- */

static const char *why_no_zones(const DrawnArea *drawn, const ZoneHere *here)
{
	if (drawn->zones == 0)
		return "the clip spacing is not stated";
	if (here->figure == NULL)
		return here->why != NULL ? here->why : "the wind or the shape of the roof is not stated";
	return "how the zones of this figure lie is not confirmed";
}

/* The plan that the areas of the zones were worked out on. */
static void draw_plan(DrawnArea *drawn)
{
	const RoofArea *row = drawn->at->row;
	const Building *building = &row->building;
	const ZoneHere *here = drawn->zones > 0 ? drawn->zone[0].at->row : NULL;
	const Cases *all = drawn->at->all;
	drawn->plan.length_ft = is_value(&building->length_ft.given) ? building->length_ft.value : 0;
	drawn->plan.width_ft = is_value(&building->width_ft.given) ? building->width_ft.value : 0;
	drawn->plan.layout = here != NULL && here->figure != NULL ? layout_named(here->figure->layout.text) : LAYOUTS;
	drawn->why_no_zones = why_no_zones(drawn, here);
	const Fact *area = drawn->zones > 0 ? drawn->zone[0].plan_area : NULL;
	if (drawn->plan.layout == LAYOUTS)
		return;
	if (area->state != FACT_KNOWN) {
		drawn->plan.layout = LAYOUTS;
		drawn->why_no_zones = area->reason != NULL ? area->reason : "the measures they hang on are not stated";
		return;
	}
	const Fact *height = fact_of((Case *)drawn->at, FACT_roof_area_design_height);
	const WindConstant *high = wind_constant(all->reference, all->submittal->wind.standard.text, "high_above");
	drawn->plan.strip_ft = layout_strip_ft(&drawn->plan, height->value, high != NULL ? high->value_one.value : HUGE_VAL);
}

/* ---- tested curves ---- */

static bool is_on_capacity(const Case *test)
{
	const Word *named = &((const AreaTest *)test->row)->role;
	return test->listed != NULL && (is_word(named, "capacity") || is_word(named, "local approval"));
}

static void draw_curves(DrawnArea *drawn, Arena *arena)
{
	const Criteria *criteria = drawn->at->all->criteria;
	uint32_t count = 0;
	for (Case *test = first_below(drawn->at, KIND_test); test != NULL; test = test->next)
		count += is_on_capacity(test);
	DrawnCurve *made = TAKE(arena, DrawnCurve, count);
	for (Case *test = first_below(drawn->at, KIND_test); test != NULL; test = test->next) {
		const Curve *curve = is_on_capacity(test) ? curve_of(test) : NULL;
		if (curve != NULL)
			made[drawn->curves++] = (DrawnCurve){ test->listed, curve->test, curve->row, curve->count,
				fact_of(test, FACT_test_safety_factor) };
	}
	drawn->curve = made;
	drawn->how = interpolation_of(criteria);
}

/* ---- submitted beside listed ---- */

/* They stand in the order of the areas. */
static void take_comparisons(Drawer *drawer)
{
	const Cases *all = drawer->verdict->cases;
	DrawnComparison *made = TAKE(drawer->arena, DrawnComparison, all->of[KIND_comparison].count);
	for (uint32_t i = 0; i < all->of[KIND_comparison].count; i++) {
		Case *at = all->of[KIND_comparison].at[i];
		const Compared *row = at->row;
		if (is_word(&row->record.with, "listing") && row->test != NULL)
			made[drawer->comparisons++] = (DrawnComparison){ row, fact_of(at, FACT_comparison_holds) };
	}
	drawer->compared = made;
}

static void draw_comparisons(Drawer *drawer, DrawnArea *drawn)
{
	drawn->compared = drawer->compared + drawer->next;
	for (; drawer->next < drawer->comparisons && drawer->compared[drawer->next].row->test->up == drawn->at; drawer->next++)
		drawn->comparisons++;
}

/* ---- all areas ---- */

void draw_areas(Verdict *verdict, Arena *arena)
{
	const Cases *all = verdict->cases;
	if (verdict->broken_file || all->criteria == NULL)
		return;
	Drawer drawer = { .verdict = verdict, .arena = arena };
	take_comparisons(&drawer);
	DrawnArea *area = TAKE(arena, DrawnArea, all->of[KIND_roof_area].count);
	for (uint32_t i = 0; i < all->of[KIND_roof_area].count; i++) {
		DrawnArea *drawn = &area[i];
		const RoofArea *row = all->of[KIND_roof_area].at[i]->row;
		drawn->at = all->of[KIND_roof_area].at[i];
		drawn->is_excluded = is_value(&row->warranted.given) && !row->warranted.yes;
		draw_comparisons(&drawer, drawn);
		draw_zones(drawn, arena);
		draw_plan(drawn);
		draw_curves(drawn, arena);
	}
	Drawings *drawings = TAKE(arena, Drawings, 1);
	*drawings = (Drawings){ area, all->of[KIND_roof_area].count };
	verdict->drawings = drawings;
}
