/* SPDX-License-Identifier: MIT
 * Reports on water and air through the seam: by which standard, under what head, and whether the eave was in the test.
 */
#include "below.h"
#include "fetch.h"
#include "text.h"

#include <math.h>
#include <string.h>

/* "ASTM E2140-01" names 2140; "E21400" does not. */
static bool names_standard(const char *text, const char *number)
{
	const char *found = strstr(text, number);
	return found != NULL && (found[strlen(number)] < '0' || found[strlen(number)] > '9');
}

static bool is_by(Case *area, Case *test, const char *number)
{
	return names_standard(GIVEN_AT(area, test, SeamTest, standard), number);
}

/* The first test of the area; NULL if there is none, or nobody said. */
static Case *first_test(Case *area)
{
	return fetch_list(area, area, offsetof(RoofArea, seam_tests)) != NULL ? first_below(area, KIND_seam_test) : NULL;
}

double roof_area_tested_head_in(Case *area)
{
	double greatest = 0;
	for (Case *test = first_test(area); test != NULL; test = test->next)
		if (is_by(area, test, "2140"))
			greatest = fmax(greatest, GIVEN_AT(area, test, SeamTest, head_in));
	return greatest;
}

static bool has_report(Case *area, const char *number)
{
	bool found = false;
	for (Case *test = first_test(area); test != NULL; test = test->next)
		found |= is_by(area, test, number);
	return found;
}

double roof_area_water_tested_yes(Case *area)
{
	return has_report(area, "1646");
}

double roof_area_air_tested_yes(Case *area)
{
	return has_report(area, "1680");
}

double roof_area_eave_tested_yes(Case *area)
{
	bool found = false;
	for (Case *test = first_test(area); test != NULL; test = test->next)
		if (is_by(area, test, "2140") || is_by(area, test, "1646"))
			found |= GIVEN_AT(area, test, SeamTest, eave);
	return found;
}
