/* SPDX-License-Identifier: MIT
 * Clearance: what is said of each part, so that it is known what could be bought.
 *
 * "Nothing found against it" is said only of a part that no open item names or could still change. So an item on the tested
 * construction holds back all that belongs to it in its roof area, an item on the panel or the area all parts of the area, and
 * an item on the project, the warranty or the building every part.
 */
#include "judge.h"

#include <stdlib.h>
#include <string.h>

/* The first open items by how far they reach, and by the case they stand at. */
typedef struct {
	Judging *judging;
	Hash *at;                        /* case to item: found against it */
	Hash *of_area, *of_construction; /* case of a roof area to item */
	const Finding *of_all, *of_all_constructions;
	const ItemState *state; /* of each item as a whole: an item may have as many places as the file has records */
	const Hash *named; /* what the reviewer's own items may name: cases by name and by sheet; made when the first asks */
} Reach;

typedef struct {
	const Case *at;
} CaseKey;

static void put_first(const Reach *reach, Hash *hash, const Case *at, const Finding *item)
{
	CaseKey look = { at };
	if (at == NULL || hash_get(hash, (const char *)&look, sizeof look) != NULL)
		return;
	CaseKey *key = TAKE(reach->judging->arena, CaseKey, 1);
	key->at = at;
	hash_put(hash, (const char *)key, sizeof *key, (void *)(uintptr_t)item);
}

static const Finding *found_at(const Hash *hash, const Case *at)
{
	CaseKey key = { at };
	return hash_get(hash, (const char *)&key, sizeof key);
}

static const Case *area_of(const Case *at)
{
	while (at != NULL && at->kind != KIND_roof_area)
		at = at->up;
	return at;
}

/* What was tested together: changing one may change the listing, and with it the others. */
static bool is_of_construction(const Case *part)
{
	switch (part->kind) {
	case KIND_panel:
	case KIND_support:
	case KIND_layer:
	case KIND_clip:
	case KIND_fastener:
		return true;
	case KIND_sealant:
		return is_word(&((const Sealant *)part->row)->where, "seam");
	default:
		return false;
	}
}

/* Which parts an item at the submittal could change: none where it speaks of parties, papers or dates. */
static bool reaches_all(const Raw *raw)
{
	if (raw->action == ACTION_NOT_ELIGIBLE)
		return true;
	uint32_t at = raw->position.outer;
	bool is_of_parties = at >= offsetof(Submittal, parties) && at < offsetof(Submittal, warranty);
	bool is_of_papers = at >= offsetof(Submittal, specification);
	return at > 0 && at != offsetof(Submittal, form_one) && !is_of_parties && !is_of_papers;
}

/* Lists of an area that say nothing about the parts outside of them. */
static bool is_list_of_its_own(const Raw *raw)
{
	const Field *field = raw->found_by == FOUND_MISSING ? raw->field : NULL;
	if (field == NULL || field->kind != IS_LIST)
		return false;
	RecordKind kind = field->record->kind;
	return kind != KIND_test && kind != KIND_layer && kind != KIND_clip && kind != KIND_fastener && kind != KIND_fixed_line;
}

static void reach_area(Reach *reach, const Raw *raw, const Finding *item)
{
	const Case *where = raw->where, *area = area_of(where);
	RecordKind judged = raw->judged != NULL ? raw->judged->kind : where->kind;
	/* Who sells a part changes nothing else. */
	bool is_own = raw->field != NULL && raw->field->stricter == OWN;
	if (judged == KIND_role || judged == KIND_detail || is_own || is_list_of_its_own(raw))
		return;
	if (where->kind == KIND_panel || where == area)
		put_first(reach, reach->of_area, area, item);
	else if (where->kind == KIND_test || where->kind == KIND_zone || where->kind == KIND_fixed_line ||
		 (is_part(where->kind) && is_of_construction(where)))
		put_first(reach, reach->of_construction, area, item);
}

/* A reader's message may stand for any value near it: where it cannot be told, it reaches its area or everything. */
static void reach_of(Reach *reach, const Raw *raw, const Finding *item)
{
	const Case *where = raw->where;
	if (where == NULL && raw->found_by != FOUND_BY_READER)
		return;
	if (where == NULL) {
		const Case *area = raw->area;
		if (area != NULL)
			put_first(reach, reach->of_area, area, item);
		else if (reach->of_all == NULL)
			reach->of_all = item;
		return;
	}
	put_first(reach, reach->at, where, item);
	if (area_of(where) != NULL)
		reach_area(reach, raw, item);
	else if (where->kind == KIND_letter && reach->of_all_constructions == NULL)
		reach->of_all_constructions = item;
	else if (where->kind == KIND_submittal && reaches_all(raw) && reach->of_all == NULL)
		reach->of_all = item;
}

/* ---- the reviewer's own items ---- */

static void put_name(Hash *named, const char *name, const Case *at)
{
	if (name != NULL && *name != '\0' && hash_get(named, name, strlen(name)) == NULL)
		hash_put(named, name, strlen(name), (void *)(uintptr_t)at);
}

/* Roof areas go before what stands in them. */
static const Hash *cases_by_name(const Judging *judging)
{
	const Cases *cases = judging->cases;
	Hash *named = hash_make(judging->arena, 64);
	for (uint32_t i = 0; i < cases->of[KIND_roof_area].count; i++)
		put_name(named, cases->of[KIND_roof_area].at[i]->name, cases->of[KIND_roof_area].at[i]);
	for (int kind = 0; kind < RECORD_KINDS; kind++)
		for (uint32_t i = 0; kind != KIND_submittal && i < cases->of[kind].count; i++)
			if (record_of((RecordKind)kind)->sort != RECORD_MADE)
				put_name(named, cases->of[kind].at[i]->name, cases->of[kind].at[i]);
	return named;
}

/* The record named, the longest beginning of the words that is one: "Main roof / RTU-1, north side". */
static const Case *case_named(const Reach *reach, const Text *where)
{
	if (!is_value(&where->given) || where->text == NULL)
		return NULL;
	size_t length = strnlen(where->text, MOST_TEXT);
	for (size_t end = length; end > 0; end--) {
		bool is_word_end = where->text[end] == '\0' || strchr(" ,;:(", where->text[end]) != NULL;
		const Case *at = is_word_end ? hash_get(reach->named, where->text, end) : NULL;
		if (at != NULL)
			return at;
	}
	return NULL;
}

/* An own item holds the part it names, or all parts of the area; where nobody can tell what it names, every part. */
static void reach_own(Reach *reach, const Raw *raw, const Finding *item)
{
	if (reach->named == NULL)
		reach->named = cases_by_name(reach->judging);
	const Case *at = case_named(reach, &raw->own->where), *area = area_of(at);
	put_first(reach, reach->at, at, item);
	if (area != NULL && !is_part(at->kind))
		put_first(reach, reach->of_area, area, item);
	else if (area == NULL && reach->of_all == NULL)
		reach->of_all = item;
}

/* ---- which item stands in the way of what ---- */

/* What is to be noted, verified on site or was deferred is still to be done at the record it names. */
static ItemState state_of(const Reach *reach, const Finding *item)
{
	return reach->state[item - reach->judging->verdict->item];
}

static bool is_against(const Reach *reach, const Finding *item)
{
	ItemState state = state_of(reach, item);
	return item->spots > 0 && state != ITEM_CLOSED && state != ITEM_VARIANCE && item->action != ACTION_ADVISORY;
}

static bool is_in_the_way(const Reach *reach, const Finding *item)
{
	return is_against(reach, item) && item->action <= ACTION_NOT_REVIEWED && state_of(reach, item) != ITEM_CONDITION;
}

static void reach_by(Reach *reach, const Raw *raw, const Finding *item)
{
	if (raw->found_by == FOUND_BY_REVIEWER)
		reach_own(reach, raw, item);
	else if (is_in_the_way(reach, item))
		reach_of(reach, raw, item);
	else if (raw->where != NULL)
		put_first(reach, reach->at, raw->where, item);
}

static const Finding *reaching(const Reach *reach, const Case *part)
{
	const Case *area = area_of(part);
	const Finding *item = found_at(reach->of_area, area);
	if (item == NULL && is_of_construction(part))
		item = found_at(reach->of_construction, area);
	if (item == NULL && is_of_construction(part))
		item = reach->of_all_constructions;
	return item != NULL ? item : reach->of_all;
}

static PartLine line_of(const Reach *reach, const Hash *waiting, const Case *part)
{
	const Finding *item = found_at(reach->at, part);
	if (item != NULL)
		return (PartLine){ part, PART_NOT_CLEARED, item };
	item = found_at(waiting, part);
	if (item == NULL)
		item = reaching(reach, part);
	if (item == NULL && reach->judging->verdict->left_out > 0)
		item = &reach->judging->verdict->item[0];
	return (PartLine){ part, item != NULL ? PART_DEPENDS : PART_CLEAR, item };
}

typedef struct {
	const Case *part;
	Position position;
} Ordered;

static int part_compare(const void *left, const void *right)
{
	const Ordered *a = left, *b = right;
	return position_compare(&a->position, &b->position);
}

static Ordered *parts_in_order(const Judging *judging, uint32_t *count)
{
	const Cases *cases = judging->cases;
	uint32_t parts = 0, at = 0;
	for (int kind = 0; kind < RECORD_KINDS; kind++)
		parts += is_part((RecordKind)kind) ? cases->of[kind].count : 0;
	Ordered *ordered = TAKE(judging->arena, Ordered, parts + 1);
	for (int kind = 0; kind < RECORD_KINDS; kind++)
		for (uint32_t i = 0; is_part((RecordKind)kind) && i < cases->of[kind].count; i++) {
			const Case *part = cases->of[kind].at[i];
			const Given *record = part->row;
			if (record->said == SAID_VALUE || part->up == NULL ||
			    (part->kind != KIND_panel && part->kind != KIND_support))
				ordered[at++] = (Ordered){ part, position_of(part, NULL) };
		}
	qsort(ordered, at, sizeof *ordered, part_compare);
	*count = at;
	return ordered;
}

/* Parts on which a rule was not judged or held back, with the item that stands for it. */
static Hash *waiting_parts(const Reach *reach)
{
	const Verdict *verdict = reach->judging->verdict;
	Hash *waiting = hash_make(reach->judging->arena, 16);
	for (uint32_t i = 0; i < verdict->not_yets; i++) {
		const NotYet *not_yet = &verdict->not_yet[i];
		if (not_yet->where != NULL && not_yet->item != NULL && is_in_the_way(reach, not_yet->item))
			put_first(reach, waiting, stands_at(not_yet->where), not_yet->item);
	}
	return waiting;
}

void clear_parts(Judging *judging)
{
	Verdict *verdict = judging->verdict;
	Arena *arena = judging->arena;
	Reach reach = { .judging = judging,
			.at = hash_make(arena, 16),
			.of_area = hash_make(arena, 8),
			.of_construction = hash_make(arena, 8) };
	ItemState *state = TAKE(arena, ItemState, verdict->items + 1);
	for (uint32_t i = 0; i < verdict->items; i++)
		state[i] = item_state(&verdict->item[i]);
	reach.state = state;
	for (uint32_t i = 0; i < judging->sorted_count; i++) {
		const Raw *raw = judging->sorted[i];
		const Finding *item = raw->item != 0 && raw->item <= verdict->items ? &verdict->item[raw->item - 1] : NULL;
		bool is_settled = raw->state == ITEM_CLOSED || raw->state == ITEM_VARIANCE;
		if (item != NULL && !is_settled && is_against(&reach, item))
			reach_by(&reach, raw, item);
	}
	const Hash *waiting = waiting_parts(&reach);
	Ordered *ordered = parts_in_order(judging, &verdict->parts);
	PartLine *line = TAKE(arena, PartLine, verdict->parts + 1);
	for (uint32_t i = 0; i < verdict->parts; i++)
		line[i] = line_of(&reach, waiting, ordered[i].part);
	verdict->part = line;
}
