/* SPDX-License-Identifier: MIT
 * Papers that are due, by documents.csv: whether one is due now, and whether it is in the package.
 */
#include "fetch.h"
#include "text.h"

double paper_due_yes(Case *paper)
{
	const BoundPaper *bound = ((const PaperDueHere *)paper->row)->bound;
	Asked stage = ask(outward(paper, KIND_submittal), offsetof(Submittal, stage));
	fetch_word(paper, stage);
	if (!ready(paper))
		return 0;
	if (((const Word *)stage.given)->word < bound->row->stage.word) /* the words of stages stand in order */
		return 0;
	return fetch_all(paper, outward(paper, KIND_submittal), bound->when, bound->whens);
}

double paper_found_yes(Case *paper)
{
	const BoundPaper *bound = ((const PaperDueHere *)paper->row)->bound;
	const Cases *all = paper->all;
	for (uint32_t i = 0; i < all->of[KIND_document].count; i++) {
		const Document *document = all->of[KIND_document].at[i]->row;
		if (!is_value(&document->kind.given) || !same_text(document->kind.text, bound->row->kind.text))
			continue;
		GIVEN_AT(paper, all->of[KIND_document].at[i], Document, kind);
		return 1;
	}
	fetch_list(paper, outward(paper, KIND_submittal), offsetof(Submittal, documents));
	for (uint32_t i = 0; i < all->of[KIND_document].count; i++)
		GIVEN_AT(paper, all->of[KIND_document].at[i], Document, kind);
	return 0;
}
