/* SPDX-License-Identifier: MIT
 * Node: a YAML or JSON file as a tree with places. A map holds keys, each key holds one value in `first`.
 */
#ifndef NODE_H
#define NODE_H

#include "source.h"

typedef enum { NODE_SCALAR, NODE_MAP, NODE_LIST, NODE_KEY } NodeKind;

/* What YAML did to a value behind the writer's back, or that it was refused (written twice, alias, tag, split by a comma); such a
 * value is unreadable, never absent; it stands at the place of its message. */
typedef enum { NODE_WHOLE, NODE_CUT_BY_COMMENT, NODE_REFUSED } NodeFault;

typedef struct Node {
	uint8_t kind, fault;
	bool quoted; /* a scalar in quotes, or a block text */
	Place place;
	const char *text; /* of a scalar or key */
	uint32_t length, count; /* bytes of text; children of a map or list */
	struct Node *first, *next;
} Node;

/* The value under `key` of a map, or NULL. */
Node *node_find(const Node *map, const char *key);

/* The node at a path such as `roof_areas.0.clips.0.item`, or NULL. */
Node *node_at(Node *root, const char *path);

/* Sets the scalar at a path, making the last key if it is missing; false if the path does not lead anywhere. A `text` that
 * starts with `[` or `{` is not parsed: use node_graft. */
bool node_set(Arena *arena, Node *root, const char *path, const char *text);

/* Puts `value` at a path, in place of what stood there or as a new last key or list element. */
bool node_graft(Arena *arena, Node *root, const char *path, Node *value);

/* Takes a key with its value, or a list element, out of the tree. */
bool node_delete(Node *root, const char *path);

#endif
