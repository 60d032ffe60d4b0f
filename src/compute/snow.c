/* SPDX-License-Identifier: MIT
 * Snow: whom it may fall on, what it drags along the slope, and whether clamps and the fixing of the panels hold that.
 *
 * Friction counts for nothing: wet snow on a warm panel has none to speak of.
 */
#include "below.h"
#include "fetch.h"
#include "formula.h"
#include "text.h"

#include <math.h>

double roof_area_snow_devices_one(Case *area)
{
	if (fetch_list(area, area, offsetof(RoofArea, accessories)) == NULL)
		return 0;
	double count = 0;
	for (Case *at = first_below(area, KIND_accessory); at != NULL; at = at->next) {
		const char *kind = GIVEN_AT(area, at, Accessory, kind);
		count += ready(area) && list_has(area->all->criteria, "snow devices", kind);
	}
	return count;
}

/* Where little snow falls nobody is asked what lies below the eaves. */
double roof_area_sheds_on_people_yes(Case *area)
{
	double snow = GIVEN(area, submittal, Submittal, project.ground_snow_psf);
	double from = CONSTANT(area, "criteria.yaml", "snow_area", area->all->criteria->edition.snow_area_psf.value, NULL);
	if (!ready(area) || snow < from)
		return 0;
	const char *below = GIVEN(area, roof_area, RoofArea, eave_over);
	return ready(area) && !same_text(below, "ground");
}

double roof_area_panel_run_ft(Case *area)
{
	double length = GIVEN(area, roof_area, RoofArea, panel.length_ft);
	double laps = GIVEN(area, roof_area, RoofArea, panel.end_laps_one);
	return ready(area) ? length * (1 + laps) : 0;
}

double roof_area_snow_drag_lb(Case *area)
{
	SnowStrip strip = {
		.snow_psf = GIVEN(area, roof_area, RoofArea, building.roof_snow_psf),
		.width_in = GIVEN(area, roof_area, RoofArea, panel.width_in),
		.run_ft = OF(area, roof_area_panel_run_ft),
		.slope_in_12 = GIVEN(area, roof_area, RoofArea, building.slope_in_12),
	};
	return ready(area) ? snow_drag_lb(&strip) : 0;
}

double roof_area_fixity_capacity_lb(Case *area)
{
	if (fetch_list(area, area, offsetof(RoofArea, fixed_at)) == NULL)
		return 0;
	double least = HUGE_VAL;
	for (Case *at = first_below(area, KIND_fixed_line); at != NULL; at = at->next)
		if (!same_text(GIVEN_AT(area, at, FixedLine, line), "none"))
			least = fmin(least, GIVEN_AT(area, at, FixedLine, capacity_lb));
	if (!ready(area))
		return 0;
	return isfinite(least) ? least : SKIP(area, "no fixed line is shown");
}

/* ---- clamps ---- */

/* A device that is glued or screwed to the pan is refused, and holds nothing beside others. */
static bool is_holder(Case *fact, const Case *device)
{
	const char *kind = GIVEN_AT(fact, device, Accessory, kind), *by = GIVEN_AT(fact, device, Accessory, attachment);
	if (!ready(fact) || !list_has(fact->all->criteria, "snow devices", kind))
		return false;
	return !same_text(by, "adhesive") && !same_text(by, "through panel");
}

double roof_area_snow_holders_one(Case *area)
{
	double count = 0;
	if (fetch_list(area, area, offsetof(RoofArea, accessories)) == NULL)
		return 0;
	for (Case *at = first_below(area, KIND_accessory); at != NULL; at = at->next)
		count += is_holder(area, at);
	return count;
}

double accessory_clamp_allowable_lb(Case *rail)
{
	double capacity = GIVEN(rail, accessory, Accessory, capacity_lb);
	double factor = CONSTANT(rail, "criteria.yaml", "snow_factor", rail->all->criteria->edition.snow_factor_one.value, NULL);
	return ready(rail) ? capacity / factor : 0;
}

double accessory_clamps_hold_lb(Case *rail)
{
	double allowable = OF(rail, accessory_clamp_allowable_lb);
	double rows = GIVEN(rail, accessory, Accessory, rows_one);
	double width = GIVEN(rail, roof_area, RoofArea, panel.width_in);
	double spacing = GIVEN(rail, accessory, Accessory, clamp_spacing_in);
	return ready(rail) ? allowable * rows * width / spacing : 0;
}

double roof_area_snow_held_lb(Case *area)
{
	double sum = 0;
	if (fetch_list(area, area, offsetof(RoofArea, accessories)) == NULL)
		return 0;
	for (Case *at = first_below(area, KIND_accessory); at != NULL; at = at->next)
		if (is_holder(area, at))
			sum += OF_AT(area, at, accessory_clamps_hold_lb);
	return sum;
}

/* Whether others hold the snow with it. */
static bool is_with_others(Case *rail)
{
	double holders = OF(rail, roof_area_snow_holders_one);
	return ready(rail) && holders > 1 && is_holder(rail, rail);
}

/* What several devices hold adds up, as a clamp at its limit slips and leaves the rest to the others: each bears of the drag as
 * it may take of it. */
double accessory_drag_per_clamp_lb(Case *rail)
{
	double drag = OF(rail, roof_area_snow_drag_lb);
	double spacing = GIVEN(rail, accessory, Accessory, clamp_spacing_in);
	if (is_with_others(rail)) {
		double allowable = OF(rail, accessory_clamp_allowable_lb), held = OF(rail, roof_area_snow_held_lb);
		rail->now->formula = "{snow_drag} * {clamp_allowable} / {snow_held}";
		return ready(rail) ? drag * allowable / held : 0;
	}
	double width = GIVEN(rail, roof_area, RoofArea, panel.width_in);
	double rows = GIVEN(rail, accessory, Accessory, rows_one);
	return ready(rail) ? drag_per_clamp_lb(drag, spacing, width, rows) : 0;
}

double accessory_rows_needed_one(Case *rail)
{
	double drag = OF(rail, roof_area_snow_drag_lb), others = 0;
	double spacing = GIVEN(rail, accessory, Accessory, clamp_spacing_in);
	double width = GIVEN(rail, roof_area, RoofArea, panel.width_in);
	double allowable = OF(rail, accessory_clamp_allowable_lb);
	if (is_with_others(rail)) {
		others = OF(rail, roof_area_snow_held_lb) - OF(rail, accessory_clamps_hold_lb);
		rail->now->formula = "whole rows not less than ({snow_drag} - {snow_held} + {clamps_hold}) * {clamp_spacing} / "
				     "{panel.width} / {clamp_allowable}";
	}
	return ready(rail) ? fmax(0, ceil(drag_per_clamp_lb(drag - others, spacing, width, 1) / allowable)) : 0;
}

double accessory_thickness_share_one(Case *rail)
{
	double here = GIVEN(rail, roof_area, RoofArea, panel.thickness_in);
	double tested = GIVEN(rail, accessory, Accessory, tested_thickness_in);
	return ready(rail) ? here / tested : 0;
}
