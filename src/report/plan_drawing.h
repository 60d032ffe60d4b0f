/* SPDX-License-Identifier: MIT
 * The roof plan while it is drawn: where the roof lies on the page, at which scale, and where labels still find room.
 */
#ifndef REPORT_PLAN_DRAWING_H
#define REPORT_PLAN_DRAWING_H

#include "drawn.h"
#include "svg.h"

typedef struct {
	Svg svg;
	const Sight *sight;
	const DrawnArea *area;
	const RoofArea *row;
	double scale, feet_per_inch; /* units for a foot; feet for an inch of paper */
	At corner; /* upper left one of the roof */
	Room room;
	const Box *opening; /* the room each opening takes, in the order of the file; right 0: not drawn */
	uint32_t openings;
} PlanSheet;

/* The size of texts on it. */
#define PLAN_TEXT 11.0

At on_plan(const PlanSheet *plan, PlanPoint at);
Box text_box(At at, TextAnchor anchor, double width);

/* The zones: areas, borders, then their numbers once lines and openings have taken their room. */
void draw_zone_areas(PlanSheet *plan);
void draw_zone_names(PlanSheet *plan);

/* Openings where they stand; their names once lines have taken their room. */
void draw_openings(PlanSheet *plan);
void draw_opening_names(PlanSheet *plan);

/* Whether an opening can be drawn; else why not. */
const char *why_not_placed(const DrawnArea *area, const Penetration *opening);

/* Eaves, ridges, hips, slopes, fixed lines, dimensions. */
void draw_roof_lines(PlanSheet *plan);
void draw_dimensions(PlanSheet *plan);

#endif
