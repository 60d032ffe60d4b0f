/* SPDX-License-Identifier: MIT
 * The standing checks on site that concern each roof area: those whose conditions hold there, and those of which that cannot be
 * told, since an inspector can tell it at a glance. An area that is not to be warranted is not inspected.
 */
#include "judge.h"
#include "pipeline.h"

static bool is_excluded(const Case *area)
{
	const RoofArea *row = area->row;
	return is_value(&row->warranted.given) && !row->warranted.yes;
}

static void add_checks(Verdict *verdict, SiteCheckDue *due, const Case *area)
{
	const Criteria *criteria = verdict->cases->criteria;
	for (uint32_t i = 0; i < criteria->site_checks_bound; i++) {
		const BoundSiteCheck *bound = &criteria->site_check[i];
		Tested blocking;
		TestOutcome outcome = test_all(area, bound->when, bound->whens, &blocking);
		if (outcome == TEST_MET || outcome == TEST_WAITS)
			due[verdict->site_checks++] = (SiteCheckDue){ bound->row, area, outcome == TEST_WAITS };
	}
}

void find_site_checks(Verdict *verdict, Arena *arena)
{
	const Cases *cases = verdict->cases;
	if (verdict->broken_file || cases->criteria == NULL)
		return;
	uint32_t areas = cases->of[KIND_roof_area].count;
	SiteCheckDue *due = TAKE(arena, SiteCheckDue, (size_t)areas * cases->criteria->site_checks_bound);
	verdict->site_check = due;
	verdict->site_checks = 0;
	for (uint32_t i = 0; i < areas; i++)
		if (!is_excluded(cases->of[KIND_roof_area].at[i]))
			add_checks(verdict, due, cases->of[KIND_roof_area].at[i]);
}
