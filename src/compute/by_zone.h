/* SPDX-License-Identifier: MIT
 * Values by zone: those that hold in one zone of the figure.
 */
#ifndef BY_ZONE_H
#define BY_ZONE_H

#include "form.h"

/* More zones than any roof has; whoever names more is not read to the end. */
enum { MOST_VALUES = 64 };

/* The value a zone or place is given by its own name, or NULL. */
const ZoneValue *value_for(const ByZone *by_zone, const char *place, size_t length);

/* Calls `take` for each value that holds in a zone; where a place of it is not named, for all, and returns false. */
bool each_value(const ByZone *by_zone, const Zone *zone, void (*take)(void *user, const ZoneValue *), void *user);

/* Whether each place of a zone is named. */
bool names_zone(const ByZone *by_zone, const Zone *zone);

#endif
