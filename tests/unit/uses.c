/* SPDX-License-Identifier: MIT
 * Where every figure comes from: the uses of every fact of every example lead to fields, to cells of the criteria and registers,
 * or to rows of the reference tables and published figures, whose sources all stand in sources.csv.
 */
#include "../examples.h"

#include "facts.h"

static World world;

/* ---- leaves ---- */

typedef struct {
	int facts, known, fields, constants, of_reference, of_criteria;
} Leaves;

static bool is_source(const char *id, size_t length)
{
	static const char practice[] = "common practice, no published source";
	if (length == sizeof practice - 1 && memcmp(id, practice, length) == 0)
		return true;
	for (uint32_t i = 0; i < world.reference->sources.count; i++) {
		const char *known = world.reference->sources.row[i].id.text;
		if (strlen(known) == length && memcmp(known, id, length) == 0)
			return true;
	}
	return false;
}

/* Several ids are joined by semicolons. */
static void check_sources(const char *ids, const char *what)
{
	for (const char *at = ids; *at != '\0';) {
		size_t length = strcspn(at, ";");
		if (!is_source(at, length))
			fail_msg("%s: %.*s is not in sources.csv", what, (int)length, at);
		at += length;
		at += strspn(at, "; ");
	}
	assert_true(ids[0] != '\0');
}

static bool is_built_in(Arena *arena, const char *folder, const char *constant)
{
	size_t length = strcspn(constant, " ");
	return builtin_find(arena_printf(arena, "%s/%.*s", folder, (int)length, constant)) != NULL;
}

static void check_constant(Leaves *leaves, Arena *arena, const Use *use, const char *fact)
{
	const char *constant = use->what.constant;
	assert_non_null(constant);
	bool is_reference = is_built_in(arena, "reference", constant);
	bool is_criteria = is_built_in(arena, "sample-2026", constant) || is_built_in(arena, "register", constant);
	bool is_published = use->source != NULL && strncmp(use->source, "common practice", strlen("common practice")) != 0;
	if (!is_reference && !is_criteria && !is_published)
		fail_msg("%s uses %s, which is in no table and nowhere published", fact, constant);
	if (is_reference && use->source == NULL)
		fail_msg("%s uses %s without a source", fact, constant);
	if (use->source != NULL)
		check_sources(use->source, constant);
	leaves->of_reference += is_reference;
	leaves->of_criteria += is_criteria;
	leaves->constants++;
}

static void check_use(Leaves *leaves, const Cases *all, const Use *use, const char *fact)
{
	switch ((UseKind)use->kind) {
	case USED_FACT:
		assert_non_null(use->at);
		assert_true(has_fact(use->at, use->what.fact)); /* which is visited itself */
		break;
	case USED_FIELD:
	case USED_THROUGH:
		assert_non_null(use->at);
		assert_non_null(use->what.field);
		assert_non_null(use->given);
		leaves->fields++;
		break;
	case USED_CONSTANT:
		check_constant(leaves, all->arena, use, fact);
		break;
	}
}

static void check_fact(Leaves *leaves, Cases *all, Case *at, FactId id)
{
	const Fact *fact = fact_of(at, id);
	const char *name = fact_spec(id)->name;
	for (uint32_t u = fact->first_use; u != 0; u = all->use[u - 1].next)
		check_use(leaves, all, &all->use[u - 1], name);
	if (fact->state == FACT_KNOWN && fact->first_use == 0)
		fail_msg("%s of %s is known out of nothing: fetch_shown records what it went by", name, at->name);
	check_sources(fact_spec(id)->source, name);
	leaves->facts++;
	leaves->known += fact->state == FACT_KNOWN;
}

static void check_leaves(Leaves *leaves, Cases *all)
{
	for (int kind = 0; kind < RECORD_KINDS; kind++)
		for (uint32_t i = 0; i < all->of[kind].count; i++)
			for (FactId id = 0; id < FACT_COUNT; id++)
				if (has_fact(all->of[kind].at[i], id))
					check_fact(leaves, all, all->of[kind].at[i], id);
}

static void every_leaf_is_a_field_or_a_cell_with_its_source(void **state)
{
	(void)state;
	Leaves leaves = { 0 };
	Examples all;
	examples_open(&all);
	for (const char *path = examples_next(&all); path != NULL; path = examples_next(&all)) {
		Arena *arena = arena_make();
		const Source *source;
		Node *root = example_nodes(arena, path, &source);
		check_leaves(&leaves, review_nodes(&world, arena, root, source)->cases);
		arena_free(arena);
	}
	print_message("%d facts, %d known; %d fields, %d constants: %d of reference tables, %d of criteria and registers\n", leaves.facts,
		      leaves.known, leaves.fields, leaves.constants, leaves.of_reference, leaves.of_criteria);
	assert_true(leaves.known > 5000 && leaves.fields > 5000 && leaves.of_reference > 500 && leaves.of_criteria > 500);
}

static int start(void **state)
{
	(void)state;
	world = world_make();
	return 0;
}

static int stop(void **state)
{
	(void)state;
	arena_free(world.run);
	return 0;
}

int main(void)
{
	const struct CMUnitTest tests[] = { cmocka_unit_test(every_leaf_is_a_field_or_a_cell_with_its_source) };
	return cmocka_run_group_tests_name("uses", tests, start, stop) != 0;
}
