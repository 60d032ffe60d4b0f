/* SPDX-License-Identifier: MIT
 * `review`: each submittal once through the whole pipeline, in an arena that is wound back after it. A file that cannot be judged
 * does not stop the rest; its status, 2, wins.
 */
#include "commands.h"
#include "batch.h"
#include "errands.h"
#include "file.h"
#include "hash.h"
#include "judging.h"
#include "outputs.h"
#include "rounds.h"
#include "say.h"
#include "summary.h"

#include <stdlib.h>
#include <string.h>

typedef struct {
	const Arguments *arguments;
	Shared shared;
	Outputs outputs;
	Errands errands;
	Action gate;
	Summary summary;
	Hash *kept; /* paths of the reports kept in this run, each with the file it is of */
	bool reviewer_used, replies_used;
} Run;

/* What came of one errand. */
typedef struct {
	Errand errand;
	const char *fault; /* for standard error; NULL */
	const Out *faults; /* the same, at their places; NULL */
	Keeping keeping; /* the report for the folder of reports */
	Finished finished;
	Reviewed reviewed;
	bool reported, by_reviewer, by_replies;
} Result;

/* ---- one submittal, by any thread ---- */

/* The verdict on a file with its remedies; NULL where the reviewer's file cannot be used, which has been said, or the report of
 * the round before. */
static Verdict *advised(Run *run, const char *path, Arena *arena, Refusal *refusal)
{
	Verdict *verdict = judge_round(&run->shared, path, arena, refusal);
	if (verdict == NULL)
		return NULL;
	refusal->why = "the reviewer's file cannot be used with it";
	if (!verdict->broken_file && !accept_review(&run->shared.loaded, verdict))
		return NULL;
	if (!verdict->broken_file)
		advise(verdict, arena);
	verdict->gate = run->gate;
	verdict->in_rounds = run_in_rounds(run->arguments);
	if (run->shared.hashes)
		take_fingerprints(verdict, arena);
	verdict->tells_passed = run->arguments->value[OPTION_passed] != NULL;
	if (verdict->tells_passed || outputs_need_outcomes(&run->outputs))
		find_outcomes(verdict, arena);
	if (outputs_need_site_checks(&run->outputs))
		find_site_checks(verdict, arena);
	if (outputs_need_drawings(&run->outputs))
		draw_areas(verdict, arena);
	return verdict;
}

static void *next_errand(void *user, Arena *arena)
{
	Run *run = user;
	Result *result = TAKE(arena, Result, 1);
	return errands_next(&run->errands, &result->errand, arena) ? result : NULL;
}

static void review_file(void *user, void *made, Arena *keep, Arena *own)
{
	Run *run = user;
	Result *result = made;
	const char *path = result->errand.path;
	if (path == NULL)
		return;
	Refusal refusal = { .keep = keep };
	const Verdict *verdict = advised(run, path, own, &refusal);
	if (verdict == NULL) {
		result->faults = refusal.faults;
		result->fault = arena_printf(keep, "%s: not reviewed: %s", path, refusal.why);
		result->reviewed.broken = true;
		return;
	}
	outputs_write(&run->outputs, verdict, &result->finished, keep);
	result->keeping = report_to_keep(&run->shared, verdict, keep);
	result->reported = true;
	result->by_reviewer = verdict->cases->review != NULL;
	result->by_replies = verdict->replies_source != NULL;
	result->reviewed = reviewed_of(verdict, run->gate);
	if (verdict->broken_file)
		result->fault = arena_printf(keep, "%s: could not be judged: %s", path, why_broken(verdict));
}

/* ---- all of them, in order ---- */

/* Two files of one submittal and round in one run: the first is kept, the second is told. */
static void keep_result(Run *run, const Result *result)
{
	const Keeping *keeping = &result->keeping;
	Arena *arena = run->arguments->arena;
	if (keeping->path == NULL)
		return;
	if (run->kept == NULL)
		run->kept = hash_make(arena, 16);
	const char *before = hash_get(run->kept, keeping->path, strlen(keeping->path));
	if (before != NULL) {
		summary_interrupt(&run->summary);
		say_error(arena_printf(arena, "%s: not kept: %s holds the report of %s in this run", result->errand.path,
			keeping->path, before));
		run->summary.failed = true;
		return;
	}
	const char *path = arena_text(arena, keeping->path, strlen(keeping->path));
	hash_put(run->kept, path, strlen(path), arena_text(arena, result->errand.path, strlen(result->errand.path)));
	file_write(path, keeping->text, keeping->length);
}

static void show_result(void *user, const void *made)
{
	Run *run = user;
	const Result *result = made;
	keep_result(run, result);
	if (result->reported)
		outputs_send(&run->outputs, &result->finished);
	if (result->errand.fault != NULL || result->fault != NULL)
		summary_interrupt(&run->summary);
	if (result->errand.fault != NULL)
		say_error(result->errand.fault);
	if (result->faults != NULL)
		send_error(result->faults);
	if (result->fault != NULL)
		say_error(result->fault);
	run->reviewer_used |= result->by_reviewer;
	run->replies_used |= result->by_replies;
	if (result->errand.path != NULL)
		summary_add(&run->summary, &result->reviewed);
	else
		run->summary.failed = true;
}

/* What was given and served nothing is a mistake of the command line. */
static void fail_unused(Run *run, OptionId option, const char *why)
{
	summary_interrupt(&run->summary);
	say_error(arena_printf(run->arguments->arena, "%s: %s", run->arguments->value[option], why));
	run->summary.failed = true;
}

static int review_all(Run *run, unsigned jobs)
{
	Batch batch = { run, next_errand, review_file, show_result, jobs };
	run_batch(&batch);
	errands_end(&run->errands);
	outputs_close(&run->outputs);
	if (run->shared.loaded.review != NULL && run->shared.several && !run->reviewer_used)
		fail_unused(run, OPTION_reviewer, "none of these submittals is the one this reviewer's file is for");
	if (run->shared.loaded.replies != NULL && run->shared.loaded.replies->rows > 0 && !run->replies_used)
		fail_unused(run, OPTION_replies, "none of these replies is meant for what was reviewed");
	if (run->shared.several && run->arguments->value[OPTION_quiet] == NULL)
		summary_print(&run->summary, run->arguments->arena);
	const Summary *summary = &run->summary;
	return summary->failed || summary->broken > 0 ? STATUS_FAILED : summary->found > 0 ? STATUS_FOUND : STATUS_FINE;
}

/* ---- what was asked for ---- */

/* "not-reviewed", "Not Reviewed": letters of either case, blanks as hyphens or underscores. */
static int find_gate(const char *text)
{
	for (int action = 0; action < ACTION_COUNT; action++) {
		const char *words = action_words((Action)action), *t = text;
		while (*words != '\0' && (*t == *words || *t - 32 == *words || (*words == ' ' && (*t == '-' || *t == '_'))))
			words++, t++;
		if (*words == '\0' && *t == '\0')
			return action;
	}
	return -1;
}

static const char *gate_names(Arena *arena)
{
	const char *names = "";
	for (int action = 0; action < ACTION_COUNT; action++)
		names = arena_printf(arena, "%s%s%s", names, action > 0 ? ", " : "", action_words((Action)action));
	return names;
}

/* How many threads; 0 if what was asked for is none. */
static unsigned find_jobs(const Arguments *arguments, Batching batching)
{
	const char *asked = arguments->value[OPTION_jobs];
	if (asked == NULL)
		return batching == ONE_FILE ? 1 : processors();
	char *end;
	unsigned long jobs = strtoul(asked, &end, 10);
	bool is_number = *asked >= '0' && *asked <= '9' && *end == '\0';
	return is_number && jobs >= 1 && jobs <= MOST_JOBS ? (unsigned)jobs : 0;
}

static bool asks_twice_for_input(const Arguments *arguments)
{
	const char *list = arguments->value[OPTION_files_from];
	uint32_t count = list != NULL && strcmp(list, "-") == 0;
	for (uint32_t i = 0; i < arguments->operands; i++)
		count += strcmp(arguments->operand[i], "-") == 0;
	return count > 1;
}

/* What is wrong with the values of the options; NULL if nothing is. */
static const char *wrong_value(Run *run)
{
	const Arguments *arguments = run->arguments;
	const char *gate = arguments->value[OPTION_gate];
	if (arguments->operands == 0 && arguments->value[OPTION_files_from] == NULL)
		return "review needs a FILE, a FOLDER, or - for standard input";
	if (asks_twice_for_input(arguments))
		return "standard input can be read once only";
	if (find_jobs(arguments, ONE_FILE) == 0)
		return arena_printf(arguments->arena, "--jobs takes a number from 1 to %d, not %s", MOST_JOBS, arguments->value[OPTION_jobs]);
	int action = gate != NULL ? find_gate(gate) : ACTION_NOT_REVIEWED;
	if (action < 0)
		return arena_printf(arguments->arena, "no action %s; the actions are: %s", gate, gate_names(arguments->arena));
	run->gate = (Action)action;
	return wrong_shared(&run->shared);
}

static Batching batching_of(const Arguments *arguments)
{
	if (arguments->value[OPTION_files_from] != NULL)
		return A_FOLDER;
	for (uint32_t i = 0; i < arguments->operands; i++)
		if (strcmp(arguments->operand[i], "-") != 0 && file_is_folder(arguments->operand[i]))
			return A_FOLDER;
	return arguments->operands > 1 ? SEVERAL_FILES : ONE_FILE;
}

static bool begin(Run *run, Batching batching)
{
	const char *why;
	if (!outputs_open(&run->outputs, run->arguments, batching) || !load_shared(&run->shared))
		return false;
	if (errands_begin(&run->errands, run->arguments, &why))
		return true;
	say_error(why);
	errands_end(&run->errands);
	return false;
}

int command_review(const Arguments *arguments)
{
	Run run = { .arguments = arguments, .shared = { .arguments = arguments, .as_of = INT32_MIN } };
	Batching batching = batching_of(arguments);
	run.shared.several = batching != ONE_FILE;
	const char *wrong = wrong_value(&run);
	if (wrong == NULL)
		wrong = wrong_rounds(arguments, run.shared.several);
	if (wrong != NULL) {
		say_usage(arguments->command, wrong);
		return STATUS_FAILED;
	}
	if (!begin(&run, batching))
		return STATUS_FAILED;
	run.shared.hashes = outputs_need_hash(&run.outputs) || run_in_rounds(arguments);
	run.summary = summary_of(run.gate, run.shared.several && arguments->value[OPTION_quiet] == NULL);
	return review_all(&run, find_jobs(arguments, batching));
}
