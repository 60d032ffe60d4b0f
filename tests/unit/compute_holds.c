/* SPDX-License-Identifier: MIT
 * Up, never down: each row of the table of directions, a larger screw with all that it needs, and a listing's own terms.
 */
#include "compute_world.h"

static const Field *key(RecordKind kind, const char *name)
{
	return field_find(record_of(kind), name, strlen(name));
}

static Case *compare(World *w, const Compared *draft)
{
	Compared *compared = TAKE(w->arena, Compared, 1);
	*compared = *draft;
	compared->record.with = WORD_IS("listing");
	return add_case(w, KIND_comparison, w->roof, compared);
}

/* ---- the table of directions (common practice, no published source) ---- */

typedef struct {
	RecordKind kind;
	const char *attribute, *may_go;
	const char *holds, *broken; /* steps from the tested value to the submitted one */
	const char *note;
} Direction;

static const Direction directions[] = {
	{ KIND_fastener, "size", "up", "up", "down", "may go up only" }, /* #14 for #12; #10 for #12 */
	{ KIND_fastener, "length", "up", "up", "down", "may go up only" },
	{ KIND_fastener, "per", "up", "up", "down", "may go up only" }, /* 2 for 1; 1 for 2 */
	{ KIND_clip, "spacing", "down", "down", "up", "may go down only" }, /* 18 in for 24 in; 30 in */
	{ KIND_panel, "thickness", "up", "up", "down", "may go up only" }, /* 22 ga for 24 ga; 26 ga */
	{ KIND_panel, "yield", "up", "up", "down", "may go up only" }, /* 50 ksi for 40 ksi; the reverse */
	{ KIND_panel, "width", "same", "same", "up", "must be the same" },
	{ KIND_support, "thickness", "up", "up", "down", "may go up only" }, /* 20 ga for 22 ga; 18 ga for 16 ga purlins */
	{ KIND_support, "spacing", "down", "down", "up", "may go down only" }, /* 4 ft for 5 ft; 5.5 ft */
	{ KIND_layer, "thickness", "within", "same", "up", "may differ only within the range the listing states" },
	{ KIND_panel, "profile", "same", "same", "other", "must be the same" },
	{ KIND_panel, "rib_height", "same", "same", "down", "must be the same" },
	{ KIND_clip, "item", "same", "same", "other", "must be the same" },
	{ KIND_clip, "pieces", "same", "same", "other", "must be the same" },
	{ KIND_panel, "metal", "same", "same", "other", "must be the same" },
	{ KIND_panel, "seam", "same", "same", "down", "must be the same" },
	{ KIND_support, "kind", "same", "same", "other", "must be the same" },
	{ KIND_fastener, "kind", "same", "same", "other", "must be the same" }, /* nail for screw */
	{ KIND_panel, "seam_sealant", "same", "same", "other", "must be the same" },
};

static void each_direction(void **state)
{
	World *w = *state;
	for (size_t i = 0; i < sizeof directions / sizeof *directions; i++) {
		const Direction *row = &directions[i];
		Substitution substitution = { .attribute = { GOOD, row->attribute }, .may_go = { GOOD, row->may_go, 0 },
			.basis = { GOOD, "common practice, no published source" } };
		BoundSubstitution may = { .row = &substitution, .field = key(row->kind, row->attribute) };
		assert_non_null(may.field);
		Compared compared = { .part = w->roof, .may = &may, .field = may.field };
		compared.record.step = WORD_IS(row->holds);
		assert_known(compare(w, &compared), "holds", 1);
		compared.record.step = WORD_IS(row->broken);
		Case *broken = compare(w, &compared);
		assert_known(broken, "holds", 0);
		assert_string_equal(ask_fact(broken, "holds")->note, row->note);
		compared.record.step = WORD_IS("same");
		assert_known(compare(w, &compared), "holds", 1);
	}
}

static void two_families_have_no_up(void **state)
{
	World *w = *state;
	Substitution substitution = { .attribute = TEXT_IS("coating"), .may_go = WORD_IS("up"), .basis = TEXT_IS("read-paper") };
	BoundSubstitution may = { .row = &substitution, .field = key(KIND_panel, "coating") };
	Compared compared = { .part = w->roof, .may = &may, .field = may.field };
	compared.record.step = WORD_IS("other");
	Case *at = compare(w, &compared);
	assert_known(at, "holds", 0);
	assert_string_equal(ask_fact(at, "holds")->note, "the two have no common scale, so neither is up from the other");
}

static void any_holds_and_the_rest_must_be_the_same(void **state)
{
	World *w = *state;
	Substitution substitution = { .attribute = TEXT_IS("head"), .may_go = WORD_IS("any"), .basis = TEXT_IS("read-paper") };
	BoundSubstitution may = { .row = &substitution, .field = key(KIND_fastener, "head") };
	static const char *const steps[] = { "same", "up", "down", "other", "unknown" };
	for (int i = 0; i < 5; i++) {
		Compared compared = { .part = w->roof, .may = &may, .field = may.field };
		compared.record.step = WORD_IS(steps[i]);
		assert_known(compare(w, &compared), "holds", 1);
	}
	for (int i = 0; i < 4; i++) { /* with the catalogue: no row says how it may differ */
		Compared compared = { .part = w->roof, .field = may.field };
		compared.record.step = WORD_IS(steps[i]);
		assert_known(compare(w, &compared), "holds", i == 0);
	}
}

static void a_requirement_has_its_own_direction(void **state)
{
	World *w = *state;
	Compared compared = { .part = w->roof, .field = key(KIND_panel, "thickness") };
	compared.record.may_go = WORD_IS("up");
	compared.record.step = WORD_IS("up");
	assert_known(compare(w, &compared), "holds", 1);
	compared.record.step = WORD_IS("down");
	assert_known(compare(w, &compared), "holds", 0);
}

/* ---- what is not stated ---- */

static void what_we_do_not_state_is_waited_for(void **state)
{
	World *w = *state;
	Panel here = { .given = GOOD }, there = { .thickness_in = NUMBER_IS(0.0239) };
	Case *panel = add_case(w, KIND_panel, w->roof, &here);
	Compared compared = { .part = panel, .field = key(KIND_panel, "thickness"), .here = &here, .there = &there };
	compared.record.step = WORD_IS("unknown");
	Case *at = compare(w, &compared);
	assert_waits(w, at, "holds", "thickness");
	assert_ptr_equal(fact_waits(&w->all, ask_fact(at, "holds"), NULL)->at, panel);
}

static void what_the_listing_leaves_blank_is_refused(void **state)
{
	World *w = *state;
	Panel here = { .thickness_in = NUMBER_IS(0.0239) }, there = { .given = GOOD };
	Compared compared = { .part = w->roof, .field = key(KIND_panel, "thickness"), .here = &here, .there = &there };
	compared.record.step = WORD_IS("unknown");
	Case *at = compare(w, &compared);
	assert_state(at, "holds", FACT_REFUSED);
	assert_string_equal(ask_fact(at, "holds")->reason, "the listing does not state it");
	there.thickness_in.given.said = SAID_NOT_APPLICABLE; /* `any` is written */
	assert_known(compare(w, &compared), "holds", 1);
}

static void a_tested_layer_left_out_does_not_hold(void **state)
{
	World *w = *state;
	RoofArea tested = { .given = GOOD };
	Compared compared = { .part = w->roof, .field = key(KIND_roof_area, "build_up"), .here = &w->area, .there = &tested };
	compared.record.step = WORD_IS("other");
	Case *at = compare(w, &compared);
	assert_known(at, "holds", 0);
	assert_string_equal(ask_fact(at, "holds")->note, "it was tested and is left out here");
}

/* ---- the larger screw ---- */

static const Screw screws[] = {
	{ .size = { GOOD, "#10" }, .diameter_in = { GOOD, 0.190 }, .source = { GOOD, "read-paper" } },
	{ .size = { GOOD, "#12" }, .diameter_in = { GOOD, 0.216 }, .source = { GOOD, "read-paper" } },
	{ .size = { GOOD, "#14" }, .diameter_in = { GOOD, 0.242 }, .source = { GOOD, "read-paper" } },
};
static const DrillPoint points[] = {
	{ .size = { GOOD, "#14" }, .point_one = { GOOD, 2 }, .greatest_in = { GOOD, 0.175 }, .source = { GOOD, "second-paper" } },
	{ .size = { GOOD, "#14" }, .point_one = { GOOD, 1 }, .greatest_in = { GOOD, 0.080 }, .source = { GOOD, "memory-paper" } },
};

/* A roof with one running clip on 22 ga deck: 0.0598 + 0.0295 in of steel. A #14 of 14 threads an inch needs 0.0893 + 3 / 14 =
 * 0.3036 in. */
typedef struct {
	World *w;
	Clip clip;
	Fastener screw;
	Substitution substitution;
	Test need[3];
	BoundSubstitution may;
	Compared compared;
} Larger;

static Operand of_fact(FactId id)
{
	return (Operand){ .from = FROM_FACT, .gives = VALUE_NUMBER, .fact = id, .factor = 1 };
}

static Operand of_screw(const char *name)
{
	const Field *field = key(KIND_fastener, name);
	return (Operand){ .from = FROM_FIELD, .gives = VALUE_NUMBER, .at = KIND_fastener, .offset = field->offset,
		.field = field, .factor = 1 };
}

static Larger *larger_screw(World *w)
{
	static const char *const words[] = { "the hole of the clip takes the screw", "its point drills the clip and the support",
		"it is long enough" };
	Larger *l = TAKE(w->arena, Larger, 1);
	l->w = w;
	l->clip = (Clip){ .use = WORD_IS("running"), .thickness_in = NUMBER_IS(0.0598), .hole_in = NUMBER_IS(0.25) };
	l->screw = (Fastener){ .use = WORD_IS("clip"), .kind = WORD_IS("self-drilling screw"), .size_in = NUMBER_IS(0.242),
		.threads_one = NUMBER_IS(14), .length_in = NUMBER_IS(1), .point_one = NUMBER_IS(2) };
	l->substitution = (Substitution){ .attribute = TEXT_IS("size"), .may_go = WORD_IS("up"), .basis = TEXT_IS("read-paper") };
	l->need[0] = (Test){ of_fact(FACT_fastener_clip_hole), of_screw("size"), RELATION_AT_LEAST, { .line = 0 } };
	l->need[1] = (Test){ of_fact(FACT_fastener_drilled_thickness), of_fact(FACT_fastener_drill_greatest),
		RELATION_AT_MOST, { .line = 0 } };
	l->need[2] = (Test){ of_screw("length"), of_fact(FACT_fastener_length_needed), RELATION_AT_LEAST, { .line = 0 } };
	l->may = (BoundSubstitution){ .row = &l->substitution, .field = key(KIND_fastener, "size"), .need = l->need, .needs = 3,
		.need_words = words };
	w->reference.screws.row = screws;
	w->reference.screws.count = 3;
	w->reference.drill_points.row = points;
	w->reference.drill_points.count = 2;
	w->area.clips.of.given.said = SAID_VALUE;
	w->area.support.kind = WORD_IS("steel deck");
	w->area.support.thickness_in = NUMBER_IS(0.0295);
	add_case(w, KIND_clip, w->roof, &l->clip);
	l->compared = (Compared){ .part = add_case(w, KIND_fastener, w->roof, &l->screw), .may = &l->may, .field = l->may.field,
		.here = &l->screw };
	l->compared.record.step = WORD_IS("up");
	return l;
}

static const char *note_of(Case *at)
{
	return ask_fact(at, "holds")->note;
}

static void a_larger_screw_that_fits_holds(void **state)
{
	Larger *l = larger_screw(*state);
	Case *at = compare(l->w, &l->compared);
	assert_known(at, "holds", 1);
	assert_int_equal(ask_fact(at, "holds")->known_by, KNOWN_SECOND_HAND); /* the table of drill points */
}

static void a_smaller_screw_does_not(void **state)
{
	Larger *l = larger_screw(*state);
	l->screw.size_in = NUMBER_IS(0.190);
	l->compared.record.step = WORD_IS("down");
	Case *at = compare(l->w, &l->compared);
	assert_known(at, "holds", 0);
	assert_string_equal(note_of(at), "may go up only");
}

static void too_big_for_the_hole_is_not_up(void **state)
{
	Larger *l = larger_screw(*state);
	l->clip.hole_in = NUMBER_IS(0.24);
	Case *at = compare(l->w, &l->compared);
	assert_known(at, "holds", 0);
	assert_string_equal(note_of(at), "it holds only if the hole of the clip takes the screw, which is not so");
}

static void a_hole_just_as_large_takes_it(void **state)
{
	Larger *l = larger_screw(*state);
	l->clip.hole_in = NUMBER_IS(0.242);
	assert_known(compare(l->w, &l->compared), "holds", 1);
}

static void a_point_that_cannot_drill_is_not_up(void **state)
{
	Larger *l = larger_screw(*state);
	l->screw.point_one = NUMBER_IS(1); /* drills 0.080 in of the 0.0893 */
	Case *at = compare(l->w, &l->compared);
	assert_known(at, "holds", 0);
	assert_string_equal(note_of(at), "it holds only if its point drills the clip and the support, which is not so");
}

static void too_short_is_not_up(void **state)
{
	Larger *l = larger_screw(*state);
	l->screw.length_in = NUMBER_IS(0.30);
	Case *at = compare(l->w, &l->compared);
	assert_known(at, "holds", 0);
	assert_string_equal(note_of(at), "it holds only if it is long enough, which is not so");
	l = larger_screw(*state);
	l->screw.length_in = NUMBER_IS(0.31);
	assert_known(compare(l->w, &l->compared), "holds", 1);
}

static void a_need_that_waits_makes_it_wait(void **state)
{
	Larger *l = larger_screw(*state);
	l->clip.hole_in.given.said = SAID_NOTHING;
	l->screw.point_one.given.said = SAID_UNKNOWN;
	assert_waits(l->w, compare(l->w, &l->compared), "holds", "hole point");
}

static void a_need_that_fails_decides_though_another_waits(void **state)
{
	Larger *l = larger_screw(*state);
	l->clip.hole_in.given.said = SAID_NOTHING;
	l->screw.length_in = NUMBER_IS(0.30);
	assert_known(compare(l->w, &l->compared), "holds", 0);
}

static void a_point_without_a_row_is_refused(void **state)
{
	Larger *l = larger_screw(*state);
	l->screw.point_one = NUMBER_IS(5);
	Case *at = compare(l->w, &l->compared);
	assert_state(at, "holds", FACT_REFUSED);
	assert_string_equal(ask_fact(at, "holds")->reason, "the table of drill points has no row for this size and point");
}

/* In wood no point drills: that need does not apply, the others do. */
static void a_need_that_does_not_apply_holds(void **state)
{
	Larger *l = larger_screw(*state);
	l->w->area.support.kind = WORD_IS("plywood");
	l->w->area.support.thickness_in = NUMBER_IS(0.46875);
	l->screw.point_one.given.said = SAID_NOT_APPLICABLE;
	assert_known(compare(l->w, &l->compared), "holds", 1);
}

/* ---- the listing's own terms ---- */

typedef struct {
	const char *relation, *value;
	double number[2];
	uint32_t count;
	double here;
	bool holds;
} NumberTerm;

static const NumberTerm number_terms[] = {
	{ "is", "16 in", { 16, 0 }, 1, 16, true },
	{ "is", "16 in", { 16, 0 }, 1, 17, false },
	{ "at most", "16 in", { 16, 0 }, 1, 12, true },
	{ "at most", "16 in", { 16, 0 }, 1, 16, true },
	{ "at most", "16 in", { 16, 0 }, 1, 406 / 25.4, true },
	{ "at most", "16 in", { 16, 0 }, 1, 18, false },
	{ "at least", "12 in", { 12, 0 }, 1, 305 / 25.4, true },
	{ "at least", "12 in", { 12, 0 }, 1, 12, true },
	{ "at least", "12 in", { 12, 0 }, 1, 11, false },
	{ "between", "12 in and 16 in", { 12, 16 }, 2, 12, true },
	{ "between", "12 in and 16 in", { 12, 16 }, 2, 14, true },
	{ "between", "12 in and 16 in", { 12, 16 }, 2, 16, true },
	{ "between", "12 in and 16 in", { 12, 16 }, 2, 11, false },
	{ "between", "12 in and 16 in", { 12, 16 }, 2, 17, false },
	{ "one of", "12 in; 16 in", { 12, 16 }, 2, 16, true },
	{ "one of", "12 in; 16 in", { 12, 16 }, 2, 14, false },
	{ "optional", "", { 0, 0 }, 0, 14, true },
	{ "any", "", { 0, 0 }, 0, 14, true },
};

static void terms_of_numbers(void **state)
{
	World *w = *state;
	for (size_t i = 0; i < sizeof number_terms / sizeof *number_terms; i++) {
		const NumberTerm *t = &number_terms[i];
		ListingTerm row = { .relation = { GOOD, t->relation, 0 }, .value = { GOOD, t->value } };
		BoundTerm term = { .row = &row, .kind = KIND_panel, .field = key(KIND_panel, "width"),
			.number = t->number, .count = t->count };
		Panel here = { .width_in = { GOOD, t->here } };
		Compared compared = { .part = w->roof, .term = &term, .field = term.field, .here = &here };
		compared.record.step = WORD_IS("other");
		Case *at = compare(w, &compared);
		assert_known(at, "holds", t->holds);
		if (!t->holds)
			assert_string_equal(note_of(at), arena_printf(w->arena, "the listing says %s %s", t->relation, t->value));
	}
}

static void terms_of_words(void **state)
{
	World *w = *state;
	static const char *const clips[] = { "clip-a-float", "clip-a-float-long" };
	ListingTerm row = { .relation = WORD_IS("one of"), .value = TEXT_IS("clip-a-float; clip-a-float-long") };
	BoundTerm term = { .row = &row, .kind = KIND_clip, .field = key(KIND_clip, "item"), .word = clips, .count = 2 };
	Clip here = { .item = TEXT_IS("Clip-A-float-long") };
	Compared compared = { .part = w->roof, .term = &term, .field = term.field, .here = &here };
	compared.record.step = WORD_IS("other");
	assert_known(compare(w, &compared), "holds", 1);
	here.item = TEXT_IS("clip-b-float");
	assert_known(compare(w, &compared), "holds", 0);
}

/* 0.0236 in is a 24 ga sheet as 0.0239 in is, though the one is thinner. */
static void a_term_knows_trade_sizes(void **state)
{
	static const TradeSize sizes[] = {
		{ .family = { GOOD, "sheet" }, .size = { GOOD, "24 ga" }, .sold_as_in = { GOOD, 0.0236 } },
		{ .family = { GOOD, "sheet" }, .size = { GOOD, "24 ga" }, .sold_as_in = { GOOD, 0.0239 } },
	};
	World *w = *state;
	double tested = 0.0239;
	ListingTerm row = { .relation = WORD_IS("at least"), .value = TEXT_IS("24 ga") };
	BoundTerm term = { .row = &row, .kind = KIND_panel, .field = key(KIND_panel, "thickness"),
		.number = &tested, .count = 1 };
	Panel here = { .thickness_in = NUMBER_IS(0.0236), .metal = WORD_IS("steel") };
	Compared compared = { .part = w->roof, .term = &term, .field = term.field, .here = &here };
	compared.record.step = WORD_IS("same");
	w->reference.trade_sizes.row = sizes;
	w->reference.trade_sizes.count = 2;
	assert_known(compare(w, &compared), "holds", 1);
	here.thickness_in = NUMBER_IS(0.0179);
	assert_known(compare(w, &compared), "holds", 0);
	here.thickness_in.given.said = SAID_NOTHING;
	assert_waits(w, compare(w, &compared), "holds", "thickness");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		TEST(each_direction),
		TEST(two_families_have_no_up),
		TEST(any_holds_and_the_rest_must_be_the_same),
		TEST(a_requirement_has_its_own_direction),
		TEST(what_we_do_not_state_is_waited_for),
		TEST(what_the_listing_leaves_blank_is_refused),
		TEST(a_tested_layer_left_out_does_not_hold),
		TEST(a_larger_screw_that_fits_holds),
		TEST(a_smaller_screw_does_not),
		TEST(too_big_for_the_hole_is_not_up),
		TEST(a_hole_just_as_large_takes_it),
		TEST(a_point_that_cannot_drill_is_not_up),
		TEST(too_short_is_not_up),
		TEST(a_need_that_waits_makes_it_wait),
		TEST(a_need_that_fails_decides_though_another_waits),
		TEST(a_point_without_a_row_is_refused),
		TEST(a_need_that_does_not_apply_holds),
		TEST(terms_of_numbers),
		TEST(terms_of_words),
		TEST(a_term_knows_trade_sizes),
	};
	return cmocka_run_group_tests_name("compute: what holds", tests, NULL, NULL) != 0;
}
