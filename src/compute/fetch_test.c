/* SPDX-License-Identifier: MIT
 * Tests as inputs of a fact: needs of a substitution, conditions of a role or a paper.
 */
#include "fetch.h"

static void use_side(Case *fact, const Operand *operand, const OperandValue *value)
{
	if (value->fact != NULL)
		fetch_use(fact, (Case *)value->at, operand->fact);
	else if (value->at != NULL && value->state == OPERAND_HAS && value->field != NULL && value->given != NULL)
		fetch_shown(fact, (Asked){ value->at, value->field, value->given });
}

static void wait_for_side(Case *fact, const OperandValue *value)
{
	if (value->state == OPERAND_REFUSED)
		REFUSE(fact, value->reason);
	else if (value->state == OPERAND_WAITS && value->fact != NULL)
		fetch_raise(fact, value->fact);
	else if (value->state == OPERAND_WAITS)
		fetch_said(fact, (Asked){ value->at, value->field, value->given });
}

static bool can_tell(TestOutcome outcome)
{
	return outcome == TEST_MET || outcome == TEST_BROKEN || outcome == TEST_NOT_APPLICABLE;
}

static void take_test(Case *fact, const Test *test, const Tested *tested)
{
	use_side(fact, &test->left, &tested->left);
	use_side(fact, &test->right, &tested->right);
	if (tested->outcome == TEST_BORROWED)
		fact->now->borrowed = true;
	if (can_tell(tested->outcome))
		return;
	wait_for_side(fact, &tested->left);
	wait_for_side(fact, &tested->right);
}

TestOutcome fetch_test(Case *fact, const Case *where, const Test *test)
{
	Tested tested = test_case(where, test);
	take_test(fact, test, &tested);
	return tested.outcome;
}

bool fetch_all(Case *fact, const Case *where, const Test *test, uint32_t count)
{
	Tested blocking;
	TestOutcome all = test_all(where, test, count, &blocking);
	if (all == TEST_BROKEN || all == TEST_NOT_APPLICABLE)
		return false;
	for (uint32_t i = 0; i < count; i++)
		fetch_test(fact, where, &test[i]);
	return true; /* met, or met on a borrowed fact; if one waits, the fact does too */
}
