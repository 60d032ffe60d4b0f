/* SPDX-License-Identifier: MIT
 * The events of a submittal by what they are, and by the phase and roof area they belong to: the first and the last of each. An
 * event without a phase or an area belongs to all of them.
 */
#ifndef TIMELINE_H
#define TIMELINE_H

#include "fetch.h"

/* In the order of words.def. */
typedef enum {
	EVENT_application,
	EVENT_approval,
	EVENT_order,
	EVENT_delivery,
	EVENT_conference,
	EVENT_notice,
	EVENT_start,
	EVENT_interim,
	EVENT_completion,
	EVENT_final,
	EVENT_issue,
	EVENTS
} EventWord;

/* NULL: any. */
typedef struct {
	const char *phase, *area;
} Scope;
Scope scope_of(const Case *event);

/* The event of this kind on the earliest or the latest day of those that concern a scope; NULL if none has a day. */
Case *first_event(const Case *at, EventWord word, Scope scope);
Case *last_event(const Case *at, EventWord word, Scope scope);

/* The first event of the file of the same kind, phase and area. */
Case *same_event(const Case *event);

/* The day of an event: when it happened, else when it is planned; false if neither can be told. */
bool day_of_event(const Case *event, int32_t *day);
bool has_happened(const Case *event);

/* The same for a fact, which waits if neither was said. */
int32_t fetch_event_day(Case *fact, const Case *event);

/* The event and all that stands in the list, for a fact: waits for the list if it was not stated. */
bool fetch_events(Case *fact);

/* The last day of the work a scope has a date for: its completion, else its start; NULL if none. */
Case *end_of_work(const Case *at, Scope scope);

/* "the approval planned for 2026-05-05", "the start of phase 2 on 2026-06-22". */
const char *event_words(const Case *event);

#endif
