/* SPDX-License-Identifier: MIT
 * Clip spacing against the spacing of a class.
 */
#include "formula.h"

#include <stdbool.h>

double same_spacing_in(double listed_in, double laid_in, double tolerance_percent)
{
	bool one = laid_in > listed_in && laid_in <= listed_in * (1 + tolerance_percent / 100);
	return one ? laid_in : listed_in;
}

double spacing_ratio(double spacing_in, double class_spacing_in)
{
	return spacing_in / class_spacing_in;
}
