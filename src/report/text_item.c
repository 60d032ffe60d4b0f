/* SPDX-License-Identifier: MIT
 * One item of the letter. First line: number, action, where (and the sheet, if the record names one), code. Second line:
 * `file:line:column:` and the finding. Then the source line, both sides, basis, remedy, who must answer, further places.
 */
#include "excerpt.h"
#include "html_item.h"
#include "text.h"

#include <ctype.h>
#include <string.h>

enum { ITEM_INDENT = 6, MOST_PLACES = 12 };

static const LabelColumn item_column = { ITEM_INDENT, 11 };

/* "1.02 a  REJECTED  Main roof / clip-b-float (A5, detail 3)  [LST-01]" */
static void put_title(Out *out, const Finding *item, Arena *arena)
{
	const char *number = item_number(item, arena);
	const char *lead = arena_printf(arena, "%s%s  %s  ", number != NULL ? number : "   -", item->spots > 1 ? " a" : "",
		item_heading(item));
	put(out, lead);
	put_cut(out, item_where(item, &item->spot[0], arena), PAGE_WIDTH - (int)strlen(lead) - (int)strlen(item->code) - 4);
	SAY(out, "  [");
	put(out, item->code);
	SAY(out, "]\n");
}

static void put_finding(Out *out, const Verdict *verdict, const Finding *item)
{
	const Place *place = &item->spot[0].place;
	const char *file = place_file(verdict, place);
	put_spaces(out, ITEM_INDENT);
	put_place(out, file, place);
	SAY(out, " ");
	int used = ITEM_INDENT + out_width(file, strlen(file)) + 12;
	put_wrapped(out, item->finding, used, ITEM_INDENT, PAGE_WIDTH);
	SAY(out, "\n");
	if (place->source != SOURCE_REVIEWER && place->source < SOURCE_FIRST_REGISTER) /* his file and the registers are their own */
		put_excerpt(out, verdict_source(verdict, place->source), place, ITEM_INDENT + 2);
}

/* "2 fixed lines", "3 (layers of the deck)": what a bare number counts. */
static const char *counted(double value, const char *text, const char *title, Arena *arena)
{
	static const char *const counts[] = { "Number of ", "Kinds of " };
	size_t length = strlen(counts[0]);
	if (value != 1 && strncmp(title, counts[0], length) == 0)
		return arena_printf(arena, "%s %s", text, title + length);
	if (value != 1 && strncmp(title, counts[1], strlen(counts[1])) == 0)
		return arena_printf(arena, "%s %c%s", text, tolower((unsigned char)title[0]), title + 1);
	return arena_printf(arena, "%s (%c%s)", text, tolower((unsigned char)title[0]), title + 1);
}

/* A bare number says what it counts; a quantity has its SI value beside it, if asked for. */
static const char *side_text(const Verdict *verdict, const Finding *item, const Side *side, Arena *arena)
{
	if (!side->has_value)
		return side->text;
	const Rule *rule = item->rule;
	if (side->unit != NULL && *side->unit != '\0') {
		const char *si = verdict->si ? si_text(side->value, side->unit, arena) : NULL;
		return si != NULL ? arena_printf(arena, "%s (%s)", side->text, si) : side->text;
	}
	if (side == &item->limit || rule == NULL || rule->is.left.from != FROM_FACT || rule->is.left.gives != VALUE_NUMBER)
		return side->text;
	return counted(side->value, side->text, fact_spec(rule->is.left.fact)->title, arena);
}

/* The two sides of the test. What is not stated or unknown has said so in its finding. */
static void put_sides(Pen *pen, const Verdict *verdict, const Finding *item, Arena *arena)
{
	if (item->submitted.text != NULL && item->found_by != FOUND_MISSING)
		pen_label(pen, item_column, "Submitted", side_text(verdict, item, &item->submitted, arena));
	if (item->limit.text != NULL)
		pen_label(pen, item_column, "Allowed", side_text(verdict, item, &item->limit, arena));
}

/* Authority and source; the figures of the item may be known less well than its rule. */
static void put_basis(Pen *pen, const Verdict *verdict, const Finding *item, Arena *arena)
{
	const Reference *reference = verdict->cases != NULL ? verdict->cases->reference : NULL;
	const char *basis = basis_text(reference, item->basis, arena);
	if (item->cites != NULL)
		basis = arena_printf(arena, "%s; %s", item->cites, basis);
	const char *known = known_by_words(item->known_by);
	bool told = item->known_by == KNOWN_READ || strstr(basis, known) != NULL;
	pen_label(pen, item_column, "Basis", told ? arena_printf(arena, "%s: %s", authority_words(item->authority), basis)
		: arena_printf(arena, "%s: %s; figures: %s", authority_words(item->authority), basis, known));
}

/* Places b, c and on; where the same item was found again. */
static void put_places(Out *out, const Verdict *verdict, const Finding *item, Arena *arena)
{
	uint32_t shown = item->spots < MOST_PLACES ? item->spots : MOST_PLACES;
	for (uint32_t i = 1; i < shown; i++) {
		const Spot *spot = &item->spot[i];
		put_spaces(out, ITEM_INDENT);
		put(out, place_letter(i, arena));
		SAY(out, "  ");
		put_place(out, place_file(verdict, &spot->place), &spot->place);
		SAY(out, " ");
		put_cut(out, item_where(item, spot, arena), 60);
		SAY(out, "\n");
	}
	if (shown < item->spots) {
		put_spaces(out, ITEM_INDENT);
		SAY(out, "and ");
		put_count(out, item->spots - shown);
		SAY(out, " more places\n");
	}
}

/* Where earlier rounds are known, or a variance covers it: its state, and why. */
static void put_state(Pen *pen, const Verdict *verdict, const Finding *item, Arena *arena)
{
	if (verdict->earlier == NULL && item->note == NULL)
		return;
	const char *state = item_state_words(item_state(item));
	const char *since = item->round > 0 && item->round < verdict->round ? arena_printf(arena, " since round %u", item->round) : "";
	pen_label(pen, item_column, "State", item->note == NULL ? arena_printf(arena, "%s%s", state, since)
		: arena_printf(arena, "%s%s: %s", state, since, item->note));
}

void put_item(Pen *pen, const Verdict *verdict, const Finding *item, Arena *arena)
{
	if (pen->page != NULL) {
		begin_item(pen, item);
	} else {
		put_title(pen->out, item, arena);
		put_finding(pen->out, verdict, item);
	}
	put_sides(pen, verdict, item, arena);
	if (item->basis != NULL)
		put_basis(pen, verdict, item, arena);
	if (item->remedy != NULL)
		pen_label(pen, item_column, "Remedy", item->remedy);
	put_state(pen, verdict, item, arena);
	if (item->disposition != NULL)
		pen_label(pen, item_column, "Reviewer", item->disposition);
	if (item->answer_by != NULL)
		pen_label(pen, item_column, "Answer by", item->answer_by);
	if (pen->page != NULL)
		end_item(pen, item);
	else
		put_places(pen->out, verdict, item, arena);
}
