/* SPDX-License-Identifier: MIT
 * Papers on capacity: which test is named for it, its factor of safety, further papers: other tests named for capacity, and local
 * approvals with their caps. The least of all governs.
 *
 * The factor is that of the criteria for the test's standard and number of specimens, or the specification's where that is
 * greater; a factor that is in a pressure already is never taken out of it.
 */
#include "below.h"
#include "capacity.h"
#include "number.h"
#include "quantity.h"
#include "text.h"

#include <math.h>
#include <string.h>

/* ---- the capacity report ---- */

/* A test that is not said what it is for may be the one. */
static Case *first_for(Case *fact, const char *role)
{
	Case *area = area_of(fact);
	if (fetch_list(fact, area, offsetof(RoofArea, tests)) == NULL)
		return NULL;
	const Case *open = NULL;
	for (Case *test = first_below(area, KIND_test); test != NULL; test = test->next) {
		const Word *named = &((const AreaTest *)test->row)->role;
		if (is_value(&named->given) && is_word(named, role))
			return test;
		if (!is_value(&named->given) && open == NULL)
			open = test;
	}
	if (open != NULL)
		GIVEN_AT(fact, open, AreaTest, role);
	return NULL;
}

Case *fetch_capacity_test(Case *fact)
{
	Case *test = first_for(fact, "capacity");
	if (!ready(fact))
		return NULL;
	if (test == NULL) {
		SKIP(fact, "no listing is named for capacity");
		return NULL;
	}
	double fits = OF_AT(fact, test, test_role_fits_yes);
	if (ready(fact) && fits == 0)
		SKIP(fact, "the listing named for capacity is a paper for something else");
	else if (ready(fact) && curve_of(test)->count == 0)
		REFUSE(fact, "the listing named for capacity states no tested pressure");
	if (!ready(fact))
		return NULL;
	fetch_match(fact, test);
	return test;
}

Interpolation interpolation_of(const Criteria *criteria)
{
	const Word *stated = &criteria->edition.interpolation;
	if (is_word(stated, "straight line"))
		return BY_STRAIGHT_LINE;
	return is_word(stated, "none") ? BY_NEXT_WIDER : BY_LESSER_CURVE;
}

Interpolation fetch_interpolation(Case *fact)
{
	return interpolation_of(fact->all->criteria);
}

double fetch_spacing_tolerance(Case *fact)
{
	const Number *stated = &fact->all->criteria->edition.spacing_tolerance_percent;
	return CONSTANT(fact, "criteria.yaml", "spacing_tolerance", stated->value, NULL);
}

/* ---- factors of safety ---- */

/* A factor that cannot be read cannot be passed over. */
static double read_factor(Case *fact, const Requirement *row)
{
	const Text *asked = is_value(&row->at_least.given) ? &row->at_least : &row->exactly;
	double factor = 0;
	if (is_value(&asked->given) && read_quantity(asked->text, strlen(asked->text), UNIT_one, &factor) == QUANTITY_READ && factor > 0)
		return factor;
	REFUSE(fact, arena_printf(fact->all->arena, "paragraph %s does not state the factor of safety as a number",
		is_value(&row->paragraph.given) ? row->paragraph.text : "of the specification"));
	return 0;
}

double submittal_asked_uplift_factor_one(Case *submittal)
{
	if (fetch_list(submittal, submittal, offsetof(Submittal, specification.requirements)) == NULL)
		return 0;
	double greatest = 0;
	for (Case *at = first_below(submittal, KIND_requirement); at != NULL; at = at->next) {
		const Requirement *row = at->row;
		if (!is_value(&row->topic.given) || !same_text(row->topic.text, "uplift factor of safety"))
			continue;
		double factor = read_factor(submittal, row);
		if (factor <= greatest)
			continue;
		greatest = factor;
		note(submittal, row->paragraph.text);
	}
	return ready(submittal) && greatest == 0 ? SKIP(submittal, "the specification asks for none") : greatest;
}

/* The row of the criteria for a standard that asks for the most tests of those that were made. */
static const SafetyFactor *factor_row(const Edition *edition, const Text *standard, double tests)
{
	const SafetyFactor *found = NULL;
	for (uint32_t i = 0; i < edition->safety_factors.of.count; i++) {
		const SafetyFactor *row = &edition->safety_factors.of.row[i];
		bool is_standard = is_value(&standard->given) && same_text(row->standard.text, standard->text);
		double due = row->tests_at_least_one.value;
		if (is_standard && due <= tests && (found == NULL || due > found->tests_at_least_one.value))
			found = row;
	}
	return found;
}

static double criteria_factor(Case *test, const Listing *listing, double tests)
{
	const SafetyFactor *row = factor_row(&test->all->criteria->edition, &listing->standard, tests);
	if (row == NULL)
		return REFUSE(test, "the criteria state no factor of safety for this test standard");
	const char *words = arena_printf(test->all->arena, "criteria.yaml %s", row->standard.text);
	return fetch_constant(test, words, row->factor_one.value, row->basis.text);
}

double test_safety_factor_one(Case *test)
{
	double known = OF(test, test_listing_known_yes);
	const Fact *asked = fetch_use(test, fact_case(test, FACT_submittal_asked_uplift_factor), FACT_submittal_asked_uplift_factor);
	if (asked->state != FACT_NOT_APPLICABLE)
		fetch_raise(test, asked);
	if (!ready(test))
		return 0;
	if (known == 0)
		return SKIP(test, "the listing is not known");
	const Curve *curve = curve_of(test);
	if (curve->count == 0)
		return SKIP(test, "the listing states no tested pressure");
	double by_criteria = criteria_factor(test, test->listed, curve->fewest);
	double included = CONSTANT(test, "listing_tests.csv", "factor_included", curve->included, NULL);
	double asked_for = asked->state == FACT_KNOWN ? asked->value : 0;
	double factor = fmax(fmax(by_criteria, asked_for), included);
	note(test, factor == by_criteria ? "the criteria's" : factor == asked_for ? "the specification's" : "the one in its pressures");
	if (asked_for > 0)
		test->now->formula = "max({factor}, {asked_uplift_factor}, {factor_included})";
	return factor;
}

/* ---- further papers ---- */

/* A local approval whose listing is known; of the papers for capacity any but the first, if it has tested pressures. */
static bool is_further_paper(Case *fact, Case *test, const Case *first)
{
	const Word *named = &((const AreaTest *)test->row)->role;
	if (test->listed == NULL)
		return false;
	if (is_word(named, "local approval"))
		return true;
	bool is_capacity = is_word(named, "capacity") && test != first && curve_of(test)->count > 0;
	return is_capacity && OF_AT(fact, test, test_role_fits_yes) != 0;
}

void fetch_approvals(Case *fact, Approvals *approvals)
{
	Case *area = area_of(fact);
	const Case *first = first_for(fact, "capacity");
	approvals->count = 0;
	if (fetch_list(fact, area, offsetof(RoofArea, tests)) == NULL)
		return;
	for (Case *test = first_below(area, KIND_test); test != NULL; test = test->next) {
		const Word *named = &((const AreaTest *)test->row)->role;
		if (!is_value(&named->given))
			GIVEN_AT(fact, test, AreaTest, role);
		else if (is_further_paper(fact, test, first) && approvals->count < MOST_APPROVALS)
			approvals->at[approvals->count++] = test;
		else if (is_further_paper(fact, test, first))
			REFUSE(fact, "the roof area names more papers on capacity than are read");
		if (!ready(fact))
			return;
	}
}

CapacityPaper fetch_approval(Case *fact, Case *test)
{
	const Listing *listing = test->listed;
	const Curve *curve = curve_of(test);
	CapacityPaper paper = { .test = curve->test, .count = curve->count, .factor = 1 };
	fetch_match(fact, test);
	if (is_value(&listing->cap_psf.given))
		paper.cap_psf = CONSTANT(fact, "listings.csv", listing->listing.text, listing->cap_psf.value, NULL);
	if (curve->count > 0)
		paper.factor = OF_AT(fact, test, test_safety_factor_one);
	return paper;
}
