/* SPDX-License-Identifier: MIT
 * Snow that slides: its drag along the slope on a panel, and what of it a clamp holds.
 *
 * Snow loads are stated on the plan area, which is shorter than the run by the cosine of the slope.
 */
#include "formula.h"

double snow_drag_lb(const SnowStrip *strip)
{
	double tangent = strip->slope_in_12 / 12;
	return strip->snow_psf * strip->width_in / 12 * strip->run_ft * tangent / (1 + tangent * tangent);
}

double drag_per_clamp_lb(double drag_lb, double clamp_spacing_in, double panel_width_in, double rows)
{
	return drag_lb * clamp_spacing_in / panel_width_in / rows;
}
