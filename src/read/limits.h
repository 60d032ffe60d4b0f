/* SPDX-License-Identifier: MIT
 * The right side of a test.
 */
#ifndef LIMITS_H
#define LIMITS_H

#include "tests.h"

/* Binds the limit of a test whose left side and relation are bound. */
bool limit_bind(const Binding *binding, const Written *written, Test *test);

#endif
