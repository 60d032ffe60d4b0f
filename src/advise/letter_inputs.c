/* SPDX-License-Identifier: MIT
 * Which inputs give the figures of a letter that differs from the computed ones: edition, exposure, enclosure, height, area and
 * load level, one or two of them changed in a copy, so that the engineer is asked about what he did.
 */
#include "advising.h"
#include "facts.h"
#include "number.h"

#include <math.h>
#include <string.h>

/* Above this other figures hold. */
enum { LOW_RISE_FT = 60 };

enum { INPUTS = 7, MOST_CHOICES = 4, MOST_HITS = 6 };
typedef enum { EDITION, EXPOSURE, ENCLOSURE, HEIGHT, FIGURES, AREA, LEVEL } Input;

typedef struct {
	const char *word;
	double number;
} Choice;

/* What each input could be but is not. */
typedef struct {
	Advising *advising;
	const Case *zone; /* the item's */
	const Case *letter;
	uint32_t area;
	double width_in;
	Choice choice[INPUTS][MOST_CHOICES];
	uint32_t choices[INPUTS];
	bool is_strength; /* the letter's level */
} Guessing;

/* A number of a choice for each input, from 1; 0: as submitted. */
typedef struct {
	uint32_t of[INPUTS];
} Guess;

/* ---- choices ---- */

static void offer(Guessing *g, Input input, const char *word, double number)
{
	if (g->choices[input] < MOST_CHOICES)
		g->choice[input][g->choices[input]++] = (Choice){ word, number };
}

static void offer_words(Guessing *g, Input input, const Word *now, const char *const *word, size_t count)
{
	for (size_t i = 0; is_value(&now->given) && i < count; i++)
		if (!is_word(now, word[i]))
			offer(g, input, word[i], 0);
}

static void offer_height(Guessing *g, const Number *height, double now)
{
	if (!is_value(&height->given) || fabs(height->value - now) < 0.005)
		return;
	for (uint32_t i = 0; i < g->choices[HEIGHT]; i++)
		if (fabs(g->choice[HEIGHT][i].number - height->value) < 0.005)
			return;
	offer(g, HEIGHT, NULL, height->value);
}

static void offer_all(Guessing *g)
{
	static const char *const exposures[] = { "B", "C", "D" };
	static const char *const enclosures[] = { "enclosed", "partially enclosed", "partially open" };
	static const double areas_sq_ft[] = { 10, 20, 50, 100 };
	const Cases *cases = g->zone->all;
	const RoofArea *area = case_outward(g->zone, KIND_roof_area)->row;
	const Text *standard = &cases->submittal->wind.standard;
	const Texts *standards = &cases->criteria->edition.standards;
	for (uint32_t i = 0; i < standards->count; i++)
		if (!is_value(&standard->given) || strcmp(standards->at[i].text, standard->text) != 0)
			offer(g, EDITION, standards->at[i].text, 0);
	offer_words(g, EXPOSURE, &cases->submittal->wind.exposure, exposures, 3);
	offer_words(g, ENCLOSURE, &area->building.enclosure, enclosures, 3);
	const Fact *height = fact_of((Case *)case_outward(g->zone, KIND_roof_area), FACT_roof_area_design_height);
	double now = height->state == FACT_KNOWN ? height->value : 0;
	offer_height(g, &area->building.eave_height_ft, now);
	offer_height(g, &area->building.mean_roof_height_ft, now);
	offer_height(g, &((const Letter *)g->letter->row)->height_ft, now);
	const Yes *low_rise = &cases->submittal->wind.low_rise_figures;
	if (now > LOW_RISE_FT)
		offer(g, FIGURES, NULL, is_value(&low_rise->given) && low_rise->yes ? 0 : 1);
	for (size_t i = 0; g->width_in > 0 && i < sizeof areas_sq_ft / sizeof *areas_sq_ft; i++)
		offer(g, AREA, NULL, areas_sq_ft[i]);
	offer(g, LEVEL, g->is_strength ? "allowable" : "strength", 0);
}

/* ---- a copy with a guess put in ---- */

static void put_word(Word *word, const Record *record, const char *key, const char *text)
{
	const Field *field = field_find(record, key, strlen(key));
	*word = (Word){ { word->given.place, text, SAID_VALUE }, text, (uint32_t)word_find(field->words, text, strlen(text)) };
}

static void put_number(Number *number, double value)
{
	*number = (Number){ { number->given.place, NULL, SAID_VALUE }, value };
}

/* Clips so far apart that each has this area. */
static void put_area(const Guessing *g, Copy *copy, double area_sq_ft)
{
	const Cases *all = g->zone->all;
	for (uint32_t i = 0; i < all->of[KIND_clip].count; i++) {
		Clip *clip = copied_row(g->advising, copy, all->of[KIND_clip].at[i]);
		if (clip == NULL || !is_value(&clip->spacing_in.given))
			continue;
		ZoneValue *value = TAKE(g->advising->arena, ZoneValue, clip->spacing_in.count + 1);
		for (uint32_t z = 0; z < clip->spacing_in.count; z++) {
			value[z] = clip->spacing_in.at[z];
			value[z].value = area_sq_ft * 144 / g->width_in;
		}
		clip->spacing_in.at = value;
	}
}

static void put_building(Building *building, const Choice *enclosure, const Choice *height)
{
	if (enclosure != NULL)
		put_word(&building->enclosure, &Building_record, "enclosure", enclosure->word);
	if (height == NULL)
		return;
	put_number(&building->eave_height_ft, height->number);
	put_number(&building->mean_roof_height_ft, height->number);
}

static const Choice *chosen(const Guessing *g, const Guess *guess, Input input)
{
	return guess->of[input] > 0 ? &g->choice[input][guess->of[input] - 1] : NULL;
}

static Cases *resolve_guess(Guessing *g, const Guess *guess)
{
	Copy *copy = copy_submittal(g->advising, g->area);
	RoofArea *area = copy->submittal.roof_areas.of.row;
	Letter *letter = TAKE(g->advising->arena, Letter, 1);
	*letter = *(const Letter *)g->letter->row;
	put_word(&letter->level, &Letter_record, "level", "ASD"); /* its figures as they stand */
	copy->submittal.engineering.of.row = letter;
	copy->submittal.engineering.of.count = 1;
	const Choice *edition = chosen(g, guess, EDITION), *exposure = chosen(g, guess, EXPOSURE), *size = chosen(g, guess, AREA);
	const Choice *figures = chosen(g, guess, FIGURES);
	if (edition != NULL)
		copy->submittal.wind.standard.text = edition->word;
	if (exposure != NULL)
		put_word(&copy->submittal.wind.exposure, &Wind_record, "exposure", exposure->word);
	if (figures != NULL)
		copy->submittal.wind.low_rise_figures = (Yes){ { .said = SAID_VALUE }, figures->number > 0 };
	put_building(&copy->submittal.building, chosen(g, guess, ENCLOSURE), chosen(g, guess, HEIGHT));
	if (is_value(&area->building.given))
		put_building(&area->building, chosen(g, guess, ENCLOSURE), chosen(g, guess, HEIGHT));
	if (size != NULL)
		put_area(g, copy, size->number);
	return resolve_copy(g->advising, copy);
}

/* ---- whether a guess gives the letter's figures ---- */

/* Every zone of which the letter speaks within 1 psf. */
static bool is_reproduced(const Cases *cases, bool is_strength)
{
	const double within_psf = 1;
	uint32_t zones = 0;
	for (uint32_t i = 0; i < cases->of[KIND_zone].count; i++) {
		Case *zone = cases->of[KIND_zone].at[i];
		const Fact *letter = fact_of(zone, FACT_zone_letter_uplift);
		const Fact *computed = fact_of(zone, is_strength ? FACT_zone_strength_uplift : FACT_zone_asd_uplift);
		if (letter->state == FACT_NOT_APPLICABLE)
			continue;
		if (letter->state != FACT_KNOWN || computed->state != FACT_KNOWN || fabs(letter->value - computed->value) > within_psf)
			return false;
		zones++;
	}
	return zones > 0;
}

static bool is_hit(Guessing *g, const Guess *guess)
{
	ArenaMark mark = arena_mark(g->advising->arena);
	bool is_strength = g->is_strength != (guess->of[LEVEL] > 0);
	bool hit = is_reproduced(resolve_guess(g, guess), is_strength);
	arena_back(g->advising->arena, mark);
	g->advising->tries--; /* these have a count of their own */
	return hit;
}

/* ---- in words ---- */

static const char *input_words(const Choice *choice, Input input, Arena *arena)
{
	switch (input) {
	case EDITION:
		return choice->word;
	case EXPOSURE:
		return arena_printf(arena, "Exposure %s", choice->word);
	case ENCLOSURE:
		return arena_printf(arena, "%s building", choice->word);
	case HEIGHT:
		return arena_printf(arena, "height %s ft", number_shortest(arena, choice->number));
	case FIGURES:
		return choice->number > 0 ? "the figures of low buildings" : "the figures of buildings above 60 ft";
	case AREA:
		return arena_printf(arena, "effective area %s sq ft", number_shortest(arena, choice->number));
	case LEVEL:
		break;
	}
	return arena_printf(arena, "%s level", choice->word);
}

static const char *guess_words(const Guessing *g, const Guess *guess, Arena *arena)
{
	const char *words = NULL;
	for (int input = 0; input < INPUTS; input++) {
		const Choice *choice = chosen(g, guess, (Input)input);
		if (choice == NULL)
			continue;
		const char *one = input_words(choice, (Input)input, arena);
		const char *joint = words == NULL ? "" : input == LEVEL ? " at " : " and ";
		words = arena_printf(arena, "%s%s%s", words != NULL ? words : "", joint, one);
	}
	return words != NULL ? words : "the inputs submitted";
}

/* ---- the search ---- */

typedef struct {
	Guess at[MOST_HITS];
	uint32_t count;
} Hits;

/* A guess that only adds to a hit tells nothing new. */
static bool is_told(const Hits *hits, const Guess *guess)
{
	for (uint32_t i = 0; i < hits->count; i++) {
		bool holds = true;
		for (int input = 0; input < INPUTS; input++)
			holds &= hits->at[i].of[input] == 0 || hits->at[i].of[input] == guess->of[input];
		if (holds)
			return true;
	}
	return false;
}

static void try_guess(Guessing *g, Hits *hits, const Guess *guess)
{
	if (hits->count < MOST_HITS && !is_told(hits, guess) && is_hit(g, guess))
		hits->at[hits->count++] = *guess;
}

/* All changes of one input, then of two: the fewest first. */
static void try_all(Guessing *g, Hits *hits)
{
	try_guess(g, hits, &(Guess){ { 0 } });
	for (int a = 0; a < INPUTS; a++)
		for (uint32_t i = 1; i <= g->choices[a]; i++) {
			Guess guess = { { 0 } };
			guess.of[a] = i;
			try_guess(g, hits, &guess);
		}
	for (int a = 0; a < INPUTS; a++)
		for (int b = a + 1; b < INPUTS; b++)
			for (uint32_t i = 1; i <= g->choices[a]; i++)
				for (uint32_t j = 1; j <= g->choices[b]; j++) {
					Guess guess = { { 0 } };
					guess.of[a] = i;
					guess.of[b] = j;
					try_guess(g, hits, &guess);
				}
}

static const char *hits_text(const Guessing *g, const Hits *hits)
{
	Arena *arena = g->advising->arena;
	const char *text = NULL;
	for (uint32_t i = 0; i < hits->count; i++)
		text = text == NULL ? arena_printf(arena, "within 1 psf its figures are those of %s", guess_words(g, &hits->at[i], arena))
				    : arena_printf(arena, "%s, or of %s", text, guess_words(g, &hits->at[i], arena));
	return text != NULL ? text
		: "no edition, exposure, enclosure, height, area or load level that was tried gives its "
		  "figures, nor any two of them";
}

/* The letter that gave the zone its uplift. */
static const Case *letter_of(const Case *zone)
{
	const Fact *uplift = fact_of((Case *)zone, FACT_zone_letter_uplift);
	const Cases *all = zone->all;
	for (uint32_t i = 0; uplift->note != NULL && i < all->of[KIND_letter].count; i++)
		if (strcmp(all->of[KIND_letter].at[i]->name, uplift->note) == 0)
			return all->of[KIND_letter].at[i];
	return NULL;
}

static double panel_width_in(const Case *zone)
{
	const RoofArea *area = case_outward(zone, KIND_roof_area)->row;
	return is_value(&area->panel.width_in.given) ? area->panel.width_in.value : 0;
}

/* The zone of an item, or a zone of its roof area of which a letter speaks. */
static const Case *zone_of(const Case *where)
{
	if (where->kind == KIND_zone)
		return where;
	for (uint32_t i = 0; i < where->all->of[KIND_zone].count; i++) {
		Case *zone = where->all->of[KIND_zone].at[i];
		if (zone->up == where && fact_of(zone, FACT_zone_letter_uplift)->state == FACT_KNOWN)
			return zone;
	}
	return NULL;
}

const char *letter_inputs(Advising *advising, const Finding *item)
{
	uint32_t area = area_of_item(item);
	const Case *zone = area > 0 && item->spot[0].where != NULL ? zone_of(item->spot[0].where) : NULL;
	if (zone == NULL)
		return NULL;
	if (advising->letter_inputs[area] != NULL || advising->letters >= MOST_LETTERS)
		return advising->letter_inputs[area];
	Guessing g = { .advising = advising, .zone = zone, .letter = letter_of(zone), .area = area, .width_in = panel_width_in(zone) };
	if (g.letter == NULL)
		return NULL;
	g.is_strength = is_word(&((const Letter *)g.letter->row)->level, "strength");
	Hits hits = { .count = 0 };
	advising->letters++;
	offer_all(&g);
	try_all(&g, &hits);
	return advising->letter_inputs[area] = hits_text(&g, &hits);
}
