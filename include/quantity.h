/* SPDX-License-Identifier: MIT
 * Quantities as the trade writes them, to numbers. The readers and resolve (values of the specification) read through here.
 */
#ifndef QUANTITY_H
#define QUANTITY_H

#include "reference.h"
#include "unit.h"

/* A number in a unit's dimension, converted to that unit: `1-1/2 in`, `20'-6"`, `0.60 mm`, `1,200 sq ft`, `1:12`, `14 deg`. */
typedef enum {
	QUANTITY_READ,
	QUANTITY_BARE, /* a number without a unit where one is needed; `*value` is the number */
	QUANTITY_GAUGE, /* `24 ga` where a length is wanted; `*value` is the gauge */
	QUANTITY_NO_NUMBER,
	QUANTITY_UNKNOWN_UNIT,
	QUANTITY_OTHER_DIMENSION /* `24 psf` where a length is wanted */
} Quantity;
Quantity read_quantity(const char *text, size_t length, Unit unit, double *value);

/* A screw size (`#12`, `No. 12`, `1/4`, `1/4 in`, `0.216 in`) as its diameter in inches; false if it is none of the table. */
bool read_screw_size(const char *text, size_t length, const Reference *reference, double *diameter_in);

/* The scanner that quantities and screw marks share: a number at the front of a text ("12", "1,200", "-0.5", "3/8", "1-1/2"). */
enum { QUANTITY_LONGEST = 120 };
typedef struct {
	double value;
	unsigned numerator, denominator; /* of a plain fraction; else 0 */
} Scanned;
bool scan_number(const char **at, Scanned *scanned);

/* The text without blanks around it, typographic signs as plain ones (½ as 1/2); false if it does not fit. */
bool plain_text(const char *text, size_t length, char plain[QUANTITY_LONGEST]);

#endif
