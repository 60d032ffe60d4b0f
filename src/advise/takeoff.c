/* SPDX-License-Identifier: MIT
 * The takeoff: panels, clips and screws of each roof area, then what counting.c counts by length. It counts what was submitted
 * and decides nothing; what cannot be counted says why.
 */
#include "counting.h"

#include "formula.h"
#include "number.h"
#include "pipeline.h"

#include <string.h>

/* ---- panels ---- */

static void count_plane_area(Counting *counting)
{
	Amount *area = amount_add(counting, NULL, "roof surface", NULL);
	double planes, length, feet = counting->row->building.length_ft.value;
	if (!take_number(&counting->row->building.length_ft, "plan length of the building", area, counting->arena) ||
		!take_fact(counting->area, FACT_roof_area_planes, area, &planes, counting->arena) ||
		!take_fact(counting->area, FACT_roof_area_slope_length, area, &length, counting->arena))
		return;
	area->unit = "sq ft";
	area->how = arena_printf(counting->arena, "%g x %s ft x %s ft along the slope; %.2f squares", planes,
		number_print(counting->arena, feet, 2), number_print(counting->arena, length, 2), planes * feet * length / 100);
	settle(counting, area, planes * feet * length, planes * feet * length);
}

static const Case *panel_of(const Counting *counting)
{
	uint32_t i = 0;
	return next_of(counting, KIND_panel, &i);
}

static void count_panel(Counting *counting, FactId id, const char *where, const char *unit)
{
	bool scheduled = counting->row->panel_schedule.of.count > 0;
	Amount *amount = amount_add(counting, panel_of(counting), "panel", where);
	double value;
	if (!take_fact(counting->area, id, amount, &value, counting->arena))
		return;
	amount->unit = unit;
	amount->again = id != FACT_roof_area_panels;
	amount->how = scheduled ? "all lengths of the panel schedule" : "panels that cover the eave, on every plane";
	settle(counting, amount, value, value);
}

static void count_coil_weight(Counting *counting, const char *where)
{
	Amount *amount = amount_add(counting, panel_of(counting), "panel", arena_printf(counting->arena, "%s, weight", where));
	double value, weight;
	if (!take_fact(counting->area, FACT_roof_area_coil_weight, amount, &value, counting->arena) ||
		!take_fact(counting->area, FACT_roof_area_metal_weight, amount, &weight, counting->arena))
		return;
	amount->unit = "lb";
	amount->again = true;
	static const char *const known[] = { "read", "second-hand", "from memory", "common practice" };
	amount->how = arena_printf(counting->arena, "%s of %s psf an inch thick (%s), without the coating",
		counting->row->panel.metal.text, number_shortest(counting->arena, weight),
		known[fact_of(counting->area, FACT_roof_area_metal_weight)->known_by]);
	settle(counting, amount, value, value);
}

/* Panels formed from coil take as much of it as they are long. */
static void count_panels(Counting *counting)
{
	count_panel(counting, FACT_roof_area_panels, NULL, "pieces");
	count_panel(counting, FACT_roof_area_panel_feet, "length", "ft");
	const Number *coil = &counting->row->panel.coil_width_in;
	if (!is_value(&coil->given))
		return;
	const char *where = arena_printf(counting->arena, "coil %s in wide", number_shortest(counting->arena, coil->value));
	count_panel(counting, FACT_roof_area_panel_feet, where, "ft");
	count_coil_weight(counting, where);
}

/* Each length of the schedule: the list to cut by. */
static void count_cuts(Counting *counting)
{
	for (uint32_t i = 0; i < counting->row->panel_schedule.of.count; i++) {
		const PanelRun *run = &counting->row->panel_schedule.of.row[i];
		if (!is_value(&run->count_one.given) || !is_value(&run->length_ft.given))
			continue;
		const char *length = number_shortest(counting->arena, run->length_ft.value);
		Amount *cut = amount_add(counting, panel_of(counting), "panel", arena_printf(counting->arena, "cut to %s ft", length));
		cut->unit = "pieces";
		cut->how = "panel schedule";
		cut->again = true;
		settle(counting, cut, run->count_one.value, run->count_one.value);
	}
}

/* ---- clips ---- */

static bool is_use(const Word *use, const char *word)
{
	return is_value(&use->given) && strcmp(use->text, word) == 0;
}

static const Case *running_clip(const Counting *counting, uint32_t *count)
{
	const Case *found = NULL;
	uint32_t i = 0;
	*count = 0;
	for (const Case *clip; (clip = next_of(counting, KIND_clip, &i)) != NULL;)
		if (is_use(&((const Clip *)clip->row)->use, "running")) {
			found = clip;
			(*count)++;
		}
	return found;
}

static void count_zone(Counting *counting, const Case *clip, Case *zone)
{
	const ZoneHere *here = zone->row;
	Amount *line = amount_add(counting, clip, "clip", arena_printf(counting->arena, "zone %s", here->record.name.text));
	double exact = 0, laid = 0;
	if (!take_fact(zone, FACT_zone_clips, line, &exact, counting->arena) ||
		!take_fact(zone, FACT_zone_clips_laid, line, &laid, counting->arena)) {
		counting->running = -1;
		return;
	}
	line->unit = "pieces";
	line->how = arena_printf(counting->arena, "along each seam at %s in",
		number_shortest(counting->arena, here->record.spacing_in.value));
	settle(counting, line, exact, laid);
	counting->exact += exact;
	if (counting->running >= 0)
		counting->running += line->laid;
}

static void count_running(Counting *counting)
{
	uint32_t clips, zones = 0, i = 0;
	const Case *clip = running_clip(counting, &clips);
	counting->running = counting->exact = 0;
	for (const Case *zone; clips == 1 && (zone = next_of(counting, KIND_zone, &i)) != NULL; zones++)
		count_zone(counting, clip, (Case *)zone);
	if (zones > 0)
		return;
	counting->running = -1;
	refuse_count(amount_add(counting, clip, "clip", "running"), clips > 1
		? "several running clips are named, and not which stands where"
		: "no running clip with its spacing is stated");
}

/* Fixed clips stand along one line on every plane, in the seams that come at their spacing: at the rakes are none. */
static void count_fixed(Counting *counting)
{
	uint32_t i = 0;
	counting->fixed = 0;
	for (const Case *at; (at = next_of(counting, KIND_clip, &i)) != NULL;) {
		const Clip *clip = at->row;
		if (!is_use(&clip->use, "fixity"))
			continue;
		Amount *line = amount_add(counting, at, "clip", "fixed line");
		double planes;
		const ByZone *spacing = &clip->spacing_in;
		bool one = is_value(&spacing->given) && spacing->count == 1 && is_value(&spacing->at[0].given);
		if (!one)
			refuse_count(line, "its spacing along the fixed line is not stated as one value");
		if (!one || !take_fact(counting->area, FACT_roof_area_planes, line, &planes, counting->arena) ||
			!take_number(&counting->row->building.length_ft, "plan length of the building", line, counting->arena)) {
			counting->fixed = -1;
			continue;
		}
		double length = counting->row->building.length_ft.value * 12;
		double count = planes * (pieces_to_cover(length, spacing->at[0].value) - 1);
		line->unit = "pieces";
		line->how = arena_printf(counting->arena, "at %s in along %s line of %s ft, none at the rakes",
			number_shortest(counting->arena, spacing->at[0].value), planes == 1 ? "one" : "each",
			number_shortest(counting->arena, length / 12));
		settle(counting, line, count, count);
		counting->fixed += counting->fixed >= 0 ? count : 0;
	}
}

/* ---- fasteners ---- */

static void count_fastener(Counting *counting, const Case *at)
{
	const Fastener *fastener = at->row;
	const char *use = is_value(&fastener->use.given) ? fastener->use.text : "use not stated";
	Amount *line = amount_add(counting, at, "fastener", use);
	bool running = is_use(&fastener->use, "clip"), fixed = is_use(&fastener->use, "fixity");
	double clips = running ? counting->running : counting->fixed;
	if (!running && !fixed)
		refuse_count(line, "how far apart these stand is not stated");
	else if (clips < 0)
		refuse_count(line, "the clips they hold could not be counted");
	else if (take_number(&fastener->per_one, "number in each clip", line, counting->arena)) {
		line->unit = "pieces";
		line->how = arena_printf(counting->arena, "%s in each of %s clips", number_shortest(counting->arena, fastener->per_one.value),
			number_shortest(counting->arena, clips));
		double exact = running ? counting->exact : clips;
		settle(counting, line, fastener->per_one.value * exact, fastener->per_one.value * clips);
	}
}

static void count_fasteners(Counting *counting)
{
	uint32_t i = 0;
	for (const Case *at; (at = next_of(counting, KIND_fastener, &i)) != NULL;)
		count_fastener(counting, at);
}

/* ---- all ---- */

static void count_area(Takeoff *takeoff, Case *area, Arena *arena)
{
	Counting counting = { .takeoff = takeoff, .arena = arena, .area = area, .row = area->row };
	count_plane_area(&counting);
	count_panels(&counting);
	count_cuts(&counting);
	count_running(&counting);
	count_fixed(&counting);
	count_fasteners(&counting);
	count_underlayments(&counting);
	count_sealants(&counting);
	count_closures(&counting);
	count_openings(&counting);
}

Takeoff *take_off(const Verdict *verdict, Arena *arena)
{
	Takeoff *takeoff = TAKE(arena, Takeoff, 1);
	takeoff->verdict = verdict;
	const Cases *cases = verdict->cases;
	for (uint32_t i = 0; cases->criteria != NULL && i < cases->of[KIND_roof_area].count; i++)
		count_area(takeoff, cases->of[KIND_roof_area].at[i], arena);
	add_up(takeoff, arena);
	for (uint32_t i = 0; i < takeoff->amounts; i++)
		takeoff->counted += takeoff->amount[i].state == COUNTED;
	return takeoff;
}
