/* SPDX-License-Identifier: MIT
 * What a page shows of one roof area: zone table, plan, section, tested curve, submitted beside listed.
 */
#ifndef REPORT_DRAWN_H
#define REPORT_DRAWN_H

#include "drawing.h"
#include "item_index.h"
#include "markup.h"

typedef struct {
	Markup *page;
	const Verdict *verdict;
	const ItemIndex *items;
	Arena *arena;
} Sight;

/* Each in its own figure or table under a heading. */
void put_zone_table(const Sight *sight, const DrawnArea *area);
void put_plan(const Sight *sight, const DrawnArea *area);
void put_openings(const Sight *sight, const DrawnArea *area);
void put_section(const Sight *sight, const DrawnArea *area);
void put_curve(const Sight *sight, const DrawnArea *area);
void put_listed(const Sight *sight, const DrawnArea *area);

/* ---- small pieces ---- */

/* An element that holds one text, of a class. */
#define KIND_ELEMENT(page, name, kind, text) put_kind(page, "" name "", kind, text)
void put_kind(Markup *page, const char *name, const char *kind, const char *text);

void begin_table(Markup *page, const char *caption, const char *const head[], int columns);
void end_table(Markup *page);

/* Length or pressure with its unit, and the SI value beside it where that was asked for. */
const char *measure(const Sight *sight, double value, const char *unit);

/* A fact's value in its unit; what it is not known for. */
const char *fact_text(const Sight *sight, const Fact *fact, const char *unit);

/* "0.71"; never 1 for what is above it. */
const char *ratio_text(const Sight *sight, double ratio);

/* "holds", "does not hold", "not judged": what a zone's ratio says, in words. */
const char *zone_verdict(const DrawnZone *zone);

/* The zone's name, its clip spacing in words; short: without the SI value. */
const char *zone_name(const DrawnZone *zone);
const char *spacing_text(const Sight *sight, const DrawnZone *zone);
const char *short_spacing(const Sight *sight, const DrawnZone *zone);

/* The hatch of each zone, in the order of the area's zones. */
const int *zone_hatches(const DrawnArea *area, Arena *arena);

/* The first record of a kind in a roof area; `next` leads on. NULL: none. */
const Case *first_in(const DrawnArea *area, RecordKind kind);

/* What is said of a part: "nothing found against it", "not cleared (1.04)". */
const char *clearance_of(const Sight *sight, const Case *part);

/* "1.02, 1.07": the items that stand at a record; NULL: none. */
const char *numbers_at(const Sight *sight, const Case *where);

#endif
