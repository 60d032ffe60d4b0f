/* SPDX-License-Identifier: MIT
 * What facts about the engineer's letters share.
 */
#ifndef LETTERS_H
#define LETTERS_H

#include "fetch.h"

/* The letters that cover a roof area. */
typedef struct {
	Case *const *at;
	uint32_t count;
} Letters;

/* Those of the area of `fact`; none, and the fact waits, is refused or does not apply, where they are not known or not there. */
Letters fetch_letters(Case *fact);

#endif
