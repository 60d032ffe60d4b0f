/* SPDX-License-Identifier: MIT
 * One value of one input, tried: put into a copy of the roof area, which is resolved and computed again.
 */
#include "margins.h"

#include "number.h"

#include <stdio.h>
#include <string.h>

bool ratio_holds(const Tried *tried)
{
	return tried->known && (tried->ratio <= 1 || number_same(tried->ratio, 1));
}

static Case *find_case(const Cases *cases, const Case *like)
{
	for (uint32_t i = 0; i < cases->of[like->kind].count; i++) {
		Case *at = cases->of[like->kind].at[i];
		if (at->twin == like->twin && strcmp(at->name, like->name) == 0)
			return at;
	}
	return NULL;
}

static Tried ratio_in(const Cases *cases, const SheetLine *line)
{
	Case *at = find_case(cases, line->at);
	if (at == NULL)
		return (Tried){ .why = "there is no such record then" };
	const Fact *fact = fact_of(at, line->id);
	if (fact->state == FACT_KNOWN)
		return (Tried){ true, fact->value, NULL };
	return (Tried){ .why = fact->reason != NULL ? fact->reason : "it waits for what is not stated" };
}

Tried try_value(const Trying *trying, double value)
{
	Advising *advising = trying->advising;
	const Cases *cases = advising->verdict->cases;
	ArenaMark mark = arena_mark(advising->arena);
	Copy *copy = copy_submittal(advising, trying->area);
	Criteria *criteria = TAKE(advising->arena, Criteria, 1);
	*criteria = *cases->criteria;
	trying->probe.set(trying, copy, criteria, value);
	Inputs inputs = { .submittal = &copy->submittal, .review = cases->review, .criteria = criteria, .reference = cases->reference,
		.registers = cases->registers, .as_of = cases->as_of };
	Tried tried = ratio_in(resolve(advising->arena, &inputs), trying->line);
	char why[200];
	snprintf(why, sizeof why, "%s", tried.why != NULL ? tried.why : "");
	arena_back(advising->arena, mark);
	if (tried.why != NULL)
		tried.why = arena_text(advising->arena, why, strlen(why));
	return tried;
}

/* ---- inputs ---- */

static void set_number(Number *number, double value)
{
	number->value = value;
	number->given.typed = NULL;
}

void set_speed(const Trying *trying, Copy *copy, Criteria *criteria, double value)
{
	(void)trying;
	(void)criteria;
	set_number(&copy->submittal.wind.basic_speed_mph, value);
}

void set_exposure(const Trying *trying, Copy *copy, Criteria *criteria, double value)
{
	(void)criteria;
	Word *exposure = &copy->submittal.wind.exposure;
	const Field *field = field_find(&Wind_record, "exposure", strlen("exposure"));
	size_t length;
	const char *text = word_text(field->words, (int)value, &length);
	exposure->word = (uint32_t)value;
	exposure->text = arena_text(trying->advising->arena, text, length);
	exposure->given.typed = exposure->text;
}

void set_length(const Trying *trying, Copy *copy, Criteria *criteria, double value)
{
	(void)trying;
	(void)criteria;
	set_number(&copy->submittal.roof_areas.of.row[0].panel.length_ft, value);
}

bool is_at_place(const Place *a, const Place *b)
{
	return a->source == b->source && a->line == b->line && a->column == b->column;
}

void set_spacing(const Trying *trying, Copy *copy, Criteria *criteria, double value)
{
	(void)criteria;
	Arena *arena = trying->advising->arena;
	RoofArea *area = copy->submittal.roof_areas.of.row;
	Clip *clip = TAKE(arena, Clip, area->clips.of.count);
	memcpy(clip, area->clips.of.row, area->clips.of.count * sizeof *clip);
	area->clips.of.row = clip;
	ByZone *spacing = &clip[trying->number].spacing_in;
	ZoneValue *zone = TAKE(arena, ZoneValue, spacing->count);
	memcpy(zone, spacing->at, spacing->count * sizeof *zone);
	for (uint32_t i = 0; i < spacing->count; i++)
		if (is_at_place(&zone[i].given.place, &trying->place)) {
			zone[i].value = value;
			zone[i].given.typed = NULL;
		}
	spacing->at = zone;
}

void set_factor(const Trying *trying, Copy *copy, Criteria *criteria, double value)
{
	(void)copy;
	uint32_t count = criteria->edition.safety_factors.of.count;
	SafetyFactor *factor = TAKE(trying->advising->arena, SafetyFactor, count);
	memcpy(factor, criteria->edition.safety_factors.of.row, count * sizeof *factor);
	set_number(&factor[trying->number].factor_one, value);
	criteria->edition.safety_factors.of.row = factor;
}
