/* SPDX-License-Identifier: MIT
 * The greatest clip spacing of a zone that holds and can be built, and what binds it.
 *
 * The demand at another spacing is that of the same zone laid so: the very facts that are judged, asked of a copy of the zone.
 */
#include "capacity.h"

#include "text.h"

/* A copy of the zone whose spacing can be set. */
typedef struct {
	Case *zone;
	const ZoneHere *laid;
} Trying;

static double demand_at_psf(const void *user, double spacing_in)
{
	const Trying *trying = user;
	Arena *arena = trying->zone->all->arena;
	ZoneHere *row = TAKE(arena, ZoneHere, 1);
	Case *copy = TAKE(arena, Case, 1);
	*row = *trying->laid;
	row->record.spacing_in.value = spacing_in;
	*copy = *trying->zone;
	copy->row = copy->submitted = row;
	copy->fact = copy->now = NULL;
	return fact_of(copy, FACT_zone_demand)->value; /* its state does not hang on the spacing */
}

/* A limit that another fact sets; 0 where it does not apply or cannot be told: what cannot be told has an item of its own. */
static double limit_of(Case *zone, Case *at, FactId id)
{
	const Fact *used = fetch_use(zone, at, id);
	if (used->state == FACT_WAITING)
		fetch_raise(zone, used);
	return used->state == FACT_KNOWN ? used->value : 0;
}

/* Clips stand on purlins, which may be closer at edges, or on the top flanges of a deck. */
static double fetch_module_in(Case *zone)
{
	const char *kind = GIVEN(zone, roof_area, RoofArea, support.kind);
	if (is_among(kind, "purlin;sub-purlin")) {
		double edge = OF(zone, zone_is_edge_yes) != 0 ? GIVEN_OR(zone, roof_area, RoofArea, support.edge_spacing_in, 0) : 0;
		return edge > 0 ? edge : GIVEN(zone, roof_area, RoofArea, support.spacing_in);
	}
	return GIVEN_OR(zone, roof_area, RoofArea, support.flute_pitch_in, 0);
}

/* Such a limit as it is listed, where the fact took the laid one for the same spacing in another unit. */
static double listed_limit_in(Case *zone, FactId id, double tolerance_percent)
{
	double laid = ((const Zone *)zone->row)->spacing_in.value, limit = limit_of(zone, zone, id);
	return limit == laid ? limit / (1 + tolerance_percent / 100) : limit;
}

static double fastening_limit_lb(Case *zone)
{
	Case *area = fact_case(zone, FACT_roof_area_tested_on_this_support);
	const Fact *tested = fetch_use(zone, area, FACT_roof_area_tested_on_this_support);
	bool is_judged = tested->state == FACT_KNOWN && tested->value == 0;
	return is_judged ? limit_of(zone, zone, FACT_zone_fastening_allowable) : 0;
}

static const char *binds_words(const Case *zone, unsigned binds)
{
	static const char *const words[] = { "the uplift", "the screws of a clip", "the spacing of the class", "the widest test",
		"the letter's clip spacing" };
	const char *all = NULL;
	for (unsigned i = 0; i < sizeof words / sizeof *words; i++)
		if (binds & 1u << i)
			all = all == NULL ? words[i] : arena_printf(zone->all->arena, "%s, %s", all, words[i]);
	return all != NULL ? all : "nothing";
}

typedef struct {
	CapacityPaper paper[MOST_APPROVALS + 1];
	size_t count;
} Papers;

static void fetch_papers(Case *zone, Papers *papers)
{
	Approvals approvals;
	Case *test = fetch_capacity_test(zone);
	double factor = test != NULL ? OF_AT(zone, test, test_safety_factor_one) : 0;
	fetch_approvals(zone, &approvals);
	if (!ready(zone))
		return;
	const Curve *curve = curve_of(test);
	papers->paper[0] = (CapacityPaper){ .test = curve->test, .count = curve->count, .factor = factor };
	papers->count = 1;
	for (uint32_t i = 0; i < approvals.count; i++) {
		CapacityPaper paper = fetch_approval(zone, approvals.at[i]);
		if (paper.count > 0 || paper.cap_psf > 0)
			papers->paper[papers->count++] = paper;
	}
}

double zone_greatest_spacing_in(Case *zone)
{
	Papers papers = { 0 };
	fetch_papers(zone, &papers);
	OF(zone, zone_demand_psf);
	SpacingSearch of = { .paper = papers.paper, .how = fetch_interpolation(zone) };
	of.tolerance_percent = fetch_spacing_tolerance(zone);
	double module = fetch_module_in(zone);
	double step = CONSTANT(zone, "criteria.yaml", "spacing_step", zone->all->criteria->edition.spacing_step_in.value, NULL);
	of.panel_width_in = GIVEN(zone, roof_area, RoofArea, panel.width_in);
	of.class_spacing_in = listed_limit_in(zone, FACT_zone_class_spacing, of.tolerance_percent);
	of.letter_spacing_in = listed_limit_in(zone, FACT_zone_letter_spacing, of.tolerance_percent);
	of.clip_allowable_lb = fastening_limit_lb(zone);
	if (!ready(zone))
		return 0;
	Trying trying = { zone, zone->row };
	of.papers = papers.count;
	of.demand = (Demand){ demand_at_psf, &trying };
	of.unit_in = spacing_unit_in(module, step);
	GreatestSpacing greatest = greatest_spacing(&of);
	const char *binds = binds_words(zone, greatest.binds);
	if (greatest.spacing_in == 0)
		return REFUSE(zone, arena_printf(zone->all->arena, "no clip spacing holds here: %s", binds));
	note(zone, binds);
	return greatest.spacing_in;
}
