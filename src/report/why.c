/* SPDX-License-Identifier: MIT
 * What a rule or a reader's message asks, why it matters on a roof, on what it rests, and what breaks and meets it. One rule that
 * takes two rows has two codes with a letter; asked for without the letter, both are printed.
 */
#include "why.h"

#include "parts.h"
#include "report.h"

#include <ctype.h>
#include <string.h>
#include <strings.h>

static const LabelColumn why_column = { 2, 12 };

/* Whether `code` is the one asked for, but for a letter behind it. */
static bool is_asked(const char *code, const char *asked)
{
	size_t length = strlen(asked);
	if (strncasecmp(code, asked, length) != 0)
		return false;
	return code[length] == '\0' || (islower((unsigned char)code[length]) && code[length + 1] == '\0');
}

static const char *cell(const Text *text)
{
	return is_value(&text->given) && text->text != NULL ? text->text : "";
}

static void put_title(Out *out, const char *code, const char *action)
{
	put(out, code);
	SAY(out, "  ");
	put(out, action);
	SAY(out, "\n");
}

/* ---- examples ---- */

static bool is_same_edit(const WhyEdit *a, const WhyEdit *b)
{
	return strcmp(a->path, b->path) == 0 && strcmp(a->value, b->value) == 0;
}

static bool has_edit(const WhyCase *c, const WhyEdit *edit)
{
	for (uint32_t i = 0; c != NULL && i < c->edits; i++)
		if (is_same_edit(&c->edit[i], edit))
			return true;
	return false;
}

/* The changes of a case that another has too, or has not; the label stands before the first. */
typedef struct {
	const char *label;
	const WhyCase *at, *other;
	bool shared, short_way; /* short_way: what stands in braces is told by its difference */
} Changes;

static const char *change_words(const Library *library, const Changes *changes, const WhyEdit *edit, Arena *arena)
{
	const char *words = NULL;
	for (uint32_t i = 0; changes->short_way && words == NULL && i < changes->other->edits; i++)
		words = difference_words(library, &(WhyPair){ edit, &changes->other->edit[i] }, arena);
	return words != NULL ? words : edit_words(library, edit, arena);
}

static uint32_t put_changes(Out *out, const Library *library, const Changes *changes, Arena *arena)
{
	uint32_t shown = 0;
	for (uint32_t i = 0; i < changes->at->edits; i++) {
		const WhyEdit *edit = &changes->at->edit[i];
		if (has_edit(changes->other, edit) != changes->shared)
			continue;
		put_label(out, why_column, shown++ == 0 ? changes->label : "", change_words(library, changes, edit, arena));
	}
	return shown;
}

/* A broken case differs from the met one before it in one value; what both have is said once. */
static void put_pair(Out *out, const Library *library, const WhyCase *met, const WhyCase *broken, Arena *arena)
{
	put_changes(out, library, &(Changes){ "Example", broken, met, true, false }, arena);
	put_changes(out, library, &(Changes){ "Breaks it", broken, met, false, false }, arena);
	if (put_changes(out, library, &(Changes){ "Meets it", met, broken, false, true }, arena) == 0)
		put_label(out, why_column, "Meets it", "as the clean example has it");
}

static const WhyCase *case_named(const WhyCase *all, uint32_t count, const char *name)
{
	for (uint32_t i = 0; i < count; i++)
		if (strcmp(all[i].name, name) == 0)
			return &all[i];
	return NULL;
}

/* The cases of the tests; `met` stands before `broken`. */
static void put_examples(Out *out, const Library *library, const char *code, Arena *arena)
{
	uint32_t count, pairs = 0;
	const WhyCase *all = why_cases(code, &count, arena);
	for (uint32_t i = 1; i < count; i++) {
		if (strcmp(all[i].name, "broken") != 0 || strcmp(all[i - 1].name, "met") != 0)
			continue;
		if (pairs++ > 0)
			SAY(out, "  or\n");
		put_pair(out, library, &all[i - 1], &all[i], arena);
	}
	const WhyCase *silent = case_named(all, count, "silent");
	if (silent != NULL)
		put_changes(out, library, &(Changes){ "Not asked", silent, NULL, false, false }, arena);
	if (pairs > 0)
		SAY(out, "              (all else as in the clean example)\n");
}

static void put_rule(Out *out, const Library *library, uint32_t number, Arena *arena)
{
	const RuleRow *row = &library->criteria->rule_rows.row[number];
	const Rule *rule = &library->criteria->rule[number];
	put_title(out, cell(&row->code), cell(&row->action));
	put_label(out, why_column, "Says", wording_words(&rule->finding, arena));
	put_label(out, why_column, "Asks", question_words(rule, row, arena));
	put_label(out, why_column, "Why", cell(&row->why));
	put_label(out, why_column, "Authority", cell(&row->authority));
	put_label(out, why_column, "Basis", basis_text(library->reference, cell(&row->basis), arena));
	put_label(out, why_column, "Remedy", wording_words(&rule->remedy, arena));
	if (*cell(&row->remedy_else) != '\0')
		put_label(out, why_column, "", arena_printf(arena, "or: %s", wording_words(&rule->remedy_else, arena)));
	put_label(out, why_column, "Answer by", cell(&row->answer_by));
	if (*cell(&row->after) != '\0')
		put_label(out, why_column, "Waits for", arena_printf(arena, "%s: judged once that is cured", cell(&row->after)));
	put_label(out, why_column, "Waivable", strcmp(cell(&row->waivable), "yes") == 0 ? "by a variance in the register" : "no");
	put_examples(out, library, cell(&row->code), arena);
}

static void put_message(Out *out, const Message *message, Arena *arena)
{
	put_title(out, message->code, action_words(message->action));
	put_label(out, why_column, "Says", message_words(message->finding, arena));
	put_label(out, why_column, "Why", message->why);
	put_label(out, why_column, "Remedy", message_words(message->remedy, arena));
	put_label(out, why_column, "Basis", "how a file is read: common practice, no published source");
}

/* What the reviewer adds has no rule behind it. */
static const char *const own_code = "OWN";

static void put_own(Out *out)
{
	put_title(out, own_code, "as the reviewer says");
	put_label(out, why_column, "Says", "what the panel maker's reviewer found himself");
	put_label(out, why_column, "Why", "No table holds all that can be wrong with a roof; what a person sees on the drawings "
		"stands in the same list, last, with its own action, basis, remedy and who must answer.");
	put_label(out, why_column, "Basis", "the one the reviewer names in his file");
	put_label(out, why_column, "Written", "under own: in the reviewer's file, with action, where, finding, basis, remedy and "
		"answer_by");
}

const char *why_code_at(const Criteria *criteria, size_t i)
{
	if (i < criteria->rule_rows.count)
		return cell(&criteria->rule_rows.row[i].code);
	i -= criteria->rule_rows.count;
	if (i == MESSAGE_COUNT)
		return own_code;
	return i < MESSAGE_COUNT ? message_of((MessageId)i)->code : NULL;
}

bool write_why(Out *out, const Library *library, const char *code, Arena *arena)
{
	const Criteria *criteria = library->criteria;
	const char *known;
	bool found = false;
	for (size_t i = 0; (known = why_code_at(criteria, i)) != NULL; i++) {
		if (!is_asked(known, code))
			continue;
		if (found)
			SAY(out, "\n");
		found = true;
		if (i < criteria->rule_rows.count)
			put_rule(out, library, (uint32_t)i, arena);
		else if (known == own_code)
			put_own(out);
		else
			put_message(out, message_of((MessageId)(i - criteria->rule_rows.count)), arena);
	}
	return found;
}
