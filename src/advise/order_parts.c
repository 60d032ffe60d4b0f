/* SPDX-License-Identifier: MIT
 * A part in an order that was not submitted: mistaken for one that was, a step down from it, or simply another. Whether it would
 * be accepted is not decided here; the options are there for that.
 */
#include "holding.h"

#include <string.h>

static const char *looks_like(const Known *known)
{
	const Field *field = known->row != NULL ? field_find(record_of(known->kind), "looks_like", 10) : NULL;
	const Text *text = field != NULL ? (const Text *)(const void *)given_in(field, known->row) : NULL;
	return text != NULL && is_value(&text->given) ? text->text : NULL;
}

static bool is_mistaken(const Known *a, const Known *b)
{
	const char *one = looks_like(a), *other = looks_like(b);
	return (one != NULL && strcmp(one, b->item) == 0) || (other != NULL && strcmp(other, a->item) == 0);
}

static const char *typed(const Given *given)
{
	return is_value(given) && given->typed != NULL ? given->typed : NULL;
}

/* How many values two items of the catalogue share: the part that was meant shares most. */
static uint32_t likeness(const Record *record, const void *a, const void *b)
{
	uint32_t same = 0;
	for (uint32_t i = 0; i < record->count; i++) {
		const char *one = typed(given_in(&record->field[i], a)), *other = typed(given_in(&record->field[i], b));
		same += one != NULL && other != NULL && strcmp(one, other) == 0;
	}
	return same;
}

/* The submitted item that was meant: one that it is mistaken for, else the one most like it. */
static const Known *meant(const Holding *holding, const Known *ordered, bool *mistaken)
{
	const Known *best = NULL;
	uint32_t most = 0;
	*mistaken = false;
	for (const Known *known = holding->first[ordered->kind]; known != NULL; known = known->next) {
		if (is_mistaken(ordered, known)) {
			*mistaken = true;
			return known;
		}
		uint32_t like = ordered->row != NULL && known->row != NULL
			? likeness(record_of(ordered->kind), ordered->row, known->row) + 1 : 0;
		if (best == NULL || like > most) {
			best = known;
			most = like;
		}
	}
	return best;
}

/* -1: `here` is the less strict; numbers by the direction of their field, words by their scale. */
static int step_of(const Criteria *criteria, const Record *record, const Field *field, const Given *here, const Given *there)
{
	if ((field->kind == IS_NUMBER || field->kind == IS_SIZE) && field->stricter != OWN && field->stricter != EITHER) {
		double a = ((const Number *)(const void *)here)->value, b = ((const Number *)(const void *)there)->value;
		int step = (a > b) - (a < b);
		return field->stricter == UP ? step : -step;
	}
	if (field->kind != IS_WORD && field->kind != IS_TEXT)
		return 0;
	const char *scale = NULL, *other = NULL;
	char attribute[80] = "";
	size_t name = strlen(record->name), key = strlen(field->key);
	if (name + key + 2 > sizeof attribute)
		return 0;
	memcpy(attribute, record->name, name);
	attribute[name] = '.';
	memcpy(attribute + name + 1, field->key, key + 1);
	int a = scale_rank(criteria, attribute, typed(here), &scale), b = scale_rank(criteria, attribute, typed(there), &other);
	bool one_scale = a > 0 && b > 0 && strcmp(scale, other) == 0;
	return one_scale ? (a > b) - (a < b) : 0;
}

/* "size #10 for #12, threads ...": what steps down; NULL if nothing does. */
static const char *steps_down(const Holding *holding, const Known *ordered, const Known *submitted)
{
	const Record *record = record_of(ordered->kind);
	const char *listed = NULL;
	for (uint32_t i = 0; ordered->row != NULL && submitted->row != NULL && i < record->count; i++) {
		const Field *field = &record->field[i];
		const Given *here = given_in(field, ordered->row), *there = given_in(field, submitted->row);
		if (typed(here) == NULL || typed(there) == NULL || step_of(holding->cases->criteria, record, field, here, there) >= 0)
			continue;
		char *key = arena_text(holding->arena, field->key, strlen(field->key));
		for (char *p = key; *p != '\0'; p++)
			*p = *p == '_' ? ' ' : *p;
		listed = arena_printf(holding->arena, "%s%s%s %s for %s", listed != NULL ? listed : "", listed != NULL ? ", " : "", key,
			typed(here), typed(there));
	}
	return listed;
}

/* Once for each item, however many lines name it. */
static void ask_meant(const Holding *holding, Known *ordered)
{
	if (ordered->asked)
		return;
	ordered->asked = true;
	ordered->meant = meant(holding, ordered, &ordered->mistaken);
	ordered->down = ordered->meant != NULL ? steps_down(holding, ordered, ordered->meant) : NULL;
}

void find_wrong_part(Holding *holding, OrderedLine *line, Known *ordered)
{
	Arena *arena = holding->arena;
	ask_meant(holding, ordered);
	const Known *other = ordered->meant;
	const char *down = ordered->down;
	bool mistaken = ordered->mistaken;
	OrderFinding found = { .fault = ORDER_WRONG_PART, .item = ordered->item };
	if (other == NULL)
		found.finding = arena_printf(arena, "%s is not in the submittal, nor is any %s", ordered->item,
			record_of(ordered->kind)->name);
	else if (mistaken)
		found.finding = arena_printf(arena, "%s is not in the submittal; it is easily mistaken for %s, which is%s%s", ordered->item,
			other->item, down != NULL ? "; it steps down: " : "", down != NULL ? down : "");
	else if (down != NULL)
		found.finding = arena_printf(arena, "%s is not in the submittal; beside %s, which is, it steps down: %s", ordered->item,
			other->item, down);
	else
		found.finding = arena_printf(arena, "%s is not in the submittal; %s is", ordered->item, other->item);
	if (mistaken)
		found.fault = ORDER_LOOKS_LIKE;
	else if (down != NULL)
		found.fault = ORDER_STEPPED_DOWN;
	found.remedy = other != NULL
		? arena_printf(arena, "order %s, or submit %s and wait for its approval", other->item, ordered->item)
		: arena_printf(arena, "take it out, or submit %s and wait for its approval", ordered->item);
	find_against(holding, found, line);
}
