/* SPDX-License-Identifier: MIT
 * Holding: an order while it is held against what was submitted; what the files of it share.
 */
#ifndef ADVISE_HOLDING_H
#define ADVISE_HOLDING_H

#include "hash.h"
#include "order.h"

enum { MOST_CANDIDATES = 8 };

/* An item of the catalogue or of the submittal. */
typedef struct Known {
	const char *item;
	RecordKind kind;
	const void *row; /* of the catalogue; NULL: not in it */
	const Case *part; /* the first that is submitted; NULL: none is */
	OrderedItem *ordered; /* NULL: not in the takeoff */
	const PartLine *clearance; /* the worst of its places in the submittal; NULL: not submitted */
	struct Known *next; /* submitted, of the same kind */
	/* Of one that was not submitted, once a line asks: the submitted one that was meant, and what steps down from it. */
	const struct Known *meant;
	const char *down;
	bool asked, mistaken;
	bool is_certified; /* a certificate of a coil for it is among the purchases */
} Known;

/* A row of also_known_as.csv; the next with the same code, or the same words. */
typedef struct Alias {
	const AlsoKnown *row;
	struct Alias *next;
} Alias;

typedef struct {
	Order *order;
	Arena *arena;
	const Cases *cases;
	Hash *known, *codes, *words; /* by small letters: Known, Alias, Alias */
	Known *first[RECORD_KINDS], *last[RECORD_KINDS]; /* submitted: the first item of a kind, then those of the catalogue */
	const char **choice; /* items and codes, for spelling */
	const char **choice_item;
	uint32_t choices, choice_room;
	uint32_t suggestions;
} Holding;

/* What a line names. */
typedef struct {
	Known *at[MOST_CANDIDATES];
	uint32_t count;
	const char *whose; /* of a code that this supplier does not have: who has it */
} Named;

/* Gathers the items and their other names. */
void know_items(Holding *holding);
Known *known_find(const Holding *holding, const char *item);
Named line_names(Holding *holding, const OrderLine *line);

/* The item or code nearest by spelling, as "clip-a-float"; NULL if none is near. */
const char *nearest_name(Holding *holding, const OrderLine *line);

/* Whether a text names the panel maker. */
bool names_maker(const Criteria *criteria, const char *text);

/* Something against the order, and against a line of it, if any. */
void find_against(Holding *holding, OrderFinding found, OrderedLine *line);

/* A line that buys coil, for which no certificate is there. */
void know_certificates(Holding *holding);
void check_coil(Holding *holding, OrderedLine *line, const Known *known);

/* Whether the report given as approved may be one, and what has changed since. */
void find_report(Holding *holding);

/* A part that was not submitted. */
void find_wrong_part(Holding *holding, OrderedLine *line, Known *ordered);

/* Counts a line in the unit of the takeoff, or finds why it cannot be. */
void count_ordered(Holding *holding, OrderedLine *line, Known *known);

void know_lengths(Holding *holding);

/* The approval that is in force on a day; else NULL, with why the last of this package is not. */
const Approval *approval_on(const Cases *cases, int32_t day, const char **why, Arena *arena);

/* What is missing, short or long. */
void find_amounts(Holding *holding);

#endif
