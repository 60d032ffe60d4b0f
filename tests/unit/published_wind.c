/* SPDX-License-Identifier: MIT
 * Wind figures from outside the project against the program: tests/published/wind_*.csv.
 *
 * The expected value is the printed figure. Each row is tried once more with a value just outside its tolerance, which must be
 * rejected. Rows of wind_uplift.csv go through the whole pipeline; the velocity pressures and the overhangs, which no fact gives
 * as they are printed, through the plain functions and the tables.
 */
#include "../wind_roof.h"

#include "file.h"
#include "formula.h"
#include "quantity.h"
#include "read/csv.h"

#include <stdlib.h>

enum { MOST_COLUMNS = 24 };

typedef struct {
	World world;
	const char *column[MOST_COLUMNS];
	uint32_t columns, rows, published, wrong;
	double (*held)(const World *world, const char *const *cell);
} Figures;

/* ---- one row of each file ---- */

enum { KIND, WHAT, STANDARD };

static double number_in(const char *cell)
{
	char *end;
	double value = strtod(cell, &end);
	assert_true(end != cell);
	return value;
}

enum { SHAPE = 3, SLOPE, HEIGHT, LENGTH, WIDTH, ENCLOSURE, EXPOSURE, SPEED, PARAPET, ZONE, AREA, GIVEN_VELOCITY };

static double held_uplift(const World *world, const char *const *cell)
{
	Arena *arena = arena_make();
	WindRoof roof = { cell[STANDARD], cell[SHAPE], cell[ENCLOSURE], cell[EXPOSURE], number_in(cell[SLOPE]), number_in(cell[HEIGHT]),
		number_in(cell[LENGTH]), number_in(cell[WIDTH]), number_in(cell[SPEED]), number_in(cell[PARAPET]), 0 };
	Case *zone = zone_named(wind_cases(world, arena, &roof), cell[ZONE]);
	set_area(zone, number_in(cell[AREA]));
	bool is_given = strcmp(cell[WHAT], "strength_of_velocity") == 0;
	double value = wind_value(zone, is_given ? "pressure_coefficient" : cell[WHAT]);
	if (is_given)
		value = strength_uplift_psf(number_in(cell[GIVEN_VELOCITY]), value, wind_value(zone, "internal_coefficient"), 16);
	arena_free(arena);
	return value;
}

static ExposureLaw law_of(const World *world, const char *standard, const char *exposure, double *least)
{
	for (uint32_t i = 0; i < world->reference->wind_exposures.count; i++) {
		const WindExposure *row = &world->reference->wind_exposures.row[i];
		*least = row->least_height_ft.value;
		if (strcmp(row->standard.text, standard) == 0 && strcmp(row->exposure.text, exposure) == 0)
			return (ExposureLaw){ row->alpha_one.value, row->gradient_height_ft.value, row->factor_one.value };
	}
	fail_msg("no row for %s %s", standard, exposure);
	return (ExposureLaw){ 0 };
}

static double held_velocity(const World *world, const char *const *cell)
{
	double least = 0;
	ExposureLaw law = law_of(world, cell[STANDARD], cell[3], &least);
	double exposure = exposure_coefficient_one(number_in(cell[4]), least, &law);
	if (strcmp(cell[WHAT], "exposure coefficient") == 0)
		return exposure;
	VelocityPressure of = { 0.00256, exposure, 1, 1, 1, number_in(cell[5]) };
	return asd_uplift_psf(velocity_pressure_psf(&of), 0.6);
}

static double quantity_in(const char *cell, Unit unit)
{
	double value = 0;
	assert_int_equal(read_quantity(cell, strlen(cell), unit, &value), QUANTITY_READ);
	return value;
}

/* Exposure B at 30 ft, 0.70 as printed; the constant is the one of metric units: 0.613 N/m2 at 1 m/s. */
static double held_overhang(const World *world, const char *const *cell)
{
	double metric = quantity_in("0.613 Pa", UNIT_psf), speed = quantity_in(cell[6], UNIT_m_per_s);
	for (uint32_t i = 0; i < world->reference->wind_curves.count; i++) {
		const WindCurve *row = &world->reference->wind_curves.row[i];
		if (strcmp(row->standard.text, cell[STANDARD]) != 0 || strcmp(row->figure.text, cell[3]) != 0 ||
		    strcmp(row->zone.text, cell[4]) != 0 || strcmp(row->side.text, "overhang") != 0)
			continue;
		Corner corner[] = { { row->area_1_sq_ft.value, row->value_1_one.value }, { row->area_2_sq_ft.value, row->value_2_one.value },
			{ row->area_3_sq_ft.value, row->value_3_one.value } };
		size_t count = is_value(&row->area_3_sq_ft.given) ? 3 : is_value(&row->area_2_sq_ft.given) ? 2 : 1;
		VelocityPressure of = { metric, 0.70, 1, 0.85, 1, speed };
		return -curve_at(corner, count, number_in(cell[5])) * velocity_pressure_psf(&of);
	}
	fail_msg("no overhang curve of %s %s", cell[3], cell[4]);
	return 0;
}

/* ---- files ---- */

static const char *cell_called(const Figures *figures, const char *const *cell, const char *name)
{
	for (uint32_t i = 0; i < figures->columns; i++)
		if (strcmp(figures->column[i], name) == 0)
			return cell[i];
	return NULL;
}

static double pressure_or_number(const char *cell)
{
	return strstr(cell, "kPa") != NULL ? quantity_in(cell, UNIT_psf) : number_in(cell);
}

static bool is_within(double held, double expected, double below, double above)
{
	return held >= expected - below && held <= expected + above;
}

static void check_row(Figures *figures, const char *const *cell)
{
	const char *tolerance = cell_called(figures, cell, "tolerance");
	double expected = pressure_or_number(cell_called(figures, cell, "expected"));
	double below = pressure_or_number(tolerance != NULL ? tolerance : cell_called(figures, cell, "below"));
	double above = pressure_or_number(tolerance != NULL ? tolerance : cell_called(figures, cell, "above"));
	double held = figures->held(&figures->world, cell);
	bool is_loose = is_within(expected - 1.01 * below, expected, below, above) ||
		is_within(expected + 1.01 * above, expected, below, above);
	if (!is_within(held, expected, below, above) || is_loose) {
		print_error("%s %s %s %s: printed %g, held %.6g\n", cell[STANDARD], cell[3], cell[WHAT], cell_called(figures, cell, "place"),
			    expected, held);
		for (uint32_t i = 0; i < figures->columns; i++)
			print_error("%s%s", cell[i], i + 1 < figures->columns ? "," : "\n");
		figures->wrong++;
	}
	assert_true(*cell_called(figures, cell, "body") != '\0' && *cell_called(figures, cell, "document") != '\0');
	assert_true(*cell_called(figures, cell, "known_by") != '\0');
	figures->rows++;
	figures->published += strcmp(cell[KIND], "published") == 0;
}

static bool take_row(void *user, const Cell *cell, uint32_t cells)
{
	Figures *figures = user;
	const char *text[MOST_COLUMNS];
	assert_in_range(cells, 10, MOST_COLUMNS);
	for (uint32_t i = 0; i < cells; i++)
		text[i] = arena_text(figures->world.run, cell[i].text, cell[i].length);
	if (figures->columns == 0) {
		memcpy(figures->column, text, cells * sizeof *text);
		figures->columns = cells;
		return true;
	}
	assert_int_equal(cells, figures->columns);
	check_row(figures, text);
	return true;
}

static Figures read_figures(const char *path, double (*held)(const World *, const char *const *))
{
	Figures figures = { .world = world_make(), .held = held };
	Arena *arena = figures.world.run;
	const char *bytes, *why;
	size_t length;
	assert_int_equal(file_read(arena, path, 1 << 20, &bytes, &length, &why), FILE_READ);
	Complaints complaints = { .arena = arena };
	CsvFile csv = { arena, source_make(arena, path, bytes, length, 0), &complaints, take_row, &figures };
	assert_true(csv_read(&csv));
	print_message("%s: %u figures, %u of them published\n", path, figures.rows, figures.published);
	assert_int_equal(figures.wrong, 0);
	arena_free(arena);
	return figures;
}

static void uplift_agrees(void **state)
{
	(void)state;
	assert_true(read_figures("tests/published/wind_uplift.csv", held_uplift).published >= 150);
}

static void velocity_agrees(void **state)
{
	(void)state;
	assert_true(read_figures("tests/published/wind_velocity.csv", held_velocity).published >= 34);
}

static void overhangs_agree(void **state)
{
	(void)state;
	assert_true(read_figures("tests/published/wind_overhang.csv", held_overhang).published >= 40);
}

int main(void)
{
	const struct CMUnitTest tests[] = { cmocka_unit_test(uplift_agrees), cmocka_unit_test(velocity_agrees),
		cmocka_unit_test(overhangs_agree) };
	return cmocka_run_group_tests_name("published_wind", tests, NULL, NULL) != 0;
}
