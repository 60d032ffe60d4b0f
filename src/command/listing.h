/* SPDX-License-Identifier: MIT
 * Listing: paths from a file or standard input, one a line; or with a zero byte behind each, as tools write them where a name may
 * hold a line break. Relative paths start where the program was started.
 */
#ifndef COMMAND_LISTING_H
#define COMMAND_LISTING_H

#include "arena.h"

#include <stdbool.h>

typedef struct Listing Listing;

/* "-" is standard input; NULL if the file cannot be opened. */
Listing *listing_open(Arena *arena, const char *path);

/* The next path, in `arena`; NULL at the end. A path that is too long comes as NULL with `*too_long` set. */
const char *listing_next(Listing *listing, Arena *arena, bool *too_long);

/* Whether reading ended early by a fault of the system. */
bool listing_failed(const Listing *listing);

void listing_close(Listing *listing);

#endif
