/* SPDX-License-Identifier: MIT
 * What a resubmittal says of itself: its changes, its replies, its departures from the specification. What the round before
 * really said is laid beside it by judge/.
 */
#include "dossier.h"
#include "text.h"

#include "fetch.h"
#include "history.h"

#include <ctype.h>
#include <stdlib.h>
#include <string.h>

/* A list the form assumes to be none stands at the place of its record, one that is written at its own. */
static double is_written(Case *submittal, uint32_t offset)
{
	Asked asked = ask(submittal, offset);
	const Place *whole = &((const Given *)submittal->row)->place, *list = &asked.given->place;
	fetch_list(submittal, submittal, offset);
	return ready(submittal) && (list->line != whole->line || list->column != whole->column);
}

double submittal_changes_told_yes(Case *submittal)
{
	return is_written(submittal, offsetof(Submittal, changes));
}

double submittal_replies_told_yes(Case *submittal)
{
	return is_written(submittal, offsetof(Submittal, replies));
}

/* ---- changes ---- */

double change_field_known_yes(Case *change)
{
	const char *field = GIVEN(change, change, Change, field);
	return ready(change) && field_find(&Submittal_record, field, strcspn(field, ".")) != NULL;
}

/* A record that had another name is a change in itself. */
static double is_renaming_declared(Case *fact, const char *was, const char *name)
{
	fetch_list(fact, outward(fact, KIND_submittal), offsetof(Submittal, changes));
	return ready(fact) && (is_declared(fact, was) || is_declared(fact, name));
}

double roof_area_renaming_declared_yes(Case *area)
{
	const char *was = GIVEN(area, roof_area, RoofArea, was);
	return is_renaming_declared(area, was, GIVEN(area, roof_area, RoofArea, name));
}

double letter_renaming_declared_yes(Case *letter)
{
	const char *was = GIVEN(letter, letter, Letter, was);
	return is_renaming_declared(letter, was, GIVEN(letter, letter, Letter, letter));
}

double document_renaming_declared_yes(Case *document)
{
	const char *was = GIVEN(document, document, Document, was);
	return is_renaming_declared(document, was, GIVEN(document, document, Document, number));
}

/* What an item of the round before asked for needs no declaring. */
static bool is_renaming_asked(const Case *part)
{
	const History *history = part->all->history;
	return history != NULL && history->renames != NULL && part->before != NULL &&
	       hash_get(history->renames, part->before, strlen(part->before)) != NULL;
}

double part_renaming_declared_yes(Case *part)
{
	const char *was = GIVEN_AT(part, part, Panel, was);
	if (is_renaming_asked(part))
		return 1;
	return is_renaming_declared(part, was, GIVEN_AT(part, part, Panel, item));
}

/* ---- replies ---- */

/* "1.03" is an item of round 1. */
double reply_of_earlier_round_yes(Case *reply)
{
	const char *item = GIVEN(reply, reply, Reply, item);
	double round = GIVEN(reply, submittal, Submittal, round_one);
	if (!ready(reply))
		return 0;
	size_t digits = strspn(item, "0123456789");
	if (digits == 0 || digits > 3 || item[digits] != '.' || !isdigit((unsigned char)item[digits + 1])) {
		note(reply, "an item has a number like 1.03");
		return 0;
	}
	note(reply, arena_printf(reply->all->arena, "this is round %g", round));
	long of = strtol(item, NULL, 10);
	return of >= 1 && (double)of < round;
}

/* "EL-88 revision 2": the number behind the word, or -1. */
static double revision_in(const char *words)
{
	const char *word = strcasestr(words, "revision");
	if (word == NULL)
		return -1;
	word += strlen("revision");
	word += strspn(word, " ");
	return isdigit((unsigned char)*word) ? strtod(word, NULL) : -1;
}

double reply_paper_sent_yes(Case *reply)
{
	const char *words = GIVEN(reply, reply, Reply, paper);
	if (!ready(reply))
		return 0;
	const Case *record = record_named(reply, words);
	if (record == NULL) {
		note(reply, "it is not among the papers");
		return 0;
	}
	double wanted = revision_in(words);
	if (record->kind != KIND_document || wanted < 0)
		return 1;
	double revision = GIVEN_AT(reply, record, Document, revision_one);
	note(reply, arena_printf(reply->all->arena, "the paper in the package is of revision %g", revision));
	return ready(reply) && revision == wanted;
}

/* ---- departures ---- */

double comparison_departure_declared_yes(Case *comparison)
{
	const Case *requirement = ((const Compared *)comparison->row)->requirement;
	GIVEN(comparison, comparison, Comparison, with);
	if (requirement == NULL)
		return 0;
	const char *paragraph = GIVEN_AT(comparison, requirement, Requirement, paragraph);
	fetch_list(comparison, outward(comparison, KIND_submittal), offsetof(Submittal, departures));
	return ready(comparison) && is_departed(comparison, paragraph);
}

double departure_paragraph_known_yes(Case *departure)
{
	const char *paragraph = GIVEN(departure, departure, Departure, paragraph);
	fetch_list(departure, outward(departure, KIND_submittal), offsetof(Submittal, specification.requirements));
	return ready(departure) && is_required(departure, paragraph);
}
