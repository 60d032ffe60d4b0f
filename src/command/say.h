/* SPDX-License-Identifier: MIT
 * Say: the ways out of the process. Results go to standard output, everything else to standard error.
 */
#ifndef COMMAND_SAY_H
#define COMMAND_SAY_H

#include "out.h"

enum { STATUS_FINE, STATUS_FOUND, STATUS_FAILED };

/* What was written so far; standard output that cannot take it ends the process with status 2. */
void send_out(const Out *out);
void send_text(const char *text, size_t length);
void send_error(const Out *out);

/* Everything that was sent has left the process; else ends it with status 2. */
void flush_out(void);

#endif
