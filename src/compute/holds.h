/* SPDX-License-Identifier: MIT
 * Whether a difference from another paper is allowed: by the listing's own term, or by the direction of its attribute.
 */
#ifndef HOLDS_H
#define HOLDS_H

#include "fetch.h"

/* Whether the listing's own term for this attribute holds; the note says what it allows. */
double term_holds(Case *comparison, const Compared *compared);

/* Records the value submitted as what the comparison went by, however it was said. */
void fetch_submitted(Case *comparison, const Compared *compared);

/* Waits for the value submitted; false if it is not there. */
bool fetch_here(Case *comparison, const Compared *compared);

#endif
