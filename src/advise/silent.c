/* SPDX-License-Identifier: MIT
 * Rules that can never fire. Of each thing a rule asks about, values are tried that could make a difference (its words, the
 * constants it is compared with, what lies beside and between them): if none lets all conditions hold and the test be broken, the
 * rule is silent for ever. And a rule on a role or a paper is silent where no row of the edition makes such a record.
 */
#include "gaps.h"

#include "finding.h"

#include <string.h>
#include <strings.h>

enum { MOST_TRIED = 400 };

/* One thing that must hold for the rule to fire. */
typedef struct {
	const Operand *left, *right;
	Relation relation;
} Demand;

typedef struct {
	Demand *at;
	uint32_t count;
} Demands;

/* A value tried. */
typedef struct {
	double number;
	const char *text;
} Tried;

static Relation opposite(Relation relation)
{
	switch (relation) {
	case RELATION_IS:
		return RELATION_IS_NOT;
	case RELATION_IS_NOT:
		return RELATION_IS;
	case RELATION_AT_LEAST:
		return RELATION_LESS_THAN;
	case RELATION_AT_MOST:
		return RELATION_MORE_THAN;
	case RELATION_MORE_THAN:
		return RELATION_AT_MOST;
	case RELATION_LESS_THAN:
		return RELATION_AT_LEAST;
	case RELATION_IN:
		return RELATION_NOT_IN;
	case RELATION_NOT_IN:
		return RELATION_IN;
	case RELATION_GIVEN:
		return RELATION_NOT_GIVEN;
	case RELATION_NOT_GIVEN:
		return RELATION_GIVEN;
	case RELATION_INCLUDES:
		return RELATION_INCLUDES_NOT;
	case RELATION_INCLUDES_NOT:
		return RELATION_INCLUDES;
	case RELATION_BEFORE:
		return RELATION_AT_LEAST; /* of days as numbers */
	case RELATION_AFTER:
		return RELATION_AT_MOST;
	}
	return relation;
}

static Demands demands_of(const Rule *rule, Arena *arena)
{
	Demands demands = { TAKE(arena, Demand, rule->conditions + 1), 0 };
	for (uint32_t i = 0; i < rule->conditions; i++)
		demands.at[demands.count++] = (Demand){ &rule->when[i].left, &rule->when[i].right, rule->when[i].relation };
	demands.at[demands.count++] = (Demand){ &rule->is.left, &rule->is.right, opposite(rule->is.relation) };
	return demands;
}

static bool is_one_thing(const Operand *a, const Operand *b)
{
	return a->from == b->from && a->at == b->at && a->fact == b->fact && a->offset == b->offset && a->field == b->field;
}

/* ---- whether a value meets a demand ---- */

static bool meets_number(const Demand *demand, double value)
{
	double limit = demand->right->value;
	switch (demand->relation) {
	case RELATION_IS:
		return value == limit;
	case RELATION_IS_NOT:
		return value != limit;
	case RELATION_AT_LEAST:
		return value >= limit;
	case RELATION_AT_MOST:
		return value <= limit;
	case RELATION_MORE_THAN:
	case RELATION_AFTER:
		return value > limit;
	case RELATION_LESS_THAN:
	case RELATION_BEFORE:
		return value < limit;
	default:
		return true;
	}
}

static bool meets_text(const Criteria *criteria, const Demand *demand, const char *text)
{
	const char *limit = demand->right->word != NULL ? demand->right->word : "";
	switch (demand->relation) {
	case RELATION_IS:
		return strcasecmp(text, limit) == 0;
	case RELATION_IS_NOT:
		return strcasecmp(text, limit) != 0;
	case RELATION_IN:
		return list_has(criteria, limit, text);
	case RELATION_NOT_IN:
		return !list_has(criteria, limit, text);
	default:
		return true;
	}
}

/* What is compared with another record's value can be anything. */
static bool meets(const Criteria *criteria, const Demand *demand, const Tried *tried)
{
	bool is_list = demand->right->from == FROM_LIST;
	if (demand->relation == RELATION_GIVEN || (demand->right->from != FROM_CONSTANT && !is_list))
		return true;
	return tried->text != NULL ? meets_text(criteria, demand, tried->text) : is_list || meets_number(demand, tried->number);
}

static bool meets_all(const Criteria *criteria, const Demands *demands, const Operand *left, const Tried *tried)
{
	for (uint32_t i = 0; i < demands->count; i++)
		if (is_one_thing(demands->at[i].left, left) && !meets(criteria, &demands->at[i], tried))
			return false;
	return true;
}

/* ---- values that make a difference ---- */

typedef struct {
	Tried at[MOST_TRIED];
	uint32_t count;
	bool cut; /* there was no room for all: then nothing is said */
} Trials;

static void try_value(Trials *trials, double number, const char *text)
{
	trials->cut |= trials->count == MOST_TRIED;
	if (trials->count < MOST_TRIED)
		trials->at[trials->count++] = (Tried){ number, text };
}

static void try_words(Trials *trials, const Field *field, Arena *arena)
{
	size_t length;
	const char *word;
	for (int i = 0; (word = word_text(field->words, i, &length)) != NULL; i++)
		try_value(trials, 0, arena_text(arena, word, length));
}

static void try_list(Trials *trials, const Criteria *criteria, const char *list)
{
	for (uint32_t i = 0; i < criteria->lists.count; i++)
		if (criteria->lists.row[i].list.text != NULL && strcasecmp(criteria->lists.row[i].list.text, list) == 0)
			try_value(trials, 0, criteria->lists.row[i].entry.text);
}

/* Beside and between the limits, within what the form takes. */
static void try_numbers(Trials *trials, const Demands *demands, const Operand *left)
{
	double limit[32];
	uint32_t limits = 0;
	bool ranged = left->from == FROM_FIELD && left->field != NULL && left->field->high > left->field->low;
	for (uint32_t i = 0; i < demands->count && limits < 30; i++)
		if (is_one_thing(demands->at[i].left, left) && demands->at[i].right->from == FROM_CONSTANT)
			limit[limits++] = demands->at[i].right->value;
	if (ranged) {
		limit[limits++] = left->field->low;
		limit[limits++] = left->field->high;
	}
	for (uint32_t i = 0; i < limits; i++) {
		double near = limit[i] != 0 ? 1e-6 * (limit[i] < 0 ? -limit[i] : limit[i]) : 1e-6;
		const double beside[] = { limit[i] - near, limit[i], limit[i] + near };
		for (size_t j = 0; j < 3; j++)
			if (!ranged || (beside[j] >= left->field->low && beside[j] <= left->field->high))
				try_value(trials, beside[j], NULL);
	}
	if (limits == 0)
		try_value(trials, 0, NULL);
}

static void try_texts(Trials *trials, const Criteria *criteria, const Demands *demands, const Operand *left)
{
	try_value(trials, 0, "(anything else)");
	for (uint32_t i = 0; i < demands->count; i++) {
		const Demand *demand = &demands->at[i];
		if (!is_one_thing(demand->left, left) || demand->right->word == NULL)
			continue;
		if (demand->right->from == FROM_CONSTANT)
			try_value(trials, 0, demand->right->word);
		else if (demand->right->from == FROM_LIST)
			try_list(trials, criteria, demand->right->word);
	}
}

static bool fill_trials(Trials *trials, const Criteria *criteria, const Demands *demands, const Operand *left, Arena *arena)
{
	switch (left->gives) {
	case VALUE_YES:
		try_value(trials, 0, NULL);
		try_value(trials, 1, NULL);
		return true;
	case VALUE_WORD:
		if (left->field == NULL || left->field->words == NULL)
			return false;
		try_words(trials, left->field, arena);
		return true;
	case VALUE_NUMBER:
	case VALUE_DATE:
		try_numbers(trials, demands, left);
		return true;
	case VALUE_TEXT:
		try_texts(trials, criteria, demands, left);
		return true;
	default:
		return false;
	}
}

/* Absent and asked for its value at once. */
static bool is_absent_and_asked(const Demands *demands, const Operand *left)
{
	bool absent = false, asked = false;
	for (uint32_t i = 0; i < demands->count; i++) {
		if (!is_one_thing(demands->at[i].left, left))
			continue;
		absent |= demands->at[i].relation == RELATION_NOT_GIVEN;
		asked |= demands->at[i].relation != RELATION_NOT_GIVEN;
	}
	return absent && asked;
}

static bool is_possible(const Criteria *criteria, const Demands *demands, const Operand *left, Arena *arena)
{
	if (is_absent_and_asked(demands, left))
		return false;
	Trials *trials = TAKE(arena, Trials, 1);
	if (!fill_trials(trials, criteria, demands, left, arena) || trials->cut)
		return true;
	for (uint32_t i = 0; i < trials->count; i++)
		if (meets_all(criteria, demands, left, &trials->at[i]))
			return true;
	return false;
}

/* ---- records that only rows of the edition make ---- */

/* The rows by which a kind of record is made, and what its keys are called there. */
typedef struct {
	RecordKind made;
	const Record *record;
	Table rows;
	const char *file;
	struct {
		const char *made, *row;
	} key[4];
} Maker;

static const char *row_text(const Field *field, const void *row)
{
	const Given *given = given_in(field, row);
	if (!is_value(given))
		return NULL;
	return field->kind == IS_WORD ? ((const Word *)(const void *)given)->text : ((const Text *)(const void *)given)->text;
}

/* Whether a row makes a record for which the demands on its own keys hold. */
static bool is_made_by(const Criteria *criteria, const Maker *maker, const Demands *demands, const void *row)
{
	for (uint32_t i = 0; i < demands->count; i++) {
		const Demand *demand = &demands->at[i];
		if (demand->left->from != FROM_FIELD || demand->left->at != maker->made || demand->left->field == NULL)
			continue;
		for (size_t j = 0; j < 4 && maker->key[j].made != NULL; j++) {
			if (strcmp(maker->key[j].made, demand->left->field->key) != 0)
				continue;
			const Field *field = field_find(maker->record, maker->key[j].row, strlen(maker->key[j].row));
			const char *text = field != NULL ? row_text(field, row) : NULL;
			if (text != NULL && !meets(criteria, demand, &(Tried){ 0, text }))
				return false;
		}
	}
	return true;
}

static const char *why_never_made(const Criteria *criteria, const Rule *rule, const Demands *demands, Arena *arena)
{
	const Maker makers[] = {
		{ KIND_role, &RequiredRole_record, { criteria->required.count, criteria->required.row, NULL }, "required.csv",
			{ { "role", "role" }, { "part", "part" } } },
		{ KIND_paper, &PaperDue_record, { criteria->documents.count, criteria->documents.row, NULL }, "documents.csv",
			{ { "kind", "kind" } } },
	};
	for (size_t i = 0; i < sizeof makers / sizeof *makers; i++) {
		const Maker *maker = &makers[i];
		bool made = rule->for_each != maker->made;
		for (uint32_t row = 0; row < maker->rows.count && !made; row++)
			made = is_made_by(criteria, maker, demands, (const char *)maker->rows.row + row * maker->record->size);
		if (!made)
			return arena_printf(arena, "no row of %s makes a record it asks about", maker->file);
	}
	return NULL;
}

const char *why_silent(const Criteria *criteria, const Rule *rule, Arena *arena)
{
	Demands demands = demands_of(rule, arena);
	for (uint32_t i = 0; i < demands.count; i++) {
		const Operand *left = demands.at[i].left;
		if (!is_possible(criteria, &demands, left, arena))
			return arena_printf(arena, "no value of %s meets its conditions and breaks it",
				left->word != NULL ? left->word : "what it asks about");
	}
	return why_never_made(criteria, rule, &demands, arena);
}
