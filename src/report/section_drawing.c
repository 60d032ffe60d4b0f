/* SPDX-License-Identifier: MIT
 * A section across the seams, from the support up, with a leader to each part: its item and what is said of it.
 */
#include "section_drawing.h"

#include "pen.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { LABEL_LEFT = 322, LABEL_HEIGHT = 34, ABOVE = 26, BELOW = 14 };

double seam_at(int seam)
{
	return 46 + 98.0 * seam;
}

const char *inches_text(const SectionSheet *section, const Number *number)
{
	if (!is_value(&number->given))
		return said_text(&number->given, section->sight->arena);
	bool is_own = number->given.place.source == SOURCE_SUBMITTAL && number->given.said == SAID_VALUE && number->given.typed != NULL;
	return is_own ? number->given.typed : measure(section->sight, number->value, "in");
}

/* Every part begins with the fields all parts have; the item is the first of them. */
static const char *item_of(const Case *part, Arena *arena)
{
	const Given *given = &((const Panel *)part->row)->item.given;
	return is_value(given) ? ((const Panel *)part->row)->item.text : arena_printf(arena, "item %s", said_text(given, arena));
}

void add_leader(SectionSheet *section, At at, const Case *part, const char *more)
{
	Arena *arena = section->sight->arena;
	if (section->leaders == MOST_LEADERS)
		return;
	const char *kind = plain_words(record_of(part->kind)->name, arena);
	const char *title = arena_printf(arena, "%s: %s", kind, item_of(part, arena));
	section->leader[section->leaders++] = (Leader){ at, part, title, more, clearance_of(section->sight, part) };
}

/* ---- labels ---- */

static int from_above(const void *a, const void *b)
{
	const Leader *x = a, *y = b;
	if (x->at.y != y->at.y)
		return x->at.y < y->at.y ? -1 : 1;
	return (x->at.x < y->at.x) - (x->at.x > y->at.x); /* of one height: the right one first, so that no two cross */
}

static void begin_text(const SectionSheet *section, double line)
{
	Markup *page = section->sight->page;
	OPEN(page, "text");
	ATTRIBUTE(page, "x", svg_number(section->sight->arena, LABEL_LEFT));
	ATTRIBUTE(page, "y", svg_number(section->sight->arena, line));
	ATTRIBUTE(page, "font-size", "11");
}

/* Kind and item, more about it behind them; what is said of it below. */
static void put_leader(SectionSheet *section, const Leader *leader, double line)
{
	Markup *page = section->sight->page;
	Arena *arena = section->sight->arena;
	double room = SVG_WIDTH - LABEL_LEFT - 4;
	TextStyle title = { "strong", TEXT_FROM, 11, room };
	TextStyle more = { "plain", TEXT_FROM, 11, fmax(60, room - svg_text_width(leader->title, 11) - 8) };
	At bend[] = { leader->at, { LABEL_LEFT - 22, line - 4 }, { LABEL_LEFT - 5, line - 4 } };
	svg_path(&section->svg, &(Path){ "leader", bend, 3, false });
	svg_circle(&section->svg, "dot", leader->at, 2);
	begin_text(section, line);
	put_kind(page, "tspan", "strong", svg_fitting(leader->title, &title, arena));
	if (svg_text_width(leader->title, 11) < room - 60)
		put_kind(page, "tspan", "plain", arena_printf(arena, ", %s", svg_fitting(leader->more, &more, arena)));
	CLOSE(page, "text");
	begin_text(section, line + 13);
	put_linked(page, leader->verdict, section->sight->verdict, arena);
	CLOSE(page, "text");
}

static void put_labels(SectionSheet *section)
{
	qsort(section->leader, (size_t)section->leaders, sizeof *section->leader, from_above);
	double step = fmax(LABEL_HEIGHT, (section->svg.height - 30) / fmax(section->leaders, 1));
	for (int i = 0; i < section->leaders; i++)
		put_leader(section, &section->leader[i], 16 + step * i);
}

/* ---- the whole ---- */

/* How many leaders there will be, so that the sheet is high enough. */
static int count_leaders(const DrawnArea *area)
{
	static const RecordKind kinds[] = { KIND_panel, KIND_support, KIND_layer, KIND_clip, KIND_fastener, KIND_underlayment,
		KIND_sealant };
	int count = 0;
	for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++)
		for (const Case *part = first_in(area, kinds[i]); part != NULL && count < MOST_LEADERS; part = part->next) {
			bool is_cut = part->kind != KIND_fastener && part->kind != KIND_sealant;
			is_cut |= part->kind == KIND_fastener && (is_word(&((const Fastener *)part->row)->use, "clip") ||
				is_word(&((const Fastener *)part->row)->use, "fixity"));
			is_cut |= part->kind == KIND_sealant && is_word(&((const Sealant *)part->row)->where, "seam");
			count += is_cut;
		}
	return count;
}

static void put_notes(const Sight *sight, const RoofArea *row)
{
	Markup *page = sight->page;
	const struct {
		const char *what;
		const Given *given;
	} lists[] = {
		{ "Layers between support and panel", &row->build_up.of.given }, { "Clips", &row->clips.of.given },
		{ "Fasteners", &row->fasteners.of.given }, { "Underlayments", &row->underlayments.of.given },
	};
	OPEN(page, "figcaption");
	ELEMENT(page, "p", "Not to scale. Drawn across the seams from the support up, as submitted; what it does not cut stands "
		"under Parts.");
	for (size_t i = 0; i < sizeof lists / sizeof *lists; i++)
		if (lists[i].given->said != SAID_VALUE)
			ELEMENT(page, "p", arena_printf(sight->arena, "%s: %s.", lists[i].what, said_text(lists[i].given, sight->arena)));
	CLOSE(page, "figcaption");
}

void put_section(const Sight *sight, const DrawnArea *area)
{
	SectionSheet section = { .svg = { sight->page, sight->arena, SVG_WIDTH, 0 }, .sight = sight, .area = area,
		.row = area->at->row };
	double own = ABOVE + RIB_HEIGHT + PAN_HEIGHT + build_up_height(area) + SUPPORT_HEIGHT + BELOW;
	section.svg.height = fmax(own, LABEL_HEIGHT * count_leaders(area) + 10);
	double above = ABOVE + (section.svg.height - own) / 2;
	section.top = above + RIB_HEIGHT + PAN_HEIGHT;
	section.support = section.top + build_up_height(area);
	OPEN(sight->page, "figure");
	svg_begin(&section.svg, "section", arena_printf(sight->arena, "Section through the assembly of %s", area->at->name));
	draw_support(&section);
	draw_build_up(&section);
	draw_clips(&section);
	draw_panel(&section);
	put_labels(&section);
	svg_end(&section.svg);
	put_notes(sight, section.row);
	CLOSE(sight->page, "figure");
}
