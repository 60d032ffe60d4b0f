/* SPDX-License-Identifier: MIT
 * Wind uplift through the pipeline: the clean example, letters and places, roofs without a figure, and what must hold of any roof.
 */
#include "../wind_roof.h"

#include <stdlib.h>

static World world;

static int setup(void **state)
{
	*state = arena_make();
	return 0;
}

static int teardown(void **state)
{
	arena_free(*state);
	return 0;
}

#define TEST(f) cmocka_unit_test_setup_teardown(f, setup, teardown)

/* The clean example after edits: pairs of path and value; a NULL path ends them. */
typedef struct {
	const char *path, *value;
} Edit;

static Cases *edited(Arena *arena, const Edit *edit)
{
	const Source *source;
	Node *root = builtin_nodes(arena, "examples/clean.yaml", &source);
	for (; edit->path != NULL; edit++)
		assert_true(edit_nodes(arena, root, edit->path, edit->value));
	return wind_resolve(&world, arena, root, source);
}

static const Edit nothing[] = { { NULL, NULL } };

/* ---- the clean example: traps of a letter that fits nothing are measured against these ---- */

static void the_letter_of_the_clean_example_is_what_is_computed(void **state)
{
	static const struct {
		const char *zone, *places;
		double coefficient, strength, asd, spacing;
	} expected[] = { { "1'", "interior", 0.9, 28.5, 17.1, 24 }, { "1", "field", 1.7, 49.6, 29.8, 24 },
		{ "2", "perimeter", 2.3, 65.4, 39.3, 18 }, { "3", "corner", 3.2, 89.2, 53.5, 12 } };
	Cases *all = edited(*state, nothing);
	assert_int_equal(all->of[KIND_zone].count, 4);
	for (int i = 0; i < 4; i++) {
		Case *zone = zone_named(all, expected[i].zone);
		const Zone *row = zone->row;
		assert_ptr_equal(zone, all->of[KIND_zone].at[i]);
		assert_string_equal(row->figure.text, "30.3-2A");
		assert_string_equal(row->places.text, expected[i].places);
		assert_int_equal(row->places_not_named.given.said, SAID_NOTHING);
		assert_close(row->spacing_in.value, expected[i].spacing, 0);
		assert_close(wind_value(zone, "effective_area"), 16 * expected[i].spacing / 144, 1e-12);
		assert_close(wind_value(zone, "pressure_coefficient"), expected[i].coefficient, 1e-12);
		assert_close(wind_value(zone, "internal_coefficient"), 0.18, 0);
		assert_true(fabs(wind_value(zone, "strength_uplift") - expected[i].strength) < 0.05);
		assert_true(fabs(wind_value(zone, "asd_uplift") - expected[i].asd) < 0.05);
		assert_close(wind_value(zone, "letter_uplift"), expected[i].asd, 1e-12);
		assert_close(wind_value(zone, "demand"), fmax(expected[i].asd, wind_value(zone, "asd_uplift")), 0);
	}
}

static void the_roof_of_the_clean_example(void **state)
{
	Case *area = edited(*state, nothing)->of[KIND_roof_area].at[0];
	assert_close(wind_value(area, "slope_angle"), 4.76364, 1e-6);
	assert_close(wind_value(area, "design_height"), 24, 0);
	assert_close(wind_value(area, "exposure_coefficient"), 0.937176, 1e-6);
	assert_close(wind_value(area, "topographic_factor"), 1, 0);
	assert_close(wind_value(area, "elevation_factor"), 0.978514, 1e-6);
	assert_close(wind_value(area, "directionality_factor"), 0.85, 0);
	assert_close(wind_value(area, "zone_width"), 9.6, 1e-12);
	/* 0.00256 * 0.937176 * 0.85 * 0.978514 * 13225 */
	assert_close(wind_value(area, "velocity_pressure"), 26.390, 1e-4);
}

static void zones_cover_the_roof(void **state)
{
	Cases *all = edited(*state, nothing);
	double sum = 0;
	for (uint32_t i = 0; i < all->of[KIND_zone].count; i++)
		sum += wind_value(all->of[KIND_zone].at[i], "plan_area");
	assert_close(sum, 200 * 120, 1e-12);
	/* L corners of 14.4 by 4.8 ft: twice 14.4 * 4.8, less 4.8 squared */
	assert_close(wind_value(zone_named(all, "3"), "plan_area"), 4 * 115.2, 1e-9);
}

/* ---- what varies with edition, height and parapet ---- */

static void the_directionality_factor_counts_once(void **state)
{
	static const Edit later[] = { { "wind.standard", "ASCE 7-22" }, { NULL, NULL } };
	Cases *all = edited(*state, later);
	Case *zone = zone_named(all, "1");
	double velocity = wind_value(zone->up, "velocity_pressure");
	assert_close(wind_value(zone, "strength_uplift"), velocity * 0.85 * (1.7 + 0.18), 1e-12);
	assert_non_null(strstr(wind_fact(zone, "strength_uplift")->formula, "{directionality_factor}"));
}

static void the_floor_of_exposure_b_is_a_switch_but_in_the_oldest_edition(void **state)
{
	static const Edit b16[] = { { "wind.exposure", "B" }, { NULL, NULL } };
	static const Edit b10[] = { { "wind.exposure", "B" }, { "wind.standard", "ASCE 7-10" }, { NULL, NULL } };
	Yes *on = &((Criteria *)(uintptr_t)world.criteria)->edition.exposure_b_floor;
	double at_24 = 2.01 * pow(24 / 1200.0, 2 / 7.0), at_30 = 2.01 * pow(30 / 1200.0, 2 / 7.0);
	assert_close(wind_value(edited(*state, b16)->of[KIND_roof_area].at[0], "exposure_coefficient"), at_24, 1e-12);
	assert_close(wind_value(edited(*state, b10)->of[KIND_roof_area].at[0], "exposure_coefficient"), at_30, 1e-12);
	on->yes = true;
	assert_close(wind_value(edited(*state, b16)->of[KIND_roof_area].at[0], "exposure_coefficient"), at_30, 1e-12);
	on->yes = false;
}

static void steep_roofs_take_the_mean_height(void **state)
{
	static const Edit steep[] = { { "building.slope", "4:12" }, { NULL, NULL } };
	static const Edit unknown[] = { { "building.slope", "4:12" }, { "building.mean_roof_height", "-" }, { NULL, NULL } };
	assert_close(wind_value(edited(*state, steep)->of[KIND_roof_area].at[0], "design_height"), 26.5, 0);
	const Fact *fact = wind_fact(edited(*state, unknown)->of[KIND_roof_area].at[0], "velocity_pressure");
	assert_int_equal(fact->state, FACT_WAITING);
}

static void a_parapet_spares_the_corners_of_flat_figures_only(void **state)
{
	static const Edit low[] = { { "building.parapet_height", "2.9 ft" }, { NULL, NULL } };
	static const Edit high[] = { { "building.parapet_height", "3 ft" }, { NULL, NULL } };
	static const Edit steep[] = { { "building.parapet_height", "3 ft" }, { "building.slope", "4:12" },
		{ "wind.standard", "ASCE 7-22" }, { NULL, NULL } };
	assert_close(wind_value(zone_named(edited(*state, low), "3"), "pressure_coefficient"), 3.2, 1e-12);
	assert_close(wind_value(zone_named(edited(*state, high), "3"), "pressure_coefficient"), 2.3, 1e-12);
	assert_close(wind_value(zone_named(edited(*state, steep), "3"), "pressure_coefficient"), 3.6, 1e-12);
}

static void above_60_ft_another_figure_holds(void **state)
{
	static const Edit at[] = { { "building.eave_height", "60 ft" }, { NULL, NULL } };
	static const Edit above[] = { { "building.eave_height", "60.1 ft" }, { NULL, NULL } };
	assert_string_equal(((const Zone *)zone_named(edited(*state, at), "3")->row)->figure.text, "30.3-2A");
	Case *zone = zone_named(edited(*state, above), "3");
	assert_string_equal(((const Zone *)zone->row)->figure.text, "30.5-1");
	assert_close(wind_value(zone->up, "zone_width"), 12, 1e-12);
	assert_close(wind_value(zone, "plan_area"), 4 * 24 * 24, 1e-9);
}

/* Below 90 ft and no higher than the least width, 120 ft or here 80: figure 30.3-2A has L corners, legs of 45 ft by 15 at 75 ft. */
static void between_60_and_90_ft_either_figure_may_be_taken(void **state)
{
	static const struct {
		Edit edit[5];
		const char *figure;
		double taken; /* -1: not asked */
		const char *note;
	} rows[] = {
		{ { { "building.eave_height", "75 ft" } }, "30.5-1", 0,
			"those of higher buildings are taken; the others are permitted as well" },
		{ { { "building.eave_height", "75 ft" }, { "wind.low_rise_figures", "no" } }, "30.5-1", 0,
			"those of higher buildings are taken; the others are permitted as well" },
		{ { { "building.eave_height", "75 ft" }, { "wind.low_rise_figures", "yes" } }, "30.3-2A", 1,
			"chosen and permitted; those of higher buildings are permitted as well" },
		{ { { "building.eave_height", "89.9 ft" }, { "wind.low_rise_figures", "yes" } }, "30.3-2A", 1,
			"chosen and permitted; those of higher buildings are permitted as well" },
		{ { { "building.eave_height", "90 ft" }, { "wind.low_rise_figures", "yes" } }, "30.5-1", 0,
			"those of low buildings are not permitted here" },
		{ { { "building.eave_height", "80 ft" }, { "building.width", "80 ft" }, { "wind.low_rise_figures", "yes" } }, "30.3-2A", 1,
			"chosen and permitted; those of higher buildings are permitted as well" },
		{ { { "building.eave_height", "81 ft" }, { "building.width", "80 ft" }, { "wind.low_rise_figures", "yes" } }, "30.5-1", 0,
			"those of low buildings are not permitted here" },
		{ { { "building.eave_height", "60 ft" }, { "wind.low_rise_figures", "yes" } }, "30.3-2A", -1, NULL },
	};
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		Case *zone = zone_named(edited(*state, rows[i].edit), "3");
		const Fact *taken = wind_fact(zone->up, "low_rise_taken");
		assert_string_equal(((const Zone *)zone->row)->figure.text, rows[i].figure);
		assert_int_equal(taken->state, rows[i].taken < 0 ? FACT_NOT_APPLICABLE : FACT_KNOWN);
		assert_true(taken->value == fmax(0, rows[i].taken));
		if (rows[i].note != NULL)
			assert_string_equal(taken->note, rows[i].note);
	}
	assert_close(wind_value(zone_named(edited(*state, rows[2].edit), "3"), "plan_area"), 4 * (2 * 45 * 15 - 15 * 15), 1e-9);
}

/* ASCE 7-10 draws strips of `a`: 12 ft of the width of 120 ft. At 15 degrees the figures do not change with the height. */
static void the_choice_in_other_editions_and_on_steep_roofs(void **state)
{
	static const Edit old[] = { { "building.eave_height", "75 ft" }, { "wind.low_rise_figures", "yes" },
		{ "wind.standard", "ASCE 7-10" }, { NULL, NULL } };
	static const Edit steep[] = { { "building.eave_height", "75 ft" }, { "building.mean_roof_height", "80 ft" },
		{ "building.slope", "15 deg" }, { NULL, NULL } };
	static const Edit unknown[] = { { "building.eave_height", "75 ft" }, { "wind.low_rise_figures", "unknown" }, { NULL, NULL } };
	Case *zone = zone_named(edited(*state, old), "3");
	assert_string_equal(((const Zone *)zone->row)->figure.text, "30.4-2A");
	assert_close(wind_value(zone, "pressure_coefficient"), 2.8, 1e-12);
	assert_close(wind_value(zone, "plan_area"), 4 * 12 * 12, 1e-9);
	assert_int_equal(wind_fact(edited(*state, steep)->of[KIND_roof_area].at[0], "low_rise_taken")->state, FACT_NOT_APPLICABLE);
	assert_int_equal(wind_fact(zone_named(edited(*state, unknown), "3"), "pressure_coefficient")->state, FACT_WAITING);
}

static void ground_is_level_stated_or_worked_out(void **state)
{
	static const Edit hill[] = { { "wind.topography", "{terrain: ridge, height: 80 ft, half_length: 160 ft, distance: 50 ft}" },
		{ "building.eave_height", "30 ft" }, { NULL, NULL } };
	static const Edit thin[] = { { "wind.topography", "{terrain: ridge, height: 80 ft}" }, { NULL, NULL } };
	static const Edit both[] = { { "wind.topography", "{factor: 1.3, terrain: ridge, height: 80 ft}" }, { NULL, NULL } };
	assert_close(wind_value(edited(*state, hill)->of[KIND_roof_area].at[0], "topographic_factor"), 1.7610, 5e-5);
	Cases *all = edited(*state, thin);
	const Fact *fact = wind_fact(all->of[KIND_roof_area].at[0], "topographic_factor");
	assert_int_equal(fact->state, FACT_WAITING);
	assert_string_equal(fact_waits(all, fact, NULL)->what.field->key, "half_length");
	assert_close(wind_value(edited(*state, both)->of[KIND_roof_area].at[0], "topographic_factor"), 1.3, 0);
}

/* ---- places ---- */

static const char *spaced(Arena *arena, const char *standard, const char *slope, const char *spacing)
{
	Edit edit[] = { { "wind.standard", standard }, { "building.slope", slope }, { "roof_areas.0.clips.0.spacing", spacing },
		{ NULL, NULL } };
	Cases *all = edited(arena, edit);
	const char *words = "";
	for (uint32_t i = 0; i < all->of[KIND_zone].count; i++) {
		const Zone *zone = all->of[KIND_zone].at[i]->row;
		const char *missing = is_value(&zone->places_not_named.given) ? zone->places_not_named.text : NULL;
		words = arena_printf(arena, "%s%s%s %g%s%s%s", words, i > 0 ? ", " : "", zone->name.text, zone->spacing_in.value,
				     missing != NULL ? " (" : "", missing != NULL ? missing : "", missing != NULL ? ")" : "");
	}
	return words;
}

static void a_zone_takes_the_widest_of_its_places(void **state)
{
	Arena *a = *state;
	assert_string_equal(spaced(a, "ASCE 7-16", "1:12", "{field: 24 in, perimeter: 18 in, corner: 12 in}"),
			    "1' 24, 1 24, 2 18, 3 12");
	assert_string_equal(spaced(a, "ASCE 7-10", "1:12", "{field: 24 in, perimeter: 18 in, corner: 12 in}"), "1 24, 2 18, 3 12");
	assert_string_equal(spaced(a, "ASCE 7-16", "4:12", "{field: 24 in, perimeter: 18 in, corner: 12 in}"),
			    "1 24, 2e 18, 2n 18, 2r 24 (ridge), 3e 12, 3r 24 (ridge end)");
	assert_string_equal(spaced(a, "ASCE 7-16", "4:12", "{field: 24 in, perimeter: 18 in, corner: 12 in, "
			    "ridge: 16 in, ridge_end: 10 in}"),
			    "1 24, 2e 18, 2n 18, 2r 16, 3e 12, 3r 10");
	assert_string_equal(spaced(a, "ASCE 7-22", "4:12", "{field: 24 in, perimeter: 18 in, corner: 12 in}"),
			    "1 24, 2 24 (ridge), 3 24 (ridge end)");
	assert_string_equal(spaced(a, "ASCE 7-22", "4:12", "{field: 24 in, perimeter: 18 in, corner: 12 in, "
			    "ridge: 16 in, ridge end: 10 in}"),
			    "1 24, 2 18, 3 10");
	assert_string_equal(spaced(a, "ASCE 7-22", "8:12", "{field: 24 in, perimeter: 18 in, corner: 12 in}"), "1 24, 2 18, 3 12");
	assert_string_equal(spaced(a, "ASCE 7-10", "4:12", "{field: 24 in, perimeter: 18 in, corner: 12 in}"),
			    "1 24, 2 24 (ridge), 3 24 (ridge end)");
}

static void own_names_and_one_for_all_name_every_place(void **state)
{
	Arena *a = *state;
	assert_string_equal(spaced(a, "ASCE 7-16", "4:12", "{1: 24 in, 2e: 18 in, 2n: 17 in, Zone 2r: 16 in, 3e: 12 in, 3R: 10 in}"),
			    "1 24, 2e 18, 2n 17, 2r 16, 3e 12, 3r 10");
	assert_string_equal(spaced(a, "ASCE 7-16", "1:12", "20 in"), "1' 20, 1 20, 2 20, 3 20");
}

/* A word that is no place of the figure lies in the field, lest it be nowhere. */
static void a_spacing_in_other_words_is_not_lost(void **state)
{
	Arena *a = *state;
	assert_string_equal(spaced(a, "ASCE 7-10", "1:12", "{interior: 30 in, field: 24 in, perimeter: 18 in, corner: 12 in}"),
			    "1 30, 2 18, 3 12");
	assert_string_equal(spaced(a, "ASCE 7-10", "1:12", "{field: 24 in, north side: 30 in, corner: 12 in}"),
			    "1 30, 2 30 (perimeter), 3 12");
}

/* ---- letters ---- */

static void a_letter_at_strength_level_is_brought_down(void **state)
{
	static const Edit strength[] = { { "engineering.0.level", "strength" }, { NULL, NULL } };
	Case *zone = zone_named(edited(*state, strength), "2");
	assert_close(wind_value(zone, "letter_uplift"), 0.6 * 39.3, 1e-12);
	assert_close(wind_value(zone, "demand"), wind_value(zone, "asd_uplift"), 0);
}

static void the_letter_governs_where_it_is_greater(void **state)
{
	static const Edit more[] = { { "engineering.0.pressures.corner", "70 psf" }, { NULL, NULL } };
	static const Edit less[] = { { "engineering.0.pressures.corner", "40 psf" }, { NULL, NULL } };
	Case *zone = zone_named(edited(*state, more), "3");
	assert_close(wind_value(zone, "demand"), 70, 0);
	assert_string_equal(wind_fact(zone, "demand")->note, "the letter governs");
	zone = zone_named(edited(*state, less), "3");
	assert_close(wind_value(zone, "demand"), wind_value(zone, "asd_uplift"), 0);
	assert_string_equal(wind_fact(zone, "demand")->note, "the computed value governs");
}

static void a_letter_is_silent_of_places_it_does_not_name(void **state)
{
	static const Edit thin[] = { { "engineering.0.pressures", "{field: 30 psf, perimeter: 40 psf, corner: 55 psf}" }, { NULL, NULL } };
	static const Edit foreign[] = { { "engineering.0.pressures", "{A: 30 psf, B: 60 psf}" }, { NULL, NULL } };
	static const Edit other[] = { { "engineering.0.areas", "[Entrance roof]" }, { NULL, NULL } };
	Cases *all = edited(*state, thin);
	assert_int_equal(wind_fact(zone_named(all, "1'"), "letter_uplift")->state, FACT_NOT_APPLICABLE);
	assert_close(wind_value(zone_named(all, "1'"), "demand"), wind_value(zone_named(all, "1'"), "asd_uplift"), 0);
	assert_close(wind_value(zone_named(edited(*state, foreign), "1'"), "demand"), 60, 0);
	assert_int_equal(wind_fact(zone_named(edited(*state, other), "3"), "letter_uplift")->state, FACT_NOT_APPLICABLE);
}

static void the_greatest_of_two_letters_counts(void **state)
{
	const Source *source;
	Node *root = builtin_nodes(*state, "examples/clean.yaml", &source);
	assert_true(edit_nodes(*state, root, "engineering",
			       "[{letter: A, areas: [Main roof], level: ASD, pressures: {field: 25 psf, corner: 60 psf}}, "
			       "{letter: B, areas: [main roof], level: ASD, pressures: 45 psf}]"));
	Cases *all = wind_resolve(&world, *state, root, source);
	assert_close(wind_value(zone_named(all, "1"), "letter_uplift"), 45, 0);
	assert_close(wind_value(zone_named(all, "3"), "letter_uplift"), 60, 0);
}

static void demand_waits_for_a_letter_that_may_cover_the_roof(void **state)
{
	static const Edit unknown[] = { { "engineering.0.areas", "unknown" }, { NULL, NULL } };
	static const Edit no_level[] = { { "engineering.0.level", "-" }, { NULL, NULL } };
	assert_int_equal(wind_fact(zone_named(edited(*state, unknown), "3"), "demand")->state, FACT_WAITING);
	assert_int_equal(wind_fact(zone_named(edited(*state, no_level), "3"), "demand")->state, FACT_WAITING);
}

/* ---- roofs that no figure covers ---- */

static void the_letter_stands_alone_without_a_figure(void **state)
{
	static const Edit other[] = { { "building.shape", "other" }, { "roof_areas.0.clips.0.spacing", "{field: 24 in, corner: 12 in}" },
		{ "building.overhang", "0 ft" }, { NULL, NULL } };
	Cases *all = edited(*state, other);
	assert_int_equal(all->of[KIND_zone].count, 4);
	assert_close(wind_value(zone_named(all, "corner"), "demand"), 53.5, 0);
	assert_int_equal(wind_fact(zone_named(all, "corner"), "asd_uplift")->state, FACT_REFUSED);
	/* the letter names a perimeter, the clips do not */
	const Zone *zone = zone_named(all, "perimeter")->row;
	assert_close(zone->spacing_in.value, 24, 0);
	assert_string_equal(zone->places_not_named.text, "perimeter");
	assert_close(wind_value(zone_named(all, "perimeter"), "demand"), 39.3, 0);
}

static const char *refusal(Arena *arena, const char *path, const char *value)
{
	Edit edit[] = { { path, value }, { NULL, NULL } };
	const Fact *fact = wind_fact(zone_named(edited(arena, edit), "field"), "asd_uplift");
	assert_int_equal(fact->state, FACT_REFUSED);
	return fact->reason;
}

static void what_no_figure_covers_is_refused_with_the_reason(void **state)
{
	assert_string_equal(refusal(*state, "building.slope", "13:12"), "no figure covers this roof shape at this slope");
	assert_string_equal(refusal(*state, "building.shape", "other"), "no figure covers this roof shape");
	assert_string_equal(refusal(*state, "wind.standard", "ASCE 7-05"), "the figures of this load standard are not built in");
	assert_string_equal(refusal(*state, "building.enclosure", "open"), "the roof of an open building takes other figures");
}

/* ---- what must hold of any roof ---- */

static const char *const standards[] = { "ASCE 7-10", "ASCE 7-16", "ASCE 7-22" };

static double between_of(double low, double high)
{
	return low + (high - low) * (rand() % 10001) / 10000;
}

static WindRoof any_roof(void)
{
	static const char *const shapes[] = { "flat", "gable", "hip", "monoslope" },
		*const enclosures[] = { "enclosed", "partially enclosed" },
		*const exposures[] = { "B", "C", "D" };
	static const double steepest[] = { 1.4, 12, 6, 6.9 };
	int shape = rand() % 4;
	return (WindRoof){ standards[rand() % 3], shapes[shape], enclosures[rand() % 2], exposures[rand() % 3],
		between_of(0.1, steepest[shape]), between_of(10, 90), between_of(150, 400), between_of(40, 150), between_of(90, 200), 0, 0 };
}

static double uplift_of(const WindRoof *roof, uint32_t number, double area)
{
	Arena *arena = arena_make();
	Cases *all = wind_cases(&world, arena, roof);
	double value = NAN;
	if (number < all->of[KIND_zone].count) {
		Case *zone = all->of[KIND_zone].at[number];
		set_area(zone, area);
		value = wind_value(zone, "strength_uplift");
	}
	arena_free(arena);
	return value;
}

/* The figure of a flat roof changes at 60 ft, its zones with the height, that of a hip with the height over the width. */
static void uplift_never_falls_when_the_wind_or_the_height_rises(void **state)
{
	(void)state;
	srand(11);
	for (int i = 0; i < 300; i++) {
		WindRoof roof = any_roof(), faster = roof, higher = roof;
		uint32_t number = (uint32_t)(rand() % 3);
		double area = between_of(1, 300), here = uplift_of(&roof, number, area);
		faster.speed_mph += between_of(1, 40);
		assert_false(uplift_of(&faster, number, area) < here * (1 - 1e-12));
		higher.height = roof.height <= 60 ? between_of(roof.height, 60) : roof.height + between_of(0, 40);
		if (strcmp(roof.shape, "flat") != 0 && roof.slope_in_12 > 2.2)
			assert_false(uplift_of(&higher, number, area) < here * (1 - 1e-12));
	}
}

static void uplift_never_rises_with_the_area(void **state)
{
	(void)state;
	srand(12);
	for (int i = 0; i < 300; i++) {
		WindRoof roof = any_roof();
		uint32_t number = (uint32_t)(rand() % 4);
		double area = between_of(0.5, 400), more = area * between_of(1, 4);
		assert_false(uplift_of(&roof, number, more) > uplift_of(&roof, number, area) * (1 + 1e-12));
	}
}

/* At the first corner of the curves, on figures whose zones are numbered from the field to the corner. */
static void zones_rise_from_field_to_corner(void **state)
{
	static const struct {
		const char *standard, *shape;
		double slope, height;
	} plain[] = { { "ASCE 7-10", "flat", 0.25, 30 }, { "ASCE 7-10", "gable", 4, 30 }, { "ASCE 7-10", "gable", 9, 30 },
		{ "ASCE 7-16", "flat", 0.25, 30 }, { "ASCE 7-16", "flat", 0.25, 70 }, { "ASCE 7-22", "gable", 4, 30 },
		{ "ASCE 7-22", "gable", 5, 30 }, { "ASCE 7-22", "gable", 9, 30 }, { "ASCE 7-22", "hip", 3, 30 },
		{ "ASCE 7-22", "hip", 5, 30 }, { "ASCE 7-22", "hip", 9, 30 }, { "ASCE 7-22", "monoslope", 2.6, 30 } };
	for (size_t i = 0; i < sizeof plain / sizeof *plain; i++) {
		WindRoof roof = { plain[i].standard, plain[i].shape, "enclosed", "C", plain[i].slope, plain[i].height, 200, 120, 115, 0, 0 };
		Cases *all = wind_cases(&world, *state, &roof);
		double coefficient[3];
		for (int z = 0; z < 3; z++) {
			Case *zone = zone_named(all, (const char *[]){ "1", "2", "3" }[z]);
			set_area(zone, 10);
			coefficient[z] = wind_value(zone, "pressure_coefficient");
		}
		assert_true(coefficient[0] < coefficient[1] && coefficient[1] <= coefficient[2]);
	}
}

static void every_figure_has_its_zones_and_every_zone_its_curve(void **state)
{
	(void)state;
	const Reference *r = world.reference;
	for (uint32_t f = 0; f < r->wind_figures.count; f++) {
		const WindFigure *figure = &r->wind_figures.row[f];
		uint32_t zones = 0;
		for (uint32_t z = 0; z < r->wind_zones.count; z++) {
			const WindZone *zone = &r->wind_zones.row[z];
			if (strcmp(zone->standard.text, figure->standard.text) != 0 || strcmp(zone->figure.text, figure->figure.text) != 0 ||
			    strcmp(zone->layout.text, figure->layout.text) != 0)
				continue;
			zones++;
			uint32_t curves = 0;
			for (uint32_t c = 0; c < r->wind_curves.count; c++) {
				const WindCurve *curve = &r->wind_curves.row[c];
				curves += strcmp(curve->standard.text, zone->standard.text) == 0 && strcmp(curve->figure.text, zone->figure.text) == 0 &&
					strcmp(curve->zone.text, zone->zone.text) == 0 && strcmp(curve->side.text, "uplift") == 0;
			}
			assert_in_range(curves, 1, 2);
		}
		assert_in_range(zones, 2, 6);
	}
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
	const struct CMUnitTest tests[] = {
		TEST(the_letter_of_the_clean_example_is_what_is_computed),
		TEST(the_roof_of_the_clean_example),
		TEST(zones_cover_the_roof),
		TEST(the_directionality_factor_counts_once),
		TEST(the_floor_of_exposure_b_is_a_switch_but_in_the_oldest_edition),
		TEST(steep_roofs_take_the_mean_height),
		TEST(a_parapet_spares_the_corners_of_flat_figures_only),
		TEST(above_60_ft_another_figure_holds),
		TEST(between_60_and_90_ft_either_figure_may_be_taken),
		TEST(the_choice_in_other_editions_and_on_steep_roofs),
		TEST(ground_is_level_stated_or_worked_out),
		TEST(a_zone_takes_the_widest_of_its_places),
		TEST(own_names_and_one_for_all_name_every_place),
		TEST(a_spacing_in_other_words_is_not_lost),
		TEST(a_letter_at_strength_level_is_brought_down),
		TEST(the_letter_governs_where_it_is_greater),
		TEST(a_letter_is_silent_of_places_it_does_not_name),
		TEST(the_greatest_of_two_letters_counts),
		TEST(demand_waits_for_a_letter_that_may_cover_the_roof),
		TEST(the_letter_stands_alone_without_a_figure),
		TEST(what_no_figure_covers_is_refused_with_the_reason),
		TEST(uplift_never_falls_when_the_wind_or_the_height_rises),
		TEST(uplift_never_rises_with_the_area),
		TEST(zones_rise_from_field_to_corner),
		TEST(every_figure_has_its_zones_and_every_zone_its_curve),
	};
	return cmocka_run_group_tests_name("wind_facts", tests, start, stop) != 0;
}
