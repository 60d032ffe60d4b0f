/* SPDX-License-Identifier: MIT
 * `criteria` as text: what the edition holds, what it lacks at file and line, and what would turn against an older one.
 */
#include "date.h"
#include "edition_page.h"
#include "gaps.h"
#include "parts.h"

#include <string.h>

static const LabelColumn head_column = { 2, 14 };

const char *gap_words(GapKind kind)
{
	static const char *const words[GAP_KINDS] = { "part no listing uses", "term nothing lasts", "rule that can never fire",
		"about to expire", "wide gap between tests" };
	return words[kind];
}

const char *turn_words(TurnKind kind)
{
	static const char *const words[] = { "held back", "let through", "other items" };
	return words[kind];
}

uint32_t edition_tables(const Criteria *criteria, TableCount *counts)
{
	uint32_t count = 0;
#define COUNT_TABLE(member, R, name) counts[count++] = (TableCount){ name, criteria->member.count };
	EDITION_TABLES(COUNT_TABLE)
	CATALOGUE_TABLES(COUNT_TABLE)
#undef COUNT_TABLE
	return count;
}

static const char *cell(const Text *text)
{
	return is_value(&text->given) && text->text != NULL ? text->text : "not stated";
}

static const char *day_text(const Date *date, Arena *arena)
{
	return is_value(&date->given) ? date_print(arena, date->day) : "not stated";
}

static const char *tables_text(const Criteria *criteria, Arena *arena)
{
	TableCount counts[MOST_TABLES];
	uint32_t tables = edition_tables(criteria, counts);
	const char *text = "";
	for (uint32_t i = 0; i < tables; i++)
		text = arena_printf(arena, "%s%s%u in %s", text, i > 0 ? ", " : "", counts[i].rows, counts[i].file);
	return text;
}

static const char *actions_text(const Criteria *criteria, Arena *arena)
{
	const char *text = "";
	for (int action = 0; action < ACTION_COUNT; action++) {
		uint32_t rules = 0;
		for (uint32_t i = 0; i < criteria->rules; i++)
			rules += (int)criteria->rule[i].action == action;
		if (rules > 0)
			text = arena_printf(arena, "%s%s%u %s", text, *text != '\0' ? ", " : "", rules, action_words((Action)action));
	}
	return text;
}

static void put_head(Out *out, const EditionCheck *check, Arena *arena)
{
	const Edition *edition = &check->criteria->edition;
	SAY(out, "CRITERIA  ");
	put(out, cell(&edition->edition));
	SAY(out, "\n\n");
	put_label(out, head_column, "Of", cell(&edition->maker));
	put_label(out, head_column, "Folder", check->criteria->folder);
	put_label(out, head_column, "In force", arena_printf(arena, "%s to %s", day_text(&edition->effective, arena),
		day_text(&edition->expires, arena)));
	put_label(out, head_column, "SHA-256", check->sha256);
	put_label(out, head_column, "Rows", tables_text(check->criteria, arena));
	put_label(out, head_column, "Rules", actions_text(check->criteria, arena));
	put_label(out, head_column, "Faults", "none: an edition with a fault is refused as a whole");
}

/* ---- gaps ---- */

static void put_gap(Out *out, const Gap *gap)
{
	Place place = { .line = gap->line, .column = 1 };
	SAY(out, "  ");
	put_place(out, gap->file, &place);
	SAY(out, " ");
	int used = 2 + out_width(gap->file, strlen(gap->file)) + 8;
	used = put_wrapped(out, gap->what != NULL ? gap->what : "a row", used, 6, PAGE_WIDTH);
	SAY(out, ": ");
	put_wrapped(out, gap->why, used + 2, 6, PAGE_WIDTH);
	SAY(out, "\n");
}

static void put_gaps(Out *out, const EditionCheck *check, Arena *arena)
{
	SAY(out, "\nGAPS  ");
	put(out, check->gaps == 0 ? "none found" : arena_printf(arena, "%u, none of them a fault: whoever keeps the criteria decides",
		check->gaps));
	SAY(out, "\n");
	for (int kind = 0; kind < GAP_KINDS; kind++) {
		bool headed = false;
		for (uint32_t i = 0; i < check->gaps; i++) {
			if ((int)check->gap[i].kind != kind)
				continue;
			if (!headed) {
				SAY(out, "\n");
				put(out, gap_words((GapKind)kind));
				SAY(out, "\n");
			}
			headed = true;
			put_gap(out, &check->gap[i]);
		}
	}
	if (check->as_of == INT32_MIN)
		SAY(out, "\nWhat is about to expire was not looked for: name the day with --as-of.\n");
}

/* ---- against an older edition ---- */

static void put_items(Out *out, const char *label, const TurnedItem *item, uint32_t items, Arena *arena)
{
	static const LabelColumn column = { 6, 8 };
	for (uint32_t i = 0; i < items; i++)
		put_label(out, column, i == 0 ? label : "", arena_printf(arena, "%s  %s  [%s]", item[i].action, item[i].where, item[i].code));
}

static void put_turn(Out *out, const Turn *turn, Arena *arena)
{
	SAY(out, "\n  ");
	put(out, turn->submittal);
	SAY(out, "  ");
	put(out, turn_words(turn->kind));
	SAY(out, "  ");
	put(out, arena_printf(arena, "(%u %s of NOT REVIEWED or worse before, %u now; ", turn->before,
		turn->before == 1 ? "item" : "items", turn->after));
	put(out, turn->report);
	SAY(out, ")\n");
	put_items(out, "raised", turn->raised, turn->raiseds, arena);
	put_items(out, "gone", turn->gone, turn->gones, arena);
}

static void put_against(Out *out, const EditionCheck *check, Arena *arena)
{
	uint32_t kinds[3] = { 0, 0, 0 };
	for (uint32_t i = 0; i < check->turns; i++)
		kinds[check->turn[i].kind]++;
	SAY(out, "\nAGAINST  ");
	put(out, cell(&check->against->edition.edition));
	SAY(out, "\n\n");
	put_label(out, head_column, "Folder", check->against->folder);
	put_label(out, head_column, "SHA-256", check->against_sha256);
	put_label(out, head_column, "Judged again", arena_printf(arena, "%u %s, each by the values of its latest report",
		check->judged, check->judged == 1 ? "submittal" : "submittals"));
	put_label(out, head_column, "Would turn", arena_printf(arena, "%u held back, %u let through, %u with other items",
		kinds[TURN_HELD_BACK], kinds[TURN_LET_THROUGH], kinds[TURN_CHANGED]));
	for (uint32_t i = 0; i < check->turns; i++)
		put_turn(out, &check->turn[i], arena);
}

void write_edition_text(Out *out, const Page *page, Arena *arena)
{
	const EditionCheck *check = page->edition;
	put_head(out, check, arena);
	put_gaps(out, check, arena);
	if (check->against != NULL)
		put_against(out, check, arena);
	CautionsFor what = { "criteria", "" };
	write_cautions(out, check->reference, what, arena);
}
