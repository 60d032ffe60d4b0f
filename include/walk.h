/* SPDX-License-Identifier: MIT
 * Walk: the files of some kinds below a folder, one after the other in the byte order of their paths. Only the names of the
 * folders on the way are held, however many files there are. Links are not followed, hidden names are left aside.
 */
#ifndef WALK_H
#define WALK_H

#include "arena.h"

#include <stdbool.h>

typedef struct Walk Walk;

/* What submittals and reports are called at their end; NULL behind the last. */
extern const char *const walk_submittals[], *const walk_reports[];

/* Whether a name ends so. */
bool walk_wants(const char *const *endings, const char *name);

/* NULL if the folder cannot be opened. The arena must serve nothing else until the walk is over. */
Walk *walk_begin(Arena *arena, const char *folder, const char *const *endings);

/* The next path, good until the one after it is asked for; NULL at the end. A folder that cannot be opened is a path too, so that
 * reading it says so. */
const char *walk_next(Walk *walk);

#endif
