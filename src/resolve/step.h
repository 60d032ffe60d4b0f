/* SPDX-License-Identifier: MIT
 * Step: how one value stands to another of the same attribute.
 */
#ifndef STEP_H
#define STEP_H

#include "criteria.h"
#include "reference.h"

/* In the order of the words `steps`. More is up: a closer spacing is a step down. */
typedef enum { STEP_SAME, STEP_UP, STEP_DOWN, STEP_OTHER, STEP_UNKNOWN } Step;

/* What is compared: an attribute of one kind of record. */
typedef struct {
	const Criteria *criteria; /* for its scales */
	const Reference *reference; /* for trade and screw sizes */
	RecordKind kind;
	const Field *field;
	double tolerance_percent; /* a difference that counts as the same */
} Attribute;

/* The step from the value in row `there` to that in row `here`, both of the attribute's kind. */
Step step_between(const Attribute *attribute, const void *here, const void *there);

/* Whether the step is open because `#14` stands beside `1/4`, and only the mark on the box tells which it is. */
bool asks_for_mark(const Attribute *attribute, const void *here, const void *there);

/* The word of a step, as a value made by resolve. */
Word step_word(Step step);

#endif
