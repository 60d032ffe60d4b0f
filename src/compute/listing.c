/* SPDX-License-Identifier: MIT
 * Listings that a roof area rests on: whether they are known and in force, what differs, and the class of the one named for it.
 */
#include "below.h"
#include "date.h"
#include "fetch.h"
#include "formula.h"
#include "text.h"

double test_listing_known_yes(Case *test)
{
	GIVEN(test, test, AreaTest, listing);
	return ready(test) && test->listed != NULL;
}

/* Why a listing is not in force, in words; NULL if it is. */
static const char *why_not(const Listing *row, int32_t day, Arena *arena)
{
	if (!is_word(&row->status, "in force"))
		return row->status.text;
	if (is_value(&row->expires.given) && day > row->expires.day)
		return arena_printf(arena, "it expired on %s", date_print(arena, row->expires.day));
	return NULL;
}

double test_listing_in_force_yes(Case *test)
{
	double known = OF(test, test_listing_known_yes);
	int32_t day = fetch_as_of(test);
	if (!ready(test))
		return 0;
	if (known == 0)
		return SKIP(test, "the listing is not known");
	const char *why = why_not(test->listed, day, test->all->arena);
	note(test, why);
	return why == NULL;
}

/* A class says nothing of the pressure at another spacing, and a capacity report earns no class. */
double test_role_fits_yes(Case *test)
{
	double known = OF(test, test_listing_known_yes);
	const char *role = GIVEN(test, test, AreaTest, role);
	if (!ready(test))
		return 0;
	if (known == 0)
		return SKIP(test, "the listing is not known");
	const Listing *row = test->listed;
	bool fits = same_text(row->role.text, role);
	if (!fits)
		note(test, arena_printf(test->all->arena, "it is a paper for %s", row->role.text));
	return fits;
}

/* What the listing allows by its own words, or the table of substitutions, does not count. */
double test_differences_one(Case *test)
{
	double known = OF(test, test_listing_known_yes);
	if (!ready(test))
		return 0;
	if (known == 0)
		return SKIP(test, "the listing is not known");
	if (!are_all_compared(test))
		return REFUSE(test, "the submittal has more parts and tests than can be compared");
	double count = 0;
	for (Case *c = first_compared(test); c != NULL; c = c->next_of_test) {
		if (is_word(&((const Comparison *)c->row)->part, "underlayment"))
			continue; /* it holds nothing */
		const Fact *holds = fetch_use(test, c, FACT_comparison_holds);
		if (holds->state == FACT_NOT_APPLICABLE)
			continue;
		fetch_raise(test, holds);
		count += holds->state == FACT_KNOWN && holds->value == 0;
	}
	return count;
}

/* ---- tests of a roof area by what they are for ---- */

/* A test that is not said what it is for may be the one for class. */
static Case *fetch_class_test(Case *fact, const Case *area)
{
	Case *open, *test = class_test_of(area, &open);
	if (fetch_list(fact, area, offsetof(RoofArea, tests)) != NULL && test == NULL && open != NULL)
		GIVEN_AT(fact, open, AreaTest, role);
	return test;
}

double roof_area_capacity_papers_one(Case *area)
{
	if (fetch_list(area, area, offsetof(RoofArea, tests)) == NULL)
		return 0;
	double count = 0;
	for (Case *test = first_below(area, KIND_test); test != NULL; test = test->next)
		count += same_text(GIVEN_AT(area, test, AreaTest, role), "capacity");
	return count;
}

/* The listing named for class. Its class is borrowed where the construction differs from the one that earned it. */
static const Listing *fetch_class_listing(Case *fact)
{
	Case *test = fetch_class_test(fact, area_of(fact));
	if (!ready(fact))
		return NULL;
	if (test == NULL) {
		REFUSE(fact, "no listing is named for class");
		return NULL;
	}
	double known = OF_AT(fact, test, test_listing_known_yes);
	if (ready(fact) && known == 0)
		REFUSE(fact, "the listing named for class is not among the listings");
	if (!ready(fact))
		return NULL;
	fetch_match(fact, test);
	return test->listed;
}

double roof_area_uplift_class_one(Case *area)
{
	const Listing *row = fetch_class_listing(area);
	if (row == NULL)
		return 0;
	if (!is_value(&row->uplift_class_one.given))
		return REFUSE(area, "the listing named for class states no class");
	note(area, row->listing.text);
	return CONSTANT(area, "listings.csv", row->listing.text, row->uplift_class_one.value, NULL);
}

double zone_class_spacing_in(Case *zone)
{
	Case *test = fetch_class_test(zone, area_of(zone));
	if (!ready(zone))
		return 0;
	if (test == NULL)
		return SKIP(zone, "no listing is named for class"); /* which the class of the roof area says once */
	const Listing *row = fetch_class_listing(zone);
	if (row == NULL)
		return 0;
	if (!is_value(&row->class_spacing_in.given))
		return REFUSE(zone, "the listing named for class states no clip spacing");
	double spacing = GIVEN(zone, zone, Zone, spacing_in);
	const Number *stated = &zone->all->criteria->edition.spacing_tolerance_percent;
	double tolerance = CONSTANT(zone, "criteria.yaml", "spacing_tolerance", stated->value, NULL);
	if (!ready(zone))
		return 0;
	note(zone, row->listing.text);
	double listed = CONSTANT(zone, "listings.csv", row->listing.text, row->class_spacing_in.value, NULL);
	double same = same_spacing_in(listed, spacing, tolerance);
	if (same != listed)
		zone->now->formula = "{spacing}";
	return same;
}

double zone_class_spacing_ratio_one(Case *zone)
{
	double spacing = GIVEN(zone, zone, Zone, spacing_in);
	double class_spacing = OF(zone, zone_class_spacing_in);
	return ready(zone) ? spacing_ratio(spacing, class_spacing) : 0;
}
