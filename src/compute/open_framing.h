/* SPDX-License-Identifier: MIT
 * A capacity test on open framing, used over a deck.
 */
#ifndef OPEN_FRAMING_H
#define OPEN_FRAMING_H

#include "fetch.h"

/* Whether a difference of the support, or of what fastens into it, is let pass because the criteria accept a capacity test on
 * open framing over a deck; the fastening into the deck is then judged by itself. A test on a deck never serves open framing. */
bool is_let_pass_over_deck(Case *comparison, const Compared *compared);

#endif
