/* SPDX-License-Identifier: MIT
 * What each comparison is about, as numbers. Most rules over comparisons name a paper, a part and an attribute, and there are
 * many of both: so a rule passes by those it cannot apply to without a look at their words.
 */
#include "judge.h"

#include <ctype.h>
#include <string.h>

/* Letters of either case and blanks around make no difference, as in conditions. Equal words have equal codes; never 0. */
static uint32_t code_of(const char *text)
{
	while (isspace((unsigned char)*text))
		text++;
	size_t length = strlen(text);
	while (length > 0 && isspace((unsigned char)text[length - 1]))
		length--;
	uint32_t code = 2166136261;
	for (size_t i = 0; i < length; i++)
		code = (code ^ (unsigned char)tolower((unsigned char)text[i])) * 16777619;
	return code | 1;
}

/* The last text and its code: neighbors mostly speak of one part, so that a long text of a file is not read again and again. */
typedef struct {
	const char *text;
	uint32_t code;
} Last;

static uint32_t code_of_value(const Given *given, const char *text, Last *last)
{
	if (!is_value(given) || text == NULL)
		return 0;
	if (text != last->text)
		*last = (Last){ text, code_of(text) };
	return last->code;
}

void fill_subjects(Judging *judging)
{
	const Cases *cases = judging->cases;
	Last with = { NULL, 0 }, part = { NULL, 0 }, attribute = { NULL, 0 };
	judging->subject = TAKE(judging->arena, Subject, cases->of[KIND_comparison].count);
	for (uint32_t i = 0; i < cases->of[KIND_comparison].count; i++) {
		const Comparison *row = cases->of[KIND_comparison].at[i]->row;
		judging->subject[i] = (Subject){
			.with = code_of_value(&row->with.given, row->with.text, &with),
			.part = code_of_value(&row->part.given, row->part.text, &part),
			.attribute = code_of_value(&row->attribute.given, row->attribute.text, &attribute),
		};
	}
}

/* From the rule's own conditions. */
Subject subject_of_rule(const Rule *rule)
{
	Subject wanted = { 0 };
	for (uint32_t i = 0; i < rule->conditions; i++) {
		const Test *test = &rule->when[i];
		bool is_own = test->left.from == FROM_FIELD && test->left.at == KIND_comparison;
		if (!is_own || test->relation != RELATION_IS || test->right.from != FROM_CONSTANT || test->right.word == NULL)
			continue;
		if (test->left.offset == offsetof(Comparison, with))
			wanted.with = code_of(test->right.word);
		else if (test->left.offset == offsetof(Comparison, part))
			wanted.part = code_of(test->right.word);
		else if (test->left.offset == offsetof(Comparison, attribute))
			wanted.attribute = code_of(test->right.word);
	}
	return wanted;
}
