/* SPDX-License-Identifier: MIT
 * Uplift of the overhang at the eave, from above and below at once.
 *
 * The curves of the figures have both faces in them. From ASCE 7-22 on, above 7 degrees, there are none: the push on the wall
 * below is added to the pull on the roof. Internal pressure is added as well; sources differ, and that is the safe side.
 */
#include "formula.h"
#include "text.h"
#include "wind.h"

#include <math.h>
#include <string.h>

static const char *const no_curve = "no figure gives the pressure of this overhang: the engineer's letter has to state it";

/* Hip roofs of ASCE 7-16 have their overhangs in figures of their own. */
static const char *overhang_figure(const char *figure)
{
	if (strcmp(figure, "30.3-2E") == 0)
		return "30.3-2F";
	return strcmp(figure, "30.3-2H") == 0 ? "30.3-2I" : figure;
}

static bool has_curves(const Reference *reference, const CurveName *name)
{
	for (uint32_t i = 0; i < reference->wind_curves.count; i++) {
		const WindCurve *row = &reference->wind_curves.row[i];
		if (strcmp(row->standard.text, name->standard) == 0 && strcmp(row->figure.text, name->figure) == 0 &&
		    strcmp(row->side.text, name->side) == 0)
			return true;
	}
	return false;
}

/* A zone of a figure that is not drawn may reach the eave. */
static bool fetch_is_at_eave(Case *zone, const ZoneHere *here)
{
	RoofPlan plan = { .layout = layout_named(here->figure->layout.text) };
	plan.length_ft = GIVEN(zone, roof_area, RoofArea, building.length_ft);
	plan.width_ft = GIVEN(zone, roof_area, RoofArea, building.width_ft);
	double height = fetch_height_ft(zone);
	double low = fetch_low_rise_ft(zone);
	if (!ready(zone) || plan.layout == LAYOUTS)
		return ready(zone);
	plan.strip_ft = layout_strip_ft(&plan, height, low);
	return is_zone_at_eave(&plan, here->zone->zone.text);
}

static bool fetch_is_stated(Case *zone)
{
	double overhang = GIVEN_OR(zone, roof_area, RoofArea, building.overhang_ft, 0);
	if (ready(zone) && overhang <= 0)
		SKIP(zone, "no overhang at the eave is stated");
	return ready(zone);
}

/* The zone if an overhang is stated and the zone reaches it; else the fact does not apply, waits or is refused. */
static const ZoneHere *fetch_overhung_zone(Case *zone)
{
	const ZoneHere *here = fetch_is_stated(zone) ? fetch_zone(zone) : NULL;
	if (here != NULL && !fetch_is_at_eave(zone, here) && ready(zone))
		SKIP(zone, "this zone does not reach the eave");
	return ready(zone) ? here : NULL;
}

/* A load standard that is not accepted is to be put right first. */
static bool is_accepted(const Case *zone, const char *standard)
{
	const Texts *accepted = &zone->all->criteria->edition.standards;
	for (uint32_t i = 0; i < accepted->count; i++)
		if (same_text(accepted->at[i].text, standard))
			return true;
	return false;
}

/* Where no figure draws the zones, all but those of the field may reach the eave. */
static bool fetch_is_overhung(Case *zone)
{
	if (((const ZoneHere *)zone->row)->zone != NULL)
		return fetch_overhung_zone(zone) != NULL;
	const char *standard = fetch_standard(zone);
	if (ready(zone) && !is_accepted(zone, standard))
		SKIP(zone, "this load standard is not accepted");
	if (fetch_is_stated(zone) && OF(zone, zone_is_edge_yes) == 0 && ready(zone))
		SKIP(zone, "this zone does not reach the eave");
	return ready(zone);
}

/* ---- coefficient ---- */

/* Walls have other curves above 60 ft. */
static double with_wall(Case *zone, const char *standard)
{
	double roof = OF(zone, zone_pressure_coefficient_one), height = fetch_height_ft(zone);
	double low = fetch_low_rise_ft(zone);
	if (!ready(zone))
		return 0;
	CurveName wall = { standard, height > low ? "walls above 60 ft" : "walls to 60 ft", "4", "inward" };
	double push = -fetch_coefficient(zone, &wall, no_curve);
	if (ready(zone)) /* "0 - (...)" of the curve, which pushes */
		zone->now->formula = arena_printf(zone->all->arena, "{pressure_coefficient} + %s", zone->now->formula + strlen("0 - "));
	return ready(zone) ? roof + push : 0;
}

double zone_overhang_coefficient_one(Case *zone)
{
	const ZoneHere *here = fetch_overhung_zone(zone);
	if (here == NULL)
		return 0;
	const char *standard = here->figure->standard.text;
	CurveName name = { standard, overhang_figure(here->figure->figure.text), here->zone->zone.text, "overhang" };
	CurveName walls = { standard, "walls to 60 ft", "4", "inward" };
	const Reference *reference = zone->all->reference;
	bool is_summed = !has_curves(reference, &name) && has_curves(reference, &walls) && OF(zone, roof_area_slope_angle_deg) > 7;
	return is_summed ? with_wall(zone, standard) : fetch_coefficient(zone, &name, no_curve);
}

/* ---- uplift ---- */

double zone_overhang_strength_psf(Case *zone)
{
	const char *standard = fetch_standard(zone);
	double coefficient = OF(zone, zone_overhang_coefficient_one), internal = OF(zone, zone_internal_coefficient_one);
	double velocity = OF(zone, roof_area_velocity_pressure_psf);
	double least = fetch_wind_constant(zone, standard, "least_pressure");
	bool is_in_velocity = fetch_wind_constant(zone, standard, "directionality_in_velocity_pressure") > 0;
	double directionality = is_in_velocity ? 1 : OF(zone, roof_area_directionality_factor_one);
	if (!is_in_velocity)
		zone->now->formula = "max({least_pressure}, {velocity_pressure} * {directionality_factor} * ({overhang_coefficient} + "
				     "{internal_coefficient}))";
	return ready(zone) ? strength_uplift_psf(velocity * directionality, coefficient, internal, least) : 0;
}

double zone_overhang_asd_psf(Case *zone)
{
	double strength = OF(zone, zone_overhang_strength_psf);
	double factor = fetch_wind_constant(zone, fetch_standard(zone), "asd_factor");
	return ready(zone) ? asd_uplift_psf(strength, factor) : 0;
}

/* The greater of letter and computed; the letter alone where the figure gives nothing. */
double zone_overhang_uplift_psf(Case *zone)
{
	if (!fetch_is_overhung(zone))
		return 0;
	const Fact *computed = fetch_use(zone, zone, FACT_zone_overhang_asd);
	const Fact *letter = fetch_use(zone, zone, FACT_zone_letter_overhang);
	bool is_lettered = letter->state != FACT_NOT_APPLICABLE, is_alone = is_lettered && computed->state == FACT_REFUSED;
	if (is_lettered)
		fetch_raise(zone, letter);
	if (computed->state == FACT_REFUSED && !is_lettered && ((const ZoneHere *)zone->row)->zone == NULL)
		REFUSE(zone, no_curve);
	else if (!is_alone)
		fetch_raise(zone, computed);
	if (!ready(zone))
		return 0;
	if (is_lettered)
		zone->now->formula = is_alone ? "{letter_overhang}" : "max({letter_overhang}, {overhang_asd})";
	if (is_alone)
		note(zone, "the letter alone; nothing is computed for this overhang");
	else if (is_lettered)
		note(zone, letter->value >= computed->value ? "the letter governs" : "the computed value governs");
	else
		note(zone, "computed; no letter gives a pressure for the overhang");
	return is_alone ? letter->value : is_lettered ? fmax(letter->value, computed->value) : computed->value;
}
