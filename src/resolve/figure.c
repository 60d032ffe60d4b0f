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

static double constant_or(const Resolving *r, const char *name, double otherwise)
{
	const Text *standard = &r->all->submittal->wind.standard;
	const WindConstant *row = is_value(&standard->given) ? wind_constant(r->all->reference, standard->text, name) : NULL;
	return row != NULL ? row->value_one.value : otherwise;
}

/* The height up to which the figures of low buildings hold; below 90 ft they may be chosen for a roof no higher than its least
 * width. */
static double low_rise_ft(const Resolving *r, const Building *building, double height_ft)
{
	double low = constant_or(r, "low_rise_height", INFINITY), below = constant_or(r, "low_rise_permitted_below", 0);
	const Yes *chosen = &r->all->submittal->wind.low_rise_figures;
	bool has_width = is_value(&building->length_ft.given) && is_value(&building->width_ft.given);
	bool is_wide = has_width && height_ft <= fmin(building->length_ft.value, building->width_ft.value);
	return is_value(&chosen->given) && chosen->yes && is_wide && height_ft < below ? below : low;
}

/* Figures differ by height only up to 10 degrees, where the eave height counts. */
static bool is_high(const Resolving *r, const RoofArea *area)
{
	double height = area->building.eave_height_ft.value;
	return height > low_rise_ft(r, &area->building, height);
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
	plan.strip_ft = layout_strip_ft(&plan, height->value, low_rise_ft(r, building, height->value));
	return plan_area_sq_ft(&plan, zone) <= 1e-9 * plan.length_ft * plan.width_ft;
}
