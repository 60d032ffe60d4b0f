/* SPDX-License-Identifier: MIT
 * Comparisons with the specification: requirements whose topic is a kind of part ("panel": its item), or a kind and a key
 * ("fastener size", "underlayment temperature rating"), with every part of that kind.
 *
 * Other topics, such as the uplift class, are for rules of their own. What a requirement says of a key the form does not have is
 * set down as unknown, so that it is asked about and never passed over.
 */
#include "compare.h"
#include "quantity.h"

#include <string.h>
#include <strings.h>

typedef struct {
	RecordKind kind; /* RECORD_KINDS: not about a part */
	const Field *field; /* NULL: the form has no such key */
	const char *attribute; /* in words */
} Topic;

/* The kind of part a topic begins with; `*rest` is what follows. */
static RecordKind kind_of_topic(const char *topic, const char **rest)
{
	for (int kind = 0; kind < RECORD_KINDS; kind++) {
		const Record *record = record_of((RecordKind)kind);
		size_t length = strlen(record->name);
		if (record->sort != RECORD_PART || strncasecmp(topic, record->name, length) != 0)
			continue;
		if (topic[length] == '\0' || topic[length] == ' ') {
			*rest = topic + length + strspn(topic + length, " ");
			return (RecordKind)kind;
		}
	}
	return RECORD_KINDS;
}

/* The field whose key in words is `words`, letters of either case. */
static const Field *field_in_words(const Record *record, const char *words)
{
	for (uint32_t i = 0; i < record->count; i++) {
		const char *key = record->field[i].key, *word = words;
		while (*key != '\0' && (strncasecmp(key, word, 1) == 0 || (*key == '_' && *word == ' ')))
			key++, word++;
		if (*key == '\0' && *word == '\0')
			return &record->field[i];
	}
	return NULL;
}

static Topic topic_of(const Requirement *requirement)
{
	Topic topic = { .kind = RECORD_KINDS };
	if (!is_value(&requirement->topic.given))
		return topic;
	const char *rest = "";
	if (strcasecmp(requirement->topic.text, "fastener factor of safety") == 0) /* for the facts of proof.c */
		return topic;
	topic.kind = kind_of_topic(requirement->topic.text, &rest);
	topic.attribute = rest[0] != '\0' ? rest : "item";
	if (topic.kind != RECORD_KINDS)
		topic.field = field_in_words(record_of(topic.kind), topic.attribute);
	return topic;
}

/* ---- the value asked for, in a row of its own ---- */

/* The table a gauge is taken from, by what the part is; where it does not say, that of steel sheet. */
static const char *gauge_use(const Case *part)
{
	static const struct {
		const char *word, *use;
	} uses[] = { { "stainless steel", "stainless" }, { "aluminum", "aluminum" }, { "steel deck", "deck" }, { "purlin", "framing" },
		{ "sub-purlin", "framing" } };
	const char *key = part->kind == KIND_support ? "kind" : "metal";
	const Field *field = field_find(record_of(part->kind), key, strlen(key));
	for (size_t i = 0; field != NULL && field->kind == IS_WORD && i < sizeof uses / sizeof *uses; i++)
		if (is_word((const Word *)(const void *)given_in(field, part->row), uses[i].word))
			return uses[i].use;
	return "sheet";
}

static bool read_gauge(const Resolving *r, const Draft *draft, double *value)
{
	*value = gauge_thickness(r->all->reference, gauge_use(draft->part), *value);
	return *value > 0;
}

static bool read_number(const Resolving *r, const Draft *draft, const char *text, double *value)
{
	const Field *field = draft->field;
	if (field->kind == IS_SIZE)
		return read_screw_size(text, strlen(text), r->all->reference, value);
	Quantity read = read_quantity(text, strlen(text), field->unit, value);
	return read == QUANTITY_READ || (read == QUANTITY_GAUGE && read_gauge(r, draft, value));
}

static bool put_by_zone(const Resolving *r, ByZone *by_zone, double value)
{
	ZoneValue *all = TAKE(r->arena, ZoneValue, 1);
	*all = (ZoneValue){ .given.said = SAID_VALUE, .zone = "", .value = value };
	by_zone->count = 1;
	by_zone->at = all;
	return true;
}

static bool put_value(const Resolving *r, const Draft *draft, const char *text, void *value)
{
	const Field *field = draft->field;
	double number = 0;
	switch (field->kind) {
	case IS_NAME:
	case IS_TEXT:
	case IS_MARK:
		((Text *)value)->text = text;
		return true;
	case IS_WORD: {
		int word = word_find(field->words, text, strlen(text));
		size_t length = 0;
		const char *known = word >= 0 ? word_text(field->words, word, &length) : text;
		((Word *)value)->text = word >= 0 ? arena_text(r->arena, known, length) : text;
		((Word *)value)->word = (uint32_t)word;
		return true;
	}
	case IS_NUMBER:
	case IS_SIZE:
		return read_number(r, draft, text, &((Number *)value)->value);
	case IS_BY_ZONE:
		return read_number(r, draft, text, &number) && put_by_zone(r, value, number);
	case IS_YES:
		((Yes *)value)->yes = strcasecmp(text, "yes") == 0;
		return ((Yes *)value)->yes || strcasecmp(text, "no") == 0;
	case IS_DATE:
	case IS_TEXTS:
	case IS_ONE:
	case IS_LIST:
		break;
	}
	return false;
}

static void *row_asked_for(const Resolving *r, const Draft *draft, const Text *asked)
{
	void *row = arena_take(r->arena, 1, record_of(draft->kind)->size);
	Given *given = given_at(draft->field, row);
	*given = asked->given;
	given->said = put_value(r, draft, asked->text, given) ? SAID_VALUE : SAID_UNREADABLE;
	return row;
}

/* ---- requirements ---- */

/* One side of one requirement on its way through the parts of its kind. */
typedef struct {
	Resolving *r;
	const Case *requirement;
	Topic topic;
	const Text *asked;
	MayGo may_go;
	const void *row; /* the value asked for, as read for `use` */
	const char *use;
} Asking;

/* The row is kept from part to part; only a gauge may be another one. */
static const void *row_for(Asking *asking, const Draft *draft)
{
	if (asking->row != NULL && draft->field->kind != IS_NUMBER && draft->field->kind != IS_BY_ZONE)
		return asking->row;
	const char *use = gauge_use(draft->part);
	if (asking->row == NULL || strcmp(use, asking->use) != 0)
		asking->row = row_asked_for(asking->r, draft, asking->asked);
	asking->use = use;
	return asking->row;
}

static void compare_known(Asking *asking, Draft *draft)
{
	draft->field = asking->topic.field;
	draft->may = substitution_of(asking->r, draft->kind, asking->topic.field);
	draft->there_row = row_for(asking, draft);
	Attribute attribute = attribute_of(asking->r, draft);
	draft->step = step_between(&attribute, draft->here_row, draft->there_row);
	draft->may = NULL; /* the paragraph's own direction holds */
}

static Draft draft_for(Asking *asking, const Case *part)
{
	Draft draft = { .with = WITH_SPECIFICATION, .kind = part->kind, .may_go = asking->may_go, .step = STEP_UNKNOWN };
	draft.there = asking->asked->text;
	draft.part = part;
	draft.requirement = asking->requirement;
	draft.here_row = part->row;
	draft.paper = &((const Requirement *)asking->requirement->row)->paragraph;
	if (asking->topic.field != NULL) {
		compare_known(asking, &draft);
	} else {
		draft.attribute = asking->topic.attribute;
		draft.field = &record_of(part->kind)->field[0];
		draft.there_row = arena_take(asking->r->arena, 1, record_of(part->kind)->size);
	}
	return draft;
}

static void compare_part(Asking *asking, const Case *part)
{
	Draft draft = draft_for(asking, part);
	compare_add(asking->r, &draft);
}

/* ---- layers ---- */

/* Whether a paragraph says which layer there is to be, and not how a layer is to be. */
static bool names_layer(const Asking *asking)
{
	const Field *field = asking->topic.field;
	return field != NULL && (strcmp(field->key, "layer") == 0 || strcmp(field->key, "item") == 0);
}

/* A list that waits is compared so, and waits. */
static void compare_left_out(Asking *asking, const Case *area)
{
	static const RoofArea nothing;
	const Field *list = asking->r->held_in[KIND_layer];
	const Given *given = given_in(list, area->row);
	bool is_stated = given->said == SAID_VALUE || given->said == SAID_NONE || given->said == SAID_ASSUMED;
	Draft draft = { .with = WITH_SPECIFICATION, .kind = KIND_layer, .may_go = MAY_SAME, .field = list };
	draft.step = is_stated ? STEP_OTHER : STEP_UNKNOWN;
	draft.attribute = asking->topic.attribute;
	draft.part = area;
	draft.requirement = asking->requirement;
	draft.paper = &((const Requirement *)asking->requirement->row)->paragraph;
	draft.here_row = area->row;
	draft.there_row = &nothing;
	draft.here = !is_stated ? NULL : given->said == SAID_NONE ? "none" : "another layer";
	draft.there = asking->asked->text;
	compare_add(asking->r, &draft);
}

/* One layer of those in an area is the one asked for; where there is none, it is left out. Whether other kinds of part must be
 * there is said by required.csv: nobody has to have rivets. */
static void compare_layers(Asking *asking)
{
	const Cases *all = asking->r->all;
	uint32_t at = 0;
	for (uint32_t i = 0; i < all->of[KIND_roof_area].count; i++) {
		const Case *area = all->of[KIND_roof_area].at[i];
		bool is_met = asking->may_go == MAY_DOWN;
		for (; at < all->of[KIND_layer].count && all->of[KIND_layer].at[at]->up == area; at++) {
			Draft draft = draft_for(asking, all->of[KIND_layer].at[at]);
			if (names_layer(asking) && draft.step != STEP_SAME && draft.step != STEP_UNKNOWN)
				continue;
			compare_add(asking->r, &draft);
			is_met = true;
		}
		if (!is_met)
			compare_left_out(asking, area);
	}
}

static void compare_asked(Asking asking, const Text *asked, MayGo may_go)
{
	RecordKind kind = asking.topic.kind;
	const Cases *all = asking.r->all;
	asking.asked = asked;
	asking.may_go = may_go;
	if (kind == KIND_layer && is_value(&asked->given))
		compare_layers(&asking);
	for (uint32_t i = 0; kind != KIND_layer && is_value(&asked->given) && i < all->of[kind].count && !asking.r->full; i++)
		compare_part(&asking, all->of[kind].at[i]);
}

/* Where the requirements were not stated, a comparison of each kind of part waits for them. */
static void wait_for_requirements(Resolving *r, const Case *area)
{
	const Specification *specification = &r->all->submittal->specification;
	for (int kind = 0; kind < RECORD_KINDS; kind++) {
		if (record_of((RecordKind)kind)->sort != RECORD_PART)
			continue;
		Draft draft = { .with = WITH_SPECIFICATION, .kind = (RecordKind)kind, .may_go = MAY_SAME, .step = STEP_UNKNOWN };
		draft.attribute = "item";
		draft.part = area;
		draft.here_row = draft.there_row = specification;
		draft.field = field_find(&Specification_record, "requirements", strlen("requirements"));
		compare_add(r, &draft);
	}
}

void compare_specification(Resolving *r)
{
	const Cases *all = r->all;
	const Given *stated = &all->submittal->specification.requirements.of.given;
	bool is_waiting = stated->said != SAID_VALUE && stated->said != SAID_NONE;
	for (uint32_t i = 0; is_waiting && i < all->of[KIND_roof_area].count; i++)
		wait_for_requirements(r, all->of[KIND_roof_area].at[i]);
	for (uint32_t i = 0; i < all->of[KIND_requirement].count; i++) {
		const Requirement *requirement = all->of[KIND_requirement].at[i]->row;
		Asking asking = { .r = r, .requirement = all->of[KIND_requirement].at[i], .topic = topic_of(requirement) };
		if (asking.topic.kind == RECORD_KINDS)
			continue;
		compare_asked(asking, &requirement->at_least, MAY_UP);
		compare_asked(asking, &requirement->at_most, MAY_DOWN);
		compare_asked(asking, &requirement->exactly, MAY_SAME);
	}
}
