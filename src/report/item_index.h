/* SPDX-License-Identifier: MIT
 * Which items stand at a record, found without walking all items for each.
 */
#ifndef REPORT_ITEM_INDEX_H
#define REPORT_ITEM_INDEX_H

#include "parts.h"

typedef struct {
	const Case *where;
	const Finding *item;
} Standing;

typedef struct {
	const Standing *at; /* by record, those of one record in the order of their numbers */
	size_t count;
	const PartLine *const *part; /* by record */
	size_t parts;
} ItemIndex;

ItemIndex item_index(const Verdict *verdict, Arena *arena);

/* The open items at a record: the first of `*count`. */
const Standing *items_at(const ItemIndex *index, const Case *where, size_t *count);

/* What is said of a part; NULL if it is none of those that are cleared one by one. */
const PartLine *part_line_at(const ItemIndex *index, const Case *part);

#endif
