/* SPDX-License-Identifier: MIT
 * What the facts of screws share.
 */
#ifndef SCREWS_H
#define SCREWS_H

#include "fetch.h"

#define NO_SOURCE "common practice, no published source"

bool is_wood_support(const char *support);
bool is_wood_panel(const char *support);
bool is_steel_support(const char *support);

/* Whether a screw holds running clips; else the fact waits or does not apply. */
bool fetch_clip_screw(Case *screw);

#endif
