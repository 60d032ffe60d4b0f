/* SPDX-License-Identifier: MIT
 * Which changes are declared: `changes` names the field by its keys from the outside in, `roof_areas.Main roof.clips.spacing`.
 * Names of records may be left out, and the last key where the record that holds it is named. The paper that a reply names is
 * declared with it.
 */
#include "resolving.h"

#include <ctype.h>
#include <string.h>

enum { MOST_LEVELS = 4 };

static const char *folded(Arena *arena, const char *text)
{
	char *copy = arena_text(arena, text, strlen(text));
	for (char *c = copy; *c != '\0'; c++)
		*c = *c == '_' ? ' ' : (char)tolower((unsigned char)*c);
	return copy;
}

static void put_words(Hash *hash, const char *words)
{
	hash_put(hash, words, strlen(words), hash);
}

static bool has(const Hash *hash, const char *words)
{
	return hash_get(hash, words, strlen(words)) != NULL;
}

/* ---- the words of an address ---- */

/* One step of it: the key of a list, and the name of a record in it, of now and of the round before. */
typedef struct {
	const char *key, *name[2];
} Step;

/* "clips[clip-a-float, running]": the key, and the name up to a comma. */
static Step step_of(Arena *arena, const char *piece, const char *name)
{
	Step step = { piece, { NULL, NULL } };
	size_t length = strcspn(piece, "[");
	if (piece[length] == '[') {
		const char *inside = piece + length + 1, *comma = strstr(inside, ", "), *close = strrchr(inside, ']');
		size_t end = comma != NULL ? (size_t)(comma - inside) : close != NULL ? (size_t)(close - inside) : strlen(inside);
		step.key = arena_text(arena, piece, length);
		step.name[0] = folded(arena, arena_text(arena, inside, end));
	}
	step.key = folded(arena, step.key);
	step.name[1] = name != NULL ? folded(arena, name) : NULL;
	return step;
}

/* The steps to a record, the outermost first. */
static uint32_t steps_to(Arena *arena, const Case *at, Step step[MOST_LEVELS])
{
	const Case *level[MOST_LEVELS];
	uint32_t count = 0;
	for (; at != NULL && at->up != NULL && count < MOST_LEVELS; at = at->up)
		level[count++] = at;
	for (uint32_t i = 0; i < count; i++) {
		const Case *here = level[count - 1 - i];
		step[i] = step_of(arena, path_piece(arena, here, true, 0), mark_of(here).first);
	}
	return count;
}

/* Every way of leaving out names: bit by bit, two for each step. */
static bool is_named(const Hash *declared, Arena *arena, const Step *step, uint32_t count, const char *keys)
{
	for (uint32_t ways = 0; ways < 1u << 2 * count; ways++) {
		const char *address = "";
		bool is_way = true;
		for (uint32_t i = 0; i < count && is_way; i++) {
			uint32_t way = ways >> 2 * i & 3;
			const char *name = way == 0 ? NULL : step[i].name[way - 1 < 2 ? way - 1 : 0];
			is_way = way == 0 || (way < 3 && name != NULL);
			address = arena_printf(arena, "%s%s%s%s%s", address, *address != '\0' ? "." : "", step[i].key,
				name != NULL ? "." : "", name != NULL ? name : "");
		}
		if (!is_way)
			continue;
		if (*address != '\0' && has(declared, address))
			return true;
		const char *point_between = *address != '\0' && keys != NULL ? "." : "";
		const char *whole = arena_printf(arena, "%s%s%s", address, point_between, keys != NULL ? keys : "");
		if (keys != NULL && has(declared, whole))
			return true;
		/* "building" declares "building.length" */
		const char *point = keys != NULL ? strrchr(whole, '.') : NULL;
		if (point != NULL && has(declared, arena_text(arena, whole, (size_t)(point - whole))))
			return true;
	}
	return false;
}

static bool is_declared(const Hash *declared, const Changed *changed, Arena *arena)
{
	Step step[MOST_LEVELS];
	const Case *at = changed->kind == RECORD_REMOVED ? changed->then : changed->now;
	uint32_t count = steps_to(arena, at, step);
	return is_named(declared, arena, step, count, changed->keys != NULL ? folded(arena, changed->keys) : NULL);
}

/* ---- changes of earlier rounds ---- */

/* The steps of a path: its pieces stand between points outside of brackets, and brackets in names are marked. */
static uint32_t steps_of(Arena *arena, const char *path, Step step[MOST_LEVELS])
{
	uint32_t count = 0;
	while (*path != '\0' && count < MOST_LEVELS) {
		size_t end = 0;
		for (bool inside = false; path[end] != '\0' && (inside || path[end] != '.'); end++) {
			inside = path[end] == '[' || (inside && path[end] != ']');
			end += path[end] == '\\' && path[end + 1] != '\0';
		}
		step[count++] = step_of(arena, arena_text(arena, path, end), NULL);
		path += end + (path[end] == '.');
	}
	bool is_submittal = count == 1 && strcmp(step[0].key, "submittal") == 0;
	return is_submittal ? 0 : count;
}

/* Of "clip.spacing" at a clip the key, of "warranty.term" at the submittal all. */
static const char *keys_of(const char *field, const HeldAs *held)
{
	if (held == NULL)
		return field;
	const char *record = record_of(held->at->kind)->name;
	size_t length = strlen(record);
	return strncmp(field, record, length) == 0 && field[length] == '.' ? field + length + 1 : field;
}

static bool is_declared_now(const History *history, const Hash *declared, const EarlierPlace *place, bool is_value)
{
	Arena *arena = history->before->arena;
	Step step[MOST_LEVELS];
	const HeldAs *held = held_as(history, place->path);
	uint32_t count = steps_of(arena, place->path, step);
	for (uint32_t i = 0; held != NULL && i < count && i < 1; i++)
		step[count - 1].name[1] = folded(arena, mark_of(held->at).first);
	return is_named(declared, arena, step, count, is_value ? folded(arena, keys_of(place->field, held)) : NULL);
}

/* Whether the value is again what it was before it changed. */
static bool is_taken_back(const Hash *changes, const EarlierItem *item, const EarlierPlace *place, Arena *arena)
{
	const char *key = arena_printf(arena, "%s\n%s", place->path, place->field);
	const Changed *changed = hash_get(changes, key, strlen(key));
	return changed != NULL && item->limit.text != NULL && strcmp(changed->here, item->limit.text) == 0;
}

static Hash *changes_by_field(const History *history, Arena *arena)
{
	Hash *changes = hash_make(arena, history->changes);
	for (uint32_t i = 0; i < history->changes; i++) {
		Changed *changed = &history->changed[i];
		if (changed->field == NULL)
			continue;
		const char *key = arena_printf(arena, "%s\n%s.%s", changed->path, changed->record->name, changed->field->key);
		hash_put(changes, key, strlen(key), changed);
	}
	return changes;
}

static bool is_made_good(const History *history, const Hash *declared, const Hash *changes, const EarlierItem *item)
{
	const EarlierPlace *place = item->place;
	bool is_value = strcmp(item->code, "RND-01") == 0, is_more = strcmp(item->code, "RND-02") == 0;
	if ((!is_value && !is_more && strcmp(item->code, "RND-03") != 0) || place->path == NULL || place->field == NULL)
		return false;
	if (is_value)
		return is_taken_back(changes, item, place, history->before->arena) || is_declared_now(history, declared, place, true);
	if (is_more)
		return held_as(history, place->path) == NULL || is_declared_now(history, declared, place, false);
	EarlierPlace gone = { .path = place->field };
	return held_as(history, gone.path) != NULL || is_declared_now(history, declared, &gone, false);
}

static void find_made_good(History *history, const Hash *declared, Arena *arena)
{
	const Earlier *earlier = history->earlier;
	const Hash *changes = changes_by_field(history, arena);
	history->made_good = TAKE(arena, bool, earlier->items + 1);
	for (uint32_t i = 0; i < earlier->items; i++)
		if (earlier->item[i].state != ITEM_CLOSED && earlier->item[i].places > 0)
			history->made_good[i] = is_made_good(history, declared, changes, &earlier->item[i]);
}

/* ---- papers of replies ---- */

/* "EL-88 revision 2" names EL-88. */
static void put_paper(Hash *papers, Arena *arena, const char *paper)
{
	const char *words = folded(arena, paper);
	put_words(papers, words);
	const char *revision = strstr(words, " rev");
	if (revision != NULL)
		put_words(papers, arena_text(arena, words, (size_t)(revision - words)));
}

static bool is_paper_of_reply(const Hash *papers, const Changed *changed, Arena *arena)
{
	const Case *at = changed->now;
	if (changed->kind == RECORD_REMOVED || (at->kind != KIND_document && at->kind != KIND_letter && at->kind != KIND_photograph))
		return false;
	return has(papers, folded(arena, mark_of(at).first));
}

void find_declared(History *history, const Cases *all)
{
	Arena *arena = all->arena;
	const Submittal *submittal = all->submittal;
	Hash *declared = hash_make(arena, submittal->changes.of.count), *papers = hash_make(arena, submittal->replies.of.count);
	for (uint32_t i = 0; i < submittal->changes.of.count; i++) {
		const Text *field = &submittal->changes.of.row[i].field;
		if (is_value(&field->given))
			put_words(declared, folded(arena, field->text));
	}
	for (uint32_t i = 0; i < submittal->replies.of.count; i++) {
		const Text *paper = &submittal->replies.of.row[i].paper;
		if (is_value(&paper->given))
			put_paper(papers, arena, paper->text);
	}
	for (uint32_t i = 0; i < history->changes; i++) {
		Changed *changed = &history->changed[i];
		changed->declared = is_declared(declared, changed, arena) || is_paper_of_reply(papers, changed, arena);
	}
	find_made_good(history, declared, arena);
}
