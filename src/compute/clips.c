/* SPDX-License-Identifier: MIT
 * What screws have to do with: the clips of a roof area, by their use, and the layers under them.
 */
#include "below.h"
#include "fetch.h"
#include "text.h"

#include <math.h>

/* The least or the greatest of a number over the clips of one use. A clip of which the use is not said may be among them. */
typedef struct {
	const char *use;
	uint32_t offset;
	bool is_least;
} Wanted;

static bool is_beyond(const Wanted *wanted, double value, double bound)
{
	return wanted->is_least ? value < bound : value > bound;
}

static double over_clips(Case *area, const Wanted *wanted)
{
	if (fetch_list(area, area, offsetof(RoofArea, clips)) == NULL)
		return 0;
	const Case *found = NULL;
	double bound = 0;
	for (Case *clip = first_below(area, KIND_clip); clip != NULL; clip = clip->next) {
		if (!same_text(GIVEN_AT(area, clip, Clip, use), wanted->use))
			continue;
		double value = fetch_number(area, ask(clip, wanted->offset));
		if (found == NULL || is_beyond(wanted, value, bound)) {
			bound = value;
			found = clip;
		}
	}
	if (!ready(area))
		return 0;
	if (found == NULL)
		return SKIP(area, "there is no such clip here");
	note(area, found->name);
	return bound;
}

double roof_area_running_clip_hole_in(Case *area)
{
	return over_clips(area, &(Wanted){ "running", offsetof(Clip, hole_in), true });
}

double roof_area_running_clip_thickness_in(Case *area)
{
	return over_clips(area, &(Wanted){ "running", offsetof(Clip, thickness_in), false });
}

double roof_area_fixed_clip_hole_in(Case *area)
{
	return over_clips(area, &(Wanted){ "fixity", offsetof(Clip, hole_in), true });
}

double roof_area_fixed_clip_thickness_in(Case *area)
{
	return over_clips(area, &(Wanted){ "fixity", offsetof(Clip, thickness_in), false });
}

double roof_area_running_clip_thinnest_in(Case *area)
{
	return over_clips(area, &(Wanted){ "running", offsetof(Clip, thickness_in), true });
}

/* A layer to which no thickness applies adds none. */
double roof_area_layers_thickness_in(Case *area)
{
	if (fetch_list(area, area, offsetof(RoofArea, build_up)) == NULL)
		return 0;
	double thickness = 0;
	for (Case *layer = first_below(area, KIND_layer); layer != NULL; layer = layer->next) {
		Asked asked = ask(layer, offsetof(Layer, thickness_in));
		if (asked.given->said != SAID_NOT_APPLICABLE)
			thickness += fetch_number(area, asked);
	}
	return thickness;
}

double roof_area_insulation_layers_one(Case *area)
{
	if (fetch_list(area, area, offsetof(RoofArea, build_up)) == NULL)
		return 0;
	double count = 0;
	for (Case *layer = first_below(area, KIND_layer); layer != NULL; layer = layer->next)
		count += same_text(GIVEN_AT(area, layer, Layer, layer), "insulation");
	return count;
}

/* ---- how a clip is set ---- */

/* A tab of which nothing is said is set in the middle. */
double clip_growth_room_in(Case *clip)
{
	double travel = GIVEN(clip, clip, Clip, travel_in);
	double set = GIVEN_OR(clip, clip, Clip, room_to_grow_in, -1);
	if (!ready(clip))
		return 0;
	clip->now->formula = set >= 0 ? "min({room_to_grow}, {travel})" : "{travel} / 2";
	return set >= 0 ? fmin(set, travel) : travel / 2;
}

double clip_shrink_room_in(Case *clip)
{
	double travel = GIVEN(clip, clip, Clip, travel_in);
	double growth = OF(clip, clip_growth_room_in);
	return ready(clip) ? travel - growth : 0;
}

double clip_widest_spacing_in(Case *clip)
{
	const ByZone *spacing = GIVEN_AT(clip, clip, Clip, spacing_in);
	double widest = 0;
	for (uint32_t i = 0; i < spacing->count; i++)
		widest = fmax(widest, spacing->at[i].value);
	return widest;
}

/* ---- at the eave ---- */

/* What the listings named for the area state of their own, besides the criteria. */
double roof_area_first_clip_limit_in(Case *area)
{
	const Number *stated = &area->all->criteria->edition.first_clip_in;
	double limit = CONSTANT(area, "criteria.yaml", "first_clip", stated->value, NULL);
	if (fetch_list(area, area, offsetof(RoofArea, tests)) == NULL)
		return 0;
	for (const Case *test = first_below(area, KIND_test); test != NULL; test = test->next) {
		const Listing *row = test->listed;
		if (row == NULL || !is_value(&row->tested.first_clip_in.given) || row->tested.first_clip_in.value >= limit)
			continue;
		limit = CONSTANT(area, "listings.csv", row->listing.text, row->tested.first_clip_in.value, NULL);
		note(area, row->listing.text);
	}
	return ready(area) ? limit : 0;
}
