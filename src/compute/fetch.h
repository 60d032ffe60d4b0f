/* SPDX-License-Identifier: MIT
 * What a fact's function asks for its inputs with. Each question is recorded as a use, and its answer's state raises the state of
 * the fact being computed: nothing else in this folder reads inputs. All inputs are fetched first; `ready` says whether all of
 * them are there. Until then the answers are placeholders, and no plain function is called with one.
 */
#ifndef FETCH_H
#define FETCH_H

#include "facts.h"

/* A value looked for: where, which field, how it was said. */
typedef struct {
	const Case *at;
	const Field *field;
	const Given *given;
} Asked;

/* The value at an offset of the record of a case. */
Asked ask(const Case *where, uint32_t offset);

/* The nearest case of a kind outwards; `kind` RECORD_KINDS is the case itself. It must be there. */
const Case *outward(const Case *at, RecordKind kind);

/* The same facts by names that end in their unit, so that whoever asks for one has to spell the unit. */
enum {
#define FACT(record, name, unit, ...) OF_##record##_##name##_##unit = FACT_##record##_##name,
#include "facts.def"
};

/* GIVEN(zone, roof_area, RoofArea, panel.width_in): a value of the record outwards; GIVEN_AT: of a case at hand, whose record is
 * or begins like T. Numbers come as double, words and texts as text, days, yes and texts as they are kept. */
#define FETCH(T, member) _Generic(((T *)0)->member, Number: fetch_number, Text: fetch_text, Word: fetch_word, Date: fetch_day, \
	Yes: fetch_yes, Texts: fetch_texts, ByZone: fetch_zones)
#define GIVEN_AT(fact, where, T, member) FETCH(T, member)(fact, ask(where, offsetof(T, member)))
#define GIVEN(fact, kind, T, member) GIVEN_AT(fact, outward(fact, KIND_##kind), T, member)

/* The same for what may be left out: `otherwise` if nothing was said or it does not apply. `unknown` still waits. */
#define GIVEN_OR_AT(fact, where, T, member, otherwise) \
	_Generic(((T *)0)->member, Number: fetch_number_or, Text: fetch_text_or, Date: fetch_day_or)( \
		fact, ask(where, offsetof(T, member)), otherwise)
#define GIVEN_OR(fact, kind, T, member, otherwise) GIVEN_OR_AT(fact, outward(fact, KIND_##kind), T, member, otherwise)

/* OF(zone, zone_class_spacing_in): another fact of this case or outwards; OF_AT: of a case at hand. */
#define OF_AT(fact, where, name) fetch_fact(fact, where, OF_##name)
#define OF(fact, name) fetch_fact(fact, fact_case(fact, OF_##name), OF_##name)

double fetch_number(Case *fact, Asked asked);
const char *fetch_text(Case *fact, Asked asked);
const char *fetch_word(Case *fact, Asked asked);
int32_t fetch_day(Case *fact, Asked asked);
bool fetch_yes(Case *fact, Asked asked);
const Texts *fetch_texts(Case *fact, Asked asked);
const ByZone *fetch_zones(Case *fact, Asked asked);
double fetch_number_or(Case *fact, Asked asked, double otherwise);
const char *fetch_text_or(Case *fact, Asked asked, const char *otherwise);
int32_t fetch_day_or(Case *fact, Asked asked, int32_t otherwise);

/* Whether a value is there; if not, the fact waits for it or is not applicable. */
bool fetch_said(Case *fact, Asked asked);

/* Records what a fact went by that is no value it waits for: `none`, what was left out, the submitted side of a comparison. */
void fetch_shown(Case *fact, Asked asked);

/* Whether nothing at all was said, which is then what the fact went by. */
bool fetch_silent(Case *fact, Asked asked);

/* The list at an offset; NULL (and waiting) if it was not stated. `none` is a list of no records. */
const List *fetch_list(Case *fact, const Case *where, uint32_t offset);

/* The day papers are judged at. */
int32_t fetch_as_of(Case *fact);

double fetch_fact(Case *fact, Case *where, FactId id);

/* The case outwards that a fact belongs to; it must be there, or may be NULL. */
Case *fact_case(Case *at, FactId id);
Case *fact_case_or_null(Case *at, FactId id);

/* The same without raising the state: for facts over many records, which skip what does not apply. */
const Fact *fetch_use(Case *fact, Case *where, FactId id);
void fetch_raise(Case *fact, const Fact *used);

/* A figure of a table: "lives.csv clip-a-float", its value, the id of its source. Returns the value. */
double fetch_constant(Case *fact, const char *row, double value, const char *source);
#define CONSTANT(fact, table, row, value, source) fetch_constant(fact, row_words(fact, table " ", row), value, source)
const char *row_words(const Case *fact, const char *table, const char *row);

/* Records what a test asked for, and waits for what it waits for. Returns its outcome. */
TestOutcome fetch_test(Case *fact, const Case *where, const Test *test);

/* All of several tests: 1 or 0; if it cannot be told, the fact waits for all that is missing. */
bool fetch_all(Case *fact, const Case *where, const Test *test, uint32_t count);

/* The value rests on a test that may differ; records what its comparison waits for. */
void fetch_match(Case *fact, Case *test);

/* Ends the fact as refused or not applicable, unless it already is; both return 0. */
double REFUSE(Case *fact, const char *reason);
double SKIP(Case *fact, const char *reason);

void note(Case *fact, const char *text);
bool ready(const Case *fact);

#endif
