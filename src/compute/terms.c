/* SPDX-License-Identifier: MIT
 * What the term asked for hangs on: the rows of terms.csv.
 */
#include "fetch.h"
#include "number.h"
#include "parts.h"
#include "text.h"

/* The row for a term, the one with this limit of cover before others; NULL if the term is not offered. */
static const Term *term_row(const Criteria *criteria, double term_yr, const char *cover_limit)
{
	const Term *found = NULL;
	for (uint32_t i = 0; i < criteria->terms.count; i++) {
		const Term *row = &criteria->terms.row[i];
		if (!number_same(row->term_yr.value, term_yr))
			continue;
		if (same_text(row->cover_limit.text, cover_limit))
			return row;
		if (found == NULL)
			found = row;
	}
	return found;
}

/* The row for the term asked for. A term that is not offered has an item of its own: nothing hangs on it. */
static const Term *fetch_term(Case *fact)
{
	double term = GIVEN(fact, submittal, Submittal, warranty.term_yr);
	const char *cover_limit = GIVEN_OR(fact, submittal, Submittal, warranty.cover_limit, "");
	if (!ready(fact))
		return NULL;
	const Term *row = term_row(fact->all->criteria, term, cover_limit);
	if (row == NULL)
		SKIP(fact, "the term asked for is not offered");
	return row;
}

static const char *terms_offered(const Case *at)
{
	const Criteria *criteria = at->all->criteria;
	const char *words = "";
	double before = 0;
	for (uint32_t i = 0; i < criteria->terms.count; i++) {
		double term = criteria->terms.row[i].term_yr.value;
		if (term != before)
			words = arena_printf(at->all->arena, "%s%s%g", words, *words != '\0' ? ", " : "offered: ", term);
		before = term;
	}
	return arena_printf(at->all->arena, "%s yr", words);
}

double submittal_term_offered_yes(Case *submittal)
{
	double term = GIVEN(submittal, submittal, Submittal, warranty.term_yr);
	if (!ready(submittal))
		return 0;
	const Term *row = term_row(submittal->all->criteria, term, "");
	if (row == NULL)
		note(submittal, terms_offered(submittal));
	else
		CONSTANT(submittal, "terms.csv", "term", row->term_yr.value, row->basis.text);
	return row != NULL;
}

const char *fetch_term_certificate(Case *fact)
{
	const Term *row = fetch_term(fact);
	return row != NULL && is_value(&row->certificate.given) ? row->certificate.text : NULL;
}

double submittal_inspections_of_term_one(Case *submittal)
{
	const Term *row = fetch_term(submittal);
	return row != NULL ? CONSTANT(submittal, "terms.csv ", "inspections", row->inspections_one.value, row->basis.text) : 0;
}

double roof_area_term_least_slope_in_12(Case *area)
{
	const Term *row = fetch_term(area);
	if (row == NULL)
		return 0;
	return CONSTANT(area, "terms.csv", "least slope", row->least_slope_in_12.value, row->basis.text);
}

/* A cell that names nothing allows all. */
static double allows(Case *area, const Text *cell, const char *word)
{
	if (!is_value(&cell->given))
		return 1;
	bool is_allowed = is_among(word, cell->text);
	if (!is_allowed)
		note(area, arena_printf(area->all->arena, "allowed: %s", cell->text));
	return is_allowed;
}

double roof_area_term_seam_allowed_yes(Case *area)
{
	const Term *row = fetch_term(area);
	const char *seam = GIVEN(area, roof_area, RoofArea, panel.seam);
	return ready(area) ? allows(area, &row->seam, seam) : 0;
}

double roof_area_term_surroundings_allowed_yes(Case *area)
{
	const Term *row = fetch_term(area);
	const char *surroundings = GIVEN(area, submittal, Submittal, project.surroundings);
	return ready(area) ? allows(area, &row->environment, surroundings) : 0;
}
