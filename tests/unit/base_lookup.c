/* SPDX-License-Identifier: MIT
 * Lookups in tables made by hand.
 */
#include "check.h"

#include "criteria.h"
#include "hash.h"
#include "reference.h"

#define TEXT_OF(words) { .given = { .said = SAID_VALUE }, .text = words }
#define NUMBER_OF(number) { .given = { .said = SAID_VALUE }, .value = number }

static const Screw screw[] = {
	{ .size = TEXT_OF("#12"), .diameter_in = NUMBER_OF(0.216) },
	{ .size = TEXT_OF("1/4"), .diameter_in = NUMBER_OF(0.25) },
};
static const Gauge gauge[] = {
	{ .use = TEXT_OF("sheet"), .gauge_one = NUMBER_OF(24), .thickness_in = NUMBER_OF(0.0239) },
	{ .use = TEXT_OF("deck"), .gauge_one = NUMBER_OF(22), .thickness_in = NUMBER_OF(0.0295) },
};
static const TradeSize size[] = {
	{ .family = TEXT_OF("sheet"), .size = TEXT_OF("24 ga"), .sold_as_in = NUMBER_OF(0.0239) },
	{ .family = TEXT_OF("sheet"), .size = TEXT_OF("24 ga"), .sold_as_in = NUMBER_OF(0.0236) },
	{ .family = TEXT_OF("sheet"), .size = TEXT_OF("22 ga"), .sold_as_in = NUMBER_OF(0.0299) },
	{ .family = TEXT_OF("deck"), .size = TEXT_OF("22 ga"), .sold_as_in = NUMBER_OF(0.0295) },
};
static const SourceRow source[] = { { .id = TEXT_OF("sample-book") } };
static const Reference reference = { .screws = { 2, screw, NULL }, .gauges = { 2, gauge, NULL }, .trade_sizes = { 4, size, NULL },
	.sources = { 1, source, NULL } };

static void screws_and_gauges(void **state)
{
	(void)state;
	assert_close(screw_diameter(&reference, "#12"), 0.216, 0);
	assert_close(screw_diameter(&reference, "#13"), 0, 0);
	assert_string_equal(screw_size(&reference, 0.25), "1/4");
	assert_null(screw_size(&reference, 0.2));
	assert_close(gauge_thickness(&reference, "sheet", 24), 0.0239, 0);
	assert_close(gauge_thickness(&reference, "deck", 24), 0, 0);
	assert_close(gauge_thickness(&reference, "aluminum", 24), 0, 0);
	assert_ptr_equal(source_row(&reference, "sample-book"), &source[0]);
	assert_null(source_row(&reference, "common practice, no published source"));
}

static void sizes_sold_as_one(void **state)
{
	(void)state;
	assert_true(is_one_trade_size(&reference, "sheet", 0.0239, 0.0236));
	assert_true(is_one_trade_size(&reference, "sheet", 0.60 / 25.4, 0.0239)); /* 0.60 mm is 0.0236 in */
	assert_true(is_one_trade_size(&reference, "sheet", 0.0299, 0.0299));
	assert_false(is_one_trade_size(&reference, "sheet", 0.0299, 0.0239));
	assert_false(is_one_trade_size(&reference, "sheet", 0.0235, 0.0236));
	assert_false(is_one_trade_size(&reference, "sheet", 0.0295, 0.0299)); /* another family */
	assert_false(is_one_trade_size(&reference, "wood panel", 0.0239, 0.0236));
}

static void lists_scales_and_kinds(void **state)
{
	(void)state;
	const NamedWord list[] = { { .list = TEXT_OF("uses"), .entry = TEXT_OF("cold storage") } };
	const ScaleWord scale[] = {
		{ .scale = TEXT_OF("zinc"), .attribute = TEXT_OF("panel.coating"), .word = TEXT_OF("G90"), .rank_one = NUMBER_OF(2) },
	};
	const KindRow kind[] = { { .kind = TEXT_OF("clip") } };
	const Criteria criteria = { .lists = { 1, list, NULL }, .scales = { 1, scale, NULL }, .kinds = { 1, kind, NULL } };
	const char *name;
	assert_true(list_has(&criteria, "uses", "Cold Storage"));
	assert_false(list_has(&criteria, "uses", "cold"));
	assert_false(list_has(&criteria, "other", "cold storage"));
	assert_int_equal(scale_rank(&criteria, "panel.coating", "g90", &name), 2);
	assert_string_equal(name, "zinc");
	assert_int_equal(scale_rank(&criteria, "panel.coating", "AZ50", &name), 0);
	assert_null(name);
	assert_ptr_equal(kind_find(&criteria, KIND_clip), &kind[0]);
	assert_null(kind_find(&criteria, KIND_panel));
}

static void items_are_found_by_kind(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	Hash *items = hash_make(arena, 4), *listings = hash_make(arena, 4);
	Clip clip = { .item = TEXT_OF("plain-1") };
	Panel panel = { .item = TEXT_OF("plain-1") };
	Listing listing = { .listing = TEXT_OF("tested-1") };
	hash_put(items, "clip\0plain-1", 12, &clip);
	hash_put(items, "panel\0plain-1", 13, &panel);
	hash_put(listings, "tested-1", 8, &listing);
	Criteria criteria = { .items = items, .listing_by_name = listings };
	assert_ptr_equal(item_find(&criteria, KIND_clip, "plain-1"), &clip);
	assert_ptr_equal(item_find(&criteria, KIND_panel, "plain-1"), &panel);
	assert_null(item_find(&criteria, KIND_fastener, "plain-1"));
	assert_ptr_equal(listing_find(&criteria, "tested-1"), &listing);
	assert_null(listing_find(&criteria, "tested-2"));
	char longest[1000];
	memset(longest, 'x', sizeof longest - 1);
	longest[999] = '\0';
	assert_null(item_find(&criteria, KIND_clip, longest));
	arena_free(arena);
}

static void the_hash_of_an_edition(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	const Source *one[] = { source_make(arena, "here/a.csv", "ab", 2, 3), source_make(arena, "here/b.csv", "c", 1, 4) };
	const Source *moved[] = { source_make(arena, "there/a.csv", "ab", 2, 3), source_make(arena, "there/b.csv", "c", 1, 4) };
	const Source *shifted[] = { source_make(arena, "here/a.csv", "a", 1, 3), source_make(arena, "here/b.csv", "bc", 2, 4) };
	Criteria a = { .source = one, .sources = 2 }, b = { .source = moved, .sources = 2 }, c = { .source = shifted, .sources = 2 };
	/* sha256sum over a.csv NUL 2 NUL ab b.csv NUL 1 NUL c */
	assert_string_equal(criteria_hash(&a, arena), "be39fb3ddc6f0255972e9a0b53a5876af8d7959de9ee7a0975c2509c73ec0abe");
	assert_string_equal(criteria_hash(&a, arena), criteria_hash(&b, arena));
	assert_string_not_equal(criteria_hash(&a, arena), criteria_hash(&c, arena));
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(screws_and_gauges),
		cmocka_unit_test(sizes_sold_as_one),
		cmocka_unit_test(lists_scales_and_kinds),
		cmocka_unit_test(items_are_found_by_kind),
		cmocka_unit_test(the_hash_of_an_edition),
	};
	return cmocka_run_group_tests(tests, NULL, NULL) != 0;
}
