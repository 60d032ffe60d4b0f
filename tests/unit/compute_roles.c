/* SPDX-License-Identifier: MIT
 * Roles that must be filled, and papers that are due.
 */
#include "compute_world.h"

static Operand field_of(const Record *record, const char *key, ValueKind gives)
{
	const Field *field = field_find(record, key, strlen(key));
	return (Operand){ .from = FROM_FIELD, .gives = (uint8_t)gives, .at = (RecordKind)record->kind, .offset = field->offset,
		.field = field, .factor = 1 };
}

static Operand text_of(const char *text)
{
	return (Operand){ .from = FROM_CONSTANT, .gives = VALUE_WORD, .word = text };
}

/* A sealant in the seam is due where the work is new. */
typedef struct {
	RequiredRole row;
	Test when, filled_by;
	BoundRole bound[1];
} RoleRow;

static RoleRow *a_rule(World *w)
{
	RoleRow *rule = TAKE(w->arena, RoleRow, 1);
	rule->row = (RequiredRole){ .role = TEXT_IS("seam sealant"), .part = WORD_IS("sealant"),
		.least_count_one = NUMBER_IS(1) };
	rule->when = (Test){ .left = field_of(&RoofArea_record, "work", VALUE_WORD), .relation = RELATION_IS,
		.right = text_of("new") };
	rule->filled_by = (Test){ .left = field_of(&Sealant_record, "where", VALUE_WORD), .relation = RELATION_IS,
		.right = text_of("seam") };
	rule->bound[0] = (BoundRole){ .row = &rule->row, .when = &rule->when, .whens = 1,
		.filled_by = &rule->filled_by, .fills = 1 };
	w->criteria.role = rule->bound;
	w->criteria.roles = 1;
	w->area.work = WORD_IS("new");
	return rule;
}

static Case *a_role(World *w, Case *up)
{
	RoleDue *row = TAKE(w->arena, RoleDue, 1);
	row->bound = w->criteria.role;
	return add_case(w, KIND_role, up, row);
}

static Sealant *a_sealant(World *w, const char *where)
{
	Sealant *row = TAKE(w->arena, Sealant, 1);
	row->where = WORD_IS(where);
	w->area.sealants.of.given.said = SAID_VALUE;
	add_case(w, KIND_sealant, w->roof, row);
	return row;
}

static void a_role_is_due_when_its_conditions_hold(void **state)
{
	World *w = *state;
	a_rule(w);
	assert_known(a_role(w, w->roof), "due", 1);
	w->area.work = WORD_IS("tear-off");
	assert_known(a_role(w, w->roof), "due", 0);
	w->area.work.given.said = SAID_NOTHING;
	assert_waits(w, a_role(w, w->roof), "due", "work");
}

static void parts_that_fill_a_role_are_counted(void **state)
{
	World *w = *state;
	a_rule(w);
	a_sealant(w, "ridge");
	a_sealant(w, "seam");
	a_sealant(w, "seam");
	a_sealant(w, "seam")->where.given.said = SAID_NOTHING; /* enough are known */
	assert_known(a_role(w, w->roof), "found", 2);
}

static void none_fills_a_role(void **state)
{
	World *w = *state;
	a_rule(w);
	assert_known(a_role(w, w->roof), "found", 0);
}

static void what_may_fill_a_role_is_waited_for(void **state)
{
	World *w = *state;
	a_rule(w);
	a_sealant(w, "seam")->where.given.said = SAID_UNKNOWN;
	a_sealant(w, "ridge");
	assert_waits(w, a_role(w, w->roof), "found", "where");
}

static void a_list_that_may_fill_a_role_is_waited_for(void **state)
{
	World *w = *state;
	a_rule(w);
	w->area.sealants.of.given.said = SAID_NOTHING;
	assert_waits(w, a_role(w, w->roof), "found", "sealants");
}

static void penetrations_share_the_parts_of_their_area(void **state)
{
	World *w = *state;
	Penetration row = { .given = GOOD };
	a_rule(w);
	a_sealant(w, "seam");
	Case *one = a_role(w, add_case(w, KIND_penetration, w->roof, &row));
	Case *other = a_role(w, add_case(w, KIND_penetration, w->roof, &row));
	assert_known(other, "found", 1);
	assert_known(one, "found", 1);
}

static void a_role_of_the_whole_submittal(void **state)
{
	World *w = *state;
	RoofArea second = w->area;
	Sealant seam = { .where = WORD_IS("seam") };
	a_rule(w)->bound[0].whens = 0;
	Case *area = add_case(w, KIND_roof_area, w->at, &second);
	add_case(w, KIND_sealant, area, &seam);
	a_sealant(w, "seam");
	assert_known(a_role(w, w->at), "found", 2);
	assert_known(a_role(w, w->at), "due", 1);
}

static Case *a_paper(World *w, BoundPaper *bound)
{
	PaperDueHere *row = TAKE(w->arena, PaperDueHere, 1);
	row->bound = bound;
	return add_case(w, KIND_paper, w->at, row);
}

static void papers_are_due_from_their_stage_on(void **state)
{
	World *w = *state;
	PaperDue row = { .kind = TEXT_IS("invoices"), .stage = { GOOD, "order", STAGE_order } };
	BoundPaper bound = { .row = &row };
	static const struct {
		const char *word;
		uint32_t stage;
		double due;
	} stages[] = { { "bid", STAGE_bid, 0 }, { "application", STAGE_application, 0 }, { "order", STAGE_order, 1 },
		{ "close-out", STAGE_close_out, 1 } };
	for (int i = 0; i < 4; i++) {
		w->submittal.stage = (Word){ GOOD, stages[i].word, stages[i].stage };
		assert_known(a_paper(w, &bound), "due", stages[i].due);
	}
	w->submittal.stage.given.said = SAID_NOTHING;
	assert_waits(w, a_paper(w, &bound), "due", "stage");
}

static void a_paper_may_have_conditions(void **state)
{
	World *w = *state;
	Test when = { .left = field_of(&Submittal_record, "criteria", VALUE_TEXT), .relation = RELATION_IS,
		.right = text_of("sample-2026") };
	PaperDue row = { .kind = TEXT_IS("invoices"), .stage = { GOOD, "bid", STAGE_bid } };
	BoundPaper bound = { .row = &row, .when = &when, .whens = 1 };
	w->submittal.stage = (Word){ GOOD, "order", STAGE_order };
	w->submittal.criteria = TEXT_IS("sample-2026");
	assert_known(a_paper(w, &bound), "due", 1);
	w->submittal.criteria = TEXT_IS("sample-2027");
	assert_known(a_paper(w, &bound), "due", 0);
}

static void papers_are_found_by_their_kind(void **state)
{
	World *w = *state;
	PaperDue row = { .kind = TEXT_IS("roof plan") };
	BoundPaper bound = { .row = &row };
	Document plan = { .kind = TEXT_IS("Roof Plan") }, other = { .kind = TEXT_IS("invoices") }, blank = { .given = GOOD };
	assert_known(a_paper(w, &bound), "found", 0);
	w->submittal.documents.of.given.said = SAID_NOTHING;
	assert_waits(w, a_paper(w, &bound), "found", "documents");
	w->submittal.documents.of.given.said = SAID_VALUE;
	add_case(w, KIND_document, w->at, &other);
	assert_known(a_paper(w, &bound), "found", 0);
	add_case(w, KIND_document, w->at, &blank);
	assert_waits(w, a_paper(w, &bound), "found", "kind");
	add_case(w, KIND_document, w->at, &plan);
	assert_known(a_paper(w, &bound), "found", 1);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		TEST(a_role_is_due_when_its_conditions_hold),
		TEST(parts_that_fill_a_role_are_counted),
		TEST(none_fills_a_role),
		TEST(what_may_fill_a_role_is_waited_for),
		TEST(a_list_that_may_fill_a_role_is_waited_for),
		TEST(penetrations_share_the_parts_of_their_area),
		TEST(a_role_of_the_whole_submittal),
		TEST(papers_are_due_from_their_stage_on),
		TEST(a_paper_may_have_conditions),
		TEST(papers_are_found_by_their_kind),
	};
	return cmocka_run_group_tests_name("compute: roles and papers", tests, NULL, NULL) != 0;
}
