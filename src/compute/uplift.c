/* SPDX-License-Identifier: MIT
 * Uplift on a zone: its plan area, the effective area of a clip, internal pressure, strength and allowable level, and what has to
 * be held: the greater of the sealed letter and the computed value.
 */
#include "formula.h"
#include "text.h"
#include "wind.h"

#include <math.h>

/* All that a figure hangs on; the figure itself was found by resolve from the same values. */
const ZoneHere *fetch_zone_of(Case *fact, const Case *zone)
{
	fetch_standard(fact);
	GIVEN(fact, roof_area, RoofArea, building.shape);
	GIVEN(fact, roof_area, RoofArea, building.slope_in_12);
	GIVEN(fact, roof_area, RoofArea, building.eave_height_ft);
	GIVEN(fact, roof_area, RoofArea, building.enclosure);
	if (fact->all->submittal->wind.low_rise_figures.given.said != SAID_NOTHING)
		fetch_low_rise_ft(fact);
	if (!ready(fact))
		return NULL;
	const ZoneHere *here = zone->row;
	if (here->zone != NULL)
		return here;
	REFUSE(fact, here->why != NULL ? here->why : "the zones of this roof are not known");
	return NULL;
}

const ZoneHere *fetch_zone(Case *zone)
{
	return fetch_zone_of(zone, zone);
}

double zone_plan_area_sq_ft(Case *zone)
{
	const ZoneHere *here = fetch_zone(zone);
	RoofPlan plan = { 0 };
	plan.length_ft = GIVEN(zone, roof_area, RoofArea, building.length_ft);
	plan.width_ft = GIVEN(zone, roof_area, RoofArea, building.width_ft);
	double height = fetch_height_ft(zone);
	double low = fetch_low_rise_ft(zone);
	if (!ready(zone))
		return 0;
	plan.layout = layout_named(here->figure->layout.text);
	if (plan.layout == LAYOUTS)
		return REFUSE(zone, "how the zones of this figure lie is not confirmed");
	plan.strip_ft = layout_strip_ft(&plan, height, low);
	note(zone, arena_printf(zone->all->arena, "figure %s", here->figure->figure.text));
	return plan_area_sq_ft(&plan, here->zone->zone.text);
}

double zone_effective_area_sq_ft(Case *zone)
{
	double width = GIVEN(zone, roof_area, RoofArea, panel.width_in), spacing = GIVEN(zone, zone, Zone, spacing_in);
	return ready(zone) ? effective_area_sq_ft(width, spacing) : 0;
}

static const WindEnclosure *enclosure_row(const Reference *reference, const char *standard, const char *enclosure)
{
	for (uint32_t i = 0; i < reference->wind_enclosures.count; i++) {
		const WindEnclosure *row = &reference->wind_enclosures.row[i];
		if (same_text(row->standard.text, standard) && same_text(row->enclosure.text, enclosure))
			return row;
	}
	return NULL;
}

double zone_internal_coefficient_one(Case *zone)
{
	const char *standard = fetch_standard(zone), *enclosure = GIVEN(zone, roof_area, RoofArea, building.enclosure);
	if (!ready(zone))
		return 0;
	const WindEnclosure *row = enclosure_row(zone->all->reference, standard, enclosure);
	if (row == NULL)
		return REFUSE(zone, "this load standard has no internal pressure for this enclosure");
	TableRow cells = { "wind_enclosures.csv", arena_printf(zone->all->arena, "%s %s", row->standard.text, row->enclosure.text),
		row->source.text };
	return fetch_cell(zone, &cells, "internal_coefficient", &row->internal_coefficient_one);
}

/* From ASCE 7-22 on the directionality factor stands here, not in the velocity pressure. */
double zone_strength_uplift_psf(Case *zone)
{
	const char *standard = fetch_standard(zone);
	double velocity = OF(zone, roof_area_velocity_pressure_psf);
	double coefficient = OF(zone, zone_pressure_coefficient_one), internal = OF(zone, zone_internal_coefficient_one);
	double least = fetch_wind_constant(zone, standard, "least_pressure");
	bool is_in_velocity = fetch_wind_constant(zone, standard, "directionality_in_velocity_pressure") > 0;
	if (!ready(zone) || is_in_velocity)
		return ready(zone) ? strength_uplift_psf(velocity, coefficient, internal, least) : 0;
	double directionality = OF(zone, roof_area_directionality_factor_one);
	zone->now->formula = "max({least_pressure}, {velocity_pressure} * {directionality_factor} * ({pressure_coefficient} + "
			     "{internal_coefficient}))";
	return ready(zone) ? strength_uplift_psf(velocity * directionality, coefficient, internal, least) : 0;
}

double zone_asd_uplift_psf(Case *zone)
{
	double strength = OF(zone, zone_strength_uplift_psf);
	double factor = fetch_wind_constant(zone, fetch_standard(zone), "asd_factor");
	return ready(zone) ? asd_uplift_psf(strength, factor) : 0;
}

/* ---- demand ---- */

static double one_alone(Case *zone, const Fact *fact, const char *formula, const char *why)
{
	fetch_raise(zone, fact);
	zone->now->formula = formula;
	note(zone, why);
	return fact->value;
}

/* Where no figure covers the roof the letter stands alone; where no letter speaks of the zone, what is computed. */
double zone_roof_uplift_psf(Case *zone)
{
	const Fact *letter = fetch_use(zone, zone, FACT_zone_letter_uplift), *computed = fetch_use(zone, zone, FACT_zone_asd_uplift);
	if (letter->state == FACT_NOT_APPLICABLE)
		return one_alone(zone, computed, "{asd_uplift}", "computed; no letter gives a pressure here");
	if (computed->state == FACT_REFUSED)
		return one_alone(zone, letter, "{letter_uplift}", "the letter alone; nothing is computed for this roof");
	fetch_raise(zone, letter);
	fetch_raise(zone, computed);
	if (ready(zone))
		note(zone, letter->value >= computed->value ? "the letter governs" : "the computed value governs");
	return fmax(letter->value, computed->value);
}

/* The overhang at the eave is held by the same clips. */
double zone_demand_psf(Case *zone)
{
	double roof = OF(zone, zone_roof_uplift_psf);
	const Fact *overhang = fetch_use(zone, zone, FACT_zone_overhang_uplift);
	note(zone, fact_of(zone, FACT_zone_roof_uplift)->note);
	if (overhang->state == FACT_NOT_APPLICABLE)
		return roof;
	fetch_raise(zone, overhang);
	zone->now->formula = "max({roof_uplift}, {overhang_uplift})";
	if (ready(zone) && overhang->value > roof)
		note(zone, "the overhang at the eave governs");
	return ready(zone) ? fmax(roof, overhang->value) : 0;
}
