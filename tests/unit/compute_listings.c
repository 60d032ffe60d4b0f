/* SPDX-License-Identifier: MIT
 * Listings: known, in force, for what they are named; a class at its spacing, borrowed where the roof differs.
 */
#include "compute_world.h"

static Case *a_test(World *w, const char *role, const Listing *listing)
{
	AreaTest *row = TAKE(w->arena, AreaTest, 1);
	row->listing = TEXT_IS("tested-210");
	row->role = WORD_IS(role);
	w->area.tests.of.given.said = SAID_VALUE;
	Case *at = add_case(w, KIND_test, w->roof, row);
	at->listed = listing;
	return at;
}

static Listing *a_listing(World *w)
{
	Listing *row = TAKE(w->arena, Listing, 1);
	row->listing = TEXT_IS("tested-210");
	row->role = WORD_IS("class");
	row->status = WORD_IS("in force");
	row->uplift_class_one = NUMBER_IS(90);
	row->class_spacing_in = NUMBER_IS(24);
	return row;
}

static void a_listing_is_in_force_to_its_last_day(void **state)
{
	World *w = *state;
	Listing *row = a_listing(w);
	assert_known(a_test(w, "class", row), "listing_known", 1);
	assert_known(a_test(w, "class", row), "listing_in_force", 1);
	row->expires = DAY_IS(20557);
	assert_known(a_test(w, "class", row), "listing_in_force", 1);
	row->expires = DAY_IS(20556);
	Case *at = a_test(w, "class", row);
	assert_known(at, "listing_in_force", 0);
	assert_string_equal(ask_fact(at, "listing_in_force")->note, "it expired on 2026-04-13");
	row->status = WORD_IS("withdrawn");
	at = a_test(w, "class", row);
	assert_known(at, "listing_in_force", 0);
	assert_string_equal(ask_fact(at, "listing_in_force")->note, "withdrawn");
}

static void an_unknown_listing(void **state)
{
	World *w = *state;
	Case *at = a_test(w, "class", NULL);
	assert_known(at, "listing_known", 0);
	assert_state(at, "listing_in_force", FACT_NOT_APPLICABLE);
	assert_state(at, "differences", FACT_NOT_APPLICABLE);
	assert_state(at, "role_fits", FACT_NOT_APPLICABLE);
	assert_state(w->roof, "uplift_class", FACT_REFUSED);
	assert_string_equal(ask_fact(w->roof, "uplift_class")->reason, "the listing named for class is not among the listings");
}

static void a_listing_proves_its_own_role(void **state)
{
	World *w = *state;
	assert_known(a_test(w, "class", a_listing(w)), "role_fits", 1);
	Case *at = a_test(w, "capacity", a_listing(w));
	assert_known(at, "role_fits", 0);
	assert_string_equal(ask_fact(at, "role_fits")->note, "it is a paper for class");
}

static Case *a_zone(World *w, double spacing)
{
	Zone *row = TAKE(w->arena, Zone, 1);
	row->spacing_in = NUMBER_IS(spacing);
	return add_case(w, KIND_zone, w->roof, row);
}

static void a_class_belongs_to_its_spacing(void **state)
{
	World *w = *state;
	a_test(w, "capacity", NULL);
	a_test(w, "class", a_listing(w));
	assert_known(w->roof, "uplift_class", 90);
	assert_false(ask_fact(w->roof, "uplift_class")->borrowed);
	assert_known(w->roof, "capacity_papers", 1);
	assert_known(a_zone(w, 24), "class_spacing", 24);
	assert_known(a_zone(w, 24), "class_spacing_ratio", 1);
	assert_known(a_zone(w, 24.5), "class_spacing_ratio", 24.5 / 24);
	assert_known(a_zone(w, 12), "class_spacing_ratio", 0.5);
}

static void a_class_that_is_not_stated(void **state)
{
	World *w = *state;
	Listing *row = a_listing(w);
	row->uplift_class_one.given.said = SAID_NOTHING;
	row->class_spacing_in.given.said = SAID_NOTHING;
	a_test(w, "class", row);
	assert_state(w->roof, "uplift_class", FACT_REFUSED);
	assert_state(a_zone(w, 24), "class_spacing_ratio", FACT_REFUSED);
}

static void a_test_not_said_what_for_may_be_the_one_for_class(void **state)
{
	World *w = *state;
	Case *at = a_test(w, "", a_listing(w));
	((AreaTest *)at->row)->role.given.said = SAID_NOTHING;
	assert_waits(w, w->roof, "uplift_class", "for");
	assert_waits(w, w->roof, "capacity_papers", "for");
}

static Case *compared_item(World *w, Case *test, const char *step, const Clip *here)
{
	Compared *row = TAKE(w->arena, Compared, 1);
	*row = (Compared){ .part = w->roof, .test = test, .field = field_find(&Clip_record, "height", 6), .here = here };
	row->record.with = WORD_IS("listing");
	row->record.step = WORD_IS(step);
	return add_case(w, KIND_comparison, w->roof, row);
}

static void differences_are_counted_test_by_test(void **state)
{
	World *w = *state;
	Case *one = a_test(w, "class", a_listing(w)), *other = a_test(w, "capacity", a_listing(w));
	compared_item(w, one, "same", NULL);
	compared_item(w, other, "other", NULL);
	compared_item(w, other, "up", NULL);
	compared_item(w, NULL, "other", NULL);
	assert_known(one, "differences", 0);
	assert_known(other, "differences", 2);
	assert_known(w->roof, "uplift_class", 90);
	assert_false(ask_fact(w->roof, "uplift_class")->borrowed);
}

/* Whether the construction is the tested one is not known: the class is shown, never met, and says what it waits for. */
static void a_comparison_that_waits_makes_it_borrowed(void **state)
{
	World *w = *state;
	Clip clip = { .given = GOOD };
	Case *test = a_test(w, "class", a_listing(w));
	compared_item(w, test, "unknown", &clip);
	assert_waits(w, test, "differences", "height");
	assert_known(w->roof, "uplift_class", 90);
	assert_true(ask_fact(w->roof, "uplift_class")->borrowed);
	assert_string_equal(waits_for(w, ask_fact(w->roof, "uplift_class")), "height");
	Case *zone = a_zone(w, 24);
	assert_known(zone, "class_spacing_ratio", 1);
	assert_true(ask_fact(zone, "class_spacing_ratio")->borrowed);
}

/* Beyond the limit of comparisons none is made: no count of them means anything. */
static void comparisons_cut_short_are_refused(void **state)
{
	World *w = *state;
	WaitingList cut = { .kind = KIND_comparison, .up = w->roof };
	w->all.waiting = &cut;
	w->all.waitings = 1;
	Case *test = a_test(w, "class", a_listing(w));
	assert_state(test, "differences", FACT_REFUSED);
	assert_true(ask_fact(w->roof, "uplift_class")->borrowed);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		TEST(a_listing_is_in_force_to_its_last_day),
		TEST(an_unknown_listing),
		TEST(a_listing_proves_its_own_role),
		TEST(a_class_belongs_to_its_spacing),
		TEST(a_class_that_is_not_stated),
		TEST(a_test_not_said_what_for_may_be_the_one_for_class),
		TEST(differences_are_counted_test_by_test),
		TEST(a_comparison_that_waits_makes_it_borrowed),
		TEST(comparisons_cut_short_are_refused),
	};
	return cmocka_run_group_tests_name("compute: listings", tests, NULL, NULL) != 0;
}
