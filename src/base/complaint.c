/* SPDX-License-Identifier: MIT
 * Complaints: kept in a list, and worded when they are printed.
 */
#include "complaint.h"

#include <string.h>

enum { LONGEST_QUOTED = 80 };

void complain(Complaints *complaints, MessageId id, Place place, About about)
{
	complaints->at = arena_more(complaints->arena, complaints->at, complaints->count, &complaints->room, sizeof(Complaint));
	complaints->at[complaints->count++] = (Complaint){ id, place, about };
}

/* What a file wrote is quoted up to a limit, cut between characters. */
static const char *quoted(const char *text, Arena *arena)
{
	size_t length = text != NULL ? strlen(text) : 0;
	if (length <= LONGEST_QUOTED)
		return text != NULL ? text : "";
	size_t cut = LONGEST_QUOTED;
	while (cut > 0 && ((unsigned char)text[cut] & 0xc0) == 0x80)
		cut--;
	return arena_printf(arena, "%.*s...", (int)cut, text);
}

/* What stands for the name in braces; NULL if it is none of ours. */
static const char *filling(const About *about, const char *name, size_t length, Arena *arena)
{
	if (length == 3 && memcmp(name, "key", 3) == 0)
		return quoted(about->key, arena);
	if (length == 5 && memcmp(name, "value", 5) == 0)
		return quoted(about->value, arena);
	if (length == 4 && memcmp(name, "want", 4) == 0)
		return about->want != NULL ? about->want : "";
	if (length == 4 && memcmp(name, "also", 4) == 0)
		return about->also.line > 0 ? arena_printf(arena, "line %u", (unsigned)about->also.line) : "";
	return NULL;
}

typedef struct {
	const char *text;
	size_t length;
} Part;

/* The part at the front of a template: up to the next brace, or one name in braces filled. */
static Part next_part(const About *about, const char **at, Arena *arena)
{
	size_t plain = strcspn(*at, "{");
	if (plain == 0) {
		size_t name = strcspn(*at + 1, "}");
		const char *fill = (*at)[1 + name] == '}' ? filling(about, *at + 1, name, arena) : NULL;
		if (fill != NULL) {
			*at += name + 2;
			return (Part){ fill, strlen(fill) };
		}
		plain = 1; /* a brace that opens no name is a brace */
	}
	Part part = { *at, plain };
	*at += plain;
	return part;
}

const char *complaint_text(const Complaint *complaint, const char *template_text, Arena *arena)
{
	size_t length = 0;
	for (const char *at = template_text; *at != '\0';)
		length += next_part(&complaint->about, &at, arena).length;
	char *text = arena_take(arena, length + 1, 1), *end = text;
	for (const char *at = template_text; *at != '\0';) {
		Part part = next_part(&complaint->about, &at, arena);
		memcpy(end, part.text, part.length);
		end += part.length;
	}
	return text;
}
