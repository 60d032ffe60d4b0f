/* SPDX-License-Identifier: MIT
 * The program on one page: read, resolve, compute, judge, advise, report. One way through; no stage calls a sister.
 */
#ifndef PIPELINE_H
#define PIPELINE_H

#include "earlier.h"
#include "node.h"
#include "offers.h"
#include "order.h"
#include "sheet.h"
#include "takeoff.h"

/* read: the reference tables, built in. A fault is the program's own. */
const Reference *read_reference(Arena *run);

/* read: an edition from a folder, or a built-in one by its name. NULL if it is faulty: `faults` has every fault at its place and
 * the files they stand in. */
const Criteria *read_criteria(Arena *run, const char *folder, const Reference *reference, Complaints *faults);

/* read: the registers from a folder; NULL `folder`: the built-in invented ones. NULL if faulty. */
const Registers *read_registers(Arena *run, const char *folder, const Reference *reference, Complaints *faults);

/* read: a YAML file to nodes. NULL only if nothing could be read; complaints->broken says whether it broke on the way. */
Node *read_yaml(Arena *arena, const Source *source, Complaints *complaints);

/* read: nodes to a submittal, or to the reviewer's file. Always gives a record; what is wrong is in `complaints`. */
Submittal *read_submittal(Arena *arena, Node *root, const Source *source, const Reference *reference, Complaints *complaints);
Review *read_review(Arena *arena, Node *root, const Source *source, const Reference *reference, Complaints *complaints);

/* read: a list of purchases. NULL if a line of it cannot be told for certain: `complaints` has every fault. */
const OrderList *read_order(Arena *arena, const Source *source, Complaints *complaints);

/* resolve: the tree of cases, parts bound to the catalogue, areas to their listings, comparisons and roles made. */
typedef struct {
	const Submittal *submittal;
	const Review *review;
	const Criteria *criteria;
	const Reference *reference;
	const Registers *registers;
	const Earlier *earlier; /* the report of the round before, or NULL; and the submittal it was made of */
	const Submittal *before;
	const char *lacks_earlier; /* where the report of the round before should be and is not; NULL: nobody looked, or there is none */
	int32_t as_of; /* INT32_MIN: not given */
	bool nameless; /* nobody will read the names of the cases */
} Inputs;
Cases *resolve(Arena *arena, const Inputs *inputs);

/* resolve, for advise: a part with another record in its place, bound to the catalogue, beside the tree: no other case knows
 * it. */
Case *resolve_alone(Arena *arena, const Case *part, const void *submitted);

/* judge: every rule over its records, what is missing, grouping, numbering, outcome. */
Verdict *judge(Arena *arena, Cases *cases, const Complaints *complaints, const Source *source);

/* judge: slips in the reviewer's file, at their places. Of the file alone; and against the submittal it was judged with: false
 * if that review is worth nothing, true if there are only notices. Neither ever stands in the contractor's letter. */
void check_review(const Review *review, Complaints *faults);
bool check_reviewed(const Verdict *verdict, Complaints *faults);

/* judge: path and fingerprint of every place, for the formats and rounds that need them. */
void take_fingerprints(Verdict *verdict, Arena *arena);

/* judge: which standing checks on site concern which roof area, for the inspector's sheet. */
void find_site_checks(Verdict *verdict, Arena *arena);

/* judge: what became of each rule, for formats that say what was passed too. */
void find_outcomes(Verdict *verdict, Arena *arena);

/* judge, for advise: what of NOT REVIEWED or worse is broken, missing or cannot be judged, without an order and without texts.
 * Rule `first` is judged before all others. Without `whole`, rules on records outside of roof areas are left out. `found` says
 * whether to go on. */
typedef struct Trouble {
	const char *code;
	const Rule *rule; /* NULL: what is missing */
	const Field *field; /* what is missing */
	const Case *where;
} Trouble;
typedef struct {
	const Rule *first;
	bool whole, alone; /* alone: no rule but `first` */
	bool (*found)(void *user, const Trouble *trouble);
	void *user;
	const bool *stays; /* of each rule: what changed cannot change it but on records of kind `changed`; NULL: all are judged whole */
	RecordKind changed;
} Trial;
void judge_trial(Arena *arena, Cases *cases, const Trial *trial);

/* compute: what a page draws of each roof area. */
void draw_areas(Verdict *verdict, Arena *arena);

/* compute: every fact of every record, for the sheet of calculations. */
Sheet *make_sheet(const Verdict *verdict, Arena *arena);

/* advise: the thinnest margins of a sheet and what would use them up, by varying a copy. */
void find_margins(Sheet *sheet, Verdict *verdict, Arena *arena);

/* advise: how much of every part the submittal needs, as submitted. */
Takeoff *take_off(const Verdict *verdict, Arena *arena);

/* advise: a list of purchases against what was approved, or submitted. */
Order *hold_order(const OrderBasis *basis, const OrderList *list, Arena *arena);

/* advise: what the criteria would accept, by judging copies. */
Offers *make_offers(Verdict *verdict, Arena *arena);

/* advise: fills the remedies that only a varied copy can answer. */
void advise(Verdict *verdict, Arena *arena);

#endif
