/* SPDX-License-Identifier: MIT
 * A submittal in SI gives the same facts and the same items: every measured number of every example is written again in SI units,
 * to the last digit, and the package read and judged again.
 */
#include "../examples.h"

#include "facts.h"

static World world;

/* The unit in which somebody with a metric tape would write it; the unit itself where there is none. */
static Unit metric(Unit unit)
{
	static const Unit metrics[UNIT_COUNT] = {
		[UNIT_in] = UNIT_mm, [UNIT_ft] = UNIT_m, [UNIT_mile] = UNIT_km, [UNIT_sq_in] = UNIT_sq_m, [UNIT_sq_ft] = UNIT_sq_m,
		[UNIT_square] = UNIT_sq_m, [UNIT_psf] = UNIT_kPa, [UNIT_psi] = UNIT_MPa, [UNIT_ksi] = UNIT_MPa, [UNIT_lb] = UNIT_N,
		[UNIT_kip] = UNIT_kN, [UNIT_lb_per_in] = UNIT_N_per_mm, [UNIT_mph] = UNIT_m_per_s, [UNIT_F] = UNIT_C,
		[UNIT_F_step] = UNIT_C_step,
	};
	return metrics[unit] != 0 ? metrics[unit] : unit;
}

/* Rewrites the numbers of one package. */
typedef struct {
	Arena *arena;
	Node *root;
	int written;
} Rewriting;

static void rewrite_number(Rewriting *r, const Field *field, const Given *given, double value, const char *path)
{
	Unit unit = metric(field->unit);
	if (given->said != SAID_VALUE || unit == field->unit)
		return;
	double converted = unit_convert(value, field->unit, unit);
	if (!node_set(r->arena, r->root, path, arena_printf(r->arena, "%.17g %s", converted, unit_row(unit)->printed)))
		fail_msg("%s cannot be set", path);
	r->written++;
}

static void rewrite_zones(Rewriting *r, const Field *field, const ByZone *zones, const char *path)
{
	for (uint32_t i = 0; i < zones->count; i++) {
		const ZoneValue *value = &zones->at[i];
		const char *of_zone = value->zone[0] != '\0' ? arena_printf(r->arena, "%s.%s", path, value->zone) : path;
		rewrite_number(r, field, &value->given, value->value, of_zone);
	}
}

static void rewrite_record(Rewriting *r, const Record *record, const void *row, const char *path)
{
	for (uint32_t i = 0; i < record->count; i++) {
		const Field *field = &record->field[i];
		const Given *given = given_in(field, row);
		const char *here = path[0] == '\0' ? field->key : arena_printf(r->arena, "%s.%s", path, field->key);
		if (given->said != SAID_VALUE)
			continue;
		if (field->kind == IS_NUMBER)
			rewrite_number(r, field, given, ((const Number *)(const void *)given)->value, here);
		if (field->kind == IS_BY_ZONE)
			rewrite_zones(r, field, (const ByZone *)(const void *)given, here);
		if (field->kind == IS_ONE)
			rewrite_record(r, field->record, given, here);
		const List *list = (const List *)(const void *)given;
		for (uint32_t n = 0; field->kind == IS_LIST && n < list->count; n++)
			rewrite_record(r, field->record, (const char *)list->row + n * field->record->size,
				       arena_printf(r->arena, "%s.%u", here, n));
	}
}

/* ---- two verdicts side by side ---- */

static const Fact *same_fact(Case *us, Case *si, FactId id)
{
	const Fact *one = fact_of(us, id), *other = fact_of(si, id);
	double scale = fmax(fabs(one->value), 1e-12);
	if (one->state == other->state && one->known_by == other->known_by && one->borrowed == other->borrowed &&
	    (one->state != FACT_KNOWN || fabs(one->value - other->value) <= 1e-9 * scale))
		return one;
	fail_msg("%s of %s: state %d, %.17g; in SI state %d, %.17g", fact_spec(id)->name, us->name, one->state, one->value, other->state,
		 other->value);
	return NULL;
}

static int same_facts(const Cases *us, const Cases *si)
{
	int known = 0;
	for (int kind = 0; kind < RECORD_KINDS; kind++) {
		assert_int_equal(us->of[kind].count, si->of[kind].count);
		for (uint32_t i = 0; i < us->of[kind].count; i++)
			for (FactId id = 0; id < FACT_COUNT; id++)
				if (has_fact(us->of[kind].at[i], id))
					known += same_fact(us->of[kind].at[i], si->of[kind].at[i], id)->state == FACT_KNOWN;
	}
	return known;
}

static void same_items(const Verdict *us, const Verdict *si, const char *name)
{
	if (us->items != si->items) {
		print_items(us);
		print_items(si);
		fail_msg("%s has %u items, in SI %u", name, us->items, si->items);
	}
	for (uint32_t i = 0; i < us->items; i++) {
		assert_string_equal(us->item[i].code, si->item[i].code);
		assert_int_equal(us->item[i].action, si->item[i].action);
		assert_int_equal(us->item[i].spots, si->item[i].spots);
	}
}

static void same_in_si(const char *name)
{
	Arena *arena = arena_make();
	const Source *source;
	Node *root = example_nodes(arena, name, &source);
	Complaints complaints = { .arena = arena };
	const Submittal *submittal = read_submittal(arena, root, source, world.reference, &complaints);
	assert_int_equal(complaints.count, 0);
	Rewriting r = { .arena = arena, .root = example_nodes(arena, name, &source) };
	rewrite_record(&r, &Submittal_record, submittal, "");
	Verdict *us = review_nodes(&world, arena, root, source), *si = review_nodes(&world, arena, r.root, source);
	same_items(us, si, name);
	int known = same_facts(us->cases, si->cases);
	print_message("%s: %d numbers in SI, %d facts known\n", name, r.written, known);
	assert_true(r.written >= 5 && known >= 50);
	arena_free(arena);
}

static void every_example_gives_the_same_in_si(void **state)
{
	(void)state;
	Examples all;
	examples_open(&all);
	for (const char *name = examples_next(&all); name != NULL; name = examples_next(&all))
		same_in_si(name);
}

static int start(void **state)
{
	(void)state;
	world = world_make();
	return 0;
}

static int stop(void **state)
{
	(void)state;
	arena_free(world.run);
	return 0;
}

int main(void)
{
	const struct CMUnitTest tests[] = { cmocka_unit_test(every_example_gives_the_same_in_si) };
	return cmocka_run_group_tests_name("si_facts", tests, start, stop) != 0;
}
