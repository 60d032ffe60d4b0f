/* SPDX-License-Identifier: MIT
 * rules.csv bound: criteria->rule from criteria->rule_rows.
 */
#ifndef RULES_H
#define RULES_H

#include "wording.h"

/* Binds every row; `base` has all but its record. `whole`: no row was lost, so a code that is not there is nowhere. */
void rules_bind(const Binding *base, Criteria *criteria, bool whole);

/* Binds what rules wait for (`after`), for all rules at once. */
void causes_bind(const Binding *binding, Rule *rule, bool whole);

/* The next part of a text cut at `;`, blanks around it left out, from `*at` on; false after the last. Empty parts are passed
 * over. */
typedef struct {
	const char *text;
	size_t length, at;
} SplitPart;
bool split_next(const char *text, size_t *at, SplitPart *part);

#endif
