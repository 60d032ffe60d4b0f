/* SPDX-License-Identifier: MIT
 * A map of nodes to a record, and all records inside it: one filler for every record of form.def.
 *
 * It goes down by the form's own nesting, never by the file's: a key that the form does not have is not entered.
 */
#include "filling.h"
#include "hash.h"
#include "said.h"
#include "suggest.h"

#include <string.h>

enum { MOST_FIELDS = 64, MOST_LEVELS = 8 };

/* ---- naming a record to people ---- */

static const char *name_in(const Record *record, const Node *map)
{
	for (uint32_t i = 0; i < record->count; i++)
		if (record->field[i].kind == IS_NAME)
			for (const Node *key = map->first; key != NULL; key = key->next)
				if (key->first->kind == NODE_SCALAR && key->first->length > 0 && strcmp(key->text, record->field[i].key) == 0)
					return key->first->text;
	return NULL;
}

/* "Main roof / clips / 2"; the outermost record is the file itself and has no name here. */
static const char *where_of(const struct Standing *at, Arena *arena)
{
	const struct Standing *level[MOST_LEVELS];
	size_t count = 0;
	for (; at != NULL && at->up != NULL && count < MOST_LEVELS; at = at->up)
		level[count++] = at;
	const char *where = NULL;
	while (count-- > 0) {
		const char *name = name_in(level[count]->record, level[count]->map);
		if (name == NULL && level[count]->index > 0)
			name = arena_printf(arena, "%s / %u", level[count]->key, (unsigned)level[count]->index);
		else if (name == NULL)
			name = level[count]->key;
		where = where == NULL ? name : arena_printf(arena, "%s / %s", where, name);
	}
	return where;
}

void reading_complain(Reading *reading, MessageId id, Place place, About about)
{
	if (reading->complaints == NULL)
		return;
	if (about.where == NULL)
		about.where = reading->where != NULL ? reading->where : where_of(reading->standing, reading->arena);
	complain(reading->complaints, id, place, about);
}

/* ---- what stands under a key ---- */

static void refuse(const Field *field, const Node *node, void *row)
{
	*given_at(field, row) = (Given){ .place = node->place, .typed = node->text, .said = SAID_UNREADABLE };
}

static void refuse_shape(const Field *field, const Node *node, void *row, Reading *reading)
{
	refuse(field, node, row);
	MessageId id = node->kind == NODE_LIST ? MESSAGE_FRM_03 : MESSAGE_FRM_04;
	reading_complain(reading, id, node->place, (About){ .key = field->key, .want = example_of(field, reading->arena) });
}

static void fill_scalar(const Field *field, const Node *node, void *row, Reading *reading)
{
	bool is_null = !node->quoted && (strcmp(node->text, "~") == 0 || strcmp(node->text, "null") == 0);
	read_value(field, node->text, is_null ? 0 : node->length, node->place, row, reading);
}

static void fill_texts(const Field *field, const Node *list, void *row, Reading *reading)
{
	Texts *texts = (Texts *)(void *)given_at(field, row);
	Text *text = TAKE(reading->arena, Text, list->count + 1);
	texts->given = (Given){ .place = list->place, .said = list->count > 0 ? SAID_VALUE : SAID_NOTHING };
	texts->at = text;
	for (const Node *n = list->first; n != NULL; n = n->next) {
		if (n->kind != NODE_SCALAR || n->fault != NODE_WHOLE) {
			texts->given.said = SAID_UNREADABLE;
			texts->given.place = n->place;
			if (n->fault == NODE_WHOLE)
				reading_complain(reading, n->kind == NODE_LIST ? MESSAGE_FRM_03 : MESSAGE_FRM_04, n->place,
					(About){ .key = field->key, .want = example_of(field, reading->arena) });
			continue;
		}
		text[texts->count++] = (Text){ { .place = n->place, .typed = n->text, .said = SAID_VALUE }, n->text };
	}
}

/* ---- values by zone ---- */

static int said_rank(Said said)
{
	return said == SAID_UNREADABLE ? 4 : said == SAID_BY_OTHERS ? 3 : said == SAID_UNKNOWN ? 2 : said == SAID_VALUE ? 1 : 0;
}

static void fill_zone(const Field *field, const Node *key, ZoneValue *zone, Reading *reading)
{
	const Node *node = key->first, *rest = NULL;
	zone->zone = strcmp(key->text, "edge") == 0 ? "perimeter" : key->text;
	zone->given = (Given){ .place = node->place, .typed = node->text, .said = SAID_UNREADABLE };
	Cell cell = { field, key->text, node->text, node->length, &zone->given, reading };
	if (node->fault != NODE_WHOLE)
		return;
	Said said = node->kind == NODE_SCALAR ? SAID_VALUE : said_by_map(node, &rest);
	const char *text = rest != NULL && rest->kind == NODE_SCALAR ? rest->text : "";
	size_t length = 0;
	if (node->kind == NODE_SCALAR)
		said = said_by_text(node->text, node->length, &text, &length);
	if (said != SAID_VALUE)
		take_said(&cell, said, text);
	else if (node->kind != NODE_SCALAR)
		reading_complain(reading, node->kind == NODE_LIST ? MESSAGE_FRM_03 : MESSAGE_FRM_04, node->place,
			(About){ .key = key->text, .want = example_of(field, reading->arena) });
	else if (node->length == 0)
		zone->given.said = SAID_NOTHING;
	else
		read_number(&cell, &zone->value);
}

/* The whole waits if one zone does: what is not known of a corner must not be judged by the field. */
static void fill_zones(const Field *field, const Node *map, void *row, Reading *reading)
{
	ByZone *zones = (ByZone *)(void *)given_at(field, row);
	ZoneValue *zone = TAKE(reading->arena, ZoneValue, map->count + 1);
	zones->given = (Given){ .place = map->place, .said = SAID_NOTHING };
	zones->at = zone;
	for (const Node *key = map->first; key != NULL; key = key->next) {
		fill_zone(field, key, &zone[zones->count], reading);
		const Given *given = &zone[zones->count].given;
		if (given->said == SAID_NOTHING)
			continue;
		zones->count++;
		if (said_rank(given->said) > said_rank(zones->given.said)) {
			zones->given.said = given->said;
			zones->given.typed = given->said == SAID_VALUE ? NULL : given->typed;
			zones->given.place = given->said == SAID_UNREADABLE ? given->place : map->place;
		}
	}
}

/* ---- records inside ---- */

static void fill_one(const Field *field, Node *node, void *row, Reading *reading)
{
	void *inside = given_at(field, row);
	if (node->kind == NODE_LIST) {
		refuse(field, node, row);
		const Field *first = field->record->field;
		reading_complain(reading, MESSAGE_FRM_05, node->place, (About){ .key = field->key, .value = "a list",
			.want = arena_printf(reading->arena, "%s: %s", first->key, example_of(first, reading->arena)) });
		return;
	}
	const struct Standing *up = reading->standing;
	/* An optional group says what differs from another record; so its absent keys are not assumed. */
	struct Standing here = { .up = up, .map = node, .record = field->record, .key = field->key,
		.overrides = (up != NULL && up->overrides) || field->need == NEED_OPTIONAL };
	reading->standing = &here;
	fill_record(field->record, node, inside, reading);
	reading->standing = up;
}

/* What is in an entry cannot be read, so every key of it waits, and its message stands for all. */
static void refuse_entry(const Field *list, const Node *node, void *row, Reading *reading)
{
	*(Given *)row = (Given){ .place = node->place, .said = SAID_UNREADABLE };
	for (uint32_t i = 0; i < list->record->count; i++)
		refuse(&list->record->field[i], node, row);
	if (node->fault != NODE_WHOLE)
		return;
	const Field *first = list->record->field;
	const char *value = node->kind == NODE_LIST ? "a list" : node->length == 0 ? "nothing" : node->text;
	reading_complain(reading, MESSAGE_FRM_07, node->place, (About){ .key = list->key, .value = value,
		.want = arena_printf(reading->arena, "%s: %s", first->key, example_of(first, reading->arena)) });
}

static void fill_entry(const Field *list, Node *node, uint32_t index, void *row, Reading *reading)
{
	const struct Standing *up = reading->standing;
	struct Standing here = { .up = up, .map = node, .record = list->record, .key = list->key, .index = index,
		.overrides = up != NULL && up->overrides };
	reading->standing = &here;
	fill_record(list->record, node, row, reading);
	reading->standing = up;
	if (node->first != NULL)
		((Given *)row)->place = node->first->place;
}

/* Two roof areas or two openings of one name could not be told apart in any later round. */
static void find_same_names(const Field *list, const List *rows, Reading *reading)
{
	const Field *name = field_find(list->record, "name", 4);
	if (name == NULL || name->kind != IS_NAME || rows->count < 2)
		return;
	Hash *seen = hash_make(reading->arena, rows->count);
	for (uint32_t i = 0; i < rows->count; i++) {
		Text *text = (Text *)(void *)given_at(name, (char *)rows->row + i * list->record->size);
		if (text->given.said != SAID_VALUE)
			continue;
		const Text *first = hash_get(seen, text->text, strlen(text->text));
		if (first == NULL)
			hash_put(seen, text->text, strlen(text->text), text);
		else
			reading_complain(reading, MESSAGE_FRM_09, text->given.place,
				(About){ .key = list->key, .value = text->text, .also = first->given.place });
	}
}

static void fill_list(const Field *field, Node *node, void *row, Reading *reading)
{
	if (node->kind == NODE_MAP) {
		refuse(field, node, row);
		const Field *first = field->record->field;
		reading_complain(reading, MESSAGE_FRM_06, node->place, (About){ .key = field->key, .value = "one group of keys",
			.want = arena_printf(reading->arena, "%s: %s", first->key, example_of(first, reading->arena)) });
		return;
	}
	List *list = (List *)(void *)given_at(field, row);
	list->given = (Given){ .place = node->place, .said = node->count > 0 ? SAID_VALUE : SAID_NOTHING };
	list->count = node->count;
	list->row = arena_take(reading->arena, node->count + 1, field->record->size);
	char *at = list->row;
	uint32_t index = 1;
	for (Node *n = node->first; n != NULL; n = n->next, index++, at += field->record->size) {
		if (n->kind == NODE_MAP && n->fault == NODE_WHOLE)
			fill_entry(field, n, index, at, reading);
		else
			refuse_entry(field, n, at, reading);
	}
	find_same_names(field, list, reading);
}

static void fill_field(const Field *field, Node *node, void *row, Reading *reading)
{
	const Node *rest = NULL;
	Said said = said_by_map(node, &rest);
	if (node->fault != NODE_WHOLE)
		refuse(field, node, row);
	else if (said != SAID_VALUE) {
		Given *given = given_at(field, row);
		*given = (Given){ .place = node->place, .typed = said == SAID_BY_OTHERS ? "by others" : "not applicable" };
		Cell cell = { field, field->key, given->typed, strlen(given->typed), given, reading };
		take_said(&cell, said, rest->kind == NODE_SCALAR ? rest->text : "");
	} else if (node->kind == NODE_SCALAR)
		fill_scalar(field, node, row, reading);
	else if (field->kind == IS_ONE)
		fill_one(field, node, row, reading);
	else if (field->kind == IS_LIST)
		fill_list(field, node, row, reading);
	else if (field->kind == IS_TEXTS && node->kind == NODE_LIST)
		fill_texts(field, node, row, reading);
	else if (field->kind == IS_BY_ZONE && node->kind == NODE_MAP)
		fill_zones(field, node, row, reading);
	else
		refuse_shape(field, node, row, reading);
}

/* ---- keys ---- */

/* Files follow the form's order: the search goes on behind the field found last. */
static const Field *find_from(const Record *record, const Node *key, uint32_t *start)
{
	for (uint32_t i = 0; i < record->count; i++) {
		const Field *field = &record->field[(*start + i) % record->count];
		if (*field->key == *key->text && strncmp(field->key, key->text, key->length) == 0 && field->key[key->length] == '\0') {
			*start = (uint32_t)(field - record->field) + 1;
			return field;
		}
	}
	return NULL;
}

/* A key that the form does not have. The key it is a misspelling of counts as written: it is neither missing nor assumed. */
static void refuse_key(const Record *record, const Node *key, uint64_t seen, void *row, Reading *reading)
{
	const char *word[MOST_FIELDS];
	const Field *field[MOST_FIELDS];
	size_t count = 0;
	for (uint32_t i = 0; i < record->count; i++)
		if ((seen >> i & 1) == 0 && given_at(&record->field[i], row)->said == SAID_NOTHING) {
			word[count] = record->field[i].key;
			field[count++] = &record->field[i];
		}
	int nearest = -1;
	if (reading->complaints != NULL && reading->complaints->suggestions < MOST_SUGGESTIONS) {
		reading->complaints->suggestions++;
		nearest = suggest(key->text, word, count);
	}
	if (nearest < 0) {
		reading_complain(reading, MESSAGE_FRM_02, key->place, (About){ .key = key->text });
		return;
	}
	*given_at(field[nearest], row) = (Given){ .place = key->place, .said = SAID_UNREADABLE };
	reading_complain(reading, MESSAGE_FRM_01, key->place,
		(About){ .key = key->text, .want = word[nearest], .accounts_for = field[nearest], .row = row });
}

void fill_record(const Record *record, Node *map, void *row, Reading *reading)
{
	*(Given *)row = (Given){ .place = map->place, .said = SAID_VALUE };
	uint64_t seen = 0;
	uint32_t start = 0, unknown = 0;
	for (const Node *key = map->first; key != NULL; key = key->next) {
		const Field *field = find_from(record, key, &start);
		if (field == NULL) {
			unknown++;
			continue;
		}
		seen |= UINT64_C(1) << (field - record->field);
		fill_field(field, key->first, row, reading);
	}
	for (const Node *key = map->first; key != NULL && unknown > 0; key = key->next)
		if (field_find(record, key->text, key->length) == NULL) {
			refuse_key(record, key, seen, row, reading);
			unknown--;
		}
	finish_record(record, row, reading);
}
