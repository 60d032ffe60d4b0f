/* SPDX-License-Identifier: MIT
 * The report an order is held against: whether it can be the approved one, and which parts have changed since. What is said here
 * stands beside what is found against the order; it is held against the report all the same.
 */
#include "holding.h"

#include <string.h>
#include <strings.h>

enum { MOST_NUMBERS = 6, MOST_CHANGES = 20 };

static void find_of_report(Holding *holding, const char *finding, const char *remedy)
{
	find_against(holding, (OrderFinding){ .fault = ORDER_REPORT, .finding = finding, .remedy = remedy }, NULL);
}

/* ---- whose it is, and how it stands ---- */

static void check_submittal(Holding *holding, const Earlier *report)
{
	const Text *number = &holding->order->basis.submitted->cases->submittal->submittal;
	const char *here = is_value(&number->given) ? number->text : NULL;
	if (here != NULL && report->submittal != NULL && strcasecmp(here, report->submittal) == 0)
		return;
	find_of_report(holding,
		arena_printf(holding->arena, "report %s is of submittal %s, the order belongs to %s", report->source->name,
		report->submittal != NULL ? report->submittal : "without a number", here != NULL ? here : "one without a number"),
		"give the report of this submittal");
}

static void check_mode(Holding *holding, const Earlier *report)
{
	if (!report->is_review)
		find_of_report(holding,
			arena_printf(holding->arena, "report %s is a self-check, which approves nothing", report->source->name),
			"give the report of the panel maker's review");
}

/* Items of NOT REVIEWED or worse that nobody closed. */
static void check_items(Holding *holding, const Earlier *report)
{
	Arena *arena = holding->arena;
	const char *numbers = "";
	uint32_t open = 0;
	for (uint32_t i = 0; i < report->items; i++) {
		const EarlierItem *item = &report->item[i];
		if ((item->state != ITEM_OPEN && item->state != ITEM_NEW) || item->action > ACTION_NOT_REVIEWED)
			continue;
		if (open < MOST_NUMBERS)
			numbers = arena_printf(arena, "%s%s%s", numbers, open > 0 ? ", " : "", item->number != NULL ? item->number : item->code);
		open++;
	}
	if (open == 0)
		return;
	const char *more = open > MOST_NUMBERS ? arena_printf(arena, " and %u more", open - MOST_NUMBERS) : "";
	find_of_report(holding, arena_printf(arena, "in report %s stand open: %s%s", report->source->name, numbers, more),
		"wait until they are closed; what is bought now may have to be changed");
}

/* Without days in the list one approval speaks for all lines. */
static void check_register(Holding *holding)
{
	const char *why;
	const Cases *cases = holding->cases;
	if (holding->order->list->has_date || approval_on(cases, cases->as_of, &why, holding->arena) != NULL)
		return;
	find_of_report(holding, arena_printf(holding->arena, "no approval is in force: %s", why),
		"wait for the approval, or name the register it stands in by --register");
}

static void check_edition(Holding *holding, const Earlier *report)
{
	Arena *arena = holding->arena;
	const Criteria *criteria = holding->cases->criteria;
	const char *now = criteria->edition.edition.text, *then = report->edition != NULL ? report->edition : "none";
	if (strcmp(now, then) != 0)
		find_of_report(holding, arena_printf(arena, "report %s was made by criteria of edition %s, the order is held by %s",
			report->source->name, then, now), "name the edition of the report by --criteria, or have the package reviewed again");
	else if (report->criteria_sha256 == NULL || strcmp(report->criteria_sha256, criteria_hash(criteria, arena)) != 0)
		find_of_report(holding, arena_printf(arena, "the criteria of edition %s are not those that report %s was made by", now,
			report->source->name), "take the criteria the report was made by, or have the package reviewed again");
}

/* ---- what has changed since ---- */

static const char *item_of(const Case *part)
{
	const Text *item = &((const Panel *)part->row)->item; /* PART_FIELDS lie at one place in every part */
	return is_value(&item->given) && strcasecmp(item->text, "other") != 0 ? item->text : NULL;
}

/* The items of all parts, by kind. */
static Hash *items_of_parts(const Cases *cases, Arena *arena)
{
	Hash *items = hash_make(arena, 64);
	for (RecordKind kind = 0; kind < RECORD_KINDS; kind++)
		for (uint32_t i = 0; record_of(kind)->sort == RECORD_PART && i < cases->of[kind].count; i++) {
			const char *item = item_of(cases->of[kind].at[i]);
			if (item == NULL)
				continue;
			const char *key = arena_printf(arena, "%d %s", (int)kind, item);
			hash_put(items, key, strlen(key), (void *)(uintptr_t)item);
		}
	return items;
}

/* One side of the two packages. */
typedef struct {
	const Cases *cases;
	const Hash *other;
	bool is_report;
} Package;

static uint32_t find_changes(Holding *holding, const Package *side, uint32_t found)
{
	Arena *arena = holding->arena;
	const OrderBasis *basis = &holding->order->basis;
	const char *report = basis->report->source->name, *file = basis->submitted->source->name;
	Hash *told = hash_make(arena, 16);
	for (RecordKind kind = 0; kind < RECORD_KINDS; kind++)
		for (uint32_t i = 0; record_of(kind)->sort == RECORD_PART && i < side->cases->of[kind].count; i++) {
			const char *item = item_of(side->cases->of[kind].at[i]);
			const char *key = item != NULL ? arena_printf(arena, "%d %s", (int)kind, item) : "";
			bool is_new = item != NULL && hash_get(side->other, key, strlen(key)) == NULL && hash_get(told, key, strlen(key)) == NULL;
			if (!is_new || found == MOST_CHANGES)
				continue;
			hash_put(told, key, strlen(key), (void *)(uintptr_t)item);
			found++;
			OrderFinding change = { .fault = ORDER_CHANGED, .item = item };
			change.finding = side->is_report ? arena_printf(arena, "%s is in report %s and no longer in %s", item, report, file)
				: arena_printf(arena, "%s is in %s and not in report %s", item, file, report);
			change.remedy = "order what the report has, or have the change reviewed first";
			find_against(holding, change, NULL);
		}
	return found;
}

void find_report(Holding *holding)
{
	const OrderBasis *basis = &holding->order->basis;
	check_submittal(holding, basis->report);
	check_mode(holding, basis->report);
	check_items(holding, basis->report);
	check_register(holding);
	check_edition(holding, basis->report);
	const Cases *then = basis->approved->cases, *now = basis->submitted->cases;
	const Hash *items_then = items_of_parts(then, holding->arena), *items_now = items_of_parts(now, holding->arena);
	uint32_t found = find_changes(holding, &(Package){ now, items_then, false }, 0);
	find_changes(holding, &(Package){ then, items_now, true }, found);
}
