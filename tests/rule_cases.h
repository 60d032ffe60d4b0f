/* SPDX-License-Identifier: MIT
 * Rule cases: edits of the one clean submittal, applied to its nodes in memory and reviewed in process.
 *
 * tests/rules/FAMILY.csv has the columns code, case, path, value, record, at, action. Rows of one code and case are applied
 * together. `met` leaves the package without items, `broken` gives that code and no other, `silent` changes a condition so that
 * the rule does not apply, `waits` breaks its cause too. A further case of a kind has a word behind it: `silent 2`. The column
 * action of these two may name all codes that are then found. A path may begin with `criteria.` (a value of criteria.yaml) or
 * `register.TABLE.ROW.` (rows from 0). `at` is the path of the key or record where the item stands, or a line of what an edit brought
 * in. Codes, records and places are written by hand; nothing rewrites them.
 */
#ifndef RULE_CASES_H
#define RULE_CASES_H

#include "harness.h"

#include "read/csv.h"
#include "read/fill.h"

#include <stdlib.h>

typedef struct {
	const char *path, *value;
} Edit;

typedef struct {
	const char *file, *code, *name;
	Edit edit[24];
	uint32_t edits;
	const char *record, *at, *action;
	uint32_t line; /* of `at` in the clean submittal; 0 if it leads nowhere */
} RuleCase;

typedef struct {
	Arena *arena;
	RuleCase *at;
	uint32_t count, room;
	const char *file;
	bool headed;
} RuleCases;

static inline bool take_rule_case(void *user, const Cell *cell, uint32_t cells)
{
	RuleCases *all = user;
	if (!all->headed) {
		all->headed = true;
		assert_int_equal(cells, 7);
		return true;
	}
	RuleCase *last = all->count > 0 ? &all->at[all->count - 1] : NULL;
	if (last == NULL || strcmp(last->code, cell[0].text) != 0 || strcmp(last->name, cell[1].text) != 0) {
		all->at = arena_more(all->arena, all->at, all->count, &all->room, sizeof *all->at);
		last = &all->at[all->count++];
		*last = (RuleCase){ .file = all->file, .code = cell[0].text, .name = cell[1].text };
	}
	assert_true(last->edits < 24);
	last->edit[last->edits++] = (Edit){ cell[2].text, cell[3].text };
	if (cell[4].length > 0)
		last->record = cell[4].text;
	if (cell[5].length > 0)
		last->at = cell[5].text;
	if (cell[6].length > 0)
		last->action = cell[6].text;
	return true;
}

/* Every case of the built-in files rules/FAMILY.csv, in the order of builtin.def. */
static inline RuleCases read_cases(Arena *arena)
{
	RuleCases all = { .arena = arena };
	const Builtin *file;
	for (size_t i = 0; (file = builtin_at(i)) != NULL; i++) {
		if (strncmp(file->name, "rules/", 6) != 0)
			continue;
		Complaints complaints = { .arena = arena };
		const Source *source = source_make(arena, file->name, file->bytes, (size_t)(file->end - file->bytes), SOURCE_FIRST_SHARED);
		all.file = file->name;
		all.headed = false;
		CsvFile csv = { arena, source, &complaints, take_rule_case, &all };
		bool whole = csv_read(&csv);
		print_complaints(&complaints);
		assert_true(whole);
	}
	const Source *source;
	Node *clean = builtin_nodes(arena, "examples/clean.yaml", &source);
	for (uint32_t i = 0; i < all.count; i++)
		all.at[i].line = all.at[i].at != NULL ? line_at(clean, all.at[i].at) : 0;
	return all;
}

/* ---- edits of criteria and registers ---- */

static inline void edit_record(const World *world, Arena *arena, const Record *record, void *row, const char *key, const char *value)
{
	Complaints complaints = { .arena = arena };
	Reading reading = { .arena = arena, .reference = world->reference, .complaints = &complaints, .table = true };
	const Field *field = field_find(record, key, strlen(key));
	if (field == NULL)
		fail_msg("no key %s in %s", key, record->name);
	memset(given_at(field, row), 0, sizeof(Given));
	if (strcmp(value, "-") != 0)
		read_value(field, value, strlen(value), (Place){ 0 }, row, &reading);
	print_complaints(&complaints);
	assert_int_equal(complaints.count, 0);
}

/* The copy of one row's table: `kinds.4.life_judged` is row 4 of kinds. */
#define EDIT_TABLE(member, R, file) \
	if (strncmp(path, #member ".", sizeof #member) == 0) { \
		R *row = TAKE(arena, R, copy->member.count); \
		assert_true(at < copy->member.count); \
		memcpy(row, copy->member.row, copy->member.count * sizeof *row); \
		edit_record(world, arena, &R##_record, &row[at], key, value); \
		copy->member.row = row; \
		return; \
	}

static inline void edit_criteria(World *world, Arena *arena, const char *path, const char *value)
{
	Criteria *copy = TAKE(arena, Criteria, 1);
	*copy = *world->criteria;
	world->criteria = copy;
	const char *number = strchr(path, '.');
	if (number == NULL) {
		edit_record(world, arena, &Edition_record, &copy->edition, path, value);
		return;
	}
	const char *key = strchr(number + 1, '.') + 1;
	uint32_t at = (uint32_t)strtoul(number + 1, NULL, 10);
	EDITION_TABLES(EDIT_TABLE)
	fail_msg("no table for %s", path);
}

static inline void edit_register(World *world, Arena *arena, const char *path, const char *value)
{
	Registers *copy = TAKE(arena, Registers, 1);
	*copy = *world->registers;
	world->registers = copy;
	const char *number = strchr(path, '.') + 1, *key = strchr(number, '.') + 1;
	uint32_t at = (uint32_t)strtoul(number, NULL, 10);
	REGISTER_TABLES(EDIT_TABLE)
	fail_msg("no register for %s", path);
}

/* The edits of a case, in the nodes of the clean submittal and in a world of its own. */
static inline void edit_case(World *world, Arena *arena, Node *root, const RuleCase *c)
{
	for (uint32_t i = 0; i < c->edits; i++) {
		const Edit *e = &c->edit[i];
		if (strncmp(e->path, "criteria.", 9) == 0)
			edit_criteria(world, arena, e->path + 9, e->value);
		else if (strncmp(e->path, "register.", 9) == 0)
			edit_register(world, arena, e->path + 9, e->value);
		else if (!edit_nodes(arena, root, e->path, e->value))
			fail_msg("%s %s: the path %s leads nowhere", c->code, c->name, e->path);
	}
}

static inline Verdict *review_case(const World *given, Arena *arena, const RuleCase *c)
{
	World world = *given;
	const Source *source;
	Node *root = builtin_nodes(arena, "examples/clean.yaml", &source);
	edit_case(&world, arena, root, c);
	return review_nodes(&world, arena, root, source);
}

/* ---- what a case expects ---- */

static inline const Finding *item_of(const Verdict *verdict, const char *code)
{
	for (uint32_t i = 0; i < verdict->items; i++)
		if (strcmp(verdict->item[i].code, code) == 0)
			return &verdict->item[i];
	return NULL;
}

/* "REJECTED system": the action in words, and the word of a rule that rejects the whole package. */
static inline bool is_action(const Finding *item, const char *expected)
{
	const char *words = action_words(item->action);
	size_t length = strlen(words);
	bool system = item->rule != NULL && item->rule->rejects;
	return strncmp(expected, words, length) == 0 && strcmp(expected + length, system ? " system" : "") == 0;
}

static inline const char *spot_name(const Finding *item, uint32_t spot)
{
	const Case *where = item->spot[spot].where;
	return where != NULL ? where->name : "";
}

static inline bool has_spot(const Verdict *verdict, const char *code, const char *name)
{
	for (uint32_t i = 0; verdict != NULL && i < verdict->items; i++)
		for (uint32_t s = 0; strcmp(verdict->item[i].code, code) == 0 && s < verdict->item[i].spots; s++)
			if (strcmp(spot_name(&verdict->item[i], s), name) == 0)
				return true;
	return false;
}

/* Whether `verdict` has no item but `code` that `met` has not: same code at the same record. */
static inline bool adds_only(const Verdict *verdict, const Verdict *met, const char *code)
{
	for (uint32_t i = 0; i < verdict->items; i++)
		for (uint32_t s = 0; strcmp(verdict->item[i].code, code) != 0 && s < verdict->item[i].spots; s++)
			if (!has_spot(met, verdict->item[i].code, spot_name(&verdict->item[i], s)))
				return false;
	return true;
}

static inline bool holds_broken(const RuleCase *c, const Verdict *verdict, const Verdict *met)
{
	const Finding *item = item_of(verdict, c->code);
	if (item == NULL || c->record == NULL || c->at == NULL || c->action == NULL || !adds_only(verdict, met, c->code))
		return false;
	return strcmp(item->name, c->record) == 0 && item->spot[0].place.line == c->line && is_action(item, c->action);
}

/* Whether the items' codes are just those of "LIF-04; SLT-02"; "none" wants no item, NULL asks
 * nothing. */
static inline bool holds_codes(const char *codes, const Verdict *verdict)
{
	if (codes != NULL && strcmp(codes, "none") == 0)
		return verdict->items == 0;
	for (uint32_t i = 0; codes != NULL && i < verdict->items; i++)
		if (strstr(codes, verdict->item[i].code) == NULL)
			return false;
	for (const char *c = codes; c != NULL && *c != '\0'; c += strspn(c, "; ")) {
		size_t length = strcspn(c, ";");
		char code[16] = { 0 };
		memcpy(code, c, length < sizeof code ? length : sizeof code - 1);
		if (item_of(verdict, code) == NULL)
			return false;
		c += length;
	}
	return true;
}

/* Whether a case is of a kind: "silent 2" is a silent one. */
static inline bool is_case(const RuleCase *c, const char *kind)
{
	size_t length = strlen(kind);
	return strncmp(c->name, kind, length) == 0 && (c->name[length] == '\0' || c->name[length] == ' ');
}

/* Whether the review gives what the case says; `met` is the review of the case before a broken one. */
static inline bool holds_case(const RuleCase *c, const Verdict *verdict, const Verdict *met)
{
	if (is_case(c, "broken"))
		return holds_broken(c, verdict, met);
	if (is_case(c, "waits"))
		return item_of(verdict, c->code) == NULL && verdict->items > 0 && holds_codes(c->action, verdict);
	return item_of(verdict, c->code) == NULL && (!is_case(c, "silent") || holds_codes(c->action, verdict));
}

static inline uint32_t edits_apart(const RuleCase *a, const RuleCase *b)
{
	uint32_t apart = 0;
	for (uint32_t i = 0; i < b->edits; i++) {
		bool same = false;
		for (uint32_t j = 0; j < a->edits; j++)
			same = same || (strcmp(a->edit[j].path, b->edit[i].path) == 0 && strcmp(a->edit[j].value, b->edit[i].value) == 0);
		apart += !same;
	}
	return apart;
}

#endif
