/* SPDX-License-Identifier: MIT
 * Nodes into the tree, and what is wrong with a key as it is hung in: written twice, merged, or split off by a comma.
 */
#include "loading.h"

#include <string.h>

enum { FEW_KEYS = 24 };

void loading_say(Loading *l, MessageId id, Place place, About about)
{
	complain(l->complaints, id, place, about);
}

void refuse_node(Node *node, Place place)
{
	node->fault = NODE_REFUSED;
	node->place = place;
}

static bool is_same_key(const Node *a, const Node *b)
{
	return a->length == b->length && memcmp(a->text, b->text, a->length) == 0;
}

/* The key of the same text in the map, if there is one; notes this one. */
static Node *find_repeated(Loading *l, Level *map, Node *key)
{
	if (map->node->count < FEW_KEYS) {
		for (Node *k = map->node->first; k != NULL; k = k->next)
			if (is_same_key(k, key))
				return k;
		return NULL;
	}
	if (map->keys == NULL) {
		map->keys = hash_make(l->arena, (size_t)FEW_KEYS * 4);
		for (Node *k = map->node->first; k != NULL; k = k->next)
			hash_put(map->keys, k->text, k->length, k);
	}
	Node *first = hash_get(map->keys, key->text, key->length);
	if (first == NULL)
		hash_put(map->keys, key->text, key->length, key);
	return first;
}

static void append(Level *level, Node *child)
{
	if (level->last != NULL)
		level->last->next = child;
	else
		level->node->first = child;
	level->last = child;
	level->node->count++;
}

/* What is written from one node to the end of another on the same line: with the comma, and the blank behind it or none. */
static const char *text_between(Loading *l, const Node *first, const Node *last)
{
	size_t from = source_offset(l->source, first->place.line, first->place.column);
	size_t to = source_offset(l->source, last->place.line, last->place.column) + last->length;
	if (first->place.line != last->place.line || to < from)
		return arena_printf(l->arena, "%s, %s", first->text, last->text);
	return arena_text(l->arena, l->source->bytes + from, to - from);
}

/* `{thickness: 24 ga, 16 in}`: the comma ended the value, and `16 in` is a key without one. */
static void notice_comma(Loading *l, Level *map)
{
	Node *before = map->last, *key = map->key;
	const char *colon = strchr(key->text, ':');
	if (colon != NULL && colon[1] != '\0') {
		loading_say(l, MESSAGE_YML_23, key->place, (About){ .value = key->text,
			.want = arena_printf(l->arena, "%.*s: %s", (int)(colon - key->text), key->text, colon + 1) });
		return;
	}
	if (before == NULL || before->first->kind != NODE_SCALAR) {
		loading_say(l, MESSAGE_YML_27, key->place, (About){ .key = key->text });
		return;
	}
	if (before->first->fault == NODE_WHOLE)
		loading_say(l, MESSAGE_YML_16, key->place, (About){ .key = before->text, .value = key->text,
			.want = text_between(l, before->first, key) });
	refuse_node(before->first, key->place);
}

/* Hangs a key with its value into the map; a repeated key makes the first one's value unreadable and is left out. */
static void link_key(Loading *l, Level *map, Node *value, bool is_implied)
{
	Node *key = map->key;
	map->key = NULL;
	key->first = value;
	key->count = 1;
	if (is_implied && map->flow && !has_colon(l->source, &map->key_end)) {
		map->key = key;
		notice_comma(l, map);
		map->key = NULL;
		return;
	}
	if (strcmp(key->text, "<<") == 0) {
		loading_say(l, MESSAGE_YML_13, key->place, (About){ .key = key->text });
		return;
	}
	Node *first = find_repeated(l, map, key);
	if (first == NULL) {
		append(map, key);
		return;
	}
	loading_say(l, MESSAGE_YML_09, key->place, (About){ .key = key->text, .also = first->place });
	refuse_node(first->first, key->place);
}

void link_value(Loading *l, Node *value, bool is_implied)
{
	if (l->depth == 0) {
		l->root = value;
		return;
	}
	Level *level = &l->level[l->depth - 1];
	if (level->node->kind == NODE_MAP)
		link_key(l, level, value, is_implied);
	else
		append(level, value);
}

bool waits_for_key(const Loading *l)
{
	return l->depth > 0 && l->level[l->depth - 1].node->kind == NODE_MAP && l->level[l->depth - 1].key == NULL;
}
