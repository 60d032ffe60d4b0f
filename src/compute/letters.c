/* SPDX-License-Identifier: MIT
 * The engineer's letters and the roof areas they cover.
 */
#include "below.h"
#include "date.h"
#include "fetch.h"
#include "text.h"

double submittal_letters_one(Case *submittal)
{
	const List *letters = fetch_list(submittal, submittal, offsetof(Submittal, engineering));
	return letters != NULL ? letters->count : 0;
}

/* A letter of which it is not known what it covers may cover this area. */
double roof_area_letters_covering_one(Case *area)
{
	const char *name = GIVEN(area, roof_area, RoofArea, name);
	fetch_list(area, outward(area, KIND_submittal), offsetof(Submittal, engineering));
	if (!ready(area))
		return 0;
	uint32_t unknowns;
	Case *const *unknown = letters_unknown(area, &unknowns);
	for (uint32_t i = 0; i < unknowns; i++)
		GIVEN_AT(area, unknown[i], Letter, areas);
	return letters_naming(area, name);
}

double letter_dated_before_yes(Case *letter)
{
	int32_t dated = GIVEN(letter, letter, Letter, date), submitted = GIVEN(letter, submittal, Submittal, date);
	return ready(letter) && dated <= submitted;
}

double letter_areas_known_yes(Case *letter)
{
	const Texts *areas = GIVEN(letter, letter, Letter, areas);
	fetch_list(letter, outward(letter, KIND_submittal), offsetof(Submittal, roof_areas));
	for (uint32_t i = 0; ready(letter) && i < areas->count; i++) {
		if (is_area_name(letter, areas->at[i].text))
			continue;
		note(letter, arena_printf(letter->all->arena, "%s is no roof area of this submittal", areas->at[i].text));
		return 0;
	}
	return ready(letter);
}

/* The newest of the drawings decides; a package without any has its own item. */
double letter_after_drawings_yes(Case *letter)
{
	int32_t dated = GIVEN(letter, letter, Letter, date);
	Case *submittal = (Case *)outward(letter, KIND_submittal);
	if (fetch_list(letter, submittal, offsetof(Submittal, documents)) == NULL)
		return 0;
	const Case *newest = NULL;
	int32_t newest_day = INT32_MIN;
	for (const Case *paper = first_below(submittal, KIND_document); paper != NULL; paper = paper->next) {
		if (!is_among(GIVEN_AT(letter, paper, Document, kind), "roof plan; shop drawings"))
			continue;
		int32_t day = GIVEN_AT(letter, paper, Document, date);
		newest = day > newest_day ? paper : newest;
		newest_day = day > newest_day ? day : newest_day;
	}
	if (!ready(letter))
		return 0;
	if (newest == NULL)
		return SKIP(letter, "no drawing is in the package");
	const Document *drawing = newest->row;
	note(letter, arena_printf(letter->all->arena, "%s %s is of %s", drawing->kind.text, drawing->number.text,
		date_print(letter->all->arena, newest_day)));
	return dated >= newest_day;
}

/* ---- which guides govern ---- */

double submittal_federal_structural_yes(Case *submittal)
{
	Asked asked = ask(submittal, offsetof(Submittal, specification.adopts));
	if (asked.given->said == SAID_NONE) {
		fetch_shown(submittal, asked);
		return 0;
	}
	const Texts *adopts = fetch_texts(submittal, asked);
	for (uint32_t i = 0; ready(submittal) && i < adopts->count; i++)
		if (list_has(submittal->all->criteria, "federal structural guides", adopts->at[i].text))
			return 1;
	return 0;
}
