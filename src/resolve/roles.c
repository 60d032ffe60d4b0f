/* SPDX-License-Identifier: MIT
 * Roles that must be filled, one for each row of required.csv and record it names, and papers that may be due. Whether a role
 * or a paper is due, and what fills it, are facts.
 */
#include "resolving.h"

#include <string.h>

/* Where the part would stand: the list of its kind in the area, if it was written; else the record that calls for it. */
static Place place_of_role(const BoundRole *bound, const Case *up)
{
	const Case *area = case_outward(up, KIND_roof_area);
	const Record *record = &RoofArea_record;
	for (uint32_t i = 0; area != NULL && i < record->count; i++) {
		const Field *list = &record->field[i];
		if (list->kind != IS_LIST || strcmp(list->record->name, bound->row->part.text) != 0)
			continue;
		const Given *given = given_in(list, area->row);
		if (given->place.line != 0)
			return given->place;
	}
	return ((const Given *)up->row)->place;
}

static void make_role(Resolving *r, const BoundRole *bound, Case *up)
{
	RoleDue *due = TAKE(r->arena, RoleDue, 1);
	due->bound = bound;
	due->record = (Role){
		.given = { place_of_role(bound, up), NULL, SAID_VALUE },
		.role = bound->row->role,
		.part = bound->row->part,
		.reason = bound->row->reason,
		.least_one = bound->row->least_count_one,
	};
	Case *at = case_add(r, KIND_role, up, due);
	at->name = name_made(r, up, bound->row->role.text);
}

static RecordKind kind_for_each(const RequiredRole *row)
{
	if (is_word(&row->for_each, "penetration"))
		return KIND_penetration;
	return is_word(&row->for_each, "submittal") ? KIND_submittal : KIND_roof_area;
}

void make_roles(Resolving *r)
{
	Cases *all = r->all;
	for (uint32_t i = 0; i < all->criteria->roles; i++) {
		const BoundRole *bound = &all->criteria->role[i];
		RecordKind kind = kind_for_each(bound->row);
		for (uint32_t j = 0; j < all->of[kind].count; j++)
			make_role(r, bound, all->of[kind].at[j]);
	}
}

void make_papers(Resolving *r)
{
	Cases *all = r->all;
	for (uint32_t i = 0; i < all->criteria->papers; i++) {
		const BoundPaper *bound = &all->criteria->paper[i];
		PaperDueHere *due = TAKE(r->arena, PaperDueHere, 1);
		due->bound = bound;
		due->record.given = (Given){ all->submittal->documents.of.given.place, NULL, SAID_VALUE };
		due->record.kind = bound->row->kind;
		Case *at = case_add(r, KIND_paper, all->of[KIND_submittal].at[0], due);
		at->name = bound->row->kind.text;
	}
}
