/* SPDX-License-Identifier: MIT
 * Whether the rule cases would notice a changed cell of the other tables of the edition: numbers moved, words exchanged, an entry
 * or an item gone, conditions of required parts and papers dropped. What none notices stands in tests/mutants/tables.csv.
 *
 * A slice of the changes is tried, and those of the list are left out; MUTANTS=all tries all, MUTANTS=TABLE those of one table.
 */
#include "../mutate.h"

enum { SLICE = 12 };

typedef struct {
	Mutation *m;
	uint32_t *order; /* of the cases; one that noticed a change moves to the front */
	uint32_t changes;
	const char *only;
	const char *table;
	const char *row; /* the row in words */
	const char *codes; /* beginnings of the codes whose cases are to notice it, joined by blanks; empty: all */
	const char *item; /* in the words of a case that is to notice it; NULL: any */
} Tables;

/* Whose cases are to notice a change of a table: those of the rules that ask it. */
static const struct {
	const char *table, *codes;
} asked_by[] = {
	{ "scales.csv", "DOC-05 LST-0 CLP-0 FST-0" },
	{ "terms.csv", "ELG-06 WTY-14 DOC-14 LIF" },
	{ "kinds.csv", "LIF SUP LST-15 LST-17 UND-0 SLT-0 SLT-1 FST-1 PEN-13 PEN-19 PEN-20 DOC-17 RVC-06" },
	{ "lives.csv", "LIF FST-11 UND-06 SLT-10 PEN-13" },
	{ "substitutions.csv", "LST CLP FST DCK PNL" },
	{ "required.csv", "CLP-12 FST-16 UND-01 SLT-14 RVC-04 TRM-17" },
	{ "documents.csv", "DOC" },
};

/* ---- whether a case goes red ---- */

static bool holds(const Mutation *m, uint32_t at)
{
	const Played *p = &m->played[at], *before = at > 0 ? p - 1 : NULL;
	Arena *arena = arena_make();
	Verdict *met = NULL;
	if (is_case(p->of, "broken"))
		met = judge(arena, resolve_played(before, arena), &before->complaints, before->source);
	bool held = holds_case(p->of, judge(arena, resolve_played(p, arena), &p->complaints, p->source), met);
	arena_free(arena);
	return held;
}

static bool holds_clean(const Mutation *m)
{
	Arena *arena = arena_make();
	bool clean = is_clean(judge(arena, resolve_played(&m->clean, arena), &m->clean.complaints, m->clean.source));
	arena_free(arena);
	return clean;
}

static bool is_among_codes(const char *codes, const char *code)
{
	for (const char *at = codes; *at != '\0'; at += strspn(at, " ")) {
		size_t length = strcspn(at, " ");
		if (strncmp(at, code, length) == 0)
			return true;
		at += length;
	}
	return codes[0] == '\0';
}

/* An item that stands neither in the clean package nor in the words of a case decides nothing there. */
static bool is_to_notice(const Tables *t, const RuleCase *c)
{
	if (!is_among_codes(t->codes, c->code))
		return false;
	for (uint32_t i = 0; t->item != NULL && i < c->edits; i++)
		if (strstr(c->edit[i].value, t->item) != NULL)
			return true;
	return t->item == NULL;
}

static bool goes_red(Tables *t)
{
	if (!holds_clean(t->m))
		return true;
	for (uint32_t i = 0; i < t->m->cases.count; i++) {
		uint32_t at = t->order[i];
		if (!is_to_notice(t, &t->m->cases.at[at]) || holds(t->m, at))
			continue;
		memmove(t->order + 1, t->order, i * sizeof *t->order);
		t->order[0] = at;
		return true;
	}
	return false;
}

/* ---- one change ---- */

/* Whether the next change is to be tried. */
static bool is_next(Tables *t, const char *change)
{
	if (t->only != NULL)
		return strcmp(t->only, "all") == 0 || strcmp(t->only, t->table) == 0;
	return t->changes++ % SLICE == 0 && !is_known(t->m, t->table, change);
}

static void try_change(Tables *t, const char *change)
{
	t->m->tried++;
	if (!goes_red(t))
		survives(t->m, t->table, change);
}

static const char *change_words(const Tables *t, const Field *field, const char *now)
{
	return arena_printf(t->m->world.run, "%s: %s %s", t->row, field->key, now);
}

static void try_number(Tables *t, const Field *field, Number *number, double value)
{
	char now[32];
	double whole = number->value;
	snprintf(now, sizeof now, "%.6g", value);
	const char *change = change_words(t, field, now);
	if (!is_next(t, change))
		return;
	number->value = value;
	try_change(t, change);
	number->value = whole;
}

/* A count or year goes by one, all else by 2 per cent. */
static void change_number(Tables *t, const Field *field, Number *number)
{
	double step = field->unit == UNIT_one || field->unit == UNIT_yr ? 1 : number->value * 0.02;
	try_number(t, field, number, number->value - step);
	try_number(t, field, number, number->value + step);
}

static void try_text(Tables *t, const Field *field, const char **text, const char *value)
{
	const char *whole = *text, *change = change_words(t, field, value);
	if (!is_next(t, change))
		return;
	*text = value;
	try_change(t, change);
	*text = whole;
}

static void change_word(Tables *t, const Field *field, Word *word)
{
	for (int i = (int)word->word - 1; i <= (int)word->word + 1; i += 2) {
		size_t length = 0;
		const char *other = i >= 0 ? word_text(field->words, i, &length) : NULL;
		uint32_t whole = word->word;
		if (other == NULL)
			continue;
		word->word = (uint32_t)i;
		try_text(t, field, &word->text, arena_text(t->m->world.run, other, length));
		word->word = whole;
	}
}

static void change_yes(Tables *t, const Field *field, Yes *yes)
{
	const char *change = change_words(t, field, yes->yes ? "no" : "yes");
	if (!is_next(t, change))
		return;
	yes->yes = !yes->yes;
	try_change(t, change);
	yes->yes = !yes->yes;
}

/* Each part of "open country; town; city" left out in turn; a text of one part becomes another. */
static void change_parts(Tables *t, const Field *field, Text *text)
{
	const char *whole = text->text;
	if (strchr(whole, ';') == NULL) {
		try_text(t, field, &text->text, "gone");
		return;
	}
	for (const char *at = whole; *at != '\0';) {
		size_t length = strcspn(at, ";");
		const char *behind = at + length + (at[length] == ';') + (at[length] == ';' && at[length + 1] == ' ');
		const char *rest = arena_printf(t->m->world.run, "%.*s%s", (int)(at - whole), whole, behind);
		size_t kept = strlen(rest);
		while (kept > 0 && (rest[kept - 1] == ' ' || rest[kept - 1] == ';'))
			kept--;
		try_text(t, field, &text->text, arena_text(t->m->world.run, rest, kept));
		at = behind;
	}
}

/* ---- tests that were bound from a cell ---- */

static Relation contrary(Relation relation)
{
	static const Relation other[] = { [RELATION_IS] = RELATION_IS_NOT, [RELATION_IS_NOT] = RELATION_IS,
		[RELATION_AT_LEAST] = RELATION_LESS_THAN, [RELATION_AT_MOST] = RELATION_MORE_THAN,
		[RELATION_MORE_THAN] = RELATION_AT_MOST, [RELATION_LESS_THAN] = RELATION_AT_LEAST,
		[RELATION_BEFORE] = RELATION_AFTER, [RELATION_AFTER] = RELATION_BEFORE, [RELATION_IN] = RELATION_NOT_IN,
		[RELATION_NOT_IN] = RELATION_IN, [RELATION_INCLUDES] = RELATION_INCLUDES_NOT,
		[RELATION_INCLUDES_NOT] = RELATION_INCLUDES, [RELATION_GIVEN] = RELATION_NOT_GIVEN,
		[RELATION_NOT_GIVEN] = RELATION_GIVEN };
	return other[relation];
}

/* Each test turned, then left out. */
static void change_tests(Tables *t, const char *cell, const Test **tests, uint32_t *count)
{
	const Test *whole = *tests;
	uint32_t all = *count;
	Test changed[12];
	assert_true(all <= 12);
	for (uint32_t i = 0; i < 2 * all; i++) {
		uint32_t at = i / 2;
		bool turned = i % 2 == 0;
		const char *change = arena_printf(t->m->world.run, "%s: %s: %s %s", t->row, cell, whole[at].left.word,
						  turned ? relation_words(contrary(whole[at].relation)) : "not asked");
		if (!is_next(t, change))
			continue;
		memcpy(changed, whole, all * sizeof *changed);
		if (turned)
			changed[at].relation = contrary(changed[at].relation);
		else
			memmove(changed + at, changed + at + 1, (all - at - 1) * sizeof *changed);
		*tests = changed;
		*count = turned ? all : all - 1;
		try_change(t, change);
		*tests = whole;
		*count = all;
	}
}

/* ---- tables ---- */

/* The cells of a row by its fields; `keys`: those that may be changed, with blanks around. */
static void change_row(Tables *t, const Record *record, const void *const_row, const char *keys)
{
	void *row = (void *)(uintptr_t)const_row;
	for (uint32_t i = 0; i < record->count; i++) {
		const Field *field = &record->field[i];
		Given *given = given_at(field, row);
		if (strstr(keys, arena_printf(t->m->world.run, " %s ", field->key)) == NULL || !is_value(given))
			continue;
		if (field->kind == IS_NUMBER)
			change_number(t, field, (Number *)(void *)given);
		else if (field->kind == IS_WORD)
			change_word(t, field, (Word *)(void *)given);
		else if (field->kind == IS_YES)
			change_yes(t, field, (Yes *)(void *)given);
		else if (field->kind == IS_TEXT)
			change_parts(t, field, (Text *)(void *)given);
	}
}

static void take_table(Tables *t, const char *table)
{
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
	bool all = t->only != NULL && strcmp(t->only, "all") == 0;
	change_plain(t);
	change_bound(t);
	print_message("%u changes, %u unnoticed, %u of them not in the list\n", t->m->tried, t->m->survived, t->m->unknown);
	assert_int_equal(t->m->unknown, 0);
	assert_true(!all || knows_no_more(t->m));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(cases_hold_when_resolved_again),
		cmocka_unit_test(a_changed_cell_is_noticed),
	};
	return cmocka_run_group_tests_name("mutants_tables", tests, make, unmake) != 0;
}
