/* SPDX-License-Identifier: MIT
 * `review`: each submittal once through the whole pipeline, in an arena that is wound back after it. A file that cannot be judged
 * does not stop the rest; its status, 2, wins.
 */
#include "commands.h"
#include "file.h"
#include "judging.h"
#include "outputs.h"
#include "say.h"

#include <string.h>

typedef struct {
	const Arguments *arguments;
	Shared shared;
	Outputs outputs;
	Action gate;
	uint32_t files, found, broken; /* found: at or above the gate */
	bool failed;
} Run;

/* ---- one submittal ---- */

static bool is_at_gate(const Verdict *verdict, Action gate)
{
	for (int action = 0; action <= (int)gate; action++)
		if (verdict->by_action[action] > 0)
			return true;
	return false;
}

/* The verdict on a file with its remedies; NULL where the reviewer's file cannot be used, which has been said. */
static Verdict *advised(Run *run, const char *path, Arena *arena)
{
	Verdict *verdict = judge_file(&run->shared, path, arena);
	if (!verdict->broken_file && !accept_review(&run->shared.loaded, verdict))
		return NULL;
	if (!verdict->broken_file)
		advise(verdict, arena);
	verdict->gate = run->gate;
	if (run->shared.hashes)
		take_fingerprints(verdict, arena);
	if (outputs_need_site_checks(&run->outputs))
		find_site_checks(verdict, arena);
	return verdict;
}

static void review_file(Run *run, const char *path, Arena *arena)
{
	ArenaMark mark = arena_mark(arena);
	const Verdict *verdict = advised(run, path, arena);
	run->files++;
	if (verdict == NULL) {
		run->broken++;
		arena_back(arena, mark);
		say_error(arena_printf(run->arguments->arena, "%s: not reviewed: the reviewer's file cannot be used with it", path));
		return;
	}
	outputs_add(&run->outputs, verdict, arena);
	run->broken += verdict->broken_file;
	run->found += !verdict->broken_file && is_at_gate(verdict, run->gate);
	if (verdict->broken_file)
		say_broken(verdict, path, arena);
	arena_back(arena, mark);
}

/* ---- files and folders ---- */

static void fail_operand(Run *run, const char *path, const char *why)
{
	flush_out();
	say_error(arena_printf(run->arguments->arena, "%s: %s", path, why));
	run->failed = true;
}

static void review_folder(Run *run, const char *path, Arena *arena)
{
	const char *const *found;
	size_t count;
	if (!file_walk(run->arguments->arena, path, &found, &count)) {
		fail_operand(run, path, "the folder cannot be opened");
		return;
	}
	if (count == 0)
		fail_operand(run, path, "no .yaml or .yml file stands in this folder");
	for (size_t i = 0; i < count; i++)
		review_file(run, found[i], arena);
}

static void print_summary(const Run *run)
{
	if (!run->shared.several || run->arguments->value[OPTION_quiet] != NULL)
		return;
	Arena *arena = run->arguments->arena;
	say_error(arena_printf(arena, "%u reviewed: %u with nothing at %s or worse, %u with something, %u could not be judged",
		run->files, run->files - run->found - run->broken, action_words(run->gate), run->found, run->broken));
}

static int review_all(Run *run)
{
	Arena *arena = arena_make();
	for (uint32_t i = 0; i < run->arguments->operands; i++) {
		const char *path = run->arguments->operand[i];
		if (strcmp(path, "-") != 0 && file_is_folder(path))
			review_folder(run, path, arena);
		else
			review_file(run, path, arena);
	}
	arena_free(arena);
	outputs_close(&run->outputs);
	if (run->shared.loaded.review != NULL && run->shared.several && !run->shared.review_used)
		fail_operand(run, run->arguments->value[OPTION_reviewer], "none of these submittals is the one this reviewer's file is for");
	print_summary(run);
	return run->failed || run->broken > 0 ? STATUS_FAILED : run->found > 0 ? STATUS_FOUND : STATUS_FINE;
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

/* What is wrong with the values of the options; NULL if nothing is. */
static const char *wrong_value(Run *run)
{
	const Arguments *arguments = run->arguments;
	const char *gate = arguments->value[OPTION_gate];
	if (arguments->operands == 0)
		return "review needs a FILE, a FOLDER, or - for standard input";
	int action = gate != NULL ? find_gate(gate) : ACTION_NOT_REVIEWED;
	if (action < 0)
		return arena_printf(arguments->arena, "no action %s; the actions are: %s", gate, gate_names(arguments->arena));
	run->gate = (Action)action;
	return wrong_shared(&run->shared);
}

static Batch batch_of(const Arguments *arguments)
{
	for (uint32_t i = 0; i < arguments->operands; i++)
		if (strcmp(arguments->operand[i], "-") != 0 && file_is_folder(arguments->operand[i]))
			return A_FOLDER;
	return arguments->operands > 1 ? SEVERAL_FILES : ONE_FILE;
}

int command_review(const Arguments *arguments)
{
	Run run = { .arguments = arguments, .shared = { .arguments = arguments, .as_of = INT32_MIN } };
	const char *wrong = wrong_value(&run);
	if (wrong != NULL) {
		say_usage(arguments->command, wrong);
		return STATUS_FAILED;
	}
	Batch batch = batch_of(arguments);
	run.shared.several = batch != ONE_FILE;
	if (!outputs_open(&run.outputs, arguments, batch) || !load_shared(&run.shared)) {
		outputs_drop(&run.outputs);
		return STATUS_FAILED;
	}
	run.shared.hashes = outputs_need_hash(&run.outputs);
	return review_all(&run);
}
