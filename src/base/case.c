/* SPDX-License-Identifier: MIT
 * Walking the tree of cases, for every stage.
 */
#include "case.h"

const Case *case_outward(const Case *at, RecordKind kind)
{
	while (at != NULL && at->kind != kind)
		at = at->up;
	return at;
}
