/* SPDX-License-Identifier: MIT
 * The zones of a plan by hatching and number. A number stands in its zone where there is room for it; where a strip is too
 * narrow, beside the roof with a leader.
 */
#include "plan_drawing.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* ---- areas and borders ---- */

/* The pieces of one zone are one path: no seam shows between them. */
static void put_area(PlanSheet *plan, const PlanPiece *piece, size_t pieces, const DrawnZone *zone, int hatch)
{
	Arena *arena = plan->sight->arena;
	Markup *page = plan->sight->page;
	Out *path = out_make(arena, OUT_TERMINAL);
	for (size_t i = 0; i < pieces; i++) {
		if (strcmp(piece[i].zone, zone_name(zone)) != 0)
			continue;
		for (int c = 0; c < 4; c++) {
			At at = on_plan(plan, piece[i].corner[c]);
			put(path, arena_printf(arena, "%s%s %s", c == 0 ? "M" : "L", svg_number(arena, at.x), svg_number(arena, at.y)));
		}
		SAY(path, "Z");
	}
	size_t length;
	OPEN(page, "path");
	ATTRIBUTE(page, "class", "area");
	ATTRIBUTE(page, "fill", hatch_fill(hatch, arena));
	ATTRIBUTE(page, "d", out_text(path, &length));
	CLOSE(page, "path");
}

void draw_zone_areas(PlanSheet *plan)
{
	const DrawnArea *area = plan->area;
	size_t pieces = plan_pieces(&area->plan, NULL, 0), lines = plan_borders(&area->plan, NULL, 0);
	if (area->plan.layout == LAYOUTS)
		return;
	PlanPiece *piece = TAKE(plan->sight->arena, PlanPiece, pieces);
	PlanLine *line = TAKE(plan->sight->arena, PlanLine, lines);
	plan_pieces(&area->plan, piece, pieces);
	plan_borders(&area->plan, line, lines);
	const int *hatch = zone_hatches(area, plan->sight->arena);
	for (uint32_t i = 0; i < area->zones; i++)
		put_area(plan, piece, pieces, &area->zone[i], hatch[i]);
	for (size_t i = 0; i < lines; i++)
		svg_line(&plan->svg, "border", on_plan(plan, line[i].from), on_plan(plan, line[i].to));
}

/* ---- numbers ---- */

enum { CELL = 4 };

/* The roof in cells of four units, with the zone of each by its number in the area's list; -1: none of them. */
typedef struct {
	int columns, rows;
	int8_t *zone;
	uint16_t *clear; /* cells to the next zone or the edge */
} Raster;

static PlanPoint under(const PlanSheet *plan, int column, int row)
{
	double x = fmin((column + 0.5) * CELL / plan->scale, plan->area->plan.length_ft);
	double y = fmin((row + 0.5) * CELL / plan->scale, plan->area->plan.width_ft);
	return (PlanPoint){ x, plan->area->plan.width_ft - y };
}

static int number_of(const DrawnArea *area, const char *zone)
{
	for (uint32_t i = 0; i < area->zones && i < 100; i++)
		if (strcmp(zone_name(&area->zone[i]), zone) == 0)
			return (int)i;
	return -1;
}

static unsigned clear_beside(const Raster *raster, int at, int column, int row)
{
	if (column < 0 || row < 0 || column >= raster->columns || row >= raster->rows)
		return 0;
	int other = row * raster->columns + column;
	return raster->zone[other] == raster->zone[at] ? raster->clear[other] : 0;
}

/* Down and to the right, then back: no cell is farther from another zone than its neighbors by more than one. */
static void measure_clear(Raster *raster)
{
	for (int pass = 0; pass < 2; pass++)
		for (int i = 0, cells = raster->columns * raster->rows; i < cells; i++) {
			int at = pass == 0 ? i : cells - 1 - i, column = at % raster->columns, row = at / raster->columns, back = pass == 0 ? -1 : 1;
			unsigned least = clear_beside(raster, at, column + back, row);
			for (int across = -1; across <= 1; across++) {
				unsigned beside = clear_beside(raster, at, column + across, row + back);
				least = beside < least ? beside : least;
			}
			if (pass == 0 || least + 1 < raster->clear[at])
				raster->clear[at] = (uint16_t)(least + 1);
		}
}

static Raster raster_of(const PlanSheet *plan)
{
	const RoofPlan *size = &plan->area->plan;
	Raster raster = { (int)ceil(size->length_ft * plan->scale / CELL), (int)ceil(size->width_ft * plan->scale / CELL), NULL, NULL };
	raster.zone = TAKE(plan->sight->arena, int8_t, (size_t)raster.columns * (size_t)raster.rows);
	for (int row = 0; row < raster.rows; row++)
		for (int column = 0; column < raster.columns; column++)
			raster.zone[row * raster.columns + column] =
				(int8_t)number_of(plan->area, zone_on_plan(size, under(plan, column, row)));
	raster.clear = TAKE(plan->sight->arena, uint16_t, (size_t)raster.columns * (size_t)raster.rows);
	measure_clear(&raster);
	return raster;
}

/* A label in cells, by its upper left one. */
typedef struct {
	int column, row, columns, rows;
} Cells;

static bool lies_in(const Raster *raster, const Cells *at, int zone)
{
	if (at->column + at->columns > raster->columns || at->row + at->rows > raster->rows)
		return false;
	for (int row = at->row; row < at->row + at->rows; row++)
		for (int column = at->column; column < at->column + at->columns; column++)
			if (raster->zone[row * raster->columns + column] != zone)
				return false;
	return true;
}

static Box box_of(const PlanSheet *plan, const Cells *at)
{
	double left = plan->corner.x + at->column * CELL, top = plan->corner.y + at->row * CELL;
	return (Box){ left, top, left + at->columns * CELL, top + at->rows * CELL };
}

static double away_from(const Cells *at, double column, double row)
{
	return hypot(at->column + at->columns / 2.0 - column, at->row + at->rows / 2.0 - row);
}

enum { MOST_REPEATS = 4 };
typedef struct {
	Cells at[MOST_REPEATS];
	int count;
} Placed;

static int clear_at(const Raster *raster, const Cells *at)
{
	return raster->clear[(at->row + at->rows / 2) * raster->columns + at->column + at->columns / 2];
}

/* Labels of one zone stand well apart, and none in a mere corner of it. */
static bool is_apart(const Raster *raster, const Placed *placed, const Cells *at)
{
	if (placed->count > 0 && 2 * clear_at(raster, at) < clear_at(raster, &placed->at[0]))
		return false;
	double least = 0.3 * hypot(raster->columns, raster->rows);
	for (int i = 0; i < placed->count; i++)
		if (away_from(at, placed->at[i].column + placed->at[i].columns / 2.0, placed->at[i].row + placed->at[i].rows / 2.0) < least)
			return false;
	return true;
}

/* Far from other zones first, near to the middle of the roof then. */
static double worth_of(const Raster *raster, const Cells *at)
{
	return clear_at(raster, at) - 0.001 * away_from(at, raster->columns / 2.0, raster->rows / 2.0);
}

static bool find_place(const PlanSheet *plan, const Raster *raster, int zone, const Placed *placed, Cells *at)
{
	double best = -HUGE_VAL;
	Cells look = *at;
	for (look.row = 0; look.row + look.rows <= raster->rows; look.row++)
		for (look.column = 0; look.column + look.columns <= raster->columns; look.column++) {
			if (raster->zone[look.row * raster->columns + look.column] != zone || worth_of(raster, &look) <= best)
				continue;
			if (!is_apart(raster, placed, &look) || !lies_in(raster, &look, zone) || !room_is_free(&plan->room, box_of(plan, &look)))
				continue;
			best = worth_of(raster, &look);
			*at = look;
		}
	return isfinite(best);
}

static const char *figures_of(const PlanSheet *plan, const DrawnZone *zone)
{
	const Sight *sight = plan->sight;
	const char *spacing = short_spacing(sight, zone);
	return zone->ratio->state == FACT_KNOWN
		? arena_printf(sight->arena, "%s; %s", spacing, ratio_text(sight, zone->ratio->value)) : spacing;
}

static void put_zone_label(PlanSheet *plan, const Cells *at, const DrawnZone *zone, bool with_figures)
{
	Box box = box_of(plan, at);
	double middle = (box.left + box.right) / 2;
	TextStyle name = { "strong", TEXT_AROUND, 13, 0 }, figures = { "plain", TEXT_AROUND, PLAN_TEXT, 0 };
	room_fill(&plan->room, box);
	svg_box(&plan->svg, "pad", (At){ box.left, box.top }, (At){ box.right - box.left, box.bottom - box.top });
	svg_text(&plan->svg, &name, (At){ middle, box.top + 12.5 }, zone_name(zone));
	if (with_figures)
		svg_text(&plan->svg, &figures, (At){ middle, box.top + 25 }, figures_of(plan, zone));
}

/* The number once with spacing and ratio, then alone. False: there is room for neither. */
static bool put_inside(PlanSheet *plan, const Raster *raster, int number)
{
	const DrawnZone *zone = &plan->area->zone[number];
	int columns = (int)ceil(svg_text_width(figures_of(plan, zone), PLAN_TEXT) / CELL) + 1;
	int narrow = (int)ceil(svg_text_width(zone_name(zone), 13) / CELL) + 1;
	Placed placed = { .count = 0 };
	Cells at = { 0, 0, columns, 7 };
	if (find_place(plan, raster, number, &placed, &at)) {
		put_zone_label(plan, &at, zone, true);
		placed.at[placed.count++] = at;
	}
	for (; placed.count < MOST_REPEATS; placed.count++) {
		at = (Cells){ 0, 0, narrow, 4 };
		if (!find_place(plan, raster, number, &placed, &at))
			break;
		put_zone_label(plan, &at, zone, false);
		placed.at[placed.count] = at;
	}
	return placed.count > 0;
}

/* The piece of a zone that lies farthest to the right. */
static bool rightmost(const PlanSheet *plan, const char *zone, At *point)
{
	size_t count = plan_pieces(&plan->area->plan, NULL, 0);
	PlanPiece *piece = TAKE(plan->sight->arena, PlanPiece, count);
	bool found = false;
	plan_pieces(&plan->area->plan, piece, count);
	for (size_t i = 0; i < count; i++) {
		PlanPoint middle = { 0, 0 };
		for (int c = 0; c < 4; c++) {
			middle.along_ft += piece[i].corner[c].along_ft / 4;
			middle.up_ft += piece[i].corner[c].up_ft / 4;
		}
		At at = on_plan(plan, middle);
		if (strcmp(piece[i].zone, zone) != 0 || (found && at.x <= point->x))
			continue;
		*point = at;
		found = true;
	}
	return found;
}

/* Beside the roof, where a leader comes to it; lower ones below upper ones. */
static void put_beside(PlanSheet *plan, const DrawnZone *zone)
{
	At point;
	if (!rightmost(plan, zone_name(zone), &point))
		return;
	double right = plan->corner.x + plan->area->plan.length_ft * plan->scale;
	const char *text = arena_printf(plan->sight->arena, "%s: %s", zone_name(zone), figures_of(plan, zone));
	TextStyle style = { "strong", TEXT_FROM, PLAN_TEXT, SVG_WIDTH - right - 24 };
	for (int step = 0; step < 24; step++) {
		At at = { right + 22, point.y + 4 + (step % 2 == 0 ? 1 : -1) * 7.5 * ((step + 1) / 2 * 2) };
		Box box = text_box(at, TEXT_FROM, fmin(svg_text_width(text, PLAN_TEXT), style.room));
		if (!room_take(&plan->room, box))
			continue;
		At elbow[] = { point, { right + 8, at.y - 4 }, { right + 20, at.y - 4 } };
		svg_path(&plan->svg, &(Path){ "leader", elbow, 3, false });
		svg_circle(&plan->svg, "dot", point, 1.8);
		svg_text(&plan->svg, &style, at, text);
		return;
	}
}

void draw_zone_names(PlanSheet *plan)
{
	const DrawnArea *area = plan->area;
	if (area->plan.layout == LAYOUTS)
		return;
	Raster raster = raster_of(plan);
	bool *inside = TAKE(plan->sight->arena, bool, area->zones + 1);
	for (uint32_t i = 0; i < area->zones && i < 100; i++)
		inside[i] = put_inside(plan, &raster, (int)i);
	for (uint32_t i = 0; i < area->zones; i++)
		if (!inside[i])
			put_beside(plan, &area->zone[i]);
}
