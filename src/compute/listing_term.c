/* SPDX-License-Identifier: MIT
 * What a listing allows by its own words, which go before the table of substitutions.
 */
#include "holds.h"
#include "number.h"
#include "text.h"

#include <string.h>

/* The family of trade sizes of a thickness; NULL if it is sold in none. */
static const char *family_of(const Compared *compared)
{
	if (strcmp(compared->field->key, "thickness") != 0)
		return NULL;
	RecordKind kind = compared->term->kind;
	if (kind == KIND_panel || kind == KIND_clip)
		return "sheet";
	if (kind != KIND_support)
		return NULL;
	const Support *support = compared->here;
	if (is_word(&support->kind, "steel deck"))
		return "deck";
	return is_word(&support->kind, "plywood") || is_word(&support->kind, "OSB") ? "wood panel" : NULL;
}

static bool is_one_size(const Case *at, const Compared *compared, double a, double b)
{
	const BoundSubstitution *may = compared->may;
	if (number_same(a, b))
		return true;
	if (may != NULL && is_value(&may->row->tolerance_percent.given)) {
		double apart = a > b ? a - b : b - a;
		return apart <= b * (may->row->tolerance_percent.value / 100) * (1 + 1e-9);
	}
	const char *family = family_of(compared);
	return family != NULL && is_one_trade_size(at->all->reference, family, a, b);
}

static bool number_holds(const Case *at, const Compared *compared, double here)
{
	const BoundTerm *term = compared->term;
	const Word *relation = &term->row->relation;
	const double *number = term->number;
	for (uint32_t i = 0; i < term->count; i++)
		if (is_one_size(at, compared, here, number[i]))
			return true; /* the value named, or an end of the range */
	if (is_word(relation, "at least"))
		return here > number[0];
	if (is_word(relation, "at most"))
		return here < number[0];
	return is_word(relation, "between") && here > number[0] && here < number[1];
}

/* At least and at most of words go by their scale; a word of another family does not hold. */
static bool word_holds_by_rank(const Case *at, const Compared *compared, const char *here)
{
	const char *attribute = compared->term->row->attribute.text, *scale_here = NULL, *scale_there = NULL;
	int rank_here = scale_rank(at->all->criteria, attribute, here, &scale_here);
	int rank_there = scale_rank(at->all->criteria, attribute, compared->term->word[0], &scale_there);
	if (rank_here == 0 || rank_there == 0 || strcmp(scale_here, scale_there) != 0)
		return false;
	return is_word(&compared->term->row->relation, "at least") ? rank_here > rank_there : rank_here < rank_there;
}

static bool word_holds(const Case *at, const Compared *compared, const char *here)
{
	const BoundTerm *term = compared->term;
	const Word *relation = &term->row->relation;
	for (uint32_t i = 0; i < term->count; i++)
		if (same_text(here, term->word[i]))
			return true;
	return (is_word(relation, "at least") || is_word(relation, "at most")) && word_holds_by_rank(at, compared, here);
}

static bool is_readable(const BoundTerm *term)
{
	bool is_range = is_word(&term->row->relation, "between");
	return (term->number != NULL || term->word != NULL) && term->count >= (is_range ? 2u : 1u);
}

static bool value_holds(Case *comparison, const Compared *compared)
{
	const Given *here = given_in(compared->field, compared->here);
	Asked asked = { compared->part, compared->field, here };
	switch (compared->field->kind) {
	case IS_NUMBER:
	case IS_SIZE:
		return number_holds(comparison, compared, fetch_number(comparison, asked));
	case IS_WORD:
		return word_holds(comparison, compared, fetch_word(comparison, asked));
	case IS_YES:
		return word_holds(comparison, compared, fetch_yes(comparison, asked) ? "yes" : "no");
	default:
		return word_holds(comparison, compared, fetch_text(comparison, asked));
	}
}

double term_holds(Case *comparison, const Compared *compared)
{
	const ListingTerm *row = compared->term->row;
	if (is_word(&row->relation, "any") || is_word(&row->relation, "optional"))
		return 1;
	Arena *arena = comparison->all->arena;
	const char *allows = arena_printf(arena, "the listing says %s %s", row->relation.text, row->value.text);
	if (compared->here == NULL || given_in(compared->field, compared->here)->said == SAID_NOT_APPLICABLE) {
		note(comparison, allows);
		return 0;
	}
	if (!fetch_here(comparison, compared))
		return 0;
	if (!is_readable(compared->term))
		return REFUSE(comparison, "the term of the listing cannot be read");
	bool holds = value_holds(comparison, compared);
	note(comparison, holds ? NULL : allows);
	return holds;
}
