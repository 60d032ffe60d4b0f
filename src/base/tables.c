/* SPDX-License-Identifier: MIT
 * The rows of form.def, words.def, actions.def, messages.def and units.def as data, for every stage.
 *
 * A need expands to four initialisers (need, stage, assumed value, may it not apply), so the macros below pass their arguments on
 * through ROW, which expands them before they are counted.
 */
#include "action.h"
#include "complaint.h"
#include "form.h"

#include <string.h>
#include <strings.h>

#define WORDS(name, words) static const char words_##name[] = words;
#include "words.def"

#define REQUIRED(stage) NEED_REQUIRED, STAGE_##stage, NULL, false
#define REQUIRED_OR_NA(stage) NEED_REQUIRED, STAGE_##stage, NULL, true
#define STATED(stage) NEED_STATED, STAGE_##stage, NULL, false
#define ASSUMED(value) NEED_ASSUMED, STAGE_bid, value, false
#define OPTIONAL NEED_OPTIONAL, STAGE_close_out, NULL, false
#define FILLED NEED_MADE, STAGE_bid, NULL, false

#define ROW(...) { __VA_ARGS__ },
#define RECORD(R, name) static const Field R##_field[] = {
#define NAME(R, k, need, t, x) ROW(#k, NULL, IS_NAME, UNIT_one, offsetof(R, k), need, 0, 0, EITHER, NULL, NULL, t, x)
#define TEXT_AS(R, m, k, need, due, assumed, na, s, t, x) ROW(k, NULL, IS_TEXT, UNIT_one, offsetof(R, m), need, due, assumed, na, 0, 0, s, NULL, NULL, t, x)
#define TEXTS(R, k, need, t, x) ROW(#k, NULL, IS_TEXTS, UNIT_one, offsetof(R, k), need, 0, 0, EITHER, NULL, NULL, t, x)
#define WORD_AS(R, m, k, w, need, due, assumed, na, s, t, x) ROW(k, NULL, IS_WORD, UNIT_one, offsetof(R, m), need, due, assumed, na, 0, 0, s, NULL, words_##w, t, x)
#define NUMBER(R, k, u, need, lo, hi, s, t, x) ROW(#k, NULL, IS_NUMBER, UNIT_##u, offsetof(R, k##_##u), need, lo, hi, s, NULL, NULL, t, x)
#define SIZE(R, k, need, s, t, x) ROW(#k, NULL, IS_SIZE, UNIT_in, offsetof(R, k##_in), need, 0.01, 2, s, NULL, NULL, t, x)
#define DATE(R, k, need, t, x) ROW(#k, NULL, IS_DATE, UNIT_day, offsetof(R, k), need, 0, 0, EITHER, NULL, NULL, t, x)
#define YES(R, k, need, s, t, x) ROW(#k, NULL, IS_YES, UNIT_yes, offsetof(R, k), need, 0, 0, s, NULL, NULL, t, x)
#define MARK(R, k, need, t, x) ROW(#k, NULL, IS_MARK, UNIT_one, offsetof(R, k), need, 0, 0, EITHER, NULL, NULL, t, x)
#define BY_ZONE(R, k, u, need, lo, hi, s, t, x) ROW(#k, NULL, IS_BY_ZONE, UNIT_##u, offsetof(R, k##_##u), need, lo, hi, s, NULL, NULL, t, x)
#define ONE(R, k, T, need, t) ROW(#k, NULL, IS_ONE, UNIT_one, offsetof(R, k), need, 0, 0, EITHER, &T##_record, NULL, t, NULL)
#define LIST(R, k, T, one, need, t) ROW(#k, #one, IS_LIST, UNIT_one, offsetof(R, k), need, 0, 0, EITHER, &T##_record, NULL, t, NULL)
#define END(R) };
#include "form.def"

/* A record's bit set of keys seen is one 64-bit word. */
#define RECORD(R, name) _Static_assert(sizeof R##_field / sizeof *R##_field <= 64, "a record holds at most 64 fields");
#include "form.def"

#define PART(R, n) _Static_assert(offsetof(R, supplied_by) == offsetof(Panel, supplied_by) && offsetof(R, see) == offsetof(Panel, see), "parts begin alike");
#include "form.def"

#define RECORD_ROW(R, n, sort) const Record R##_record = { #n, sort, KIND_##n, R##_field, sizeof R##_field / sizeof *R##_field, sizeof(R) };
#define RECORD(R, n) RECORD_ROW(R, n, RECORD_PLAIN)
#define PART(R, n) RECORD_ROW(R, n, RECORD_PART)
#define MADE(R, n) RECORD_ROW(R, n, RECORD_MADE)
#include "form.def"

const Record *record_of(RecordKind kind)
{
	static const Record *const record[] = {
#define RECORD(R, n) &R##_record,
#include "form.def"
	};
	return record[kind];
}

bool is_part(RecordKind kind)
{
	return kind == RECORD_KINDS || record_of(kind)->sort == RECORD_PART;
}

const Field *field_find(const Record *record, const char *key, size_t length)
{
	for (uint32_t i = 0; i < record->count; i++)
		if (strncmp(record->field[i].key, key, length) == 0 && record->field[i].key[length] == '\0')
			return &record->field[i];
	return NULL;
}

/* Words are compared in either case; blanks count one for one. */
static bool is_spelt(const char *word, size_t word_length, const char *text, size_t length)
{
	return word_length == length && strncasecmp(word, text, length) == 0;
}

int word_find(const char *words, const char *text, size_t length)
{
	int number = 0;
	for (const char *w = words; *w != '\0';) {
		size_t all = strcspn(w, "|");
		const char *equals = memchr(w, '=', all);
		size_t own = equals != NULL ? (size_t)(equals - w) : all;
		if (is_spelt(w, own, text, length))
			return equals != NULL ? word_find(words, equals + 1, all - own - 1) : number;
		number += equals == NULL;
		w += all + (w[all] == '|');
	}
	return -1;
}

const char *word_text(const char *words, int number, size_t *length)
{
	for (const char *w = words; *w != '\0';) {
		size_t all = strcspn(w, "|");
		if (memchr(w, '=', all) == NULL && number-- == 0) {
			*length = all;
			return w;
		}
		w += all + (w[all] == '|');
	}
	return NULL;
}

bool is_word(const Word *word, const char *text)
{
	return is_value(&word->given) && strcmp(word->text, text) == 0;
}

/* ---- actions, authorities, relations ---- */

static const struct {
	const char *words, *leads_to;
} actions[] = {
#define ACTION(name, words, leads_to) { words, leads_to },
#include "actions.def"
};

const char *action_words(Action action)
{
	return actions[action].words;
}

const char *action_leads_to(Action action)
{
	return actions[action].leads_to;
}

static const char *const authorities[] = { "program", "listing", "engineer", "specification", "code", "computed" };
static const char *const relations[] = { "is", "is not", "is at least", "is at most", "is more than", "is less than", "is before",
	"is after", "is in", "is not in", "includes", "does not include", "is given", "is not given" };

int action_find(const char *words)
{
	for (int i = 0; i < ACTION_COUNT; i++)
		if (strcmp(actions[i].words, words) == 0)
			return i;
	return -1;
}

const char *authority_words(Authority authority)
{
	return authorities[authority];
}

int authority_find(const char *words)
{
	for (size_t i = 0; i < sizeof authorities / sizeof *authorities; i++)
		if (strcmp(authorities[i], words) == 0)
			return (int)i;
	return -1;
}

const char *relation_words(Relation relation)
{
	return relations[relation];
}

int relation_find(const char *words, size_t length)
{
	for (size_t i = 0; i < sizeof relations / sizeof *relations; i++)
		if (strlen(relations[i]) == length && strncmp(relations[i], words, length) == 0)
			return (int)i;
	return -1;
}

/* ---- units, messages ---- */

const UnitRow *unit_row(Unit unit)
{
	static const UnitRow row[] = {
#define UNIT(name, printed, spellings, dimension, factor, offset) { #name, printed, spellings, DIMENSION_##dimension, factor, offset },
#include "units.def"
	};
	return &row[unit];
}

const Message *message_of(MessageId id)
{
	static const Message row[] = {
#define MESSAGE(name, code, action, finding, remedy, why) { #name, code, ACTION_##action, finding, remedy, why },
#include "messages.def"
	};
	return &row[id];
}
