/* SPDX-License-Identifier: MIT
 * Counts a batch: packages by the gate, by their worst item and by the action recommended; items by action.
 */
#include "summary.h"

#include "command.h"

#include <stdio.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

static double now_seconds(void)
{
	struct timespec now;
	clock_gettime(CLOCK_MONOTONIC, &now);
	return (double)now.tv_sec + (double)now.tv_nsec * 1e-9;
}

Summary summary_of(Action gate, bool progress)
{
	return (Summary){ .gate = gate, .progress = progress && isatty(STDERR_FILENO) && !isatty(STDOUT_FILENO) };
}

Reviewed reviewed_of(const Verdict *verdict, Action gate)
{
	Reviewed reviewed = { .broken = verdict->broken_file, .worst = -1, .recommended = verdict->recommended_action };
	for (int action = ACTION_COUNT - 1; action >= 0; action--) {
		reviewed.by_action[action] = verdict->by_action[action];
		if (verdict->by_action[action] > 0)
			reviewed.worst = action;
	}
	reviewed.found = !reviewed.broken && reviewed.worst >= 0 && reviewed.worst <= (int)gate;
	return reviewed;
}

static void show_progress(Summary *summary)
{
	double now = now_seconds();
	if (!summary->progress || now - summary->told < 0.1)
		return;
	summary->told = now;
	fprintf(stderr, "\rseamstamp: %u reviewed, %u with something, %u could not be judged\033[K", summary->files - summary->broken,
		summary->found, summary->broken);
}

void summary_interrupt(const Summary *summary)
{
	if (summary->progress && summary->told > 0)
		fputs("\r\033[K", stderr);
}

void summary_add(Summary *summary, const Reviewed *reviewed)
{
	summary->files++;
	summary->broken += reviewed->broken;
	summary->found += reviewed->found;
	for (int action = 0; action < ACTION_COUNT && !reviewed->broken; action++) {
		summary->items[action] += reviewed->by_action[action];
		summary->worst[action] += reviewed->worst == action;
	}
	summary->clear += !reviewed->broken && reviewed->worst < 0;
	for (int action = ACTION_COUNT - 1; action >= 0 && reviewed->recommended != NULL && !reviewed->broken; action--)
		if (strcmp(action_leads_to((Action)action), reviewed->recommended) == 0) {
			summary->recommended[action]++;
			summary->reviews++;
			break;
		}
	show_progress(summary);
}

/* "2 REJECTED, 1 HOLD": what is not none. */
static const char *listed(const uint32_t count[ACTION_COUNT], const char *(*words)(Action), Arena *arena)
{
	const char *list = "";
	for (int action = 0; action < ACTION_COUNT; action++)
		if (count[action] > 0)
			list = arena_printf(arena, "%s%s%u %s", list, *list != '\0' ? ", " : "", count[action], words((Action)action));
	return list;
}

void summary_print(const Summary *summary, Arena *arena)
{
	summary_interrupt(summary);
	say_error(arena_printf(arena, "%u reviewed: %u with nothing at %s or worse, %u with something, %u could not be judged",
		summary->files, summary->files - summary->found - summary->broken, action_words(summary->gate), summary->found,
		summary->broken));
	const char *items = listed(summary->items, action_words, arena), *worst = listed(summary->worst, action_words, arena);
	if (*items == '\0')
		return;
	say_error(arena_printf(arena, "items: %s", items));
	say_error(arena_printf(arena, "packages by their worst item: %s%s", worst,
		summary->clear > 0 ? arena_printf(arena, ", %u without any", summary->clear) : ""));
	if (summary->reviews > 0)
		say_error(arena_printf(arena, "packages by recommended action: %s", listed(summary->recommended, action_leads_to, arena)));
}
