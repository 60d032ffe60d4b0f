/* SPDX-License-Identifier: MIT
 * Paths made of names: `roof_areas[Main roof].penetrations[RTU-1]`, `roof_areas[Main roof].sealants[seal-butyl-tape, seam]`.
 *
 * They hold from round to round when lists are reordered and lines move; `was` of a record stays in its row for the rounds.
 * Equals are counted `#2` in the order of the file. Brackets in names are marked, so that no name looks like another's path.
 */
#include "resolving.h"

#include <string.h>

static const char *escaped(Arena *arena, const char *name)
{
	if (strpbrk(name, "[]\\") == NULL)
		return name;
	char *text = arena_take(arena, 2 * strlen(name) + 1, 1), *end = text;
	for (; *name != '\0'; name++) {
		if (strchr("[]\\", *name) != NULL)
			*end++ = '\\';
		*end++ = *name;
	}
	return text;
}

/* ---- how a record is held: the key of its list ---- */

/* The key under which a record holds those of a kind, or NULL. */
static const Field *field_holding(const Record *record, RecordKind kind)
{
	for (uint32_t i = 0; i < record->count; i++) {
		const Field *field = &record->field[i];
		bool is_held = field->kind == IS_LIST || (field->kind == IS_ONE && field->record->sort == RECORD_PART);
		if (is_held && field->record->kind == kind)
			return field;
	}
	return NULL;
}

/* The keys from a record to its list of a kind: "roof_areas", or through a record inside: "specification.requirements". */
static const char *keys_to(Arena *arena, const Case *at)
{
	const Record *outer = record_of(at->up->kind);
	const Field *field = field_holding(outer, at->kind);
	if (field != NULL)
		return field->key;
	for (uint32_t i = 0; i < outer->count; i++) {
		const Field *inner = outer->field[i].kind == IS_ONE ? field_holding(outer->field[i].record, at->kind) : NULL;
		if (inner != NULL)
			return arena_printf(arena, "%s.%s", outer->field[i].key, inner->key);
	}
	return NULL;
}

static bool is_one(const Case *at)
{
	const Field *field = field_holding(record_of(at->up->kind), at->kind);
	return field != NULL && field->kind == IS_ONE;
}

/* ---- the last piece of a path ---- */

/* What a record was called in the round before, if it says so. */
static const char *was_of(const Case *at)
{
	const Field *field = field_find(record_of(at->kind), "was", strlen("was"));
	const void *row = at->submitted != NULL ? at->submitted : at->row;
	if (field == NULL || field->kind != IS_TEXT || !is_value(given_in(field, row)))
		return NULL;
	return ((const Text *)(const void *)given_in(field, row))->text;
}

static const char *stated_piece(Arena *arena, const Case *at, bool before, uint32_t twin)
{
	const char *keys = keys_to(arena, at);
	if (keys == NULL)
		keys = record_of(at->kind)->name;
	if (is_one(at))
		return keys;
	Mark mark = mark_of(at);
	const char *was = before ? was_of(at) : NULL;
	if (was != NULL)
		mark.first = was;
	const char *comma = mark.second != NULL ? ", " : "", *second = mark.second != NULL ? escaped(arena, mark.second) : "";
	const char *count = twin > 0 ? arena_printf(arena, " #%u", twin + 1) : "";
	return arena_printf(arena, "%s[%s%s%s%s]", keys, escaped(arena, mark.first), comma, second, count);
}

static const char *text_of(const Text *text)
{
	return is_value(&text->given) ? text->text : "";
}

/* The attribute and the paper: "size[listing, tested-210, class]", "size[specification, 2.3.B, up]". */
static const char *compared_piece(Arena *arena, const Case *at)
{
	const Comparison *record = at->row;
	const char *last = is_word(&record->with, "listing") ? record->role.text : record->may_go.text;
	const char *paper = escaped(arena, text_of(&record->paper)), *attribute = text_of(&record->attribute);
	return arena_printf(arena, "%s[%s, %s, %s]", attribute, record->with.text, paper, last != NULL ? last : "");
}

const char *path_piece(Arena *arena, const Case *at, bool before, uint32_t twin)
{
	switch (at->kind) {
	case KIND_comparison:
		return compared_piece(arena, at);
	case KIND_zone:
		return arena_printf(arena, "zones[%s]", escaped(arena, ((const Zone *)at->row)->name.text));
	case KIND_role:
		return arena_printf(arena, "roles[%s]", escaped(arena, text_of(&((const Role *)at->row)->role)));
	case KIND_paper:
		return arena_printf(arena, "papers[%s]", escaped(arena, text_of(&((const Paper *)at->row)->kind)));
	default:
		return stated_piece(arena, at, before, twin);
	}
}

/* A comparison stands below its part. */
const Case *path_above(const Case *at)
{
	return at->kind == KIND_comparison ? ((const Compared *)at->row)->part : at->up;
}

const char *case_path(const Case *at, Arena *arena)
{
	if (at->up == NULL)
		return record_of(at->kind)->name;
	const char *path = path_piece(arena, at, false, at->twin);
	for (const Case *outer = path_above(at); outer != NULL && outer->up != NULL; outer = path_above(outer))
		path = arena_printf(arena, "%s.%s", path_piece(arena, outer, false, outer->twin), path);
	return path;
}
