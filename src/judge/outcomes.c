/* SPDX-License-Identifier: MIT
 * What became of each rule of the edition: judged once more, noting where it is met. Facts are known by then, so that it costs
 * little; a review that prints no passes does not pay for it.
 */
#include "judge.h"
#include "pipeline.h"

static uint32_t asked_so_far(const Tally *tally)
{
	return tally->met + tally->broken + tally->not_judged + tally->refused;
}

void find_outcomes(Verdict *verdict, Arena *arena)
{
	const Criteria *criteria = verdict->cases->criteria;
	if (verdict->broken_file || criteria == NULL)
		return;
	Judging judging = judging_begun(arena, verdict->cases);
	RuleOutcome *outcome = TAKE(arena, RuleOutcome, criteria->rules + 1);
	for (uint32_t i = 0; i < criteria->rules; i++) {
		Mets mets = { .at = NULL };
		uint32_t before = asked_so_far(&judging.verdict->tally);
		judging.mets = &mets;
		judge_rule(&judging, &criteria->rule[i]);
		bool asked = asked_so_far(&judging.verdict->tally) > before;
		outcome[i] = (RuleOutcome){ &criteria->rule[i], mets.at, mets.count, asked };
	}
	verdict->outcome = outcome;
	verdict->outcomes = criteria->rules;
}
