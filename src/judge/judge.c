/* SPDX-License-Identifier: MIT
 * Judging one submittal: every rule over the records it speaks of, then what is missing, then one numbered list.
 *
 * A rule is never met over no record: it counts as not applicable, or as not judged while the list of its records waits.
 */
#include "judge.h"
#include "pipeline.h"

Raw *raw_add(Judging *judging, const Raw *raw)
{
	if (judging->raws >= MOST_RAWS) {
		judging->left_out++;
		judging->verdict->by_action[raw->action]++;
		judging->rejects |= raw->rule != NULL && raw->rule->rejects && raw->action == ACTION_REJECTED;
		return NULL;
	}
	Raw *kept = TAKE(judging->arena, Raw, 1);
	*kept = *raw;
	judging->raw = arena_more(judging->arena, judging->raw, judging->raws, &judging->raw_room, sizeof *judging->raw);
	judging->raw[judging->raws++] = kept;
	kept->number = judging->raws;
	return kept;
}

/* The list that lacks a part for a role, or a paper; NULL where the record that lacks it has no such list. */
static const Given *list_lacking(const Case *at)
{
	if (at->up == NULL || at->up->row == NULL)
		return NULL;
	const Record *record = record_of(at->up->kind);
	const Word *part = at->kind == KIND_role ? &((const Role *)at->row)->part : NULL;
	for (uint32_t i = 0; i < record->count; i++) {
		const Field *field = &record->field[i];
		if (field->kind != IS_LIST)
			continue;
		if (part != NULL ? is_word(part, field->record->name) : field->record->kind == KIND_document)
			return given_in(field, at->up->row);
	}
	return NULL;
}

/* The first value of the judged record that a fact used and the submittal states: what would be changed to change it. */
static const Given *value_used(const Case *at, const Fact *fact, const Field **field)
{
	const Use *use = at->all->use;
	for (uint32_t i = fact->first_use; i != 0; i = use[i - 1].next) {
		const Use *here = &use[i - 1];
		bool is_own = here->kind == USED_FIELD && here->at == at && here->given != NULL;
		if (!is_own || here->given->place.line == 0 || here->given->place.source >= SOURCE_FIRST_SHARED)
			continue;
		*field = here->what.field;
		return here->given;
	}
	return NULL;
}

/* The value a broken rule stands at: that of its left side; of a comparison the one submitted; of a fact one it used. */
static const Given *value_at(const Case *at, const OperandValue *left, const Field **field)
{
	if (at->kind == KIND_comparison) {
		const Compared *compared = at->row;
		*field = compared->field;
		return compared->field != NULL && compared->here != NULL ? given_in(compared->field, compared->here) : NULL;
	}
	if (at->kind == KIND_role || at->kind == KIND_paper)
		return list_lacking(at);
	if (left->fact != NULL)
		return value_used(at, left->fact, field);
	*field = left->field;
	return left->given;
}

/* A broken `is given` rule names the field: the field is not missing a second time. */
static void account_for_field(Judging *judging, const Tested *tested, const Raw *raw)
{
	Wait wanted = {
		.key = { tested->left.given, NULL }, .given = tested->left.given, .field = tested->left.field, .at = raw->where
	};
	Wait *wait = tested->left.given != NULL ? wait_for(judging, &wanted) : NULL;
	if (wait != NULL && wait->raw == 0)
		wait->raw = raw->number;
}

static void add_broken(Judging *judging, const Rule *rule, const Case *at, const Tested *tested)
{
	Raw raw = { .found_by = FOUND_BROKEN, .action = rule->action, .rule = rule, .judged = at, .where = stands_at(at) };
	const Given *given = value_at(at, &tested->left, &raw.field);
	if (given == NULL && (at->kind == KIND_role || at->kind == KIND_paper))
		given = at->row; /* resolve knows where such a part or paper would stand */
	raw.place = place_of(raw.where, given);
	raw.position = position_of(raw.where, given);
	const Raw *kept = raw_add(judging, &raw);
	judging->verdict->tally.broken++;
	if (kept != NULL && rule->is.relation == RELATION_GIVEN)
		account_for_field(judging, tested, kept);
}

static void add_met(Judging *judging, const Case *at, const Tested *tested)
{
	Mets *mets = judging->mets;
	const Field *field = NULL;
	const Given *given = value_at(at, &tested->left, &field);
	Spot spot = { .where = stands_at(at) };
	spot.place = place_of(spot.where, given);
	const Spot *last = mets->count > 0 ? &mets->at[mets->count - 1] : NULL;
	if (last != NULL && last->where == spot.where && last->place.line == spot.place.line && last->place.column == spot.place.column)
		return;
	mets->at = arena_more(judging->arena, mets->at, mets->count, &mets->room, sizeof *mets->at);
	mets->at[mets->count++] = spot;
}

/* Whether the submittal itself sets aside what the rule asks for; `any` of a catalogue is no such answer. */
static bool is_said_not_to_apply(const OperandValue *left)
{
	const Given *given = left->fact == NULL ? left->given : NULL;
	return given != NULL && given->said == SAID_NOT_APPLICABLE && given->place.source < SOURCE_FIRST_SHARED;
}

static Tested test_rule(const Case *at, const Rule *rule)
{
	Tested tested = test_case(at, &rule->is);
	if (tested.outcome == TEST_NOT_APPLICABLE && is_said_not_to_apply(&tested.left)) {
		tested.outcome = TEST_WAITS;
		tested.left.state = OPERAND_WAITS;
	}
	return tested;
}

static void judge_case(Judging *judging, const Rule *rule, const Case *at)
{
	Tally *tally = &judging->verdict->tally;
	Tested tested = { .outcome = TEST_MET };
	TestOutcome when = test_all(at, rule->when, rule->conditions, &tested);
	bool is_asked = when != TEST_BROKEN && when != TEST_NOT_APPLICABLE;
	if (when == TEST_MET)
		tested = test_rule(at, rule);
	if (judging->outcomes != NULL)
		note_outcome(judging, rule, at, is_asked ? tested.outcome : TEST_NOT_APPLICABLE);
	if (!is_asked) {
		tally->not_applicable++;
		return;
	}
	switch (tested.outcome) {
	case TEST_MET:
		tally->met++;
		if (judging->mets != NULL)
			add_met(judging, at, &tested);
		return;
	case TEST_NOT_APPLICABLE:
		tally->not_applicable++;
		return;
	case TEST_BROKEN:
		add_broken(judging, rule, at, &tested);
		return;
	case TEST_REFUSED:
		tally->refused++;
		break;
	case TEST_WAITS:
	case TEST_BORROWED:
		tally->not_judged++;
		break;
	}
	wait_tested(judging, rule, at, &tested);
}

static bool is_outside(const Operand *operand, const Case *up)
{
	bool is_of_case = operand->from == FROM_FIELD || operand->from == FROM_FACT;
	return operand->from == FROM_CONSTANT || operand->from == FROM_EDITION || operand->from == FROM_LIST ||
	       (is_of_case && operand->at != RECORD_KINDS && case_outward(up, operand->at) != NULL);
}

/* Whether a condition on what stands outside of a list that waits is broken: the rule then asks for none of its records. */
static bool is_ruled_out(const Rule *rule, const WaitingList *list)
{
	for (uint32_t i = 0; list->up != NULL && i < rule->conditions; i++) {
		const Test *test = &rule->when[i];
		if (is_outside(&test->left, list->up) && is_outside(&test->right, list->up) &&
		    test_case(list->up, test).outcome == TEST_BROKEN)
			return true;
	}
	return false;
}

/* How many records of a kind a rule was judged on, or waits for. */
static uint32_t judge_kind(Judging *judging, const Rule *rule, RecordKind kind)
{
	const Cases *cases = judging->cases;
	const Subject wanted = kind == KIND_comparison ? subject_of_rule(rule) : (Subject){ 0 };
	for (uint32_t i = 0; i < cases->of[kind].count; i++) {
		if (kind == KIND_comparison && !may_be(&judging->subject[i], &wanted))
			judging->verdict->tally.not_applicable++;
		else
			judge_case(judging, rule, cases->of[kind].at[i]);
	}
	for (uint32_t i = 0; i < judging->waitings[kind]; i++) {
		const WaitingList *list = judging->waiting[kind][i];
		bool is_out = is_ruled_out(rule, list);
		judging->verdict->tally.not_applicable += is_out;
		judging->verdict->tally.not_judged += !is_out;
		if (!is_out)
			wait_list(judging, rule, list);
	}
	return cases->of[kind].count + judging->waitings[kind];
}

void judge_rule(Judging *judging, const Rule *rule)
{
	uint32_t records = 0;
	if (rule->for_each < RECORD_KINDS)
		records = judge_kind(judging, rule, rule->for_each);
	for (int kind = 0; rule->for_each == RECORD_KINDS && kind < RECORD_KINDS; kind++)
		if (is_part((RecordKind)kind))
			records += judge_kind(judging, rule, (RecordKind)kind);
	judging->verdict->tally.not_applicable += records == 0;
}

/* The waiting lists by the kind of their records, so that no rule walks past those of others. */
static void sort_waiting_lists(Judging *judging)
{
	const Cases *cases = judging->cases;
	const WaitingList **list[RECORD_KINDS] = { NULL };
	for (uint32_t i = 0; i < cases->waitings; i++)
		judging->waitings[cases->waiting[i].kind]++;
	for (int kind = 0; kind < RECORD_KINDS; kind++)
		if (judging->waitings[kind] > 0) {
			judging->waiting[kind] = list[kind] = TAKE(judging->arena, const WaitingList *, judging->waitings[kind]);
			judging->waitings[kind] = 0;
		}
	for (uint32_t i = 0; i < cases->waitings; i++) {
		RecordKind kind = cases->waiting[i].kind;
		list[kind][judging->waitings[kind]++] = &cases->waiting[i];
	}
}

static Stage stage_of(const Submittal *submittal)
{
	return is_value(&submittal->stage.given) ? (Stage)submittal->stage.word : STAGE_application;
}

/* As the submittal says, else the reviewer's file, else one more than in the round before. */
static uint16_t round_of(const Cases *cases, Stage stage)
{
	const Number *round = &cases->submittal->round_one;
	if (stage == STAGE_bid)
		return 0;
	if (!is_value(&round->given) && cases->review != NULL)
		round = &cases->review->round_one;
	if (!is_value(&round->given) && cases->history != NULL && cases->history->earlier->round < 999)
		return (uint16_t)(cases->history->earlier->round + 1);
	bool known = is_value(&round->given) && round->value >= 1 && round->value <= 999;
	return known ? (uint16_t)round->value : 1;
}

static void judge_all(Judging *judging)
{
	const Criteria *criteria = judging->cases->criteria;
	sort_waiting_lists(judging);
	fill_subjects(judging);
	for (uint32_t i = 0; i < criteria->rules; i++)
		judge_rule(judging, &criteria->rule[i]);
	note_broken(judging);
	find_missing(judging);
	raise_waits(judging);
}

static Judging judging_of(Arena *arena, Cases *cases)
{
	Judging judging = { .arena = arena, .cases = cases, .verdict = TAKE(arena, Verdict, 1) };
	judging.stage = stage_of(cases->submittal);
	judging.waits = hash_make(arena, 64);
	judging.texts = hash_make(arena, 8);
	judging.messages = hash_make(arena, 8);
	if (cases->history != NULL && cases->history->before != NULL)
		judging.history = cases->history;
	return judging;
}

Judging judging_begun(Arena *arena, Cases *cases)
{
	Judging judging = judging_of(arena, cases);
	sort_waiting_lists(&judging);
	fill_subjects(&judging);
	return judging;
}

/* ---- a trial, for advise ---- */

/* How far the raws and rules not judged were told. */
typedef struct {
	uint32_t raws, opens;
} Progress;

static bool tell_trouble(const Judging *judging, const Trial *trial, Progress *told)
{
	for (; told->raws < judging->raws; told->raws++) {
		const Raw *raw = judging->raw[told->raws];
		Trouble trouble = { raw_code(raw), raw->rule, raw->rule == NULL ? raw->field : NULL, raw->where };
		if (raw->action <= ACTION_NOT_REVIEWED && !trial->found(trial->user, &trouble))
			return false;
	}
	for (; told->opens < judging->opens; told->opens++) {
		const Open *open = &judging->open[told->opens];
		Trouble trouble = { open->rule->code, open->rule, NULL, open->where != NULL ? stands_at(open->where) : NULL };
		if (open->rule->action <= ACTION_NOT_REVIEWED && !trial->found(trial->user, &trouble))
			return false;
	}
	return true;
}

/* Kinds of record that stand in no roof area: what is changed in one does not touch them. */
static bool stands_outside_areas(RecordKind kind)
{
	switch ((int)kind) { /* RECORD_KINDS, any part, is no record of its own */
	case KIND_submittal:
	case KIND_letter:
	case KIND_requirement:
	case KIND_document:
	case KIND_paper_used:
	case KIND_event:
	case KIND_paper:
	case KIND_departure:
	case KIND_inspection:
	case KIND_installed:
	case KIND_photograph:
	case KIND_punch_item:
	case KIND_meeting:
	case KIND_purchase:
	case KIND_purchase_line:
		return true;
	default:
		return false;
	}
}

void judge_trial(Arena *arena, Cases *cases, const Trial *trial)
{
	Judging judging = judging_begun(arena, cases);
	Progress told = { 0, 0 };
	judge_rule(&judging, trial->first);
	if (!tell_trouble(&judging, trial, &told) || trial->alone)
		return;
	for (uint32_t i = 0; i < cases->criteria->rules; i++) {
		const Rule *rule = &cases->criteria->rule[i];
		if (rule == trial->first || (!trial->whole && stands_outside_areas(rule->for_each)))
			continue;
		if (trial->stays == NULL || !trial->stays[i])
			judge_rule(&judging, rule);
		else if (rule->for_each == trial->changed || rule->for_each == RECORD_KINDS)
			judge_kind(&judging, rule, trial->changed);
		if (!tell_trouble(&judging, trial, &told))
			return;
	}
	note_broken(&judging);
	find_missing(&judging);
	raise_waits(&judging);
	tell_trouble(&judging, trial, &told);
}

/* ---- the whole ---- */

typedef struct {
	Trouble *at;
	uint32_t count;
} Troubles;

static bool take_trouble(void *user, const Trouble *trouble)
{
	Troubles *troubles = user;
	troubles->at[troubles->count++] = *trouble;
	return true;
}

/* Readers' messages stand for values that a trial, which has none of them, finds missing: then advise must try for itself. */
static void keep_troubles(const Judging *judging)
{
	if (judging->complaints != NULL && judging->complaints->count > 0)
		return;
	Troubles troubles = { TAKE(judging->arena, Trouble, judging->raws + judging->opens), 0 };
	tell_trouble(judging, &(Trial){ .found = take_trouble, .user = &troubles }, &(Progress){ 0, 0 });
	judging->verdict->trouble = troubles.at;
	judging->verdict->troubles = troubles.count;
}

/* What the round before and the register's variances make of what was found. */
static void look_back(Judging *judging)
{
	raise_unseen(judging);
	raise_changes(judging);
	match_earlier(judging);
	apply_variances(judging);
	raise_replies(judging);
	match_late(judging);
}

Verdict *judge(Arena *arena, Cases *cases, const Complaints *complaints, const Source *source)
{
	Judging judging = judging_of(arena, cases);
	Verdict *verdict = judging.verdict;
	judging.complaints = complaints;
	verdict->cases = cases;
	verdict->source = source;
	verdict->earlier = cases->history != NULL ? cases->history->earlier : NULL;
	verdict->self_check = cases->review == NULL;
	verdict->broken_file = complaints != NULL && complaints->broken;
	verdict->stage = judging.stage;
	verdict->round = round_of(cases, judging.stage);
	if (judging.history != NULL)
		judging.outcomes = hash_make(arena, 256);
	add_complaints(&judging);
	if (!verdict->broken_file)
		judge_all(&judging);
	keep_troubles(&judging);
	add_own_items(&judging);
	if (!verdict->broken_file)
		look_back(&judging);
	hold_back(&judging);
	group_raws(&judging);
	number_items(&judging);
	apply_dispositions(&judging);
	settle_items(&judging);
	if (!verdict->broken_file) {
		find_unverified(&judging);
		clear_parts(&judging);
	}
	conclude(&judging);
	return verdict;
}
