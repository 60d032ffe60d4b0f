/* SPDX-License-Identifier: MIT
 * The slope that is left when the roof bends under load, and the joints across it.
 */
#include "below.h"
#include "fetch.h"
#include "formula.h"
#include "text.h"

#include <math.h>

/* ---- under load ---- */

static bool is_silent(const Case *area, uint32_t offset)
{
	return ask(area, offset).given->said == SAID_NOTHING;
}

/* Where nobody states a deflection, the criteria's limit stands for it: a slope that holds even then needs no figure. */
static bool holds_at_limit(Case *area, double slope, double *left)
{
	const Edition *edition = &area->all->criteria->edition;
	double least = GIVEN(area, roof_area, RoofArea, panel.least_slope_in_12);
	double limit = CONSTANT(area, "criteria.yaml", "deflection_limit", edition->deflection_limit_one.value, "ufc-3-320-03a-p32");
	if (!ready(area))
		return false;
	*left = slope_under_load_in_12(slope, 1, 0, limit);
	if (*left < least)
		return false;
	area->now->formula = "{building.slope} - 24 / {deflection_limit}";
	note(area, "no deflection is stated: taken at the limit of the criteria");
	return true;
}

double roof_area_slope_under_load_in_12(Case *area)
{
	if (!is_silent(area, offsetof(RoofArea, building.slope_after_deflection_in_12))) {
		area->now->formula = "{building.slope_after_deflection}";
		return GIVEN(area, roof_area, RoofArea, building.slope_after_deflection_in_12);
	}
	double slope = GIVEN(area, roof_area, RoofArea, building.slope_in_12), left = 0;
	if (is_silent(area, offsetof(RoofArea, support.deflection_in)) && holds_at_limit(area, slope, &left))
		return left;
	double deflection = GIVEN(area, roof_area, RoofArea, support.deflection_in);
	double camber = GIVEN_OR(area, roof_area, RoofArea, support.camber_in, 0);
	double span = GIVEN(area, roof_area, RoofArea, support.spacing_in);
	if (is_silent(area, offsetof(RoofArea, support.camber_in)))
		area->now->formula = "{building.slope} - 24 * {support.deflection} / {support.spacing}";
	return ready(area) ? slope_under_load_in_12(slope, deflection, camber, span) : 0;
}

/* ---- water from above ---- */

/* A gutter leads the water past this roof; what is spread, or falls, runs down it. */
double roof_area_drained_run_ft(Case *area)
{
	if (fetch_list(area, area, offsetof(RoofArea, drains_from_above)) == NULL)
		return 0;
	bool comes_down = false;
	double longest = 0;
	for (Case *above = first_below(area, KIND_upper_roof); above != NULL; above = above->next) {
		if (same_text(GIVEN_AT(area, above, UpperRoof, how), "gutter"))
			continue;
		comes_down = true;
		longest = fmax(longest, GIVEN_AT(area, above, UpperRoof, run_ft));
	}
	if (ready(area) && !comes_down)
		return SKIP(area, "no roof above drains on to it");
	double own = OF(area, roof_area_slope_length_ft);
	return ready(area) ? own + longest : 0;
}

/* ---- joints across the slope ---- */

double roof_area_transverse_joints_one(Case *area)
{
	if (fetch_list(area, area, offsetof(RoofArea, details)) == NULL)
		return 0;
	double count = 0;
	for (Case *at = first_below(area, KIND_detail); at != NULL; at = at->next)
		count += is_among(GIVEN_AT(area, at, Detail, place), "expansion joint;transition");
	return count;
}
