/* SPDX-License-Identifier: MIT
 * Opening: one file that was named, whole and in memory; and what is wrong with a file, told at its places on standard error.
 */
#ifndef COMMAND_OPENING_H
#define COMMAND_OPENING_H

#include "complaint.h"
#include "earlier.h"
#include "out.h"

/* `mib`: the most it may hold. */
typedef struct {
	const char *path;
	uint16_t id;
	unsigned mib;
} Opening;

enum { SUBMITTAL_MIB = 4, REPORT_MIB = 64 };

/* Its bytes as a source, never NULL; where they cannot be had the complaint says why, and the complaints are broken. */
const Source *open_file(Arena *arena, const Opening *opening, Complaints *complaints);

/* A JSON report; NULL where it is none that can be used: `faults` has why. */
const Earlier *open_report(Arena *arena, const Opening *opening, const Source **source, Complaints *faults);

/* The faults of one source, ready to be sent; of several where `source` is NULL: then the complaints name them. */
const Out *faults_text(Arena *arena, const Complaints *faults, const Source *source);
void say_faults(Arena *arena, const Complaints *faults, const Source *source);

#endif
