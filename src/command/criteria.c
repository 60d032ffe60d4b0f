/* SPDX-License-Identifier: MIT
 * `criteria`: checks and describes an edition; against an older one, judges by both what reports hold and tells what would turn.
 */
#include "commands.h"
#include "date.h"
#include "gaps.h"
#include "hash.h"
#include "loading.h"
#include "pipeline.h"
#include "reports.h"
#include "say.h"
#include "targets.h"

#include <stdlib.h>
#include <string.h>

/* The latest report on each submittal, and how its verdict turns. */
typedef struct {
	uint16_t round;
	Stage stage;
	bool turns;
	Turn turn;
} Judged;

typedef struct {
	const Arguments *arguments;
	Arena *arena;
	Loaded loaded;
	EditionCheck check;
	Hash *by_number;
	Judged **judged;
	uint32_t room;
} Checking;

/* ---- one report under both editions ---- */

static const Verdict *judged_by(const Checking *checking, const Criteria *criteria, const Earlier *report, Arena *arena)
{
	Complaints complaints = { .arena = arena };
	Inputs inputs = { .reference = checking->loaded.reference, .registers = checking->loaded.registers, .criteria = criteria,
		.as_of = checking->check.as_of };
	if (inputs.as_of == INT32_MIN && report->received != NO_DAY)
		inputs.as_of = report->received;
	inputs.submittal = read_submittal(arena, report->values, report->source, inputs.reference, &complaints);
	return judge(arena, resolve(arena, &inputs), &complaints, report->source);
}

static bool counts(const Finding *item)
{
	return item->action <= ACTION_NOT_REVIEWED;
}

static uint32_t counted(const Verdict *verdict)
{
	uint32_t count = 0;
	for (uint32_t i = 0; i < verdict->items; i++)
		count += counts(&verdict->item[i]);
	return count;
}

static const char *where_of(const Finding *item, const Spot *spot)
{
	const char *name = spot->where != NULL ? spot->where->name : item->name;
	return name != NULL ? name : "the submittal";
}

static const char *key_of(const Finding *item, const Spot *spot, Arena *arena)
{
	return arena_printf(arena, "%s\n%s", item->code, where_of(item, spot));
}

/* What the one raises and the other does not; kept in the run's arena. */
static const TurnedItem *only_in(const Checking *checking, const Verdict *one, const Verdict *other, uint32_t *count)
{
	Arena *arena = one->cases->arena;
	Hash *known = hash_make(arena, other->items + 8);
	TurnedItem *items = NULL;
	uint32_t room = 0;
	for (uint32_t i = 0; i < other->items; i++)
		for (uint32_t j = 0; j < other->item[i].spots; j++) {
			const char *key = key_of(&other->item[i], &other->item[i].spot[j], arena);
			if (counts(&other->item[i]))
				hash_put(known, key, strlen(key), known);
		}
	for (uint32_t i = 0; i < one->items; i++)
		for (uint32_t j = 0; j < one->item[i].spots; j++) {
			const Finding *item = &one->item[i];
			const char *key = key_of(item, &item->spot[j], arena), *where = where_of(item, &item->spot[j]);
			if (!counts(item) || hash_get(known, key, strlen(key)) != NULL)
				continue;
			hash_put(known, key, strlen(key), known);
			items = arena_more(checking->arena, items, *count, &room, sizeof *items);
			items[(*count)++] = (TurnedItem){ arena_text(checking->arena, item->code, strlen(item->code)),
				arena_text(checking->arena, where, strlen(where)), action_words(item->action) };
		}
	return items;
}

static void take_turn(const Checking *checking, Judged *judged, const Earlier *report, Arena *arena)
{
	const Verdict *before = judged_by(checking, checking->check.against, report, arena);
	const Verdict *after = judged_by(checking, checking->check.criteria, report, arena);
	const char *number = report->submittal != NULL ? report->submittal : report->source->name;
	Turn *turn = &judged->turn;
	*turn = (Turn){ .submittal = arena_text(checking->arena, number, strlen(number)), .round = report->round,
		.report = arena_text(checking->arena, report->source->name, strlen(report->source->name)) };
	turn->before = counted(before);
	turn->after = counted(after);
	turn->raised = only_in(checking, after, before, &turn->raiseds);
	turn->gone = only_in(checking, before, after, &turn->gones);
	judged->turns = turn->raiseds > 0 || turn->gones > 0;
	turn->kind = turn->before == 0 ? TURN_HELD_BACK : turn->after == 0 ? TURN_LET_THROUGH : TURN_CHANGED;
}

/* Of several reports on a submittal the latest round counts; a bid, which has none, comes first. */
static void take_report(void *user, const Earlier *report, Arena *arena)
{
	Checking *checking = user;
	const char *key = report->submittal != NULL ? report->submittal : report->source->name;
	Judged *judged = hash_get(checking->by_number, key, strlen(key));
	if (report->values == NULL)
		return;
	bool is_new = judged == NULL;
	if (is_new) {
		judged = TAKE(checking->arena, Judged, 1);
		const char *kept = arena_text(checking->arena, key, strlen(key));
		hash_put(checking->by_number, kept, strlen(kept), judged);
		checking->judged = arena_more(checking->arena, (void *)checking->judged, checking->check.judged, &checking->room,
			sizeof *checking->judged);
		checking->judged[checking->check.judged++] = judged;
	} else if (report->round < judged->round || (report->round == judged->round && report->stage <= judged->stage)) {
		return;
	}
	judged->round = report->round;
	judged->stage = report->stage;
	take_turn(checking, judged, report, arena);
}

static int by_number(const void *a, const void *b)
{
	return strcmp((*(Judged *const *)a)->turn.submittal, (*(Judged *const *)b)->turn.submittal);
}

static void sort_turns(Checking *checking)
{
	EditionCheck *check = &checking->check;
	Turn *turn = TAKE(checking->arena, Turn, (size_t)check->judged + 1);
	if (check->judged > 0)
		qsort((void *)checking->judged, check->judged, sizeof *checking->judged, by_number);
	for (uint32_t i = 0; i < check->judged; i++)
		if (checking->judged[i]->turns)
			turn[check->turns++] = checking->judged[i]->turn;
	check->turn = turn;
}

/* ---- what was asked for ---- */

static const char *wrong_words(Checking *checking)
{
	const Arguments *arguments = checking->arguments;
	const char *as_of = arguments->value[OPTION_as_of];
	if (arguments->operands != 1)
		return "criteria needs one FOLDER, or the name of a built-in edition";
	if (as_of != NULL && !date_read(as_of, strlen(as_of), &checking->check.as_of))
		return arena_printf(checking->arena, "--as-of takes a day such as 2026-04-14, not %s", as_of);
	if ((arguments->value[OPTION_against] != NULL) != (arguments->value[OPTION_reports] != NULL))
		return "--against OLD and --reports FOLDER go together: verdicts turn on submittals that were reviewed";
	return NULL;
}

/* NULL if it is faulty or not there, which has been said. */
static const Criteria *loaded_edition(Checking *checking, const char *name)
{
	const Shelf *shelf = load_criteria(&checking->loaded, name, true);
	if (shelf == NULL)
		say_usage(checking->arguments->command, arena_printf(checking->arena, "no criteria %s: neither a folder nor one of: %s", name,
			edition_names(checking->arena)));
	return shelf != NULL ? shelf->criteria : NULL;
}

static bool load(Checking *checking)
{
	EditionCheck *check = &checking->check;
	const char *against = checking->arguments->value[OPTION_against];
	checking->loaded.arena = checking->arena;
	checking->loaded.reference = check->reference = read_reference(checking->arena);
	if (!load_registers(&checking->loaded, checking->arguments->value[OPTION_registers]))
		return false;
	check->registers = checking->loaded.registers;
	check->criteria = loaded_edition(checking, checking->arguments->operand[0]);
	if (check->criteria == NULL)
		return false;
	check->sha256 = criteria_hash(check->criteria, checking->arena);
	if (against == NULL)
		return true;
	check->against = loaded_edition(checking, against);
	if (check->against == NULL)
		return false;
	check->against_sha256 = criteria_hash(check->against, checking->arena);
	return true;
}

int command_criteria(const Arguments *arguments)
{
	Checking checking = { .arguments = arguments, .arena = arguments->arena, .check = { .as_of = INT32_MIN } };
	Targets targets = { .count = 0 };
	const char *wrong = wrong_words(&checking);
	if (wrong == NULL)
		wrong = read_targets(arguments, &targets);
	if (wrong != NULL) {
		say_usage(arguments->command, wrong);
		return STATUS_FAILED;
	}
	if (!load(&checking))
		return STATUS_FAILED;
	find_gaps(&checking.check, arguments->arena);
	bool whole = true;
	if (checking.check.against != NULL) {
		checking.by_number = hash_make(arguments->arena, 64);
		TakeReport take = { &checking, take_report };
		whole = read_reports(&arguments->value[OPTION_reports], 1, &take);
		sort_turns(&checking);
	}
	Page page = { .edition = &checking.check };
	write_targets(&targets, &page, arguments->arena);
	return !whole ? STATUS_FAILED : checking.check.gaps > 0 || checking.check.turns > 0 ? STATUS_FOUND : STATUS_FINE;
}
