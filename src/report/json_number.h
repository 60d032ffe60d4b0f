/* SPDX-License-Identifier: MIT
 * JSON text of a tree, with reals in their shortest form.
 */
#ifndef REPORT_JSON_NUMBER_H
#define REPORT_JSON_NUMBER_H

#include "out.h"

#include <jansson.h>

/* Appends the tree as ASCII and lets go of it; a NULL tree is memory that ran out. */
void put_json(Out *out, json_t *tree, size_t flags, Arena *arena);

#endif
