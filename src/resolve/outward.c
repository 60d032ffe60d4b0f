/* SPDX-License-Identifier: MIT
 * From a case outwards: part, zone, test or detail to their roof area, and that to the submittal.
 */
#include "case.h"

const Case *case_outward(const Case *at, RecordKind kind)
{
	while (at != NULL && at->kind != kind)
		at = at->up;
	return at;
}
