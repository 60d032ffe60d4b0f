/* SPDX-License-Identifier: MIT
 * External pressure coefficient of a zone, read off the curve of its figure at the effective area of a clip.
 *
 * A figure has one curve a zone, or two between which the height over the width or the slope leads. Figures give uplift as
 * negative; the coefficient here is positive.
 */
#include "formula.h"
#include "number.h"
#include "text.h"
#include "wind.h"

#include <string.h>

enum { MOST_CORNERS = 3 };

/* One row of wind_curves.csv at this slope. */
typedef struct {
	const WindCurve *row;
	Corner corner[MOST_CORNERS];
	size_t count, from, to; /* `from`, `to`: the corners between which the area lies; one and the same on a plateau */
} Read;

static const Number *area_of_corner(const WindCurve *row, size_t i)
{
	return i == 0 ? &row->area_1_sq_ft : i == 1 ? &row->area_2_sq_ft : &row->area_3_sq_ft;
}

static const Number *value_of_corner(const WindCurve *row, size_t i)
{
	return i == 0 ? &row->value_1_one : i == 1 ? &row->value_2_one : &row->value_3_one;
}

/* What a degree of slope adds, or NULL. */
static const Number *area_by_slope(const WindCurve *row, size_t i)
{
	return i == 0 ? &row->area_1_by_slope_one : i == 1 ? &row->area_2_by_slope_one : NULL;
}

static const Number *value_by_slope(const WindCurve *row, size_t i)
{
	return i == 0 ? &row->value_1_by_slope_one : i == 1 ? &row->value_2_by_slope_one : NULL;
}

static double at_slope(const Number *base, const Number *by_slope, double angle_deg)
{
	return base->value + (by_slope != NULL && is_value(&by_slope->given) ? by_slope->value * angle_deg : 0);
}

static Read read_curve(const WindCurve *row, double angle_deg, double area_sq_ft)
{
	Read read = { .row = row };
	for (size_t i = 0; i < MOST_CORNERS && is_value(&area_of_corner(row, i)->given); i++) {
		read.corner[i].area_sq_ft = at_slope(area_of_corner(row, i), area_by_slope(row, i), angle_deg);
		read.corner[i].value = at_slope(value_of_corner(row, i), value_by_slope(row, i), angle_deg);
		read.count++;
	}
	while (read.to < read.count && area_sq_ft >= read.corner[read.to].area_sq_ft)
		read.to++;
	bool is_plateau = read.to == 0 || read.to == read.count || area_sq_ft <= read.corner[read.to - 1].area_sq_ft;
	read.from = read.to == 0 ? 0 : read.to - 1;
	if (is_plateau)
		read.to = read.from;
	return read;
}

/* ---- how it is worked out ---- */

/* "{value_2}", or with its slope; `number` true: the figure itself, where two curves would give two meanings to one name. */
static const char *told_cell(Case *zone, const Read *read, const char *column, bool number)
{
	size_t i = (size_t)(column[strlen(column) - 1] - '1');
	bool is_area = column[0] == 'a';
	const Number *base = is_area ? area_of_corner(read->row, i) : value_of_corner(read->row, i);
	const Number *by_slope = is_area ? area_by_slope(read->row, i) : value_by_slope(read->row, i);
	Arena *arena = zone->all->arena;
	const char *places = is_value(&read->row->at_one.given)
		? arena_printf(arena, " %s %s", read->row->along.text, number_shortest(arena, read->row->at_one.value)) : "";
	const char *words = arena_printf(arena, "%s %s %s %s%s", read->row->standard.text, read->row->figure.text,
					 read->row->zone.text, read->row->side.text, places);
	TableRow cells = { "wind_curves.csv", words, read->row->source.text };
	fetch_cell(zone, &cells, column, base);
	if (number)
		return number_shortest(arena, base->value);
	if (by_slope == NULL || !is_value(&by_slope->given))
		return arena_printf(arena, "{%s}", column);
	fetch_cell(zone, &cells, arena_printf(arena, "%s_by_slope", column), by_slope);
	return arena_printf(arena, "({%s} + {%s_by_slope} * {slope_angle})", column, column);
}

static const char *told_curve(Case *zone, const Read *read, bool number)
{
	static const char *const values[] = { "value_1", "value_2", "value_3" }, *const areas[] = { "area_1", "area_2", "area_3" };
	const char *from = told_cell(zone, read, values[read->from], number);
	if (read->from == read->to)
		return from;
	const char *to = told_cell(zone, read, values[read->to], number);
	const char *begin = told_cell(zone, read, areas[read->from], number), *end = told_cell(zone, read, areas[read->to], number);
	return arena_printf(zone->all->arena, "(%s + (%s - %s) * log10({effective_area} / %s) / log10(%s / %s))", from, to, from, begin,
			    end, begin);
}

/* ---- the curves of a zone ---- */

typedef struct {
	const WindCurve *curve[2];
	uint32_t count;
} Curves;

static Curves curves_of(const Reference *reference, const CurveName *name)
{
	Curves curves = { .count = 0 };
	for (uint32_t i = 0; i < reference->wind_curves.count && curves.count < 2; i++) {
		const WindCurve *row = &reference->wind_curves.row[i];
		if (strcmp(row->standard.text, name->standard) == 0 && strcmp(row->figure.text, name->figure) == 0 &&
		    strcmp(row->zone.text, name->zone) == 0 && strcmp(row->side.text, name->side) == 0)
			curves.curve[curves.count++] = row;
	}
	return curves;
}

/* Flat figures only: behind a parapet all round, zone 3 is taken as zone 2. */
static const char *fetch_curve_zone(Case *zone, const ZoneHere *here)
{
	const char *name = here->zone->zone.text, *figure = here->figure->figure.text;
	note(zone, arena_printf(zone->all->arena, "figure %s", figure));
	Layout layout = layout_named(here->figure->layout.text);
	bool is_flat = layout == LAYOUT_EDGES || layout == LAYOUT_HIGH || layout == LAYOUT_LOW_SLOPE;
	if (!is_flat || strcmp(name, "3") != 0)
		return name;
	double parapet = GIVEN(zone, roof_area, RoofArea, building.parapet_height_ft);
	double relief = fetch_wind_constant(zone, here->figure->standard.text, "parapet_relief");
	if (!ready(zone) || parapet < relief)
		return name;
	note(zone, arena_printf(zone->all->arena, "figure %s; behind a parapet zone 3 is taken as zone 2", figure));
	return "2";
}

static double fetch_angle_deg(Case *zone)
{
	return OF(zone, roof_area_slope_angle_deg);
}

/* Where between its two curves a zone stands: by slope, or by height over the least width. */
static double fetch_along(Case *zone, const WindCurve *curve, const char **told)
{
	if (strcmp(curve->along.text, "slope") == 0) {
		*told = "{slope_angle}";
		return fetch_angle_deg(zone);
	}
	*told = "{design_height} / min({building.length}, {building.width})";
	double height = fetch_height_ft(zone), width = fetch_least_width_ft(zone);
	return ready(zone) ? height / width : 0;
}

static double of_one_curve(Case *zone, const WindCurve *row, double area)
{
	bool is_sloping = is_value(&row->value_1_by_slope_one.given);
	double angle = is_sloping ? fetch_angle_deg(zone) : 0;
	if (!ready(zone))
		return 0;
	Read read = read_curve(row, angle, area);
	zone->now->formula = arena_printf(zone->all->arena, "0 - %s", told_curve(zone, &read, false));
	return -curve_at(read.corner, read.count, area);
}

static double of_two_curves(Case *zone, const Curves *curves, double area)
{
	const WindCurve *low = curves->curve[0], *high = curves->curve[1];
	const char *told;
	double at = fetch_along(zone, low, &told), from = low->at_one.value, to = high->at_one.value;
	if (!ready(zone))
		return 0;
	if (at <= from || at >= to)
		return of_one_curve(zone, at <= from ? low : high, area);
	Read one = read_curve(low, 0, area), other = read_curve(high, 0, area);
	const char *first = told_curve(zone, &one, true), *second = told_curve(zone, &other, true);
	Arena *arena = zone->all->arena;
	const char *begin = number_shortest(arena, from), *end = number_shortest(arena, to);
	zone->now->formula = arena_printf(arena, "0 - (%s + (%s - %s) * (%s - %s) / (%s - %s))", first, second, first, told, begin, end,
					  begin);
	return -between(at, from, curve_at(one.corner, one.count, area), to, curve_at(other.corner, other.count, area));
}

double fetch_coefficient(Case *zone, const CurveName *name, const char *why_none)
{
	double area = OF(zone, zone_effective_area_sq_ft);
	if (!ready(zone))
		return 0;
	Curves curves = curves_of(zone->all->reference, name);
	if (curves.count == 0)
		return REFUSE(zone, why_none);
	return curves.count == 1 ? of_one_curve(zone, curves.curve[0], area) : of_two_curves(zone, &curves, area);
}

double zone_pressure_coefficient_one(Case *zone)
{
	const ZoneHere *here = fetch_zone(zone);
	if (here == NULL)
		return 0;
	CurveName name = { here->figure->standard.text, here->figure->figure.text, fetch_curve_zone(zone, here), "uplift" };
	return fetch_coefficient(zone, &name, "the figure has no curve for this zone");
}
