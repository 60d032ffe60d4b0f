/* SPDX-License-Identifier: MIT
 * Options: for each roof area to be warranted the constructions, the items of every other place, and the longest term.
 */
#include "offering.h"

#include "number.h"

#include <string.h>

bool may_offer(Offering *offering)
{
	Offers *offers = offering->offers;
	offers->stopped |= offers->tries >= MOST_OFFER_TRIES;
	return !offers->stopped;
}

/* ---- records made for a trial ---- */

static void assume(const Field *field, void *row)
{
	Given *given = given_at(field, row);
	double number;
	switch (field->kind) {
	case IS_YES:
		((Yes *)(void *)given)->yes = strcmp(field->assumed, "yes") == 0;
		break;
	case IS_WORD:
		((Word *)(void *)given)->word = (uint32_t)word_find(field->words, field->assumed, strlen(field->assumed));
		((Word *)(void *)given)->text = field->assumed;
		break;
	case IS_NUMBER:
		if (!number_read(field->assumed, strcspn(field->assumed, " "), &number))
			return;
		((Number *)(void *)given)->value = number;
		break;
	default:
		return;
	}
	given->said = SAID_ASSUMED;
	given->typed = field->assumed;
}

void *part_made(Arena *arena, const Record *record)
{
	void *row = arena_take(arena, 1, record->size);
	((Given *)row)->said = SAID_VALUE;
	for (uint32_t i = 0; i < record->count; i++)
		if (record->field[i].need == NEED_ASSUMED)
			assume(&record->field[i], row);
	return row;
}

void set_word(const Record *record, void *row, const char *key, const char *word)
{
	const Field *field = field_find(record, key, strlen(key));
	if (field == NULL)
		return;
	Given *given = given_at(field, row);
	given->said = SAID_VALUE;
	given->typed = word;
	if (field->kind == IS_WORD) {
		((Word *)(void *)given)->word = (uint32_t)word_find(field->words, word, strlen(word));
		((Word *)(void *)given)->text = word;
	} else if (field->kind == IS_TEXT || field->kind == IS_NAME) {
		((Text *)(void *)given)->text = word;
	} else if (field->kind == IS_YES) {
		((Yes *)(void *)given)->yes = strcmp(word, "yes") == 0;
	}
}

void *list_with_room(Arena *arena, List *list, const Record *record)
{
	char *row = arena_take(arena, list->count + 1, record->size);
	if (list->count > 0)
		memcpy(row + record->size, list->row, list->count * record->size);
	list->row = row;
	list->count++;
	list->given.said = SAID_VALUE;
	return row;
}

/* ---- all ---- */

static bool is_to_be_warranted(const Case *area)
{
	const Yes *warranted = &((const RoofArea *)area->row)->warranted;
	return !is_value(&warranted->given) || warranted->yes;
}

Offers *make_offers(Verdict *verdict, Arena *arena)
{
	Offers *offers = TAKE(arena, Offers, 1);
	const Cases *cases = verdict->cases;
	Advising advising = { .verdict = verdict, .arena = arena };
	offers->verdict = verdict;
	offers->none = TAKE(arena, const char *, cases->of[KIND_roof_area].count + 1);
	for (uint32_t i = 0; cases->criteria != NULL && i < cases->of[KIND_roof_area].count; i++) {
		Offering offering = { .advising = &advising, .offers = offers, .area = cases->of[KIND_roof_area].at[i], .number = i + 1 };
		if (!is_to_be_warranted(offering.area)) {
			offers->none[i] = "it is not to be warranted";
			continue;
		}
		offer_constructions(&offering);
		offer_choices(&offering);
	}
	Offering whole = { .advising = &advising, .offers = offers };
	if (cases->criteria != NULL)
		offer_terms(&whole);
	return offers;
}
