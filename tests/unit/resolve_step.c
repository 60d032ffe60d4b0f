/* SPDX-License-Identifier: MIT
 * Steps between two values: each row of the trade's list of what may go up or down with its pass and its fail, nominal sizes that
 * are one size, families of words, and what an order must be. The list and all expected values are typed from practice of the
 * trade, not taken from the edition.
 */
#include "hand.h"

#include "resolve/step.h"

/* ---- a reference and an edition of a few rows ---- */

#define SIZE_ROW(f, s, inches) { .family = { { .said = SAID_VALUE }, f }, .size = { { .said = SAID_VALUE }, s }, \
	.sold_as_in = { { .said = SAID_VALUE }, inches } }
static const TradeSize trade_sizes[] = {
	SIZE_ROW("sheet", "24 ga", 0.0239), SIZE_ROW("sheet", "24 ga", 0.0236), SIZE_ROW("sheet", "24 ga", 0.6 / 25.4),
	SIZE_ROW("sheet", "26 ga", 0.0179), SIZE_ROW("sheet", "26 ga", 0.0185), SIZE_ROW("sheet", "22 ga", 0.0299),
	SIZE_ROW("sheet", "22 ga", 0.030), SIZE_ROW("deck", "22 ga", 0.0295), SIZE_ROW("deck", "22 ga", 0.028),
	SIZE_ROW("deck", "20 ga", 0.0358), SIZE_ROW("wood panel", "1/2", 0.46875), SIZE_ROW("wood panel", "1/2", 0.5),
	SIZE_ROW("wood panel", "5/8", 0.59375), SIZE_ROW("wood panel", "5/8", 0.625),
};

#define SCREW_ROW(s, inches) { .size = { { .said = SAID_VALUE }, s }, .diameter_in = { { .said = SAID_VALUE }, inches } }
static const Screw screws[] = {
	SCREW_ROW("#10", 0.190), SCREW_ROW("#12", 0.216), SCREW_ROW("#14", 0.242), SCREW_ROW("1/4", 0.250),
};

#define SCALE_ROW(s, a, w, r) { .scale = { { .said = SAID_VALUE }, s }, .attribute = { { .said = SAID_VALUE }, a }, \
	.word = { { .said = SAID_VALUE }, w }, .rank_one = { { .said = SAID_VALUE }, r } }
static const ScaleWord scales[] = {
	SCALE_ROW("aluminum-zinc", "panel.coating", "AZ50", 1), SCALE_ROW("aluminum-zinc", "panel.coating", "AZ55", 2),
	SCALE_ROW("zinc", "panel.coating", "G60", 1), SCALE_ROW("zinc", "panel.coating", "G90", 2),
};

#define COUNT(array) (sizeof(array) / sizeof *(array))
static const Reference reference = {
	.trade_sizes = { COUNT(trade_sizes), trade_sizes, NULL },
	.screws = { COUNT(screws), screws, NULL },
};
static const Criteria criteria = { .scales = { COUNT(scales), scales, NULL } };

static Attribute attribute(RecordKind kind, const char *key, double tolerance)
{
	return (Attribute){ &criteria, &reference, kind, key_of(record_of(kind), key), tolerance };
}

/* ---- rows with one value, and what stands beside it ---- */

typedef union {
	Panel panel;
	Support support;
	Layer layer;
	Clip clip;
	Fastener fastener;
	Penetration penetration;
} Row;

/* `beside` is the kind of support, or the metal. */
typedef struct {
	const char *beside;
	const char *text; /* NULL: a number */
	double number;
} Value;

static void set_word(Row *row, const Record *record, const char *key, const char *value)
{
	*(Word *)(void *)given_at(key_of(record, key), row) = word(record, key, value);
}

static Row row_of(RecordKind kind, const char *key, const Value *value)
{
	Row row = { .panel = { .given = { .said = SAID_VALUE } } };
	const Record *record = record_of(kind);
	const Field *field = key_of(record, key);
	if (value->beside != NULL)
		set_word(&row, record, kind == KIND_support ? "kind" : "metal", value->beside);
	void *at = given_at(field, &row);
	static ZoneValue all_zones;
	if (field->kind == IS_WORD) {
		set_word(&row, record, key, value->text);
	} else if (value->text != NULL) {
		*(Text *)at = text(value->text);
	} else if (field->kind == IS_BY_ZONE) {
		ZoneValue *zones = test_calloc(1, sizeof all_zones);
		*zones = (ZoneValue){ said(NULL), "", value->number };
		*(ByZone *)at = (ByZone){ said(NULL), 1, zones };
	} else {
		*(Number *)at = number(NULL, value->number);
	}
	return row;
}

static void free_row(RecordKind kind, const char *key, Row *row)
{
	const Field *field = key_of(record_of(kind), key);
	if (field->kind == IS_BY_ZONE)
		test_free((void *)(uintptr_t)((const ByZone *)(void *)given_at(field, row))->at);
}

static Step step_of(const Attribute *a, const Value *here, const Value *there)
{
	Row one = row_of(a->kind, a->field->key, here), other = row_of(a->kind, a->field->key, there);
	Step step = step_between(a, &one, &other);
	free_row(a->kind, a->field->key, &one);
	free_row(a->kind, a->field->key, &other);
	return step;
}

/* ---- the list: attribute, way it may go, pass and fail ---- */

#define N(x) { NULL, NULL, x }
#define N_OF(beside, x) { beside, NULL, x }
#define T(x) { NULL, x, 0 }
static const struct {
	RecordKind kind;
	const char *key;
	Step way; /* STEP_SAME: exact */
	Value pass, tested, fail;
} list[] = {
	{ KIND_fastener, "size", STEP_UP, N(0.242), N(0.216), N(0.190) }, /* #14, #12, #10 */
	{ KIND_fastener, "length", STEP_UP, N(1.5), N(1), N(0.75) },
	{ KIND_fastener, "per", STEP_UP, N(2), N(1), N(0.5) },
	{ KIND_clip, "spacing", STEP_DOWN, N(18), N(24), N(30) },
	{ KIND_panel, "thickness", STEP_UP, N_OF("steel", 0.0299), N_OF("steel", 0.0239), N_OF("steel", 0.0179) }, /* 22, 24, 26 ga */
	{ KIND_panel, "yield", STEP_UP, N(50), N(40), N(33) },
	{ KIND_panel, "width", STEP_DOWN, N(12), N(16), N(18) },
	{ KIND_support, "thickness", STEP_UP, N_OF("plywood", 0.59375), N_OF("plywood", 0.46875), N_OF("OSB", 0.4375) },
	{ KIND_support, "thickness", STEP_UP, N_OF("steel deck", 0.0358), N_OF("steel deck", 0.0295), N_OF("steel deck", 0.0238) },
	{ KIND_support, "thickness", STEP_UP, N_OF("purlin", 0.075), N_OF("purlin", 0.060), N_OF("purlin", 0.048) }, /* 14, 16, 18 ga */
	{ KIND_support, "spacing", STEP_DOWN, N(48), N(60), N(66) },
	{ KIND_panel, "profile", STEP_SAME, T("A"), T("A"), T("B") },
	{ KIND_panel, "variant", STEP_SAME, T("standard leg"), T("standard leg"), T("extra leg") },
	{ KIND_panel, "rib_height", STEP_SAME, N(2), N(2), N(1.5) },
	{ KIND_clip, "item", STEP_SAME, T("clip-a-float"), T("clip-a-float"), T("clip-b-float") },
	{ KIND_clip, "thickness", STEP_SAME, N_OF("steel", 0.0598), N_OF("steel", 0.0598), N_OF("steel", 0.0478) },
	{ KIND_clip, "pieces", STEP_SAME, T("two-piece"), T("two-piece"), T("one-piece") },
	{ KIND_panel, "metal", STEP_SAME, T("aluminum"), T("aluminum"), T("steel") },
	{ KIND_panel, "seam", STEP_SAME, T("double lock 180"), T("double lock 180"), T("single lock 90") },
	{ KIND_support, "kind", STEP_SAME, T("steel deck"), T("steel deck"), T("purlin") },
	{ KIND_fastener, "kind", STEP_SAME, T("self-drilling screw"), T("self-drilling screw"), T("nail") },
	{ KIND_panel, "seam_sealant", STEP_SAME, T("factory"), T("factory"), T("none") },
	{ KIND_layer, "layer", STEP_SAME, T("bearing plate"), T("bearing plate"), T("insulation") },
};

static void each_row_has_its_pass_and_its_fail(void **state)
{
	(void)state;
	for (size_t i = 0; i < COUNT(list); i++) {
		Attribute a = attribute(list[i].kind, list[i].key, 0.5);
		Step pass = step_of(&a, &list[i].pass, &list[i].tested), fail = step_of(&a, &list[i].fail, &list[i].tested);
		if (pass != list[i].way || fail == list[i].way || fail == STEP_SAME || fail == STEP_UNKNOWN)
			fail_msg("%s.%s: pass %d, fail %d", record_of(list[i].kind)->name, list[i].key, pass, fail);
	}
}

/* ---- one size under several names ---- */

static const struct {
	RecordKind kind;
	const char *key;
	Value a, b;
} one_size[] = {
	{ KIND_panel, "thickness", N_OF("steel", 0.0239), N_OF("steel", 0.0236) },
	{ KIND_panel, "thickness", N_OF("steel", 0.0239), N_OF("steel", 0.6 / 25.4) },
	{ KIND_panel, "thickness", N_OF("steel", 0.0236), N_OF("steel", 0.6 / 25.4) },
	{ KIND_panel, "thickness", N(0.0239), N_OF("steel", 0.0236) }, /* a paper that states no metal */
	{ KIND_clip, "thickness", N_OF("steel", 0.0239), N_OF("steel", 0.0236) },
	{ KIND_penetration, "thickness", N_OF("steel", 0.0239), N_OF("steel", 0.6 / 25.4) },
	{ KIND_support, "thickness", N_OF("steel deck", 0.028), N_OF("steel deck", 0.0295) },
	{ KIND_support, "thickness", N(0.028), N_OF("steel deck", 0.0295) },
	{ KIND_support, "thickness", N_OF("plywood", 15.0 / 32), N_OF("plywood", 0.5) },
	{ KIND_support, "thickness", N_OF("OSB", 19.0 / 32), N_OF("plywood", 5.0 / 8) },
	{ KIND_support, "thickness", N_OF("purlin", 0.0239), N_OF("purlin", 0.0236) },
	{ KIND_support, "spacing", N(1220 / 25.4), N(48) },
	{ KIND_support, "spacing", N(305 / 25.4), N(12) },
	{ KIND_clip, "spacing", N(305 / 25.4), N(12) },
	{ KIND_clip, "spacing", N(1220 / 25.4), N(48) },
	{ KIND_panel, "width", N(305 / 25.4), N(12) },
	{ KIND_panel, "width", N(406 / 25.4), N(16) },
	{ KIND_penetration, "across", N(1220 / 25.4), N(48) },
	{ KIND_panel, "profile", T("a"), T("A ") },
};

static void nominal_sizes_are_the_same_both_ways(void **state)
{
	(void)state;
	for (size_t i = 0; i < COUNT(one_size); i++) {
		Attribute a = attribute(one_size[i].kind, one_size[i].key, 0.5);
		Step one = step_of(&a, &one_size[i].a, &one_size[i].b), other = step_of(&a, &one_size[i].b, &one_size[i].a);
		if (one != STEP_SAME || other != STEP_SAME)
			fail_msg("%s.%s, row %zu: %d and %d", record_of(one_size[i].kind)->name, one_size[i].key, i, one, other);
	}
}

static const struct {
	RecordKind kind;
	const char *key;
	Value less, more;
} true_steps[] = {
	{ KIND_panel, "thickness", N_OF("steel", 0.0179), N_OF("steel", 0.0239) }, /* 26 ga for 24 */
	{ KIND_panel, "thickness", N_OF("steel", 0.0185), N_OF("steel", 0.0236) },
	{ KIND_clip, "thickness", N_OF("steel", 0.0179), N_OF("steel", 0.0239) },
	{ KIND_support, "thickness", N_OF("OSB", 7.0 / 16), N_OF("plywood", 15.0 / 32) },
	{ KIND_support, "thickness", N_OF("steel deck", 0.0295), N_OF("steel deck", 0.0358) },
	{ KIND_panel, "thickness", N_OF("aluminum", 0.0236), N_OF("aluminum", 0.0239) }, /* no trade size of steel */
	{ KIND_panel, "thickness", N_OF("aluminum", 0.0236), N_OF("steel", 0.0239) },
	{ KIND_support, "thickness", N_OF("plywood", 0.028), N_OF("steel deck", 0.0295) },
	{ KIND_support, "thickness", N_OF("concrete", 0.46875), N_OF("concrete", 0.5) },
	{ KIND_layer, "thickness", N(0.46875), N(0.5) },
	{ KIND_clip, "spacing", N(24), N(25) },
	{ KIND_support, "spacing", N(24), N(25) },
	{ KIND_panel, "width", N(16), N(18) },
	{ KIND_panel, "yield", N(40), N(50) },
	{ KIND_fastener, "size", N(0.216), N(0.242) },
	{ KIND_clip, "hole", N(0.242), N(0.250) }, /* a hole has no mark on its box */
	{ KIND_panel, "coating", T("AZ50"), T("AZ55") },
	{ KIND_panel, "coating", T("G60"), T("G90") },
};

static void a_true_step_goes_down_one_way_and_up_the_other(void **state)
{
	(void)state;
	for (size_t i = 0; i < COUNT(true_steps); i++) {
		Attribute a = attribute(true_steps[i].kind, true_steps[i].key, 0.5);
		const Value *less = &true_steps[i].less, *more = &true_steps[i].more;
		Step down = step_of(&a, less, more), up = step_of(&a, more, less);
		if (down != STEP_DOWN || up != STEP_UP)
			fail_msg("%s.%s, row %zu: %d and %d", record_of(true_steps[i].kind)->name, true_steps[i].key, i, down, up);
	}
}

/* A tolerance never adds up: half a percent beyond a value that is half a percent away is a step. */
static void a_tolerance_ends(void **state)
{
	(void)state;
	Attribute a = attribute(KIND_panel, "width", 0.5);
	assert_int_equal(step_of(&a, &(Value)N(16.08), &(Value)N(16)), STEP_SAME);
	assert_int_equal(step_of(&a, &(Value)N(16.17), &(Value)N(16)), STEP_UP);
	Attribute exact = attribute(KIND_panel, "width", 0);
	assert_int_equal(step_of(&exact, &(Value)N(16.08), &(Value)N(16)), STEP_UP);
	assert_int_equal(step_of(&exact, &(Value)N(16.0000000001), &(Value)N(16)), STEP_SAME);
}

/* ---- families of words ---- */

static void two_families_have_no_order(void **state)
{
	(void)state;
	static const char *const aluminum_zinc[] = { "AZ50", "AZ55" }, *const zinc[] = { "G60", "G90" };
	Attribute a = attribute(KIND_panel, "coating", 0.5);
	for (int i = 0; i < 2; i++) {
		for (int j = 0; j < 2; j++) {
			Value one = T(aluminum_zinc[i]), other = T(zinc[j]);
			assert_int_equal(step_of(&a, &one, &other), STEP_OTHER);
			assert_int_equal(step_of(&a, &other, &one), STEP_OTHER);
		}
	}
	assert_int_equal(step_of(&a, &(Value)T("none"), &(Value)T("AZ50")), STEP_OTHER);
	assert_int_equal(step_of(&a, &(Value)T("none"), &(Value)T("none")), STEP_SAME);
	Attribute finish = attribute(KIND_panel, "finish", 0.5);
	assert_int_equal(step_of(&finish, &(Value)T("PVDF 70"), &(Value)T("polyester")), STEP_OTHER);
}

/* ---- what an order must be ---- */

enum { MOST_VALUES = 14 };
static const struct {
	RecordKind kind;
	const char *key;
	Value value[MOST_VALUES];
	size_t count;
} sets[] = {
	{ KIND_panel, "thickness", { N_OF("steel", 0.0179), N_OF("steel", 0.0185), N_OF("steel", 0.0236), N_OF("steel", 0.6 / 25.4),
		N_OF("steel", 0.0239), N_OF("steel", 0.0299), N_OF("steel", 0.030), N_OF("steel", 0.0478) }, 8 },
	{ KIND_support, "thickness", { N_OF("steel deck", 0.028), N_OF("steel deck", 0.0295), N_OF("steel deck", 0.0358),
		N_OF("steel deck", 0.0474) }, 4 },
	{ KIND_support, "thickness", { N_OF("OSB", 0.4375), N_OF("plywood", 0.46875), N_OF("plywood", 0.5), N_OF("plywood", 0.59375),
		N_OF("OSB", 0.625) }, 5 },
	{ KIND_fastener, "size", { N(0.190), N(0.216), N(0.242), N(0.375) }, 4 },
	{ KIND_fastener, "per", { N(1), N(2), N(3), N(4) }, 4 },
	{ KIND_fastener, "length", { N(0.75), N(1), N(1.25), N(25 / 25.4), N(1.5) }, 5 },
	{ KIND_clip, "spacing", { N(12), N(305 / 25.4), N(18), N(24), N(609.6 / 25.4), N(25), N(48), N(1220 / 25.4) }, 8 },
	{ KIND_support, "spacing", { N(48), N(1220 / 25.4), N(60), N(66) }, 4 },
	{ KIND_panel, "coating", { T("none"), T("G60"), T("G90"), T("AZ50"), T("AZ55"), T("stainless") }, 6 },
	{ KIND_panel, "seam", { T("snap"), T("single lock 90"), T("double lock 180") }, 3 },
	{ KIND_panel, "profile", { T("A"), T("a"), T("B") }, 3 },
};

static void each_value_is_the_same_as_itself(void **state)
{
	(void)state;
	for (size_t s = 0; s < COUNT(sets); s++) {
		Attribute a = attribute(sets[s].kind, sets[s].key, 0.5);
		for (size_t i = 0; i < sets[s].count; i++)
			assert_int_equal(step_of(&a, &sets[s].value[i], &sets[s].value[i]), STEP_SAME);
	}
}

static void a_step_back_is_the_step_turned_round(void **state)
{
	static const Step turned[] = { [STEP_SAME] = STEP_SAME, [STEP_UP] = STEP_DOWN, [STEP_DOWN] = STEP_UP,
		[STEP_OTHER] = STEP_OTHER, [STEP_UNKNOWN] = STEP_UNKNOWN };
	(void)state;
	for (size_t s = 0; s < COUNT(sets); s++) {
		Attribute a = attribute(sets[s].kind, sets[s].key, 0.5);
		const Value *v = sets[s].value;
		for (size_t i = 0; i < sets[s].count; i++)
			for (size_t j = 0; j < sets[s].count; j++)
				assert_int_equal(step_of(&a, &v[i], &v[j]), turned[step_of(&a, &v[j], &v[i])]);
	}
}

static void up_and_up_again_is_up(void **state)
{
	(void)state;
	unsigned chains = 0;
	for (size_t s = 0; s < COUNT(sets); s++) {
		Attribute a = attribute(sets[s].kind, sets[s].key, 0.5);
		const Value *v = sets[s].value;
		for (size_t i = 0; i < sets[s].count; i++)
			for (size_t j = 0; j < sets[s].count; j++)
				for (size_t k = 0; k < sets[s].count; k++)
					if (step_of(&a, &v[i], &v[j]) == STEP_UP && step_of(&a, &v[j], &v[k]) == STEP_UP) {
						assert_int_equal(step_of(&a, &v[i], &v[k]), STEP_UP);
						chains++;
					}
	}
	assert_int_equal(chains, 92); /* counted by hand from sizes that are one: 28 + 2 + 4 + 4 + 4 + 10 + 38 + 2 */
}

/* ---- what is not said ---- */

static void a_side_that_is_not_said_is_unknown(void **state)
{
	(void)state;
	Attribute a = attribute(KIND_panel, "width", 0.5);
	Panel here = { .width_in = number("16 in", 16) }, blank = { .width_in = { .given = { .said = SAID_NOTHING } } };
	Panel any = { .width_in = { .given = { .said = SAID_NOT_APPLICABLE, .typed = "any" } } };
	Panel unknown = { .width_in = { .given = { .said = SAID_UNKNOWN } } };
	assert_int_equal(step_between(&a, &here, &blank), STEP_UNKNOWN);
	assert_int_equal(step_between(&a, &blank, &here), STEP_UNKNOWN);
	assert_int_equal(step_between(&a, &unknown, &here), STEP_UNKNOWN);
	assert_int_equal(step_between(&a, &here, &any), STEP_SAME);
	assert_int_equal(step_between(&a, &any, &here), STEP_OTHER); /* it does not apply to ours, and was tested */
}

/* #14 beside 1/4 asks for the mark on the box; with the mark it is a step like any other. */
static void a_quarter_beside_a_14_asks_for_the_mark(void **state)
{
	(void)state;
	Attribute a = attribute(KIND_fastener, "size", 0.5);
	Fastener number_14 = { .size_in = number("#14", 0.242) }, quarter = { .size_in = number("1/4", 0.250) };
	Fastener number_12 = { .size_in = number("#12", 0.216) };
	assert_int_equal(step_between(&a, &number_14, &quarter), STEP_UNKNOWN);
	assert_int_equal(step_between(&a, &quarter, &number_14), STEP_UNKNOWN);
	assert_true(asks_for_mark(&a, &number_14, &quarter));
	assert_false(asks_for_mark(&a, &number_12, &quarter));
	assert_int_equal(step_between(&a, &number_12, &quarter), STEP_DOWN);
	quarter.mark = text("1/4-14 x 7/8");
	assert_false(asks_for_mark(&a, &quarter, &number_14));
	assert_int_equal(step_between(&a, &quarter, &number_14), STEP_UP);
}

/* ---- one number a zone ---- */

static ByZone by_zone(const ZoneValue *at, uint32_t count)
{
	return (ByZone){ said(NULL), count, at };
}

static void zones_are_compared_one_by_one(void **state)
{
	(void)state;
	const ZoneValue all_24[] = { { said("24 in"), "", 24 } }, all_12[] = { { said("12 in"), "", 12 } };
	const ZoneValue closing[] = { { said("24 in"), "field", 24 }, { said("12 in"), "corner", 12 } };
	const ZoneValue wider[] = { { said("30 in"), "field", 30 }, { said("12 in"), "corner", 12 } };
	const ZoneValue field_only[] = { { said("24 in"), "field", 24 } };
	Attribute a = attribute(KIND_clip, "spacing", 0.5);
	Clip zones = { .spacing_in = by_zone(closing, 2) }, single = { .spacing_in = by_zone(all_24, 1) };
	Clip close = { .spacing_in = by_zone(all_12, 1) }, wide = { .spacing_in = by_zone(wider, 2) };
	Clip partly = { .spacing_in = by_zone(field_only, 1) };
	assert_int_equal(step_between(&a, &zones, &single), STEP_DOWN);
	assert_int_equal(step_between(&a, &single, &zones), STEP_UP);
	assert_int_equal(step_between(&a, &wide, &single), STEP_OTHER); /* wider here, closer there */
	assert_int_equal(step_between(&a, &zones, &close), STEP_UP);
	assert_int_equal(step_between(&a, &zones, &zones), STEP_SAME);
	assert_int_equal(step_between(&a, &partly, &zones), STEP_UNKNOWN);
	assert_int_equal(step_between(&a, &zones, &partly), STEP_UNKNOWN);
	assert_int_equal(step_between(&a, &single, &close), STEP_UP);
}

/* The enumerators stand in the order of the words of the form. */
static void steps_are_the_words_of_the_form(void **state)
{
	(void)state;
	const char *words = key_of(&Comparison_record, "step")->words;
	for (Step step = STEP_SAME; step <= STEP_UNKNOWN; step++) {
		Word made = step_word(step);
		assert_int_equal(word_find(words, made.text, strlen(made.text)), (int)step);
		assert_int_equal(made.word, step);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(each_row_has_its_pass_and_its_fail),
		cmocka_unit_test(nominal_sizes_are_the_same_both_ways),
		cmocka_unit_test(a_true_step_goes_down_one_way_and_up_the_other),
		cmocka_unit_test(a_tolerance_ends),
		cmocka_unit_test(two_families_have_no_order),
		cmocka_unit_test(each_value_is_the_same_as_itself),
		cmocka_unit_test(a_step_back_is_the_step_turned_round),
		cmocka_unit_test(up_and_up_again_is_up),
		cmocka_unit_test(a_side_that_is_not_said_is_unknown),
		cmocka_unit_test(a_quarter_beside_a_14_asks_for_the_mark),
		cmocka_unit_test(zones_are_compared_one_by_one),
		cmocka_unit_test(steps_are_the_words_of_the_form),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
