/* SPDX-License-Identifier: MIT
 * Blank cells of rules.csv: an edition that lacks one is refused.
 */
#include "../harness.h"

#include "read/edition.h"
#include "read/rules.h"

/* The rules bound once more with one row of their table changed; false: the edition is refused. */
static bool binds(const World *world, const RuleRow *row, uint32_t at)
{
	Arena *arena = arena_make();
	Complaints complaints = { .arena = arena };
	Loading loading = { arena, world->reference, &complaints };
	EditionRead *edition = TAKE(arena, EditionRead, 1);
	Criteria *criteria = TAKE(arena, Criteria, 1);
	RuleRow *rows = TAKE(arena, RuleRow, world->criteria->rule_rows.count);
	*criteria = *world->criteria;
	memcpy(rows, criteria->rule_rows.row, criteria->rule_rows.count * sizeof *rows);
	rows[at] = *row;
	criteria->rule_rows.row = rows;
	*edition = (EditionRead){ .loading = &loading, .criteria = criteria };
	edition->rows[TABLE_lists] = (Rows){ .record = &NamedWord_record, .count = criteria->lists.count, .whole = true,
		.row = (void *)(uintptr_t)criteria->lists.row };
	Lists lists = lists_index(edition);
	Binding base = { &loading, criteria, &lists, criteria->rule_rows.source, KIND_edition };
	rules_bind(&base, criteria, true);
	uint32_t faults = complaints.count;
	arena_free(arena);
	return faults == 0;
}

static bool is_missed(const World *world, const RuleRow *row, uint32_t at, const char *column)
{
	bool missed = binds(world, row, at);
	if (missed)
		print_error("%s: nobody misses %s\n", row->code.text, column);
	return missed;
}

/* Cells that need not be filled: a blank limit, and a blank second remedy where the first needs one, refuse the edition. What
 * else may be blank is dropped in mutants_rules. */
static void a_blank_cell_is_refused(void **state)
{
	const World *world = *state;
	uint32_t survived = 0;
	assert_true(binds(world, &world->criteria->rule_rows.row[0], 0));
	for (uint32_t i = 0; i < world->criteria->rule_rows.count; i++) {
		RuleRow row = world->criteria->rule_rows.row[i];
		if (is_value(&row.limit.given)) {
			row.limit = (Text){ { .place = row.limit.given.place }, NULL };
			survived += is_missed(world, &row, i, "limit");
		}
		row = world->criteria->rule_rows.row[i];
		if (is_value(&row.remedy_else.given)) {
			row.remedy_else = (Text){ { .place = row.remedy_else.given.place }, NULL };
			survived += is_missed(world, &row, i, "remedy else");
		}
	}
	assert_int_equal(survived, 0);
}

/* A table of one row, in which the cell of one column is blank; false: it is refused. */
static bool reads_without(const World *world, uint32_t blank)
{
	const Record *record = &RuleRow_record;
	Arena *arena = arena_make();
	Complaints complaints = { .arena = arena };
	Loading loading = { arena, world->reference, &complaints };
	const char *head = "", *row = "";
	for (uint32_t i = 0; i < record->count; i++) {
		const char *typed = given_in(&record->field[i], &world->criteria->rule_rows.row[0])->typed;
		head = arena_printf(arena, "%s%s%s", head, i > 0 ? "," : "", record->field[i].key);
		row = arena_printf(arena, "%s%s\"%s\"", row, i > 0 ? "," : "", i == blank || typed == NULL ? "" : typed);
	}
	const char *text = arena_printf(arena, "%s\n%s\n", head, row);
	Rows rows = { .record = record, .source = source_make(arena, "rules.csv", text, strlen(text), SOURCE_FIRST_SHARED) };
	read_table(&loading, &rows);
	uint32_t faults = complaints.count;
	arena_free(arena);
	return faults == 0;
}

static void a_blank_cell_of_a_due_column_is_refused(void **state)
{
	uint32_t due = 0;
	assert_true(reads_without(*state, RuleRow_record.count));
	for (uint32_t i = 0; i < RuleRow_record.count; i++)
		if (RuleRow_record.field[i].need == NEED_REQUIRED) {
			due++;
			assert_false(reads_without(*state, i));
		}
	assert_true(due >= 12);
}

static int make(void **state)
{
	static World world;
	world = world_make();
	*state = &world;
	return 0;
}

static int unmake(void **state)
{
	arena_free(((World *)*state)->run);
	return 0;
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_blank_cell_is_refused),
		cmocka_unit_test(a_blank_cell_of_a_due_column_is_refused),
	};
	return cmocka_run_group_tests_name("mutants_cells", tests, make, unmake) != 0;
}
