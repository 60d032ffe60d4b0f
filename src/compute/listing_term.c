/* SPDX-License-Identifier: MIT
 * What a listing allows by its own words, which go before the table of substitutions.
 */
#include "holds.h"
#include "number.h"
#include "text.h"

#include <math.h>
#include <string.h>

/* Soft metric sizes (305 mm for 12 in) count as the same where the edition states no tolerance of its own (common practice, no
 * published source). */
static const double soft_percent = 0.5;

static const Word *word_in(const Record *record, const char *key, const void *row)
{
	const Field *field = field_find(record, key, strlen(key));
	const Given *given = field != NULL && field->kind == IS_WORD ? given_in(field, row) : NULL;
	return given != NULL && is_value(given) ? (const Word *)given : NULL;
}

/* The family of trade sizes of a thickness; NULL if it is sold in none. */
static const char *family_of(const Compared *compared)
{
	if (strcmp(compared->field->key, "thickness") != 0)
		return NULL;
	bool is_support = compared->term->kind == KIND_support;
	const Word *word = word_in(record_of(compared->term->kind), is_support ? "kind" : "metal", compared->here);
	if (word == NULL)
		return NULL;
	if (is_word(word, "steel") || is_word(word, "purlin") || is_word(word, "sub-purlin"))
		return "sheet";
	if (is_word(word, "steel deck"))
		return "deck";
	return is_word(word, "plywood") || is_word(word, "OSB") || is_word(word, "wood") ? "wood panel" : NULL;
}

static bool is_one_size(const Case *at, const Compared *compared, double a, double b)
{
	const BoundSubstitution *may = compared->may;
	bool is_stated = may != NULL && is_value(&may->row->tolerance_percent.given);
	double percent = is_stated ? may->row->tolerance_percent.value : soft_percent;
	if (number_same(a, b) || fabs(a - b) <= percent / 100 * fmax(fabs(a), fabs(b)) * (1 + 1e-9))
		return true;
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

/* Words and texts are named, not ordered: reading the terms lets no other relation come with them. */
static bool word_holds(const BoundTerm *term, const char *here)
{
	for (uint32_t i = 0; i < term->count; i++)
		if (same_text(here, term->word[i]))
			return true;
	return false;
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
		return word_holds(compared->term, fetch_word(comparison, asked));
	case IS_YES:
		return word_holds(compared->term, fetch_yes(comparison, asked) ? "yes" : "no");
	default:
		return word_holds(compared->term, fetch_text(comparison, asked));
	}
}

double term_holds(Case *comparison, const Compared *compared)
{
	const ListingTerm *row = compared->term->row;
	bool is_free = is_word(&row->relation, "any") || is_word(&row->relation, "optional");
	if (is_free || (compared->here != NULL && is_value(given_in(compared->field, compared->here))))
		fetch_submitted(comparison, compared);
	if (is_free)
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
