/* SPDX-License-Identifier: MIT
 * The longest term that would be given as submitted: the offered terms below the one asked for, from the longest down, each
 * judged in a copy. What a specification asks for is another question and is left out.
 */
#include "advising.h"

/* The longest offered term below `below`, or 0. */
static double next_term(const Criteria *criteria, double below)
{
	double best = 0;
	for (uint32_t i = 0; i < criteria->terms.count; i++) {
		double term = criteria->terms.row[i].term_yr.value;
		if (term < below && term > best)
			best = term;
	}
	return best;
}

static bool is_given_for(Advising *advising, const Finding *item, double term)
{
	ArenaMark mark = arena_mark(advising->arena);
	Copy *copy = copy_submittal(advising, 0);
	copy->submittal.warranty.term_yr.value = term;
	copy->submittal.warranty.term_yr.given.typed = NULL;
	bool given =
		is_cured(advising, copy, resolve_copy(advising, copy), &(Wanted){ .item = item, .despite_specification = true });
	arena_back(advising->arena, mark);
	return given;
}

/* A shorter term than specified is for the owner to take: the remedy says so. */
static const char *term_text(const Submittal *submittal, double term, Arena *arena)
{
	const Number *specified = &submittal->specification.warranty.term_yr;
	if (is_value(&specified->given) && specified->value > term)
		return arena_printf(arena, "%g yr (the specification asks for %g yr)", term, specified->value);
	return arena_printf(arena, "%g yr", term);
}

const char *longest_term(Advising *advising, const Finding *item)
{
	const Cases *cases = advising->verdict->cases;
	const Number *asked = &cases->submittal->warranty.term_yr;
	if (!is_value(&asked->given))
		return NULL;
	judge_unchanged(advising, item, 0);
	for (double term = next_term(cases->criteria, asked->value); term > 0 && may_try(advising);
	     term = next_term(cases->criteria, term))
		if (is_given_for(advising, item, term))
			return term_text(cases->submittal, term, advising->arena);
	return NULL;
}
