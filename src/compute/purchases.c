/* SPDX-License-Identifier: MIT
 * Orders, invoices and coil certificates against the parts submitted, the day of the approval and the sheet of the panel.
 */
#include "below.h"
#include "date.h"
#include "fetch.h"
#include "ledger.h"
#include "parts.h"
#include "text.h"

/* What was bought of a part; NULL if the fact is not ready. */
static const Entry *fetch_entry(Case *part)
{
	const char *item = GIVEN_AT(part, part, Panel, item);
	fetch_list(part, outward(part, KIND_submittal), offsetof(Submittal, purchases));
	if (!ready(part))
		return NULL;
	Case *open = open_purchase(part);
	if (open != NULL) {
		GIVEN_AT(part, open, Purchase, kind);
		fetch_list(part, open, offsetof(Purchase, lines));
	}
	return ready(part) ? entry_of(part, item) : NULL;
}

/* A package without a word of purchases has bought nothing yet: from the stage on at which they are due another item asks for
 * them. */
double part_bought_yes(Case *part)
{
	Asked list = ask(outward(part, KIND_submittal), offsetof(Submittal, purchases));
	if (list.given->said == SAID_NOTHING) {
		fetch_shown(part, list);
		return 0;
	}
	const Entry *entry = fetch_entry(part);
	return entry != NULL && entry->orders + entry->invoices > 0;
}

double part_bought_from_maker_yes(Case *part)
{
	const Entry *entry = fetch_entry(part);
	if (entry == NULL)
		return 0;
	if (entry->elsewhere != NULL) {
		const Purchase *purchase = entry->elsewhere->up->row;
		note(part, arena_printf(part->all->arena, "%s from %s", purchase->purchase.text, purchase->supplier.text));
		return 0;
	}
	if (entry->no_supplier != NULL)
		GIVEN_AT(part, entry->no_supplier, Purchase, supplier);
	return ready(part);
}

double part_invoices_one(Case *part)
{
	const Entry *entry = fetch_entry(part);
	return entry != NULL ? entry->invoices : 0;
}

double part_pieces_invoiced_one(Case *part)
{
	const Entry *entry = fetch_entry(part);
	if (entry != NULL && entry->no_quantity != NULL) {
		GIVEN_AT(part, entry->no_quantity, PurchaseLine, quantity_one);
		GIVEN_AT(part, entry->no_quantity, PurchaseLine, pieces_each_one);
	}
	return entry != NULL && ready(part) ? entry->pieces : 0;
}

/* ---- the day ---- */

/* The first approval that has a day; INT32_MAX if none has. */
static int32_t fetch_approval_day(Case *purchase)
{
	int32_t first = INT32_MAX;
	for (Case *event = first_below(outward(purchase, KIND_submittal), KIND_event); event != NULL; event = event->next) {
		const Event *row = event->row;
		const char *word = GIVEN_AT(purchase, event, Event, event);
		if (!ready(purchase) || !same_text(word, "approval") || row->date.given.said == SAID_NOTHING)
			continue;
		int32_t day = GIVEN_AT(purchase, event, Event, date);
		first = ready(purchase) && day < first ? day : first;
	}
	return first;
}

double purchase_after_approval_yes(Case *purchase)
{
	int32_t day = GIVEN(purchase, purchase, Purchase, date);
	fetch_list(purchase, outward(purchase, KIND_submittal), offsetof(Submittal, dates));
	int32_t approved = fetch_approval_day(purchase);
	if (!ready(purchase))
		return 0;
	if (approved == INT32_MAX)
		note(purchase, "no day of approval is told");
	else
		note(purchase, arena_printf(purchase->all->arena, "approved on %s", date_print(purchase->all->arena, approved)));
	return approved <= day;
}

/* ---- lines ---- */

double purchase_line_item_submitted_yes(Case *line)
{
	const char *item = GIVEN(line, purchase_line, PurchaseLine, item);
	return ready(line) && entry_of(line, item)->part != NULL;
}

double purchase_line_coil_certified_yes(Case *line)
{
	const char *coil = GIVEN(line, purchase_line, PurchaseLine, coil);
	return ready(line) && is_coil_certified(line, coil);
}

/* The panel a coil is for; of an item that is not submitted, or is no panel, other items speak. */
static Case *fetch_panel(Case *line)
{
	const char *item = GIVEN(line, purchase_line, PurchaseLine, item);
	if (!ready(line))
		return NULL;
	Case *panel = entry_of(line, item)->panel;
	if (panel == NULL)
		SKIP(line, "no panel is submitted under this item");
	return panel;
}

double purchase_line_sheet_least_in(Case *line)
{
	Case *panel = fetch_panel(line);
	if (panel == NULL)
		return 0;
	double thickness = GIVEN_AT(line, panel, Panel, thickness_in);
	double tolerance = line->all->criteria->edition.coil_tolerance_percent.value;
	CONSTANT(line, "criteria.yaml", "coil_tolerance", tolerance, NULL);
	return ready(line) ? thickness * (1 - tolerance / 100) : 0;
}

double purchase_line_sheet_yield_ksi(Case *line)
{
	Case *panel = fetch_panel(line);
	return panel != NULL ? GIVEN_AT(line, panel, Panel, yield_ksi) : 0;
}

/* The same coating, or a heavier one of its family. */
double purchase_line_coating_fits_yes(Case *line)
{
	Case *panel = fetch_panel(line);
	const char *coil = GIVEN(line, purchase_line, PurchaseLine, coating);
	const char *submitted = panel != NULL ? GIVEN_AT(line, panel, Panel, coating) : "";
	if (!ready(line))
		return 0;
	note(line, arena_printf(line->all->arena, "%s is submitted", submitted));
	const char *scale = NULL, *other = NULL;
	int here = scale_rank(line->all->criteria, "panel.coating", coil, &scale);
	int there = scale_rank(line->all->criteria, "panel.coating", submitted, &other);
	bool is_heavier = here > 0 && there > 0 && same_text(scale, other) && here >= there;
	return same_text(coil, submitted) || is_heavier;
}
