/* SPDX-License-Identifier: MIT
 * Offers: what the criteria would accept in each roof area, found by judging copies. Reports take it const.
 */
#ifndef OFFERS_H
#define OFFERS_H

#include "verdict.h"

enum { MOST_OFFERED_ZONES = 16 };

/* A way to build the area: listings, panel, clip, screw, and the widest clip spacing of each zone. */
typedef struct {
	const Case *area;
	const Listing *class_listing, *capacity_listing; /* the class one NULL where none is due */
	const char *panel, *clip, *fastener;
	double per_clip;
	struct {
		const char *zone, *binds;
		double spacing_in;
	} zone[MOST_OFFERED_ZONES];
	uint32_t zones;
	double clips; /* as laid, or for each 100 sq ft where the plan cannot be counted */
	bool is_counted;
	const char *to_state; /* what is not stated of its parts yet, joined by commas; NULL: nothing */
	const char *waits_for; /* the condition of an approval, or NULL */
} Construction;

/* The items that would be accepted in one place, as submitted otherwise. */
typedef struct {
	const Case *area;
	const char *kind, *where; /* "sealant", "ridge" */
	const char *submitted; /* the item there now; NULL: the place is empty */
	bool stands; /* nothing is found against it */
	const char **item;
	uint32_t items;
} PlaceOffer;

/* The longest term, and what stands in the way of the next one offered. */
typedef struct {
	const Case *area; /* NULL: of the whole submittal */
	double term_yr, next_yr; /* 0: none */
	const char *held_by; /* in words */
} LongestTerm;

typedef struct Offers {
	const Verdict *verdict;
	Construction *construction; /* by roof area, fewest clips first */
	uint32_t constructions, construction_room;
	PlaceOffer *choice;
	uint32_t choices, choice_room;
	LongestTerm *term;
	uint32_t terms, term_room;
	const char **none; /* for each roof area: why there is no construction; NULL where there is one */
	bool without_letter, flat_ground; /* not stated, and taken so */
	uint32_t tries;
	bool stopped; /* the search was too long to end */
} Offers;

#endif
