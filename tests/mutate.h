/* SPDX-License-Identifier: MIT
 * Mutation of the sample edition in memory: would some rule case notice that a cell has changed?
 *
 * Every case is read and resolved once. A change of rules is judged again on those trees, whose facts stay true; a change of
 * another table is resolved again. The changed edition must turn a case of the rules it touches red, or the clean package.
 */
#ifndef MUTATE_H
#define MUTATE_H

#include "rule_cases.h"

#include "file.h"

/* A change that nothing notices, and why that may be. */
typedef struct {
	const char *code, *change;
	bool met_with;
} Known;

/* One case on its way: what was read, and the world as its own edits left it. `of` NULL is the clean package. */
typedef struct {
	Arena *arena;
	World world;
	const RuleCase *of;
	RecordKind kind; /* of the records its rule speaks of */
	const Source *source;
	Submittal *submittal;
	Complaints complaints;
	Cases *cases;
} Played;

typedef struct {
	World world;
	Criteria *criteria; /* world.criteria, which may be changed */
	Rule *rule; /* criteria->rule, which may be changed */
	RuleCases cases;
	Played *played;
	Played clean;
	Known *known;
	uint32_t knowns, known_room;
	bool headed;
	uint32_t tried, survived, unknown; /* unknown: survived, and stands in no list */
} Mutation;

/* code, change, why */
static inline bool take_known(void *user, const Cell *cell, uint32_t cells)
{
	Mutation *m = user;
	if (!m->headed) {
		m->headed = true;
		assert_int_equal(cells, 3);
		return true;
	}
	assert_true(cell[2].length > 0);
	m->known = arena_more(m->world.run, m->known, m->knowns, &m->known_room, sizeof *m->known);
	m->known[m->knowns++] = (Known){ arena_text(m->world.run, cell[0].text, cell[0].length),
		arena_text(m->world.run, cell[1].text, cell[1].length), false };
	return true;
}

static inline void read_known(Mutation *m, const char *path)
{
	const char *bytes, *why;
	size_t length;
	Arena *arena = m->world.run;
	assert_int_equal(file_read(arena, path, 1 << 20, &bytes, &length, &why), FILE_READ);
	Complaints complaints = { .arena = arena };
	CsvFile csv = { arena, source_make(arena, path, bytes, length, 0), &complaints, take_known, m };
	bool whole = csv_read(&csv);
	print_complaints(&complaints);
	assert_true(whole);
}

static inline bool knows_no_more(const Mutation *m)
{
	bool none = true;
	for (uint32_t i = 0; i < m->knowns; i++)
		if (!m->known[i].met_with) {
			print_error("%s: %s is noticed: take it off the list\n", m->known[i].code, m->known[i].change);
			none = false;
		}
	return none;
}

static inline Cases *resolve_played(const Played *p, Arena *arena)
{
	Inputs inputs = { .submittal = p->submittal, .criteria = p->world.criteria, .reference = p->world.reference,
		.registers = p->world.registers, .as_of = INT32_MIN };
	return resolve(arena, &inputs);
}

static inline Played play(const World *world, const RuleCase *c)
{
	Played p = { .arena = arena_make(), .world = *world, .of = c };
	Node *root = builtin_nodes(p.arena, "examples/clean.yaml", &p.source);
	if (c != NULL)
		edit_case(&p.world, p.arena, root, c);
	p.complaints.arena = p.arena;
	p.submittal = read_submittal(p.arena, root, p.source, world->reference, &p.complaints);
	p.cases = resolve_played(&p, p.arena);
	return p;
}

/* `known`: the file of changes that nothing notices. */
static inline Mutation *mutation_make(const char *known)
{
	World world = world_make();
	Mutation *m = TAKE(world.run, Mutation, 1);
	m->criteria = TAKE(world.run, Criteria, 1);
	*m->criteria = *world.criteria;
	m->rule = TAKE(world.run, Rule, world.criteria->rules);
	memcpy(m->rule, world.criteria->rule, world.criteria->rules * sizeof *m->rule);
	m->criteria->rule = m->rule;
	m->world = world;
	m->world.criteria = m->criteria;
	m->cases = read_cases(world.run);
	m->played = TAKE(world.run, Played, m->cases.count);
	for (uint32_t i = 0; i < m->cases.count; i++) {
		m->played[i] = play(&m->world, &m->cases.at[i]);
		for (uint32_t r = 0; r < m->criteria->rules; r++)
			if (strcmp(m->rule[r].code, m->cases.at[i].code) == 0)
				m->played[i].kind = m->rule[r].for_each;
	}
	m->clean = play(&m->world, NULL);
	read_known(m, known);
	return m;
}

static inline void mutation_free(Mutation *m)
{
	for (uint32_t i = 0; i < m->cases.count; i++)
		arena_free(m->played[i].arena);
	arena_free(m->clean.arena);
	arena_free(m->world.run);
}

static inline bool is_clean(const Verdict *verdict)
{
	return verdict->items == 0 && verdict->tally.met > 60;
}

static inline Known *known_change(const Mutation *m, const char *code, const char *change)
{
	for (uint32_t i = 0; i < m->knowns; i++)
		if (strcmp(m->known[i].code, code) == 0 && strcmp(m->known[i].change, change) == 0)
			return &m->known[i];
	return NULL;
}

static inline bool is_known(const Mutation *m, const char *code, const char *change)
{
	return known_change(m, code, change) != NULL;
}

/* A change that was not noticed; printed as a row of the list if it is not known. */
static inline void survives(Mutation *m, const char *code, const char *change)
{
	Known *known = known_change(m, code, change);
	m->survived++;
	if (known != NULL) {
		known->met_with = true;
		return;
	}
	m->unknown++;
	print_error("%s,\"%s\",\n", code, change);
}

#endif
