/* SPDX-License-Identifier: MIT
 * The ledger: one pass over parts and purchases when the first question comes.
 */
#include "ledger.h"

#include "below.h"
#include "hash.h"
#include "parts.h"
#include "text.h"

typedef struct {
	Hash *entry; /* folded item to Entry */
	Hash *coil; /* folded number of a certified coil to its line */
	Case *open;
} Ledger;

static Entry *entry_at(const Ledger *ledger, Arena *arena, const char *item)
{
	size_t length;
	const char *key = folded(arena, item, &length);
	Entry *entry = hash_get(ledger->entry, key, length);
	if (entry == NULL) {
		entry = TAKE(arena, Entry, 1);
		hash_put(ledger->entry, key, length, entry);
	}
	return entry;
}

/* ---- parts ---- */

static bool is_counted(const Case *part)
{
	if (part->kind == KIND_clip)
		return is_word(&((const Clip *)part->row)->use, "running");
	return part->kind == KIND_fastener && is_word(&((const Fastener *)part->row)->use, "clip");
}

static void put_part(const Ledger *ledger, Case *part)
{
	const Text *item = &((const Panel *)part->row)->item;
	if (!is_value(&item->given))
		return;
	Arena *arena = part->all->arena;
	Entry *entry = entry_at(ledger, arena, item->text);
	if (entry->part == NULL)
		entry->part = part;
	if (entry->panel == NULL && part->kind == KIND_panel)
		entry->panel = part;
	if (!is_counted(part))
		return;
	entry->user = arena_more(arena, entry->user, entry->users, &entry->room, sizeof *entry->user);
	entry->user[entry->users++] = part;
}

/* ---- purchases ---- */

static void put_quantity(Entry *entry, Case *line)
{
	const PurchaseLine *row = line->row;
	if (is_value(&row->quantity_one.given) && is_value(&row->pieces_each_one.given))
		entry->pieces += row->quantity_one.value * row->pieces_each_one.value;
	else if (entry->no_quantity == NULL)
		entry->no_quantity = line;
}

static void put_line(Ledger *ledger, Case *line)
{
	const PurchaseLine *row = line->row;
	const Purchase *purchase = line->up->row;
	Arena *arena = line->all->arena;
	size_t length;
	if (is_word(&purchase->kind, "coil certificate")) {
		if (is_value(&row->coil.given)) {
			const char *key = folded(arena, row->coil.text, &length);
			hash_put(ledger->coil, key, length, line);
		}
		return;
	}
	if (!is_value(&row->item.given)) {
		ledger->open = ledger->open != NULL ? ledger->open : line->up;
		return;
	}
	Entry *entry = entry_at(ledger, arena, row->item.text);
	if (is_word(&purchase->kind, "invoice")) {
		entry->invoices++;
		put_quantity(entry, line);
	} else {
		entry->orders++;
	}
	if (!is_value(&purchase->supplier.given))
		entry->no_supplier = entry->no_supplier != NULL ? entry->no_supplier : line->up;
	else if (entry->elsewhere == NULL && !is_panel_maker(line->all->criteria, purchase->supplier.text))
		entry->elsewhere = line;
}

static void put_purchase(Ledger *ledger, Case *purchase)
{
	const Purchase *row = purchase->row;
	bool has_lines = row->lines.list.given.said == SAID_VALUE || row->lines.list.given.said == SAID_NONE;
	if (ledger->open == NULL && (!is_value(&row->kind.given) || !has_lines))
		ledger->open = purchase;
}

static const Ledger *ledger_of(const Case *at)
{
	void **kept = kept_ledger(at);
	if (*kept != NULL)
		return *kept;
	const Cases *all = at->all;
	Ledger *ledger = TAKE(all->arena, Ledger, 1);
	*kept = ledger;
	ledger->entry = hash_make(all->arena, 64);
	ledger->coil = hash_make(all->arena, 16);
	for (uint32_t kind = 0; kind < RECORD_KINDS; kind++)
		for (uint32_t i = 0; is_part(kind) && i < all->of[kind].count; i++)
			put_part(ledger, all->of[kind].at[i]);
	for (uint32_t i = 0; i < all->of[KIND_purchase].count; i++)
		put_purchase(ledger, all->of[KIND_purchase].at[i]);
	for (uint32_t i = 0; i < all->of[KIND_purchase_line].count; i++)
		put_line(ledger, all->of[KIND_purchase_line].at[i]);
	return ledger;
}

/* ---- questions ---- */

const Entry *entry_of(const Case *at, const char *item)
{
	static const Entry nothing = { .orders = 0 };
	size_t length;
	const Ledger *ledger = ledger_of(at);
	ArenaMark mark = arena_mark(at->all->arena);
	const char *key = folded(at->all->arena, item, &length);
	const Entry *entry = hash_get(ledger->entry, key, length);
	arena_back(at->all->arena, mark);
	return entry != NULL ? entry : &nothing;
}

Case *open_purchase(const Case *at)
{
	return ledger_of(at)->open;
}

bool is_coil_certified(const Case *at, const char *coil)
{
	size_t length;
	const Ledger *ledger = ledger_of(at);
	ArenaMark mark = arena_mark(at->all->arena);
	const char *key = folded(at->all->arena, coil, &length);
	bool is_certified = hash_get(ledger->coil, key, length) != NULL;
	arena_back(at->all->arena, mark);
	return is_certified;
}
