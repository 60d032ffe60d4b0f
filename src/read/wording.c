/* SPDX-License-Identifier: MIT
 * Findings and remedies cut at their braces. What stands in braces is a name like any in a rule, a side of its test, or one of
 * the few that only advise can answer.
 */
#include "wording.h"

#include <string.h>

static bool is_one_of(const char *const *word, size_t count, Span name)
{
	for (size_t i = 0; i < count; i++)
		if (strlen(word[i]) == name.length && memcmp(word[i], name.text, name.length) == 0)
			return true;
	return false;
}

static bool bind_placeholder(const Binding *b, Span name, const Test *test, Piece *piece)
{
	static const char *const sides[] = { "submitted", "allowed", "note" };
	static const char *const advice[] = { "nearest_listing", "accepted_items", "greatest_spacing", "longest_term",
		"letter_inputs" };
	const char *written = arena_text(b->loading->arena, name.text, name.length);
	piece->has_operand = true;
	piece->for_advise = is_one_of(advice, sizeof advice / sizeof *advice, name);
	if (piece->for_advise || is_one_of(sides, sizeof sides / sizeof *sides, name)) {
		piece->operand = (Operand){ .from = FROM_CONSTANT, .gives = VALUE_TEXT, .factor = 1, .word = written };
		bool given = test->relation == RELATION_GIVEN || test->relation == RELATION_NOT_GIVEN;
		if (!given || strcmp(written, "allowed") != 0)
			return true;
		complain(b->loading->complaints, MESSAGE_TAB_90, span_place(b, name), (About){ .value = written });
		return false;
	}
	if (name_find(b, name, &piece->operand) == NAME_FOUND)
		return true;
	const char *record = b->for_each == RECORD_KINDS ? "part" : record_of(b->for_each)->name;
	complain(b->loading->complaints, MESSAGE_TAB_77, span_place(b, name), (About){ .key = record, .value = written });
	return false;
}

bool wording_bind(const Binding *b, const Text *cell, const Test *test, Wording *wording)
{
	Piece *piece = NULL;
	uint32_t room = 0;
	bool good = true;
	*wording = (Wording){ .whole = cell->text };
	if (cell->given.said != SAID_VALUE)
		return true;
	Span whole = span_of(&cell->given);
	for (size_t at = 0, more = 1; more;) {
		size_t plain = strcspn(whole.text + at, "{"), name = at + plain + 1;
		piece = arena_more(b->loading->arena, piece, wording->count, &room, sizeof *piece);
		Piece *here = &piece[wording->count++];
		*here = (Piece){ .text = arena_text(b->loading->arena, whole.text + at, plain) };
		more = whole.text[at + plain] == '{';
		if (!more)
			break;
		size_t length = strcspn(whole.text + name, "{}");
		if (whole.text[name + length] != '}') {
			Span rest = { whole.text + name - 1, 1, whole.cell, name - 1 };
			complain(b->loading->complaints, MESSAGE_TAB_78, span_place(b, rest), (About){ 0 });
			return false;
		}
		good &= bind_placeholder(b, (Span){ whole.text + name, length, whole.cell, name }, test, here);
		at = name + length + 1;
	}
	wording->piece = piece;
	return good;
}

bool asks_advise(const Wording *wording)
{
	for (uint32_t i = 0; i < wording->count; i++)
		if (wording->piece[i].for_advise)
			return true;
	return false;
}

static const char *advise_name(const Wording *wording)
{
	for (uint32_t i = 0; i < wording->count; i++)
		if (wording->piece[i].for_advise)
			return wording->piece[i].operand.word;
	return NULL;
}

void check_advise(const Binding *b, const RuleRow *row, const Rule *rule)
{
	const struct {
		const Wording *wording;
		const Text *cell;
	} other[] = { { &rule->finding, &row->finding }, { &rule->remedy_else, &row->remedy_else } };
	for (int i = 0; i < 2; i++)
		if (asks_advise(other[i].wording))
			complain(b->loading->complaints, MESSAGE_TAB_80, other[i].cell->given.place,
				 (About){ .value = advise_name(other[i].wording) });
	if (asks_advise(&rule->remedy) && row->remedy_else.given.said != SAID_VALUE)
		complain(b->loading->complaints, MESSAGE_TAB_79, row->remedy.given.place,
			 (About){ .value = advise_name(&rule->remedy) });
}

/* Words by which a rule would claim the authority of a building code. */
static const char *const code_words[] = {
	"code requires",        "code calls for", "code demands",    "code prescribes", "required by code",
	"required by the code", "by code",        "per code",        "code-required",   "code minimum",
	"code does not allow",  "code forbids",   "against the code"
};

void check_voice(const Binding *b, const RuleRow *row)
{
	const Text *cell[] = { &row->finding, &row->remedy, &row->remedy_else };
	for (size_t c = 0; c < sizeof cell / sizeof *cell; c++) {
		if (cell[c]->given.said != SAID_VALUE || strcasestr(cell[c]->text, "code") == NULL)
			continue;
		Span whole = span_of(&cell[c]->given);
		for (size_t i = 0; i < sizeof code_words / sizeof *code_words; i++) {
			const char *found = strcasestr(whole.text, code_words[i]);
			if (found == NULL)
				continue;
			Span words = { found, strlen(code_words[i]), whole.cell, (size_t)(found - whole.text) };
			complain(b->loading->complaints, MESSAGE_TAB_81, span_place(b, words), (About){ .value = code_words[i] });
			break;
		}
	}
}
