/* SPDX-License-Identifier: MIT
 * What a line of an order names: an item by its own name, or by the code and words its supplier has for it. A code that fits two
 * items is told with both; words beside it may decide, the order in the table never does.
 */
#include "holding.h"

#include "suggest.h"

#include <ctype.h>
#include <string.h>
#include <strings.h>

enum { SUGGESTIONS = 50 };

static const char *small(Arena *arena, const char *text)
{
	char *folded = arena_text(arena, text, strlen(text));
	for (char *p = folded; *p != '\0'; p++)
		*p = (char)tolower((unsigned char)*p);
	return folded;
}

Known *known_find(const Holding *holding, const char *item)
{
	const char *key = small(holding->arena, item);
	return hash_get(holding->known, key, strlen(key));
}

static void add_choice(Holding *holding, const char *name, const char *item)
{
	uint32_t room = holding->choice_room;
	holding->choice = arena_more(holding->arena, holding->choice, holding->choices, &room, sizeof *holding->choice);
	holding->choice_item = arena_more(holding->arena, holding->choice_item, holding->choices, &holding->choice_room,
		sizeof *holding->choice_item);
	holding->choice[holding->choices] = name;
	holding->choice_item[holding->choices++] = item;
}

static Known *know(Holding *holding, const Text *item, RecordKind kind)
{
	if (!is_value(&item->given) || strcasecmp(item->text, "other") == 0)
		return NULL;
	const char *key = small(holding->arena, item->text);
	Known *known = hash_get(holding->known, key, strlen(key));
	if (known != NULL)
		return known;
	known = TAKE(holding->arena, Known, 1);
	known->item = item->text;
	known->kind = kind;
	hash_put(holding->known, key, strlen(key), known);
	add_choice(holding, item->text, item->text);
	return known;
}

/* PART_FIELDS lie at one place in every part. */
static void know_catalogue(Holding *holding, const Record *record, const void *rows, uint32_t count)
{
	for (uint32_t i = 0; i < count; i++) {
		const void *row = (const char *)rows + i * record->size;
		Known *known = know(holding, &((const Panel *)row)->item, (RecordKind)record->kind);
		if (known != NULL)
			known->row = row;
	}
}

/* Which part was meant is asked of items of the catalogue alone, so no submittal makes that long. */
static void chain_submitted(Holding *holding, Known *known, const Case *part)
{
	RecordKind kind = part->kind;
	known->part = part;
	if (holding->last[kind] != NULL && known->row == NULL)
		return;
	if (holding->last[kind] != NULL)
		holding->last[kind]->next = known;
	else
		holding->first[kind] = known;
	holding->last[kind] = known;
}

static void know_submitted(Holding *holding)
{
	for (RecordKind kind = 0; kind < RECORD_KINDS; kind++) {
		if (record_of(kind)->sort != RECORD_PART)
			continue;
		for (uint32_t i = 0; i < holding->cases->of[kind].count; i++) {
			const Case *part = holding->cases->of[kind].at[i];
			Known *known = know(holding, &((const Panel *)part->row)->item, kind);
			if (known != NULL && known->part == NULL)
				chain_submitted(holding, known, part);
		}
	}
}

/* Of several places of an item the worst speaks for it: whoever buys it does not know where a piece will go. */
static void know_clearance(Holding *holding)
{
	const Verdict *verdict = holding->order->verdict;
	static const int worse[] = { [PART_CLEAR] = 0, [PART_DEPENDS] = 1, [PART_NOT_CLEARED] = 2 };
	for (uint32_t i = 0; i < verdict->parts; i++) {
		const PartLine *line = &verdict->part[i];
		const Text *item = &((const Panel *)line->part->row)->item;
		Known *known = is_value(&item->given) ? known_find(holding, item->text) : NULL;
		if (known != NULL && (known->clearance == NULL || worse[line->clearance] > worse[known->clearance->clearance]))
			known->clearance = line;
	}
}

static void put_alias(Holding *holding, Hash *names, const Text *name, const AlsoKnown *row)
{
	if (!is_value(&name->given))
		return;
	const char *key = small(holding->arena, name->text);
	Alias *alias = TAKE(holding->arena, Alias, 1);
	alias->row = row;
	alias->next = hash_get(names, key, strlen(key));
	hash_put(names, key, strlen(key), alias);
}

void know_items(Holding *holding)
{
	const Criteria *criteria = holding->cases->criteria;
	uint32_t aliases = criteria->also_known.count;
	holding->known = hash_make(holding->arena, 256);
	holding->codes = hash_make(holding->arena, aliases);
	holding->words = hash_make(holding->arena, aliases);
#define TABLE(member, R, file) know_catalogue(holding, &R##_record, criteria->member.row, criteria->member.count);
	CATALOGUE_TABLES(TABLE)
#undef TABLE
	know_submitted(holding);
	know_clearance(holding);
	for (uint32_t i = aliases; i-- > 0;) { /* each goes before those of its name */
		const AlsoKnown *row = &criteria->also_known.row[i];
		put_alias(holding, holding->codes, &row->code, row);
		put_alias(holding, holding->words, &row->words, row);
		if (is_value(&row->code.given))
			add_choice(holding, row->code.text, row->item.text);
	}
	Order *order = holding->order;
	for (uint32_t i = 0; i < order->takeoff->totals; i++) {
		Known *known = known_find(holding, order->takeoff->total[i].item);
		if (known != NULL && known->ordered == NULL)
			known->ordered = &order->item[i];
	}
}

/* ---- suppliers ---- */

/* Names of the sample carry "(invented)", which no order writes. */
static size_t name_length(const char *text)
{
	const char *mark = strstr(text, " (invented)");
	return mark != NULL ? (size_t)(mark - text) : strlen(text);
}

static bool same_name(const char *a, const char *b)
{
	return name_length(a) == name_length(b) && strncasecmp(a, b, name_length(a)) == 0;
}

bool names_maker(const Criteria *criteria, const char *text)
{
	const Text *maker = &criteria->edition.maker;
	return same_name(text, "panel maker") || (is_value(&maker->given) && same_name(text, maker->text));
}

static bool is_from(const Holding *holding, const AlsoKnown *row, const char *supplier)
{
	const Criteria *criteria = holding->cases->criteria;
	return same_name(row->supplier.text, supplier) || (names_maker(criteria, row->supplier.text) && names_maker(criteria, supplier));
}

/* ---- lines ---- */

static void add_named(Named *named, Known *known)
{
	for (uint32_t i = 0; i < named->count; i++)
		if (named->at[i] == known)
			return;
	if (known != NULL && named->count < MOST_CANDIDATES)
		named->at[named->count++] = known;
}

/* The items that have a name at a supplier; at any, if the line names none. */
static Named names_of(const Holding *holding, const Hash *names, const char *name, const char *supplier)
{
	Named named = { .count = 0 };
	Known *known = known_find(holding, name);
	const char *key = small(holding->arena, name);
	if (known != NULL)
		add_named(&named, known);
	for (const Alias *alias = hash_get(names, key, strlen(key)); alias != NULL; alias = alias->next)
		if (supplier == NULL || is_from(holding, alias->row, supplier))
			add_named(&named, known_find(holding, alias->row->item.text));
		else if (named.whose == NULL)
			named.whose = arena_printf(holding->arena, "%s has it for %s", alias->row->supplier.text, alias->row->item.text);
	return named;
}

/* Those of `named` that the words speak of as well. */
static Named both(const Named *named, const Named *words)
{
	Named left = { .count = 0 };
	for (uint32_t i = 0; i < named->count; i++)
		for (uint32_t j = 0; j < words->count; j++)
			if (named->at[i] == words->at[j])
				add_named(&left, named->at[i]);
	return left;
}

Named line_names(Holding *holding, const OrderLine *line)
{
	Named code = { .count = 0 }, words = { .count = 0 };
	if (line->code != NULL)
		code = names_of(holding, holding->codes, line->code, line->supplier);
	if (line->words != NULL)
		words = names_of(holding, holding->words, line->words, line->supplier);
	if (line->code == NULL)
		return words;
	if (code.count == 0 || words.count == 0)
		return code;
	Named left = both(&code, &words);
	if (left.count > 0)
		return left;
	for (uint32_t i = 0; i < words.count; i++)
		add_named(&code, words.at[i]);
	return code;
}

const char *nearest_name(Holding *holding, const OrderLine *line)
{
	const char *text = line->code != NULL ? line->code : line->words;
	int nearest = holding->suggestions++ < SUGGESTIONS ? suggest(text, holding->choice, holding->choices) : -1;
	if (nearest < 0)
		return NULL;
	const char *name = holding->choice[nearest], *item = holding->choice_item[nearest];
	return strcmp(name, item) == 0 ? item : arena_printf(holding->arena, "%s, which is %s", name, item);
}
