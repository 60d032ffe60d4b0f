/* SPDX-License-Identifier: MIT
 * Slips in the reviewer's file. They are told to him and refuse the review: nothing of them stands in the contractor's letter.
 */
#include "judge.h"
#include "pipeline.h"

#include <string.h>

static const char *text_of(const Text *text)
{
	return is_value(&text->given) && text->text != NULL ? text->text : "";
}

/* ---- the file alone ---- */

/* A list that was left out says none; all else that is asked for must be a value. */
static bool is_lacking(const Field *field, const Given *given)
{
	if (given->said == SAID_UNKNOWN || given->said == SAID_BY_OTHERS)
		return true;
	bool is_blank_text = field->kind == IS_TEXT && given->said == SAID_VALUE &&
			     ((const Text *)(const void *)given)->text[0] == '\0';
	return field->need == NEED_REQUIRED && (given->said == SAID_NOTHING || is_blank_text);
}

static void check_record(const Record *record, const char *row, Complaints *faults)
{
	const Given *whole = (const Given *)(const void *)row;
	for (uint32_t i = 0; i < record->count; i++) {
		const Field *field = &record->field[i];
		const Given *given = given_in(field, row);
		if (!is_lacking(field, given))
			continue;
		const char *example = field->example != NULL ? field->example : "its value";
		Place place = given->place.line > 0 ? given->place : whole->place;
		complain(faults, MESSAGE_REV_03, place, (About){ .key = field->key, .want = example });
	}
}

static void check_list(const Record *record, const List *list, Complaints *faults)
{
	for (uint32_t i = 0; i < list->count; i++)
		check_record(record, (const char *)list->row + i * record->size, faults);
}

static const char *action_names(Arena *arena)
{
	const char *names = action_words((Action)0);
	for (int action = 1; action < ACTION_COUNT; action++)
		names = arena_printf(arena, "%s, %s", names, action_words((Action)action));
	return names;
}

static void check_actions(const Review *review, Complaints *faults)
{
	for (uint32_t i = 0; i < review->own.of.count; i++) {
		const Text *action = &review->own.of.row[i].action;
		if (*text_of(action) == '\0' || action_find(action->text) >= 0)
			continue;
		About about = { .value = cut_text(action->text, faults->arena), .want = action_names(faults->arena) };
		complain(faults, MESSAGE_REV_02, action->given.place, about);
	}
}

void check_review(const Review *review, Complaints *faults)
{
	check_record(&Review_record, (const char *)review, faults);
	check_list(&PaperSeen_record, &review->papers.list, faults);
	check_list(&Disposition_record, &review->items.list, faults);
	check_list(&OwnItem_record, &review->own.list, faults);
	check_actions(review, faults);
	const Date *received = &review->received, *returned = &review->returned;
	if (is_value(&received->given) && is_value(&returned->given) && returned->day < received->day)
		complain(faults, MESSAGE_REV_04, returned->given.place,
			 (About){ .value = returned->given.typed, .want = received->given.typed });
}

/* ---- against the submittal ---- */

static const char *package_words(const Text *number, const Number *round, Arena *arena)
{
	const char *name = *text_of(number) != '\0' ? cut_text(text_of(number), arena) : "no submittal";
	return is_value(&round->given) ? arena_printf(arena, "%s round %.0f", name, round->value) : name;
}

static void put_number(Hash *package, const Text *number)
{
	const char *text = text_of(number);
	if (*text != '\0')
		hash_put(package, text, strlen(text), (void *)(uintptr_t)number);
}

/* Every paper the submittal names. PART_FIELDS lie at one place in every part. */
static Hash *papers_named(const Cases *cases, Arena *arena)
{
	const Submittal *submittal = cases->submittal;
	Hash *package = hash_make(arena, 64);
	for (uint32_t i = 0; i < submittal->documents.of.count; i++)
		put_number(package, &submittal->documents.of.row[i].number);
	for (uint32_t i = 0; i < submittal->engineering.of.count; i++)
		put_number(package, &submittal->engineering.of.row[i].letter);
	for (int kind = 0; kind < RECORD_KINDS; kind++)
		for (uint32_t i = 0; is_part((RecordKind)kind) && i < cases->of[kind].count; i++)
			put_number(package, &((const Panel *)cases->of[kind].at[i]->row)->life_paper);
	return package;
}

static void check_papers(const Verdict *verdict, Complaints *faults)
{
	const Review *review = verdict->cases->review;
	const Hash *package = papers_named(verdict->cases, faults->arena);
	for (uint32_t i = 0; i < review->papers.of.count; i++) {
		const Text *number = &review->papers.of.row[i].number;
		const char *paper = text_of(number);
		if (*paper != '\0' && hash_get(package, paper, strlen(paper)) == NULL)
			complain(faults, MESSAGE_REV_06, number->given.place, (About){ .value = cut_text(paper, faults->arena) });
	}
}

static bool check_disposition(const Verdict *verdict, const Disposition *row, Complaints *faults)
{
	const Finding *item = item_numbered(verdict, text_of(&row->number));
	if (item == NULL) {
		About about = { .value = cut_text(text_of(&row->number), faults->arena) };
		complain(faults, MESSAGE_REV_07, row->number.given.place, about);
		return true;
	}
	if (!is_value(&row->disposition.given) || may_dispose(item, state_for(row->disposition.text)))
		return true;
	complain(faults, MESSAGE_REV_05, row->number.given.place, (About){ .value = item->code });
	return false;
}

bool check_reviewed(const Verdict *verdict, Complaints *faults)
{
	const Review *review = verdict->cases->review;
	const Submittal *submittal = verdict->cases->submittal;
	if (review == NULL)
		return true;
	if (!is_review_for(review, submittal)) {
		About about = { .value = package_words(&review->submittal, &review->round_one, faults->arena),
				.want = package_words(&submittal->submittal, &submittal->round_one, faults->arena) };
		complain(faults, MESSAGE_REV_01, review->submittal.given.place, about);
		return false;
	}
	bool holds = true;
	for (uint32_t i = 0; i < review->items.of.count; i++)
		holds &= check_disposition(verdict, &review->items.of.row[i], faults);
	check_papers(verdict, faults);
	return holds;
}
