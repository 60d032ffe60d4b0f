/* SPDX-License-Identifier: MIT
 * Findings and remedies with their names bound.
 */
#ifndef WORDING_READ_H
#define WORDING_READ_H

#include "tests.h"

typedef enum { WORDING_FINDING, WORDING_REMEDY, WORDING_REMEDY_ELSE } WordingPlace;

/* Binds the names in braces of a cell. `test` is that of the rule. */
bool wording_bind(const Binding *binding, const Text *cell, const Test *test, Wording *wording);

/* Whether a wording has a name that only advise knows. */
bool asks_advise(const Wording *wording);

/* Where advise knows nothing: complains of its names in the finding and in remedy_else, and of a remedy that has nothing else. */
void check_advise(const Binding *binding, const RuleRow *row, const Rule *rule);

/* A rule of the program does not speak for the code. */
void check_voice(const Binding *binding, const RuleRow *row);

#endif
