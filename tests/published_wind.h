/* SPDX-License-Identifier: MIT
 * What the program gives for a row of wind_*.csv: uplift through the whole pipeline; velocities, hills, curves and overhangs, which
 * no fact gives as they are printed, through the plain functions and the tables.
 */
#ifndef PUBLISHED_WIND_H
#define PUBLISHED_WIND_H

#include "published_rows.h"

#include "formula.h"

/* ---- wind_uplift.csv ---- */

static inline const Submittal *roof_of(const World *world, const PublishedRow *row)
{
	const Source *source;
	WindRoof roof = { row->standard, cell_of(row, "shape"), cell_of(row, "enclosure"), cell_of(row, "exposure"),
		number_of(row, "slope"), number_of(row, "height"), number_of(row, "length"), number_of(row, "width"),
		number_of(row, "speed"), number_of(row, "parapet"), 0 };
	Node *root = wind_nodes(world->run, &roof, &source);
	Complaints complaints = { .arena = world->run };
	Submittal *submittal = read_submittal(world->run, root, source, world->reference, &complaints);
	print_complaints(&complaints);
	assert_int_equal(complaints.count, 0);
	return submittal;
}

static inline Case *published_zone(const World *world, Arena *arena, const PublishedRow *row)
{
	Inputs inputs = { .submittal = row->submittal, .criteria = world->criteria, .reference = world->reference,
		.registers = world->registers, .as_of = INT32_MIN };
	return zone_or_null(resolve(arena, &inputs), cell_of(row, "zone"));
}

/* Of a zone, else of its roof; NAN where the roof has no such zone, or the fact is not known. */
static inline double value_or_nan(Case *zone, const char *name)
{
	bool is_own = zone != NULL && fact_find(zone->kind, name, strlen(name)) >= 0;
	const Fact *fact = zone != NULL ? wind_fact(is_own ? zone : zone->up, name) : NULL;
	return fact != NULL && fact->state == FACT_KNOWN ? fact->value : (double)NAN;
}

static inline double held_uplift(const World *world, const PublishedRow *row)
{
	Arena *arena = arena_make();
	Case *zone = published_zone(world, arena, row);
	bool is_given = strcmp(row->what, "strength_of_velocity") == 0;
	if (zone != NULL)
		set_area(zone, number_of(row, "area"));
	double value = value_or_nan(zone, is_given ? "pressure_coefficient" : row->what);
	if (is_given)
		value = strength_uplift_psf(number_of(row, "given"), value, value_or_nan(zone, "internal_coefficient"), 16);
	arena_free(arena);
	return value;
}

/* ---- wind_velocity.csv ---- */

static inline const WindExposure *exposure_row(const Reference *reference, const char *standard, const char *exposure)
{
	for (uint32_t i = 0; i < reference->wind_exposures.count; i++) {
		const WindExposure *row = &reference->wind_exposures.row[i];
		if (strcmp(row->standard.text, standard) == 0 && strcmp(row->exposure.text, exposure) == 0)
			return row;
	}
	fail_msg("no row for %s %s", standard, exposure);
	return NULL;
}

static inline double constant_of(const Reference *reference, const char *standard, const char *name)
{
	const WindConstant *row = wind_constant(reference, standard, name);
	if (row == NULL)
		fail_msg("no constant %s of %s", name, standard);
	return row->value_one.value;
}

static inline double feet_in(const char *cell)
{
	return strstr(cell, " m") != NULL ? quantity_in(cell, UNIT_ft) : number_in(cell);
}

static inline double held_velocity(const World *world, const PublishedRow *row)
{
	const Reference *reference = world->reference;
	const char *height = cell_of(row, "height"), *speed = cell_of(row, "speed");
	if (strcmp(row->what, "elevation factor") == 0)
		return elevation_factor_one(feet_in(height), constant_of(reference, row->standard, "elevation_decay"));
	const WindExposure *of = exposure_row(reference, row->standard, cell_of(row, "exposure"));
	ExposureLaw law = { of->alpha_one.value, of->gradient_height_ft.value, of->factor_one.value };
	double exposure = exposure_coefficient_one(feet_in(height), of->least_height_ft.value, &law);
	if (strcmp(row->what, "exposure coefficient") == 0)
		return exposure;
	VelocityPressure pressure = { constant_of(reference, row->standard, "pressure_constant"), exposure, 1, 1, 1, number_in(speed) };
	return asd_uplift_psf(velocity_pressure_psf(&pressure), constant_of(reference, row->standard, "asd_factor"));
}

/* ---- wind_curves.csv, wind_overhang.csv ---- */

static inline const WindCurve *curve_row(const World *world, const PublishedRow *row, const char *side)
{
	const char *at = cell_or_null(row, "at");
	for (uint32_t i = 0; i < world->reference->wind_curves.count; i++) {
		const WindCurve *curve = &world->reference->wind_curves.row[i];
		if (strcmp(curve->standard.text, row->standard) != 0 || strcmp(curve->figure.text, cell_of(row, "figure")) != 0 ||
		    strcmp(curve->zone.text, cell_of(row, "zone")) != 0 || strcmp(curve->side.text, side) != 0 ||
		    (at != NULL && *at != '\0' && fabs(curve->at_one.value - number_in(at)) > 1e-9))
			continue;
		return curve;
	}
	return NULL;
}

static inline double held_curve_at(const World *world, const PublishedRow *row, const char *side)
{
	const WindCurve *curve = curve_row(world, row, side);
	if (curve == NULL)
		return (double)NAN;
	Corner corner[] = { { curve->area_1_sq_ft.value, curve->value_1_one.value }, { curve->area_2_sq_ft.value, curve->value_2_one.value },
		{ curve->area_3_sq_ft.value, curve->value_3_one.value } };
	size_t count = is_value(&curve->area_3_sq_ft.given) ? 3 : is_value(&curve->area_2_sq_ft.given) ? 2 : 1;
	return curve_at(corner, count, number_of(row, "area"));
}

/* The value at an area, or a cell of the row itself. */
static inline double held_curve(const World *world, const PublishedRow *row)
{
	const WindCurve *curve = curve_row(world, row, cell_of(row, "side"));
	const Field *field = field_find(&WindCurve_record, row->what, strlen(row->what));
	if (field == NULL || curve == NULL)
		return curve != NULL ? held_curve_at(world, row, cell_of(row, "side")) : (double)NAN;
	return ((const Number *)(const void *)given_in(field, curve))->value;
}

/* Exposure B at 30 ft, 0.70 as printed; the constant is the one of metric units: 0.613 N/m2 at 1 m/s. */
static inline double held_overhang(const World *world, const PublishedRow *row)
{
	double metric = quantity_in("0.613 Pa", UNIT_psf), speed = quantity_in(cell_of(row, "speed"), UNIT_m_per_s);
	VelocityPressure of = { metric, 0.70, 1, constant_of(world->reference, row->standard, "directionality_factor"), 1, speed };
	return -held_curve_at(world, row, "overhang") * velocity_pressure_psf(&of);
}

/* ---- wind_constants.csv ---- */

static inline const WindHill *hill_row(const Reference *reference, const char *terrain, const char *exposure)
{
	for (uint32_t i = 0; i < reference->wind_hills.count; i++)
		if (strcmp(reference->wind_hills.row[i].terrain.text, terrain) == 0 &&
		    strcmp(reference->wind_hills.row[i].exposure.text, exposure) == 0)
			return &reference->wind_hills.row[i];
	fail_msg("no hill %s %s", terrain, exposure);
	return NULL;
}

static inline double internal_of(const Reference *reference, const char *standard, const char *enclosure)
{
	for (uint32_t i = 0; i < reference->wind_enclosures.count; i++)
		if (strcmp(reference->wind_enclosures.row[i].standard.text, standard) == 0 &&
		    strcmp(reference->wind_enclosures.row[i].enclosure.text, enclosure) == 0)
			return reference->wind_enclosures.row[i].internal_coefficient_one.value;
	fail_msg("no enclosure %s of %s", enclosure, standard);
	return 0;
}

/* `key`: of a hill "ridge C"; of the factor of a hill its shape, exposure, H, Lh, x and z; of an exposure its letter. */
static inline double held_constant(const World *world, const PublishedRow *row)
{
	const Reference *reference = world->reference;
	const char *key = cell_of(row, "key"), *exposure = strchr(key, ' ');
	if (strncmp(row->what, "hill", 4) == 0) {
		const WindHill *hill = hill_row(reference, arena_text(world->run, key, (size_t)(exposure - key)),
						arena_text(world->run, exposure + 1, 1));
		if (strcmp(row->what, "hill multiplier") == 0)
			return hill->multiplier_one.value;
		if (strcmp(row->what, "hill attenuation with height") == 0)
			return hill->height_attenuation_one.value;
		if (strcmp(row->what, "hill attenuation upwind") == 0)
			return hill->upwind_attenuation_one.value;
		if (strcmp(row->what, "hill attenuation downwind") == 0)
			return hill->downwind_attenuation_one.value;
		if (strcmp(row->what, "hill least height") == 0)
			return hill->least_height_ft.value;
		double in[4] = { 0 };
		char *end = (char *)(uintptr_t)(exposure + 2);
		for (int i = 0; i < 4; i++)
			in[i] = strtod(end, &end);
		Hill of = { hill->multiplier_one.value, hill->height_attenuation_one.value, hill->upwind_attenuation_one.value,
			hill->downwind_attenuation_one.value, in[0], in[1], in[2] };
		return topographic_factor_one(&of, in[3]);
	}
	if (strcmp(row->what, "internal coefficient") == 0)
		return internal_of(reference, row->standard, key);
	if (strcmp(row->what, "exposure alpha") == 0)
		return exposure_row(reference, row->standard, key)->alpha_one.value;
	if (strcmp(row->what, "exposure gradient height") == 0)
		return exposure_row(reference, row->standard, key)->gradient_height_ft.value;
	if (strcmp(row->what, "exposure factor") == 0)
		return exposure_row(reference, row->standard, key)->factor_one.value;
	if (strcmp(row->what, "exposure least height") == 0)
		return exposure_row(reference, row->standard, key)->least_height_ft.value;
	if (strcmp(row->what, "exposure floor height") == 0)
		return exposure_row(reference, row->standard, key)->floor_height_ft.value;
	return constant_of(reference, row->standard, row->what);
}

#endif
