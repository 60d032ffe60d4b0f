/* SPDX-License-Identifier: MIT
 * Standing: the rules that a part's change cannot touch on other parts, so that a trial need not judge them there.
 *
 * A fact names all it used. Where the answers of a rule rested on the judged parts alone and on values of the records outwards,
 * another item in the place of one part leaves the rest as it was.
 */
#include "advising.h"

/* Facts use facts as deep as facts.def goes, whatever the file holds. */
static bool rests_on_itself(const Case *at, const Fact *fact)
{
	const Cases *all = at->all;
	for (uint32_t i = fact->first_use; i != 0; i = all->use[i - 1].next) {
		const Use *use = &all->use[i - 1];
		if (use->kind == USED_CONSTANT)
			continue;
		bool is_value_outwards = use->kind != USED_FACT && use->what.field->kind != IS_LIST && use->at != NULL &&
					 case_outward(at, use->at->kind) == use->at;
		bool is_own_fact = use->kind == USED_FACT && use->at == at;
		if (!is_value_outwards && !(is_own_fact && rests_on_itself(at, fact_of((Case *)at, use->what.fact))))
			return false;
	}
	return true;
}

static bool is_own(const Case *at, const OperandValue *value)
{
	return value->fact == NULL || (value->at == at && rests_on_itself(at, value->fact));
}

bool is_own_answer(const Case *at, const Tested *tested)
{
	return is_own(at, &tested->left) && is_own(at, &tested->right);
}

/* As far as a rule looks: to the first condition that is not so. */
static bool is_own_rule(const Case *at, const Rule *rule)
{
	for (uint32_t i = 0; i < rule->conditions; i++) {
		Tested tested = test_case(at, &rule->when[i]);
		if (!is_own_answer(at, &tested))
			return false;
		if (tested.outcome == TEST_BROKEN)
			return true;
	}
	Tested tested = test_case(at, &rule->is);
	return is_own_answer(at, &tested);
}

static bool stands(const Cases *cases, const Rule *rule)
{
	if (!is_part(rule->for_each))
		return false;
	for (int kind = 0; kind < RECORD_KINDS; kind++) {
		bool is_judged = rule->for_each == (RecordKind)kind || (rule->for_each == RECORD_KINDS && is_part((RecordKind)kind));
		for (uint32_t i = 0; is_judged && i < cases->of[kind].count; i++)
			if (!is_own_rule(cases->of[kind].at[i], rule))
				return false;
	}
	return true;
}

void find_standing(Advising *advising)
{
	const Cases *cases = advising->verdict->cases;
	if (advising->stays != NULL || advising->verdict->trouble == NULL)
		return;
	advising->stays = TAKE(advising->arena, bool, cases->criteria->rules);
	for (uint32_t i = 0; i < cases->criteria->rules; i++)
		advising->stays[i] = stands(cases, &cases->criteria->rule[i]);
}
