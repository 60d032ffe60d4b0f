/* SPDX-License-Identifier: MIT
 * How many clips and screws a roof needs at least, by its zones and spacings: a check of invoices, no takeoff. What goes to fixed
 * lines, ends and openings comes on top.
 */
#include "below.h"
#include "fetch.h"
#include "formula.h"
#include "ledger.h"
#include "parts.h"
#include "text.h"

#include <math.h>

/* Surface by spacing, which counting along each seam would only exceed: each seam has one clip more, at the eave. Zones whose
 * plan is not drawn are counted as one surface at the widest spacing, which errs to too few. */
typedef struct {
	double slope_in_12, panel_in;
} Laid;

static double fetch_on_zones(Case *area, const Laid *laid)
{
	double count = 0;
	for (Case *zone = first_below(area, KIND_zone); zone != NULL; zone = zone->next) {
		double plan = OF_AT(area, zone, zone_plan_area_sq_ft), spacing = GIVEN_AT(area, zone, Zone, spacing_in);
		if (ready(area))
			count += clips_on_surface(roof_surface_sq_ft(plan, laid->slope_in_12), laid->panel_in, spacing);
	}
	return ready(area) ? floor(count) : 0;
}

static double fetch_on_surface(Case *area, const Laid *laid)
{
	double length = GIVEN(area, roof_area, RoofArea, building.length_ft);
	double width = GIVEN(area, roof_area, RoofArea, building.width_ft);
	double widest = 0;
	for (Case *zone = first_below(area, KIND_zone); zone != NULL; zone = zone->next)
		widest = fmax(widest, GIVEN_AT(area, zone, Zone, spacing_in));
	if (ready(area) && widest <= 0)
		return REFUSE(area, "no clip spacing is known");
	if (!ready(area))
		return 0;
	return floor(clips_on_surface(roof_surface_sq_ft(length * width, laid->slope_in_12), laid->panel_in, widest));
}

static bool are_zones_drawn(Case *area)
{
	Case *zone = first_below(area, KIND_zone);
	bool any = zone != NULL;
	for (; zone != NULL; zone = zone->next)
		any &= fact_of(zone, FACT_zone_plan_area)->state != FACT_REFUSED;
	return any;
}

double roof_area_clips_needed_one(Case *area)
{
	Laid laid = {
		.slope_in_12 = GIVEN(area, roof_area, RoofArea, building.slope_in_12),
		.panel_in = GIVEN(area, roof_area, RoofArea, panel.width_in),
	};
	fetch_list(area, area, offsetof(RoofArea, clips));
	if (!ready(area))
		return 0;
	return are_zones_drawn(area) ? fetch_on_zones(area, &laid) : fetch_on_surface(area, &laid);
}

double roof_area_running_clips_one(Case *area)
{
	if (fetch_list(area, area, offsetof(RoofArea, clips)) == NULL)
		return 0;
	double count = 0;
	for (Case *clip = first_below(area, KIND_clip); clip != NULL; clip = clip->next)
		count += same_text(GIVEN_AT(area, clip, Clip, use), "running");
	return ready(area) ? count : 0;
}

/* Which of two running clips stands where is not told by the zones. */
double clip_pieces_here_one(Case *clip)
{
	double kinds = OF(clip, roof_area_running_clips_one);
	if (ready(clip) && kinds > 1)
		return SKIP(clip, "several running clips share this roof area");
	return OF(clip, roof_area_clips_needed_one);
}

double fastener_pieces_here_one(Case *screw)
{
	double per = GIVEN(screw, fastener, Fastener, per_one);
	double clips = OF(screw, roof_area_clips_needed_one);
	return ready(screw) ? per * clips : 0;
}

/* The sum over all uses of an item stands with its first one. */
static double sum_of_item(Case *part, FactId here, const char *counted)
{
	const char *item = GIVEN_AT(part, part, Panel, item), *use = fetch_place(part);
	if (!ready(part))
		return 0;
	if (!same_text(use, counted))
		return SKIP(part, "only running clips and the screws through them are counted");
	const Entry *entry = entry_of(part, item);
	if (entry->users == 0 || entry->user[0] != part)
		return SKIP(part, "it is counted with the first of this item");
	double sum = 0;
	for (uint32_t i = 0; i < entry->users; i++)
		sum += has_fact(entry->user[i], here) ? fetch_fact(part, entry->user[i], here) : 0;
	return sum;
}

double clip_pieces_needed_one(Case *clip)
{
	return sum_of_item(clip, FACT_clip_pieces_here, "running");
}

double fastener_pieces_needed_one(Case *screw)
{
	return sum_of_item(screw, FACT_fastener_pieces_here, "clip");
}

static double least_of(Case *part, double needed)
{
	double tolerance = part->all->criteria->edition.quantity_tolerance_percent.value;
	CONSTANT(part, "criteria.yaml", "quantity_tolerance", tolerance, NULL);
	return needed * (1 - tolerance / 100);
}

double clip_pieces_least_one(Case *clip)
{
	return least_of(clip, OF(clip, clip_pieces_needed_one));
}

double fastener_pieces_least_one(Case *screw)
{
	return least_of(screw, OF(screw, fastener_pieces_needed_one));
}
