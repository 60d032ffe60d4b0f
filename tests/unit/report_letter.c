/* SPDX-License-Identifier: MIT
 * The letter: numbers beside the counts, what was closed, what is cited, what was set aside, what is not due yet.
 */
#include "sample_verdict.h"

#include "report.h"

static const char *letter(const Verdict *verdict, Arena *arena)
{
	const ReportFormat *format = report_format("text");
	Out *out = out_make(arena, format->escape);
	format->write(out, verdict, arena);
	return out_text(out, NULL);
}

static void says(const char *text, const char *wanted)
{
	if (strstr(text, wanted) == NULL)
		fail_msg("no \"%s\" in:\n%s", wanted, text);
}

static void is_silent_on(const char *text, const char *unwanted)
{
	if (strstr(text, unwanted) != NULL)
		fail_msg("\"%s\" in:\n%s", unwanted, text);
}

/* As many items as asked for, each of its own action and state. */
static Verdict *with_items(Arena *arena, uint32_t count)
{
	Verdict *verdict = sample_verdict(arena, "words");
	Finding first = verdict->item[0];
	verdict->item = TAKE(arena, Finding, count);
	verdict->items = count;
	for (uint32_t i = 0; i < count; i++) {
		verdict->item[i] = first;
		verdict->item[i].item = (uint16_t)(i + 1);
		verdict->item[i].spot = TAKE(arena, Spot, 1);
		verdict->item[i].spot[0] = first.spot[0];
		verdict->item[i].spots = 1;
	}
	verdict->by_action[ACTION_REJECTED] = count;
	return verdict;
}

static void head_names_the_worst_first(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	Verdict *verdict = with_items(arena, 4);
	verdict->item[1].action = ACTION_REVISE;
	verdict->by_action[ACTION_REJECTED] = 3;
	verdict->by_action[ACTION_REVISE] = 1;
	says(letter(verdict, arena), "4 items stand between this package and approval: 3 REJECTED (1.01, 1.03, 1.04), 1 REVISE AND\n"
		"RESUBMIT (1.02).\n");
	verdict = with_items(arena, 12);
	says(letter(verdict, arena), "1.11, 1.12).\n");
	verdict = with_items(arena, 15);
	says(letter(verdict, arena), "and 3 more).\n");
	is_silent_on(letter(verdict, arena), "1.13, ");
	for (uint32_t i = 0; i < verdict->items; i++)
		verdict->item[i].round = 0; /* as at stage bid */
	says(letter(verdict, arena), "approval: 15 REJECTED.\n");
	arena_free(arena);
}

static void closed_items_ask_nobody(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	Verdict *verdict = with_items(arena, 2);
	verdict->item[0].spot[0].state = ITEM_CLOSED;
	verdict->item[0].disposition = "closed: seen on site";
	verdict->item[1].spot[0].state = ITEM_CONDITION;
	verdict->by_action[ACTION_REJECTED] = 0;
	verdict->by_action[ACTION_CORRECTIONS] = 1;
	const char *text = letter(verdict, arena);
	says(text, "\n1.01  CLOSED  words");
	says(text, "\n1.02  MAKE CORRECTIONS NOTED  words");
	says(text, "\n      Reviewer   closed: seen on site\n");
	says(text, "To answer     words 1\n");
	says(text, "Notes to follow: 1 MAKE CORRECTIONS NOTED (1.02).\n");
	is_silent_on(text, "REJECTED");
	arena_free(arena);
}

static void basis_begins_with_what_is_cited(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	Verdict *verdict = with_items(arena, 1);
	verdict->item[0].cites = "tested-210, UL 580";
	says(letter(verdict, arena), "\n      Basis      listing: tested-210, UL 580; words; figures: second-hand\n");
	arena_free(arena);
}

static void counts_are_read_as_counts(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	Verdict *verdict = with_items(arena, 1);
	Rule rule = { .code = "THM-02", .for_each = KIND_roof_area };
	rule.is.left = (Operand){ .from = FROM_FACT, .gives = VALUE_NUMBER, .fact = FACT_roof_area_fixed_lines };
	verdict->item[0].rule = &rule;
	verdict->item[0].submitted = (Side){ "2", 2, true, "" };
	says(letter(verdict, arena), "\n      Submitted  2 fixed lines\n");
	verdict->item[0].submitted = (Side){ "1", 1, true, "" };
	says(letter(verdict, arena), "\n      Submitted  1 (number of fixed lines)\n");
	arena_free(arena);
}

static void foot_lists_what_is_set_aside_and_not_due(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	Verdict *verdict = with_items(arena, 1);
	Assumption aside = { verdict->part[0].part, &Clip_record.field[0], "no clip here" };
	verdict->not_applicable = &aside;
	verdict->not_applicables = 1;
	verdict->order_condition = "on condition: peel test";
	const Rule rules[] = { { .code = "SUP-01", .for_each = KIND_clip }, { .code = "SUP-02", .for_each = KIND_clip } };
	const NotYet later[] = { { &rules[0], NULL, "panel.supplied_by", NULL }, { &rules[1], NULL, "clip.supplied_by", NULL },
		{ &rules[1], NULL, "panel.supplied_by", NULL } };
	verdict->not_yet = later;
	verdict->not_yets = 3;
	const char *text = letter(verdict, arena);
	says(text, "\nSAID NOT TO APPLY\n  Catalogue item, or other: no clip here (words)\n");
	says(text, "\nORDERING\n  words\n  on condition: peel test\n");
	says(text, "  until more is stated than is due at this stage (clip.supplied_by, panel.supplied_by): SUP-01,\n    SUP-02\n");
	arena_free(arena);
}

static void before_a_bid_items_stand_in_three_groups(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	Verdict *verdict = with_items(arena, 3);
	static const char *const finding[] = { "asked first", "priced", "refused" };
	static const Action action[] = { ACTION_HOLD, ACTION_REVISE, ACTION_NOT_ELIGIBLE };
	verdict->stage = STAGE_bid;
	for (uint32_t i = 0; i < 3; i++) {
		verdict->item[i].action = action[i];
		verdict->item[i].finding = finding[i];
		verdict->item[i].answer_by = "contractor";
		verdict->item[i].round = 0;
	}
	const char *text = letter(verdict, arena), *at = text;
	static const char *const order[] = { "\nCANNOT BE MET\n", "refused", "\nWILL COST MONEY\n", "priced", "\nASK BEFORE BID\n",
		"asked first" };
	for (size_t i = 0; i < sizeof order / sizeof *order; i++) {
		at = strstr(at, order[i]);
		if (at == NULL)
			fail_msg("%s does not follow in:\n%s", order[i], text);
	}
	is_silent_on(text, "\n1.0");
	verdict->item[1].action = ACTION_HOLD;
	says(letter(verdict, arena), "\nWILL COST MONEY\n  nothing found\n");
	verdict->stage = STAGE_application;
	is_silent_on(letter(verdict, arena), "ASK BEFORE BID");
	arena_free(arena);
}

static void each_item_has_its_group(void **state)
{
	(void)state;
	static const Rule system = { .code = "LST-02a", .rejects = true };
	static const struct {
		Action action;
		const char *answer_by;
		Authority authority;
		const Rule *rule;
		BidGroup group;
	} items[] = {
		{ ACTION_NOT_ELIGIBLE, "contractor", AUTHORITY_PROGRAM, NULL, BID_CANNOT_BE_MET },
		{ ACTION_REJECTED, "contractor", AUTHORITY_LISTING, &system, BID_CANNOT_BE_MET },
		{ ACTION_REJECTED, "designer", AUTHORITY_PROGRAM, NULL, BID_CANNOT_BE_MET },
		{ ACTION_REJECTED, "designer", AUTHORITY_SPECIFICATION, NULL, BID_ASK_BEFORE },
		{ ACTION_REJECTED, "contractor", AUTHORITY_PROGRAM, NULL, BID_WILL_COST },
		{ ACTION_REVISE, "contractor", AUTHORITY_SPECIFICATION, NULL, BID_WILL_COST },
		{ ACTION_REVISE, "engineer", AUTHORITY_ENGINEER, NULL, BID_ASK_BEFORE },
		{ ACTION_CONFLICT, "contractor", AUTHORITY_PROGRAM, NULL, BID_ASK_BEFORE },
		{ ACTION_HOLD, "contractor", AUTHORITY_PROGRAM, NULL, BID_ASK_BEFORE },
		{ ACTION_NOT_REVIEWED, NULL, AUTHORITY_PROGRAM, NULL, BID_ASK_BEFORE },
		{ ACTION_CORRECTIONS, "contractor", AUTHORITY_PROGRAM, NULL, BID_WILL_COST },
		{ ACTION_ADVISORY, "contractor", AUTHORITY_PROGRAM, NULL, BID_WILL_COST },
		{ ACTION_ADVISORY, "designer", AUTHORITY_PROGRAM, NULL, BID_ASK_BEFORE },
	};
	for (size_t i = 0; i < sizeof items / sizeof *items; i++) {
		Finding item = { .action = items[i].action, .answer_by = items[i].answer_by, .authority = items[i].authority,
			.rule = items[i].rule };
		if (bid_group(&item) != items[i].group)
			fail_msg("row %zu is in the group %s", i, bid_group_words(bid_group(&item)));
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(head_names_the_worst_first),
		cmocka_unit_test(closed_items_ask_nobody),
		cmocka_unit_test(basis_begins_with_what_is_cited),
		cmocka_unit_test(counts_are_read_as_counts),
		cmocka_unit_test(foot_lists_what_is_set_aside_and_not_due),
		cmocka_unit_test(before_a_bid_items_stand_in_three_groups),
		cmocka_unit_test(each_item_has_its_group),
	};
	return cmocka_run_group_tests_name("report_letter", tests, NULL, NULL) != 0;
}
