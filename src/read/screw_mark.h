/* SPDX-License-Identifier: MIT
 * The mark on a box of screws: size, threads, length and point in one.
 */
#ifndef SCREW_MARK_H
#define SCREW_MARK_H

#include "fill.h"

/* What a mark said; NULL: it did not speak of it. The texts are as written, lengths with their unit. */
typedef struct {
	const char *size, *threads, *length, *point;
	double size_in, threads_per_in, length_in, point_number;
} ScrewMark;

/* Reads `#12`, `No. 12`, `12-14 x 1-1/2`, `1/4-14 x 7/8`, `#14 x 2 in`, `12-24x1-1/4" DP3`. */
bool read_screw_mark(const char *text, size_t length, const Reading *reading, ScrewMark *mark);

#endif
