/* SPDX-License-Identifier: MIT
 * The installer's certificate: what is typed is the applicant's word until the register confirms it.
 */
#include "date.h"
#include "fetch.h"
#include "parts.h"
#include "text.h"

static const Installer *installer_row(const Registers *registers, const char *certificate)
{
	for (uint32_t i = 0; registers != NULL && i < registers->installers.count; i++)
		if (same_text(registers->installers.row[i].certificate.text, certificate))
			return &registers->installers.row[i];
	return NULL;
}

/* What is wrong with a certificate, in words; NULL if it is in force. */
static const char *why_not(const Installer *row, const char *firm, int32_t day, Arena *arena)
{
	if (row == NULL)
		return "no such certificate is in the register";
	if (!same_text(row->firm.text, firm))
		return "it belongs to another firm";
	if (day < row->issued.day)
		return arena_printf(arena, "it is issued only on %s", date_print(arena, row->issued.day));
	if (day > row->expires.day)
		return arena_printf(arena, "it expired on %s", date_print(arena, row->expires.day));
	return NULL;
}

const Installer *fetch_installer(Case *fact)
{
	const char *certificate = GIVEN(fact, submittal, Submittal, parties.applicant.certificate);
	if (!ready(fact))
		return NULL;
	const Installer *row = installer_row(fact->all->registers, certificate);
	if (row == NULL)
		SKIP(fact, "no such certificate is in the register");
	return row;
}

double submittal_certificate_fits_term_yes(Case *submittal)
{
	const Installer *row = fetch_installer(submittal);
	const char *level = fetch_term_certificate(submittal);
	if (!ready(submittal) || level == NULL)
		return ready(submittal);
	note(submittal, arena_printf(submittal->all->arena, "%s is of level %s, the term asks for %s", row->certificate.text,
				     row->level.text, level));
	return same_text(row->level.text, level) || same_text(row->level.text, "full");
}

double roof_area_certificate_fits_profile_yes(Case *area)
{
	const Installer *row = fetch_installer(area);
	const char *profile = GIVEN(area, roof_area, RoofArea, panel.profile);
	if (!ready(area))
		return 0;
	note(area, arena_printf(area->all->arena, "%s names %s", row->certificate.text, row->profiles.text));
	return is_among(profile, row->profiles.text);
}

double submittal_certificate_in_force_yes(Case *submittal)
{
	const char *certificate = GIVEN(submittal, submittal, Submittal, parties.applicant.certificate);
	const char *firm = GIVEN(submittal, submittal, Submittal, parties.applicant.firm);
	int32_t day = fetch_as_of(submittal);
	if (!ready(submittal))
		return 0;
	const Installer *row = installer_row(submittal->all->registers, certificate);
	const char *why = why_not(row, firm, day, submittal->all->arena);
	note(submittal, why);
	return why == NULL;
}
