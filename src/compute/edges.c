/* SPDX-License-Identifier: MIT
 * Where on the roof: whether a zone lies at an edge, and the uplift where something stands on the roof.
 */
#include "below.h"
#include "fetch.h"
#include "text.h"

#include <math.h>

static const char in_the_field[] = "field; interior";

/* A zone no figure tells the places of goes by its name; a name that is no place counts as an edge. */
double zone_is_edge_yes(Case *zone)
{
	const Zone *row = zone->row;
	if (!is_value(&row->places.given))
		return !is_among(GIVEN(zone, zone, Zone, name), in_the_field);
	const char *joined = GIVEN(zone, zone, Zone, places);
	for (const char *place = next_place(zone->all->arena, &joined); place != NULL; place = next_place(zone->all->arena, &joined))
		if (!is_among(place, in_the_field))
			return 1;
	return 0;
}

static bool is_in(const Case *zone, const char *name)
{
	const Zone *row = zone->row;
	const char *words = zone_words(zone->all->arena, name);
	return same_text(row->name.text, words) || same_text(row->name.text, "all zones") ||
	       (is_value(&row->places.given) && is_among(words, row->places.text));
}

/* The greatest uplift of the zones it may stand in: those of its name, or all. */
static double uplift_at(Case *fact, uint32_t in_zone)
{
	Case *area = area_of(fact);
	const char *name = fetch_text_or(fact, ask(fact, in_zone), NULL);
	if (fetch_list(fact, area, offsetof(RoofArea, clips)) == NULL || !ready(fact))
		return 0;
	const Case *worst = NULL;
	double greatest = 0;
	for (Case *zone = first_below(area, KIND_zone); zone != NULL; zone = zone->next) {
		if (name != NULL && !is_in(zone, name))
			continue;
		double uplift = OF_AT(fact, zone, zone_roof_uplift_psf);
		worst = worst == NULL || uplift > greatest ? zone : worst;
		greatest = fmax(greatest, uplift);
	}
	if (!ready(fact))
		return 0;
	if (first_below(area, KIND_zone) == NULL)
		return SKIP(fact, "no clips are spaced here, so no zones are laid out");
	if (worst == NULL)
		return REFUSE(fact, "no zone of this roof area has the name given");
	note(fact, worst->name);
	return greatest;
}

double accessory_zone_uplift_psf(Case *accessory)
{
	return uplift_at(accessory, offsetof(Accessory, in_zone));
}

double penetration_zone_uplift_psf(Case *penetration)
{
	return uplift_at(penetration, offsetof(Penetration, in_zone));
}

double detail_zone_uplift_psf(Case *detail)
{
	return uplift_at(detail, offsetof(Detail, in_zone));
}
