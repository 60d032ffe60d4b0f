/* SPDX-License-Identifier: MIT
 * The report of the round before, by --previous or from the folder of --reports, and the chain it belongs to. A report that
 * does not fit refuses the review, with the link that does not hold; nothing is written then.
 */
#include "rounds.h"

#include "file.h"
#include "opening.h"
#include "report.h"

#include <string.h>
#include <unistd.h>

enum { LAST_ROUND = 999, LONGEST_NAME = 120 };

/* One submittal in one folder. */
typedef struct {
	const Shared *shared;
	const char *folder, *name; /* name: of the submittal, as a file's */
	Arena *arena;
	Refusal *refusal;
} Kept;

static bool refuse(Refusal *refusal, const char *why)
{
	refusal->why = why;
	return false;
}

static bool refuse_by(Refusal *refusal, const Complaints *faults, const Source *source)
{
	refusal->faults = faults_text(refusal->keep, faults, source);
	return refuse(refusal, "the report of the round before cannot be used");
}

/* ---- reading one ---- */

static const Earlier *read_report(const char *path, Arena *arena, Refusal *refusal)
{
	Complaints faults = { .arena = arena };
	const Source *source;
	const Earlier *earlier = open_report(arena, &(Opening){ path, SOURCE_PREVIOUS, REPORT_MIB }, &source, &faults);
	if (earlier == NULL)
		refuse_by(refusal, &faults, source);
	return earlier;
}

/* ---- whether it fits ---- */

static const char *number_of(const Submittal *submittal)
{
	const Text *number = &submittal->submittal;
	return is_value(&number->given) && number->text != NULL && *number->text != '\0' ? number->text : NULL;
}

/* The round this submittal says it is of, or its reviewer; 0: neither does. */
static unsigned round_said(const Inputs *inputs)
{
	const Number *round = &inputs->submittal->round_one;
	if (!is_value(&round->given) && inputs->review != NULL)
		round = &inputs->review->round_one;
	return is_value(&round->given) && round->value >= 1 && round->value <= LAST_ROUND ? (unsigned)round->value : 0;
}

static bool is_bid(const Submittal *submittal)
{
	return is_value(&submittal->stage.given) && (Stage)submittal->stage.word == STAGE_bid;
}

static const char *round_words(unsigned round, bool bid, Arena *arena)
{
	return bid ? "stage bid" : arena_printf(arena, "round %u", round);
}

static bool fits(const Earlier *earlier, const Inputs *inputs, Arena *arena, Refusal *refusal)
{
	Complaints faults = { .arena = arena };
	const char *number = number_of(inputs->submittal);
	Place whole = { .source = SOURCE_PREVIOUS };
	if (number == NULL || earlier->submittal == NULL || strcmp(number, earlier->submittal) != 0)
		complain(&faults, MESSAGE_PRV_07, whole, (About){ .value = earlier->submittal != NULL ? earlier->submittal : "no number",
			.want = number != NULL ? number : "no number" });
	unsigned round = round_said(inputs);
	bool was_bid = earlier->stage == STAGE_bid, bid = is_bid(inputs->submittal);
	bool is_next = was_bid ? bid || round <= 1 : !bid && earlier->round < LAST_ROUND && (round == 0 || round == earlier->round + 1u);
	if (!is_next)
		complain(&faults, MESSAGE_PRV_08, whole, (About){ .value = round_words(earlier->round, was_bid, arena),
			.want = round_words(round, bid, arena) });
	return faults.count == 0 || refuse_by(refusal, &faults, earlier->source);
}

static bool use(const Earlier *earlier, Inputs *inputs, Arena *arena, Refusal *refusal)
{
	if (earlier == NULL || !fits(earlier, inputs, arena, refusal))
		return false;
	Complaints quiet = { .arena = arena }; /* they were told in that round */
	inputs->earlier = earlier;
	if (earlier->values != NULL)
		inputs->before = read_submittal(arena, earlier->values, earlier->source, inputs->reference, &quiet);
	return true;
}

/* ---- the folder ---- */

/* Letters, digits and a few signs as they are, all else by its number; NULL for a name too long for a file. */
static const char *file_name(const char *number, Arena *arena)
{
	const char *name = "";
	if (strlen(number) > LONGEST_NAME)
		return NULL;
	for (const char *c = number; *c != '\0'; c++) {
		bool is_plain = (*c >= 'a' && *c <= 'z') || (*c >= 'A' && *c <= 'Z') || (*c >= '0' && *c <= '9') || *c == '-' || *c == '_' ||
				(*c == '.' && c != number);
		name = is_plain ? arena_printf(arena, "%s%c", name, *c) : arena_printf(arena, "%s%%%02X", name, (unsigned)(unsigned char)*c);
	}
	return name;
}

static const char *path_of(const Kept *kept, unsigned round)
{
	return arena_printf(kept->arena, "%s/%s.%u.json", kept->folder, kept->name, round);
}

static bool is_kept(const Kept *kept, unsigned round)
{
	return access(path_of(kept, round), F_OK) == 0;
}

/* Every link down to the first: the report that each names must still be the one it was made from. */
static bool holds_chain(const Kept *kept, const Earlier *earlier)
{
	for (const Earlier *link = earlier; link->before.sha256 != NULL && link->before_round > 0 && link->before_round < link->round;) {
		if (!is_kept(kept, link->before_round))
			return true;
		const char *path = path_of(kept, link->before_round);
		const Earlier *before = read_report(path, kept->arena, kept->refusal);
		if (before == NULL)
			return false;
		if (strcmp(before->sha256, link->before.sha256) != 0) {
			Complaints faults = { .arena = kept->arena };
			complain(&faults, MESSAGE_PRV_09, (Place){ .source = SOURCE_PREVIOUS }, (About){ .value = path });
			return refuse_by(kept->refusal, &faults, link->source);
		}
		link = before;
	}
	return true;
}

static unsigned last_kept(const Kept *kept)
{
	unsigned last = 0;
	for (unsigned round = LAST_ROUND; round > 0 && last == 0; round--)
		last = is_kept(kept, round) ? round : 0;
	return last;
}

/* No report of the round right before: if there is an older one, a link is missing; if there is none, the folder is new. */
static bool lacks(const Kept *kept, Inputs *inputs, unsigned round)
{
	for (unsigned older = 1; older + 1 < round; older++)
		if (is_kept(kept, older))
			return refuse(kept->refusal, arena_printf(kept->refusal->keep, "%s is missing, and %s is there", path_of(kept, round - 1),
				path_of(kept, older)));
	inputs->lacks_earlier = arena_printf(kept->arena, "%s.%u.json", kept->name, round - 1);
	return true;
}

/* The round's own file may be written anew, never over a later round or over what is not this round's report. */
static bool may_write(const Kept *kept, const Inputs *inputs, unsigned round)
{
	Arena *keep = kept->refusal->keep;
	if (is_kept(kept, round + 1))
		return refuse(kept->refusal, arena_printf(keep, "round %u is closed: %s is there already", round, path_of(kept, round + 1)));
	if (!is_kept(kept, round))
		return true;
	const Earlier *there = read_report(path_of(kept, round), kept->arena, kept->refusal);
	if (there == NULL)
		return false;
	const char *number = number_of(inputs->submittal);
	if (there->submittal == NULL || strcmp(there->submittal, number) != 0 || there->round != round)
		return refuse(kept->refusal, arena_printf(keep, "%s is not the report of this submittal and round", path_of(kept, round)));
	if (there->is_review && inputs->review == NULL)
		return refuse(kept->refusal, arena_printf(keep, "%s is the reviewer's, and a self-check does not take its place",
			path_of(kept, round)));
	return true;
}

static bool find_in_folder(const Kept *kept, Inputs *inputs)
{
	unsigned round = round_said(inputs);
	if (round == 0)
		round = last_kept(kept) + 1;
	if (!may_write(kept, inputs, round))
		return false;
	if (inputs->earlier != NULL || round == 1)
		return true;
	if (!is_kept(kept, round - 1))
		return lacks(kept, inputs, round);
	const Earlier *earlier = read_report(path_of(kept, round - 1), kept->arena, kept->refusal);
	return earlier != NULL && holds_chain(kept, earlier) && use(earlier, inputs, kept->arena, kept->refusal);
}

/* ---- the whole ---- */

const char *wrong_rounds(const Arguments *arguments, bool several)
{
	const char *folder = arguments->value[OPTION_reports];
	if (several && arguments->value[OPTION_previous] != NULL)
		return "--previous is the report of one submittal; with several, keep their reports in a folder by --reports";
	if (folder != NULL && !file_is_folder(folder))
		return arena_printf(arguments->arena, "--reports takes a folder that exists, not %s", folder);
	return NULL;
}

bool run_in_rounds(const Arguments *arguments)
{
	return arguments->value[OPTION_reports] != NULL || arguments->value[OPTION_previous] != NULL;
}

bool find_earlier(const Shared *shared, Inputs *inputs, Arena *arena, Refusal *refusal)
{
	const char *previous = shared->arguments->value[OPTION_previous], *folder = shared->arguments->value[OPTION_reports];
	if (previous != NULL && !use(read_report(previous, arena, refusal), inputs, arena, refusal))
		return false;
	if (folder == NULL || is_bid(inputs->submittal))
		return true;
	const char *number = number_of(inputs->submittal), *name = number != NULL ? file_name(number, arena) : NULL;
	if (name == NULL)
		return refuse(refusal, "its report cannot be kept: it has no number, or one too long for the name of a file");
	Kept kept = { shared, folder, name, arena, refusal };
	return find_in_folder(&kept, inputs);
}

Keeping report_to_keep(const Shared *shared, const Verdict *verdict, Arena *keep)
{
	const char *folder = shared->arguments->value[OPTION_reports], *number = number_of(verdict->cases->submittal);
	Keeping keeping = { NULL, NULL, 0 };
	if (folder == NULL || verdict->broken_file || verdict->stage == STAGE_bid || number == NULL)
		return keeping;
	const ReportFormat *json = report_format("json");
	Out *out = out_make(keep, json->escape);
	json->write(out, verdict, keep);
	Kept kept = { shared, folder, file_name(number, keep), keep, NULL };
	keeping.text = out_text(out, &keeping.length);
	keeping.path = path_of(&kept, verdict->round);
	return keeping;
}
