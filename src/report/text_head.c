/* SPDX-License-Identifier: MIT
 * The head of the letter: what it is, whose it is, by which criteria, what the answer is and who must act.
 */
#include "text.h"

#include "date.h"
#include "earlier.h"

#include <stdlib.h>
#include <string.h>

static const LabelColumn head_column = { 0, 14 };

/* Between 1 and many. */
static const char *plural(uint32_t count, const char *one, const char *many)
{
	return count == 1 ? one : many;
}

static const char *joined(const char *before, const char *more, Arena *arena)
{
	return *before == '\0' ? more : arena_printf(arena, "%s, %s", before, more);
}

/* " (1.03, 1.08 and 3 more)": the items of one action; "" where they have no numbers. */
static const char *numbers_of(const Verdict *verdict, Action action, Arena *arena)
{
	enum { MOST_NUMBERS = 12 };
	const char *numbers = "";
	uint32_t shown = 0;
	for (uint32_t i = 0; i < verdict->items && shown < MOST_NUMBERS; i++) {
		const Finding *item = &verdict->item[i];
		const char *number = counted_action(item) == (int)action ? item_number(item, arena) : NULL;
		if (number == NULL)
			continue;
		numbers = joined(numbers, number, arena);
		shown++;
	}
	if (shown == 0)
		return "";
	uint32_t left = verdict->by_action[action] > shown ? verdict->by_action[action] - shown : 0;
	return left > 0 ? arena_printf(arena, " (%s and %u more)", numbers, left) : arena_printf(arena, " (%s)", numbers);
}

/* "2 REJECTED (1.03, 1.08), 5 NOT REVIEWED (...)": the actions from `first` to `last`. */
static const char *action_counts(const Verdict *verdict, int first, int last, Arena *arena)
{
	const char *counts = "";
	for (int action = first; action <= last; action++) {
		uint32_t count = verdict->by_action[action];
		if (count > 0)
			counts = joined(counts, arena_printf(arena, "%u %s%s", count, action_words((Action)action),
				numbers_of(verdict, (Action)action, arena)), arena);
	}
	return counts;
}

static void put_self_check(Pen *pen, const Verdict *verdict, Arena *arena)
{
	pen_answer(pen, "SELF-CHECK, NOT AN APPROVAL");
	uint32_t count = items_in_the_way(verdict);
	if (count == 0 && verdict->stage == STAGE_bid) {
		pen_say(pen, "Nothing found here stands in the way of this bid. What a bid does not state yet (clips, screws, tests, the "
			"engineer's letter), and so whether the roof holds in the wind, was not judged: seamstamp options shows what would hold.");
		return;
	}
	const char *line = count > 0
		? arena_printf(arena, "%u %s between this package and approval: %s.", count, plural(count, "item stands", "items stand"),
			action_counts(verdict, 0, ACTION_NOT_REVIEWED, arena))
		: "Nothing found here stands between this package and approval. The panel maker's reviewer decides.";
	pen_say(pen, line);
}

static void put_answer(Pen *pen, const Verdict *verdict, Arena *arena)
{
	if (verdict->broken_file) {
		pen_answer(pen, "NOT JUDGED: the file could not be read to its end. Mend what is listed and run again.");
		return;
	}
	if (verdict->self_check) {
		put_self_check(pen, verdict, arena);
	} else {
		const char *action = verdict->recommended_action != NULL ? verdict->recommended_action : "none";
		pen_answer(pen, arena_printf(arena, "Recommended action: %s", action));
		const char *counts = action_counts(verdict, 0, ACTION_NOT_REVIEWED, arena);
		if (*counts != '\0')
			pen_say(pen, arena_printf(arena, "Open: %s.", counts));
	}
	const char *notes = action_counts(verdict, ACTION_NOT_REVIEWED + 1, ACTION_COUNT - 1, arena);
	if (*notes != '\0')
		pen_say(pen, arena_printf(arena, "Notes to follow: %s.", notes));
}

/* ---- rounds ---- */

static void put_since(Pen *pen, const Verdict *verdict, Arena *arena)
{
	static const ItemState states[] = { ITEM_OPEN, ITEM_NEW, ITEM_CONDITION, ITEM_VARIANCE };
	const Earlier *earlier = verdict->earlier;
	uint32_t count[ITEM_VARIANCE + 1] = { 0 }, closed = 0;
	for (uint32_t i = 0; i < verdict->items; i++) {
		count[item_state(&verdict->item[i])]++;
		closed += item_state(&verdict->item[i]) == ITEM_CLOSED && verdict->item[i].settled == verdict->round;
	}
	const char *line = "";
	for (size_t i = 0; i < sizeof states / sizeof *states; i++)
		if (count[states[i]] > 0)
			line = joined(line, arena_printf(arena, "%u %s", count[states[i]], item_state_words(states[i])), arena);
	line = joined(line, arena_printf(arena, "%u closed in this round", closed), arena);
	const char *before = earlier->round > 0 ? arena_printf(arena, "round %u", earlier->round) : "the bid";
	pen_label(pen, head_column, "Since before", arena_printf(arena, "%s; the report of %s is %s, SHA-256 %.16s...", line, before,
		earlier->source->name, earlier->sha256));
}

/* Another edition, or another state of the same: what was met may be broken now, and the other way. */
static void put_criteria_before(Pen *pen, const Verdict *verdict, Arena *arena)
{
	const Earlier *earlier = verdict->earlier;
	const Criteria *criteria = verdict->cases->criteria;
	const char *edition = criteria != NULL ? criteria->edition.edition.text : NULL;
	if (edition == NULL || earlier->edition == NULL)
		return;
	bool same_name = strcmp(edition, earlier->edition) == 0;
	bool same = verdict->criteria_sha256 == NULL || earlier->criteria_sha256 == NULL ||
		strcmp(verdict->criteria_sha256, earlier->criteria_sha256) == 0;
	if (same_name && same)
		return;
	pen_say(pen, same_name ? arena_printf(arena, "The criteria %s were changed since the round before.", edition)
		: arena_printf(arena, "Judged by another edition of the criteria than the round before: %s, not %s.", edition,
			earlier->edition));
}

/* ---- who must answer ---- */

typedef struct {
	const char *who;
	uint32_t count;
} Answerer;

static int by_name(const void *a, const void *b)
{
	return strcmp(*(const char *const *)a, *(const char *const *)b);
}

static int by_count(const void *a, const void *b)
{
	const Answerer *x = a, *y = b;
	if (x->count != y->count)
		return x->count < y->count ? 1 : -1;
	return strcmp(x->who, y->who);
}

/* Sorted names, equal ones counted: a file may name as many parties as it has items. What is closed waits for nobody. */
static const char *answerers(const Verdict *verdict, Arena *arena)
{
	enum { MOST_NAMED = 8 };
	const char **who = TAKE(arena, const char *, verdict->items);
	Answerer *answerer = TAKE(arena, Answerer, verdict->items);
	uint32_t open = 0, named = 0, left = 0;
	for (uint32_t i = 0; i < verdict->items; i++)
		if (counted_action(&verdict->item[i]) >= 0)
			who[open++] = verdict->item[i].answer_by != NULL ? verdict->item[i].answer_by : "applicant";
	qsort(who, open, sizeof *who, by_name);
	for (uint32_t i = 0; i < open; i++) {
		if (i == 0 || strcmp(who[i], who[i - 1]) != 0)
			answerer[named++].who = who[i];
		answerer[named - 1].count++;
	}
	qsort(answerer, named, sizeof *answerer, by_count);
	const char *line = "";
	for (uint32_t i = 0; i < named; i++) {
		if (i < MOST_NAMED)
			line = joined(line, arena_printf(arena, "%s %u", answerer[i].who, answerer[i].count), arena);
		else
			left += answerer[i].count;
	}
	return left > 0 ? arena_printf(arena, "%s, others %u", line, left) : line;
}

/* ---- who, what, by which criteria ---- */

static const char *said(const Given *given, Arena *arena)
{
	return said_text(given, arena);
}

static void put_project(Pen *pen, const Submittal *submittal, Arena *arena)
{
	const Project *project = &submittal->project;
	pen_label(pen, head_column, "Project", arena_printf(arena, "%s, %s, %s (%s)", said(&project->name.given, arena),
		said(&project->city.given, arena), said(&project->state.given, arena), said(&project->use.given, arena)));
	const Warranty *warranty = &submittal->warranty;
	pen_label(pen, head_column, "Asked for", arena_printf(arena, "%s warranty, %s, limit of cover %s",
		said(&warranty->kind.given, arena), said(&warranty->term_yr.given, arena), said(&warranty->cover_limit.given, arena)));
	const char *section = said(&submittal->specification.section.given, arena);
	pen_label(pen, head_column, "Specified in", arena_printf(arena, "section %s", section));
}

/* Who gets the letter, where it is one. */
static void put_parties(Pen *pen, const Verdict *verdict, Arena *arena)
{
	const Parties *parties = &verdict->cases->submittal->parties;
	pen_label(pen, head_column, "Applicant", said(&parties->applicant.firm.given, arena));
	if (!verdict->self_check)
		pen_label(pen, head_column, "Copies to", arena_printf(arena, "owner %s; designer %s; general contractor %s",
			said(&parties->owner.given, arena), said(&parties->designer.given, arena),
			said(&parties->general_contractor.given, arena)));
}

static void put_submittal(Pen *pen, const Verdict *verdict, Arena *arena)
{
	const Submittal *submittal = verdict->cases->submittal;
	const char *round = verdict->stage == STAGE_bid ? "" : arena_printf(arena, ", round %u", verdict->round);
	pen_label(pen, head_column, "Submittal", arena_printf(arena, "%s%s, stage %s, dated %s",
		said(&submittal->submittal.given, arena), round, stage_words(verdict->stage), said(&submittal->date.given, arena)));
	const Review *review = verdict->cases->review;
	if (!verdict->self_check && review != NULL)
		pen_label(pen, head_column, "Review", arena_printf(arena, "received %s%s%s", said(&review->received.given, arena),
			is_value(&review->returned.given) ? ", returned " : "",
			is_value(&review->returned.given) ? review->returned.given.typed : ""));
}

static void put_criteria(Pen *pen, const Verdict *verdict, Arena *arena)
{
	const Cases *cases = verdict->cases;
	if (cases->criteria == NULL)
		return;
	const Edition *edition = &cases->criteria->edition;
	pen_label(pen, head_column, "Criteria", arena_printf(arena, "%s of %s, in force %s to %s", said(&edition->edition.given, arena),
		said(&edition->maker.given, arena), said(&edition->effective.given, arena), said(&edition->expires.given, arena)));
	if (cases->as_of != INT32_MIN)
		pen_label(pen, head_column, "Judged as of", date_print(arena, cases->as_of));
}

void put_head(Pen *pen, const Verdict *verdict, Arena *arena)
{
	put_answer(pen, verdict, arena);
	if (verdict->earlier != NULL && !verdict->broken_file)
		put_criteria_before(pen, verdict, arena);
	pen_gap(pen);
	const Cases *cases = verdict->cases;
	if (!verdict->broken_file) {
		put_project(pen, cases->submittal, arena);
		put_parties(pen, verdict, arena);
		put_submittal(pen, verdict, arena);
		put_criteria(pen, verdict, arena);
		if (verdict->earlier != NULL)
			put_since(pen, verdict, arena);
	}
	pen_label(pen, head_column, "File", verdict->source->name);
	const char *who = verdict->items > 0 ? answerers(verdict, arena) : "";
	if (*who != '\0')
		pen_label(pen, head_column, "To answer", who);
}
