/* SPDX-License-Identifier: MIT
 * Accepted items: the catalogue items that would be accepted in the places of an item, each tried in a copy.
 */
#include "advising.h"
#include "facts.h"

#include <string.h>

enum { MOST_NAMED = 5 };

static bool is_accepted(Advising *advising, const Finding *item, const void *candidate)
{
	ArenaMark mark = arena_mark(advising->arena);
	Copy *copy = copy_submittal(advising, area_of_item(item));
	bool placed = true;
	for (uint32_t i = 0; i < item->spots; i++) {
		const Case *part = item->spot[i].where;
		void *row = copied_row(advising, copy, part);
		placed &= row != NULL;
		if (row != NULL)
			place_item(record_of(part->kind), row, candidate);
	}
	bool accepted = placed && is_cured(advising, copy, resolve_copy(advising, copy), &(Wanted){ .item = item, .instead = true });
	arena_back(advising->arena, mark);
	return accepted;
}

/* ---- the rule alone ---- */

/* Whether the rule is broken on a part with the candidate in its place, whatever stands beside it: then no copy of the submittal
 * needs to be judged. */
static bool is_broken_alone(Advising *advising, const Finding *item, const Case *part, const void *candidate)
{
	const Rule *rule = item->rule;
	if (rule->for_each != part->kind && rule->for_each != RECORD_KINDS)
		return false;
	const Record *record = record_of(part->kind);
	void *row = arena_take(advising->arena, 1, record->size);
	memcpy(row, part->submitted, record->size);
	place_item(record, row, candidate);
	Case *at = resolve_alone(advising->arena, part, row);
	Tested tested = { .outcome = TEST_MET };
	if (test_all(at, rule->when, rule->conditions, &tested) != TEST_MET)
		return false;
	tested = test_case(at, &rule->is);
	return tested.outcome == TEST_BROKEN && is_own_answer(at, &tested);
}

static bool is_out_of_question(Advising *advising, const Finding *item, const void *candidate)
{
	for (uint32_t i = 0; item->action <= ACTION_NOT_REVIEWED && i < item->spots; i++)
		if (is_broken_alone(advising, item, item->spot[i].where, candidate)) {
			advising->tries++;
			return true;
		}
	return false;
}

/* ---- candidates ---- */

static bool is_one_kind_of_part(const Finding *item)
{
	if (item->spots == 0 || item->spots > MOST_SPOTS)
		return false;
	for (uint32_t i = 0; i < item->spots; i++) {
		const Case *where = item->spot[i].where;
		if (where == NULL || record_of(where->kind)->sort != RECORD_PART || where->kind != item->spot[0].where->kind)
			return false;
	}
	return true;
}

static const char *named(const char *const *name, uint32_t count, Arena *arena)
{
	const char *text = "";
	for (uint32_t i = 0; i < count && i < MOST_NAMED; i++)
		text = arena_printf(arena, "%s%s%s", text, i == 0 ? "" : ", ", name[i]);
	return count > MOST_NAMED ? arena_printf(arena, "%s and %u more", text, (unsigned)(count - MOST_NAMED)) : text;
}

/* A pipe's boot is not replaced by a curb, nor a curb by a boot: that is another opening. */
static bool is_boot(const Case *part)
{
	return part->kind == KIND_penetration && is_word(&((const Penetration *)part->row)->treatment, "boot");
}

const char *accepted_items(Advising *advising, const Finding *item)
{
	const char *name[MOST_NAMED];
	uint32_t count = 0;
	if (!is_one_kind_of_part(item))
		return NULL;
	judge_unchanged(advising, item, area_of_item(item));
	find_standing(advising);
	const Case *part = item->spot[0].where;
	const Text *submitted = &((const Panel *)part->submitted)->item;
	Items items = items_of(advising->verdict->cases->criteria, part->kind, is_boot(part));
	for (uint32_t i = 0; i < items.count && may_try(advising); i++) {
		const Panel *candidate = (const Panel *)(const void *)(items.row + i * record_of(part->kind)->size);
		bool is_same = is_value(&submitted->given) && strcmp(candidate->item.text, submitted->text) == 0;
		if (is_same || is_out_of_question(advising, item, candidate) || !is_accepted(advising, item, candidate))
			continue;
		if (count < MOST_NAMED)
			name[count] = candidate->item.text;
		count++;
	}
	return count > 0 ? named(name, count, advising->arena) : NULL;
}
