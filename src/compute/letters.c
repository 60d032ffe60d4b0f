/* SPDX-License-Identifier: MIT
 * The engineer's letters and the roof areas they cover.
 */
#include "below.h"
#include "fetch.h"

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
