/* SPDX-License-Identifier: MIT
 * Counting: what the files of the takeoff share.
 */
#ifndef ADVISE_COUNTING_H
#define ADVISE_COUNTING_H

#include "facts.h"
#include "takeoff.h"

typedef struct {
	Takeoff *takeoff;
	Arena *arena;
	Case *area;
	const RoofArea *row;
	double running, fixed; /* clips of the area as laid, for what is counted by the clip; -1: not known */
	double exact; /* running clips by the plan */
} Counting;

/* A quantity begun for a part (or NULL) of the area. */
Amount *amount_add(Counting *counting, const Case *part, const char *kind, const char *where);

/* The value of a fact; where it has none the quantity says why and false comes back. */
bool take_fact(const Case *at, FactId id, Amount *amount, double *value, Arena *arena);

/* The first thing a fact waits for, in words. */
const char *waits_for(const Cases *cases, const Fact *fact, Arena *arena);

/* The same for a value of the form that must be there. */
bool take_number(const Number *number, const char *title, Amount *amount, Arena *arena);

/* Counts: `amount` as laid, pieces in whole ones; adds waste and packages. */
void settle(Counting *counting, Amount *amount, double exact, double laid);
void refuse_count(Amount *amount, const char *why);

/* What is bought of each item, over all areas and places. */
void add_up(Takeoff *takeoff, Arena *arena);

/* The row of kinds.csv by the word of the kind; NULL if there is none. */
const KindRow *kind_row(const Criteria *criteria, const char *kind);

/* "box of 250", "roll of 50 ft", "roll of 200 sq ft": how many of the unit one package holds; 0 where it does not say. */
double content_of(const char *sold_in, const char *unit);

/* The kinds that are counted by lengths and openings. */
void count_underlayments(Counting *counting);
void count_sealants(Counting *counting);
void count_closures(Counting *counting);
void count_openings(Counting *counting);

/* The cases of a kind in the area, from `*i` on. */
const Case *next_of(const Counting *counting, RecordKind kind, uint32_t *i);

/* Length of the details of a place; -1 if none is stated. */
double detail_length_ft(const Counting *counting, const char *place);

#endif
