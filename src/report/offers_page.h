/* SPDX-License-Identifier: MIT
 * The options in their three forms.
 */
#ifndef REPORT_OFFERS_PAGE_H
#define REPORT_OFFERS_PAGE_H

#include "report.h"

/* Constructions printed as one, joined by "or". */
typedef struct {
	bool is_first; /* it stands for them all; else nothing below is filled */
	const char *clips, *screws, *classes, *to_say; /* to_say: NULL where nothing is open */
} OfferGroup;
OfferGroup offer_group(const Offers *offers, const Construction *made, Arena *arena);

void write_offers_text(Out *out, const Page *page, Arena *arena);
void write_offers_csv(Out *out, const Page *page, Arena *arena);
void write_offers_json(Out *out, const Page *page, Arena *arena);

#endif
