/* SPDX-License-Identifier: MIT
 * One change to the clean example as a person would say it: the record by its name, the key by its title, the value as written.
 * Paths and values are those of the tests' own tables.
 */
#include "why.h"

#include "node.h"
#include "registers.h"

#include <stdlib.h>
#include <string.h>

/* How far a path was followed. */
typedef struct {
	const Library *library;
	Arena *arena;
	const Record *record; /* of the map reached; NULL behind a value */
	const char *where, *title;
} Walk;

/* ---- names of records ---- */

/* A record goes by what stands first in it: its name, item, number or kind. */
static const char *first_value(const Node *map)
{
	const Node *key = map != NULL && map->kind == NODE_MAP ? map->first : NULL;
	return key != NULL && key->first != NULL && key->first->kind == NODE_SCALAR ? key->first->text : NULL;
}

/* "clip-a-float", "clip-a-float #2"; for one that the clean example does not have "a further clip". */
static const char *element_name(const Walk *walk, const Node *list, unsigned long number)
{
	unsigned long at = 0, twins = 0;
	const Node *wanted = list != NULL ? list->first : NULL;
	while (wanted != NULL && at < number)
		wanted = wanted->next, at++;
	const char *name = first_value(wanted);
	if (name == NULL)
		return arena_printf(walk->arena, "a further %s", plain_words(walk->record->name, walk->arena));
	for (const Node *other = list->first; other != wanted; other = other->next)
		twins += first_value(other) != NULL && strcmp(first_value(other), name) == 0;
	return twins > 0 ? arena_printf(walk->arena, "%s #%lu", name, twins + 1) : name;
}

static void go_into(Walk *walk, const char *name)
{
	walk->where = walk->where == NULL ? name : arena_printf(walk->arena, "%s / %s", walk->where, name);
	walk->title = NULL;
}

/* One key of a path; `list` is what stands under it. */
static void take_key(Walk *walk, const char *key, size_t length)
{
	const Field *field = walk->record != NULL ? field_find(walk->record, key, length) : NULL;
	if (field == NULL) {
		const char *words = plain_words(arena_text(walk->arena, key, length), walk->arena);
		walk->title = walk->title == NULL ? words : arena_printf(walk->arena, "%s, %s", walk->title, words);
		return;
	}
	walk->record = field->record;
	const char *title = title_words(field->title, walk->arena);
	if (field->kind == IS_ONE)
		go_into(walk, title);
	else
		walk->title = title;
}

static const Node *node_before(const Walk *walk, const char *path, size_t length)
{
	return walk->library->example != NULL ? node_at(walk->library->example, arena_text(walk->arena, path, length)) : NULL;
}

static void walk_submittal(Walk *walk, const char *path)
{
	walk->record = &Submittal_record;
	for (const char *at = path; *at != '\0';) {
		size_t length = strcspn(at, ".");
		bool is_number = strspn(at, "0123456789") == length;
		if (is_number && walk->record != NULL)
			go_into(walk, element_name(walk, node_before(walk, path, at > path ? (size_t)(at - path) - 1 : 0), strtoul(at, NULL, 10)));
		else
			take_key(walk, at, length);
		at += length;
		at += *at == '.';
	}
}

/* ---- rows of the edition and of the registers ---- */

typedef struct {
	const char *member, *file;
	const Record *record;
	size_t offset; /* of its Table */
} TableAt;

static const TableAt edition_tables[] = {
#define TABLE(member, R, file) { #member, file, &R##_record, offsetof(Criteria, member) },
	EDITION_TABLES(TABLE)
#undef TABLE
};

static const TableAt register_tables[] = {
#define TABLE(member, R, file) { #member, file, &R##_record, offsetof(Registers, member) },
	REGISTER_TABLES(TABLE)
#undef TABLE
};

/* What stands in the first cell of a row; the number of the row where there is none. */
static const char *row_name(const Walk *walk, const TableAt *table, const void *tables, unsigned long number)
{
	const Table *rows = tables != NULL ? (const Table *)(const void *)((const char *)tables + table->offset) : NULL;
	if (rows != NULL && number < rows->count) {
		const Given *given = given_in(&table->record->field[0], (const char *)rows->row + number * table->record->size);
		if (given->typed != NULL)
			return given->typed;
	}
	return arena_printf(walk->arena, "row %lu", number + 1);
}

typedef struct {
	const TableAt *table;
	size_t count;
	const void *rows;
} TableSet;

/* "kinds.csv, fastener: life judged" of `kinds.4.life_judged`; false if the path names no table. */
static bool walk_table(Walk *walk, const char *path, const TableSet *set)
{
	const char *number = strchr(path, '.'), *key = number != NULL ? strchr(number + 1, '.') : NULL;
	if (key == NULL)
		return false;
	for (size_t i = 0; i < set->count; i++) {
		const TableAt *table = &set->table[i];
		if (strlen(table->member) != (size_t)(number - path) || strncmp(path, table->member, strlen(table->member)) != 0)
			continue;
		walk->record = table->record;
		walk->where = arena_printf(walk->arena, "%s, %s", table->file,
			row_name(walk, table, set->rows, strtoul(number + 1, NULL, 10)));
		take_key(walk, key + 1, strlen(key + 1));
		return true;
	}
	return false;
}

static void walk_path(Walk *walk, const char *path)
{
	static const char criteria[] = "criteria.", registers[] = "register.";
	const Library *library = walk->library;
	const TableSet edition = { edition_tables, sizeof edition_tables / sizeof *edition_tables, library->criteria };
	const TableSet kept = { register_tables, sizeof register_tables / sizeof *register_tables, library->registers };
	if (strncmp(path, registers, sizeof registers - 1) == 0) {
		walk_table(walk, path + sizeof registers - 1, &kept);
		return;
	}
	if (strncmp(path, criteria, sizeof criteria - 1) != 0) {
		walk_submittal(walk, path);
		return;
	}
	path += sizeof criteria - 1;
	if (walk_table(walk, path, &edition))
		return;
	walk->record = &Edition_record;
	walk->where = "criteria.yaml";
	take_key(walk, path, strlen(path));
}

/* ---- values ---- */

/* A text between braces or brackets, read from left to right; `record` is that of the map at hand. */
typedef struct {
	const char *at;
	Arena *arena;
} Flow;

static const char *flow_value(Flow *flow, const Record *record);

static void skip(Flow *flow, const char *signs)
{
	flow->at += strspn(flow->at, signs);
}

/* A value without its quotes. */
static const char *flow_scalar(Flow *flow)
{
	bool quoted = *flow->at == '"';
	const char *from = flow->at + quoted;
	size_t length = strcspn(from, quoted ? "\"" : ",}]");
	flow->at = from + length;
	flow->at += quoted && *flow->at == '"';
	return arena_text(flow->arena, from, length);
}

static const char *flow_pair(Flow *flow, const Record *record)
{
	size_t length = strcspn(flow->at, ":,}");
	const Field *field = record != NULL ? field_find(record, flow->at, length) : NULL;
	const char *title = field != NULL ? title_words(field->title, flow->arena)
		: plain_words(arena_text(flow->arena, flow->at, length), flow->arena);
	flow->at += length;
	skip(flow, ": ");
	return arena_printf(flow->arena, "%s %s", title, flow_value(flow, field != NULL ? field->record : NULL));
}

/* Depth is that of the tests' own tables. */
static const char *flow_value(Flow *flow, const Record *record)
{
	bool is_map = *flow->at == '{', is_list = *flow->at == '[';
	if (!is_map && !is_list)
		return flow_scalar(flow);
	const char *all = "";
	flow->at++;
	for (skip(flow, " "); *flow->at != '\0' && *flow->at != '}' && *flow->at != ']'; skip(flow, ", ")) {
		const char *one = is_map ? flow_pair(flow, record) : flow_value(flow, record);
		all = *all == '\0' ? one : arena_printf(flow->arena, "%s%s%s", all, is_map ? ", " : "; ", one);
	}
	flow->at += *flow->at != '\0';
	return all;
}

static const char *value_words(const Walk *walk, const char *value)
{
	if (strcmp(value, "-") == 0)
		return "left out";
	if (*value != '{' && *value != '[')
		return *value != '\0' ? value : "nothing";
	Flow flow = { value, walk->arena };
	return flow_value(&flow, walk->record);
}

/* Where a text stands within braces from the sign before it on; how far it reaches. */
static const char *pair_at(const char *value, size_t at, size_t *length)
{
	size_t from = at;
	while (from > 0 && strchr(",{[", value[from - 1]) == NULL)
		from--;
	from += strspn(value + from, " ");
	*length = at - from + strcspn(value + at, ",}]");
	return value + from;
}

/* The one pair in which a value between braces differs from another: "the same with corner 53.5 psf"; NULL where more does. */
const char *difference_words(const Library *library, const WhyPair *pair, Arena *arena)
{
	const WhyEdit *edit = pair->edit, *other = pair->other;
	Walk walk = { .library = library, .arena = arena };
	if (strcmp(edit->path, other->path) != 0 || *edit->value != '{' || *other->value != '{')
		return NULL;
	size_t at = 0, length, other_length;
	while (edit->value[at] == other->value[at] && edit->value[at] != '\0')
		at++;
	const char *here = pair_at(edit->value, at, &length), *there = pair_at(other->value, at, &other_length);
	if (strcmp(here + length, there + other_length) != 0)
		return NULL;
	walk_path(&walk, edit->path);
	Flow flow = { arena_text(arena, here, length), arena };
	return arena_printf(arena, "the same with %s", flow_pair(&flow, walk.record));
}

const char *edit_words(const Library *library, const WhyEdit *edit, Arena *arena)
{
	Walk walk = { .library = library, .arena = arena };
	walk_path(&walk, edit->path);
	const char *value = value_words(&walk, edit->value);
	if (walk.where == NULL)
		return arena_printf(arena, "%s: %s", walk.title != NULL ? walk.title : "the submittal", value);
	return walk.title == NULL ? arena_printf(arena, "%s: %s", walk.where, value)
		: arena_printf(arena, "%s, %s: %s", walk.where, walk.title, value);
}
