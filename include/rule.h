/* SPDX-License-Identifier: MIT
 * Rule: one row of rules.csv with its names bound. `fact relation limit` for each record of a kind, when all conditions hold.
 */
#ifndef RULE_H
#define RULE_H

#include "action.h"
#include "form.h"

typedef enum {
	FROM_CONSTANT, /* a number, day, word or text written in the rule */
	FROM_FIELD, /* of the case `at` outwards */
	FROM_FACT,
	FROM_LISTED, /* a field of the listing, or of its tested part */
	FROM_CATALOGUE, /* a field of the catalogue row */
	FROM_EDITION, /* a value of criteria.yaml */
	FROM_LIST /* a list of lists.csv, by name */
} OperandFrom;

/* What kind of value an operand gives. */
typedef enum { VALUE_NUMBER, VALUE_DATE, VALUE_YES, VALUE_WORD, VALUE_TEXT, VALUE_LIST } ValueKind;

typedef struct {
	uint8_t from, gives;
	Unit unit;
	RecordKind at; /* walk outwards to this record */
	uint16_t fact;
	uint32_t offset; /* from the start of that row, through ONE records */
	const Field *field;
	double factor; /* brings the value to the left side's unit */
	double value; /* of a constant number, day or yes */
	const char *word; /* of a constant word or text, of a list its name; the name as written for messages */
} Operand;

typedef struct {
	Operand left, right;
	Relation relation;
	Place place;
} Test;

/* A finding or remedy with its names bound: text, operand, text, operand, ..., text. */
typedef struct {
	const char *text; /* literal part before the operand; the last piece has no operand */
	bool has_operand, for_advise; /* for_advise: {nearest_listing}, {accepted_items}, {greatest_spacing}, {longest_term} */
	Operand operand; /* {submitted}, {allowed}, {note} and what advise knows: FROM_CONSTANT, `word` is the name */
} Piece;
typedef struct {
	const Piece *piece;
	uint32_t count;
	const char *whole; /* as written */
} Wording;

typedef struct Rule {
	const char *code;
	Action action;
	RecordKind for_each; /* RECORD_KINDS: every kind of part */
	Test is;
	const Test *when;
	uint32_t conditions;
	Wording finding, remedy, remedy_else;
	Authority authority;
	const char *basis, *answer_by, *why;
	const uint16_t *after; /* numbers of rules */
	uint32_t causes;
	bool rejects, waivable;
	Place place;
} Rule;

#endif
