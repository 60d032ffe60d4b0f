/* SPDX-License-Identifier: MIT
 * Openings on the plan, at their size and where they stand, and all of them as a table: what cannot be drawn is listed with the
 * reason.
 */
#include "plan_drawing.h"

#include "pen.h"

#include <math.h>

enum { MOST_DRAWN = 200, MOST_ROWS = 200 };

const char *why_not_placed(const DrawnArea *area, const Penetration *opening)
{
	const Number *up = &opening->from_eave_ft, *along = &opening->from_left_ft;
	if (area->plan.length_ft <= 0 || area->plan.width_ft <= 0)
		return "no plan";
	if (!is_value(&up->given) || !is_value(&along->given))
		return "where it stands is not stated";
	if (up->value > area->plan.width_ft || along->value > area->plan.length_ft)
		return "its distances lie outside the plan";
	return NULL;
}

static bool is_round(const Word *kind)
{
	return is_word(kind, "pipe") || is_word(kind, "flue") || is_word(kind, "conduit") || is_word(kind, "post");
}

static double feet_of(const Number *inches)
{
	return is_value(&inches->given) ? inches->value / 12 : 0;
}

/* The opening itself, and a ring around what is too small to be seen; the room they take. */
static Box put_symbol(PlanSheet *plan, const Penetration *opening, At at)
{
	double across = feet_of(&opening->across_in) * plan->scale, along = feet_of(&opening->along_in) * plan->scale;
	double half_across = across / 2, half_along = along / 2;
	At corner = { at.x - half_across, at.y - half_along };
	if (is_round(&opening->kind)) {
		svg_circle(&plan->svg, "opening", at, half_across);
	} else {
		svg_box(&plan->svg, "opening", corner, (At){ across, along });
		svg_line(&plan->svg, "cross", corner, (At){ at.x + half_across, at.y + half_along });
		svg_line(&plan->svg, "cross", (At){ corner.x, at.y + half_along }, (At){ at.x + half_across, corner.y });
	}
	if (fmax(across, along) < 8)
		svg_circle(&plan->svg, "ring", at, 5);
	double wide = fmax(half_across, 5), high = fmax(half_along, 5);
	return (Box){ at.x - wide, at.y - high, at.x + wide, at.y + high };
}

/* Right, left, above, below, then the corners: the first place that is free. */
static bool put_name(PlanSheet *plan, Box symbol, const char *name, const char *kind)
{
	double width = svg_text_width(name, PLAN_TEXT), middle = (symbol.left + symbol.right) / 2;
	double line = (symbol.top + symbol.bottom) / 2 + 4;
	const struct {
		At at;
		TextAnchor anchor;
	} places[] = {
		{ { symbol.right + 4, line }, TEXT_FROM }, { { symbol.left - 4, line }, TEXT_UP_TO },
		{ { middle, symbol.top - 5 }, TEXT_AROUND }, { { middle, symbol.bottom + 13 }, TEXT_AROUND },
		{ { symbol.right + 2, symbol.top - 2 }, TEXT_FROM }, { { symbol.right + 2, symbol.bottom + 11 }, TEXT_FROM },
		{ { symbol.left - 2, symbol.top - 2 }, TEXT_UP_TO }, { { symbol.left - 2, symbol.bottom + 11 }, TEXT_UP_TO },
	};
	TextStyle style = { kind, TEXT_FROM, PLAN_TEXT, 0 };
	for (size_t i = 0; i < sizeof places / sizeof *places; i++) {
		if (!room_take(&plan->room, text_box(places[i].at, places[i].anchor, width)))
			continue;
		style.anchor = places[i].anchor;
		svg_text(&plan->svg, &style, places[i].at, name);
		return true;
	}
	return false;
}

/* The name with the item that stands against it; where there is no room the row of the table alone. */
static void put_names(PlanSheet *plan, const Case *at, uint32_t number, Box symbol)
{
	Arena *arena = plan->sight->arena;
	const char *name = name_within(at, plan->area->at), *items = numbers_at(plan->sight, at);
	if (items != NULL && put_name(plan, symbol, arena_printf(arena, "%s (%s)", name, items), "strong halo"))
		return;
	if (!put_name(plan, symbol, name, "strong halo"))
		put_name(plan, symbol, arena_printf(arena, "%u", number), "plain halo");
}

void draw_openings(PlanSheet *plan)
{
	static const Box none = { 0, 0, 0, 0 };
	Box *symbol = TAKE(plan->sight->arena, Box, MOST_DRAWN);
	uint32_t number = 0;
	for (const Case *at = first_in(plan->area, KIND_penetration); at != NULL && number < MOST_DRAWN; at = at->next, number++) {
		const Penetration *opening = at->row;
		symbol[number] = none;
		if (why_not_placed(plan->area, opening) != NULL)
			continue;
		PlanPoint where = { opening->from_left_ft.value, opening->from_eave_ft.value };
		symbol[number] = put_symbol(plan, opening, on_plan(plan, where));
		room_fill(&plan->room, symbol[number]);
	}
	plan->opening = symbol;
	plan->openings = number;
}

void draw_opening_names(PlanSheet *plan)
{
	uint32_t number = 0;
	for (const Case *at = first_in(plan->area, KIND_penetration); number < plan->openings; at = at->next, number++)
		if (plan->opening[number].right > 0)
			put_names(plan, at, number + 1, plan->opening[number]);
}

/* ---- as a table ---- */

static const char *said(const Given *given, Arena *arena)
{
	return said_text(given, arena);
}

static void put_row(const Sight *sight, const DrawnArea *area, const Case *at, uint32_t number)
{
	Arena *arena = sight->arena;
	Markup *page = sight->page;
	const Penetration *opening = at->row;
	const char *why = why_not_placed(area, opening);
	OPEN(page, "tr");
	ELEMENT(page, "td", arena_printf(arena, "%u", number));
	OPEN(page, "th");
	ATTRIBUTE(page, "scope", "row");
	markup_text(page, name_within(at, area->at));
	CLOSE(page, "th");
	ELEMENT(page, "td", said(&opening->kind.given, arena));
	ELEMENT(page, "td", said(&opening->treatment.given, arena));
	ELEMENT(page, "td", arena_printf(arena, "%s by %s", said(&opening->across_in.given, arena), said(&opening->along_in.given,
		arena)));
	ELEMENT(page, "td", why != NULL ? arena_printf(arena, "not drawn: %s", why)
		: arena_printf(arena, "%s from the left, %s from the eave", said(&opening->from_left_ft.given, arena),
			said(&opening->from_eave_ft.given, arena)));
	OPEN(page, "td");
	put_linked(page, clearance_of(sight, at), sight->verdict, arena);
	CLOSE(page, "td");
	CLOSE(page, "tr");
}

void put_openings(const Sight *sight, const DrawnArea *area)
{
	static const char *const heads[] = { "No.", "Opening", "Kind", "Treatment", "Across by along the slope", "Where", "Verdict" };
	const Given *given = &((const RoofArea *)area->at->row)->penetrations.of.given;
	uint32_t number = 0;
	if (first_in(area, KIND_penetration) == NULL) {
		ELEMENT(sight->page, "p", arena_printf(sight->arena, "Openings: %s.", said(given, sight->arena)));
		return;
	}
	begin_table(sight->page, "Openings", heads, sizeof heads / sizeof *heads);
	for (const Case *at = first_in(area, KIND_penetration); at != NULL; at = at->next)
		if (number++ < MOST_ROWS)
			put_row(sight, area, at, number);
	end_table(sight->page);
	if (number > MOST_ROWS)
		ELEMENT(sight->page, "p", arena_printf(sight->arena, "and %u more", number - MOST_ROWS));
}
