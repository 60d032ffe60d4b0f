/* SPDX-License-Identifier: MIT
 * Walking the tree of cases, and the words for zones, for every stage.
 */
#include "case.h"

#include <ctype.h>
#include <string.h>

const Case *case_outward(const Case *at, RecordKind kind)
{
	while (at != NULL && at->kind != kind)
		at = at->up;
	return at;
}

const char *zone_words(Arena *arena, const char *key)
{
	static const char word[] = "zone ";
	if (key == NULL || key[0] == '\0')
		return "all zones";
	char *words = arena_text(arena, key, strlen(key));
	for (char *c = words; *c != '\0'; c++)
		*c = *c == '_' ? ' ' : (char)tolower((unsigned char)*c);
	return strncmp(words, word, sizeof word - 1) == 0 ? words + sizeof word - 1 : words;
}

const char *next_place(Arena *arena, const char **joined)
{
	*joined += strspn(*joined, "; ");
	size_t length = strcspn(*joined, ";");
	const char *place = length > 0 ? arena_text(arena, *joined, length) : NULL;
	*joined += length;
	return place;
}
