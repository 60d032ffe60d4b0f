/* SPDX-License-Identifier: MIT
 * The warranty asked for against the warranty specified, and how many roof areas it is asked for.
 */
#include "below.h"
#include "fetch.h"
#include "text.h"

double submittal_warranted_areas_one(Case *submittal)
{
	const Cases *all = submittal->all;
	fetch_list(submittal, submittal, offsetof(Submittal, roof_areas));
	uint32_t count = 0;
	for (uint32_t i = 0; i < all->of[KIND_roof_area].count; i++)
		count += GIVEN_AT(submittal, all->of[KIND_roof_area].at[i], RoofArea, warranted);
	return ready(submittal) ? count : 0;
}

static bool has_text(const Texts *texts, const char *text)
{
	for (uint32_t i = 0; i < texts->count; i++)
		if (same_text(texts->at[i].text, text))
			return true;
	return false;
}

double submittal_covers_specified_yes(Case *submittal)
{
	const Texts *asked = GIVEN(submittal, submittal, Submittal, warranty.covers);
	const Texts *specified = GIVEN(submittal, submittal, Submittal, specification.warranty.covers);
	for (uint32_t i = 0; ready(submittal) && i < specified->count; i++) {
		if (has_text(asked, specified->at[i].text))
			continue;
		note(submittal, specified->at[i].text);
		return 0;
	}
	return ready(submittal);
}

/* No limit is the most an owner can have; any other limit must be the one specified, word for word. */
double submittal_cover_limit_fits_yes(Case *submittal)
{
	const char *asked = GIVEN(submittal, submittal, Submittal, warranty.cover_limit);
	const char *specified = GIVEN(submittal, submittal, Submittal, specification.warranty.cover_limit);
	return ready(submittal) && (same_text(asked, "none") || same_text(asked, specified));
}
