/* SPDX-License-Identifier: MIT
 * Texts as people write them: letters of either case, blanks around them of no matter.
 */
#ifndef TEXT_H
#define TEXT_H

#include "arena.h"

#include <stdbool.h>

bool same_text(const char *a, const char *b);

/* Whether words are a key with blanks for its underscores. */
bool same_words(const char *key, const char *words);

/* Whether `text` is one of the texts joined by semicolons. */
bool is_among(const char *text, const char *joined);

/* A copy in lower case without blanks around it, as a key. */
const char *folded(Arena *arena, const char *text, size_t *length);

#endif
