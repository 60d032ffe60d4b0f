/* SPDX-License-Identifier: MIT
 * Gauges to thicknesses.
 */
#ifndef GAUGE_H
#define GAUGE_H

#include "fill.h"

/* Turns a gauge that waits in `field` of a complete row into its thickness, by the metal or the kind that stands beside it;
 * complains if that is missing or has no such gauge. */
void finish_gauge(const Record *record, const Field *field, void *row, Reading *reading);

#endif
