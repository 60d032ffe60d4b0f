/* SPDX-License-Identifier: MIT
 * The longest term: by the lives of the parts of each area, and as a whole by judging. A longer term holds if it finds nothing of
 * NOT REVIEWED or worse that the shortest offered one does not find as well.
 */
#include "offering.h"

#include "number.h"

static double next_below(const Criteria *criteria, double below)
{
	double best = 0;
	for (uint32_t i = 0; i < criteria->terms.count; i++) {
		double term = criteria->terms.row[i].term_yr.value;
		best = term < below && term > best ? term : best;
	}
	return best;
}

static double shortest(const Criteria *criteria)
{
	double best = 0;
	for (uint32_t i = 0; i < criteria->terms.count; i++) {
		double term = criteria->terms.row[i].term_yr.value;
		best = best == 0 || term < best ? term : best;
	}
	return best;
}

static Copy *copy_for(Advising *advising, double term)
{
	Copy *copy = copy_submittal(advising, 0);
	copy->submittal.warranty.term_yr.value = term;
	copy->submittal.warranty.term_yr.given = (Given){ .typed = NULL, .said = SAID_VALUE };
	return copy;
}

/* What is new at a term; NULL if nothing is. */
static const char *new_at(Offering *offering, double term, const Hash *known)
{
	Advising *advising = offering->advising;
	Trouble found;
	offering->offers->tries++;
	Copy *copy = copy_for(advising, term);
	Inputs inputs = { .submittal = &copy->submittal, .review = advising->verdict->cases->review,
		.criteria = advising->verdict->cases->criteria, .reference = advising->verdict->cases->reference,
		.registers = advising->verdict->cases->registers, .as_of = advising->verdict->cases->as_of };
	Cases *cases = resolve(advising->arena, &inputs);
	if (!find_new_trouble(advising, copy, cases, known, &found))
		return NULL;
	const char *name = found.where != NULL && found.where->name != NULL ? found.where->name : "the submittal";
	return arena_printf(advising->arena, "%s (%s)", name, found.code != NULL ? found.code : "not stated");
}

static void put_term(Offering *offering, const LongestTerm *term)
{
	Offers *offers = offering->offers;
	offers->term = arena_more(offering->advising->arena, offers->term, offers->terms, &offers->term_room, sizeof *term);
	offers->term[offers->terms++] = *term;
}

static void offer_whole(Offering *offering)
{
	const Criteria *criteria = offering->advising->verdict->cases->criteria;
	double least = shortest(criteria);
	Copy *copy = copy_for(offering->advising, least);
	Hash *known = gather_troubles(offering->advising, copy, resolve_copy(offering->advising, copy));
	LongestTerm longest = { .term_yr = least };
	for (double term = next_below(criteria, 1e9); term > least; term = next_below(criteria, term)) {
		const char *held = new_at(offering, term, known);
		if (held == NULL) {
			longest.term_yr = term;
			break;
		}
		longest.next_yr = term;
		longest.held_by = held;
	}
	if (least > 0)
		put_term(offering, &longest);
}

static void offer_by_lives(Offering *offering, Case *area)
{
	const Fact *term = fact_of(area, FACT_roof_area_longest_term), *life = fact_of(area, FACT_roof_area_least_life);
	if (term->state != FACT_KNOWN || life->state != FACT_KNOWN)
		return;
	LongestTerm longest = { .area = area, .term_yr = term->value };
	longest.held_by = arena_printf(offering->advising->arena, "%s, %s yr", life->note != NULL ? life->note : "a part",
		number_shortest(offering->advising->arena, life->value));
	put_term(offering, &longest);
}

void offer_terms(Offering *offering)
{
	Cases *cases = offering->advising->verdict->cases;
	for (uint32_t i = 0; i < cases->of[KIND_roof_area].count; i++)
		offer_by_lives(offering, cases->of[KIND_roof_area].at[i]);
	offer_whole(offering);
}
