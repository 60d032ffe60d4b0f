/* SPDX-License-Identifier: MIT
 * Offering: what the files of the options share.
 */
#ifndef ADVISE_OFFERING_H
#define ADVISE_OFFERING_H

#include "advising.h"
#include "offers.h"

enum { MOST_OFFER_TRIES = 20000, LONGEST_WORDS = 160, MOST_CODES = 6, MOST_BLOCKS = 1000 };

typedef struct {
	Advising *advising;
	Offers *offers;
	const Case *area;
	uint32_t number; /* of the area + 1 */
	char nearest[400]; /* the construction that fewest rules hold back, in words */
	uint32_t blocks; /* how many do */
	uint32_t pairs; /* of listings, that are not held back by themselves */
} Offering;

/* What could be a construction; the class listing NULL where none is due. */
typedef struct {
	const Listing *class_listing, *capacity_listing;
	const Panel *panel;
	const Clip *clip;
	const Fastener *fastener;
} Candidate;

bool may_offer(Offering *offering);

/* An empty record of a part with the form's assumptions, its use or place set by key. */
void *part_made(Arena *arena, const Record *record);
void set_word(const Record *record, void *row, const char *key, const char *word);

/* A list of a copied roof area with room for one more in front. */
void *list_with_room(Arena *arena, List *list, const Record *record);

/* ---- offers_copy.c ---- */

/* What the closest tested spacing of the capacity listing is, in all zones. */
ZoneValue *closest_spacing(Offering *offering, const Candidate *of);
Copy *copy_with(Offering *offering, const Candidate *of, const ZoneValue *spacing, uint32_t spacings);

/* ---- offers_holds.c ---- */

typedef struct {
	uint32_t blocks; /* distinct codes that hold it back; MOST_BLOCKS: a zone has none that holds */
	const char *blocked_by[MOST_CODES]; /* the first codes, or that reason */
	char to_state[LONGEST_WORDS];
	char missing[LONGEST_WORDS / 2]; /* keys of the support that are not stated */
	uint32_t fields;
} Holding;

/* What only is not shown, and a rule that waits for what is not due yet. */
bool only_waits(const Trouble *trouble);

void judge_candidate(Offering *offering, Cases *cases, Holding *holding);
bool is_held_by_part(Offering *offering, Cases *cases, RecordKind kind);

/* ---- offers_built.c ---- */

/* Offers a candidate that holds, else keeps it if it comes nearest. */
void try_candidate(Offering *offering, const Candidate *of);

/* Whether something holds a candidate back that looks at no panel, clip or screw but at those of `kind`; RECORD_KINDS: at none.
 * It then holds back every candidate with the same listings and this part. */
bool is_held_back_by(Offering *offering, const Candidate *of, RecordKind kind);

void offer_constructions(Offering *offering);
void offer_choices(Offering *offering);
void offer_terms(Offering *offering);

#endif
