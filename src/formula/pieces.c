/* SPDX-License-Identifier: MIT
 * The zones of a roof plan as pieces to draw, and the lines on which two zones meet. Both come from the cuts that the areas of
 * the zones come from, so that a drawing and a figure cannot differ.
 */
#include "plan_parts.h"

#include <math.h>
#include <string.h>

/* A piece of a part: two sides along x, at `low` and `high`. */
typedef struct {
	const char *zone;
	double low, high;
	double left[2], right[2]; /* at low, at high */
} Band;

enum { MOST_BANDS = MOST_CUTS };

/* What is asked for, written as far as there is room; counted on. */
typedef struct {
	Part part;
	PlanPiece *piece;
	PlanLine *line;
	size_t most, count;
} Drawn;

/* ---- from a part to the roof ---- */

static PlanPoint on_roof(const Part *part, int copy, double x, double y)
{
	double along = (copy & 1) != 0 ? 2 * part->length - x : x;
	double up = (copy & 2) != 0 ? 2 * part->depth - y : y;
	return part->is_turned ? (PlanPoint){ up, along } : (PlanPoint){ along, up };
}

static void add_piece(Drawn *drawn, const Band *band)
{
	for (int copy = 0; copy < (int)drawn->part.times; copy++, drawn->count++) {
		if (drawn->count >= drawn->most)
			continue;
		PlanPiece *piece = &drawn->piece[drawn->count];
		piece->zone = band->zone;
		piece->corner[0] = on_roof(&drawn->part, copy, band->left[0], band->low);
		piece->corner[1] = on_roof(&drawn->part, copy, band->right[0], band->low);
		piece->corner[2] = on_roof(&drawn->part, copy, band->right[1], band->high);
		piece->corner[3] = on_roof(&drawn->part, copy, band->left[1], band->high);
	}
}

typedef struct {
	double x[2], y[2];
} Edge;

static void add_line(Drawn *drawn, Edge edge)
{
	for (int copy = 0; copy < (int)drawn->part.times; copy++, drawn->count++)
		if (drawn->count < drawn->most)
			drawn->line[drawn->count] = (PlanLine){ on_roof(&drawn->part, copy, edge.x[0], edge.y[0]),
				on_roof(&drawn->part, copy, edge.x[1], edge.y[1]) };
}

/* ---- one height of a part ---- */

/* Every cut runs straight between two heights: known at two of them, it is known at both ends. */
static void ends_of(const Cuts cuts[2], size_t i, double at[2])
{
	double lower = cuts[0].at[i], upper = cuts[1].at[i];
	at[0] = fmax(0, fmin(cuts[0].end, 1.5 * lower - 0.5 * upper));
	at[1] = fmax(0, fmin(cuts[0].end, 1.5 * upper - 0.5 * lower));
}

/* The pieces between two heights; neighbors of one zone are one piece. */
static size_t bands_between(const Part *part, double low, double high, Band band[MOST_BANDS])
{
	double middle = (low + high) / 2, quarter = (high - low) / 4;
	Cuts cuts[2] = { cuts_across(part, middle - quarter), cuts_across(part, middle + quarter) };
	size_t count = 0;
	if (cuts[0].count != cuts[1].count)
		cuts[0] = cuts[1] = cuts_across(part, middle);
	for (size_t i = 1; i < cuts[0].count; i++) {
		double from = (cuts[0].at[i - 1] + cuts[1].at[i - 1]) / 2, to = (cuts[0].at[i] + cuts[1].at[i]) / 2;
		if (to - from <= 1e-9 * part->length)
			continue;
		const char *zone = zone_at(part, (from + to) / 2, middle);
		if (count == 0 || strcmp(band[count - 1].zone, zone) != 0) {
			band[count] = (Band){ .zone = zone, .low = low, .high = high };
			ends_of(cuts, i - 1, band[count++].left);
		}
		ends_of(cuts, i, band[count - 1].right);
	}
	return count;
}

/* ---- all heights ---- */

typedef void Visit(Drawn *drawn, const Band *band, size_t count);

static void visit_bands(Drawn *drawn, Visit *visit)
{
	Cuts y = cuts_along(&drawn->part);
	Band band[MOST_BANDS];
	for (size_t i = 1; i < y.count; i++)
		if (y.at[i] - y.at[i - 1] > 1e-9 * drawn->part.depth)
			visit(drawn, band, bands_between(&drawn->part, y.at[i - 1], y.at[i], band));
}

static void add_pieces(Drawn *drawn, const Band *band, size_t count)
{
	for (size_t i = 0; i < count; i++)
		add_piece(drawn, &band[i]);
}

/* Two neighbors at one height are of two zones. */
static void add_sides(Drawn *drawn, const Band *band, size_t count)
{
	for (size_t i = 1; i < count; i++)
		add_line(drawn, (Edge){ { band[i].left[0], band[i].left[1] }, { band[i].low, band[i].high } });
}

/* Where a zone ends at the lower side of these pieces; the first of all lie at the eave. */
static void add_lower_sides(Drawn *drawn, const Band *band, size_t count)
{
	const Part *part = &drawn->part;
	double below = band[0].low - 1e-6 * part->depth;
	if (count == 0 || below <= 0)
		return;
	Cuts cuts = cuts_across(part, below);
	for (size_t i = 0; i < count; i++)
		for (size_t c = 1; c < cuts.count; c++) {
			double from = fmax(cuts.at[c - 1], band[i].left[0]), to = fmin(cuts.at[c], band[i].right[0]);
			if (to - from > 1e-5 * part->length && strcmp(zone_at(part, (from + to) / 2, below), band[i].zone) != 0)
				add_line(drawn, (Edge){ { from, to }, { band[i].low, band[i].low } });
		}
}

size_t plan_pieces(const RoofPlan *plan, PlanPiece *piece, size_t most)
{
	Drawn drawn = { .part = part_of(plan), .piece = piece, .most = most };
	if (plan->layout < LAYOUTS)
		visit_bands(&drawn, add_pieces);
	return drawn.count;
}

size_t plan_borders(const RoofPlan *plan, PlanLine *line, size_t most)
{
	Drawn drawn = { .part = part_of(plan), .line = line, .most = most };
	if (plan->layout >= LAYOUTS)
		return 0;
	visit_bands(&drawn, add_sides);
	visit_bands(&drawn, add_lower_sides);
	return drawn.count;
}

const char *zone_on_plan(const RoofPlan *plan, PlanPoint at)
{
	Part part = part_of(plan);
	double x = part.is_turned ? at.up_ft : at.along_ft, y = part.is_turned ? at.along_ft : at.up_ft;
	return zone_at(&part, fmin(x, 2 * part.length - x), part.times > 2 ? fmin(y, 2 * part.depth - y) : y);
}
