/* SPDX-License-Identifier: MIT
 * The header of a table, bound once: each cell is a key or a path of keys, with the unit of its column in brackets.
 *
 * A blank is the underscore of a key. A path goes through ONE by its key and through LIST by its singular (the row then holds a
 * list of one). What a listing tested stands in its header without the key `tested`.
 */
#include "header.h"

#include "hash.h"
#include "suggest.h"

#include <ctype.h>
#include <string.h>

enum { CHOICES = 256, SUGGESTIONS = 50 };

typedef struct {
	const Loading *loading;
	const Rows *rows;
	const Cell *cell;
} Binding;

bool is_due_in_table(const Record *record, const Field *field)
{
	if (record->sort == RECORD_PART)
		return strcmp(field->key, "item") == 0;
	return field->need == NEED_REQUIRED && field->kind != IS_ONE && field->kind != IS_LIST;
}

/* The field that a step of a path names: a list by its singular, anything else by its key. */
static const Field *step_find(const Record *record, const char *key, size_t length)
{
	const Field *field = field_find(record, key, length);
	if (field != NULL && field->kind != IS_LIST)
		return field;
	for (uint32_t i = 0; i < record->count; i++) {
		const char *one = record->field[i].one;
		if (one != NULL && strncmp(one, key, length) == 0 && one[length] == '\0')
			return &record->field[i];
	}
	return NULL;
}

/* The header cell as a path of keys: small letters, blanks as underscores, without blanks around and without its unit. */
static char *path_of(Arena *arena, const Cell *cell)
{
	size_t start = strspn(cell->text, " "), length = strcspn(cell->text + start, "[");
	while (length > 0 && cell->text[start + length - 1] == ' ')
		length--;
	char *path = arena_text(arena, cell->text + start, length);
	for (char *p = path; *p != '\0'; p++)
		*p = *p == ' ' ? '_' : (char)tolower((unsigned char)*p);
	return path;
}

/* A key as a header cell would write it. */
static const char *as_header(Arena *arena, const char *before, const Field *field)
{
	const char *name = field->one != NULL ? field->one : field->key;
	const char *unit = unit_row(field->unit)->printed;
	bool measured = (field->kind == IS_NUMBER || field->kind == IS_BY_ZONE) && *unit != '\0';
	char *text = arena_text(arena, name, strlen(name));
	for (char *p = text; *p != '\0'; p++)
		if (*p == '_')
			*p = ' ';
	return arena_printf(arena, measured ? "%s%s [%s]" : "%s%s", before, text, unit);
}

const char *header_name(Arena *arena, const Field *field)
{
	return as_header(arena, "", field);
}

/* The record inside whose keys stand in the header without its own: what a listing tested. */
static const Field *open_field(const Record *record)
{
	const Field *field = field_find(record, "tested", strlen("tested"));
	return field != NULL && field->kind == IS_ONE ? field : NULL;
}

/* A column nobody knows: the nearest name at the step where the path was lost, else the names there are. */
static void complain_unknown(const Binding *b, const char *path, const char *lost, const Record *record)
{
	Arena *arena = b->loading->arena;
	Complaints *complaints = b->loading->complaints;
	const char *key[CHOICES];
	uint32_t count = 0;
	const Field *choice[CHOICES];
	const Record *from[2] = { record, open_field(record) != NULL ? open_field(record)->record : NULL };
	for (int r = 0; r < 2 && from[r] != NULL; r++)
		for (uint32_t i = 0; i < from[r]->count && count < CHOICES; i++) {
			choice[count] = &from[r]->field[i];
			key[count++] = from[r]->field[i].one != NULL ? from[r]->field[i].one : from[r]->field[i].key;
		}
	size_t length = strcspn(lost, ".");
	int nearest = complaints->suggestions++ < SUGGESTIONS ? suggest(arena_text(arena, lost, length), key, count) : -1;
	About about = { .key = b->cell->text };
	if (nearest >= 0) {
		about.want = as_header(arena, arena_text(arena, path, (size_t)(lost - path)), choice[nearest]);
		complain(complaints, MESSAGE_TAB_20, b->cell->place, about);
		return;
	}
	about.want = as_header(arena, "", choice[0]);
	for (uint32_t i = 1; i < count; i++)
		about.want = arena_printf(arena, "%s, %s", about.want, as_header(arena, "", choice[i]));
	complain(complaints, MESSAGE_TAB_21, b->cell->place, about);
}

/* Takes `.least` or `.most` off the end of a path. */
static ColumnSort take_sort(char *path)
{
	char *dot = strrchr(path, '.');
	ColumnSort sort = COLUMN_VALUE;
	if (dot != NULL && strcmp(dot, ".least") == 0)
		sort = COLUMN_LEAST;
	else if (dot != NULL && strcmp(dot, ".most") == 0)
		sort = COLUMN_MOST;
	if (sort != COLUMN_VALUE)
		*dot = '\0';
	return sort;
}

static bool bind_path(const Binding *b, const char *path, Column *column)
{
	const Record *record = b->rows->record;
	for (const char *key = path; *key != '\0';) {
		size_t length = strcspn(key, ".");
		const Field *field = step_find(record, key, length);
		if (field == NULL && column->steps == 0 && open_field(record) != NULL) {
			column->step[column->steps++] = open_field(record);
			record = column->step[0]->record;
			field = step_find(record, key, length);
		}
		if (field == NULL || column->steps == COLUMN_STEPS) {
			complain_unknown(b, path, key, key == path ? b->rows->record : record);
			return false;
		}
		column->step[column->steps++] = field;
		key += length + (key[length] == '.');
		if (field->record == NULL && *key != '\0') {
			complain_unknown(b, path, key, record);
			return false;
		}
		record = field->record;
	}
	if (record == NULL)
		return true;
	complain(b->loading->complaints, MESSAGE_TAB_27, b->cell->place,
		 (About){ .key = b->cell->text,
			  .want = as_header(b->loading->arena, arena_printf(b->loading->arena, "%s.", path), record->field) });
	return false;
}

/* The unit in brackets of a header cell. */
static bool bind_unit(const Binding *b, Column *column)
{
	const Field *field = column->step[column->steps - 1];
	const char *open = strchr(b->cell->text, '[');
	const char *printed = unit_row(field->unit)->printed;
	bool measured = field->kind == IS_NUMBER || field->kind == IS_BY_ZONE || field->kind == IS_SIZE;
	if (open == NULL)
		return true;
	size_t length = strcspn(open + 1, "]");
	About about = { .key = column->key, .value = arena_text(b->loading->arena, open + 1, length), .want = printed };
	if (!measured || *printed == '\0') {
		complain(b->loading->complaints, MESSAGE_TAB_25, b->cell->place, about);
		return false;
	}
	if (open[1 + length] == ']' && open[2 + length] == '\0' &&
	    unit_find(open + 1, length, unit_row(field->unit)->dimension, &column->unit))
		return true;
	complain(b->loading->complaints, MESSAGE_TAB_24, b->cell->place, about);
	return false;
}

/* Binds one header cell; false if it fell out, so that a column that is due may be missing for this reason alone. */
static bool bind_column(const Binding *b, Column *column, Hash *seen)
{
	char *path = path_of(b->loading->arena, b->cell);
	const char *whole = arena_text(b->loading->arena, path, strlen(path));
	column->place = b->cell->place;
	if (*path == '\0') {
		complain(b->loading->complaints, MESSAGE_TAB_26, b->cell->place, (About){ 0 });
		return false;
	}
	const Column *before = hash_put(seen, whole, strlen(whole), column);
	if (before != NULL) {
		complain(b->loading->complaints, MESSAGE_TAB_22, b->cell->place,
			 (About){ .key = b->cell->text,
				  .want = arena_printf(b->loading->arena, "%u", (unsigned)before->place.column) });
		return true;
	}
	if (open_field(b->rows->record) != NULL)
		column->sort = take_sort(path);
	column->key = path;
	if (bind_path(b, path, column) && bind_unit(b, column))
		return true;
	column->steps = 0;
	return false;
}

static bool has_column(const Header *header, const Field *field)
{
	for (uint32_t i = 0; i < header->count; i++)
		if (header->column[i].steps == 1 && header->column[i].step[0] == field)
			return true;
	return false;
}

Header header_bind(const Loading *loading, const Rows *rows, const Cell *cell, uint32_t cells)
{
	Header header = { .column = TAKE(loading->arena, Column, cells), .count = cells, .whole = true };
	Hash *seen = hash_make(loading->arena, cells);
	for (uint32_t i = 0; i < cells; i++) {
		Binding b = { loading, rows, &cell[i] };
		header.whole &= bind_column(&b, &header.column[i], seen);
	}
	bool read = header.whole; /* else the column that is due may be the one that fell out */
	for (uint32_t i = 0; read && i < rows->record->count; i++) {
		const Field *field = &rows->record->field[i];
		if (!is_due_in_table(rows->record, field) || has_column(&header, field))
			continue;
		complain(loading->complaints, MESSAGE_TAB_23, cell->place, (About){ .key = header_name(loading->arena, field) });
		header.whole = false;
	}
	return header;
}
