/* SPDX-License-Identifier: MIT
 * What is counted by lengths: underlayment in rolls, sealant by role, closures, openings and what comes with them.
 */
#include "counting.h"

#include "formula.h"
#include "number.h"

#include <string.h>

/* ---- underlayment ---- */

static bool has_roll(const Underlayment *sheet)
{
	return is_value(&sheet->roll_width_in.given) && is_value(&sheet->roll_length_ft.given) && is_value(&sheet->side_lap_in.given) &&
	       is_value(&sheet->end_lap_in.given);
}

static void count_rolls(Counting *counting, Amount *line, const Underlayment *sheet)
{
	double planes, slope;
	if (!has_roll(sheet)) {
		refuse_count(line, "width, length and laps of a roll are not stated");
		return;
	}
	if (!take_number(&counting->row->building.length_ft, "plan length of the building", line, counting->arena) ||
		!take_fact(counting->area, FACT_roof_area_planes, line, &planes, counting->arena) ||
		!take_fact(counting->area, FACT_roof_area_slope_length, line, &slope, counting->arena))
		return;
	Roll roll = { sheet->roll_width_in.value, sheet->roll_length_ft.value * 12, sheet->side_lap_in.value, sheet->end_lap_in.value };
	if (roll.side_lap_in >= roll.roll_width_in || roll.end_lap_in >= roll.roll_length_in) {
		refuse_count(line, "the laps leave nothing of the roll");
		return;
	}
	Sheets sheets = sheets_of(&roll, counting->row->building.length_ft.value * 12, slope * 12);
	line->unit = "rolls";
	line->how = arena_printf(counting->arena, "%g courses of %g ft with laps on %s", sheets.courses,
		sheets.length_in / sheets.courses / 12, planes == 1 ? "one plane" : "each plane");
	double rolls = pieces_to_cover(planes * sheets.length_in, roll.roll_length_in);
	settle(counting, line, planes * sheets.length_in / roll.roll_length_in, rolls);
}

void count_underlayments(Counting *counting)
{
	uint32_t i = 0;
	for (const Case *at; (at = next_of(counting, KIND_underlayment, &i)) != NULL;) {
		const Underlayment *sheet = at->row;
		const char *where = is_value(&sheet->where.given) ? sheet->where.text : "place not stated";
		Amount *line = amount_add(counting, at, "underlayment", where);
		if (strcmp(where, "whole roof") == 0)
			count_rolls(counting, line, sheet);
		else
			refuse_count(line, "how wide these strips lie is not stated");
	}
}

/* ---- sealant ---- */

static bool count_seams(Counting *counting, Amount *line, double *length)
{
	double panels, planes, slope;
	if (!take_fact(counting->area, FACT_roof_area_panels_by_plan, line, &panels, counting->arena) ||
		!take_fact(counting->area, FACT_roof_area_planes, line, &planes, counting->arena) ||
		!take_fact(counting->area, FACT_roof_area_slope_length, line, &slope, counting->arena))
		return false;
	*length = (panels - planes) * slope;
	line->how = "one bead in every seam";
	return true;
}

static bool count_end_laps(Counting *counting, Amount *line, double *length)
{
	double panels;
	const Panel *panel = &counting->row->panel;
	if (!take_fact(counting->area, FACT_roof_area_panels, line, &panels, counting->arena) ||
		!take_number(&panel->width_in, "cover width of the panel", line, counting->arena) ||
		!take_number(&panel->end_laps_one, "end laps in one run", line, counting->arena))
		return false;
	*length = panels * panel->end_laps_one.value * panel->width_in.value / 12;
	line->how = "one bead across every panel at each end lap";
	return true;
}

/* Both faces of every closure of every place where one stands; at a ridge closures stand on both sides. */
static bool count_beds(Counting *counting, Amount *line, double *length)
{
	uint32_t i = 0;
	*length = 0;
	for (const Case *at; (at = next_of(counting, KIND_closure, &i)) != NULL;) {
		const Closure *closure = at->row;
		double run = is_value(&closure->where.given) ? detail_length_ft(counting, closure->where.text) : -1;
		if (run < 0) {
			refuse_count(line, "the length of a detail with closures is not stated");
			return false;
		}
		*length += (strcmp(closure->where.text, "ridge") == 0 ? 4 : 2) * run;
	}
	line->how = "both faces of the closures, along the details they stand in, of a ridge on both sides";
	return true;
}

static bool count_ridge(Counting *counting, Amount *line, double *length)
{
	double run = detail_length_ft(counting, "ridge");
	if (run < 0)
		refuse_count(line, "the length of the ridge is not among the details");
	*length = 2 * run;
	line->how = "both sides of the ridge";
	return run >= 0;
}

static bool is_opening(const Penetration *opening, bool boot)
{
	bool is_boot = is_value(&opening->treatment.given) && strcmp(opening->treatment.text, "boot") == 0;
	return is_boot == boot;
}

/* Around curbs; around pipes, taken as squares on the safe side. */
static bool count_flanges(Counting *counting, Amount *line, double *length, bool boot)
{
	uint32_t i = 0, count = 0;
	*length = 0;
	for (const Case *at; (at = next_of(counting, KIND_penetration, &i)) != NULL;) {
		const Penetration *opening = at->row;
		if (!is_opening(opening, boot))
			continue;
		if (!take_number(&opening->across_in, "size across the slope of an opening", line, counting->arena) ||
			!take_number(&opening->along_in, "size along the slope of an opening", line, counting->arena))
			return false;
		*length += 2 * (opening->across_in.value + opening->along_in.value) / 12;
		count++;
	}
	line->how = arena_printf(counting->arena, "around %u %s", count, boot ? count == 1 ? "boot, as a square" : "boots, as squares"
									       : count == 1 ? "curb" : "curbs");
	return true;
}

static bool count_bead(Counting *counting, Amount *line, double *length)
{
	if (strcmp(line->where, "seam") == 0)
		return count_seams(counting, line, length);
	if (strcmp(line->where, "end lap") == 0)
		return count_end_laps(counting, line, length);
	if (strcmp(line->where, "closure") == 0)
		return count_beds(counting, line, length);
	if (strcmp(line->where, "ridge") == 0)
		return count_ridge(counting, line, length);
	if (strcmp(line->where, "curb flange") == 0 || strcmp(line->where, "boot flange") == 0)
		return count_flanges(counting, line, length, line->where[0] == 'b');
	refuse_count(line, "the lengths of these joints are not stated");
	return false;
}

void count_sealants(Counting *counting)
{
	uint32_t i = 0;
	for (const Case *at; (at = next_of(counting, KIND_sealant, &i)) != NULL;) {
		const Sealant *sealant = at->row;
		const char *where = is_value(&sealant->where.given) ? sealant->where.text : "place not stated";
		Amount *line = amount_add(counting, at, "sealant", where);
		double length = 0;
		line->unit = "ft";
		if (count_bead(counting, line, &length))
			settle(counting, line, length, length);
	}
}

/* ---- closures ---- */

/* At eaves and ridges one for each panel; elsewhere one for each panel's width of the detail. */
static void count_closure(Counting *counting, Amount *line)
{
	double panels, planes, run = detail_length_ft(counting, line->where);
	bool at_ends = strcmp(line->where, "eave") == 0 || strcmp(line->where, "ridge") == 0;
	line->unit = "pieces";
	if (at_ends && take_fact(counting->area, FACT_roof_area_panels_by_plan, line, &panels, counting->arena) &&
		take_fact(counting->area, FACT_roof_area_planes, line, &planes, counting->arena)) {
		line->how = "one for each panel";
		settle(counting, line, panels, panels);
		return;
	}
	if (at_ends)
		return;
	if (run < 0) {
		refuse_count(line, "the length of this place is not among the details");
		return;
	}
	if (!take_number(&counting->row->panel.width_in, "cover width of the panel", line, counting->arena))
		return;
	double pieces = pieces_to_cover(run * 12, counting->row->panel.width_in.value);
	line->how = arena_printf(counting->arena, "one for each panel's width of %s ft", number_print(counting->arena, run, 2));
	settle(counting, line, pieces, pieces);
}

void count_closures(Counting *counting)
{
	uint32_t i = 0;
	for (const Case *at; (at = next_of(counting, KIND_closure, &i)) != NULL;) {
		const Closure *closure = at->row;
		const char *where = is_value(&closure->where.given) ? closure->where.text : "place not stated";
		count_closure(counting, amount_add(counting, at, "closure", where));
	}
}

/* ---- openings, trim, rivets, accessories ---- */

static void count_details(Counting *counting)
{
	uint32_t i = 0;
	for (const Case *at; (at = next_of(counting, KIND_detail, &i)) != NULL;) {
		const Detail *detail = at->row;
		Amount *line = amount_add(counting, NULL, "detail", is_value(&detail->place.given) ? detail->place.text : NULL);
		line->item = is_value(&detail->number.given) ? detail->number.text : NULL;
		line->unit = "ft";
		line->how = "as stated";
		if (take_number(&detail->length_ft, "its length", line, counting->arena))
			settle(counting, line, detail->length_ft.value, detail->length_ft.value);
	}
}

void count_openings(Counting *counting)
{
	uint32_t i = 0;
	for (const Case *at; (at = next_of(counting, KIND_penetration, &i)) != NULL;) {
		Amount *line = amount_add(counting, at, "penetration", ((const Penetration *)at->row)->name.text);
		line->unit = "pieces";
		line->how = "one each";
		settle(counting, line, 1, 1);
	}
	count_details(counting);
	i = 0;
	for (const Case *at; (at = next_of(counting, KIND_rivet, &i)) != NULL;) {
		const Rivet *rivet = at->row;
		refuse_count(amount_add(counting, at, "rivet", is_value(&rivet->where.given) ? rivet->where.text : NULL),
			"how far apart these stand is not stated");
	}
	i = 0;
	for (const Case *at; (at = next_of(counting, KIND_accessory, &i)) != NULL;) {
		const Accessory *accessory = at->row;
		refuse_count(amount_add(counting, at, "accessory", is_value(&accessory->kind.given) ? accessory->kind.text : NULL),
			"how many there are is not stated");
	}
}
