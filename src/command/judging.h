/* SPDX-License-Identifier: MIT
 * Judging: one submittal through the pipeline up to its verdict, as every command that takes a submittal needs it.
 */
#ifndef COMMAND_JUDGING_H
#define COMMAND_JUDGING_H

#include "command.h"
#include "earlier.h"
#include "loading.h"

#include <pthread.h>

/* What all submittals of a run share. */
typedef struct {
	const Arguments *arguments;
	Loaded loaded;
	int32_t as_of;
	bool several; /* then the reviewer's file speaks of one of them */
	bool hashes; /* a format prints them */
	bool si;
	pthread_mutex_t lock; /* over what is loaded while files are judged */
} Shared;

/* What is wrong with the options that all such commands take; NULL if nothing is. */
const char *wrong_shared(Shared *shared);

/* Loads what the options name; false if it cannot be had, which has been said. */
bool load_shared(Shared *shared);

/* Reads, resolves and judges one file. By any thread. */
Verdict *judge_file(Shared *shared, const char *path, Arena *arena);

/* The same beside the round before; NULL where the report of that cannot be used with it. */
struct Refusal;
Verdict *judge_round(Shared *shared, const char *path, Arena *arena, struct Refusal *refusal);

/* The same of the submittal that a report has in it, by the criteria and registers of this run. */
Verdict *judge_earlier(Shared *shared, const Earlier *report, Arena *arena);

/* Why a file could not be judged. */
const char *why_broken(const Verdict *verdict);

/* Says on standard error that a file could not be judged, and why. */
void say_broken(const Verdict *verdict, const char *path, Arena *arena);

#endif
