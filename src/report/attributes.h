/* SPDX-License-Identifier: MIT
 * Attributes: what a record says of itself, in words, one value after the other.
 */
#ifndef REPORT_ATTRIBUTES_H
#define REPORT_ATTRIBUTES_H

#include "verdict.h"

/* Moves `*i` from 0 on over the plain fields of a record in force that have a value; NULL behind the last. */
const Field *attribute_next(const Case *at, uint32_t *i);

/* "metal: steel"; with "(tested: 22 ga)" behind it where the tested part says otherwise. */
const char *attribute_text(const Case *at, const Field *field, Arena *arena);

/* All of them in one line, the item itself and what each paper says for itself left out. */
const char *attributes_text(const Case *at, Arena *arena);

#endif
