/* SPDX-License-Identifier: MIT
 * Rows of listing_tests.csv to a curve: each pressure is brought to the ultimate one. The last step a specimen held counts as its
 * ultimate; an allowable pressure times the factor already in it is.
 */
#include "curve.h"

#include "below.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static bool is_row_of(const ListingTest *row, const Listing *listing)
{
	return is_value(&row->listing.given) && strcmp(row->listing.text, listing->listing.text) == 0 &&
	       is_value(&row->clip_spacing_in.given) && is_value(&row->pressure_psf.given);
}

/* Only an allowable pressure has a factor in it. */
static double factor_in(const ListingTest *row)
{
	bool has = is_word(&row->pressure_is, "allowable") && is_value(&row->factor_included_one.given);
	return has ? row->factor_included_one.value : 1;
}

static double ultimate_psf(const ListingTest *row)
{
	return row->pressure_psf.value * factor_in(row);
}

static int compare_rows(const void *a, const void *b)
{
	const ListingTest *left = *(const ListingTest *const *)a, *right = *(const ListingTest *const *)b;
	double spacing = left->clip_spacing_in.value - right->clip_spacing_in.value;
	double pressure = ultimate_psf(left) - ultimate_psf(right);
	double first = spacing != 0 ? spacing : pressure;
	return first > 0 ? 1 : first < 0 ? -1 : (left > right) - (left < right);
}

static bool is_mode_said(const ListingTest *row)
{
	return is_value(&row->failure_mode.given) && !is_word(&row->failure_mode, "not stated");
}

static bool is_unlike(const ListingTest *closer, const ListingTest *wider)
{
	return !is_mode_said(closer) || !is_mode_said(wider) || strcmp(closer->failure_mode.text, wider->failure_mode.text) != 0;
}

/* Of several rows at one spacing the least stands; a wider spacing is given no more than a closer one. */
static void put_point(Curve *curve, TestPoint *test, const ListingTest **row, const ListingTest *add)
{
	uint32_t n = curve->count;
	curve->fewest = fmin(curve->fewest, is_value(&add->tests_one.given) ? add->tests_one.value : 1);
	curve->included = fmax(curve->included, factor_in(add));
	if (n > 0 && test[n - 1].spacing_in >= add->clip_spacing_in.value)
		return;
	test[n] = (TestPoint){ .spacing_in = add->clip_spacing_in.value, .pressure_psf = ultimate_psf(add) };
	if (n > 0) {
		test[n].pressure_psf = fmin(test[n].pressure_psf, test[n - 1].pressure_psf);
		test[n].unlike = is_unlike(row[n - 1], add);
	}
	row[n] = add;
	curve->count = n + 1;
}

static Curve *curve_make(Case *test)
{
	const Criteria *criteria = test->all->criteria;
	Arena *arena = test->all->arena;
	Curve *curve = TAKE(arena, Curve, 1);
	uint32_t rows = 0, count = 0;
	for (uint32_t i = 0; i < criteria->listing_tests.count; i++)
		rows += is_row_of(&criteria->listing_tests.row[i], test->listed);
	const ListingTest **row = TAKE(arena, const ListingTest *, rows + 1);
	for (uint32_t i = 0; i < criteria->listing_tests.count; i++)
		if (is_row_of(&criteria->listing_tests.row[i], test->listed))
			row[count++] = &criteria->listing_tests.row[i];
	qsort(row, count, sizeof *row, compare_rows);
	TestPoint *point = TAKE(arena, TestPoint, rows + 1);
	*curve = (Curve){ .test = point, .row = row, .fewest = HUGE_VAL, .included = 1 };
	for (uint32_t i = 0; i < count; i++)
		put_point(curve, point, row, row[i]); /* never writes behind where it reads */
	return curve;
}

const Curve *curve_of(Case *test)
{
	void **kept = kept_with(test);
	if (*kept == NULL)
		*kept = curve_make(test);
	return *kept;
}

Bracket bracket_of(const Curve *curve, double laid_in, double tolerance_percent)
{
	const double same = 1e-9;
	Bracket bracket = { .at_in = spacing_as_tested_in(curve->test, curve->count, laid_in, tolerance_percent) };
	while (bracket.wider < curve->count && bracket.at_in > curve->test[bracket.wider].spacing_in * (1 + same))
		bracket.wider++;
	bracket.beyond = bracket.wider == curve->count;
	if (bracket.beyond)
		return bracket;
	bool is_at = bracket.at_in >= curve->test[bracket.wider].spacing_in * (1 - same);
	bracket.closer = bracket.wider > 0 && !is_at ? bracket.wider - 1 : bracket.wider;
	return bracket;
}
