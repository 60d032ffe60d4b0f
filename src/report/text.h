/* SPDX-License-Identifier: MIT
 * The letter in its three parts: head, items, foot.
 */
#ifndef REPORT_TEXT_H
#define REPORT_TEXT_H

#include "pen.h"

/* Who, what, which criteria, what the answer is, who must act. */
void put_head(Pen *pen, const Verdict *verdict, Arena *arena);

/* All items under their headings; one item with its excerpt, both sides, basis, remedy and further places. */
void put_items(Pen *pen, const Verdict *verdict, Arena *arena);
void put_item(Pen *pen, const Verdict *verdict, const Finding *item, Arena *arena);

/* Parts one by one, the order line, what was assumed, not judged, unverified or never covered, cautions, files. */
void put_foot(Pen *pen, const Verdict *verdict, Arena *arena);

#endif
