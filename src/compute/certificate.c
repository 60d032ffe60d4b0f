/* SPDX-License-Identifier: MIT
 * The installer's certificate: what is typed is the applicant's word until the register confirms it.
 */
#include "date.h"
#include "fetch.h"
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
