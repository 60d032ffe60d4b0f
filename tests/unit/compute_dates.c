/* SPDX-License-Identifier: MIT
 * Events and their order, notices and reviews in working days, papers over the period of the work. Days were counted by hand on
 * a calendar of 2026: 14 April is a Tuesday, 25 May and 3 July are holidays of the edition used here.
 */
#include "compute_world.h"

#include "compute/timeline.h"
#include "date.h"

static int32_t day(const char *text)
{
	int32_t value;
	assert_true(date_read(text, strlen(text), &value));
	return value;
}

typedef struct {
	const char *event, *date, *planned, *phase, *area;
} Told;

static Case *an_event(World *w, Told told)
{
	const Field *field = field_find(&Event_record, "event", 5);
	Event *row = TAKE(w->arena, Event, 1);
	row->event = WORD_IS(told.event);
	row->event.word = (uint32_t)word_find(field->words, told.event, strlen(told.event));
	if (told.date != NULL)
		row->date = DAY_IS(day(told.date));
	if (told.planned != NULL)
		row->planned = DAY_IS(day(told.planned));
	if (told.phase != NULL)
		row->phase = TEXT_IS(told.phase);
	if (told.area != NULL)
		row->area = TEXT_IS(told.area);
	w->submittal.dates.of.given.said = SAID_VALUE;
	return add_case(w, KIND_event, w->at, row);
}

static void with_holidays(World *w)
{
	Text *at = TAKE(w->arena, Text, 3);
	at[0] = TEXT_IS("2026-07-03"); /* out of order, and one on a Saturday */
	at[1] = TEXT_IS("2026-05-25");
	at[2] = TEXT_IS("2026-06-20");
	w->criteria.edition.holidays = (Texts){ GOOD, 3, at };
	w->criteria.edition.start_notice_day = NUMBER_IS(7);
	w->criteria.edition.review_days_day = NUMBER_IS(15);
	w->criteria.edition.deviation_days_day = NUMBER_IS(10);
	w->criteria.edition.lead_time_day = NUMBER_IS(20);
	w->submittal.date = DAY_IS(day("2026-04-14"));
}

/* ---- order ---- */

static void events_are_numbered_as_their_words(void **state)
{
	(void)state;
	static const char *const words[EVENTS] = { "application", "approval", "order", "delivery", "pre-roofing conference", "start notice",
		"start", "interim inspection", "completion", "final inspection", "issue" };
	const Field *field = field_find(&Event_record, "event", 5);
	for (int i = 0; i < EVENTS; i++)
		assert_int_equal(word_find(field->words, words[i], strlen(words[i])), i);
	size_t length;
	assert_null(word_text(field->words, EVENTS, &length));
}

static void what_comes_after_lies_after(void **state)
{
	World *w = *state;
	an_event(w, (Told){ "approval", .planned = "2026-05-05" });
	Case *same = an_event(w, (Told){ "delivery", .date = "2026-05-05" });
	Case *early = an_event(w, (Told){ "start", .date = "2026-05-04" });
	assert_known(same, "in_order", 1);
	assert_known(early, "in_order", 0);
	assert_string_equal(ask_fact(early, "in_order")->note, "the start on 2026-05-04 lies before the approval planned for 2026-05-05");
}

static void an_order_before_the_approval_is_left_to_others(void **state)
{
	World *w = *state;
	an_event(w, (Told){ "application", .date = "2026-03-25" });
	an_event(w, (Told){ "approval", .date = "2026-05-05" });
	assert_known(an_event(w, (Told){ "order", .date = "2026-05-01" }), "in_order", 1);
	w = world_make();
	an_event(w, (Told){ "application", .date = "2026-03-25" });
	assert_known(an_event(w, (Told){ "order", .date = "2026-03-24" }), "in_order", 0);
	arena_free(w->arena);
}

/* A second delivery comes while the work goes on; a visit after the completion does not. */
static void of_several_the_one_that_counts_is_compared(void **state)
{
	World *w = *state;
	an_event(w, (Told){ "delivery", .date = "2026-06-05" });
	Case *second = an_event(w, (Told){ "delivery", .date = "2026-07-10" });
	Case *start = an_event(w, (Told){ "start", .date = "2026-06-22" });
	an_event(w, (Told){ "interim inspection", .date = "2026-06-25" });
	an_event(w, (Told){ "interim inspection", .date = "2026-08-20" });
	Case *completion = an_event(w, (Told){ "completion", .date = "2026-08-14" });
	assert_known(start, "in_order", 1);
	assert_known(second, "in_order", 1);
	assert_known(completion, "in_order", 0);
}

static void phases_are_apart(void **state)
{
	World *w = *state;
	an_event(w, (Told){ "approval", .date = "2026-05-05" });
	Case *first = an_event(w, (Told){ "start", .date = "2026-06-01", .phase = "phase 1" });
	Case *second = an_event(w, (Told){ "start", .planned = "2026-09-01", .phase = "Phase 2 " });
	Case *done = an_event(w, (Told){ "completion", .date = "2026-07-10", .phase = "phase 1" });
	Case *all = an_event(w, (Told){ "final inspection", .date = "2026-08-01" });
	assert_known(first, "in_order", 1);
	assert_known(done, "in_order", 1);
	assert_known(first, "end_told", 1);
	assert_known(second, "end_told", 0);
	assert_known(all, "in_order", 0); /* of the whole: phase 2 has not begun */
	assert_string_equal(ask_fact(all, "in_order")->note,
		"the final inspection on 2026-08-01 lies before the start of Phase 2  planned for 2026-09-01");
}

static void areas_are_apart(void **state)
{
	World *w = *state;
	Case *porch = an_event(w, (Told){ "completion", .date = "2026-06-10", .area = "Porch" });
	an_event(w, (Told){ "start", .date = "2026-06-22", .area = "Main roof" });
	Case *all = an_event(w, (Told){ "completion", .date = "2026-06-15" });
	assert_known(porch, "in_order", 1);
	assert_known(all, "in_order", 0);
}

static void a_day_not_told_is_waited_for(void **state)
{
	World *w = *state;
	Case *silent = an_event(w, (Told){ .event = "start" });
	assert_waits(w, silent, "in_order", "planned");
	Case *unknown = an_event(w, (Told){ "start", .planned = "2026-06-22" });
	((Event *)unknown->row)->date.given.said = SAID_UNKNOWN;
	assert_waits(w, unknown, "in_order", "date");
}

static void one_day_for_one_event(void **state)
{
	World *w = *state;
	Case *first = an_event(w, (Told){ "start", .planned = "2026-06-22", .phase = "phase 1" });
	Case *second = an_event(w, (Told){ "start", .planned = "2026-06-23", .phase = "PHASE 1" });
	Case *other = an_event(w, (Told){ "start", .planned = "2026-06-23", .phase = "phase 1", .area = "Porch" });
	assert_known(first, "told_once", 1);
	assert_known(second, "told_once", 0);
	assert_known(other, "told_once", 1);
	assert_string_equal(ask_fact(second, "told_once")->note, "the start of phase 1 planned for 2026-06-22");
}

/* ---- working days ---- */

/* After Tuesday 9 June: 10, 11, 12, 15, 16, 17, 18 June. */
static void a_notice_is_counted_in_working_days(void **state)
{
	World *w = *state;
	with_holidays(w);
	an_event(w, (Told){ "start notice", .date = "2026-06-09" });
	Case *start = an_event(w, (Told){ "start", .planned = "2026-06-22" });
	assert_known(start, "notice_days", 9);
	assert_string_equal(ask_fact(start, "notice_days")->note, "after the notice of 2026-06-09 it may begin on 2026-06-18");
}

/* After Wednesday 1 July, with Friday the 3rd a holiday: 2, 6, 7, 8, 9, 10, 13 July. */
static void a_holiday_puts_the_start_off(void **state)
{
	World *w = *state;
	with_holidays(w);
	an_event(w, (Told){ "start notice", .date = "2026-07-01" });
	Case *start = an_event(w, (Told){ "start", .planned = "2026-07-10" });
	assert_known(start, "notice_days", 6);
	assert_string_equal(ask_fact(start, "notice_days")->note, "after the notice of 2026-07-01 it may begin on 2026-07-13");
}

static void a_start_without_notice(void **state)
{
	World *w = *state;
	with_holidays(w);
	Case *planned = an_event(w, (Told){ "start", .planned = "2026-06-22" });
	Case *begun = an_event(w, (Told){ "start", .date = "2026-04-13" });
	assert_state(planned, "notice_days", FACT_NOT_APPLICABLE);
	assert_known(begun, "notice_days", 0);
}

/* 12 working days are left in April after the 14th, May has 21 less one holiday, June 5 up to the 5th. */
static void review_and_delivery_are_counted(void **state)
{
	World *w = *state;
	with_holidays(w);
	an_event(w, (Told){ "approval", .planned = "2026-05-05" });
	an_event(w, (Told){ "delivery", .planned = "2026-07-20" });
	an_event(w, (Told){ "delivery", .planned = "2026-06-05" });
	assert_known(w->at, "days_to_approval", 15);
	assert_known(w->at, "days_to_delivery", 37);
	assert_known(w->at, "time_needed", 35);
	assert_known(w->at, "deviation_time", 25);
}

static void what_has_come_needs_no_time(void **state)
{
	World *w = *state;
	with_holidays(w);
	w->submittal.lead_time_day = NUMBER_IS(31);
	an_event(w, (Told){ "delivery", .date = "2026-04-10" });
	assert_state(w->at, "days_to_delivery", FACT_NOT_APPLICABLE);
	assert_state(w->at, "days_to_approval", FACT_NOT_APPLICABLE);
	assert_known(w->at, "time_needed", 46);
}

/* ---- papers over the work ---- */

static void a_listing_must_last_to_the_end_of_its_area(void **state)
{
	World *w = *state;
	Listing listing = { .listing = TEXT_IS("tested-1"), .status = WORD_IS("in force"), .expires = DAY_IS(day("2026-08-14")) };
	AreaTest row = { .listing = TEXT_IS("tested-1") };
	Case *test = add_case(w, KIND_test, w->roof, &row);
	test->listed = &listing;
	an_event(w, (Told){ "completion", .planned = "2026-09-30", .area = "Porch" });
	an_event(w, (Told){ "completion", .planned = "2026-08-14", .area = "Main roof" });
	assert_known(test, "listing_covers", 1);
	w = world_make();
	test = add_case(w, KIND_test, w->roof, &row);
	test->listed = &listing;
	an_event(w, (Told){ "completion", .planned = "2026-08-14", .phase = "phase 1" });
	an_event(w, (Told){ "completion", .planned = "2026-08-15", .phase = "phase 2" });
	assert_known(test, "listing_covers", 0);
	assert_string_equal(ask_fact(test, "listing_covers")->note,
		"tested-1 ends on 2026-08-14, before the completion of phase 2 planned for 2026-08-15");
	arena_free(w->arena);
}

static void without_a_day_of_work_nothing_can_end_too_early(void **state)
{
	World *w = *state;
	Document row = { .number = TEXT_IS("IC-1"), .expires = DAY_IS(day("2026-01-01")) };
	Case *paper = add_case(w, KIND_document, w->at, &row);
	assert_state(paper, "paper_covers", FACT_NOT_APPLICABLE);
	World *other = world_make();
	Case *again = add_case(other, KIND_document, other->at, &row);
	an_event(other, (Told){ "start", .planned = "2026-01-02" }); /* no completion is named */
	assert_known(again, "paper_covers", 0);
	arena_free(other->arena);
}

static void the_longest_approval_of_the_package_counts(void **state)
{
	World *w = *state;
	const Approval rows[] = {
		{ .letter = TEXT_IS("PA-1"), .item = TEXT_IS("MC-1"), .project = TEXT_IS("all"), .issued = DAY_IS(20500),
			.expires = DAY_IS(20600) },
		{ .letter = TEXT_IS("PA-2"), .item = TEXT_IS("submittal MC-1"), .project = TEXT_IS("all"), .issued = DAY_IS(20550),
			.expires = DAY_IS(20700) },
		{ .letter = TEXT_IS("PA-3"), .item = TEXT_IS("MC-2"), .project = TEXT_IS("all"), .issued = DAY_IS(20000),
			.expires = DAY_IS(30000) },
		{ .letter = TEXT_IS("PA-4"), .item = TEXT_IS("MC-1"), .project = TEXT_IS("Lake Court"), .issued = DAY_IS(20000),
			.expires = DAY_IS(30000) },
	};
	w->registers.approvals.row = rows;
	w->registers.approvals.count = 4;
	w->submittal.submittal = TEXT_IS("MC-1");
	w->submittal.project.name = TEXT_IS("Marrow Creek Depot");
	Case *last = an_event(w, (Told){ "start", .planned = "2026-09-04" }); /* day 20700 */
	Case *late = an_event(w, (Told){ "start", .planned = "2026-09-05" });
	assert_int_equal(day("2026-09-04"), 20700);
	assert_known(last, "approval_covers", 1);
	assert_known(late, "approval_covers", 0);
	Case *first = an_event(w, (Told){ "start", .date = "2026-02-16" }); /* day 20500 */
	Case *early = an_event(w, (Told){ "start", .date = "2026-02-15" });
	assert_int_equal(day("2026-02-16"), 20500);
	assert_known(first, "approved_by_then", 1);
	assert_known(early, "approved_by_then", 0);
}

/* ---- squares and visits ---- */

static Case *a_visit(World *w, const char *kind, double laid)
{
	Inspection *row = TAKE(w->arena, Inspection, 1);
	row->kind = WORD_IS(kind);
	row->area = TEXT_IS("main roof");
	row->laid_square = NUMBER_IS(laid);
	row->date = DAY_IS(20600);
	w->submittal.inspections.of.given.said = SAID_VALUE;
	return add_case(w, KIND_inspection, w->at, row);
}

static void a_roof_has_its_squares_along_the_slope(void **state)
{
	World *w = *state;
	w->area.building.length_ft = NUMBER_IS(200);
	w->area.building.width_ft = NUMBER_IS(100);
	w->area.building.slope_in_12 = NUMBER_IS(9); /* 3, 4, 5 */
	w->criteria.edition.squares_an_inspection_square = NUMBER_IS(100);
	assert_known(w->roof, "squares", 250);
	assert_known(w->roof, "inspections_by_area", 3);
	w = world_make();
	w->area.building.length_ft = NUMBER_IS(200);
	w->area.building.width_ft = NUMBER_IS(80);
	w->area.building.slope_in_12 = NUMBER_IS(9);
	w->criteria.edition.squares_an_inspection_square = NUMBER_IS(100);
	assert_known(w->roof, "squares", 200);
	assert_known(w->roof, "inspections_by_area", 2);
	arena_free(w->arena);
}

static void visits_to_see_what_was_mended_come_on_top(void **state)
{
	World *w = *state;
	a_visit(w, "interim", 40);
	a_visit(w, "re-inspection", 10);
	a_visit(w, "interim", 30);
	a_visit(w, "final", 240);
	assert_known(w->roof, "inspections_made", 3);
	assert_known(w->roof, "first_inspection", 30);
	assert_known(w->roof, "final_inspected", 1);
	assert_known(w->at, "inspections_made", 1); /* all on one day */
}

static void a_roof_nobody_visited(void **state)
{
	World *w = *state;
	w->submittal.inspections.of.given.said = SAID_NONE;
	assert_known(w->roof, "inspections_made", 0);
	assert_known(w->roof, "final_inspected", 0);
	assert_state(w->roof, "first_inspection", FACT_NOT_APPLICABLE);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		TEST(events_are_numbered_as_their_words),
		TEST(what_comes_after_lies_after),
		TEST(an_order_before_the_approval_is_left_to_others),
		TEST(of_several_the_one_that_counts_is_compared),
		TEST(phases_are_apart),
		TEST(areas_are_apart),
		TEST(a_day_not_told_is_waited_for),
		TEST(one_day_for_one_event),
		TEST(a_notice_is_counted_in_working_days),
		TEST(a_holiday_puts_the_start_off),
		TEST(a_start_without_notice),
		TEST(review_and_delivery_are_counted),
		TEST(what_has_come_needs_no_time),
		TEST(a_listing_must_last_to_the_end_of_its_area),
		TEST(without_a_day_of_work_nothing_can_end_too_early),
		TEST(the_longest_approval_of_the_package_counts),
		TEST(a_roof_has_its_squares_along_the_slope),
		TEST(visits_to_see_what_was_mended_come_on_top),
		TEST(a_roof_nobody_visited),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
