/* SPDX-License-Identifier: MIT
 * History: what the round before held, beside this one: which record is which, and what changed between the two.
 */
#ifndef HISTORY_H
#define HISTORY_H

#include "earlier.h"
#include "hash.h"

#include <string.h>

typedef enum { CHANGED_VALUE, RECORD_ADDED, RECORD_REMOVED } ChangeKind;

/* One value that is not what it was, or one record more or less. */
typedef struct {
	ChangeKind kind;
	const Case *now; /* the record; of a removed one that which held it, or the submittal */
	const Case *then; /* NULL: added */
	const Record *record; /* whose field it is; of a record more or less its own */
	const Field *field; /* NULL: the record as a whole */
	const char *keys; /* "warranty.term": from the record on; NULL: the record as a whole */
	const char *here, *there; /* as typed; "nothing" where not stated */
	const char *path; /* of the record in the round before, of an added one in this */
	Place place; /* line 0: it stands nowhere */
	bool renamed; /* an item that says what it was: rules ask whether that is declared */
	bool asked, declared; /* by an item of the round before; under `changes`, or by the paper of a reply */
} Changed;

/* The records of this round that were one record before: more than one where it was split. */
typedef struct HeldAs {
	Case *at;
	struct HeldAs *next;
} HeldAs;

typedef struct History {
	const Earlier *earlier;
	const Cases *before; /* NULL: a bid, which holds nothing to compare with */
	Hash *now; /* path in the round before to HeldAs */
	Hash *then; /* the same to the Case of the round before */
	Changed *changed;
	uint32_t changes, room;
	Hash *replaced; /* path of a record that is gone to the name of a new one in the same list */
	Hash *renames; /* path of a record whose new item an item asked for */
	bool *made_good; /* of each earlier item on a change: that it is declared by now, or taken back */
} History;

/* The records of this round that had a path in the round before; NULL: none. */
static inline const HeldAs *held_as(const History *history, const char *path)
{
	return history->now != NULL && path != NULL ? hash_get(history->now, path, strlen(path)) : NULL;
}

#endif
