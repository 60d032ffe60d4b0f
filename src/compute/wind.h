/* SPDX-License-Identifier: MIT
 * What the facts of the wind share.
 */
#ifndef WIND_H
#define WIND_H

#include "fetch.h"

/* The load standard of the submittal; "" if the fact waits for it. */
const char *fetch_standard(Case *fact);

/* A figure of wind_constants.csv; refused if the standard is not among them. */
double fetch_wind_constant(Case *fact, const char *standard, const char *name);

/* A zone of a figure; NULL if the fact waits for what the figure hangs on, or is refused since no figure covers the roof. */
const ZoneHere *fetch_zone(Case *zone);
const ZoneHere *fetch_zone_of(Case *fact, const Case *zone);

/* The coefficient of a zone at the effective area of a clip, uplift positive, off the one curve of a name or between its two;
 * refused where there is none. */
typedef struct {
	const char *standard, *figure, *zone, *side;
} CurveName;
double fetch_coefficient(Case *zone, const CurveName *name, const char *why_none);

/* The height in ft up to which the figures of low buildings hold: 60 ft, or 90 ft where they are chosen and permitted. */
double fetch_low_rise_ft(Case *fact);

/* The area's height as the figures mean it, and the lesser side of the plan. */
double fetch_height_ft(Case *fact);
double fetch_least_width_ft(Case *fact);

/* A constant of a row of a table with a column of its own for it: "wind_hills.csv ridge C multiplier". */
typedef struct {
	const char *table, *row, *source;
} TableRow;
double fetch_cell(Case *fact, const TableRow *row, const char *column, const Number *value);

#endif
