/* SPDX-License-Identifier: MIT
 * Service lives: of a part where it is used, and the least of a roof area.
 *
 * A life comes from lives.csv, or from what the maker of a part outside the catalogue states on a paper. An approval states none.
 */
#include "below.h"
#include "formula.h"
#include "parts.h"
#include "text.h"

#include <string.h>

typedef struct {
	const char *item, *place, *surroundings;
} Wanted;

/* What the rows of one item depend on. */
typedef struct {
	bool any, place, surroundings;
} Depends;

static Depends depends(const Criteria *criteria, const char *item)
{
	Depends on = { false, false, false };
	LifeSpan span = life_span(criteria, item);
	for (uint32_t i = span.begin; i < span.end; i++) {
		const Life *row = &criteria->lives.row[i];
		if (strcmp(row->item.text, item) != 0)
			continue;
		on.any = true;
		on.place |= is_value(&row->where.given);
		on.surroundings |= is_value(&row->environment.given);
	}
	return on;
}

/* How well a row fits, where first: 0 not at all. */
static int fit_of(const Life *row, const Wanted *wanted)
{
	bool has_where = is_value(&row->where.given), has_environment = is_value(&row->environment.given);
	if (has_where && (wanted->place == NULL || !same_text(row->where.text, wanted->place)))
		return 0;
	if (has_environment && !same_text(row->environment.text, wanted->surroundings))
		return 0;
	return 1 + 2 * has_where + has_environment;
}

static const Life *best_life(const Criteria *criteria, const Wanted *wanted)
{
	const Life *best = NULL;
	int fit = 0;
	LifeSpan span = life_span(criteria, wanted->item);
	for (uint32_t i = span.begin; i < span.end; i++) {
		const Life *row = &criteria->lives.row[i];
		int here = strcmp(row->item.text, wanted->item) == 0 ? fit_of(row, wanted) : 0;
		if (here > fit) {
			fit = here;
			best = row;
		}
	}
	return best;
}

/* The row for this part where it is used; NULL, and not ready, if it cannot be told; NULL if there is none. */
static const Life *fetch_life(Case *part, const char *item, Depends on)
{
	const char *place = on.place ? fetch_place(part) : NULL;
	const char *surroundings = on.surroundings ? GIVEN(part, submittal, Submittal, project.surroundings) : "";
	return ready(part) ? best_life(part->all->criteria, &(Wanted){ item, place, surroundings }) : NULL;
}

/* A life that is stated needs the paper that states it. */
static double stated_life_yr(Case *part)
{
	double life = GIVEN_AT(part, part, Panel, stated_life_yr);
	const char *paper = GIVEN_AT(part, part, Panel, life_paper);
	if (!ready(part))
		return 0;
	part->now->formula = "{stated_life}";
	note(part, paper);
	return life;
}

double part_life_yr(Case *part)
{
	const char *item = GIVEN_AT(part, part, Panel, item);
	if (!ready(part))
		return 0;
	Depends on = depends(part->all->criteria, item);
	if (!on.any)
		return stated_life_yr(part);
	const Life *row = fetch_life(part, item, on);
	if (!ready(part))
		return 0;
	if (row == NULL)
		return REFUSE(part, "lives.csv gives no life for this item where it is used");
	note(part, is_value(&row->paper.given) ? row->paper.text : NULL);
	return CONSTANT(part, "lives.csv", item, row->service_life_yr.value, row->basis.text);
}

double part_life_stated_yes(Case *part)
{
	const char *item = GIVEN_AT(part, part, Panel, item);
	if (!ready(part))
		return 0;
	Depends on = depends(part->all->criteria, item);
	if (on.any) {
		const Life *row = fetch_life(part, item, on);
		return ready(part) && row != NULL;
	}
	double life = GIVEN_OR_AT(part, part, Panel, stated_life_yr, -1);
	const char *paper = GIVEN_OR_AT(part, part, Panel, life_paper, "");
	return ready(part) && life >= 0 && *paper != '\0';
}

/* ---- roof areas ---- */

typedef struct {
	double life_yr;
	const Case *part;
} Least;

/* What can be renewed, and what has no life, does not count. */
static void take_part(Case *area, Case *part, Least *least)
{
	const Fact *renewable = fetch_use(area, part, FACT_part_renewable);
	if (renewable->state == FACT_KNOWN && renewable->value != 0)
		return;
	const Fact *life = fetch_use(area, part, FACT_part_life);
	if (life->state == FACT_NOT_APPLICABLE)
		return;
	fetch_raise(area, renewable);
	fetch_raise(area, life);
	if (life->state == FACT_KNOWN && (least->part == NULL || life->value < least->life_yr))
		*least = (Least){ life->value, part };
}

/* A list that was not stated may hold the part that lasts least. */
static void take_list(Case *area, const Field *field, Least *least)
{
	const KindRow *row = kind_find(area->all->criteria, field->record->kind);
	if (row == NULL || !row->life_judged.yes)
		return;
	if (field->kind == IS_LIST)
		fetch_list(area, area, field->offset);
	else
		fetch_said(area, ask(area, field->offset));
	for (Case *part = first_below(area, field->record->kind); part != NULL; part = part->next)
		take_part(area, part, least);
}

double roof_area_least_life_yr(Case *area)
{
	Least least = { 0, NULL };
	for (uint32_t i = 0; i < RoofArea_record.count; i++) {
		const Field *field = &RoofArea_record.field[i];
		if (field->record != NULL && field->record->sort == RECORD_PART)
			take_list(area, field, &least);
	}
	if (!ready(area))
		return 0;
	if (least.part == NULL)
		return SKIP(area, "no life is judged here");
	note(area, least.part->name);
	return least.life_yr;
}

double roof_area_longest_term_yr(Case *area)
{
	double life = OF(area, roof_area_least_life_yr);
	if (!ready(area))
		return 0;
	const Criteria *criteria = area->all->criteria;
	double *offered = TAKE(area->all->arena, double, criteria->terms.count);
	for (uint32_t i = 0; i < criteria->terms.count; i++) {
		const Term *row = &criteria->terms.row[i];
		offered[i] = fetch_constant(area, "terms.csv", row->term_yr.value, row->basis.text);
	}
	note(area, fact_of(area, FACT_roof_area_least_life)->note);
	return longest_term_yr(offered, criteria->terms.count, life);
}
