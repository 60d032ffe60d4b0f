/* SPDX-License-Identifier: MIT
 * Sides: what was submitted and what is allowed, as printed under an item and as computed.
 *
 * A value prints as it was typed where it was; else as a number with its unit. A yes or no that was computed says little by
 * itself: the statement it stands for is printed as what is allowed, and what the finding speaks of as what was submitted. A note
 * that says what is allowed stands there.
 */
#include "date.h"
#include "judge.h"
#include "number.h"

#include <string.h>

enum { MOST_ENTRIES = 8 };

const char *cut_text(const char *text, Arena *arena)
{
	if (text == NULL)
		return "";
	size_t length = strnlen(text, MOST_TEXT + 1);
	if (length <= MOST_TEXT)
		return text;
	length = MOST_TEXT;
	while (length > 0 && ((unsigned char)text[length] & 0xc0) == 0x80)
		length--;
	return arena_printf(arena, "%.*s...", (int)length, text);
}

static const char *number_text(double number, const Shown *shown, Arena *arena)
{
	const char *printed = number_print(arena, number, shown->digits);
	const char *unit = unit_row(shown->unit)->printed;
	if (shown->unit == UNIT_day && !number_same(number, 1))
		unit = "days";
	if (shown->unit == UNIT_in_12)
		return arena_printf(arena, "%s%s", printed, unit);
	return *unit != '\0' ? arena_printf(arena, "%s %s", printed, unit) : printed;
}

static const char *texts_text(const Texts *texts, Arena *arena)
{
	const char *all = "";
	for (uint32_t i = 0; i < texts->count && i < MOST_ENTRIES; i++)
		all = arena_printf(arena, "%s%s%s", all, i > 0 ? ", " : "", cut_text(texts->at[i].text, arena));
	return texts->count > MOST_ENTRIES ? arena_printf(arena, "%s and %u more", all, (unsigned)(texts->count - MOST_ENTRIES))
					   : all;
}

/* The entries of a list of lists.csv. */
static const char *list_text(const Criteria *criteria, const char *list, Arena *arena)
{
	const char *all = "";
	unsigned count = 0;
	for (uint32_t i = 0; i < criteria->lists.count; i++) {
		const NamedWord *row = &criteria->lists.row[i];
		if (row->list.text == NULL || strcmp(row->list.text, list) != 0)
			continue;
		if (count < MOST_ENTRIES)
			all = arena_printf(arena, "%s%s%s", all, count > 0 ? ", " : "", cut_text(row->entry.text, arena));
		count++;
	}
	if (count == 0)
		return list;
	return count > MOST_ENTRIES ? arena_printf(arena, "%s and %u more of the list", all, count - MOST_ENTRIES) : all;
}

/* A cell of a table says its unit in the header: its bare number is no text for people. */
static bool lacks_unit(const OperandValue *value)
{
	double number;
	const char *typed = value->given->typed;
	bool has_unit = value->gives == VALUE_NUMBER && value->field != NULL && *unit_row(value->field->unit)->printed != '\0';
	return has_unit && value->field->kind != IS_SIZE && number_read(typed, strlen(typed), &number);
}

const char *typed_text(const OperandValue *value, const Operand *operand)
{
	if (operand->from == FROM_CONSTANT)
		return value->gives == VALUE_NUMBER ? operand->word : NULL;
	bool is_field = value->given != NULL && value->fact == NULL && is_value(value->given);
	if (!is_field || value->given->typed == NULL || *value->given->typed == '\0' || lacks_unit(value))
		return NULL;
	return value->given->typed;
}

/* What a field says in place of a value. */
static const char *said_text(const OperandValue *value)
{
	if (value->given == NULL || value->fact != NULL)
		return value->reason != NULL ? value->reason : "not stated";
	switch (value->given->said) {
	case SAID_NONE:
		return "none";
	case SAID_UNKNOWN:
		return "unknown";
	case SAID_BY_OTHERS:
		return "by others";
	case SAID_NOT_APPLICABLE:
		return "not applicable";
	default:
		return "not stated";
	}
}

const char *value_text(const OperandValue *value, const Shown *shown, const Reference *reference, Arena *arena)
{
	const char *typed = typed_text(value, shown->operand);
	if (value->state != OPERAND_HAS)
		return said_text(value);
	if (value->gives == VALUE_NUMBER && typed != NULL)
		return arena_printf(arena, "%s%s", cut_text(typed, arena),
				    value->given != NULL && value->given->said == SAID_ASSUMED ? " (assumed)" : "");
	switch (value->gives) {
	case VALUE_NUMBER:
		if (value->field != NULL && value->field->kind == IS_SIZE && screw_size(reference, value->number) != NULL)
			return screw_size(reference, value->number);
		return number_text(value->number, shown, arena);
	case VALUE_DATE:
		return date_print(arena, (int32_t)value->number);
	case VALUE_YES:
		return value->number != 0 ? "yes" : "no";
	case VALUE_WORD:
	case VALUE_TEXT:
		return cut_text(value->text, arena);
	case VALUE_LIST:
		if (value->field != NULL && value->field->kind == IS_TEXTS && value->given != NULL)
			return texts_text((const Texts *)(const void *)value->given, arena);
		return value->given != NULL && value->given->said == SAID_NONE ? "none" : "listed";
	}
	return "";
}

/* ---- the two sides ---- */

static const char *relation_text(Relation relation, const char *limit, Arena *arena)
{
	static const char *const words[] = { "",        "anything but ", "at least ", "at most ",  "more than ", "less than ",
					     "before ", "after ",        "one of: ",  "none of: ",
					     "with ",   "without ",      "",           "" };
	return *words[relation] == '\0' ? limit : arena_printf(arena, "%s%s", words[relation], limit);
}

Unit unit_of(const OperandValue *value, const Operand *operand)
{
	if (value->fact != NULL)
		return fact_spec(operand->fact)->unit;
	return value->field != NULL ? value->field->unit : operand->unit;
}

static Side side_of(const OperandValue *value, const Shown *shown, const Reference *reference, Arena *arena)
{
	Side side = { .text = value_text(value, shown, reference, arena), .value = value->number };
	side.has_value = value->state == OPERAND_HAS && value->gives == VALUE_NUMBER;
	side.unit = side.has_value ? unit_row(shown->unit)->printed : NULL;
	return side;
}

/* The item of a part, else the record's own name without the roof area's: equal parts of two areas are one item. */
static const char *own_name(const Case *at, Arena *arena)
{
	const Text *item = is_part(at->kind) ? &((const Panel *)at->row)->item : NULL;
	if (item != NULL && is_value(&item->given))
		return cut_text(item->text, arena);
	size_t outer = at->up != NULL && at->up->name != NULL ? strlen(at->up->name) : 0;
	bool is_inside = outer > 0 && strncmp(at->name, at->up->name, outer) == 0 && strncmp(at->name + outer, " / ", 3) == 0;
	return cut_text(is_inside ? at->name + outer + 3 : at->name, arena);
}

/* The first value of the form that the finding names: what a computed yes or no speaks of. */
static const char *spoken_of(const Told *told, Arena *arena)
{
	const Wording *finding = &told->rule->finding;
	for (uint32_t i = 0; i < finding->count; i++) {
		const Operand *operand = &finding->piece[i].operand;
		bool is_name = operand->field != NULL && operand->field->kind == IS_NAME && operand->at != KIND_letter &&
			       operand->at != KIND_test;
		if (!finding->piece[i].has_operand || operand->from != FROM_FIELD || is_name)
			continue;
		OperandValue value = operand_value(told->at[0], operand);
		Shown shown = { operand, unit_of(&value, operand), told->digits };
		return value_text(&value, &shown, told->at[0]->all->reference, arena);
	}
	return own_name(stands_at(told->at[0]), arena);
}

/* The contrary of a title: its verb is denied, else the thing itself: "not approved on a condition". */
static const char *denied(const char *title, Arena *arena)
{
	static const char *const verbs[] = { " is ", " are " };
	const char *clause = strstr(title, " that ");
	for (size_t i = 0; i < sizeof verbs / sizeof *verbs; i++) {
		const char *verb = strstr(title, verbs[i]);
		size_t length = strlen(verbs[i]);
		if (verb != NULL && (clause == NULL || verb < clause))
			return arena_printf(arena, "%.*snot %s", (int)(verb - title + (long)length), title, verb + length);
	}
	return arena_printf(arena, clause != NULL ? "no %s" : "not %s", title);
}

static void tell_statement(Told *told, Arena *arena)
{
	const Fact *fact = told->tested.left.fact;
	const char *title = lower_first(fact_spec(told->rule->is.left.fact)->title, arena);
	bool wanted = told->tested.right.number != 0;
	if (told->rule->is.relation == RELATION_IS_NOT)
		wanted = !wanted;
	const char *submitted = spoken_of(told, arena), *limit = wanted ? title : denied(title, arena);
	static const char choice[] = "allowed: ";
	if (fact->note != NULL && strncmp(fact->note, choice, strlen(choice)) == 0)
		limit = arena_printf(arena, "one of: %s", cut_text(fact->note + strlen(choice), arena));
	else if (fact->note != NULL)
		submitted = arena_printf(arena, "%s (%s)", submitted, cut_text(fact->note, arena));
	told->submitted = (Side){ .text = submitted };
	told->limit = (Side){ .text = limit };
}

/* The listing's own term, else the direction in which the two may differ. */
static const char *allowed_by(const Compared *compared, Arena *arena)
{
	const char *there = cut_text(compared->record.there.text, arena);
	if (there[0] == '\0')
		there = "not stated";
	const ListingTerm *term = compared->term != NULL ? compared->term->row : NULL;
	if (term != NULL && is_value(&term->value.given)) {
		bool is_plain = strcmp(term->relation.text, "is") == 0;
		return is_plain ? term->value.text
				: arena_printf(arena, "%s %s", term->relation.text, cut_text(term->value.text, arena));
	}
	const Word *may_go = &compared->record.may_go;
	if (is_word(may_go, "up"))
		return arena_printf(arena, "at least %s", there);
	if (is_word(may_go, "down"))
		return arena_printf(arena, "at most %s", there);
	return there;
}

static void tell_comparison(Told *told, Arena *arena)
{
	const Compared *compared = told->at[0]->row;
	const char *here = cut_text(compared->record.here.text, arena);
	told->submitted = (Side){ .text = here[0] != '\0' ? here : "not stated" };
	told->limit = (Side){ .text = allowed_by(compared, arena) };
	const Field *field = compared->field;
	if (field == NULL || (field->kind != IS_NUMBER && field->kind != IS_SIZE))
		return;
	const Number *mine = compared->here != NULL ? (const Number *)(const void *)given_in(field, compared->here) : NULL;
	const Number *theirs = compared->there != NULL ? (const Number *)(const void *)given_in(field, compared->there) : NULL;
	told->submitted.has_value = mine != NULL && is_value(&mine->given);
	told->limit.has_value = theirs != NULL && is_value(&theirs->given) && compared->term == NULL;
	if (told->submitted.has_value)
		told->submitted.value = mine->value;
	if (told->limit.has_value)
		told->limit.value = theirs->value;
	told->submitted.unit = told->submitted.has_value ? unit_row(field->unit)->printed : NULL;
	told->limit.unit = told->limit.has_value ? unit_row(field->unit)->printed : NULL;
}

/* "24 ga" beside "0.030 in": the number stands in brackets where the two are written in two ways, or alike and are not. */
static void tell_notation(Side *side, const Side *other, const Shown *shown, Arena *arena)
{
	const char *unit = unit_row(shown->unit)->printed;
	size_t length = strlen(side->text), own = strlen(unit);
	bool in_unit = length > own && strcmp(side->text + length - own, unit) == 0;
	const char *mine = strrchr(side->text, ' '), *theirs = strrchr(other->text, ' ');
	bool alike = strcmp(mine != NULL ? mine : side->text, theirs != NULL ? theirs : other->text) == 0;
	bool same_text = strcmp(side->text, other->text) == 0 && !number_same(side->value, other->value);
	bool is_size = shown->operand != NULL && shown->operand->field != NULL && shown->operand->field->kind == IS_SIZE;
	if (same_text || (*unit != '\0' && shown->unit != UNIT_in_12 && !is_size && !in_unit && !alike))
		side->text = arena_printf(arena, "%s (%s)", side->text, number_text(side->value, shown, arena));
}

static const char *limit_text(const Told *told, const Side *limit, Arena *arena)
{
	const Case *at = told->at[0];
	const Test *is = &told->rule->is;
	const char *text = limit->text;
	if (is->right.from == FROM_LIST)
		text = list_text(at->all->criteria, is->right.word, arena);
	else if (told->tested.right.gives == VALUE_LIST && is->right.from == FROM_EDITION && told->tested.right.given != NULL)
		text = texts_text((const Texts *)(const void *)told->tested.right.given, arena);
	text = relation_text(is->relation, text, arena);
	if (at->kind == KIND_role)
		text = arena_printf(arena, "%s %s", text, cut_text(((const Role *)at->row)->role.text, arena));
	return text;
}

static void tell_values(Told *told, Arena *arena)
{
	const Case *at = told->at[0];
	const Test *is = &told->rule->is;
	Unit unit = unit_of(&told->tested.left, &is->left);
	Shown left = { &is->left, unit, told->digits }, right = { &is->right, unit, told->digits };
	told->submitted = side_of(&told->tested.left, &left, at->all->reference, arena);
	told->limit = side_of(&told->tested.right, &right, at->all->reference, arena);
	if (told->submitted.has_value && told->limit.has_value) {
		Side mine = told->submitted, theirs = told->limit;
		tell_notation(&told->submitted, &theirs, &left, arena);
		tell_notation(&told->limit, &mine, &right, arena);
	}
	told->limit.text = limit_text(told, &told->limit, arena);
}

static void tell_given(Told *told, Arena *arena)
{
	const Test *is = &told->rule->is;
	const Field *field = told->tested.left.field;
	const char *what = field != NULL && told->tested.left.fact == NULL ? field_words(field, arena) : NULL;
	bool given = is->relation == RELATION_GIVEN;
	told->submitted.text = given ? said_text(&told->tested.left) : "stated";
	told->limit.text = !given ? "not stated" : what != NULL ? arena_printf(arena, "stated: %s", what) : "stated";
}

void tell_sides(Told *told, Arena *arena)
{
	const Case *at = told->at[0];
	const Test *is = &told->rule->is;
	if (is->relation == RELATION_GIVEN || is->relation == RELATION_NOT_GIVEN) {
		tell_given(told, arena);
	} else if (at->kind == KIND_comparison) {
		tell_comparison(told, arena);
	} else if (at->kind == KIND_paper) {
		told->submitted.text = "not in the package";
		told->limit.text = cut_text(((const Paper *)at->row)->kind.text, arena);
	} else if (told->tested.left.fact != NULL && told->tested.left.gives == VALUE_YES) {
		tell_statement(told, arena);
	} else {
		tell_values(told, arena);
	}
}
