/* SPDX-License-Identifier: MIT
 * Counts over what a roof area states: fixed lines, clips that let the panel move.
 */
#include "below.h"
#include "fetch.h"
#include "text.h"

double roof_area_fixed_lines_one(Case *area)
{
	if (fetch_list(area, area, offsetof(RoofArea, fixed_at)) == NULL)
		return 0;
	double count = 0;
	for (Case *line = first_below(area, KIND_fixed_line); line != NULL; line = line->next) {
		const char *where = GIVEN_AT(area, line, FixedLine, line);
		count += !same_text(where, "none");
	}
	return count;
}

double roof_area_floating_clips_one(Case *area)
{
	if (fetch_list(area, area, offsetof(RoofArea, clips)) == NULL)
		return 0;
	double count = 0;
	for (Case *clip = first_below(area, KIND_clip); clip != NULL; clip = clip->next) {
		const char *use = GIVEN_AT(area, clip, Clip, use);
		if (!same_text(use, "running"))
			continue;
		const char *moves = GIVEN_AT(area, clip, Clip, moves);
		count += is_among(moves, "travel;panel slides");
	}
	return count;
}
