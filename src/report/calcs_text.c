/* SPDX-License-Identifier: MIT
 * The sheet of calculations as text: one record after the other, one fact after the other, each with its formula, the numbers put
 * in, the result, and where every number came from.
 */
#include "calcs.h"

#include "report.h"
#include "version.h"

#include <string.h>

enum { MOST_SHOWN = 60, MOST_WAITS_SHOWN = 12 };

static const LabelColumn fact_column = { 4, 12 };
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
	if (cases->criteria == NULL)
		return;
	put_label(out, (LabelColumn){ 2, 14 }, "Criteria", cases->criteria->folder);
	put_label(out, (LabelColumn){ 2, 14 }, "Facts", arena_printf(arena, "%u known, %u waiting, %u refused, %u not applicable",
		sheet->by_state[0], sheet->by_state[1], sheet->by_state[2], sheet->by_state[3]));
	put_prose(out, "Uplift is positive. Each value of a formula stands below it with where it comes from. Pressures name their "
		"level; those of two levels are never compared. A place without the name of a file is line:column of the submittal.");
}

/* ---- one fact ---- */

static void put_use(Out *out, const Sheet *sheet, const SheetUse *use, const Case *of, Arena *arena)
{
	const char *mark = use->kind == USED_CONSTANT ? arena_printf(arena, " [%s]", known_by_words(use->known_by)) : "";
	const char *text = arena_printf(arena, "%s = %s%s", use_name(use, arena), use_value(sheet, use, arena), mark);
	SAY(out, "      ");
	int at = put_wrapped(out, text, 6, 8, PAGE_WIDTH);
	put_spaces(out, at < 40 ? 40 - at : 2);
	put_wrapped(out, use_origin(sheet, use, of, arena), at < 40 ? 40 : at + 2, 42, PAGE_WIDTH);
	SAY(out, "\n");
}

static void put_uses(Out *out, const Sheet *sheet, const SheetLine *line, Arena *arena)
{
	for (uint32_t i = 0; i < line->uses && i < MOST_SHOWN; i++)
		put_use(out, sheet, &line->use[i], line->at, arena);
	if (line->uses <= MOST_SHOWN)
		return;
	SAY(out, "      and ");
	put_count(out, line->uses - MOST_SHOWN);
	SAY(out, " more; --format json has them all\n");
}

static const char *waits_text(const SheetLine *line, Arena *arena)
{
	const char *text = "";
	for (uint32_t i = 0; i < line->waits && i < MOST_WAITS_SHOWN; i++) {
		const SheetUse *use = &line->wait[i];
		text = arena_printf(arena, "%s%s%s of %s (%s)", text, i > 0 ? "; " : "", use_name(use, arena),
			use->at != NULL ? record_title(use->at, arena) : "a table", said_text(use->given, arena));
	}
	uint32_t left = line->waits > MOST_WAITS_SHOWN ? line->waits - MOST_WAITS_SHOWN : 0;
	left += line->more_waits;
	return left > 0 ? arena_printf(arena, "%s; and %u more", text, left) : text;
}

static void put_state(Out *out, const SheetLine *line, Arena *arena)
{
	const Fact *fact = line->fact;
	if (fact->state == FACT_WAITING)
		put_label(out, fact_column, "Waits for", waits_text(line, arena));
	else if (fact->state == FACT_REFUSED)
		put_label(out, fact_column, "Refused", fact->reason != NULL ? fact->reason : "no reason given");
	if (fact->note != NULL)
		put_label(out, fact_column, "Note", fact->note);
	if (fact->borrowed)
		put_label(out, fact_column, "Borrowed", "it rests on a test that differs from this assembly: it holds only if what was tested "
			"is used, and no rule is met by it");
}

/* A fact that counts or looks up says so in words; the others are worked out before the reader's eyes. */
static void put_working(Out *out, const Sheet *sheet, const SheetLine *line, Arena *arena)
{
	const char *words = formula_in_words(line->formula, arena);
	bool known = line->fact->state == FACT_KNOWN;
	put_label(out, fact_column, line->is_expression ? "Formula" : "Looked up", words);
	if (line->is_expression && known)
		put_label(out, fact_column, "", arena_printf(arena, "= %s", formula_with_numbers(line, arena)));
	if (known)
		put_label(out, fact_column, "", arena_printf(arena, "= %s", result_of(sheet, line, arena)));
}

static void put_fact(Out *out, const Sheet *sheet, const SheetLine *line, Arena *arena)
{
	const FactSpec *spec = fact_spec(line->id);
	SAY(out, "\n  ");
	put_wrapped(out, spec->title, 2, 4, PAGE_WIDTH);
	SAY(out, "\n");
	put_working(out, sheet, line, arena);
	put_state(out, line, arena);
	put_label(out, fact_column, "Basis", basis_short(sheet, spec->source, arena));
	if (line->fact->known_by != KNOWN_READ)
		put_label(out, fact_column, "Figures", arena_printf(arena, "the weakest behind it: %s", known_by_words(line->fact->known_by)));
	put_uses(out, sheet, line, arena);
}

/* What does not apply to a record is told in a line, with why. */
static void put_not_applying(Out *out, const SheetLine *line, uint32_t count, Arena *arena)
{
	bool first = true;
	for (uint32_t i = 0; i < count; i++) {
		if (line[i].fact->state != FACT_NOT_APPLICABLE)
			continue;
		if (first)
			SAY(out, "\n  Not applicable here\n");
		first = false;
		const char *reason = line[i].fact->reason != NULL ? line[i].fact->reason : "no reason given";
		SAY(out, "    ");
		put_wrapped(out, arena_printf(arena, "%s: %s", fact_spec(line[i].id)->title, reason), 4, 6, PAGE_WIDTH);
		SAY(out, "\n");
	}
}

static void put_record(Out *out, const Sheet *sheet, const SheetLine *line, uint32_t count, Arena *arena)
{
	SAY(out, "\n");
	put(out, plain_words(record_of(line->at->kind)->name, arena));
	SAY(out, ": ");
	put_cut(out, line->at->name, PAGE_WIDTH - 30);
	SAY(out, "\n");
	for (uint32_t i = 0; i < count; i++)
		if (line[i].fact->state != FACT_NOT_APPLICABLE)
			put_fact(out, sheet, &line[i], arena);
	put_not_applying(out, line, count, arena);
}

static void put_lines(Out *out, const Sheet *sheet, Arena *arena)
{
	for (uint32_t from = 0, to; from < sheet->lines; from = to) {
		for (to = from + 1; to < sheet->lines && sheet->line[to].at == sheet->line[from].at; to++)
			;
		put_record(out, sheet, &sheet->line[from], to - from, arena);
	}
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
	put_lines(out, sheet, arena);
	put_margins(out, sheet, arena);
	put_constants(out, sheet, arena);
	put_sources(out, sheet, arena);
	put_never(out, sheet->verdict->cases->criteria, arena);
	write_cautions(out, sheet->verdict->cases->reference, (CautionsFor){ "calcs", "" }, arena);
	SAY(out, "\nMade by seamstamp " SEAMSTAMP_VERSION ".\n");
}
