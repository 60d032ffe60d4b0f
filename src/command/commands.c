/* SPDX-License-Identifier: MIT
 * The commands: one row and one file each.
 */
#include "commands.h"

#include "suggest.h"

#include <string.h>

static const Command commands[] = {
	{ "review", "FILE|FOLDER|-...", "reviews submittals: a numbered list of what stands between each and its warranty",
		"A folder is walked for .yaml and .yml files; - is standard input. Several --format F --output FILE\n"
		"give several reports of one run. With a folder, json becomes one line a submittal, as ndjson; with\n"
		"several files, an array.\n\n"
		"  seamstamp review mine.yaml\n"
		"  seamstamp review --format lines submittals/\n"
		"  seamstamp review --reviewer review.yaml --criteria ours/ mine.yaml\n"
		"  seamstamp review --format text --format json --output mine.json mine.yaml\n",
		FOR_REVIEW, command_review },
	{ "calcs", "FILE", "prints every figure behind a review: formula, numbers, result, and where each number came from",
		"It judges nothing. At its end: the thinnest margins and what would use them up, and how well the\n"
		"figures are known.\n\n"
		"  seamstamp calcs mine.yaml\n"
		"  seamstamp calcs --format html --output mine.html mine.yaml\n",
		FOR_CALCS, command_calcs },
	{ "options", "FILE", "shows what would be accepted: constructions with their clip spacings, items for every place, terms",
		"It works from what a bid knows (building, wind, specification, support). Each construction was judged in\n"
		"a copy of the submittal at the spacings shown; fewest clips first.\n\n"
		"  seamstamp options bid.yaml\n"
		"  seamstamp options --format csv --output options.csv bid.yaml\n",
		FOR_OPTIONS, command_options },
	{ "takeoff", "FILE", "counts what a submittal needs of each part: panels, clips and screws by zone, rolls, lengths, pieces",
		"Each quantity says how it was counted; what cannot be counted says why. It judges nothing.\n\n"
		"  seamstamp takeoff mine.yaml\n"
		"  seamstamp takeoff --format csv --output mine.csv mine.yaml\n",
		FOR_TAKEOFF, command_takeoff },
	{ "order", "FILE ORDER.csv", "holds a list of purchases against a submittal: wrong, missing, short, long, from whom, too early",
		"The list is CSV as a spreadsheet saves it: a header names the part or its code and the quantity, and\n"
		"better also unit, supplier and date. Status 0: nothing is against the order, 1: something is.\n\n"
		"  seamstamp order mine.yaml order.csv\n"
		"  seamstamp order --format csv --output held.csv mine.yaml order.csv\n",
		FOR_ORDER, command_order },
	{ "log", "FOLDER|REPORT|-...", "shows how each submittal stands: what is open, who must answer, for how long, by when",
		"It reads reports that review wrote as json or ndjson, and takes the latest round of each submittal. Days\n"
		"are counted by the papers up to --as-of, else up to the latest day a report speaks of.\n\n"
		"  seamstamp log reports/\n"
		"  seamstamp log --as-of 2026-05-04 --format csv --output log.csv reports/\n",
		FOR_LOG, command_log },
	{ "criteria", "FOLDER", "checks and describes an edition of criteria: faults, what it lacks, which verdicts it would turn",
		"A faulty edition is told fault by fault, with status 2. Gaps are no faults: parts that no listing uses, terms\n"
		"that no part lasts, rules that can never fire, papers about to expire, wide gaps between tests. Status 0:\n"
		"no gap and no verdict that turns, 1: some.\n\n"
		"  seamstamp criteria ours/\n"
		"  seamstamp criteria --as-of 2026-11-01 --register register/ ours/\n"
		"  seamstamp criteria --against ours-2025/ --reports reports/ ours/\n",
		FOR_CRITERIA, command_criteria },
	{ "form", "", "prints the form of a submittal: blank, or a page of every key",
		"  seamstamp form --blank > mine.yaml\n"
		"  seamstamp form --blank --stage bid > bid.yaml\n"
		"  seamstamp form --reference > form.md\n",
		FOR_FORM, command_form },
	{ "why", "CODE...", "prints what a rule or a message asks, why, on what it rests, and an example",
		"  seamstamp why CLP-01\n"
		"  seamstamp why LST-10                   prints LST-10a and LST-10b, if that is how it is split\n",
		FOR_WHY, command_why },
};

const Command *command_at(size_t i)
{
	return i < sizeof commands / sizeof *commands ? &commands[i] : NULL;
}

const Command *command_find(const char *name)
{
	for (size_t i = 0; i < sizeof commands / sizeof *commands; i++)
		if (strcmp(commands[i].name, name) == 0)
			return &commands[i];
	return NULL;
}

const char *command_nearest(const char *name)
{
	const char *names[sizeof commands / sizeof *commands];
	size_t count = sizeof names / sizeof *names;
	for (size_t i = 0; i < count; i++)
		names[i] = commands[i].name;
	int nearest = suggest(name, names, count);
	return nearest >= 0 ? names[nearest] : NULL;
}
