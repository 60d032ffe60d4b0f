/* SPDX-License-Identifier: MIT
 * Inputs of the engineer's letter that have a stricter side: whether the letter kept it. Where it took the stricter, that governs
 * and nothing conflicts.
 */
#include "fetch.h"
#include "text.h"
#include "wind.h"

#include <string.h>

/* The exposures are named from the sheltered to the open. */
double letter_exposure_kept_yes(Case *letter)
{
	const char *used = GIVEN(letter, letter, Letter, exposure), *stated = GIVEN(letter, submittal, Submittal, wind.exposure);
	return ready(letter) && *used >= *stated;
}

/* The Roman numerals up to IV sort as their letters do. */
double letter_risk_kept_yes(Case *letter)
{
	const char *used = GIVEN(letter, letter, Letter, risk_category);
	const char *stated = GIVEN(letter, submittal, Submittal, project.risk_category);
	return ready(letter) && strcmp(used, stated) >= 0;
}

static const Number *pressure_inside(const Case *letter, const char *standard, const char *enclosure)
{
	const Reference *reference = letter->all->reference;
	for (uint32_t i = 0; i < reference->wind_enclosures.count; i++) {
		const WindEnclosure *row = &reference->wind_enclosures.row[i];
		if (same_text(row->standard.text, standard) && same_text(row->enclosure.text, enclosure))
			return &row->internal_coefficient_one;
	}
	return NULL;
}

/* An open building has coefficients of its own outside: it is stricter than none, and none than it. */
double letter_enclosure_kept_yes(Case *letter)
{
	const char *used = GIVEN(letter, letter, Letter, enclosure);
	const char *stated = GIVEN(letter, submittal, Submittal, building.enclosure);
	const char *standard = GIVEN(letter, submittal, Submittal, wind.standard);
	if (!ready(letter) || same_text(used, stated))
		return ready(letter);
	if (same_text(used, "open") || same_text(stated, "open"))
		return 0;
	const Number *here = pressure_inside(letter, standard, used), *there = pressure_inside(letter, standard, stated);
	return here != NULL && there != NULL && here->value >= there->value;
}
