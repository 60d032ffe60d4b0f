/* SPDX-License-Identifier: MIT
 * Screws through clips: whether they fit the clip's hole, whether their point drills what lies under it, how long they must be.
 */
#include "below.h"
#include "fetch.h"
#include "formula.h"
#include "number.h"
#include "text.h"

#include <math.h>

/* The fact of the roof area about the clips that a screw holds: running ones for use clip, fixed ones for use fixity. */
static double fetch_of_clips(Case *screw, FactId running, FactId fixed)
{
	const char *use = GIVEN(screw, fastener, Fastener, use);
	if (!ready(screw))
		return 0;
	bool is_clip = same_text(use, "clip");
	if (!is_clip && !same_text(use, "fixity"))
		return SKIP(screw, "it holds no clip");
	FactId id = is_clip ? running : fixed;
	Case *area = fact_case(screw, id);
	double value = fetch_fact(screw, area, id);
	note(screw, fact_of(area, id)->note);
	return value;
}

static double fetch_hole_in(Case *screw)
{
	return fetch_of_clips(screw, OF_roof_area_running_clip_hole_in, OF_roof_area_fixed_clip_hole_in);
}

static double fetch_base_in(Case *screw)
{
	return fetch_of_clips(screw, OF_roof_area_running_clip_thickness_in, OF_roof_area_fixed_clip_thickness_in);
}

/* The sheet of calculations calls the clips by their own names; NULL: as facts.def has it. */
static void tell(Case *screw, const char *of_running, const char *of_fixed)
{
	bool is_fixed = is_word(&((const Fastener *)screw->row)->use, "fixity");
	screw->now->formula = is_fixed ? of_fixed : of_running;
}

double fastener_clip_hole_in(Case *screw)
{
	double hole = fetch_hole_in(screw);
	tell(screw, NULL, "{fixed_clip_hole}");
	return ready(screw) ? hole : 0;
}

/* ---- drilling ---- */

static bool is_wood(const char *support)
{
	return same_text(support, "plywood") || same_text(support, "OSB") || same_text(support, "wood");
}

/* Only the point of a self-drilling screw has to drill. */
static void fetch_drilling(Case *screw)
{
	const char *kind = GIVEN(screw, fastener, Fastener, kind);
	if (ready(screw) && !same_text(kind, "self-drilling screw"))
		SKIP(screw, "only self-drilling screws have a drill point");
}

double fastener_drilled_thickness_in(Case *screw)
{
	double clip = fetch_base_in(screw);
	const char *support = GIVEN(screw, roof_area, RoofArea, support.kind);
	fetch_drilling(screw);
	if (!ready(screw))
		return 0;
	if (is_wood(support))
		return SKIP(screw, "the support is wood");
	if (same_text(support, "concrete"))
		return REFUSE(screw, "no drill point is judged in concrete");
	double steel = GIVEN(screw, roof_area, RoofArea, support.thickness_in);
	tell(screw, NULL, "{fixed_clip_thickness} + {support.thickness}");
	return ready(screw) ? drilled_in(clip, steel) : 0;
}

static const DrillPoint *fetch_drill_point(Case *screw)
{
	fetch_drilling(screw);
	double size = GIVEN(screw, fastener, Fastener, size_in);
	double point = GIVEN(screw, fastener, Fastener, point_one);
	if (!ready(screw))
		return NULL;
	const Reference *reference = screw->all->reference;
	const char *words = screw_size(reference, size);
	for (uint32_t i = 0; words != NULL && i < reference->drill_points.count; i++) {
		const DrillPoint *row = &reference->drill_points.row[i];
		if (same_text(row->size.text, words) && number_same(row->point_one.value, point))
			return row;
	}
	REFUSE(screw, "the table of drill points has no row for this size and point");
	return NULL;
}

double fastener_drill_least_in(Case *screw)
{
	const DrillPoint *row = fetch_drill_point(screw);
	if (row == NULL)
		return 0;
	if (!is_value(&row->least_in.given))
		note(screw, "the table states no least");
	double least = is_value(&row->least_in.given) ? row->least_in.value : 0;
	return CONSTANT(screw, "drill_points.csv", row->size.text, least, row->source.text);
}

double fastener_drill_greatest_in(Case *screw)
{
	const DrillPoint *row = fetch_drill_point(screw);
	return row != NULL ? CONSTANT(screw, "drill_points.csv", row->size.text, row->greatest_in.value, row->source.text) : 0;
}

/* ---- length ---- */

double fastener_length_needed_in(Case *screw)
{
	double clip = fetch_base_in(screw);
	double layers = OF(screw, roof_area_layers_thickness_in);
	const char *support = GIVEN(screw, roof_area, RoofArea, support.kind);
	if (!ready(screw))
		return 0;
	if (same_text(support, "concrete"))
		return REFUSE(screw, "no length is judged in concrete");
	double thickness = GIVEN(screw, roof_area, RoofArea, support.thickness_in);
	double threads = is_wood(support) ? 0 : GIVEN(screw, fastener, Fastener, threads_one);
	if (!ready(screw))
		return 0;
	if (!is_wood(support)) {
		tell(screw, NULL, "{fixed_clip_thickness} + {layers_thickness} + {support.thickness} + 3 / {threads}");
		return length_into_steel_in(clip + layers + thickness, threads);
	}
	tell(screw, "{running_clip_thickness} + {layers_thickness} + min({support.thickness}, 0.75)",
		"{fixed_clip_thickness} + {layers_thickness} + min({support.thickness}, 0.75)");
	return length_into_wood_in(clip + layers, thickness);
}

/* ---- the head ---- */

/* Clips of the use the screw holds; one that states no room is left out. */
double fastener_head_room_in(Case *screw)
{
	const char *use = GIVEN(screw, fastener, Fastener, use);
	Case *area = area_of(screw);
	if (fetch_list(screw, area, offsetof(RoofArea, clips)) == NULL)
		return 0;
	double least = HUGE_VAL;
	for (Case *clip = first_below(area, KIND_clip); clip != NULL; clip = clip->next) {
		bool is_held = same_text(GIVEN_AT(screw, clip, Clip, use), same_text(use, "clip") ? "running" : "fixity");
		double room = is_held ? GIVEN_OR_AT(screw, clip, Clip, head_room_in, HUGE_VAL) : HUGE_VAL;
		if (ready(screw) && room < least)
			note(screw, clip->name);
		least = fmin(least, room);
	}
	if (!ready(screw))
		return 0;
	return isfinite(least) ? least : SKIP(screw, "no clip states its room for a head");
}
