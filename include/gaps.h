/* SPDX-License-Identifier: MIT
 * Gaps: what an edition of criteria lacks though no row of it is faulty, and which verdicts would turn against an older one.
 */
#ifndef GAPS_H
#define GAPS_H

#include "criteria.h"
#include "reference.h"
#include "registers.h"

typedef enum { GAP_UNUSED_PART, GAP_UNMET_TERM, GAP_SILENT_RULE, GAP_EXPIRING, GAP_WIDE_TESTS, GAP_KINDS } GapKind;

typedef struct {
	GapKind kind;
	const char *file; /* and line: the row */
	uint32_t line;
	const char *what, *why; /* "clip-b-float"; "no listing was tested with it" */
} Gap;

/* An item of NOT REVIEWED or worse that one edition raises on a submittal and the other does not. */
typedef struct {
	const char *code, *where, *action;
} TurnedItem;

/* A submittal that the two editions judge differently. */
typedef enum { TURN_HELD_BACK, TURN_LET_THROUGH, TURN_CHANGED } TurnKind;

typedef struct {
	const char *submittal, *report;
	uint16_t round;
	TurnKind kind;
	uint32_t before, after; /* items of NOT REVIEWED or worse */
	const TurnedItem *raised, *gone; /* by the new edition */
	uint32_t raiseds, gones;
} Turn;

typedef struct {
	const Criteria *criteria, *against; /* against NULL: not asked */
	const char *sha256, *against_sha256;
	const Reference *reference;
	const Registers *registers;
	int32_t as_of; /* INT32_MIN: not given, then nothing can be about to expire */
	const Gap *gap;
	uint32_t gaps;
	const Turn *turn; /* by submittal */
	uint32_t turns, judged; /* judged: submittals, each by its latest report */
} EditionCheck;

enum { EXPIRY_DAYS = 90 }; /* what ends within so many days is about to expire */

/* advise: what is lacking. Fills gap and gaps. */
void find_gaps(EditionCheck *check, Arena *arena);

/* advise: why a rule can never be broken, whatever is submitted; NULL if it can, or that cannot be told. */
const char *why_silent(const Criteria *criteria, const Rule *rule, Arena *arena);

#endif
