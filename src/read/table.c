/* SPDX-License-Identifier: MIT
 * The rows of a table: each cell goes by its bound column straight into the record.
 *
 * A blank cell says nothing, `any` is written. A list inside a row begins with its first cell that is not blank; `none` in one of
 * its cells says that there is none. Gauges and screw marks are finished when the row is whole.
 */
#include "table.h"

#include "header.h"

#include <string.h>

enum { ROW_LIMIT = 100000 };

typedef struct {
	const Loading *loading;
	Rows *rows;
	Header header;
	bool has_header;
} Table;

/* A cell without the blanks around it. */
typedef struct {
	const char *text;
	size_t length;
} Trimmed;

static Trimmed trim(const Cell *cell)
{
	size_t start = strspn(cell->text, " ");
	Trimmed t = { cell->text + start, strlen(cell->text + start) };
	while (t.length > 0 && t.text[t.length - 1] == ' ')
		t.length--;
	return t;
}

static bool is_spelt(Trimmed t, const char *word)
{
	return strlen(word) == t.length && memcmp(word, t.text, t.length) == 0;
}

static bool is_blank_row(const Cell *cell, uint32_t cells)
{
	for (uint32_t i = 0; i < cells; i++)
		if (trim(&cell[i]).length > 0)
			return false;
	return true;
}

/* `none` written for a list: in a cell whose own words do not have it. */
static bool says_none(const Field *value, Trimmed t)
{
	return is_spelt(t, "none") && !(value->kind == IS_WORD && word_find(value->words, "none", strlen("none")) >= 0);
}

/* The one row of a list inside a row; NULL if the list has none and shall not get one. */
static void *list_row(Table *table, const Field *field, void *row, const Cell *cell, Trimmed t)
{
	List *list = (List *)(void *)given_at(field, row);
	if (t.length == 0)
		return list->row;
	if (list->given.said == SAID_NONE) {
		complain(table->loading->complaints, MESSAGE_TAB_31, cell->place,
			 (About){ .key = field->one, .value = arena_text(table->loading->arena, t.text, t.length) });
		return NULL;
	}
	if (list->row == NULL) {
		list->row = arena_take(table->loading->arena, 1, field->record->size);
		list->count = 1;
		list->given = (Given){ .place = cell->place, .said = SAID_VALUE };
		*(Given *)list->row = list->given;
	}
	return list->row;
}

/* Writes `none` into the list that a column goes through; false if it goes through none or the list has a row already. */
static bool set_none(Table *table, const Column *column, char *row, const Cell *cell)
{
	for (uint32_t i = 0; i + 1 < column->steps; i++) {
		const Field *field = column->step[i];
		List *list = (List *)(void *)given_at(field, row);
		if (field->kind == IS_LIST && list->row != NULL)
			complain(table->loading->complaints, MESSAGE_TAB_31, cell->place,
				 (About){ .key = field->one, .value = "none" });
		if (field->kind == IS_LIST) {
			list->given = (Given){ .place = cell->place,
					       .typed = "none",
					       .said = list->row != NULL ? SAID_VALUE : SAID_NONE };
			return true;
		}
		row += field->offset;
	}
	return false;
}

/* The record that holds the value of a column; NULL if there is none and the cell is blank. */
static void *record_of_cell(Table *table, const Column *column, char *row, const Cell *cell)
{
	Trimmed t = trim(cell);
	for (uint32_t i = 0; row != NULL && i + 1 < column->steps; i++) {
		const Field *field = column->step[i];
		if (field->kind == IS_LIST) {
			row = list_row(table, field, row, cell, t);
			continue;
		}
		Given *given = given_at(field, row);
		if (t.length > 0 && given->said == SAID_NOTHING)
			*given = (Given){ .place = cell->place, .said = SAID_VALUE };
		row = (char *)given;
	}
	return row;
}

static void keep_term(Table *table, const Column *column, const Cell *cell)
{
	Rows *rows = table->rows;
	Trimmed t = trim(cell);
	const char *value = arena_text(table->loading->arena, t.text, t.length);
	double number;
	Unit unit = column->step[column->steps - 1]->unit;
	if (t.length == 0)
		return;
	if (column->unit != UNIT_one && read_quantity(t.text, t.length, unit, &number) == QUANTITY_BARE)
		value = arena_printf(table->loading->arena, "%s %s", value, unit_row(column->unit)->printed);
	rows->term = arena_more(table->loading->arena, rows->term, rows->terms, &rows->term_room, sizeof *rows->term);
	rows->term[rows->terms++] = (TermCell){ rows->count, column, value, cell->place };
}

static void fill_cell(Table *table, const Column *column, const Cell *cell, void *row)
{
	const Field *field = column->step[column->steps - 1];
	Trimmed t = trim(cell);
	if (column->sort != COLUMN_VALUE) {
		keep_term(table, column, cell);
		return;
	}
	if (says_none(field, t) && set_none(table, column, row, cell))
		return;
	void *record = record_of_cell(table, column, row, cell);
	Reading reading = {
		.arena = table->loading->arena,
		.reference = table->loading->reference,
		.complaints = table->loading->complaints,
		.bare = column->unit,
		.table = true,
	};
	if (record != NULL)
		read_value(field, t.text, t.length, cell->place, record, &reading);
}

/* Finishes a row and the records inside it, as deep as the form goes. Where a column fell out, the metal of a gauge may have. */
static void finish_inside(Table *table, const Record *record, void *row)
{
	Reading reading = {
		.arena = table->loading->arena,
		.reference = table->loading->reference,
		.complaints = table->header.whole ? table->loading->complaints : NULL,
		.table = true,
	};
	for (uint32_t i = 0; i < record->count; i++) {
		const Field *field = &record->field[i];
		Given *given = given_at(field, row);
		if (field->kind == IS_ONE && given->said == SAID_VALUE)
			finish_inside(table, field->record, given);
		if (field->kind == IS_LIST && given->said == SAID_VALUE)
			finish_inside(table, field->record, ((List *)(void *)given)->row);
	}
	finish_record(record, row, &reading);
}

/* Cells that must be filled. `any` fills only a text: elsewhere it would say nothing. */
static void check_due(Table *table, const void *row, const Cell *cell)
{
	for (uint32_t i = 0; i < table->header.count; i++) {
		const Column *column = &table->header.column[i];
		if (column->steps != 1 || !is_due_in_table(table->rows->record, column->step[0]))
			continue;
		const Field *field = column->step[0];
		Said said = given_in(field, row)->said;
		bool any = said == SAID_NOT_APPLICABLE && field->kind != IS_TEXT;
		if (said == SAID_NOTHING || any)
			complain(table->loading->complaints, MESSAGE_TAB_30, cell[i].place,
				 (About){ .key = header_name(table->loading->arena, field),
					  .value = any ? "any" : "",
					  .want = field->example });
	}
}

static bool take_header(Table *table, const Cell *cell, uint32_t cells)
{
	Complaints *complaints = table->loading->complaints;
	table->has_header = true;
	if (cells == 1 && strpbrk(cell->text, ";\t") != NULL) {
		bool tab = strchr(cell->text, '\t') != NULL;
		complain(complaints, tab ? MESSAGE_TAB_14 : MESSAGE_TAB_13, cell->place, (About){ 0 });
		table->rows->whole = false;
		return false;
	}
	table->header = header_bind(table->loading, table->rows, cell, cells);
	table->rows->whole = table->header.whole;
	return true;
}

static bool take_row(void *user, const Cell *cell, uint32_t cells)
{
	Table *table = user;
	Rows *rows = table->rows;
	Complaints *complaints = table->loading->complaints;
	if (!table->has_header)
		return take_header(table, cell, cells);
	if (rows->count == ROW_LIMIT) {
		complain(complaints, MESSAGE_TAB_10, cell->place, (About){ .want = "100,000 rows" });
		rows->count = 0; /* nothing is said of a table that is no table */
		rows->whole = false;
		return false;
	}
	if (is_blank_row(cell, cells)) {
		complain(complaints, MESSAGE_TAB_06, cell->place, (About){ 0 });
		return true;
	}
	if (cells != table->header.count) {
		About about = {
			.value = arena_printf(table->loading->arena, "%u", (unsigned)cells),
			.want = arena_printf(table->loading->arena, "%u", (unsigned)table->header.count),
		};
		bool few = cells < table->header.count;
		complain(complaints, few ? MESSAGE_TAB_07 : MESSAGE_TAB_08, few ? cell->place : cell[table->header.count].place,
			 about);
		rows->whole = false;
		return true;
	}
	rows->row = arena_more(table->loading->arena, rows->row, rows->count, &rows->room, rows->record->size);
	void *row = row_at(rows, rows->count);
	memset(row, 0, rows->record->size);
	*(Given *)row = (Given){ .place = cell->place, .said = SAID_VALUE };
	for (uint32_t i = 0; i < cells; i++)
		if (table->header.column[i].steps > 0)
			fill_cell(table, &table->header.column[i], &cell[i], row);
	finish_inside(table, rows->record, row);
	check_due(table, row, cell);
	rows->count++;
	return true;
}

void read_table(const Loading *loading, Rows *rows)
{
	Table table = { .loading = loading, .rows = rows };
	CsvFile file = { loading->arena, rows->source, loading->complaints, take_row, &table };
	rows->whole = true;
	if (!csv_read(&file))
		rows->whole = false;
	else if (!table.has_header) {
		complain(loading->complaints, MESSAGE_TAB_15, (Place){ .line = 1, .column = 1, .source = rows->source->id },
			 (About){ 0 });
		rows->whole = false;
	}
}
