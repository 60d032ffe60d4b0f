/* SPDX-License-Identifier: MIT
 * Requests for prior approval, one for each item that needs the panel maker's written word, filled in as far as the submittal
 * goes. The lines for the answer are the columns of the register of approvals.
 */
#include "attributes.h"
#include "formats.h"
#include "parts.h"

#include <string.h>

enum { MOST_PAPERS = 40 };

static const LabelColumn column = { 2, 16 };

static bool is_request(const Finding *item)
{
	return is_open_item(item) && counted_action(item) == ACTION_HOLD;
}

static void put_who(Out *out, const Verdict *verdict, Arena *arena)
{
	const Submittal *submittal = verdict->cases->submittal;
	const Project *project = &submittal->project;
	put_label(out, column, "To", said_text(&verdict->cases->criteria->edition.maker.given, arena));
	put_label(out, column, "From", said_text(&submittal->parties.applicant.firm.given, arena));
	put_label(out, column, "Project", arena_printf(arena, "%s, %s, %s (%s)", said_text(&project->name.given, arena),
		said_text(&project->city.given, arena), said_text(&project->state.given, arena), said_text(&project->use.given, arena)));
	put_label(out, column, "Submittal", arena_printf(arena, "%s, stage %s, dated %s", said_text(&submittal->submittal.given, arena),
		stage_words(verdict->stage), said_text(&submittal->date.given, arena)));
	put_label(out, column, "Asked for", arena_printf(arena, "%s warranty, %s", said_text(&submittal->warranty.kind.given, arena),
		said_text(&submittal->warranty.term_yr.given, arena)));
}

/* The record that acceptance is asked for. */
static const Case *asked_for(const Finding *item)
{
	if (item->judged != NULL && item->judged->kind == KIND_comparison)
		return ((const Compared *)item->judged->row)->part;
	return item->spot[0].where;
}

static void put_as_submitted(Out *out, const Finding *item, Arena *arena)
{
	const Case *at = asked_for(item);
	uint32_t i = 0, shown = 0;
	if (at == NULL || at->kind == KIND_submittal)
		return;
	for (const Field *field; (field = attribute_next(at, &i)) != NULL; shown++)
		put_label(out, column, shown == 0 ? "As submitted" : "", attribute_text(at, field, arena));
}

static void put_papers(Out *out, const Verdict *verdict, Arena *arena)
{
	const Cases *cases = verdict->cases;
	const char *all = "";
	for (uint32_t i = 0; i < cases->of[KIND_document].count && i < MOST_PAPERS; i++) {
		const Document *paper = cases->of[KIND_document].at[i]->row;
		all = arena_printf(arena, "%s%s%s %s", all, i > 0 ? "; " : "", said_text(&paper->kind.given, arena),
			said_text(&paper->number.given, arena));
	}
	put_label(out, column, "In the package", *all != '\0' ? all : "no paper is listed");
	put_label(out, column, "Sent with this", "[ ] data sheet, the item marked  [ ] test report  [ ] statement of service life");
	put_label(out, column, "", "[ ] statement that no lead, graphite or copper is in it  [ ] other: ____________________");
}

static void put_answer(Out *out)
{
	put_label(out, column, "Answer", "[ ] accepted  [ ] accepted on the condition below  [ ] not accepted");
	put_label(out, column, "Condition", "________________________________________________________________________");
	put_label(out, column, "Letter", "______________  issued ____________  expires ____________  greatest term ______ yr");
	put_label(out, column, "By (role)", "__________________________________  on ______________");
}

static void put_request(Out *out, const Verdict *verdict, const Finding *item, Arena *arena)
{
	const char *number = item_number(item, arena);
	put_who(out, verdict, arena);
	put_label(out, column, "Item",
		arena_printf(arena, "%s  %s  [%s]", number != NULL ? number : "-", item_heading(item), item->code));
	put_label(out, column, "Asked", arena_printf(arena, "written acceptance, although %s", item->finding));
	put_label(out, column, "Where", item_places(item, NULL, arena));
	if (item->submitted.text != NULL)
		put_label(out, column, "Submitted", item->submitted.text);
	if (item->limit.text != NULL)
		put_label(out, column, "Else allowed", item->limit.text);
	put_as_submitted(out, item, arena);
	if (item->rule != NULL)
		put_label(out, column, "Why it is asked", item->rule->why);
	put_label(out, column, "Basis", basis_text(verdict->cases->reference, item->basis, arena));
	put_papers(out, verdict, arena);
	put_answer(out);
}

static uint32_t count_requests(const Verdict *verdict)
{
	uint32_t count = 0;
	for (uint32_t i = 0; i < verdict->items; i++)
		count += is_request(&verdict->item[i]);
	return count;
}

static void put_requests(Out *out, const Verdict *verdict, Arena *arena)
{
	uint32_t count = count_requests(verdict), number = 0;
	if (count == 0)
		SAY(out, "REQUESTS FOR PRIOR APPROVAL\n\nNone: no open item of this submittal waits for prior written approval.\n");
	for (uint32_t i = 0; i < verdict->items; i++) {
		if (!is_request(&verdict->item[i]))
			continue;
		if (number++ > 0)
			SAY(out, "\n");
		put(out, arena_printf(arena, "REQUEST FOR PRIOR APPROVAL %u of %u", number, count));
		SAY(out, "\n\n");
		put_request(out, verdict, &verdict->item[i], arena);
	}
	if (verdict->left_out > 0)
		SAY(out, "\nMore items were found than are listed; mend these first.\n");
}

void write_requests(Out *out, const Verdict *verdict, Arena *arena)
{
	if (verdict->broken_file)
		SAY(out, "NOT JUDGED: the file could not be read to its end. Mend it and run again.\n");
	else
		put_requests(out, verdict, arena);
	write_cautions(out, verdict->cases->reference, (CautionsFor){ "review", "" }, arena);
}
