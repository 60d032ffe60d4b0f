/* SPDX-License-Identifier: MIT
 * Accepted items: the catalogue items that would be accepted in the places of an item, each tried in a copy.
 */
#include "advising.h"
#include "facts.h"

#include <string.h>

enum { MOST_NAMED = 5 };

/* The catalogue's rows of a kind of part; openings have curbs and boots. */
typedef struct {
	const char *row;
	uint32_t count;
} Items;

static Items items_of(const Criteria *criteria, RecordKind kind, bool is_boot)
{
#define ITEMS(member) ((Items){ (const char *)criteria->member.row, criteria->member.count })
	switch (kind) {
	case KIND_panel:
		return ITEMS(panels);
	case KIND_support:
		return ITEMS(supports);
	case KIND_layer:
		return ITEMS(layers);
	case KIND_clip:
		return ITEMS(clips);
	case KIND_fastener:
		return ITEMS(fasteners);
	case KIND_underlayment:
		return ITEMS(underlayments);
	case KIND_sealant:
		return ITEMS(sealants);
	case KIND_rivet:
		return ITEMS(rivets);
	case KIND_closure:
		return ITEMS(closures);
	case KIND_penetration:
		return is_boot ? ITEMS(boots) : ITEMS(curbs);
	case KIND_accessory:
		return ITEMS(clamps);
	default:
		return (Items){ 0 };
	}
#undef ITEMS
}

/* Beside an item that is put in its place, nothing of the old one stays: not its size, its life or its description. */
static void put_item(const Record *record, void *row, const void *item)
{
	static const char *const of_the_old[] = { "mark", "description", "sold_in", "stated_life", "life_paper", "was" };
	for (uint32_t i = 0; i < record->count; i++) {
		const Field *field = &record->field[i];
		Given *given = given_at(field, row);
		const Given *stated = given_in(field, item);
		bool clear = stated->said != SAID_NOTHING && field->stricter != OWN;
		for (size_t j = 0; j < sizeof of_the_old / sizeof *of_the_old; j++)
			clear |= strcmp(field->key, of_the_old[j]) == 0;
		if (clear)
			*given = (Given){ .place = given->place };
	}
	/* PART_FIELDS lie at one place in every part. */
	Panel *part = row;
	const Panel *catalogue = item;
	part->item.text = catalogue->item.text;
	part->item.given = (Given){ part->item.given.place, catalogue->item.text, SAID_VALUE };
	if (is_value(&catalogue->supplied_by.given)) {
		part->supplied_by.text = catalogue->supplied_by.text;
		part->supplied_by.given = (Given){ part->supplied_by.given.place, catalogue->supplied_by.text, SAID_VALUE };
	}
}

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
			put_item(record_of(part->kind), row, candidate);
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
	put_item(record, row, candidate);
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
