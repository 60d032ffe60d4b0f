/* SPDX-License-Identifier: MIT
 * Quantities of a roof area: panels by plan and by schedule, clips by zone. Only roofs whose panels are all of one length are
 * counted from the plan; for others the panel schedule says what is cut.
 */
#include "below.h"
#include "fetch.h"
#include "formula.h"
#include "text.h"
#include "wind.h"

#include <math.h>

double roof_area_planes_one(Case *area)
{
	const char *shape = GIVEN(area, roof_area, RoofArea, building.shape);
	if (!ready(area))
		return 0;
	if (same_text(shape, "gable"))
		return 2;
	if (same_text(shape, "monoslope"))
		return 1;
	return REFUSE(area, "panels of this roof shape differ in length: only a panel schedule counts them");
}

double roof_area_slope_length_ft(Case *area)
{
	double planes = OF(area, roof_area_planes_one), width = GIVEN(area, roof_area, RoofArea, building.width_ft);
	double slope = GIVEN(area, roof_area, RoofArea, building.slope_in_12);
	double overhang = GIVEN_OR(area, roof_area, RoofArea, building.overhang_ft, 0);
	const Number *said = &((const RoofArea *)outward(area, KIND_roof_area)->row)->building.overhang_ft;
	const char *run = is_value(&said->given) ? "{building.width} / {planes} + {building.overhang}" : "{building.width} / {planes}";
	area->now->formula = arena_printf(area->all->arena, "(%s) * (1 + ({building.slope} / 12) ^ 2) ^ 0.5", run);
	return ready(area) ? slope_length_ft(width / planes + overhang, slope) : 0;
}

double roof_area_panels_by_plan_one(Case *area)
{
	double planes = OF(area, roof_area_planes_one), length = GIVEN(area, roof_area, RoofArea, building.length_ft);
	double cover = GIVEN(area, roof_area, RoofArea, panel.width_in);
	return ready(area) ? planes * pieces_to_cover(length * 12, cover) : 0;
}

double roof_area_panel_feet_by_plan_ft(Case *area)
{
	double panels = OF(area, roof_area_panels_by_plan_one), length = OF(area, roof_area_slope_length_ft);
	return ready(area) ? panels * length : 0;
}

/* ---- the schedule ---- */

static const char by_schedule[] = "panels of all lengths of the panel schedule";

typedef struct {
	double panels, feet;
} Scheduled;

static Scheduled fetch_schedule(Case *area)
{
	Scheduled all = { 0, 0 };
	if (fetch_list(area, area, offsetof(RoofArea, panel_schedule)) == NULL)
		return all;
	for (Case *run = first_below(area, KIND_panel_run); run != NULL; run = run->next) {
		double count = GIVEN_AT(area, run, PanelRun, count_one), length = GIVEN_AT(area, run, PanelRun, length_ft);
		all.panels += count;
		all.feet += count * length;
		area->now->formula = by_schedule;
	}
	return all;
}

double roof_area_panels_one(Case *area)
{
	Scheduled all = fetch_schedule(area);
	return first_below(area, KIND_panel_run) != NULL ? all.panels : OF(area, roof_area_panels_by_plan_one);
}

double roof_area_panel_feet_ft(Case *area)
{
	Scheduled all = fetch_schedule(area);
	return first_below(area, KIND_panel_run) != NULL ? all.feet : OF(area, roof_area_panel_feet_by_plan_ft);
}

/* ---- the coil ---- */

double roof_area_metal_weight_psf(Case *area)
{
	const char *metal = GIVEN(area, roof_area, RoofArea, panel.metal);
	const Reference *reference = area->all->reference;
	for (uint32_t i = 0; ready(area) && i < reference->metals.count; i++) {
		const MetalRow *row = &reference->metals.row[i];
		if (same_text(row->metal.text, metal))
			return CONSTANT(area, "metals.csv weight of", row->metal.text, row->weight_an_inch_thick_psf.value, row->weight_source.text);
	}
	return ready(area) ? REFUSE(area, "the table of metals has no row for the panel's metal") : 0;
}

double roof_area_coil_weight_lb(Case *area)
{
	double feet = OF(area, roof_area_panel_feet_ft), width = GIVEN(area, roof_area, RoofArea, panel.coil_width_in);
	double thickness = GIVEN(area, roof_area, RoofArea, panel.thickness_in), weight = OF(area, roof_area_metal_weight_psf);
	return ready(area) ? feet * width / 12 * thickness * weight : 0;
}

/* ---- against the schedule ---- */

double roof_area_schedule_difference_percent(Case *area)
{
	if (fetch_list(area, area, offsetof(RoofArea, panel_schedule)) != NULL && first_below(area, KIND_panel_run) == NULL)
		return SKIP(area, "no panel schedule is given");
	double cut = OF(area, roof_area_panel_feet_ft), by_plan = OF(area, roof_area_panel_feet_by_plan_ft);
	return ready(area) ? 100 * fabs(cut / by_plan - 1) : 0;
}

/* ---- clips ---- */

enum { MOST_ZONES = 16 };

/* The zones of the area with their spacings; the number of this one, or -1. */
static int fetch_zones_of(Case *zone, ZoneSpacing spacing[MOST_ZONES], size_t *count)
{
	int found = -1;
	*count = 0;
	for (Case *at = first_below(area_of(zone), KIND_zone); at != NULL && *count < MOST_ZONES; at = at->next) {
		const ZoneHere *here = at->row;
		double laid = GIVEN_AT(zone, at, Zone, spacing_in);
		if (here->zone == NULL)
			continue;
		found = at == zone ? (int)*count : found;
		spacing[(*count)++] = (ZoneSpacing){ here->zone->zone.text, laid };
	}
	return found;
}

static double count_here(Case *zone, bool whole_panels)
{
	ZoneSpacing spacing[MOST_ZONES];
	size_t zones;
	double clips[MOST_ZONES] = { 0 };
	const ZoneHere *here = fetch_zone(zone);
	Plane plane = { .whole_panels = whole_panels };
	double planes = OF(zone, roof_area_planes_one);
	plane.alone = planes == 1;
	plane.plan.length_ft = GIVEN(zone, roof_area, RoofArea, building.length_ft);
	plane.plan.width_ft = GIVEN(zone, roof_area, RoofArea, building.width_ft);
	plane.slope_in_12 = GIVEN(zone, roof_area, RoofArea, building.slope_in_12);
	plane.overhang_ft = GIVEN_OR(zone, roof_area, RoofArea, building.overhang_ft, 0);
	plane.panel_width_in = GIVEN(zone, roof_area, RoofArea, panel.width_in);
	double height = fetch_height_ft(zone), low = fetch_low_rise_ft(zone);
	int number = fetch_zones_of(zone, spacing, &zones);
	if (!ready(zone))
		return 0;
	plane.plan.layout = layout_named(here->figure->layout.text);
	plane.plan.strip_ft = plane.plan.layout != LAYOUTS ? layout_strip_ft(&plane.plan, height, low) : 0;
	if (number < 0 || plane.plan.layout == LAYOUTS || !count_clips(&plane, spacing, zones, clips))
		return REFUSE(zone, "how the zones of this figure lie is not confirmed");
	return planes * clips[number];
}

double zone_clips_one(Case *zone)
{
	return count_here(zone, false);
}

double zone_clips_laid_one(Case *zone)
{
	return count_here(zone, true);
}
