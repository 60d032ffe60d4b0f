/* SPDX-License-Identifier: MIT
 * A YAML file on its way into nodes.
 */
#ifndef LOADING_H
#define LOADING_H

#include "hash.h"
#include "yaml_parts.h"

enum { DEPTH = 32 };

/* A map or list that is being filled. */
typedef struct {
	Node *node, *last; /* last: its last child */
	Node *key; /* of a map: the key whose value comes next */
	yaml_mark_t key_end;
	Hash *keys; /* of a map with many keys */
	bool flow;
} Level;

typedef struct {
	yaml_parser_t parser;
	Arena *arena;
	const Source *source;
	Complaints *complaints;
	Node *root;
	Level level[DEPTH];
	uint32_t depth, nodes;
	Node *recent; /* the value that ended last, and the line it ended in */
	size_t recent_line;
	bool comments; /* the file has comments behind values */
	bool stop;
} Loading;

void loading_say(Loading *l, MessageId id, Place place, About about);

/* Makes a value unreadable, at the place of the message that stands for it. */
void refuse_node(Node *node, Place place);

/* Whether the next node is the key of a map. */
bool waits_for_key(const Loading *l);

/* Hangs a value under its key or into its list; `is_implied`: nothing was written. A key that is repeated, a merge key, or the
 * rest of a value that a comma split is complained of and left out. */
void link_value(Loading *l, Node *value, bool is_implied);

#endif
