/* SPDX-License-Identifier: MIT
 * Rounds: where the report of the round before comes from, whether it fits, and where this round's is kept.
 */
#ifndef COMMAND_ROUNDS_H
#define COMMAND_ROUNDS_H

#include "judging.h"
#include "out.h"

/* Why a submittal is not reviewed; the texts are made in `keep`. */
typedef struct Refusal {
	Arena *keep;
	const Out *faults; /* at their places, for standard error; NULL: none */
	const char *why; /* in one line */
} Refusal;

/* What is wrong with the options; NULL if nothing is. */
const char *wrong_rounds(const Arguments *arguments, bool several);

/* Whether items are followed from round to round. */
bool run_in_rounds(const Arguments *arguments);

/* Sets the earlier report of a submittal, if there is one; false if what there is does not fit. */
bool find_earlier(const Shared *shared, Inputs *inputs, Arena *arena, Refusal *refusal);

/* Under --reports: the report of this round and where it goes; path NULL: it is not kept. The text is made in `keep`. */
typedef struct {
	const char *path, *text;
	size_t length;
} Keeping;
Keeping report_to_keep(const Shared *shared, const Verdict *verdict, Arena *keep);

#endif
