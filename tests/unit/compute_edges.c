/* SPDX-License-Identifier: MIT
 * Where on the roof: the width of edge zones against the letter's, edges told from the field, uplift where something stands, and
 * pull tests against the load of a clip. Expected values are worked out by hand in the comments.
 */
#include "../wind_roof.h"

static int set_up(void **state)
{
	World *world = malloc(sizeof *world);
	*world = world_make();
	*state = world;
	return 0;
}

static int tear_down(void **state)
{
	arena_free(((World *)*state)->run);
	free(*state);
	return 0;
}

static const WindRoof low = { "ASCE 7-16", "gable", "enclosed", "C", 1, 24, 200, 120, 115, 0, 600 };

typedef struct {
	const char *path, *value;
} Turn;

static Cases *changed(const World *world, Arena *arena, const WindRoof *roof, const Turn *change, size_t count)
{
	const Source *source;
	Node *root = wind_nodes(arena, roof, &source);
	for (size_t i = 0; i < count; i++)
		assert_true(edit_nodes(arena, root, change[i].path, change[i].value));
	return wind_resolve(world, arena, root, source);
}

static const Fact *ask_first(const Cases *all, RecordKind kind, const char *name)
{
	int id = fact_find(kind, name, strlen(name));
	assert_true(id >= 0);
	return fact_of(all->of[kind].at[0], (FactId)id);
}

static void assert_is(const Cases *all, RecordKind kind, const char *name, double value)
{
	const Fact *fact = ask_first(all, kind, name);
	if (fact->state != FACT_KNOWN)
		fail_msg("%s is in state %d: %s", name, fact->state, fact->reason != NULL ? fact->reason : "");
	assert_close(fact->value, value, 1e-9);
}

/* 0.6 of 24 ft; a = min(0.1 x 120, 0.4 x 24) = 9.6 ft; above 60 ft a = 0.1 x 120 = 12 ft. */
static void edge_zones_are_as_wide_as_their_figure_says(void **state)
{
	static const struct {
		const char *standard;
		double slope, height, width;
	} roofs[] = { { "ASCE 7-16", 1, 24, 14.4 }, { "ASCE 7-22", 1, 24, 14.4 }, { "ASCE 7-10", 1, 24, 9.6 }, { "ASCE 7-16", 4, 24, 9.6 },
		{ "ASCE 7-16", 1, 80, 12 } };
	for (size_t i = 0; i < sizeof roofs / sizeof *roofs; i++) {
		Arena *arena = arena_make();
		WindRoof roof = low;
		roof.standard = roofs[i].standard;
		roof.slope_in_12 = roofs[i].slope;
		roof.height = roofs[i].height;
		Turn none[] = { { "engineering.0.zone_width", "14.4 ft" } };
		assert_is(changed(*state, arena, &roof, none, 1), KIND_roof_area, "edge_width", roofs[i].width);
		arena_free(arena);
	}
}

/* 14.4 over 12 is 20 % more; a zone drawn wider falls short by nothing. */
static void the_letter_falls_short_of_the_computed_width(void **state)
{
	static const struct {
		const char *drawn;
		double shortfall;
	} letters[] = { { "12 ft", 20 }, { "14.4 ft", 0 }, { "16 ft", 0 }, { "9.6 ft", 50 } };
	for (size_t i = 0; i < sizeof letters / sizeof *letters; i++) {
		Arena *arena = arena_make();
		Turn change[] = { { "engineering.0.zone_width", letters[i].drawn } };
		const Cases *all = changed(*state, arena, &low, change, 1);
		assert_is(all, KIND_letter, "width_shortfall", letters[i].shortfall);
		assert_string_equal(ask_first(all, KIND_letter, "width_shortfall")->note, "14.4 ft on Main roof");
		assert_is(all, KIND_letter, "areas_height", 24);
		arena_free(arena);
	}
}

static void edges_are_told_from_the_field(void **state)
{
	Arena *arena = arena_make();
	Turn change[] = { { "engineering.0.zone_width", "14.4 ft" } };
	const Cases *all = changed(*state, arena, &low, change, 1);
	int id = fact_find(KIND_zone, "is_edge", strlen("is_edge"));
	static const double expected[] = { 0, 0, 1, 1 }; /* 1', 1, 2, 3 */
	assert_int_equal(all->of[KIND_zone].count, 4);
	for (size_t i = 0; i < 4; i++)
		assert_close(fact_of(all->of[KIND_zone].at[i], (FactId)id)->value, expected[i], 0);
	arena_free(arena);
}

/* The letter's pressures lie far above the computed ones, so that they are what has to be held. */
static const Turn of_letter = { "engineering.0.pressures", "{interior: 80 psf, field: 90 psf, perimeter: 120 psf, corner: 150 psf}" };

static void what_stands_on_the_roof_is_pulled_where_it_stands(void **state)
{
	static const struct {
		const char *zone;
		double uplift;
	} places[] = { { "field", 90 }, { "corner", 150 }, { "2", 120 }, { "Perimeter", 120 }, { "-", 150 } };
	for (size_t i = 0; i < sizeof places / sizeof *places; i++) {
		Arena *arena = arena_make();
		Turn change[] = { of_letter, { "roof_areas.0.accessories.0.in_zone", places[i].zone } };
		assert_is(changed(*state, arena, &low, change, 2), KIND_accessory, "zone_uplift", places[i].uplift);
		arena_free(arena);
	}
	Arena *arena = arena_make();
	Turn change[] = { of_letter, { "roof_areas.0.accessories.0.in_zone", "attic" } };
	const Fact *fact = ask_first(changed(*state, arena, &low, change, 2), KIND_accessory, "zone_uplift");
	assert_int_equal(fact->state, FACT_REFUSED);
	arena_free(arena);
}

/* Interior: 80 psf x 16 in x 24 in / 144 = 213.33 lb a clip; times 3 over two screws of 400 lb is 0.8. */
static void pull_tests_carry_a_clip_with_their_factor(void **state)
{
	Arena *arena = arena_make();
	Turn change[] = { of_letter, { "roof_areas.0.support.pull_tests", "10" }, { "roof_areas.0.support.pull_lowest", "400 lb" } };
	assert_is(changed(*state, arena, &low, change, 3), KIND_zone, "pull_ratio", 0.8);
	arena_free(arena);
}

/* The least of two letters that name the area; a letter that does not say waits. */
static void the_least_of_the_letters_counts(void **state)
{
	Arena *arena = arena_make();
	Turn change[] = { { "engineering.0.fastener_factor", "2.5" }, { "engineering.0.prying", "no" } };
	const Cases *all = changed(*state, arena, &low, change, 2);
	assert_is(all, KIND_roof_area, "letter_fastener_factor", 2.5);
	assert_is(all, KIND_roof_area, "letter_prying", 0);
	assert_is(all, KIND_roof_area, "letter_concentrated_load", 300);
	arena_free(arena);
	arena = arena_make();
	Turn unsaid[] = { { "engineering.0.fastener_factor", "-" } };
	assert_int_equal(ask_first(changed(*state, arena, &low, unsaid, 1), KIND_roof_area, "letter_fastener_factor")->state, FACT_WAITING);
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(edge_zones_are_as_wide_as_their_figure_says),
		cmocka_unit_test(the_letter_falls_short_of_the_computed_width),
		cmocka_unit_test(edges_are_told_from_the_field),
		cmocka_unit_test(what_stands_on_the_roof_is_pulled_where_it_stands),
		cmocka_unit_test(pull_tests_carry_a_clip_with_their_factor),
		cmocka_unit_test(the_least_of_the_letters_counts),
	};
	return cmocka_run_group_tests_name("compute: edges", tests, set_up, tear_down);
}
