/* SPDX-License-Identifier: MIT
 * Comparisons with listings: for each test of a roof area, each row of substitutions.csv and each part the listing speaks of.
 *
 * A part that the listing states and the area does not have is compared as a list against a list ("none" against "bearing
 * plate"), so that leaving a part out is a difference; a list that waits is compared so, too, and waits. The listing's own terms
 * stand before the row.
 */
#include "compare.h"

#include <string.h>

/* The parts of one kind in one roof area: neighbours, as cases are made area by area. */
typedef struct {
	Case *const *at; /* NULL if there are none */
	uint32_t first, count;
} Slice;

typedef struct {
	Resolving *r;
	Case *area;
	const Case *test;
	const Known *known;
	const BoundSubstitution *may;
	RecordKind kind;
	Slice parts;
} Look;

/* ---- terms ---- */

static const struct {
	const char *relation;
	MayGo may_go;
} relations[] = { { "is", MAY_SAME }, { "at least", MAY_UP }, { "at most", MAY_DOWN }, { "between", MAY_WITHIN },
	{ "one of", MAY_SAME }, { "optional", MAY_ANY }, { "any", MAY_ANY } };

static const BoundTerm *term_of(const Look *look)
{
	for (uint32_t i = 0; i < look->known->terms; i++)
		if (look->known->term[i]->kind == look->kind && look->known->term[i]->field == look->may->field)
			return look->known->term[i];
	return NULL;
}

static MayGo may_go_of_term(const BoundTerm *term)
{
	for (size_t i = 0; i < sizeof relations / sizeof *relations; i++)
		if (is_word(&term->row->relation, relations[i].relation))
			return relations[i].may_go;
	return MAY_SAME;
}

/* "12 in to 16 in" for `between`. Of `one of` the tested value is shown, which is the first choice; NULL: as in the row. */
static const char *words_of_term(const Resolving *r, const BoundTerm *term)
{
	static const char between[] = " and ";
	if (!is_value(&term->row->value.given) || is_word(&term->row->relation, "one of"))
		return NULL;
	const char *value = term->row->value.text, *gap = strstr(value, between);
	if (gap == NULL || !is_word(&term->row->relation, "between"))
		return value;
	return arena_printf(r->arena, "%.*s to %s", (int)(gap - value), value, gap + strlen(between));
}

static bool is_open_term(const BoundTerm *term)
{
	return term != NULL && may_go_of_term(term) == MAY_ANY;
}

static Draft draft_of(const Look *look, const Case *part, const BoundTerm *term)
{
	const AreaTest *test = look->test->row;
	return (Draft){
		.part = part,
		.test = look->test,
		.may = look->may,
		.term = term,
		.field = look->may->field,
		.role = &test->role,
		.paper = &test->listing,
		.with = WITH_LISTING,
		.kind = look->kind,
		.may_go = term != NULL ? may_go_of_term(term) : may_go_of(look->may),
		.there = term != NULL ? words_of_term(look->r, term) : NULL,
	};
}

/* ---- parts beside parts ---- */

static const Field *mark_field(void)
{
	return field_find(&Fastener_record, "mark", strlen("mark"));
}

/* A row in which the listing says `none`, or nothing. */
static const void *empty_row(const Look *look, Said said)
{
	void *row = arena_take(look->r->arena, 1, record_of(look->kind)->size);
	if (said == SAID_NONE)
		*given_at(look->may->field, row) = (Given){ .said = SAID_NONE, .typed = "none" };
	return row;
}

/* Neither side speaks of it: an optional attribute, or one that does not apply to such a part. */
static bool is_silent(const Field *field, const Given *here, const Given *there)
{
	bool is_left_open = here->said == SAID_NOTHING && field->need == NEED_OPTIONAL;
	return there->said == SAID_NOTHING && (is_left_open || here->said == SAID_NOT_APPLICABLE);
}

static void compare_rows(const Look *look, const Case *part, const void *there)
{
	const Field *field = look->may->field;
	const BoundTerm *term = term_of(look);
	if (term == NULL && is_silent(field, given_in(field, part->row), given_in(field, there)))
		return;
	Draft draft = draft_of(look, part, term);
	Attribute attribute = attribute_of(look->r, &draft);
	draft.here_row = part->row;
	draft.there_row = there;
	if (term != NULL && draft.there == NULL && !is_value(given_in(field, there)) && is_value(&term->row->value.given))
		draft.there = term->row->value.text; /* only the choices are stated */
	draft.step = step_between(&attribute, part->row, there);
	if (draft.step == STEP_UNKNOWN && asks_for_mark(&attribute, part->row, there)) {
		draft.attribute = field->key;
		draft.here = shown_value(look->r, field, part->row);
		draft.there = shown_value(look->r, field, there);
		draft.field = mark_field();
	}
	compare_add(look->r, &draft);
}

/* Whether this is the first row of its kind: where a whole part is too many or too few, one comparison says so. */
static bool is_first_row(const Look *look)
{
	const BoundSubstitution *first = look->r->all->criteria->substitution;
	for (; first < look->may; first++)
		if (kind_of_word(&first->row->kind) == look->kind)
			return false;
	return true;
}

static void compare_part(const Look *look, const Case *part)
{
	Said said;
	const void *there = tested_part(look->r, look->known->listing, look->kind, part->row, &said);
	if (there != NULL) {
		bool is_apart = look->kind == KIND_layer && is_other_layer(part->row, there);
		if (!is_apart || is_first_row(look))
			compare_rows(look, part, there);
		return;
	}
	if (said == SAID_NONE && !is_first_row(look))
		return;
	Draft draft = draft_of(look, part, term_of(look));
	draft.here_row = part->row;
	draft.there_row = empty_row(look, said);
	draft.step = said == SAID_NONE ? STEP_OTHER : said == SAID_NOT_APPLICABLE ? STEP_SAME : STEP_UNKNOWN;
	compare_add(look->r, &draft);
}

/* ---- lists beside lists ---- */

static void compare_lists(const Look *look, const Field *list, Step step, const char *there)
{
	const BoundTerm *term = term_of(look);
	bool is_open = is_open_term(term);
	Draft draft = draft_of(look, look->area, is_open ? term : NULL);
	draft.may_go = is_open ? MAY_ANY : MAY_SAME;
	draft.may = NULL; /* its needs speak of a part, and there is none */
	draft.field = list;
	draft.here_row = look->area->row;
	draft.there_row = &look->known->listing->tested;
	draft.attribute = in_words(look->r->arena, look->may->field->key);
	draft.here = step == STEP_OTHER ? "none" : NULL;
	draft.there = there;
	draft.step = step;
	compare_add(look->r, &draft);
}

/* Whether a tested part stands beside one of the area's. Layers are told by what they are, other parts by their use alone. */
static bool is_met(const Look *look, const void *tested)
{
	for (uint32_t i = 0; i < look->parts.count; i++) {
		const void *row = look->parts.at[i]->row;
		if (!is_tested_use(look->kind, row))
			continue;
		if (look->kind != KIND_layer || !is_other_layer(row, tested))
			return true;
	}
	return false;
}

/* Whether this is the first row of its kind in which a tested part states a value. */
static bool is_first_stated(const Look *look, const void *tested)
{
	const BoundSubstitution *may = look->r->all->criteria->substitution;
	for (; may < look->may; may++)
		if (kind_of_word(&may->row->kind) == look->kind && given_in(may->field, tested)->said == SAID_VALUE)
			return false;
	return given_in(look->may->field, tested)->said == SAID_VALUE;
}

/* What the listing was tested with and the area does not have. */
static void compare_left_out(const Look *look, const Field *list)
{
	const List *tested = (const List *)(const void *)((const char *)&look->known->listing->tested + list->offset);
	const Field *field = look->may->field;
	for (uint32_t i = 0; i < tested->count; i++) {
		const char *row = (const char *)tested->row + i * list->record->size;
		if (is_first_stated(look, row) && !is_met(look, row))
			compare_lists(look, list, STEP_OTHER, shown_value(look->r, field, row));
	}
}

static void compare_kind(const Look *look)
{
	const Field *list = look->r->held_in[look->kind];
	for (uint32_t i = 0; i < look->parts.count; i++)
		if (is_tested_use(look->kind, look->parts.at[i]->row))
			compare_part(look, look->parts.at[i]);
	if (list->kind != IS_LIST)
		return;
	const Given *given = given_in(list, look->area->row);
	if (given->said != SAID_VALUE && given->said != SAID_NONE && given->said != SAID_ASSUMED)
		compare_lists(look, list, STEP_UNKNOWN, NULL);
	else
		compare_left_out(look, list);
}

/* ---- tests and areas ---- */

/* A second test that names the same listing for the same use says nothing new. */
static bool is_compared(Known *known, const Case *test)
{
	const Word *role = &((const AreaTest *)test->row)->role;
	uint32_t bit = is_value(&role->given) ? (uint32_t)2 << role->word % 16 : 1;
	if (known->area != test->up->order + 1)
		known->roles = 0;
	known->area = test->up->order + 1;
	bool before = (known->roles & bit) != 0;
	known->roles |= bit;
	return before;
}

static void compare_test(Resolving *r, const Case *test, const Slice *parts)
{
	Known *known = known_listing(r, test->row);
	if (known == NULL || is_compared(known, test))
		return;
	const Criteria *criteria = r->all->criteria;
	for (uint32_t i = 0; i < criteria->substitutions_bound; i++) {
		const BoundSubstitution *may = &criteria->substitution[i];
		RecordKind kind = kind_of_word(&may->row->kind);
		if (kind == RECORD_KINDS || !has_tested_parts(kind))
			continue;
		Look look = { .r = r, .area = test->up, .test = test, .known = known, .may = may, .kind = kind, .parts = parts[kind] };
		compare_kind(&look);
	}
}

/* Moves each slice on to the parts of an area. */
static void slice_area(const Resolving *r, const Case *area, Slice *parts)
{
	for (int kind = 0; kind < RECORD_KINDS; kind++) {
		Case *const *all = r->all->of[kind].at;
		uint32_t first = parts[kind].first + parts[kind].count, end = first;
		while (r->held_in[kind] != NULL && end < r->all->of[kind].count && all[end]->up == area)
			end++;
		parts[kind] = (Slice){ end > first ? &all[first] : NULL, first, end - first };
	}
}

/* Where the tests of an area were not stated, every comparison there would be waits for them: with the listing for class, which
 * every area has. */
static const Word class_role = { .given.said = SAID_VALUE, .text = "class" };

static void wait_for_tests(Resolving *r, const Case *area)
{
	const RoofArea *row = area->row;
	const Field *tests = field_find(&RoofArea_record, "tests", strlen("tests"));
	if (row->tests.of.given.said == SAID_VALUE || row->tests.of.given.said == SAID_NONE)
		return;
	for (uint32_t i = 0; i < r->all->criteria->substitutions_bound; i++) {
		const BoundSubstitution *may = &r->all->criteria->substitution[i];
		RecordKind kind = kind_of_word(&may->row->kind);
		if (kind == RECORD_KINDS || !has_tested_parts(kind))
			continue;
		Draft draft = { .with = WITH_LISTING, .kind = kind, .may_go = MAY_SAME, .step = STEP_UNKNOWN };
		draft.attribute = in_words(r->arena, may->field->key);
		draft.part = area;
		draft.role = &class_role;
		draft.field = tests;
		draft.here_row = draft.there_row = row;
		compare_add(r, &draft);
	}
}

void compare_listings(Resolving *r)
{
	Slice parts[RECORD_KINDS] = { { NULL, 0, 0 } };
	uint32_t test = 0;
	for (uint32_t i = 0; i < r->all->of[KIND_roof_area].count; i++) {
		const Case *area = r->all->of[KIND_roof_area].at[i];
		slice_area(r, area, parts);
		wait_for_tests(r, area);
		for (; test < r->all->of[KIND_test].count && r->all->of[KIND_test].at[test]->up == area; test++)
			compare_test(r, r->all->of[KIND_test].at[test], parts);
	}
}
