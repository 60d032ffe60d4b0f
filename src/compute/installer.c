/* SPDX-License-Identifier: MIT
 * The installer beyond his certificate: years, similar projects, crew lead, the firm on the roof, license and insurance; and the
 * panel maker's representative.
 */
#include "date.h"
#include "fetch.h"
#include "parts.h"
#include "text.h"

static const Installer *row_of_certificate(const Case *at, const char *certificate)
{
	const Registers *registers = at->all->registers;
	for (uint32_t i = 0; registers != NULL && i < registers->installers.count; i++)
		if (same_text(registers->installers.row[i].certificate.text, certificate))
			return &registers->installers.row[i];
	return NULL;
}

/* Of a certificate the register does not know another item speaks. */
static const Installer *fetch_certified(Case *fact)
{
	const char *certificate = GIVEN(fact, submittal, Submittal, parties.applicant.certificate);
	const Installer *row = ready(fact) ? row_of_certificate(fact, certificate) : NULL;
	if (ready(fact) && row == NULL)
		SKIP(fact, "no such certificate is in the register");
	return row;
}

/* ---- years and projects ---- */

double submittal_years_in_register_yr(Case *submittal)
{
	const Installer *row = fetch_certified(submittal);
	int32_t day = fetch_as_of(submittal);
	if (!ready(submittal))
		return 0;
	int32_t since = is_value(&row->since.given) ? row->since.day : row->issued.day;
	note(submittal, arena_printf(submittal->all->arena, "in the register since %s", date_print(submittal->all->arena, since)));
	return since < day ? date_years_between(since, day) : 0;
}

/* How many projects were completed from one day to another, both included. */
static double projects_between(Case *submittal, int32_t from, int32_t to)
{
	const Cases *all = submittal->all;
	if (fetch_list(submittal, submittal, offsetof(Submittal, parties.applicant.similar_projects)) == NULL)
		return 0;
	double count = 0;
	for (uint32_t i = 0; i < all->of[KIND_similar_project].count; i++) {
		int32_t day = GIVEN_AT(submittal, all->of[KIND_similar_project].at[i], SimilarProject, completed);
		count += ready(submittal) && day >= from && day <= to;
	}
	return ready(submittal) ? count : 0;
}

double submittal_projects_done_one(Case *submittal)
{
	int32_t day = fetch_as_of(submittal);
	return ready(submittal) ? projects_between(submittal, INT32_MIN, day) : 0;
}

double submittal_projects_of_3_years_one(Case *submittal)
{
	int32_t day = fetch_as_of(submittal);
	return ready(submittal) ? projects_between(submittal, date_years_later(day, -3), day) : 0;
}

double submittal_projects_2_years_old_one(Case *submittal)
{
	int32_t day = fetch_as_of(submittal);
	return ready(submittal) ? projects_between(submittal, INT32_MIN, date_years_later(day, -2)) : 0;
}

/* ---- who is on the roof ---- */

double submittal_crew_lead_known_yes(Case *submittal)
{
	const char *card = GIVEN(submittal, submittal, Submittal, parties.applicant.crew_lead.card);
	const Installer *row = fetch_certified(submittal);
	return ready(submittal) && is_value(&row->crew_leads.given) && is_among(card, row->crew_leads.text);
}

/* Why a firm may not lay a profile, in words; NULL if it has a certificate in force for it. */
static const char *why_not(const Case *at, const char *firm, const char *profile, int32_t day)
{
	const Registers *registers = at->all->registers;
	const char *why = "it has no certificate in the register";
	for (uint32_t i = 0; registers != NULL && i < registers->installers.count; i++) {
		const Installer *row = &registers->installers.row[i];
		if (!same_text(row->firm.text, firm))
			continue;
		if (day < row->issued.day || day > row->expires.day)
			why = arena_printf(at->all->arena, "its certificate %s is not in force", row->certificate.text);
		else if (!is_among(profile, row->profiles.text))
			why = arena_printf(at->all->arena, "its certificate %s names %s", row->certificate.text, row->profiles.text);
		else
			return NULL;
	}
	return why;
}

/* Of the applicant's own certificate other items speak. */
double roof_area_crew_approved_yes(Case *area)
{
	const char *crew = GIVEN(area, submittal, Submittal, parties.applicant.installed_by);
	const char *firm = GIVEN(area, submittal, Submittal, parties.applicant.firm);
	if (ready(area) && same_text(crew, firm))
		return 1;
	const char *profile = GIVEN(area, roof_area, RoofArea, panel.profile);
	int32_t day = fetch_as_of(area);
	if (!ready(area))
		return 0;
	const char *why = why_not(area, crew, profile, day);
	note(area, why);
	return why == NULL;
}

/* ---- papers that run out ---- */

double submittal_license_in_force_yes(Case *submittal)
{
	int32_t until = GIVEN(submittal, submittal, Submittal, parties.applicant.license.until);
	int32_t day = fetch_as_of(submittal);
	return ready(submittal) && day <= until;
}

double submittal_insurance_in_force_yes(Case *submittal)
{
	int32_t until = GIVEN(submittal, submittal, Submittal, parties.applicant.insurance.until);
	int32_t day = fetch_as_of(submittal);
	return ready(submittal) && day <= until;
}

double submittal_representative_of_maker_yes(Case *submittal)
{
	const char *employer = GIVEN(submittal, submittal, Submittal, parties.technical_representative.employed_by);
	return ready(submittal) && is_panel_maker(submittal->all->criteria, employer);
}
