/* SPDX-License-Identifier: MIT
 * The thinnest margins of a sheet, and what would use each up: one input at a time is raised. A value is printed only if the
 * ratio was worked out at it and at the step beyond.
 */
#include "margins.h"

#include "number.h"

#include <math.h>
#include <string.h>

static const double thin_from = 0.95;

/* Values are tried as they are printed: a thousandth is the finest. */
static double stepped(const Probe *probe, double now, long steps)
{
	return steps == 0 ? now : round((now + (double)steps * probe->step) * 1000) / 1000;
}

/* Halves the steps between one at which it holds and one at which it does not. */
static void narrow(const Trying *trying, UsedUp *by, long high, Tried last)
{
	long low = 0;
	while (high - low > 1) {
		long middle = low + (high - low) / 2;
		Tried tried = try_value(trying, stepped(&trying->probe, by->now, middle));
		if (ratio_holds(&tried)) {
			low = middle;
		} else {
			high = middle;
			last = tried;
		}
	}
	by->is_lost = true;
	by->holds = stepped(&trying->probe, by->now, low);
	by->lost = stepped(&trying->probe, by->now, high);
	by->ratio = last.ratio;
	by->why = last.why;
}

static void raise_number(const Trying *trying, Margin *margin, double now)
{
	const Probe *probe = &trying->probe;
	long high = (long)floor((probe->most - now) / probe->step);
	if (margin->inputs == MOST_USED_UP || high < 1)
		return;
	Tried last = try_value(trying, stepped(probe, now, high));
	if (last.known && number_same(last.ratio, trying->base))
		return;
	UsedUp *by = &margin->by[margin->inputs++];
	*by = (UsedUp){ .what = probe->what, .path = probe->path, .unit = probe->unit, .now = now };
	if (ratio_holds(&last))
		by->holds = stepped(probe, now, high);
	else
		narrow(trying, by, high, last);
}

/* ---- inputs ---- */

static void raise_exposure(Trying *trying, Margin *margin)
{
	static const Probe probe = { "exposure", "wind.exposure", UNIT_one, 1, 0, set_exposure };
	const Word *exposure = &trying->advising->verdict->cases->submittal->wind.exposure;
	const Field *field = field_find(&Wind_record, "exposure", strlen("exposure"));
	if (!is_value(&exposure->given) || margin->inputs == MOST_USED_UP)
		return;
	trying->probe = probe;
	UsedUp by = { .what = probe.what, .path = probe.path, .is_word = true, .word_now = exposure->text };
	bool moves = false;
	size_t length;
	const char *word;
	for (int i = (int)exposure->word + 1; !by.is_lost && (word = word_text(field->words, i, &length)) != NULL; i++) {
		Tried tried = try_value(trying, i);
		moves |= !tried.known || !number_same(tried.ratio, trying->base);
		by.is_lost = !ratio_holds(&tried);
		*(by.is_lost ? &by.word_lost : &by.word_holds) = arena_text(trying->advising->arena, word, length);
		by.ratio = tried.ratio;
		by.why = tried.why;
	}
	if (moves)
		margin->by[margin->inputs++] = by;
}

static void raise_speed(Trying *trying, Margin *margin)
{
	static const Probe probe = { "basic wind speed", "wind.basic_speed", UNIT_mph, 0.1, 300, set_speed };
	const Number *speed = &trying->advising->verdict->cases->submittal->wind.basic_speed_mph;
	trying->probe = probe;
	if (is_value(&speed->given))
		raise_number(trying, margin, speed->value);
}

static void raise_length(Trying *trying, Margin *margin)
{
	Advising *advising = trying->advising;
	const char *path = arena_printf(advising->arena, "roof_areas.%u.panel.length", trying->area - 1);
	Probe probe = { "panel length", path, UNIT_ft, 0.5, 500, set_length };
	const Number *length = &advising->verdict->cases->submittal->roof_areas.of.row[trying->area - 1].panel.length_ft;
	trying->probe = probe;
	if (is_value(&length->given))
		raise_number(trying, margin, length->value);
}

static void raise_spacing_of(Trying *trying, Margin *margin, const ZoneValue *zone)
{
	Advising *advising = trying->advising;
	double step = advising->verdict->cases->criteria->edition.spacing_step_in.value;
	const char *path = arena_printf(advising->arena, "roof_areas.%u.clips.%u.spacing%s%s", trying->area - 1, trying->number,
		zone->zone[0] != '\0' ? "." : "", zone->zone);
	Probe probe = { "clip spacing", path, UNIT_in, step, 120, set_spacing };
	trying->probe = probe;
	raise_number(trying, margin, zone->value);
}

/* The spacing that a zone is judged by is known by its place in the file. */
static void raise_spacing(Trying *trying, Margin *margin)
{
	const SheetLine *line = trying->line;
	const Number *spacing = line->at->kind == KIND_zone ? &((const Zone *)line->at->row)->spacing_in : NULL;
	const RoofArea *area = &trying->advising->verdict->cases->submittal->roof_areas.of.row[trying->area - 1];
	if (spacing == NULL || !is_value(&spacing->given) || spacing->given.place.line == 0)
		return;
	trying->place = spacing->given.place;
	for (uint32_t c = 0; c < area->clips.of.count; c++)
		for (uint32_t z = 0; z < area->clips.of.row[c].spacing_in.count; z++) {
			const ZoneValue *zone = &area->clips.of.row[c].spacing_in.at[z];
			trying->number = c;
			if (is_at_place(&zone->given.place, &trying->place)) {
				raise_spacing_of(trying, margin, zone);
				return;
			}
		}
}

static void raise_factors(Trying *trying, Margin *margin)
{
	Advising *advising = trying->advising;
	const Edition *edition = &advising->verdict->cases->criteria->edition;
	for (uint32_t i = 0; i < edition->safety_factors.of.count && i < MOST_USED_UP; i++) {
		const char *path = arena_printf(advising->arena, "criteria.safety_factors.%u.factor", i);
		Probe probe = { "factor of safety", path, UNIT_one, 0.01, 10, set_factor };
		trying->probe = probe;
		trying->number = i;
		raise_number(trying, margin, edition->safety_factors.of.row[i].factor_one.value);
	}
}

/* ---- all ---- */

/* The number + 1 of the roof area a case lies in. */
static uint32_t area_of(const Cases *cases, const Case *at)
{
	const Case *area = case_outward(at, KIND_roof_area);
	for (uint32_t i = 0; i < cases->of[KIND_roof_area].count; i++)
		if (cases->of[KIND_roof_area].at[i] == area)
			return i + 1;
	return 0;
}

static void raise_inputs(Advising *advising, Margin *margin)
{
	const Cases *cases = advising->verdict->cases;
	Trying trying = { .advising = advising, .line = margin->line, .area = area_of(cases, margin->line->at) };
	if (trying.area == 0 || trying.area > cases->submittal->roof_areas.of.count)
		return;
	trying.base = margin->line->fact->value;
	raise_speed(&trying, margin);
	raise_exposure(&trying, margin);
	raise_spacing(&trying, margin);
	raise_length(&trying, margin);
	raise_factors(&trying, margin);
}

/* The ratio by a straight line between tests is told beside the one that governs; it is no limit of its own. */
static bool is_ratio(FactId id)
{
	const char *name = fact_spec(id)->name;
	size_t length = strlen(name);
	return length >= 5 && strcmp(name + length - 5, "ratio") == 0 && strcmp(name, "straight_line_ratio") != 0;
}

static bool is_within(const SheetLine *line)
{
	return line->fact->value <= 1 || number_same(line->fact->value, 1);
}

/* One ratio of two records in one roof area is one margin: two zones that are laid at one spacing. */
static bool is_same_margin(const SheetLine *a, const SheetLine *b)
{
	return a->id == b->id && case_outward(a->at, KIND_roof_area) == case_outward(b->at, KIND_roof_area)
		&& number_same(a->fact->value, b->fact->value);
}

static bool has_kind(const Sheet *sheet, FactId id)
{
	for (uint32_t i = 0; i < sheet->margins; i++)
		if (sheet->margin[i].line->id == id)
			return true;
	return false;
}

static bool is_kept(Sheet *sheet, const SheetLine *line, bool count)
{
	for (uint32_t i = 0; i < sheet->margins; i++) {
		Margin *margin = &sheet->margin[i];
		if (!is_same_margin(margin->line, line))
			continue;
		if (count && margin->line != line) {
			margin->also = margin->also != NULL ? margin->also : line;
			margin->others++;
		}
		return true;
	}
	return false;
}

/* The greatest ratio that is not kept yet, of a kind that is not kept yet if `new_kind`; of equal ones the first on the sheet. */
static const SheetLine *next_thinnest(Sheet *sheet, bool new_kind)
{
	const SheetLine *found = NULL;
	for (uint32_t i = 0; i < sheet->lines; i++) {
		const SheetLine *line = &sheet->line[i];
		if (!is_ratio(line->id) || line->fact->state != FACT_KNOWN || !is_within(line))
			continue;
		if (is_kept(sheet, line, false) || (new_kind && has_kind(sheet, line->id)))
			continue;
		if (found == NULL || line->fact->value > found->fact->value)
			found = line;
	}
	return found;
}

static void keep_margins(Sheet *sheet)
{
	const SheetLine *line;
	while (sheet->margins < MOST_MARGINS && (line = next_thinnest(sheet, sheet->margins >= THINNEST)) != NULL)
		sheet->margin[sheet->margins++] = (Margin){ .line = line, .thin = line->fact->value >= thin_from };
}

void find_margins(Sheet *sheet, Verdict *verdict, Arena *arena)
{
	Advising advising = { .verdict = verdict, .arena = arena };
	keep_margins(sheet);
	for (uint32_t i = 0; i < sheet->lines; i++) {
		const SheetLine *line = &sheet->line[i];
		if (!is_ratio(line->id) || line->fact->state != FACT_KNOWN)
			continue;
		sheet->ratios++;
		sheet->above += !is_within(line);
		is_kept(sheet, line, true);
	}
	sheet->untried = sheet->margins > 0 && !may_try(&advising);
	for (uint32_t m = 0; m < sheet->margins && !sheet->untried; m++)
		raise_inputs(&advising, &sheet->margin[m]);
}
