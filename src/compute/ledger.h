/* SPDX-License-Identifier: MIT
 * What was bought, by items, found once for all facts: no fact walks the purchases for each part.
 */
#ifndef LEDGER_H
#define LEDGER_H

#include "case.h"

/* The lines of orders and invoices on one item, and the parts submitted under it. Certificates of coils buy nothing. */
typedef struct {
	uint32_t orders, invoices;
	double pieces; /* on invoices */
	const Case *elsewhere; /* the first line that is not bought from the panel maker */
	Case *no_supplier, *no_quantity; /* the first purchase or line that does not say */
	Case *part; /* the first part submitted under this item */
	Case *panel; /* the first panel */
	Case **user; /* running clips and screws through clips */
	uint32_t users, room;
} Entry;

/* Of an item nobody bought or submitted: an entry of nothing. */
const Entry *entry_of(const Case *at, const char *item);

/* The first purchase that does not say of what kind it is or what it buys, or NULL. */
Case *open_purchase(const Case *at);

/* Whether a certificate of this coil is among the purchases. */
bool is_coil_certified(const Case *at, const char *coil);

#endif
