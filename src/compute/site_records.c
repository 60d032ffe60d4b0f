/* SPDX-License-Identifier: MIT
 * What happened on the roof: inspections by area and squares, photographs, the punch list, meetings.
 */
#include "below.h"
#include "date.h"
#include "dossier.h"
#include "text.h"
#include "timeline.h"

#include <math.h>
#include <string.h>

static const Scope whole = { NULL, NULL };
static const char conference[] = "pre-roofing conference";

static bool is_again(const Case *visit)
{
	return is_word(&((const Inspection *)visit->row)->kind, "re-inspection");
}

/* ---- inspections ---- */

double roof_area_squares_square(Case *area)
{
	double length = GIVEN(area, roof_area, RoofArea, building.length_ft);
	double width = GIVEN(area, roof_area, RoofArea, building.width_ft);
	double slope = GIVEN(area, roof_area, RoofArea, building.slope_in_12);
	return length * width * sqrt(1 + (slope / 12) * (slope / 12)) / 100;
}

static const Visits *fetch_visits(Case *area)
{
	static const Visits none = { NULL, 0, 0 };
	const char *name = GIVEN(area, roof_area, RoofArea, name);
	fetch_list(area, outward(area, KIND_submittal), offsetof(Submittal, inspections));
	const Visits *visits = ready(area) ? visits_of(area, name) : NULL;
	return visits != NULL ? visits : &none;
}

/* Visits to see what was mended come on top. */
double roof_area_inspections_made_one(Case *area)
{
	const Visits *visits = fetch_visits(area);
	double made = 0;
	for (uint32_t i = 0; i < visits->count; i++) {
		GIVEN_AT(area, visits->visit[i], Inspection, kind);
		made += !is_again(visits->visit[i]);
	}
	return made;
}

double roof_area_first_inspection_square(Case *area)
{
	const Visits *visits = fetch_visits(area);
	double first = -1;
	for (uint32_t i = 0; i < visits->count; i++) {
		double laid = GIVEN_AT(area, visits->visit[i], Inspection, laid_square);
		if (!is_again(visits->visit[i]) && (first < 0 || laid < first))
			first = laid;
	}
	if (first < 0 && ready(area))
		return SKIP(area, "no inspection of it is listed");
	return first;
}

double roof_area_inspections_by_area_one(Case *area)
{
	double squares = OF(area, roof_area_squares_square);
	double most = area->all->criteria->edition.squares_an_inspection_square.value;
	double each = CONSTANT(area, "criteria.yaml", "squares_an_inspection", most, "ufgs-07611n-p23");
	return ready(area) ? ceil(squares / each - 1e-9) : 0;
}

double roof_area_final_inspected_yes(Case *area)
{
	const Visits *visits = fetch_visits(area);
	for (uint32_t i = 0; i < visits->count; i++)
		if (strcmp(GIVEN_AT(area, visits->visit[i], Inspection, kind), "final") == 0)
			return 1;
	return 0;
}

/* The panel maker comes for the roof as a whole: one day at two areas is one visit. */
double submittal_inspections_made_one(Case *submittal)
{
	const Cases *all = submittal->all;
	fetch_list(submittal, submittal, offsetof(Submittal, inspections));
	Hash *days = hash_make(all->arena, all->of[KIND_inspection].count);
	double made = 0;
	for (uint32_t i = 0; ready(submittal) && i < all->of[KIND_inspection].count; i++) {
		const Case *visit = all->of[KIND_inspection].at[i];
		int32_t *day = TAKE(all->arena, int32_t, 1);
		*day = GIVEN_AT(submittal, visit, Inspection, date);
		if (!is_again(visit) && hash_put(days, (const char *)day, sizeof *day, day) == NULL)
			made++;
	}
	return made;
}

double inspection_area_known_yes(Case *inspection)
{
	const char *area = GIVEN(inspection, inspection, Inspection, area);
	fetch_list(inspection, outward(inspection, KIND_submittal), offsetof(Submittal, roof_areas));
	return ready(inspection) && is_area_name(inspection, area);
}

double inspection_report_sent_yes(Case *inspection)
{
	const char *report = GIVEN(inspection, inspection, Inspection, report);
	return ready(inspection) && paper_numbered(inspection, report) != NULL;
}

/* ---- days of what was done on the roof ---- */

/* Neither before the first event of a kind nor after the submittal. */
static double is_between(Case *fact, int32_t day, EventWord word)
{
	int32_t submitted = GIVEN(fact, submittal, Submittal, date);
	if (!fetch_events(fact) || !ready(fact))
		return 0;
	Arena *arena = fact->all->arena;
	const Case *event = first_event(fact, word, whole);
	int32_t from = event != NULL ? fetch_event_day(fact, event) : INT32_MIN;
	if (day < from)
		note(fact, arena_printf(arena, "before %s", event_words(event)));
	else if (day > submitted)
		note(fact, arena_printf(arena, "after the submittal of %s", date_print(arena, submitted)));
	return ready(fact) && day >= from && day <= submitted;
}

double inspection_dated_in_work_yes(Case *inspection)
{
	return is_between(inspection, GIVEN(inspection, inspection, Inspection, date), EVENT_start);
}

double photograph_dated_in_work_yes(Case *photograph)
{
	return is_between(photograph, GIVEN(photograph, photograph, Photograph, date), EVENT_approval);
}

/* ---- photographs ---- */

/* The shots of a list that are not among the photographs, at this place or anywhere, in the fact's note. */
static double are_photographed(Case *fact, const char *list, const char *place)
{
	fetch_list(fact, outward(fact, KIND_submittal), offsetof(Submittal, photographs));
	if (!ready(fact))
		return 0;
	const Criteria *criteria = fact->all->criteria;
	const char *missing = "";
	for (uint32_t i = 0; i < criteria->lists.count; i++) {
		const NamedWord *row = &criteria->lists.row[i];
		if (!is_value(&row->list.given) || strcmp(row->list.text, list) != 0 || is_photographed(fact, row->entry.text, place))
			continue;
		missing = arena_printf(fact->all->arena, "%s%s%s", missing, *missing != '\0' ? ", " : "", row->entry.text);
	}
	if (*missing != '\0')
		note(fact, missing);
	return *missing == '\0';
}

double submittal_shots_taken_yes(Case *submittal)
{
	return are_photographed(submittal, "photographs required", NULL);
}

double penetration_photographed_yes(Case *penetration)
{
	const char *name = GIVEN(penetration, penetration, Penetration, name);
	const char *treatment = GIVEN(penetration, penetration, Penetration, treatment);
	if (!ready(penetration))
		return 0;
	bool has_curb = list_has(penetration->all->criteria, "treatments with a curb", treatment);
	return are_photographed(penetration, has_curb ? "photographs of a curb" : "photographs of a boot", name);
}

/* A detail is photographed in its roof area, or under its own number. */
double detail_photographed_yes(Case *detail)
{
	const char *place = GIVEN(detail, detail, Detail, place), *number = GIVEN(detail, detail, Detail, number);
	const char *area = GIVEN(detail, roof_area, RoofArea, name);
	fetch_list(detail, outward(detail, KIND_submittal), offsetof(Submittal, photographs));
	return ready(detail) && (is_photographed(detail, place, area) || is_photographed(detail, place, number));
}

/* ---- the punch list ---- */

double punch_item_proof_sent_yes(Case *item)
{
	const char *proof = GIVEN(item, punch_item, PunchItem, proof);
	return ready(item) && record_named(item, proof) != NULL;
}

double punch_item_days_open_day(Case *item)
{
	int32_t found = GIVEN(item, punch_item, PunchItem, found), closed = GIVEN(item, punch_item, PunchItem, closed);
	return ready(item) ? closed - found : 0;
}

double punch_item_closed_in_time_yes(Case *item)
{
	int32_t found = GIVEN(item, punch_item, PunchItem, found), closed = GIVEN(item, punch_item, PunchItem, closed);
	int32_t submitted = GIVEN(item, submittal, Submittal, date);
	Arena *arena = item->all->arena;
	if (closed < found)
		note(item, arena_printf(arena, "before it was found on %s", date_print(arena, found)));
	else if (closed > submitted)
		note(item, arena_printf(arena, "after the submittal of %s", date_print(arena, submitted)));
	return ready(item) && closed >= found && closed <= submitted;
}

/* ---- meetings ---- */

static bool is_conference(const Case *meeting)
{
	const Text *name = &((const Meeting *)meeting->row)->meeting;
	return is_value(&name->given) && same_text(name->text, conference);
}

double submittal_conference_recorded_yes(Case *submittal)
{
	const Cases *all = submittal->all;
	fetch_list(submittal, submittal, offsetof(Submittal, meetings));
	for (uint32_t i = 0; ready(submittal) && i < all->of[KIND_meeting].count; i++) {
		GIVEN_AT(submittal, all->of[KIND_meeting].at[i], Meeting, meeting);
		if (is_conference(all->of[KIND_meeting].at[i]))
			return ready(submittal);
	}
	return 0;
}

double meeting_minutes_sent_yes(Case *meeting)
{
	const char *minutes = GIVEN(meeting, meeting, Meeting, minutes);
	return ready(meeting) && paper_numbered(meeting, minutes) != NULL;
}

/* The minutes and the list of dates speak of one conference. */
double meeting_date_as_told_yes(Case *meeting)
{
	int32_t day = GIVEN(meeting, meeting, Meeting, date);
	GIVEN(meeting, meeting, Meeting, meeting);
	if (!fetch_events(meeting) || !ready(meeting))
		return 0;
	const Case *first = first_event(meeting, EVENT_conference, whole), *last = last_event(meeting, EVENT_conference, whole);
	if (!is_conference(meeting) || first == NULL)
		return SKIP(meeting, "the dates name no such meeting");
	note(meeting, event_words(last));
	return day == fetch_event_day(meeting, first) || day == fetch_event_day(meeting, last);
}
