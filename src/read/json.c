/* SPDX-License-Identifier: MIT
 * JSON to the same nodes as YAML. The library keeps no places, so the text is scanned for them first: each value and key in the
 * order of the file, which is the order in which the library gives them back. The scan also counts the limits, before anything
 * is built.
 */
#include "earlier.h"
#include "fail.h"
#include "number.h"

#include <jansson.h>
#include <string.h>

enum { MOST_DEPTH = 32, MOST_VALUES = 4000000 };

/* ---- places ---- */

typedef struct {
	const char *at, *end;
	uint32_t line, column;
	uint16_t source;
	int depth;
	Place *place;
	uint32_t count, room;
	Arena *arena;
} Scan;

static void step(Scan *scan)
{
	unsigned char c = (unsigned char)*scan->at++;
	bool next_is_feed = scan->at < scan->end && *scan->at == '\n';
	if (c == '\n' || (c == '\r' && !next_is_feed)) {
		scan->line++;
		scan->column = 1;
	} else if ((c & 0xc0) != 0x80) {
		scan->column++;
	}
}

static void skip_string(Scan *scan)
{
	for (step(scan); scan->at < scan->end && *scan->at != '"'; step(scan))
		if (*scan->at == '\\' && scan->at + 1 < scan->end)
			step(scan);
	if (scan->at < scan->end)
		step(scan);
}

static void skip_word(Scan *scan)
{
	while (scan->at < scan->end && strchr(" \t\r\n,:[]{}\"", *scan->at) == NULL)
		step(scan);
}

/* A value or key at its place; what it is the library finds out. */
static void take_place(Scan *scan)
{
	Place place = { .line = scan->line, .column = scan->column, .source = scan->source };
	char first = *scan->at;
	if (first == '"')
		skip_string(scan);
	else if (first == '{' || first == '[')
		step(scan);
	else
		skip_word(scan);
	place.length = scan->line == place.line && scan->column > place.column ? scan->column - place.column : 1;
	scan->depth += first == '{' || first == '[';
	scan->place = arena_more(scan->arena, scan->place, scan->count, &scan->room, sizeof(Place));
	scan->place[scan->count++] = place;
}

/* False where a limit is passed, at the place where that happens. */
static bool scan_all(Scan *scan)
{
	while (scan->at < scan->end) {
		switch (*scan->at) {
		case ' ': case '\t': case '\r': case '\n': case ',': case ':': case '\0':
			step(scan);
			break;
		case '}': case ']':
			scan->depth--;
			step(scan);
			break;
		default:
			take_place(scan);
			if (scan->depth > MOST_DEPTH || scan->count > MOST_VALUES)
				return false;
		}
	}
	return true;
}

/* ---- nodes ---- */

/* Calls itself nowhere: the values that are not finished stand on a stack as deep as the limit. */
typedef struct {
	json_t *value;
	void *member; /* of an object: the next */
	size_t index; /* of an array: the next */
	Node *node, **link;
} Level;

typedef struct {
	const Scan *scan;
	uint32_t next;
	Level level[MOST_DEPTH + 1];
	int depth;
	Arena *arena;
} Growing;

static Place take_next(Growing *building)
{
	return building->next < building->scan->count ? building->scan->place[building->next++] : (Place){ .source = SOURCE_PREVIOUS };
}

static void set_text(Growing *building, Node *node, const json_t *value)
{
	Arena *arena = building->arena;
	node->kind = NODE_SCALAR;
	if (json_is_string(value)) {
		node->quoted = true;
		node->text = arena_text(arena, json_string_value(value), json_string_length(value));
	} else if (json_is_integer(value)) {
		node->text = arena_printf(arena, "%lld", (long long)json_integer_value(value));
	} else if (json_is_real(value)) {
		node->text = number_shortest(arena, json_real_value(value));
	} else {
		node->text = json_is_true(value) ? "true" : json_is_false(value) ? "false" : "null";
	}
	node->length = (uint32_t)strlen(node->text);
}

/* The node of a value; an object or array is opened and filled by the steps that follow. */
static Node *node_of(Growing *building, json_t *value)
{
	Node *node = TAKE(building->arena, Node, 1);
	node->place = take_next(building);
	if (!json_is_object(value) && !json_is_array(value)) {
		set_text(building, node, value);
		return node;
	}
	bool is_map = json_is_object(value);
	node->kind = is_map ? NODE_MAP : NODE_LIST;
	node->count = (uint32_t)(is_map ? json_object_size(value) : json_array_size(value));
	Level *level = &building->level[building->depth++];
	*level = (Level){ .value = value, .member = is_map ? json_object_iter(value) : NULL, .node = node, .link = &node->first };
	return node;
}

static void add_member(Growing *building, Level *level)
{
	Node *key = TAKE(building->arena, Node, 1);
	const char *text = json_object_iter_key(level->member);
	*key = (Node){ .kind = NODE_KEY, .quoted = true, .place = take_next(building), .count = 1 };
	key->length = (uint32_t)strlen(text);
	key->text = arena_text(building->arena, text, key->length);
	json_t *value = json_object_iter_value(level->member);
	level->member = json_object_iter_next(level->value, level->member);
	*level->link = key;
	level->link = &key->next;
	key->first = node_of(building, value);
}

static void add_element(Growing *building, Level *level)
{
	Node **link = level->link;
	json_t *value = json_array_get(level->value, level->index++);
	Node *node = node_of(building, value);
	*link = node;
	level->link = &node->next;
}

static Node *build(Growing *building, json_t *tree)
{
	Node *root = node_of(building, tree);
	while (building->depth > 0) {
		Level *level = &building->level[building->depth - 1];
		if (level->member != NULL)
			add_member(building, level);
		else if (level->node->kind == NODE_LIST && level->index < level->node->count)
			add_element(building, level);
		else
			building->depth--;
	}
	return root;
}

/* ---- the whole ---- */

static void refuse(Complaints *complaints, const json_error_t *error, const Source *source)
{
	if (json_error_code(error) == json_error_out_of_memory)
		fail("out of memory", NULL);
	Place place = { .source = source->id, .line = error->line > 0 ? (uint32_t)error->line : 1, .length = 1 };
	place.column = error->column > 0 ? (uint32_t)error->column : 1;
	complain(complaints, MESSAGE_PRV_01, place, (About){ .value = arena_text(complaints->arena, error->text, strlen(error->text)) });
	complaints->broken = true;
}

Node *read_json(Arena *arena, const Source *source, Complaints *complaints)
{
	Scan scan = { .at = source->bytes, .end = source->bytes + source->length, .line = 1, .column = 1, .source = source->id,
		.arena = arena };
	if (!scan_all(&scan)) {
		const char *want = scan.depth > MOST_DEPTH ? "values that stand inside each other more than 32 deep"
			: "more than 4,000,000 values";
		complain(complaints, MESSAGE_PRV_02, scan.place[scan.count - 1], (About){ .want = want });
		complaints->broken = true;
		return NULL;
	}
	json_error_t error;
	json_t *tree = json_loadb(source->bytes, source->length, JSON_REJECT_DUPLICATES, &error);
	if (tree == NULL) {
		refuse(complaints, &error, source);
		return NULL;
	}
	Growing building = { .scan = &scan, .arena = arena };
	Node *root = build(&building, tree);
	json_decref(tree);
	return root;
}
