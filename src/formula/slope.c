/* SPDX-License-Identifier: MIT
 * What a slope keeps under load, and what drags along it beside snow.
 */
#include "formula.h"

#include <math.h>

static const double in_per_ft = 12;

double slope_under_load_in_12(double slope_in_12, double deflection_in, double camber_in, double span_in)
{
	return slope_in_12 - in_per_ft * fabs(deflection_in - camber_in) / (span_in / 2);
}

double weight_drag_lb(double weight_psf, double width_in, double run_ft, double slope_in_12)
{
	double tangent = slope_in_12 / in_per_ft;
	return weight_psf * width_in / in_per_ft * run_ft * tangent / hypot(1, tangent);
}

double friction_drag_lb(double slide_force_lb, double run_ft, double spacing_in)
{
	return slide_force_lb * run_ft * in_per_ft / spacing_in;
}
