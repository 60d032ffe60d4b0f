/* SPDX-License-Identifier: MIT
 * Pen: what the letter says is worked out once and written twice, as text and as parts of a page, so that neither can know less
 * than the other.
 */
#ifndef REPORT_PEN_H
#define REPORT_PEN_H

#include "markup.h"
#include "parts.h"
#include "report.h"

typedef enum { PEN_NOWHERE, PEN_IN_LABELS, PEN_IN_PARTS } PenPlace;

typedef struct {
	Out *out; /* of the text */
	Markup *page; /* NULL: text */
	const Verdict *verdict; /* whose items a page links to */
	Arena *arena;
	PenPlace place; /* what a page has open */
	bool in_section;
} Pen;

/* The answer, as the first line; a line under it, which may name items. */
void pen_answer(Pen *pen, const char *text);
void pen_say(Pen *pen, const char *text);

/* Room between two groups of labels. */
void pen_gap(Pen *pen);

/* A heading, a literal in capitals; what stands under it: lines, of which some name items. */
#define PEN_HEADING(pen, title) pen_heading(pen, "" title "")
void pen_heading(Pen *pen, const char *title);
void pen_area(Pen *pen, const char *name);
void pen_subheading(Pen *pen, const char *name);
void pen_line(Pen *pen, const char *text);
void pen_line_of_items(Pen *pen, const char *text);

/* An item that is one line. */
void pen_item_line(Pen *pen, const Finding *item, const char *text);

/* A label of the program and a text beside it. */
void pen_label(Pen *pen, LabelColumn column, const char *label, const char *text);

/* A part: its kind, its name, what is said of it, which may name items. */
typedef struct {
	const char *kind, *name, *clearance;
} PenPart;
void pen_part(Pen *pen, const PenPart *part);

void pen_cautions(Pen *pen, const Reference *reference);

/* The line nobody has signed yet. */
void pen_signature(Pen *pen);

/* Closes what a page still has open. */
void pen_end(Pen *pen);

/* Of a page: a text in which the numbers of items lead to them; where an item stands ("item-1-03", before a bid "item-3"). */
void put_linked(Markup *page, const char *text, const Verdict *verdict, Arena *arena);
const char *item_anchor(const Verdict *verdict, const Finding *item, Arena *arena);

#endif
