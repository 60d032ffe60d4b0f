/* SPDX-License-Identifier: MIT
 * Checks that are alike in every table: rows that stand twice, and where each figure comes from.
 */
#include "edition.h"
#include "hash.h"
#include "rules.h"

#include <string.h>

/* What a cell says, for telling rows apart. */
static const char *value_text(Arena *arena, const Field *field, const void *row)
{
	const Given *given = given_in(field, row);
	if (given->said != SAID_VALUE)
		return given->typed != NULL ? given->typed : "";
	switch (field->kind) {
	case IS_NUMBER:
	case IS_SIZE:
		return arena_printf(arena, "%.9g", ((const Number *)(const void *)given)->value);
	case IS_DATE:
		return arena_printf(arena, "%d", (int)((const Date *)(const void *)given)->day);
	case IS_WORD:
		return ((const Word *)(const void *)given)->text;
	case IS_NAME:
	case IS_TEXT:
		return ((const Text *)(const void *)given)->text;
	default:
		return given->typed;
	}
}

typedef struct {
	const Field *field[4];
	uint32_t count;
} Keys;

static Keys keys_of(const Record *record, const char *names)
{
	Keys keys = { .count = 0 };
	while (*names != '\0' && keys.count < 4) {
		size_t length = strcspn(names, " ");
		keys.field[keys.count++] = field_find(record, names, length);
		names += length + strspn(names + length, " ");
	}
	return keys;
}

static const Given *twice_place(const Keys *keys, const void *row)
{
	return given_in(keys->field[0], row);
}

void rows_check_twice(const Loading *loading, const Rows *rows, const char *names)
{
	Keys keys = keys_of(rows->record, names);
	Hash *seen = hash_make(loading->arena, rows->count);
	for (uint32_t i = 0; i < rows->count; i++) {
		void *row = row_at(rows, i);
		const char *key = value_text(loading->arena, keys.field[0], row), *shown = key;
		if (twice_place(&keys, row)->said != SAID_VALUE)
			continue;
		for (uint32_t k = 1; k < keys.count; k++) {
			const char *value = value_text(loading->arena, keys.field[k], row);
			key = arena_printf(loading->arena, "%s\x1f%s", key, value);
			shown = *value != '\0' ? arena_printf(loading->arena, "%s, %s", shown, value) : shown;
		}
		const void *before = hash_put(seen, key, strlen(key), row);
		if (before != NULL)
			complain(loading->complaints, MESSAGE_TAB_32, twice_place(&keys, row)->place,
				 (About){ .value = shown, .also = twice_place(&keys, before)->place });
	}
}

/* ---- basis ---- */

static const char practice[] = "common practice, no published source";

static bool is_basis(const Loading *loading, const char *text, size_t length)
{
	if (length == strlen(practice) && memcmp(text, practice, length) == 0)
		return true;
	return source_row(loading->reference, arena_text(loading->arena, text, length)) != NULL;
}

void basis_check(const Loading *loading, const Source *source, const Text *basis)
{
	SplitPart part;
	if (loading->reference == NULL || basis->given.said != SAID_VALUE)
		return;
	for (size_t at = 0; split_next(basis->text, &at, &part);) {
		if (is_basis(loading, part.text, part.length))
			continue;
		Place place = basis->given.place;
		if (source != NULL)
			place = csv_place_within(source, place, part.at, part.length);
		complain(loading->complaints, MESSAGE_TAB_53, place,
			 (About){ .value = arena_text(loading->arena, part.text, part.length) });
	}
}

void rows_check_basis(const Loading *loading, const Rows *rows)
{
	const Field *field = field_find(rows->record, "basis", strlen("basis"));
	if (field == NULL)
		field = field_find(rows->record, "source", strlen("source"));
	if (field == NULL || field->kind != IS_TEXT)
		return;
	for (uint32_t i = 0; i < rows->count; i++)
		basis_check(loading, rows->source, (const Text *)(const void *)given_in(field, row_at(rows, i)));
}
