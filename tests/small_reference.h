/* SPDX-License-Identifier: MIT
 * A few rows of the reference tables, typed here so that tests of the readers do not hang on files.
 */
#ifndef SMALL_REFERENCE_H
#define SMALL_REFERENCE_H

#include "reference.h"

#define SAID_TEXT(t) { { .said = SAID_VALUE, .typed = t }, t }
#define SAID_NUMBER(n) { { .said = SAID_VALUE }, n }

static const Screw small_screws[] = {
	{ .size = SAID_TEXT("#10"), .diameter_in = SAID_NUMBER(0.190) },
	{ .size = SAID_TEXT("#12"), .diameter_in = SAID_NUMBER(0.216) },
	{ .size = SAID_TEXT("#14"), .diameter_in = SAID_NUMBER(0.242) },
	{ .size = SAID_TEXT("1/4"), .diameter_in = SAID_NUMBER(0.250) },
};

#define SMALL_GAUGE(u, g, t) { .use = SAID_TEXT(u), .gauge_one = SAID_NUMBER(g), .thickness_in = SAID_NUMBER(t) }
static const Gauge small_gauges[] = {
	SMALL_GAUGE("sheet", 24, 0.0239), SMALL_GAUGE("sheet", 22, 0.0299), SMALL_GAUGE("sheet", 16, 0.0598), SMALL_GAUGE("deck", 22, 0.0295),
	SMALL_GAUGE("framing", 16, 0.0566), SMALL_GAUGE("stainless", 24, 0.0250), SMALL_GAUGE("aluminum", 20, 0.0320),
};

static const Reference small_reference = {
	.screws = { .count = sizeof small_screws / sizeof *small_screws, .row = small_screws },
	.gauges = { .count = sizeof small_gauges / sizeof *small_gauges, .row = small_gauges },
};

#endif
