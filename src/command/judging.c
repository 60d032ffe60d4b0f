/* SPDX-License-Identifier: MIT
 * One submittal to its verdict: which criteria and which reviewer's file it is judged by, and what happens where it breaks.
 */
#include "judging.h"

#include "date.h"
#include "rounds.h"
#include "say.h"

#include <string.h>
#include <unistd.h>

/* --criteria decides, else the reviewer's file, else the submittal's own request, else the built-in edition. What a file asks
 * for is the name of a built-in edition, never a path. */
static Text asked_criteria(const Shared *shared, const Submittal *submittal)
{
	static const Text built_in = { .text = "sample-2026" };
	const Review *review = shared->loaded.review;
	if (review != NULL && is_value(&review->criteria.given))
		return review->criteria;
	return is_value(&submittal->criteria.given) ? submittal->criteria : built_in;
}

/* The edition of a name, loaded and hashed when it is first asked for; NULL if there is none. */
static const Shelf *take_from_shelf(Shared *shared, const char *name, bool may_be_folder)
{
	pthread_mutex_lock(&shared->lock);
	Shelf *shelf = load_criteria(&shared->loaded, name, may_be_folder);
	if (shelf != NULL && shelf->criteria != NULL && shelf->sha256 == NULL && shared->hashes)
		shelf->sha256 = criteria_hash(shelf->criteria, shared->loaded.arena);
	pthread_mutex_unlock(&shared->lock);
	return shelf;
}

static const Criteria *choose_criteria(Shared *shared, const Submittal *submittal, Complaints *complaints, const char **sha256)
{
	const char *given = shared->arguments->value[OPTION_criteria];
	Text asked = asked_criteria(shared, submittal);
	const Shelf *shelf = take_from_shelf(shared, given != NULL ? given : asked.text, given != NULL);
	if (shelf == NULL) {
		About about = { .value = asked.text, .want = edition_names(complaints->arena) };
		complain(complaints, MESSAGE_FIL_05, asked.given.place, about);
		return NULL;
	}
	*sha256 = shelf->sha256;
	return shelf->criteria;
}

/* Among several submittals the reviewer's file speaks of one. */
static const Review *review_for(const Shared *shared, const Submittal *submittal)
{
	const Review *review = shared->loaded.review;
	if (review == NULL)
		return NULL;
	bool named = is_value(&submittal->submittal.given) && strcmp(submittal->submittal.text, review->submittal.text) == 0;
	return named || !shared->several ? review : NULL;
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

/* A submittal as nodes, and where they stand. */
typedef struct {
	Node *root;
	const Source *source;
	Complaints complaints;
} Rooted;

static Verdict *judge_root(Shared *shared, Rooted *of, Refusal *refusal)
{
	Complaints *complaints = &of->complaints;
	Arena *arena = complaints->arena;
	Inputs inputs = { .reference = shared->loaded.reference, .registers = shared->loaded.registers, .as_of = shared->as_of };
	inputs.submittal = read_submittal(arena, of->root, of->source, inputs.reference, complaints);
	inputs.review = review_for(shared, inputs.submittal);
	const char *sha256 = NULL;
	if (!complaints->broken)
		inputs.criteria = choose_criteria(shared, inputs.submittal, complaints, &sha256);
	complaints->broken |= inputs.criteria == NULL;
	if (!complaints->broken && refusal != NULL && !find_earlier(shared, &inputs, arena, refusal))
		return NULL;
	Cases *cases = complaints->broken ? bare_cases(&inputs, arena) : resolve(arena, &inputs);
	Verdict *verdict = judge(arena, cases, complaints, of->source);
	verdict->review_source = inputs.review != NULL ? shared->loaded.review_source : NULL;
	verdict->criteria_sha256 = sha256;
	verdict->si = shared->si;
	return verdict;
}

Verdict *judge_round(Shared *shared, const char *path, Arena *arena, Refusal *refusal)
{
	Rooted of = { .complaints = { .arena = arena } };
	of.root = load_yaml(arena, path, SOURCE_SUBMITTAL, &of.source, &of.complaints);
	uint32_t replies = of.root != NULL && shared->loaded.replies != NULL ? add_replies(arena, of.root, shared->loaded.replies) : 0;
	Verdict *verdict = judge_root(shared, &of, refusal);
	if (verdict != NULL)
		verdict->replies_source = replies > 0 ? shared->loaded.replies->source : NULL;
	return verdict;
}

Verdict *judge_earlier(Shared *shared, const Earlier *report, Arena *arena)
{
	Rooted of = { report->values, report->source, { .arena = arena } };
	return judge_root(shared, &of, NULL);
}

Verdict *judge_file(Shared *shared, const char *path, Arena *arena)
{
	return judge_round(shared, path, arena, NULL);
}

/* Where a file breaks nothing is read any more, so the break is the last item. */
const char *why_broken(const Verdict *verdict)
{
	return verdict->items > 0 ? verdict->item[verdict->items - 1].finding : "see the faults of the criteria";
}

void say_broken(const Verdict *verdict, const char *path, Arena *arena)
{
	flush_out();
	say_error(arena_printf(arena, "%s: could not be judged: %s", path, why_broken(verdict)));
}

/* ---- what all submittals share ---- */

const char *wrong_shared(Shared *shared)
{
	const Arguments *arguments = shared->arguments;
	const char *as_of = arguments->value[OPTION_as_of];
	if (as_of != NULL && !date_read(as_of, strlen(as_of), &shared->as_of))
		return arena_printf(arguments->arena, "--as-of takes a day such as 2026-04-14, not %s", as_of);
	const char *units = arguments->value[OPTION_units];
	shared->si = units != NULL && strcmp(units, "si") == 0;
	if (units != NULL && !shared->si && strcmp(units, "us") != 0)
		return arena_printf(arguments->arena, "--units takes us or si, not %s", units);
	for (uint32_t i = 0; i < arguments->operands; i++)
		if (strcmp(arguments->operand[i], "-") == 0 && isatty(STDIN_FILENO))
			return "- reads a submittal from standard input, and nothing is sent there";
	return NULL;
}

bool load_shared(Shared *shared)
{
	const Arguments *arguments = shared->arguments;
	Loaded *loaded = &shared->loaded;
	pthread_mutex_init(&shared->lock, NULL);
	loaded->arena = arguments->arena;
	loaded->reference = read_reference(loaded->arena);
	if (!load_registers(loaded, arguments->value[OPTION_registers]))
		return false;
	if (arguments->value[OPTION_reviewer] != NULL && !load_review(loaded, arguments->value[OPTION_reviewer]))
		return false;
	if (arguments->value[OPTION_replies] != NULL && !load_replies(loaded, arguments->value[OPTION_replies]))
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
