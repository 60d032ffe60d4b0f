/* SPDX-License-Identifier: MIT
 * Lines of a roof: ridge and hips, which way each plane falls, where the panels are fixed, and the measures around it.
 */
#include "plan_drawing.h"

#include "number.h"

#include <math.h>
#include <string.h>

typedef enum { FALLS_NOWHERE, FALLS_ONE_WAY, FALLS_TWO_WAYS, FALLS_FOUR_WAYS } Falls;

static Falls falls_of(const PlanSheet *plan)
{
	const Word *shape = &plan->row->building.shape;
	if (is_word(shape, "gable"))
		return FALLS_TWO_WAYS;
	if (is_word(shape, "hip"))
		return FALLS_FOUR_WAYS;
	return is_word(shape, "monoslope") ? FALLS_ONE_WAY : FALLS_NOWHERE;
}

/* ---- ridge and hips ---- */

static void put_line(PlanSheet *plan, const char *kind, PlanPoint from, PlanPoint to)
{
	At a = on_plan(plan, from), b = on_plan(plan, to);
	svg_line(&plan->svg, kind, a, b);
	if (a.x == b.x || a.y == b.y)
		room_fill(&plan->room, (Box){ fmin(a.x, b.x) - 2, fmin(a.y, b.y) - 3, fmax(a.x, b.x) + 2, fmax(a.y, b.y) + 3 });
}

/* Of a hip roof the ridge runs along the longer side, and each hip at half a right angle. */
static void put_hips(PlanSheet *plan)
{
	double length = plan->area->plan.length_ft, width = plan->area->plan.width_ft, half = fmin(length, width) / 2;
	bool is_long = length >= width;
	PlanPoint first = is_long ? (PlanPoint){ half, half } : (PlanPoint){ half, half };
	PlanPoint last = is_long ? (PlanPoint){ length - half, half } : (PlanPoint){ half, width - half };
	put_line(plan, "ridge", first, last);
	put_line(plan, "ridge", (PlanPoint){ 0, 0 }, first);
	put_line(plan, "ridge", is_long ? (PlanPoint){ 0, width } : (PlanPoint){ length, 0 }, first);
	put_line(plan, "ridge", (PlanPoint){ length, width }, last);
	put_line(plan, "ridge", is_long ? (PlanPoint){ length, 0 } : (PlanPoint){ 0, width }, last);
}

/* ---- slope ---- */

static const char *slope_words(const PlanSheet *plan)
{
	const Given *given = &plan->row->building.slope_in_12.given;
	return is_value(given) ? given->typed : arena_printf(plan->sight->arena, "slope %s", said_text(given, plan->sight->arena));
}

/* An arrow down the slope with its slope beside it; false: something stands there, or the plane is too small on paper. */
static bool put_slope(PlanSheet *plan, At middle, At down, double room)
{
	double length = fmin(56, room - 10);
	if (length < 16)
		return false;
	At from = { middle.x - down.x * length / 2, middle.y - down.y * length / 2 };
	At to = { middle.x + down.x * length / 2, middle.y + down.y * length / 2 };
	const char *words = slope_words(plan);
	bool upright = down.x == 0;
	At at = upright ? (At){ middle.x + 8, middle.y + 4 } : (At){ middle.x, middle.y - 7 };
	TextStyle style = { "plain halo", upright ? TEXT_FROM : TEXT_AROUND, PLAN_TEXT, 0 };
	Box text = text_box(at, style.anchor, svg_text_width(words, PLAN_TEXT));
	Box box = { fmin(fmin(from.x, to.x) - 5, text.left), fmin(fmin(from.y, to.y) - 5, text.top),
		fmax(fmax(from.x, to.x) + 5, text.right), fmax(fmax(from.y, to.y) + 5, text.bottom) };
	if (!room_take(&plan->room, box))
		return false;
	svg_arrow(&plan->svg, from, to);
	svg_text(&plan->svg, &style, at, words);
	return true;
}

/* On a plane between two rakes the arrow may stand anywhere along the eave. */
static void put_slope_along(PlanSheet *plan, double up_ft, At down, double room)
{
	static const double shares[] = { 0.3, 0.25, 0.35, 0.2, 0.4, 0.65, 0.7, 0.6, 0.75, 0.8, 0.15, 0.5 };
	for (size_t i = 0; i < sizeof shares / sizeof *shares; i++)
		if (put_slope(plan, on_plan(plan, (PlanPoint){ shares[i] * plan->area->plan.length_ft, up_ft }), down, room))
			return;
}

static void put_slopes_of_hip(PlanSheet *plan)
{
	double length = plan->area->plan.length_ft, width = plan->area->plan.width_ft, plane = fmin(length, width) / 2;
	double room = plane * plan->scale;
	put_slope(plan, on_plan(plan, (PlanPoint){ length / 2, plane / 2 }), (At){ 0, 1 }, room);
	put_slope(plan, on_plan(plan, (PlanPoint){ length / 2, width - plane / 2 }), (At){ 0, -1 }, room);
	put_slope(plan, on_plan(plan, (PlanPoint){ plane / 2, width / 2 }), (At){ -1, 0 }, room);
	put_slope(plan, on_plan(plan, (PlanPoint){ length - plane / 2, width / 2 }), (At){ 1, 0 }, room);
}

static void put_slopes(PlanSheet *plan, Falls falls)
{
	double width = plan->area->plan.width_ft, plane = falls == FALLS_ONE_WAY ? width : width / 2;
	if (falls == FALLS_NOWHERE)
		return;
	if (falls == FALLS_FOUR_WAYS) {
		put_slopes_of_hip(plan);
		return;
	}
	put_slope_along(plan, plane / 2, (At){ 0, 1 }, plane * plan->scale);
	if (falls == FALLS_TWO_WAYS)
		put_slope_along(plan, width - plane / 2, (At){ 0, -1 }, plane * plan->scale);
}

/* ---- eaves and fixed lines ---- */

/* Names of edges stand outside, at the right end of the upper edge and the left end of the lower one. */
static void put_edge_names(PlanSheet *plan, Falls falls)
{
	static const char *const lower[] = { "", "low eave", "eave", "eave" }, *const upper[] = { "", "high eave", "eave", "eave" };
	const RoofPlan *size = &plan->area->plan;
	At left = on_plan(plan, (PlanPoint){ 0, 0 }), right = on_plan(plan, (PlanPoint){ size->length_ft, size->width_ft });
	if (falls == FALLS_NOWHERE)
		return;
	TextStyle style = { "faint", TEXT_FROM, PLAN_TEXT, 0 };
	svg_text(&plan->svg, &style, (At){ left.x, left.y + 13 }, lower[falls]);
	room_fill(&plan->room, text_box((At){ left.x, left.y + 13 }, TEXT_FROM, svg_text_width(lower[falls], PLAN_TEXT)));
	if (left.y - right.y < 30) /* no room for two */
		return;
	svg_text(&plan->svg, &style, (At){ right.x + 6, right.y + 8 }, upper[falls]);
	room_fill(&plan->room, text_box((At){ right.x + 6, right.y + 8 }, TEXT_FROM, svg_text_width(upper[falls], PLAN_TEXT)));
	if (falls == FALLS_FOUR_WAYS)
		return;
	svg_text(&plan->svg, &style, (At){ right.x + 6, left.y - 2 }, "rake");
	room_fill(&plan->room, text_box((At){ right.x + 6, left.y - 2 }, TEXT_FROM, svg_text_width("rake", PLAN_TEXT)));
}

/* Just inside the edge, so that the outline stays to scale. */
static void put_fixed(PlanSheet *plan, double up_ft, double inside)
{
	At left = on_plan(plan, (PlanPoint){ 0, up_ft }), right = on_plan(plan, (PlanPoint){ plan->area->plan.length_ft, up_ft });
	svg_line(&plan->svg, "fixed", (At){ left.x, left.y + inside }, (At){ right.x, right.y + inside });
	room_fill(&plan->room, (Box){ left.x, left.y + inside - 3, right.x, left.y + inside + 3 });
}

static void put_fixed_ends(PlanSheet *plan)
{
	const RoofPlan *size = &plan->area->plan;
	At low = on_plan(plan, (PlanPoint){ 0, 0 }), high = on_plan(plan, (PlanPoint){ size->length_ft, size->width_ft });
	svg_line(&plan->svg, "fixed", (At){ low.x + 3, low.y }, (At){ low.x + 3, high.y });
	svg_line(&plan->svg, "fixed", (At){ high.x - 3, low.y }, (At){ high.x - 3, high.y });
}

/* False: the line cannot be drawn on a rectangle (valleys, hips), or the roof falls nowhere. */
static bool put_fixed_line(PlanSheet *plan, const Word *line, Falls falls)
{
	double width = plan->area->plan.width_ft, plane = falls == FALLS_ONE_WAY ? width : width / 2;
	if (falls == FALLS_NOWHERE)
		return false;
	if (is_word(line, "eave")) {
		put_fixed(plan, 0, -3);
		if (falls != FALLS_ONE_WAY)
			put_fixed(plan, width, 3);
		if (falls == FALLS_FOUR_WAYS)
			put_fixed_ends(plan);
		return true;
	}
	bool is_top = is_word(line, "ridge") || (is_word(line, "headwall") && falls == FALLS_ONE_WAY);
	bool is_middle = is_word(line, "mid-slope");
	if (falls == FALLS_FOUR_WAYS || (!is_top && !is_middle))
		return false;
	put_fixed(plan, is_middle ? plane / 2 : plane, is_top ? 3 : 0);
	if (falls == FALLS_TWO_WAYS)
		put_fixed(plan, is_middle ? width - plane / 2 : plane, is_top ? -3 : 0);
	return true;
}

static const char *joined(const PlanSheet *plan, const char *before, const FixedLine *line, bool is_drawn)
{
	Arena *arena = plan->sight->arena;
	const char *by = is_value(&line->by.given) ? arena_printf(arena, " by %s", line->by.text) : "";
	const char *one = arena_printf(arena, "%s%s%s", said_text(&line->line.given, arena), by, is_drawn ? "" : " (not drawn)");
	return before == NULL ? one : arena_printf(arena, "%s; %s", before, one);
}

static void put_fixed_lines(PlanSheet *plan, Falls falls)
{
	enum { MOST_LINES = 8 };
	const char *words = NULL;
	for (uint32_t i = 0; i < plan->row->fixed_at.of.count && i < MOST_LINES; i++) {
		const FixedLine *line = &plan->row->fixed_at.of.row[i];
		words = joined(plan, words, line, is_value(&line->line.given) && put_fixed_line(plan, &line->line, falls));
	}
	if (words == NULL)
		words = said_text(&plan->row->fixed_at.of.given, plan->sight->arena);
	double line = plan->corner.y + plan->area->plan.width_ft * plan->scale + 84;
	TextStyle style = { "plain", TEXT_FROM, PLAN_TEXT, SVG_WIDTH - 42 };
	svg_line(&plan->svg, "fixed", (At){ 4, line - 4 }, (At){ 34, line - 4 });
	svg_text(&plan->svg, &style, (At){ 40, line }, arena_printf(plan->sight->arena, "Panels fixed at: %s", words));
}

void draw_roof_lines(PlanSheet *plan)
{
	Falls falls = falls_of(plan);
	double length = plan->area->plan.length_ft, width = plan->area->plan.width_ft;
	if (falls == FALLS_TWO_WAYS)
		put_line(plan, "ridge", (PlanPoint){ 0, width / 2 }, (PlanPoint){ length, width / 2 });
	if (falls == FALLS_FOUR_WAYS)
		put_hips(plan);
	put_fixed_lines(plan, falls);
	put_slopes(plan, falls);
	put_edge_names(plan, falls);
}

/* ---- measures ---- */

static void put_ticks(PlanSheet *plan, At from, At to)
{
	At tick = from.y == to.y ? (At){ 3, 3 } : (At){ 3, -3 };
	svg_line(&plan->svg, "measure", (At){ from.x - tick.x, from.y + tick.y }, (At){ from.x + tick.x, from.y - tick.y });
	svg_line(&plan->svg, "measure", (At){ to.x - tick.x, to.y + tick.y }, (At){ to.x + tick.x, to.y - tick.y });
}

static const char *size_text(const PlanSheet *plan, const Number *number)
{
	return measure(plan->sight, number->value, "ft");
}

static void put_length(PlanSheet *plan)
{
	At from = on_plan(plan, (PlanPoint){ 0, 0 }), to = on_plan(plan, (PlanPoint){ plan->area->plan.length_ft, 0 });
	from.y = to.y = from.y + 22;
	TextStyle style = { "strong halo", TEXT_AROUND, PLAN_TEXT, 0 };
	svg_line(&plan->svg, "measure", from, to);
	put_ticks(plan, from, to);
	room_fill(&plan->room, (Box){ from.x, from.y - 5, to.x, from.y + 18 });
	svg_text(&plan->svg, &style, (At){ (from.x + to.x) / 2, from.y + 14 }, size_text(plan, &plan->row->building.length_ft));
}

/* Beside the left edge; its text stands upright, above the line's middle. */
static void put_width(PlanSheet *plan)
{
	At from = on_plan(plan, (PlanPoint){ 0, 0 }), to = on_plan(plan, (PlanPoint){ 0, plan->area->plan.width_ft });
	from.x = to.x = from.x - 12;
	TextStyle style = { "strong", TEXT_UP_TO, PLAN_TEXT, 0 };
	svg_line(&plan->svg, "measure", from, to);
	put_ticks(plan, from, to);
	room_fill(&plan->room, (Box){ 0, fmin(to.y, (from.y + to.y) / 2 - 12) - 4, from.x + 5, fmax(from.y,
		(from.y + to.y) / 2 + 12) + 4 });
	double feet = plan->area->plan.width_ft, middle = (from.y + to.y) / 2;
	Arena *arena = plan->sight->arena;
	const char *si = plan->sight->verdict->si ? si_text(feet, "ft", arena) : NULL;
	svg_text(&plan->svg, &style, (At){ from.x - 4, middle + 4 }, arena_printf(arena, "%s ft", number_print(arena, feet,
		number_digits(&feet, 1))));
	style = (TextStyle){ "plain", TEXT_UP_TO, 10, 0 };
	if (si != NULL)
		svg_text(&plan->svg, &style, (At){ from.x - 4, middle + 17 }, arena_printf(arena, "(%s)", si));
}

/* A strip along the upper edge, from the left corner; its text follows it. */
static void put_strip(PlanSheet *plan, double feet, double above, const char *name)
{
	At from = on_plan(plan, (PlanPoint){ 0, plan->area->plan.width_ft }), to = on_plan(plan, (PlanPoint){ feet,
		plan->area->plan.width_ft });
	from.y = to.y = from.y - above;
	TextStyle style = { "plain", TEXT_FROM, PLAN_TEXT, 0 };
	if (feet > plan->area->plan.length_ft)
		return;
	svg_line(&plan->svg, "measure strip", from, to);
	put_ticks(plan, from, to);
	const char *text = arena_printf(plan->sight->arena, "%s %s", name, measure(plan->sight, feet, "ft"));
	svg_text(&plan->svg, &style, (At){ to.x + 7, to.y + 4 }, text);
	room_fill(&plan->room, (Box){ from.x - 4, from.y - 6, to.x + 7 + svg_text_width(text, PLAN_TEXT), from.y + 6 });
}

static void put_strips(PlanSheet *plan)
{
	double strip = plan->area->plan.strip_ft;
	switch (plan->area->plan.layout) {
	case LAYOUTS:
		return;
	case LAYOUT_LOW_SLOPE:
		put_strip(plan, 0.2 * strip, 12, "0.2 h =");
		put_strip(plan, 0.6 * strip, 28, "0.6 h =");
		put_strip(plan, 1.2 * strip, 44, "1.2 h =");
		return;
	case LAYOUT_MONOSLOPE:
		put_strip(plan, strip, 12, "a =");
		put_strip(plan, 2 * strip, 28, "2 a =");
		put_strip(plan, 4 * strip, 44, "4 a =");
		return;
	case LAYOUT_HIGH:
		put_strip(plan, strip, 12, "a =");
		put_strip(plan, 2 * strip, 28, "2 a =");
		return;
	default:
		put_strip(plan, strip, 12, "a =");
	}
}

void draw_dimensions(PlanSheet *plan)
{
	put_length(plan);
	put_width(plan);
	put_strips(plan);
}
