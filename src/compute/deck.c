/* SPDX-License-Identifier: MIT
 * The deck under the clips: whether its own fasteners are drawn, and whether pull tests in an existing one carry the clips.
 */
#include "below.h"
#include "by_zone.h"
#include "fetch.h"
#include "text.h"

/* Nothing drawn at all is not shown anywhere. */
double zone_deck_attachment_shown_yes(Case *zone)
{
	Asked asked = ask(outward(zone, KIND_roof_area), offsetof(RoofArea, support.attachment_in));
	if (fetch_silent(zone, asked))
		return 0;
	const ByZone *attachment = fetch_zones(zone, asked);
	return ready(zone) && names_zone(attachment, zone->row);
}

/* A name that is not known yet is asked for; none at all is none. */
double support_acceptor_named_yes(Case *support)
{
	Asked asked = ask(support, offsetof(Support, accepted_by));
	if (fetch_silent(support, asked) || !fetch_said(support, asked))
		return 0;
	fetch_shown(support, asked);
	return 1;
}

double zone_pull_ratio_one(Case *zone)
{
	double load = OF(zone, zone_clip_load_lb);
	double lowest = GIVEN(zone, roof_area, RoofArea, support.pull_lowest_lb);
	Case *area = area_of(zone);
	if (fetch_list(zone, area, offsetof(RoofArea, fasteners)) == NULL)
		return 0;
	double greatest = 0;
	for (Case *screw = first_below(area, KIND_fastener); screw != NULL; screw = screw->next) {
		if (!same_text(GIVEN_AT(zone, screw, Fastener, use), "clip"))
			continue;
		double factor = OF_AT(zone, screw, fastener_test_factor_one);
		double count = GIVEN_AT(zone, screw, Fastener, per_one);
		double ratio = ready(zone) ? load * factor / (count * lowest) : 0;
		if (ratio > greatest)
			note(zone, arena_printf(zone->all->arena, "%.0f lb a clip with a factor of %.2f, on %.0f of them", load, factor, count));
		greatest = ratio > greatest ? ratio : greatest;
	}
	return ready(zone) ? greatest : 0;
}
