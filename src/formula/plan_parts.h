/* SPDX-License-Identifier: MIT
 * A part of a roof plan that repeats, and the lines it is cut along.
 */
#ifndef FORMULA_PLAN_PARTS_H
#define FORMULA_PLAN_PARTS_H

#include "formula.h"

/* A quarter, of a monoslope a half. A corner lies at 0, 0; eaves run along x. */
typedef struct {
	Layout layout;
	double strip;
	double length, depth; /* to the middle of the eave; to the ridge, of a monoslope to the high eave */
	double times;
	bool is_turned; /* x runs across the length of the roof */
} Part;
Part part_of(const RoofPlan *plan);
const char *zone_at(const Part *part, double x, double y);

/* Sorted, from 0 to the end. */
enum { MOST_CUTS = MOST_LEVELS };
typedef struct {
	double at[MOST_CUTS];
	size_t count;
	double end;
} Cuts;

/* Along x at a height; and the heights between which no line ends or meets another, so that lengths along x change evenly. */
Cuts cuts_across(const Part *part, double y);
Cuts cuts_along(const Part *part);

#endif
