/* SPDX-License-Identifier: MIT
 * The schedule of the submittal as a whole: which days are due at its stage, and whether review and delivery fit between them.
 */
#include "dossier.h"
#include "text.h"
#include "timeline.h"

#include <string.h>

static const Scope whole = { NULL, NULL };

/* ---- days due at the stage ---- */

static int event_named(const char *name)
{
	const Field *field = field_find(&Event_record, "event", strlen("event"));
	return word_find(field->words, name, strlen(name));
}

static bool is_there(const Case *submittal, EventWord word, bool passed)
{
	const Case *event = last_event(submittal, word, whole);
	return event != NULL && (!passed || has_happened(event));
}

/* What the list "dates due at STAGE" or "dates passed by STAGE" names and the submittal lacks, in the fact's note. */
static double has_all(Case *submittal, const char *list, bool passed)
{
	const char *stage = GIVEN(submittal, submittal, Submittal, stage), *missing = "";
	if (!fetch_events(submittal) || !ready(submittal))
		return 0;
	const Criteria *criteria = submittal->all->criteria;
	Arena *arena = submittal->all->arena;
	const char *wanted = arena_printf(arena, "%s %s", list, stage);
	for (uint32_t i = 0; i < criteria->lists.count; i++) {
		const NamedWord *row = &criteria->lists.row[i];
		if (!is_value(&row->list.given) || strcmp(row->list.text, wanted) != 0)
			continue;
		int word = event_named(row->entry.text);
		if (word < 0)
			return REFUSE(submittal, arena_printf(arena, "%s is no event", row->entry.text));
		if (!is_there(submittal, (EventWord)word, passed))
			missing = arena_printf(arena, "%s%s%s", missing, *missing != '\0' ? ", " : "", row->entry.text);
	}
	if (*missing != '\0')
		note(submittal, missing);
	return *missing == '\0';
}

double submittal_dates_due_told_yes(Case *submittal)
{
	return has_all(submittal, "dates due at", false);
}

double submittal_dates_passed_yes(Case *submittal)
{
	return has_all(submittal, "dates passed by", true);
}

double event_end_told_yes(Case *event)
{
	GIVEN(event, event, Event, event);
	return ready(event) && last_event(event, EVENT_completion, scope_of(event)) != NULL;
}

/* ---- days between ---- */

static double days_until(Case *submittal, EventWord word)
{
	int32_t submitted = GIVEN(submittal, submittal, Submittal, date);
	if (!fetch_events(submittal) || !ready(submittal))
		return 0;
	const Case *event = first_event(submittal, word, whole);
	if (event == NULL)
		return SKIP(submittal, "no day is named for it");
	int32_t day = fetch_event_day(submittal, event);
	if (has_happened(event))
		return SKIP(submittal, "it has happened");
	if (ready(submittal) && day < submitted)
		return SKIP(submittal, "its planned day has passed"); /* which DOC-23 says */
	note(submittal, event_words(event));
	return ready(submittal) ? working_days(submittal, submitted, day) : 0;
}

double submittal_days_to_approval_day(Case *submittal)
{
	return days_until(submittal, EVENT_approval);
}

double submittal_days_to_delivery_day(Case *submittal)
{
	return days_until(submittal, EVENT_delivery);
}

double submittal_review_time_day(Case *submittal)
{
	double days = submittal->all->criteria->edition.review_days_day.value;
	return CONSTANT(submittal, "criteria.yaml", "review_days", days, NULL);
}

/* ---- departures ---- */

double submittal_departures_declared_one(Case *submittal)
{
	const List *departures = fetch_list(submittal, submittal, offsetof(Submittal, departures));
	return departures != NULL ? departures->count : 0;
}

double submittal_deviation_time_day(Case *submittal)
{
	double days = submittal->all->criteria->edition.deviation_days_day.value;
	double added = CONSTANT(submittal, "criteria.yaml", "deviation_days", days, "ufgs-01330-p11");
	return OF(submittal, submittal_review_time_day) + added;
}

double submittal_time_needed_day(Case *submittal)
{
	double lead = GIVEN_OR(submittal, submittal, Submittal, lead_time_day, -1);
	if (lead < 0)
		lead = CONSTANT(submittal, "criteria.yaml", "lead_time", submittal->all->criteria->edition.lead_time_day.value, NULL);
	return OF(submittal, submittal_review_time_day) + lead;
}
