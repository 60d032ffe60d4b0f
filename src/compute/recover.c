/* SPDX-License-Identifier: MIT
 * Roofs laid over old ones: the sub-purlins, at which alone a clip can stand.
 */
#include "by_zone.h"
#include "fetch.h"

#include <math.h>

static void take_widest(void *user, const ZoneValue *value)
{
	double *widest = user;
	if (is_value(&value->given))
		*widest = fmax(*widest, value->value);
}

double zone_sub_purlin_spacing_in(Case *zone)
{
	const ByZone *schedule = GIVEN(zone, roof_area, RoofArea, recover.sub_purlin_spacing_in);
	double widest = 0;
	if (ready(zone) && schedule->count <= MOST_VALUES)
		each_value(schedule, zone->row, take_widest, &widest);
	if (ready(zone) && widest <= 0)
		return REFUSE(zone, "the spacing of the sub-purlins cannot be read");
	return widest;
}
