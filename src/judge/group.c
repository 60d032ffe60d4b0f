/* SPDX-License-Identifier: MIT
 * From raws to items: followers wait for their cause, raws are sorted by the form, and equal ones are one item with its places.
 */
#include "judge.h"

#include <stdlib.h>
#include <string.h>

/* ---- after ---- */

typedef struct {
	const Case *at;
	uint64_t rule;
} CauseKey;

static void put_cause(Hash *broken, Judging *judging, const CauseKey *cause, Raw *raw)
{
	if (cause->at == NULL || hash_get(broken, (const char *)cause, sizeof *cause) != NULL)
		return;
	CauseKey *key = TAKE(judging->arena, CauseKey, 1);
	*key = *cause;
	hash_put(broken, (const char *)key, sizeof *key, raw);
}

/* What there is one of in a roof area, or what the area rests on, is a cause for rules on the area and its zones, not for its
 * parts. */
static bool is_cause_outwards(RecordKind kind)
{
	return kind == KIND_panel || kind == KIND_support || kind == KIND_test;
}

static const uint64_t from_within = (uint64_t)1 << 32;

void note_broken(Judging *judging)
{
	Hash *broken = judging->broken = hash_make(judging->arena, judging->raws);
	for (uint32_t i = 0; i < judging->raws; i++) {
		Raw *raw = judging->raw[i];
		if (raw->found_by != FOUND_BROKEN)
			continue;
		uint64_t rule = (uint64_t)(raw->rule - judging->cases->criteria->rule);
		put_cause(broken, judging, &(CauseKey){ raw->judged, rule }, raw);
		put_cause(broken, judging, &(CauseKey){ raw->where, rule }, raw);
		if (is_cause_outwards(raw->where->kind))
			put_cause(broken, judging, &(CauseKey){ raw->where->up, rule | from_within }, raw);
	}
}

static const Raw *cause_at(const Hash *broken, const Case *at, uint64_t rule)
{
	for (; at != NULL; at = at->up) {
		CauseKey key = { at, rule };
		const Raw *cause = hash_get(broken, (const char *)&key, sizeof key);
		if (cause != NULL)
			return cause;
	}
	return NULL;
}

const Raw *cause_of(const Judging *judging, const Rule *rule, const Case *judged)
{
	const Case *where = stands_at(judged);
	for (uint32_t i = 0; i < rule->causes; i++) {
		const Raw *cause = cause_at(judging->broken, judged, rule->after[i]);
		if (cause == NULL && where != judged)
			cause = cause_at(judging->broken, where, rule->after[i]);
		if (cause == NULL && judged->kind == KIND_comparison)
			cause = cause_at(judging->broken, ((const Compared *)judged->row)->requirement, rule->after[i]);
		if (cause == NULL && (judged->kind == KIND_roof_area || judged->kind == KIND_zone))
			cause = cause_at(judging->broken, judged, rule->after[i] | from_within);
		if (cause != NULL)
			return cause;
	}
	return NULL;
}

void hold_back(Judging *judging)
{
	for (uint32_t i = 0; i < judging->raws; i++) {
		Raw *raw = judging->raw[i];
		/* What has a number keeps it in sight; what a variance covers is no cause. */
		bool may_wait = raw->found_by == FOUND_BROKEN && raw->earlier == NULL;
		const Raw *cause = may_wait ? cause_of(judging, raw->rule, raw->judged) : NULL;
		if (cause == NULL || cause == raw || cause->state == ITEM_VARIANCE || cause->state == ITEM_CLOSED)
			continue;
		raw->cause = cause->number;
		judging->verdict->tally.held_back++;
		open_add(judging, &(Open){ .rule = raw->rule, .where = raw->where, .cause = raw->number });
	}
}

/* ---- sorting ---- */

const char *raw_code(const Raw *raw)
{
	switch (raw->found_by) {
	case FOUND_BY_READER:
		return message_of(raw->complaint->id)->code;
	case FOUND_BROKEN:
		return raw->rule->code;
	case FOUND_BY_REVIEWER:
		return "OWN";
	case FOUND_EARLIER:
		return raw->earlier->code;
	case FOUND_BY_ROUNDS:
	case FOUND_MISSING:
	case FOUND_REFUSED:
		break;
	}
	return message_of(raw->message)->code;
}

static int uint_compare(uint64_t a, uint64_t b)
{
	return (a > b) - (a < b);
}

/* Items of earlier rounds first, by number and place. */
static int earlier_compare(const Raw *a, const Raw *b)
{
	if (a->earlier != b->earlier)
		return a->earlier == NULL || (b->earlier != NULL && a->earlier > b->earlier) ? 1 : -1;
	return a->earlier != NULL ? uint_compare(a->earlier_place, b->earlier_place) : 0;
}

/* Own items last; else by the form, then by line and code. */
static int raw_compare(const void *left, const void *right)
{
	const Raw *a = *(Raw *const *)left, *b = *(Raw *const *)right;
	int order = earlier_compare(a, b);
	if (order != 0)
		return order;
	order = uint_compare(a->found_by == FOUND_BY_REVIEWER, b->found_by == FOUND_BY_REVIEWER);
	order = order != 0 ? order : position_compare(&a->position, &b->position);
	order = order != 0 ? order : uint_compare(a->place.line, b->place.line);
	order = order != 0 ? order : uint_compare(a->place.column, b->place.column);
	order = order != 0 ? order : strcmp(raw_code(a), raw_code(b));
	return order != 0 ? order : uint_compare(a->number, b->number);
}

static void sort_raws(Judging *judging)
{
	judging->sorted = TAKE(judging->arena, Raw *, judging->raws + 1);
	for (uint32_t i = 0; i < judging->raws; i++)
		if (judging->raw[i]->cause == 0)
			judging->sorted[judging->sorted_count++] = judging->raw[i];
	qsort(judging->sorted, judging->sorted_count, sizeof *judging->sorted, raw_compare);
}

/* ---- grouping ---- */

static const char *or_nothing(const char *text)
{
	return text != NULL ? text : "";
}

void tell_raw(const Raw *raw, Told *told, Arena *arena)
{
	*told = (Told){ .rule = raw->rule, .at = &raw->judged, .count = 1 };
	tell(told, arena);
}

/* What makes two raws one item. */
static const char *group_key(Judging *judging, const Raw *raw, Told *told)
{
	Arena *arena = judging->arena;
	if (raw->earlier != NULL)
		return arena_printf(arena, "earlier\n%u.%u", raw->earlier->round, raw->earlier->item);
	if (raw->found_by == FOUND_BY_ROUNDS)
		return arena_printf(arena, "%s\n%s\n%s", raw_code(raw), or_nothing(raw->what), or_nothing(raw->reason));
	if (raw->found_by == FOUND_BROKEN) {
		tell_raw(raw, told, arena);
		return arena_printf(arena, "%s\n%s\n%s\n%s", raw->rule->code, or_nothing(told->submitted.text),
				    or_nothing(told->limit.text), raw->state == ITEM_VARIANCE ? raw->note : "");
	}
	if (raw->found_by == FOUND_BY_READER)
		return arena_printf(arena, "%s\n%s", raw_code(raw),
				    complaint_text(raw->complaint, message_of(raw->complaint->id)->finding, arena));
	if (raw->found_by == FOUND_BY_REVIEWER)
		return arena_printf(arena, "OWN\n%u", (unsigned)raw->number);
	const char *field = raw->field != NULL ? raw->field->key : "";
	const char *party = raw->message == MESSAGE_MIS_05 ? missing_party(raw) : "";
	return arena_printf(arena, "%s\n%s\n%s\n%s\n%s", raw_code(raw), field,
			    raw->field != NULL ? or_nothing(raw->field->title) : "",
			    raw->field == NULL ? or_nothing(raw->what) : "", raw->reason != NULL ? raw->reason : party);
}

static void add_to_group(Judging *judging, Group *group, Raw *raw)
{
	group->raw = arena_more(judging->arena, group->raw, group->raws, &group->room, sizeof *group->raw);
	group->raw[group->raws++] = raw;
}

void group_raws(Judging *judging)
{
	sort_raws(judging);
	Hash *by_key = hash_make(judging->arena, judging->sorted_count);
	for (uint32_t i = 0; i < judging->sorted_count; i++) {
		Raw *raw = judging->sorted[i];
		Told told;
		const char *key = group_key(judging, raw, &told);
		size_t length = strlen(key);
		uintptr_t number = (uintptr_t)hash_get(by_key, key, length);
		if (number == 0) {
			judging->group =
				arena_more(judging->arena, judging->group, judging->groups, &judging->group_room, sizeof(Group));
			judging->group[judging->groups++] = (Group){ 0 };
			number = judging->groups;
			hash_put(by_key, key, length, (void *)number);
		}
		raw->item = (uint32_t)number;
		add_to_group(judging, &judging->group[number - 1], raw);
	}
}
