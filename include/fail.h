/* SPDX-License-Identifier: MIT
 * The one way to end early: the machine is out of memory or a write failed.
 */
#ifndef FAIL_H
#define FAIL_H

/* Prints "seamstamp: what: name" on standard error and ends the process with status 2. `name` may be NULL. */
_Noreturn void fail(const char *what, const char *name);

#endif
