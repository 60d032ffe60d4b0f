/* SPDX-License-Identifier: MIT
 * SARIF 2.1.0: what the results and the frame around them share.
 */
#ifndef REPORT_SARIF_H
#define REPORT_SARIF_H

#include "json_tree.h"
#include "report.h"

/* note, warning, error */
const char *sarif_level(Action action);

/* {"text": ...}, ended by a period; what would be read as a link in it is broken up. */
json_t *sarif_message(const char *text, Arena *arena);

/* Where a file stands: relative to what was reviewed, absolute, or built into the program. */
json_t *sarif_artifact(const char *path, Arena *arena);

/* {"physicalLocation": ...}; `source` may be NULL. */
typedef struct {
	const char *file;
	const Source *source;
	Place place;
} SarifPlace;
json_t *sarif_location(const SarifPlace *at, Arena *arena);

#endif
