/* SPDX-License-Identifier: MIT
 * The sheet of calculations as text: its head, the groups of records with their facts, and at the foot the thinnest margins, how
 * well the figures are known, and the sources.
 */
#include "calcs.h"

#include "report.h"
#include "version.h"

#include <string.h>

static const LabelColumn foot_column = { 4, 24 };

static void put_prose(Out *out, const char *text)
{
	SAY(out, "  ");
	put_wrapped(out, text, 2, 4, PAGE_WIDTH);
	SAY(out, "\n");
}

/* ---- head ---- */

static void put_sheet_head(Out *out, const Sheet *sheet, Arena *arena)
{
	const Cases *cases = sheet->verdict->cases;
	const Submittal *submittal = cases->submittal;
	SAY(out, "SHEET OF CALCULATIONS\n");
	const Text *number = &submittal->submittal;
	put_label(out, (LabelColumn){ 2, 14 }, "Submittal", is_value(&number->given) ? number->text : "not stated");
	put_label(out, (LabelColumn){ 2, 14 }, "File", sheet->verdict->source->name);
	put_label(out, (LabelColumn){ 2, 14 }, "Made for", sheet_made_for(sheet, arena));
	if (cases->criteria == NULL)
		return;
	put_label(out, (LabelColumn){ 2, 14 }, "Criteria", cases->criteria->folder);
	put_label(out, (LabelColumn){ 2, 14 }, "Facts", arena_printf(arena, "%u known, %u waiting, %u refused, %u not applicable",
		sheet->by_state[0], sheet->by_state[1], sheet->by_state[2], sheet->by_state[3]));
	put_prose(out, "Uplift is positive. Pressures name their level; those of two levels are never compared. Records of one kind "
		"stand together: a fact is told once, in parentheses by the name it has in formulas, and has a row for each of them. What a "
		"formula names is another fact of the sheet, or stands under Values used with where it comes from; From names what else "
		"was looked at. Without Basis a fact rests on common practice, no published source. A place without the name of a file is "
		"line:column of the submittal.");
}

/* ---- foot ---- */

static void put_margins(Out *out, const Sheet *sheet, Arena *arena)
{
	SAY(out, "\nTHINNEST MARGINS\n");
	put_prose(out, margins_heading(sheet, arena));
	for (uint32_t m = 0; m < sheet->margins; m++) {
		const Margin *margin = &sheet->margin[m];
		SAY(out, "\n");
		put_prose(out, margin_title(margin, arena));
		for (uint32_t i = 0; i < margin->inputs; i++)
			put_label(out, foot_column, margin->by[i].what, used_up_text(sheet, &margin->by[i], arena));
		if (margin->inputs == 0 && !sheet->untried)
			put_prose(out, "  No wind speed, exposure, spacing, length or factor of this submittal moves it.");
	}
}

static void put_constants(Out *out, const Sheet *sheet, Arena *arena)
{
	SAY(out, "\nHOW WELL THE FIGURES ARE KNOWN\n");
	put_prose(out, constants_counted(sheet, arena));
	bool first = true;
	for (uint32_t i = 0; i < sheet->constants; i++) {
		const SheetUse *use = sheet->constant[i].use;
		if (use->known_by != KNOWN_MEMORY)
			continue;
		if (first)
			put_prose(out, "From memory, to be verified before they are relied on:");
		first = false;
		put_prose(out, arena_printf(arena, "  %s = %s: %s", use_name(use, arena), use_value(sheet, use, arena),
			use_origin(sheet, use, NULL, arena)));
	}
}

static void put_sources(Out *out, const Sheet *sheet, Arena *arena)
{
	const bool *named = sources_named(sheet, arena);
	const Reference *reference = sheet->verdict->cases->reference;
	if (named == NULL)
		return;
	SAY(out, "\nSOURCES\n");
	for (uint32_t i = 0; i < reference->sources.count; i++)
		if (named[i])
			put_prose(out, arena_printf(arena, "%s: %s", reference->sources.row[i].id.text,
				basis_text(reference, reference->sources.row[i].id.text, arena)));
}

static void put_never(Out *out, const Criteria *criteria, Arena *arena)
{
	if (criteria == NULL || criteria->not_judged.count == 0)
		return;
	SAY(out, "\nNEVER PART OF THIS REVIEW\n");
	for (uint32_t i = 0; i < criteria->not_judged.count; i++) {
		const NotJudged *row = &criteria->not_judged.row[i];
		put_prose(out, arena_printf(arena, "%s: %s; usually by: %s", row->subject.text, row->reason.text, row->usually_by.text));
	}
}

void write_calcs_text(Out *out, const Page *page, Arena *arena)
{
	const Sheet *sheet = page->sheet;
	put_sheet_head(out, sheet, arena);
	put_calcs_groups(out, sheet, arena);
	put_margins(out, sheet, arena);
	put_constants(out, sheet, arena);
	put_sources(out, sheet, arena);
	put_never(out, sheet->verdict->cases->criteria, arena);
	write_cautions(out, sheet->verdict->cases->reference, (CautionsFor){ "calcs", "" }, arena);
	SAY(out, "\nMade by seamstamp " SEAMSTAMP_VERSION ".\n");
}
