/* SPDX-License-Identifier: MIT
 * Svg: line drawings through the writer of markup. Kinds of line and text are classes that the page's style knows; there is no
 * color but greys.
 */
#ifndef REPORT_SVG_H
#define REPORT_SVG_H

#include "markup.h"

typedef struct {
	Markup *page;
	Arena *arena;
	double width, height;
} Svg;

typedef struct {
	double x, y;
} At;

/* 100 units are an inch where the page is printed as it is. */
enum { SVG_INCH = 100, SVG_WIDTH = 700 };

void svg_begin(Svg *svg, const char *kind, const char *title);
void svg_end(Svg *svg);

/* Kinds are literals of the program. */
void svg_line(Svg *svg, const char *kind, At from, At to);
void svg_box(Svg *svg, const char *kind, At corner, At size);
void svg_circle(Svg *svg, const char *kind, At center, double radius);

/* A line of several corners; closed: an area. */
typedef struct {
	const char *kind;
	const At *at;
	size_t count;
	bool closed;
} Path;
void svg_path(Svg *svg, const Path *path);

/* A text whose baseline begins, is centered or ends at a point; as much of it as fits into `room`, 0: all of it. */
typedef enum { TEXT_FROM, TEXT_AROUND, TEXT_UP_TO } TextAnchor;
typedef struct {
	const char *kind;
	TextAnchor anchor;
	double size, room;
} TextStyle;
void svg_text(Svg *svg, const TextStyle *style, At at, const char *text);

/* As much of a text as fits. */
const char *svg_fitting(const char *text, const TextStyle *style, Arena *arena);

/* The width a text takes, guessed on the safe side. */
double svg_text_width(const char *text, double size);

/* A number as attributes take it. */
const char *svg_number(Arena *arena, double value);

/* An arrow from a point to another, its head at the second. */
void svg_arrow(Svg *svg, At from, At to);

/* ---- room for labels ---- */

typedef struct {
	double left, top, right, bottom;
} Box;

enum { MOST_BOXES = 512 };
typedef struct {
	Box taken[MOST_BOXES];
	size_t count;
	Box within;
} Room;

/* Takes the place if nothing stands there; `room_fill` takes it anyhow. */
bool room_is_free(const Room *room, Box box);
bool room_take(Room *room, Box box);
void room_fill(Room *room, Box box);

/* ---- hatching of zones ---- */

enum { HATCHES = 9 };

/* The hatch of a zone: rougher places are darker. `name` is the zone's, `before` how many of its family came before. */
int hatch_of(const char *name, int before);

/* Defines the patterns once a page, in an svg of their own; fills an area. */
void svg_hatches(Markup *page, Arena *arena);
const char *hatch_fill(int hatch, Arena *arena);

#endif
