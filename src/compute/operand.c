/* SPDX-License-Identifier: MIT
 * What one side of a test gives for a case: a constant, a field, a fact, a value of the listing, the catalogue or the edition.
 */
#include "fetch.h"

/* A value to read: its field, its Given and the case whose record it stands in (NULL: a table's). */
static OperandValue from_given(const Operand *operand, Asked asked)
{
	OperandValue value = { .gives = operand->gives, .given = asked.given, .field = asked.field, .at = asked.at };
	bool is_list = asked.field->kind == IS_LIST || asked.field->kind == IS_TEXTS;
	if (is_list && asked.given->said == SAID_NONE)
		return value; /* a list without entries is an answer */
	if (!is_value(asked.given)) {
		bool is_apart = asked.given->said == SAID_NOT_APPLICABLE;
		value.state = is_apart ? OPERAND_NOT_APPLICABLE : OPERAND_WAITS;
		value.reason = is_apart ? asked.given->typed : NULL;
		return value;
	}
	double factor = operand->factor != 0 ? operand->factor : 1;
	switch (asked.field->kind) {
	case IS_NUMBER:
	case IS_SIZE:
		value.number = ((const Number *)asked.given)->value * factor;
		break;
	case IS_DATE:
		value.number = ((const Date *)asked.given)->day;
		break;
	case IS_YES:
		value.number = ((const Yes *)asked.given)->yes;
		break;
	case IS_WORD:
		value.text = ((const Word *)asked.given)->text;
		break;
	case IS_NAME:
	case IS_TEXT:
	case IS_MARK:
		value.text = ((const Text *)asked.given)->text;
		break;
	case IS_TEXTS:
	case IS_BY_ZONE:
	case IS_ONE:
	case IS_LIST:
		break; /* `given` leads to the rest */
	}
	return value;
}

static OperandValue nothing(const Operand *operand, OperandState state, const char *reason)
{
	return (OperandValue){ .state = state, .gives = operand->gives, .reason = reason };
}

static OperandValue from_constant(const Operand *operand)
{
	double factor = operand->factor != 0 ? operand->factor : 1;
	return (OperandValue){ .gives = operand->gives, .number = operand->value * factor, .text = operand->word };
}

/* A role of the submittal stands in no roof area. */
static const char *const stands_outside = "it stands in no such record";

static const Case *where_of(const Case *at, const Operand *operand)
{
	return operand->at == RECORD_KINDS ? at : case_outward(at, operand->at);
}

static OperandValue from_field(const Case *at, const Operand *operand)
{
	const Case *where = where_of(at, operand);
	if (where == NULL)
		return nothing(operand, OPERAND_NOT_APPLICABLE, stands_outside);
	Asked asked = { where, operand->field, (const Given *)(const void *)((const char *)where->row + operand->offset) };
	return from_given(operand, is_value(asked.given) ? asked : ask(where, operand->offset));
}

/* A value of a table beside the case: what it leaves blank cannot be judged, `any` asks for nothing. */
static OperandValue from_row(const Operand *operand, const void *row, const char *blank)
{
	Asked asked = { NULL, operand->field, (const Given *)(const void *)((const char *)row + operand->offset) };
	OperandValue value = from_given(operand, asked);
	if (value.state == OPERAND_WAITS) {
		value.state = OPERAND_REFUSED;
		value.reason = blank;
	}
	return value;
}

static OperandValue from_listed(const Case *at, const Operand *operand)
{
	const Case *where = where_of(at, operand);
	const void *row = where != NULL ? where->listed : NULL;
	if (row == NULL)
		return nothing(operand, OPERAND_REFUSED, "no listing speaks of it");
	return from_row(operand, row, "the listing does not state it");
}

static OperandValue from_catalogue(const Case *at, const Operand *operand)
{
	const Case *where = where_of(at, operand);
	const void *row = where != NULL ? where->catalogue : NULL;
	if (row == NULL)
		return nothing(operand, OPERAND_NOT_APPLICABLE, "it is not in the catalogue");
	return from_row(operand, row, "the catalogue does not state it");
}

static OperandValue from_fact(const Case *at, const Operand *operand)
{
	static const OperandState states[] = {
		[FACT_KNOWN] = OPERAND_HAS,
		[FACT_WAITING] = OPERAND_WAITS,
		[FACT_REFUSED] = OPERAND_REFUSED,
		[FACT_NOT_APPLICABLE] = OPERAND_NOT_APPLICABLE,
	};
	/* A fact is written into its case when it is first asked for; nothing else of the case changes. */
	Case *where = fact_case_or_null((Case *)at, operand->fact);
	if (where == NULL)
		return nothing(operand, OPERAND_NOT_APPLICABLE, stands_outside);
	const Fact *fact = fact_of(where, operand->fact);
	double factor = operand->factor != 0 ? operand->factor : 1;
	return (OperandValue){
		.state = states[fact->state],
		.gives = operand->gives,
		.number = fact->value * factor,
		.at = where,
		.fact = fact,
		.reason = fact->reason,
	};
}

OperandValue operand_value(const Case *at, const Operand *operand)
{
	switch ((OperandFrom)operand->from) {
	case FROM_CONSTANT:
	case FROM_LIST:
		return from_constant(operand);
	case FROM_FIELD:
		return from_field(at, operand);
	case FROM_FACT:
		return from_fact(at, operand);
	case FROM_LISTED:
		return from_listed(at, operand);
	case FROM_CATALOGUE:
		return from_catalogue(at, operand);
	case FROM_EDITION:
		return from_row(operand, &at->all->criteria->edition, "the edition does not state it");
	}
	return nothing(operand, OPERAND_REFUSED, "nothing is known of it");
}
