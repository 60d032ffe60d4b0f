/* SPDX-License-Identifier: MIT
 * The questions alone, ready to send: each conflict between two papers, and what else the designer or the engineer must answer,
 * grouped by who must answer. A question stands on its own: what one paper asks, what the other asks, what is proposed, where.
 */
#include "formats.h"
#include "parts.h"

#include <ctype.h>
#include <stdlib.h>
#include <string.h>

static const LabelColumn head_column = { 0, 14 }, question_column = { 6, 16 };

/* ---- which, and in which order ---- */

static const char *answerer(const Finding *item)
{
	return item->answer_by != NULL ? item->answer_by : "applicant";
}

/* Those who write the papers that govern come first. */
static int rank_of(const char *who)
{
	return strcmp(who, "designer") == 0 ? 0 : strcmp(who, "engineer") == 0 ? 1 : 2;
}

static bool is_question(const Finding *item)
{
	int action = counted_action(item);
	if (!is_open_item(item) || action < 0 || action > ACTION_NOT_REVIEWED)
		return false;
	return action == ACTION_CONFLICT || rank_of(answerer(item)) < 2;
}

static int by_answerer(const void *a, const void *b)
{
	const Finding *x = *(const Finding *const *)a, *y = *(const Finding *const *)b;
	int order = rank_of(answerer(x)) - rank_of(answerer(y));
	order = order != 0 ? order : strcmp(answerer(x), answerer(y));
	return order != 0 ? order : (x > y) - (x < y); /* of one array */
}

static const Finding **questions_of(const Verdict *verdict, uint32_t *count, Arena *arena)
{
	const Finding **question = TAKE(arena, const Finding *, verdict->items);
	*count = 0;
	for (uint32_t i = 0; i < verdict->items; i++)
		if (is_question(&verdict->item[i]))
			question[(*count)++] = &verdict->item[i];
	qsort(question, *count, sizeof *question, by_answerer);
	return question;
}

/* ---- head ---- */

static void put_head(Out *out, const Verdict *verdict, Arena *arena)
{
	const Submittal *submittal = verdict->cases->submittal;
	const Project *project = &submittal->project;
	SAY(out, "QUESTIONS ON A ROOF SUBMITTAL\n\n");
	put_label(out, head_column, "Project", arena_printf(arena, "%s, %s, %s", said_text(&project->name.given, arena),
		said_text(&project->city.given, arena), said_text(&project->state.given, arena)));
	put_label(out, head_column, "Specified in", arena_printf(arena, "section %s",
		said_text(&submittal->specification.section.given, arena)));
	put_label(out, head_column, "Submittal", arena_printf(arena, "%s, stage %s, dated %s",
		said_text(&submittal->submittal.given, arena), stage_words(verdict->stage), said_text(&submittal->date.given, arena)));
	put_label(out, head_column, "Asked by", said_text(&submittal->parties.applicant.firm.given, arena));
	put_label(out, head_column, "Asked for", arena_printf(arena, "%s warranty, %s",
		said_text(&submittal->warranty.kind.given, arena), said_text(&submittal->warranty.term_yr.given, arena)));
	put_label(out, head_column, "File", verdict->source->name);
}

/* "TO THE DESIGNER: Example Design Office (invented)" */
static void put_addressee(Out *out, const Verdict *verdict, const char *who, Arena *arena)
{
	const Given *designer = &verdict->cases->submittal->parties.designer.given;
	SAY(out, "\nTO THE ");
	char *capitals = arena_text(arena, who, strlen(who));
	for (char *c = capitals; *c != '\0'; c++)
		*c = (char)toupper((unsigned char)*c);
	put_cut(out, capitals, PAGE_WIDTH / 2);
	if (strcmp(who, "designer") == 0 && is_value(designer)) {
		SAY(out, ": ");
		put_cut(out, designer->typed, PAGE_WIDTH / 2);
	}
	SAY(out, "\n");
}

/* ---- one question ---- */

static const Requirement *requirement_of(const Finding *item)
{
	return item->judged != NULL && item->judged->kind == KIND_requirement ? item->judged->row : NULL;
}

/* The words of the paragraph itself, where the submittal quotes them. */
static const char *paper_text(const Finding *item, Arena *arena)
{
	const Requirement *requirement = requirement_of(item);
	if (item->cites == NULL || requirement == NULL || !is_value(&requirement->text.given))
		return item->cites;
	return arena_printf(arena, "%s: \"%s\"", item->cites, requirement->text.text);
}

/* Whether what was asked for is a value of the submittal, and not of the specification or of the rule itself. */
static bool is_beside_submittal(const Finding *item)
{
	static const char specification[] = "specification.";
	const Operand *right = item->rule != NULL ? &item->rule->is.right : NULL;
	if (right == NULL || (right->from != FROM_FIELD && right->from != FROM_FACT) || right->word == NULL)
		return false;
	return strncmp(right->word, specification, sizeof specification - 1) != 0;
}

/* Who states the two sides: what the paragraph asks stands left where the paragraph itself was judged. */
typedef struct {
	const char *left, *right;
} Sides;

static Sides sides_of(const Finding *item)
{
	static const Sides by_authority[] = {
		[AUTHORITY_PROGRAM] = { "Submitted", "Program asks" },
		[AUTHORITY_LISTING] = { "Submitted", "Listing asks" },
		[AUTHORITY_ENGINEER] = { "Letter says", "Asked for" },
		[AUTHORITY_SPECIFICATION] = { "Submitted", "Paragraph asks" },
		[AUTHORITY_CODE] = { "Submitted", "Code asks" },
		[AUTHORITY_COMPUTED] = { "Submitted", "Computed" },
	};
	if (requirement_of(item) != NULL)
		return (Sides){ "Paragraph asks", "Program asks" };
	bool is_beside = is_beside_submittal(item);
	if (item->authority == AUTHORITY_ENGINEER && is_beside)
		return (Sides){ "Letter says", "Submittal says" };
	if (item->authority == AUTHORITY_SPECIFICATION && is_beside)
		return (Sides){ "Submitted", "Must agree with" };
	return by_authority[item->authority];
}

static void put_side(Out *out, const char *label, const Side *side)
{
	if (side->text != NULL)
		put_label(out, question_column, label, side->text);
}

static const char *typed_in(const Field *field, const void *row)
{
	const Given *given = field != NULL && row != NULL ? given_in(field, row) : NULL;
	return given != NULL && is_value(given) ? given->typed : NULL;
}

/* What the listing tested and what the catalogue has, beside what the two papers compared say. */
static void put_other_papers(Out *out, const Finding *item)
{
	if (item->judged == NULL || item->judged->kind != KIND_comparison)
		return;
	const Compared *compared = item->judged->row;
	const char *listed = typed_in(compared->field, compared->part->listed);
	const char *catalogued = typed_in(compared->field, compared->part->catalogue);
	if (listed != NULL && item->authority != AUTHORITY_LISTING)
		put_label(out, question_column, "Listing tested", listed);
	if (catalogued != NULL)
		put_label(out, question_column, "Catalogue has", catalogued);
}

/* "designer to accept EPDM" is what the designer is asked to do: "accept EPDM". */
static const char *proposal_of(const Finding *item)
{
	const char *text = item->remedy != NULL ? item->remedy : "say what holds";
	size_t length = strlen(answerer(item));
	return strncmp(text, answerer(item), length) == 0 && strncmp(text + length, " to ", 4) == 0 ? text + length + 4 : text;
}

static void put_question(Out *out, const Verdict *verdict, const Finding *item, Arena *arena)
{
	const Reference *reference = verdict->cases->reference;
	const char *number = item_number(item, arena), *paper = paper_text(item, arena);
	Sides sides = sides_of(item);
	SAY(out, "\n");
	put(out, arena_printf(arena, "%-6s%s  [%s]", number != NULL ? number : "-", item_heading(item), item->code));
	SAY(out, "\n");
	put_label(out, question_column, "Question", item->finding);
	if (paper != NULL)
		put_label(out, question_column, "Paper", paper);
	if (item->found_by != FOUND_MISSING)
		put_side(out, sides.left, &item->submitted);
	put_side(out, sides.right, &item->limit);
	put_other_papers(out, item);
	put_label(out, question_column, "Proposed", proposal_of(item));
	if (item->rule != NULL)
		put_label(out, question_column, "Why it matters", item->rule->why);
	if (item->basis != NULL)
		put_label(out, question_column, "Basis", basis_text(reference, item->basis, arena));
	put_label(out, question_column, "Where", item_places(item, verdict, arena));
	put_spaces(out, question_column.indent);
	SAY(out, "Answer          [ ] as proposed  [ ] otherwise: ______________________________________________\n");
}

static void put_answered(Out *out)
{
	SAY(out, "\n      Answered by ______________________________   on ______________\n");
}

static void put_questions(Out *out, const Verdict *verdict, Arena *arena)
{
	uint32_t count;
	const Finding *const *question = questions_of(verdict, &count, arena);
	if (count == 0)
		SAY(out, "\nNo question: nothing found here sets two papers against each other or waits for designer or engineer.\n");
	for (uint32_t i = 0; i < count; i++) {
		if (i == 0 || strcmp(answerer(question[i]), answerer(question[i - 1])) != 0)
			put_addressee(out, verdict, answerer(question[i]), arena);
		put_question(out, verdict, question[i], arena);
		if (i + 1 == count || strcmp(answerer(question[i]), answerer(question[i + 1])) != 0)
			put_answered(out);
	}
}

void write_questions(Out *out, const Verdict *verdict, Arena *arena)
{
	if (verdict->broken_file)
		SAY(out, "NOT JUDGED: the file could not be read to its end. Mend it and run again.\n");
	else
		put_head(out, verdict, arena);
	if (!verdict->broken_file)
		put_questions(out, verdict, arena);
	write_cautions(out, verdict->cases->reference, (CautionsFor){ "review", "" }, arena);
}
