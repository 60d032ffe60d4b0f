/* SPDX-License-Identifier: MIT
 * Velocity pressure at a roof area: height, exposure, topography, elevation, and the width of the edge strips.
 *
 * One way for every edition of the load standard: what differs between them stands in data/reference/wind_*.csv.
 */
#include "wind.h"

#include "formula.h"
#include "text.h"

#include <math.h>

const char *fetch_standard(Case *fact)
{
	return GIVEN(fact, submittal, Submittal, wind.standard);
}

double fetch_wind_constant(Case *fact, const char *standard, const char *name)
{
	if (standard[0] == '\0')
		return 0;
	const WindConstant *row = wind_constant(fact->all->reference, standard, name);
	if (row == NULL)
		return REFUSE(fact, "the figures of this load standard are not built in");
	return CONSTANT(fact, "wind_constants.csv", name, row->value_one.value, row->source.text);
}

double fetch_cell(Case *fact, const TableRow *row, const char *column, const Number *value)
{
	const char *words = arena_printf(fact->all->arena, "%s %s %s", row->table, row->row, column);
	return fetch_constant(fact, words, value->value, row->source);
}

double fetch_height_ft(Case *fact)
{
	return OF(fact, roof_area_design_height_ft);
}

double fetch_least_width_ft(Case *fact)
{
	double length = GIVEN(fact, roof_area, RoofArea, building.length_ft);
	double width = GIVEN(fact, roof_area, RoofArea, building.width_ft);
	return fmin(length, width);
}

/* Below 90 ft the figures of low buildings are permitted as well, where a roof is no higher than its least width. */
double fetch_low_rise_ft(Case *fact)
{
	double height = fetch_height_ft(fact), low = fetch_wind_constant(fact, fetch_standard(fact), "low_rise_height");
	if (!ready(fact) || height <= low)
		return low;
	Asked chosen = ask(outward(fact, KIND_submittal), offsetof(Submittal, wind.low_rise_figures));
	if (fetch_silent(fact, chosen) || !fetch_yes(fact, chosen))
		return low;
	double below = fetch_wind_constant(fact, fetch_standard(fact), "low_rise_permitted_below"), least = fetch_least_width_ft(fact);
	return ready(fact) && height < below && height <= least ? below : low;
}

/* Steeper roofs have the same figures at any height. */
static bool is_other_when_high(const Case *area, const char *standard, const char *shape, double angle_deg)
{
	for (uint32_t i = 0; i < area->all->reference->wind_figures.count; i++) {
		const WindFigure *row = &area->all->reference->wind_figures.row[i];
		if (row->high.yes && same_text(row->standard.text, standard) && same_text(row->shape.text, shape) &&
		    angle_deg > row->over_slope_deg.value && angle_deg <= row->to_slope_deg.value)
			return layout_named(row->layout.text) == LAYOUT_HIGH;
	}
	return false;
}

/* Where two figures are permitted the sheet says so, and which was taken. */
double roof_area_low_rise_taken_yes(Case *area)
{
	const char *standard = fetch_standard(area), *shape = GIVEN(area, roof_area, RoofArea, building.shape);
	double angle = OF(area, roof_area_slope_angle_deg), height = fetch_height_ft(area);
	double low = fetch_wind_constant(area, standard, "low_rise_height");
	if (!ready(area))
		return 0;
	if (height <= low)
		return SKIP(area, "the roof is low");
	if (!is_other_when_high(area, standard, shape, angle))
		return SKIP(area, "the figures of this roof are the same at any height");
	double taken = fetch_low_rise_ft(area), least = fetch_least_width_ft(area);
	double below = fetch_wind_constant(area, standard, "low_rise_permitted_below");
	bool is_permitted = height < below && height <= least;
	if (ready(area))
		note(area, taken > low ? "chosen and permitted; those of higher buildings are permitted as well"
			: is_permitted ? "those of higher buildings are taken; the others are permitted as well"
				       : "those of low buildings are not permitted here");
	return ready(area) && taken > low;
}

/* ---- slope and height ---- */

double roof_area_slope_angle_deg(Case *area)
{
	double slope = GIVEN(area, roof_area, RoofArea, building.slope_in_12);
	return ready(area) ? slope_angle_deg(slope) : 0;
}

/* Up to 10 degrees the eave height may stand for the mean roof height. */
double roof_area_design_height_ft(Case *area)
{
	double angle = OF(area, roof_area_slope_angle_deg);
	if (!ready(area) || angle <= 10)
		return GIVEN(area, roof_area, RoofArea, building.eave_height_ft);
	area->now->formula = "{building.mean_roof_height}";
	return GIVEN(area, roof_area, RoofArea, building.mean_roof_height_ft);
}

/* ---- exposure ---- */

static const WindExposure *exposure_row(const Reference *reference, const char *standard, const char *exposure)
{
	for (uint32_t i = 0; i < reference->wind_exposures.count; i++) {
		const WindExposure *row = &reference->wind_exposures.row[i];
		if (same_text(row->standard.text, standard) && same_text(row->exposure.text, exposure))
			return row;
	}
	return NULL;
}

/* From ASCE 7-16 on the floor of Exposure B is the maker's choice: the note on it names chapter 28, not chapter 30. */
static double fetch_least_height_ft(Case *area, const WindExposure *row, const TableRow *cells)
{
	const Yes *floor = &area->all->criteria->edition.exposure_b_floor;
	CONSTANT(area, "criteria.yaml", "exposure_b_floor", floor->yes, NULL);
	if (!floor->yes || row->floor_height_ft.value <= row->least_height_ft.value)
		return fetch_cell(area, cells, "least_height", &row->least_height_ft);
	area->now->formula = "{factor} * (max({design_height}, {floor_height}) / {gradient_height}) ^ (2 / {alpha})";
	return fetch_cell(area, cells, "floor_height", &row->floor_height_ft);
}

double roof_area_exposure_coefficient_one(Case *area)
{
	double height = fetch_height_ft(area);
	const char *standard = fetch_standard(area), *exposure = GIVEN(area, submittal, Submittal, wind.exposure);
	if (!ready(area))
		return 0;
	const WindExposure *row = exposure_row(area->all->reference, standard, exposure);
	if (row == NULL)
		return REFUSE(area, "the figures of this load standard are not built in");
	const char *words = arena_printf(area->all->arena, "%s %s", row->standard.text, row->exposure.text);
	TableRow cells = { "wind_exposures.csv", words, row->source.text };
	double least = fetch_least_height_ft(area, row, &cells);
	ExposureLaw law;
	law.factor = fetch_cell(area, &cells, "factor", &row->factor_one);
	law.gradient_ft = fetch_cell(area, &cells, "gradient_height", &row->gradient_height_ft);
	if (height >= law.gradient_ft)
		area->now->formula = "{factor}";
	law.alpha = fetch_cell(area, &cells, "alpha", &row->alpha_one);
	return exposure_coefficient_one(height, least, &law);
}

/* ---- topography ---- */

/* A hill steeper than H/Lh = 0.5 counts as one with Lh = 2 H. */
#define HALF_LENGTH "max({wind.topography.half_length}, 2 * {wind.topography.height})"
static const char over_a_hill[] = "(1 + {multiplier} * {wind.topography.height} / " HALF_LENGTH
	" * max(0, 1 - max({wind.topography.distance}, 0 - {wind.topography.distance}) / ({%s} * " HALF_LENGTH
	")) * exp(0 - {height_attenuation} * {design_height} / " HALF_LENGTH ")) ^ 2";

static const WindHill *hill_row(const Reference *reference, const char *terrain, const char *exposure)
{
	for (uint32_t i = 0; i < reference->wind_hills.count; i++) {
		const WindHill *row = &reference->wind_hills.row[i];
		if (same_text(row->terrain.text, terrain) && same_text(row->exposure.text, exposure))
			return row;
	}
	return NULL;
}

static double over_hill(Case *area, const char *terrain)
{
	const char *exposure = GIVEN(area, submittal, Submittal, wind.exposure);
	double height = fetch_height_ft(area);
	Hill hill = { 0 };
	hill.height_ft = GIVEN(area, submittal, Submittal, wind.topography.height_ft);
	hill.half_length_ft = GIVEN(area, submittal, Submittal, wind.topography.half_length_ft);
	hill.distance_ft = GIVEN(area, submittal, Submittal, wind.topography.distance_ft);
	if (!ready(area))
		return 0;
	const WindHill *row = hill_row(area->all->reference, terrain, exposure);
	if (row == NULL || hill.half_length_ft <= 0)
		return REFUSE(area, "no factors for ground of this shape are built in");
	TableRow cells = { "wind_hills.csv", arena_printf(area->all->arena, "%s %s", terrain, exposure), row->source.text };
	double least = fetch_cell(area, &cells, "least_height", &row->least_height_ft);
	if (!is_hill_to_count(&hill, least)) {
		area->now->formula = "1, since the hill is too low or too gentle to count";
		return 1;
	}
	hill.multiplier = fetch_cell(area, &cells, "multiplier", &row->multiplier_one);
	hill.height_attenuation = fetch_cell(area, &cells, "height_attenuation", &row->height_attenuation_one);
	const char *side = hill.distance_ft < 0 ? "upwind_attenuation" : "downwind_attenuation";
	hill.upwind_attenuation = row->upwind_attenuation_one.value;
	hill.downwind_attenuation = row->downwind_attenuation_one.value;
	fetch_cell(area, &cells, side, hill.distance_ft < 0 ? &row->upwind_attenuation_one : &row->downwind_attenuation_one);
	area->now->formula = arena_printf(area->all->arena, over_a_hill, side);
	return topographic_factor_one(&hill, height);
}

/* The engineer's own factor goes before one from the shape of the ground. */
double roof_area_topographic_factor_one(Case *area)
{
	Asked stated = ask(outward(area, KIND_submittal), offsetof(Submittal, wind.topography.factor_one));
	if (is_value(stated.given))
		return fetch_number(area, stated);
	const char *terrain = GIVEN(area, submittal, Submittal, wind.topography.terrain);
	if (!ready(area))
		return 0;
	if (!same_text(terrain, "none"))
		return over_hill(area, terrain);
	area->now->formula = "1, since the ground is level";
	return 1;
}

/* ---- pressure ---- */

double roof_area_elevation_factor_one(Case *area)
{
	double ground = GIVEN(area, submittal, Submittal, wind.ground_elevation_ft);
	double decay = fetch_wind_constant(area, fetch_standard(area), "elevation_decay");
	return ready(area) ? elevation_factor_one(ground, decay) : 0;
}

double roof_area_directionality_factor_one(Case *area)
{
	return fetch_wind_constant(area, fetch_standard(area), "directionality_factor");
}

double roof_area_velocity_pressure_psf(Case *area)
{
	const char *standard = fetch_standard(area);
	VelocityPressure of = { .directionality = 1 };
	of.constant = fetch_wind_constant(area, standard, "pressure_constant");
	of.exposure = OF(area, roof_area_exposure_coefficient_one);
	of.topographic = OF(area, roof_area_topographic_factor_one);
	of.elevation = OF(area, roof_area_elevation_factor_one);
	of.speed_mph = GIVEN(area, submittal, Submittal, wind.basic_speed_mph);
	bool with_directionality = fetch_wind_constant(area, standard, "directionality_in_velocity_pressure") > 0;
	if (with_directionality)
		of.directionality = OF(area, roof_area_directionality_factor_one);
	else
		area->now->formula = "{pressure_constant} * {exposure_coefficient} * {topographic_factor} * {elevation_factor} * "
				     "{wind.basic_speed} ^ 2";
	return ready(area) ? velocity_pressure_psf(&of) : 0;
}

/* ---- strips ---- */

double roof_area_zone_width_ft(Case *area)
{
	double least = fetch_least_width_ft(area), height = fetch_height_ft(area);
	double low = fetch_low_rise_ft(area);
	if (!ready(area))
		return 0;
	if (height <= low)
		return zone_width_ft(least, height);
	area->now->formula = "max(0.1 * min({building.length}, {building.width}), 3)";
	return high_zone_width_ft(least);
}
