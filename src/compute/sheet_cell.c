/* SPDX-License-Identifier: MIT
 * Where a constant stands: the cell of its table that has its value, in the row that its words speak of.
 */
#include "sheeting.h"

#include <string.h>

enum { MOST_LOOKED = 20000000 };

typedef struct {
	const char *file;
	const Record *record;
	const void *row;
	uint32_t count;
} CellTable;

enum { MOST_TABLES = 80 };

#define ADD_TABLE(from) (void)((count) < MOST_TABLES && (table[count++] = (from), true))

static uint32_t list_tables(const Cases *cases, CellTable table[MOST_TABLES])
{
	uint32_t count = 0;
#define REFERENCE_ROWS(member, R, file) \
	ADD_TABLE(((CellTable){ file, &R##_record, cases->reference->member.row, cases->reference->member.count }));
#define EDITION_ROWS(member, R, file) \
	ADD_TABLE(((CellTable){ file, &R##_record, cases->criteria->member.row, cases->criteria->member.count }));
#define REGISTER_ROWS(member, R, file) \
	ADD_TABLE(((CellTable){ file, &R##_record, cases->registers->member.row, cases->registers->member.count }));
	if (cases->reference != NULL) {
		REFERENCE_TABLES(REFERENCE_ROWS)
	}
	if (cases->registers != NULL) {
		REGISTER_TABLES(REGISTER_ROWS)
	}
	if (cases->criteria == NULL)
		return count;
	EDITION_TABLES(EDITION_ROWS)
	CATALOGUE_TABLES(EDITION_ROWS)
	const Edition *edition = &cases->criteria->edition;
	ADD_TABLE(((CellTable){ "criteria.yaml", &Edition_record, edition, 1 }));
	const List *factors = &edition->safety_factors.list;
	ADD_TABLE(((CellTable){ "criteria.yaml", &SafetyFactor_record, factors->row, factors->count }));
	return count;
}

static bool has_value(const Field *field, const Given *given, double value)
{
	if (!is_value(given))
		return false;
	if (field->kind == IS_YES)
		return ((const Yes *)(const void *)given)->yes == (value != 0);
	if (field->kind == IS_DATE)
		return ((const Date *)(const void *)given)->day == value;
	return (field->kind == IS_NUMBER || field->kind == IS_SIZE) && ((const Number *)(const void *)given)->value == value;
}

static const char *text_in(const Field *field, const Given *given)
{
	if (!is_value(given))
		return NULL;
	if (field->kind == IS_WORD)
		return ((const Word *)(const void *)given)->text;
	if (field->kind == IS_NAME || field->kind == IS_TEXT || field->kind == IS_MARK)
		return ((const Text *)(const void *)given)->text;
	return field->kind == IS_NUMBER || field->kind == IS_SIZE ? given->typed : NULL;
}

/* How many letters of a row's own texts stand in the words of a constant. */
static size_t likeness(const Record *record, const void *row, const char *words)
{
	size_t alike = 0;
	for (uint32_t i = 0; i < record->count; i++) {
		const char *text = text_in(&record->field[i], given_in(&record->field[i], row));
		if (text != NULL && *text != '\0' && strcasestr(words, text) != NULL)
			alike += strlen(text);
	}
	return alike;
}

/* Rows of several editions differ in their sources. */
static size_t source_likeness(const Record *record, const void *row, const char *source)
{
	const Field *field = source != NULL ? field_find(record, "source", strlen("source")) : NULL;
	const char *text = field != NULL ? text_in(field, given_in(field, row)) : NULL;
	return text != NULL && strcmp(text, source) == 0 ? strlen(text) : 0;
}

/* Whether the words name a key, with blanks or underscores. */
static bool names_key(const char *words, const char *key)
{
	for (; *words != '\0'; words++) {
		size_t i = 0;
		while (key[i] != '\0' && (words[i] == key[i] || (key[i] == '_' && words[i] == ' ')))
			i++;
		if (key[i] == '\0')
			return true;
	}
	return false;
}

typedef struct {
	const Use *use;
	const char *words;
	const Field *key; /* where the words are one key of the table and nothing else */
	Cell best;
	size_t alike;
	bool several;
} Search;

static void look_at_row(Search *search, const Record *record, const void *row)
{
	size_t own = likeness(record, row, search->words) + source_likeness(record, row, search->use->source);
	for (uint32_t i = 0; i < record->count; i++) {
		const Field *field = &record->field[i];
		const Given *given = given_in(field, row);
		if ((search->key != NULL && search->key != field) || !has_value(field, given, search->use->value))
			continue;
		size_t alike = 1 + own + (names_key(search->words, field->key) ? strlen(field->key) : 0);
		if (alike < search->alike)
			continue;
		search->several = alike == search->alike;
		search->alike = alike;
		search->best = (Cell){ field, record, given };
	}
}

static Cell search_tables(Sheeting *sheeting, const Use *use, size_t file, const char *words)
{
	CellTable table[MOST_TABLES];
	Search search = { .use = use, .words = words };
	uint32_t tables = list_tables(sheeting->cases, table);
	for (uint32_t t = 0; t < tables; t++) {
		if (strlen(table[t].file) != file || strncmp(table[t].file, use->what.constant, file) != 0)
			continue;
		search.key = field_find(table[t].record, words, strlen(words));
		for (uint32_t i = 0; i < table[t].count && sheeting->looked < MOST_LOOKED; i++) {
			sheeting->looked += table[t].record->count;
			look_at_row(&search, table[t].record, (const char *)table[t].row + i * table[t].record->size);
		}
	}
	if (search.several)
		search.best.given = NULL;
	return search.best;
}

Cell find_cell(Sheeting *sheeting, const Use *use)
{
	const char *constant = use->what.constant, *key = arena_printf(sheeting->arena, "%s %a", constant, use->value);
	size_t file = strcspn(constant, " ");
	Cell *known = hash_get(sheeting->cells, key, strlen(key));
	if (known != NULL)
		return *known;
	known = TAKE(sheeting->arena, Cell, 1);
	*known = search_tables(sheeting, use, file, constant[file] == ' ' ? constant + file + 1 : "");
	hash_put(sheeting->cells, key, strlen(key), known);
	return *known;
}
