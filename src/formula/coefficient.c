/* SPDX-License-Identifier: MIT
 * External pressure coefficients: graphs over effective area, each a plateau, straight segments in log10 of the area, a plateau.
 */
#include "formula.h"

#include <math.h>

double curve_at(const Corner *corner, size_t count, double area_sq_ft)
{
	if (area_sq_ft <= corner[0].area_sq_ft)
		return corner[0].value;
	for (size_t i = 1; i < count; i++) {
		const Corner *from = &corner[i - 1], *to = &corner[i];
		if (area_sq_ft < to->area_sq_ft)
			return from->value +
				(to->value - from->value) * log10(area_sq_ft / from->area_sq_ft) / log10(to->area_sq_ft / from->area_sq_ft);
	}
	return corner[count - 1].value;
}

double between(double at, double low, double at_low, double high, double at_high)
{
	if (at <= low)
		return at_low;
	if (at >= high)
		return at_high;
	return at_low + (at_high - at_low) * (at - low) / (high - low);
}

double slope_angle_deg(double slope_in_12)
{
	return atan(slope_in_12 / 12) * 180 / acos(-1);
}
