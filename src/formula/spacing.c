/* SPDX-License-Identifier: MIT
 * Clip spacing against the spacing of a class.
 */
#include "formula.h"

double spacing_ratio(double spacing_in, double class_spacing_in)
{
	return spacing_in / class_spacing_in;
}
