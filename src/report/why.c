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

/* The row as a sentence: "for each clip, when use is running: pieces is two-piece". */
static const char *question(const RuleRow *row, Arena *arena)
{
	const char *when = cell(&row->when), *limit = cell(&row->limit);
	const char *text = arena_printf(arena, "for each %s%s%s: %s %s%s%s", cell(&row->for_each), *when != '\0' ? ", when " : "", when,
		cell(&row->fact), cell(&row->relation), *limit != '\0' ? " " : "", limit);
	return plain_words(text, arena);
}

static void put_example(Out *out, const char *code, const char *which, Arena *arena)
{
	Out *rows = out_make(arena, OUT_TERMINAL);
	if (!put_rule_case(rows, code, which, arena)) {
		if (strcmp(which, "met") == 0)
			SAY(out, "  Meets it: the clean example as it is\n");
		return;
	}
	SAY(out, "  ");
	put(out, strcmp(which, "met") == 0 ? "Meets it" : strcmp(which, "broken") == 0 ? "Breaks it" : "Does not concern it");
	SAY(out, ", in the clean example:\n");
	size_t length;
	const char *text = out_text(rows, &length);
	out_literal(out, text, length); /* escaped already */
}

static void put_rule(Out *out, const Library *library, const RuleRow *row, Arena *arena)
{
	put_title(out, cell(&row->code), cell(&row->action));
	put_label(out, why_column, "Says", cell(&row->finding));
	put_label(out, why_column, "Asks", question(row, arena));
	put_label(out, why_column, "Why", cell(&row->why));
	put_label(out, why_column, "Authority", cell(&row->authority));
	put_label(out, why_column, "Basis", basis_text(library->reference, cell(&row->basis), arena));
	put_label(out, why_column, "Remedy", cell(&row->remedy));
	if (*cell(&row->remedy_else) != '\0')
		put_label(out, why_column, "", arena_printf(arena, "or: %s", cell(&row->remedy_else)));
	put_label(out, why_column, "Answer by", cell(&row->answer_by));
	if (*cell(&row->after) != '\0')
		put_label(out, why_column, "Waits for", arena_printf(arena, "%s: judged once that is cured", cell(&row->after)));
	put_label(out, why_column, "Waivable", strcmp(cell(&row->waivable), "yes") == 0 ? "by a variance in the register" : "no");
	put_example(out, cell(&row->code), "broken", arena);
	put_example(out, cell(&row->code), "met", arena);
	put_example(out, cell(&row->code), "silent", arena);
}

static void put_message(Out *out, const Message *message)
{
	put_title(out, message->code, action_words(message->action));
	put_label(out, why_column, "Says", message->finding);
	put_label(out, why_column, "Why", message->why);
	put_label(out, why_column, "Remedy", message->remedy);
	put_label(out, why_column, "Basis", "how a submittal is read; in braces stands what was found");
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
			put_rule(out, library, &criteria->rule_rows.row[i], arena);
		else if (known == own_code)
			put_own(out);
		else
			put_message(out, message_of((MessageId)(i - criteria->rule_rows.count)));
	}
	return found;
}
