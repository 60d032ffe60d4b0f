/* SPDX-License-Identifier: MIT
 * Batch: many files over several threads, their results handed out in the order the files were taken in, so that what is printed
 * does not depend on how many threads there are.
 */
#ifndef COMMAND_BATCH_H
#define COMMAND_BATCH_H

#include "arena.h"

#include <stdbool.h>

enum { MOST_JOBS = 256 };

/* What is done; each function gets `user`. A result is a record of the user's in `arena`, which is wound back once it was
 * shown. */
typedef struct {
	void *user;
	void *(*next)(void *user, Arena *arena); /* what to do next, one caller at a time; NULL: nothing is left */
	void (*work)(void *user, void *result, Arena *keep, Arena *own); /* by any thread; `own` is wound back behind it */
	void (*show)(void *user, const void *result); /* by the caller's thread, in order */
	unsigned jobs; /* how many threads work */
} Batch;

/* Ends by the signal itself, whole results shown, if one asks to end. */
void run_batch(const Batch *batch);

/* How many threads can run at once here. */
unsigned processors(void);

#endif
