/* SPDX-License-Identifier: MIT
 * Names for people: "Main roof / clip-a-float", the second of that name "Main roof / clip-a-float #2".
 *
 * Equal names are counted in a hash, so that a list of many equal parts takes no longer than one of different ones.
 */
#include "resolving.h"

#include <string.h>

const char *in_words(Arena *arena, const char *name)
{
	if (strchr(name, '_') == NULL)
		return name;
	char *words = arena_text(arena, name, strlen(name));
	for (char *c = words; *c != '\0'; c++)
		if (*c == '_')
			*c = ' ';
	return words;
}

/* How often a key was counted before. */
static uint32_t count_up(Hash *hash, const char *key, size_t length)
{
	uintptr_t before = (uintptr_t)hash_get(hash, key, length);
	hash_put(hash, key, length, (void *)(before + 1));
	return (uint32_t)before;
}

/* The text of the first field of a kind that has a value, from field number `from` on, or NULL. */
static const char *first_text(const Case *at, FieldKind kind, uint32_t from)
{
	const Record *record = record_of(at->kind);
	for (uint32_t i = from; i < record->count; i++) {
		if (record->field[i].kind != kind || !is_value(given_in(&record->field[i], at->row)))
			continue;
		const void *value = given_in(&record->field[i], at->row);
		return kind == IS_WORD ? ((const Word *)value)->text : ((const Text *)value)->text;
	}
	return NULL;
}

static const char *item_of(const Case *at)
{
	const Text *item = &((const Panel *)at->row)->item;
	return is_value(&item->given) ? item->text : NULL;
}

/* The number of a detail, which tells two details at one kind of place apart. */
static const char *number_of(const Case *at)
{
	const Field *number = field_find(record_of(at->kind), "number", strlen("number"));
	if (number == NULL || number->kind != IS_TEXT || !is_value(given_in(number, at->row)))
		return NULL;
	return ((const Text *)(const void *)given_in(number, at->row))->text;
}

Mark mark_of(const Case *at)
{
	const Record *record = record_of(at->kind);
	Mark mark = { first_text(at, IS_NAME, 0), NULL };
	if (mark.first != NULL)
		return mark;
	if (at->kind == KIND_submittal)
		return (Mark){ "the submittal", NULL };
	if (record->sort == RECORD_PART)
		mark = (Mark){ item_of(at), first_text(at, IS_WORD, 0) };
	else
		mark = (Mark){ first_text(at, IS_WORD, 0), number_of(at) };
	if (mark.first == NULL && record->sort != RECORD_PART)
		mark.first = first_text(at, IS_TEXT, 0);
	if (mark.first == NULL)
		mark.first = in_words(at->all->arena, record->name);
	return mark;
}

/* Without an item of its own a part is called by its kind. */
static const char *own_name(const Case *at, const Mark *mark)
{
	bool is_other = record_of(at->kind)->sort == RECORD_PART && strcmp(mark->first, "other") == 0;
	return is_other ? in_words(at->all->arena, record_of(at->kind)->name) : mark->first;
}

static bool stands_in_submittal(const Case *up)
{
	return up == NULL || up->kind == KIND_submittal;
}

/* The kind stands in front, unseen, so that a document and a letter of one number do not count as equals. */
static char *keyed_name(Arena *arena, const Case *at, const char *own)
{
	const char *before = stands_in_submittal(at->up) ? "" : at->up->name;
	size_t length = strlen(before), more = strlen(own), gap = length > 0 ? strlen(" / ") : 0;
	char *key = arena_take(arena, 1 + length + gap + more + 1, 1);
	key[0] = (char)(1 + (int)at->kind);
	memcpy(key + 1, before, length);
	memcpy(key + 1 + length, " / ", gap);
	memcpy(key + 1 + length + gap, own, more);
	return key;
}

static void count_twins(Resolving *r, Case *at, const Mark *mark)
{
	size_t first = strlen(mark->first) + 1, second = mark->second != NULL ? strlen(mark->second) : 0;
	uint32_t head[2] = { (uint32_t)at->kind, at->up->order };
	char *key = arena_take(r->arena, sizeof head + first + second, 1);
	memcpy(key, head, sizeof head);
	memcpy(key + sizeof head, mark->first, first);
	if (second > 0)
		memcpy(key + sizeof head + first, mark->second, second);
	at->twin = count_up(r->twins, key, sizeof head + first + second);
}

void name_case(Resolving *r, Case *at)
{
	if (r->nameless) {
		at->name = "";
		return;
	}
	Mark mark = mark_of(at);
	char *key = keyed_name(r->arena, at, own_name(at, &mark));
	at->name = key + 1;
	if (at->up == NULL)
		return;
	uint32_t before = count_up(r->names, key, strlen(key));
	if (before > 0)
		at->name = arena_printf(r->arena, "%s #%u", key + 1, before + 1);
	count_twins(r, at, &mark);
}

const char *name_made(Resolving *r, const Case *up, const char *own)
{
	if (r->nameless)
		return "";
	Case made = { .kind = KIND_zone, .up = (Case *)up };
	return keyed_name(r->arena, &made, own) + 1;
}
