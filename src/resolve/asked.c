/* SPDX-License-Identifier: MIT
 * Which changes an item of the round before asked for: those of the field it stands at, in the same record or around it, and
 * those its remedy names. Not all that its facts used: else lowering the wind speed would answer an uplift item.
 */
#include "resolving.h"

#include <ctype.h>
#include <string.h>

enum { MOST_LOOKED_AT = 200 }; /* items at one record; no quadratic time */

/* Items by a key: of a field within a roof area, or of a record. */
typedef struct Asking {
	const EarlierItem *item;
	const EarlierPlace *place;
	struct Asking *next;
	uint32_t count; /* of the first */
} Asking;

typedef struct {
	Hash *at_record, *at_field;
	Arena *arena;
} Index;

static void put_asking(const Index *index, Hash *hash, const char *key, Asking asking)
{
	Asking *first = hash_get(hash, key, strlen(key));
	if (first != NULL && first->count >= MOST_LOOKED_AT)
		return;
	Asking *kept = TAKE(index->arena, Asking, 1);
	*kept = asking;
	if (first == NULL) {
		hash_put(hash, key, strlen(key), kept);
		first = kept;
	} else {
		kept->next = first->next;
		first->next = kept;
	}
	first->count++;
}

/* "roof_areas[Main roof]" of a path in it, "" of all else. Brackets in names are marked. */
static const char *area_of(const char *path, Arena *arena)
{
	static const char list[] = "roof_areas[";
	if (path == NULL || strncmp(path, list, sizeof list - 1) != 0)
		return "";
	size_t end = sizeof list - 1;
	while (path[end] != '\0' && path[end] != ']')
		end += path[end] == '\\' && path[end + 1] != '\0' ? 2 : 1;
	return arena_text(arena, path, end);
}

static const char *field_key(const char *path, const char *field, Arena *arena)
{
	return arena_printf(arena, "%s\n%s", area_of(path, arena), field);
}

/* What stands outside of roof areas counts for all of them: their items ask for it as well. */
static const char *anywhere(const char *field, Arena *arena)
{
	return arena_printf(arena, "*\n%s", field);
}

/* What is wrong in a zone is cured at the clips, whose spacings by zone are one value. */
static const char *cured_at(const EarlierPlace *place)
{
	return strstr(place->path, "].zones[") != NULL ? "clip.spacing" : place->field;
}

static void put_item(const Index *index, const EarlierItem *item)
{
	for (uint32_t i = 0; i < item->places; i++) {
		const EarlierPlace *place = &item->place[i];
		if (place->state == ITEM_CLOSED || place->path == NULL)
			continue;
		Asking asking = { .item = item, .place = place };
		put_asking(index, index->at_record, place->path, asking);
		if (cured_at(place) == NULL)
			continue;
		put_asking(index, index->at_field, field_key(place->path, cured_at(place), index->arena), asking);
		put_asking(index, index->at_field, anywhere(cured_at(place), index->arena), asking);
	}
}

/* ---- words ---- */

/* Whether a text has these words, whole, whatever the case of their letters; an underscore is a blank. */
static bool has_words(const char *text, const char *words)
{
	size_t length = strlen(words);
	for (const char *at = text; text != NULL && length > 1 && *at != '\0'; at++) {
		size_t i = 0;
		while (i < length && tolower((unsigned char)at[i]) == (words[i] == '_' ? ' ' : tolower((unsigned char)words[i])))
			i++;
		bool begins = at == text || !isalnum((unsigned char)at[-1]), ends = i == length && !isalnum((unsigned char)at[i]);
		bool is_plural = i == length && at[i] == 's' && !isalnum((unsigned char)at[i + 1]);
		if (begins && (ends || is_plural))
			return true;
	}
	return false;
}

static bool names_change(const EarlierItem *item, const Changed *changed)
{
	if (changed->kind != CHANGED_VALUE)
		return has_words(item->remedy, changed->record->name) || has_words(item->finding, changed->record->name) ||
		       has_words(item->remedy, changed->here);
	return has_words(item->remedy, changed->field->key) || has_words(item->remedy, changed->here);
}

/* ---- the search ---- */

/* Two records of one kind and of one area: an item at the one asks nothing of the other. */
static bool is_of_another(const Changed *changed, const EarlierPlace *place)
{
	const char *path = changed->path;
	if (strcmp(path, place->path) == 0)
		return false;
	size_t same = 0;
	while (path[same] != '\0' && path[same] == place->path[same])
		same++;
	while (same > 0 && path[same - 1] != '[')
		same--;
	return same > 0 && strchr(path + same, '.') == NULL && strchr(place->path + same, '.') == NULL;
}

static bool is_asked_by_field(const Index *index, const Changed *changed)
{
	const char *field = changed->field != NULL ? arena_printf(index->arena, "%s.%s", changed->record->name, changed->field->key)
		: NULL;
	if (field == NULL)
		return false;
	const char *area = area_of(changed->path, index->arena);
	const char *const areas[] = { area, *area == '\0' ? "*" : "" };
	for (size_t i = 0; i < 2; i++) {
		const char *key = arena_printf(index->arena, "%s\n%s", areas[i], field);
		for (const Asking *a = hash_get(index->at_field, key, strlen(key)); a != NULL; a = a->next)
			if (!is_of_another(changed, a->place))
				return true;
	}
	return false;
}

/* By an item at the record itself or at one around it, up to its roof area. */
static bool is_asked_by_remedy(const Index *index, const Changed *changed)
{
	const Case *outer = changed->kind == RECORD_ADDED ? changed->now->up : changed->then;
	for (; outer != NULL; outer = outer->up) {
		const char *path = outer->before;
		for (const Asking *a = path != NULL ? hash_get(index->at_record, path, strlen(path)) : NULL; a != NULL; a = a->next)
			if (names_change(a->item, changed))
				return true;
		if (outer->kind == KIND_roof_area && changed->kind == CHANGED_VALUE)
			break;
	}
	return false;
}

/* A record that is gone, or back, and has an open item: that item tells it. */
static bool is_told_by_item(const Index *index, const Changed *changed)
{
	return changed->kind != CHANGED_VALUE && hash_get(index->at_record, changed->path, strlen(changed->path)) != NULL;
}

/* ---- one in place of another ---- */

static const char *list_key(const Case *up, const Record *record, Arena *arena)
{
	const char *path = up != NULL && up->before != NULL ? up->before : "";
	return arena_printf(arena, "%s\n%s", path, record->name);
}

/* A record that is new in a list that lost one with an open item: that item asked for it, and asks still whether it is that. */
static void find_replaced(History *history, const Index *index)
{
	Arena *arena = index->arena;
	Hash *gone = hash_make(arena, 8);
	history->replaced = hash_make(arena, 8);
	for (uint32_t i = 0; i < history->changes; i++) {
		Changed *changed = &history->changed[i];
		const char *key = changed->kind == RECORD_REMOVED ? list_key(changed->then->up, changed->record, arena) : NULL;
		if (key != NULL && is_told_by_item(index, changed) && hash_get(gone, key, strlen(key)) == NULL)
			hash_put(gone, key, strlen(key), changed);
	}
	for (uint32_t i = 0; i < history->changes; i++) {
		Changed *changed = &history->changed[i];
		const char *key = changed->kind == RECORD_ADDED ? list_key(changed->now->up, changed->record, arena) : NULL;
		const Changed *old = key != NULL ? hash_get(gone, key, strlen(key)) : NULL;
		if (old == NULL)
			continue;
		changed->asked = true;
		hash_put(history->replaced, old->path, strlen(old->path), (void *)(uintptr_t)changed->here);
	}
}

void find_asked(History *history, Arena *arena)
{
	Index index = { hash_make(arena, history->earlier->items), hash_make(arena, history->earlier->items), arena };
	history->renames = hash_make(arena, 8);
	for (uint32_t i = 0; i < history->earlier->items; i++)
		put_item(&index, &history->earlier->item[i]);
	for (uint32_t i = 0; i < history->changes; i++) {
		Changed *changed = &history->changed[i];
		changed->asked = is_asked_by_field(&index, changed) || is_asked_by_remedy(&index, changed) ||
				 is_told_by_item(&index, changed);
		if (changed->renamed && changed->asked)
			hash_put(history->renames, changed->path, strlen(changed->path), changed);
	}
	find_replaced(history, &index);
}
