/* SPDX-License-Identifier: MIT
 * What every test program includes: cmocka in its order, and a comparison of doubles (cmocka's own compares floats).
 */
#ifndef CHECK_H
#define CHECK_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <math.h>
#include <string.h>

/* Equal within a relative tolerance; prints both values if not. */
#define assert_close(a, b, tolerance) check_close((a), (b), (tolerance), __FILE__, __LINE__)
static inline void check_close(double a, double b, double tolerance, const char *file, int line)
{
	double scale = fmax(fabs(a), fabs(b));
	if (!(fabs(a - b) <= tolerance * (scale > 1 ? scale : 1))) {
		print_error("%.17g is not %.17g within %g\n", a, b, tolerance);
		_fail(file, line);
	}
}

#endif
