/* SPDX-License-Identifier: MIT
 * The letter in its three parts: head, one item, foot.
 */
#ifndef REPORT_TEXT_H
#define REPORT_TEXT_H

#include "pen.h"

/* Who, what, which criteria, what the answer is, who must act. */
void put_head(Pen *pen, const Verdict *verdict, Arena *arena);

/* One item with its excerpt, both sides, basis, remedy and further places. */
void put_item(Out *out, const Verdict *verdict, const Finding *item, Arena *arena);

/* Parts one by one, the order line, what was assumed, not judged, unverified or never covered, cautions, files. */
void put_foot(Pen *pen, const Verdict *verdict, Arena *arena);

#endif
