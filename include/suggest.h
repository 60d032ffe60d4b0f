/* SPDX-License-Identifier: MIT
 * The nearest of some words: bounded edit distance, for "did you mean".
 */
#ifndef SUGGEST_H
#define SUGGEST_H

#include <stddef.h>

/* The number of the word nearest to `text` among `count`, or -1 if none is near (a third of its letters, at most 3 edits; texts
 * above 40 bytes have none). */
int suggest(const char *text, const char *const *word, size_t count);

#endif
