/* SPDX-License-Identifier: MIT
 * Advising: what the files of advise/ share. Nothing here decides what is allowed: a copy of the submittal is changed, resolved
 * and judged again, and what is left is compared with what the unchanged one gives.
 */
#ifndef ADVISING_H
#define ADVISING_H

#include "hash.h"
#include "pipeline.h"

enum {
	MOST_TRIES = 200, /* copies judged for one submittal */
	MOST_AREAS = 40, /* larger submittals get no such advice: each try judges all of one */
	MOST_CASES = 2000,
	MOST_SPOTS = 20
};

typedef struct {
	Verdict *verdict;
	Arena *arena;
	uint32_t tries;
	Hash *before; /* what stands in the way of the unchanged submittal */
} Advising;

/* A copy with roof areas of its own; lists are copied when they are changed. */
typedef struct {
	const Submittal *from;
	Submittal submittal;
} Copy;

/* ---- vary.c ---- */

/* False where the tries are used up or the submittal is too large. */
bool may_try(const Advising *advising);

Copy *copy_submittal(Advising *advising);

/* The row of a part, or of a test, in the copy, to be changed; NULL if it is no element of a roof area. */
void *copied_row(Advising *advising, Copy *copy, const Case *at);

/* Judges the unchanged copy, once: what comes of it stays. */
void judge_unchanged(Advising *advising);

/* The copy resolved and judged. */
Verdict *judge_copy(Advising *advising, const Copy *copy);

/* Whether the item is gone from all its places, judged there and not only silent. */
bool is_gone(Advising *advising, const Verdict *varied, const Finding *item);

/* Whether it is gone and nothing of NOT REVIEWED or worse is new; what a
 * specification asks for may be left out of account. */
bool is_cured(Advising *advising, const Verdict *varied, const Finding *item, bool despite_specification);

/* ---- one name each; NULL where nothing is found ---- */

const char *accepted_items(Advising *advising, const Finding *item);
const char *nearest_listing(Advising *advising, const Finding *item);
const char *longest_term(Advising *advising, const Finding *item);

/* ---- remedy.c ---- */

void fill_remedy(Advising *advising, Finding *item);

/* Whether a wording asks for a name. */
bool asks_for(const Wording *wording, const char *name);

#endif
