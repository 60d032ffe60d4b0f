/* SPDX-License-Identifier: MIT
 * Figures of tests/published/capacity.csv: pressures between tests, allowables, loads of clips. The expected value is the printed
 * one; a value just outside the tolerance must be rejected.
 */
#include "../harness.h"

#include "file.h"
#include "formula.h"
#include "read/csv.h"

#include <stdlib.h>

enum { KIND, WHAT, INPUTS, EXPECTED, TOLERANCE, BODY, DOCUMENT, PLACE, YEAR, KNOWN, COLUMNS };

typedef struct {
	uint32_t rows, published, wrong, heads;
} Figures;

static size_t read_inputs(const char *text, double *input, size_t room)
{
	size_t count = 0;
	for (char *end; *text != '\0'; text = end + strspn(end, " ")) {
		assert_true(count < room);
		input[count++] = strtod(text, &end);
		assert_true(end > text);
	}
	return count;
}

static double pressure_between(const char *how, const double *in, size_t count)
{
	static const char *const names[] = { "straight line", "reaction", "power law", "lesser curve", "next wider" };
	TestPoint test[] = { { .spacing_in = in[0], .pressure_psf = in[1] }, { .spacing_in = in[2], .pressure_psf = in[3] } };
	assert_int_equal(count, 5);
	for (size_t i = 0; i < sizeof names / sizeof *names; i++)
		if (strcmp(how, names[i]) == 0)
			return tested_pressure_psf(test, 2, in[4], (Interpolation)i);
	fail_msg("nothing is called %s", how);
	return 0;
}

static double found(const Cell *cell)
{
	double in[8];
	const char *what = cell[WHAT].text;
	size_t count = read_inputs(cell[INPUTS].text, in, 8);
	if (strcmp(what, "allowable pressure") == 0)
		return allowable_pressure_psf(in[0], in[1], in[2]);
	if (strcmp(what, "clip load") == 0 || strcmp(what, "row load") == 0)
		return clip_load_lb(in[0], in[1], in[2]);
	return pressure_between(what, in, count);
}

static bool agrees(double value, double printed, double tolerance)
{
	return fabs(value - printed) <= tolerance;
}

static bool take_row(void *user, const Cell *cell, uint32_t cells)
{
	Figures *figures = user;
	assert_int_equal(cells, COLUMNS);
	if (figures->heads++ == 0)
		return true;
	double printed = strtod(cell[EXPECTED].text, NULL), tolerance = strtod(cell[TOLERANCE].text, NULL), value = found(cell);
	bool loose = agrees(value, printed + 2.02 * tolerance, tolerance) || agrees(value, printed - 2.02 * tolerance, tolerance);
	if (!agrees(value, printed, tolerance) || loose) {
		print_error("%s %s: printed %s, found %.6g\n", cell[WHAT].text, cell[INPUTS].text, cell[EXPECTED].text, value);
		figures->wrong++;
	}
	assert_true(tolerance > 0 && tolerance <= 0.001 * fabs(printed) + 0.05);
	assert_true(cell[BODY].length > 0 && cell[DOCUMENT].length > 0 && cell[PLACE].length > 0 && cell[KNOWN].length > 0);
	figures->published += strcmp(cell[KIND].text, "published") == 0;
	figures->rows++;
	return true;
}

static void figures_agree(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	const char *bytes, *why;
	size_t length;
	assert_int_equal(file_read(arena, "tests/published/capacity.csv", 1 << 20, &bytes, &length, &why), FILE_READ);
	Complaints complaints = { .arena = arena };
	Figures figures = { 0 };
	CsvFile csv = { arena, source_make(arena, "capacity.csv", bytes, length, 0), &complaints, take_row, &figures };
	assert_true(csv_read(&csv));
	print_message("%u figures, %u of them published\n", figures.rows, figures.published);
	assert_int_equal(figures.wrong, 0);
	assert_true(figures.rows >= 30 && figures.published >= 2);
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = { cmocka_unit_test(figures_agree) };
	return cmocka_run_group_tests_name("published capacity", tests, NULL, NULL) != 0;
}
