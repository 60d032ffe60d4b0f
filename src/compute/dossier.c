/* SPDX-License-Identifier: MIT
 * The papers and records of a submittal: one pass over each list when the first question comes.
 */
#include "dossier.h"

#include "below.h"
#include "date.h"
#include "text.h"

#include <ctype.h>
#include <stdlib.h>
#include <string.h>

/* Longer words that name a paper are not looked through. */
enum { MOST_WORDS = 200 };

/* ---- keys ---- */

typedef struct {
	const char *text;
	size_t length;
} Key;

static Key folded_key(Arena *arena, const char *text)
{
	Key key;
	key.text = folded(arena, text, &key.length);
	return key;
}

/* Two texts with a NUL between: no text from a file holds one. */
static Key pair_key(Arena *arena, const char *first, const char *second)
{
	Key one = folded_key(arena, first), other = folded_key(arena, second);
	char *both = arena_take(arena, one.length + 1 + other.length + 1, 1);
	memcpy(both, one.text, one.length);
	memcpy(both + one.length + 1, other.text, other.length);
	return (Key){ both, one.length + 1 + other.length };
}

static void put_first(Hash *hash, Key key, void *value)
{
	if (hash_get(hash, key.text, key.length) == NULL)
		hash_put(hash, key.text, key.length, value);
}

static void *found(const Hash *hash, Arena *arena, const char *text)
{
	ArenaMark mark = arena_mark(arena);
	Key key = folded_key(arena, text);
	void *value = hash_get(hash, key.text, key.length);
	arena_back(arena, mark);
	return value;
}

/* ---- the lists ---- */

/* Every list of the dossier is of records that begin with their name. */
static void put_numbers(Hash *hash, Arena *arena, const Cases *all, RecordKind kind, size_t offset)
{
	for (uint32_t i = 0; i < all->of[kind].count; i++) {
		Case *at = all->of[kind].at[i];
		const Text *number = (const Text *)(const void *)((const char *)at->row + offset);
		if (is_value(&number->given))
			put_first(hash, folded_key(arena, number->text), at);
	}
}

static void put_photographs(Dossier *dossier, Arena *arena, const Cases *all)
{
	for (uint32_t i = 0; i < all->of[KIND_photograph].count; i++) {
		Case *at = all->of[KIND_photograph].at[i];
		const Photograph *row = at->row;
		if (!is_value(&row->shot.given))
			continue;
		put_first(dossier->photograph, folded_key(arena, row->shot.text), at);
		if (is_value(&row->place.given))
			put_first(dossier->photograph, pair_key(arena, row->shot.text, row->place.text), at);
	}
}

static void put_visits(Dossier *dossier, Arena *arena, const Cases *all)
{
	for (uint32_t i = 0; i < all->of[KIND_inspection].count; i++) {
		Case *at = all->of[KIND_inspection].at[i];
		const Inspection *row = at->row;
		if (!is_value(&row->area.given))
			continue;
		Key key = folded_key(arena, row->area.text);
		Visits *visits = hash_get(dossier->visits, key.text, key.length);
		if (visits == NULL) {
			visits = TAKE(arena, Visits, 1);
			hash_put(dossier->visits, key.text, key.length, visits);
		}
		visits->visit = arena_more(arena, visits->visit, visits->count, &visits->room, sizeof(Case *));
		visits->visit[visits->count++] = at;
	}
}

/* `roof_areas.Main roof.name` declares what is between its points. */
static void put_declared(Dossier *dossier, Arena *arena, const Cases *all)
{
	for (uint32_t i = 0; i < all->of[KIND_change].count; i++) {
		const Change *row = all->of[KIND_change].at[i]->row;
		if (!is_value(&row->field.given))
			continue;
		for (const char *at = row->field.text; *at != '\0';) {
			size_t length = strcspn(at, ".");
			put_first(dossier->declared, folded_key(arena, arena_text(arena, at, length)), dossier);
			at += length + (at[length] == '.');
		}
	}
}

static int by_day(const void *a, const void *b)
{
	int32_t x = *(const int32_t *)a, y = *(const int32_t *)b;
	return (x > y) - (x < y);
}

static void read_holidays(Dossier *dossier, Arena *arena, const Texts *texts)
{
	dossier->holiday = TAKE(arena, int32_t, texts->count + 1);
	for (uint32_t i = 0; i < texts->count; i++) {
		const char *text = texts->at[i].text;
		if (date_read(text, strlen(text), &dossier->holiday[dossier->holidays]))
			dossier->holidays++;
	}
	qsort(dossier->holiday, dossier->holidays, sizeof *dossier->holiday, by_day);
}

Dossier *dossier_of(const Case *at)
{
	const Cases *all = at->all;
	void **kept = kept_with((Case *)case_outward(at, KIND_submittal));
	if (*kept != NULL)
		return *kept;
	Arena *arena = all->arena;
	Dossier *dossier = TAKE(arena, Dossier, 1);
	*kept = dossier;
	dossier->paper = hash_make(arena, all->of[KIND_document].count);
	dossier->record = hash_make(arena, all->of[KIND_document].count + all->of[KIND_photograph].count);
	dossier->photograph = hash_make(arena, 2 * all->of[KIND_photograph].count);
	dossier->visits = hash_make(arena, all->of[KIND_roof_area].count);
	dossier->declared = hash_make(arena, all->of[KIND_change].count);
	dossier->departure = hash_make(arena, all->of[KIND_departure].count);
	dossier->requirement = hash_make(arena, all->of[KIND_requirement].count);
	put_numbers(dossier->paper, arena, all, KIND_document, offsetof(Document, number));
	put_numbers(dossier->record, arena, all, KIND_photograph, offsetof(Photograph, photograph));
	put_numbers(dossier->record, arena, all, KIND_inspection, offsetof(Inspection, inspection));
	put_numbers(dossier->record, arena, all, KIND_document, offsetof(Document, number));
	put_numbers(dossier->departure, arena, all, KIND_departure, offsetof(Departure, paragraph));
	put_numbers(dossier->requirement, arena, all, KIND_requirement, offsetof(Requirement, paragraph));
	put_photographs(dossier, arena, all);
	put_visits(dossier, arena, all);
	put_declared(dossier, arena, all);
	read_holidays(dossier, arena, &all->criteria->edition.holidays);
	return dossier;
}

/* ---- questions ---- */

Case *paper_numbered(const Case *at, const char *number)
{
	return found(dossier_of(at)->paper, at->all->arena, number);
}

Case *record_named(const Case *at, const char *words)
{
	const Hash *hash = dossier_of(at)->record;
	char start[MOST_WORDS + 1] = { 0 };
	size_t length = strnlen(words, MOST_WORDS);
	memcpy(start, words, length);
	for (size_t end = length; end > 0; end--) {
		bool is_word_end = words[end] == '\0' || isspace((unsigned char)words[end]) || strchr(",;:(", words[end]) != NULL;
		start[end] = '\0';
		Case *record = is_word_end ? found(hash, at->all->arena, start) : NULL;
		if (record != NULL)
			return record;
	}
	return NULL;
}

bool is_photographed(const Case *at, const char *shot, const char *place)
{
	Arena *arena = at->all->arena;
	const Hash *hash = dossier_of(at)->photograph;
	if (place == NULL)
		return found(hash, arena, shot) != NULL;
	ArenaMark mark = arena_mark(arena);
	Key key = pair_key(arena, shot, place);
	bool is_there = hash_get(hash, key.text, key.length) != NULL;
	arena_back(arena, mark);
	return is_there;
}

const Visits *visits_of(const Case *at, const char *area)
{
	return found(dossier_of(at)->visits, at->all->arena, area);
}

bool is_declared(const Case *at, const char *name)
{
	return found(dossier_of(at)->declared, at->all->arena, name) != NULL;
}

bool is_departed(const Case *at, const char *paragraph)
{
	return found(dossier_of(at)->departure, at->all->arena, paragraph) != NULL;
}

bool is_required(const Case *at, const char *paragraph)
{
	return found(dossier_of(at)->requirement, at->all->arena, paragraph) != NULL;
}

int32_t working_days(const Case *at, int32_t from, int32_t to)
{
	const Dossier *dossier = dossier_of(at);
	return date_working_days(from, to, dossier->holiday, dossier->holidays);
}

int32_t after_working_days(const Case *at, int32_t from, int32_t days)
{
	const Dossier *dossier = dossier_of(at);
	return date_after_working_days(from, days, dossier->holiday, dossier->holidays);
}
