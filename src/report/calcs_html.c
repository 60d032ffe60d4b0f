/* SPDX-License-Identifier: MIT
 * The sheet of calculations as one page that stands alone: no script, nothing fetched, made to be printed.
 */
#include "calcs.h"
#include "markup.h"

#include "version.h"

enum { MOST_ROWS = 400 };

#define STYLE \
	"body{font:15px/1.45 Georgia,'Times New Roman',serif;color:#111;max-width:62rem;margin:2rem auto;padding:0 1rem}" \
	"h1{font-size:1.6rem;margin-bottom:.2rem}h2{font-size:1.2rem;border-bottom:2px solid #111;margin-top:2.2rem}" \
	"h3{font-size:1rem;margin:1.4rem 0 .2rem}p{margin:.2rem 0}" \
	".formula{font-family:Menlo,Consolas,monospace;font-size:.87rem;margin-left:1.2rem;overflow-wrap:anywhere}" \
	".result{font-weight:bold}.state{margin-left:1.2rem;font-style:italic}.basis{margin-left:1.2rem;font-size:.85rem;color:#333}" \
	"table{border-collapse:collapse;font-size:.85rem;margin:.3rem 0 .3rem 1.2rem}" \
	"caption{text-align:left;font-size:.8rem;color:#333}" \
	"th,td{text-align:left;vertical-align:top;padding:.1rem .7rem .1rem 0;border-bottom:1px solid #ccc;overflow-wrap:anywhere}" \
	"th{font-weight:normal}thead th{font-size:.8rem;color:#333;border-bottom:1px solid #111}" \
	"dt{font-weight:bold}dd{margin:0 0 .3rem 1.2rem}" \
	"@media print{body{max-width:none;margin:0;font-size:10pt}h2,h3{break-after:avoid}article,tr{break-inside:avoid}" \
	"thead{display:table-header-group}@page{margin:18mm 15mm}}"

static void put_line(Markup *page, const char *kind, const char *text)
{
	OPEN(page, "p");
	ATTRIBUTE(page, "class", kind);
	markup_text(page, text);
	CLOSE(page, "p");
}

static void put_row(Markup *page, const char *const cell[], int columns)
{
	OPEN(page, "tr");
	OPEN(page, "th");
	ATTRIBUTE(page, "scope", "row");
	markup_text(page, cell[0]);
	CLOSE(page, "th");
	for (int i = 1; i < columns; i++)
		ELEMENT(page, "td", cell[i]);
	CLOSE(page, "tr");
}

static void put_use_row(Markup *page, const Sheet *sheet, const SheetUse *use, Arena *arena)
{
	const char *known = use->kind == USED_FIELD ? "as submitted" : known_by_words(use->known_by);
	const char *const cell[] = { use_name(use, arena), use_value(sheet, use, arena), use_origin(sheet, use, NULL, arena), known };
	put_row(page, cell, 4);
}

static void put_uses(Markup *page, const Sheet *sheet, const SheetLine *line, Arena *arena)
{
	static const char *const heads[] = { "What", "Value", "From", "How well known" };
	if (line->uses == 0)
		return;
	markup_table(page, "What it used", heads, 4);
	for (uint32_t i = 0; i < line->uses && i < MOST_ROWS; i++)
		put_use_row(page, sheet, &line->use[i], arena);
	markup_table_end(page);
	if (line->uses > MOST_ROWS)
		put_line(page, "basis", arena_printf(arena, "and %u more; --format json has them all", line->uses - MOST_ROWS));
}

/* ---- one fact ---- */

static void put_waits(Markup *page, const SheetLine *line, Arena *arena)
{
	OPEN(page, "ul");
	for (uint32_t i = 0; i < line->waits; i++) {
		const SheetUse *use = &line->wait[i];
		ELEMENT(page, "li", arena_printf(arena, "%s of %s (%s)", use_name(use, arena),
			use->at != NULL ? record_title(use->at, arena) : "a table", said_text(use->given, arena)));
	}
	CLOSE(page, "ul");
	if (line->more_waits > 0)
		put_line(page, "state", arena_printf(arena, "and %u more", line->more_waits));
}

static void put_state(Markup *page, const SheetLine *line, Arena *arena)
{
	const Fact *fact = line->fact;
	const char *reason = fact->reason != NULL ? fact->reason : "no reason given";
	if (fact->state == FACT_WAITING) {
		put_line(page, "state", "It waits for:");
		put_waits(page, line, arena);
	} else if (fact->state != FACT_KNOWN) {
		put_line(page, "state", arena_printf(arena, "%s: %s", fact->state == FACT_REFUSED ? "Refused" : "Not applicable", reason));
	}
	if (fact->note != NULL)
		put_line(page, "state", arena_printf(arena, "Note: %s", fact->note));
	if (fact->borrowed)
		put_line(page, "state", "Borrowed: it rests on a test that differs from this assembly; it holds only if what was tested is "
			"used, and no rule is met by it.");
}

static void put_fact(Markup *page, const Sheet *sheet, const SheetLine *line, Arena *arena)
{
	const FactSpec *spec = fact_spec(line->id);
	OPEN(page, "article");
	ELEMENT(page, "h3", spec->title);
	const char *words = formula_in_words(line->formula, arena);
	put_line(page, "formula", line->is_expression ? words : arena_printf(arena, "looked up: %s", words));
	if (line->fact->state == FACT_KNOWN) {
		if (line->is_expression)
			put_line(page, "formula", arena_printf(arena, "= %s", formula_with_numbers(line, arena)));
		put_line(page, "formula result", arena_printf(arena, "= %s", result_of(sheet, line, arena)));
	}
	put_state(page, line, arena);
	const char *weakest = line->fact->known_by == KNOWN_READ ? ""
		: arena_printf(arena, ". The weakest figure behind it: %s", known_by_words(line->fact->known_by));
	put_line(page, "basis", arena_printf(arena, "Basis: %s%s.", basis_short(sheet, spec->source, arena), weakest));
	put_uses(page, sheet, line, arena);
	CLOSE(page, "article");
}

static void put_facts(Markup *page, const Sheet *sheet, Arena *arena)
{
	for (uint32_t i = 0; i < sheet->lines; i++) {
		const SheetLine *line = &sheet->line[i];
		if (i == 0 || line->at != sheet->line[i - 1].at)
			ELEMENT(page, "h2", record_title(line->at, arena));
		put_fact(page, sheet, line, arena);
	}
}

/* ---- foot ---- */

static void put_margins(Markup *page, const Sheet *sheet, Arena *arena)
{
	ELEMENT(page, "h2", "Thinnest margins");
	ELEMENT(page, "p", margins_heading(sheet, arena));
	for (uint32_t m = 0; m < sheet->margins; m++) {
		const Margin *margin = &sheet->margin[m];
		ELEMENT(page, "h3", margin_title(margin, arena));
		OPEN(page, "ul");
		for (uint32_t i = 0; i < margin->inputs; i++)
			ELEMENT(page, "li", arena_printf(arena, "%s: %s", margin->by[i].what, used_up_text(sheet, &margin->by[i], arena)));
		if (margin->inputs == 0)
			ELEMENT(page, "li", "No wind speed, exposure, spacing, length or factor of this submittal was found to move it.");
		CLOSE(page, "ul");
	}
}

static void put_constants(Markup *page, const Sheet *sheet, Arena *arena)
{
	static const char *const heads[] = { "From memory, to be verified", "Value", "From", "How well known" };
	ELEMENT(page, "h2", "How well the figures are known");
	ELEMENT(page, "p", constants_counted(sheet, arena));
	if (sheet->known_by[KNOWN_MEMORY] == 0)
		return;
	markup_table(page, "Figures from memory", heads, 4);
	for (uint32_t i = 0; i < sheet->constants; i++)
		if (sheet->constant[i].use->known_by == KNOWN_MEMORY)
			put_use_row(page, sheet, sheet->constant[i].use, arena);
	markup_table_end(page);
}

static void put_sources(Markup *page, const Sheet *sheet, Arena *arena)
{
	const bool *named = sources_named(sheet, arena);
	const Reference *reference = sheet->verdict->cases->reference;
	if (named == NULL)
		return;
	ELEMENT(page, "h2", "Sources");
	OPEN(page, "dl");
	for (uint32_t i = 0; i < reference->sources.count; i++)
		if (named[i]) {
			ELEMENT(page, "dt", reference->sources.row[i].id.text);
			ELEMENT(page, "dd", basis_text(reference, reference->sources.row[i].id.text, arena));
		}
	CLOSE(page, "dl");
}

static void put_never(Markup *page, const Criteria *criteria, Arena *arena)
{
	if (criteria == NULL || criteria->not_judged.count == 0)
		return;
	ELEMENT(page, "h2", "Never part of this review");
	OPEN(page, "dl");
	for (uint32_t i = 0; i < criteria->not_judged.count; i++) {
		const NotJudged *row = &criteria->not_judged.row[i];
		ELEMENT(page, "dt", row->subject.text);
		ELEMENT(page, "dd", arena_printf(arena, "%s; usually by: %s", row->reason.text, row->usually_by.text));
	}
	CLOSE(page, "dl");
}

static void put_head(Markup *page, const Sheet *sheet, Arena *arena)
{
	const Cases *cases = sheet->verdict->cases;
	const Text *number = &cases->submittal->submittal;
	ELEMENT(page, "h1", "Sheet of calculations");
	ELEMENT(page, "p", arena_printf(arena, "Submittal %s, file %s, criteria %s",
		is_value(&number->given) ? number->text : "without a number", sheet->verdict->source->name,
		cases->criteria != NULL ? cases->criteria->folder : "none"));
	ELEMENT(page, "p", arena_printf(arena, "Made for %s.", sheet_made_for(sheet, arena)));
	ELEMENT(page, "p", arena_printf(arena, "%u facts known, %u waiting, %u refused, %u not applicable. Uplift is positive. "
		"Pressures name their level; those of two levels are never compared. A place without the name of a file is line:column of the "
		"submittal.", sheet->by_state[0], sheet->by_state[1], sheet->by_state[2], sheet->by_state[3]));
}

void write_calcs_html(Out *out, const Page *page, Arena *arena)
{
	const Sheet *sheet = page->sheet;
	Markup markup = { .out = out };
	PAGE(&markup, "Sheet of calculations", STYLE);
	OPEN(&markup, "main");
	put_head(&markup, sheet, arena);
	put_facts(&markup, sheet, arena);
	put_margins(&markup, sheet, arena);
	put_constants(&markup, sheet, arena);
	put_sources(&markup, sheet, arena);
	put_never(&markup, sheet->verdict->cases->criteria, arena);
	write_cautions_page(&markup, sheet->verdict->cases->reference, "calcs", arena);
	ELEMENT(&markup, "p", "Made by seamstamp " SEAMSTAMP_VERSION ".");
	CLOSE(&markup, "main");
	markup_page_end(&markup);
}
