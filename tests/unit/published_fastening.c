/* SPDX-License-Identifier: MIT
 * Screws, movement and metals against figures from outside: tests/published/fastening.csv. What a, b and c are follows from the
 * function beside the name in `formulas`.
 *
 * The expected value is the printed figure. Each row is tried once more with a value just outside its tolerance, which must be
 * rejected. A row of kind mismatch is a printed figure that disagrees with its own inputs: it must not agree.
 */
#include "../check.h"

#include "builtin.h"
#include "file.h"
#include "formula.h"
#include "read/csv.h"

#include <stdlib.h>

enum { KIND, WHAT, A, B, C, EXPECTED, TOLERANCE, BODY, DOCUMENT, PLACE, YEAR, KNOWN, COLUMNS };

typedef struct {
	uint32_t rows, published, mismatches, wrong;
	bool headed;
} Figures;

/* thickness, diameter, tensile */
static double pullout_over_3(const double *x)
{
	return screw_pullout_lb(x[0], x[1], x[2]) / 3;
}

/* thickness, head, tensile */
static double pullover_over_3(const double *x)
{
	return screw_pullover_lb(x[0], x[1], 0.5, x[2]) / 3;
}

/* gravity, diameter */
static double lag(const double *x)
{
	return lag_screw_withdrawal_lb_per_in(x[0], x[1]);
}

static double wood_screw(const double *x)
{
	return wood_screw_withdrawal_lb_per_in(x[0], x[1]);
}

/* The ultimate load has the same form with another factor. */
static double ultimate(const double *x)
{
	return wood_screw_withdrawal_lb_per_in(x[0], x[1]) * 15700 / 2850;
}

/* pressure, width, spacing */
static double fastener_load(const double *x)
{
	return clip_load_lb(x[0], x[1], x[2]);
}

/* expansion for a million degrees, length, difference */
static double movement(const double *x)
{
	return movement_in(x[0] / 1e6, x[1], x[2]);
}

/* expansion for a million degrees, difference, travel */
static double longest_run(const double *x)
{
	return longest_run_ft(x[0] / 1e6, x[1], x[2]);
}

static double potential(const double *x)
{
	return potential_difference_V(x[0], x[1]);
}

static const struct {
	const char *what;
	double (*of)(const double *x);
} formulas[] = { { "pull-out over 3", pullout_over_3 }, { "pull-over over 3", pullover_over_3 }, { "lag withdrawal", lag },
	{ "wood screw withdrawal", wood_screw }, { "ultimate withdrawal", ultimate }, { "fastener load", fastener_load },
	{ "movement", movement }, { "longest run", longest_run }, { "potential difference", potential } };

static double value_of(const Cell *cell)
{
	const double x[] = { strtod(cell[A].text, NULL), strtod(cell[B].text, NULL), strtod(cell[C].text, NULL) };
	for (size_t i = 0; i < sizeof formulas / sizeof *formulas; i++)
		if (strcmp(formulas[i].what, cell[WHAT].text) == 0)
			return formulas[i].of(x);
	fail_msg("no formula %s", cell[WHAT].text);
	return 0;
}

static bool is_within(double value, double expected, double tolerance)
{
	return fabs(value - expected) <= tolerance + 1e-9; /* 688.5 is printed 689 */
}

static bool take_row(void *user, const Cell *cell, uint32_t cells)
{
	Figures *figures = user;
	assert_int_equal(cells, COLUMNS);
	if (!figures->headed) {
		figures->headed = true;
		return true;
	}
	double expected = strtod(cell[EXPECTED].text, NULL), tolerance = strtod(cell[TOLERANCE].text, NULL), value = value_of(cell);
	assert_true(expected > 0 && tolerance > 0 && tolerance < expected / 10);
	bool mismatch = strcmp(cell[KIND].text, "mismatch") == 0;
	double outside = expected + 1.01 * tolerance + fabs(value - expected);
	if (is_within(value, expected, tolerance) == mismatch || is_within(value, outside, tolerance)) {
		print_error("%s %s %s %s: printed %s, computed %.6g\n", cell[WHAT].text, cell[A].text, cell[B].text, cell[C].text,
			cell[EXPECTED].text, value);
		figures->wrong++;
	}
	assert_true(cell[BODY].length > 0 && cell[DOCUMENT].length > 0 && cell[PLACE].length > 0 && cell[KNOWN].length > 0);
	figures->rows++;
	figures->mismatches += mismatch;
	figures->published += strcmp(cell[KIND].text, "published") == 0;
	return true;
}

static void figures_agree(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	const char *bytes, *why;
	size_t length;
	assert_int_equal(file_read(arena, "tests/published/fastening.csv", 1 << 20, &bytes, &length, &why), FILE_READ);
	Complaints complaints = { .arena = arena };
	Figures figures = { 0 };
	CsvFile csv = { arena, source_make(arena, "fastening.csv", bytes, length, 0), &complaints, take_row, &figures };
	assert_true(csv_read(&csv));
	print_message("%u figures, %u of them published\n", figures.rows, figures.published);
	assert_int_equal(figures.wrong, 0);
	assert_int_equal(figures.published, 52);
	assert_int_equal(figures.mismatches, 1);
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = { cmocka_unit_test(figures_agree) };
	return cmocka_run_group_tests_name("published: fastening", tests, NULL, NULL) != 0;
}
