/* SPDX-License-Identifier: MIT
 * The reply sheet read back: columns by their heads, rows without a reply left aside. Spreadsheets take 1.10 for a number and
 * write 1.1; items have two digits at least behind the point, so one digit alone has lost its 0.
 */
#include "replies.h"

#include "csv.h"

#include <string.h>
#include <strings.h>

enum { SUBMITTAL, ITEM, REPLY, PAPER, COLUMNS };
static const char *const heads[COLUMNS] = { "submittal", "item", "reply", "paper" };

typedef struct {
	ReplySheet *sheet;
	ReplyRow *row;
	uint32_t room;
	int at[COLUMNS]; /* -1: not there */
	bool begun, whole;
	Arena *arena;
	Complaints *faults;
} Reading;

static const char *trimmed(const Cell *cell, Arena *arena)
{
	const char *begin = cell->text, *end = cell->text + cell->length;
	while (begin < end && strchr(" \t\r\n", *begin) != NULL)
		begin++;
	while (end > begin && strchr(" \t\r\n", end[-1]) != NULL)
		end--;
	return begin < end ? arena_text(arena, begin, (size_t)(end - begin)) : NULL;
}

static void fault(Reading *reading, MessageId id, Place place, About about)
{
	complain(reading->faults, id, place, about);
	reading->whole = false;
}

static bool read_heads(Reading *reading, const Cell *cell, uint32_t cells)
{
	for (uint32_t i = 0; i < cells; i++) {
		const char *head = trimmed(&cell[i], reading->arena);
		for (int column = 0; head != NULL && column < COLUMNS; column++)
			if (strcasecmp(head, heads[column]) == 0 && reading->at[column] >= 0)
				fault(reading, MESSAGE_TAB_22, cell[i].place, (About){ .key = heads[column],
					.want = arena_printf(reading->arena, "%d", reading->at[column] + 1) });
			else if (strcasecmp(head, heads[column]) == 0)
				reading->at[column] = (int)i;
	}
	for (int column = ITEM; column <= REPLY; column++)
		if (reading->at[column] < 0)
			fault(reading, MESSAGE_TAB_23, cell[0].place, (About){ .key = heads[column] });
	return reading->whole;
}

/* "1.1" as the item 1.10. */
static const char *item_number(const char *text, Arena *arena)
{
	const char *point = strchr(text, '.');
	bool is_number = strspn(text, "0123456789.") == strlen(text);
	bool lost = is_number && point != NULL && point[1] >= '1' && point[1] <= '9' && point[2] == '\0';
	return lost ? arena_printf(arena, "%s0", text) : text;
}

static const Cell *cell_in(const Reading *reading, int column, const Cell *cell, uint32_t cells)
{
	int at = reading->at[column];
	return at >= 0 && (uint32_t)at < cells ? &cell[at] : NULL;
}

static void read_row(Reading *reading, const Cell *cell, uint32_t cells)
{
	const char *text[COLUMNS];
	for (int column = 0; column < COLUMNS; column++) {
		const Cell *here = cell_in(reading, column, cell, cells);
		text[column] = here != NULL ? trimmed(here, reading->arena) : NULL;
	}
	if (text[REPLY] == NULL && text[PAPER] == NULL)
		return;
	if (text[ITEM] == NULL || text[REPLY] == NULL) {
		fault(reading, MESSAGE_TAB_30, cell[0].place, (About){ .key = heads[text[ITEM] == NULL ? ITEM : REPLY],
			.want = text[ITEM] == NULL ? "1.03" : "letter revised" });
		return;
	}
	ReplyRow row = { text[SUBMITTAL], item_number(text[ITEM], reading->arena), text[REPLY], text[PAPER],
		cell[reading->at[ITEM]].place, cell[reading->at[REPLY]].place, { 0 } };
	if (text[PAPER] != NULL)
		row.paper_at = cell[reading->at[PAPER]].place;
	reading->row = arena_more(reading->arena, reading->row, reading->sheet->rows, &reading->room, sizeof row);
	reading->row[reading->sheet->rows++] = row;
}

static bool take_row(void *user, const Cell *cell, uint32_t cells)
{
	Reading *reading = user;
	if (!reading->begun) {
		reading->begun = true;
		return read_heads(reading, cell, cells);
	}
	read_row(reading, cell, cells);
	return true;
}

/* The mark that stands most often in the first line divides. */
static char separator_of(const Source *source)
{
	static const char marks[] = ",;\t";
	size_t length, most = 0;
	const char *line = source_line(source, 1, &length);
	char best = ',';
	for (const char *mark = marks; *mark != '\0'; mark++) {
		size_t count = 0;
		for (size_t i = 0; i < length; i++)
			count += line[i] == *mark;
		if (count > most) {
			most = count;
			best = *mark;
		}
	}
	return best;
}

const ReplySheet *read_replies(Arena *arena, const Source *source, Complaints *faults)
{
	ReplySheet *sheet = TAKE(arena, ReplySheet, 1);
	Reading reading = { .sheet = sheet, .at = { -1, -1, -1, -1 }, .whole = true, .arena = arena, .faults = faults };
	CsvFile file = { .arena = arena, .source = source, .complaints = faults, .row = take_row, .user = &reading };
	bool read = csv_read_list(&file, separator_of(source));
	if (read && !reading.begun)
		complain(faults, MESSAGE_TAB_15, (Place){ .source = source->id }, (About){ 0 });
	sheet->source = source;
	sheet->row = reading.row;
	return read && reading.begun && reading.whole ? sheet : NULL;
}

/* ---- into the submittal ---- */

static Node *scalar_node(Arena *arena, const char *text, Place place)
{
	Node *node = TAKE(arena, Node, 1);
	*node = (Node){ .kind = NODE_SCALAR, .quoted = true, .place = place, .text = text, .length = (uint32_t)strlen(text) };
	return node;
}

static void put_key(Arena *arena, Node *map, const char *key, const char *text, Place place)
{
	Node *node = TAKE(arena, Node, 1);
	*node = (Node){ .kind = NODE_KEY, .place = place, .text = key, .length = (uint32_t)strlen(key),
		.first = scalar_node(arena, text, place) };
	Node **link = &map->first;
	while (*link != NULL)
		link = &(*link)->next;
	*link = node;
	map->count++;
}

static Node *reply_node(Arena *arena, const ReplyRow *row)
{
	Node *map = TAKE(arena, Node, 1);
	*map = (Node){ .kind = NODE_MAP, .place = row->item_at };
	put_key(arena, map, "item", row->item, row->item_at);
	put_key(arena, map, "reply", row->reply, row->reply_at);
	if (row->paper != NULL)
		put_key(arena, map, "paper", row->paper, row->paper_at);
	return map;
}

/* The list of replies, empty where the submittal has none. */
static Node *replies_of(Arena *arena, Node *submittal, const ReplySheet *sheet)
{
	Node *list = node_find(submittal, "replies");
	if (list != NULL && list->kind == NODE_LIST)
		return list;
	list = TAKE(arena, Node, 1);
	*list = (Node){ .kind = NODE_LIST, .place = { .line = 1, .column = 1, .source = sheet->source->id } };
	return node_graft(arena, submittal, "replies", list) ? list : NULL;
}

static bool is_meant(const ReplyRow *row, const Node *number)
{
	return row->submittal == NULL || (number != NULL && number->text != NULL && strcmp(row->submittal, number->text) == 0);
}

uint32_t add_replies(Arena *arena, Node *submittal, const ReplySheet *sheet)
{
	const Node *number = submittal->kind == NODE_MAP ? node_find(submittal, "submittal") : NULL;
	Node *list = NULL, **link = NULL;
	uint32_t added = 0;
	for (uint32_t i = 0; submittal->kind == NODE_MAP && i < sheet->rows; i++) {
		if (!is_meant(&sheet->row[i], number))
			continue;
		if (list == NULL && (list = replies_of(arena, submittal, sheet)) == NULL)
			return 0;
		for (link = link != NULL ? link : &list->first; *link != NULL;)
			link = &(*link)->next;
		*link = reply_node(arena, &sheet->row[i]);
		list->count++;
		added++;
	}
	return added;
}
