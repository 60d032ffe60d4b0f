/* SPDX-License-Identifier: MIT
 * Plan areas of the zones of a rectangular roof. Distances lie in plan; the ridge runs along the length.
 *
 * Each layout is a sum of strips and corners clipped to the rectangle, so that the zones always add up to the whole.
 */
#include "formula.h"

#include <math.h>
#include <string.h>

/* 0.1 of the least width or 0.4 h, whichever is less, but at least 0.04 of the width and 3 ft: note on `a` of chapter 30. */
double zone_width_ft(double least_width_ft, double height_ft)
{
	return fmax(fmin(0.1 * least_width_ft, 0.4 * height_ft), fmax(0.04 * least_width_ft, 3));
}

double high_zone_width_ft(double least_width_ft)
{
	return fmax(0.1 * least_width_ft, 3);
}

static double rectangle(double length, double width)
{
	return fmax(0, length) * fmax(0, width);
}

/* What lies within `strip` of the rectangle's edge. */
static double edge_area(const RoofPlan *plan, double strip)
{
	return plan->length_ft * plan->width_ft - rectangle(plan->length_ft - 2 * strip, plan->width_ft - 2 * strip);
}

/* Four corner squares of `side`, not overlapping where the roof is narrow. */
static double corner_area(const RoofPlan *plan, double side)
{
	return fmin(2 * side, plan->length_ft) * fmin(2 * side, plan->width_ft);
}

static double edges_area(const RoofPlan *plan, const char *zone)
{
	double corners = corner_area(plan, plan->strip_ft), edge = edge_area(plan, plan->strip_ft);
	if (strcmp(zone, "3") == 0)
		return corners;
	if (strcmp(zone, "2") == 0)
		return edge - corners;
	return strcmp(zone, "1") == 0 ? plan->length_ft * plan->width_ft - edge : -1;
}

/* Corners are Ls: d1 <= 0.2 h and d2 <= 0.6 h, with d1 the lesser distance to two edges that meet. Figure 30.3-2A. */
static double low_slope_area(const RoofPlan *plan, const char *zone)
{
	double h = plan->strip_ft, whole = plan->length_ft * plan->width_ft;
	double strip = edge_area(plan, 0.6 * h), inner = edge_area(plan, 1.2 * h);
	double squares = corner_area(plan, 0.6 * h);
	/* of each corner square of 0.6 h, what is farther than 0.2 h from both edges belongs to zone 2 */
	double cores = rectangle(fmin(1.2 * h, plan->length_ft) - 0.4 * h, fmin(1.2 * h, plan->width_ft) - 0.4 * h);
	double corners = squares - cores;
	if (strcmp(zone, "3") == 0)
		return corners;
	if (strcmp(zone, "2") == 0)
		return strip - corners;
	if (strcmp(zone, "1") == 0)
		return inner - strip;
	return strcmp(zone, "1'") == 0 ? whole - inner : -1;
}
