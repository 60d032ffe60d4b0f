/* SPDX-License-Identifier: MIT
 * Facts on demand: computed at the first question, remembered, with what they used.
 *
 * Slots are counted by kind of record: a case holds its own facts, then those of every part if it is one. The uses of one fact
 * are linked, since a fact it asks for writes its own in between; they end up in the order they were asked for.
 */
#include "facts.h"

#include "fetch.h"

#include <assert.h>
#include <math.h>
#include <string.h>

static const FactSpec specs[] = {
#define FACT(record, name, unit, title, template, source) \
	{ #record, #name, title, template, source, UNIT_##unit, record##_##name##_##unit },
#include "facts.def"
};

/* `part` is no kind of record; its facts stand behind the last one. */
enum { KIND_part = RECORD_KINDS };

typedef struct {
	FactId begin, stop;
} Range;

static const Range ranges[RECORD_KINDS + 1] = {
#define FACTS(record) [KIND_##record] = { FACTS_BEGIN_##record, FACTS_STOP_##record },
#include "facts.def"
};

static bool is_in(Range range, FactId id)
{
	return range.begin <= id && id < range.stop;
}

static uint32_t length_of(Range range)
{
	return (uint32_t)(range.stop - range.begin);
}

static Range part_range(RecordKind kind)
{
	bool is_part = kind == RECORD_KINDS || record_of(kind)->sort == RECORD_PART;
	return is_part ? ranges[KIND_part] : (Range){0, 0};
}

const FactSpec *fact_spec(FactId id)
{
	return &specs[id];
}

static int find_in(Range range, const char *name, size_t length)
{
	for (FactId id = range.begin; id < range.stop; id++)
		if (strncmp(specs[id].name, name, length) == 0 && specs[id].name[length] == '\0')
			return id;
	return -1;
}

int fact_find(RecordKind kind, const char *name, size_t length)
{
	int own = kind == RECORD_KINDS ? -1 : find_in(ranges[kind], name, length);
	return own >= 0 ? own : find_in(part_range(kind), name, length);
}

bool has_fact(const Case *at, FactId id)
{
	return is_in(ranges[at->kind], id) || is_in(part_range(at->kind), id);
}

Case *fact_case_or_null(Case *at, FactId id)
{
	while (at != NULL && !has_fact(at, id))
		at = at->up;
	return at;
}

Case *fact_case(Case *at, FactId id)
{
	Case *found = fact_case_or_null(at, id);
	assert(found != NULL);
	return found;
}

static Fact *slot_of(Case *at, FactId id)
{
	Range own = ranges[at->kind], part = part_range(at->kind);
	if (at->fact == NULL)
		at->fact = TAKE(at->all->arena, Fact, length_of(own) + length_of(part));
	if (is_in(own, id))
		return &at->fact[id - own.begin];
	assert(is_in(part, id));
	return &at->fact[length_of(own) + (uint32_t)(id - part.begin)];
}

/* Uses are put in front as they come. */
static void turn_uses(Cases *all, Fact *fact)
{
	uint32_t turned = 0;
	for (uint32_t i = fact->first_use; i != 0;) {
		uint32_t next = all->use[i - 1].next;
		all->use[i - 1].next = turned;
		turned = i;
		i = next;
	}
	fact->first_use = turned;
}

static void compute(Case *at, Fact *fact, FactId id)
{
	Fact *outer = at->now;
	at->now = fact;
	fact->state = FACT_COMPUTING;
	double value = specs[id].compute(at);
	at->now = outer;
	if (fact->state == FACT_COMPUTING) {
		assert(isfinite(value));
		fact->state = FACT_KNOWN;
		fact->value = value;
	}
	turn_uses(at->all, fact);
}

const Fact *fact_of(Case *at, FactId id)
{
	Fact *fact = slot_of(at, id);
	assert(fact->state != FACT_COMPUTING); /* a circle in facts.def: a fault of ours */
	if (fact->state == FACT_UNTRIED)
		compute(at, fact, id);
	return fact;
}

static bool is_waited_for(const Use *use)
{
	if (use->kind != USED_FIELD && use->kind != USED_THROUGH)
		return false;
	bool is_list = use->what.field->kind == IS_LIST;
	return !is_value(use->given) && use->given->said != SAID_NOT_APPLICABLE && !(is_list && use->given->said == SAID_NONE);
}

const Use *fact_waits(const Cases *all, const Fact *fact, const Use *after)
{
	uint32_t next = after != NULL ? after->next : fact->first_use;
	while (next != 0 && !is_waited_for(&all->use[next - 1]))
		next = all->use[next - 1].next;
	return next != 0 ? &all->use[next - 1] : NULL;
}
