/* SPDX-License-Identifier: MIT
 * Texts as people write them: letters of either case, blanks around them of no matter.
 */
#include "text.h"

#include <ctype.h>
#include <string.h>
#include <strings.h>

typedef struct {
	const char *at;
	size_t length;
} Part;

static Part trimmed(const char *text, size_t length)
{
	while (length > 0 && isspace((unsigned char)*text)) {
		text++;
		length--;
	}
	while (length > 0 && isspace((unsigned char)text[length - 1]))
		length--;
	return (Part){text, length};
}

static bool same_part(Part a, Part b)
{
	return a.length == b.length && strncasecmp(a.at, b.at, a.length) == 0;
}

/* Most texts that are asked about are equal, or differ in the first letter. */
bool same_text(const char *a, const char *b)
{
	if (a == b || strcmp(a, b) == 0)
		return true;
	if (!isspace((unsigned char)*a) && !isspace((unsigned char)*b) && tolower((unsigned char)*a) != tolower((unsigned char)*b))
		return false;
	return same_part(trimmed(a, strlen(a)), trimmed(b, strlen(b)));
}

bool same_words(const char *key, const char *words)
{
	Part part = trimmed(words, strlen(words));
	if (strlen(key) != part.length)
		return false;
	for (size_t i = 0; i < part.length; i++)
		if (tolower((unsigned char)part.at[i]) != (key[i] == '_' ? ' ' : key[i]))
			return false;
	return true;
}

bool is_among(const char *text, const char *joined)
{
	Part wanted = trimmed(text, strlen(text));
	for (const char *at = joined;;) {
		size_t length = strcspn(at, ";");
		if (same_part(wanted, trimmed(at, length)))
			return true;
		if (at[length] == '\0')
			return false;
		at += length + 1;
	}
}

const char *folded(Arena *arena, const char *text, size_t *length)
{
	Part part = trimmed(text, strlen(text));
	char *copy = arena_text(arena, part.at, part.length);
	for (size_t i = 0; i < part.length; i++)
		copy[i] = (char)tolower((unsigned char)copy[i]);
	*length = part.length;
	return copy;
}
