/* SPDX-License-Identifier: MIT
 * Drawing: what a page draws of each roof area and no single fact says: plan with zones, tested curves, the attributes
 * submitted beside those listed. Reports take it const.
 */
#ifndef DRAWING_H
#define DRAWING_H

#include "facts.h"
#include "formula.h"

/* A zone with what pulls at it and what it holds. */
typedef struct {
	const Case *at;
	const Fact *plan_area, *strength, *computed, *letter, *demand, *tested, *allowable, *ratio, *class_ratio, *fastening_ratio;
	const char *waits; /* what the ratio waits for, in words; NULL: nothing */
} DrawnZone;

/* The tests of one paper on capacity, ultimate, from the closest spacing to the widest. */
typedef struct {
	const Listing *listing;
	const TestPoint *test;
	const ListingTest *const *row;
	uint32_t tests;
	const Fact *factor;
} DrawnCurve;

/* An attribute on two papers, and whether the difference is allowed. */
typedef struct {
	const Compared *row;
	const Fact *holds;
} DrawnComparison;

typedef struct {
	const Case *at;
	bool is_excluded; /* not to be warranted: nothing of it is judged */
	const DrawnZone *zone;
	uint32_t zones;
	const DrawnCurve *curve;
	uint32_t curves;
	Interpolation how;
	const DrawnComparison *compared;
	uint32_t comparisons;
	RoofPlan plan; /* LAYOUTS: no zones can be drawn, `why_no_zones` says why; no length or width: 0 */
	const char *why_no_zones;
} DrawnArea;

typedef struct Drawings {
	const DrawnArea *area; /* in the order of the file */
	uint32_t areas;
} Drawings;

#endif
