/* SPDX-License-Identifier: MIT
 * The variances of the register: each holds for one rule at one record of one submittal, until its day, and for values no
 * worse than the one granted; never where the rule may not be waived. What does not hold is told, so that nobody counts on it.
 */
#include "date.h"
#include "judge.h"
#include "quantity.h"

#include <string.h>
#include <strings.h>

typedef struct {
	const Variance *row;
	const Rule *rule;
	uint32_t used;
	const char *why; /* it does not hold where the rule is broken */
} Granted;

static const char *text_of(const Text *text)
{
	return is_value(&text->given) && text->text != NULL ? text->text : "";
}

/* By its whole name, by its own name within its roof area, or by its path. */
static bool is_record(const Variance *row, const Case *where)
{
	const char *wanted = text_of(&row->record);
	if (where == NULL || *wanted == '\0')
		return false;
	if (strcasecmp(where->name, wanted) == 0 || (where->before != NULL && strcmp(where->before, wanted) == 0))
		return true;
	const char *area = where->up != NULL && where->up->kind != KIND_submittal ? where->up->name : "";
	size_t length = strlen(area);
	bool is_inside = length > 0 && strncmp(where->name, area, length) == 0 && strncmp(where->name + length, " / ", 3) == 0;
	return is_inside && strcasecmp(where->name + length + 3, wanted) == 0;
}

/* ---- no worse than granted ---- */

/* Which way is worse: 1 more, -1 less, 0: any other value is. */
static int worse_way(const Raw *raw)
{
	if (raw->judged->kind == KIND_comparison) {
		const Comparison *row = raw->judged->row;
		const char *may = text_of((const Text *)(const void *)&(Text){ row->may_go.given, row->may_go.text });
		return strcmp(may, "up") == 0 ? -1 : strcmp(may, "down") == 0 ? 1 : 0;
	}
	switch (raw->rule->is.relation) {
	case RELATION_AT_LEAST:
	case RELATION_MORE_THAN:
	case RELATION_AFTER:
		return -1;
	case RELATION_AT_MOST:
	case RELATION_LESS_THAN:
	case RELATION_BEFORE:
		return 1;
	default:
		return 0;
	}
}

/* The number submitted, in `*unit`; of a comparison that of its field. */
static bool number_submitted(const Raw *raw, const Told *told, double *number, Unit *unit)
{
	if (raw->judged->kind == KIND_comparison) {
		const Compared *compared = raw->judged->row;
		bool is_number = compared->field != NULL && compared->here != NULL && compared->field->kind == IS_NUMBER;
		if (!is_number || !is_value(given_in(compared->field, compared->here)))
			return false;
		*number = ((const Number *)(const void *)given_in(compared->field, compared->here))->value;
		*unit = compared->field->unit;
		return true;
	}
	const OperandValue *left = &told->tested.left;
	if (left->state != OPERAND_HAS || left->gives != VALUE_NUMBER)
		return false;
	*number = left->number;
	*unit = unit_of(left, &raw->rule->is.left);
	return true;
}

static bool is_no_worse(const Judging *judging, const Raw *raw, const Variance *row)
{
	Told told;
	const char *accepted = text_of(&row->value_accepted);
	tell_raw(raw, &told, judging->arena);
	if (told.submitted.text != NULL && strcasecmp(told.submitted.text, accepted) == 0)
		return true;
	double number, granted;
	Unit unit;
	int way = worse_way(raw);
	int32_t day;
	if (told.submitted.text != NULL && date_read(accepted, strlen(accepted), &day) && way != 0)
		return way < 0 ? strcmp(told.submitted.text, accepted) >= 0 : strcmp(told.submitted.text, accepted) <= 0;
	if (!number_submitted(raw, &told, &number, &unit) || read_quantity(accepted, strlen(accepted), unit, &granted) != QUANTITY_READ)
		return false;
	double slack = 1e-9 * (granted < 0 ? -granted : granted);
	bool is_less = number < granted - slack, is_more = number > granted + slack;
	return way < 0 ? !is_less : way > 0 ? !is_more : !is_less && !is_more;
}

/* ---- one raw ---- */

/* Why a variance of this rule and record does not cover what was found; NULL: it does. */
static const char *why_not(const Judging *judging, const Raw *raw, const Granted *granted)
{
	Arena *arena = judging->arena;
	const Variance *row = granted->row;
	int32_t day = judging->cases->as_of;
	if (!raw->rule->waivable)
		return arena_printf(arena, "%s may not be waived", raw->rule->code);
	if (day == INT32_MIN)
		return "the day of this submittal is not known";
	if (!is_value(&row->until.given) || row->until.day < day)
		return "it has ended";
	if (is_no_worse(judging, raw, row))
		return NULL;
	Told told;
	tell_raw(raw, &told, arena);
	return arena_printf(arena, "it accepts %s, and %s is submitted", cut_text(text_of(&row->value_accepted), arena),
		told.submitted.text != NULL ? told.submitted.text : "something else");
}

static void try_granted(Judging *judging, Raw *raw, Granted *granted)
{
	if (granted->rule != raw->rule || raw->state == ITEM_VARIANCE || !is_record(granted->row, raw->where))
		return;
	const char *why = why_not(judging, raw, granted);
	if (why != NULL) {
		granted->why = why;
		return;
	}
	Arena *arena = judging->arena;
	const Variance *row = granted->row;
	granted->used++;
	raw->state = ITEM_VARIANCE;
	raw->note = arena_printf(arena, "variance %s: %s; by %s, until %s", cut_text(text_of(&row->number), arena),
		cut_text(text_of(&row->reason), arena), cut_text(text_of(&row->by), arena), date_print(arena, row->until.day));
}

/* ---- what is told of a variance ---- */

static void tell_granted(Judging *judging, const Granted *granted)
{
	Arena *arena = judging->arena;
	const Variance *row = granted->row;
	const char *number = cut_text(text_of(&row->number), arena), *record = cut_text(text_of(&row->record), arena);
	const char *of = arena_printf(arena, "%s at %s", cut_text(text_of(&row->code), arena), record);
	Raw raw = { .where = judging->cases->of[KIND_submittal].at[0], .place = row->given.place, .what = number };
	int32_t day = judging->cases->as_of;
	bool has_ended = is_value(&row->until.given) && day != INT32_MIN && row->until.day < day;
	const char *condition = text_of(&row->condition);
	if (has_ended)
		raise_of_round(judging, &raw, MESSAGE_VAR_01, (About){ .key = number, .value = row->until.given.typed,
			.want = arena_printf(arena, "it was granted for %s", of) });
	else if (granted->used == 0)
		raise_of_round(judging, &raw, MESSAGE_VAR_02, (About){ .key = number, .want = granted->why != NULL ? granted->why
			: granted->rule == NULL ? arena_printf(arena, "these criteria have no rule %s", cut_text(text_of(&row->code), arena))
			: arena_printf(arena, "nothing was found for %s", of) });
	else if (*condition != '\0')
		raise_of_round(judging, &raw, MESSAGE_VAR_03, (About){ .key = number, .value = condition, .want = of });
}

/* ---- the whole ---- */

static const Rule *rule_of(const Criteria *criteria, const char *code)
{
	for (uint32_t i = 0; i < criteria->rules; i++)
		if (strcmp(criteria->rule[i].code, code) == 0)
			return &criteria->rule[i];
	return NULL;
}

/* Those of this submittal; few, whatever the register holds. */
static Granted *granted_here(const Judging *judging, uint32_t *count)
{
	const Cases *cases = judging->cases;
	const Registers *registers = cases->registers;
	const char *submittal = text_of(&cases->submittal->submittal);
	Granted *granted = TAKE(judging->arena, Granted, registers->variances.count + 1);
	for (uint32_t i = 0; i < registers->variances.count; i++) {
		const Variance *row = &registers->variances.row[i];
		if (*submittal != '\0' && strcmp(text_of(&row->submittal), submittal) == 0)
			granted[(*count)++] = (Granted){ .row = row, .rule = rule_of(cases->criteria, text_of(&row->code)) };
	}
	return granted;
}

void apply_variances(Judging *judging)
{
	uint32_t count = 0;
	if (judging->cases->registers == NULL || judging->cases->criteria == NULL || judging->stage == STAGE_bid)
		return;
	Granted *granted = granted_here(judging, &count);
	for (uint32_t i = 0; i < judging->raws && count > 0; i++) {
		Raw *raw = judging->raw[i];
		for (uint32_t j = 0; raw->found_by == FOUND_BROKEN && raw->state != ITEM_CLOSED && j < count; j++)
			try_granted(judging, raw, &granted[j]);
	}
	for (uint32_t j = 0; j < count; j++)
		tell_granted(judging, &granted[j]);
}
