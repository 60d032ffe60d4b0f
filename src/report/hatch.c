/* SPDX-License-Identifier: MIT
 * Hatching: a zone is known by its lines and its printed number, on a black-and-white printer as well. Zones of the first family
 * are bare or dotted, those of the second have lines one way, those of the third lines both ways.
 */
#include "svg.h"

#include <stdlib.h>

/* Straight lines across a square of a pattern. */
typedef struct {
	double side;
	double line[2][4];
	int lines;
} Hatch;

static const Hatch hatches[HATCHES] = {
	{ 10, { { 0 } }, 0 },
	{ 10, { { 4.5, 5, 5.5, 5 } }, 1 },
	{ 8, { { 0, 8, 8, 0 } }, 1 },
	{ 8, { { 0, 0, 8, 8 } }, 1 },
	{ 7, { { 0, 3.5, 7, 3.5 } }, 1 },
	{ 7, { { 3.5, 0, 3.5, 7 } }, 1 },
	{ 8, { { 0, 8, 8, 0 }, { 0, 0, 8, 8 } }, 2 },
	{ 6, { { 0, 3, 6, 3 }, { 3, 0, 3, 6 } }, 2 },
	{ 5, { { 0, 5, 5, 0 }, { 0, 0, 5, 5 } }, 2 },
};

int hatch_of(const char *name, int before)
{
	static const int first[] = { 0, 2, 6 }, count[] = { 2, 4, 3 };
	int family = *name >= '1' && *name <= '3' ? *name - '1' : 1;
	return first[family] + before % count[family];
}

const char *hatch_fill(int hatch, Arena *arena)
{
	return arena_printf(arena, "url(#hatch-%d)", hatch);
}

static void put_pattern(Markup *page, int number, Arena *arena)
{
	const Hatch *hatch = &hatches[number];
	const char *side = svg_number(arena, hatch->side);
	OPEN(page, "pattern");
	ATTRIBUTE(page, "id", arena_printf(arena, "hatch-%d", number));
	ATTRIBUTE(page, "width", side);
	ATTRIBUTE(page, "height", side);
	ATTRIBUTE(page, "patternUnits", "userSpaceOnUse");
	Svg svg = { page, arena, hatch->side, hatch->side };
	svg_box(&svg, "paper", (At){ 0, 0 }, (At){ hatch->side, hatch->side });
	for (int i = 0; i < hatch->lines; i++) {
		const double *at = hatch->line[i];
		svg_line(&svg, "hatch", (At){ at[0], at[1] }, (At){ at[2], at[3] });
	}
	CLOSE(page, "pattern");
}

void svg_hatches(Markup *page, Arena *arena)
{
	OPEN(page, "svg");
	ATTRIBUTE(page, "class", "patterns");
	ATTRIBUTE(page, "width", "0");
	ATTRIBUTE(page, "height", "0");
	ATTRIBUTE(page, "aria-hidden", "true");
	OPEN(page, "defs");
	for (int i = 0; i < HATCHES; i++)
		put_pattern(page, i, arena);
	CLOSE(page, "defs");
	CLOSE(page, "svg");
}
