/* SPDX-License-Identifier: MIT
 * Facts on demand: their states, what they used, how well it is known.
 */
#include "compute_world.h"

static Penetration *a_pipe(World *w)
{
	Penetration *pipe = TAKE(w->arena, Penetration, 1);
	pipe->kind = WORD_IS("pipe");
	pipe->crosses_seam = YES_IS(false);
	return pipe;
}

static void facts_are_found_by_name(void **state)
{
	(void)state;
	assert_int_equal(fact_find(KIND_zone, "class_spacing", 13), FACT_zone_class_spacing);
	assert_int_equal(fact_find(KIND_zone, "class_spacing_ratio", 19), FACT_zone_class_spacing_ratio);
	assert_int_equal(fact_find(KIND_clip, "life", 4), FACT_part_life);
	assert_int_equal(fact_find(KIND_fastener, "clip_hole", 9), FACT_fastener_clip_hole);
	assert_int_equal(fact_find(RECORD_KINDS, "life", 4), FACT_part_life);
	assert_int_equal(fact_find(KIND_zone, "life", 4), -1);
	assert_int_equal(fact_find(RECORD_KINDS, "clip_hole", 9), -1);
	assert_string_equal(fact_spec(FACT_part_life)->name, "life");
	assert_int_equal(fact_spec(FACT_part_life)->unit, UNIT_yr);
	assert_string_equal(fact_spec(FACT_fastener_drilled_thickness)->record, "fastener");
}

static void a_fact_is_known(void **state)
{
	World *w = *state;
	Case *pipe = add_case(w, KIND_penetration, w->roof, a_pipe(w));
	assert_known(pipe, "needs_curb", 0);
	assert_ptr_equal(ask_fact(pipe, "needs_curb"), ask_fact(pipe, "needs_curb"));
}

static void a_fact_waits_for_all_it_lacks(void **state)
{
	World *w = *state;
	Zone zone = { .given = GOOD };
	w->area.tests.of.given.said = SAID_NOTHING;
	Case *at = add_case(w, KIND_zone, w->roof, &zone);
	assert_waits(w, at, "class_spacing_ratio", "spacing tests");
	assert_true(ask_fact(at, "class_spacing_ratio")->value == 0);
}

static void each_way_of_not_saying_has_its_state(void **state)
{
	static const struct {
		Said said;
		FactState fact;
	} ways[] = { { SAID_NOTHING, FACT_WAITING }, { SAID_UNKNOWN, FACT_WAITING }, { SAID_BY_OTHERS, FACT_WAITING },
		{ SAID_UNREADABLE, FACT_WAITING }, { SAID_NOT_APPLICABLE, FACT_NOT_APPLICABLE }, { SAID_ASSUMED, FACT_KNOWN } };
	World *w = *state;
	for (size_t i = 0; i < sizeof ways / sizeof *ways; i++) {
		Penetration *pipe = a_pipe(w);
		pipe->crosses_seam.given = (Given)SAID_SO(ways[i].said);
		Case *at = add_case(w, KIND_penetration, w->roof, pipe);
		assert_state(at, "needs_curb", ways[i].fact);
	}
}

static void not_applicable_gives_its_reason(void **state)
{
	World *w = *state;
	Penetration *pipe = a_pipe(w);
	pipe->kind.given = (Given)SAID_SO(SAID_NOT_APPLICABLE);
	const Fact *fact = ask_fact(add_case(w, KIND_penetration, w->roof, pipe), "needs_curb");
	assert_string_equal(fact->reason, "as said");
	assert_null(fact_waits(&w->all, fact, NULL));
}

static void the_greatest_state_wins(void **state)
{
	World *w = *state;
	Detail detail = { .place = { .given = SAID_SO(SAID_UNKNOWN) }, .number = { .given = SAID_SO(SAID_NOT_APPLICABLE) } };
	assert_state(add_case(w, KIND_detail, w->roof, &detail), "approved_number", FACT_NOT_APPLICABLE);
	w->area.tests.of.given.said = SAID_NONE; /* no listing for class: it does not apply; the spacing waits */
	Zone zone = { .given = GOOD };
	assert_state(add_case(w, KIND_zone, w->roof, &zone), "class_spacing_ratio", FACT_NOT_APPLICABLE);
}

static void a_record_answered_as_a_whole_is_what_is_waited_for(void **state)
{
	World *w = *state;
	w->submittal.warranty.given = (Given)SAID_SO(SAID_UNKNOWN);
	assert_waits(w, w->at, "term_offered", "warranty");
	const Use *use = fact_waits(&w->all, ask_fact(w->at, "term_offered"), NULL);
	assert_ptr_equal(use->given, &w->submittal.warranty.given);
	assert_ptr_equal(use->at, w->at);
}

static void an_absent_record_leaves_its_field(void **state)
{
	World *w = *state;
	assert_waits(w, w->at, "term_offered", "term");
}

/* A screw through two sheets: fields of three records, one fact of the roof area. */
static void uses_are_recorded_in_order(void **state)
{
	World *w = *state;
	Clip clip = { .use = WORD_IS("running"), .thickness_in = NUMBER_IS(0.0598), .hole_in = NUMBER_IS(0.25) };
	Fastener screw = { .use = WORD_IS("clip"), .kind = WORD_IS("self-drilling screw") };
	w->area.clips.of.given.said = SAID_VALUE;
	w->area.support.kind = WORD_IS("steel deck");
	w->area.support.thickness_in = NUMBER_IS(0.0295);
	add_case(w, KIND_clip, w->roof, &clip);
	Case *at = add_case(w, KIND_fastener, w->roof, &screw);
	assert_known(at, "drilled_thickness", 0.0893);
	const Fact *fact = ask_fact(at, "drilled_thickness");
	const Use *use = &w->all.use[fact->first_use - 1];
	assert_int_equal(use->kind, USED_FIELD);
	assert_string_equal(use->what.field->key, "use");
	use = &w->all.use[use->next - 1];
	assert_int_equal(use->kind, USED_FACT);
	assert_int_equal(use->what.fact, FACT_roof_area_running_clip_thickness);
	assert_close(use->value, 0.0598, 1e-12);
	use = &w->all.use[use->next - 1];
	assert_string_equal(use->what.field->key, "kind");
	use = &w->all.use[use->next - 1];
	assert_string_equal(use->what.field->key, "kind");
	use = &w->all.use[use->next - 1];
	assert_string_equal(use->what.field->key, "thickness");
	assert_close(use->value, 0.0295, 1e-12);
	assert_ptr_equal(use->at, w->roof);
	assert_int_equal(use->next, 0);
}

static const Life lives[] = {
	{ .item = { GOOD, "seal-a" }, .service_life_yr = { GOOD, 40 }, .basis = { GOOD, "read-paper" } },
	{ .item = { GOOD, "seal-b" }, .service_life_yr = { GOOD, 30 }, .basis = { GOOD, "memory-paper" } },
	{ .item = { GOOD, "seal-c" }, .service_life_yr = { GOOD, 50 }, .basis = { GOOD, "second-paper; read-paper" } },
};

static const KindRow sealants_judged[] = { { .kind = { GOOD, "sealant", 0 }, .life_judged = { GOOD, true },
	.source_judged = { GOOD, true }, .approval_judged = { GOOD, true },
	.renewable = { GOOD, false }, .basis = { GOOD, "read-paper" } } };

static void a_fact_is_known_as_the_weakest_of_its_figures(void **state)
{
	World *w = *state;
	Sealant sealant[] = { { .item = TEXT_IS("seal-a") }, { .item = TEXT_IS("seal-b") }, { .item = TEXT_IS("seal-c") } };
	w->criteria.lives.row = lives;
	w->criteria.lives.count = 3;
	w->criteria.kinds.row = sealants_judged;
	w->criteria.kinds.count = 1;
	w->area.sealants.of.given.said = SAID_VALUE;
	static const KnownBy known_by[] = { KNOWN_READ, KNOWN_MEMORY, KNOWN_SECOND_HAND };
	for (int i = 0; i < 3; i++)
		assert_int_equal(ask_fact(add_case(w, KIND_sealant, w->roof, &sealant[i]), "life")->known_by, known_by[i]);
	assert_known(w->roof, "least_life", 30);
	assert_int_equal(ask_fact(w->roof, "least_life")->known_by, KNOWN_MEMORY);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		TEST(facts_are_found_by_name),
		TEST(a_fact_is_known),
		TEST(a_fact_waits_for_all_it_lacks),
		TEST(each_way_of_not_saying_has_its_state),
		TEST(not_applicable_gives_its_reason),
		TEST(the_greatest_state_wins),
		TEST(a_record_answered_as_a_whole_is_what_is_waited_for),
		TEST(an_absent_record_leaves_its_field),
		TEST(uses_are_recorded_in_order),
		TEST(a_fact_is_known_as_the_weakest_of_its_figures),
	};
	return cmocka_run_group_tests_name("compute: facts", tests, NULL, NULL) != 0;
}
