/* SPDX-License-Identifier: MIT
 * Excerpt: a line of a file and a caret under the place in it.
 */
#ifndef REPORT_EXCERPT_H
#define REPORT_EXCERPT_H

#include "out.h"
#include "source.h"

/* Two lines, indented; nothing for a place in no line. Long lines are cut around the place. */
void put_excerpt(Out *out, const Source *source, const Place *place, int indent);

#endif
