/* SPDX-License-Identifier: MIT
 * Events one by one: their order, their days against the submittal's own, notices, the conference before the work.
 */
#include "below.h"
#include "date.h"
#include "dossier.h"
#include "text.h"
#include "timeline.h"

/* Of these the first one counts before what follows, since more of them come while the work is under way. */
static bool is_repeated(EventWord word)
{
	return word == EVENT_order || word == EVENT_delivery || word == EVENT_notice;
}

/* An order before the approval is a matter of the source of supply, and the conference has rules of its own. */
static bool is_compared(EventWord before, EventWord word)
{
	return before != EVENT_conference && !(before == EVENT_approval && word == EVENT_order);
}

double event_in_order_yes(Case *event)
{
	int32_t day = fetch_event_day(event, event), other;
	GIVEN(event, event, Event, event);
	if (!ready(event))
		return 0;
	EventWord word = (EventWord)((const Event *)event->row)->event.word;
	for (int w = 0; w < (int)word; w++) {
		EventWord before = (EventWord)w;
		if (!is_compared(before, word))
			continue;
		Scope scope = scope_of(event);
		Case *earlier = is_repeated(before) ? first_event(event, before, scope) : last_event(event, before, scope);
		if (earlier == NULL || !day_of_event(earlier, &other) || other <= day)
			continue;
		fetch_event_day(event, earlier);
		note(event, arena_printf(event->all->arena, "%s lies before %s", event_words(event), event_words(earlier)));
		return 0;
	}
	return 1;
}

/* What the applicant types as approval counts for nothing here: the register says when the package was approved. */
double event_approved_by_then_yes(Case *event)
{
	int32_t day = fetch_event_day(event, event), first = INT32_MAX;
	if (!ready(event))
		return 0;
	const Cases *all = event->all;
	for (uint32_t i = 0; all->registers != NULL && i < all->registers->approvals.count; i++) {
		const Approval *row = &all->registers->approvals.row[i];
		bool counts = is_package_approval(row, all->submittal) && is_approval_for(row, &all->submittal->project.name);
		if (counts && is_value(&row->issued.given) && row->issued.day < first)
			first = row->issued.day;
	}
	note(event, first == INT32_MAX ? "no approval of this submittal is in the register"
				       : arena_printf(all->arena, "the first approval is of %s", date_print(all->arena, first)));
	return first <= day;
}

double event_date_reached_yes(Case *event)
{
	int32_t day = GIVEN(event, event, Event, date), submitted = GIVEN(event, submittal, Submittal, date);
	note(event, arena_printf(event->all->arena, "the submittal is dated %s", date_print(event->all->arena, submitted)));
	return ready(event) && day <= submitted;
}

double event_plan_ahead_yes(Case *event)
{
	int32_t day = GIVEN(event, event, Event, planned), submitted = GIVEN(event, submittal, Submittal, date);
	note(event, arena_printf(event->all->arena, "the submittal is dated %s", date_print(event->all->arena, submitted)));
	return ready(event) && day >= submitted;
}

double event_told_once_yes(Case *event)
{
	GIVEN(event, event, Event, event);
	if (!ready(event))
		return 0;
	const Case *stated = same_event(event);
	if (stated != event)
		note(event, event_words(stated));
	return stated == event;
}

double event_area_known_yes(Case *event)
{
	const char *area = GIVEN(event, event, Event, area);
	fetch_list(event, outward(event, KIND_submittal), offsetof(Submittal, roof_areas));
	return ready(event) && is_area_name(event, area);
}

/* ---- notices ---- */

/* The latest notice that concerns this start; else the day written beside it. */
static bool fetch_notice(Case *event, int32_t *day)
{
	const Case *notice = last_event(event, EVENT_notice, scope_of(event));
	if (notice != NULL) {
		*day = fetch_event_day(event, notice);
		return true;
	}
	*day = GIVEN_OR(event, event, Event, notified, INT32_MIN);
	return *day != INT32_MIN;
}

/* What is planned without a notice is not late yet; what has begun without one is. */
double event_notice_days_day(Case *event)
{
	int32_t start = fetch_event_day(event, event), notice;
	bool is_noticed = fetch_notice(event, &notice);
	int32_t least = (int32_t)event->all->criteria->edition.start_notice_day.value;
	if (!ready(event))
		return 0;
	if (!is_noticed && !has_happened(event))
		return SKIP(event, "no notice is dated yet");
	if (!is_noticed) {
		note(event, "no notice of it is dated");
		return 0;
	}
	Arena *arena = event->all->arena;
	note(event, arena_printf(arena, "after the notice of %s it may begin on %s", date_print(arena, notice),
				 date_print(arena, after_working_days(event, notice, least))));
	return working_days(event, notice, start);
}

double event_visit_notice_days_day(Case *event)
{
	int32_t visit = fetch_event_day(event, event), notice = GIVEN(event, event, Event, notified);
	return ready(event) ? working_days(event, notice, visit) : 0;
}

/* ---- the conference ---- */

double event_conference_timely_yes(Case *event)
{
	int32_t day = fetch_event_day(event, event), other;
	if (!ready(event))
		return 0;
	const Case *approval = last_event(event, EVENT_approval, scope_of(event));
	const Case *start = first_event(event, EVENT_start, scope_of(event)), *wrong = NULL;
	if (approval != NULL && day_of_event(approval, &other) && other > day)
		wrong = approval;
	else if (start != NULL && day_of_event(start, &other) && other < day)
		wrong = start;
	if (wrong == NULL)
		return 1;
	fetch_event_day(event, wrong);
	note(event, arena_printf(event->all->arena, "%s lies %s %s", event_words(event), wrong == start ? "after" : "before",
				 event_words(wrong)));
	return 0;
}
