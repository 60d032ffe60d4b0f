/* SPDX-License-Identifier: MIT
 * Margins in words: what holds, what would use it up.
 */
#include "calcs.h"

static const char *number_text(const Sheet *sheet, const UsedUp *by, Arena *arena)
{
	const char *holds = quantity(sheet, by->holds, by->unit, arena);
	if (!by->is_lost)
		return arena_printf(arena, "holds up to %s, the most that was tried", holds);
	const char *lost = quantity(sheet, by->lost, by->unit, arena);
	if (by->why != NULL)
		return arena_printf(arena, "holds up to %s; at %s there is no ratio: %s", holds, lost, by->why);
	return arena_printf(arena, "holds up to %s; used up at %s, where the ratio is %s", holds, lost, figure(by->ratio, arena));
}

static const char *word_text_of(const UsedUp *by, Arena *arena)
{
	const char *holds = by->word_holds != NULL ? arena_printf(arena, "holds at %s", by->word_holds) : NULL;
	if (!by->is_lost)
		return holds != NULL ? holds : "nothing stricter to try";
	const char *lost = by->why != NULL ? arena_printf(arena, "at %s there is no ratio: %s", by->word_lost, by->why)
		: arena_printf(arena, "used up at %s, where the ratio is %s", by->word_lost, figure(by->ratio, arena));
	return holds != NULL ? arena_printf(arena, "%s; %s", holds, lost) : lost;
}

const char *used_up_text(const Sheet *sheet, const UsedUp *by, Arena *arena)
{
	const char *now = by->is_word ? by->word_now : quantity(sheet, by->now, by->unit, arena);
	const char *then = by->is_word ? word_text_of(by, arena) : number_text(sheet, by, arena);
	return arena_printf(arena, "%s here; %s", now, then);
}

const char *margin_title(const Margin *margin, Arena *arena)
{
	const SheetLine *line = margin->line;
	const char *others = margin->others == 0 ? "" : margin->others == 1 ? arena_printf(arena, ", and %s", margin->also->at->name)
		: arena_printf(arena, ", %s and %u more", margin->also->at->name, margin->others - 1);
	return arena_printf(arena, "%s%s%s: %s (%s%s)", figure(line->fact->value, arena), margin->thin ? ", thin" : "",
		line->fact->borrowed ? ", borrowed" : "", fact_spec(line->id)->title, record_title(line->at, arena), others);
}

const char *margins_heading(const Sheet *sheet, Arena *arena)
{
	if (sheet->ratios == 0)
		return "No ratio is known yet: see what the sheet waits for.";
	const char *above = sheet->above == 0 ? "none is above 1"
		: arena_printf(arena, sheet->above == 1 ? "1 is above 1 and has no margin" : "%u are above 1 and have no margin", sheet->above);
	const char *untried = sheet->untried ? " The submittal is too large to try what would use them up." : "";
	return arena_printf(arena, "Of %u ratios known, %s. A ratio may reach 1; from 0.95 on it is called thin. "
		"Below: the three thinnest, then the thinnest of each other kind.%s", sheet->ratios, above,
		untried);
}
