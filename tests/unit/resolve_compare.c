/* SPDX-License-Identifier: MIT
 * Comparisons with a listing, the catalogue and the specification, over a small edition and a submittal filled by hand: which are
 * made, what stands on either side, which step lies between, and what stands for parts that are too many, too few or not stated.
 */
#include "hand.h"

#include "resolve/resolving.h"

/* ---- a small edition ---- */

#define COUNT(array) (sizeof(array) / sizeof *(array))
enum { PROFILE, THICKNESS, WIDTH, LAYER, LAYER_THICKNESS, CLIP_ITEM, SIZE, LENGTH, ROWS };

typedef struct {
	Arena *arena;
	Criteria criteria;
	Reference reference;
	Registers registers;
	Substitution rows[ROWS];
	BoundSubstitution may[ROWS];
	Listing listing;
	Layer tested_layer;
	Clip tested_clip;
	Fastener tested_fastener;
	Submittal submittal;
	RoofArea area;
	AreaTest test[2];
	Layer layer[2];
	Clip clip[2];
	Fastener fastener[2];
	Requirement requirement[2];
	BoundTerm term;
	ListingTerm term_row;
} Hand;

static const struct {
	const char *kind, *key, *may_go;
} rows[ROWS] = {
	[PROFILE] = { "panel", "profile", "same" }, [THICKNESS] = { "panel", "thickness", "up" }, [WIDTH] = { "panel", "width", "down" },
	[LAYER] = { "layer", "layer", "same" }, [LAYER_THICKNESS] = { "layer", "thickness", "within" },
	[CLIP_ITEM] = { "clip", "item", "same" }, [SIZE] = { "fastener", "size", "up" }, [LENGTH] = { "fastener", "length", "up" },
};

static RecordKind kind_named(const char *name)
{
	for (int kind = 0; kind < RECORD_KINDS; kind++)
		if (strcmp(record_of((RecordKind)kind)->name, name) == 0)
			return (RecordKind)kind;
	fail_msg("no kind %s", name);
	return RECORD_KINDS;
}

static void fill_substitutions(Hand *h)
{
	for (int i = 0; i < ROWS; i++) {
		h->rows[i].kind = word(&Substitution_record, "kind", rows[i].kind);
		h->rows[i].attribute = text(rows[i].key);
		h->rows[i].may_go = word(&Substitution_record, "may_go", rows[i].may_go);
		h->may[i] = (BoundSubstitution){ .row = &h->rows[i], .field = key_of(record_of(kind_named(rows[i].kind)), rows[i].key) };
	}
	h->criteria.substitution = h->may;
	h->criteria.substitutions_bound = ROWS;
}

static const Screw screws[] = {
	{ .size = { { .said = SAID_VALUE }, "#12" }, .diameter_in = { { .said = SAID_VALUE }, 0.216 } },
	{ .size = { { .said = SAID_VALUE }, "#14" }, .diameter_in = { { .said = SAID_VALUE }, 0.242 } },
	{ .size = { { .said = SAID_VALUE }, "1/4" }, .diameter_in = { { .said = SAID_VALUE }, 0.250 } },
};
#define SAID { .said = SAID_VALUE }
static const Gauge gauges[] = {
	{ .use = { SAID, "sheet" }, .gauge_one = { SAID, 24 }, .thickness_in = { SAID, 0.0239 } },
	{ .use = { SAID, "aluminum" }, .gauge_one = { SAID, 24 }, .thickness_in = { SAID, 0.0201 } },
};

/* The tested construction: profile A, 0.0239 in, a bearing plate, clip-a, a #12 screw whose length is not stated. */
static void fill_listing(Hand *h)
{
	h->listing.listing = text("tested-1");
	h->tested_layer.layer = word(&Layer_record, "layer", "bearing plate");
	h->tested_clip.item = text("clip-a");
	h->tested_fastener.size_in = number("#12", 0.216);
	RoofArea *tested = &h->listing.tested;
	tested->panel.profile = text("A");
	tested->panel.thickness_in = number("0.0239", 0.0239);
	tested->panel.width_in = number("16", 16);
	tested->build_up.list = (List){ said(NULL), 1, &h->tested_layer };
	tested->clips.list = (List){ said(NULL), 1, &h->tested_clip };
	tested->fasteners.list = (List){ said(NULL), 1, &h->tested_fastener };
	h->criteria.listings.row = &h->listing;
	h->criteria.listings.count = 1;
	h->criteria.listing_by_name = hash_make(h->arena, 4);
	hash_put((Hash *)(uintptr_t)h->criteria.listing_by_name, "tested-1", strlen("tested-1"), &h->listing);
	h->criteria.items = hash_make(h->arena, 4);
}

/* A submittal that is the tested construction, with one value more: the screw's length. */
static void fill_submittal(Hand *h)
{
	h->test[0].listing = text("tested-1");
	h->test[0].role = word(&AreaTest_record, "for", "class");
	h->layer[0].layer = word(&Layer_record, "layer", "bearing plate");
	h->clip[0].item = text("clip-a");
	h->clip[0].use = word(&Clip_record, "use", "running");
	h->fastener[0].size_in = number("#12", 0.216);
	h->fastener[0].length_in = number("1 in", 1);
	h->fastener[0].use = word(&Fastener_record, "use", "clip");
	RoofArea *area = &h->area;
	area->name = text("North roof");
	area->panel.given.said = SAID_VALUE;
	area->panel.metal = word(&Panel_record, "metal", "steel");
	area->panel.profile = text("A");
	area->panel.thickness_in = number("24 ga", 0.0239);
	area->panel.width_in = number("406 mm", 406 / 25.4);
	area->tests.list = (List){ said(NULL), 1, h->test };
	area->build_up.list = (List){ said(NULL), 1, h->layer };
	area->clips.list = (List){ said(NULL), 1, h->clip };
	area->fasteners.list = (List){ said(NULL), 1, h->fastener };
	h->submittal.roof_areas.list = (List){ said(NULL), 1, area };
	h->submittal.specification.requirements.of.given.said = SAID_NONE;
}

static int begin(void **state)
{
	Arena *arena = arena_make();
	Hand *h = TAKE(arena, Hand, 1);
	h->arena = arena;
	h->reference.screws.row = screws;
	h->reference.screws.count = COUNT(screws);
	h->reference.gauges.row = gauges;
	h->reference.gauges.count = COUNT(gauges);
	h->criteria.edition.edition = text("small-1");
	fill_substitutions(h);
	fill_listing(h);
	fill_submittal(h);
	*state = h;
	return 0;
}

static int end(void **state)
{
	arena_free(((Hand *)*state)->arena);
	return 0;
}

static Cases *resolve_hand(Hand *h)
{
	Inputs inputs = { .submittal = &h->submittal, .criteria = &h->criteria, .reference = &h->reference, .registers = &h->registers,
		.as_of = INT32_MIN };
	return resolve(h->arena, &inputs);
}

/* The comparison number `n` (from 0) with a paper, of a kind and attribute; NULL if there are not so many. */
static const Compared *found(const Cases *all, const char *with, const char *title, int n)
{
	for (uint32_t i = 0; i < all->of[KIND_comparison].count; i++) {
		const Compared *compared = all->of[KIND_comparison].at[i]->row;
		if (is_word(&compared->record.with, with) && strcmp(compared->record.title.text, title) == 0 && n-- == 0)
			return compared;
	}
	return NULL;
}

static const Compared *compared_with(const Cases *all, const char *with, const char *title)
{
	const Compared *compared = found(all, with, title, 0);
	if (compared == NULL)
		fail_msg("no comparison of %s with the %s", title, with);
	assert_null(found(all, with, title, 1));
	return compared;
}

#define assert_step(compared, word) assert_string_equal((compared)->record.step.text, (word))

/* ---- with a listing ---- */

static void the_tested_construction_is_the_same(void **state)
{
	Cases *all = resolve_hand(*state);
	assert_int_equal(all->of[KIND_comparison].count, ROWS);
	const Compared *profile = compared_with(all, "listing", "panel profile");
	assert_step(profile, "same");
	assert_string_equal(profile->record.attribute.text, "profile");
	assert_string_equal(profile->record.paper.text, "tested-1");
	assert_string_equal(profile->record.role.text, "class");
	assert_string_equal(profile->record.part.text, "panel");
	assert_string_equal(profile->record.may_go.text, "same");
	const Compared *thickness = compared_with(all, "listing", "panel thickness");
	assert_step(thickness, "same");
	assert_string_equal(thickness->record.here.text, "24 ga");
	assert_string_equal(thickness->record.there.text, "0.0239 in"); /* the unit stood in the header */
	const Compared *width = compared_with(all, "listing", "panel width");
	assert_step(width, "same"); /* 15.98 in */
	assert_string_equal(width->record.here.text, "406 mm");
	assert_string_equal(width->record.may_go.text, "down");
	assert_step(compared_with(all, "listing", "layer"), "same");
	assert_step(compared_with(all, "listing", "clip"), "same");
	assert_step(compared_with(all, "listing", "fastener size"), "same");
	assert_step(compared_with(all, "listing", "layer thickness"), "unknown"); /* due here, and not stated */
}

static void a_blank_of_the_listing_is_unknown(void **state)
{
	Cases *all = resolve_hand(*state);
	const Compared *length = compared_with(all, "listing", "fastener length");
	assert_step(length, "unknown");
	assert_string_equal(length->record.here.text, "1 in");
	assert_null(length->record.there.text);
}

static void any_of_the_listing_is_met(void **state)
{
	Hand *h = *state;
	h->tested_fastener.length_in.given = (Given){ .typed = "any", .said = SAID_NOT_APPLICABLE };
	const Compared *length = compared_with(resolve_hand(h), "listing", "fastener length");
	assert_step(length, "same");
	assert_string_equal(length->record.there.text, "any");
}

static void each_part_of_a_kind_is_compared(void **state)
{
	Hand *h = *state;
	h->clip[1].item = text("clip-b");
	h->clip[1].use = word(&Clip_record, "use", "running");
	h->area.clips.of.count = 2;
	h->fastener[1].size_in = number("#14", 0.242);
	h->fastener[1].use = word(&Fastener_record, "use", "trim"); /* holds no clip */
	h->area.fasteners.of.count = 2;
	Cases *all = resolve_hand(h);
	assert_step(found(all, "listing", "clip", 0), "same");
	const Compared *other = found(all, "listing", "clip", 1);
	assert_step(other, "other");
	assert_string_equal(other->record.here.text, "clip-b");
	assert_string_equal(other->record.there.text, "clip-a");
	assert_ptr_equal(other->part, all->of[KIND_clip].at[1]);
	assert_ptr_equal(other->test, all->of[KIND_test].at[0]);
	assert_null(found(all, "listing", "fastener size", 1));
}

static void a_part_whose_use_is_not_said_is_compared(void **state)
{
	Hand *h = *state;
	h->clip[0].use.given.said = SAID_NOTHING;
	h->clip[0].item = text("clip-b");
	assert_step(compared_with(resolve_hand(h), "listing", "clip"), "other");
}

/* ---- parts too few, too many, not stated ---- */

static void a_tested_part_left_out_is_a_difference(void **state)
{
	Hand *h = *state;
	h->area.build_up.of.given = (Given){ .place = { 7, 3, 4, 0 }, .typed = "none", .said = SAID_NONE };
	h->area.build_up.of.count = 0;
	Cases *all = resolve_hand(h);
	const Compared *plate = compared_with(all, "listing", "layer");
	assert_step(plate, "other");
	assert_string_equal(plate->record.here.text, "none");
	assert_string_equal(plate->record.there.text, "bearing plate");
	assert_string_equal(plate->record.may_go.text, "same");
	assert_ptr_equal(plate->part, all->of[KIND_roof_area].at[0]);
	assert_int_equal(plate->record.given.place.line, 7);
	assert_null(found(all, "listing", "layer thickness", 0));
}

static void another_layer_does_not_stand_for_the_tested_one(void **state)
{
	Hand *h = *state;
	h->layer[0].layer = word(&Layer_record, "layer", "insulation");
	h->layer[0].thickness_in = number("4 in", 4);
	h->tested_layer.thickness_in = number("0.06", 0.06);
	Cases *all = resolve_hand(h);
	const Compared *insulation = found(all, "listing", "layer", 0), *plate = found(all, "listing", "layer", 1);
	assert_step(insulation, "other");
	assert_string_equal(insulation->record.here.text, "insulation");
	assert_step(plate, "other");
	assert_ptr_equal(plate->part, all->of[KIND_roof_area].at[0]);
	assert_string_equal(plate->record.here.text, "none");
	assert_string_equal(plate->record.there.text, "bearing plate");
	assert_null(found(all, "listing", "layer thickness", 0)); /* two layers of different kind have no thickness in common */
}

static void clips_all_of_another_use_leave_the_tested_one_out(void **state)
{
	Hand *h = *state;
	h->clip[0].use = word(&Clip_record, "use", "fixity");
	const Compared *clip = compared_with(resolve_hand(h), "listing", "clip");
	assert_step(clip, "other");
	assert_string_equal(clip->record.there.text, "clip-a");
}

static void a_layer_beside_none_of_the_listing_is_a_difference(void **state)
{
	Hand *h = *state;
	h->listing.tested.build_up.of.count = 0;
	h->listing.tested.build_up.of.given = (Given){ .typed = "none", .said = SAID_NONE };
	h->layer[0].thickness_in = number("0.06 in", 0.06);
	Cases *all = resolve_hand(h);
	const Compared *layer = compared_with(all, "listing", "layer");
	assert_step(layer, "other");
	assert_string_equal(layer->record.here.text, "bearing plate");
	assert_string_equal(layer->record.there.text, "none");
	assert_null(found(all, "listing", "layer thickness", 0));
}

static void a_layer_the_listing_does_not_speak_of_is_unknown(void **state)
{
	Hand *h = *state;
	h->listing.tested.build_up.list = (List){ .count = 0 };
	assert_step(compared_with(resolve_hand(h), "listing", "layer"), "unknown");
}

static void neither_side_having_a_part_is_nothing_to_compare(void **state)
{
	Hand *h = *state;
	h->listing.tested.build_up.list = (List){ .count = 0 };
	h->area.build_up.list = (List){ .given = { .said = SAID_NONE } };
	assert_null(found(resolve_hand(h), "listing", "layer", 0));
}

static void a_list_that_waits_makes_comparisons_that_wait(void **state)
{
	Hand *h = *state;
	h->area.fasteners.list = (List){ .given = { .said = SAID_NOTHING } };
	Cases *all = resolve_hand(h);
	const Compared *size = compared_with(all, "listing", "fastener size");
	const Compared *length = compared_with(all, "listing", "fastener length");
	assert_step(size, "unknown");
	assert_step(length, "unknown");
	assert_string_equal(size->field->key, "fasteners");
	assert_ptr_equal(size->here, all->of[KIND_roof_area].at[0]->row);
	assert_int_equal(given_in(size->field, size->here)->said, SAID_NOTHING);
	assert_ptr_equal(size->part, all->of[KIND_roof_area].at[0]);
}

static void tests_that_were_not_stated_make_every_comparison_wait(void **state)
{
	Hand *h = *state;
	h->area.tests.list = (List){ .given = { .said = SAID_UNKNOWN } };
	Cases *all = resolve_hand(h);
	assert_int_equal(all->of[KIND_comparison].count, ROWS);
	for (uint32_t i = 0; i < ROWS; i++) {
		const Compared *compared = all->of[KIND_comparison].at[i]->row;
		assert_step(compared, "unknown");
		assert_string_equal(compared->field->key, "tests");
	}
}

static void a_test_named_twice_is_compared_once(void **state)
{
	Hand *h = *state;
	h->test[1] = h->test[0];
	h->area.tests.of.count = 2;
	assert_int_equal(resolve_hand(h)->of[KIND_comparison].count, ROWS);
	h->test[1].role = word(&AreaTest_record, "for", "capacity");
	assert_int_equal(resolve_hand(h)->of[KIND_comparison].count, 2 * ROWS);
}

/* ---- the listing's own words ---- */

static void set_term(Hand *h, int row, const char *relation, const char *value)
{
	h->term_row.listing = text("tested-1");
	h->term_row.relation = word(&ListingTerm_record, "relation", relation);
	h->term_row.value = value != NULL ? text(value) : (Text){ { .said = SAID_NOTHING }, NULL };
	h->term = (BoundTerm){ .row = &h->term_row, .kind = kind_named(rows[row].kind), .field = h->may[row].field };
	h->criteria.term = &h->term;
	h->criteria.terms_bound = 1;
}

static void a_term_goes_before_the_table(void **state)
{
	static const struct {
		const char *relation, *value, *may_go, *there;
	} terms[] = {
		{ "is", "16 in", "same", "16 in" },
		{ "at least", "12 in", "up", "12 in" },
		{ "at most", "18 in", "down", "18 in" },
		{ "between", "12 in and 18 in", "within", "12 in to 18 in" },
		{ "one of", "16 in; 18 in", "same", "16 in" },
		{ "any", NULL, "any", "16 in" },
	};
	Hand *h = *state;
	for (size_t i = 0; i < COUNT(terms); i++) {
		set_term(h, WIDTH, terms[i].relation, terms[i].value);
		Cases *all = resolve_hand(h);
		const Compared *width = compared_with(all, "listing", "panel width");
		assert_ptr_equal(width->term, &h->term);
		assert_string_equal(width->record.may_go.text, terms[i].may_go);
		assert_string_equal(width->record.there.text, terms[i].there);
		assert_null(compared_with(all, "listing", "panel thickness")->term);
	}
}

static void an_optional_layer_may_be_left_out(void **state)
{
	Hand *h = *state;
	set_term(h, LAYER, "optional", NULL);
	h->area.build_up.list = (List){ .given = { .said = SAID_NONE } };
	const Compared *layer = compared_with(resolve_hand(h), "listing", "layer");
	assert_ptr_equal(layer->term, &h->term);
	assert_string_equal(layer->record.may_go.text, "any");
}

static void the_terms_of_another_listing_do_not_count(void **state)
{
	Hand *h = *state;
	set_term(h, WIDTH, "any", NULL);
	h->term_row.listing = text("tested-2");
	assert_null(compared_with(resolve_hand(h), "listing", "panel width")->term);
}

/* ---- the mark on the box ---- */

static void a_quarter_beside_a_14_waits_for_the_mark(void **state)
{
	Hand *h = *state;
	h->fastener[0].size_in = number("1/4", 0.250);
	h->tested_fastener.size_in = number("#14", 0.242);
	const Compared *size = compared_with(resolve_hand(h), "listing", "fastener size");
	assert_step(size, "unknown");
	assert_string_equal(size->field->key, "mark");
	assert_string_equal(size->record.attribute.text, "size");
	assert_string_equal(size->record.here.text, "1/4");
	assert_string_equal(size->record.there.text, "#14");
	h->fastener[0].mark = text("1/4-14 x 1");
	size = compared_with(resolve_hand(h), "listing", "fastener size");
	assert_step(size, "up");
	assert_string_equal(size->field->key, "size");
}

/* ---- with the catalogue ---- */

static void only_what_differs_from_the_catalogue_is_compared(void **state)
{
	Hand *h = *state;
	static const Clip row = { .item = { { .said = SAID_VALUE, .typed = "clip-a" }, "clip-a" },
		.thickness_in = { { .said = SAID_VALUE, .typed = "16 ga" }, 0.0598 },
		.height_in = { { .said = SAID_VALUE, .typed = "2" }, 2 },
		.supplied_by = { { .said = SAID_VALUE, .typed = "panel maker" }, "panel maker" } };
	hash_put((Hash *)(uintptr_t)h->criteria.items, "clip\0clip-a", sizeof "clip\0clip-a" - 1, (void *)(uintptr_t)&row);
	h->clip[0].thickness_in = number("18 ga", 0.0478);
	h->clip[0].height_in = number("51 mm", 51 / 25.4); /* 2.008 in: the same */
	h->clip[0].supplied_by = text("a shop"); /* each paper's own */
	Cases *all = resolve_hand(h);
	const Compared *thickness = compared_with(all, "catalogue", "clip thickness");
	assert_step(thickness, "down");
	assert_string_equal(thickness->record.here.text, "18 ga");
	assert_string_equal(thickness->record.there.text, "16 ga");
	assert_string_equal(thickness->record.paper.text, "small-1");
	assert_string_equal(thickness->record.may_go.text, "same");
	assert_null(found(all, "catalogue", "clip height", 0));
	assert_null(found(all, "catalogue", "clip supplied by", 0));
	assert_ptr_equal(all->of[KIND_clip].at[0]->catalogue, &row);
}

/* ---- with the specification ---- */

static Requirement *require(Hand *h, const char *topic)
{
	h->requirement[0] = (Requirement){ .paragraph = text("2.3.B"), .topic = text(topic) };
	h->submittal.specification.requirements.list = (List){ said(NULL), 1, h->requirement };
	return &h->requirement[0];
}

static const struct {
	const char *topic, *title, *asked;
	enum { AT_LEAST, AT_MOST, EXACTLY } side;
	const char *step, *may_go;
} asked[] = {
	{ "fastener size", "fastener size", "#12", AT_LEAST, "same", "up" },
	{ "fastener size", "fastener size", "No. 14", AT_LEAST, "down", "up" },
	{ "Fastener Size", "fastener size", "1/4", AT_LEAST, "down", "up" },
	{ "fastener length", "fastener length", "3/4 in", AT_LEAST, "up", "up" },
	{ "fastener length", "fastener length", "25.4 mm", EXACTLY, "same", "same" },
	{ "panel thickness", "panel thickness", "24 ga", AT_LEAST, "same", "up" },
	{ "panel thickness", "panel thickness", "0.0299 in", AT_LEAST, "down", "up" },
	{ "panel width", "panel width", "16 in", AT_MOST, "same", "down" },
	{ "panel width", "panel width", "12 in", AT_MOST, "up", "down" },
	{ "panel profile", "panel profile", "B", EXACTLY, "other", "same" },
	{ "panel metal", "panel metal", "galvanized steel", EXACTLY, "same", "same" },
	{ "panel metal", "panel metal", "bronze", EXACTLY, "other", "same" },
	{ "clip", "clip", "clip-a", EXACTLY, "same", "same" },
	{ "clip", "clip", "clip-b", EXACTLY, "other", "same" },
	{ "panel width", "panel width", "wide", AT_MOST, "unknown", "down" }, /* cannot be read */
	{ "panel gloss", "panel gloss", "high", EXACTLY, "unknown", "same" }, /* no key of the form */
	{ "panel yield", "panel yield", "50 ksi", AT_LEAST, "unknown", "up" }, /* not submitted */
};

static void a_requirement_is_compared_in_its_own_direction(void **state)
{
	Hand *h = *state;
	for (size_t i = 0; i < COUNT(asked); i++) {
		Requirement *requirement = require(h, asked[i].topic);
		Text value = text(asked[i].asked);
		Text *sides[] = { &requirement->at_least, &requirement->at_most, &requirement->exactly };
		*sides[asked[i].side] = value;
		Cases *all = resolve_hand(h);
		const Compared *compared = compared_with(all, "specification", asked[i].title);
		const Word *step = &compared->record.step, *may_go = &compared->record.may_go;
		if (!is_word(step, asked[i].step) || !is_word(may_go, asked[i].may_go))
			fail_msg("%s %s: step %s, may go %s", asked[i].topic, asked[i].asked, step->text, may_go->text);
		assert_string_equal(compared->record.there.text, asked[i].asked);
		assert_string_equal(compared->record.paper.text, "2.3.B");
		assert_ptr_equal(compared->requirement, all->of[KIND_requirement].at[0]);
	}
}

/* The gauge of a paragraph is that of the metal submitted: 24 ga of aluminum is 0.0201 in. */
static void a_gauge_of_the_specification_is_that_of_the_metal(void **state)
{
	Hand *h = *state;
	h->area.panel.metal = word(&Panel_record, "metal", "aluminum");
	h->area.panel.thickness_in = number("0.0201 in", 0.0201);
	require(h, "panel thickness")->at_least = text("24 ga");
	assert_step(compared_with(resolve_hand(h), "specification", "panel thickness"), "same");
}

static void other_topics_are_left_to_rules(void **state)
{
	Hand *h = *state;
	require(h, "uplift class")->at_least = text("90");
	Cases *all = resolve_hand(h);
	assert_int_equal(all->of[KIND_comparison].count, ROWS);
	require(h, "panel")->text = text("structural"); /* nothing to compare is asked for */
	assert_int_equal(resolve_hand(h)->of[KIND_comparison].count, ROWS);
}

static void requirements_that_were_not_stated_wait(void **state)
{
	Hand *h = *state;
	h->submittal.specification.requirements.of.given.said = SAID_NOTHING;
	Cases *all = resolve_hand(h);
	const Compared *rivet = compared_with(all, "specification", "rivet");
	assert_step(rivet, "unknown");
	assert_string_equal(rivet->field->key, "requirements");
	assert_int_equal(all->of[KIND_comparison].count, ROWS + 11); /* one a kind of part */
}

/* ---- limits ---- */

/* Many requirements and many clips: the comparisons end at the limit, and rules over comparisons wait then. */
static void too_many_comparisons_wait(void **state)
{
	enum { MANY = 300 };
	Hand *h = *state;
	Clip *clips = TAKE(h->arena, Clip, MANY);
	Requirement *requirements = TAKE(h->arena, Requirement, MANY);
	for (int i = 0; i < MANY; i++) {
		clips[i] = h->clip[0];
		requirements[i] = (Requirement){ .paragraph = text("2.3.B"), .topic = text("clip"), .exactly = text("clip-b") };
	}
	h->area.clips.list = (List){ said(NULL), MANY, clips };
	h->submittal.specification.requirements.list = (List){ said(NULL), MANY, requirements };
	Cases *all = resolve_hand(h);
	assert_int_equal(all->of[KIND_comparison].count, MOST_COMPARISONS);
	assert_int_equal(all->waitings > 0 ? all->waiting[all->waitings - 1].kind : RECORD_KINDS, KIND_comparison);
	assert_string_equal(all->of[KIND_clip].at[MANY - 1]->name, "North roof / clip-a #300");
}

#define TEST(function) cmocka_unit_test_setup_teardown(function, begin, end)

int main(void)
{
	const struct CMUnitTest tests[] = {
		TEST(the_tested_construction_is_the_same),
		TEST(a_blank_of_the_listing_is_unknown),
		TEST(any_of_the_listing_is_met),
		TEST(each_part_of_a_kind_is_compared),
		TEST(a_part_whose_use_is_not_said_is_compared),
		TEST(a_tested_part_left_out_is_a_difference),
		TEST(another_layer_does_not_stand_for_the_tested_one),
		TEST(clips_all_of_another_use_leave_the_tested_one_out),
		TEST(a_layer_beside_none_of_the_listing_is_a_difference),
		TEST(a_layer_the_listing_does_not_speak_of_is_unknown),
		TEST(neither_side_having_a_part_is_nothing_to_compare),
		TEST(a_list_that_waits_makes_comparisons_that_wait),
		TEST(tests_that_were_not_stated_make_every_comparison_wait),
		TEST(a_test_named_twice_is_compared_once),
		TEST(a_term_goes_before_the_table),
		TEST(an_optional_layer_may_be_left_out),
		TEST(the_terms_of_another_listing_do_not_count),
		TEST(a_quarter_beside_a_14_waits_for_the_mark),
		TEST(only_what_differs_from_the_catalogue_is_compared),
		TEST(a_requirement_is_compared_in_its_own_direction),
		TEST(a_gauge_of_the_specification_is_that_of_the_metal),
		TEST(other_topics_are_left_to_rules),
		TEST(requirements_that_were_not_stated_wait),
		TEST(too_many_comparisons_wait),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
