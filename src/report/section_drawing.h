/* SPDX-License-Identifier: MIT
 * The section while it is drawn: heights of what lies on the support, and what the leaders point at.
 */
#ifndef REPORT_SECTION_DRAWING_H
#define REPORT_SECTION_DRAWING_H

#include "drawn.h"
#include "svg.h"

enum { MOST_LEADERS = 28, MOST_LAYERS = 10, MOST_SHEETS = 4 };

/* A part that a leader points at. */
typedef struct {
	At at;
	const Case *part; /* NULL: none is submitted */
	const char *title, *more, *verdict;
} Leader;

typedef struct {
	Svg svg;
	const Sight *sight;
	const DrawnArea *area;
	const RoofArea *row;
	double support; /* where the top of the support lies */
	double top; /* of the layers and underlayments on it */
	Leader leader[MOST_LEADERS];
	int leaders;
} SectionSheet;

/* Left and right end of the section, and where its three seams stand. */
#define SECTION_LEFT 14.0
#define SECTION_RIGHT 282.0
enum { SEAMS = 3 };
double seam_at(int seam);

/* Heights of the layers and sheets together. */
double build_up_height(const DrawnArea *area);
enum { PAN_HEIGHT = 12, RIB_HEIGHT = 44, SUPPORT_HEIGHT = 46 };

void draw_support(SectionSheet *section);
void draw_build_up(SectionSheet *section);
void draw_clips(SectionSheet *section);
void draw_panel(SectionSheet *section);

/* A leader to a part: its kind and item, and more about it. */
void add_leader(SectionSheet *section, At at, const Case *part, const char *more);

/* A measure as the submittal writes it, else in inches. */
const char *inches_text(const SectionSheet *section, const Number *number);

#endif
