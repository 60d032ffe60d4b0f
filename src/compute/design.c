/* SPDX-License-Identifier: MIT
 * What stands behind the clips, as an equation may take it: design thickness, tensile strength and specific gravity of the
 * support, the clips' thinnest base and least travel, and the factors of safety the specification asks for.
 */
#include "below.h"
#include "fetch.h"
#include "formula.h"
#include "number.h"
#include "text.h"

#include <string.h>

/* ---- thickness ---- */

/* The deck table's design thickness for what is sold as one of its gauges: 0.028 in is the least delivered of 22 ga. */
static const Gauge *deck_row(const Reference *reference, double thickness)
{
	for (uint32_t i = 0; i < reference->gauges.count; i++) {
		const Gauge *row = &reference->gauges.row[i];
		if (same_text(row->use.text, "deck") && is_one_trade_size(reference, "deck", row->thickness_in.value, thickness))
			return row;
	}
	return NULL;
}

double roof_area_design_thickness_in(Case *area)
{
	const char *kind = GIVEN(area, roof_area, RoofArea, support.kind);
	double thickness = GIVEN(area, roof_area, RoofArea, support.thickness_in);
	if (!ready(area) || !same_text(kind, "steel deck"))
		return thickness;
	const Gauge *row = deck_row(area->all->reference, thickness);
	if (row == NULL)
		return thickness;
	const char *gauge = number_shortest(area->all->arena, row->gauge_one.value);
	return CONSTANT(area, "gauges.csv deck", gauge, row->thickness_in.value, row->source.text);
}

/* ---- strength ---- */

/* The highest grade that is not above the stated one. */
static const SteelGrade *grade_row(const Reference *reference, double grade)
{
	const SteelGrade *found = NULL;
	for (uint32_t i = 0; i < reference->steel_grades.count; i++) {
		const SteelGrade *row = &reference->steel_grades.row[i];
		bool is_below = row->grade_ksi.value <= grade || number_same(row->grade_ksi.value, grade);
		if (is_below && (found == NULL || row->grade_ksi.value > found->grade_ksi.value))
			found = row;
	}
	return found;
}

static double tensile_of(Case *area, double grade, double stated)
{
	const SteelGrade *row = grade_row(area->all->reference, grade);
	if (row == NULL)
		return stated > 0 ? stated : REFUSE(area, "the steel is of a lower grade than any of the table");
	const char *words = number_shortest(area->all->arena, row->grade_ksi.value);
	double tensile = CONSTANT(area, "steel_grades.csv", words, row->tensile_ksi.value, row->source.text);
	if (stated > 0 && !row->low_ductility.yes)
		return stated;
	return row->low_ductility.yes ? low_ductility_tensile_ksi(stated > 0 ? stated : tensile) : tensile;
}

double roof_area_design_tensile_ksi(Case *area)
{
	const double lowest_ksi = 33;
	double grade = GIVEN_OR(area, roof_area, RoofArea, support.grade_ksi, 0);
	double stated = GIVEN_OR(area, roof_area, RoofArea, support.tensile_ksi, 0);
	if (!ready(area))
		return 0;
	if (grade > 0)
		return tensile_of(area, grade, stated);
	if (stated > 0)
		return stated;
	note(area, "grade not stated: the lowest, 33 ksi, is assumed");
	return tensile_of(area, lowest_ksi, 0);
}

/* A panel has the gravity of its kind; of other wood it must be stated. */
double roof_area_design_gravity_one(Case *area)
{
	const char *kind = GIVEN(area, roof_area, RoofArea, support.kind);
	double stated = GIVEN_OR(area, roof_area, RoofArea, support.specific_gravity_one, 0);
	if (!ready(area) || stated > 0)
		return stated;
	const Reference *reference = area->all->reference;
	for (uint32_t i = 0; i < reference->woods.count; i++) {
		const WoodKind *row = &reference->woods.row[i];
		if (!same_text(row->wood.text, kind))
			continue;
		note(area, "specific gravity not stated: that of its kind is taken");
		return CONSTANT(area, "woods.csv", row->wood.text, row->gravity_one.value, row->source.text);
	}
	return GIVEN(area, roof_area, RoofArea, support.specific_gravity_one);
}

/* ---- clips ---- */

double roof_area_clips_one_sided_yes(Case *area)
{
	if (fetch_list(area, area, offsetof(RoofArea, clips)) == NULL)
		return 0;
	bool is_one_sided = false;
	for (Case *clip = first_below(area, KIND_clip); clip != NULL; clip = clip->next)
		if (same_text(GIVEN_AT(area, clip, Clip, use), "running"))
			is_one_sided |= GIVEN_AT(area, clip, Clip, one_sided);
	return is_one_sided;
}

double roof_area_clips_steel_yes(Case *area)
{
	if (fetch_list(area, area, offsetof(RoofArea, clips)) == NULL)
		return 0;
	bool is_steel = true;
	for (Case *clip = first_below(area, KIND_clip); clip != NULL; clip = clip->next)
		if (same_text(GIVEN_AT(area, clip, Clip, use), "running"))
			is_steel &= same_text(GIVEN_AT(area, clip, Clip, metal), "steel");
	return is_steel;
}

/* ---- factors of safety ---- */

static const char factor_topic[] = "fastener factor of safety";

/* Whether a requirement asks for a factor; `*factor` is 0 where it gives no one number. */
static bool asks_for_factor(const Requirement *row, double *factor)
{
	*factor = 0;
	if (!is_value(&row->topic.given) || !same_text(row->topic.text, factor_topic))
		return false;
	if (is_value(&row->at_least.given) && !number_read(row->at_least.text, strlen(row->at_least.text), factor))
		*factor = 0;
	return true;
}

double submittal_asked_factor_one(Case *submittal)
{
	double greatest = 0, factor;
	fetch_list(submittal, submittal, offsetof(Submittal, specification.requirements));
	for (Case *at = first_below(submittal, KIND_requirement); at != NULL; at = at->next)
		if (asks_for_factor(at->row, &factor) && factor > greatest)
			greatest = GIVEN_AT(submittal, at, Requirement, at_least) != NULL ? factor : 0;
	if (ready(submittal) && greatest == 0)
		return SKIP(submittal, "the specification asks for no factor of safety of fasteners");
	return greatest;
}

double submittal_guide_factors_yes(Case *submittal)
{
	double factor;
	fetch_list(submittal, submittal, offsetof(Submittal, specification.requirements));
	for (Case *at = first_below(submittal, KIND_requirement); at != NULL; at = at->next)
		if (asks_for_factor(at->row, &factor) && factor == 0)
			return 1;
	return 0;
}
