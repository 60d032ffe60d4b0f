/* SPDX-License-Identifier: MIT
 * Roles that must be filled, by required.csv: whether one is due, and how many parts fill it.
 */
#include "below.h"
#include "fetch.h"
#include "parts.h"

#include <string.h>

double role_due_yes(Case *role)
{
	const BoundRole *bound = ((const RoleDue *)role->row)->bound;
	bool is_due = fetch_all(role, role->up, bound->when, bound->whens);
	if (ready(role))
		fetch_shown(role, ask(role, offsetof(Role, part)));
	return is_due;
}

typedef struct {
	const BoundRole *bound;
	RecordKind kind;
	uint32_t found;
} Count;

typedef void TakeArea(Case *role, const Case *area, Count *count);

/* The roof area the role belongs to, or all of them for a role of the submittal. */
static void each_area(Case *role, TakeArea *take, Count *count)
{
	const Case *area = area_of(role);
	if (area != NULL) {
		take(role, area, count);
		return;
	}
	const Cases *all = role->all;
	for (uint32_t i = 0; i < all->of[KIND_roof_area].count; i++)
		take(role, all->of[KIND_roof_area].at[i], count);
}

static TestOutcome fills(const Count *count, const Case *part)
{
	Tested blocking;
	return test_all(part, count->bound->filled_by, count->bound->fills, &blocking);
}

static void count_area(Case *role, const Case *area, Count *count)
{
	for (Case *part = first_below(area, count->kind); part != NULL; part = part->next) {
		if (fills(count, part) != TEST_MET)
			continue;
		fetch_all(role, part, count->bound->filled_by, count->bound->fills);
		count->found++;
	}
}

/* The list that was not stated, and the parts that may fill the role once more is said of them. */
static void wait_for_area(Case *role, const Case *area, Count *count)
{
	for (uint32_t i = 0; i < RoofArea_record.count; i++) {
		const Field *field = &RoofArea_record.field[i];
		if (field->kind == IS_LIST && field->record->kind == count->kind)
			fetch_list(role, area, field->offset);
	}
	for (Case *part = first_below(area, count->kind); part != NULL; part = part->next)
		if (fills(count, part) == TEST_WAITS)
			fetch_all(role, part, count->bound->filled_by, count->bound->fills);
}

/* Enough parts found is enough: what others still wait for no longer matters. The parts of a roof area are counted once for all
 * of its penetrations. */
double role_found_one(Case *role)
{
	Case *first = first_role(role);
	if (first != role)
		return OF_AT(role, first, role_found_one);
	const BoundRole *bound = ((const RoleDue *)role->row)->bound;
	const Word *part = &bound->row->part;
	bool is_detail = is_word(part, "detail");
	Count count = { bound, is_detail ? KIND_detail : part_kind(part->text, strlen(part->text)), 0 };
	each_area(role, count_area, &count);
	if (count.found < bound->row->least_count_one.value)
		each_area(role, wait_for_area, &count);
	return count.found;
}
