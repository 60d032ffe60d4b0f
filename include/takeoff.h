/* SPDX-License-Identifier: MIT
 * Takeoff: what a submittal needs of each part, by roof area, with how each quantity was counted. Reports take it const.
 */
#ifndef TAKEOFF_H
#define TAKEOFF_H

#include "verdict.h"

/* How a quantity stands: a number, or why there is none. */
typedef enum { COUNTED, COUNT_WAITS, COUNT_REFUSED } CountState;

typedef struct {
	const Case *area;
	const Case *part; /* NULL: no part of the submittal, as the plane area */
	const char *kind, *item, *where; /* "clip", "clip-a-float" or NULL, "zone 2" or NULL */
	CountState state;
	double exact, laid, needed; /* by the plan; as laid; with the allowance for waste, in whole pieces where it comes in pieces */
	const char *unit; /* "pieces", "ft", "sq ft", "rolls" */
	double waste_percent;
	const char *sold_in; /* as the catalogue says it, or NULL */
	bool again; /* tells of what another line counts */
	const char *how; /* how it was counted, in words and numbers */
	const char *why; /* why it was not */
} Amount;

/* One item of all roof areas and places, as it is bought. */
typedef struct {
	const char *kind, *item, *unit, *sold_in;
	double needed, packages; /* packages 0: not sold in packages that can be counted */
	uint32_t lines, uncounted; /* of its amounts; how many have no number */
} Total;

typedef struct Takeoff {
	const Verdict *verdict;
	Amount *amount;
	uint32_t amounts, room, counted;
	Total *total;
	uint32_t totals, total_room;
} Takeoff;

#endif
