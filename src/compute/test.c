/* SPDX-License-Identifier: MIT
 * One test, three-valued: what is not there is never met, and never broken.
 *
 * Numbers are compared with a relative tolerance of 1e-9, which no count is large enough to feel; days exactly; words and texts
 * in letters of either case.
 */
#include "fetch.h"
#include "number.h"
#include "text.h"

#include <stdlib.h>

/* -1, 0, 1 */
static int compare(const OperandValue *left, const OperandValue *right)
{
	bool is_same = left->gives == VALUE_NUMBER ? number_same(left->number, right->number) : left->number == right->number;
	return is_same ? 0 : left->number < right->number ? -1 : 1;
}

static bool is_met_in_order(Relation relation, int order)
{
	switch (relation) {
	case RELATION_IS:
		return order == 0;
	case RELATION_IS_NOT:
		return order != 0;
	case RELATION_AT_LEAST:
		return order >= 0;
	case RELATION_AT_MOST:
		return order <= 0;
	case RELATION_MORE_THAN:
	case RELATION_AFTER:
		return order > 0;
	case RELATION_LESS_THAN:
	case RELATION_BEFORE:
		return order < 0;
	case RELATION_IN:
	case RELATION_NOT_IN:
	case RELATION_INCLUDES:
	case RELATION_INCLUDES_NOT:
	case RELATION_GIVEN:
	case RELATION_NOT_GIVEN:
		break;
	}
	abort(); /* binding lets none of these come here */
}

static bool is_list_of_texts(const OperandValue *value)
{
	return value->field != NULL && value->field->kind == IS_TEXTS;
}

static bool has_text(const Case *at, const OperandValue *list, const char *text)
{
	if (!is_list_of_texts(list))
		return list_has(at->all->criteria, list->text, text);
	const Texts *texts = (const Texts *)list->given;
	for (uint32_t i = 0; i < texts->count; i++)
		if (same_text(texts->at[i].text, text))
			return true;
	return false;
}

/* How many of the texts of the left side stand in the right one; a single text is a list of one. */
static uint32_t count_in(const Case *at, const OperandValue *left, const OperandValue *right, uint32_t *of)
{
	if (!is_list_of_texts(left)) {
		*of = 1;
		return has_text(at, right, left->text);
	}
	const Texts *texts = (const Texts *)left->given;
	uint32_t count = 0;
	for (uint32_t i = 0; i < texts->count; i++)
		count += has_text(at, right, texts->at[i].text);
	*of = texts->count;
	return count;
}

static bool is_met_by_lists(const Case *at, Relation relation, const Tested *tested)
{
	if (relation == RELATION_INCLUDES || relation == RELATION_INCLUDES_NOT)
		return has_text(at, &tested->left, tested->right.text) == (relation == RELATION_INCLUDES);
	uint32_t of, back_of, found = count_in(at, &tested->left, &tested->right, &of);
	if (relation == RELATION_IN)
		return found == of;
	if (relation == RELATION_NOT_IN)
		return found == 0;
	/* Two lists are one when each holds all of the other. */
	bool is_same = found == of && count_in(at, &tested->right, &tested->left, &back_of) == back_of;
	return is_same == (relation == RELATION_IS);
}

static bool is_met(const Case *at, Relation relation, const Tested *tested)
{
	const OperandValue *left = &tested->left, *right = &tested->right;
	if (relation == RELATION_IN || relation == RELATION_NOT_IN || is_list_of_texts(left))
		return is_met_by_lists(at, relation, tested);
	if (left->gives == VALUE_WORD || left->gives == VALUE_TEXT)
		return same_text(left->text, right->text) == (relation == RELATION_IS);
	return is_met_in_order(relation, compare(left, right));
}

static bool is_given(const OperandValue *value)
{
	return value->fact != NULL || value->given == NULL ? value->state == OPERAND_HAS
		: is_value(value->given) || value->given->said == SAID_NONE;
}

/* `is given` asks whether a value was said: a submittal that says it does not apply has not given it. Only what could not be
 * read, or a fact that waits, cannot be told. */
static TestOutcome outcome_given(Relation relation, const OperandValue *left)
{
	bool is_apart = left->state == OPERAND_NOT_APPLICABLE;
	if (is_apart && (left->fact != NULL || left->given == NULL || left->given->place.source >= SOURCE_FIRST_SHARED))
		return TEST_NOT_APPLICABLE;
	if (left->fact != NULL && left->state != OPERAND_HAS)
		return left->state == OPERAND_WAITS ? TEST_WAITS : TEST_REFUSED;
	if (left->given != NULL && left->given->said == SAID_UNREADABLE)
		return TEST_WAITS;
	return is_given(left) == (relation == RELATION_GIVEN) ? TEST_MET : TEST_BROKEN;
}

static TestOutcome outcome_apart(OperandState state)
{
	return state == OPERAND_NOT_APPLICABLE ? TEST_NOT_APPLICABLE : state == OPERAND_REFUSED ? TEST_REFUSED : TEST_WAITS;
}

static bool is_borrowed(const OperandValue *value)
{
	return value->fact != NULL && value->fact->borrowed;
}

Tested test_case(const Case *at, const Test *test)
{
	Tested tested = { .left = operand_value(at, &test->left) };
	if (test->relation == RELATION_GIVEN || test->relation == RELATION_NOT_GIVEN) {
		tested.outcome = outcome_given(test->relation, &tested.left);
		return tested;
	}
	tested.right = operand_value(at, &test->right);
	OperandState worse = tested.left.state > tested.right.state ? tested.left.state : tested.right.state;
	if (worse != OPERAND_HAS)
		tested.outcome = outcome_apart(worse);
	else if (!is_met(at, test->relation, &tested))
		tested.outcome = TEST_BROKEN;
	else
		tested.outcome = is_borrowed(&tested.left) || is_borrowed(&tested.right) ? TEST_BORROWED : TEST_MET;
	return tested;
}

/* Most conditions ask for a word of the rule in a field, and most of those are not so: that is told without all of a Tested. */
static bool is_another_word(const Case *at, const Test *test)
{
	const Operand *left = &test->left;
	bool is_of_words = left->from == FROM_FIELD && test->right.from == FROM_CONSTANT && test->relation == RELATION_IS &&
			   (left->field->kind == IS_WORD || left->field->kind == IS_TEXT || left->field->kind == IS_NAME);
	const Case *where = !is_of_words || left->at == RECORD_KINDS ? at : case_outward(at, left->at);
	if (!is_of_words || where == NULL || test->right.word == NULL)
		return false;
	const Text *text = (const Text *)(const void *)((const char *)where->row + left->offset); /* a Word begins alike */
	return is_value(&text->given) && !same_text(text->text, test->right.word);
}

TestOutcome test_all(const Case *at, const Test *test, uint32_t count, Tested *blocking)
{
	TestOutcome all = TEST_MET;
	for (uint32_t i = 0; i < count; i++) {
		if (is_another_word(at, &test[i]))
			return TEST_BROKEN;
		Tested tested = test_case(at, &test[i]);
		if (tested.outcome == TEST_BROKEN)
			return TEST_BROKEN;
		if (tested.outcome == TEST_NOT_APPLICABLE)
			all = TEST_NOT_APPLICABLE;
		if (tested.outcome == TEST_MET || tested.outcome == TEST_NOT_APPLICABLE || all != TEST_MET)
			continue;
		all = TEST_WAITS;
		*blocking = tested;
	}
	return all;
}
