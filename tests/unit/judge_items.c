/* SPDX-License-Identifier: MIT
 * Items: what is missing once, equal findings as one item with its places, followers held back, numbers that stay.
 */
#include "../harness.h"

#include <stdlib.h>

typedef struct {
	World world;
	Arena *arena;
	Node *root;
	const Source *source;
} Bench;

static int set_up(void **state)
{
	Bench *bench = calloc(1, sizeof *bench);
	bench->world = world_make();
	bench->arena = arena_make();
	bench->root = builtin_nodes(bench->arena, "examples/clean.yaml", &bench->source);
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

static Verdict *review(Bench *bench)
{
	return review_nodes(&bench->world, bench->arena, bench->root, bench->source);
}

static void edit(Bench *bench, const char *path, const char *value)
{
	assert_true(edit_nodes(bench->arena, bench->root, path, value));
}

static const Finding *find(const Verdict *verdict, const char *code)
{
	for (uint32_t i = 0; i < verdict->items; i++)
		if (strcmp(verdict->item[i].code, code) == 0)
			return &verdict->item[i];
	return NULL;
}

static uint32_t count(const Verdict *verdict, const char *code)
{
	uint32_t found = 0;
	for (uint32_t i = 0; i < verdict->items; i++)
		found += strcmp(verdict->item[i].code, code) == 0;
	return found;
}

static bool waits(const Finding *item, const char *code)
{
	for (uint32_t i = 0; i < item->waiting; i++)
		if (strcmp(item->waits[i], code) == 0)
			return true;
	return false;
}

/* ---- missing ---- */

static void missing_field_is_named_once(void **state)
{
	Bench *bench = *state;
	edit(bench, "warranty.term", "-");
	Verdict *verdict = review(bench);
	assert_int_equal(verdict->items, 1);
	const Finding *item = &verdict->item[0];
	assert_string_equal(item->code, "MIS-01");
	assert_string_equal(item->finding, "not stated: term asked for");
	assert_string_equal(item->remedy, "write term: 20 yr; write unknown if nobody can say yet");
	assert_string_equal(item->submitted.text, "not stated");
	assert_int_equal(item->action, ACTION_NOT_REVIEWED);
	assert_int_equal(item->fields, 1);
	assert_string_equal(item->field[0], "warranty.term");
	assert_true(waits(item, "ELG-06") && waits(item, "LIF-02") && waits(item, "UND-06"));
	assert_true(verdict->not_yets > 0);
	for (uint32_t i = 0; i < verdict->not_yets; i++)
		assert_ptr_equal(verdict->not_yet[i].item, item);
}

static void absent_record_stands_for_all_inside(void **state)
{
	Bench *bench = *state;
	edit(bench, "warranty", "-");
	Verdict *verdict = review(bench);
	assert_int_equal(verdict->items, 1);
	assert_string_equal(verdict->item[0].code, "MIS-02");
	assert_string_equal(verdict->item[0].field[0], "submittal.warranty");
	assert_true(waits(&verdict->item[0], "ELG-06"));
}

static void absent_panel_is_one_item(void **state)
{
	Bench *bench = *state;
	edit(bench, "roof_areas.0.panel", "-");
	Verdict *verdict = review(bench);
	assert_int_equal(verdict->items, 1);
	assert_string_equal(verdict->item[0].code, "MIS-02");
	assert_string_equal(verdict->item[0].field[0], "roof_area.panel");
	assert_true(waits(&verdict->item[0], "CLP-02"));
}

static void unknown_and_by_others_say_who_answers(void **state)
{
	Bench *bench = *state;
	edit(bench, "roof_areas.0.support.thickness", "unknown");
	edit(bench, "roof_areas.0.penetrations.0.height", "{by others: curb maker}");
	Verdict *verdict = review(bench);
	const Finding *unknown = find(verdict, "MIS-04"), *others = find(verdict, "MIS-05");
	assert_non_null(unknown);
	assert_non_null(others);
	assert_string_equal(unknown->finding, "unknown: thickness");
	assert_string_equal(unknown->answer_by, "contractor");
	assert_string_equal(others->answer_by, "curb maker");
	assert_string_equal(others->submitted.text, "by others: curb maker");
	assert_true(waits(others, "PEN-08"));
}

static void an_example_is_marked_as_one(void **state)
{
	Bench *bench = *state;
	edit(bench, "roof_areas.0.support.thickness", "unknown");
	edit(bench, "roof_areas.0.penetrations.0.upslope_clearance", "-");
	Verdict *verdict = review(bench);
	assert_string_equal(find(verdict, "MIS-04")->remedy,
			    "find it out from the drawings, the data sheet or its maker, then write it, for instance thickness: 22 ga");
	assert_string_equal(find(verdict, "MIS-01")->remedy, "write upslope_clearance: 14 in, or {not applicable: REASON}; "
							     "write unknown if nobody can say yet");
}

/* ---- set aside ---- */

static void what_a_rule_asks_for_is_not_set_aside(void **state)
{
	Bench *bench = *state;
	edit(bench, "roof_areas.0.penetrations.0.upslope_clearance", "{not applicable: the roof drains well}");
	Verdict *verdict = review(bench);
	assert_int_equal(verdict->items, 1);
	const Finding *item = &verdict->item[0];
	assert_string_equal(item->code, "MIS-10");
	assert_int_equal(item->action, ACTION_NOT_REVIEWED);
	assert_string_equal(item->finding, "panel end to diverter, upslope is said not to apply (the roof drains well), "
					   "but PEN-06a asks for it here");
	assert_string_equal(item->remedy, "state it, or show why the rule does not concern this part");
	assert_string_equal(item->submitted.text, "not applicable: the roof drains well");
	assert_string_equal(item->name, "Main roof / RTU-1");
	assert_string_equal(item->field[0], "penetration.upslope_clearance");
	assert_int_equal(item->waiting, 1);
	for (uint32_t i = 0; i < verdict->not_yets; i++)
		assert_ptr_equal(verdict->not_yet[i].item, item);
}

static const char *reason_at(const Verdict *verdict, const char *name, const char *key)
{
	for (uint32_t i = 0; i < verdict->not_applicables; i++)
		if (strcmp(verdict->not_applicable[i].where->name, name) == 0 &&
		    strcmp(verdict->not_applicable[i].field->key, key) == 0)
			return verdict->not_applicable[i].value;
	return "";
}

/* The boot of the clean example has neither a metal nor a panel end; six such answers are in it. `any` of the catalogue is none. */
static void what_is_set_aside_is_listed(void **state)
{
	Bench *bench = *state;
	Verdict *verdict = review(bench);
	assert_int_equal(verdict->items, 0);
	assert_int_equal(verdict->not_applicables, 6);
	assert_string_equal(reason_at(verdict, "Main roof / VP-1", "metal"), "the boot is rubber on a soft base");
	assert_string_equal(reason_at(verdict, "Main roof / clip-a-fixed", "travel"), "it holds the panel at the eave");
}

static void misspelt_key_accounts_for_the_key_meant(void **state)
{
	Bench *bench = *state;
	edit(bench, "warranty.term", "-");
	edit(bench, "warranty.trem", "20 yr");
	Verdict *verdict = review(bench);
	assert_int_equal(verdict->items, 1);
	assert_string_equal(verdict->item[0].code, "FRM-01");
	assert_true(waits(&verdict->item[0], "ELG-06"));
}

static void unreadable_value_is_its_message(void **state)
{
	Bench *bench = *state;
	edit(bench, "warranty.term", "long");
	Verdict *verdict = review(bench);
	assert_int_equal(verdict->items, 1);
	assert_int_equal(verdict->item[0].found_by, FOUND_BY_READER);
	assert_true(waits(&verdict->item[0], "ELG-06"));
}

static void broken_is_given_stands_for_the_field(void **state)
{
	Bench *bench = *state;
	edit(bench, "roof_areas.0.support.existing", "yes");
	Verdict *verdict = review(bench);
	assert_int_equal(count(verdict, "RET-08"), 1);
	for (uint32_t i = 0; i < verdict->items; i++)
		for (uint32_t j = 0; j < verdict->item[i].fields; j++)
			assert_true(strcmp(verdict->item[i].code, "RET-08") == 0 ||
				    strcmp(verdict->item[i].field[j], "support.pull_tests") != 0);
}

static void stage_asks_for_what_is_due(void **state)
{
	Bench *bench = *state;
	edit(bench, "roof_areas.0.panel.supplied_by", "-");
	assert_int_equal(review(bench)->items, 0);
	edit(bench, "stage", "order");
	const Finding *item = find(review(bench), "MIS-01");
	assert_non_null(item);
	assert_string_equal(item->field[0], "panel.supplied_by");
}

/* ---- grouping ---- */

static void copy_area(Bench *bench, unsigned number)
{
	const Source *source;
	Node *other = builtin_nodes(bench->arena, "examples/clean.yaml", &source);
	Node *area = node_at(other, "roof_areas.0");
	char path[40], name[24];
	snprintf(path, sizeof path, "roof_areas.%u", number);
	snprintf(name, sizeof name, "Copy %u", number);
	assert_true(node_set(bench->arena, area, "clips.0.item", "clip-b-float"));
	assert_true(node_set(bench->arena, area, "penetrations.0.height", "4 in"));
	assert_true(node_delete(area, "support.thickness"));
	assert_true(node_delete(area, "support.item"));
	assert_true(node_set(bench->arena, area, "name", arena_printf(bench->arena, "%s", name)));
	assert_true(node_graft(bench->arena, bench->root, path, area));
}

static void copied_areas_add_places_and_no_items(void **state)
{
	Bench *bench = *state;
	copy_area(bench, 0);
	edit(bench, "engineering.0.areas", "[Copy 0]");
	Verdict *one = review(bench);
	uint32_t items = one->items;
	assert_true(items >= 3);
	assert_int_equal(find(one, "CLP-01a")->spots, 1);
	for (unsigned i = 1; i < 5; i++)
		copy_area(bench, i);
	edit(bench, "engineering.0.areas", "[Copy 0, Copy 1, Copy 2, Copy 3, Copy 4]");
	Verdict *five = review(bench);
	assert_int_equal(five->items, items);
	const Finding *clip = find(five, "CLP-01a"), *curb = find(five, "PEN-08"), *support = find(five, "MIS-01");
	assert_int_equal(clip->spots, 5);
	assert_string_equal(clip->spot[4].where->name, "Copy 4 / clip-b-float");
	assert_int_equal(curb->spots, 5);
	assert_string_equal(curb->finding, "RTU-1: the curb is too low");
	assert_int_equal(support->spots, 5);
}

static void other_values_are_other_items(void **state)
{
	Bench *bench = *state;
	edit(bench, "roof_areas.0.penetrations.0.height", "4 in");
	copy_area(bench, 1);
	edit(bench, "roof_areas.1.penetrations.0.height", "5 in");
	Verdict *verdict = review(bench);
	assert_int_equal(count(verdict, "PEN-08"), 2);
}

static void words_of_places_stand_side_by_side(void **state)
{
	Bench *bench = *state;
	edit(bench, "roof_areas.0.penetrations.0.height", "4 in");
	copy_area(bench, 1);
	edit(bench, "roof_areas.1.penetrations.0.name", "RTU-9");
	const Finding *curb = find(review(bench), "PEN-08");
	assert_int_equal(curb->spots, 2);
	assert_string_equal(curb->finding, "RTU-1 and RTU-9: the curb is too low");
	assert_string_equal(curb->submitted.text, "4 in");
	assert_string_equal(curb->limit.text, "at least 6 in");
}

/* ---- after ---- */

static void follower_waits_for_its_cause(void **state)
{
	Bench *bench = *state;
	edit(bench, "roof_areas.0.clips.0.item", "clip-b-float");
	edit(bench, "roof_areas.0.clips.0.made_for", "aluminum");
	Verdict *verdict = review(bench);
	const Finding *cause = find(verdict, "CLP-02");
	assert_non_null(cause);
	assert_null(find(verdict, "CLP-01a"));
	bool found = false;
	for (uint32_t i = 0; i < verdict->not_yets; i++)
		if (strcmp(verdict->not_yet[i].rule->code, "CLP-01a") == 0) {
			assert_string_equal(verdict->not_yet[i].waits_for, "CLP-02");
			assert_ptr_equal(verdict->not_yet[i].item, cause);
			found = true;
		}
	assert_true(found);
	assert_true(verdict->tally.held_back > 0);
	edit(bench, "roof_areas.0.clips.0.made_for", "steel");
	assert_non_null(find(review(bench), "CLP-01a"));
}

/* ---- numbers ---- */

static Node *keys_turned(Node *map)
{
	Node *turned = NULL;
	for (Node *key = map->first, *next; key != NULL; key = next) {
		next = key->next;
		key->next = turned;
		turned = key;
	}
	map->first = turned;
	return map;
}

static void reordered_keys_keep_the_numbers(void **state)
{
	Bench *bench = *state;
	edit(bench, "roof_areas.0.clips.0.item", "clip-b-float");
	edit(bench, "roof_areas.0.penetrations.0.height", "4 in");
	edit(bench, "roof_areas.0.penetrations.0.lap", "over-over");
	edit(bench, "warranty.prorated", "-");
	edit(bench, "roof_areas.0.underlayments.0.temperature_rating", "200 F");
	Verdict *before = review(bench);
	assert_true(before->items >= 5);
	keys_turned(bench->root);
	keys_turned(node_at(bench->root, "roof_areas.0"));
	keys_turned(node_at(bench->root, "roof_areas.0.penetrations.0"));
	Verdict *after = review(bench);
	assert_int_equal(after->items, before->items);
	for (uint32_t i = 0; i < before->items; i++) {
		assert_string_equal(after->item[i].code, before->item[i].code);
		assert_string_equal(after->item[i].finding, before->item[i].finding);
		assert_int_equal(after->item[i].item, i + 1);
		assert_int_equal(after->item[i].round, 1);
	}
	take_fingerprints(before, bench->arena);
	take_fingerprints(after, bench->arena);
	for (uint32_t i = 0; i < before->items; i++)
		assert_true(before->item[i].spot[0].fingerprint != 0 &&
			    before->item[i].spot[0].fingerprint == after->item[i].spot[0].fingerprint);
}

/* What is due when the roof is finished holds nothing back before, and is asked for once then. */
static void lists_due_later_leave_no_rule_open(void **state)
{
	Bench *bench = *state;
	const Verdict *verdict = review(bench);
	assert_int_equal(verdict->items, 0);
	assert_int_equal(verdict->tally.not_judged, 0);
	edit(bench, "stage", "close-out");
	verdict = review(bench);
	assert_int_equal(count(verdict, "MIS-03"), 5); /* inspections, photographs, punch list, meetings, what was found installed */
	assert_true(waits(find(verdict, "MIS-03"), "DOC-14d"));
	assert_true(verdict->tally.not_judged > 0);
}

static void bid_numbers_nothing(void **state)
{
	Bench *bench = *state;
	edit(bench, "stage", "bid");
	edit(bench, "roof_areas.0.panel.shape", "curved");
	Verdict *verdict = review(bench);
	assert_true(verdict->items > 0);
	for (uint32_t i = 0; i < verdict->items; i++)
		assert_true(verdict->item[i].round == 0 && verdict->item[i].item == 0);
}

/* ---- digits ---- */

static void values_that_differ_look_different(void **state)
{
	Bench *bench = *state;
	edit(bench, "roof_areas.0.penetrations.0.height", "5.9999 in");
	const Finding *item = find(review(bench), "PEN-08");
	assert_non_null(item);
	assert_string_equal(item->submitted.text, "5.9999 in");
	assert_string_equal(item->limit.text, "at least 6 in");
	edit(bench, "roof_areas.0.penetrations.0.height", "150 mm");
	item = find(review(bench), "PEN-08");
	assert_non_null(item);
	assert_string_equal(item->submitted.text, "150 mm (5.91 in)");
	edit(bench, "roof_areas.0.penetrations.0.height", "152.39999 mm");
	item = find(review(bench), "PEN-08");
	assert_non_null(item);
	assert_string_equal(item->submitted.text, "152.39999 mm (5.9999996 in)");
}

static void every_item_says_who_says_so(void **state)
{
	Bench *bench = *state;
	copy_area(bench, 1);
	edit(bench, "warranty.term", "30 yr");
	edit(bench, "roof_areas.0.sealants", "none");
	Verdict *verdict = review(bench);
	assert_true(verdict->items > 5);
	for (uint32_t i = 0; i < verdict->items; i++) {
		const Finding *item = &verdict->item[i];
		assert_true(item->basis != NULL && item->basis[0] != '\0');
		assert_true(item->answer_by != NULL && item->answer_by[0] != '\0');
		assert_true(item->finding[0] != '\0' && strchr(item->finding, '{') == NULL);
		const char *brace = strchr(item->remedy, '{');
		assert_true(item->remedy[0] != '\0' && (brace == NULL || strncmp(brace, "{not applicable: REASON}", 24) == 0));
		assert_true(item->spots > 0);
	}
}

/* ---- what it rests on, and its words ---- */

static void an_item_cites_the_paper_behind_it(void **state)
{
	Bench *bench = *state;
	edit(bench, "roof_areas.0.clips.0.item", "clip-b-float");
	const Finding *item = find(review(bench), "CLP-01a");
	assert_string_equal(item->cites, "tested-210, UL 580; report-33, ASTM E1592");
	assert_string_equal(item->finding, "clip-b-float is not the tested clip-a-float of tested-210 and report-33");
	edit(bench, "roof_areas.0.clips.0.item", "clip-a-float");
	edit(bench, "specification.requirements.8.exactly", "open-end");
	assert_string_equal(find(review(bench), "DOC-05a")->cites, "section 07 41 13, paragraph 2.8.A");
	edit(bench, "documents.4.kind", "brochure");
	item = find(review(bench), "DOC-01");
	assert_string_equal(item->basis, "ufgs-01330");
	assert_int_equal(item->known_by, KNOWN_READ);
	assert_null(item->cites);
}

static void what_is_allowed_reads_like_a_sentence(void **state)
{
	Bench *bench = *state;
	Approval approval = bench->world.registers->approvals.row[0];
	Registers registers = *bench->world.registers;
	approval.item.text = "closure-special";
	approval.use.given.said = SAID_NOT_APPLICABLE;
	approval.greatest_term_yr.value = 60;
	registers.approvals.row = &approval;
	registers.approvals.count = 1;
	bench->world.registers = &registers;
	edit(bench, "roof_areas.0.closures.0.item", "closure-special");
	const Finding *item = find(review(bench), "LST-17");
	assert_non_null(item);
	assert_string_equal(item->limit.text, "not approved on a condition");
}

#define TEST(function) cmocka_unit_test_setup_teardown(function, set_up, tear_down)

int main(void)
{
	const struct CMUnitTest tests[] = {
		TEST(missing_field_is_named_once),
		TEST(absent_record_stands_for_all_inside),
		TEST(absent_panel_is_one_item),
		TEST(unknown_and_by_others_say_who_answers),
		TEST(an_example_is_marked_as_one),
		TEST(what_a_rule_asks_for_is_not_set_aside),
		TEST(what_is_set_aside_is_listed),
		TEST(misspelt_key_accounts_for_the_key_meant),
		TEST(unreadable_value_is_its_message),
		TEST(broken_is_given_stands_for_the_field),
		TEST(stage_asks_for_what_is_due),
		TEST(copied_areas_add_places_and_no_items),
		TEST(other_values_are_other_items),
		TEST(words_of_places_stand_side_by_side),
		TEST(follower_waits_for_its_cause),
		TEST(reordered_keys_keep_the_numbers),
		TEST(lists_due_later_leave_no_rule_open),
		TEST(bid_numbers_nothing),
		TEST(values_that_differ_look_different),
		TEST(every_item_says_who_says_so),
		TEST(an_item_cites_the_paper_behind_it),
		TEST(what_is_allowed_reads_like_a_sentence),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
