/* SPDX-License-Identifier: MIT
 * A report of an earlier round from its JSON. Every key that rounds rest on must be there and be what it was printed as; what is
 * not is told at its place, and then the report counts as none.
 */
#include "earlier_values.h"
#include "date.h"
#include "number.h"

#include <stdlib.h>
#include <string.h>

/* ---- items ---- */

static const char *const states[] = { "new", "open", "closed", "condition", "variance", NULL };

static Side side_of(const Reader *reader, const Node *item, const char *key)
{
	const Node *node = report_look(item, key);
	Side side = { NULL, 0, false, NULL };
	if (node == NULL || !report_is_map(reader, node, key))
		return side;
	side.text = report_text_at(reader, node, "text");
	side.unit = report_text_at(reader, node, "unit");
	const Node *value = report_look(node, "value");
	bool is_plain = value != NULL && value->kind == NODE_SCALAR && !value->quoted;
	side.has_value = is_plain && number_read(value->text, value->length, &side.value);
	if (value != NULL && !side.has_value)
		report_refuse(reader, "value", value, "a number");
	return side;
}

static uint64_t fingerprint_of(const Reader *reader, const Node *place)
{
	const char *text = report_text_at(reader, place, "fingerprint");
	if (text == NULL)
		return 0;
	if (strlen(text) == 16 && strspn(text, "0123456789abcdef") == 16)
		return strtoull(text, NULL, 16);
	report_refuse(reader, "fingerprint", node_find(place, "fingerprint"), "16 hex digits");
	return 0;
}

static void read_place(const Reader *reader, const Node *node, EarlierPlace *place)
{
	if (!report_is_map(reader, node, "places"))
		return;
	place->letter = report_text_at(reader, node, "letter");
	place->record = report_text_at(reader, node, "record");
	place->name = report_text_at(reader, node, "name");
	place->file = report_text_at(reader, node, "file");
	place->path = report_text_at(reader, node, "path");
	place->field = report_text_at(reader, node, "field");
	place->line = report_count(reader, report_look(node, "line"), "line", UINT32_MAX);
	place->column = report_count(reader, report_look(node, "column"), "column", UINT32_MAX);
	place->state = (ItemState)report_word(reader, node, "state", states);
	place->fingerprint = fingerprint_of(reader, node);
}

static void read_places(const Reader *reader, const Node *node, EarlierItem *item)
{
	const Node *list = report_list(reader, node, "places");
	if (list == NULL)
		return;
	EarlierPlace *place = TAKE(reader->arena, EarlierPlace, list->count + 1);
	for (const Node *n = list->first; n != NULL; n = n->next)
		read_place(reader, n, &place[item->places++]);
	item->place = place;
	if (item->places == 0)
		report_refuse(reader, "places", list, "one place at least");
}

static void read_fields(const Reader *reader, const Node *node, EarlierItem *item)
{
	const Node *list = report_list(reader, node, "fields");
	if (list == NULL)
		return;
	const char **field = TAKE(reader->arena, const char *, list->count + 1);
	for (const Node *n = list->first; n != NULL; n = n->next) {
		const char *text = report_text(reader, n, "fields");
		if (text != NULL)
			field[item->fields++] = text;
	}
	item->field = field;
}

/* "1.03" is item 3 of round 1. */
static void read_number(const Reader *reader, const Node *node, EarlierItem *item)
{
	item->number = report_text_due(reader, node, "number");
	if (item->number == NULL)
		return;
	char *end;
	unsigned long round = strtoul(item->number, &end, 10), number = 0;
	if (*end == '.' && strspn(item->number, "0123456789.") == strlen(item->number))
		number = strtoul(end + 1, &end, 10);
	if (*end != '\0' || round < 1 || round > 999 || number < 1 || number > UINT16_MAX) {
		report_refuse(reader, "number", node_find(node, "number"), "a number like 1.03");
		return;
	}
	item->round = (uint16_t)round;
	item->item = (uint16_t)number;
}

static void read_words(const Reader *reader, const Node *node, EarlierItem *item)
{
	static const char *const known_by[] = { "read", "second-hand", "memory", "common practice", NULL };
	item->state = (ItemState)report_word(reader, node, "state", states);
	item->known_by = (KnownBy)report_word(reader, node, "known_by", known_by);
	const char *action = report_text_needed(reader, node, "action"), *authority = report_text_needed(reader, node, "authority");
	int number = action != NULL ? action_find(action) : 0, other = authority != NULL ? authority_find(authority) : 0;
	if (number < 0)
		report_refuse(reader, "action", node_find(node, "action"), "an action");
	if (other < 0)
		report_refuse(reader, "authority", node_find(node, "authority"), "an authority");
	item->action = number < 0 ? ACTION_NOT_REVIEWED : (Action)number;
	item->authority = other < 0 ? AUTHORITY_PROGRAM : (Authority)other;
}

static void read_item(const Reader *reader, const Node *node, EarlierItem *item)
{
	item->at = node->place;
	if (!report_is_map(reader, node, "items"))
		return;
	read_number(reader, node, item);
	read_words(reader, node, item);
	item->code = report_text_needed(reader, node, "code");
	item->finding = report_text_needed(reader, node, "finding");
	item->record = report_text_due(reader, node, "record");
	item->name = report_text_due(reader, node, "name");
	item->basis = report_text_due(reader, node, "basis");
	item->remedy = report_text_due(reader, node, "remedy");
	item->answer_by = report_text_due(reader, node, "answer_by");
	item->cites = report_text_at(reader, node, "cites");
	item->reviewer = report_text_at(reader, node, "reviewer");
	item->note = report_text_at(reader, node, "note");
	item->settled = (uint16_t)report_count(reader, report_look(node, "settled"), "settled", 999);
	item->submitted = side_of(reader, node, "submitted");
	item->limit = side_of(reader, node, "limit");
	read_places(reader, node, item);
	read_fields(reader, node, item);
}

static int by_number(const void *a, const void *b)
{
	const EarlierItem *x = a, *y = b;
	if (x->round != y->round)
		return x->round < y->round ? -1 : 1;
	return (x->item > y->item) - (x->item < y->item);
}

static void read_items(const Reader *reader, const Node *root, Earlier *earlier)
{
	const Node *list = report_list(reader, root, "items");
	if (list == NULL)
		return;
	EarlierItem *item = TAKE(reader->arena, EarlierItem, list->count + 1);
	for (const Node *n = list->first; n != NULL; n = n->next)
		read_item(reader, n, &item[earlier->items++]);
	if (earlier->stage != STAGE_bid)
		qsort(item, earlier->items, sizeof *item, by_number);
	for (uint32_t i = 1; i < earlier->items; i++)
		if (item[i].round != 0 && by_number(&item[i], &item[i - 1]) == 0)
			complain(reader->faults, MESSAGE_PRV_06, item[i].at, (About){ .value = item[i].number });
	earlier->item = item;
}

/* ---- what else a report says ---- */

static void read_not_judged(const Reader *reader, const Node *root, Earlier *earlier)
{
	const Node *list = report_list(reader, root, "not_judged");
	if (list == NULL)
		return;
	EarlierNotYet *not_yet = TAKE(reader->arena, EarlierNotYet, list->count + 1);
	for (const Node *n = list->first; n != NULL; n = n->next)
		if (report_is_map(reader, n, "not_judged"))
			not_yet[earlier->not_judgeds++] = (EarlierNotYet){ report_text_needed(reader, n, "code"), report_text_at(reader, n, "record"),
				report_text_at(reader, n, "name"), report_text_at(reader, n, "waits_for") };
	earlier->not_judged = not_yet;
}

static void read_files(const Reader *reader, const Node *root, Earlier *earlier)
{
	const Node *list = report_list(reader, root, "files");
	if (list == NULL)
		return;
	EarlierFile *file = TAKE(reader->arena, EarlierFile, list->count + 1);
	for (const Node *n = list->first; n != NULL; n = n->next)
		if (report_is_map(reader, n, "files"))
			file[earlier->files++] = (EarlierFile){ report_text_needed(reader, n, "path"), report_text_needed(reader, n, "sha256") };
	earlier->file = file;
}

static void read_criteria_used(const Reader *reader, const Node *root, Earlier *earlier)
{
	const Node *node = report_look_for(reader, root, "criteria");
	if (node == NULL || !report_is_map(reader, node, "criteria"))
		return;
	earlier->criteria = report_text_needed(reader, node, "name");
	earlier->edition = report_text_due(reader, node, "edition");
	earlier->criteria_sha256 = report_text_due(reader, node, "sha256");
}

static void read_before(const Reader *reader, const Node *root, Earlier *earlier)
{
	const Node *node = report_look(root, "previous");
	if (node == NULL || !report_is_map(reader, node, "previous"))
		return;
	earlier->before = (EarlierFile){ report_text_at(reader, node, "path"), report_text_needed(reader, node, "sha256") };
	earlier->before_round = (uint16_t)report_count(reader, report_look(node, "round"), "round", 999);
}

/* A day of the reviewer's file; reports had none at first. */
static int32_t day_at(const Reader *reader, const Node *root, const char *key)
{
	const char *text = report_text_at(reader, root, key);
	int32_t day;
	if (text == NULL)
		return NO_DAY;
	if (date_read(text, strlen(text), &day))
		return day;
	report_refuse(reader, key, node_find(root, key), "a day such as 2026-04-14");
	return NO_DAY;
}

static void read_head(const Reader *reader, const Node *root, Earlier *earlier)
{
	static const char *const modes[] = { "self-check", "review", NULL };
	static const char *const stages[] = { "bid", "application", "order", "close-out", NULL };
	report_text_needed(reader, root, "seamstamp");
	const Node *schema = report_look_for(reader, root, "schema");
	if (schema != NULL && (schema->quoted || strcmp(report_shown(schema), "1") != 0))
		report_refuse(reader, "schema", schema, "1");
	earlier->is_review = report_word(reader, root, "mode", modes) == 1;
	earlier->submittal = report_text_due(reader, root, "submittal");
	earlier->round = (uint16_t)report_count(reader, report_look_for(reader, root, "round"), "round", 999);
	earlier->stage = (Stage)report_word(reader, root, "stage", stages);
	earlier->recommended_action = report_text_due(reader, root, "recommended_action");
	earlier->order_line = report_text_due(reader, root, "order_line");
	earlier->received = day_at(reader, root, "received");
	earlier->returned = day_at(reader, root, "returned");
	earlier->values = report_look_for(reader, root, "values");
	if (earlier->values != NULL && !report_is_map(reader, earlier->values, "values"))
		earlier->values = NULL;
}

/* A report that carries a seal must fit it; ndjson carries none. */
static void check_seal(const Reader *reader, const Node *root, const Source *source)
{
	const Node *seal = node_find(root, "seal");
	if (seal == NULL)
		return;
	size_t length = source->length;
	const char *fits = report_seal(source->bytes, &length, reader->arena);
	if (length == source->length || strcmp(report_shown(seal), fits) != 0)
		complain(reader->faults, MESSAGE_PRV_05, seal->place, (About){ 0 });
}

const Earlier *read_earlier(Arena *arena, const Source *source, Complaints *faults)
{
	uint32_t before = faults->count;
	Node *root = read_json(arena, source, faults);
	if (root == NULL)
		return NULL;
	Reader reader = { arena, faults };
	Earlier *earlier = TAKE(arena, Earlier, 1);
	earlier->source = source;
	if (!report_is_map(&reader, root, "the whole"))
		return NULL;
	read_head(&reader, root, earlier);
	if (faults->count > before && node_find(root, "seamstamp") == NULL)
		return NULL; /* some other file: one fault tells it */
	read_criteria_used(&reader, root, earlier);
	read_items(&reader, root, earlier);
	read_not_judged(&reader, root, earlier);
	read_files(&reader, root, earlier);
	read_before(&reader, root, earlier);
	if (faults->count == before)
		check_seal(&reader, root, source);
	earlier->sha256 = source_hash(source, arena);
	return faults->count == before ? earlier : NULL;
}
