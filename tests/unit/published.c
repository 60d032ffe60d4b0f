/* SPDX-License-Identifier: MIT
 * Figures from outside the project: tests/published/figures.csv, each with body, document, place, year and how well it is known.
 *
 * The expected value is the printed figure, never a recomputed one. Each row is tried once more with a value just outside its
 * tolerance, which must be rejected, so that no row can pass by being loose.
 */
#include "../harness.h"

#include "file.h"
#include "read/csv.h"
#include "read/fill.h"

#include <stdlib.h>

enum { KIND, WHAT, KEY, PRINTED, TOLERANCE, BODY, DOCUMENT, PLACE, YEAR, KNOWN, COLUMNS };

typedef struct {
	const Reference *reference;
	uint32_t rows, published, wrong, heads;
} Figures;

/* "24.2 psf + 20.8 psf" in `unit`. */
static double read_sum(const char *text, Unit unit)
{
	double sum = 0;
	while (*text != '\0') {
		const char *plus = strstr(text, " + ");
		size_t length = plus != NULL ? (size_t)(plus - text) : strlen(text);
		double value = 0;
		assert_int_equal(read_quantity(text, length, unit, &value), QUANTITY_READ);
		sum += value;
		text += length + (plus != NULL ? 3 : 0);
	}
	return sum;
}

static const UpliftClass *class_row(const Reference *reference, double number)
{
	for (uint32_t i = 0; i < reference->uplift_classes.count; i++)
		if (reference->uplift_classes.row[i].uplift_class_one.value == number)
			return &reference->uplift_classes.row[i];
	fail_msg("no class %g", number);
	return NULL;
}

/* What the program holds for a row; for "sold as" it is `value` itself where the program takes it as that size, else 0. */
static double held_value(const Reference *reference, const Cell *cell, double value)
{
	const char *what = cell[WHAT].text, *key = cell[KEY].text;
	double number = strtod(key, NULL);
	if (strcmp(what, "deck design thickness") == 0)
		return gauge_thickness(reference, "deck", number);
	if (strcmp(what, "sheet thickness") == 0)
		return gauge_thickness(reference, "sheet", number);
	if (strcmp(what, "screw diameter") == 0)
		return screw_diameter(reference, key);
	if (strcmp(what, "uplift class nominal") == 0)
		return class_row(reference, number)->nominal_static_psf.value;
	if (strcmp(what, "uplift class maximum") == 0)
		return class_row(reference, number)->maximum_static_psf.value;
	const char *family = strcmp(what, "deck sold as") == 0 ? "deck" : strcmp(what, "sheet sold as") == 0 ? "sheet" : NULL;
	assert_non_null(family);
	return is_one_trade_size(reference, family, gauge_thickness(reference, family, number), value) ? value : 0;
}

static bool is_held(const Reference *reference, const Cell *cell, double value, double tolerance)
{
	return fabs(held_value(reference, cell, value) - value) <= tolerance;
}

static bool take_row(void *user, const Cell *cell, uint32_t cells)
{
	Figures *figures = user;
	assert_int_equal(cells, COLUMNS);
	if (figures->heads++ == 0)
		return true;
	bool pressure = strstr(cell[WHAT].text, "class") != NULL;
	double value = read_sum(cell[PRINTED].text, pressure ? UNIT_psf : UNIT_in), tolerance = strtod(cell[TOLERANCE].text, NULL);
	/* a sold size just outside must lie beyond the next size's tolerance too: two per cent is no size of its own */
	bool sold = strstr(cell[WHAT].text, "sold as") != NULL;
	double outside = sold ? value * 1.08 : value + 1.01 * tolerance + fabs(held_value(figures->reference, cell, value) - value);
	if (!is_held(figures->reference, cell, value, tolerance) || is_held(figures->reference, cell, outside, tolerance)) {
		print_error("%s %s: printed %s, held %.6g\n", cell[WHAT].text, cell[KEY].text, cell[PRINTED].text,
			held_value(figures->reference, cell, value));
		figures->wrong++;
	}
	figures->rows++;
	figures->published += strcmp(cell[KIND].text, "published") == 0;
	assert_true(cell[BODY].length > 0 && cell[DOCUMENT].length > 0 && cell[PLACE].length > 0 && cell[KNOWN].length > 0);
	return true;
}

static void figures_agree(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	const char *bytes, *why;
	size_t length;
	assert_int_equal(file_read(arena, "tests/published/figures.csv", 1 << 20, &bytes, &length, &why), FILE_READ);
	Complaints complaints = { .arena = arena };
	Figures figures = { .reference = read_reference(arena) };
	assert_non_null(figures.reference);
	CsvFile csv = { arena, source_make(arena, "figures.csv", bytes, length, 0), &complaints, take_row, &figures };
	bool whole = csv_read(&csv);
	print_complaints(&complaints);
	assert_true(whole);
	print_message("%u figures, %u of them published\n", figures.rows, figures.published);
	assert_int_equal(figures.wrong, 0);
	assert_true(figures.published >= 30);
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = { cmocka_unit_test(figures_agree) };
	return cmocka_run_group_tests_name("published", tests, NULL, NULL) != 0;
}
