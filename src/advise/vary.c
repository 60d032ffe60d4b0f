/* SPDX-License-Identifier: MIT
 * Varying: a copy of the submittal, changed in one place, resolved and judged again in the same arena, which is wound back after.
 *
 * Items of two runs are matched by code, field and the number of their record in its list: names change with the items varied.
 */
#include "advising.h"

#include <string.h>

bool may_try(const Advising *advising)
{
	const Cases *cases = advising->verdict->cases;
	return advising->tries < MOST_TRIES && cases->made <= MOST_CASES && cases->submittal->roof_areas.of.count <= MOST_AREAS;
}

Copy *copy_submittal(Advising *advising)
{
	Copy *copy = TAKE(advising->arena, Copy, 1);
	copy->from = advising->verdict->cases->submittal;
	copy->submittal = *copy->from;
	uint32_t areas = copy->from->roof_areas.of.count;
	RoofArea *area = TAKE(advising->arena, RoofArea, areas + 1);
	if (areas > 0)
		memcpy(area, copy->from->roof_areas.of.row, areas * sizeof *area);
	copy->submittal.roof_areas.of.row = area;
	return copy;
}

/* The field of a record that holds records of a kind, as a list or as one. */
static const Field *field_of_kind(const Record *record, RecordKind kind)
{
	for (uint32_t i = 0; i < record->count; i++)
		if (record->field[i].record != NULL && record->field[i].record->kind == kind)
			return &record->field[i];
	return NULL;
}

/* The number of a case's record in the list that holds it; 0 for what stands in none. */
static size_t number_in_list(const Case *at)
{
	const Field *field = at->up != NULL && at->up->submitted != NULL ? field_of_kind(record_of(at->up->kind), at->kind) : NULL;
	if (field == NULL || field->kind != IS_LIST || at->submitted == NULL)
		return 0;
	const List *list = (const List *)(const void *)((const char *)at->up->submitted + field->offset);
	uintptr_t begin = (uintptr_t)list->row, here = (uintptr_t)at->submitted;
	size_t number = here >= begin ? (here - begin) / field->record->size : list->count;
	return number < list->count ? number : 0;
}

void *copied_row(Advising *advising, Copy *copy, const Case *at)
{
	const Field *field = at->up != NULL && at->up->kind == KIND_roof_area ? field_of_kind(&RoofArea_record, at->kind) : NULL;
	if (field == NULL)
		return NULL;
	size_t number = number_in_list(at->up);
	RoofArea *area = &copy->submittal.roof_areas.of.row[number];
	if (field->kind == IS_ONE)
		return (char *)area + field->offset;
	List *list = (List *)(void *)((char *)area + field->offset);
	const RoofArea *from = &copy->from->roof_areas.of.row[number];
	const List *old = (const List *)(const void *)((const char *)from + field->offset);
	if (list->row == old->row) {
		list->row = arena_take(advising->arena, list->count + 1, field->record->size);
		memcpy(list->row, old->row, list->count * field->record->size);
	}
	return (char *)list->row + number_in_list(at) * field->record->size;
}

Verdict *judge_copy(Advising *advising, const Copy *copy)
{
	const Verdict *verdict = advising->verdict;
	const Cases *cases = verdict->cases;
	Inputs inputs = { &copy->submittal, cases->review, cases->criteria, cases->reference, cases->registers, cases->as_of };
	advising->tries++;
	return judge(advising->arena, resolve(advising->arena, &inputs), NULL, verdict->source);
}

/* ---- comparing two runs ---- */

/* Code, field and record of one place of an item. */
static const char *place_key(Advising *advising, const char *code, const char *field, const Case *where)
{
	const Case *area = where;
	while (area != NULL && area->kind != KIND_roof_area)
		area = area->up;
	int kind = where != NULL ? (int)where->kind : -1;
	const char *zone = kind == KIND_zone && where->name != NULL ? where->name : "";
	return arena_printf(advising->arena, "%s\n%s\n%d %zu %zu %s", code, field, kind, area != NULL ? number_in_list(area) + 1 : 0,
		where != NULL ? number_in_list(where) : 0, zone);
}

static const char *field_of(const Finding *item)
{
	return item->found_by == FOUND_MISSING && item->fields > 0 ? item->field[0] : "";
}

static Hash *keys_of(Advising *advising, const Verdict *verdict)
{
	Hash *keys = hash_make(advising->arena, verdict->items);
	for (uint32_t i = 0; i < verdict->items; i++) {
		Finding *item = &verdict->item[i];
		if (item->action > ACTION_NOT_REVIEWED)
			continue;
		for (uint32_t j = 0; j < item->spots; j++) {
			const char *key = place_key(advising, item->code, field_of(item), item->spot[j].where);
			hash_put(keys, key, strlen(key), item);
		}
	}
	return keys;
}

/* What stands in the way before anything is changed; judged without the readers' messages, as the copies are. */
void judge_unchanged(Advising *advising)
{
	if (advising->before == NULL)
		advising->before = keys_of(advising, judge_copy(advising, copy_submittal(advising)));
}

static bool is_new_item(Advising *advising, const Verdict *varied, bool despite_specification)
{
	for (uint32_t i = 0; i < varied->items; i++) {
		const Finding *item = &varied->item[i];
		if (item->action > ACTION_NOT_REVIEWED || (despite_specification && item->authority == AUTHORITY_SPECIFICATION))
			continue;
		for (uint32_t j = 0; j < item->spots; j++) {
			const char *key = place_key(advising, item->code, field_of(item), item->spot[j].where);
			if (hash_get(advising->before, key, strlen(key)) == NULL)
				return true;
		}
	}
	return false;
}

/* The record that a case is shown at; it is what place keys speak of. */
static const Case *shown(const Case *at)
{
	if (at != NULL && at->kind == KIND_comparison && ((const Compared *)at->row)->part != NULL)
		return ((const Compared *)at->row)->part;
	bool is_made = at != NULL && (at->kind == KIND_comparison || at->kind == KIND_role || at->kind == KIND_paper);
	return is_made ? at->up : at;
}

/* The keys of all places at which the rule is broken or was not judged. */
static Hash *keys_of_rule(Advising *advising, const Verdict *varied, const char *code)
{
	Hash *keys = hash_make(advising->arena, 8);
	for (uint32_t i = 0; i < varied->items; i++)
		for (uint32_t j = 0; strcmp(varied->item[i].code, code) == 0 && j < varied->item[i].spots; j++) {
			const char *key = place_key(advising, code, "", varied->item[i].spot[j].where);
			hash_put(keys, key, strlen(key), &varied->item[i]);
		}
	for (uint32_t i = 0; i < varied->not_yets; i++) {
		if (strcmp(varied->not_yet[i].rule->code, code) != 0)
			continue;
		const char *key = place_key(advising, code, "", shown(varied->not_yet[i].where));
		hash_put(keys, key, strlen(key), advising);
	}
	return keys;
}

bool is_gone(Advising *advising, const Verdict *varied, const Finding *item)
{
	const Hash *left = keys_of_rule(advising, varied, item->code);
	for (uint32_t i = 0; i < item->spots; i++) {
		const char *key = place_key(advising, item->code, "", item->spot[i].where);
		if (hash_get(left, key, strlen(key)) != NULL)
			return false;
	}
	return true;
}

bool is_cured(Advising *advising, const Verdict *varied, const Finding *item, bool despite_specification)
{
	return is_gone(advising, varied, item) && !is_new_item(advising, varied, despite_specification);
}
