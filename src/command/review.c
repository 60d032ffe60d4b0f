/* SPDX-License-Identifier: MIT
 * `review`: each submittal once through the whole pipeline, in an arena that is wound back after it. A file that cannot be judged
 * does not stop the rest; its status, 2, wins.
 */
#include "commands.h"
#include "date.h"
#include "file.h"
#include "loading.h"
#include "outputs.h"
#include "say.h"

#include <string.h>
#include <unistd.h>

typedef struct {
	const Arguments *arguments;
	Loaded loaded;
	Outputs outputs;
	Action gate;
	int32_t as_of;
	uint32_t files, found, broken; /* found: at or above the gate */
	bool several, review_used, failed, si;
} Run;

/* ---- one submittal ---- */

/* --criteria decides, else the reviewer's file, else the submittal's own request, else the built-in edition. What a file asks
 * for is the name of a built-in edition, never a path. */
static Text asked_criteria(const Run *run, const Submittal *submittal)
{
	static const Text built_in = { .text = "sample-2026" };
	const Review *review = run->loaded.review;
	if (review != NULL && is_value(&review->criteria.given))
		return review->criteria;
	return is_value(&submittal->criteria.given) ? submittal->criteria : built_in;
}

static const Criteria *choose_criteria(Run *run, const Submittal *submittal, Complaints *complaints, const char **sha256)
{
	const char *given = run->arguments->value[OPTION_criteria];
	Text asked = asked_criteria(run, submittal);
	Shelf *shelf = load_criteria(&run->loaded, given != NULL ? given : asked.text, given != NULL);
	if (shelf == NULL) {
		About about = { .value = asked.text, .want = edition_names(complaints->arena) };
		complain(complaints, MESSAGE_FIL_05, asked.given.place, about);
		return NULL;
	}
	if (shelf->criteria != NULL && shelf->sha256 == NULL && outputs_need_hash(&run->outputs))
		shelf->sha256 = criteria_hash(shelf->criteria, run->loaded.arena);
	*sha256 = shelf->sha256;
	return shelf->criteria;
}

/* Among several submittals the reviewer's file speaks of one. */
static const Review *review_for(Run *run, const Submittal *submittal)
{
	const Review *review = run->loaded.review;
	if (review == NULL)
		return NULL;
	bool named = is_value(&submittal->submittal.given) && strcmp(submittal->submittal.text, review->submittal.text) == 0;
	run->review_used |= named;
	return named || !run->several ? review : NULL;
}

/* Where no criteria can be had there is nothing to resolve: the readers' messages are all. */
static Cases *bare_cases(const Inputs *inputs, Arena *arena)
{
	Cases *cases = TAKE(arena, Cases, 1);
	cases->submittal = inputs->submittal;
	cases->review = inputs->review;
	cases->reference = inputs->reference;
	cases->registers = inputs->registers;
	cases->arena = arena;
	cases->as_of = INT32_MIN;
	return cases;
}

/* NULL where the reviewer's file cannot be used, which has been said. */
static Verdict *judge_file(Run *run, const char *path, Arena *arena)
{
	Complaints complaints = { .arena = arena };
	const Source *source;
	Node *root = load_yaml(arena, path, SOURCE_SUBMITTAL, &source, &complaints);
	Inputs inputs = { .reference = run->loaded.reference, .registers = run->loaded.registers, .as_of = run->as_of };
	inputs.submittal = read_submittal(arena, root, source, inputs.reference, &complaints);
	inputs.review = review_for(run, inputs.submittal);
	const char *sha256 = NULL;
	if (!complaints.broken)
		inputs.criteria = choose_criteria(run, inputs.submittal, &complaints, &sha256);
	complaints.broken |= inputs.criteria == NULL;
	Cases *cases = complaints.broken ? bare_cases(&inputs, arena) : resolve(arena, &inputs);
	Verdict *verdict = judge(arena, cases, &complaints, source);
	verdict->review_source = inputs.review != NULL ? run->loaded.review_source : NULL;
	verdict->criteria_sha256 = sha256;
	verdict->si = run->si;
	if (!verdict->broken_file && !accept_review(&run->loaded, verdict))
		return NULL;
	if (!verdict->broken_file)
		advise(verdict, arena);
	if (outputs_need_hash(&run->outputs))
		take_fingerprints(verdict, arena);
	return verdict;
}

static bool is_at_gate(const Verdict *verdict, Action gate)
{
	for (int action = 0; action <= (int)gate; action++)
		if (verdict->by_action[action] > 0)
			return true;
	return false;
}

/* Where a file breaks nothing is read any more, so the break is the last item. */
static void say_broken(const Verdict *verdict, const char *path, Arena *arena)
{
	const char *why = verdict->items > 0 ? verdict->item[verdict->items - 1].finding : "see the faults of the criteria";
	flush_out();
	say_error(arena_printf(arena, "%s: could not be judged: %s", path, why));
}

static void review_file(Run *run, const char *path, Arena *arena)
{
	ArenaMark mark = arena_mark(arena);
	const Verdict *verdict = judge_file(run, path, arena);
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
	if (!run->several || run->arguments->value[OPTION_quiet] != NULL)
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
	if (run->loaded.review != NULL && run->several && !run->review_used)
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
	const char *gate = arguments->value[OPTION_gate], *as_of = arguments->value[OPTION_as_of];
	if (arguments->operands == 0)
		return "review needs a FILE, a FOLDER, or - for standard input";
	int action = gate != NULL ? find_gate(gate) : ACTION_NOT_REVIEWED;
	if (action < 0)
		return arena_printf(arguments->arena, "no action %s; the actions are: %s", gate, gate_names(arguments->arena));
	run->gate = (Action)action;
	if (as_of != NULL && !date_read(as_of, strlen(as_of), &run->as_of))
		return arena_printf(arguments->arena, "--as-of takes a day such as 2026-04-14, not %s", as_of);
	const char *units = arguments->value[OPTION_units];
	run->si = units != NULL && strcmp(units, "si") == 0;
	if (units != NULL && !run->si && strcmp(units, "us") != 0)
		return arena_printf(arguments->arena, "--units takes us or si, not %s", units);
	for (uint32_t i = 0; i < arguments->operands; i++)
		if (strcmp(arguments->operand[i], "-") == 0 && isatty(STDIN_FILENO))
			return "- reads a submittal from standard input, and nothing is sent there";
	return NULL;
}

static Batch batch_of(const Arguments *arguments)
{
	for (uint32_t i = 0; i < arguments->operands; i++)
		if (strcmp(arguments->operand[i], "-") != 0 && file_is_folder(arguments->operand[i]))
			return A_FOLDER;
	return arguments->operands > 1 ? SEVERAL_FILES : ONE_FILE;
}

/* What all submittals share; false if it cannot be had, which has been said. */
static bool load_shared(Run *run)
{
	const Arguments *arguments = run->arguments;
	Loaded *loaded = &run->loaded;
	loaded->arena = arguments->arena;
	loaded->reference = read_reference(loaded->arena);
	if (!load_registers(loaded, arguments->value[OPTION_registers]))
		return false;
	if (arguments->value[OPTION_reviewer] != NULL && !load_review(loaded, arguments->value[OPTION_reviewer]))
		return false;
	const char *criteria = arguments->value[OPTION_criteria];
	if (criteria == NULL)
		return true;
	const Shelf *shelf = load_criteria(loaded, criteria, true);
	if (shelf == NULL)
		say_usage(arguments->command, arena_printf(loaded->arena, "no criteria %s: neither a folder nor one of: %s", criteria,
			edition_names(loaded->arena)));
	return shelf != NULL && shelf->criteria != NULL;
}

int command_review(const Arguments *arguments)
{
	Run run = { .arguments = arguments, .as_of = INT32_MIN };
	const char *wrong = wrong_value(&run);
	if (wrong != NULL) {
		say_usage(arguments->command, wrong);
		return STATUS_FAILED;
	}
	Batch batch = batch_of(arguments);
	run.several = batch != ONE_FILE;
	if (!outputs_open(&run.outputs, arguments, batch) || !load_shared(&run)) {
		outputs_drop(&run.outputs);
		return STATUS_FAILED;
	}
	return review_all(&run);
}
