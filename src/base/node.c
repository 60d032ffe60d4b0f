/* SPDX-License-Identifier: MIT
 * Finding and changing nodes by path: names of keys and numbers of list elements (from 0), joined by full stops.
 */
#include "node.h"

#include <string.h>

/* One step of a path, cut off its front. */
typedef struct {
	const char *text;
	size_t length;
} Step;

static Step next_step(const char **path)
{
	Step step = { *path, strcspn(*path, ".") };
	*path += step.length + ((*path)[step.length] == '.');
	return step;
}

/* The link that holds the key of a map, or the NULL at its end. */
static Node **key_link(Node *map, Step step)
{
	Node **link = &map->first;
	while (*link != NULL && ((*link)->length != step.length || memcmp((*link)->text, step.text, step.length) != 0))
		link = &(*link)->next;
	return link;
}

static bool step_number(Step step, uint32_t *number)
{
	*number = 0;
	for (size_t i = 0; i < step.length; i++) {
		if (step.text[i] < '0' || step.text[i] > '9')
			return false;
		*number = *number * 10 + (uint32_t)(step.text[i] - '0');
	}
	return step.length > 0 && step.length < 9;
}

/* The link that holds the key or element a step leads to, or the NULL where a new one belongs; NULL if it leads nowhere. */
static Node **child_link(Node *node, Step step)
{
	uint32_t number;
	if (node->kind == NODE_MAP)
		return key_link(node, step);
	if (node->kind != NODE_LIST || !step_number(step, &number) || number > node->count)
		return NULL;
	Node **link = &node->first;
	while (number-- > 0)
		link = &(*link)->next;
	return link;
}

Node *node_find(const Node *map, const char *key)
{
	size_t length = strlen(key);
	for (Node *child = map->kind == NODE_MAP ? map->first : NULL; child != NULL; child = child->next)
		if (child->length == length && memcmp(child->text, key, length) == 0)
			return child->first;
	return NULL;
}

/* Walks to the node that holds the last step of a path; NULL if the path leads nowhere. */
static Node *walk(Node *root, const char *path, Step *last)
{
	Node *node = root;
	for (*last = next_step(&path); *path != '\0'; *last = next_step(&path)) {
		Node **link = child_link(node, *last);
		if (link == NULL || *link == NULL)
			return NULL;
		node = (*link)->kind == NODE_KEY ? (*link)->first : *link;
		if (node == NULL)
			return NULL;
	}
	return node;
}

Node *node_at(Node *root, const char *path)
{
	if (*path == '\0')
		return root;
	Step last;
	Node *holder = walk(root, path, &last);
	Node **link = holder != NULL ? child_link(holder, last) : NULL;
	if (link == NULL || *link == NULL)
		return NULL;
	return (*link)->kind == NODE_KEY ? (*link)->first : *link;
}

/* A copy of what stood there says where the new value stands; a new key or element stands where its holder does. */
static bool place_value(Arena *arena, Node *holder, Step last, Node *value)
{
	Node **link = child_link(holder, last);
	if (link == NULL)
		return false;
	Node *old = *link;
	if (old == NULL)
		holder->count++;
	if (holder->kind == NODE_LIST) {
		value->next = old != NULL ? old->next : NULL;
		*link = value;
	} else {
		value->next = NULL;
		if (old == NULL) {
			old = *link = TAKE(arena, Node, 1);
			*old = (Node){ .kind = NODE_KEY, .place = holder->place, .length = (uint32_t)last.length, .count = 1 };
			old->text = arena_text(arena, last.text, last.length);
		}
		old->first = value;
	}
	return true;
}

bool node_graft(Arena *arena, Node *root, const char *path, Node *value)
{
	Step last;
	Node *holder = walk(root, path, &last);
	return holder != NULL && place_value(arena, holder, last, value);
}

bool node_set(Arena *arena, Node *root, const char *path, const char *text)
{
	Step last;
	Node *holder = walk(root, path, &last);
	if (holder == NULL || *text == '[' || *text == '{')
		return false;
	Node *old = node_at(root, path), *value = TAKE(arena, Node, 1);
	value->kind = NODE_SCALAR;
	value->place = old != NULL ? old->place : holder->place;
	value->length = (uint32_t)strlen(text);
	value->text = arena_text(arena, text, value->length);
	return place_value(arena, holder, last, value);
}

bool node_delete(Node *root, const char *path)
{
	Step last;
	Node *holder = walk(root, path, &last);
	Node **link = holder != NULL ? child_link(holder, last) : NULL;
	if (link == NULL || *link == NULL)
		return false;
	*link = (*link)->next;
	holder->count--;
	return true;
}
