/* SPDX-License-Identifier: MIT
 * How much was ordered of each item against what the takeoff needs. Deliveries in parts and returns add up; a quantity that may
 * be boxes or pieces is not guessed, and then nothing is said of the sum.
 */
#include "counting.h"
#include "holding.h"

#include <math.h>
#include <string.h>

/* "45 boxes", "1.5 ft". */
static const char *figure(Arena *arena, double value)
{
	return fabs(value - nearbyint(value)) < 5e-3 ? arena_printf(arena, "%.0f", value) : arena_printf(arena, "%.2f", value);
}

/* Whether the package a line names is the one the item is sold in: "bag" and "bag of 500". */
static bool is_sold_so(const char *package, const char *sold_in)
{
	size_t length = strlen(package);
	bool is_word = strncmp(sold_in, package, length) == 0 && (sold_in[length] == ' ' || sold_in[length] == '\0');
	return is_word || strcmp(package, "pack") == 0;
}

/* How many of the takeoff's unit one of the line's is; 0 if that cannot be told. */
static double factor_of(const OrderLine *line, const OrderedItem *ordered)
{
	const Total *total = ordered->total;
	bool by_roll = strcmp(total->unit, "rolls") == 0;
	const char *sold_in = total->sold_in != NULL ? total->sold_in : "";
	double content = content_of(sold_in, total->unit), sheet = content_of(sold_in, "sq ft");
	switch (line->unit) {
	case BY_NOTHING:
		return content > 0 || by_roll || strcmp(total->unit, "pieces") != 0 ? 0 : 1;
	case BY_PIECE:
		return strcmp(total->unit, "pieces") == 0;
	case BY_FOOT:
		if (strcmp(total->unit, "ft") == 0)
			return 1;
		return ordered->feet > 0 ? ordered->laid / ordered->feet : 0; /* panels as long as they are on the average */
	case BY_POUND:
		return 0;
	case BY_SQUARE_FOOT:
		return strcmp(total->unit, "sq ft") == 0 ? 1 : by_roll && sheet > 0 ? 1 / sheet : 0;
	case BY_PACKAGE:
		break;
	}
	if (by_roll)
		return strcmp(line->package, "roll") == 0 && line->content <= 0;
	if (line->content > 0 && content > 0)
		return fabs(line->content - content) < 1e-9 ? content : 0;
	if (line->content > 0)
		return strcmp(total->unit, "pieces") == 0 ? line->content : 0;
	return is_sold_so(line->package, sold_in) ? content : 0;
}

void count_ordered(Holding *holding, OrderedLine *at, Known *known)
{
	Arena *arena = holding->arena;
	OrderedItem *ordered = known->ordered;
	const Total *total = ordered->total;
	const OrderLine *line = at->line;
	bool needed = total->lines > total->uncounted;
	double factor = needed ? factor_of(line, ordered) : 0;
	if (factor > 0) {
		at->counted = true;
		at->amount = line->quantity * factor;
		at->unit = total->unit;
		ordered->ordered += at->amount;
		ordered->lines++;
		return;
	}
	ordered->uncounted++;
	if (!needed)
		return;
	const char *sold = total->sold_in != NULL ? arena_printf(arena, ", sold as %s", total->sold_in) : "";
	OrderFinding found = { .fault = ORDER_UNIT, .item = known->item };
	found.finding = line->unit_words == NULL
		? arena_printf(arena, "%s of %s does not say what of; it is counted in %s%s", figure(arena, line->quantity), known->item,
			total->unit, sold)
		: arena_printf(arena, "%s %s of %s cannot be held against the takeoff, which counts %s%s", figure(arena, line->quantity),
			line->unit_words, known->item, total->unit, sold);
	found.remedy = arena_printf(arena, "state the quantity in %s, or in packages with what one holds", total->unit);
	find_against(holding, found, at);
}

/* Panels are bought by the piece or by the foot: their length stands beside their number in the takeoff. */
void know_lengths(Holding *holding)
{
	const Takeoff *takeoff = holding->order->takeoff;
	for (uint32_t i = 0; i < takeoff->amounts; i++) {
		const Amount *amount = &takeoff->amount[i];
		bool is_panel = amount->item != NULL && strcmp(amount->kind, "panel") == 0 && amount->state == COUNTED;
		const Known *known = is_panel ? known_find(holding, amount->item) : NULL;
		if (known == NULL || known->ordered == NULL || known->ordered->total->uncounted > 0)
			continue;
		if (amount->where == NULL && strcmp(amount->unit, "pieces") == 0)
			known->ordered->laid += amount->laid;
		else if (amount->where != NULL && strcmp(amount->where, "length") == 0)
			known->ordered->feet += amount->laid;
	}
}

/* ---- sums ---- */

static void set_limits(const Holding *holding, OrderedItem *ordered)
{
	const Total *total = ordered->total;
	const KindRow *kind = kind_row(holding->cases->criteria, total->kind);
	double below = kind != NULL ? kind->order_short_percent.value : 0, above = kind != NULL ? kind->order_long_percent.value : 0;
	bool by_roll = strcmp(total->unit, "rolls") == 0;
	double content = by_roll || total->sold_in == NULL ? 0 : content_of(total->sold_in, total->unit);
	ordered->least = total->needed * (1 - below / 100);
	ordered->most = total->needed * (1 + above / 100);
	ordered->most = fmax(ordered->most, total->packages * content); /* nobody can buy less than whole packages */
}

/* "; its needed 618 pieces are 13 x box of 50". */
static const char *needed_words(const Holding *holding, const Total *total)
{
	Arena *arena = holding->arena;
	const char *packages = total->packages > 0 && total->sold_in != NULL
		? arena_printf(arena, " (%s x %s)", figure(arena, total->packages), total->sold_in) : "";
	return arena_printf(arena, "%s %s%s", figure(arena, total->needed), total->unit, packages);
}

static void find_missing(Holding *holding, OrderedItem *ordered)
{
	const Total *total = ordered->total;
	bool counted = total->lines > total->uncounted;
	OrderFinding found = { .fault = ORDER_MISSING, .item = total->item };
	found.finding = arena_printf(holding->arena, "%s %s is in the submittal and not in the order; %s", total->kind, total->item,
		counted ? arena_printf(holding->arena, "needed: %s", needed_words(holding, total)) : "how much is needed was not counted");
	found.remedy = arena_printf(holding->arena, "order it, or show that it is there already");
	find_against(holding, found, NULL);
	ordered->found = holding->order->findings;
}

static void find_short(Holding *holding, OrderedItem *ordered)
{
	Arena *arena = holding->arena;
	const Total *total = ordered->total;
	OrderFinding found = { .fault = ORDER_SHORT, .item = total->item };
	found.finding = arena_printf(arena, "%s is short by %s %s: %s ordered, needed %s, at least %s", total->item,
		figure(arena, total->needed - ordered->ordered), total->unit, figure(arena, ordered->ordered), needed_words(holding, total),
		figure(arena, ordered->least));
	double content = total->sold_in != NULL ? content_of(total->sold_in, total->unit) : 0;
	found.remedy = content > 0 ? arena_printf(arena, "order %s more x %s",
		figure(arena, ceil((total->needed - ordered->ordered) / content - 1e-9)), total->sold_in)
		: arena_printf(arena, "order %s %s more", figure(arena, total->needed - ordered->ordered), total->unit);
	find_against(holding, found, NULL);
	ordered->found = holding->order->findings;
}

static void find_long(Holding *holding, OrderedItem *ordered)
{
	Arena *arena = holding->arena;
	const Total *total = ordered->total;
	OrderFinding found = { .fault = ORDER_LONG, .item = total->item };
	found.finding = arena_printf(arena, "%s is over by %s %s: %s ordered, needed %s, at most %s", total->item,
		figure(arena, ordered->ordered - total->needed), total->unit, figure(arena, ordered->ordered), needed_words(holding, total),
		figure(arena, ordered->most));
	found.remedy = "order less, or say what the rest is for";
	find_against(holding, found, NULL);
	ordered->found = holding->order->findings;
}

void find_amounts(Holding *holding)
{
	Order *order = holding->order;
	for (uint32_t i = 0; i < order->takeoff->totals; i++) {
		OrderedItem *ordered = &order->item[i];
		const Total *total = ordered->total;
		bool counted = total->lines > total->uncounted;
		set_limits(holding, ordered);
		if (ordered->lines + ordered->uncounted == 0)
			find_missing(holding, ordered);
		else if (!counted)
			ordered->why = "how much is needed was not counted";
		else if (ordered->uncounted > 0)
			ordered->why = "a line that may be of it could not be counted";
		else if (ordered->ordered < ordered->least * (1 - 1e-9))
			find_short(holding, ordered);
		else if (total->uncounted > 0)
			ordered->why = "not in all places it was counted how much is needed";
		else if (ordered->ordered > ordered->most * (1 + 1e-9))
			find_long(holding, ordered);
	}
}
