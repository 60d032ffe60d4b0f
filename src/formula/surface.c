/* SPDX-License-Identifier: MIT
 * The surface of a roof over its plan, and how many clips stand on it.
 */
#include "formula.h"

#include <math.h>

double roof_surface_sq_ft(double plan_sq_ft, double slope_in_12)
{
	double rise = slope_in_12 / 12;
	return plan_sq_ft * sqrt(1 + rise * rise);
}

double clips_on_surface(double surface_sq_ft, double width_in, double spacing_in)
{
	return surface_sq_ft * 144 / (width_in * spacing_in);
}
