/* SPDX-License-Identifier: MIT
 * The cautions that concern a command, from the reference table, each with its basis.
 */
#include "calcs.h"
#include "markup.h"
#include "report.h"

#include <string.h>

/* Whether a command stands in "review; options", or the row concerns all. */
static bool concerns(const char *list, const char *command)
{
	size_t length = strlen(command);
	for (const char *at = list; *at != '\0';) {
		at += strspn(at, "; ");
		size_t word = strcspn(at, ";");
		while (word > 0 && at[word - 1] == ' ')
			word--;
		if ((word == length && strncmp(at, command, word) == 0) || (word == 3 && strncmp(at, "all", 3) == 0))
			return true;
		at += strcspn(at, ";");
	}
	return false;
}

/* Wrapped line by line, so that each begins with `lead`. */
static void put_led(Out *out, const char *lead, const char *text)
{
	size_t room = PAGE_WIDTH - 2 - strlen(lead);
	while (*text != '\0') {
		size_t length = strlen(text);
		if (length > room) {
			for (length = room; length > 0 && text[length] != ' '; length--)
				;
			length = length > 0 ? length : room;
		}
		out_literal(out, lead, strlen(lead));
		SAY(out, "  ");
		put_part(out, text, length);
		SAY(out, "\n");
		text += length;
		text += strspn(text, " ");
	}
}

/* The number of the next row that concerns a command, from `i` on; the count of rows after the last. */
static uint32_t next_row(const Reference *reference, const char *command, uint32_t i)
{
	while (i < reference->cautions.count && !concerns(reference->cautions.row[i].concerns.text, command))
		i++;
	return i;
}

const Caution *caution_from(const Reference *reference, const char *command, uint32_t *i)
{
	if (reference == NULL)
		return NULL;
	*i = next_row(reference, command, *i);
	return *i < reference->cautions.count ? &reference->cautions.row[(*i)++] : NULL;
}

/* A basis stands under the last of the cautions that share it. */
void write_cautions(Out *out, const Reference *reference, CautionsFor what, Arena *arena)
{
	if (reference == NULL || next_row(reference, what.command, 0) == reference->cautions.count)
		return;
	SAY(out, "\n");
	out_literal(out, what.lead, strlen(what.lead));
	SAY(out, "CAUTIONS\n");
	const Caution *row = reference->cautions.row;
	for (uint32_t i = next_row(reference, what.command, 0), next; i < reference->cautions.count; i = next) {
		next = next_row(reference, what.command, i + 1);
		put_led(out, what.lead, row[i].text.text);
		if (next == reference->cautions.count || strcmp(row[i].basis.text, row[next].basis.text) != 0)
			put_led(out, what.lead, arena_printf(arena, "(basis: %s)", basis_text(reference, row[i].basis.text, arena)));
	}
}

void write_cautions_page(Markup *page, const Reference *reference, const char *command, Arena *arena)
{
	uint32_t i = 0;
	ELEMENT(page, "h2", "Cautions");
	OPEN(page, "ul");
	ATTRIBUTE(page, "class", "cautions");
	for (const Caution *row; (row = caution_from(reference, command, &i)) != NULL;)
		ELEMENT(page, "li", arena_printf(arena, "%s (basis: %s)", row->text.text, basis_text(reference, row->basis.text, arena)));
	CLOSE(page, "ul");
}
