/* SPDX-License-Identifier: MIT
 * Summary: how far a batch is and what it came to, on standard error.
 */
#ifndef COMMAND_SUMMARY_H
#define COMMAND_SUMMARY_H

#include "verdict.h"

/* What counts of one submittal. */
typedef struct {
	bool broken, found; /* found: something at or above the gate */
	int worst; /* the worst action; -1: no item */
	uint32_t by_action[ACTION_COUNT];
	const char *recommended; /* NULL in a self-check */
} Reviewed;

typedef struct {
	Action gate;
	uint32_t files, found, broken;
	bool failed; /* what was named is not there */
	uint32_t worst[ACTION_COUNT], clear; /* packages by their worst item */
	uint32_t items[ACTION_COUNT];
	uint32_t recommended[ACTION_COUNT], reviews; /* packages by what is recommended, under the mildest action that leads to it */
	bool progress; /* is shown */
	double told; /* when, in seconds */
} Summary;

/* Progress is shown where standard error is a terminal that no report goes to. */
Summary summary_of(Action gate, bool progress);

Reviewed reviewed_of(const Verdict *verdict, Action gate);

void summary_add(Summary *summary, const Reviewed *reviewed);

/* Takes the line of progress away before something else is written. */
void summary_interrupt(const Summary *summary);

void summary_print(const Summary *summary, Arena *arena);

#endif
