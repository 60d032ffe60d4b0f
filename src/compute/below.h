/* SPDX-License-Identifier: MIT
 * What belongs to a roof area, a test or the submittal, found once for all facts: no fact walks a list for each of another.
 */
#ifndef BELOW_H
#define BELOW_H

#include "case.h"

/* The first case of a kind in the roof area, or under the submittal as a whole; `next` leads on. */
Case *first_below(const Case *area, RecordKind kind);

/* The roof area a case belongs to, or NULL. */
Case *area_of(const Case *at);

/* The test of a roof area that is named for class, or NULL; `*open` is one that is not said what it is for, or NULL. */
Case *class_test_of(const Case *area, Case **open);

/* The first comparison with the listing that a test names; `next_of_test` leads on. */
Case *first_compared(const Case *test);

/* A place to keep what was worked out once from the listing of a test; NULL at first. */
void **kept_with(Case *test);

/* A place to keep what was bought, by items; NULL at first. */
void **kept_ledger(const Case *at);

/* A place to keep what was found on the roof, by roof areas; NULL at first. */
void **kept_found(const Case *at);

/* Whether all comparisons of the submittal were made; there is a limit to them. */
bool are_all_compared(const Case *at);

/* The first role of the same row of required.csv in the same roof area: what fills it fills all of them. */
Case *first_role(Case *role);

/* How many letters name a roof area. */
uint32_t letters_naming(const Case *at, const char *name);

/* The letters that name a roof area, the first MOST_COVERING of them; `*count` is how many there are. */
enum { MOST_COVERING = 16 };
Case *const *letters_covering(const Case *at, const char *name, uint32_t *count);

/* The letters, at most 64, whose areas are not known. */
Case *const *letters_unknown(const Case *at, uint32_t *count);

/* The roof area of a name, or NULL; whether there is one. */
Case *area_called(const Case *at, const char *name);
bool is_area_name(const Case *at, const char *name);

#endif
