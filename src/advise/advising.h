/* SPDX-License-Identifier: MIT
 * Advising: what the files of advise/ share. Nothing here decides what is allowed: a copy of the submittal is changed, resolved
 * and judged again, and what is left is compared with what the unchanged one gives.
 */
#ifndef ADVISING_H
#define ADVISING_H

#include "facts.h"
#include "hash.h"
#include "pipeline.h"

enum {
	MOST_TRIES = 200, /* copies judged for one submittal */
	MOST_AREAS = 40,  /* larger submittals get no such advice */
	MOST_CASES = 2000,
	MOST_LETTERS = 4, /* roof areas for which inputs are tried that would give the letter's figures */
	MOST_WORK = 60000, /* tries times records: a large file gets fewer */
	MOST_SPOTS = 20
};

typedef struct {
	Verdict *verdict;
	Arena *arena;
	uint32_t tries;
	uint32_t letters; /* roof areas whose letter was reproduced, or tried to be */
	const char *letter_inputs[MOST_AREAS + 1];
	Hash *before[MOST_AREAS + 1]; /* what stands in the way of the unchanged roof area; at 0 of the whole */
	bool *stays; /* by rule: see standing.c; NULL: not known */
	Hash *whole; /* the same as the verdict has it */
} Advising;

/* A copy with roof areas of its own; lists are copied when they are changed. */
typedef struct {
	const Submittal *from;
	Submittal submittal;
	uint32_t area; /* number + 1 of the one roof area it has; 0: all */
} Copy;

/* ---- vary.c ---- */

/* False where the tries are used up or the submittal is too large. */
bool may_try(const Advising *advising);

/* The number + 1 of the roof area in which all places of an item lie; 0 where there is none. */
uint32_t area_of_item(const Finding *item);

/* The number of a case's record in the list that holds it; 0 for what stands in none. */
uint32_t number_in_list(const Case *at);

/* With one roof area alone, or with all of them. */
Copy *copy_submittal(Advising *advising, uint32_t area);

/* The row of a part, or of a test, in the copy, to be changed; NULL if it is no element of a roof area of the copy. */
void *copied_row(Advising *advising, Copy *copy, const Case *at);

Cases *resolve_copy(Advising *advising, const Copy *copy);

/* What is asked of a copy. */
typedef struct {
	const Finding *item;
	bool instead;               /* one item stands in the place of another, and nothing else was changed */
	bool alone;                 /* only whether the item is gone, whatever else comes up */
	bool despite_specification; /* what a specification asks for is left out of account */
} Wanted;

/* Judges the unchanged copy of an area, once; what comes of it stays. To be called before the arena is marked. */
void judge_unchanged(Advising *advising, const Finding *item, uint32_t area);

/* Whether the item is gone from all its places, judged there and not only silent, and nothing of NOT REVIEWED or worse is new. */
bool is_cured(Advising *advising, const Copy *copy, Cases *cases, const Wanted *wanted);

/* The troubles of a copy, as keys; and the first one that is not among them. */
Hash *gather_troubles(Advising *advising, const Copy *copy, Cases *cases);
bool find_new_trouble(Advising *advising, const Copy *copy, Cases *cases, const Hash *known, Trouble *found);

/* ---- items.c ---- */

/* The catalogue's rows of a kind of part; openings have curbs and boots. */
typedef struct {
	const char *row;
	uint32_t count;
} Items;
Items items_of(const Criteria *criteria, RecordKind kind, bool is_boot);

/* Puts a catalogue item in the place of a part: nothing of the old one stays beside it, not its size, its life or its
 * description. */
void place_item(const Record *record, void *row, const void *item);

/* ---- nearest_parts.c ---- */

/* An attribute in which a part of a copy differs from what a listing tested. */
enum { MOST_DIFFERENCES = 12, MOST_EXCHANGED = 4 };
typedef struct {
	RecordKind kind;
	uint32_t number; /* of the part in its list */
	const Field *field;
	const void *there; /* the tested part */
} Difference;

/* Items in the place of others, all in one roof area. */
typedef struct {
	const Case *part; /* the first of them */
	const char *item, *old;
	const void *row;
} Exchange;
typedef struct {
	const Difference *difference;
	uint32_t differences, rank; /* rank 0: the most like what was tested */
	const Case *test;
	Exchange exchange[MOST_EXCHANGED];
	uint32_t exchanged;
} Exchanges;

/* For each part that differs a catalogue item that does not; false if there is none for one of them. */
bool choose_exchanges(const Advising *advising, Exchanges *exchanges);

/* Puts them into a copy, wherever the old item stands in the roof area; false if one cannot be put. */
bool place_exchanges(Advising *advising, Copy *copy, const Exchanges *exchanges);

/* ---- standing.c ---- */

/* Whether what both sides of a test gave for a part rests on that part and on values outwards. */
bool is_own_answer(const Case *at, const Tested *tested);

/* Finds the rules that stay as they are on all parts but those of a changed kind. */
void find_standing(Advising *advising);

/* ---- one name each; NULL where nothing is found ---- */

const char *accepted_items(Advising *advising, const Finding *item);
const char *nearest_listing(Advising *advising, const Finding *item);
const char *longest_term(Advising *advising, const Finding *item);
const char *greatest_spacings(Advising *advising, const Finding *item);
const char *letter_inputs(Advising *advising, const Finding *item);

/* ---- remedy.c ---- */

void fill_remedy(Advising *advising, Finding *item);

#endif
