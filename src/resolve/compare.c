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
	const BoundSubstitution *may = draft->compared.may;
	bool is_stated = may != NULL && is_value(&may->row->tolerance_percent.given);
	return (Attribute){
		.criteria = r->all->criteria,
		.reference = r->all->reference,
		.kind = draft->kind,
		.field = draft->compared.field,
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
static Place place_here(const Compared *compared)
{
	const Given *value = given_in(compared->field, compared->here), *part = compared->part->submitted;
	const Given *item = part;
	if (record_of(compared->part->kind)->sort == RECORD_PART)
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

static void fill(Resolving *r, Compared *compared, const Draft *draft)
{
	Comparison *record = &compared->record;
	const char *attribute = draft->attribute != NULL ? draft->attribute : in_words(r->arena, compared->field->key);
	const char *here = draft->here != NULL ? draft->here : shown_value(r, compared->field, compared->here);
	const char *there = draft->there != NULL ? draft->there : shown_value(r, compared->field, compared->there);
	record->given = (Given){ place_here(compared), NULL, SAID_VALUE };
	record->with = made_word(papers, (uint32_t)draft->with);
	record->part = part_word(draft->kind);
	record->attribute = made_text(attribute);
	record->title = made_text(title_of(r, draft->kind, attribute));
	record->here = made_text(here);
	record->there = made_text(there);
	record->step = step_word(draft->step);
	record->may_go = made_word(directions, (uint32_t)draft->may_go);
}

/* Comparisons belong to the roof area of their part. */
static Case *area_of_part(const Case *part)
{
	return record_of(part->kind)->sort == RECORD_PART ? part->up : (Case *)part;
}

static void wait_beyond_limit(Resolving *r, const Compared *compared)
{
	if (!r->full)
		wait_for_list(r, &(WaitingList){ KIND_comparison, area_of_part(compared->part), NULL, NULL });
	r->full = true;
}

void compare_add(Resolving *r, const Draft *draft)
{
	if (r->all->of[KIND_comparison].count >= MOST_COMPARISONS) {
		wait_beyond_limit(r, &draft->compared);
		return;
	}
	Compared *compared = TAKE(r->arena, Compared, 1);
	*compared = draft->compared;
	fill(r, compared, draft);
	Case *at = case_add(r, KIND_comparison, area_of_part(compared->part), compared);
	at->name = compared->part->name;
	at->listed = compared->test != NULL ? compared->test->listed : NULL;
}
