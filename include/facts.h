/* SPDX-License-Identifier: MIT
 * Fact: a computed quantity of one case, with its state beside its value, never NaN. Only compute/ makes them, on demand.
 */
#ifndef FACTS_H
#define FACTS_H

#include "case.h"

typedef uint16_t FactId;
enum {
#define FACTS(record) FACTS_BEGIN_##record, FACTS_BEFORE_##record = FACTS_BEGIN_##record - 1,
#define FACT(record, name, unit, ...) FACT_##record##_##name,
#define FACTS_END(record) FACTS_STOP_##record, FACTS_AFTER_##record = FACTS_STOP_##record - 1,
#include "facts.def"
	FACT_COUNT
};

/* How well the figures behind a value are known; a fact carries the weakest of what it used. */
typedef enum { KNOWN_READ, KNOWN_SECOND_HAND, KNOWN_MEMORY, KNOWN_PRACTICE } KnownBy;

/* In order: the state of a fact is the greatest of its inputs'. */
typedef enum { FACT_UNTRIED, FACT_COMPUTING, FACT_KNOWN, FACT_WAITING, FACT_REFUSED, FACT_NOT_APPLICABLE } FactState;

typedef struct Fact {
	double value; /* in the unit of its row; a yes is 1 */
	uint8_t state, known_by;
	bool borrowed; /* rests on a test whose exact attributes differ: shown, never judged as met */
	uint32_t first_use; /* index + 1 into Cases.use; 0: none */
	const char *formula; /* template; NULL: that of its row */
	const char *reason; /* why refused or not applicable */
	const char *note; /* what gave the value: the part with the least life, the row of a table */
} Fact;

/* USED_THROUGH: a field that a fact it used waits for, up to 64 of them. */
typedef enum { USED_FACT, USED_FIELD, USED_CONSTANT, USED_THROUGH } UseKind;
typedef struct Use {
	uint8_t kind, known_by;
	uint32_t next; /* index + 1 of the next use of the same fact */
	const Case *at;
	union {
		FactId fact;
		const Field *field;
		const char *constant; /* "table row" */
	} what;
	const Given *given; /* of a field: what was asked for; waited for unless it is a value */
	const char *source; /* of a constant: ids of the table of sources, or NULL: the maker's own paper */
	double value;
} Use;

typedef struct {
	const char *record, *name, *title, *formula, *source;
	Unit unit;
	double (*compute)(Case *);
} FactSpec;

const FactSpec *fact_spec(FactId id);

/* The fact of a name for cases of `kind` (its own facts, then those of every part), or -1. */
int fact_find(RecordKind kind, const char *name, size_t length);

/* Whether a case has this fact: its record's own, or that of every part. */
bool has_fact(const Case *at, FactId id);

/* The fact of this case, computed at the first call. `at` must be a case of the fact's record. */
const Fact *fact_of(Case *at, FactId id);

/* Walks the fields that a waiting fact waits for, also through the facts it used: the first use that is not a value; NULL at the
 * end. A borrowed fact names the fields for which its comparisons wait, if any. One field may come up more than once. */
const Use *fact_waits(const Cases *all, const Fact *fact, const Use *after);

/* What an operand gives for a case. Only OPERAND_HAS carries a value. */
typedef enum { OPERAND_HAS, OPERAND_WAITS, OPERAND_REFUSED, OPERAND_NOT_APPLICABLE } OperandState;
typedef struct {
	OperandState state;
	ValueKind gives;
	double number; /* of a number, in the operand's unit times its factor; of a yes; of a day */
	const char *text; /* of a word or text */
	const Given *given; /* of a field, whether it has a value or waits */
	const Field *field; /* the field given or waited for */
	const Case *at; /* where that field stands */
	const Fact *fact;
	const char *reason; /* refused, not applicable */
} OperandValue;
OperandValue operand_value(const Case *at, const Operand *operand);

/* One test, three-valued. A test that would be met on a borrowed fact is TEST_BORROWED. */
typedef enum { TEST_BROKEN, TEST_MET, TEST_NOT_APPLICABLE, TEST_WAITS, TEST_REFUSED, TEST_BORROWED } TestOutcome;
typedef struct {
	TestOutcome outcome;
	OperandValue left, right;
} Tested;
Tested test_case(const Case *at, const Test *test);

/* All of several conditions: one broken is TEST_BROKEN even where another waits; else one not applicable is TEST_NOT_APPLICABLE;
 * else one that waits, is refused or borrowed is TEST_WAITS and `*blocking` is that test; else TEST_MET. */
TestOutcome test_all(const Case *at, const Test *test, uint32_t count, Tested *blocking);

#define FACT(record, name, unit, ...) double record##_##name##_##unit(Case *at);
#include "facts.def"

#endif
