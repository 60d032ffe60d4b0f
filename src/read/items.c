/* SPDX-License-Identifier: MIT
 * The catalogue by kind and item, the listings by name, and every place that refers to them.
 */
#include "edition.h"
#include "hash.h"
#include "rules.h"
#include "suggest.h"

#include <string.h>

enum { CHOICES = 4096, SUGGESTIONS = 50, LISTINGS_SHOWN = 12 };

static const Text *item_of(const void *row)
{
	return &((const Panel *)row)->item; /* every part begins alike */
}

static bool is_said(const Text *text)
{
	return text->given.said == SAID_VALUE && text->text != NULL;
}

static const char *file_of(const EditionRead *e, uint16_t source)
{
	for (int t = 0; t < TABLE_COUNT; t++)
		if (e->rows[t].source != NULL && e->rows[t].source->id == source)
			return table_file(t);
	return "";
}

static void index_item(const EditionRead *e, Hash *items, const Record *record, void *row)
{
	Arena *arena = e->loading->arena;
	const Text *item = item_of(row);
	if (!is_said(item))
		return;
	size_t kind = strlen(record->name), length = strlen(item->text);
	char *key = arena_take(arena, kind + length + 2, 1);
	memcpy(key, record->name, kind);
	memcpy(key + kind + 1, item->text, length);
	const void *before = hash_put(items, key, kind + 1 + length, row);
	if (before == NULL)
		return;
	Place first = item_of(before)->given.place;
	const char *where = arena_printf(arena, "%s line %u", file_of(e, first.source), (unsigned)first.line);
	complain(e->loading->complaints, MESSAGE_TAB_37, item->given.place,
		 (About){ .key = record->name, .value = item->text, .want = where });
}

static const Hash *index_lives(const EditionRead *e)
{
	const Rows *rows = &e->rows[TABLE_lives];
	Hash *lives = hash_make(e->loading->arena, rows->count);
	for (uint32_t i = 0; i < rows->count; i++) {
		const Text *item = &((const Life *)row_at(rows, i))->item;
		if (!is_said(item))
			continue;
		LifeSpan *span = hash_get(lives, item->text, strlen(item->text));
		if (span == NULL) {
			span = TAKE(e->loading->arena, LifeSpan, 1);
			span->begin = i;
			hash_put(lives, item->text, strlen(item->text), span);
		}
		span->end = i + 1;
	}
	return lives;
}

void items_index(EditionRead *e)
{
	uint32_t count = 0;
	for (int t = EDITION_TABLE_COUNT; t < TABLE_COUNT; t++)
		count += e->rows[t].count;
	Hash *items = hash_make(e->loading->arena, count),
	     *listings = hash_make(e->loading->arena, e->rows[TABLE_listings].count);
	e->items_whole = true;
	for (int t = EDITION_TABLE_COUNT; t < TABLE_COUNT; t++) {
		e->items_whole &= e->rows[t].whole;
		for (uint32_t i = 0; i < e->rows[t].count; i++)
			index_item(e, items, e->rows[t].record, row_at(&e->rows[t], i));
	}
	for (uint32_t i = e->rows[TABLE_listings].count; i-- > 0;) {
		Listing *row = row_at(&e->rows[TABLE_listings], i);
		if (is_said(&row->listing))
			hash_put(listings, row->listing.text, strlen(row->listing.text), row);
	}
	e->criteria->lives_by_item = index_lives(e);
	e->criteria->items = items;
	e->criteria->listing_by_name = listings;
}

/* ---- references ---- */

static bool is_item(const EditionRead *e, RecordKind kind, const char *item)
{
	if (kind != RECORD_KINDS)
		return item_find(e->criteria, kind, item) != NULL;
	for (int t = EDITION_TABLE_COUNT; t < TABLE_COUNT; t++)
		if (item_find(e->criteria, (RecordKind)e->rows[t].record->kind, item) != NULL)
			return true;
	return false;
}

/* An item of one kind of part, or of any (RECORD_KINDS), must be in a catalogue. */
static void check_item(const EditionRead *e, const Text *item, RecordKind kind)
{
	const char *choice[CHOICES];
	Complaints *complaints = e->loading->complaints;
	uint32_t count = 0;
	if (!e->items_whole || !is_said(item) || is_item(e, kind, item->text))
		return;
	for (int t = EDITION_TABLE_COUNT; t < TABLE_COUNT && complaints->suggestions < SUGGESTIONS; t++)
		for (uint32_t i = 0;
		     (kind == RECORD_KINDS || e->rows[t].record->kind == kind) && i < e->rows[t].count && count < CHOICES; i++)
			if (is_said(item_of(row_at(&e->rows[t], i))))
				choice[count++] = item_of(row_at(&e->rows[t], i))->text;
	int nearest = complaints->suggestions++ < SUGGESTIONS ? suggest(item->text, choice, count) : -1;
	About about = { .key = kind == RECORD_KINDS ? "part" : record_of(kind)->name, .value = item->text };
	about.want = nearest >= 0 ? choice[nearest] : NULL;
	complain(complaints, nearest >= 0 ? MESSAGE_TAB_35 : MESSAGE_TAB_36, item->given.place, about);
}

/* The parts that a listing tested. */
static void check_tested(const EditionRead *e, const RoofArea *tested)
{
	for (uint32_t i = 0; i < RoofArea_record.count; i++) {
		const Field *field = &RoofArea_record.field[i];
		if (field->record == NULL || field->record->sort != RECORD_PART)
			continue;
		const Given *given = given_in(field, tested);
		const void *row = given;
		if (field->kind == IS_LIST)
			row = given->said == SAID_VALUE ? ((const List *)(const void *)given)->row : NULL;
		if (row != NULL && !(is_said(item_of(row)) && strcmp(item_of(row)->text, "other") == 0))
			check_item(e, item_of(row), (RecordKind)field->record->kind);
	}
}

/* The names of the listings, as many as fit a line. */
static const char *listings_listed(const EditionRead *e)
{
	const Rows *rows = &e->rows[TABLE_listings];
	const char *listed = "none yet";
	for (uint32_t i = 0, shown = 0; i < rows->count && shown < LISTINGS_SHOWN; i++) {
		const Text *name = &((const Listing *)row_at(rows, i))->listing;
		if (is_said(name))
			listed = shown++ == 0 ? name->text : arena_printf(e->loading->arena, "%s, %s", listed, name->text);
	}
	return rows->count > LISTINGS_SHOWN ? arena_printf(e->loading->arena, "%s, ...", listed) : listed;
}

static void check_listing(const EditionRead *e, const Text *listing, const char *listed)
{
	if (!e->rows[TABLE_listings].whole || !is_said(listing) || listing_find(e->criteria, listing->text) != NULL)
		return;
	complain(e->loading->complaints, MESSAGE_TAB_41, listing->given.place, (About){ .value = listing->text, .want = listed });
}

void items_check(const EditionRead *e)
{
	const Criteria *c = e->criteria;
	const char *listed = listings_listed(e);
	for (uint32_t i = 0; i < c->lives.count; i++)
		check_item(e, &c->lives.row[i].item, RECORD_KINDS);
	for (uint32_t i = 0; i < c->pullouts.count; i++)
		check_item(e, &c->pullouts.row[i].item, KIND_fastener);
	for (uint32_t i = 0; i < c->also_known.count; i++)
		check_item(e, &c->also_known.row[i].item, RECORD_KINDS);
	for (uint32_t i = 0; i < c->listings.count; i++)
		check_tested(e, &c->listings.row[i].tested);
	for (uint32_t i = 0; i < c->listing_tests.count; i++)
		check_listing(e, &c->listing_tests.row[i].listing, listed);
	for (uint32_t i = 0; i < c->listing_terms.count; i++)
		check_listing(e, &c->listing_terms.row[i].listing, listed);
}
