/* SPDX-License-Identifier: MIT
 * Lines, areas, texts and arrows, and room for labels.
 */
#include "svg.h"

#include "number.h"

#include <assert.h>
#include <math.h>
#include <string.h>

const char *svg_number(Arena *arena, double value)
{
	return number_print(arena, value, 3);
}

static void put_number(Svg *svg, const char *name, double value)
{
	markup_attribute(svg->page, name, svg_number(svg->arena, value));
}

void svg_begin(Svg *svg, const char *kind, const char *title)
{
	OPEN(svg->page, "svg");
	ATTRIBUTE(svg->page, "class", kind);
	ATTRIBUTE(svg->page, "viewBox", arena_printf(svg->arena, "0 0 %s %s", svg_number(svg->arena, svg->width),
		svg_number(svg->arena, svg->height)));
	ATTRIBUTE(svg->page, "role", "img");
	ATTRIBUTE(svg->page, "aria-label", title);
	ELEMENT(svg->page, "title", title);
}

void svg_end(Svg *svg)
{
	CLOSE(svg->page, "svg");
}

void svg_line(Svg *svg, const char *kind, At from, At to)
{
	OPEN(svg->page, "line");
	ATTRIBUTE(svg->page, "class", kind);
	put_number(svg, "x1", from.x);
	put_number(svg, "y1", from.y);
	put_number(svg, "x2", to.x);
	put_number(svg, "y2", to.y);
	CLOSE(svg->page, "line");
}

void svg_box(Svg *svg, const char *kind, At corner, At size)
{
	OPEN(svg->page, "rect");
	ATTRIBUTE(svg->page, "class", kind);
	put_number(svg, "x", corner.x);
	put_number(svg, "y", corner.y);
	put_number(svg, "width", size.x);
	put_number(svg, "height", size.y);
	CLOSE(svg->page, "rect");
}

void svg_circle(Svg *svg, const char *kind, At center, double radius)
{
	OPEN(svg->page, "circle");
	ATTRIBUTE(svg->page, "class", kind);
	put_number(svg, "cx", center.x);
	put_number(svg, "cy", center.y);
	put_number(svg, "r", radius);
	CLOSE(svg->page, "circle");
}

void svg_path(Svg *svg, const Path *path)
{
	Out *points = out_make(svg->arena, OUT_TERMINAL);
	for (size_t i = 0; i < path->count; i++) {
		put(points, svg_number(svg->arena, path->at[i].x));
		SAY(points, ",");
		put(points, svg_number(svg->arena, path->at[i].y));
		if (i + 1 < path->count)
			SAY(points, " ");
	}
	size_t length;
	markup_open(svg->page, path->closed ? "polygon" : "polyline");
	ATTRIBUTE(svg->page, "class", path->kind);
	ATTRIBUTE(svg->page, "points", out_text(points, &length));
	markup_close(svg->page, path->closed ? "polygon" : "polyline");
}

/* ---- texts ---- */

/* What is lettered and figures of a bold, wide face take; narrower faces leave a little over. */
static const double widest = 0.63;

double svg_text_width(const char *text, double size)
{
	return widest * size * out_width(text, strlen(text));
}

const char *svg_fitting(const char *text, const TextStyle *style, Arena *arena)
{
	if (style->room == 0 || svg_text_width(text, style->size) <= style->room)
		return text;
	size_t fits = 0, length = strlen(text);
	double width = 3 * widest * style->size;
	while (fits < length) {
		size_t next = fits + 1;
		while (next < length && ((unsigned char)text[next] & 0xC0) == 0x80)
			next++;
		width += widest * style->size * out_width(text + fits, next - fits);
		if (width > style->room)
			break;
		fits = next;
	}
	return arena_printf(arena, "%s...", arena_text(arena, text, fits));
}

void svg_text(Svg *svg, const TextStyle *style, At at, const char *text)
{
	static const char *const anchors[] = { "start", "middle", "end" };
	OPEN(svg->page, "text");
	ATTRIBUTE(svg->page, "class", style->kind);
	put_number(svg, "x", at.x);
	put_number(svg, "y", at.y);
	put_number(svg, "font-size", style->size);
	ATTRIBUTE(svg->page, "text-anchor", anchors[style->anchor]);
	markup_text(svg->page, svg_fitting(text, style, svg->arena));
	CLOSE(svg->page, "text");
}

void svg_arrow(Svg *svg, At from, At to)
{
	double length = hypot(to.x - from.x, to.y - from.y);
	At along = { (to.x - from.x) / length, (to.y - from.y) / length }, foot = { to.x - 9 * along.x, to.y - 9 * along.y };
	At head[] = { to, { foot.x - 4 * along.y, foot.y + 4 * along.x }, { foot.x + 4 * along.y, foot.y - 4 * along.x } };
	svg_line(svg, "arrow", from, foot);
	svg_path(svg, &(Path){ "head", head, 3, true });
}

/* ---- room ---- */

static bool is_apart(Box a, Box b)
{
	return a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
}

bool room_is_free(const Room *room, Box box)
{
	const Box *within = &room->within;
	if (box.left < within->left || box.right > within->right || box.top < within->top || box.bottom > within->bottom)
		return false;
	for (size_t i = 0; i < room->count; i++)
		if (!is_apart(room->taken[i], box))
			return false;
	return true;
}

void room_fill(Room *room, Box box)
{
	if (room->count < MOST_BOXES)
		room->taken[room->count++] = box;
}

bool room_take(Room *room, Box box)
{
	if (room->count == MOST_BOXES || !room_is_free(room, box))
		return false;
	room_fill(room, box);
	return true;
}
