/* SPDX-License-Identifier: MIT
 * Faults of criteria, registers and the reviewer's file: each at its place, with the line it stands in and its cure.
 */
#include "excerpt.h"
#include "parts.h"
#include "report.h"

enum { MOST_FAULTS = 50 };

static const LabelColumn fault_column = { 2, 9 };

static const Source *source_of(const Complaints *faults, const Place *place)
{
	for (uint32_t i = 0; i < faults->sources; i++)
		if (faults->source[i]->id == place->source)
			return faults->source[i];
	return NULL;
}

static void put_fault(Out *out, const Complaint *fault, const Source *source, Arena *arena)
{
	const Message *message = message_of(fault->id);
	if (source != NULL)
		put_place(out, source->name, &fault->place);
	else
		SAY(out, "seamstamp:");
	SAY(out, " ");
	put(out, complaint_text(fault, message->finding, arena));
	SAY(out, " [");
	put(out, message->code);
	SAY(out, "]\n");
	put_excerpt(out, source, &fault->place, 2);
	put_label(out, fault_column, "Remedy", complaint_text(fault, message->remedy, arena));
}

void write_faults(Out *out, const Complaints *faults)
{
	uint32_t shown = faults->count < MOST_FAULTS ? faults->count : MOST_FAULTS;
	for (uint32_t i = 0; i < shown; i++)
		put_fault(out, &faults->at[i], source_of(faults, &faults->at[i].place), faults->arena);
	if (shown < faults->count) {
		SAY(out, "and ");
		put_count(out, faults->count - shown);
		SAY(out, " more\n");
	}
}
