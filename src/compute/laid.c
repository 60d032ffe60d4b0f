/* SPDX-License-Identifier: MIT
 * What is laid, used or set in a roof area at all, for checks on site that ask whether there is anything to see.
 */
#include "below.h"
#include "fetch.h"
#include "text.h"

static double count_of(Case *area, uint32_t list)
{
	const List *parts = fetch_list(area, area, list);
	return parts != NULL ? parts->count : 0;
}

double roof_area_underlayments_laid_one(Case *area)
{
	return count_of(area, offsetof(RoofArea, underlayments));
}

double roof_area_sealants_used_one(Case *area)
{
	return count_of(area, offsetof(RoofArea, sealants));
}

double roof_area_closures_set_one(Case *area)
{
	return count_of(area, offsetof(RoofArea, closures));
}

double roof_area_self_adhered_laid_one(Case *area)
{
	double count = 0;
	fetch_list(area, area, offsetof(RoofArea, underlayments));
	for (Case *sheet = first_below(area, KIND_underlayment); sheet != NULL; sheet = sheet->next)
		count += same_text(GIVEN_AT(area, sheet, Underlayment, kind), "self-adhered");
	return ready(area) ? count : 0;
}
