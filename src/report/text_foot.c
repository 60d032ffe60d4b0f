/* SPDX-License-Identifier: MIT
 * The foot of the letter: parts one by one, whether to order, and all that the items do not say: what was assumed, not judged,
 * taken on the applicant's word, known only from memory, never looked at.
 */
#include "text.h"

#include "reference.h"

#include <stdlib.h>
#include <string.h>

enum { MOST_LINES = 40, MOST_PARTS = 200, MOST_CODES = 8, MOST_NAMES = 6 };

static void put_left(Pen *pen, uint32_t count, uint32_t shown, Arena *arena)
{
	if (count > shown)
		pen_line(pen, arena_printf(arena, "and %u more; --format json has them all", count - shown));
}

/* ---- parts and order ---- */

/* Its name within its roof area, whose heading stands above. */
static const char *name_in(const Case *part, const Case *area)
{
	size_t length = area != NULL ? strlen(area->name) : 0;
	bool named = length > 0 && strncmp(part->name, area->name, length) == 0 && strncmp(part->name + length, " / ", 3) == 0;
	return named ? part->name + length + 3 : part->name;
}

static void put_parts(Pen *pen, const Verdict *verdict, Arena *arena)
{
	if (verdict->parts == 0)
		return;
	PEN_HEADING(pen, "PARTS, ONE BY ONE");
	uint32_t shown = verdict->parts < MOST_PARTS ? verdict->parts : MOST_PARTS;
	const Case *above = NULL;
	for (uint32_t i = 0; i < shown; i++) {
		const Case *area = case_outward(verdict->part[i].part, KIND_roof_area);
		if (area != NULL && area != above)
			pen_subheading(pen, area->name);
		above = area;
		const PartLine *part = &verdict->part[i];
		pen_part(pen, &(PenPart){ plain_words(record_of(part->part->kind)->name, arena), name_in(part->part, area),
			clearance_text(part, arena) });
	}
	put_left(pen, verdict->parts, shown, arena);
}

static void put_order(Pen *pen, const Verdict *verdict)
{
	if (verdict->order_line == NULL)
		return;
	PEN_HEADING(pen, "ORDERING");
	pen_line(pen, verdict->order_line);
	if (verdict->order_condition != NULL)
		pen_line(pen, verdict->order_condition);
}

/* ---- what the items do not say ---- */

/* One assumed value and the records it was assumed for; there are as many as the form has such keys. */
typedef struct {
	const Assumption *first;
	const char *names;
	uint32_t count;
} Assumed;

static void add_assumed(Assumed *group, const Assumption *assumed, Arena *arena)
{
	const char *name = assumed->where != NULL && assumed->where->kind != KIND_submittal ? assumed->where->name : "the submittal";
	if (group->count == 0)
		*group = (Assumed){ assumed, name, 0 };
	else if (group->count < MOST_NAMES)
		group->names = arena_printf(arena, "%s, %s", group->names, name);
	group->count++;
}

/* Equal values of one field stand on one line. */
static void put_values(Pen *pen, const Assumption *list, uint32_t count, Arena *arena)
{
	Assumed group[MOST_LINES] = { { .count = 0 } };
	uint32_t groups = 0, left_out = 0;
	for (uint32_t i = 0; i < count; i++) {
		const Assumption *one = &list[i];
		uint32_t g = 0;
		while (g < groups && (group[g].first->field != one->field || strcmp(group[g].first->value, one->value) != 0))
			g++;
		left_out += g == MOST_LINES;
		if (g == MOST_LINES)
			continue;
		add_assumed(&group[g], one, arena);
		groups += g == groups;
	}
	for (uint32_t g = 0; g < groups; g++) {
		uint32_t left = group[g].count > MOST_NAMES ? group[g].count - MOST_NAMES : 0;
		const char *more = left > 0 ? arena_printf(arena, " and %u more", left) : "";
		pen_line(pen, arena_printf(arena, "%s: %s (%s%s)", group[g].first->field->title, group[g].first->value, group[g].names, more));
	}
	put_left(pen, left_out, 0, arena);
}

static void put_assumed(Pen *pen, const Verdict *verdict, Arena *arena)
{
	if (verdict->assumptions > 0)
		PEN_HEADING(pen, "ASSUMED, BECAUSE NOT STATED");
	put_values(pen, verdict->assumed, verdict->assumptions, arena);
	if (verdict->not_applicables > 0)
		PEN_HEADING(pen, "SAID NOT TO APPLY");
	put_values(pen, verdict->not_applicable, verdict->not_applicables, arena);
}

/* Rules that wait for one thing stand on one line. */
static int by_cause(const void *a, const void *b)
{
	const NotYet *x = *(const NotYet *const *)a, *y = *(const NotYet *const *)b;
	if (x->item != y->item)
		return x->item == NULL || (y->item != NULL && x->item > y->item) ? 1 : -1;
	return strcmp(x->rule->code, y->rule->code);
}

/* "CLP-01, CLP-02 and 7 more": the codes of one cause, each once. */
static const char *codes_of(const NotYet *const *waiting, uint32_t count, Arena *arena)
{
	const char *codes = NULL;
	uint32_t shown = 0, left = 0;
	for (uint32_t i = 0; i < count; i++) {
		if (i > 0 && strcmp(waiting[i]->rule->code, waiting[i - 1]->rule->code) == 0)
			continue;
		if (shown == MOST_CODES) {
			left++;
			continue;
		}
		codes = codes == NULL ? waiting[i]->rule->code : arena_printf(arena, "%s, %s", codes, waiting[i]->rule->code);
		shown++;
	}
	return left > 0 ? arena_printf(arena, "%s and %u more", codes, left) : codes;
}

static int by_waits_for(const void *a, const void *b)
{
	return strcmp((*(const NotYet *const *)a)->waits_for, (*(const NotYet *const *)b)->waits_for);
}

/* "panel.supplied_by, test.pressure and 2 more": what some rules wait for, each once. */
static const char *keys_of(const NotYet *const *waiting, uint32_t count, Arena *arena)
{
	const NotYet **sorted = TAKE(arena, const NotYet *, count);
	const char *keys = NULL;
	uint32_t shown = 0, left = 0;
	for (uint32_t i = 0; i < count; i++)
		sorted[i] = waiting[i];
	qsort(sorted, count, sizeof *sorted, by_waits_for);
	for (uint32_t i = 0; i < count; i++) {
		if (i > 0 && strcmp(sorted[i]->waits_for, sorted[i - 1]->waits_for) == 0)
			continue;
		if (shown == MOST_CODES) {
			left++;
			continue;
		}
		keys = shown++ == 0 ? sorted[i]->waits_for : arena_printf(arena, "%s, %s", keys, sorted[i]->waits_for);
	}
	return left > 0 ? arena_printf(arena, "%s and %u more", keys, left) : keys;
}

/* What no item asks for is not due yet. */
static void put_cause(Pen *pen, const NotYet *const *waiting, uint32_t count, Arena *arena)
{
	const Finding *item = waiting[0]->item;
	const char *codes = codes_of(waiting, count, arena);
	pen_line_of_items(pen, item != NULL ? arena_printf(arena, "until %s is answered: %s", item_called(item, arena), codes)
		: arena_printf(arena, "until more is stated than is due at this stage (%s): %s", keys_of(waiting, count, arena), codes));
}

static void put_not_judged(Pen *pen, const Verdict *verdict, Arena *arena)
{
	if (verdict->not_yets == 0)
		return;
	PEN_HEADING(pen, "NOT JUDGED YET");
	const NotYet **waiting = TAKE(arena, const NotYet *, verdict->not_yets);
	for (uint32_t i = 0; i < verdict->not_yets; i++)
		waiting[i] = &verdict->not_yet[i];
	qsort(waiting, verdict->not_yets, sizeof *waiting, by_cause);
	uint32_t causes = 0;
	for (uint32_t from = 0, to; from < verdict->not_yets; from = to) {
		for (to = from + 1; to < verdict->not_yets && waiting[to]->item == waiting[from]->item; to++)
			;
		if (causes++ < MOST_LINES)
			put_cause(pen, waiting + from, to - from, arena);
	}
	put_left(pen, causes, MOST_LINES, arena);
}

static void put_unverified(Pen *pen, const Verdict *verdict, Arena *arena)
{
	if (verdict->unverifieds == 0)
		return;
	PEN_HEADING(pen, "UNVERIFIED");
	uint32_t shown = verdict->unverifieds < MOST_LINES ? verdict->unverifieds : MOST_LINES;
	for (uint32_t i = 0, to; i < shown; i = to) {
		const Unverified *first = &verdict->unverified[i];
		const char *what = first->what;
		for (to = i + 1; to < shown && strcmp(verdict->unverified[to].why, first->why) == 0; to++)
			what = arena_printf(arena, "%s; %s", what, verdict->unverified[to].what);
		pen_line(pen, arena_printf(arena, to > i + 1 ? "%s. All: %s" : "%s: %s", what, first->why));
	}
	put_left(pen, verdict->unverifieds, shown, arena);
}

static void put_checked(Pen *pen, const Verdict *verdict, Arena *arena)
{
	const Tally *tally = &verdict->tally;
	const uint32_t *known = verdict->known_by;
	PEN_HEADING(pen, "HOW MUCH WAS CHECKED");
	uint32_t checks = tally->met + tally->broken + tally->not_judged + tally->refused;
	const char *follow = tally->held_back > 0 ? arena_printf(arena, " (%u only follow from another item)", tally->held_back) : "";
	pen_line(pen, arena_printf(arena, "%u checks: %u met, %u not met%s, %u not judged, %u beyond the tables; %u did not apply.",
		checks, tally->met, tally->broken, follow, tally->not_judged, tally->refused, tally->not_applicable));
	if (known[KNOWN_READ] + known[KNOWN_SECOND_HAND] + known[KNOWN_MEMORY] + known[KNOWN_PRACTICE] > 0)
		pen_line(pen, arena_printf(arena, "Figures behind them: %u read in their source, %u second-hand, %u from memory, "
			"%u common practice.", known[KNOWN_READ], known[KNOWN_SECOND_HAND], known[KNOWN_MEMORY], known[KNOWN_PRACTICE]));
	pen_line(pen, "Authority of an item: program is the panel maker's own rule, listing a tested construction, engineer the sealed "
		"letter, specification and code what they say, computed a figure worked out here.");
}

/* ---- standing text ---- */

static void put_not_covered(Pen *pen, const Criteria *criteria, Arena *arena)
{
	if (criteria->not_judged.count == 0)
		return;
	PEN_HEADING(pen, "NEVER PART OF THIS REVIEW");
	for (uint32_t i = 0; i < criteria->not_judged.count; i++) {
		const NotJudged *row = &criteria->not_judged.row[i];
		pen_line(pen, arena_printf(arena, "%s: %s; usually by: %s", row->subject.text, row->reason.text, row->usually_by.text));
	}
}

static void put_files(Pen *pen, const Verdict *verdict, Arena *arena)
{
	const Criteria *criteria = verdict->cases->criteria;
	PEN_HEADING(pen, "FILES READ");
	pen_line(pen, verdict->source->name);
	if (verdict->review_source != NULL)
		pen_line(pen, arena_printf(arena, "%s (the reviewer's)", verdict->review_source->name));
	if (verdict->replies_source != NULL)
		pen_line(pen, arena_printf(arena, "%s (replies)", verdict->replies_source->name));
	if (criteria != NULL)
		pen_line(pen, arena_printf(arena, "criteria %s", criteria->folder));
	if (verdict->cases->registers != NULL && verdict->cases->registers->folder != NULL)
		pen_line(pen, arena_printf(arena, "registers %s", verdict->cases->registers->folder));
}

void put_foot(Pen *pen, const Verdict *verdict, Arena *arena)
{
	if (!verdict->broken_file) {
		put_parts(pen, verdict, arena);
		put_order(pen, verdict);
		put_assumed(pen, verdict, arena);
		put_not_judged(pen, verdict, arena);
		put_unverified(pen, verdict, arena);
		put_checked(pen, verdict, arena);
	}
	if (verdict->cases->criteria != NULL)
		put_not_covered(pen, verdict->cases->criteria, arena);
	pen_cautions(pen, verdict->cases->reference);
	put_files(pen, verdict, arena);
	if (!verdict->self_check && !verdict->broken_file)
		pen_signature(pen);
}
