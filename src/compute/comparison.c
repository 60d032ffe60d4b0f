/* SPDX-License-Identifier: MIT
 * Whether a difference between two papers is allowed: up, never down, and only with all that it needs.
 *
 * The screw that is larger but does not fit the hole of the clip has not gone up. No value is judged that either side leaves
 * open.
 */
#include "holds.h"
#include "open_framing.h"
#include "text.h"

#include <string.h>

bool fetch_here(Case *comparison, const Compared *compared)
{
	return fetch_said(comparison, (Asked){ compared->part, compared->field, given_in(compared->field, compared->here) });
}

void fetch_submitted(Case *comparison, const Compared *compared)
{
	if (compared->part != NULL && compared->here != NULL)
		fetch_shown(comparison, (Asked){ compared->part, compared->field, given_in(compared->field, compared->here) });
}

static const char *direction_of(const Compared *compared)
{
	if (compared->may != NULL)
		return compared->may->row->may_go.text;
	return is_value(&compared->record.may_go.given) ? compared->record.may_go.text : "same";
}

static const char *direction_words(const char *direction)
{
	if (strcmp(direction, "up") == 0)
		return "may go up only";
	if (strcmp(direction, "down") == 0)
		return "may go down only";
	if (strcmp(direction, "within") == 0)
		return "may differ only within the range the listing states";
	return "must be the same";
}

/* The other paper says `any`: it asks for nothing. */
static bool is_any_there(const Compared *compared)
{
	return compared->there != NULL && given_in(compared->field, compared->there)->said == SAID_NOT_APPLICABLE;
}

/* A plywood deck has no grade of steel: what only the tested kind of support has is not asked of another kind. */
static bool is_of_other_kind(const Compared *compared)
{
	if (compared->part == NULL || compared->part->kind != KIND_support || compared->here == NULL || compared->there == NULL)
		return false;
	const Support *here = compared->here, *there = compared->there;
	return is_value(&here->kind.given) && is_value(&there->kind.given) && !same_text(here->kind.text, there->kind.text);
}

/* One side is not stated. */
static double unknown_holds(Case *comparison, const Compared *compared)
{
	if (is_of_other_kind(compared)) {
		GIVEN_AT(comparison, compared->part, Support, kind);
		return SKIP(comparison, "the support is of another kind than the tested one");
	}
	if (compared->here != NULL) {
		const Given *here = given_in(compared->field, compared->here);
		if (here->said == SAID_NOT_APPLICABLE) {
			fetch_submitted(comparison, compared);
			note(comparison, "it does not apply to the submitted part");
			return 0;
		}
		if (!fetch_here(comparison, compared))
			return 0;
	}
	if (compared->there != NULL && is_value(given_in(compared->field, compared->there)))
		return REFUSE(comparison, "the two values cannot be compared");
	if (is_word(&compared->record.with, "listing"))
		return REFUSE(comparison, "the listing does not state it");
	return REFUSE(comparison, "the other paper does not state it");
}

static bool can_tell(TestOutcome outcome)
{
	return outcome == TEST_MET || outcome == TEST_BROKEN || outcome == TEST_NOT_APPLICABLE;
}

static const char *need_words(const BoundSubstitution *may, uint32_t i)
{
	const char *words = may->need_words != NULL ? may->need_words[i] : NULL;
	return words != NULL ? words : may->row->needs.text;
}

/* The first need that does not hold decides, even where another waits; a need that does not apply holds. */
static double needs_hold(Case *comparison, const Compared *compared)
{
	const BoundSubstitution *may = compared->may;
	const Case *part = compared->part != NULL ? compared->part : comparison;
	bool holds = true;
	for (uint32_t i = 0; may != NULL && i < may->needs; i++) {
		if (test_case(part, &may->need[i]).outcome != TEST_BROKEN)
			continue;
		fetch_test(comparison, part, &may->need[i]);
		Arena *arena = comparison->all->arena;
		note(comparison, arena_printf(arena, "it holds only if %s, which is not so", need_words(may, i)));
		holds = false;
		break;
	}
	for (uint32_t i = 0; holds && may != NULL && i < may->needs; i++)
		if (!can_tell(fetch_test(comparison, part, &may->need[i])))
			note(comparison, need_words(may, i));
	return holds;
}

static double step_holds(Case *comparison, const Compared *compared)
{
	const char *direction = direction_of(compared), *step = compared->record.step.text;
	bool is_allowed = strcmp(direction, "any") == 0 || strcmp(step, direction) == 0;
	const Substitution *row = compared->may != NULL ? compared->may->row : NULL;
	if (row != NULL)
		CONSTANT(comparison, "substitutions.csv", row->attribute.text, is_allowed, row->basis.text);
	if (is_allowed)
		return needs_hold(comparison, compared);
	if (compared->field->kind == IS_LIST) {
		bool is_tested = is_word(&compared->record.with, "listing");
		note(comparison, is_tested ? "it was tested and is left out here" : "it is asked for and left out here");
		return 0;
	}
	bool has_order = strcmp(direction, "up") == 0 || strcmp(direction, "down") == 0;
	bool is_apart = has_order && strcmp(step, "other") == 0;
	note(comparison, is_apart ? "the two have no common scale, so neither is up from the other" : direction_words(direction));
	return 0;
}

double comparison_holds_yes(Case *comparison)
{
	const Compared *compared = comparison->row;
	if (is_let_pass_over_deck(comparison, compared))
		return 1;
	if (compared->term != NULL)
		return term_holds(comparison, compared);
	const Word *step = &compared->record.step;
	bool is_told = is_any_there(compared) || !is_word(step, "unknown");
	if (is_told)
		fetch_submitted(comparison, compared);
	if (is_any_there(compared) || is_word(step, "same"))
		return 1;
	if (is_told)
		return step_holds(comparison, compared);
	bool is_free = strcmp(direction_of(compared), "any") == 0;
	return is_free ? needs_hold(comparison, compared) : unknown_holds(comparison, compared);
}
