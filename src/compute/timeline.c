/* SPDX-License-Identifier: MIT
 * The events of a submittal, put once under every scope that may ask for them: each under its own phase and area, under any
 * phase, under any area, and under any of both. So a question looks at four places at the most, however many events there are.
 */
#include "timeline.h"

#include "date.h"
#include "dossier.h"
#include "text.h"

#include <string.h>

typedef struct {
	Case *first, *last; /* by day */
	Case *stated; /* the first of the file, with or without a day */
} Moment;

typedef struct Timeline {
	Hash *moment;
} Timeline;

/* How a phase or an area is called in a key. */
static const char any[] = "*", none[] = "";

static const char *named(const Text *text, Arena *arena)
{
	size_t length;
	if (!is_value(&text->given))
		return none;
	const char *words = folded(arena, text->text, &length);
	return arena_printf(arena, "=%s", words);
}

typedef struct {
	char *text;
	size_t length;
} Key;

/* No text from a file holds the NUL between. */
static Key key_of(Arena *arena, EventWord word, const char *phase, const char *area)
{
	size_t first = strlen(phase), second = strlen(area), length = 1 + first + 1 + second;
	char *text = arena_take(arena, length + 1, 1);
	text[0] = (char)(1 + (int)word);
	memcpy(text + 1, phase, first);
	memcpy(text + 1 + first + 1, area, second);
	return (Key){ text, length };
}

bool has_happened(const Case *event)
{
	return is_value(&((const Event *)event->row)->date.given);
}

bool day_of_event(const Case *event, int32_t *day)
{
	const Event *row = event->row;
	const Date *date = is_value(&row->date.given) ? &row->date : &row->planned;
	*day = date->day;
	return is_value(&date->given);
}

static void put_moment(Timeline *timeline, Case *event, const char *phase, const char *area)
{
	Arena *arena = event->all->arena;
	Key key = key_of(arena, (EventWord)((const Event *)event->row)->event.word, phase, area);
	Moment *moment = hash_get(timeline->moment, key.text, key.length);
	if (moment == NULL) {
		moment = TAKE(arena, Moment, 1);
		moment->stated = event;
		hash_put(timeline->moment, key.text, key.length, moment);
	}
	int32_t day, other = 0;
	if (!day_of_event(event, &day))
		return;
	if (moment->first == NULL || (day_of_event(moment->first, &other) && day < other))
		moment->first = event;
	if (moment->last == NULL || (day_of_event(moment->last, &other) && day > other))
		moment->last = event;
}

static Timeline *timeline_of(const Case *at)
{
	Dossier *dossier = dossier_of(at);
	if (dossier->timeline != NULL)
		return dossier->timeline;
	const Cases *all = at->all;
	Timeline *timeline = TAKE(all->arena, Timeline, 1);
	dossier->timeline = timeline;
	timeline->moment = hash_make(all->arena, 4 * (size_t)all->of[KIND_event].count);
	for (uint32_t i = 0; i < all->of[KIND_event].count; i++) {
		Case *event = all->of[KIND_event].at[i];
		const Event *row = event->row;
		if (!is_value(&row->event.given))
			continue;
		const char *phase = named(&row->phase, all->arena), *area = named(&row->area, all->arena);
		put_moment(timeline, event, phase, area);
		put_moment(timeline, event, any, area);
		put_moment(timeline, event, phase, any);
		put_moment(timeline, event, any, any);
	}
	return timeline;
}

static const Moment *moment_of(const Case *at, EventWord word, const char *phase, const char *area)
{
	const Timeline *timeline = timeline_of(at);
	Arena *arena = at->all->arena;
	ArenaMark mark = arena_mark(arena);
	Key key = key_of(arena, word, phase, area);
	const Moment *moment = hash_get(timeline->moment, key.text, key.length);
	arena_back(arena, mark);
	return moment;
}

/* ---- questions ---- */

Scope scope_of(const Case *event)
{
	const Event *row = event->row;
	return (Scope){ is_value(&row->phase.given) ? row->phase.text : NULL, is_value(&row->area.given) ? row->area.text : NULL };
}

static Case *better(Case *one, Case *other, bool wants_last)
{
	int32_t day, than;
	if (one == NULL || other == NULL || !day_of_event(one, &day) || !day_of_event(other, &than))
		return one != NULL ? one : other;
	return (wants_last ? than > day : than < day) ? other : one;
}

/* What concerns a phase names it or none. */
static Case *find_event(const Case *at, EventWord word, Scope scope, bool wants_last)
{
	Arena *arena = at->all->arena;
	const Text phase_text = { { .said = SAID_VALUE }, scope.phase }, area_text = { { .said = SAID_VALUE }, scope.area };
	const char *phase[2] = { any, NULL }, *area[2] = { any, NULL };
	if (scope.phase != NULL) {
		phase[0] = named(&phase_text, arena);
		phase[1] = none;
	}
	if (scope.area != NULL) {
		area[0] = named(&area_text, arena);
		area[1] = none;
	}
	Case *found = NULL;
	for (int i = 0; i < 2 && phase[i] != NULL; i++)
		for (int j = 0; j < 2 && area[j] != NULL; j++) {
			const Moment *moment = moment_of(at, word, phase[i], area[j]);
			if (moment != NULL)
				found = better(found, wants_last ? moment->last : moment->first, wants_last);
		}
	return found;
}

Case *first_event(const Case *at, EventWord word, Scope scope)
{
	return find_event(at, word, scope, false);
}

Case *last_event(const Case *at, EventWord word, Scope scope)
{
	return find_event(at, word, scope, true);
}

Case *same_event(const Case *event)
{
	const Event *row = event->row;
	Arena *arena = event->all->arena;
	return moment_of(event, (EventWord)row->event.word, named(&row->phase, arena), named(&row->area, arena))->stated;
}

Case *end_of_work(const Case *at, Scope scope)
{
	Case *completion = last_event(at, EVENT_completion, scope);
	return completion != NULL ? completion : last_event(at, EVENT_start, scope);
}

int32_t fetch_event_day(Case *fact, const Case *event)
{
	const Event *row = event->row;
	bool is_planned = row->date.given.said == SAID_NOTHING || row->date.given.said == SAID_NOT_APPLICABLE;
	return is_planned ? GIVEN_AT(fact, event, Event, planned) : GIVEN_AT(fact, event, Event, date);
}

bool fetch_events(Case *fact)
{
	return fetch_list(fact, outward(fact, KIND_submittal), offsetof(Submittal, dates)) != NULL;
}

const char *event_words(const Case *event)
{
	const Event *row = event->row;
	Arena *arena = event->all->arena;
	int32_t day;
	const char *name = is_value(&row->event.given) ? row->event.text : "event";
	const char *words = arena_printf(arena, "the %s", name);
	if (is_value(&row->area.given))
		words = arena_printf(arena, "%s of %.200s", words, row->area.text);
	if (is_value(&row->phase.given))
		words = arena_printf(arena, "%s of %.200s", words, row->phase.text);
	if (!day_of_event(event, &day))
		return words;
	return arena_printf(arena, "%s %s %s", words, has_happened(event) ? "on" : "planned for", date_print(arena, day));
}
