/* SPDX-License-Identifier: MIT
 * Figures from outside the project (published.h) against the program. Each is tried once more with a printed figure just outside
 * of what agrees, which must be rejected, so that no row can pass by being loose.
 */
#include "../published.h"

static int make(void **state)
{
	static Published all;
	all = published_make();
	*state = &all;
	return 0;
}

static int unmake(void **state)
{
	arena_free(((Published *)*state)->world.run);
	return 0;
}

static void print_row(const PublishedRow *row, double held)
{
	print_error("%s: held %.7g:", row->file, held);
	for (uint32_t i = 0; i < row->columns; i++)
		print_error(" %s%s", row->cell[i], i + 1 < row->columns ? "," : "\n");
}

static void all_agree(void **state)
{
	const Published *all = *state;
	uint32_t wrong = 0;
	for (uint32_t i = 0; i < all->count; i++)
		if (!row_holds(&all->world, &all->row[i])) {
			wrong++;
			print_row(&all->row[i], held_value(&all->world, &all->row[i]));
		}
	assert_int_equal(wrong, 0);
}

/* What lies just outside is rejected, and a tolerance is a small part of the figure; of prices cut to whole pounds up to 1 psf. */
static void none_is_loose(void **state)
{
	const Published *all = *state;
	uint32_t loose = 0;
	for (uint32_t i = 0; i < all->count; i++) {
		Printed printed = printed_of(&all->row[i]);
		if (isnan(printed.value))
			continue;
		bool is_loose = is_printed(&printed, printed.value - 1.01 * printed.below - 2e-9) ||
			is_printed(&printed, printed.value + 1.01 * printed.above + 2e-9);
		bool is_wide = printed.below + printed.above > 0.16 * fabs(printed.value) + 0.01;
		if (is_loose || is_wide || !(printed.below > 0 && printed.above > 0)) {
			loose++;
			print_row(&all->row[i], printed.value);
		}
	}
	assert_int_equal(loose, 0);
}

static void all_name_their_paper(void **state)
{
	const Published *all = *state;
	for (uint32_t i = 0; i < all->count; i++) {
		const PublishedRow *row = &all->row[i];
		assert_true(*cell_of(row, "body") != '\0' && *cell_of(row, "document") != '\0' && *cell_of(row, "place") != '\0');
		assert_true(*cell_of(row, "known_by") != '\0');
		bool counts = strcmp(row->kind, "published") == 0, guide = strstr(cell_of(row, "document"), "Guide") != NULL;
		if (counts && strcmp(cell_of(row, "known_by"), "read") != 0 && !guide)
			fail_msg("%s: %s counts as published and was not read", row->file, cell_of(row, "document"));
		if (counts && strstr(cell_of(row, "body"), "not named") != NULL)
			fail_msg("%s: a source without a name counts as published", row->file);
	}
}

/* Rows of a file and kind. */
static uint32_t count_of(const Published *all, const char *file, const char *kind)
{
	uint32_t count = 0;
	for (uint32_t i = 0; i < all->count; i++)
		count += (file == NULL || strcmp(all->row[i].file, file) == 0) && strcmp(all->row[i].kind, kind) == 0;
	return count;
}

static void there_are_as_many_as_there_were(void **state)
{
	const Published *all = *state;
	print_message("%u figures, %u of them published\n", all->count, count_of(all, NULL, "published"));
	assert_int_equal(count_of(all, "fastening.csv", "published"), 52);
	assert_int_equal(count_of(all, "fastening.csv", "mismatch"), 1);
	assert_true(count_of(all, "wind_uplift.csv", "published") >= 197);
	assert_true(count_of(all, "wind_overhang.csv", "published") >= 40);
	assert_true(count_of(all, "figures.csv", "published") >= 31);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(all_agree),
		cmocka_unit_test(none_is_loose),
		cmocka_unit_test(all_name_their_paper),
		cmocka_unit_test(there_are_as_many_as_there_were),
	};
	return cmocka_run_group_tests_name("published", tests, make, unmake) != 0;
}
