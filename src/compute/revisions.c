/* SPDX-License-Identifier: MIT
 * Papers one by one: their revisions against one another, the contractor's stamp on them, their days.
 */
#include "date.h"
#include "dossier.h"
#include "text.h"
#include "timeline.h"

/* ---- revisions ---- */

/* The letter as a paper in the package. */
static Case *fetch_letter_paper(Case *letter)
{
	const char *number = GIVEN(letter, letter, Letter, letter);
	fetch_list(letter, outward(letter, KIND_submittal), offsetof(Submittal, documents));
	return ready(letter) ? paper_numbered(letter, number) : NULL;
}

double letter_paper_sent_yes(Case *letter)
{
	return fetch_letter_paper(letter) != NULL;
}

double letter_paper_revision_one(Case *letter)
{
	const Case *paper = fetch_letter_paper(letter);
	if (paper == NULL)
		return SKIP(letter, "the letter is not among the papers");
	return GIVEN_AT(letter, paper, Document, revision_one);
}

static Case *fetch_paper_used(Case *used)
{
	const char *number = GIVEN(used, paper_used, PaperUsed, number);
	return ready(used) ? paper_numbered(used, number) : NULL;
}

double paper_used_paper_sent_yes(Case *used)
{
	return fetch_paper_used(used) != NULL;
}

double paper_used_paper_revision_one(Case *used)
{
	const Case *paper = fetch_paper_used(used);
	if (paper == NULL)
		return SKIP(used, "it is not among the papers");
	return GIVEN_AT(used, paper, Document, revision_one);
}

double document_papers_used_one(Case *document)
{
	const List *used = fetch_list(document, document, offsetof(Document, rests_on));
	return used != NULL ? used->count : 0;
}

/* ---- the contractor's stamp ---- */

double document_stamp_sent_yes(Case *document)
{
	const char *stamp = GIVEN(document, document, Document, stamp);
	const Case *paper = ready(document) ? paper_numbered(document, stamp) : NULL;
	return paper != NULL && same_text(GIVEN_AT(document, paper, Document, kind), "contractor's review stamp");
}

/* After the paper itself, and no later than the package. */
double document_stamp_timely_yes(Case *document)
{
	int32_t stamped = GIVEN(document, document, Document, stamped), dated = GIVEN(document, document, Document, date);
	int32_t submitted = GIVEN(document, submittal, Submittal, date);
	if (!ready(document))
		return 0;
	Arena *arena = document->all->arena;
	if (stamped < dated)
		note(document, arena_printf(arena, "the paper is dated %s", date_print(arena, dated)));
	else if (stamped > submitted)
		note(document, arena_printf(arena, "the submittal is dated %s", date_print(arena, submitted)));
	return stamped >= dated && stamped <= submitted;
}

/* ---- days ---- */

double document_dated_before_yes(Case *document)
{
	int32_t dated = GIVEN(document, document, Document, date), submitted = GIVEN(document, submittal, Submittal, date);
	note(document, arena_printf(document->all->arena, "the submittal is dated %s", date_print(document->all->arena, submitted)));
	return ready(document) && dated <= submitted;
}

/* A plan of the roof as built is drawn when it is built. */
double document_after_work_yes(Case *document)
{
	int32_t dated = GIVEN(document, document, Document, date), day;
	if (!fetch_events(document) || !ready(document))
		return 0;
	const Case *completion = last_event(document, EVENT_completion, (Scope){ NULL, NULL });
	if (completion == NULL)
		return SKIP(document, "no completion is dated");
	day = fetch_event_day(document, completion);
	note(document, event_words(completion));
	return ready(document) && dated >= day;
}
