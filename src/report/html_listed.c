/* SPDX-License-Identifier: MIT
 * Submitted beside listed: each attribute of the assembly as it was tested, paper by paper, and whether it may differ.
 */
#include "drawn.h"

#include "pen.h"

#include <stdlib.h>
#include <string.h>

enum { MOST_ROWS = 300 };

static const char *holds_text(const DrawnComparison *compared, Arena *arena)
{
	const Fact *holds = compared->holds;
	bool is_same = is_word(&compared->row->record.step, "same");
	if (holds->state == FACT_KNOWN && holds->value != 0)
		return is_same ? "as tested" : "allowed";
	const char *words = holds->state == FACT_KNOWN ? "not allowed" : "not judged";
	const char *why = holds->note != NULL ? holds->note : holds->reason;
	return why != NULL ? arena_printf(arena, "%s: %s", words, why) : words;
}

/* The papers of a roof area, as columns. */
enum { MOST_PAPERS = 4 };
typedef struct {
	const Case *test[MOST_PAPERS];
	uint32_t count, left_out;
} Papers;

static Papers papers_of(const DrawnArea *area)
{
	Papers papers = { .count = 0 };
	for (uint32_t i = 0; i < area->comparisons; i++) {
		const Case *test = area->compared[i].row->test;
		if (i > 0 && test == area->compared[i - 1].row->test)
			continue;
		if (papers.count < MOST_PAPERS)
			papers.test[papers.count++] = test;
		else
			papers.left_out++;
	}
	return papers;
}

/* By part as the file has them, then by attribute; one attribute of one part on all papers stands together. */
static int compare_lines(const DrawnComparison *x, const DrawnComparison *y)
{
	const Case *one = x->row->part, *other = y->row->part;
	if (one->kind != other->kind)
		return one->kind < other->kind ? -1 : 1;
	if (one->order != other->order)
		return one->order < other->order ? -1 : 1;
	return strcmp(x->row->record.attribute.text, y->row->record.attribute.text);
}

static int by_line(const void *a, const void *b)
{
	const DrawnComparison *x = *(const DrawnComparison *const *)a, *y = *(const DrawnComparison *const *)b;
	int order = compare_lines(x, y);
	return order != 0 ? order : (x > y) - (x < y); /* of one array */
}

static const char *or_dash(const Text *text)
{
	return is_value(&text->given) && text->text != NULL ? text->text : "-";
}

static bool is_open(const DrawnComparison *compared)
{
	return compared->holds->state != FACT_KNOWN || compared->holds->value == 0;
}

/* One attribute of one part on all papers that speak of it. */
typedef struct {
	const DrawnComparison *const *at;
	uint32_t count;
} Line;

static const DrawnComparison *on_paper(const Line *line, const Case *test)
{
	for (uint32_t i = 0; i < line->count; i++)
		if (line->at[i]->row->test == test)
			return line->at[i];
	return NULL;
}

/* What is not as tested goes before what is; the items of the part are named where something is open. */
static const char *line_verdict(const Sight *sight, const Line *line)
{
	const DrawnComparison *worst = line->at[0];
	for (uint32_t i = 1; i < line->count; i++)
		if (is_open(line->at[i]) && !is_open(worst))
			worst = line->at[i];
	const char *words = holds_text(worst, sight->arena), *numbers = numbers_at(sight, worst->row->part);
	return is_open(worst) && numbers != NULL ? arena_printf(sight->arena, "%s; items of this part: %s", words, numbers) : words;
}

static bool is_open_line(const Line *line)
{
	for (uint32_t i = 0; i < line->count; i++)
		if (is_open(line->at[i]))
			return true;
	return false;
}

static void put_row(const Sight *sight, const DrawnArea *area, const Papers *papers, const Line *line)
{
	Markup *page = sight->page;
	const Comparison *row = &line->at[0]->row->record;
	OPEN(page, "tr");
	if (is_open_line(line))
		ATTRIBUTE(page, "class", "differs");
	ELEMENT(page, "td", name_within(line->at[0]->row->part, area->at));
	OPEN(page, "th");
	ATTRIBUTE(page, "scope", "row");
	markup_text(page, is_value(&row->title.given) ? row->title.text : row->attribute.text);
	CLOSE(page, "th");
	ELEMENT(page, "td", or_dash(&row->here));
	for (uint32_t i = 0; i < papers->count; i++) {
		const DrawnComparison *compared = on_paper(line, papers->test[i]);
		ELEMENT(page, "td", compared != NULL ? or_dash(&compared->row->record.there) : "");
	}
	OPEN(page, "td");
	put_linked(page, line_verdict(sight, line), sight->verdict, sight->arena);
	CLOSE(page, "td");
	CLOSE(page, "tr");
}

static void begin_listed(const Sight *sight, const Papers *papers)
{
	const char *head[MOST_PAPERS + 4] = { "Part", "Attribute", "Submitted" };
	int columns = 3;
	for (uint32_t i = 0; i < papers->count; i++) {
		const AreaTest *test = papers->test[i]->row;
		head[columns++] = arena_printf(sight->arena, "%s (%s)", said_text(&test->listing.given, sight->arena),
			said_text(&test->role.given, sight->arena));
	}
	head[columns++] = "Verdict";
	begin_table(sight->page, "What is submitted beside what each listing was tested with", head, columns);
}

static void put_lines(const Sight *sight, const DrawnArea *area, const DrawnComparison *const *sorted)
{
	Papers papers = papers_of(area);
	uint32_t lines = 0, open = 0;
	begin_listed(sight, &papers);
	for (uint32_t from = 0, to; from < area->comparisons; from = to) {
		for (to = from + 1; to < area->comparisons && compare_lines(sorted[from], sorted[to]) == 0; to++)
			;
		Line line = { sorted + from, to - from };
		open += is_open_line(&line);
		if (lines++ < MOST_ROWS)
			put_row(sight, area, &papers, &line);
	}
	end_table(sight->page);
	ELEMENT(sight->page, "p", arena_printf(sight->arena, "%u attributes, %u of them not allowed or not judged.", lines, open));
	if (lines > MOST_ROWS)
		ELEMENT(sight->page, "p", arena_printf(sight->arena, "%u attributes are not listed.", lines - MOST_ROWS));
	if (papers.left_out > 0)
		ELEMENT(sight->page, "p", arena_printf(sight->arena, "%u more listings have no column here.", papers.left_out));
}

void put_listed(const Sight *sight, const DrawnArea *area)
{
	if (area->comparisons == 0) {
		ELEMENT(sight->page, "p", "Nothing stands beside a listing: no listing of this area is named, or it is not in the criteria.");
		return;
	}
	const DrawnComparison **sorted = TAKE(sight->arena, const DrawnComparison *, area->comparisons);
	for (uint32_t i = 0; i < area->comparisons; i++)
		sorted[i] = &area->compared[i];
	qsort(sorted, area->comparisons, sizeof *sorted, by_line);
	put_lines(sight, area, sorted);
}
