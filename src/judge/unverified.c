/* SPDX-License-Identifier: MIT
 * What a verdict rests on that nobody has confirmed: the applicant's own word, and figures known from memory only.
 *
 * A register confirms a certificate; the reviewer confirms a paper by having seen it.
 */
#include "date.h"
#include "judge.h"

#include <string.h>

enum { MOST_LINES = 200, MOST_PAPERS = 12 };

typedef struct {
	Judging *judging;
	Unverified *line;
	uint32_t count, room, left_out;
	Hash *seen; /* papers the reviewer has seen, by number */
} Doubts;

static void doubt(Doubts *doubts, const char *what, const char *why)
{
	if (doubts->count >= MOST_LINES) {
		doubts->left_out++;
		return;
	}
	doubts->line = arena_more(doubts->judging->arena, doubts->line, doubts->count, &doubts->room, sizeof(Unverified));
	doubts->line[doubts->count++] = (Unverified){ what, why };
}

static bool is_seen(const Doubts *doubts, const Text *number)
{
	return is_value(&number->given) && hash_get(doubts->seen, number->text, strlen(number->text)) != NULL;
}

static Hash *papers_seen(const Judging *judging)
{
	const Review *review = judging->cases->review;
	Hash *seen = hash_make(judging->arena, 8);
	for (uint32_t i = 0; review != NULL && i < review->papers.of.count; i++) {
		PaperSeen *row = &review->papers.of.row[i];
		if (is_value(&row->number.given) && is_value(&row->seen.given) && row->seen.yes)
			hash_put(seen, row->number.text, strlen(row->number.text), row);
	}
	return seen;
}

/* ---- the applicant's word ---- */

static void doubt_day(Doubts *doubts)
{
	const Cases *cases = doubts->judging->cases;
	const Date *date = &cases->submittal->date;
	bool received = cases->review != NULL && is_value(&cases->review->received.given);
	if (!received && is_value(&date->given) && date->day == cases->as_of)
		doubt(doubts,
		      arena_printf(doubts->judging->arena, "the day at which papers are judged, %s",
				   date_print(doubts->judging->arena, date->day)),
		      "the applicant's own date; give --as-of, or the day received in the reviewer's file");
	else if (cases->as_of == INT32_MIN)
		doubt(doubts, "the day at which papers are judged", "not known");
}

/* A blank register is one that nobody keeps: nothing in it confirms. */
static bool is_in_register(const Cases *cases, const Applicant *applicant)
{
	for (uint32_t i = 0; cases->registers != NULL && i < cases->registers->installers.count; i++) {
		const Installer *row = &cases->registers->installers.row[i];
		bool same = is_value(&row->certificate.given) && strcmp(row->certificate.text, applicant->certificate.text) == 0;
		if (same && is_value(&row->firm.given) && is_value(&applicant->firm.given) &&
		    strcmp(row->firm.text, applicant->firm.text) == 0)
			return true;
	}
	return false;
}

static void doubt_certificate(Doubts *doubts)
{
	const Cases *cases = doubts->judging->cases;
	const Applicant *applicant = &cases->submittal->parties.applicant;
	if (is_value(&applicant->certificate.given) && !is_in_register(cases, applicant))
		doubt(doubts,
		      arena_printf(doubts->judging->arena, "installer's certificate %s",
				   cut_text(applicant->certificate.text, doubts->judging->arena)),
		      "no register has it for this firm");
}

static void doubt_letters(Doubts *doubts)
{
	const Submittal *submittal = doubts->judging->cases->submittal;
	for (uint32_t i = 0; i < submittal->engineering.of.count; i++) {
		const Letter *letter = &submittal->engineering.of.row[i];
		if (is_value(&letter->letter.given) && is_value(&letter->sealed.given) && letter->sealed.yes &&
		    !is_seen(doubts, &letter->letter))
			doubt(doubts,
			      arena_printf(doubts->judging->arena, "seal and date of letter %s",
					   cut_text(letter->letter.text, doubts->judging->arena)),
			      "the applicant's word; the reviewer has not seen the letter");
	}
}

/* Papers are named in one line: a package has many. */
static void doubt_papers(Doubts *doubts)
{
	Arena *arena = doubts->judging->arena;
	const Submittal *submittal = doubts->judging->cases->submittal;
	const char *named = "";
	unsigned unseen = 0;
	for (uint32_t i = 0; i < submittal->documents.of.count; i++) {
		const Document *paper = &submittal->documents.of.row[i];
		if (!is_value(&paper->number.given) || is_seen(doubts, &paper->number))
			continue;
		if (unseen < MOST_PAPERS)
			named = arena_printf(arena, "%s%s%s", named, unseen > 0 ? ", " : "", cut_text(paper->number.text, arena));
		unseen++;
	}
	if (unseen > MOST_PAPERS)
		named = arena_printf(arena, "%s and %u more", named, unseen - MOST_PAPERS);
	if (unseen > 0)
		doubt(doubts, arena_printf(arena, "papers named in the package: %s", named), "the reviewer has not seen them");
}

/* PART_FIELDS lie at one place in every part. */
static void doubt_lives(Doubts *doubts)
{
	const Cases *cases = doubts->judging->cases;
	for (int kind = 0; kind < RECORD_KINDS; kind++)
		for (uint32_t i = 0; is_part((RecordKind)kind) && i < cases->of[kind].count; i++) {
			const Panel *part = cases->of[kind].at[i]->row;
			if (!is_value(&part->stated_life_yr.given) || is_seen(doubts, &part->life_paper))
				continue;
			doubt(doubts, arena_printf(doubts->judging->arena, "stated life of %s", cases->of[kind].at[i]->name),
			      "a paper named by the applicant; the reviewer has not seen it");
		}
}

/* ---- figures ---- */

/* "elevation decay (wind_constants.csv)" of "wind_constants.csv elevation_decay": a row, and the table it stands in. */
static const char *constant_words(const char *constant, Arena *arena)
{
	size_t table = strcspn(constant, " ");
	if (constant[table] == '\0')
		return constant;
	char *row = arena_text(arena, constant + table + 1, strlen(constant + table + 1));
	for (char *c = row; *c != '\0'; c++)
		if (*c == '_')
			*c = ' ';
	return arena_printf(arena, "%s (%.*s)", row, (int)table, constant);
}

/* Counts each constant once, and names those known from memory. */
static void count_constants(Doubts *doubts)
{
	const Cases *cases = doubts->judging->cases;
	Hash *counted = hash_make(doubts->judging->arena, 16);
	for (uint32_t i = 0; i < cases->uses; i++) {
		Use *use = &cases->use[i];
		if (use->kind != USED_CONSTANT || use->what.constant == NULL || use->known_by > KNOWN_PRACTICE)
			continue;
		if (hash_put(counted, use->what.constant, strlen(use->what.constant), use) != NULL)
			continue;
		doubts->judging->verdict->known_by[use->known_by]++;
		if (use->known_by == KNOWN_MEMORY)
			doubt(doubts, constant_words(use->what.constant, doubts->judging->arena),
			      "a figure from memory: verify it before it is relied on");
	}
}

void find_unverified(Judging *judging)
{
	Doubts doubts = { .judging = judging, .seen = papers_seen(judging) };
	doubt_day(&doubts);
	doubt_certificate(&doubts);
	doubt_letters(&doubts);
	doubt_lives(&doubts);
	count_constants(&doubts);
	doubt_papers(&doubts);
	if (doubts.left_out > 0)
		doubts.line[MOST_LINES - 1] =
			(Unverified){ arena_printf(judging->arena, "%u more", (unsigned)doubts.left_out + 1),
				      "of the same kinds" };
	judging->verdict->unverified = doubts.line;
	judging->verdict->unverifieds = doubts.count;
}
