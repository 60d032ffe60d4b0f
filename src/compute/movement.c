/* SPDX-License-Identifier: MIT
 * Movement of the panels with temperature, from the one line at which they are fixed, against what the clips let go.
 */
#include "below.h"
#include "fetch.h"
#include "formula.h"
#include "text.h"

#include <math.h>

/* ---- what moves ---- */

double roof_area_expansion_one(Case *area)
{
	const char *metal = GIVEN(area, roof_area, RoofArea, panel.metal);
	const Reference *reference = area->all->reference;
	if (!ready(area))
		return 0;
	for (uint32_t i = 0; i < reference->metals.count; i++) {
		const MetalRow *row = &reference->metals.row[i];
		if (same_text(row->metal.text, metal))
			return CONSTANT(area, "metals.csv expansion of", row->metal.text, row->expansion_one.value, row->source.text);
	}
	return REFUSE(area, "the table of metals has no row for the panel's metal");
}

/* The one line; NULL where there is none, or more than one. */
static const char *fetch_fixed_line(Case *area)
{
	double lines = OF(area, roof_area_fixed_lines_one);
	if (!ready(area))
		return NULL;
	if (lines != 1) {
		REFUSE(area, lines < 1 ? "no fixed line is shown" : "the panels are fixed at more than one line");
		return NULL;
	}
	for (Case *at = first_below(area, KIND_fixed_line); at != NULL; at = at->next) {
		const char *line = GIVEN_AT(area, at, FixedLine, line);
		if (!same_text(line, "none"))
			return ready(area) ? line : NULL;
	}
	return NULL;
}

/* Panels lapped at their ends move as one run. Fixed at mid-slope, each half moves away from the middle. */
double roof_area_moving_length_ft(Case *area)
{
	const char *line = fetch_fixed_line(area);
	double length = GIVEN(area, roof_area, RoofArea, panel.length_ft);
	double laps = GIVEN(area, roof_area, RoofArea, panel.end_laps_one);
	if (!ready(area) || line == NULL)
		return 0;
	note(area, line);
	bool is_middle = same_text(line, "mid-slope");
	if (is_middle)
		area->now->formula = "{panel.length} * (1 + {panel.end_laps}) / 2";
	return length * (1 + laps) / (is_middle ? 2 : 1);
}

double roof_area_one_line_yes(Case *area)
{
	double lines = OF(area, roof_area_fixed_lines_one);
	if (!ready(area) || lines != 1)
		return 0;
	note(area, fetch_fixed_line(area));
	return 1;
}

/* ---- temperatures ---- */

/* Medium colors count as dark. */
double roof_area_hottest_panel_F(Case *area)
{
	const char *color = GIVEN(area, roof_area, RoofArea, panel.color);
	if (!ready(area))
		return 0;
	const Edition *edition = &area->all->criteria->edition;
	bool is_light = is_among(color, "light;unpainted");
	const char *row = is_light ? "temperature_high_light" : "temperature_high_dark";
	const Number *value = is_light ? &edition->temperature_high_light_F : &edition->temperature_high_dark_F;
	return CONSTANT(area, "criteria.yaml", row, value->value, NULL);
}

double roof_area_coldest_panel_F(Case *area)
{
	return CONSTANT(area, "criteria.yaml", "temperature_low", area->all->criteria->edition.temperature_low_F.value, NULL);
}

double roof_area_laid_at_F(Case *area)
{
	const Number *value = &area->all->criteria->edition.installation_temperature_F;
	return CONSTANT(area, "criteria.yaml", "installation_temperature", value->value, NULL);
}

double roof_area_panel_range_F_step(Case *area)
{
	double hottest = OF(area, roof_area_hottest_panel_F);
	double coldest = OF(area, roof_area_coldest_panel_F);
	return ready(area) ? hottest - coldest : 0;
}

double roof_area_insulated_yes(Case *area)
{
	bool found = false;
	if (fetch_list(area, area, offsetof(RoofArea, build_up)) == NULL)
		return 0;
	for (Case *layer = first_below(area, KIND_layer); layer != NULL; layer = layer->next)
		found |= same_text(GIVEN_AT(area, layer, Layer, layer), "insulation");
	return found;
}

/* ---- movement ---- */

double roof_area_panel_expansion_in(Case *area)
{
	double expansion = OF(area, roof_area_expansion_one);
	double run = OF(area, roof_area_moving_length_ft);
	double hottest = OF(area, roof_area_hottest_panel_F);
	double laid = OF(area, roof_area_laid_at_F);
	return ready(area) ? movement_in(expansion, run, hottest - laid) : 0;
}

double roof_area_panel_contraction_in(Case *area)
{
	double expansion = OF(area, roof_area_expansion_one);
	double run = OF(area, roof_area_moving_length_ft);
	double laid = OF(area, roof_area_laid_at_F);
	double coldest = OF(area, roof_area_coldest_panel_F);
	return ready(area) ? movement_in(expansion, run, laid - coldest) : 0;
}

double roof_area_panel_movement_in(Case *area)
{
	double grows = OF(area, roof_area_panel_expansion_in);
	double shrinks = OF(area, roof_area_panel_contraction_in);
	return ready(area) ? grows + shrinks : 0;
}

/* ---- what the clips let go ---- */

/* A clip that cannot let the panel move has an item of its own; one on which the panel slides has no travel to be used up. */
double roof_area_running_clip_travel_in(Case *area)
{
	if (fetch_list(area, area, offsetof(RoofArea, clips)) == NULL)
		return 0;
	const Case *found = NULL;
	bool slides = false;
	double least = 0;
	for (Case *clip = first_below(area, KIND_clip); clip != NULL; clip = clip->next) {
		if (!same_text(GIVEN_AT(area, clip, Clip, use), "running"))
			continue;
		const char *moves = GIVEN_AT(area, clip, Clip, moves);
		slides |= same_text(moves, "panel slides");
		if (!same_text(moves, "travel"))
			continue;
		double travel = GIVEN_AT(area, clip, Clip, travel_in);
		if (found == NULL || travel < least) {
			found = clip;
			least = travel;
		}
	}
	if (!ready(area))
		return 0;
	if (found == NULL)
		return SKIP(area, slides ? "the panel slides on its clips" : "no running clip has a travel");
	note(area, found->name);
	return least > 0 ? least : REFUSE(area, "the running clips have no travel");
}

double roof_area_travel_ratio_one(Case *area)
{
	double grows = OF(area, roof_area_panel_expansion_in);
	double shrinks = OF(area, roof_area_panel_contraction_in);
	double travel = OF(area, roof_area_running_clip_travel_in);
	note(area, fact_of(area, FACT_roof_area_running_clip_travel)->note);
	return ready(area) ? travel_ratio_one(grows, shrinks, travel, false) : 0;
}

/* What guide specifications ask for is a difference of temperature that the whole travel has to carry. */
double roof_area_carried_difference_F_step(Case *area)
{
	double expansion = OF(area, roof_area_expansion_one);
	double run = OF(area, roof_area_moving_length_ft);
	double travel = OF(area, roof_area_running_clip_travel_in);
	return ready(area) ? carried_difference_F(expansion, run, travel) : 0;
}

double roof_area_longest_run_ft(Case *area)
{
	double expansion = OF(area, roof_area_expansion_one);
	double hottest = OF(area, roof_area_hottest_panel_F);
	double laid = OF(area, roof_area_laid_at_F);
	double coldest = OF(area, roof_area_coldest_panel_F);
	double travel = OF(area, roof_area_running_clip_travel_in);
	double difference = fmax(hottest - laid, laid - coldest);
	if (ready(area) && difference <= 0)
		return REFUSE(area, "the criteria give no difference of temperature");
	return ready(area) ? longest_run_ft(expansion, difference, travel) : 0;
}

/* Fixed in the middle, a slope may be twice as long as the run to either side. */
double roof_area_longest_slope_ft(Case *area)
{
	const char *line = fetch_fixed_line(area);
	double run = OF(area, roof_area_longest_run_ft);
	bool is_middle = line != NULL && same_text(line, "mid-slope");
	if (is_middle)
		area->now->formula = "2 * {longest_run}";
	return ready(area) ? run * (is_middle ? 2 : 1) : 0;
}

/* ---- details at the free end ---- */

/* The panels' one line, in its word; NULL (and not applicable) where there is not just one. */
static const char *fetch_line(Case *detail)
{
	const Fact *line = fetch_use(detail, area_of(detail), FACT_roof_area_one_line);
	fetch_raise(detail, line);
	if (ready(detail) && line->value == 0)
		SKIP(detail, "the panels are not fixed at one line");
	return ready(detail) ? line->note : NULL;
}

static const char upper_ends[] = "ridge;headwall;hip", lower_ends[] = "eave;valley";

/* An end is free unless the panels are fixed there. */
double detail_free_end_yes(Case *detail)
{
	const char *place = GIVEN(detail, detail, Detail, place);
	if (!ready(detail))
		return 0;
	bool is_upper = is_among(place, upper_ends), is_lower = is_among(place, lower_ends);
	if (!is_upper && !is_lower)
		return 0;
	const char *line = fetch_line(detail);
	return line != NULL && !is_among(line, is_upper ? upper_ends : lower_ends);
}

/* A gutter hangs at the eave. */
double detail_at_fixed_line_yes(Case *detail)
{
	const char *place = GIVEN(detail, detail, Detail, place);
	const char *line = fetch_line(detail);
	if (line == NULL)
		return 0;
	return same_text(place, line) || (same_text(place, "gutter") && same_text(line, "eave"));
}
