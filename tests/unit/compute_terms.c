/* SPDX-License-Identifier: MIT
 * Eligibility, installer and terms of the warranty by hand: projects by their days, who is on the roof, layers, areas left out.
 */
#include "compute_world.h"

static Installer installers[2];

static void with_register(World *w)
{
	installers[0] = (Installer){ .certificate = TEXT_IS("IC-1"), .firm = TEXT_IS("Firm One"), .profiles = TEXT_IS("A; B") };
	installers[0].issued = DAY_IS(20000);
	installers[0].expires = DAY_IS(20557);
	installers[1] = (Installer){ .certificate = TEXT_IS("IC-2"), .firm = TEXT_IS("Firm Two"), .profiles = TEXT_IS("B") };
	installers[1].issued = DAY_IS(20000);
	installers[1].expires = DAY_IS(20557);
	w->registers.installers.row = installers;
	w->registers.installers.count = 2;
	w->submittal.parties.applicant.firm = TEXT_IS("Firm One");
	w->submittal.parties.applicant.certificate = TEXT_IS("IC-1");
	w->area.panel.profile = TEXT_IS("A");
}

static void a_project(World *w, int32_t day)
{
	SimilarProject *row = TAKE(w->arena, SimilarProject, 1);
	row->completed = DAY_IS(day);
	w->submittal.parties.applicant.similar_projects.list.given.said = SAID_VALUE;
	add_case(w, KIND_similar_project, w->at, row);
}

/* Judged on 2026-04-14, day 20557: 2023-04-14 is day 19461, 2024-04-14 day 19827. */
static void projects_count_by_their_days(void **state)
{
	World *w = *state;
	a_project(w, 19460);
	a_project(w, 19461);
	a_project(w, 19827);
	a_project(w, 19828);
	a_project(w, 20557);
	a_project(w, 20558); /* not completed yet */
	assert_known(w->at, "projects_done", 5);
	assert_known(w->at, "projects_of_3_years", 4);
	assert_known(w->at, "projects_2_years_old", 3);
}

static void a_list_of_projects_not_given_is_waited_for(void **state)
{
	World *w = *state;
	w->submittal.parties.applicant.similar_projects.list.given.said = SAID_NOTHING;
	assert_waits(w, w->at, "projects_done", "similar_projects");
}

static void years_run_from_the_first_certificate(void **state)
{
	World *w = *state;
	with_register(w);
	assert_known(w->at, "years_in_register", 1 + 192 / 365.0); /* 2024-10-04 to 2026-04-14 */
	installers[0].since = DAY_IS(17635); /* 2018-04-14 */
	w->at->fact = NULL;
	assert_known(w->at, "years_in_register", 8);
	w->submittal.parties.applicant.certificate = TEXT_IS("IC-9");
	w->at->fact = NULL;
	assert_state(w->at, "years_in_register", FACT_NOT_APPLICABLE);
}

static void crew_is(World *w, const char *firm, bool approved)
{
	w->submittal.parties.applicant.installed_by = TEXT_IS(firm);
	w->roof->fact = NULL;
	assert_known(w->roof, "crew_approved", approved);
}

static void another_crew_needs_a_certificate_for_the_profile(void **state)
{
	World *w = *state;
	with_register(w);
	crew_is(w, "firm one", true);
	crew_is(w, "Firm Two", false);
	assert_non_null(strstr(ask_fact(w->roof, "crew_approved")->note, "IC-2 names B"));
	w->area.panel.profile = TEXT_IS("B");
	crew_is(w, "Firm Two", true);
	installers[1].expires = DAY_IS(20556);
	crew_is(w, "Firm Two", false);
	crew_is(w, "Firm Three", false);
}

/* ---- layers ---- */

static void layer(World *w, const char *kind)
{
	Layer *row = TAKE(w->arena, Layer, 1);
	row->layer = WORD_IS(kind);
	w->area.build_up.list.given.said = SAID_VALUE;
	add_case(w, KIND_layer, w->roof, row);
}

static void a_retarder_between_two_insulations_is_cold(void **state)
{
	World *w = *state;
	layer(w, "insulation");
	layer(w, "vapor retarder");
	layer(w, "insulation");
	assert_known(w->roof, "vapor_retarders", 1);
	assert_known(w->roof, "vapor_retarder_warm", 0);
}

static void a_retarder_below_all_insulation_is_warm(void **state)
{
	World *w = *state;
	layer(w, "cover board");
	layer(w, "vapor retarder");
	layer(w, "insulation");
	layer(w, "vapor retarder");
	assert_known(w->roof, "vapor_retarders", 2);
	assert_known(w->roof, "vapor_retarder_warm", 1);
}

/* ---- areas left out ---- */

static void hatched(World *w, const char *name, const char *note)
{
	Text *at = TAKE(w->arena, Text, 1);
	*at = TEXT_IS(name);
	w->submittal.warranty.excluded_areas = (Texts){ GOOD, name != NULL ? 1 : 0, at };
	if (name == NULL)
		w->submittal.warranty.excluded_areas.given.said = SAID_NOTHING;
	w->at->fact = NULL;
	assert_known(w->at, "excluded_areas_drawn", note == NULL);
	if (note != NULL)
		assert_string_equal(ask_fact(w->at, "excluded_areas_drawn")->note, note);
}

static void the_plan_hatches_what_is_left_out_and_only_that(void **state)
{
	World *w = *state;
	RoofArea *canopy = TAKE(w->arena, RoofArea, 1);
	w->area.warranted = YES_IS(true);
	hatched(w, NULL, NULL);
	canopy->name = TEXT_IS("Canopy");
	canopy->warranted = YES_IS(false);
	add_case(w, KIND_roof_area, w->at, canopy);
	w->submittal.roof_areas.list.given.said = SAID_VALUE;
	hatched(w, "canopy", NULL);
	hatched(w, NULL, "Canopy is not hatched");
	hatched(w, "Main roof", "Main roof is hatched and to be warranted");
}

static void a_transfer_is_told_in_full_or_not_at_all(void **state)
{
	World *w = *state;
	Transfer *t = &w->submittal.warranty.transfer;
	w->submittal.warranty.given.said = SAID_VALUE;
	t->allowed = YES_IS(false);
	assert_known(w->at, "transfer_recorded", 1);
	t->allowed = YES_IS(true);
	t->times_one = NUMBER_IS(1);
	t->fee = TEXT_IS("none");
	w->at->fact = NULL;
	assert_known(w->at, "transfer_recorded", 0);
	assert_string_equal(ask_fact(w->at, "transfer_recorded")->note,
		"in how many days after the sale, whether the roof is inspected");
}

/* 60 by 40 ft at 3:12 is 2,400 * sqrt(17) / 4 sq ft; an area that is not to be warranted counts for nothing. */
static void surface_is_counted_along_the_slope(void **state)
{
	World *w = *state;
	RoofArea *canopy = TAKE(w->arena, RoofArea, 1);
	w->area.warranted = YES_IS(true);
	w->area.building.length_ft = NUMBER_IS(60);
	w->area.building.width_ft = NUMBER_IS(40);
	w->area.building.slope_in_12 = NUMBER_IS(3);
	canopy->warranted = YES_IS(false);
	add_case(w, KIND_roof_area, w->at, canopy);
	assert_known(w->at, "warranted_surface", 2473.8633753705964);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		TEST(projects_count_by_their_days),
		TEST(a_list_of_projects_not_given_is_waited_for),
		TEST(years_run_from_the_first_certificate),
		TEST(another_crew_needs_a_certificate_for_the_profile),
		TEST(a_retarder_between_two_insulations_is_cold),
		TEST(a_retarder_below_all_insulation_is_warm),
		TEST(the_plan_hatches_what_is_left_out_and_only_that),
		TEST(a_transfer_is_told_in_full_or_not_at_all),
		TEST(surface_is_counted_along_the_slope),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
