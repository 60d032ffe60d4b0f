/* SPDX-License-Identifier: MIT
 * Lives by place and surroundings, terms, approvals, the source of a part, the installer's certificate.
 */
#include "compute_world.h"

/* ---- lives ---- */

#define LIFE(i, w, e, yr, p) { .item = { GOOD, i }, .where = w, .environment = e, .service_life_yr = { GOOD, yr }, \
	.basis = { GOOD, "read-paper" }, .paper = p }
#define BLANK { .given = { .said = SAID_NOTHING } }
#define FILLED_WITH(x) { GOOD, x }
#define A_WORD(x) { GOOD, x, 0 }

static const Life lives[] = {
	LIFE("seal-a", BLANK, BLANK, 30, FILLED_WITH("LS-12 (invented)")),
	LIFE("seal-a", BLANK, A_WORD("coast"), 18, BLANK),
	LIFE("seal-a", FILLED_WITH("seam"), BLANK, 40, BLANK),
	LIFE("seal-a", FILLED_WITH("seam"), A_WORD("coast"), 25, BLANK),
	LIFE("seal-b", FILLED_WITH("seam"), BLANK, 28, BLANK),
	LIFE("clip-a", BLANK, BLANK, 60, BLANK),
	LIFE("screw-a", BLANK, A_WORD("town"), 35, BLANK),
	LIFE("screw-a", BLANK, A_WORD("coast"), 8, BLANK),
};

#define KIND(k, life, renews) { .kind = { GOOD, k, 0 }, .life_judged = { GOOD, life }, .source_judged = { GOOD, true }, \
	.approval_judged = { GOOD, true }, .renewable = { GOOD, renews }, .basis = { GOOD, "read-paper" } }
static const KindRow kinds[] = { KIND("panel", false, false), KIND("support", false, false), KIND("clip", true, false),
	KIND("fastener", true, false), KIND("sealant", true, true), KIND("underlayment", true, false) };

static const NamedWord concealed[] = { { .list = { GOOD, "concealed places" }, .entry = { GOOD, "seam" } } };

#define TERM(t) { .term_yr = { GOOD, t }, .cover_limit = { GOOD, "none" }, .least_slope_in_12 = { GOOD, t / 40.0 }, \
	.seam = { GOOD, "single lock 90; double lock 180" }, .environment = { GOOD, "town; city" }, \
	.basis = { GOOD, "read-paper" } }
static const Term terms[] = { TERM(10), TERM(20), TERM(30) };

static int life_setup(void **state)
{
	World *w = world_make();
	w->criteria.lives.row = lives;
	w->criteria.lives.count = sizeof lives / sizeof *lives;
	w->criteria.kinds.row = kinds;
	w->criteria.kinds.count = sizeof kinds / sizeof *kinds;
	w->criteria.lists.row = concealed;
	w->criteria.lists.count = 1;
	w->criteria.terms.row = terms;
	w->criteria.terms.count = 3;
	w->submittal.project.surroundings = WORD_IS("town");
	w->submittal.project.name = TEXT_IS("Marrow Creek Depot");
	w->submittal.warranty.term_yr = NUMBER_IS(20);
	w->submittal.warranty.cover_limit = TEXT_IS("none");
	w->area.panel.seam = WORD_IS("double lock 180");
	*state = w;
	return 0;
}

static Case *sealant(World *w, const char *item, const char *where)
{
	Sealant *row = TAKE(w->arena, Sealant, 1);
	row->item = TEXT_IS(item);
	row->where = WORD_IS(where);
	w->area.sealants.of.given.said = SAID_VALUE;
	Case *at = add_case(w, KIND_sealant, w->roof, row);
	at->name = arena_printf(w->arena, "Main roof / %s", item);
	return at;
}

static Sealant *row_of(Case *at)
{
	return (Sealant *)at->row;
}

static void the_row_that_fits_best(void **state)
{
	World *w = *state;
	assert_known(sealant(w, "seal-a", "ridge"), "life", 30);
	assert_known(sealant(w, "seal-a", "seam"), "life", 40);
	w->submittal.project.surroundings = WORD_IS("coast");
	assert_known(sealant(w, "seal-a", "seam"), "life", 25);
	assert_known(sealant(w, "seal-a", "ridge"), "life", 18);
	assert_string_equal(ask_fact(w->all.of[KIND_sealant].at[0], "life")->note, "LS-12 (invented)");
}

static void only_what_the_rows_depend_on_is_asked(void **state)
{
	World *w = *state;
	Clip clip = { .item = TEXT_IS("clip-a") };
	w->submittal.project.surroundings.given.said = SAID_NOTHING;
	assert_known(add_case(w, KIND_clip, w->roof, &clip), "life", 60);
	Fastener screw = { .item = TEXT_IS("screw-a") };
	assert_waits(w, add_case(w, KIND_fastener, w->roof, &screw), "life", "surroundings");
	Sealant seal = { .item = TEXT_IS("seal-a") };
	assert_waits(w, add_case(w, KIND_sealant, w->roof, &seal), "life", "where surroundings");
	Sealant nothing = { .given = GOOD };
	assert_waits(w, add_case(w, KIND_sealant, w->roof, &nothing), "life", "item");
}

static void one_screw_lives_differently_by_surroundings(void **state)
{
	World *w = *state;
	Fastener screw = { .item = TEXT_IS("screw-a") };
	assert_known(add_case(w, KIND_fastener, w->roof, &screw), "life", 35);
	w->submittal.project.surroundings = WORD_IS("coast");
	assert_known(add_case(w, KIND_fastener, w->roof, &screw), "life", 8);
	w->submittal.project.surroundings = WORD_IS("city");
	assert_state(add_case(w, KIND_fastener, w->roof, &screw), "life", FACT_REFUSED);
}

static void a_place_without_a_row_is_refused(void **state)
{
	World *w = *state;
	Case *at = sealant(w, "seal-b", "ridge");
	assert_state(at, "life", FACT_REFUSED);
	assert_string_equal(ask_fact(at, "life")->reason, "lives.csv gives no life for this item where it is used");
	assert_known(at, "life_stated", 0);
	assert_known(sealant(w, "seal-b", "seam"), "life_stated", 1);
}

static void outside_the_tables_a_life_needs_its_paper(void **state)
{
	World *w = *state;
	Case *at = sealant(w, "seal-x", "ridge");
	assert_waits(w, at, "life", "stated_life life_paper");
	assert_known(at, "life_stated", 0);
	at = sealant(w, "seal-x", "ridge");
	row_of(at)->stated_life_yr = NUMBER_IS(25);
	assert_waits(w, at, "life", "life_paper");
	assert_known(at, "life_stated", 0);
	at = sealant(w, "seal-x", "ridge");
	row_of(at)->stated_life_yr = NUMBER_IS(25);
	row_of(at)->life_paper = TEXT_IS("letter of 2026-02-10");
	assert_known(at, "life", 25);
	assert_string_equal(ask_fact(at, "life")->formula, "{stated_life}");
	assert_known(at, "life_stated", 1);
}

static void concealed_places_cannot_be_renewed(void **state)
{
	World *w = *state;
	assert_known(sealant(w, "seal-a", "ridge"), "renewable", 1);
	assert_known(sealant(w, "seal-a", "seam"), "renewable", 0);
	Sealant nowhere = { .item = TEXT_IS("seal-a") };
	assert_waits(w, add_case(w, KIND_sealant, w->roof, &nowhere), "renewable", "where");
	Clip clip = { .item = TEXT_IS("clip-a") };
	Case *at = add_case(w, KIND_clip, w->roof, &clip);
	assert_known(at, "renewable", 0);
	assert_known(at, "life_judged", 1);
	assert_known(at, "source_judged", 1);
	assert_known(at, "approval_judged", 1);
	Closure closure = { .given = GOOD };
	assert_state(add_case(w, KIND_closure, w->roof, &closure), "life_judged", FACT_REFUSED);
}

static void least_life_names_the_part(void **state)
{
	World *w = *state;
	sealant(w, "seal-a", "ridge"); /* renewable: does not count */
	sealant(w, "seal-a", "seam"); /* 40 */
	sealant(w, "seal-b", "seam"); /* 28 */
	assert_known(w->roof, "least_life", 28);
	assert_string_equal(ask_fact(w->roof, "least_life")->note, "Main roof / seal-b");
	assert_known(w->roof, "longest_term", 20);
	assert_string_equal(ask_fact(w->roof, "longest_term")->note, "Main roof / seal-b");
}

static void a_life_of_just_the_term_reaches_it(void **state)
{
	World *w = *state;
	Case *at = sealant(w, "seal-x", "seam");
	row_of(at)->stated_life_yr = NUMBER_IS(30);
	row_of(at)->life_paper = TEXT_IS("letter");
	assert_known(w->roof, "longest_term", 30);
}

static void a_life_below_every_term_reaches_none(void **state)
{
	World *w = *state;
	Case *at = sealant(w, "seal-x", "seam");
	row_of(at)->stated_life_yr = NUMBER_IS(9.5);
	row_of(at)->life_paper = TEXT_IS("letter");
	assert_known(w->roof, "longest_term", 0);
}

static void least_life_waits_for_any_life_or_list(void **state)
{
	World *w = *state;
	sealant(w, "seal-b", "seam");
	sealant(w, "seal-x", "seam");
	w->area.clips.of.given.said = SAID_NOTHING;
	w->area.rivets.of.given.said = SAID_NOTHING; /* kinds.csv does not judge their life */
	assert_waits(w, w->roof, "least_life", "clips stated_life life_paper");
	assert_waits(w, w->roof, "longest_term", "clips stated_life life_paper");
}

static void no_part_no_life(void **state)
{
	assert_state(((World *)*state)->roof, "least_life", FACT_NOT_APPLICABLE);
}

/* ---- terms ---- */

static void terms_offered_and_what_hangs_on_them(void **state)
{
	World *w = *state;
	assert_known(w->at, "term_offered", 1);
	assert_known(w->roof, "term_least_slope", 0.5);
	assert_known(w->roof, "term_seam_allowed", 1);
	assert_known(w->roof, "term_surroundings_allowed", 1);
}

static void a_term_that_is_not_offered(void **state)
{
	World *w = *state;
	w->submittal.warranty.term_yr = NUMBER_IS(25);
	assert_known(w->at, "term_offered", 0);
	assert_string_equal(ask_fact(w->at, "term_offered")->note, "offered: 10, 20, 30 yr");
	assert_state(w->roof, "term_least_slope", FACT_NOT_APPLICABLE);
	assert_state(w->roof, "term_seam_allowed", FACT_NOT_APPLICABLE);
}

static void each_column_of_a_term_bars(void **state)
{
	World *w = *state;
	w->area.panel.seam = WORD_IS("snap");
	w->submittal.project.surroundings = WORD_IS("coast");
	assert_known(w->roof, "term_seam_allowed", 0);
	assert_string_equal(ask_fact(w->roof, "term_seam_allowed")->note, "allowed: single lock 90; double lock 180");
	assert_known(w->roof, "term_surroundings_allowed", 0);
}

/* ---- approvals ---- */

/* A cell `any` is read as "does not apply", without a text. */
#define ANY { .given = { .said = SAID_NOT_APPLICABLE, .typed = "any" } }
#define APPROVAL(l, i, u, p, from, to, term, c) \
	{ .letter = { GOOD, l }, .item = { GOOD, i }, .use = u, .project = { GOOD, p }, .issued = { GOOD, from }, \
	.expires = { GOOD, to }, .greatest_term_yr = { GOOD, term }, .condition = c }
static const Approval approvals[] = { /* the day is 20557 */
	APPROVAL("PA-1", "seal-other-use", FILLED_WITH("ridge"), "all", 20000, 21000, 20, BLANK),
	APPROVAL("PA-2", "seal-other-project", ANY, "Lake Court", 20000, 21000, 20, BLANK),
	APPROVAL("PA-3", "seal-short", ANY, "all", 20000, 21000, 19, BLANK),
	APPROVAL("PA-4", "seal-expired", ANY, "all", 20000, 20556, 20, BLANK),
	APPROVAL("PA-5", "seal-early", ANY, "all", 20558, 21000, 20, BLANK),
	APPROVAL("PA-6", "seal-good", FILLED_WITH("seam"), "Marrow Creek Depot", 20557, 20557, 20, BLANK),
	APPROVAL("PA-7", "seal-cond", ANY, "all", 20000, 21000, 30, FILLED_WITH("peel test")),
	APPROVAL("PA-8", "seal-both", ANY, "all", 20000, 21000, 30, FILLED_WITH("peel test")),
	APPROVAL("PA-9", "seal-both", ANY, "all", 20000, 21000, 30, BLANK),
};

static World *with_approvals(void **state)
{
	World *w = *state;
	w->registers.approvals.row = approvals;
	w->registers.approvals.count = sizeof approvals / sizeof *approvals;
	return w;
}

static void what_does_not_count_says_why(void **state)
{
	static const struct {
		const char *item, *note;
	} rows[] = {
		{ "seal-other-use", "PA-1 is for another use (ridge)" },
		{ "seal-other-project", "PA-2 is for another project" },
		{ "seal-short", "PA-3 reaches to a term of 19 yr" },
		{ "seal-expired", "PA-4 expired on 2026-04-13" },
		{ "seal-early", "PA-5 is issued only on 2026-04-15" },
		{ "seal-unheard-of", "no approval of this item is in the register" },
	};
	World *w = with_approvals(state);
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		Case *at = sealant(w, rows[i].item, "seam");
		assert_known(at, "in_catalogue", 0);
		assert_known(at, "approved", 0);
		assert_string_equal(ask_fact(at, "approved")->note, rows[i].note);
		assert_known(at, "approved_on_condition", 0);
	}
}

static void an_approval_counts_to_its_last_day(void **state)
{
	World *w = with_approvals(state);
	Case *at = sealant(w, "seal-good", "seam");
	assert_known(at, "approved", 1);
	assert_string_equal(ask_fact(at, "approved")->note, "PA-6");
	w->all.as_of = 20558;
	assert_known(sealant(w, "seal-good", "seam"), "approved", 0);
}

static void a_condition_is_never_silent(void **state)
{
	World *w = with_approvals(state);
	Case *at = sealant(w, "seal-cond", "seam");
	assert_known(at, "approved", 1);
	assert_string_equal(ask_fact(at, "approved")->note, "PA-7, on condition: peel test");
	assert_known(at, "approved_on_condition", 1);
	assert_string_equal(ask_fact(at, "approved_on_condition")->note, "PA-7, on condition: peel test");
	at = sealant(w, "seal-both", "seam");
	assert_string_equal(ask_fact(at, "approved")->note, "PA-9");
	assert_known(at, "approved_on_condition", 0);
}

static void an_approval_states_no_life(void **state)
{
	World *w = with_approvals(state);
	assert_waits(w, sealant(w, "seal-good", "seam"), "life", "stated_life life_paper");
}

static void the_catalogue_needs_no_approval(void **state)
{
	World *w = with_approvals(state);
	Sealant row = { .item = TEXT_IS("seal-expired") };
	Case *at = sealant(w, "seal-expired", "seam");
	at->catalogue = &row;
	assert_known(at, "in_catalogue", 1);
	assert_known(at, "approved", 1);
}

static void an_approval_waits_for_all_it_is_held_against(void **state)
{
	World *w = with_approvals(state);
	w->submittal.warranty.term_yr.given.said = SAID_NOTHING;
	w->submittal.project.name.given.said = SAID_NOTHING;
	w->all.as_of = INT32_MIN;
	assert_waits(w, sealant(w, "seal-good", "seam"), "approved", "name term date");
	assert_known(sealant(w, "seal-unheard-of", "seam"), "approved", 0);
}

/* ---- source ---- */

static void bought_from_the_panel_maker(void **state)
{
	World *w = *state;
	static const struct {
		const char *from;
		double yes;
	} rows[] = { { "panel maker", 1 }, { " Panel Maker ", 1 }, { "Sample Panel Works (invented)", 1 },
		{ "Example Supply (invented)", 0 } };
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		Case *at = sealant(w, "seal-a", "seam");
		row_of(at)->supplied_by = TEXT_IS(rows[i].from);
		assert_known(at, "supplied_by_maker", rows[i].yes);
	}
	assert_waits(w, sealant(w, "seal-a", "seam"), "supplied_by_maker", "supplied_by");
}

static void the_catalogue_says_where_to_buy(void **state)
{
	World *w = *state;
	Sealant must = { .supplied_by = TEXT_IS("panel maker") }, free = { .given = GOOD };
	Case *at = sealant(w, "seal-a", "seam");
	assert_known(at, "must_be_supplied", 0);
	at = sealant(w, "seal-a", "seam");
	at->catalogue = &must;
	assert_known(at, "must_be_supplied", 1);
	at = sealant(w, "seal-a", "seam");
	at->catalogue = &free;
	assert_known(at, "must_be_supplied", 0);
}

/* ---- certificate ---- */

static const Installer installers[] = { { .certificate = { GOOD, "IC-204" }, .firm = { GOOD, "Example Roofing (invented)" },
	.issued = { GOOD, 20000 }, .expires = { GOOD, 20557 } } };

static World *with_certificate(void **state, const char *certificate, const char *firm, int32_t day)
{
	World *w = *state;
	w->registers.installers.row = installers;
	w->registers.installers.count = 1;
	w->submittal.parties.applicant.certificate = TEXT_IS(certificate);
	w->submittal.parties.applicant.firm = TEXT_IS(firm);
	w->all.as_of = day;
	return w;
}

static void a_certificate_in_force(void **state)
{
	World *w = with_certificate(state, "IC-204", "example roofing (INVENTED)", 20557);
	assert_known(w->at, "certificate_in_force", 1);
	assert_null(ask_fact(w->at, "certificate_in_force")->note);
}

static void check_certificate(World *w, const char *note)
{
	assert_known(w->at, "certificate_in_force", 0);
	assert_string_equal(ask_fact(w->at, "certificate_in_force")->note, note);
}

static void a_certificate_nobody_issued(void **state)
{
	check_certificate(with_certificate(state, "IC-9", "Example Roofing (invented)", 20557),
		"no such certificate is in the register");
}

static void a_certificate_of_another_firm(void **state)
{
	check_certificate(with_certificate(state, "IC-204", "Example Exteriors (invented)", 20557), "it belongs to another firm");
}

static void a_certificate_that_expired(void **state)
{
	check_certificate(with_certificate(state, "IC-204", "Example Roofing (invented)", 20558), "it expired on 2026-04-14");
}

static void a_certificate_from_tomorrow(void **state)
{
	check_certificate(with_certificate(state, "IC-204", "Example Roofing (invented)", 19999),
		"it is issued only on 2024-10-04");
}

#define LIFE_TEST(f) cmocka_unit_test_setup_teardown(f, life_setup, world_teardown)

int main(void)
{
	const struct CMUnitTest tests[] = {
		LIFE_TEST(the_row_that_fits_best),
		LIFE_TEST(only_what_the_rows_depend_on_is_asked),
		LIFE_TEST(one_screw_lives_differently_by_surroundings),
		LIFE_TEST(a_place_without_a_row_is_refused),
		LIFE_TEST(outside_the_tables_a_life_needs_its_paper),
		LIFE_TEST(concealed_places_cannot_be_renewed),
		LIFE_TEST(least_life_names_the_part),
		LIFE_TEST(a_life_of_just_the_term_reaches_it),
		LIFE_TEST(a_life_below_every_term_reaches_none),
		LIFE_TEST(least_life_waits_for_any_life_or_list),
		LIFE_TEST(no_part_no_life),
		LIFE_TEST(terms_offered_and_what_hangs_on_them),
		LIFE_TEST(a_term_that_is_not_offered),
		LIFE_TEST(each_column_of_a_term_bars),
		LIFE_TEST(what_does_not_count_says_why),
		LIFE_TEST(an_approval_counts_to_its_last_day),
		LIFE_TEST(a_condition_is_never_silent),
		LIFE_TEST(an_approval_states_no_life),
		LIFE_TEST(the_catalogue_needs_no_approval),
		LIFE_TEST(an_approval_waits_for_all_it_is_held_against),
		LIFE_TEST(bought_from_the_panel_maker),
		LIFE_TEST(the_catalogue_says_where_to_buy),
		LIFE_TEST(a_certificate_in_force),
		LIFE_TEST(a_certificate_nobody_issued),
		LIFE_TEST(a_certificate_of_another_firm),
		LIFE_TEST(a_certificate_that_expired),
		LIFE_TEST(a_certificate_from_tomorrow),
	};
	return cmocka_run_group_tests_name("compute: lives and approvals", tests, NULL, NULL) != 0;
}
