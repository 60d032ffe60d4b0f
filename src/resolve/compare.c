/* SPDX-License-Identifier: MIT
 * Comparisons: what all of them have in common. Whether one holds is a fact; here it is only set down what stands on either side.
 */
#include "compare.h"

#include <string.h>

static const char *const papers[] = { "listing", "catalogue", "specification" };
static const char *const directions[] = { "up", "down", "same", "any", "within" };

static Word made_word(const char *const *words, uint32_t number)
{
	return (Word){ { .said = SAID_VALUE, .typed = words[number] }, words[number], number };
}

static Text made_text(const char *text)
{
	return (Text){ { .said = text != NULL ? SAID_VALUE : SAID_NOTHING, .typed = text }, text };
}

/* ---- what the edition says of an attribute ---- */

/* Rows of substitutions.csv are few. */
const BoundSubstitution *substitution_of(const Resolving *r, RecordKind kind, const Field *field)
{
	const Criteria *criteria = r->all->criteria;
	for (uint32_t i = 0; i < criteria->substitutions_bound; i++) {
		const BoundSubstitution *may = &criteria->substitution[i];
		if (may->field == field && kind_of_word(&may->row->kind) == kind)
			return may;
	}
	return NULL;
}

/* Soft metric sizes (305 mm for 12 in) count as the same where the edition has no row or tolerance of its own (common practice,
 * no published source). */
static const double soft_percent = 0.5;

Attribute attribute_of(const Resolving *r, const Draft *draft)
{
	const BoundSubstitution *may = draft->may;
	bool is_stated = may != NULL && is_value(&may->row->tolerance_percent.given);
	return (Attribute){
		.criteria = r->all->criteria,
		.reference = r->all->reference,
		.kind = draft->kind,
		.field = draft->field,
		.tolerance_percent = is_stated ? may->row->tolerance_percent.value : soft_percent,
	};
}

MayGo may_go_of(const BoundSubstitution *may)
{
	for (uint32_t i = 0; may != NULL && i < sizeof directions / sizeof *directions; i++)
		if (is_word(&may->row->may_go, directions[i]))
			return (MayGo)i;
	return MAY_SAME;
}

/* ---- the record ---- */

/* Where the reader of a finding should look: the value, else the item that stands for it, else the part. */
static Place place_here(const Draft *draft)
{
	const Given *value = given_in(draft->field, draft->here_row), *part = draft->part->submitted;
	const Given *item = part;
	if (record_of(draft->part->kind)->sort == RECORD_PART)
		item = &((const Panel *)(const void *)part)->item.given;
	if (value->place.line > 0 && value->place.source < SOURCE_FIRST_SHARED)
		return value->place;
	return item->place.line > 0 ? item->place : part->place;
}

static const char *title_of(const Resolving *r, RecordKind kind, const char *attribute)
{
	const char *part = in_words(r->arena, record_of(kind)->name);
	if (strcmp(attribute, "item") == 0 || strcmp(attribute, part) == 0)
		return part;
	size_t length = strlen(part), more = strlen(attribute);
	char *title = arena_take(r->arena, length + 1 + more + 1, 1);
	memcpy(title, part, length);
	title[length] = ' ';
	memcpy(title + length + 1, attribute, more);
	return title;
}

static void fill(const Resolving *r, Comparison *record, const Draft *draft)
{
	const char *attribute = draft->attribute != NULL ? draft->attribute : in_words(r->arena, draft->field->key);
	record->given = (Given){ place_here(draft), NULL, SAID_VALUE };
	record->with = made_word(papers, (uint32_t)draft->with);
	record->part = part_word(draft->kind);
	record->attribute = made_text(attribute);
	record->title = made_text(title_of(r, draft->kind, attribute));
	record->here = made_text(draft->here != NULL ? draft->here : shown_value(r, draft->field, draft->here_row));
	record->there = made_text(draft->there != NULL ? draft->there : shown_value(r, draft->field, draft->there_row));
	record->step = step_word(draft->step);
	record->may_go = made_word(directions, (uint32_t)draft->may_go);
	if (draft->role != NULL)
		record->role = *draft->role;
	if (draft->paper != NULL)
		record->paper = *draft->paper;
}

/* Comparisons belong to the roof area of their part. */
static Case *area_of_part(const Case *part)
{
	return record_of(part->kind)->sort == RECORD_PART ? part->up : (Case *)part;
}

static void wait_beyond_limit(Resolving *r, const Draft *draft)
{
	if (!r->full)
		wait_for_list(r, &(WaitingList){ KIND_comparison, area_of_part(draft->part), NULL, NULL });
	r->full = true;
}

void compare_add(Resolving *r, const Draft *draft)
{
	if (r->all->of[KIND_comparison].count >= MOST_COMPARISONS) {
		wait_beyond_limit(r, draft);
		return;
	}
	Compared *compared = TAKE(r->arena, Compared, 1);
	compared->part = draft->part;
	compared->test = draft->test;
	compared->requirement = draft->requirement;
	compared->may = draft->may;
	compared->term = draft->term;
	compared->field = draft->field;
	compared->here = draft->here_row;
	compared->there = draft->there_row;
	fill(r, &compared->record, draft);
	Case *at = case_add(r, KIND_comparison, area_of_part(draft->part), compared);
	at->name = draft->part->name;
	at->listed = draft->test != NULL ? draft->test->listed : NULL;
}
