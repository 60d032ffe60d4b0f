/* SPDX-License-Identifier: MIT
 * Waits: what rules wait for, each once, with the rules that wait for it.
 *
 * A wait for a value is known by its Given, so that a missing field, found later, finds the rules that need it.
 */
#include "judge.h"

#include <string.h>

static size_t words_of_rules(const Judging *judging)
{
	return judging->cases->criteria->rules / 64 + 1;
}

Wait *wait_found(const Judging *judging, const Given *given)
{
	const void *key[2] = { given, NULL };
	return hash_get(judging->waits, (const char *)key, sizeof key);
}

Wait *wait_for(Judging *judging, const Wait *wanted)
{
	Wait *wait = hash_get(judging->waits, (const char *)wanted->key, sizeof wanted->key);
	if (wait != NULL || judging->wait_count >= MOST_WAITS)
		return wait;
	wait = TAKE(judging->arena, Wait, 1);
	*wait = *wanted;
	judging->wait_count++;
	if (judging->last_wait != NULL)
		judging->last_wait->next = wait;
	else
		judging->first_wait = wait;
	judging->last_wait = wait;
	hash_put(judging->waits, (const char *)wait->key, sizeof wait->key, wait);
	return wait;
}

void open_add(Judging *judging, const Open *open)
{
	if (judging->opens >= MOST_NOT_YETS)
		return;
	judging->open = arena_more(judging->arena, judging->open, judging->opens, &judging->open_room, sizeof(Open));
	judging->open[judging->opens++] = *open;
}

static void note(Judging *judging, const Rule *rule, const Case *at, Wait *wait)
{
	if (wait != NULL) {
		size_t number = (size_t)(rule - judging->cases->criteria->rule);
		if (wait->rules == NULL)
			wait->rules = TAKE(judging->arena, uint64_t, words_of_rules(judging));
		wait->rules[number / 64] |= (uint64_t)1 << number % 64;
	}
	open_add(judging, &(Open){ .rule = rule, .where = at, .wait = wait });
}

static Wait value_wanted(const Given *given, const Field *field, const Case *at)
{
	return (Wait){ .key = { given, NULL }, .kind = WAIT_VALUE, .given = given, .field = field, .at = at };
}

static const char *fact_title(const Operand *operand)
{
	if (operand->from == FROM_FACT)
		return fact_spec(operand->fact)->title;
	return operand->word != NULL ? operand->word : "this";
}

/* The fields one side waits for; how many were noted. */
static unsigned wait_side(Judging *judging, const Rule *rule, const Case *at, const OperandValue *side)
{
	unsigned noted = 0;
	if (side->fact == NULL) {
		if (side->given == NULL || side->field == NULL || is_value(side->given))
			return 0;
		Wait wanted = value_wanted(side->given, side->field, side->at != NULL ? side->at : at);
		note(judging, rule, at, wait_for(judging, &wanted));
		return 1;
	}
	const Given *before = NULL;
	for (const Use *use = fact_waits(at->all, side->fact, NULL); use != NULL && noted < 64;
	     use = fact_waits(at->all, side->fact, use)) {
		if (use->given == NULL || use->given == before)
			continue;
		before = use->given;
		Wait wanted = value_wanted(use->given, use->what.field, use->at != NULL ? use->at : at);
		note(judging, rule, at, wait_for(judging, &wanted));
		noted++;
	}
	return noted;
}

/* One pointer for equal texts. */
static const char *same_text(Judging *judging, const char *text)
{
	size_t length = strlen(text) + 1;
	const char *first = hash_get(judging->texts, text, length);
	if (first != NULL)
		return first;
	char *copy = arena_text(judging->arena, text, length - 1);
	hash_put(judging->texts, copy, length, copy);
	return copy;
}

/* "panel finish against tested-210" */
static const char *compared_words(const Compared *compared, Arena *arena)
{
	const char *title = compared->record.title.text != NULL ? compared->record.title.text : "this";
	const char *paper = compared->record.paper.text;
	return paper != NULL && *paper != '\0' ? arena_printf(arena, "%s against %s", title, cut_text(paper, arena)) : title;
}

/* A refused fact is one item for a record and reason. */
static void wait_reason(Judging *judging, const Rule *rule, const Case *at, const Tested *tested)
{
	bool left = tested->left.state == OPERAND_REFUSED;
	const OperandValue *side = left ? &tested->left : &tested->right;
	const char *reason = side->reason != NULL ? side->reason : "outside of what is known";
	Wait wanted = { .kind = WAIT_REASON, .at = stands_at(at), .reason = reason, .what = "this" };
	if (side->fact != NULL)
		wanted.what = lower_first(fact_title(left ? &rule->is.left : &rule->is.right), judging->arena);
	else if (side->field != NULL)
		wanted.what = field_words(side->field, judging->arena);
	if (at->kind == KIND_comparison)
		wanted.what = compared_words(at->row, judging->arena);
	/* Comparisons of one part say the same of several attributes. */
	const char *own = at->kind == KIND_comparison ? arena_printf(judging->arena, "%s: %s", wanted.what, reason) : reason;
	wanted.key[0] = wanted.at;
	wanted.key[1] = same_text(judging, own);
	note(judging, rule, at, wait_for(judging, &wanted));
}

static Wait borrowed_in(const Judging *judging, const Case *at)
{
	while (at->kind != KIND_roof_area && at->up != NULL)
		at = at->up;
	/* One a roof area: beside it an address that is no record of the form. */
	return (Wait){ .key = { at, &judging->waits }, .kind = WAIT_BORROWED, .at = at };
}

static void wait_borrowed(Judging *judging, const Rule *rule, const Case *at)
{
	Wait wanted = borrowed_in(judging, at);
	wanted.what = fact_title(&rule->is.left);
	note(judging, rule, at, wait_for(judging, &wanted));
}

void wait_tested(Judging *judging, const Rule *rule, const Case *at, const Tested *tested)
{
	unsigned noted = 0;
	if (tested->outcome == TEST_BORROWED) {
		noted = wait_side(judging, rule, at, &tested->left) + wait_side(judging, rule, at, &tested->right);
		if (noted == 0)
			wait_borrowed(judging, rule, at);
		return;
	}
	if (tested->outcome == TEST_REFUSED) {
		wait_reason(judging, rule, at, tested);
		return;
	}
	if (tested->left.state == OPERAND_WAITS)
		noted += wait_side(judging, rule, at, &tested->left);
	if (tested->right.state == OPERAND_WAITS)
		noted += wait_side(judging, rule, at, &tested->right);
	if (noted > 0)
		return;
	Wait wanted = { .key = { at, rule }, .kind = WAIT_VALUE, .at = at, .what = fact_title(&rule->is.left) };
	note(judging, rule, at, wait_for(judging, &wanted));
}

void wait_list(Judging *judging, const Rule *rule, const WaitingList *list)
{
	if (list->given == NULL || list->field == NULL) {
		Wait wanted = {
			.key = { list, NULL }, .kind = WAIT_VALUE, .at = list->up, .what = kind_words(list->kind, judging->arena)
		};
		note(judging, rule, NULL, wait_for(judging, &wanted));
		return;
	}
	Wait wanted = value_wanted(list->given, list->field, list->up);
	note(judging, rule, NULL, wait_for(judging, &wanted));
}

const char *wait_words(const Judging *judging, const Wait *wait)
{
	if (wait == NULL)
		return "more than can be listed";
	if (wait->kind == WAIT_BORROWED)
		return "the tested construction, from which this one differs";
	if (wait->kind == WAIT_REASON)
		return wait->reason;
	if (wait->field != NULL)
		return field_path(wait->field, judging->arena);
	return wait->what != NULL ? wait->what : "what is not stated";
}

/* The first broken comparison with a listing in a roof area stands for what is borrowed there. */
static void find_differences(Judging *judging)
{
	for (uint32_t i = 0; i < judging->raws; i++) {
		const Raw *raw = judging->raw[i];
		if (raw->found_by != FOUND_BROKEN || raw->judged->kind != KIND_comparison)
			continue;
		Wait wanted = borrowed_in(judging, raw->judged);
		Wait *wait = hash_get(judging->waits, (const char *)wanted.key, sizeof wanted.key);
		if (wait != NULL && wait->raw == 0 && is_word(&((const Comparison *)raw->judged->row)->with, "listing"))
			wait->raw = i + 1;
	}
}

void raise_waits(Judging *judging)
{
	find_differences(judging);
	for (Wait *wait = judging->first_wait; wait != NULL; wait = wait->next) {
		if (wait->kind == WAIT_VALUE || wait->raw != 0)
			continue;
		MessageId message = wait->kind == WAIT_REASON ? MESSAGE_MIS_06 : MESSAGE_MIS_07;
		Raw raw = { .message = message, .where = wait->at, .what = wait->what, .reason = wait->reason };
		raise_missing(judging, &raw, wait);
	}
}
