/* SPDX-License-Identifier: MIT
 * What a fact used, told: its name, its unit, its text, where it stands.
 */
#include "sheeting.h"

#include "template.h"

#include <string.h>

/* ---- fields ---- */

static const Field *field_over(const Record *record, size_t offset)
{
	const Field *found = NULL;
	for (uint32_t i = 0; i < record->count && record->field[i].offset <= offset; i++)
		found = &record->field[i];
	return found;
}

/* "support.thickness": the keys that lead from the record of a case to a value in it. */
static const char *path_to(const Use *use, Arena *arena)
{
	const char *path = NULL;
	const Record *record = use->at != NULL ? record_of(use->at->kind) : NULL;
	uintptr_t begin = record != NULL ? (uintptr_t)use->at->row : 0, here = (uintptr_t)use->given;
	if (record == NULL || here < begin || here - begin >= record->size)
		return use->what.field->key;
	for (size_t offset = here - begin; record != NULL;) {
		const Field *field = field_over(record, offset);
		if (field == NULL)
			return use->what.field->key;
		path = path == NULL ? field->key : arena_printf(arena, "%s.%s", path, field->key);
		if (field == use->what.field)
			return path;
		offset -= field->offset;
		record = field->kind == IS_ONE ? field->record : NULL;
	}
	return use->what.field->key;
}

static void tell_list(SheetUse *told, const Field *field, const Given *given, Arena *arena)
{
	uint32_t count = field->kind == IS_LIST ? ((const List *)(const void *)given)->count
		: field->kind == IS_TEXTS              ? ((const Texts *)(const void *)given)->count
											   : ((const ByZone *)(const void *)given)->count;
	told->shown = SHOWN_TEXT;
	told->text = arena_printf(arena, count == 1 ? "%u entry" : "%u entries", count);
}

static void tell_value(SheetUse *told, const Field *field, const Given *given, Arena *arena)
{
	switch (field->kind) {
	case IS_NUMBER:
	case IS_SIZE:
		told->shown = SHOWN_NUMBER;
		break;
	case IS_YES:
		told->shown = SHOWN_YES;
		break;
	case IS_DATE:
		told->shown = SHOWN_DAY;
		break;
	case IS_WORD:
		told->shown = SHOWN_TEXT;
		told->text = ((const Word *)(const void *)given)->text;
		break;
	case IS_NAME:
	case IS_TEXT:
	case IS_MARK:
		told->shown = SHOWN_TEXT;
		told->text = ((const Text *)(const void *)given)->text;
		break;
	case IS_TEXTS:
	case IS_BY_ZONE:
	case IS_LIST:
		tell_list(told, field, given, arena);
		break;
	case IS_ONE:
		break;
	}
}

static void tell_field(SheetUse *told, const Use *use, Arena *arena)
{
	const Field *field = use->what.field;
	told->name = path_to(use, arena);
	told->title = field->title;
	told->unit = field->unit;
	told->given = use->given;
	if (is_value(use->given)) {
		tell_value(told, field, use->given, arena);
	} else if (field->kind == IS_LIST && use->given->said == SAID_NONE) {
		told->shown = SHOWN_TEXT;
		told->text = "none";
	}
}

/* ---- constants and facts ---- */

static const char *as_key(const char *words, Arena *arena)
{
	char *key = arena_text(arena, words, strlen(words));
	for (char *c = key; *c != '\0'; c++)
		if (*c == ' ')
			*c = '_';
	return key;
}

/* A table of names and values calls its figures by the name. */
static void tell_constant(SheetUse *told, const Use *use, Sheeting *sheeting)
{
	const char *words = use->what.constant;
	size_t file = strcspn(words, " ");
	told->table = arena_text(sheeting->arena, words, file);
	told->row = words[file] == ' ' ? words + file + 1 : "";
	told->source = use->source;
	told->shown = SHOWN_NUMBER;
	Cell cell = find_cell(sheeting, use);
	bool by_row = cell.field == NULL || cell.record == &WindConstant_record;
	told->name = by_row ? as_key(told->row, sheeting->arena) : cell.field->key;
	if (cell.field == NULL)
		return;
	told->title = by_row ? told->row : cell.field->title;
	told->unit = cell.field->unit;
	told->given = cell.given;
	if (cell.field->kind == IS_YES)
		told->shown = SHOWN_YES;
	if (cell.field->kind == IS_DATE)
		told->shown = SHOWN_DAY;
}

static void tell_fact(SheetUse *told, const Use *use)
{
	const FactSpec *spec = fact_spec(use->what.fact);
	told->name = spec->name;
	told->title = spec->title;
	told->unit = spec->unit;
	told->id = use->what.fact;
	told->fact = fact_of((Case *)use->at, use->what.fact); /* computed already */
	told->known_by = told->fact->known_by;
	told->shown = told->fact->state != FACT_KNOWN ? SHOWN_NOTHING : spec->unit == UNIT_yes ? SHOWN_YES : SHOWN_NUMBER;
}

SheetUse told_use(Sheeting *sheeting, const Use *use)
{
	SheetUse told = { .kind = use->kind, .known_by = use->known_by, .at = use->at, .value = use->value, .shown = SHOWN_NOTHING };
	if (use->kind == USED_FACT)
		tell_fact(&told, use);
	else if (use->kind == USED_CONSTANT)
		tell_constant(&told, use, sheeting);
	else
		tell_field(&told, use, sheeting->arena);
	return told;
}

/* ---- names of a template ---- */

static const char *last_key(const char *path)
{
	const char *dot = strrchr(path, '.');
	return dot != NULL ? dot + 1 : path;
}

static bool is_called(const char *name, const Snippet *piece)
{
	return strlen(name) == piece->length && memcmp(name, piece->at, piece->length) == 0;
}

/* The use that a template means: by its whole name, else by its last key. */
static SheetUse *find_use(SheetUse *use, uint32_t count, const Snippet *piece)
{
	for (uint32_t i = 0; i < count; i++)
		if (use[i].shown == SHOWN_NUMBER && is_called(use[i].name, piece))
			return &use[i];
	Snippet last = *piece;
	for (size_t i = 0; i < piece->length; i++)
		if (piece->at[i] == '.')
			last = (Snippet){ piece->at + i + 1, piece->length - i - 1, true };
	for (uint32_t i = 0; i < count; i++)
		if (use[i].shown == SHOWN_NUMBER && is_called(last_key(use[i].name), &last))
			return &use[i];
	return NULL;
}

bool bind_uses(const char *formula, SheetUse *use, uint32_t count, Arena *arena)
{
	Snippet piece;
	bool all = true;
	while (template_next(&formula, &piece)) {
		SheetUse *meant = piece.is_name ? find_use(use, count, &piece) : NULL;
		if (meant != NULL)
			meant->name = arena_text(arena, piece.at, piece.length);
		all &= !piece.is_name || meant != NULL;
	}
	return all;
}
