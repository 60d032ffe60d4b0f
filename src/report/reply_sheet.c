/* SPDX-License-Identifier: MIT
 * The reply sheet: one line an open item, with two columns to fill in, for spreadsheets. `--replies` reads it back by the heads
 * `item`, `reply` and `paper`; what stands in the other columns is for whoever fills it in.
 */
#include "cells.h"
#include "formats.h"
#include "parts.h"

/* At stage bid nothing is numbered, and there is nothing to reply to. */
void write_reply_sheet(Out *out, const Verdict *verdict, Arena *arena)
{
	const Text *number = &verdict->cases->submittal->submittal;
	Cells cells = { .out = out };
	SAY(out, "submittal,item,action,code,where,finding,submitted,allowed,remedy,answer by,reply,paper\r\n");
	for (uint32_t i = 0; i < verdict->items && !verdict->broken_file; i++) {
		const Finding *item = &verdict->item[i];
		const char *called = item_number(item, arena);
		if (counted_action(item) < 0 || called == NULL)
			continue;
		cell(&cells, is_value(&number->given) ? number->text : NULL);
		cell(&cells, called);
		cell(&cells, item_heading(item));
		cell(&cells, item->code);
		cell(&cells, item_places(item, NULL, arena));
		cell(&cells, item->finding);
		cell(&cells, item->submitted.text);
		cell(&cells, item->limit.text);
		cell(&cells, item->remedy);
		cell(&cells, item->answer_by != NULL ? item->answer_by : "applicant");
		cell(&cells, NULL);
		cell(&cells, NULL);
		row_end(&cells);
	}
}
