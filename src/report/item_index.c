/* SPDX-License-Identifier: MIT
 * Items by the records they stand at.
 */
#include "item_index.h"

#include <stdint.h>
#include <stdlib.h>

static int by_record(const void *a, const void *b)
{
	const Standing *x = a, *y = b;
	uintptr_t one = (uintptr_t)x->where, other = (uintptr_t)y->where;
	if (one != other)
		return one < other ? -1 : 1;
	return (x->item > y->item) - (x->item < y->item);
}

static int by_part(const void *a, const void *b)
{
	uintptr_t one = (uintptr_t)(*(const PartLine *const *)a)->part, other = (uintptr_t)(*(const PartLine *const *)b)->part;
	return (one > other) - (one < other);
}

static const PartLine *const *sorted_parts(const Verdict *verdict, Arena *arena)
{
	const PartLine **part = TAKE(arena, const PartLine *, verdict->parts + 1);
	for (uint32_t i = 0; i < verdict->parts; i++)
		part[i] = &verdict->part[i];
	qsort(part, verdict->parts, sizeof *part, by_part);
	return part;
}

const PartLine *part_line_at(const ItemIndex *index, const Case *part)
{
	size_t low = 0, high = index->parts;
	while (low < high) {
		size_t middle = low + (high - low) / 2;
		if ((uintptr_t)index->part[middle]->part < (uintptr_t)part)
			low = middle + 1;
		else
			high = middle;
	}
	return low < index->parts && index->part[low]->part == part ? index->part[low] : NULL;
}

/* What is closed stands nowhere any more. */
ItemIndex item_index(const Verdict *verdict, Arena *arena)
{
	size_t count = 0, made = 0;
	for (uint32_t i = 0; i < verdict->items; i++)
		count += verdict->item[i].spots;
	Standing *at = TAKE(arena, Standing, count);
	for (uint32_t i = 0; i < verdict->items; i++)
		for (uint32_t s = 0; s < verdict->item[i].spots && counted_action(&verdict->item[i]) >= 0; s++)
			if (verdict->item[i].spot[s].where != NULL && verdict->item[i].spot[s].state != ITEM_CLOSED)
				at[made++] = (Standing){ verdict->item[i].spot[s].where, &verdict->item[i] };
	qsort(at, made, sizeof *at, by_record);
	return (ItemIndex){ at, made, sorted_parts(verdict, arena), verdict->parts };
}

const Standing *items_at(const ItemIndex *index, const Case *where, size_t *count)
{
	size_t low = 0, high = index->count;
	while (low < high) {
		size_t middle = low + (high - low) / 2;
		if ((uintptr_t)index->at[middle].where < (uintptr_t)where)
			low = middle + 1;
		else
			high = middle;
	}
	*count = 0;
	while (low + *count < index->count && index->at[low + *count].where == where)
		(*count)++;
	return index->at + low;
}
