/* SPDX-License-Identifier: MIT
 * Counting pieces: panels, clips along seams, sheets of a roll (mechanics, section 8).
 */
#include "formula.h"

#include <math.h>
#include <string.h>

/* A length that is a whole number of pieces but for rounding is that number. */
static const double guard = 1e-9;

double slope_length_ft(double run_ft, double slope_in_12)
{
	double rise = slope_in_12 / 12;
	return run_ft * sqrt(1 + rise * rise);
}

double pieces_to_cover(double length, double piece)
{
	return length > 0 ? ceil(length / piece - guard) : 0;
}

double with_waste(double pieces, double waste_percent)
{
	return ceil(pieces * (1 + waste_percent / 100) - guard);
}

/* ---- clips ---- */

enum { NO_ZONE = -1 };

static int number_of(const ZoneSpacing *zone, size_t zones, const char *name)
{
	for (size_t i = 0; i < zones; i++)
		if (strcmp(zone[i].zone, name) == 0)
			return (int)i;
	return NO_ZONE;
}

/* Over a single plane the far half of a roof drawn about its middle is as the near one. */
static bool is_mirrored(const Plane *plane)
{
	return plane->alone && plane->plan.layout != LAYOUT_MONOSLOPE;
}

/* The zone in which the clips of a seam stand at a height: its own, unless one beside it is laid closer. As laid, all zones that
 * reach into the two panels of the seam lie beside it; else only those that meet on it. What only touches reaches nowhere. */
static int zone_of_seam(const Plane *plane, const ZoneSpacing *zone, size_t zones, double along_ft, double up_ft)
{
	double width = plane->panel_width_in / 12, hair = width * 1e-6, edge = plane->whole_panels ? width - hair : hair;
	const double beside[] = { 0, -hair, hair, -edge, edge };
	double up = is_mirrored(plane) ? fmin(up_ft, plane->plan.width_ft - up_ft) : up_ft;
	int found = NO_ZONE;
	for (size_t i = 0; i < sizeof beside / sizeof *beside; i++) {
		double at = fmin(fmax(along_ft + beside[i], 0), plane->plan.length_ft);
		int here = number_of(zone, zones, zone_of_point(&plane->plan, at, up));
		if (here == NO_ZONE)
			return NO_ZONE;
		if (found == NO_ZONE || zone[here].spacing_in < zone[found].spacing_in)
			found = here;
	}
	return found;
}

static size_t levels_of(const Plane *plane, double at[2 * MOST_LEVELS])
{
	size_t levels = plan_levels_ft(&plane->plan, at), middle = levels;
	for (size_t i = middle - 1; is_mirrored(plane) && i > 0; i--)
		at[levels++] = plane->plan.width_ft - at[i - 1];
	return levels;
}

/* Clips set so far along a seam at one spacing: a zone line between zones laid alike does not begin anew. */
typedef struct {
	double spacing_in, length_in, set;
} Laying;

static double more_clips(Laying *laying, double spacing_in, double length_in)
{
	if (spacing_in != laying->spacing_in)
		*laying = (Laying){ .spacing_in = spacing_in };
	laying->length_in += length_in;
	double before = laying->set;
	laying->set = pieces_to_cover(laying->length_in, spacing_in);
	return laying->set - before;
}

static bool count_seam(const Plane *plane, const ZoneSpacing *zone, size_t zones, double along_ft, double *clips)
{
	double at[2 * MOST_LEVELS];
	size_t levels = levels_of(plane, at);
	Laying laying = { .spacing_in = 0 };
	for (size_t i = 1; i < levels; i++) {
		if (at[i] <= at[i - 1])
			continue;
		int here = zone_of_seam(plane, zone, zones, along_ft, (at[i] + at[i - 1]) / 2);
		if (here == NO_ZONE)
			return false;
		bool is_first = laying.spacing_in == 0; /* at the eave, with the overhang */
		double run_ft = at[i] - at[i - 1] + (is_first ? plane->overhang_ft : 0);
		clips[here] += is_first;
		clips[here] += more_clips(&laying, zone[here].spacing_in, slope_length_ft(run_ft, plane->slope_in_12) * 12);
	}
	return laying.spacing_in > 0;
}

bool count_clips(const Plane *plane, const ZoneSpacing *zone, size_t zones, double *clips)
{
	double panels = pieces_to_cover(plane->plan.length_ft * 12, plane->panel_width_in);
	for (double seam = 1; seam < panels; seam++)
		if (!count_seam(plane, zone, zones, seam * plane->panel_width_in / 12, clips))
			return false;
	return true;
}

/* ---- sheets ---- */

/* The last course and the last piece need no lap of their own. */
Sheets sheets_of(const Roll *roll, double eave_in, double slope_in)
{
	Sheets sheets;
	sheets.courses = pieces_to_cover(slope_in - roll->side_lap_in, roll->roll_width_in - roll->side_lap_in);
	sheets.pieces = pieces_to_cover(eave_in - roll->end_lap_in, roll->roll_length_in - roll->end_lap_in);
	sheets.courses = fmax(sheets.courses, 1);
	sheets.pieces = fmax(sheets.pieces, 1);
	sheets.length_in = sheets.courses * (eave_in + (sheets.pieces - 1) * roll->end_lap_in);
	sheets.rolls = pieces_to_cover(sheets.length_in, roll->roll_length_in);
	return sheets;
}
