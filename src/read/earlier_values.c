/* SPDX-License-Identifier: MIT
 * Reading a report: one value after another, each refused at its place if it is not what a report has there.
 */
#include "earlier_values.h"
#include "number.h"

#include <string.h>

const char *report_shown(const Node *node)
{
	return node->kind == NODE_LIST ? "a list" : node->kind == NODE_MAP ? "a group of keys" : node->text;
}

void report_refuse(const Reader *reader, const char *key, const Node *node, const char *want)
{
	complain(reader->faults, MESSAGE_PRV_04, node->place, (About){ .key = key, .value = report_shown(node), .want = want });
}

static bool is_null(const Node *node)
{
	return node->kind == NODE_SCALAR && !node->quoted && strcmp(node->text, "null") == 0;
}

/* What stands under a key; NULL if nothing does, or null. */
Node *report_look(const Node *map, const char *key)
{
	Node *node = node_find(map, key);
	return node != NULL && !is_null(node) ? node : NULL;
}

/* The same, and it must be there, if only as null. */
Node *report_look_for(const Reader *reader, const Node *map, const char *key)
{
	if (node_find(map, key) == NULL)
		complain(reader->faults, MESSAGE_PRV_03, map->place, (About){ .key = key });
	return report_look(map, key);
}

const char *report_text(const Reader *reader, const Node *node, const char *key)
{
	if (node == NULL)
		return NULL;
	if (node->kind == NODE_SCALAR && node->quoted)
		return node->text;
	report_refuse(reader, key, node, "a text");
	return NULL;
}

const char *report_text_at(const Reader *reader, const Node *map, const char *key)
{
	return report_text(reader, report_look(map, key), key);
}

const char *report_text_due(const Reader *reader, const Node *map, const char *key)
{
	return report_text(reader, report_look_for(reader, map, key), key);
}

/* A text that may not be null. */
const char *report_text_needed(const Reader *reader, const Node *map, const char *key)
{
	Node *node = node_find(map, key);
	if (node != NULL && is_null(node))
		report_refuse(reader, key, node, "a text");
	return report_text_due(reader, map, key);
}

uint32_t report_count(const Reader *reader, const Node *node, const char *key, uint32_t most)
{
	if (node == NULL)
		return 0;
	double value = 0;
	bool is_number = node->kind == NODE_SCALAR && !node->quoted && number_read(node->text, node->length, &value);
	if (is_number && value >= 0 && value <= most && value == (double)(uint32_t)value)
		return (uint32_t)value;
	report_refuse(reader, key, node, arena_printf(reader->arena, "a count up to %u", (unsigned)most));
	return 0;
}

Node *report_list(const Reader *reader, const Node *map, const char *key)
{
	Node *node = report_look_for(reader, map, key);
	if (node == NULL || node->kind == NODE_LIST)
		return node;
	report_refuse(reader, key, node, "a list");
	return NULL;
}

bool report_is_map(const Reader *reader, const Node *node, const char *key)
{
	if (node->kind != NODE_MAP)
		report_refuse(reader, key, node, "a group of keys");
	return node->kind == NODE_MAP;
}

/* The number of a word in a closed set of `count`, or 0, which has been said. */
int report_word(const Reader *reader, const Node *map, const char *key, const char *const *words)
{
	const char *text = report_text_needed(reader, map, key);
	for (int i = 0; text != NULL && words[i] != NULL; i++)
		if (strcmp(words[i], text) == 0)
			return i;
	if (text != NULL)
		report_refuse(reader, key, node_find(map, key), "a word of the program");
	return 0;
}
