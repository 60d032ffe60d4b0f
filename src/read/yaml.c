/* SPDX-License-Identifier: MIT
 * libyaml's events to nodes. The limits are counted as the events come: libyaml has no limit on depth and is quadratic in it.
 *
 * A value that YAML may have changed behind the writer's back stays in the tree with a fault: it is unreadable, never absent.
 */
#include "fail.h"
#include "hash.h"
#include "pipeline.h"
#include "yaml_parts.h"

#include <string.h>

enum { DEPTH = 32, NODES = 100000, SCALAR = 65536, LENGTH = 4 << 20, FEW_KEYS = 24 };

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

static Place place_of(const Loading *l, const yaml_mark_t *start, const yaml_mark_t *end)
{
	uint32_t length = start->line == end->line && end->column > start->column ? (uint32_t)(end->column - start->column) : 1;
	return (Place){ (uint32_t)start->line + 1, (uint32_t)start->column + 1, length, l->source->id };
}

static void say(Loading *l, MessageId id, Place place, About about)
{
	complain(l->complaints, id, place, about);
}

/* A limit that ends the reading. */
static void give_up(Loading *l, MessageId id, Place place, About about)
{
	say(l, id, place, about);
	l->complaints->broken = l->stop = true;
}

static Node *make_node(Loading *l, NodeKind kind, const yaml_event_t *e)
{
	Node *node = TAKE(l->arena, Node, 1);
	node->kind = (uint8_t)kind;
	node->place = place_of(l, &e->start_mark, &e->end_mark);
	if (++l->nodes > NODES)
		give_up(l, MESSAGE_YML_06, node->place, (About){ .want = "100,000" });
	return node;
}

/* ---- linking ---- */

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
		say(l, MESSAGE_YML_23, key->place, (About){ .value = key->text,
			.want = arena_printf(l->arena, "%.*s: %s", (int)(colon - key->text), key->text, colon + 1) });
		return;
	}
	if (before == NULL || before->first->kind != NODE_SCALAR) {
		say(l, MESSAGE_YML_27, key->place, (About){ .key = key->text });
		return;
	}
	if (before->first->fault == NODE_WHOLE)
		say(l, MESSAGE_YML_16, key->place, (About){ .key = before->text, .value = key->text,
			.want = text_between(l, before->first, key) });
	before->first->fault = NODE_REFUSED;
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
		say(l, MESSAGE_YML_13, key->place, (About){ .key = key->text });
		return;
	}
	Node *first = find_repeated(l, map, key);
	if (first == NULL) {
		append(map, key);
		return;
	}
	say(l, MESSAGE_YML_09, key->place, (About){ .key = key->text, .also = first->place });
	first->first->fault = NODE_REFUSED;
}

static void link_value(Loading *l, Node *value, bool is_implied)
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

static bool waits_for_key(const Loading *l)
{
	return l->depth > 0 && l->level[l->depth - 1].node->kind == NODE_MAP && l->level[l->depth - 1].key == NULL;
}

/* ---- events ---- */

/* Anchors and tags are refused by name; the value they stand at is not read. */
static void notice_marks(Loading *l, Node *node, const yaml_char_t *anchor, const yaml_char_t *tag)
{
	if (anchor != NULL)
		say(l, MESSAGE_YML_11, node->place, (About){ .value = arena_printf(l->arena, "&%s", (const char *)anchor) });
	if (tag != NULL)
		say(l, MESSAGE_YML_12, node->place, (About){ .value = arena_text(l->arena, (const char *)tag, strlen((const char *)tag)) });
	if (anchor != NULL || tag != NULL)
		node->fault = NODE_REFUSED;
}

/* Escapes in double quotes may bring in what the file itself may not hold: the first such character, or -1. */
static int control_in(const char *text, size_t length)
{
	for (size_t i = 0; i < length; i++)
		if (((unsigned char)text[i] < 0x20 && text[i] != '\t' && text[i] != '\n' && text[i] != '\r') || text[i] == 0x7f)
			return (unsigned char)text[i];
	return -1;
}

static void take_text(Loading *l, Node *node, const yaml_event_t *e)
{
	const char *text = (const char *)e->data.scalar.value;
	size_t length = e->data.scalar.length;
	int control = e->data.scalar.style == YAML_DOUBLE_QUOTED_SCALAR_STYLE ? control_in(text, length) : -1;
	node->text = "";
	if (length > SCALAR)
		say(l, MESSAGE_YML_07, node->place, (About){ .want = "64 KiB" });
	else if (control >= 0)
		say(l, MESSAGE_YML_02, node->place, (About){ .value = arena_printf(l->arena, "U+%04X, by an escape", (unsigned)control) });
	else {
		node->text = arena_text(l->arena, text, length);
		node->length = (uint32_t)length;
		return;
	}
	node->fault = NODE_REFUSED;
}

static void add_scalar(Loading *l, const yaml_event_t *e)
{
	bool is_key = waits_for_key(l);
	Node *node = make_node(l, is_key ? NODE_KEY : NODE_SCALAR, e);
	node->quoted = e->data.scalar.style != YAML_PLAIN_SCALAR_STYLE;
	take_text(l, node, e);
	notice_marks(l, node, e->data.scalar.anchor, e->data.scalar.tag);
	if (is_key) {
		l->level[l->depth - 1].key = node;
		l->level[l->depth - 1].key_end = e->end_mark;
		return;
	}
	const Node *key = l->depth > 0 ? l->level[l->depth - 1].key : NULL;
	bool is_implied = node->length == 0 && !node->quoted;
	if (l->comments && !node->quoted && node->fault == NODE_WHOLE)
		notice_comment(l->source, &(Written){ node, key, e->end_mark }, l->complaints);
	link_value(l, node, is_implied);
	l->recent = node;
	l->recent_line = e->end_mark.line + 1;
}

/* What holds the value that is too deep, up to the nearest key, is not read; the message stands for it. */
static void refuse_levels(Loading *l)
{
	for (uint32_t i = l->depth; i-- > 0 && l->level[i].node->kind == NODE_LIST;)
		l->level[i].node->fault = NODE_REFUSED;
}

static void open_level(Loading *l, const yaml_event_t *e, NodeKind kind)
{
	Place place = place_of(l, &e->start_mark, &e->end_mark);
	if (waits_for_key(l)) {
		give_up(l, MESSAGE_YML_08, place, (About){ 0 });
		return;
	}
	if (l->depth == DEPTH) {
		refuse_levels(l);
		give_up(l, MESSAGE_YML_05, place, (About){ .want = "32" });
		return;
	}
	Node *node = make_node(l, kind, e);
	bool flow;
	if (kind == NODE_MAP) {
		notice_marks(l, node, e->data.mapping_start.anchor, e->data.mapping_start.tag);
		flow = e->data.mapping_start.style == YAML_FLOW_MAPPING_STYLE;
	} else {
		notice_marks(l, node, e->data.sequence_start.anchor, e->data.sequence_start.tag);
		flow = e->data.sequence_start.style == YAML_FLOW_SEQUENCE_STYLE;
	}
	link_value(l, node, false);
	l->level[l->depth++] = (Level){ .node = node, .flow = flow };
}

/* A block ends only at the sign behind it, so its end says nothing of where it was cut. */
static void close_level(Loading *l, const yaml_event_t *e)
{
	const Level *level = &l->level[--l->depth];
	if (!level->flow)
		return;
	l->recent = level->node;
	l->recent_line = e->end_mark.line + 1;
}

/* An alias is not followed: it stands as an empty value that is refused. */
static void add_alias(Loading *l, const yaml_event_t *e)
{
	Node *node = make_node(l, NODE_SCALAR, e);
	node->text = "";
	node->fault = NODE_REFUSED;
	say(l, MESSAGE_YML_11, node->place, (About){ .value = arena_printf(l->arena, "*%s", (const char *)e->data.alias.anchor) });
	if (waits_for_key(l)) {
		l->level[l->depth - 1].key = node;
		node->kind = NODE_KEY;
	} else
		link_value(l, node, false);
}

static void take_event(Loading *l, const yaml_event_t *e)
{
	switch (e->type) {
	case YAML_SCALAR_EVENT:
		add_scalar(l, e);
		break;
	case YAML_MAPPING_START_EVENT:
		open_level(l, e, NODE_MAP);
		break;
	case YAML_SEQUENCE_START_EVENT:
		open_level(l, e, NODE_LIST);
		break;
	case YAML_MAPPING_END_EVENT:
	case YAML_SEQUENCE_END_EVENT:
		close_level(l, e);
		break;
	case YAML_ALIAS_EVENT:
		add_alias(l, e);
		break;
	case YAML_DOCUMENT_START_EVENT:
		if (l->root != NULL) {
			say(l, MESSAGE_YML_10, place_of(l, &e->start_mark, &e->end_mark), (About){ 0 });
			l->stop = true;
		}
		break;
	default:
		break;
	}
}

/* A key whose value never came, because the file broke between them, stands in the tree with a value that is refused. */
static void close_open_key(Loading *l)
{
	if (l->depth == 0 || l->level[l->depth - 1].key == NULL)
		return;
	Node *value = TAKE(l->arena, Node, 1);
	*value = (Node){ .kind = NODE_SCALAR, .fault = NODE_REFUSED, .text = "", .place = l->level[l->depth - 1].key->place };
	link_value(l, value, false);
}

static void take_break(Loading *l, bool is_cut)
{
	const yaml_parser_t *p = &l->parser;
	if (p->error == YAML_MEMORY_ERROR || p->error == YAML_NO_ERROR)
		fail("out of memory", l->source->name);
	l->complaints->broken = l->stop = true;
	if (is_cut)
		return; /* the bytes where it was cut have their message */
	Break at = { .problem = p->problem != NULL ? p->problem : "", .context = p->context != NULL ? p->context : "",
		.line = (uint32_t)p->problem_mark.line + 1, .column = (uint32_t)p->problem_mark.column + 1 };
	if (p->context != NULL) {
		at.context_line = (uint32_t)p->context_mark.line + 1;
		at.context_column = (uint32_t)p->context_mark.column + 1;
	}
	advise_break(l->source, &at, l->arena, l->complaints);
	/* The value that the break cut through has this message; what it looks like now is not worth another. */
	const Complaint *said = &l->complaints->at[l->complaints->count - 1];
	if (l->recent != NULL && l->recent_line >= said->place.line)
		l->recent->fault = NODE_REFUSED;
}

static void take_events(Loading *l, bool is_cut)
{
	while (!l->stop) {
		yaml_event_t e;
		if (!yaml_parser_parse(&l->parser, &e)) {
			take_break(l, is_cut);
			break;
		}
		bool is_end = e.type == YAML_STREAM_END_EVENT;
		take_event(l, &e);
		yaml_event_delete(&e);
		if (is_end)
			break;
	}
	close_open_key(l);
}

Node *read_yaml(Arena *arena, const Source *source, Complaints *complaints)
{
	Place whole = { .source = source->id };
	if (source->length > LENGTH) {
		complain(complaints, MESSAGE_FIL_03, whole, (About){ .want = "4 MiB" });
		complaints->broken = true;
		return NULL;
	}
	Loading l = { .arena = arena, .source = source, .complaints = complaints, .comments = has_comments(source) };
	size_t good = find_bad_bytes(source, complaints);
	bool is_cut = good < source->length;
	if (is_cut)
		good = source_offset(source, source_place(source, good, 1).line, 1);
	if (!yaml_parser_initialize(&l.parser))
		fail("out of memory", source->name);
	yaml_parser_set_encoding(&l.parser, YAML_UTF8_ENCODING);
	yaml_parser_set_input_string(&l.parser, (const unsigned char *)source->bytes, good);
	take_events(&l, is_cut);
	yaml_parser_delete(&l.parser);
	if (l.root == NULL && !complaints->broken) {
		complain(complaints, MESSAGE_FIL_04, whole, (About){ 0 });
		complaints->broken = true;
	}
	return l.root;
}
