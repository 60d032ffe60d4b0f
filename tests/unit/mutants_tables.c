/* SPDX-License-Identifier: MIT
 * Whether the rule cases would notice a changed cell of the other tables of the edition: numbers moved, words exchanged, an entry
 * or an item gone, conditions of required parts and papers dropped. What none notices stands in tests/mutants/tables.csv, or is
 * counted against the floor of its table, which may only sink.
 *
 * MUTANTS=TABLE tries one table only.
 */
#include "../mutate_cells.h"

/* How many changes of a table nobody notices yet. */
static const struct {
	const char *table;
	uint32_t most;
} floors[] = {
	{ "lists.csv", 43 },
	{ "lives.csv", 434 },
	{ "terms.csv", 1 },
	{ "documents.csv", 44 },
	{ "listing_terms.csv", 153 },
};

/* Against the floor of the table that has been tried. */
static void end_table(Tables *t)
{
	uint32_t most = 0, now = t->m->unknown - t->unknown;
	for (size_t i = 0; t->table != NULL && i < sizeof floors / sizeof *floors; i++)
		if (strcmp(floors[i].table, t->table) == 0)
			most = floors[i].most;
	if (t->table == NULL || !is_next(t) || now == most)
		return;
	print_error("%s: %u changes that no case notices, and the floor is %u\n", t->table, now, most);
	t->too_many++;
}

static void take_table(Tables *t, const char *table)
{
	end_table(t);
	t->unknown = t->m->unknown;
	t->table = table;
	t->codes = "";
	t->item = NULL;
	for (size_t i = 0; i < sizeof asked_by / sizeof *asked_by; i++)
		if (strcmp(asked_by[i].table, table) == 0)
			t->codes = asked_by[i].codes;
}

static bool asks_list(const Test *test, const char *list)
{
	return test->right.from == FROM_LIST && strcmp(test->right.word, list) == 0;
}

/* The rules that hold something against a list; none if only facts know it. */
static const char *codes_of_list(const Tables *t, const char *list)
{
	const char *codes = "";
	for (uint32_t i = 0; i < t->m->criteria->rules; i++) {
		const Rule *rule = &t->m->rule[i];
		bool asks = asks_list(&rule->is, list);
		for (uint32_t k = 0; k < rule->conditions; k++)
			asks = asks || asks_list(&rule->when[k], list);
		if (asks)
			codes = arena_printf(t->m->world.run, "%s%s ", codes, rule->code);
	}
	return codes;
}

#define ROW_IS(...) (t->row = arena_printf(t->m->world.run, __VA_ARGS__))

static void change_lists(Tables *t)
{
	const Criteria *c = t->m->criteria;
	take_table(t, "lists.csv");
	for (uint32_t i = 0; i < c->lists.count; i++) {
		const NamedWord *row = &c->lists.row[i];
		t->codes = codes_of_list(t, row->list.text);
		ROW_IS("%s, %s", row->list.text, row->entry.text);
		change_row(t, &NamedWord_record, row, " entry ");
	}
}

static void change_lives(Tables *t)
{
	const Criteria *c = t->m->criteria;
	take_table(t, "lives.csv");
	for (uint32_t i = 0; i < c->lives.count; i++) {
		const Life *row = &c->lives.row[i];
		const char *where = is_value(&row->where.given) ? row->where.text : NULL;
		const char *environment = is_value(&row->environment.given) ? row->environment.text : NULL;
		ROW_IS("%s%s%s%s%s", row->item.text, where != NULL ? ", " : "", where != NULL ? where : "",
		       environment != NULL ? ", " : "", environment != NULL ? environment : "");
		t->item = strstr(t->m->clean.source->bytes, row->item.text) == NULL ? row->item.text : NULL;
		change_row(t, &Life_record, row, " item where environment service_life ");
	}
}

static void change_plain(Tables *t)
{
	const Criteria *c = t->m->criteria;
	take_table(t, "scales.csv");
	for (uint32_t i = 0; i < c->scales.count; i++) {
		ROW_IS("%s", c->scales.row[i].word.text);
		change_row(t, &ScaleWord_record, &c->scales.row[i], " word rank scale ");
	}
	take_table(t, "terms.csv");
	for (uint32_t i = 0; i < c->terms.count; i++) {
		ROW_IS("%g yr", c->terms.row[i].term_yr.value);
		change_row(t, &Term_record, &c->terms.row[i], " term least_slope seam environment certificate inspections ");
	}
	take_table(t, "kinds.csv");
	for (uint32_t i = 0; i < c->kinds.count; i++) {
		ROW_IS("%s", c->kinds.row[i].kind.text);
		change_row(t, &KindRow_record, &c->kinds.row[i], " life_judged source_judged approval_judged renewable concealed ");
	}
	change_lists(t);
	change_lives(t);
}

static void change_bound(Tables *t)
{
	const Criteria *c = t->m->criteria;
	take_table(t, "substitutions.csv");
	for (uint32_t i = 0; i < c->substitutions_bound; i++) {
		BoundSubstitution *bound = (void *)(uintptr_t)&c->substitution[i];
		ROW_IS("%s %s", bound->row->kind.text, bound->row->attribute.text);
		change_row(t, &Substitution_record, bound->row, " may_go tolerance ");
		change_tests(t, "needs", &bound->need, &bound->needs);
	}
	take_table(t, "required.csv");
	for (uint32_t i = 0; i < c->roles; i++) {
		BoundRole *bound = (void *)(uintptr_t)&c->role[i];
		ROW_IS("%s", bound->row->role.text);
		change_row(t, &RequiredRole_record, bound->row, " least_count ");
		change_tests(t, "when", &bound->when, &bound->whens);
		change_tests(t, "filled by", &bound->filled_by, &bound->fills);
	}
	take_table(t, "documents.csv");
	for (uint32_t i = 0; i < c->papers; i++) {
		BoundPaper *bound = (void *)(uintptr_t)&c->paper[i];
		ROW_IS("%s", bound->row->kind.text);
		change_row(t, &PaperDue_record, bound->row, " kind stage ");
		change_tests(t, "when", &bound->when, &bound->whens);
	}
}

/* ---- words of listings ---- */

static void change_term_numbers(Tables *t, BoundTerm *bound)
{
	const double *whole = bound->number;
	double changed[8];
	assert_true(bound->count <= 8);
	for (uint32_t i = 0; whole != NULL && i < 2 * bound->count; i++) {
		uint32_t at = i / 2;
		memcpy(changed, whole, bound->count * sizeof *changed);
		changed[at] *= i % 2 == 0 ? 0.98 : 1.02;
		const char *change = arena_printf(t->m->world.run, "%s: value %.6g", t->row, changed[at]);
		if (!is_next(t))
			continue;
		bound->number = changed;
		try_change(t, change);
		bound->number = whole;
	}
}

static void change_term_words(Tables *t, BoundTerm *bound)
{
	const char *const *whole = bound->word;
	const char *changed[8];
	assert_true(bound->count <= 8);
	for (uint32_t i = 0; whole != NULL && i < bound->count; i++) {
		memcpy(changed, whole, bound->count * sizeof *changed);
		changed[i] = "gone";
		if (!is_next(t))
			continue;
		bound->word = changed;
		try_change(t, arena_printf(t->m->world.run, "%s: %s gone", t->row, whole[i]));
		bound->word = whole;
	}
}

static void change_terms(Tables *t)
{
	const Criteria *c = t->m->criteria;
	take_table(t, "listing_terms.csv");
	for (uint32_t i = 0; i < c->terms_bound; i++) {
		BoundTerm *bound = (void *)(uintptr_t)&c->term[i];
		const char *listing = bound->row->listing.text;
		ROW_IS("%s %s", listing, bound->row->attribute.text);
		t->item = strstr(t->m->clean.source->bytes, listing) == NULL ? listing : NULL;
		change_row(t, &ListingTerm_record, bound->row, " relation ");
		change_term_numbers(t, bound);
		change_term_words(t, bound);
	}
}

/* ---- the tests ---- */

static int make(void **state)
{
	Mutation *m = mutation_make("tests/mutants/tables.csv");
	Tables *t = TAKE(m->world.run, Tables, 1);
	*t = (Tables){ .m = m, .codes = "", .only = getenv("MUTANTS"), .order = TAKE(m->world.run, uint32_t, m->cases.count) };
	for (uint32_t i = 0; i < m->cases.count; i++)
		t->order[i] = i;
	*state = t;
	return 0;
}

static int unmake(void **state)
{
	mutation_free(((Tables *)*state)->m);
	return 0;
}

static void cases_hold_when_resolved_again(void **state)
{
	assert_false(goes_red(*state));
}

static void a_changed_cell_is_noticed(void **state)
{
	Tables *t = *state;
	change_plain(t);
	change_bound(t);
	change_terms(t);
	end_table(t);
	print_message("%u changes, %u unnoticed, %u of them not in the list\n", t->m->tried, t->m->survived, t->m->unknown);
	assert_int_equal(t->too_many, 0);
	assert_true(t->only != NULL || knows_no_more(t->m));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(cases_hold_when_resolved_again),
		cmocka_unit_test(a_changed_cell_is_noticed),
	};
	return cmocka_run_group_tests_name("mutants_tables", tests, make, unmake) != 0;
}
