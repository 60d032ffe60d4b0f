/* SPDX-License-Identifier: MIT
 * The options in their three forms.
 */
#ifndef REPORT_OFFERS_PAGE_H
#define REPORT_OFFERS_PAGE_H

#include "report.h"

void write_offers_text(Out *out, const Page *page, Arena *arena);
void write_offers_csv(Out *out, const Page *page, Arena *arena);
void write_offers_json(Out *out, const Page *page, Arena *arena);

#endif
