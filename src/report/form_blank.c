/* SPDX-License-Identifier: MIT
 * A submittal to fill in, printed from the form's table. What is due at the stage says `unknown`: reviewed half filled in, the
 * form lists what is left. What is due later or may be left out stands in comments, with an example; take away the # to use it.
 */
#include "parts.h"
#include "report.h"

#include <string.h>

enum { STEP = 2, REMARK_COLUMN = 40, FORM_WIDTH = 120 };

typedef struct {
	Out *out;
	Arena *arena;
	Stage stage;
	bool asleep; /* inside a comment */
} Blank;

static bool is_live(const Blank *blank, const Field *field)
{
	bool needed = field->need == NEED_REQUIRED || field->need == NEED_STATED;
	return needed && field->due <= blank->stage && !blank->asleep;
}

/* ---- remarks ---- */

/* "a|b|spelling=a" as "a, b". */
static const char *words_text(const char *words, Arena *arena)
{
	const char *text = "";
	size_t length;
	const char *word;
	for (int i = 0; (word = word_text(words, i, &length)) != NULL; i++)
		text = arena_printf(arena, "%s%s%.*s", text, i > 0 ? " | " : "", (int)length, word);
	return text;
}

static const char *need_text(const Blank *blank, const Field *field, Arena *arena)
{
	switch (field->need) {
	case NEED_ASSUMED:
		return arena_printf(arena, "; left out means %s", field->assumed);
	case NEED_OPTIONAL:
	case NEED_MADE:
		return "; may be left out";
	default:
		return field->due > blank->stage ? arena_printf(arena, "; due from stage %s", stage_words(field->due)) : "";
	}
}

/* A comment at its column, broken at blanks. */
static void put_remark(Out *out, int at, const char *text)
{
	while (*text != '\0') {
		put_spaces(out, at < REMARK_COLUMN ? REMARK_COLUMN - at : 1);
		int column = at < REMARK_COLUMN ? REMARK_COLUMN : at + 1;
		size_t room = (size_t)(FORM_WIDTH - 2 - column), length = strlen(text);
		if (length > room) {
			for (length = room; length > 0 && text[length] != ' '; length--)
				;
			length = length > 0 ? length : strcspn(text, " ");
		}
		SAY(out, "# ");
		put_part(out, text, length);
		SAY(out, "\n");
		text += length;
		text += strspn(text, " ");
		at = 0;
	}
}

/* A value that YAML would not take as it is stands in quotes. */
static const char *quoted(const char *value, Arena *arena)
{
	bool collection = *value == '[' || *value == '{';
	bool quotes = !collection && (strchr("#&*!|>%@`'\"", *value) != NULL || strstr(value, ": ") != NULL);
	return quotes ? arena_printf(arena, "\"%s\"", value) : value;
}

static const char *remark_of(const Blank *blank, const Field *field, bool with_example)
{
	Arena *arena = blank->arena;
	const char *which = field->words != NULL ? arena_printf(arena, ": %s", words_text(field->words, arena)) : "";
	bool example = with_example && field->words == NULL && field->example != NULL && *field->example != '\0';
	const char *as = example ? arena_printf(arena, ", as: %s", quoted(field->example, arena)) : "";
	return arena_printf(arena, "%s%s%s%s%s", field->title, which, as, need_text(blank, field, arena),
		field->may_not_apply ? "; or {not applicable: REASON}" : "");
}

/* ---- keys ---- */

/* `indent` spaces, a # if this is a comment, the dash of a list's element if it is due. */
static int put_key(const Blank *blank, const Field *field, int indent, bool dash, bool live)
{
	Out *out = blank->out;
	put_spaces(out, dash ? indent - STEP : indent);
	if (!live)
		SAY(out, "# ");
	if (dash)
		SAY(out, "- ");
	put(out, field->key);
	SAY(out, ":");
	return indent + (live ? 0 : 2) + (int)strlen(field->key) + 1;
}

/* What the blank form can say itself. */
static const char *known_value(const Blank *blank, const Field *field)
{
	static const char *const known[] = { "form", "round" };
	if (field == field_find(&Submittal_record, "stage", 5))
		return stage_words(blank->stage);
	for (size_t i = 0; i < sizeof known / sizeof *known; i++)
		if (field == field_find(&Submittal_record, known[i], strlen(known[i])))
			return "1";
	return "unknown";
}

static void put_scalar(const Blank *blank, const Field *field, int indent, bool dash)
{
	bool live = is_live(blank, field);
	int at = put_key(blank, field, indent, dash, live);
	const char *example = field->example != NULL ? field->example : "";
	const char *value = live ? known_value(blank, field) : quoted(*example != '\0' ? example : "...", blank->arena);
	SAY(blank->out, " ");
	put(blank->out, value);
	put_remark(blank->out, at + 1 + (int)strlen(value), remark_of(blank, field, live));
}

static void put_record(Blank *blank, const Record *record, int indent, bool element);

static void put_group(Blank *blank, const Field *field, int indent, bool dash)
{
	bool live = is_live(blank, field), asleep = blank->asleep;
	int at = put_key(blank, field, indent, dash, live);
	bool list = field->kind == IS_LIST;
	const char *remark = remark_of(blank, field, false);
	put_remark(blank->out, at, list ? arena_printf(blank->arena, "%s; one entry each, or none", remark) : remark);
	blank->asleep = !live;
	put_record(blank, field->record, indent + (list ? 2 * STEP : STEP), list);
	blank->asleep = asleep;
}

static void put_field(Blank *blank, const Field *field, int indent, bool dash)
{
	if (field->record != NULL)
		put_group(blank, field, indent, dash);
	else
		put_scalar(blank, field, indent, dash);
}

/* What is due comes first, so that the dash of an element stands before a key and not before a comment. Calls itself as deep as
 * the form's own table is. */
static void put_record(Blank *blank, const Record *record, int indent, bool element)
{
	bool dash = element;
	for (int pass = 0; pass < 2; pass++)
		for (uint32_t i = 0; i < record->count; i++) {
			const Field *field = &record->field[i];
			bool first = blank->asleep ? pass == 0 : is_live(blank, field) == (pass == 0);
			if (!first)
				continue;
			put_field(blank, field, indent, dash);
			dash = false;
		}
}

void write_blank_form(Out *out, Stage stage, Arena *arena)
{
	SAY(out, "# A submittal for a weathertight warranty, to be filled in. Replace every `unknown`; what you leave unknown is\n"
		"# listed as not reviewed. A line that begins with # may be left out: take the # and the blank behind it away to use it.\n"
		"# Write a unit with every dimension. `{by others: NAME}` says who will answer. Copy an entry of a list for each\n"
		"# further one; where there are none, write none: `rivets: none`. Put a value that begins with # in quotes. Of a part\n"
		"# that is in the catalogue delete the lines below its item: the catalogue fills them, and a review asks for the rest.\n");
	Blank blank = { out, arena, stage, false };
	put_record(&blank, &Submittal_record, 0, false);
}
