/* SPDX-License-Identifier: MIT
 * Details against the list of approved ones: a number counts for its place alone. Gutters and trim: the limits of their keys.
 */
#include "below.h"
#include "fetch.h"
#include "number.h"
#include "parts.h"
#include "text.h"

/* The row of a number at a place; a row of the same number for another place is kept in `*elsewhere`. */
static const ApprovedDetail *detail_row(const Criteria *criteria, const char *number, const char *place,
	const ApprovedDetail **elsewhere)
{
	for (uint32_t i = 0; i < criteria->details.count; i++) {
		const ApprovedDetail *row = &criteria->details.row[i];
		if (!same_text(row->number.text, number))
			continue;
		if (same_text(row->place.text, place))
			return row;
		*elsewhere = row;
	}
	return NULL;
}

static const ApprovedDetail *fetch_row(Case *detail, const ApprovedDetail **elsewhere)
{
	const char *number = GIVEN(detail, detail, Detail, number);
	const char *place = GIVEN(detail, detail, Detail, place);
	return ready(detail) ? detail_row(detail->all->criteria, number, place, elsewhere) : NULL;
}

double detail_approved_number_yes(Case *detail)
{
	const ApprovedDetail *elsewhere = NULL, *row = fetch_row(detail, &elsewhere);
	if (row == NULL && elsewhere != NULL)
		note(detail, arena_printf(detail->all->arena, "%s is for the %s", elsewhere->number.text, elsewhere->place.text));
	return row != NULL;
}

/* What is not approved has an item of its own. */
double detail_detail_least_slope_in_12(Case *detail)
{
	const ApprovedDetail *elsewhere = NULL, *row = fetch_row(detail, &elsewhere);
	if (row != NULL)
		return CONSTANT(detail, "details.csv", row->number.text, row->least_slope_in_12.value, NULL);
	return ready(detail) ? SKIP(detail, "the detail is not an approved one") : 0;
}

/* Among the approved details for one place the one that goes flattest is the low-slope one. */
double detail_low_slope_detail_yes(Case *detail)
{
	const ApprovedDetail *elsewhere = NULL, *row = fetch_row(detail, &elsewhere);
	const Criteria *criteria = detail->all->criteria;
	if (!ready(detail))
		return 0;
	if (row == NULL)
		return SKIP(detail, "the detail is not an approved one");
	for (uint32_t i = 0; i < criteria->details.count; i++) {
		const ApprovedDetail *other = &criteria->details.row[i];
		if (same_text(other->place.text, row->place.text) && other->least_slope_in_12.value < row->least_slope_in_12.value) {
			note(detail, other->number.text);
			return 0;
		}
	}
	return 1;
}

/* ---- gutters and trim ---- */

double detail_gutter_limit_ft(Case *detail)
{
	const char *metal = GIVEN(detail, detail, Detail, metal);
	const Edition *edition = &detail->all->criteria->edition;
	if (!ready(detail))
		return 0;
	if (!list_has(detail->all->criteria, "metals that move most", metal))
		return CONSTANT(detail, "criteria.yaml", "gutter_joints", edition->gutter_joints_ft.value, "delaware-specification-p361");
	detail->now->formula = "{gutter_joints_soft}";
	return CONSTANT(detail, "criteria.yaml", "gutter_joints_soft", edition->gutter_joints_soft_ft.value, "nz-code-of-practice");
}

/* A gutter no longer than the limit needs no joint, and nobody is asked for one. */
double detail_unjointed_length_ft(Case *detail)
{
	double length = GIVEN(detail, detail, Detail, length_ft);
	double limit = OF(detail, detail_gutter_limit_ft);
	if (!ready(detail) || length <= limit)
		return length;
	return GIVEN(detail, detail, Detail, joint_spacing_ft);
}

double detail_typhoon_spacing_in(Case *detail)
{
	const Number *usual = &detail->all->criteria->edition.trim_fastening_in;
	return CONSTANT(detail, "criteria.yaml", "trim_fastening", usual->value, NULL) / 2;
}

double detail_eave_moves_yes(Case *detail)
{
	double lines = OF(detail, roof_area_fixed_lines_one);
	if (ready(detail) && lines != 1)
		return SKIP(detail, "the panels are not fixed at one line");
	Case *area = area_of(detail);
	OF(detail, roof_area_moving_length_ft);
	return ready(detail) && !same_text(fact_of(area, FACT_roof_area_moving_length)->note, "eave");
}

/* Steel sheet of one gauge is sold under several decimals. */
double roof_area_trim_same_size_yes(Case *area)
{
	double trim = GIVEN(area, roof_area, RoofArea, trim.thickness_in);
	double panel = GIVEN(area, roof_area, RoofArea, panel.thickness_in);
	const char *of_trim = GIVEN(area, roof_area, RoofArea, trim.metal), *of_panel = GIVEN(area, roof_area, RoofArea, panel.metal);
	if (!ready(area))
		return 0;
	bool is_steel = same_text(of_trim, "steel") && same_text(of_panel, "steel");
	return number_same(trim, panel) || (is_steel && is_one_trade_size(area->all->reference, "sheet", trim, panel));
}

double roof_area_trim_from_maker_yes(Case *area)
{
	const char *from = GIVEN(area, roof_area, RoofArea, trim.supplied_by);
	return ready(area) && is_panel_maker(area->all->criteria, from);
}
