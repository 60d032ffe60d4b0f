/* SPDX-License-Identifier: MIT
 * The project as a whole: salt in its air, and the manuals of details its specification names.
 */
#include "fetch.h"
#include "text.h"

/* FEMA P-499: corrosion is to be reckoned with up to 3,000 ft from salt water. */
static const double salt_air_ft = 3000;

double submittal_salt_air_yes(Case *submittal)
{
	const char *surroundings = GIVEN(submittal, submittal, Submittal, project.surroundings);
	const char *water = GIVEN(submittal, submittal, Submittal, project.salt_water.kind);
	if (!ready(submittal) || same_text(surroundings, "coast"))
		return ready(submittal);
	if (same_text(water, "none"))
		return 0;
	double distance = GIVEN(submittal, submittal, Submittal, project.salt_water.distance_ft);
	return ready(submittal) && distance < salt_air_ft;
}

double submittal_manual_governs_yes(Case *submittal)
{
	Asked asked = ask(submittal, offsetof(Submittal, specification.detail_manuals));
	if (asked.given->said == SAID_NONE) {
		fetch_shown(submittal, asked);
		return 1;
	}
	const Texts *manuals = GIVEN(submittal, submittal, Submittal, specification.detail_manuals);
	const char *governs = GIVEN_OR(submittal, submittal, Submittal, specification.governing_manual, "");
	if (!ready(submittal) || manuals->count < 2)
		return ready(submittal);
	for (uint32_t i = 0; i < manuals->count; i++)
		if (same_text(manuals->at[i].text, governs))
			return 1;
	return 0;
}
