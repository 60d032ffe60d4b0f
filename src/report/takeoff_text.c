/* SPDX-License-Identifier: MIT
 * The takeoff as a table: a roof area, a line for each part and place, what was counted and how; then what was not counted.
 */
#include "takeoff_page.h"

#include "parts.h"

#include <math.h>
#include <string.h>

static const LabelColumn head_column = { 2, 14 };
enum { WHAT_WIDTH = 44, NUMBER_WIDTH = 12 };

const char *amount_text(double value, Arena *arena)
{
	return fabs(value - nearbyint(value)) < 5e-3 ? arena_printf(arena, "%.0f", value) : arena_printf(arena, "%.2f", value);
}

const char *count_state_words(CountState state)
{
	static const char *const words[] = { [COUNTED] = "counted", [COUNT_WAITS] = "waiting", [COUNT_REFUSED] = "not counted" };
	return words[state];
}

static void put_takeoff_head(Out *out, const Takeoff *takeoff, Arena *arena)
{
	const Verdict *verdict = takeoff->verdict;
	const Text *number = &verdict->cases->submittal->submittal;
	SAY(out, "TAKEOFF\n");
	put_label(out, head_column, "Submittal", is_value(&number->given) ? number->text : "not stated");
	put_label(out, head_column, "File", verdict->source->name);
	put_label(out, head_column, "Criteria", verdict->cases->criteria->folder);
	put_label(out, head_column, "Quantities", arena_printf(arena, "%u counted, %u not", takeoff->counted,
		takeoff->amounts - takeoff->counted));
	put_label(out, head_column, "Open", items_in_the_way(verdict) == 0 ? "no item of the review"
		: arena_printf(arena, "%u items of the review: what is bought now may have to be changed", items_in_the_way(verdict)));
	SAY(out, "  ");
	put_wrapped(out, "Quantities of what was submitted, approved or not. By plan: counted exactly. As laid: a panel that a zone "
		"touches is laid as that zone. Needed: as laid with the criteria's allowance for waste. There are no published quantities to "
		"hold these against; each line says how it was counted.", 2, 2, PAGE_WIDTH);
	SAY(out, "\n");
}

static const char *what_text(const Amount *amount, Arena *arena)
{
	const char *where = amount->where != NULL ? arena_printf(arena, ", %s", amount->where) : "";
	const char *item = amount->item != NULL ? arena_printf(arena, " %s", amount->item) : "";
	return arena_printf(arena, "%s%s%s", amount->kind, item, where);
}

static void put_column(Out *out, const char *text, int width)
{
	int used = out_width(text, strlen(text));
	put_spaces(out, used < width ? width - used : 1);
	put(out, text);
}

static void put_counted(Out *out, const Amount *amount, Arena *arena)
{
	const char *what = what_text(amount, arena);
	SAY(out, "    ");
	put_cut(out, what, WHAT_WIDTH);
	int used = out_width(what, strlen(what));
	put_spaces(out, used < WHAT_WIDTH ? WHAT_WIDTH - used : 0);
	put_column(out, amount_text(amount->exact, arena), NUMBER_WIDTH);
	put_column(out, amount_text(amount->laid, arena), NUMBER_WIDTH);
	put_column(out, amount_text(amount->needed, arena), NUMBER_WIDTH);
	SAY(out, "  ");
	put(out, amount->unit);
	SAY(out, "\n");
	SAY(out, "      ");
	put_wrapped(out, arena_printf(arena, "%s; waste %g %%", amount->how, amount->waste_percent), 6, 6, PAGE_WIDTH);
	SAY(out, "\n");
}

static void put_not_counted(Out *out, const Amount *amount, Arena *arena)
{
	SAY(out, "    ");
	put_wrapped(out, arena_printf(arena, "%s: %s", what_text(amount, arena), amount->why), 4, 6, PAGE_WIDTH);
	SAY(out, "\n");
}

static void put_area_amounts(Out *out, const Takeoff *takeoff, const Case *area, Arena *arena)
{
	SAY(out, "\n  ");
	put(out, area->name);
	SAY(out, "\n");
	put_spaces(out, 4 + WHAT_WIDTH);
	put_column(out, "by plan", NUMBER_WIDTH);
	put_column(out, "as laid", NUMBER_WIDTH);
	put_column(out, "needed", NUMBER_WIDTH);
	SAY(out, "\n");
	bool left = false;
	for (uint32_t i = 0; i < takeoff->amounts; i++) {
		const Amount *amount = &takeoff->amount[i];
		if (amount->area == area && amount->state == COUNTED)
			put_counted(out, amount, arena);
		left |= amount->area == area && amount->state != COUNTED;
	}
	if (left)
		SAY(out, "    Not counted\n");
	for (uint32_t i = 0; i < takeoff->amounts; i++)
		if (takeoff->amount[i].area == area && takeoff->amount[i].state != COUNTED)
			put_not_counted(out, &takeoff->amount[i], arena);
}

static void put_totals(Out *out, const Takeoff *takeoff, Arena *arena)
{
	SAY(out, "\n  To buy, over all roof areas\n");
	for (uint32_t i = 0; i < takeoff->totals; i++) {
		const Total *total = &takeoff->total[i];
		if (total->lines == total->uncounted)
			continue;
		const char *sold = total->packages > 0 ? arena_printf(arena, ": %s x %s", amount_text(total->packages, arena), total->sold_in)
			: total->sold_in != NULL ? arena_printf(arena, ", sold as: %s", total->sold_in) : "";
		const char *more = total->uncounted > 0 ? arena_printf(arena, "; %u of its %u places not counted", total->uncounted,
			total->lines) : "";
		SAY(out, "    ");
		put_wrapped(out, arena_printf(arena, "%s %s: %s %s%s%s", total->kind, total->item, amount_text(total->needed, arena),
			total->unit, sold, more), 4, 6, PAGE_WIDTH);
		SAY(out, "\n");
	}
}

void write_takeoff_text(Out *out, const Page *page, Arena *arena)
{
	const Takeoff *takeoff = page->takeoff;
	const Cases *cases = takeoff->verdict->cases;
	put_takeoff_head(out, takeoff, arena);
	for (uint32_t i = 0; i < cases->of[KIND_roof_area].count; i++)
		put_area_amounts(out, takeoff, cases->of[KIND_roof_area].at[i], arena);
	put_totals(out, takeoff, arena);
	write_cautions(out, cases->reference, (CautionsFor){ "takeoff", "" }, arena);
}
