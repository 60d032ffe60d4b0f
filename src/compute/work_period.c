/* SPDX-License-Identifier: MIT
 * Papers over the period of the work, not on one day: what ends between start and completion leaves the rest of it uncovered.
 */
#include "date.h"
#include "parts.h"
#include "text.h"
#include "timeline.h"

static const Scope whole = { NULL, NULL };

/* Whether a paper holds on the day of an event; the note says why not. */
static double lasts_to(Case *fact, const char *paper, int32_t expires, const Case *event)
{
	int32_t day;
	Arena *arena = fact->all->arena;
	if (!ready(fact) || !day_of_event(event, &day) || day <= expires)
		return ready(fact);
	note(fact, arena_printf(arena, "%.200s ends on %s, before %s", paper, date_print(arena, expires), event_words(event)));
	return 0;
}

double event_certificate_covers_yes(Case *event)
{
	fetch_event_day(event, event);
	const Installer *row = fetch_installer(event);
	if (!ready(event) || row == NULL)
		return 0;
	return lasts_to(event, row->certificate.text, row->expires.day, event);
}

/* The approval of the package that lasts longest; without one the order line and the order of days speak. */
double event_approval_covers_yes(Case *event)
{
	fetch_event_day(event, event);
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
	return lasts_to(event, longest->letter.text, longest->expires.day, event);
}

/* ---- what a roof area rests on ---- */

/* The day on which the work in a scope ends; NULL and not applicable if none is named. */
static const Case *fetch_end(Case *fact, Scope scope)
{
	if (!fetch_events(fact) || !ready(fact))
		return NULL;
	const Case *end = end_of_work(fact, scope);
	if (end == NULL)
		SKIP(fact, "no day of the work is named");
	else
		fetch_event_day(fact, end);
	return end;
}

static Scope scope_of_area(Case *fact)
{
	return (Scope){ NULL, GIVEN(fact, roof_area, RoofArea, name) };
}

double test_listing_covers_yes(Case *test)
{
	const char *listing = GIVEN(test, test, AreaTest, listing);
	const Case *end = fetch_end(test, scope_of_area(test));
	const Listing *row = test->listed;
	if (!ready(test) || end == NULL)
		return 0;
	if (row == NULL)
		return SKIP(test, "the listing is not known");
	if (!is_value(&row->expires.given))
		return 1;
	return lasts_to(test, listing, row->expires.day, end);
}

double document_paper_covers_yes(Case *document)
{
	int32_t expires = GIVEN(document, document, Document, expires);
	const char *number = GIVEN(document, document, Document, number);
	const Case *end = fetch_end(document, whole);
	if (!ready(document) || end == NULL)
		return 0;
	return lasts_to(document, number, expires, end);
}

double part_approval_covers_yes(Case *part)
{
	int32_t expires = 0;
	const char *letter = approval_of_part(part, &expires);
	const Case *end = letter != NULL && ready(part) ? fetch_end(part, scope_of_area(part)) : NULL;
	if (!ready(part) || letter == NULL || end == NULL)
		return 0;
	return lasts_to(part, letter, expires, end);
}
