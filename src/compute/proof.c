/* SPDX-License-Identifier: MIT
 * The order of proof for screws through clips: this construction tested on this support, a tested pull-out, an equation within
 * its range; else test data are needed.
 */
#include "below.h"
#include "formula.h"
#include "number.h"
#include "screws.h"
#include "text.h"

#include <math.h>

/* Factor of the equations (read, SSMA table), wind duration of NDS, guide factors of one and of more screws (UFGS 07416A). */
static const double screw_factor = 3, wind_duration = 1.6, guide_factor_one = 3, guide_factor_more = 2.25;

/* Below so many diameters of wood panel the withdrawal equation is an extrapolation (memory). */
static const double least_diameters = 6;

/* ---- this construction on this support ---- */

static bool fetch_capacity_test(Case *area, Case *test)
{
	const char *role = GIVEN_AT(area, test, AreaTest, role);
	if (!same_text(role, "capacity"))
		return false;
	const Fact *known = fetch_use(area, test, FACT_test_listing_in_force);
	if (known->state != FACT_KNOWN || known->value == 0) {
		if (known->state == FACT_WAITING)
			fetch_raise(area, known);
		return false;
	}
	const char *support = GIVEN(area, roof_area, RoofArea, support.kind);
	if (!same_text(((const Listing *)test->listed)->substrate_tested.text, support))
		return false;
	const Fact *differences = fetch_use(area, test, FACT_test_differences);
	fetch_raise(area, differences);
	return differences->state == FACT_KNOWN && differences->value == 0;
}

double roof_area_tested_on_this_support_yes(Case *area)
{
	if (fetch_list(area, area, offsetof(RoofArea, tests)) == NULL)
		return 0;
	for (Case *test = first_below(area, KIND_test); test != NULL; test = test->next)
		if (fetch_capacity_test(area, test)) {
			note(area, ((const Listing *)test->listed)->listing.text);
			return 1;
		}
	return 0;
}

/* ---- tested pull-out ---- */

static bool is_thickness(const Reference *reference, const char *support, double a, double b)
{
	const char *family = is_wood_panel(support) ? "wood panel" : same_text(support, "steel deck") ? "deck" : NULL;
	return number_same(a, b) || (family != NULL && is_one_trade_size(reference, family, a, b));
}

static const PullOut *pullout_row(const Case *screw, const char *item, const char *support, double thickness)
{
	const Criteria *criteria = screw->all->criteria;
	for (uint32_t i = 0; i < criteria->pullouts.count; i++) {
		const PullOut *row = &criteria->pullouts.row[i];
		if (same_text(row->item.text, item) && same_text(row->support.text, support) &&
		    is_thickness(screw->all->reference, support, row->thickness_in.value, thickness))
			return row;
	}
	return NULL;
}

/* Pull tests on this roof go before those of the maker's table. */
double fastener_tested_pullout_lb(Case *screw)
{
	if (!fetch_clip_screw(screw))
		return 0;
	double tests = GIVEN_OR(screw, roof_area, RoofArea, support.pull_tests_one, 0);
	double lowest = GIVEN_OR(screw, roof_area, RoofArea, support.pull_lowest_lb, 0);
	if (!ready(screw))
		return 0;
	if (tests > 0 && lowest > 0) {
		note(screw, "the lowest pull test made on site");
		return lowest;
	}
	const char *item = GIVEN_OR(screw, fastener, Fastener, item, "");
	const char *support = GIVEN(screw, roof_area, RoofArea, support.kind);
	double thickness = GIVEN_OR(screw, roof_area, RoofArea, support.thickness_in, 0);
	const PullOut *row = ready(screw) ? pullout_row(screw, item, support, thickness) : NULL;
	if (row != NULL)
		return CONSTANT(screw, "pullouts.csv", row->item.text, row->load_lb.value, row->basis.text);
	return ready(screw) ? SKIP(screw, "no pull-out of this screw from this support was tested") : 0;
}

/* ---- factors ---- */

/* The factor the specification asks for; 0 if it asks for none. */
static double fetch_asked(Case *screw)
{
	Case *submittal = fact_case(screw, FACT_submittal_asked_factor);
	const Fact *asked = fetch_use(screw, submittal, FACT_submittal_asked_factor);
	if (asked->state != FACT_NOT_APPLICABLE)
		fetch_raise(screw, asked);
	return asked->state == FACT_KNOWN ? asked->value : 0;
}

static double guide_factor(Case *screw, double count)
{
	double factor = count > 1 ? guide_factor_more : guide_factor_one;
	return CONSTANT(screw, "guide", "guide factor", factor, "ufgs-07416a-p12");
}

double fastener_test_factor_one(Case *screw)
{
	double asked = fetch_asked(screw);
	bool guide = OF(screw, submittal_guide_factors_yes) != 0;
	double count = GIVEN(screw, fastener, Fastener, per_one);
	if (!ready(screw))
		return 0;
	double least = guide ? guide_factor(screw, count) : 0;
	screw->now->formula = !guide ? (asked > 0 ? "{asked_factor}" : "3")
		: asked > 0 ? "max({asked_factor}, {guide_factor})" : "{guide_factor}";
	return asked > 0 || guide ? fmax(asked, least) : screw_factor;
}

double fastener_equation_factor_one(Case *screw)
{
	double asked = fetch_asked(screw);
	screw->now->formula = asked > screw_factor ? "{asked_factor}" : "3";
	return fmax(asked, screw_factor);
}

/* ---- what one screw holds ---- */

static double fetch_steel_hold(Case *screw)
{
	double pullout = OF(screw, fastener_screw_pullout_lb);
	double factor = OF(screw, fastener_equation_factor_one);
	note(screw, "by the equation for pull-out from steel");
	return ready(screw) ? pullout / factor : 0;
}

/* A thin panel is refused unless the criteria take the estimate. */
static void fetch_panel_range(Case *screw, const char *support)
{
	double size = GIVEN(screw, fastener, Fastener, size_in);
	double thickness = GIVEN(screw, roof_area, RoofArea, support.thickness_in);
	const Yes *estimate = &screw->all->criteria->edition.wood_panel_estimate;
	if (!ready(screw) || !is_wood_panel(support) || thickness >= least_diameters * size)
		return;
	bool is_taken = is_value(&estimate->given) && estimate->yes;
	CONSTANT(screw, "criteria.yaml", "wood_panel_estimate", is_taken, NULL);
	if (!is_taken)
		REFUSE(screw, "the wood panel is thinner than six diameters of the screw: needs test data");
}

static double fetch_wood_hold(Case *screw, const char *support)
{
	fetch_panel_range(screw, support);
	double per_in = OF(screw, fastener_screw_withdrawal_lb_per_in);
	double thread = OF(screw, fastener_thread_penetration_in);
	screw->now->formula = "{screw_withdrawal} * {thread_penetration} * 1.6";
	note(screw, is_wood_panel(support) ? "by the equation for withdrawal, an estimate" : "by the equation for withdrawal");
	return ready(screw) ? withdrawal_lb(per_in, thread, wind_duration) : 0;
}

double fastener_screw_hold_lb(Case *screw)
{
	if (!fetch_clip_screw(screw))
		return 0;
	const Fact *tested = fetch_use(screw, screw, FACT_fastener_tested_pullout);
	if (tested->state != FACT_NOT_APPLICABLE) {
		double factor = OF(screw, fastener_test_factor_one);
		fetch_raise(screw, tested);
		screw->now->formula = "{tested_pullout} / {test_factor}";
		note(screw, tested->note != NULL ? "by pull tests on site" : "by tested pull-out");
		return ready(screw) ? tested->value / factor : 0;
	}
	const char *support = GIVEN(screw, roof_area, RoofArea, support.kind);
	if (!ready(screw))
		return 0;
	return is_wood_support(support) ? fetch_wood_hold(screw, support) : fetch_steel_hold(screw);
}

/* Half of the pull-over counts where a clip pulls from one side, or on one screw. */
double fastener_screw_allowable_lb(Case *screw)
{
	double hold = OF(screw, fastener_screw_hold_lb);
	double count = GIVEN(screw, fastener, Fastener, per_one);
	bool one_sided = OF(screw, roof_area_clips_one_sided_yes) != 0 || count < 2;
	double pullover = OF(screw, fastener_screw_pullover_lb);
	double tension = OF(screw, fastener_screw_tension_lb);
	double factor = OF(screw, fastener_equation_factor_one);
	if (!ready(screw))
		return 0;
	note(screw, fact_of(screw, FACT_fastener_screw_hold)->note);
	if (!one_sided)
		screw->now->formula = "min({screw_hold}, {screw_pullover} / {equation_factor}, {screw_tension} / {equation_factor})";
	double nominal = screw_nominal_lb(&(ScrewTension){ hold * factor, pullover, tension, one_sided });
	return nominal / factor;
}

double fastener_allowable_per_clip_lb(Case *screw)
{
	double one = OF(screw, fastener_screw_allowable_lb);
	double count = GIVEN(screw, fastener, Fastener, per_one);
	note(screw, fact_of(screw, FACT_fastener_screw_allowable)->note);
	return ready(screw) ? count * one : 0;
}

double fastener_proof_found_yes(Case *screw)
{
	const Fact *one = fetch_use(screw, screw, FACT_fastener_screw_allowable);
	if (one->state == FACT_REFUSED) {
		note(screw, one->reason);
		return 0;
	}
	fetch_raise(screw, one);
	note(screw, one->note);
	return 1;
}

/* ---- screws of one clip ---- */

double roof_area_screws_proven_yes(Case *area)
{
	if (fetch_list(area, area, offsetof(RoofArea, fasteners)) == NULL)
		return 0;
	bool is_proven = true, is_any = false;
	for (Case *screw = first_below(area, KIND_fastener); screw != NULL; screw = screw->next) {
		if (!same_text(GIVEN_AT(area, screw, Fastener, use), "clip"))
			continue;
		is_proven &= OF_AT(area, screw, fastener_proof_found_yes) != 0;
		is_any = true;
	}
	if (ready(area) && !is_any)
		return SKIP(area, "no screws through clips are listed");
	return is_proven;
}

double roof_area_clip_screws_allowable_lb(Case *area)
{
	if (fetch_list(area, area, offsetof(RoofArea, fasteners)) == NULL)
		return 0;
	const Fact *least = NULL;
	for (Case *screw = first_below(area, KIND_fastener); screw != NULL; screw = screw->next) {
		if (!same_text(GIVEN_AT(area, screw, Fastener, use), "clip"))
			continue;
		const Fact *one = fetch_use(area, screw, FACT_fastener_allowable_per_clip);
		fetch_raise(area, one);
		least = least == NULL || one->value < least->value ? one : least;
	}
	if (!ready(area))
		return 0;
	if (least == NULL)
		return REFUSE(area, "no screws through clips are listed");
	note(area, least->note);
	return least->value;
}

double zone_fastening_allowable_lb(Case *zone)
{
	double allowable = OF(zone, roof_area_clip_screws_allowable_lb);
	note(zone, fact_of(fact_case(zone, FACT_roof_area_clip_screws_allowable), FACT_roof_area_clip_screws_allowable)->note);
	return allowable;
}

double zone_fastening_ratio_one(Case *zone)
{
	double load = OF(zone, zone_clip_load_lb);
	double allowable = OF(zone, zone_fastening_allowable_lb);
	return ready(zone) ? load / allowable : 0;
}
