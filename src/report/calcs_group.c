/* SPDX-License-Identifier: MIT
 * One group of the text of the sheet: records of one kind that stand one behind the other in a roof area. Each fact is told once,
 * with its formula and where it comes from, and below it a row for each record; what the facts used is listed once at the end.
 */
#include "calcs.h"

#include "hash.h"
#include "report.h"

#include <string.h>

enum { MOST_VALUES = 400, MOST_INPUTS = 40, MOST_WAITS_SHOWN = 12, MOST_NAMES = 300 };

static const LabelColumn fact_column = { 4, 12 };
static const char no_source[] = "common practice, no published source";

/* The lines of the group; each record has as many as the first. */
typedef struct {
	Out *out;
	const Sheet *sheet;
	const SheetLine *line;
	uint32_t records, facts;
	Arena *arena;
} Group;

static const SheetLine *line_of(const Group *g, uint32_t record, uint32_t fact)
{
	return &g->line[record * g->facts + fact];
}

static bool is_told(const SheetLine *line)
{
	return line->fact->state != FACT_NOT_APPLICABLE;
}

/* ---- names of records ---- */

/* What tells comparisons of one part apart: the attribute, and the paper. */
static const char *compared_words(const Case *at, Arena *arena)
{
	const Comparison *compared = at->row;
	const char *title = compared->title.text != NULL ? compared->title.text : "", *paper = compared->paper.text;
	return paper != NULL && *paper != '\0' ? arena_printf(arena, "%s, %s", title, paper) : title;
}

/* The name without that of the roof area, which stands in the heading. */
static const char *row_name(const Case *at, Arena *arena)
{
	const Case *area = case_outward(at, KIND_roof_area);
	const char *name = area != NULL ? name_within(at, area) : at->name;
	return at->kind == KIND_comparison ? arena_printf(arena, "%s (%s)", name, compared_words(at, arena)) : name;
}

static void put_heading(const Group *g)
{
	const Case *at = g->line->at, *area = case_outward(at, KIND_roof_area);
	const char *kind = plain_words(record_of(at->kind)->name, g->arena);
	SAY(g->out, "\n");
	if (g->records == 1) {
		put(g->out, kind);
		SAY(g->out, ": ");
		put_cut(g->out, at->name, PAGE_WIDTH - 30);
	} else {
		put_count(g->out, g->records);
		SAY(g->out, " records, ");
		put(g->out, kind);
		SAY(g->out, ": ");
		put_cut(g->out, area != NULL ? area->name : "the submittal", PAGE_WIDTH - 40);
	}
	SAY(g->out, "\n");
}

/* ---- one record of one fact ---- */

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

/* A formula that only names another value: putting its number in would say the result twice. */
static bool is_plain_name(const char *formula)
{
	return formula[0] == '{' && strchr(formula, '}') == formula + strlen(formula) - 1;
}

/* "= 24 / 24 = 1; note: by tested pull-out", "waits for ...", "refused: ..." */
static const char *row_text(const Group *g, const SheetLine *line)
{
	const Fact *fact = line->fact;
	const char *text = "";
	if (fact->state == FACT_WAITING)
		text = arena_printf(g->arena, "waits for %s", waits_text(line, g->arena));
	else if (fact->state == FACT_REFUSED)
		text = arena_printf(g->arena, "refused: %s", fact->reason != NULL ? fact->reason : "no reason given");
	else if (line->is_expression && !is_plain_name(line->formula))
		text = arena_printf(g->arena, "= %s = %s", formula_with_numbers(line, g->arena), result_of(g->sheet, line, g->arena));
	else
		text = arena_printf(g->arena, "= %s", result_of(g->sheet, line, g->arena));
	if (fact->note != NULL)
		text = arena_printf(g->arena, "%s; note: %s", text, fact->note);
	return fact->borrowed ? arena_printf(g->arena, "%s; borrowed from a test that differs from this assembly", text) : text;
}

/* `names` of the records that say the same; "" in a group of one. */
static void put_row(const Group *g, const char *names, const char *text)
{
	SAY(g->out, "      ");
	put_wrapped(g->out, *names != '\0' ? arena_printf(g->arena, "%s  %s", names, text) : text, 6, 10, PAGE_WIDTH);
	SAY(g->out, "\n");
}

/* ---- one fact ---- */

static bool is_in_formula(const SheetLine *line, const SheetUse *use)
{
	const char *braced = strstr(line->formula, use->name);
	size_t length = strlen(use->name);
	return braced != NULL && braced > line->formula && braced[-1] == '{' && braced[length] == '}';
}

/* What a fact looked at beside the names in its formula, and what belongs to another record. */
static const char *input_text(const SheetLine *line, const SheetUse *use, Arena *arena)
{
	bool is_other = use->kind == USED_FACT && use->at != line->at;
	if (is_in_formula(line, use) && !is_other)
		return NULL;
	const char *name = use_name(use, arena);
	return is_other ? arena_printf(arena, "%s of %s", name, record_title(use->at, arena)) : name;
}

/* The inputs of one fact of all records, each once. */
static const char *inputs_text(const Group *g, uint32_t fact)
{
	const char *text = "";
	uint32_t shown = 0, left = 0;
	Hash *met = hash_make(g->arena, 16);
	for (uint32_t r = 0; r < g->records; r++) {
		const SheetLine *line = line_of(g, r, fact);
		for (uint32_t i = 0; is_told(line) && i < line->uses; i++) {
			const char *input = input_text(line, &line->use[i], g->arena);
			if (input == NULL || hash_put(met, input, strlen(input), met) != NULL)
				continue;
			if (shown < MOST_INPUTS)
				text = arena_printf(g->arena, "%s%s%s", text, shown > 0 ? "; " : "", input);
			shown < MOST_INPUTS ? shown++ : left++;
		}
	}
	return left > 0 ? arena_printf(g->arena, "%s; and %u more", text, (unsigned)left) : text;
}

static const char *basis_line(const Group *g, const SheetLine *line)
{
	const char *basis = basis_short(g->sheet, fact_spec(line->id)->source, g->arena);
	if (line->fact->known_by == KNOWN_READ)
		return basis;
	return arena_printf(g->arena, "%s; the weakest figure behind it: %s", basis, known_by_words(line->fact->known_by));
}

static void put_formula(const Group *g, const SheetLine *line)
{
	put_label(g->out, fact_column, line->is_expression ? "Formula" : "Looked up", formula_in_words(line->formula, g->arena));
}

static bool is_one_formula(const SheetLine *a, const SheetLine *b)
{
	return strcmp(a->formula, b->formula) == 0 && a->is_expression == b->is_expression;
}

/* Formula and rows: a record whose formula differs from that before it has its own; records that say the same share a row. */
static void put_rows(const Group *g, uint32_t fact)
{
	const SheetLine *before = NULL;
	const char *names = "", *text = "";
	for (uint32_t r = 0; r < g->records; r++) {
		const SheetLine *line = line_of(g, r, fact);
		if (!is_told(line))
			continue;
		const char *next = row_text(g, line), *name = g->records > 1 ? row_name(line->at, g->arena) : "";
		bool is_new = before == NULL || !is_one_formula(before, line);
		if (before != NULL && !is_new && strcmp(next, text) == 0 && strlen(names) < MOST_NAMES) {
			names = arena_printf(g->arena, "%s, %s", names, name);
			continue;
		}
		if (before != NULL)
			put_row(g, names, text);
		if (is_new)
			put_formula(g, line);
		before = line;
		names = name;
		text = next;
	}
	if (before != NULL)
		put_row(g, names, text);
}

/* The line of a record to which the fact applies, with the weakest figure behind it. */
static const SheetLine *weakest_told(const Group *g, uint32_t fact)
{
	const SheetLine *weakest = NULL;
	for (uint32_t r = 0; r < g->records; r++) {
		const SheetLine *line = line_of(g, r, fact);
		if (is_told(line) && (weakest == NULL || line->fact->known_by > weakest->fact->known_by))
			weakest = line;
	}
	return weakest;
}

static void put_fact(const Group *g, uint32_t fact)
{
	const SheetLine *line = weakest_told(g, fact);
	if (line == NULL)
		return;
	const FactSpec *spec = fact_spec(line->id);
	SAY(g->out, "\n  ");
	put_wrapped(g->out, arena_printf(g->arena, "%s (%s)", spec->title, plain_words(spec->name, g->arena)), 2, 4, PAGE_WIDTH);
	SAY(g->out, "\n");
	put_rows(g, fact);
	if (line->fact->known_by != KNOWN_READ || strcmp(fact_spec(line->id)->source, no_source) != 0)
		put_label(g->out, fact_column, "Basis", basis_line(g, line));
	const char *inputs = inputs_text(g, fact);
	if (*inputs != '\0')
		put_label(g->out, fact_column, "From", inputs);
}

/* ---- what does not apply ---- */

static void put_not_applying(const Group *g)
{
	bool first = true;
	for (uint32_t f = 0; f < g->facts; f++) {
		const char *before = NULL;
		for (uint32_t r = 0; r < g->records; r++) {
			const SheetLine *line = line_of(g, r, f);
			const char *reason = line->fact->reason != NULL ? line->fact->reason : "no reason given";
			if (is_told(line) || (before != NULL && strcmp(before, reason) == 0))
				continue;
			before = reason;
			if (first)
				SAY(g->out, "\n  Not applicable here\n");
			first = false;
			const char *name = g->records > 1 ? arena_printf(g->arena, " of %s", row_name(line->at, g->arena)) : "";
			SAY(g->out, "    ");
			put_wrapped(g->out, arena_printf(g->arena, "%s%s: %s", fact_spec(line->id)->title, name, reason), 4, 6, PAGE_WIDTH);
			SAY(g->out, "\n");
		}
	}
}

/* ---- what was used ---- */

static void put_value(const Group *g, const SheetUse *use)
{
	const char *mark = use->kind == USED_CONSTANT ? arena_printf(g->arena, " [%s]", known_by_words(use->known_by)) : "";
	const char *text = arena_printf(g->arena, "%s = %s%s", use_name(use, g->arena), use_value(g->sheet, use, g->arena), mark);
	SAY(g->out, "      ");
	int at = put_wrapped(g->out, text, 6, 8, PAGE_WIDTH);
	put_spaces(g->out, at < 40 ? 40 - at : 2);
	put_wrapped(g->out, use_origin(g->sheet, use, g->records == 1 ? g->line->at : NULL, g->arena), at < 40 ? 40 : at + 2, 42,
		    PAGE_WIDTH);
	SAY(g->out, "\n");
}

/* Fields and figures, each once; facts stand under their own titles. */
static void put_values(const Group *g)
{
	uint32_t shown = 0, left = 0;
	Hash *met = hash_make(g->arena, 64);
	for (uint32_t i = 0; i < g->records * g->facts; i++) {
		for (uint32_t u = 0; u < g->line[i].uses; u++) {
			const SheetUse *use = &g->line[i].use[u];
			if (use->kind == USED_FACT)
				continue;
			const char *key = arena_printf(g->arena, "%s %p %s %a", use->name, (const void *)use->given,
						       use->kind == USED_CONSTANT ? use->row : "", use->value);
			if (hash_put(met, key, strlen(key), met) != NULL)
				continue;
			if (shown == 0)
				SAY(g->out, "\n  Values used\n");
			if (shown < MOST_VALUES)
				put_value(g, use);
			shown < MOST_VALUES ? shown++ : left++;
		}
	}
	if (left == 0)
		return;
	SAY(g->out, "      and ");
	put_count(g->out, left);
	SAY(g->out, " more; --format json has them all\n");
}

/* ---- groups ---- */

static uint32_t lines_of_record(const Sheet *sheet, uint32_t from)
{
	uint32_t to = from + 1;
	while (to < sheet->lines && sheet->line[to].at == sheet->line[from].at)
		to++;
	return to - from;
}

static bool is_one_group(const Case *a, const Case *b)
{
	return a->kind == b->kind && a->kind != KIND_roof_area && case_outward(a, KIND_roof_area) == case_outward(b, KIND_roof_area);
}

void put_calcs_groups(Out *out, const Sheet *sheet, Arena *arena)
{
	for (uint32_t from = 0, to; from < sheet->lines; from = to) {
		Group g = { out, sheet, &sheet->line[from], 1, lines_of_record(sheet, from), arena };
		for (to = from + g.facts; to < sheet->lines && is_one_group(g.line->at, sheet->line[to].at) &&
			 lines_of_record(sheet, to) == g.facts; to += g.facts)
			g.records++;
		put_heading(&g);
		for (uint32_t f = 0; f < g.facts; f++)
			put_fact(&g, f);
		put_not_applying(&g);
		put_values(&g);
	}
}
