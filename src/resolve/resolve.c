/* SPDX-License-Identifier: MIT
 * Resolve: a submittal and the criteria to the cases that rules speak of, in the order in which each step needs the one before.
 */
#include "pipeline.h"
#include "resolving.h"

/* Papers are judged at the day the reviewer received them, in a self-check at the day the submittal bears. */
static int32_t day_of(const Inputs *inputs)
{
	if (inputs->as_of != INT32_MIN)
		return inputs->as_of;
	if (inputs->review != NULL && is_value(&inputs->review->received.given))
		return inputs->review->received.day;
	return is_value(&inputs->submittal->date.given) ? inputs->submittal->date.day : INT32_MIN;
}

static Cases *cases_of(Arena *arena, const Inputs *inputs)
{
	Cases *all = TAKE(arena, Cases, 1);
	*all = (Cases){
		.submittal = inputs->submittal,
		.review = inputs->review,
		.criteria = inputs->criteria,
		.reference = inputs->reference,
		.registers = inputs->registers,
		.lacks_earlier = inputs->lacks_earlier,
		.arena = arena,
		.as_of = day_of(inputs),
	};
	return all;
}

static void find_holders(Resolving *r)
{
	for (uint32_t i = 0; i < RoofArea_record.count; i++) {
		const Field *field = &RoofArea_record.field[i];
		if (field->record != NULL && field->record->sort == RECORD_PART)
			r->held_in[field->record->kind] = field;
	}
}

static Cases *resolve_one(Arena *arena, const Inputs *inputs)
{
	Resolving r = { .all = cases_of(arena, inputs), .arena = arena, .nameless = inputs->nameless };
	if (!r.nameless) {
		r.names = hash_make(arena, 64);
		r.twins = hash_make(arena, 64);
	}
	r.known = hash_make(arena, 8);
	find_holders(&r);
	make_cases(&r, inputs->submittal);
	bind_tests(&r);
	make_zones(&r);
	make_contacts(&r);
	make_roles(&r);
	make_papers(&r);
	compare_listings(&r);
	compare_catalogue(&r);
	compare_specification(&r);
	return r.all;
}

/* The submittal of the round before is judged by nobody: its records are made to be found again. */
Cases *resolve(Arena *arena, const Inputs *inputs)
{
	Cases *all = resolve_one(arena, inputs);
	if (inputs->earlier == NULL)
		return all;
	Inputs before = { .submittal = inputs->before, .criteria = inputs->criteria, .reference = inputs->reference };
	before.as_of = all->as_of;
	bool is_held = inputs->before != NULL && inputs->earlier->stage != STAGE_bid;
	find_history(all, inputs->earlier, is_held ? resolve_one(arena, &before) : NULL);
	return all;
}
