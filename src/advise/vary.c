/* SPDX-License-Identifier: MIT
 * Varying: a copy of the submittal, or of one of its roof areas, changed in one place, resolved and judged again in the same
 * arena, which is wound back after.
 *
 * What two runs find is matched by code, field and the number of the record in its list: names change with the items varied.
 */
#include "advising.h"

#include <string.h>

bool may_try(const Advising *advising)
{
	const Cases *cases = advising->verdict->cases;
	bool is_small = cases->made <= MOST_CASES && cases->submittal->roof_areas.of.count <= MOST_AREAS;
	return is_small && advising->tries < MOST_TRIES && advising->tries * cases->made <= MOST_WORK;
}

/* The field of a record that holds records of a kind, as a list or as one. */
static const Field *field_of_kind(const Record *record, RecordKind kind)
{
	for (uint32_t i = 0; i < record->count; i++)
		if (record->field[i].record != NULL && record->field[i].record->kind == kind)
			return &record->field[i];
	return NULL;
}

uint32_t number_in_list(const Case *at)
{
	const Field *field =
		at->up != NULL && at->up->submitted != NULL ? field_of_kind(record_of(at->up->kind), at->kind) : NULL;
	if (field == NULL || field->kind != IS_LIST || at->submitted == NULL)
		return 0;
	const List *list = (const List *)(const void *)((const char *)at->up->submitted + field->offset);
	uintptr_t begin = (uintptr_t)list->row, here = (uintptr_t)at->submitted;
	size_t number = here >= begin ? (here - begin) / field->record->size : list->count;
	return number < list->count ? (uint32_t)number : 0;
}

static uint32_t area_number(const Case *at)
{
	const Case *area = at != NULL ? case_outward(at, KIND_roof_area) : NULL;
	return area != NULL ? number_in_list(area) + 1 : 0;
}

uint32_t area_of_item(const Finding *item)
{
	uint32_t area = item->spots > 0 ? area_number(item->spot[0].where) : 0;
	for (uint32_t i = 1; i < item->spots; i++)
		if (area_number(item->spot[i].where) != area)
			return 0;
	return area;
}

Copy *copy_submittal(Advising *advising, uint32_t area)
{
	Copy *copy = TAKE(advising->arena, Copy, 1);
	copy->from = advising->verdict->cases->submittal;
	copy->submittal = *copy->from;
	copy->area = area;
	uint32_t first = area > 0 ? area - 1 : 0, areas = area > 0 ? 1 : copy->from->roof_areas.of.count;
	RoofArea *row = TAKE(advising->arena, RoofArea, areas + 1);
	if (areas > 0)
		memcpy(row, copy->from->roof_areas.of.row + first, areas * sizeof *row);
	copy->submittal.roof_areas.of.row = row;
	copy->submittal.roof_areas.of.count = areas;
	return copy;
}

void *copied_row(Advising *advising, Copy *copy, const Case *at)
{
	const Field *field = at->up != NULL && at->up->kind == KIND_roof_area ? field_of_kind(&RoofArea_record, at->kind) : NULL;
	uint32_t number = area_number(at);
	if (field == NULL || number == 0 || (copy->area > 0 && number != copy->area))
		return NULL;
	RoofArea *area = &copy->submittal.roof_areas.of.row[copy->area > 0 ? 0 : number - 1];
	if (field->kind == IS_ONE)
		return (char *)area + field->offset;
	List *list = (List *)(void *)((char *)area + field->offset);
	const List *old = (const List *)(const void *)((const char *)&copy->from->roof_areas.of.row[number - 1] + field->offset);
	if (list->row == old->row) {
		list->row = arena_take(advising->arena, list->count + 1, field->record->size);
		memcpy(list->row, old->row, list->count * field->record->size);
	}
	return (char *)list->row + number_in_list(at) * field->record->size;
}

Cases *resolve_copy(Advising *advising, const Copy *copy)
{
	const Cases *cases = advising->verdict->cases;
	Inputs inputs = { .submittal = &copy->submittal, .review = cases->review, .criteria = cases->criteria, .nameless = true,
		.reference = cases->reference, .registers = cases->registers, .as_of = cases->as_of };
	advising->tries++;
	return resolve(advising->arena, &inputs);
}

/* ---- comparing two runs ---- */

typedef struct {
	const char *code;
	const Field *field;
	uint32_t kind, area, number, zone;
} Key;

/* A copy of one area has it as its first: `shift` brings its number back to that of the whole. */
static Key key_of(const Trouble *trouble, uint32_t shift)
{
	const Case *where = trouble->where;
	Key key;
	memset(&key, 0, sizeof key);
	key.code = trouble->code;
	key.field = trouble->field;
	if (where == NULL)
		return key;
	key.kind = (uint32_t)where->kind + 1;
	key.area = area_number(where) > 0 ? area_number(where) + shift : 0;
	key.number = where->kind != KIND_roof_area ? number_in_list(where) : 0;
	for (uint32_t i = 0; where->kind == KIND_zone && i < where->all->of[KIND_zone].count; i++) {
		const Case *zone = where->all->of[KIND_zone].at[i];
		key.zone += zone->up == where->up && zone->order <= where->order;
	}
	return key;
}

typedef struct {
	Advising *advising;
	Hash *keys;
	const Wanted *wanted;
	const Hash *targets;
	uint32_t shift;
	bool cured;
} Comparing;

static void put_key(Arena *arena, Hash *keys, const Key *key)
{
	Key *kept = TAKE(arena, Key, 1);
	*kept = *key;
	hash_put(keys, (const char *)kept, sizeof *kept, kept);
}

static bool keep_trouble(void *user, const Trouble *trouble)
{
	Comparing *comparing = user;
	Key key = key_of(trouble, comparing->shift);
	put_key(comparing->advising->arena, comparing->keys, &key);
	return true;
}

/* The verdict was found in the same way and knows all areas. */
static void take_from_verdict(Advising *advising, uint32_t area)
{
	const Verdict *verdict = advising->verdict;
	if (advising->whole == NULL) {
		advising->whole = hash_make(advising->arena, verdict->troubles);
		Comparing comparing = { .advising = advising, .keys = advising->whole };
		for (uint32_t i = 0; i < verdict->troubles; i++)
			keep_trouble(&comparing, &verdict->trouble[i]);
	}
	advising->before[area] = advising->whole;
	advising->tries++;
}

void judge_unchanged(Advising *advising, const Finding *item, uint32_t area)
{
	const Verdict *verdict = advising->verdict;
	if (advising->before[area] != NULL)
		return;
	if (verdict->trouble != NULL) {
		take_from_verdict(advising, area);
		return;
	}
	Comparing comparing = { .advising = advising, .keys = hash_make(advising->arena, 16), .shift = area > 0 ? area - 1 : 0 };
	Trial trial = { .first = item->rule, .whole = area == 0, .found = keep_trouble, .user = &comparing };
	judge_trial(advising->arena, resolve_copy(advising, copy_submittal(advising, area)), &trial);
	advising->before[area] = comparing.keys;
}

static Hash *target_keys(Advising *advising, const Finding *item)
{
	Hash *targets = hash_make(advising->arena, item->spots);
	for (uint32_t i = 0; i < item->spots; i++) {
		Key key = key_of(&(Trouble){ item->code, item->rule, NULL, item->spot[i].where }, 0);
		put_key(advising->arena, targets, &key);
	}
	return targets;
}

/* Stops at the first thing that is left or new. */
static bool compare_trouble(void *user, const Trouble *trouble)
{
	Comparing *comparing = user;
	Key key = key_of(trouble, comparing->shift);
	if (trouble->rule == comparing->wanted->item->rule &&
	    hash_get(comparing->targets, (const char *)&key, sizeof key) != NULL) {
		comparing->cured = false;
		return false;
	}
	bool by_specification = trouble->rule != NULL && trouble->rule->authority == AUTHORITY_SPECIFICATION;
	if (comparing->wanted->alone || (comparing->wanted->despite_specification && by_specification))
		return true;
	comparing->cured = hash_get(comparing->keys, (const char *)&key, sizeof key) != NULL;
	return comparing->cured;
}

bool is_cured(Advising *advising, const Copy *copy, Cases *cases, const Wanted *wanted)
{
	Comparing comparing = { .advising = advising, .keys = advising->before[copy->area], .wanted = wanted, .cured = true };
	comparing.targets = target_keys(advising, wanted->item);
	comparing.shift = copy->area > 0 ? copy->area - 1 : 0;
	Trial trial = { .first = wanted->item->rule, .whole = copy->area == 0, .alone = wanted->alone };
	trial.found = compare_trouble;
	trial.user = &comparing;
	trial.changed = wanted->item->spot[0].where != NULL ? wanted->item->spot[0].where->kind : KIND_submittal;
	/* Panel and support are read from other parts, through the roof area. */
	if (wanted->instead && trial.changed != KIND_panel && trial.changed != KIND_support)
		trial.stays = advising->stays;
	judge_trial(advising->arena, cases, &trial);
	return comparing.cured;
}

/* ---- all troubles of a copy ---- */

static void judge_copy(Advising *advising, const Copy *copy, Cases *cases, Trial trial)
{
	trial.first = &cases->criteria->rule[0];
	trial.whole = copy->area == 0;
	judge_trial(advising->arena, cases, &trial);
}

Hash *gather_troubles(Advising *advising, const Copy *copy, Cases *cases)
{
	Comparing comparing = { .advising = advising, .keys = hash_make(advising->arena, 16) };
	comparing.shift = copy->area > 0 ? copy->area - 1 : 0;
	judge_copy(advising, copy, cases, (Trial){ .found = keep_trouble, .user = &comparing });
	return comparing.keys;
}

typedef struct {
	const Hash *known;
	uint32_t shift;
	Trouble *found;
	bool any;
} Newest;

static bool stop_at_new(void *user, const Trouble *trouble)
{
	Newest *newest = user;
	Key key = key_of(trouble, newest->shift);
	newest->any = hash_get(newest->known, (const char *)&key, sizeof key) == NULL;
	if (newest->any)
		*newest->found = *trouble;
	return !newest->any;
}

bool find_new_trouble(Advising *advising, const Copy *copy, Cases *cases, const Hash *known, Trouble *found)
{
	Newest newest = { .known = known, .shift = copy->area > 0 ? copy->area - 1 : 0, .found = found };
	judge_copy(advising, copy, cases, (Trial){ .found = stop_at_new, .user = &newest });
	return newest.any;
}
