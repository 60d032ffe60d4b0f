/* SPDX-License-Identifier: MIT
 * Details against the list of approved ones: a number counts for its place alone.
 */
#include "fetch.h"
#include "text.h"

/* The row of a number at a place; a row of the same number for another place is kept in `*elsewhere`. */
static const ApprovedDetail *detail_row(const Criteria *criteria, const char *number, const char *place,
	const ApprovedDetail **elsewhere)
{
	for (uint32_t i = 0; i < criteria->details.count; i++) {
		const ApprovedDetail *row = &criteria->details.row[i];
		if (!same_text(row->number.text, number))
			continue;
		if (same_text(row->place.text, place))
			return row;
		*elsewhere = row;
	}
	return NULL;
}

static const ApprovedDetail *fetch_row(Case *detail, const ApprovedDetail **elsewhere)
{
	const char *number = GIVEN(detail, detail, Detail, number);
	const char *place = GIVEN(detail, detail, Detail, place);
	return ready(detail) ? detail_row(detail->all->criteria, number, place, elsewhere) : NULL;
}

double detail_approved_number_yes(Case *detail)
{
	const ApprovedDetail *elsewhere = NULL, *row = fetch_row(detail, &elsewhere);
	if (row == NULL && elsewhere != NULL)
		note(detail, arena_printf(detail->all->arena, "%s is for the %s", elsewhere->number.text, elsewhere->place.text));
	return row != NULL;
}

/* What is not approved has an item of its own. */
double detail_detail_least_slope_in_12(Case *detail)
{
	const ApprovedDetail *elsewhere = NULL, *row = fetch_row(detail, &elsewhere);
	if (row != NULL)
		return CONSTANT(detail, "details.csv", row->number.text, row->least_slope_in_12.value, NULL);
	return ready(detail) ? SKIP(detail, "the detail is not an approved one") : 0;
}
