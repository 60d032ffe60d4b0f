/* SPDX-License-Identifier: MIT
 * An order held against a submittal, in its three forms, and what they share.
 */
#ifndef REPORT_ORDER_PAGE_H
#define REPORT_ORDER_PAGE_H

#include "report.h"

void write_order_text(Out *out, const Page *page, Arena *arena);
void write_order_csv(Out *out, const Page *page, Arena *arena);
void write_order_json(Out *out, const Page *page, Arena *arena);

/* "STEPPED DOWN": what is against an order, in words. */
const char *order_fault_words(OrderFault fault);

/* "45 boxes", as the line says it. */
const char *order_quantity_text(const OrderLine *line, Arena *arena);

/* How an item of the takeoff stands: "as needed", "missing", "short", "over", "not compared". */
const char *order_item_words(const Order *order, const OrderedItem *item);

/* How the part of a line stands in the review of the submittal. */
const char *order_clearance_text(const OrderedLine *line, Arena *arena);

#endif
