/* SPDX-License-Identifier: MIT
 * The tree of cases of the clean example and of edits of it: names, paths, values in force, lists that wait, zones, roles,
 * papers.
 */
#include "harness.h"

#include "resolve/resolving.h"

/* Resolves the clean example after edits: pairs of path and text, NULL text deletes; a NULL path ends them. */
typedef struct {
	const char *path, *text;
} Edit;

static World world;

static Cases *resolve_nodes(Arena *arena, Node *root, const Source *source)
{
	Complaints complaints = { .arena = arena };
	Submittal *submittal = read_submittal(arena, root, source, world.reference, &complaints);
	Inputs inputs = { .submittal = submittal, .criteria = world.criteria, .reference = world.reference,
		.registers = world.registers, .as_of = INT32_MIN };
	return resolve(arena, &inputs);
}

static Cases *resolve_edited(Arena *arena, const Edit *edit)
{
	const Source *source;
	Node *root = builtin_nodes(arena, "examples/clean.yaml", &source);
	for (; edit->path != NULL; edit++) {
		bool done = edit->text != NULL ? node_set(arena, root, edit->path, edit->text) : node_delete(root, edit->path);
		assert_true(done);
	}
	return resolve_nodes(arena, root, source);
}

static const Case *named(const Cases *all, RecordKind kind, const char *name)
{
	for (uint32_t i = 0; i < all->of[kind].count; i++)
		if (strcmp(all->of[kind].at[i]->name, name) == 0)
			return all->of[kind].at[i];
	fail_msg("no %s is called %s", record_of(kind)->name, name);
	return NULL;
}

static uint32_t waits_of(const Cases *all, RecordKind kind)
{
	uint32_t count = 0;
	for (uint32_t i = 0; i < all->waitings; i++)
		count += all->waiting[i].kind == kind;
	return count;
}

/* Lists that are due only when the roof is finished wait in every application. */
static bool is_due_later(const WaitingList *list)
{
	return list->field->need == NEED_STATED && list->field->due > STAGE_application;
}

static uint32_t waits_now(const Cases *all)
{
	uint32_t count = 0;
	for (uint32_t i = 0; i < all->waitings; i++)
		count += !is_due_later(&all->waiting[i]);
	return count;
}

static const WaitingList *wait_on(const Cases *all, RecordKind kind)
{
	for (uint32_t i = 0; i < all->waitings; i++)
		if (all->waiting[i].kind == kind)
			return &all->waiting[i];
	fail_msg("no list of %s waits", record_of(kind)->name);
	return NULL;
}

static const Edit nothing[] = { { NULL, NULL } };

static void each_list_makes_cases_in_the_order_of_the_file(void **state)
{
	Cases *all = resolve_edited(*state, nothing);
	assert_int_equal(all->of[KIND_submittal].count, 1);
	assert_int_equal(all->of[KIND_roof_area].count, 1);
	assert_int_equal(all->of[KIND_panel].count, 1);
	assert_int_equal(all->of[KIND_support].count, 1);
	assert_int_equal(all->of[KIND_layer].count, 0); /* none */
	assert_int_equal(all->of[KIND_clip].count, 2);
	assert_int_equal(all->of[KIND_fastener].count, 4);
	assert_int_equal(all->of[KIND_sealant].count, 5);
	assert_int_equal(all->of[KIND_detail].count, 7);
	assert_int_equal(all->of[KIND_requirement].count, 9);
	assert_int_equal(all->of[KIND_event].count, 8);
	assert_int_equal(waits_now(all), 0);
	for (int kind = 0; kind < RECORD_KINDS; kind++)
		for (uint32_t i = 1; i < all->of[kind].count; i++)
			assert_true(all->of[kind].at[i]->order > all->of[kind].at[i - 1]->order);
	assert_string_equal(all->of[KIND_submittal].at[0]->name, "MC-1042");
	assert_ptr_equal(all->of[KIND_requirement].at[0]->up, all->of[KIND_submittal].at[0]);
	assert_ptr_equal(all->of[KIND_clip].at[0]->up, all->of[KIND_roof_area].at[0]);
	assert_int_equal(all->as_of, 20557); /* 2026-04-14 */
}

static void equal_names_are_counted(void **state)
{
	Cases *all = resolve_edited(*state, nothing);
	assert_string_equal(all->of[KIND_sealant].at[0]->name, "Main roof / seal-butyl-tape");
	assert_string_equal(all->of[KIND_sealant].at[1]->name, "Main roof / seal-butyl-tape #2");
	assert_string_equal(all->of[KIND_sealant].at[2]->name, "Main roof / seal-butyl-gun");
	assert_string_equal(all->of[KIND_sealant].at[3]->name, "Main roof / seal-butyl-tape #3");
	assert_string_equal(all->of[KIND_penetration].at[0]->name, "Main roof / RTU-1");
	assert_string_equal(all->of[KIND_letter].at[0]->name, "EL-88");
	assert_string_equal(all->of[KIND_zone].at[0]->name, "Main roof / 1'");
}

static void a_part_without_an_item_is_called_by_its_kind(void **state)
{
	static const Edit edits[] = { { "roof_areas.0.clips.0.item", "other" }, { "roof_areas.0.support.item", NULL },
		{ "roof_areas.0.fasteners.0.item", "unknown" }, { NULL, NULL } };
	Cases *all = resolve_edited(*state, edits);
	assert_string_equal(all->of[KIND_clip].at[0]->name, "Main roof / clip");
	assert_string_equal(all->of[KIND_support].at[0]->name, "Main roof / support");
	assert_string_equal(all->of[KIND_fastener].at[0]->name, "Main roof / fastener");
	assert_null(all->of[KIND_clip].at[0]->catalogue);
	assert_null(all->of[KIND_support].at[0]->catalogue);
	assert_non_null(all->of[KIND_clip].at[1]->catalogue);
}

static void paths_are_made_of_names(void **state)
{
	Arena *arena = *state;
	static const Edit edits[] = { { "roof_areas.0.sealants.1.where", "closure" }, { "roof_areas.0.penetrations.1.name", "VP [1]" },
		{ NULL, NULL } };
	Cases *all = resolve_edited(arena, edits);
	assert_string_equal(case_path(all->of[KIND_submittal].at[0], arena), "submittal");
	assert_string_equal(case_path(all->of[KIND_roof_area].at[0], arena), "roof_areas[Main roof]");
	assert_string_equal(case_path(all->of[KIND_panel].at[0], arena), "roof_areas[Main roof].panel");
	assert_string_equal(case_path(all->of[KIND_penetration].at[0], arena), "roof_areas[Main roof].penetrations[RTU-1]");
	assert_string_equal(case_path(all->of[KIND_penetration].at[1], arena), "roof_areas[Main roof].penetrations[VP \\[1\\]]");
	assert_string_equal(case_path(all->of[KIND_sealant].at[0], arena), "roof_areas[Main roof].sealants[seal-butyl-tape, closure]");
	const char *second = case_path(all->of[KIND_sealant].at[1], arena);
	assert_string_equal(second, "roof_areas[Main roof].sealants[seal-butyl-tape, closure #2]");
	assert_string_equal(case_path(all->of[KIND_detail].at[2], arena), "roof_areas[Main roof].details[ridge, D-12]");
	assert_string_equal(case_path(all->of[KIND_requirement].at[0], arena), "specification.requirements[2.1.A]");
	assert_string_equal(case_path(all->of[KIND_event].at[4], arena), "dates[pre-roofing conference]");
	assert_string_equal(case_path(all->of[KIND_zone].at[3], arena), "roof_areas[Main roof].zones[3]");
	const Case *role = named(all, KIND_role, "Main roof / RTU-1 / curb screws");
	assert_string_equal(case_path(role, arena), "roof_areas[Main roof].penetrations[RTU-1].roles[curb screws]");
}

static void no_two_cases_have_one_path(void **state)
{
	Arena *arena = *state;
	Cases *all = resolve_edited(arena, nothing);
	Hash *paths = hash_make(arena, all->made);
	for (int kind = 0; kind < RECORD_KINDS; kind++)
		for (uint32_t i = 0; i < all->of[kind].count; i++) {
			const char *path = case_path(all->of[kind].at[i], arena);
			assert_null(hash_put(paths, path, strlen(path), all->of[kind].at[i]));
		}
}

static void outwards_leads_to_the_record_itself_first(void **state)
{
	Cases *all = resolve_edited(*state, nothing);
	const Case *clip = all->of[KIND_clip].at[0], *role = named(all, KIND_role, "Main roof / RTU-1 / curb screws");
	assert_ptr_equal(case_outward(clip, KIND_clip), clip);
	assert_ptr_equal(case_outward(clip, KIND_roof_area), all->of[KIND_roof_area].at[0]);
	assert_ptr_equal(case_outward(clip, KIND_submittal), all->of[KIND_submittal].at[0]);
	assert_null(case_outward(clip, KIND_fastener));
	assert_ptr_equal(case_outward(role, KIND_penetration), all->of[KIND_penetration].at[0]);
	assert_ptr_equal(case_outward(all->of[KIND_comparison].at[0], KIND_roof_area), all->of[KIND_roof_area].at[0]);
}

/* ---- values in force ---- */

static void what_is_not_written_comes_from_the_catalogue(void **state)
{
	static const Edit edits[] = { { "roof_areas.0.panel.thickness", NULL }, { "roof_areas.0.panel.yield", "40 ksi" },
		{ "roof_areas.0.panel.supplied_by", NULL }, { "roof_areas.0.panel.shape", NULL }, { "roof_areas.0.panel.length", NULL },
		{ "roof_areas.0.panel.finish", "unknown" }, { NULL, NULL } };
	Cases *all = resolve_edited(*state, edits);
	const Case *at = all->of[KIND_panel].at[0];
	const Panel *panel = at->row, *written = at->submitted;
	assert_int_equal(panel->thickness_in.given.said, SAID_VALUE); /* panel-a-16 is 24 ga */
	assert_close(panel->thickness_in.value, 0.0239, 1e-9);
	assert_true(panel->thickness_in.given.place.source >= SOURCE_FIRST_SHARED);
	assert_int_equal(written->thickness_in.given.said, SAID_NOTHING);
	assert_close(panel->yield_ksi.value, 40, 1e-9); /* what is written is judged */
	assert_int_equal(panel->supplied_by.given.said, SAID_NOTHING); /* OWN */
	assert_int_equal(panel->shape.given.said, SAID_VALUE); /* the catalogue goes before the form's assumption */
	assert_int_equal(written->shape.given.said, SAID_ASSUMED);
	assert_int_equal(panel->length_ft.given.said, SAID_NOTHING); /* the catalogue has none */
	assert_int_equal(panel->finish.given.said, SAID_UNKNOWN);
	/* Seen from the roof area the panel is the same record. */
	assert_ptr_equal(&((const RoofArea *)at->up->row)->panel, panel);
}

static void any_of_the_catalogue_does_not_apply(void **state)
{
	static const Edit edits[] = { { "roof_areas.0.clips.1.travel", NULL }, { NULL, NULL } };
	Cases *all = resolve_edited(*state, edits);
	const Clip *fixed = all->of[KIND_clip].at[1]->row; /* clip-a-fixed: travel any */
	assert_int_equal(fixed->travel_in.given.said, SAID_NOT_APPLICABLE);
	/* The list of the area holds the clips in force. */
	assert_ptr_equal(&((const RoofArea *)all->of[KIND_roof_area].at[0]->row)->clips.of.row[1], fixed);
}

static void curbs_and_boots_are_found_for_openings(void **state)
{
	static const Edit edits[] = { { "roof_areas.0.penetrations.0.thickness", NULL }, { NULL, NULL } };
	Cases *all = resolve_edited(*state, edits);
	const Penetration *curb = all->of[KIND_penetration].at[0]->row;
	assert_close(curb->thickness_in.value, 0.080, 1e-9); /* curb-080 */
	assert_non_null(all->of[KIND_penetration].at[1]->catalogue);
}

/* The example has no building of its own in the area: a map with one key is put there. */
static void an_area_has_the_building_it_does_not_override(void **state)
{
	static Node value = { .kind = NODE_SCALAR, .text = "3:12", .length = 4, .place = { 1, 1, 4, SOURCE_SUBMITTAL } };
	static Node key = { .kind = NODE_KEY, .text = "slope", .length = 5, .first = &value, .place = { 1, 1, 5, SOURCE_SUBMITTAL } };
	static Node map = { .kind = NODE_MAP, .count = 1, .first = &key, .place = { 1, 1, 5, SOURCE_SUBMITTAL } };
	const Source *source;
	Node *root = builtin_nodes(*state, "examples/clean.yaml", &source);
	assert_true(node_graft(*state, root, "roof_areas.0.building", &map));
	Cases *all = resolve_nodes(*state, root, source);
	const Building *own = &((const RoofArea *)all->of[KIND_roof_area].at[0]->row)->building;
	assert_close(own->slope_in_12.value, 3, 1e-9);
	assert_close(own->length_ft.value, 200, 1e-9);
	assert_int_equal(own->parapet_height_ft.given.said, SAID_VALUE); /* written for the building, assumed for the area */
	assert_string_equal(own->enclosure.text, "enclosed");
	assert_int_equal(own->given.said, SAID_VALUE);
}

static void an_area_without_a_building_has_the_whole_one(void **state)
{
	Cases *all = resolve_edited(*state, nothing);
	const Building *own = &((const RoofArea *)all->of[KIND_roof_area].at[0]->row)->building;
	assert_close(own->slope_in_12.value, 1, 1e-9);
	assert_close(own->eave_height_ft.value, 24, 1e-9);
	assert_int_equal(own->given.said, SAID_VALUE);
	const RoofArea *written = all->of[KIND_roof_area].at[0]->submitted;
	assert_int_equal(written->building.given.said, SAID_NOTHING);
}

/* ---- what waits ---- */

static void a_list_that_was_not_stated_waits(void **state)
{
	static const Edit edits[] = { { "roof_areas.0.clips", NULL }, { NULL, NULL } };
	Cases *all = resolve_edited(*state, edits);
	assert_int_equal(all->of[KIND_clip].count, 0);
	assert_int_equal(waits_of(all, KIND_clip), 1);
	assert_int_equal(waits_of(all, KIND_zone), 1);
	assert_int_equal(waits_of(all, KIND_fastener), 0);
	assert_int_equal(all->waiting[0].kind, KIND_clip);
	assert_string_equal(all->waiting[0].field->key, "clips");
	assert_ptr_equal(all->waiting[0].up, all->of[KIND_roof_area].at[0]);
	assert_int_equal(all->waiting[0].given->said, SAID_NOTHING);
}

static void none_is_an_answer(void **state)
{
	static const Edit edits[] = { { "roof_areas.0.accessories", "none" }, { "engineering", "none" }, { NULL, NULL } };
	Cases *all = resolve_edited(*state, edits);
	assert_int_equal(all->of[KIND_accessory].count, 0);
	assert_int_equal(all->of[KIND_letter].count, 0);
	assert_int_equal(waits_now(all), 0);
}

static void without_roof_areas_all_inside_them_waits(void **state)
{
	static const Edit edits[] = { { "roof_areas", NULL }, { NULL, NULL } };
	static const RecordKind inside[] = { KIND_roof_area, KIND_test, KIND_panel, KIND_support, KIND_layer, KIND_clip, KIND_fastener,
		KIND_fixed_line, KIND_underlayment, KIND_sealant, KIND_rivet, KIND_closure, KIND_detail, KIND_penetration, KIND_accessory,
		KIND_adjoining_metal, KIND_touching, KIND_upper_roof, KIND_seam_test, KIND_panel_run, KIND_zone, KIND_role, KIND_comparison,
		KIND_contact };
	Cases *all = resolve_edited(*state, edits);
	for (size_t i = 0; i < sizeof inside / sizeof *inside; i++)
		assert_int_equal(waits_of(all, inside[i]), 1);
	assert_int_equal(waits_of(all, KIND_letter), 0);
	assert_int_equal(waits_of(all, KIND_document), 0);
	assert_int_equal(waits_now(all), sizeof inside / sizeof *inside);
}

static void a_spacing_that_is_not_stated_makes_the_zones_wait(void **state)
{
	static const Edit edits[] = { { "roof_areas.0.clips.0.spacing", "unknown" }, { NULL, NULL } };
	Cases *all = resolve_edited(*state, edits);
	assert_int_equal(all->of[KIND_zone].count, 0);
	assert_int_equal(waits_of(all, KIND_zone), 1);
	assert_string_equal(wait_on(all, KIND_zone)->field->key, "spacing");
	assert_int_equal(wait_on(all, KIND_zone)->given->said, SAID_UNKNOWN);
}

static void an_absent_panel_is_a_case_without_values(void **state)
{
	static const Edit edits[] = { { "roof_areas.0.panel", NULL }, { NULL, NULL } };
	Cases *all = resolve_edited(*state, edits);
	assert_int_equal(all->of[KIND_panel].count, 1);
	assert_int_equal(((const Panel *)all->of[KIND_panel].at[0]->row)->given.said, SAID_NOTHING);
	assert_string_equal(all->of[KIND_panel].at[0]->name, "Main roof / panel");
}

/* ---- zones ---- */

static const Zone *zone(const Cases *all, const char *name)
{
	return named(all, KIND_zone, name)->row;
}

/* Interior, field, perimeter and corner are the zones 1', 1, 2 and 3 of figure 30.3-2A. */
static void zones_come_from_the_running_clips(void **state)
{
	Cases *all = resolve_edited(*state, nothing);
	assert_int_equal(all->of[KIND_zone].count, 4); /* the fixed clip's 16 in is no zone */
	assert_close(zone(all, "Main roof / 1")->spacing_in.value, 24, 1e-9);
	assert_close(zone(all, "Main roof / 2")->spacing_in.value, 18, 1e-9);
	assert_close(zone(all, "Main roof / 3")->spacing_in.value, 12, 1e-9);
	assert_string_equal(zone(all, "Main roof / 3")->spacing_in.given.typed, "12 in");
	assert_true(zone(all, "Main roof / 3")->given.place.line > 0);
}

static void without_a_figure_zones_are_called_as_typed(void **state)
{
	static const Edit edits[] = { { "building.shape", "other" }, { "engineering", "none" }, { NULL, NULL } };
	Cases *all = resolve_edited(*state, edits);
	assert_int_equal(all->of[KIND_zone].count, 4);
	assert_close(zone(all, "Main roof / field")->spacing_in.value, 24, 1e-9);
	assert_close(zone(all, "Main roof / corner")->spacing_in.value, 12, 1e-9);
}

static void a_single_spacing_is_that_of_every_zone(void **state)
{
	static const Edit figure[] = { { "roof_areas.0.clips.0.spacing", NULL }, { "roof_areas.0.clips.0.spacing", "610 mm" },
		{ NULL, NULL } };
	static const Edit none[] = { { "building.shape", "other" }, { "engineering", "none" }, { "roof_areas.0.clips.0.spacing", NULL },
		{ "roof_areas.0.clips.0.spacing", "610 mm" }, { NULL, NULL } };
	Cases *all = resolve_edited(*state, figure);
	assert_int_equal(all->of[KIND_zone].count, 4);
	for (uint32_t i = 0; i < 4; i++)
		assert_close(((const Zone *)all->of[KIND_zone].at[i]->row)->spacing_in.value, 610 / 25.4, 1e-9);
	all = resolve_edited(*state, none);
	assert_int_equal(all->of[KIND_zone].count, 1);
	assert_close(zone(all, "Main roof / all zones")->spacing_in.value, 610 / 25.4, 1e-9);
}

/* A second kind of running clip: the wider spacing of a zone is the one judged. */
static void the_wider_of_two_spacings_is_judged(void **state)
{
	static const Edit edits[] = { { "roof_areas.0.clips.1.use", "running" }, { "roof_areas.0.clips.1.spacing", NULL },
		{ "roof_areas.0.clips.1.spacing", "20 in" }, { NULL, NULL } };
	Cases *all = resolve_edited(*state, edits);
	assert_int_equal(all->of[KIND_zone].count, 4);
	assert_close(zone(all, "Main roof / 1")->spacing_in.value, 24, 1e-9);
	assert_close(zone(all, "Main roof / 2")->spacing_in.value, 20, 1e-9);
	assert_close(zone(all, "Main roof / 3")->spacing_in.value, 20, 1e-9);
}

/* ---- tests, roles, papers ---- */

static void the_capacity_listing_governs(void **state)
{
	Cases *all = resolve_edited(*state, nothing);
	const Listing *class = all->of[KIND_test].at[0]->listed, *capacity = all->of[KIND_test].at[1]->listed;
	assert_string_equal(class->listing.text, "tested-210");
	assert_string_equal(capacity->listing.text, "report-33");
	assert_ptr_equal(all->of[KIND_roof_area].at[0]->listed, capacity);
	assert_ptr_equal(all->of[KIND_zone].at[0]->listed, capacity);
	assert_ptr_equal(all->of[KIND_panel].at[0]->listed, &capacity->tested.panel);
	assert_ptr_equal(all->of[KIND_clip].at[0]->listed, &capacity->tested.clips.of.row[0]);
	assert_null(all->of[KIND_clip].at[1]->listed); /* the fixed clip was not tested */
	assert_null(all->of[KIND_fastener].at[2]->listed); /* nor the trim screw */
	assert_ptr_equal(all->of[KIND_comparison].at[0]->listed, class);
}

static void an_unknown_listing_binds_nothing(void **state)
{
	static const Edit edits[] = { { "roof_areas.0.tests.1.listing", "tested-999" }, { NULL, NULL } };
	Cases *all = resolve_edited(*state, edits);
	assert_null(all->of[KIND_test].at[1]->listed);
	const Listing *class = all->of[KIND_test].at[0]->listed;
	assert_ptr_equal(all->of[KIND_roof_area].at[0]->listed, class); /* the one named for class, then */
}

static void roles_stand_at_the_record_that_needs_them(void **state)
{
	Cases *all = resolve_edited(*state, nothing);
	const Case *curb = named(all, KIND_role, "Main roof / RTU-1 / curb flange sealant");
	const Role *role = curb->row;
	assert_ptr_equal(curb->up, all->of[KIND_penetration].at[0]);
	assert_string_equal(role->part.text, "sealant");
	assert_close(role->least_one.value, 1, 1e-9);
	/* The place is the list in which the part would stand. */
	const RoofArea *area = all->of[KIND_roof_area].at[0]->row;
	assert_true(role->given.place.line > 0);
	assert_int_equal(role->given.place.line, area->sealants.of.given.place.line);
	assert_ptr_equal(named(all, KIND_role, "Main roof / running clips")->up, all->of[KIND_roof_area].at[0]);
}

static void each_paper_of_the_edition_is_a_case(void **state)
{
	Cases *all = resolve_edited(*state, nothing);
	assert_int_equal(all->of[KIND_paper].count, world.criteria->documents.count);
	const Case *letter = named(all, KIND_paper, "engineering letter");
	assert_ptr_equal(letter->up, all->of[KIND_submittal].at[0]);
	assert_string_equal(((const PaperDueHere *)letter->row)->bound->row->kind.text, "engineering letter");
}

/* The day: as given, else the day received, else the submittal's own. */
static void papers_are_judged_at_one_day(void **state)
{
	Arena *arena = *state;
	Submittal submittal = { .date = { { .said = SAID_VALUE }, 100 } };
	Review review = { .received = { { .said = SAID_VALUE }, 200 } };
	Inputs inputs = { .submittal = &submittal, .criteria = world.criteria, .reference = world.reference,
		.registers = world.registers, .as_of = INT32_MIN };
	assert_int_equal(resolve(arena, &inputs)->as_of, 100);
	inputs.review = &review;
	assert_int_equal(resolve(arena, &inputs)->as_of, 200);
	inputs.as_of = 300;
	assert_int_equal(resolve(arena, &inputs)->as_of, 300);
	submittal.date.given.said = SAID_UNKNOWN;
	inputs = (Inputs){ .submittal = &submittal, .criteria = world.criteria, .reference = world.reference,
		.registers = world.registers, .as_of = INT32_MIN };
	assert_int_equal(resolve(arena, &inputs)->as_of, INT32_MIN);
}

/* The kinds of part stand in the order of the form's words. */
static void words_of_parts_are_kinds(void **state)
{
	(void)state;
	const char *words = field_find(&Comparison_record, "part", 4)->words;
	int count = 0;
	for (int kind = 0; kind < RECORD_KINDS; kind++) {
		if (record_of((RecordKind)kind)->sort != RECORD_PART)
			continue;
		Word made = part_word((RecordKind)kind);
		assert_string_equal(made.text, record_of((RecordKind)kind)->name);
		assert_int_equal(made.word, word_find(words, made.text, strlen(made.text)));
		assert_int_equal(kind_of_word(&made), kind);
		count++;
	}
	assert_int_equal(count, 11);
}

static int arena_begin(void **state)
{
	*state = arena_make();
	return 0;
}

static int arena_end(void **state)
{
	arena_free(*state);
	return 0;
}

#define TEST(function) cmocka_unit_test_setup_teardown(function, arena_begin, arena_end)

int main(void)
{
	const struct CMUnitTest tests[] = {
		TEST(each_list_makes_cases_in_the_order_of_the_file),
		TEST(equal_names_are_counted),
		TEST(a_part_without_an_item_is_called_by_its_kind),
		TEST(paths_are_made_of_names),
		TEST(no_two_cases_have_one_path),
		TEST(outwards_leads_to_the_record_itself_first),
		TEST(what_is_not_written_comes_from_the_catalogue),
		TEST(any_of_the_catalogue_does_not_apply),
		TEST(curbs_and_boots_are_found_for_openings),
		TEST(an_area_has_the_building_it_does_not_override),
		TEST(an_area_without_a_building_has_the_whole_one),
		TEST(a_list_that_was_not_stated_waits),
		TEST(none_is_an_answer),
		TEST(without_roof_areas_all_inside_them_waits),
		TEST(a_spacing_that_is_not_stated_makes_the_zones_wait),
		TEST(an_absent_panel_is_a_case_without_values),
		TEST(zones_come_from_the_running_clips),
		TEST(without_a_figure_zones_are_called_as_typed),
		TEST(a_single_spacing_is_that_of_every_zone),
		TEST(the_wider_of_two_spacings_is_judged),
		TEST(the_capacity_listing_governs),
		TEST(an_unknown_listing_binds_nothing),
		TEST(roles_stand_at_the_record_that_needs_them),
		TEST(each_paper_of_the_edition_is_a_case),
		TEST(papers_are_judged_at_one_day),
		TEST(words_of_parts_are_kinds),
	};
	world = world_make();
	int failed = cmocka_run_group_tests(tests, NULL, NULL);
	arena_free(world.run);
	return failed;
}
