/* SPDX-License-Identifier: MIT
 * Items that are nearly one of the catalogue's: a slip of the pen is told as one, not as a part from elsewhere.
 */
#include "fetch.h"
#include "suggest.h"
#include "text.h"

#include <string.h>

/* The items of the catalogue for a kind of part. */
static const char **items_of(const Criteria *criteria, RecordKind kind, Arena *arena, size_t *count)
{
	size_t room = 0;
#define COUNT(member, R, file) room += R##_record.kind == kind ? criteria->member.count : 0;
#define FILL(member, R, file) \
	for (uint32_t i = 0; R##_record.kind == kind && i < criteria->member.count; i++) \
		items[(*count)++] = criteria->member.row[i].item.text;
	CATALOGUE_TABLES(COUNT)
	const char **items = TAKE(arena, const char *, room + 1);
	*count = 0;
	CATALOGUE_TABLES(FILL)
	return items;
}

/* Items differ by few letters on purpose: only what is spelt alike but for two letters in a row is a slip. */
static bool differ_little(const char *a, const char *b)
{
	size_t a_end = strlen(a), b_end = strlen(b), start = 0;
	while (a[start] != '\0' && a[start] == b[start])
		start++;
	while (a_end > start && b_end > start && a[a_end - 1] == b[b_end - 1])
		a_end--, b_end--;
	return a_end - start <= 2 && b_end - start <= 2;
}

static const char *nearest_item(const Case *part, const char *item)
{
	size_t count;
	const char **items = items_of(part->all->criteria, part->kind, part->all->arena, &count);
	for (size_t i = 0; i < count; i++)
		if (same_text(items[i], item))
			return items[i];
	int found = suggest(item, items, count);
	return found >= 0 && differ_little(item, items[found]) ? items[found] : NULL;
}

double part_item_is_misspelt_yes(Case *part)
{
	const char *item = GIVEN_OR_AT(part, part, Panel, item, NULL);
	if (item == NULL)
		fetch_shown(part, ask(part, offsetof(Panel, item)));
	if (!ready(part) || item == NULL || part->catalogue != NULL || same_text(item, "other"))
		return 0;
	const char *nearest = nearest_item(part, item);
	note(part, nearest);
	return nearest != NULL;
}
