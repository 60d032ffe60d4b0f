/* SPDX-License-Identifier: MIT
 * The answers that are no values: unknown, by others, not applicable.
 */
#ifndef SAID_H
#define SAID_H

#include "fill.h"

/* What a text says: SAID_UNKNOWN, SAID_BY_OTHERS, SAID_NOT_APPLICABLE with the name or reason in `*rest` (may be empty); else
 * SAID_VALUE. */
Said said_by_text(const char *text, size_t length, const char **rest, size_t *rest_length);

/* The same for a map of one key such as `{by others: NAME}`: the node of the name or reason in `*rest`. */
Said said_by_map(const Node *map, const Node **rest);

#endif
