/* SPDX-License-Identifier: MIT
 * Remedies that only a varied copy can answer: what is offered is accepted when it is put in its place, what is not offered is
 * not.
 */
#include "../harness.h"

#include <stdlib.h>

typedef struct {
	World world;
	Arena *arena;
	Node *root;
	const Source *source;
} Bench;

static int set_up(void **state)
{
	Bench *bench = calloc(1, sizeof *bench);
	bench->world = world_make();
	bench->arena = arena_make();
	bench->root = builtin_nodes(bench->arena, "examples/clean.yaml", &bench->source);
	*state = bench;
	return 0;
}

static int tear_down(void **state)
{
	Bench *bench = *state;
	arena_free(bench->arena);
	arena_free(bench->world.run);
	free(bench);
	return 0;
}

static Verdict *review(Bench *bench)
{
	return review_nodes(&bench->world, bench->arena, bench->root, bench->source);
}

static const Finding *find(const Verdict *verdict, const char *code)
{
	for (uint32_t i = 0; i < verdict->items; i++)
		if (strcmp(verdict->item[i].code, code) == 0)
			return &verdict->item[i];
	return NULL;
}

static void edit(Bench *bench, const char *path, const char *value)
{
	assert_true(edit_nodes(bench->arena, bench->root, path, value));
}

/* Every item named in a remedy up to the closing words is tried in the place of the one refused. */
static void short_life_is_offered_what_lasts(void **state)
{
	Bench *bench = *state;
	edit(bench, "roof_areas.0.underlayments.0", "{item: underlay-short, supplied_by: roofing supplier, where: whole roof}");
	const Finding *item = find(review(bench), "UND-06");
	assert_non_null(item);
	assert_non_null(strstr(item->remedy, "underlay-high-temp"));
	assert_null(strstr(item->remedy, "underlay-short"));
	assert_null(strstr(item->remedy, "underlay-felt-30"));
	edit(bench, "roof_areas.0.underlayments.0",
	     "{item: underlay-high-temp, supplied_by: roofing supplier, where: whole roof}");
	assert_int_equal(review(bench)->items, 0);
}

static void wrong_screw_is_offered_one_that_fits(void **state)
{
	Bench *bench = *state;
	edit(bench, "roof_areas.0.fasteners.0", "{item: screw-10x1, supplied_by: panel maker, use: clip, per: 2}");
	const Finding *item = find(review(bench), "FST-01");
	assert_non_null(item);
	assert_non_null(strstr(item->remedy, "accepted here: screw-12x1"));
	assert_null(strstr(item->remedy, "wood-screw"));
	assert_null(strstr(item->remedy, "screw-10x1"));
}

static void unknown_listing_is_answered_by_one_that_fits(void **state)
{
	Bench *bench = *state;
	edit(bench, "roof_areas.0.tests.0.listing", "tested-999");
	const Finding *item = find(review(bench), "LST-01a");
	assert_non_null(item);
	assert_non_null(strstr(item->remedy, "nearest: tested-210 fits"));
}

static void what_nothing_cures_falls_back(void **state)
{
	Bench *bench = *state;
	edit(bench, "roof_areas.0.clips.0.item", "clip-b-float");
	const Finding *item = find(review(bench), "CLP-01a");
	assert_non_null(item);
	assert_non_null(strstr(item->remedy, "clip-a-float"));
	assert_null(strchr(item->remedy, '{'));
}

static void longest_term_is_one_the_parts_reach(void **state)
{
	Bench *bench = *state;
	edit(bench, "roof_areas.0.underlayments.0", "{item: underlay-short, supplied_by: roofing supplier, where: whole roof}");
	const Finding *item = find(review(bench), "UND-06");
	const char *words = "the longest term is ";
	const char *term = strstr(item->remedy, words);
	assert_non_null(term);
	assert_string_equal(term + strlen(words), "10 yr (the specification asks for 20 yr)");
	edit(bench, "warranty.term", "10 yr");
	edit(bench, "specification.warranty.term", "10 yr");
	assert_null(find(review(bench), "UND-06"));
}

static void remedies_leave_no_trace(void **state)
{
	Bench *bench = *state;
	edit(bench, "roof_areas.0.fasteners.0", "{item: screw-10x1, supplied_by: panel maker, use: clip, per: 2}");
	Verdict *first = review(bench), *second = review(bench);
	assert_int_equal(first->items, second->items);
	for (uint32_t i = 0; i < first->items; i++)
		assert_string_equal(first->item[i].remedy, second->item[i].remedy);
}

#define TEST(function) cmocka_unit_test_setup_teardown(function, set_up, tear_down)

int main(void)
{
	const struct CMUnitTest tests[] = {
		TEST(short_life_is_offered_what_lasts),
		TEST(wrong_screw_is_offered_one_that_fits),
		TEST(unknown_listing_is_answered_by_one_that_fits),
		TEST(what_nothing_cures_falls_back),
		TEST(longest_term_is_one_the_parts_reach),
		TEST(remedies_leave_no_trace),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
