/* SPDX-License-Identifier: MIT
 * The tree of cases: one for each element of each list of the submittal, and for panel and support.
 *
 * The rows of form.def are walked, so a new list in the form needs no line here. Roof areas and parts are copied, because values
 * in force are filled into them; the lists of a copied roof area hold the copied parts. A list that was not stated is noted, for
 * itself, for the lists inside its records and for what resolve makes of them. The walk goes as deep as the form, not the file.
 */
#include "pipeline.h"
#include "resolving.h"

#include <string.h>

/* What resolve makes, and of which records. Lists inside a roof area that wait make comparisons that wait: compare_listing.c. */
static const struct {
	RecordKind from, made;
} made_of[] = {
	{ KIND_clip, KIND_zone },
	{ KIND_clip, KIND_contact },
	{ KIND_fastener, KIND_contact },
	{ KIND_rivet, KIND_contact },
	{ KIND_adjoining_metal, KIND_contact },
	{ KIND_roof_area, KIND_comparison },
	{ KIND_roof_area, KIND_role },
	{ KIND_penetration, KIND_role },
};

Case *case_add(Resolving *r, RecordKind kind, Case *up, const void *row)
{
	Cases *all = r->all;
	Case *at = TAKE(r->arena, Case, 1);
	*at = (Case){ .all = all, .up = up, .kind = kind, .order = all->made++, .row = row, .submitted = row };
	all->of[kind].at = arena_more(r->arena, all->of[kind].at, all->of[kind].count, &all->of[kind].room, sizeof at);
	all->of[kind].at[all->of[kind].count++] = at;
	return at;
}

/* ---- lists that wait ---- */

void wait_for_list(Resolving *r, const WaitingList *list)
{
	Cases *all = r->all;
	all->waiting = arena_more(r->arena, all->waiting, all->waitings, &all->waiting_room, sizeof *list);
	all->waiting[all->waitings++] = *list;
}

static void wait_once(Resolving *r, WaitingList list, RecordKind kind, bool *noted)
{
	if (noted[kind])
		return;
	noted[kind] = true;
	list.kind = kind;
	wait_for_list(r, &list);
}

/* Notes a kind of record, all kinds inside it, and all made of these. */
static void wait_for_all(Resolving *r, const WaitingList *list, const Record *record, bool *noted)
{
	wait_once(r, *list, (RecordKind)record->kind, noted);
	for (size_t i = 0; i < sizeof made_of / sizeof *made_of; i++)
		if (made_of[i].from == record->kind)
			wait_once(r, *list, made_of[i].made, noted);
	for (uint32_t i = 0; i < record->count; i++) {
		const Field *field = &record->field[i];
		if (field->kind == IS_LIST || (field->kind == IS_ONE && field->record->sort == RECORD_PART))
			wait_for_all(r, list, field->record, noted);
	}
}

/* ---- records ---- */

/* A record, its values in force, and as written. */
typedef struct {
	const Record *record;
	void *row;
	const void *submitted;
} Pair;

static bool is_filled(const Record *record)
{
	return record->sort == RECORD_PART || record->kind == KIND_roof_area;
}

static void make_inside(Resolving *r, Pair pair, Case *up);

static void make_record(Resolving *r, Pair pair, Case *up)
{
	Case *at = case_add(r, (RecordKind)pair.record->kind, up, pair.row);
	at->submitted = pair.submitted;
	if (pair.record->sort == RECORD_PART) {
		at->catalogue = bind_part(r->all->criteria, at->kind, pair.row);
		if (at->catalogue != NULL)
			take_over(pair.record, pair.row, at->catalogue);
	}
	if (at->kind == KIND_roof_area)
		take_over(&Building_record, &((RoofArea *)pair.row)->building, &r->all->submittal->building);
	name_case(r, at);
	make_inside(r, pair, at);
}

/* The copied elements of a list, or the list itself where nothing is filled in. */
static char *rows_in_force(Resolving *r, const Record *record, const List *list)
{
	if (!is_filled(record) || list->count == 0)
		return list->row;
	char *rows = arena_take(r->arena, list->count, record->size);
	memcpy(rows, list->row, list->count * record->size);
	return rows;
}

static void make_list(Resolving *r, const Record *record, Pair lists, Case *up)
{
	const List *submitted = lists.submitted;
	char *rows = rows_in_force(r, record, submitted);
	if (lists.row != lists.submitted) /* the roof area was copied, too */
		((List *)lists.row)->row = rows;
	for (uint32_t i = 0; i < submitted->count; i++) {
		size_t offset = i * record->size;
		make_record(r, (Pair){ record, rows + offset, (const char *)submitted->row + offset }, up);
	}
}

/* Whether any list stands in a record that is no part. */
static bool holds_lists(const Record *record)
{
	for (uint32_t i = 0; i < record->count; i++)
		if (record->field[i].kind == IS_LIST || record->field[i].kind == IS_ONE)
			return true;
	return false;
}

static void make_field(Resolving *r, const Field *field, Pair pair, Case *up)
{
	Pair inside = { field->record, (char *)pair.row + field->offset, (const char *)pair.submitted + field->offset };
	if (field->kind == IS_ONE && inside.record->sort == RECORD_PART) {
		make_record(r, inside, up);
		return;
	}
	if (field->kind == IS_ONE) {
		make_inside(r, inside, up);
		return;
	}
	const Given *given = inside.row;
	if (given->said == SAID_VALUE) {
		make_list(r, field->record, inside, up);
	} else if (given->said != SAID_NONE && given->said != SAID_ASSUMED) {
		bool noted[RECORD_KINDS] = { false };
		wait_for_all(r, &(WaitingList){ .up = up, .field = field, .given = given }, field->record, noted);
	}
}

static void make_inside(Resolving *r, Pair pair, Case *up)
{
	if (pair.record->sort == RECORD_PART || !holds_lists(pair.record))
		return;
	for (uint32_t i = 0; i < pair.record->count; i++)
		if (pair.record->field[i].kind == IS_LIST || pair.record->field[i].kind == IS_ONE)
			make_field(r, &pair.record->field[i], pair, up);
}

Case *resolve_alone(Arena *arena, const Case *part, const void *submitted)
{
	const Record *record = record_of(part->kind);
	void *row = arena_take(arena, 1, record->size);
	memcpy(row, submitted, record->size);
	Case *at = TAKE(arena, Case, 1);
	*at = (Case){ .all = part->all, .up = part->up, .kind = part->kind, .order = part->order, .name = part->name };
	at->row = row;
	at->submitted = submitted;
	at->listed = part->listed;
	at->catalogue = bind_part(part->all->criteria, part->kind, row);
	if (at->catalogue != NULL)
		take_over(record, row, at->catalogue);
	return at;
}

/* The submittal itself is not copied, so nothing is written through its row: lists that are filled stand in copies. */
void make_cases(Resolving *r, const Submittal *submittal)
{
	make_record(r, (Pair){ &Submittal_record, (Submittal *)submittal, submittal }, NULL);
}
