/* SPDX-License-Identifier: MIT
 * Places: the record something is shown at, where that stands in the order of the form, and its line in the submittal.
 *
 * Items are ordered by the form and not by lines, so that they keep their numbers when keys change places in the file. In a
 * file written in the form's order both are the same.
 */
#include "judge.h"

#include <ctype.h>
#include <string.h>

const Case *stands_at(const Case *at)
{
	if (at->kind == KIND_comparison && ((const Compared *)at->row)->part != NULL)
		return ((const Compared *)at->row)->part;
	bool is_made_for_another = at->kind == KIND_comparison || at->kind == KIND_role || at->kind == KIND_paper;
	return is_made_for_another && at->up != NULL ? at->up : at;
}

/* The list in which records of a kind stand; made records stand with what they are made from. */
static RecordKind kind_of_list(RecordKind kind)
{
	switch (kind) {
	case KIND_zone:
		return KIND_clip;
	case KIND_paper:
		return KIND_document;
	case KIND_contact:
		return KIND_panel;
	default:
		return kind;
	}
}

/* The offset of the list or record of a kind in `record`, one record deep; 0 if there is none. */
static uint32_t offset_of_list(const Record *record, RecordKind kind)
{
	for (uint32_t i = 0; i < record->count; i++) {
		const Field *field = &record->field[i];
		if (field->record == NULL)
			continue;
		if (field->record->kind == kind)
			return field->offset;
		for (uint32_t j = 0; field->kind == IS_ONE && j < field->record->count; j++)
			if (field->record->field[j].kind == IS_LIST && field->record->field[j].record->kind == kind)
				return field->offset + field->record->field[j].offset;
	}
	return 0;
}

static bool is_within(const void *row, const Case *at, const Given *given)
{
	uintptr_t begin = (uintptr_t)row, here = (uintptr_t)given;
	return row != NULL && here >= begin && here < begin + record_of(at->kind)->size;
}

bool stands_in(const Case *at, const Given *given)
{
	return is_within(at->row, at, given) || is_within(at->submitted, at, given);
}

/* Where a value stands in its record; 0 if it stands in none of its rows. */
static uint32_t offset_in(const Case *at, const Given *given)
{
	if (is_within(at->row, at, given))
		return (uint32_t)((uintptr_t)given - (uintptr_t)at->row);
	if (is_within(at->submitted, at, given))
		return (uint32_t)((uintptr_t)given - (uintptr_t)at->submitted);
	return 0;
}

Position position_of(const Case *where, const Given *given)
{
	Position position = { 0 };
	const Case *area = where, *top = where;
	while (area != NULL && area->kind != KIND_roof_area)
		area = area->up;
	position.area = area != NULL ? area->order + 1 : 0;
	if (where == area || where->up == NULL) {
		position.outer = offset_in(where, given);
		return position;
	}
	while (top->up != NULL && top->up != area && top->up->up != NULL)
		top = top->up;
	position.outer = offset_of_list(record_of(top->up->kind), kind_of_list(top->kind));
	position.index = top->order;
	position.inner = offset_in(where, given);
	return position;
}

static int number_compare(uint32_t a, uint32_t b)
{
	return (a > b) - (a < b);
}

int position_compare(const Position *a, const Position *b)
{
	int order = number_compare(a->area, b->area);
	order = order != 0 ? order : number_compare(a->outer, b->outer);
	order = order != 0 ? order : number_compare(a->index, b->index);
	return order != 0 ? order : number_compare(a->inner, b->inner);
}

static bool is_in_submittal(const Place *place)
{
	return place->line > 0 && place->source < SOURCE_FIRST_SHARED;
}

Place place_of(const Case *where, const Given *given)
{
	if (given != NULL && is_in_submittal(&given->place))
		return given->place;
	for (const Case *at = where; at != NULL; at = at->up) {
		const void *row = at->submitted != NULL ? at->submitted : at->row;
		const Given *record = row;
		if (record != NULL && is_in_submittal(&record->place))
			return record->place;
	}
	return (Place){ 0 };
}

const char *field_path(const Field *field, Arena *arena)
{
	for (int kind = 0; kind < RECORD_KINDS; kind++) {
		const Record *record = record_of((RecordKind)kind);
		if (field >= record->field && field < record->field + record->count)
			return arena_printf(arena, "%s.%s", record->name, field->key);
	}
	return field->key;
}

static const char *lower_part(const char *title, size_t length, Arena *arena)
{
	char *words = arena_text(arena, title, length);
	if (isupper((unsigned char)words[0]) && !isupper((unsigned char)words[1]))
		words[0] = (char)tolower((unsigned char)words[0]);
	return words;
}

const char *lower_first(const char *title, Arena *arena)
{
	return lower_part(title, strlen(title), arena);
}

const char *field_words(const Field *field, Arena *arena)
{
	const char *title = field->title != NULL ? field->title : field->key;
	return lower_part(title, strcspn(title, ";"), arena);
}

const char *kind_words(RecordKind kind, Arena *arena)
{
	const char *name = record_of(kind)->name;
	char *words = arena_text(arena, name, strlen(name));
	for (char *c = words; *c != '\0'; c++)
		if (*c == '_')
			*c = ' ';
	return words;
}
