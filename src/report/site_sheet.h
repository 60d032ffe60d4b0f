/* SPDX-License-Identifier: MIT
 * The inspector's sheet before it is written out: what must be seen on each roof area, and before what covers it.
 */
#ifndef REPORT_SITE_SHEET_H
#define REPORT_SITE_SHEET_H

#include "parts.h"

/* One thing to see. `number` is the code of a standing check or the number of an item. */
typedef struct {
	const char *number, *text;
} SiteLine;

typedef struct {
	SiteLine *line;
	uint32_t lines, room;
} SiteGroup;

/* In the order of building; the words of SiteCheck.before. */
typedef enum {
	COVERED_BY_UNDERLAYMENT, COVERED_BY_PANELS, COVERED_BY_CLOSURES, COVERED_BY_RIDGE_CAPS, FINAL_INSPECTION, SITE_STEPS
} SiteStep;
const char *site_step_heading(SiteStep step);

/* One roof area; the first is the whole package and has no case. */
typedef struct {
	const Case *area;
	const char *name;
	const char *parts; /* as submitted, to compare with the labels on the boxes; NULL: none */
	SiteGroup group[SITE_STEPS];
	uint32_t lines;
} SiteArea;

/* What stands above all areas: "Project", "Marrow Creek Depot, ...". */
typedef struct {
	const char *label, *text;
} SiteHead;
enum { SITE_HEADS = 6 };

typedef struct {
	SiteHead head[SITE_HEADS];
	SiteArea *area;
	uint32_t areas;
	const char *open; /* how many items stand open; NULL: none */
	bool broken; /* the file could not be read: nothing else stands here */
} SiteSheet;

SiteSheet site_sheet(const Verdict *verdict, Arena *arena);

#endif
