/* SPDX-License-Identifier: MIT
 * libyaml's events to nodes. The limits are counted as the events come: libyaml has no limit on depth and is quadratic in it.
 *
 * A value that YAML may have changed behind the writer's back stays in the tree with a fault: it is unreadable, never absent.
 */
#include "fail.h"
#include "pipeline.h"
#include "loading.h"

#include <string.h>

enum { NODES = 100000, SCALAR = 65536, LENGTH = 4 << 20 };

static Place place_of(const Loading *l, const yaml_mark_t *start, const yaml_mark_t *end)
{
	uint32_t length = start->line == end->line && end->column > start->column ? (uint32_t)(end->column - start->column) : 1;
	return (Place){ (uint32_t)start->line + 1, (uint32_t)start->column + 1, length, l->source->id };
}

/* A limit that ends the reading. */
static void give_up(Loading *l, MessageId id, Place place, About about)
{
	loading_say(l, id, place, about);
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

/* Anchors and tags are refused by name; the value they stand at is not read. */
static void notice_marks(Loading *l, Node *node, const yaml_char_t *anchor, const yaml_char_t *tag)
{
	if (anchor != NULL)
		loading_say(l, MESSAGE_YML_11, node->place, (About){ .value = arena_printf(l->arena, "&%s", (const char *)anchor) });
	if (tag != NULL)
		loading_say(l, MESSAGE_YML_12, node->place, (About){ .value = arena_printf(l->arena, "%s", (const char *)tag) });
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
		loading_say(l, MESSAGE_YML_07, node->place, (About){ .want = "64 KiB" });
	else if (control >= 0)
		loading_say(l, MESSAGE_YML_02, node->place,
			(About){ .value = arena_printf(l->arena, "U+%04X, by an escape", (unsigned)control) });
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
static void refuse_levels(Loading *l, Place place)
{
	for (uint32_t i = l->depth; i-- > 0 && l->level[i].node->kind == NODE_LIST;)
		refuse_node(l->level[i].node, place);
}

static void open_level(Loading *l, const yaml_event_t *e, NodeKind kind)
{
	Place place = place_of(l, &e->start_mark, &e->end_mark);
	if (waits_for_key(l)) {
		give_up(l, MESSAGE_YML_08, place, (About){ 0 });
		return;
	}
	if (l->depth == DEPTH) {
		refuse_levels(l, place);
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
	loading_say(l, MESSAGE_YML_11, node->place,
		(About){ .value = arena_printf(l->arena, "*%s", (const char *)e->data.alias.anchor) });
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
			loading_say(l, MESSAGE_YML_10, place_of(l, &e->start_mark, &e->end_mark), (About){ 0 });
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
		refuse_node(l->recent, said->place);
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
