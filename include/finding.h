/* SPDX-License-Identifier: MIT
 * Finding: one item of the numbered list, with every place it was found at.
 */
#ifndef FINDING_H
#define FINDING_H

#include "case.h"
#include "complaint.h"
#include "facts.h"

typedef enum { ITEM_NEW, ITEM_OPEN, ITEM_CLOSED, ITEM_CONDITION, ITEM_VARIANCE } ItemState;

typedef struct {
	const Case *where; /* NULL for a file as a whole */
	Place place;
	uint64_t fingerprint; /* over code, path by names and field; not over lines or values; 0 until asked for */
	ItemState state;
	const char *path; /* of the record, by names; NULL until asked for */
	const char *field; /* "clip.item": what it stands at; NULL: no field */
	const char *see; /* sheet or detail, as the record says */
	const char *record, *name; /* of a place of an earlier round whose record is gone: what it was; else NULL */
} Spot;

/* One side of a comparison, as printed and as computed. */
typedef struct {
	const char *text; /* "24 in", or as typed; NULL: none */
	double value; /* meaningful if has_value */
	bool has_value;
	const char *unit;
} Side;

typedef enum {
	FOUND_BY_READER, FOUND_MISSING, FOUND_REFUSED, FOUND_BROKEN, FOUND_BY_REVIEWER,
	FOUND_BY_ROUNDS, /* by laying the round before beside this one, or a variance of the register */
	FOUND_EARLIER /* in an earlier round; nothing of it was found in this one */
} FoundBy;

typedef struct {
	FoundBy found_by;
	const char *code;
	Action action;
	const Rule *rule; /* of FOUND_BROKEN */
	const Case *judged; /* of FOUND_BROKEN: the case judged, at the first place; may be a comparison, role or paper */
	const Complaint *complaint; /* of FOUND_BY_READER */
	Spot *spot;
	uint32_t spots;
	const char *record; /* kind of record, in words: "fastener" */
	const char *name; /* of the first place */
	const char *finding, *remedy, *basis, *answer_by;
	const char *cites; /* the paragraph or the listing behind it, named before the basis; NULL: none */
	const char *disposition; /* the reviewer's own words: "closed: measured on site"; NULL: none */
	Side submitted, limit;
	const char **waits; /* codes of rules that wait for what is missing */
	uint32_t waiting;
	const char **field; /* keys this item asks for */
	uint32_t fields;
	Authority authority;
	KnownBy known_by;
	uint16_t round, item; /* 1.03; 0 at stage bid */
	uint16_t settled; /* the round in which it was closed; 0: it is not */
	const char *note; /* why it is in its state: "removed: confirm on the roof plan"; NULL: nothing to say */
} Finding;

/* A rule that could not be judged on a record, and what it waits for. */
typedef struct {
	const Rule *rule;
	const Case *where; /* NULL: the list of its records is waiting */
	const char *waits_for;
	const Finding *item; /* the item that asks for it, or the cause it depends on; may be NULL */
} NotYet;

/* Whether one place of it still waits for an answer; whether it may go on if its note is followed. */
bool is_open_item(const Finding *item);
bool is_condition_item(const Finding *item);

/* The state of an item as a whole: open while one of its places is. */
ItemState item_state(const Finding *item);

/* The action it counts under: its own, a milder one where the reviewer kept it as a condition; -1 where he closed it. */
int counted_action(const Finding *item);

/* The same of an action and a state, as they stand at one place or in a report. */
int counted_as(Action action, ItemState state);

/* What an estimator does about an item before he bids; meant at stage bid only. */
typedef enum { BID_CANNOT_BE_MET, BID_WILL_COST, BID_ASK_BEFORE, BID_GROUPS } BidGroup;
BidGroup bid_group(const Finding *item);
const char *bid_group_words(BidGroup group);

/* The names only advise knows, for remedies; NULL where it found none. */
typedef struct {
	const char *nearest_listing, *accepted_items, *greatest_spacing, *longest_term;
	const char *letter_inputs;
} Advice;

/* A wording with its operands put in, all numbers with the same digits; NULL if it names something of `advice` that is NULL. */
const char *wording_text(const Wording *wording, const Case *at, const Advice *advice, Arena *arena);

/* The remedy of a broken rule with what advise found; its remedy_else where that is not enough. */
const char *finding_remedy(const Finding *finding, const Advice *advice, Arena *arena);

#endif
