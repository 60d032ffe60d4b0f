/* SPDX-License-Identifier: MIT
 * Outcome: the recommended action for each worst action, none in a self-check, the order line, what is said of each part, the
 * reviewer's own items and dispositions, and what stays unverified.
 */
#include "../harness.h"

#include <stdlib.h>

typedef struct {
	World world;
	Arena *arena;
	Node *root;
	const Source *source;
	Review review;
	Registers registers;
	Approval approval[8];
} Bench;

static Given said(const char *typed)
{
	return (Given){ .place = { .line = 1, .column = 1, .source = SOURCE_REVIEWER }, .typed = typed, .said = SAID_VALUE };
}

static Text text(const char *value)
{
	return (Text){ said(value), value };
}

static int set_up(void **state)
{
	Bench *bench = calloc(1, sizeof *bench);
	bench->world = world_make();
	bench->arena = arena_make();
	bench->root = builtin_nodes(bench->arena, "examples/clean.yaml", &bench->source);
	bench->registers = *bench->world.registers;
	bench->review = (Review){ .given = said(NULL), .submittal = text("MC-1042"), .round_one = { said("1"), 1 } };
	bench->review.received = (Date){ said("2026-04-15"), 20558 };
	bench->review.papers.list.given.said = bench->review.items.list.given.said = bench->review.own.list.given.said =
		SAID_NONE;
	*state = bench;
	return 0;
}

static int tear_down(void **state)
{
	Bench *bench = *state;
	arena_free(bench->arena);
	arena_free(bench->world.run);
	free(bench);
	return 0;
}

static void edit(Bench *bench, const char *path, const char *value)
{
	assert_true(edit_nodes(bench->arena, bench->root, path, value));
}

static Verdict *judged(Bench *bench, bool by_reviewer)
{
	Complaints complaints = { .arena = bench->arena };
	Inputs inputs = { .criteria = bench->world.criteria,
			  .reference = bench->world.reference,
			  .registers = &bench->registers,
			  .as_of = INT32_MIN };
	inputs.submittal = read_submittal(bench->arena, bench->root, bench->source, inputs.reference, &complaints);
	inputs.review = by_reviewer ? &bench->review : NULL;
	return judge(bench->arena, resolve(bench->arena, &inputs), &complaints, bench->source);
}

static const Finding *find(const Verdict *verdict, const char *code)
{
	for (uint32_t i = 0; i < verdict->items; i++)
		if (strcmp(verdict->item[i].code, code) == 0)
			return &verdict->item[i];
	return NULL;
}

static const PartLine *part(const Verdict *verdict, const char *name)
{
	for (uint32_t i = 0; i < verdict->parts; i++)
		if (strcmp(verdict->part[i].part->name, name) == 0)
			return &verdict->part[i];
	fail_msg("no part %s", name);
	return NULL;
}

/* ---- recommended action ---- */

static void each_worst_action_has_its_recommendation(void **state)
{
	static const struct {
		const char *path, *value, *code, *recommended;
	} cases[] = {
		{ "see", "transmittal 5", NULL, "No exceptions taken" },
		{ "project.use", "swimming pool", "ELG-01", "Rejected" },
		{ "roof_areas.0.panel.metal", "aluminum", "LST-04", "Rejected" },
		{ "roof_areas.0.penetrations.0.lap", "over-over", "PEN-05", "Revise and resubmit" },
		{ "roof_areas.0.penetrations.0.height", "4 in", "PEN-08", "Revise and resubmit" },
		{ "warranty.cover_limit", "100,000 dollars", "WTY-02a", "Revise and resubmit" },
		{ "roof_areas.0.panel.shape", "curved", "ELG-08", "Revise and resubmit" },
		{ "warranty.term", "-", "MIS-01", "Not reviewed" },
	};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		Bench *bench = *state;
		bench->root = builtin_nodes(bench->arena, "examples/clean.yaml", &bench->source);
		edit(bench, cases[i].path, cases[i].value);
		const Verdict *verdict = judged(bench, true);
		assert_false(verdict->self_check);
		if (cases[i].code != NULL)
			assert_non_null(find(verdict, cases[i].code));
		assert_string_equal(verdict->recommended_action, cases[i].recommended);
		assert_null(strstr(verdict->recommended_action, "pprove"));
		assert_null(judged(bench, false)->recommended_action);
		assert_true(judged(bench, false)->self_check);
	}
}

static void felt_without_slip_sheet_is_corrected(void **state)
{
	Bench *bench = *state;
	edit(bench, "roof_areas.0.underlayments.0",
	     "{item: underlay-felt-30, supplied_by: roofing supplier, where: whole roof, slip_sheet: no}");
	const Verdict *verdict = judged(bench, true);
	assert_non_null(find(verdict, "UND-08"));
	assert_true(verdict->by_action[ACTION_CORRECTIONS] > 0);
}

/* ---- ordering ---- */

static void approve(Bench *bench, const char *item, const char *project)
{
	bench->approval[0] = (Approval){
		.given = said(NULL), .letter = text("PA-99"), .item = text(item), .use = text("any"), .project = text(project)
	};
	bench->approval[0].issued = (Date){ said("2026-04-01"), 20544 };
	bench->approval[0].expires = (Date){ said("2026-12-31"), 20818 };
	bench->approval[0].greatest_term_yr = (Number){ said("20 yr"), 20 };
	bench->registers.approvals.row = bench->approval;
	bench->registers.approvals.count = 1;
}

static void make_order_stage(Bench *bench)
{
	bench->root = builtin_nodes(bench->arena, "examples/clean.yaml", &bench->source);
	edit(bench, "stage", "order");
	edit(bench, "documents.8", "{kind: approval letter, number: PA-99, date: 2026-04-01}");
	edit(bench, "documents.9", "{kind: purchase order, number: PO-7, date: 2026-04-10}");
	edit(bench, "dates.1", "{event: approval, date: 2026-04-01}");
	approve(bench, "submittal MC-1042", "Marrow Creek Depot");
}

static void ordering_line_needs_every_condition(void **state)
{
	Bench *bench = *state;
	const Verdict *verdict = judged(bench, false);
	assert_false(verdict->may_order);
	assert_memory_equal(verdict->order_line, "Do not order: ", 14);
	make_order_stage(bench);
	verdict = judged(bench, false);
	assert_int_equal(verdict->by_action[ACTION_NOT_REVIEWED], 0);
	assert_true(verdict->may_order);
	assert_memory_equal(verdict->order_line, "nothing found here stands in the way of ordering", 48);
	assert_non_null(strstr(verdict->order_line, "PA-99"));
}

static void one_changed_condition_takes_the_line_away(void **state)
{
	Bench *bench = *state;
	make_order_stage(bench);
	bench->approval[0].expires.day = 20500;
	assert_non_null(strstr(judged(bench, false)->order_line, "approval PA-99 ended on 2026-02-16"));
	make_order_stage(bench);
	bench->approval[0].greatest_term_yr.value = 10;
	assert_non_null(strstr(judged(bench, false)->order_line, "approval PA-99 does not reach to a term of 20 yr"));
	make_order_stage(bench);
	bench->approval[0].project = text("Other Depot");
	assert_non_null(strstr(judged(bench, false)->order_line, "approval PA-99 is for another project"));
	make_order_stage(bench);
	bench->approval[0].item = text("submittal MC-1043");
	assert_non_null(strstr(judged(bench, false)->order_line, "no approval of this submittal is in the register"));
	make_order_stage(bench);
	bench->approval[0].issued.day = 20600;
	assert_non_null(strstr(judged(bench, false)->order_line, "approval PA-99 is not issued yet"));
	make_order_stage(bench);
	edit(bench, "roof_areas.0.penetrations.0.height", "4 in");
	assert_non_null(strstr(judged(bench, false)->order_line, "1 item stands open"));
	edit(bench, "roof_areas.0.penetrations.0.height", "8 in");
	assert_true(judged(bench, false)->may_order);
	edit(bench, "engineering.0.revision", "unknown"); /* one NOT REVIEWED item and nothing worse */
	const Verdict *verdict = judged(bench, false);
	assert_int_equal(verdict->by_action[ACTION_NOT_REVIEWED], 1);
	assert_false(verdict->may_order);
	assert_non_null(strstr(verdict->order_line, "1 item stands open"));
	edit(bench, "engineering.0.revision", "1");
	assert_true(judged(bench, false)->may_order);
	edit(bench, "stage", "application");
	assert_non_null(strstr(judged(bench, false)->order_line, "not at stage order"));
}

static void condition_of_the_approval_stands_beside_the_line(void **state)
{
	Bench *bench = *state;
	make_order_stage(bench);
	assert_null(judged(bench, false)->order_condition);
	bench->approval[0].condition = text("peel test before the first panel");
	const Verdict *verdict = judged(bench, false);
	assert_true(verdict->may_order);
	assert_string_equal(verdict->order_condition, "on condition: peel test before the first panel");
	bench->approval[0].item = text("MC-1042");
	bench->approval[0].project = text("all");
	assert_true(judged(bench, false)->may_order);
	/* One without a condition goes before. */
	bench->approval[1] = bench->approval[0];
	bench->approval[1].condition = (Text){ 0 };
	bench->registers.approvals.count = 2;
	assert_null(judged(bench, false)->order_condition);
	bench->approval[1].expires.day = 20500;
	assert_non_null(judged(bench, false)->order_condition);
}

/* ---- clearance ---- */

static void wrong_underlayment_leaves_the_coil_free(void **state)
{
	Bench *bench = *state;
	edit(bench, "roof_areas.0.underlayments.0.temperature_rating", "200 F");
	const Verdict *verdict = judged(bench, false);
	assert_int_equal(part(verdict, "Main roof / underlay-high-temp")->clearance, PART_NOT_CLEARED);
	assert_int_equal(part(verdict, "Main roof / panel-a-16")->clearance, PART_CLEAR);
	assert_int_equal(part(verdict, "Main roof / clip-a-float")->clearance, PART_CLEAR);
}

static void open_support_holds_clips_and_screws(void **state)
{
	Bench *bench = *state;
	edit(bench, "roof_areas.0.support.thickness", "unknown");
	const Verdict *verdict = judged(bench, false);
	const Finding *item = find(verdict, "MIS-04");
	assert_int_equal(part(verdict, "Main roof / deck-22")->clearance, PART_NOT_CLEARED);
	assert_int_equal(part(verdict, "Main roof / clip-a-float")->clearance, PART_DEPENDS);
	assert_ptr_equal(part(verdict, "Main roof / clip-a-float")->item, item);
	assert_int_equal(part(verdict, "Main roof / screw-12x1")->clearance, PART_DEPENDS);
	assert_int_equal(part(verdict, "Main roof / rivet-stainless")->clearance, PART_CLEAR);
}

static void open_term_holds_everything(void **state)
{
	Bench *bench = *state;
	edit(bench, "warranty.term", "-");
	const Verdict *verdict = judged(bench, false);
	assert_true(verdict->parts >= 20);
	for (uint32_t i = 0; i < verdict->parts; i++)
		assert_int_equal(verdict->part[i].clearance, PART_DEPENDS);
}

static void missing_owner_holds_nothing(void **state)
{
	Bench *bench = *state;
	edit(bench, "parties.designer", "-");
	const Verdict *verdict = judged(bench, false);
	assert_int_equal(verdict->items, 1);
	for (uint32_t i = 0; i < verdict->parts; i++)
		assert_int_equal(verdict->part[i].clearance, PART_CLEAR);
}

static void seller_of_the_panel_holds_the_panel_alone(void **state)
{
	Bench *bench = *state;
	edit(bench, "roof_areas.0.panel.supplied_by", "local yard");
	edit(bench, "specification.quality.single_source", "no");
	const Verdict *verdict = judged(bench, false);
	assert_non_null(find(verdict, "SUP-01a"));
	assert_int_equal(part(verdict, "Main roof / panel-a-16")->clearance, PART_NOT_CLEARED);
	assert_int_equal(part(verdict, "Main roof / clip-a-float")->clearance, PART_CLEAR);
}

/* ---- borrowed ---- */

static void capacity_of_another_construction_is_never_met(void **state)
{
	Bench *bench = *state;
	edit(bench, "roof_areas.0.clips.0.item", "clip-b-float");
	const Verdict *verdict = judged(bench, false);
	const Finding *clip = find(verdict, "CLP-01a");
	assert_non_null(clip);
	bool class_waits = false, spacing_waits = false;
	for (uint32_t i = 0; i < verdict->not_yets; i++) {
		bool on_clip = verdict->not_yet[i].item == clip;
		class_waits |= on_clip && strcmp(verdict->not_yet[i].rule->code, "ENG-11") == 0;
		spacing_waits |= on_clip && strcmp(verdict->not_yet[i].rule->code, "LST-09") == 0;
	}
	assert_true(class_waits);
	assert_true(spacing_waits);
}

/* ---- the reviewer ---- */

static OwnItem own_item(const char *action, const char *where)
{
	return (OwnItem){ .given = said(NULL),
			  .action = text(action),
			  .where = text(where),
			  .finding = text("valley shown without cleat"),
			  .basis = text("common practice, no published source"),
			  .remedy = text("show the cleat"),
			  .answer_by = text("contractor") };
}

static void add_own(Bench *bench, OwnItem *own, uint32_t count)
{
	bench->review.own.of.row = own;
	bench->review.own.of.count = count;
	bench->review.own.list.given.said = SAID_VALUE;
}

static void own_items_share_the_numbering_and_come_last(void **state)
{
	Bench *bench = *state;
	OwnItem own[] = { own_item("REVISE AND RESUBMIT", "A5, detail 3"), own_item("HOLD", "A6") };
	own[1].basis = text("ufgs-07412");
	add_own(bench, own, 2);
	edit(bench, "roof_areas.0.penetrations.0.height", "4 in");
	const Verdict *verdict = judged(bench, true);
	assert_int_equal(verdict->items, 3);
	const Finding *last = &verdict->item[2], *before = &verdict->item[1];
	assert_string_equal(before->code, "OWN");
	assert_string_equal(before->finding, "valley shown without cleat");
	assert_int_equal(before->action, ACTION_REVISE);
	assert_int_equal(before->item, 2);
	assert_int_equal(last->action, ACTION_HOLD);
	assert_int_equal(last->known_by, KNOWN_READ);
	assert_string_equal(verdict->recommended_action, "Revise and resubmit");
}

static Clearance cleared(Bench *bench, const char *name)
{
	return part(judged(bench, true), name)->clearance;
}

static void own_items_hold_what_they_name(void **state)
{
	Bench *bench = *state;
	OwnItem own[] = { own_item("MAKE CORRECTIONS NOTED", "Main roof / rivet-stainless") };
	add_own(bench, own, 1);
	assert_int_equal(cleared(bench, "Main roof / rivet-stainless"), PART_NOT_CLEARED);
	assert_int_equal(cleared(bench, "Main roof / clip-a-float"), PART_CLEAR);
	own[0].where = text("Main roof, north eave");
	assert_int_equal(cleared(bench, "Main roof / rivet-stainless"), PART_DEPENDS);
	assert_int_equal(cleared(bench, "Main roof / clip-a-float"), PART_DEPENDS);
	own[0].where = text("sheet A9"); /* nobody can tell */
	assert_int_equal(cleared(bench, "Main roof / clip-a-float"), PART_DEPENDS);
	own[0].action = text("ADVISORY");
	assert_int_equal(cleared(bench, "Main roof / clip-a-float"), PART_CLEAR);
}

static void corrections_noted_hold_the_part_they_name(void **state)
{
	Bench *bench = *state;
	edit(bench, "roof_areas.0.underlayments.0",
	     "{item: underlay-felt-30, supplied_by: roofing supplier, where: whole roof, slip_sheet: no}");
	const Verdict *verdict = judged(bench, false);
	assert_int_equal(find(verdict, "UND-08")->action, ACTION_CORRECTIONS);
	assert_int_equal(part(verdict, "Main roof / underlay-felt-30")->clearance, PART_NOT_CLEARED);
}

static void dispose(Bench *bench, Disposition *row, const char *disposition, const char *reason)
{
	row->given = said(NULL);
	row->number = text("1.01");
	row->disposition = (Word){ said(disposition), disposition, 0 };
	row->reason = reason != NULL ? text(reason) : (Text){ 0 };
	bench->review.items.of.row = row;
	bench->review.items.of.count = 1;
	bench->review.items.list.given.said = SAID_VALUE;
}

static void dispositions_close_with_a_reason_only(void **state)
{
	Bench *bench = *state;
	Disposition row;
	edit(bench, "roof_areas.0.penetrations.0.height", "4 in");
	dispose(bench, &row, "withdrawn", NULL);
	const Finding *curb = find(judged(bench, true), "PEN-08");
	assert_int_equal(curb->item, 1);
	assert_int_equal(counted_action(curb), ACTION_REVISE);
	dispose(bench, &row, "withdrawn", "measured on site");
	const Verdict *verdict = judged(bench, true);
	curb = find(verdict, "PEN-08");
	assert_int_equal(curb->spot[0].state, ITEM_CLOSED);
	assert_int_equal(counted_action(curb), -1);
	assert_int_equal(verdict->by_action[ACTION_REVISE], 0);
	assert_string_equal(curb->disposition, "withdrawn: measured on site");
	assert_null(strstr(curb->remedy, "measured on site"));
	dispose(bench, &row, "closed as noted", "measured on site");
	verdict = judged(bench, true);
	assert_int_equal(counted_action(find(verdict, "PEN-08")), ACTION_CORRECTIONS);
	assert_int_equal(part(verdict, "Main roof / RTU-1")->clearance, PART_NOT_CLEARED);
}

static void an_answer_changes_no_action(void **state)
{
	static const char *const words[] = { "answered", "late comment" };
	Bench *bench = *state;
	Disposition row;
	edit(bench, "roof_areas.0.penetrations.0.height", "4 in");
	for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
		dispose(bench, &row, words[i], "letter of 2026-04-20");
		const Verdict *verdict = judged(bench, true);
		assert_int_equal(counted_action(find(verdict, "PEN-08")), ACTION_REVISE);
		assert_int_equal(verdict->by_action[ACTION_REVISE], 1);
		assert_string_equal(verdict->recommended_action, "Revise and resubmit");
	}
}

static Complaints faults_of(Bench *bench, const Verdict *verdict, bool accepted)
{
	Complaints faults = { .arena = bench->arena };
	assert_int_equal(check_reviewed(verdict, &faults), accepted);
	return faults;
}

static void what_may_not_be_waived_stays(void **state)
{
	static const char *const words[] = { "closed", "withdrawn", "superseded", "closed as noted", "deferred to field" };
	Bench *bench = *state;
	Disposition row;
	edit(bench, "roof_areas.0.clips.0.item", "clip-b-float");
	for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
		dispose(bench, &row, words[i], "the owner does not mind");
		const Verdict *verdict = judged(bench, true);
		assert_string_equal(verdict->item[0].code, "CLP-01a");
		assert_int_equal(counted_action(&verdict->item[0]), ACTION_REJECTED);
		Complaints faults = faults_of(bench, verdict, false);
		assert_int_equal(faults.count, 1);
		assert_string_equal(complaint_text(&faults.at[0], message_of(faults.at[0].id)->finding, bench->arena),
				    "CLP-01a may not be waived: cure it or have the package withdrawn");
	}
	dispose(bench, &row, "answered", "the owner does not mind");
	assert_int_equal(faults_of(bench, judged(bench, true), true).count, 0);
}

static void file_of_another_submittal_closes_nothing(void **state)
{
	Bench *bench = *state;
	Disposition row;
	edit(bench, "roof_areas.0.penetrations.0.height", "4 in");
	dispose(bench, &row, "closed", "seen");
	bench->review.submittal = text("MC-9999");
	const Verdict *verdict = judged(bench, true);
	assert_int_equal(verdict->items, 1);
	assert_int_equal(counted_action(&verdict->item[0]), ACTION_REVISE);
	Complaints faults = faults_of(bench, verdict, false);
	assert_int_equal(faults.at[0].id, MESSAGE_REV_01);
	assert_string_equal(complaint_text(&faults.at[0], message_of(MESSAGE_REV_01)->finding, bench->arena),
			    "the reviewer's file is for MC-9999 round 1, not for MC-1042 round 1");
}

static bool is_unverified(const Verdict *verdict, const char *what)
{
	for (uint32_t i = 0; i < verdict->unverifieds; i++)
		if (strstr(verdict->unverified[i].what, what) != NULL)
			return true;
	return false;
}

static void papers_seen_are_no_longer_unverified(void **state)
{
	Bench *bench = *state;
	const Verdict *alone = judged(bench, false);
	assert_true(is_unverified(alone, "seal and date of letter EL-88"));
	assert_true(is_unverified(alone, "the day at which papers are judged, 2026-04-14"));
	PaperSeen seen[] = { { .given = said(NULL), .number = text("EL-88"), .seen = { said("yes"), true } } };
	bench->review.papers.of.row = seen;
	bench->review.papers.of.count = 1;
	bench->review.papers.list.given.said = SAID_VALUE;
	const Verdict *reviewed = judged(bench, true);
	assert_false(is_unverified(reviewed, "seal and date of letter EL-88"));
	assert_false(is_unverified(reviewed, "the day at which"));
	assert_false(is_unverified(reviewed, "certificate IC-204"));
	edit(bench, "parties.applicant.certificate", "IC-999");
	assert_true(is_unverified(judged(bench, true), "installer's certificate IC-999"));
}

#define TEST(function) cmocka_unit_test_setup_teardown(function, set_up, tear_down)

int main(void)
{
	const struct CMUnitTest tests[] = {
		TEST(each_worst_action_has_its_recommendation),
		TEST(felt_without_slip_sheet_is_corrected),
		TEST(ordering_line_needs_every_condition),
		TEST(one_changed_condition_takes_the_line_away),
		TEST(wrong_underlayment_leaves_the_coil_free),
		TEST(open_support_holds_clips_and_screws),
		TEST(open_term_holds_everything),
		TEST(missing_owner_holds_nothing),
		TEST(seller_of_the_panel_holds_the_panel_alone),
		TEST(capacity_of_another_construction_is_never_met),
		TEST(own_items_share_the_numbering_and_come_last),
		TEST(condition_of_the_approval_stands_beside_the_line),
		TEST(own_items_hold_what_they_name),
		TEST(corrections_noted_hold_the_part_they_name),
		TEST(dispositions_close_with_a_reason_only),
		TEST(an_answer_changes_no_action),
		TEST(what_may_not_be_waived_stays),
		TEST(file_of_another_submittal_closes_nothing),
		TEST(papers_seen_are_no_longer_unverified),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
