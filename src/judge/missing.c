/* SPDX-License-Identifier: MIT
 * What is missing, each thing once: the fields of every record are walked through the form table, as need and stage ask.
 *
 * In this order: a reader's message stands for its value; a broken `is given` rule for its field; the outermost absent record
 * for all inside it; else one item for the field. What rules wait for beyond that is asked for at the end, so that no rule falls
 * silent without a reason in the list.
 */
#include "judge.h"

#include <string.h>

/* A record on the walk: the values in force and those written, in one order of fields. */
typedef struct {
	const Case *at;
	const Record *record;
	const char *row, *submitted;
} Walk;

/* The message for what a field says; a list, a record and a value are asked for in their own words. */
static MessageId message_for(const Field *field, Said said)
{
	if (said == SAID_UNKNOWN)
		return MESSAGE_MIS_04;
	if (said == SAID_BY_OTHERS)
		return MESSAGE_MIS_05;
	if (said == SAID_UNREADABLE)
		return MESSAGE_MIS_09;
	if (field->kind == IS_LIST)
		return MESSAGE_MIS_03;
	return field->kind == IS_ONE ? MESSAGE_MIS_02 : MESSAGE_MIS_01;
}

Raw *raise_missing(Judging *judging, const Raw *wanted, Wait *wait)
{
	Raw raw = *wanted;
	const Given *given = wait != NULL ? wait->given : NULL;
	raw.found_by = raw.message == MESSAGE_MIS_06 || raw.message == MESSAGE_MIS_07 ? FOUND_REFUSED : FOUND_MISSING;
	raw.action = message_of(raw.message)->action;
	raw.place = raw.where != NULL ? place_of(raw.where, given) : raw.place;
	if (raw.where != NULL)
		raw.position = position_of(raw.where, given);
	raw.wait = wait;
	Raw *kept = raw_add(judging, &raw);
	if (kept != NULL && wait != NULL)
		wait->raw = kept->number;
	return kept;
}

static Wait *wait_of_field(Judging *judging, const Walk *walk, const Field *field)
{
	const Given *given = given_in(field, walk->row);
	Wait wanted = { .key = { given, NULL }, .given = given, .field = field, .at = walk->at };
	return wait_for(judging, &wanted);
}

/* The rules that wait for something inside an absent record wait for the item of that record. */
static void account_inside(Judging *judging, const Record *record, const char *row, const Wait *outer)
{
	for (uint32_t i = 0; i < record->count; i++) {
		const Field *field = &record->field[i];
		Wait *wait = wait_found(judging, given_in(field, row));
		if (wait != NULL && wait->raw == 0) {
			wait->raw = outer->raw;
			wait->not_due = outer->not_due;
		}
		if (field->kind == IS_ONE)
			account_inside(judging, field->record, row + field->offset, outer);
	}
}

/* A reader's message that stands for the field, if there is one. */
static Raw *message_of_field(Judging *judging, const Walk *walk, const Field *field)
{
	const Given *given = given_in(field, walk->row);
	if (given->said == SAID_UNREADABLE)
		return complaint_at(judging, &given->place);
	return given->said == SAID_NOTHING ? complaint_for(judging, field, walk->row, walk->submitted) : NULL;
}

static void show_message_at(Raw *message, const Walk *walk, const Field *field)
{
	if (message->where != NULL)
		return;
	message->where = walk->at;
	message->field = field;
	message->position = position_of(walk->at, given_in(field, walk->row));
}

static bool is_due(const Judging *judging, const Field *field)
{
	bool asked_for = field->need == NEED_REQUIRED || field->need == NEED_STATED;
	return asked_for && field->due <= judging->stage;
}

/* What is open about a field: its item is made unless something stands for it already. */
static void open_field(Judging *judging, const Walk *walk, const Field *field)
{
	const Given *given = given_in(field, walk->row);
	Wait *wait = wait_of_field(judging, walk, field);
	if (wait != NULL && wait->raw != 0)
		return;
	Raw *message = message_of_field(judging, walk, field);
	if (message != NULL) {
		show_message_at(message, walk, field);
		if (wait != NULL)
			wait->raw = message->number;
	} else {
		Raw raw = { .message = message_for(field, given->said), .where = walk->at, .field = field };
		raise_missing(judging, &raw, wait);
	}
}

/* Every field that the submittal sets aside is listed; where a rule asks for it all the same, it is an item. */
static void set_aside(Judging *judging, const Walk *walk, const Field *field, const Given *given)
{
	Verdict *verdict = judging->verdict;
	if (given->place.source >= SOURCE_FIRST_SHARED)
		return;
	const char *reason = given->typed != NULL ? given->typed : "";
	if (verdict->not_applicables < MOST_ITEMS) {
		judging->aside = arena_more(judging->arena, judging->aside, verdict->not_applicables, &judging->aside_room,
					    sizeof(Assumption));
		judging->aside[verdict->not_applicables++] = (Assumption){ walk->at, field, reason };
		verdict->not_applicable = judging->aside;
	}
	Wait *wait = wait_found(judging, given);
	if (wait != NULL && wait->raw == 0)
		raise_missing(judging, &(Raw){ .message = MESSAGE_MIS_10, .where = walk->at, .field = field, .reason = reason },
			      wait);
}

static void assume(Judging *judging, const Walk *walk, const Field *field, const Given *given)
{
	Verdict *verdict = judging->verdict;
	if (verdict->assumptions >= MOST_ITEMS)
		return;
	judging->assumed =
		arena_more(judging->arena, judging->assumed, verdict->assumptions, &judging->assumed_room, sizeof(Assumption));
	const char *value = field->kind != IS_LIST && given->typed != NULL ? given->typed : field->assumed;
	judging->assumed[verdict->assumptions++] = (Assumption){ walk->at, field, value != NULL ? value : "none" };
	verdict->assumed = judging->assumed;
}

/* Whether the field itself is answered; parts inside are cases of their own. */
static void walk_field(Judging *judging, const Walk *walk, const Field *field)
{
	const Given *given = given_in(field, walk->row);
	switch (given->said) {
	case SAID_ASSUMED:
		assume(judging, walk, field, given);
		return;
	case SAID_NOT_APPLICABLE:
		set_aside(judging, walk, field, given);
		return;
	case SAID_VALUE:
	case SAID_NONE:
		return;
	case SAID_NOTHING:
		if (is_due(judging, field))
			break;
		if (field->need == NEED_REQUIRED || field->need == NEED_STATED) {
			Wait *later = wait_found(judging, given);
			if (later != NULL)
				later->not_due = true;
		}
		return;
	case SAID_UNKNOWN:
	case SAID_BY_OTHERS:
	case SAID_UNREADABLE:
		break;
	}
	open_field(judging, walk, field);
}

static bool is_same_place(const Given *a, const Given *b)
{
	return a->place.source == b->place.source && a->place.line == b->place.line && a->place.column == b->place.column;
}

/* What an area writes of its own building is asked for where it says that it is not known; all else is asked of the building. */
static void walk_own_building(Judging *judging, const Walk *area, const Field *building)
{
	const char *rows[] = { area->row + building->offset, area->submitted + building->offset };
	const Building *shared = &judging->cases->submittal->building;
	for (uint32_t i = 0; i < Building_record.count; i++)
		for (int j = 0; j < 2; j++) {
			const Field *field = &Building_record.field[i];
			const Given *given = given_in(field, rows[j]);
			if (given->said != SAID_UNKNOWN && given->said != SAID_BY_OTHERS && given->said != SAID_UNREADABLE)
				continue;
			if (is_same_place(given, given_in(field, shared)))
				continue; /* taken over from the building of the submittal, which is asked for it */
			open_field(judging, &(Walk){ area->at, &Building_record, rows[j], rows[1] }, field);
			break;
		}
}

/* The record of a form is as deep as its table: this does not follow the file. */
static void walk_record(Judging *judging, const Walk *walk)
{
	for (uint32_t i = 0; i < walk->record->count; i++) {
		const Field *field = &walk->record->field[i];
		const Given *given = given_in(field, walk->row);
		bool is_area_building = walk->record->kind == KIND_roof_area && field->record == &Building_record;
		if (is_area_building && is_value(given))
			walk_own_building(judging, walk, field);
		if (field->need == NEED_MADE || (is_area_building && is_value(given)))
			continue;
		walk_field(judging, walk, field);
		if (field->kind != IS_ONE)
			continue;
		Walk inside = { walk->at, field->record, walk->row + field->offset, walk->submitted + field->offset };
		if (!is_value(given)) {
			Wait *outer = wait_found(judging, given);
			bool not_due = outer == NULL && !is_due(judging, field) && field->need == NEED_REQUIRED;
			if (outer != NULL || not_due)
				account_inside(judging, field->record, inside.row,
					       outer != NULL ? outer : &(Wait){ .not_due = true });
		} else if (field->record->sort != RECORD_PART) {
			walk_record(judging, &inside);
		}
	}
}

/* The panel or support of an area that has none: the item of the area stands for it. */
static void account_for_part(Judging *judging, const Case *part)
{
	const Record *outer = record_of(part->up->kind);
	for (uint32_t i = 0; i < outer->count; i++) {
		if (outer->field[i].kind != IS_ONE || outer->field[i].record->kind != part->kind)
			continue;
		const Wait *wait = wait_found(judging, given_in(&outer->field[i], part->up->row));
		if (wait != NULL)
			account_inside(judging, record_of(part->kind), part->row, wait);
	}
}

static void walk_case(Judging *judging, const Case *at)
{
	const Given *record = at->row;
	bool is_one = at->kind == KIND_panel || at->kind == KIND_support;
	if (is_one && record->said != SAID_VALUE && at->up != NULL) {
		account_for_part(judging, at);
		return;
	}
	const void *submitted = at->submitted != NULL ? at->submitted : at->row;
	walk_record(judging, &(Walk){ at, record_of(at->kind), at->row, submitted });
}

/* A roof area without a building of its own has that of the submittal, whose items stand for it. */
static void account_for_building(Judging *judging, const Case *area)
{
	const Building *own = &((const RoofArea *)area->row)->building, *shared = &judging->cases->submittal->building;
	const Wait *whole = wait_found(judging, &shared->given);
	for (uint32_t i = 0; i < Building_record.count; i++) {
		const Field *field = &Building_record.field[i];
		Wait *wait = wait_found(judging, given_in(field, own));
		const Wait *same = wait_found(judging, given_in(field, shared));
		if (wait == NULL || wait->raw != 0)
			continue;
		if (same != NULL && same->raw != 0)
			wait->raw = same->raw;
		else if (whole != NULL)
			wait->raw = whole->raw;
	}
}

static bool stands_in_form(const Wait *wait)
{
	for (const Case *at = wait->at; at != NULL; at = at->up)
		if (stands_in(at, wait->given))
			return true;
	return false;
}

/* What a rule asked for and the walk did not: an optional field that turned out to be needed, a blank of the criteria. */
static void raise_rest(Judging *judging, Wait *wait)
{
	Raw raw = { .message = MESSAGE_MIS_06, .where = wait->at, .field = wait->field, .what = wait->what };
	raw.reason = "what it needs is not stated";
	if (wait->given == NULL || wait->field == NULL || is_value(wait->given)) {
		raise_missing(judging, &raw, wait);
		return;
	}
	Said said = wait->given->said;
	if (!stands_in_form(wait) || said == SAID_NONE || said == SAID_NOT_APPLICABLE) {
		raw.message = said == SAID_NOTHING ? MESSAGE_MIS_08 : MESSAGE_MIS_06;
		raise_missing(judging, &raw, wait);
		return;
	}
	bool is_asked_for = wait->field->need == NEED_REQUIRED || wait->field->need == NEED_STATED;
	wait->not_due = said == SAID_NOTHING && is_asked_for && wait->field->due > judging->stage;
	const char *row = (const char *)wait->given - wait->field->offset;
	if (!wait->not_due)
		open_field(judging, &(Walk){ .at = wait->at, .row = row, .submitted = row }, wait->field);
}

/* Where every rule that waits is a follower of a broken one, that one stands for what they lack. */
static bool waits_for_causes(const Judging *judging, Wait *wait)
{
	const Criteria *criteria = judging->cases->criteria;
	const Raw *cause = NULL;
	for (uint32_t i = 0; wait->rules != NULL && i < criteria->rules; i++) {
		if (!(wait->rules[i / 64] >> i % 64 & 1))
			continue;
		cause = criteria->rule[i].causes > 0 ? cause_of(judging, &criteria->rule[i], wait->at) : NULL;
		if (cause == NULL)
			return false;
	}
	if (cause != NULL)
		wait->raw = cause->number;
	return cause != NULL;
}

void find_missing(Judging *judging)
{
	const Cases *cases = judging->cases;
	for (uint32_t i = 0; i < cases->of[KIND_submittal].count; i++)
		walk_case(judging, cases->of[KIND_submittal].at[i]);
	for (uint32_t i = 0; i < cases->of[KIND_roof_area].count; i++) {
		walk_case(judging, cases->of[KIND_roof_area].at[i]);
		account_for_building(judging, cases->of[KIND_roof_area].at[i]);
	}
	for (int kind = 0; kind < RECORD_KINDS; kind++) {
		bool is_walked =
			kind == KIND_submittal || kind == KIND_roof_area || record_of((RecordKind)kind)->sort == RECORD_MADE;
		for (uint32_t i = 0; !is_walked && i < cases->of[kind].count; i++)
			walk_case(judging, cases->of[kind].at[i]);
	}
	for (Wait *wait = judging->first_wait; wait != NULL; wait = wait->next)
		if (wait->kind == WAIT_VALUE && wait->raw == 0 && !wait->not_due && !waits_for_causes(judging, wait))
			raise_rest(judging, wait);
}
