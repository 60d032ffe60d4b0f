/* SPDX-License-Identifier: MIT
 * Every fact of every record, in the order in which a reader follows them: the submittal, then each roof area with its zones, its
 * tests, its parts, and what its papers say against each other.
 */
#include "sheeting.h"

#include "pipeline.h"
#include "template.h"

#include <stdlib.h>
#include <string.h>

enum { MOST_WAITS = 64, MOST_DISTINCT = 64 };

/* A case in its place on the sheet. */
typedef struct {
	uint32_t area, rank, order;
	Case *at;
} Filed;

/* Zones before parts, parts before comparisons. */
static uint32_t rank_of(RecordKind kind)
{
	switch (kind) {
	case KIND_submittal:
	case KIND_roof_area:
		return 0;
	case KIND_zone:
		return 1;
	case KIND_test:
		return 2;
	case KIND_comparison:
	case KIND_role:
	case KIND_paper:
		return 2000 + (uint32_t)kind;
	default:
		return 1000 + (uint32_t)kind;
	}
}

static int by_place(const void *a, const void *b)
{
	const Filed *x = a, *y = b;
	if (x->area != y->area)
		return x->area < y->area ? -1 : 1;
	if (x->rank != y->rank)
		return x->rank < y->rank ? -1 : 1;
	return (x->order > y->order) - (x->order < y->order);
}

static Filed *file_cases(const Cases *cases, uint32_t *count, Arena *arena)
{
	size_t all = 0;
	for (int kind = 0; kind < RECORD_KINDS; kind++)
		all += cases->of[kind].count;
	Filed *filed = TAKE(arena, Filed, all);
	*count = 0;
	for (int kind = 0; kind < RECORD_KINDS; kind++)
		for (uint32_t i = 0; i < cases->of[kind].count; i++) {
			Case *at = cases->of[kind].at[i];
			const Case *area = case_outward(at, KIND_roof_area);
			filed[(*count)++] = (Filed){ area != NULL ? area->order + 1 : 0, rank_of((RecordKind)kind), i, at };
		}
	qsort(filed, *count, sizeof *filed, by_place);
	return filed;
}

/* ---- one fact ---- */

static bool is_same_use(const SheetUse *a, const SheetUse *b)
{
	return a->kind == b->kind && a->at == b->at && a->given == b->given && a->id == b->id && a->value == b->value
		&& (a->kind != USED_CONSTANT || strcmp(a->row, b->row) == 0);
}

/* A value asked for twice is told once; only so many back are looked at. */
static bool is_told(const SheetUse *use, uint32_t count, const SheetUse *next)
{
	for (uint32_t i = count > MOST_DISTINCT ? count - MOST_DISTINCT : 0; i < count; i++)
		if (is_same_use(&use[i], next))
			return true;
	return false;
}

static void take_uses(Sheeting *sheeting, SheetLine *line)
{
	const Cases *cases = sheeting->cases;
	uint32_t most = 0;
	for (uint32_t i = line->fact->first_use; i != 0; i = cases->use[i - 1].next)
		most++;
	SheetUse *use = TAKE(sheeting->arena, SheetUse, most);
	for (uint32_t i = line->fact->first_use; i != 0; i = cases->use[i - 1].next) {
		if (cases->use[i - 1].kind == USED_THROUGH)
			continue;
		SheetUse next = told_use(sheeting, &cases->use[i - 1]);
		if (!is_told(use, line->uses, &next))
			use[line->uses++] = next;
	}
	bool bound = bind_uses(line->formula, use, line->uses, sheeting->arena);
	line->is_expression = bound && fact_spec(line->id)->unit != UNIT_yes && is_calculator(line->formula);
	line->use = use;
}

static void take_waits(Sheeting *sheeting, SheetLine *line)
{
	if (line->fact->state != FACT_WAITING)
		return;
	SheetUse *wait = TAKE(sheeting->arena, SheetUse, MOST_WAITS);
	for (const Use *use = fact_waits(sheeting->cases, line->fact, NULL); use != NULL;
		 use = fact_waits(sheeting->cases, line->fact, use)) {
		SheetUse next = told_use(sheeting, use);
		next.kind = USED_FIELD;
		if (is_told(wait, line->waits, &next))
			continue;
		if (line->waits < MOST_WAITS)
			wait[line->waits++] = next;
		else
			line->more_waits++;
	}
	line->wait = wait;
}

static void take_line(Sheeting *sheeting, SheetLine *line, Case *at, FactId id)
{
	const Fact *fact = fact_of(at, id);
	*line = (SheetLine){ .at = at, .id = id, .fact = fact };
	line->formula = fact->formula != NULL ? fact->formula : fact_spec(id)->formula;
	take_uses(sheeting, line);
	take_waits(sheeting, line);
}

/* ---- all of them ---- */

static void count_state(Sheet *sheet, const Fact *fact)
{
	static const uint8_t at[] = { [FACT_KNOWN] = 0, [FACT_WAITING] = 1, [FACT_REFUSED] = 2, [FACT_NOT_APPLICABLE] = 3 };
	sheet->by_state[at[fact->state]]++;
}

static void take_lines(Sheeting *sheeting, Sheet *sheet)
{
	uint32_t count, room = 0;
	SheetLine *line = NULL;
	Filed *filed = file_cases(sheeting->cases, &count, sheeting->arena);
	for (uint32_t i = 0; i < count; i++)
		for (FactId id = 0; id < FACT_COUNT; id++) {
			if (!has_fact(filed[i].at, id))
				continue;
			line = arena_more(sheeting->arena, line, sheet->lines, &room, sizeof *line);
			take_line(sheeting, &line[sheet->lines], filed[i].at, id);
			count_state(sheet, line[sheet->lines++].fact);
		}
	sheet->line = line;
}

/* Each figure once, though many facts used it. */
static void count_constants(Sheeting *sheeting, Sheet *sheet)
{
	uint32_t room = 0;
	SheetConstant *constant = NULL;
	Hash *number = hash_make(sheeting->arena, 64);
	for (uint32_t l = 0; l < sheet->lines; l++)
		for (uint32_t i = 0; i < sheet->line[l].uses; i++) {
			const SheetUse *use = &sheet->line[l].use[i];
			if (use->kind != USED_CONSTANT)
				continue;
			const char *key = arena_printf(sheeting->arena, "%s %s %a", use->table, use->row, use->value);
			uintptr_t known = (uintptr_t)hash_get(number, key, strlen(key));
			if (known > 0) {
				constant[known - 1].facts++;
				continue;
			}
			constant = arena_more(sheeting->arena, constant, sheet->constants, &room, sizeof *constant);
			constant[sheet->constants++] = (SheetConstant){ use, 1 };
			sheet->known_by[use->known_by]++;
			hash_put(number, key, strlen(key), (void *)(uintptr_t)sheet->constants);
		}
	sheet->constant = constant;
}

Sheet *make_sheet(const Verdict *verdict, Arena *arena)
{
	Sheet *sheet = TAKE(arena, Sheet, 1);
	sheet->verdict = verdict;
	if (verdict->cases->criteria == NULL)
		return sheet;
	Sheeting sheeting = { .cases = verdict->cases, .arena = arena, .cells = hash_make(arena, 64) };
	take_lines(&sheeting, sheet);
	count_constants(&sheeting, sheet);
	return sheet;
}
