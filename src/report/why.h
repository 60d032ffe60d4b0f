/* SPDX-License-Identifier: MIT
 * Rule cases: the changes to the clean example that break a rule, meet it, or make it silent; from the built-in tables of cases.
 */
#ifndef REPORT_WHY_H
#define REPORT_WHY_H

#include "out.h"

#include <stdbool.h>

/* The changes of one code and case, one a line; false if there are none. */
bool put_rule_case(Out *out, const char *code, const char *which, Arena *arena);

#endif
