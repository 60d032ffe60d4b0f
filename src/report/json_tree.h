/* SPDX-License-Identifier: MIT
 * Putting a JSON tree together: every call that runs out of memory ends the program, so that no value vanishes.
 */
#ifndef REPORT_JSON_TREE_H
#define REPORT_JSON_TREE_H

#include "arena.h"
#include "record.h"

#include <jansson.h>

json_t *json_made(json_t *value);

/* NULL becomes null; bytes that are no UTF-8 are shown as \xff. */
json_t *json_words(const char *text, Arena *arena);

/* A number that is none becomes null. */
json_t *json_figure(double value);

void json_put(json_t *object, const char *key, json_t *value);
void json_add(json_t *array, json_t *value);

/* A record as it was typed: what was not said is left out. */
json_t *json_record(const Record *record, const void *row, Arena *arena);

#endif
