/* SPDX-License-Identifier: MIT
 * Wind uplift against a second opinion: 20,000 random buildings and zones that tests/oracle/wind.py answers, and as many zone
 * areas that tests/oracle/plan.py cuts out of random roofs. A third of the buildings lie on an edge: the end of a band of slopes, a
 * corner of a curve, 60 ft, or a height at which an exposure changes. What lies on an edge is counted here, not there.
 */
#include "../oracle_rows.h"
#include "../small_roof.h"

#include "formula.h"

static World world;

/* ---- a row into the records of a small roof ---- */

/* The words live as long as the row's own arena. */
static const char *kept(Arena *arena, const OracleRows *rows, const char *column)
{
	return arena_printf(arena, "%s", oracle_text(rows, column));
}

static void put_building(Arena *arena, Submittal *submittal, const OracleRows *rows)
{
	Building *building = &submittal->building;
	submittal->wind.standard.text = kept(arena, rows, "edition");
	building->shape = word(&Building_record, "shape", kept(arena, rows, "shape"));
	building->slope_in_12.value = oracle_number(rows, "slope_in_12");
	building->eave_height_ft.value = building->mean_roof_height_ft.value = oracle_number(rows, "height_ft");
}

static void put_wind(Arena *arena, Submittal *submittal, const OracleRows *rows)
{
	Building *building = &submittal->building;
	building->width_ft.value = oracle_number(rows, "least_ft");
	building->length_ft.value = oracle_number(rows, "greatest_ft");
	building->parapet_height_ft.value = oracle_number(rows, "parapet_ft");
	/* an open building is refused: its zone is asked for as that of an enclosed one */
	bool is_open = oracle_is(rows, "enclosure", "open");
	building->enclosure = word(&Building_record, "enclosure", is_open ? "enclosed" : kept(arena, rows, "enclosure"));
	Wind *wind = &submittal->wind;
	wind->exposure = word(&Wind_record, "exposure", kept(arena, rows, "exposure"));
	wind->basic_speed_mph.value = oracle_number(rows, "speed_mph");
	wind->ground_elevation_ft.value = oracle_number(rows, "ground_ft");
	wind->topography.terrain = word(&Topography_record, "terrain", kept(arena, rows, "hill"));
	wind->topography.height_ft.value = oracle_number(rows, "hill_height_ft");
	wind->topography.half_length_ft.value = oracle_number(rows, "hill_half_length_ft");
	wind->topography.distance_ft.value = oracle_number(rows, "hill_distance_ft");
	((Criteria *)(uintptr_t)world.criteria)->edition.exposure_b_floor.yes = oracle_is(rows, "exposure_b_floor", "yes");
}

/* ---- edges, told from the numbers of a row ---- */

typedef enum { EDGE_SLOPE, EDGE_AREA, EDGE_60_FT, EDGE_EXPOSURE, EDGES } Edge;

/* Ends of the bands of slopes in degrees. */
static const double band_ends[] = { 3, 7, 10, 20, 25, 27, 30, 45 };
enum { BAND_ENDS = sizeof band_ends / sizeof *band_ends, SIDES = 3, MOST_CURVES = 400 };

typedef struct {
	unsigned rows, on[EDGES], on_any;
	unsigned slope[BAND_ENDS][SIDES], sixty[SIDES]; /* just below, at, just above */
	unsigned corner[MOST_CURVES][2]; /* of each row of wind_curves.csv */
	unsigned open, least, off_plan, above_gradient, overhangs;
} Count;

/* 0: just below, 1: at it, 2: just above; -1: neither. What is at it may be a few units of the last place off. */
static int side_of(double value, double edge, double step)
{
	double off = value - edge;
	if (fabs(off) <= step * 1e-3)
		return 1;
	return fabs(fabs(off) - step) > step * 1e-3 ? -1 : off < 0 ? 0 : 2;
}

static bool count_slope(Count *count, double slope_in_12)
{
	bool on = false;
	for (int i = 0; i < BAND_ENDS; i++) {
		int side = side_of(slope_in_12, 12 * tan(band_ends[i] * acos(-1) / 180), 1e-9);
		if (side >= 0)
			count->slope[i][side]++;
		on |= side >= 0;
	}
	return on;
}

static bool count_60_ft(Count *count, double height_ft)
{
	int side = side_of(height_ft, 60, 1e-6);
	if (side >= 0)
		count->sixty[side]++;
	return side >= 0;
}

static bool count_exposure(Count *count, const OracleRows *rows)
{
	double height = oracle_number(rows, "height_ft");
	bool on = side_of(height, 15, 1e-6) >= 0 || side_of(height, 30, 1e-6) >= 0;
	const Reference *reference = world.reference;
	for (uint32_t i = 0; i < reference->wind_exposures.count; i++) {
		const WindExposure *row = &reference->wind_exposures.row[i];
		if (oracle_is(rows, "edition", row->standard.text) && oracle_is(rows, "exposure", row->exposure.text)) {
			on |= side_of(height, row->gradient_height_ft.value, 1e-6) >= 0;
			count->above_gradient += height > row->gradient_height_ft.value + 1;
		}
	}
	return on;
}

static double by_slope(const Number *by, double angle_deg)
{
	return is_value(&by->given) ? by->value * angle_deg : 0;
}

static bool count_corner(Count *count, const OracleRows *rows, double angle_deg)
{
	bool on = false;
	double area = oracle_number(rows, "area_sq_ft");
	for (uint32_t i = 0; i < world.reference->wind_curves.count; i++) {
		const WindCurve *row = &world.reference->wind_curves.row[i];
		if (!oracle_is(rows, "edition", row->standard.text) || !oracle_is(rows, "figure", row->figure.text) ||
		    !oracle_is(rows, "zone", row->zone.text) || strcmp(row->side.text, "uplift") != 0)
			continue;
		double first = row->area_1_sq_ft.value + by_slope(&row->area_1_by_slope_one, angle_deg);
		double second = row->area_2_sq_ft.value + by_slope(&row->area_2_by_slope_one, angle_deg);
		bool at_first = fabs(area - first) <= 1e-9 * first;
		bool at_second = is_value(&row->area_2_sq_ft.given) && fabs(area - second) <= 1e-9 * second;
		count->corner[i][0] += at_first;
		count->corner[i][1] += at_second;
		on |= at_first || at_second;
	}
	return on;
}

static void count_edges(Count *count, const OracleRows *rows)
{
	double slope = oracle_number(rows, "slope_in_12");
	bool on[EDGES] = { count_slope(count, slope), count_corner(count, rows, atan(slope / 12) * 180 / acos(-1)),
		count_60_ft(count, oracle_number(rows, "height_ft")), count_exposure(count, rows) };
	bool any = false;
	for (int i = 0; i < EDGES; i++) {
		count->on[i] += on[i];
		any |= on[i];
	}
	count->on_any += any;
	count->rows++;
}

/* ---- one building ---- */

static double internal_of(const OracleRows *rows)
{
	for (uint32_t i = 0; i < world.reference->wind_enclosures.count; i++) {
		const WindEnclosure *row = &world.reference->wind_enclosures.row[i];
		if (oracle_is(rows, "edition", row->standard.text) && oracle_is(rows, "enclosure", row->enclosure.text))
			return row->internal_coefficient_one.value;
	}
	fail_msg("no internal coefficient");
	return 0;
}

static void check_area(const OracleRows *rows, Case *area)
{
	oracle_same(rows, "kz", wind_value(area, "exposure_coefficient"), 0);
	oracle_same(rows, "kzt", wind_value(area, "topographic_factor"), 0);
	oracle_same(rows, "ke", wind_value(area, "elevation_factor"), 0);
	oracle_same(rows, "kd", wind_value(area, "directionality_factor"), 0);
	oracle_same(rows, "q_psf", wind_value(area, "velocity_pressure"), 0);
}

/* The pressures of an open building by the plain functions; of any other the facts themselves. */
static void check_zone(Count *count, const OracleRows *rows, Case *zone)
{
	double coefficient = wind_value(zone, "pressure_coefficient"), internal = internal_of(rows);
	oracle_same(rows, "gcp_uplift", coefficient, 0);
	oracle_same(rows, "gcpi", internal, 0);
	double strength = wind_value(zone, "strength_uplift"), asd = wind_value(zone, "asd_uplift");
	if (oracle_is(rows, "enclosure", "open")) {
		const char *standard = oracle_text(rows, "edition");
		bool later = wind_constant(world.reference, standard, "directionality_in_velocity_pressure")->value_one.value <= 0;
		double velocity = wind_value(zone->up, "velocity_pressure");
		velocity *= later ? wind_value(zone->up, "directionality_factor") : 1;
		strength = strength_uplift_psf(velocity, coefficient, internal, wind_constant(world.reference, standard,
			"least_pressure")->value_one.value);
		asd = asd_uplift_psf(strength, wind_constant(world.reference, standard, "asd_factor")->value_one.value);
		count->open++;
	} else
		oracle_same(rows, "gcpi", wind_value(zone, "internal_coefficient"), 0);
	oracle_same(rows, "strength_psf", strength, 0);
	oracle_same(rows, "asd_psf", asd, 0);
	count->least += strength <= 16;
}

/* Zones away from the eave have no overhang here, though the figure has a curve for them. */
static void check_overhang(Count *count, const OracleRows *rows, Case *zone)
{
	const Fact *fact = wind_fact(zone, "overhang_coefficient");
	bool has_curve = !oracle_is(rows, "gcp_overhang", "");
	if (fact->state == FACT_NOT_APPLICABLE)
		return;
	if ((fact->state == FACT_KNOWN) != has_curve)
		fail_msg("row %u: overhang in state %d: %s", rows->row, fact->state, fact->reason);
	count->overhangs += has_curve;
	if (!has_curve)
		return;
	oracle_same(rows, "gcp_overhang", fact->value, 0);
	if (!oracle_is(rows, "enclosure", "open"))
		oracle_same(rows, "overhang_psf", wind_value(zone, "overhang_strength"), 0);
}

/* A hip roof to ASCE 7-10 up to 25 deg has no zone 3: it is taken as 2. Any other zone that is missing has no room on the plan. */
static Case *zone_of_row(Count *count, const OracleRows *rows, const Cases *all)
{
	const char *name = oracle_text(rows, "zone");
	Case *zone = zone_or_null(all, name);
	if (zone != NULL)
		return zone;
	const ZoneHere *first = all->of[KIND_zone].at[0]->row;
	if (strcmp(first->figure->layout.text, "low hip 2010") == 0 && strcmp(name, "3") == 0)
		return zone_named(all, "2");
	count->off_plan++;
	return NULL;
}

/* Bands end at 30 and 45 deg for good: nothing lies just above. Figures for several spans have no rows. */
static void check_counts(const Count *count)
{
	static const char *const names[EDGES] = { "slope", "corner of a curve", "60 ft", "exposure" };
	for (int i = 0; i < EDGES; i++) {
		print_message("%u of %u rows on an edge: %s\n", count->on[i], count->rows, names[i]);
		assert_true(count->on[i] * 20 >= count->rows);
	}
	print_message("%u on any, %u open, %u at the least pressure, %u zones without room\n", count->on_any, count->open, count->least,
		      count->off_plan);
	print_message("%u zones with an overhang\n", count->overhangs);
	assert_true(count->rows >= 20000 && count->overhangs * 5 >= count->rows);
	assert_true(count->on_any * 5 >= count->rows);
	assert_true(count->above_gradient > 100);
	assert_true(count->off_plan * 50 <= count->rows);
	for (int i = 0; i < BAND_ENDS; i++)
		for (int side = 0; side < (band_ends[i] < 30 && band_ends[i] != 25 ? SIDES : 2); side++)
			assert_true(count->slope[i][side] > 0);
	for (int side = 0; side < SIDES; side++)
		assert_true(count->sixty[side] > 100);
	for (uint32_t i = 0; i < world.reference->wind_curves.count; i++) {
		const WindCurve *row = &world.reference->wind_curves.row[i];
		if (strcmp(row->side.text, "uplift") != 0 || strstr(row->figure.text, "-4 (") != NULL)
			continue;
		assert_true(count->corner[i][0] > 0);
		assert_true(count->corner[i][1] > 0 || !is_value(&row->area_2_sq_ft.given));
	}
}

static void buildings_are_as_the_second_opinion_has_them(void **state)
{
	Submittal *submittal = small_roof(&world, *state);
	Count *count = TAKE(*state, Count, 1);
	assert_in_range(world.reference->wind_curves.count, 1, MOST_CURVES);
	OracleRows rows;
	for (oracle_open(&rows, "wind"); oracle_next(&rows);) {
		Arena *arena = arena_make();
		put_building(arena, submittal, &rows);
		put_wind(arena, submittal, &rows);
		Cases *all = small_cases(&world, arena, submittal);
		assert_string_equal(((const Zone *)all->of[KIND_zone].at[0]->row)->figure.text, oracle_text(&rows, "figure"));
		Case *zone = zone_of_row(count, &rows, all);
		check_area(&rows, all->of[KIND_roof_area].at[0]);
		if (zone != NULL) {
			set_area(zone, oracle_number(&rows, "area_sq_ft"));
			check_zone(count, &rows, zone);
			if (strcmp(oracle_text(&rows, "zone"), ((const Zone *)zone->row)->name.text) == 0)
				check_overhang(count, &rows, zone);
		}
		count_edges(count, &rows);
		arena_free(arena);
	}
	if (rows.step == 1)
		check_counts(count);
}

/* ---- zones in plan ---- */

static void zones_in_plan_are_as_cut_out(void **state)
{
	Submittal *submittal = small_roof(&world, *state);
	OracleRows rows;
	Arena *arena = NULL;
	const Cases *all = NULL;
	char roof_before[ORACLE_LINE] = "";
	unsigned roofs = 0, empty = 0;
	for (oracle_open(&rows, "plan"); oracle_next(&rows);) {
		char here[ORACLE_LINE];
		snprintf(here, sizeof here, "%s %s %s %s %s %s", rows.cell[0], rows.cell[1], rows.cell[2], rows.cell[3], rows.cell[4], rows.cell[5]);
		if (strcmp(here, roof_before) != 0) {
			arena_free(arena);
			arena = arena_make();
			put_building(arena, submittal, &rows);
			submittal->building.length_ft.value = oracle_number(&rows, "length_ft");
			submittal->building.width_ft.value = oracle_number(&rows, "width_ft");
			all = small_cases(&world, arena, submittal);
			strcpy(roof_before, here);
			roofs++;
		}
		double least = fmin(submittal->building.length_ft.value, submittal->building.width_ft.value);
		double whole = submittal->building.length_ft.value * submittal->building.width_ft.value;
		Case *zone = zone_or_null(all, oracle_text(&rows, "zone"));
		oracle_same(&rows, "zone_width_ft", wind_value(all->of[KIND_roof_area].at[0], "zone_width"), 0);
		oracle_same(&rows, "plan_area_sq_ft", zone != NULL ? wind_value(zone, "plan_area") : 0, zone == NULL ? whole : least);
		empty += zone == NULL;
	}
	arena_free(arena);
	print_message("%u zones of %u roofs, %u without room\n", rows.row, roofs, empty);
	if (rows.step == 1)
		assert_true(rows.row >= 20000 && roofs >= 5000 && empty * 4 < rows.row);
}

static int start(void **state)
{
	world = world_make();
	*state = arena_make();
	return 0;
}

static int stop(void **state)
{
	arena_free(*state);
	arena_free(world.run);
	return 0;
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(buildings_are_as_the_second_opinion_has_them),
		cmocka_unit_test(zones_in_plan_are_as_cut_out),
	};
	return cmocka_run_group_tests_name("oracle_wind", tests, start, stop) != 0;
}
