/* SPDX-License-Identifier: MIT
 * Approvals of parts outside the catalogue: an approval counts for its item, its use, its project, its term and its days alone.
 */
#include "date.h"
#include "parts.h"
#include "text.h"

typedef struct {
	const char *place, *project;
	double term_yr;
	int32_t day;
	bool any_place; /* the item is only asked for: nobody has said where it is used */
} Here;

/* A cell `any` is read as "does not apply": it limits nothing. */
static bool limits(const Text *cell)
{
	return is_value(&cell->given);
}

/* Why an approval does not count here, in words; NULL if it does. */
static const char *why_not(const Approval *row, const Here *here, Arena *arena)
{
	if (!here->any_place && limits(&row->use) && (here->place == NULL || !same_text(row->use.text, here->place)))
		return arena_printf(arena, "%s is for another use (%s)", row->letter.text, row->use.text);
	if (!same_text(row->project.text, "all") && !same_text(row->project.text, here->project))
		return arena_printf(arena, "%s is for another project", row->letter.text);
	if (here->day < row->issued.day)
		return arena_printf(arena, "%s is issued only on %s", row->letter.text, date_print(arena, row->issued.day));
	if (here->day > row->expires.day)
		return arena_printf(arena, "%s expired on %s", row->letter.text, date_print(arena, row->expires.day));
	if (row->greatest_term_yr.value < here->term_yr * (1 - 1e-9))
		return arena_printf(arena, "%s reaches to a term of %g yr", row->letter.text, row->greatest_term_yr.value);
	return NULL;
}

static bool has_condition(const Approval *row)
{
	return is_value(&row->condition.given) && *row->condition.text != '\0';
}

/* The approval that counts, one without a condition before others; else NULL, with the reason of the last that did not. */
static const Approval *best_approval(const Case *part, const char *item, const Here *here, const char **reason)
{
	const Registers *registers = part->all->registers;
	const Approval *best = NULL;
	for (uint32_t i = 0; i < registers->approvals.count; i++) {
		const Approval *row = &registers->approvals.row[i];
		if (!same_text(row->item.text, item))
			continue;
		const char *why = why_not(row, here, part->all->arena);
		if (why != NULL)
			*reason = why;
		else if (best == NULL || (has_condition(best) && !has_condition(row)))
			best = row;
	}
	return best;
}

static bool is_in_register(const Registers *registers, const char *item)
{
	for (uint32_t i = 0; registers != NULL && i < registers->approvals.count; i++)
		if (same_text(registers->approvals.row[i].item.text, item))
			return true;
	return false;
}

/* What an approval is held against is asked for only where the register speaks of the item at all. */
static const Approval *fetch_approval(Case *part)
{
	const char *item = GIVEN_AT(part, part, Panel, item);
	if (!ready(part))
		return NULL;
	if (!is_in_register(part->all->registers, item)) {
		note(part, "no approval of this item is in the register");
		return NULL;
	}
	Here here = { .place = fetch_place(part) };
	here.project = GIVEN(part, submittal, Submittal, project.name);
	here.term_yr = GIVEN(part, submittal, Submittal, warranty.term_yr);
	here.day = fetch_as_of(part);
	if (!ready(part))
		return NULL;
	const char *reason = NULL;
	const Approval *row = best_approval(part, item, &here, &reason);
	if (row == NULL)
		note(part, reason);
	else if (has_condition(row))
		note(part, arena_printf(part->all->arena, "%s, on condition: %s", row->letter.text, row->condition.text));
	else
		note(part, row->letter.text);
	return row;
}

double part_approved_yes(Case *part)
{
	if (OF(part, part_in_catalogue_yes) != 0)
		return 1;
	return ready(part) && fetch_approval(part) != NULL;
}

/* A condition is never silent: a rule turns it into an item with the note. */
double part_approved_on_condition_yes(Case *part)
{
	if (OF(part, part_in_catalogue_yes) != 0)
		return 0;
	const Approval *row = ready(part) ? fetch_approval(part) : NULL;
	return row != NULL && has_condition(row);
}

/* An item that the specification asks for; whoever meets it must find it in the catalogue, or approved. */
double requirement_item_accepted_yes(Case *requirement)
{
	double known = OF(requirement, requirement_names_catalogue_item_yes);
	if (!ready(requirement) || known != 0)
		return known != 0;
	const char *item = GIVEN(requirement, requirement, Requirement, exactly);
	if (!ready(requirement) || !is_in_register(requirement->all->registers, item))
		return 0;
	Here here = { .any_place = true };
	here.project = GIVEN(requirement, submittal, Submittal, project.name);
	here.term_yr = GIVEN(requirement, submittal, Submittal, warranty.term_yr);
	here.day = fetch_as_of(requirement);
	const char *reason = NULL;
	return ready(requirement) && best_approval(requirement, item, &here, &reason) != NULL;
}

/* What the criteria forbid without a letter needs one even if it is in the catalogue. */
double part_approved_in_register_yes(Case *part)
{
	return fetch_approval(part) != NULL;
}

const char *approval_of_part(Case *part, int32_t *expires)
{
	if (OF(part, part_in_catalogue_yes) != 0)
		SKIP(part, "it is in the catalogue and needs no approval");
	const Approval *row = ready(part) ? fetch_approval(part) : NULL;
	if (row == NULL && ready(part))
		SKIP(part, "no approval of it counts");
	if (row == NULL)
		return NULL;
	*expires = row->expires.day;
	return row->letter.text;
}
