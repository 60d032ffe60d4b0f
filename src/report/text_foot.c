/* SPDX-License-Identifier: MIT
 * The foot of the letter: parts one by one, whether to order, and all that the items do not say: what was assumed, not judged,
 * taken on the applicant's word, known only from memory, never looked at.
 */
#include "text.h"

#include "reference.h"
#include "report.h"

#include <stdlib.h>
#include <string.h>

enum { MOST_LINES = 40, MOST_CODES = 8 };

static void put_left(Out *out, uint32_t count, uint32_t shown)
{
	if (count <= shown)
		return;
	SAY(out, "  and ");
	put_count(out, count - shown);
	SAY(out, " more; --format json has them all\n");
}

/* A line of prose under a heading. */
static void put_line(Out *out, const char *text)
{
	SAY(out, "  ");
	put_wrapped(out, text, 2, 2, PAGE_WIDTH);
	SAY(out, "\n");
}

static const char *names_of(const Finding *item, Arena *arena)
{
	if (item == NULL)
		return "an open item";
	const char *number = item_number(item, arena);
	return number != NULL ? number : item->code;
}

/* ---- parts and order ---- */

static const char *clearance_text(const PartLine *part, Arena *arena)
{
	switch (part->clearance) {
	case PART_CLEAR:
		return "nothing found against it";
	case PART_NOT_CLEARED:
		return arena_printf(arena, "not cleared (%s)", names_of(part->item, arena));
	default:
		return arena_printf(arena, "depends on %s", names_of(part->item, arena));
	}
}

static void put_parts(Out *out, const Verdict *verdict, Arena *arena)
{
	if (verdict->parts == 0)
		return;
	SAY(out, "\nPARTS, ONE BY ONE\n");
	uint32_t shown = verdict->parts < MOST_LINES ? verdict->parts : MOST_LINES;
	for (uint32_t i = 0; i < shown; i++) {
		const PartLine *part = &verdict->part[i];
		SAY(out, "  ");
		const char *kind = plain_words(record_of(part->part->kind)->name, arena);
		const char *text = arena_printf(arena, "%s: %s (%s)", part->part->name, clearance_text(part, arena), kind);
		put_wrapped(out, text, 2, 4, PAGE_WIDTH);
		SAY(out, "\n");
	}
	put_left(out, verdict->parts, shown);
}

static void put_order(Out *out, const Verdict *verdict)
{
	if (verdict->order_line == NULL)
		return;
	SAY(out, "\nORDERING\n");
	put_line(out, verdict->order_line);
}

/* ---- what the items do not say ---- */

static void put_assumed(Out *out, const Verdict *verdict, Arena *arena)
{
	if (verdict->assumptions == 0)
		return;
	SAY(out, "\nASSUMED, BECAUSE NOT STATED\n");
	uint32_t shown = verdict->assumptions < MOST_LINES ? verdict->assumptions : MOST_LINES;
	for (uint32_t i = 0; i < shown; i++) {
		const Assumption *a = &verdict->assumed[i];
		put_line(out, arena_printf(arena, "%s: %s: %s", a->where != NULL ? a->where->name : "the submittal", a->field->title, a->value));
	}
	put_left(out, verdict->assumptions, shown);
}

/* Rules that wait for one thing stand on one line. */
static int by_cause(const void *a, const void *b)
{
	const NotYet *x = *(const NotYet *const *)a, *y = *(const NotYet *const *)b;
	if (x->item != y->item)
		return x->item == NULL || (y->item != NULL && x->item > y->item) ? 1 : -1;
	const char *left = x->waits_for != NULL ? x->waits_for : "", *right = y->waits_for != NULL ? y->waits_for : "";
	int order = x->item != NULL ? 0 : strcmp(left, right);
	return order != 0 ? order : strcmp(x->rule->code, y->rule->code);
}

static bool is_one_cause(const NotYet *a, const NotYet *b)
{
	if (a->item != NULL || b->item != NULL)
		return a->item == b->item;
	return strcmp(a->waits_for != NULL ? a->waits_for : "", b->waits_for != NULL ? b->waits_for : "") == 0;
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

static void put_cause(Out *out, const NotYet *const *waiting, uint32_t count, Arena *arena)
{
	const NotYet *first = waiting[0];
	const char *codes = codes_of(waiting, count, arena);
	if (first->item != NULL)
		put_line(out, arena_printf(arena, "until %s is answered: %s", names_of(first->item, arena), codes));
	else
		put_line(out, arena_printf(arena, "until known (%s): %s", first->waits_for != NULL ? first->waits_for : "what is missing", codes));
}

static void put_not_judged(Out *out, const Verdict *verdict, Arena *arena)
{
	if (verdict->not_yets == 0)
		return;
	SAY(out, "\nNOT JUDGED YET\n");
	const NotYet **waiting = TAKE(arena, const NotYet *, verdict->not_yets);
	for (uint32_t i = 0; i < verdict->not_yets; i++)
		waiting[i] = &verdict->not_yet[i];
	qsort(waiting, verdict->not_yets, sizeof *waiting, by_cause);
	uint32_t causes = 0;
	for (uint32_t from = 0, to; from < verdict->not_yets; from = to) {
		for (to = from + 1; to < verdict->not_yets && is_one_cause(waiting[from], waiting[to]); to++)
			;
		if (causes++ < MOST_LINES)
			put_cause(out, waiting + from, to - from, arena);
	}
	put_left(out, causes, MOST_LINES);
}

static void put_unverified(Out *out, const Verdict *verdict, Arena *arena)
{
	if (verdict->unverifieds == 0)
		return;
	SAY(out, "\nUNVERIFIED\n");
	uint32_t shown = verdict->unverifieds < MOST_LINES ? verdict->unverifieds : MOST_LINES;
	for (uint32_t i = 0; i < shown; i++)
		put_line(out, arena_printf(arena, "%s: %s", verdict->unverified[i].what, verdict->unverified[i].why));
	put_left(out, verdict->unverifieds, shown);
}

static void put_checked(Out *out, const Verdict *verdict, Arena *arena)
{
	const Tally *tally = &verdict->tally;
	const uint32_t *known = verdict->known_by;
	SAY(out, "\nHOW MUCH WAS CHECKED\n");
	put_line(out, arena_printf(arena, "%u checks: %u met, %u not met, %u not judged, %u wait for another item, %u beyond the tables; "
		"%u did not apply.", tally->met + tally->broken + tally->not_judged + tally->held_back + tally->refused, tally->met,
		tally->broken, tally->not_judged, tally->held_back, tally->refused, tally->not_applicable));
	if (known[KNOWN_READ] + known[KNOWN_SECOND_HAND] + known[KNOWN_MEMORY] + known[KNOWN_PRACTICE] > 0)
		put_line(out, arena_printf(arena, "Figures behind them: %u read in their source, %u second-hand, %u from memory, %u common practice.",
			known[KNOWN_READ], known[KNOWN_SECOND_HAND], known[KNOWN_MEMORY], known[KNOWN_PRACTICE]));
	put_line(out, "Authority of an item: program is the panel maker's own rule, listing a tested construction, engineer the sealed letter, "
		"specification and code what they say, computed a figure worked out here.");
}

/* ---- standing text ---- */

static void put_not_covered(Out *out, const Criteria *criteria, Arena *arena)
{
	if (criteria->not_judged.count == 0)
		return;
	SAY(out, "\nNEVER PART OF THIS REVIEW\n");
	for (uint32_t i = 0; i < criteria->not_judged.count; i++) {
		const NotJudged *row = &criteria->not_judged.row[i];
		put_line(out, arena_printf(arena, "%s: %s; usually by: %s", row->subject.text, row->reason.text, row->usually_by.text));
	}
}

static void put_files(Out *out, const Verdict *verdict, Arena *arena)
{
	const Criteria *criteria = verdict->cases->criteria;
	SAY(out, "\nFILES READ\n");
	put_line(out, verdict->source->name);
	if (verdict->review_source != NULL)
		put_line(out, arena_printf(arena, "%s (the reviewer's)", verdict->review_source->name));
	if (criteria != NULL)
		put_line(out, arena_printf(arena, "criteria %s", criteria->folder));
	if (verdict->cases->registers != NULL && verdict->cases->registers->folder != NULL)
		put_line(out, arena_printf(arena, "registers %s", verdict->cases->registers->folder));
}

void put_foot(Out *out, const Verdict *verdict, Arena *arena)
{
	if (!verdict->broken_file) {
		put_parts(out, verdict, arena);
		put_order(out, verdict);
		put_assumed(out, verdict, arena);
		put_not_judged(out, verdict, arena);
		put_unverified(out, verdict, arena);
		put_checked(out, verdict, arena);
	}
	if (verdict->cases->criteria != NULL)
		put_not_covered(out, verdict->cases->criteria, arena);
	write_cautions(out, verdict->cases->reference, (CautionsFor){ "review", "" }, arena);
	put_files(out, verdict, arena);
}
