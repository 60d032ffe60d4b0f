/* SPDX-License-Identifier: MIT
 * Numbers as the trade writes them: the scanner that quantities and screw marks share.
 */
#ifndef SCAN_H
#define SCAN_H

#include <stdbool.h>
#include <stddef.h>

enum { QUANTITY_LONGEST = 120 };

/* A number at the front of a text: "12", "1,200", "-0.5", "3/8", "1-1/2", "1 1/2". */
typedef struct {
	double value;
	unsigned numerator, denominator; /* of a plain fraction; else 0 */
} Scanned;
bool scan_number(const char **at, Scanned *scanned);

/* The text without blanks around it, typographic signs as plain ones (½ as 1/2); false if it does not fit. */
bool plain_text(const char *text, size_t length, char plain[QUANTITY_LONGEST]);

#endif
