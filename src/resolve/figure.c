/* SPDX-License-Identifier: MIT
 * Which figure of the load standard gives the zones of a roof area: by standard, shape, slope and height.
 */
#include "formula.h"
#include "resolving.h"

#include <math.h>
#include <string.h>
#include <strings.h>

/* Up to this slope the eave height may stand for the mean roof height: note on `h` of chapter 30. */
static const double eave_height_to_deg = 10;

static bool is_covering(const WindFigure *row, double angle_deg, bool high)
{
	return row->high.yes == high && angle_deg > row->over_slope_deg.value && angle_deg <= row->to_slope_deg.value;
}

static const char *why_none(bool has_standard, bool has_shape)
{
	if (!has_standard)
		return "the figures of this load standard are not built in";
	return has_shape ? "no figure covers this roof shape at this slope" : "no figure covers this roof shape";
}

/* Figures differ by height only up to 10 degrees, where the eave height counts. */
static bool is_high(const Resolving *r, const RoofArea *area)
{
	const WindConstant *above = wind_constant(r->all->reference, r->all->submittal->wind.standard.text, "high_above");
	return above != NULL && area->building.eave_height_ft.value > above->value_one.value;
}

static bool is_known(const Resolving *r, const Building *building)
{
	return is_value(&r->all->submittal->wind.standard.given) && is_value(&building->shape.given) &&
		is_value(&building->slope_in_12.given) && is_value(&building->eave_height_ft.given) && is_value(&building->enclosure.given);
}

const WindFigure *figure_of(const Resolving *r, const RoofArea *area, const char **why)
{
	const Building *building = &area->building;
	*why = NULL;
	if (!is_known(r, building))
		return NULL;
	if (is_word(&building->enclosure, "open")) {
		*why = "the roof of an open building takes other figures";
		return NULL;
	}
	double angle = slope_angle_deg(building->slope_in_12.value);
	bool high = is_high(r, area), has_standard = false, has_shape = false;
	for (uint32_t i = 0; i < r->all->reference->wind_figures.count; i++) {
		const WindFigure *row = &r->all->reference->wind_figures.row[i];
		bool is_standard = strcasecmp(row->standard.text, r->all->submittal->wind.standard.text) == 0;
		bool is_shape = is_standard && strcmp(row->shape.text, building->shape.text) == 0;
		if (is_shape && is_covering(row, angle, high))
			return row;
		has_standard |= is_standard;
		has_shape |= is_shape;
	}
	*why = why_none(has_standard, has_shape);
	return NULL;
}

bool is_without_zone(const Resolving *r, const RoofArea *area, const WindFigure *figure, const char *zone)
{
	const Building *building = &area->building;
	bool is_flat = is_value(&building->slope_in_12.given) && slope_angle_deg(building->slope_in_12.value) <= eave_height_to_deg;
	const Number *height = is_flat ? &building->eave_height_ft : &building->mean_roof_height_ft;
	RoofPlan plan = { building->length_ft.value, building->width_ft.value, 0, layout_named(figure->layout.text) };
	if (plan.layout == LAYOUTS || !is_value(&height->given) || !is_value(&building->length_ft.given) ||
	    !is_value(&building->width_ft.given))
		return false;
	const WindConstant *above = wind_constant(r->all->reference, figure->standard.text, "high_above");
	plan.strip_ft = layout_strip_ft(&plan, height->value, above != NULL ? above->value_one.value : INFINITY);
	return plan_area_sq_ft(&plan, zone) <= 1e-9 * plan.length_ft * plan.width_ft;
}
