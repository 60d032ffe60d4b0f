/* SPDX-License-Identifier: MIT
 * A list of purchases as spreadsheets save it: commas, semicolons or tabs, a header in one of the first rows, blank rows, rows of
 * totals. What cannot be told for certain is refused with its cure.
 */
#include "date.h"
#include "order_read.h"
#include "number.h"
#include "pipeline.h"

#include <math.h>
#include <string.h>
#include <strings.h>

enum { HEADER_ROWS = 30, LINE_LIMIT = 20000 };

typedef struct {
	OrderList *list;
	OrderHeader header;
	Arena *arena;
	Complaints *complaints;
	char separator;
	uint32_t rows;
	bool found, whole;
} Reading;

/* A no-break space is what spreadsheets put between digits and around cells. */
const char *order_cell_text(const Cell *cell, Arena *arena)
{
	const char *begin = cell->text, *end = cell->text + cell->length;
	for (bool more = true; more && begin < end;) {
		size_t step = strchr(" \t\r\n", *begin) != NULL ? 1 : end - begin >= 2 && memcmp(begin, "\xc2\xa0", 2) == 0 ? 2 : 0;
		begin += step;
		more = step > 0;
	}
	for (bool more = true; more && end > begin;) {
		size_t step = strchr(" \t\r\n", end[-1]) != NULL ? 1 : end - begin >= 2 && memcmp(end - 2, "\xc2\xa0", 2) == 0 ? 2 : 0;
		end -= step;
		more = step > 0;
	}
	return begin < end ? arena_text(arena, begin, (size_t)(end - begin)) : NULL;
}

/* ---- rows that are no lines ---- */

static bool is_blank(const Reading *reading, const Cell *cell, uint32_t cells)
{
	for (uint32_t i = 0; i < cells; i++)
		if (order_cell_text(&cell[i], reading->arena) != NULL)
			return false;
	return true;
}

static bool is_sum_word(const char *text)
{
	static const char *const words[] = { "total", "totals", "subtotal", "sub-total", "sub total", "grand total", "sum",
		"order total" };
	size_t length = strlen(text);
	while (length > 0 && (text[length - 1] == ':' || text[length - 1] == ' '))
		length--;
	for (size_t i = 0; i < sizeof words / sizeof *words; i++)
		if (strlen(words[i]) == length && strncasecmp(words[i], text, length) == 0)
			return true;
	return false;
}

static const Cell *cell_of(const Reading *reading, OrderColumn column, const Cell *cell)
{
	return reading->header.at[column] < 0 ? NULL : &cell[reading->header.at[column]];
}

static const char *text_of(const Reading *reading, OrderColumn column, const Cell *cell)
{
	const Cell *at = cell_of(reading, column, cell);
	return at != NULL ? order_cell_text(at, reading->arena) : NULL;
}

/* A row of totals says so in a cell, and names no part beside it. */
static bool is_sum(const Reading *reading, const Cell *cell, uint32_t cells)
{
	const char *code = text_of(reading, ORDER_CODE, cell), *words = text_of(reading, ORDER_WORDS, cell);
	if ((code != NULL && !is_sum_word(code)) || (words != NULL && !is_sum_word(words)))
		return false;
	for (uint32_t i = 0; i < cells; i++) {
		const char *text = order_cell_text(&cell[i], reading->arena);
		if (text != NULL && is_sum_word(text))
			return true;
	}
	return false;
}

/* ---- lines ---- */

static bool read_date(const Reading *reading, OrderLine *line, const Cell *cell)
{
	const char *text = text_of(reading, ORDER_DATE, cell);
	line->is_dated = text != NULL && date_read(text, strlen(text), &line->day);
	if (text == NULL || line->is_dated)
		return true;
	complain(reading->complaints, MESSAGE_ORD_07, cell_of(reading, ORDER_DATE, cell)->place, (About){ .value = text });
	return false;
}

/* The supplier or the description right behind the quantity: there the end of 1,250 without quotation marks would stand. */
static const Cell *behind_quantity(const OrderHeader *header, const Cell *cell)
{
	int next = header->at[ORDER_QUANTITY] + 1;
	return header->at[ORDER_FROM] == next || header->at[ORDER_WORDS] == next ? &cell[next] : NULL;
}

static bool read_line(Reading *reading, const Cell *cell)
{
	const Cell *at_words = cell_of(reading, ORDER_WORDS, cell);
	OrderLine line = { .code = text_of(reading, ORDER_CODE, cell), .words = text_of(reading, ORDER_WORDS, cell),
		.supplier = text_of(reading, ORDER_FROM, cell) };
	const Cell *named = cell_of(reading, line.code != NULL ? ORDER_CODE : ORDER_WORDS, cell);
	line.place = named != NULL ? named->place : cell->place;
	line.words_place = at_words != NULL ? at_words->place : line.place;
	if (line.code == NULL && line.words == NULL) {
		complain(reading->complaints, MESSAGE_ORD_10, line.place, (About){ 0 });
		return false;
	}
	const OrderHeader *header = &reading->header;
	QuantityCells cells = { cell_of(reading, ORDER_QUANTITY, cell), cell_of(reading, ORDER_UNITS, cell),
		behind_quantity(header, cell), header->unit, reading->separator, reading->complaints };
	bool whole = order_quantity_read(&line, &cells);
	whole &= read_date(reading, &line, cell);
	OrderList *list = reading->list;
	list->line = arena_more(reading->arena, list->line, list->lines, &list->room, sizeof *list->line);
	list->line[list->lines++] = line;
	return whole;
}

/* Cells beyond the header that hold nothing are the sheet's; a missing or surplus one puts values under the wrong heads. */
static bool fits_header(const Reading *reading, const Cell *cell, uint32_t cells)
{
	uint32_t due = reading->header.cells;
	if (cells == due || (cells > due && is_blank(reading, cell + due, cells - due)))
		return true;
	About about = { .value = arena_printf(reading->arena, "%u", cells), .want = arena_printf(reading->arena, "%u", due) };
	bool few = cells < due;
	complain(reading->complaints, few ? MESSAGE_TAB_07 : MESSAGE_TAB_08, few ? cell->place : cell[due].place, about);
	return false;
}

/* A value under a blank head may be anything. */
static bool has_heads(const Reading *reading, const Cell *cell)
{
	for (uint32_t i = 0; i < reading->header.cells; i++) {
		const char *text = reading->header.head[i] == NULL ? order_cell_text(&cell[i], reading->arena) : NULL;
		if (text == NULL)
			continue;
		complain(reading->complaints, MESSAGE_ORD_13, cell[i].place, (About){ .value = text });
		return false;
	}
	return true;
}

/* Heads said again are passed over; other heads turn what stands below them, so nothing more is read. */
static bool is_heads(Reading *reading, const Cell *cell, uint32_t cells, bool *others)
{
	if (!is_order_header(cell, cells))
		return false;
	if (is_order_header_again(&reading->header, cell, cells, reading->arena)) {
		reading->list->heads++;
		return true;
	}
	complain(reading->complaints, MESSAGE_ORD_12, cell->place, (About){ .value = order_cell_text(cell, reading->arena) });
	*others = true;
	return true;
}

static bool take_header(Reading *reading, const Cell *cell, uint32_t cells)
{
	reading->found = is_order_header(cell, cells);
	if (!reading->found) {
		reading->list->before += !is_blank(reading, cell, cells);
		return ++reading->rows < HEADER_ROWS;
	}
	while (cells > 1 && order_cell_text(&cell[cells - 1], reading->arena) == NULL)
		cells--;
	reading->whole &= order_header_bind(&reading->header, cell, cells, reading->complaints);
	reading->list->has_supplier = reading->header.at[ORDER_FROM] >= 0;
	reading->list->has_date = reading->header.at[ORDER_DATE] >= 0;
	reading->list->left_out = order_left_out(&reading->header, cell, reading->arena);
	return reading->whole;
}

static bool take_row(void *user, const Cell *cell, uint32_t cells)
{
	Reading *reading = user;
	if (!reading->found)
		return take_header(reading, cell, cells);
	if (is_blank(reading, cell, cells))
		return true;
	if (reading->list->lines == LINE_LIMIT) {
		complain(reading->complaints, MESSAGE_TAB_10, cell->place, (About){ .want = "20,000 lines" });
		reading->whole = false;
		return false;
	}
	bool others = false;
	if (is_heads(reading, cell, cells, &others)) {
		reading->whole &= !others;
		return !others;
	}
	if (!fits_header(reading, cell, cells))
		reading->whole = false;
	else if (is_sum(reading, cell, cells))
		reading->list->sums++;
	else if (!has_heads(reading, cell))
		reading->whole = false;
	else
		reading->whole &= read_line(reading, cell);
	return true;
}

/* ---- the file ---- */

static bool is_utf16(const Source *source)
{
	const unsigned char *b = (const unsigned char *)source->bytes;
	return source->length >= 2 && ((b[0] == 0xff && b[1] == 0xfe) || (b[0] == 0xfe && b[1] == 0xff) || (b[0] != 0) != (b[1] != 0));
}

/* Reads with one separator; false if no header is found so. */
static bool read_separated(Reading *reading, const Source *source, char separator, Complaints *said)
{
	Complaints *wanted = reading->complaints, tried = { .arena = reading->arena };
	CsvFile file = { reading->arena, source, &tried, take_row, reading };
	*reading->list = (OrderList){ .source = source };
	reading->complaints = &tried;
	reading->separator = separator;
	reading->rows = 0;
	reading->whole = true;
	bool read = csv_read_list(&file, separator);
	reading->complaints = wanted;
	reading->whole &= read;
	*said = tried;
	return reading->found;
}

/* ---- running numbers ---- */

/* 1, 2, 3 or 10, 20, 30 down a column called item: the number of the line, not of the part. */
static bool is_numbered(const OrderList *list, double step)
{
	for (uint32_t i = 0; i < list->lines; i++) {
		const char *code = list->line[i].code;
		double value;
		if (code == NULL || !number_read(code, strlen(code), &value) || fabs(value - step * (i + 1)) > 0)
			return false;
	}
	return list->lines > 0;
}

static void leave_out_numbers(Reading *reading)
{
	OrderList *list = reading->list;
	if (!reading->header.may_be_number || (!is_numbered(list, 1) && !is_numbered(list, 10)))
		return;
	const char *head = reading->header.head[reading->header.at[ORDER_CODE]];
	for (uint32_t i = 0; i < list->lines; i++) {
		list->line[i].code = NULL;
		list->line[i].place = list->line[i].words_place;
	}
	list->left_out = list->left_out == NULL ? head : arena_printf(reading->arena, "%s, %s", head, list->left_out);
}

const OrderList *read_order(Arena *arena, const Source *source, Complaints *complaints)
{
	static const char separators[] = ",;\t";
	Reading reading = { .list = TAKE(arena, OrderList, 1), .arena = arena, .complaints = complaints };
	Place start = { .line = 1, .column = 1, .source = source->id };
	uint32_t before = complaints->count;
	if (is_utf16(source)) {
		complain(complaints, MESSAGE_ORD_08, start, (About){ 0 });
		return NULL;
	}
	Complaints said = { .arena = arena }, first = { .count = 0 };
	bool found = false;
	for (const char *separator = separators; !found && *separator != '\0'; separator++) {
		found = read_separated(&reading, source, *separator, &said);
		first = separator == separators ? said : first;
	}
	if (!found)
		said = first;
	for (uint32_t i = 0; i < said.count; i++)
		complain(complaints, said.at[i].id, said.at[i].place, said.at[i].about);
	if (!found && said.count == 0)
		complain(complaints, MESSAGE_ORD_01, start, (About){ 0 });
	else if (found && reading.whole && reading.list->lines == 0)
		complain(complaints, MESSAGE_ORD_09, start, (About){ 0 });
	if (complaints->count != before || !reading.whole)
		return NULL;
	leave_out_numbers(&reading);
	return reading.list;
}
