/* SPDX-License-Identifier: MIT
 * What screws have to do with: the clips of a roof area, by their use, and the layers under them.
 */
#include "below.h"
#include "fetch.h"
#include "text.h"

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
