/* SPDX-License-Identifier: MIT
 * Offering: what the files of the options share.
 */
#ifndef ADVISE_OFFERING_H
#define ADVISE_OFFERING_H

#include "advising.h"
#include "offers.h"

enum { MOST_OFFER_TRIES = 20000 };

typedef struct {
	Advising *advising;
	Offers *offers;
	const Case *area;
	uint32_t number; /* of the area + 1 */
	char nearest[400]; /* the construction that fewest rules hold back, in words */
	uint32_t blocks; /* how many do */
} Offering;

bool may_offer(Offering *offering);

/* An empty record of a part with the form's assumptions, its use or place set by key. */
void *part_made(Arena *arena, const Record *record);
void set_word(const Record *record, void *row, const char *key, const char *word);

/* A list of a copied roof area with room for one more in front. */
void *list_with_room(Arena *arena, List *list, const Record *record);

void offer_constructions(Offering *offering);
void offer_choices(Offering *offering);
void offer_terms(Offering *offering);

#endif
