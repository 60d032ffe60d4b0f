/* SPDX-License-Identifier: MIT
 * Papers over the period of the work, not on one day: what ends between start and completion leaves the rest of it uncovered.
 */
#include "date.h"
#include "parts.h"
#include "text.h"
#include "timeline.h"

static const Scope whole = { NULL, NULL };

static const char *ends_before(const Case *fact, const char *paper, int32_t expires, const Case *event)
{
	Arena *arena = fact->all->arena;
	return arena_printf(arena, "%.200s ends on %s, before %s", paper, date_print(arena, expires), event_words(event));
}

double event_certificate_covers_yes(Case *event)
{
	int32_t day = fetch_event_day(event, event);
	const Installer *row = fetch_installer(event);
	if (!ready(event) || row == NULL)
		return 0;
	note(event, ends_before(event, row->certificate.text, row->expires.day, event));
	return day <= row->expires.day;
}

/* The approval of the package that lasts longest; without one the order line and the order of days speak. */
double event_approval_covers_yes(Case *event)
{
	int32_t day = fetch_event_day(event, event);
	const Cases *all = event->all;
	const Approval *longest = NULL;
	for (uint32_t i = 0; all->registers != NULL && i < all->registers->approvals.count; i++) {
		const Approval *row = &all->registers->approvals.row[i];
		bool counts = is_package_approval(row, all->submittal) && is_approval_for(row, &all->submittal->project.name);
		if (counts && is_value(&row->expires.given) && (longest == NULL || row->expires.day > longest->expires.day))
			longest = row;
	}
	if (!ready(event))
		return 0;
	if (longest == NULL)
		return SKIP(event, "no approval of this submittal is in the register");
	note(event, ends_before(event, longest->letter.text, longest->expires.day, event));
	return day <= longest->expires.day;
}

/* ---- what a roof area rests on ---- */

/* The day on which the work in a scope ends; NULL and not applicable if none is named. */
static const Case *fetch_end(Case *fact, Scope scope, int32_t *day)
{
	*day = 0;
	if (!fetch_events(fact) || !ready(fact))
		return NULL;
	const Case *end = end_of_work(fact, scope);
	if (end == NULL)
		SKIP(fact, "no day of the work is named");
	else
		*day = fetch_event_day(fact, end);
	return end;
}

static Scope scope_of_area(Case *fact)
{
	return (Scope){ NULL, GIVEN(fact, roof_area, RoofArea, name) };
}

double test_listing_covers_yes(Case *test)
{
	int32_t day;
	const char *listing = GIVEN(test, test, AreaTest, listing);
	const Case *end = fetch_end(test, scope_of_area(test), &day);
	const Listing *row = test->listed;
	if (!ready(test) || end == NULL)
		return 0;
	if (row == NULL)
		return SKIP(test, "the listing is not known");
	if (!is_value(&row->expires.given))
		return 1;
	note(test, ends_before(test, listing, row->expires.day, end));
	return day <= row->expires.day;
}

double document_paper_covers_yes(Case *document)
{
	int32_t day, expires = GIVEN(document, document, Document, expires);
	const char *number = GIVEN(document, document, Document, number);
	const Case *end = fetch_end(document, whole, &day);
	if (!ready(document) || end == NULL)
		return 0;
	note(document, ends_before(document, number, expires, end));
	return day <= expires;
}

double part_approval_covers_yes(Case *part)
{
	int32_t day, expires = 0;
	const char *letter = approval_of_part(part, &expires);
	const Case *end = letter != NULL && ready(part) ? fetch_end(part, scope_of_area(part), &day) : NULL;
	if (!ready(part) || letter == NULL || end == NULL)
		return 0;
	note(part, ends_before(part, letter, expires, end));
	return day <= expires;
}
