/* SPDX-License-Identifier: MIT
 * A small world for tests of facts: one submittal with one roof area, filled by hand, and tables of a few rows.
 */
#ifndef COMPUTE_WORLD_H
#define COMPUTE_WORLD_H

#include "check.h"

#include "facts.h"
#include "hash.h"

#define GOOD { .said = SAID_VALUE, .typed = "typed" }
#define NUMBER_IS(x) ((Number){ GOOD, x })
#define TEXT_IS(x) ((Text){ GOOD, x })
#define WORD_IS(x) ((Word){ GOOD, x, 0 })
#define YES_IS(x) ((Yes){ GOOD, x })
#define DAY_IS(x) ((Date){ GOOD, x })
#define SAID_SO(way) { .said = way, .typed = "as said" }

typedef struct {
	Arena *arena;
	Cases all;
	Criteria criteria;
	Reference reference;
	Registers registers;
	Submittal submittal;
	RoofArea area;
	Case *at, *roof; /* the cases of the two */
} World;

static inline Case *add_case(World *w, RecordKind kind, Case *up, const void *row)
{
	Case *at = TAKE(w->arena, Case, 1);
	uint32_t count = w->all.of[kind].count;
	Case **longer = TAKE(w->arena, Case *, count + 1);
	if (count > 0)
		memcpy(longer, w->all.of[kind].at, count * sizeof *longer);
	longer[count] = at;
	w->all.of[kind].at = longer;
	w->all.of[kind].count = count + 1;
	*at = (Case){ .all = &w->all, .up = up, .kind = kind, .order = w->all.made++, .row = row, .submitted = row };
	at->name = record_of(kind)->name;
	return at;
}

/* Each list of the area and the submittal says `none` until a test fills it. */
static inline void say_none(const Record *record, void *row)
{
	for (uint32_t i = 0; i < record->count; i++)
		if (record->field[i].kind == IS_LIST)
			given_at(&record->field[i], row)->said = SAID_NONE;
}

static const SourceRow world_sources[] = {
	{ .id = { GOOD, "read-paper" }, .known_by = { GOOD, "read", 0 } },
	{ .id = { GOOD, "second-paper" }, .known_by = { GOOD, "second-hand", 1 } },
	{ .id = { GOOD, "memory-paper" }, .known_by = { GOOD, "memory", 2 } },
};

static inline World *world_make(void)
{
	Arena *arena = arena_make();
	World *w = TAKE(arena, World, 1);
	w->arena = arena;
	w->criteria.items = hash_make(arena, 8);
	w->criteria.listing_by_name = hash_make(arena, 8);
	w->criteria.edition.maker = TEXT_IS("Sample Panel Works (invented)");
	w->reference.sources.row = world_sources;
	w->reference.sources.count = 3;
	w->all = (Cases){ .submittal = &w->submittal, .criteria = &w->criteria, .reference = &w->reference,
		.registers = &w->registers, .arena = arena, .as_of = 20557 }; /* 2026-04-14 */
	say_none(&Submittal_record, &w->submittal);
	say_none(&RoofArea_record, &w->area);
	w->area.name = TEXT_IS("Main roof");
	w->at = add_case(w, KIND_submittal, NULL, &w->submittal);
	w->roof = add_case(w, KIND_roof_area, w->at, &w->area);
	return w;
}

static inline int world_setup(void **state)
{
	*state = world_make();
	return 0;
}

static inline int world_teardown(void **state)
{
	arena_free(((World *)*state)->arena);
	return 0;
}

static inline const Fact *ask_fact(Case *at, const char *name)
{
	int id = fact_find(at->kind, name, strlen(name));
	assert_true(id >= 0);
	return fact_of(at, (FactId)id);
}

#define assert_known(at, name, x) check_known(at, name, x, __FILE__, __LINE__)
static inline void check_known(Case *at, const char *name, double value, const char *file, int line)
{
	const Fact *fact = ask_fact(at, name);
	if (fact->state != FACT_KNOWN)
		print_error("%s is in state %d: %s\n", name, fact->state, fact->reason != NULL ? fact->reason : "");
	_assert_int_equal(fact->state, FACT_KNOWN, file, line);
	check_close(fact->value, value, 1e-12, file, line);
}

#define assert_state(at, name, x) _assert_int_equal(ask_fact(at, name)->state, x, __FILE__, __LINE__)

/* The keys a fact waits for, joined by blanks, in the order they were asked for. */
static inline const char *waits_for(World *w, const Fact *fact)
{
	const char *words = "";
	for (const Use *use = fact_waits(&w->all, fact, NULL); use != NULL; use = fact_waits(&w->all, fact, use))
		words = arena_printf(w->arena, "%s%s%s", words, *words != '\0' ? " " : "", use->what.field->key);
	return words;
}
#define assert_waits(w, at, name, keys) do { \
	assert_state(at, name, FACT_WAITING); \
	assert_string_equal(waits_for(w, ask_fact(at, name)), keys); \
} while (0)

/* Puts an item in the catalogue of its kind. */
static inline void catalogue(World *w, RecordKind kind, const char *item, void *row)
{
	const char *name = record_of(kind)->name;
	size_t length = strlen(name) + 1 + strlen(item);
	char *key = TAKE(w->arena, char, length + 1);
	memcpy(key, name, strlen(name));
	memcpy(key + strlen(name) + 1, item, strlen(item));
	hash_put((Hash *)w->criteria.items, key, length, row);
}

#define TEST(f) cmocka_unit_test_setup_teardown(f, world_setup, world_teardown)

#endif
