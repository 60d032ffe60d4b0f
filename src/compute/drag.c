/* SPDX-License-Identifier: MIT
 * What the one fixing of a panel must hold along the slope: snow, the panel's own weight, and its clips when it moves.
 */
#include "below.h"
#include "fetch.h"
#include "formula.h"
#include "text.h"

#include <math.h>

double roof_area_weight_drag_lb(Case *area)
{
	double weight = GIVEN(area, roof_area, RoofArea, panel.weight_psf);
	double width = GIVEN(area, roof_area, RoofArea, panel.width_in);
	double run = OF(area, roof_area_panel_run_ft);
	double slope = GIVEN(area, roof_area, RoofArea, building.slope_in_12);
	return ready(area) ? weight_drag_lb(weight, width, run, slope) : 0;
}

/* The closest clips are the most: on the safe side for the whole run. */
double roof_area_closest_spacing_in(Case *area)
{
	double least = HUGE_VAL;
	if (fetch_list(area, area, offsetof(RoofArea, clips)) == NULL)
		return 0;
	for (Case *zone = first_below(area, KIND_zone); zone != NULL; zone = zone->next)
		least = fmin(least, GIVEN_AT(area, zone, Zone, spacing_in));
	if (!ready(area))
		return 0;
	return isfinite(least) ? least : SKIP(area, "no running clips are named");
}

double roof_area_clip_slide_force_lb(Case *area)
{
	if (fetch_list(area, area, offsetof(RoofArea, clips)) == NULL)
		return 0;
	double greatest = 0;
	for (Case *clip = first_below(area, KIND_clip); clip != NULL; clip = clip->next)
		if (same_text(GIVEN_AT(area, clip, Clip, use), "running"))
			greatest = fmax(greatest, GIVEN_AT(area, clip, Clip, slide_force_lb));
	return greatest;
}

double roof_area_friction_drag_lb(Case *area)
{
	double force = OF(area, roof_area_clip_slide_force_lb);
	double run = OF(area, roof_area_moving_length_ft);
	double spacing = OF(area, roof_area_closest_spacing_in);
	return ready(area) ? friction_drag_lb(force, run, spacing) : 0;
}

double roof_area_fixity_drag_lb(Case *area)
{
	double snow = OF(area, roof_area_snow_drag_lb);
	double weight = OF(area, roof_area_weight_drag_lb);
	double friction = OF(area, roof_area_friction_drag_lb);
	return ready(area) ? snow + weight + friction : 0;
}
