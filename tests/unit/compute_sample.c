/* SPDX-License-Identifier: MIT
 * Facts of the clean example under the sample edition, and of edits of it: what may go up, what may not, and what each needs.
 */
#include "harness.h"

typedef struct {
	World world;
	Arena *arena;
	Node *root;
	const Source *source;
} Sample;

static int sample_setup(void **state)
{
	static Sample sample;
	sample.world = world_make();
	*state = &sample;
	return 0;
}

static int sample_teardown(void **state)
{
	arena_free(((Sample *)*state)->world.run);
	return 0;
}

static void open_clean(Sample *s)
{
	s->arena = arena_make();
	s->root = builtin_nodes(s->arena, "examples/clean.yaml", &s->source);
}

static void set(Sample *s, const char *path, const char *value)
{
	assert_true(edit_nodes(s->arena, s->root, path, value));
}

static Cases *resolved(Sample *s)
{
	Complaints complaints = { .arena = s->arena };
	Inputs inputs = { .criteria = s->world.criteria, .reference = s->world.reference, .registers = s->world.registers };
	inputs.as_of = INT32_MIN;
	inputs.submittal = read_submittal(s->arena, s->root, s->source, s->world.reference, &complaints);
	print_complaints(&complaints);
	assert_int_equal(complaints.count, 0);
	return resolve(s->arena, &inputs);
}

static const Fact *fact_named(Case *at, const char *name)
{
	int id = fact_find(at->kind, name, strlen(name));
	assert_true(id >= 0);
	return fact_of(at, (FactId)id);
}

static Case *case_number(const Cases *all, RecordKind kind, uint32_t i)
{
	assert_true(i < all->of[kind].count);
	return all->of[kind].at[i];
}

/* ---- the clean example ---- */

typedef struct {
	RecordKind kind;
	uint32_t number;
	const char *name;
	double value;
} Expected;

/* 16 ga is 0.0598 in, 22 ga deck 0.0295 in, three threads of 14 an inch 3/14 in. */
static const Expected clean[] = {
	{ KIND_submittal, 0, "certificate_in_force", 1 },
	{ KIND_submittal, 0, "letters", 1 },
	{ KIND_submittal, 0, "term_offered", 1 },
	{ KIND_letter, 0, "areas_known", 1 },
	{ KIND_requirement, 0, "names_catalogue_item", 1 },
	{ KIND_requirement, 0, "item_accepted", 1 },
	{ KIND_letter, 0, "exposure_kept", 1 },
	{ KIND_letter, 0, "enclosure_kept", 1 },
	{ KIND_letter, 0, "risk_kept", 1 },
	{ KIND_roof_area, 0, "letters_covering", 1 },
	{ KIND_roof_area, 0, "uplift_class", 90 },
	{ KIND_roof_area, 0, "capacity_papers", 1 },
	{ KIND_roof_area, 0, "fixed_lines", 1 },
	{ KIND_roof_area, 0, "floating_clips", 1 },
	{ KIND_roof_area, 0, "running_clip_hole", 0.25 },
	{ KIND_roof_area, 0, "underlayments_laid", 1 },
	{ KIND_roof_area, 0, "self_adhered_laid", 1 },
	{ KIND_roof_area, 0, "sealants_used", 5 },
	{ KIND_roof_area, 0, "closures_set", 2 },
	{ KIND_roof_area, 0, "layers_thickness", 0 },
	{ KIND_roof_area, 0, "least_life", 25 },
	{ KIND_roof_area, 0, "longest_term", 25 },
	{ KIND_roof_area, 0, "term_least_slope", 0.5 },
	{ KIND_roof_area, 0, "term_seam_allowed", 1 },
	{ KIND_roof_area, 0, "term_surroundings_allowed", 1 },
	{ KIND_test, 0, "listing_known", 1 },
	{ KIND_test, 0, "listing_in_force", 1 },
	{ KIND_test, 0, "role_fits", 1 },
	{ KIND_test, 0, "differences", 0 },
	{ KIND_test, 1, "differences", 0 },
	{ KIND_zone, 0, "class_spacing_ratio", 1 },
	{ KIND_zone, 2, "class_spacing_ratio", 0.75 },
	{ KIND_zone, 3, "class_spacing_ratio", 0.5 },
	{ KIND_clip, 0, "life", 40 },
	{ KIND_clip, 0, "must_be_supplied", 1 },
	{ KIND_clip, 0, "supplied_by_maker", 1 },
	{ KIND_fastener, 0, "life", 30 },
	{ KIND_fastener, 0, "in_catalogue", 1 },
	{ KIND_fastener, 0, "approved", 1 },
	{ KIND_fastener, 0, "clip_hole", 0.25 },
	{ KIND_fastener, 0, "drilled_thickness", 0.0893 },
	{ KIND_fastener, 0, "drill_greatest", 0.140 },
	{ KIND_fastener, 0, "length_needed", 0.3035857142857143 },
	{ KIND_sealant, 0, "renewable", 0 },
	{ KIND_penetration, 0, "needs_curb", 1 },
	{ KIND_penetration, 0, "maker_curb", 1 },
	{ KIND_penetration, 1, "needs_curb", 0 },
	{ KIND_detail, 0, "approved_number", 1 },
};

static void the_clean_example(void **state)
{
	Sample *s = *state;
	open_clean(s);
	const Cases *all = resolved(s);
	for (size_t i = 0; i < sizeof clean / sizeof *clean; i++) {
		const Expected *e = &clean[i];
		const Fact *fact = fact_named(case_number(all, e->kind, e->number), e->name);
		if (fact->state != FACT_KNOWN)
			print_error("%s: %s\n", e->name, fact->reason != NULL ? fact->reason : "waits");
		assert_int_equal(fact->state, FACT_KNOWN);
		assert_close(fact->value, e->value, 1e-12);
		assert_false(fact->borrowed);
	}
	assert_string_equal(fact_named(case_number(all, KIND_roof_area, 0), "least_life")->note, "Main roof / VP-1");
	arena_free(s->arena);
}

static void every_role_and_paper_due_is_there(void **state)
{
	Sample *s = *state;
	open_clean(s);
	const Cases *all = resolved(s);
	uint32_t due = 0;
	for (uint32_t i = 0; i < all->of[KIND_role].count; i++) {
		Case *role = all->of[KIND_role].at[i];
		if (fact_named(role, "due")->value == 0)
			continue;
		due++;
		assert_true(fact_named(role, "found")->value >= 1);
	}
	assert_true(due >= 8);
	for (uint32_t i = 0; i < all->of[KIND_paper].count; i++) {
		Case *paper = all->of[KIND_paper].at[i];
		assert_int_equal(fact_named(paper, "due")->state, FACT_KNOWN);
		assert_true(fact_named(paper, "due")->value == 0 || fact_named(paper, "found")->value == 1);
	}
	arena_free(s->arena);
}

/* No fact of any case is left computing, and none has a value without being known. */
static void every_fact_of_every_case_ends(void **state)
{
	Sample *s = *state;
	open_clean(s);
	const Cases *all = resolved(s);
	uint32_t known = 0;
	for (int kind = 0; kind < RECORD_KINDS; kind++)
		for (uint32_t i = 0; i < all->of[kind].count; i++)
			for (FactId id = 0; id < FACT_COUNT; id++) {
				const FactSpec *spec = fact_spec(id);
				Case *at = all->of[kind].at[i];
				if (fact_find(at->kind, spec->name, strlen(spec->name)) != id)
					continue;
				const Fact *fact = fact_of(at, id);
				assert_true(fact->state >= FACT_KNOWN);
				assert_true(fact->state == FACT_KNOWN || fact->value == 0);
				assert_true(fact->state < FACT_REFUSED || fact->reason != NULL);
				known += fact->state == FACT_KNOWN;
			}
	assert_true(known > 300);
	arena_free(s->arena);
}

/* ---- up, never down: the table of directions over the sample edition ---- */

typedef struct {
	const char *paths[8]; /* path, value, ..., NULL */
	const char *part, *attribute;
	bool holds;
	const char *note;
} Edit;

#define AREA "roof_areas.0."
#define CLIP_SCREW AREA "fasteners.0."

static const Edit edits[] = {
	{ { CLIP_SCREW "mark", "14-14 x 1", CLIP_SCREW "size", "#14" }, "fastener", "size", true, NULL },
	{ { CLIP_SCREW "mark", "10-16 x 1", CLIP_SCREW "size", "#10", CLIP_SCREW "threads", "16" }, "fastener", "size", false,
		"may go up only" },
	{ { CLIP_SCREW "mark", "14-14 x 1", CLIP_SCREW "size", "#14", AREA "clips.0.hole", "#12" }, "fastener", "size", false,
		"it holds only if the hole of the clip takes the screw, which is not so" },
	{ { CLIP_SCREW "mark", "14-14 x 1", CLIP_SCREW "size", "#14", AREA "support.thickness", "0.12 in" }, "fastener", "size",
		false, "it holds only if its point drills the clip and the support, which is not so" },
	{ { CLIP_SCREW "mark", "12-14 x 1-1/2", CLIP_SCREW "length", "1-1/2 in" }, "fastener", "length", true, NULL },
	{ { CLIP_SCREW "mark", "12-14 x 3/4", CLIP_SCREW "length", "3/4 in" }, "fastener", "length", false, "may go up only" },
	{ { CLIP_SCREW "per", "3" }, "fastener", "per", true, NULL },
	{ { CLIP_SCREW "per", "1" }, "fastener", "per", false, "may go up only" },
	{ { CLIP_SCREW "kind", "nail" }, "fastener", "kind", false, "must be the same" },
	{ { AREA "panel.thickness", "22 ga" }, "panel", "thickness", true, NULL },
	{ { AREA "panel.thickness", "0.60 mm" }, "panel", "thickness", true, NULL },
	{ { AREA "panel.thickness", "26 ga" }, "panel", "thickness", false, "may go up only" },
	{ { AREA "panel.yield", "55 ksi" }, "panel", "yield", true, NULL },
	{ { AREA "panel.yield", "40 ksi" }, "panel", "yield", false, "may go up only" },
	{ { AREA "panel.width", "12 in" }, "panel", "width", true, NULL },
	{ { AREA "panel.width", "18 in" }, "panel", "width", false, "the listing says at most 16 in" },
	{ { AREA "panel.rib_height", "2-1/2 in" }, "panel", "rib height", false, "must be the same" },
	{ { AREA "panel.profile", "B" }, "panel", "profile", false, "must be the same" },
	{ { AREA "panel.metal", "aluminum", AREA "panel.thickness", "0.032 in" }, "panel", "metal", false, "must be the same" },
	{ { AREA "panel.seam", "single lock 90" }, "panel", "seam", false, "must be the same" },
	{ { AREA "panel.seam_sealant", "machine" }, "panel", "seam sealant", true, NULL },
	{ { AREA "panel.seam_sealant", "none" }, "panel", "seam sealant", false, "the listing says one of factory; machine" },
	{ { AREA "support.thickness", "20 ga" }, "support", "thickness", true, NULL },
	{ { AREA "support.thickness", "0.0239 in" }, "support", "thickness", false, "may go up only" },
	{ { AREA "support.spacing", "48 in" }, "support", "spacing", true, NULL },
	{ { AREA "support.spacing", "66 in" }, "support", "spacing", false, "may go down only" },
	{ { AREA "support.kind", "plywood", AREA "support.thickness", "15/32 in" }, "support", "kind", false,
		"must be the same" },
	{ { AREA "clips.0.item", "clip-a-float-long", AREA "clips.0.travel", "4 in" }, "clip", "item", true, NULL },
	{ { AREA "clips.0.item", "clip-b-float" }, "clip", "item", false,
		"the listing says one of clip-a-float; clip-a-float-long; clip-a-float-narrow; clip-a-float-ss" },
	{ { AREA "clips.0.pieces", "one-piece" }, "clip", "pieces", false, "must be the same" },
	{ { AREA "build_up", "[{layer: insulation, thickness: 4 in}]" }, "layer", "layer", false, "must be the same" },
};

static Case *class_comparison(const Cases *all, const char *part, const char *attribute)
{
	for (uint32_t i = 0; i < all->of[KIND_comparison].count; i++) {
		Case *at = all->of[KIND_comparison].at[i];
		const Compared *row = at->row;
		if (row->test == all->of[KIND_test].at[0] && strcmp(row->record.part.text, part) == 0 &&
			strcmp(row->record.attribute.text, attribute) == 0)
			return at;
	}
	print_error("no comparison of %s %s\n", part, attribute);
	fail();
	return NULL;
}

static void check_edit(Sample *s, const Edit *edit)
{
	open_clean(s);
	for (int i = 0; edit->paths[i] != NULL; i += 2)
		set(s, edit->paths[i], edit->paths[i + 1]);
	const Cases *all = resolved(s);
	const Fact *holds = fact_named(class_comparison(all, edit->part, edit->attribute), "holds");
	const Fact *class = fact_named(case_number(all, KIND_roof_area, 0), "uplift_class");
	if (holds->state != FACT_KNOWN || holds->value != edit->holds)
		print_error("%s = %s: %s %s\n", edit->paths[0], edit->paths[1], holds->reason != NULL ? holds->reason : "",
			holds->note != NULL ? holds->note : "");
	assert_int_equal(holds->state, FACT_KNOWN);
	assert_true(holds->value == edit->holds);
	if (edit->note != NULL)
		assert_string_equal(holds->note, edit->note);
	assert_true(class->borrowed == !edit->holds); /* what does not hold makes the class borrowed */
	assert_close(class->value, 90, 1e-12);
	arena_free(s->arena);
}

static void up_never_down(void **state)
{
	for (size_t i = 0; i < sizeof edits / sizeof *edits; i++)
		check_edit(*state, &edits[i]);
}

/* ---- what waits ---- */

static void a_missing_hole_is_waited_for_by_the_larger_screw(void **state)
{
	Sample *s = *state;
	open_clean(s);
	set(s, CLIP_SCREW "mark", "14-14 x 1");
	set(s, CLIP_SCREW "size", "#14");
	set(s, "roof_areas.0.clips.0.hole", "unknown");
	const Cases *all = resolved(s);
	const Fact *holds = fact_named(class_comparison(all, "fastener", "size"), "holds");
	assert_int_equal(holds->state, FACT_WAITING);
	const Use *use = fact_waits(all, holds, NULL);
	assert_string_equal(use->what.field->key, "hole");
	assert_ptr_equal(use->at, all->of[KIND_clip].at[0]);
	assert_null(fact_waits(all, holds, use));
	arena_free(s->arena);
}

static void the_coast_shortens_lives(void **state)
{
	Sample *s = *state;
	open_clean(s);
	set(s, "project.surroundings", "coast");
	const Cases *all = resolved(s);
	assert_close(fact_named(case_number(all, KIND_fastener, 0), "life")->value, 10, 1e-12);
	assert_close(fact_named(case_number(all, KIND_roof_area, 0), "longest_term")->value, 10, 1e-12);
	assert_close(fact_named(case_number(all, KIND_roof_area, 0), "term_surroundings_allowed")->value, 0, 1e-12);
	arena_free(s->arena);
}

static void an_import_is_approved_on_its_condition(void **state)
{
	Sample *s = *state;
	open_clean(s);
	set(s, "roof_areas.0.underlayments.0.item", "underlay-import");
	const Fact *approved = fact_named(case_number(resolved(s), KIND_underlayment, 0), "approved");
	assert_close(approved->value, 1, 1e-12);
	assert_string_equal(approved->note,
		"PA-07, on condition: peel test of the sheet on the deck before the first panel is laid");
	set(s, "warranty.term", "25 yr");
	approved = fact_named(case_number(resolved(s), KIND_underlayment, 0), "approved");
	assert_close(approved->value, 0, 1e-12);
	assert_string_equal(approved->note, "PA-07 reaches to a term of 20 yr");
	arena_free(s->arena);
}

/* PA-08 as the register's reader makes it, its use `any`, for an item that is not in the catalogue. */
static void an_approval_for_any_use_is_for_its_project(void **state)
{
	Sample *s = *state;
	const Registers *kept = s->world.registers;
	Approval row = kept->approvals.row[1];
	assert_string_equal(row.letter.text, "PA-08");
	assert_int_equal(row.use.given.said, SAID_NOT_APPLICABLE);
	row.item.text = "seal-outside";
	Registers registers = { .approvals = { .count = 1, .row = &row } };
	s->world.registers = &registers;
	open_clean(s);
	set(s, AREA "sealants.0.item", "seal-outside");
	const Fact *approved = fact_named(case_number(resolved(s), KIND_sealant, 0), "approved");
	assert_int_equal(approved->state, FACT_KNOWN);
	assert_close(approved->value, 0, 1e-12);
	assert_string_equal(approved->note, "PA-08 is for another project");
	set(s, "project.name", "Lake Court (invented)");
	approved = fact_named(case_number(resolved(s), KIND_sealant, 0), "approved");
	assert_int_equal(approved->state, FACT_KNOWN);
	assert_close(approved->value, 1, 1e-12);
	assert_string_equal(approved->note, "PA-08");
	s->world.registers = kept;
	arena_free(s->arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(the_clean_example),
		cmocka_unit_test(every_role_and_paper_due_is_there),
		cmocka_unit_test(every_fact_of_every_case_ends),
		cmocka_unit_test(up_never_down),
		cmocka_unit_test(a_missing_hole_is_waited_for_by_the_larger_screw),
		cmocka_unit_test(the_coast_shortens_lives),
		cmocka_unit_test(an_import_is_approved_on_its_condition),
		cmocka_unit_test(an_approval_for_any_use_is_for_its_project),
	};
	return cmocka_run_group_tests_name("compute: sample edition", tests, sample_setup, sample_teardown) != 0;
}
