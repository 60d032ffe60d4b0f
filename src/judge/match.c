/* SPDX-License-Identifier: MIT
 * What was found now, matched with the items of the round before, place by place, so that numbers never change. A place is
 * known by its fingerprint: code, path by names, field. Where one record has two items of one print, what is allowed tells
 * them apart, else their order.
 *
 * What is missing is one question, however its message is worded: the same field keeps its number when `not stated` becomes
 * `unknown`.
 */
#include "judge.h"
#include "pipeline.h"

#include <string.h>

/* A place of an earlier item, in the order of items and places. */
typedef struct EarlierSpot {
	const EarlierItem *item;
	uint32_t place;
	bool taken, is_double; /* double: another has the same print */
	struct EarlierSpot *next;
} EarlierSpot;

typedef struct Matching {
	EarlierSpot *spot;
	uint32_t spots;
	Hash *by_print;
	uint32_t matched; /* raws so far */
} Matching;

/* ---- outcomes ---- */

typedef struct {
	const Case *where;
	const Rule *rule;
} OutcomeKey;

unsigned outcome_of(const Judging *judging, const Rule *rule, const Case *where)
{
	OutcomeKey key = { where, rule };
	return (unsigned)(uintptr_t)hash_get(judging->outcomes, (const char *)&key, sizeof key);
}

void note_outcome(Judging *judging, const Rule *rule, const Case *judged, TestOutcome outcome)
{
	static const unsigned bits[] = {
		[TEST_MET] = CAME_MET, [TEST_BROKEN] = CAME_BROKEN, [TEST_NOT_APPLICABLE] = CAME_NOT_APPLICABLE,
		[TEST_WAITS] = CAME_WAITING, [TEST_REFUSED] = CAME_WAITING, [TEST_BORROWED] = CAME_WAITING,
	};
	const Case *where = stands_at(judged);
	unsigned before = outcome_of(judging, rule, where);
	OutcomeKey *key = TAKE(judging->arena, OutcomeKey, 1);
	*key = (OutcomeKey){ where, rule };
	if ((before | bits[outcome]) != before)
		hash_put(judging->outcomes, (const char *)key, sizeof *key, (void *)(uintptr_t)(before | bits[outcome]));
}

/* ---- the index ---- */

static void put_spot(Judging *judging, Matching *matching, EarlierSpot *spot)
{
	const EarlierPlace *place = &spot->item->place[spot->place];
	uint64_t *key = TAKE(judging->arena, uint64_t, 1);
	*key = place->fingerprint;
	EarlierSpot *first = hash_get(matching->by_print, (const char *)key, sizeof *key);
	if (first == NULL) {
		hash_put(matching->by_print, (const char *)key, sizeof *key, spot);
		return;
	}
	EarlierSpot *last = first;
	for (int i = 0; last->next != NULL && i < 64; i++)
		last = last->next;
	spot->next = last->next;
	last->next = spot;
	spot->is_double = first->is_double = true;
}

static Matching *index_of(Judging *judging)
{
	const Earlier *earlier = judging->history->earlier;
	Matching *matching = TAKE(judging->arena, Matching, 1);
	uint32_t spots = 0;
	for (uint32_t i = 0; i < earlier->items; i++)
		spots += earlier->item[i].places;
	matching->spot = TAKE(judging->arena, EarlierSpot, spots + 1);
	matching->by_print = hash_make(judging->arena, spots);
	for (uint32_t i = 0; i < earlier->items; i++)
		for (uint32_t j = 0; j < earlier->item[i].places; j++) {
			EarlierSpot *spot = &matching->spot[matching->spots++];
			*spot = (EarlierSpot){ .item = &earlier->item[i], .place = j };
			if (earlier->item[i].place[j].fingerprint != 0)
				put_spot(judging, matching, spot);
		}
	return matching;
}

/* ---- one raw ---- */

static const char *path_before(const Judging *judging, const Raw *raw)
{
	if (raw->where == NULL)
		return "";
	return raw->where->before != NULL ? raw->where->before : case_path(raw->where, judging->arena);
}

static bool is_split(const Judging *judging, const Raw *raw)
{
	const HeldAs *held = raw->where != NULL ? held_as(judging->history, raw->where->before) : NULL;
	return held != NULL && held->next != NULL;
}

/* Among the places of one print the one that allowed the same; else the first that is free. */
static EarlierSpot *choose(const Judging *judging, const Raw *raw, EarlierSpot *first)
{
	EarlierSpot *free = NULL;
	const char *limit = NULL;
	Told told;
	if (raw->found_by == FOUND_BROKEN && first->next != NULL) {
		tell_raw(raw, &told, judging->arena);
		limit = told.limit.text;
	}
	for (EarlierSpot *spot = first; spot != NULL; spot = spot->next) {
		const char *there = spot->item->limit.text;
		if (spot->taken)
			continue;
		if (limit != NULL && there != NULL && strcmp(limit, there) == 0)
			return spot;
		free = free == NULL ? spot : free;
	}
	return free == NULL && is_split(judging, raw) ? first : free;
}

static EarlierSpot *spot_by_code(const Judging *judging, const Raw *raw, const char *code)
{
	uint64_t print = fingerprint_of(code, path_before(judging, raw), spot_field(raw, judging->arena));
	EarlierSpot *first = hash_get(judging->matching->by_print, (const char *)&print, sizeof print);
	return first != NULL ? choose(judging, raw, first) : NULL;
}

static EarlierSpot *spot_for(const Judging *judging, const Raw *raw)
{
	static const MessageId missing[] = { MESSAGE_MIS_01, MESSAGE_MIS_02, MESSAGE_MIS_03, MESSAGE_MIS_04, MESSAGE_MIS_05,
		MESSAGE_MIS_06, MESSAGE_MIS_07, MESSAGE_MIS_08, MESSAGE_MIS_09, MESSAGE_MIS_10 };
	EarlierSpot *spot = spot_by_code(judging, raw, raw_code(raw));
	bool is_missing = raw->found_by == FOUND_MISSING || raw->found_by == FOUND_REFUSED;
	for (size_t i = 0; spot == NULL && is_missing && i < sizeof missing / sizeof *missing; i++)
		spot = spot_by_code(judging, raw, message_of(missing[i])->code);
	return spot;
}

/* ---- the state of what was found again ---- */

/* What the reviewer closed stays closed while the value is the one he closed it on. */
static bool is_as_closed(const Judging *judging, const Raw *raw)
{
	const EarlierItem *item = raw->earlier;
	if (raw->found_by != FOUND_BROKEN)
		return true;
	Told told;
	tell_raw(raw, &told, judging->arena);
	const char *now = told.submitted.text, *then = item->submitted.text;
	return now == then || (now != NULL && then != NULL && strcmp(now, then) == 0);
}

static bool is_by_note(Action action)
{
	return action == ACTION_CORRECTIONS || action == ACTION_FIELD_VERIFY;
}

static void set_found_again(Judging *judging, Raw *raw)
{
	const EarlierItem *item = raw->earlier;
	ItemState before = item->place[raw->earlier_place].state;
	raw->state = before == ITEM_CONDITION || is_by_note(raw->action) ? ITEM_CONDITION : ITEM_OPEN;
	if (before == ITEM_CLOSED && item->reviewer != NULL && is_as_closed(judging, raw)) {
		raw->state = ITEM_CLOSED;
		raw->note = item->note;
	} else if (before == ITEM_CLOSED) {
		raw->note = item->reviewer != NULL ? "open again: the value is no longer the one it was closed on" : "open again";
	} else if (before == ITEM_CONDITION && item->reviewer != NULL && !is_as_closed(judging, raw)) {
		raw->state = is_by_note(raw->action) ? ITEM_CONDITION : ITEM_OPEN;
		raw->note = "open again: the value is no longer the one the reviewer let stand";
	} else if (raw->state == ITEM_CONDITION) {
		const char *paper = shown_by(judging, item);
		raw->state = paper != NULL ? ITEM_CLOSED : ITEM_CONDITION;
		raw->note = paper != NULL ? shown_words(judging, paper) : "to be shown done";
	}
}

static void match_raws(Judging *judging)
{
	Matching *matching = judging->matching;
	for (; matching->matched < judging->raws; matching->matched++) {
		Raw *raw = judging->raw[matching->matched];
		if (raw->found_by == FOUND_EARLIER)
			continue;
		EarlierSpot *spot = spot_for(judging, raw);
		if (spot == NULL)
			continue;
		spot->taken = true;
		raw->earlier = spot->item;
		raw->earlier_place = spot->place;
		set_found_again(judging, raw);
	}
}

/* ---- what was not found again ---- */

/* Raised when all else is known. */
static bool is_late(const char *code)
{
	return strncmp(code, "VAR-", 4) == 0 || (strncmp(code, "RND-", 4) == 0 && strcmp(code, "RND-04") >= 0);
}

/* The path of the record that holds one: up to the last point outside of brackets. */
static const char *path_around(const char *path, Arena *arena)
{
	size_t point = 0;
	bool inside = false;
	for (size_t i = 0; path[i] != '\0'; i++) {
		inside = path[i] == '[' || (inside && path[i] != ']');
		if (path[i] == '.' && !inside)
			point = i;
		i += path[i] == '\\' && path[i + 1] != '\0';
	}
	return point > 0 ? arena_text(arena, path, point) : NULL;
}

/* What is gone is shown at what held it. */
static void place_around(const Judging *judging, const char *path, Raw *raw)
{
	const HeldAs *held = NULL;
	while (held == NULL && path != NULL) {
		path = path_around(path, judging->arena);
		held = held_as(judging->history, path);
	}
	if (held == NULL)
		return;
	raw->place = place_of(held->at, NULL);
	raw->position = position_of(held->at, NULL);
}

static void keep_others(Judging *judging, bool late)
{
	Matching *matching = judging->matching;
	for (uint32_t i = 0; i < matching->spots; i++) {
		const EarlierSpot *spot = &matching->spot[i];
		if (spot->taken || is_late(spot->item->code) != late)
			continue;
		const EarlierPlace *place = &spot->item->place[spot->place];
		const HeldAs *held = held_as(judging->history, place->path);
		Raw raw = { .found_by = FOUND_EARLIER, .action = spot->item->action, .earlier = spot->item, .earlier_place = spot->place };
		raw.where = held != NULL ? held->at : NULL;
		if (raw.where != NULL) {
			raw.place = place_of(raw.where, NULL);
			raw.position = position_of(raw.where, NULL);
		} else if (place->path != NULL) {
			place_around(judging, place->path, &raw);
		}
		settle_place(judging, &raw, spot->is_double);
		raw_add(judging, &raw);
	}
}

void match_earlier(Judging *judging)
{
	if (judging->history == NULL)
		return;
	judging->matching = index_of(judging);
	match_raws(judging);
	keep_others(judging, false);
}

void match_late(Judging *judging)
{
	if (judging->history == NULL)
		return;
	match_raws(judging);
	keep_others(judging, true);
}
