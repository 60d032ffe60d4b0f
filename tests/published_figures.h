/* SPDX-License-Identifier: MIT
 * What the program holds for a row of figures.csv, and what its plain functions give for one of fastening.csv or capacity.csv.
 */
#ifndef PUBLISHED_FIGURES_H
#define PUBLISHED_FIGURES_H

#include "published_rows.h"

#include "formula.h"

/* ---- cells of the reference tables ---- */

static inline const UpliftClass *class_row(const Reference *reference, double number)
{
	for (uint32_t i = 0; i < reference->uplift_classes.count; i++)
		if (reference->uplift_classes.row[i].uplift_class_one.value == number)
			return &reference->uplift_classes.row[i];
	return NULL;
}

static inline const ScrewHead *head_row(const Reference *reference, const char *size)
{
	for (uint32_t i = 0; i < reference->screw_heads.count; i++)
		if (strcmp(reference->screw_heads.row[i].size.text, size) == 0)
			return &reference->screw_heads.row[i];
	fail_msg("no head of %s", size);
	return NULL;
}

/* "#12 3" is point 3 of #12. */
static inline const DrillPoint *point_row(const Reference *reference, const char *key)
{
	const char *blank = strchr(key, ' ');
	for (uint32_t i = 0; blank != NULL && i < reference->drill_points.count; i++) {
		const DrillPoint *row = &reference->drill_points.row[i];
		size_t length = strlen(row->size.text);
		if (length == (size_t)(blank - key) && strncmp(row->size.text, key, length) == 0 && row->point_one.value == number_in(blank))
			return row;
	}
	return NULL;
}

static inline double wood_gravity(const Reference *reference, const char *wood)
{
	for (uint32_t i = 0; i < reference->woods.count; i++)
		if (strcmp(reference->woods.row[i].wood.text, wood) == 0)
			return reference->woods.row[i].gravity_one.value;
	return 0;
}

static inline double grade_tensile(const Reference *reference, double grade)
{
	for (uint32_t i = 0; i < reference->steel_grades.count; i++)
		if (reference->steel_grades.row[i].grade_ksi.value == grade)
			return reference->steel_grades.row[i].tensile_ksi.value;
	return 0;
}

/* "steel, zinc coated"; without a surface the bare metal. */
static inline const MetalRow *metal_row(const Reference *reference, const char *key)
{
	size_t length = strcspn(key, ",");
	const char *surface = key[length] == ',' ? key + length + 2 : "bare";
	for (uint32_t i = 0; i < reference->metals.count; i++) {
		const MetalRow *row = &reference->metals.row[i];
		if (strlen(row->metal.text) == length && strncmp(row->metal.text, key, length) == 0 && strcmp(row->surface.text, surface) == 0)
			return row;
	}
	fail_msg("no metal %s", key);
	return NULL;
}

/* ---- figures.csv: what the program holds; 0 where it holds none ---- */

static inline double held_class(const Reference *reference, const char *key, bool maximum)
{
	const UpliftClass *row = class_row(reference, number_in(key));
	return row == NULL ? 0 : maximum ? row->maximum_static_psf.value : row->nominal_static_psf.value;
}

static inline double held_point(const Reference *reference, const char *key, bool least)
{
	const DrillPoint *row = point_row(reference, key);
	return row == NULL ? 0 : least ? row->least_in.value : row->greatest_in.value;
}

/* The printed figure itself if it is taken as the size of the key, else 0. */
static inline double held_sold(const Reference *reference, const char *family, const PublishedRow *row)
{
	const char *key = cell_of(row, "key");
	double printed = printed_in(cell_of(row, "printed"));
	bool is_panel = strcmp(family, "wood panel") == 0;
	double design = is_panel ? quantity_in(key, UNIT_in) : gauge_thickness(reference, family, number_in(key));
	return is_one_trade_size(reference, family, design, printed) ? printed : 0;
}

static inline double held_figure(const World *world, const PublishedRow *row)
{
	const Reference *reference = world->reference;
	const char *what = row->what, *key = cell_of(row, "key"), *sold = strstr(what, " sold as");
	if (sold != NULL)
		return held_sold(reference, arena_text(world->run, what, (size_t)(sold - what)), row);
	if (strcmp(what, "deck design thickness") == 0)
		return gauge_thickness(reference, "deck", number_in(key));
	if (strstr(what, " thickness") != NULL)
		return gauge_thickness(reference, arena_text(world->run, what, strcspn(what, " ")), number_in(key));
	if (strcmp(what, "screw diameter") == 0)
		return screw_diameter(reference, key);
	if (strcmp(what, "head across corners") == 0)
		return head_row(reference, key)->across_corners_in.value;
	if (strcmp(what, "screw tension") == 0)
		return head_row(reference, key)->tension_lb.value;
	if (strncmp(what, "drill point", 11) == 0)
		return held_point(reference, key, strstr(what, "least") != NULL);
	if (strncmp(what, "uplift class", 12) == 0)
		return held_class(reference, key, strstr(what, "maximum") != NULL);
	if (strcmp(what, "gravity") == 0)
		return wood_gravity(reference, key);
	if (strcmp(what, "tensile strength") == 0)
		return grade_tensile(reference, number_in(key));
	if (strcmp(what, "expansion, millionths") == 0)
		return 1e6 * metal_row(reference, key)->expansion_one.value;
	if (strcmp(what, "weight an inch thick") == 0)
		return metal_row(reference, key)->weight_an_inch_thick_psf.value;
	if (strcmp(what, "anodic index") == 0)
		return metal_row(reference, key)->anodic_index_V.value;
	fail_msg("nothing is called %s", what);
	return 0;
}

/* ---- fastening.csv: plain functions; what a, b and c are follows from `formulas` ---- */

/* A number, or a name of the reference tables: #12, 5/16, head #12, framing 25. */
static inline double input_in(const Reference *reference, const char *cell)
{
	if (strncmp(cell, "head ", 5) == 0)
		return head_row(reference, cell + 5)->across_corners_in.value;
	if (*cell == '#' || strchr(cell, '/') != NULL)
		return screw_diameter(reference, cell);
	if (strncmp(cell, "framing ", 8) == 0)
		return gauge_thickness(reference, "framing", number_in(cell + 8));
	return *cell != '\0' ? number_in(cell) : 0;
}

/* thickness, diameter, tensile */
static inline double pullout_over_3(const double *x)
{
	return screw_pullout_lb(x[0], x[1], x[2]) / 3;
}

/* thickness, head, tensile */
static inline double pullover_over_3(const double *x)
{
	return screw_pullover_lb(x[0], x[1], 0.5, x[2]) / 3;
}

/* gravity, diameter */
static inline double lag(const double *x)
{
	return lag_screw_withdrawal_lb_per_in(x[0], x[1]);
}

static inline double wood_screw(const double *x)
{
	return wood_screw_withdrawal_lb_per_in(x[0], x[1]);
}

/* The ultimate load has the same form with another factor. */
static inline double ultimate(const double *x)
{
	return wood_screw_withdrawal_lb_per_in(x[0], x[1]) * 15700 / 2850;
}

/* pressure, width, spacing */
static inline double fastener_load(const double *x)
{
	return clip_load_lb(x[0], x[1], x[2]);
}

/* expansion for a million degrees, length, difference */
static inline double movement(const double *x)
{
	return movement_in(x[0] / 1e6, x[1], x[2]);
}

/* expansion for a million degrees, difference, travel */
static inline double longest_run(const double *x)
{
	return longest_run_ft(x[0] / 1e6, x[1], x[2]);
}

static inline double potential(const double *x)
{
	return potential_difference_V(x[0], x[1]);
}

static inline double held_fastening(const World *world, const PublishedRow *row)
{
	static const struct {
		const char *what;
		double (*of)(const double *x);
	} formulas[] = { { "pull-out over 3", pullout_over_3 }, { "pull-over over 3", pullover_over_3 }, { "lag withdrawal", lag },
		{ "wood screw withdrawal", wood_screw }, { "ultimate withdrawal", ultimate }, { "fastener load", fastener_load },
		{ "movement", movement }, { "longest run", longest_run }, { "potential difference", potential } };
	const double x[] = { input_in(world->reference, cell_of(row, "a")), input_in(world->reference, cell_of(row, "b")),
		input_in(world->reference, cell_of(row, "c")) };
	for (size_t i = 0; i < sizeof formulas / sizeof *formulas; i++)
		if (strcmp(formulas[i].what, row->what) == 0)
			return formulas[i].of(x);
	fail_msg("no formula %s", row->what);
	return 0;
}

/* ---- capacity.csv: pressures between tests, allowables, loads of clips ---- */

static inline size_t read_inputs(const char *text, double *input, size_t room)
{
	size_t count = 0;
	for (char *end; *text != '\0'; text = end + strspn(end, " ")) {
		assert_true(count < room);
		input[count++] = strtod(text, &end);
		assert_true(end > text);
	}
	return count;
}

static inline double held_capacity(const World *world, const PublishedRow *row)
{
	static const char *const names[] = { "straight line", "reaction", "power law", "lesser curve", "next wider" };
	double in[8];
	size_t count = read_inputs(cell_of(row, "inputs"), in, 8);
	(void)world;
	if (strcmp(row->what, "allowable pressure") == 0)
		return allowable_pressure_psf(in[0], in[1], in[2]);
	if (strcmp(row->what, "clip load") == 0 || strcmp(row->what, "row load") == 0)
		return clip_load_lb(in[0], in[1], in[2]);
	TestPoint test[] = { { .spacing_in = in[0], .pressure_psf = in[1] }, { .spacing_in = in[2], .pressure_psf = in[3] } };
	assert_int_equal(count, 5);
	for (size_t i = 0; i < sizeof names / sizeof *names; i++)
		if (strcmp(row->what, names[i]) == 0)
			return tested_pressure_psf(test, 2, in[4], (Interpolation)i);
	fail_msg("nothing is called %s", row->what);
	return 0;
}

#endif
