/* SPDX-License-Identifier: MIT
 * The accessors of fetch.h: they record what a fact used and raise its state to that of what it used.
 */
#include "fetch.h"

#include <assert.h>
#include <string.h>

/* So many fields are named through one fact; each field that is missing has an item of its own in any case. */
enum { MOST_THROUGH = 64 };

bool ready(const Case *fact)
{
	return fact->now->state == FACT_COMPUTING;
}

void note(Case *fact, const char *text)
{
	fact->now->note = text;
}

/* States rank in order; the first reason of the greatest stays. */
static void raise_state(Case *fact, FactState state, const char *reason)
{
	if (fact->now->state >= state)
		return;
	fact->now->state = (uint8_t)state;
	fact->now->reason = reason;
}

double REFUSE(Case *fact, const char *reason)
{
	raise_state(fact, FACT_REFUSED, reason);
	return 0;
}

double SKIP(Case *fact, const char *reason)
{
	raise_state(fact, FACT_NOT_APPLICABLE, reason);
	return 0;
}

static void record_use(Case *fact, Use use)
{
	Cases *all = fact->all;
	all->use = arena_more(all->arena, all->use, all->uses, &all->use_room, sizeof *all->use);
	use.next = fact->now->first_use;
	all->use[all->uses] = use;
	fact->now->first_use = ++all->uses;
	if (use.known_by > fact->now->known_by)
		fact->now->known_by = use.known_by;
}

static void record_field(Case *fact, Asked asked, double value)
{
	Use use = { .kind = USED_FIELD, .at = asked.at, .what.field = asked.field, .given = asked.given, .value = value };
	record_use(fact, use);
}

/* ---- fields ---- */

bool fetch_said(Case *fact, Asked asked)
{
	if (is_value(asked.given))
		return true;
	record_field(fact, asked, 0);
	if (asked.given->said == SAID_NOT_APPLICABLE)
		SKIP(fact, asked.given->typed);
	else
		raise_state(fact, FACT_WAITING, NULL);
	return false;
}

static double number_in(Asked asked)
{
	FieldKind kind = asked.field->kind;
	if (kind == IS_NUMBER || kind == IS_SIZE)
		return ((const Number *)asked.given)->value;
	if (kind == IS_DATE)
		return ((const Date *)asked.given)->day;
	return kind == IS_YES && ((const Yes *)asked.given)->yes;
}

void fetch_shown(Case *fact, Asked asked)
{
	record_field(fact, asked, is_value(asked.given) ? number_in(asked) : 0);
}

bool fetch_silent(Case *fact, Asked asked)
{
	bool silent = asked.given->said == SAID_NOTHING;
	if (silent)
		fetch_shown(fact, asked);
	return silent;
}

double fetch_number(Case *fact, Asked asked)
{
	if (!fetch_said(fact, asked))
		return 0;
	double value = ((const Number *)asked.given)->value;
	record_field(fact, asked, value);
	return value;
}

const char *fetch_text(Case *fact, Asked asked)
{
	if (!fetch_said(fact, asked))
		return "";
	record_field(fact, asked, 0);
	return ((const Text *)asked.given)->text;
}

const char *fetch_word(Case *fact, Asked asked)
{
	if (!fetch_said(fact, asked))
		return "";
	record_field(fact, asked, 0);
	return ((const Word *)asked.given)->text;
}

int32_t fetch_day(Case *fact, Asked asked)
{
	if (!fetch_said(fact, asked))
		return 0;
	int32_t day = ((const Date *)asked.given)->day;
	record_field(fact, asked, day);
	return day;
}

bool fetch_yes(Case *fact, Asked asked)
{
	if (!fetch_said(fact, asked))
		return false;
	bool yes = ((const Yes *)asked.given)->yes;
	record_field(fact, asked, yes);
	return yes;
}

const Texts *fetch_texts(Case *fact, Asked asked)
{
	static const Texts no_texts = { .count = 0 };
	if (!fetch_said(fact, asked))
		return &no_texts;
	record_field(fact, asked, 0);
	return (const Texts *)asked.given;
}

const ByZone *fetch_zones(Case *fact, Asked asked)
{
	static const ByZone no_zones = { .count = 0 };
	if (!fetch_said(fact, asked))
		return &no_zones;
	record_field(fact, asked, 0);
	return (const ByZone *)asked.given;
}

static bool may_be_left_out(Asked asked)
{
	Said said = asked.given->said;
	return said == SAID_NOTHING || said == SAID_NONE || said == SAID_NOT_APPLICABLE;
}

double fetch_number_or(Case *fact, Asked asked, double otherwise)
{
	return may_be_left_out(asked) ? otherwise : fetch_number(fact, asked);
}

const char *fetch_text_or(Case *fact, Asked asked, const char *otherwise)
{
	return may_be_left_out(asked) ? otherwise : fetch_text(fact, asked);
}

int32_t fetch_day_or(Case *fact, Asked asked, int32_t otherwise)
{
	return may_be_left_out(asked) ? otherwise : fetch_day(fact, asked);
}

const List *fetch_list(Case *fact, const Case *where, uint32_t offset)
{
	Asked asked = ask(where, offset);
	if (asked.given->said != SAID_NONE && !fetch_said(fact, asked))
		return NULL;
	const List *list = (const List *)asked.given;
	record_field(fact, asked, list->count);
	return list;
}

int32_t fetch_as_of(Case *fact)
{
	int32_t as_of = fact->all->as_of;
	return as_of != INT32_MIN ? as_of : GIVEN(fact, submittal, Submittal, date);
}

/* ---- constants ---- */

static KnownBy known_by_one(const Reference *reference, const char *source, size_t length)
{
	char id[128];
	static const char practice[] = "common practice";
	if (length >= sizeof id || strncmp(source, practice, sizeof practice - 1) == 0)
		return KNOWN_PRACTICE;
	memcpy(id, source, length);
	id[length] = '\0';
	const SourceRow *row = source_row(reference, id);
	return row != NULL ? (KnownBy)row->known_by.word : KNOWN_PRACTICE;
}

/* The weakest of several sources joined by semicolons; a row without a source is the maker's own paper. */
static KnownBy known_by_of(const Reference *reference, const char *source)
{
	if (source == NULL)
		return KNOWN_READ;
	if (reference == NULL)
		return KNOWN_PRACTICE;
	KnownBy weakest = KNOWN_READ;
	for (const char *at = source;; at++) {
		at += strspn(at, " ");
		size_t length = strcspn(at, ";");
		KnownBy one = known_by_one(reference, at, length);
		weakest = one > weakest ? one : weakest;
		at += length;
		if (*at == '\0')
			return weakest;
	}
}

double fetch_constant(Case *fact, const char *row, double value, const char *source)
{
	KnownBy known_by = known_by_of(fact->all->reference, source);
	Use use = { .kind = USED_CONSTANT, .known_by = (uint8_t)known_by, .what.constant = row, .source = source, .value = value };
	record_use(fact, use);
	return value;
}

const char *row_words(const Case *fact, const char *table, const char *row)
{
	size_t first = strlen(table), second = strlen(row);
	char *words = arena_take(fact->all->arena, first + second + 1, 1);
	memcpy(words, table, first);
	memcpy(words + first, row, second);
	return words;
}

/* ---- facts ---- */

static void record_through(Case *fact, const Fact *used)
{
	const Cases *all = fact->all;
	int named = 0;
	for (const Use *use = fact_waits(all, used, NULL); use != NULL && named < MOST_THROUGH; named++) {
		Use through = *use;
		through.kind = USED_THROUGH;
		record_use(fact, through);
		use = fact_waits(all, used, use);
	}
}

const Fact *fetch_use(Case *fact, Case *where, FactId id)
{
	const Fact *used = fact_of(where, id);
	Use use = { .kind = USED_FACT, .known_by = used->known_by, .at = where, .what.fact = id, .value = used->value };
	record_use(fact, use);
	return used;
}

void fetch_raise(Case *fact, const Fact *used)
{
	fact->now->borrowed |= used->borrowed;
	if (used->state == FACT_WAITING)
		record_through(fact, used);
	if (used->state != FACT_KNOWN)
		raise_state(fact, used->state, used->reason);
}

double fetch_fact(Case *fact, Case *where, FactId id)
{
	const Fact *used = fetch_use(fact, where, id);
	fetch_raise(fact, used);
	return used->value;
}

void fetch_match(Case *fact, Case *test)
{
	const Fact *differences = fetch_use(fact, test, FACT_test_differences);
	if (differences->state == FACT_KNOWN && differences->value == 0)
		return;
	fact->now->borrowed = true;
	record_through(fact, differences);
}
