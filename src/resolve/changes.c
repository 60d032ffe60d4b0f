/* SPDX-License-Identifier: MIT
 * What changed since the round before: each record of both is laid beside itself, field by field. Values are compared as read, so
 * that 24 ga is the decimal it is sold as, and shown as typed.
 *
 * What happens on the roof is no change of what was submitted: a day that has come, an order placed, a point of the punch list
 * mended. Nor is what the stage asks for the first time.
 */
#include "resolving.h"
#include "step.h"

#include <string.h>

typedef struct {
	History *history;
	const Cases *all;
	const Case *now, *then;
	const char *keys; /* of the record inside: "warranty." */
} Beside;

static void add_change(History *history, Arena *arena, const Changed *changed)
{
	history->changed = arena_more(arena, history->changed, history->changes, &history->room, sizeof(Changed));
	history->changed[history->changes++] = *changed;
}

/* ---- as typed ---- */

static const char *zones_typed(const ByZone *zones, Arena *arena)
{
	const char *text = NULL;
	for (uint32_t i = 0; i < zones->count && i < 12; i++) {
		const char *typed = zones->at[i].given.typed != NULL ? zones->at[i].given.typed : "";
		const char *zone = zones->at[i].zone;
		const char *one = zone[0] == '\0' ? typed : arena_printf(arena, "%s %s", zone_words(arena, zone), typed);
		text = text == NULL ? one : arena_printf(arena, "%s, %s", text, one);
	}
	return text != NULL ? text : "nothing";
}

static const char *typed_of(const Field *field, const void *row, Arena *arena)
{
	const Given *given = given_in(field, row);
	if (given->said == SAID_NOTHING)
		return "nothing";
	if (given->said == SAID_UNKNOWN)
		return "unknown";
	if (given->said == SAID_BY_OTHERS || given->said == SAID_NOT_APPLICABLE)
		return arena_printf(arena, "%s: %s", given->said == SAID_BY_OTHERS ? "by others" : "not applicable",
			given->typed != NULL ? given->typed : "");
	if (field->kind == IS_BY_ZONE && given->said == SAID_VALUE)
		return zones_typed((const ByZone *)(const void *)given, arena);
	if (field->kind == IS_TEXTS && ((const Texts *)(const void *)given)->count > 0)
		return arena_printf(arena, "%s and so on", ((const Texts *)(const void *)given)->at[0].text);
	if (given->typed != NULL)
		return given->typed;
	return field->assumed != NULL && given->said == SAID_ASSUMED ? field->assumed : "stated";
}

/* ---- what is no change ---- */

static bool is_one_of(const char *key, const char *const *keys)
{
	for (size_t i = 0; keys[i] != NULL; i++)
		if (strcmp(keys[i], key) == 0)
			return true;
	return false;
}

static bool is_told_elsewhere(const Record *record, const Field *field)
{
	static const char *const of_any[] = { "was", "see", NULL };
	static const char *const of_package[] = { "form", "stage", "round", "date", "criteria", NULL };
	if (field->kind == IS_LIST || field->kind == IS_MARK || field->kind == IS_NAME)
		return true;
	if (field->kind == IS_ONE && field->record->sort == RECORD_PART)
		return true;
	return is_one_of(field->key, of_any) || (record->kind == KIND_submittal && is_one_of(field->key, of_package));
}

/* Lists of the submittal that say what was done or said, not what is proposed. */
static bool is_record_of_deeds(RecordKind kind)
{
	return kind == KIND_punch_item || kind == KIND_meeting || kind == KIND_change || kind == KIND_reply || kind == KIND_departure;
}

static bool grows_by_itself(RecordKind kind)
{
	return kind == KIND_event || kind == KIND_purchase || kind == KIND_purchase_line || kind == KIND_inspection ||
	       kind == KIND_photograph || kind == KIND_paper_used;
}

static bool is_made(RecordKind kind)
{
	return record_of(kind)->sort == RECORD_MADE;
}

/* First stated now, and first due now; or the day on which something planned has happened. */
static bool is_first_due(const Beside *beside, const Field *field)
{
	return field->due > beside->history->earlier->stage || grows_by_itself(beside->now->kind);
}

/* Papers that come with a later stage were due only then. */
static bool comes_with_stage(const History *history, const Cases *all, const Case *now)
{
	const Word *stage = &all->submittal->stage;
	return now->kind == KIND_document && is_value(&stage->given) && (int)stage->word > (int)history->earlier->stage;
}

/* An event that has happened needs no planned day any more. */
static bool has_come(const Beside *beside, const Field *field)
{
	bool is_plan = beside->now->kind == KIND_event && strcmp(field->key, "planned") == 0;
	return is_plan && is_value(&((const Event *)beside->now->submitted)->date.given);
}

/* ---- values ---- */

static bool is_same(const Beside *beside, const Record *record, const Field *field, const void *here, const void *there)
{
	const Given *a = given_in(field, here), *b = given_in(field, there);
	bool has = is_value(a), had = is_value(b);
	if (has && had) {
		Attribute attribute = { beside->all->criteria, beside->all->reference, (RecordKind)record->kind, field, 0 };
		bool is_typed_same = a->typed != NULL && b->typed != NULL && strcmp(a->typed, b->typed) == 0;
		return (is_typed_same && field->kind != IS_BY_ZONE && field->kind != IS_TEXTS) ||
		       step_between(&attribute, here, there) == STEP_SAME;
	}
	if (!had && has)
		return is_first_due(beside, field) && b->said == SAID_NOTHING;
	if (had && !has && has_come(beside, field))
		return true;
	bool is_apart = a->said == SAID_UNREADABLE || b->said == SAID_UNREADABLE;
	return is_apart || a->said == b->said || (!has && !had);
}

/* A record with a name of its own is not called by its item. */
static bool was_renamed(const Case *now, const Field *field)
{
	const Record *record = record_of(now->kind);
	const Field *was = field_find(record, "was", strlen("was"));
	return was != NULL && strcmp(field->key, "item") == 0 && field_find(record, "name", strlen("name")) == NULL &&
	       is_value(given_in(was, now->submitted));
}

static void add_value(const Beside *beside, const Record *record, const Field *field, const void *here, const void *there)
{
	Arena *arena = beside->all->arena;
	const Given *given = given_in(field, here);
	Changed changed = { .kind = CHANGED_VALUE, .now = beside->now, .then = beside->then, .record = record, .field = field };
	changed.keys = arena_printf(arena, "%s%s", beside->keys, field->key);
	changed.here = typed_of(field, here, arena);
	changed.there = typed_of(field, there, arena);
	changed.path = beside->then->before;
	changed.renamed = was_renamed(beside->now, field);
	changed.place = given->place.source == SOURCE_SUBMITTAL ? given->place : (Place){ 0 };
	if (changed.place.line == 0)
		changed.place = ((const Given *)here)->place;
	add_change(beside->history, arena, &changed);
}

/* As deep as the form's own table. */
static void lay_beside(const Beside *beside, const Record *record, const void *here, const void *there)
{
	for (uint32_t i = 0; i < record->count; i++) {
		const Field *field = &record->field[i];
		if (is_told_elsewhere(record, field))
			continue;
		const Given *a = given_in(field, here), *b = given_in(field, there);
		if (field->kind == IS_ONE && a->said == SAID_VALUE && b->said == SAID_VALUE) {
			Beside inside = *beside;
			inside.keys = arena_printf(beside->all->arena, "%s%s.", beside->keys, field->key);
			lay_beside(&inside, field->record, a, b);
		} else if (field->kind == IS_ONE ? a->said != b->said && !(b->said == SAID_NOTHING && is_first_due(beside, field))
			: !is_same(beside, record, field, here, there)) {
			add_value(beside, record, field, here, there);
		}
	}
}

/* ---- records more and less ---- */

static void add_record(History *history, const Cases *all, const Case *now)
{
	bool is_inside = now->up != NULL && now->up->up != NULL;
	bool is_outer_new = is_inside && hash_get(history->then, now->up->before, strlen(now->up->before)) == NULL;
	if (is_outer_new || grows_by_itself(now->kind) || comes_with_stage(history, all, now))
		return;
	Changed changed = { .kind = RECORD_ADDED, .now = now, .record = record_of(now->kind), .here = now->name, .there = "nothing" };
	changed.path = now->before;
	changed.place = ((const Given *)now->submitted)->place;
	add_change(history, all->arena, &changed);
}

static void remove_record(History *history, const Cases *all, const Case *then)
{
	const HeldAs *up = then->up != NULL ? held_as(history, then->up->before) : NULL;
	if (then->up != NULL && then->up->up != NULL && up == NULL)
		return; /* it went with what held it */
	Changed changed = { .kind = RECORD_REMOVED, .now = up != NULL ? up->at : all->of[KIND_submittal].at[0], .then = then,
		.record = record_of(then->kind), .here = "nothing", .there = then->name };
	changed.path = then->before;
	add_change(history, all->arena, &changed);
}

static void compare_kind(History *history, const Cases *all, RecordKind kind)
{
	for (uint32_t i = 0; i < all->of[kind].count; i++) {
		const Case *now = all->of[kind].at[i], *then = hash_get(history->then, now->before, strlen(now->before));
		Beside beside = { history, all, now, then, "" };
		if (then != NULL)
			lay_beside(&beside, record_of(kind), now->submitted, then->submitted);
		else
			add_record(history, all, now);
	}
	for (uint32_t i = 0; i < history->before->of[kind].count; i++)
		if (held_as(history, history->before->of[kind].at[i]->before) == NULL)
			remove_record(history, all, history->before->of[kind].at[i]);
}

void find_changes(History *history, const Cases *all)
{
	for (int kind = 0; kind < RECORD_KINDS; kind++)
		if (!is_made((RecordKind)kind) && !is_record_of_deeds((RecordKind)kind))
			compare_kind(history, all, (RecordKind)kind);
}
