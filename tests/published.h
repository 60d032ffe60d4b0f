/* SPDX-License-Identifier: MIT
 * Figures from outside the project: every row of the tables in tests/published/, each with body, document, place, year and how well it is
 * known, against the program.
 *
 * The expected value is the printed figure, never a recomputed one. Kinds: `published` only where the document was read;
 * `cross-check` for papers that cannot be cited or were not seen; `memory`; `fitted`, where one input was chosen to fit; `identity`;
 * `composed` for this project; `mismatch`, a printed figure that disagrees with its own inputs and must not agree.
 */
#ifndef PUBLISHED_H
#define PUBLISHED_H

#include "published_figures.h"
#include "published_wind.h"

#include "file.h"
#include "read/csv.h"

typedef struct {
	const char *file;
	double (*held)(const World *world, const PublishedRow *row);
} PublishedFile;

static const PublishedFile published_files[] = { { "figures.csv", held_figure }, { "fastening.csv", held_fastening },
	{ "capacity.csv", held_capacity }, { "wind_velocity.csv", held_velocity }, { "wind_constants.csv", held_constant },
	{ "wind_curves.csv", held_curve }, { "wind_overhang.csv", held_overhang }, { "wind_uplift.csv", held_uplift } };
enum { PUBLISHED_FILES = sizeof published_files / sizeof *published_files };

typedef struct {
	World world;
	PublishedRow *row;
	uint32_t count, room;
	const char *file;
	const char **column;
	uint32_t columns;
} Published;

static inline bool take_published(void *user, const Cell *cell, uint32_t cells)
{
	Published *all = user;
	Arena *arena = all->world.run;
	const char **text = TAKE(arena, const char *, cells);
	for (uint32_t i = 0; i < cells; i++)
		text[i] = arena_text(arena, cell[i].text, cell[i].length);
	if (all->columns == 0) {
		all->column = text;
		all->columns = cells;
		return true;
	}
	assert_int_equal(cells, all->columns);
	PublishedRow row = { .file = all->file, .column = all->column, .cell = text, .columns = cells };
	row.kind = cell_of(&row, "kind");
	row.what = cell_of(&row, "what");
	row.standard = cell_or_null(&row, "standard");
	if (strcmp(all->file, "wind_uplift.csv") == 0)
		row.submittal = roof_of(&all->world, &row);
	all->row = arena_more(arena, all->row, all->count, &all->room, sizeof *all->row);
	all->row[all->count++] = row;
	return true;
}

static inline Published published_make(void)
{
	Published all = { .world = world_make() };
	Arena *arena = all.world.run;
	for (int i = 0; i < PUBLISHED_FILES; i++) {
		const char *path = arena_printf(arena, "tests/published/%s", published_files[i].file), *bytes, *why;
		size_t length;
		assert_int_equal(file_read(arena, path, 1 << 20, &bytes, &length, &why), FILE_READ);
		Complaints complaints = { .arena = arena };
		CsvFile csv = { arena, source_make(arena, path, bytes, length, 0), &complaints, take_published, &all };
		all.file = published_files[i].file;
		all.columns = 0;
		bool whole = csv_read(&csv);
		print_complaints(&complaints);
		assert_true(whole);
	}
	return all;
}

/* What the program gives; NAN where it gives nothing. */
static inline double held_value(const World *world, const PublishedRow *row)
{
	for (int i = 0; i < PUBLISHED_FILES; i++)
		if (strcmp(published_files[i].file, row->file) == 0)
			return published_files[i].held(world, row);
	fail_msg("no file %s", row->file);
	return 0;
}

/* The printed figure and how far the program may lie below and above it; NAN: there is none, and the program may give none. */
typedef struct {
	double value, below, above;
} Printed;

static inline Printed printed_of(const PublishedRow *row)
{
	const char *expected = cell_or_null(row, "expected"), *tolerance = cell_or_null(row, "tolerance");
	if (expected == NULL)
		expected = cell_of(row, "printed");
	Printed printed = { .value = strcmp(expected, "none") == 0 ? (double)NAN : printed_in(expected) };
	printed.below = printed_in(tolerance != NULL ? tolerance : cell_of(row, "below"));
	printed.above = printed_in(tolerance != NULL ? tolerance : cell_of(row, "above"));
	return printed;
}

static inline bool is_printed(const Printed *printed, double held)
{
	if (isnan(printed->value))
		return isnan(held);
	return held >= printed->value - printed->below - 1e-9 && held <= printed->value + printed->above + 1e-9; /* 688.5: 689 */
}

static inline bool row_holds(const World *world, const PublishedRow *row)
{
	Printed printed = printed_of(row);
	return is_printed(&printed, held_value(world, row)) != (strcmp(row->kind, "mismatch") == 0);
}

#endif
