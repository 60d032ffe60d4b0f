/* SPDX-License-Identifier: MIT
 * One item on a page, around the labels it shares with the letter in text.
 */
#ifndef REPORT_HTML_ITEM_H
#define REPORT_HTML_ITEM_H

#include "pen.h"

/* Number, action, where, code; the finding; the line of the file. */
void begin_item(Pen *pen, const Finding *item);

/* Places b, c and on. */
void end_item(Pen *pen, const Finding *item);

#endif
