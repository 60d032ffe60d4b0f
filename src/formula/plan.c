/* SPDX-License-Identifier: MIT
 * Plan areas of the zones of a rectangular roof. Distances lie in plan; the ridge runs along the length.
 *
 * A roof is cut along every line on which zones may meet, and each piece belongs to the zone of a point inside it; so the zones
 * of a layout add up to the whole roof, also where strips of a narrow roof overlap.
 */
#include "plan_parts.h"

#include <math.h>
#include <stdlib.h>
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

double layout_strip_ft(const RoofPlan *plan, double height_ft, double high_ft)
{
	double least_width = fmin(plan->length_ft, plan->width_ft);
	if (plan->layout == LAYOUT_LOW_SLOPE)
		return height_ft;
	return height_ft > high_ft ? high_zone_width_ft(least_width) : zone_width_ft(least_width, height_ft);
}

Layout layout_named(const char *name)
{
	static const char *const names[LAYOUTS] = {
		[LAYOUT_EDGES] = "edges", [LAYOUT_HIGH] = "high", [LAYOUT_LOW_SLOPE] = "low slope",
		[LAYOUT_GABLE_2010] = "gable 2010",
		[LAYOUT_LOW_HIP_2010] = "low hip 2010", [LAYOUT_HIP_2010] = "hip 2010",
		[LAYOUT_GABLE_2016] = "gable 2016", [LAYOUT_HIP_2016] = "hip 2016",
		[LAYOUT_GABLE_2022] = "gable 2022", [LAYOUT_STEEP_GABLE_2022] = "steep gable 2022", [LAYOUT_HIP_2022] = "hip 2022",
		[LAYOUT_MONOSLOPE] = "monoslope",
	};
	int layout = 0;
	while (layout < LAYOUTS && strcmp(names[layout], name) != 0)
		layout++;
	return (Layout)layout;
}

static bool is_hip(Layout layout)
{
	return layout == LAYOUT_LOW_HIP_2010 || layout == LAYOUT_HIP_2010 || layout == LAYOUT_HIP_2016 || layout == LAYOUT_HIP_2022;
}

Part part_of(const RoofPlan *plan)
{
	bool is_halved = plan->layout == LAYOUT_MONOSLOPE, is_turned = is_hip(plan->layout) && plan->width_ft > plan->length_ft;
	Part part = { plan->layout, plan->strip_ft, plan->length_ft / 2, plan->width_ft / 2, 4, false };
	if (is_halved)
		part = (Part){ plan->layout, plan->strip_ft, plan->length_ft / 2, plan->width_ft, 2, false };
	if (is_turned) /* the ridge of a hip roof runs along its longer side */
		part = (Part){ plan->layout, plan->strip_ft, plan->width_ft / 2, plan->length_ft / 2, 4, true };
	return part;
}

/* Near which lines a point lies, within a strip. */
typedef struct {
	bool eave, rake, ridge, hip;
} Near;

/* A hip runs from the corner to the end of the ridge at half a right angle; its strips lie square to it. */
static Near near_of(const Part *part, double x, double y)
{
	bool hip = is_hip(part->layout) && fabs(x - y) <= part->strip * sqrt(2) && x + y <= 2 * part->depth;
	bool ridge = part->depth - y <= part->strip && (!is_hip(part->layout) || x >= part->depth);
	return (Near){ y <= part->strip, x <= part->strip, ridge, hip };
}

/* Figure 30.3-2A: an L in each corner, legs 0.6 h long and 0.2 h wide. */
static const char *low_slope_zone(double h, double x, double y)
{
	double nearer = fmin(x, y), farther = fmax(x, y);
	if (nearer <= 0.2 * h && farther <= 0.6 * h)
		return "3";
	return nearer <= 0.6 * h ? "2" : nearer <= 1.2 * h ? "1" : "1'";
}

/* Figure 30.3-5A (30.4-5A): along the high eave 2 a deep, at its ends 4 a long. */
static const char *monoslope_zone(const Part *part, double x, double y)
{
	double a = part->strip;
	if (part->depth - y <= 2 * a)
		return x <= 4 * a ? "3'" : "2'";
	if (x <= 2 * a && y <= 2 * a)
		return "3";
	return x <= a || y <= a ? "2" : "1";
}

static const char *gable_2016_zone(Near near)
{
	if (near.eave)
		return near.rake ? "3e" : "2e";
	if (near.ridge)
		return near.rake ? "3r" : "2r";
	return near.rake ? "2n" : "1";
}

const char *zone_at(const Part *part, double x, double y)
{
	Near near = near_of(part, x, y);
	double corner = 2 * part->strip;
	switch (part->layout) {
	case LAYOUT_LOW_SLOPE:
		return low_slope_zone(part->strip, x, y);
	case LAYOUT_HIGH:
		return x <= corner && y <= corner ? "3" : near.eave || near.rake ? "2" : "1";
	case LAYOUT_GABLE_2010:
		return (near.eave || near.ridge) && near.rake ? "3" : near.eave || near.rake || near.ridge ? "2" : "1";
	case LAYOUT_LOW_HIP_2010:
		return near.eave || near.rake || near.ridge || near.hip ? "2" : "1";
	case LAYOUT_HIP_2010:
		return near.eave && near.rake ? "3" : near.eave || near.rake || near.ridge || near.hip ? "2" : "1";
	case LAYOUT_GABLE_2016:
		return gable_2016_zone(near);
	case LAYOUT_HIP_2016:
		return near.eave && near.rake ? "3" : near.eave || near.rake ? "2e" : near.ridge || near.hip ? "2r" : "1";
	case LAYOUT_GABLE_2022:
		return near.ridge && near.rake ? "3" : near.ridge || near.rake ? "2" : "1";
	case LAYOUT_STEEP_GABLE_2022:
		return near.eave && near.rake ? "3" : near.rake ? "2" : "1";
	case LAYOUT_HIP_2022:
		return near.eave || near.rake ? "3" : near.ridge || near.hip ? "2" : "1";
	case LAYOUT_MONOSLOPE:
		return monoslope_zone(part, x, y);
	case LAYOUT_EDGES:
	case LAYOUTS:
		break;
	}
	return near.eave && near.rake ? "3" : near.eave || near.rake ? "2" : "1";
}

/* A monoslope's part goes from eave to eave; of other roofs the far half is as the near one. */
const char *zone_of_point(const RoofPlan *plan, double along_ft, double up_ft)
{
	Part part = part_of(plan);
	return zone_at(&part, fmin(along_ft, plan->length_ft - along_ft), up_ft);
}

/* ---- cutting ---- */

/* Zones meet at these multiples of the strip from an edge, and from the ridge. */
static const double multiples[] = { 0.2, 0.6, 1, 1.2, 2, 4 };
enum { MULTIPLES = sizeof multiples / sizeof *multiples };

static void cut(Cuts *cuts, double at)
{
	if (at > 0 && at < cuts->end)
		cuts->at[cuts->count++] = at;
}

static int by_size(const void *a, const void *b)
{
	double one = *(const double *)a, other = *(const double *)b;
	return (one > other) - (one < other);
}

static Cuts cuts_to(double end)
{
	return (Cuts){ .at = { 0, end }, .count = 2, .end = end };
}

/* The edges of a hip's strip and the hip itself: x = y + offset. */
static double hip_offset(const Part *part, int side)
{
	return side * part->strip * sqrt(2);
}

/* Of a hip roof also the end of the ridge, and the line square to the hip there. */
Cuts cuts_across(const Part *part, double y)
{
	Cuts cuts = cuts_to(part->length);
	for (int i = 0; i < MULTIPLES; i++)
		cut(&cuts, multiples[i] * part->strip);
	for (int side = -1; is_hip(part->layout) && side <= 1; side++)
		cut(&cuts, y + hip_offset(part, side));
	if (is_hip(part->layout)) {
		cut(&cuts, part->depth);
		cut(&cuts, 2 * part->depth - y);
	}
	qsort(cuts.at, cuts.count, sizeof *cuts.at, by_size);
	return cuts;
}

/* Where the slanting lines of a hip meet the line at `x`. */
static void cut_slanting(Cuts *cuts, const Part *part, double x)
{
	for (int side = -1; side <= 1; side++)
		cut(cuts, x - hip_offset(part, side));
	cut(cuts, 2 * part->depth - x);
}

/* Between two of these no line ends or meets another, so that lengths along x change evenly with y. */
Cuts cuts_along(const Part *part)
{
	Cuts cuts = cuts_to(part->depth);
	for (int i = 0; i < MULTIPLES; i++) {
		cut(&cuts, multiples[i] * part->strip);
		cut(&cuts, part->depth - multiples[i] * part->strip);
		if (is_hip(part->layout))
			cut_slanting(&cuts, part, multiples[i] * part->strip);
	}
	if (is_hip(part->layout)) {
		cut_slanting(&cuts, part, 0);
		cut_slanting(&cuts, part, part->depth);
		cut_slanting(&cuts, part, part->length);
		cut(&cuts, part->depth - hip_offset(part, 1) / 2);
	}
	qsort(cuts.at, cuts.count, sizeof *cuts.at, by_size);
	return cuts;
}

static double length_of_zone(const Part *part, const char *zone, double y)
{
	double length = 0;
	Cuts x = cuts_across(part, y);
	for (size_t i = 1; i < x.count; i++)
		if (x.at[i] > x.at[i - 1] && strcmp(zone_at(part, (x.at[i - 1] + x.at[i]) / 2, y), zone) == 0)
			length += x.at[i] - x.at[i - 1];
	return length;
}

static bool has_zone(Layout layout, const char *zone)
{
	static const char *const zones[LAYOUTS] = {
		[LAYOUT_EDGES] = "1 2 3 ", [LAYOUT_HIGH] = "1 2 3 ", [LAYOUT_LOW_SLOPE] = "1' 1 2 3 ", [LAYOUT_GABLE_2010] = "1 2 3 ",
		[LAYOUT_LOW_HIP_2010] = "1 2 ", [LAYOUT_HIP_2010] = "1 2 3 ",
		[LAYOUT_GABLE_2016] = "1 2e 2n 2r 3e 3r ", [LAYOUT_HIP_2016] = "1 2e 2r 3 ",
		[LAYOUT_GABLE_2022] = "1 2 3 ", [LAYOUT_STEEP_GABLE_2022] = "1 2 3 ", [LAYOUT_HIP_2022] = "1 2 3 ",
		[LAYOUT_MONOSLOPE] = "1 2 2' 3 3' ",
	};
	size_t length = strlen(zone);
	for (const char *at = zones[layout]; length > 0 && *at != '\0'; at += strcspn(at, " ") + 1)
		if (strcspn(at, " ") == length && strncmp(at, zone, length) == 0)
			return true;
	return false;
}

double plan_area_sq_ft(const RoofPlan *plan, const char *zone)
{
	if (plan->layout >= LAYOUTS || !has_zone(plan->layout, zone))
		return -1;
	Part part = part_of(plan);
	Cuts y = cuts_along(&part);
	double area = 0;
	for (size_t i = 1; i < y.count; i++)
		area += (y.at[i] - y.at[i - 1]) * length_of_zone(&part, zone, (y.at[i - 1] + y.at[i]) / 2);
	return part.times * area;
}

size_t plan_levels_ft(const RoofPlan *plan, double at_ft[MOST_LEVELS])
{
	Part part = part_of(plan);
	Cuts cuts = cuts_along(&part);
	memcpy(at_ft, cuts.at, cuts.count * sizeof *at_ft);
	return cuts.count;
}

bool is_zone_at_eave(const RoofPlan *plan, const char *zone)
{
	if (plan->layout >= LAYOUTS || !has_zone(plan->layout, zone))
		return false;
	Part part = part_of(plan);
	Cuts y = cuts_along(&part);
	size_t i = 1;
	while (i + 1 < y.count && y.at[i] <= 0)
		i++;
	return length_of_zone(&part, zone, y.at[i] / 2) > 0;
}
