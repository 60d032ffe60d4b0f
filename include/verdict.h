/* SPDX-License-Identifier: MIT
 * Verdict: all that a report needs about one submittal. Reports take it const.
 */
#ifndef VERDICT_H
#define VERDICT_H

#include "finding.h"

/* What is said of one part, so that the estimator knows what he could buy. */
typedef enum { PART_CLEAR, PART_NOT_CLEARED, PART_DEPENDS } Clearance;
typedef struct {
	const Case *part;
	Clearance clearance;
	const Finding *item; /* of not cleared and depends on */
} PartLine;

/* A value the form assumed, a conservative one, with its row. */
typedef struct {
	const Case *where;
	const Field *field;
	const char *value;
} Assumption;

/* The applicant's word, or a figure from memory, that a verdict rests on. */
typedef struct {
	const char *what, *why;
} Unverified;

/* A standing check on site that concerns a roof area. `untold`: whether it does cannot be told from the papers. */
typedef struct {
	const SiteCheck *row;
	const Case *area;
	bool untold;
} SiteCheckDue;

/* How often each rule outcome came up. */
typedef struct {
	uint32_t met, broken, not_applicable, not_judged, refused, held_back;
} Tally;

/* What became of one rule: where it was met, and whether it was asked at all. */
typedef struct {
	const Rule *rule;
	const Spot *met; /* where and place alone */
	uint32_t mets;
	bool asked; /* met, broken or not judged somewhere */
} RuleOutcome;

typedef struct Verdict {
	Cases *cases;
	const Source *source, *review_source; /* the submittal; the reviewer's file or NULL */
	const Source *replies_source; /* of the reply sheet, or NULL */
	const struct Earlier *earlier; /* the report of the round before; NULL: none */
	const char *criteria_sha256; /* of the edition, worked out once a run where a format prints it; else NULL */
	bool self_check, broken_file;
	bool in_rounds; /* held against reports of earlier rounds, whether there was one or not */
	Action gate; /* the mildest action that makes the status 1 */
	bool si; /* the letter puts SI values beside the others */
	Stage stage;
	uint16_t round;
	Finding *item; /* sorted and numbered */
	uint32_t items, left_out; /* left_out: beyond 10,000 */
	uint32_t by_action[ACTION_COUNT];
	const NotYet *not_yet;
	uint32_t not_yets;
	const PartLine *part;
	uint32_t parts;
	const Assumption *assumed;
	uint32_t assumptions;
	const Assumption *not_applicable; /* said not to apply, with the reason as value */
	uint32_t not_applicables;
	const Unverified *unverified;
	uint32_t unverifieds;
	const SiteCheckDue *site_check; /* by area in the order of the file; none until asked for */
	uint32_t site_checks;
	const struct Drawings *drawings; /* of the roof areas; NULL until asked for */
	Tally tally;
	const RuleOutcome *outcome; /* of each rule of the edition, in its order; none until asked for */
	uint32_t outcomes;
	bool tells_passed; /* what was met and what did not apply are asked for */
	const char *recommended_action; /* NULL in a self-check */
	bool may_order;
	const char *order_line; /* "Do not order: ..." or "nothing found here stands in the way of ordering" */
	const struct Trouble *trouble; /* for advise: what a trial of the unchanged submittal would tell; NULL: it must be tried */
	uint32_t troubles;
	const char *order_condition; /* of the approval that counts; NULL: none */
	uint32_t known_by[4]; /* how many constants used were read, second-hand, from memory, common practice */
} Verdict;

/* The source a place stands in. */
const Source *verdict_source(const Verdict *verdict, uint16_t id);

#endif
