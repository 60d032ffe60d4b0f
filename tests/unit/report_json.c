/* SPDX-License-Identifier: MIT
 * JSON of a verdict: read back with a library, every key of the contract is there, reals come back bit for bit in short form.
 */
#include "sample_verdict.h"

#include "report.h"
#include "report/json_number.h"

static json_t *read_back(Arena *arena, const char *format, const char *text)
{
	const ReportFormat *f = report_format(format);
	Out *out = out_make(arena, f->escape);
	f->write(out, sample_verdict(arena, text), arena);
	json_error_t error;
	json_t *tree = json_loads(out_text(out, NULL), JSON_REJECT_DUPLICATES, &error);
	if (tree == NULL)
		fail_msg("%d: %s", error.line, error.text);
	return tree;
}

/* The keys of an object, in order, joined by blanks. */
static const char *keys_of(Arena *arena, json_t *object)
{
	const char *keys = "", *key;
	json_t *value;
	json_object_foreach(object, key, value)
		keys = arena_printf(arena, "%s%s%s", keys, *keys != '\0' ? " " : "", key);
	return keys;
}

static const char *text_at(json_t *object, const char *key)
{
	return json_string_value(json_object_get(object, key));
}

static void has_the_keys_of_the_contract(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	json_t *tree = read_back(arena, "json", "words");
	assert_string_equal(keys_of(arena, tree), "seamstamp schema mode submittal round stage criteria recommended_action order_line "
		"items not_judged assumed unverified files not_applicable order_condition parts previous received returned values seal");
	assert_string_equal(keys_of(arena, json_object_get(tree, "criteria")), "name edition sha256");
	json_t *item = json_array_get(json_object_get(tree, "items"), 0);
	assert_string_equal(keys_of(arena, item), "number state action code record name places finding submitted limit authority basis "
		"known_by remedy answer_by fields fingerprint cites reviewer bid_group note settled");
	assert_string_equal(keys_of(arena, json_array_get(json_object_get(item, "places"), 0)), "letter record name file line column "
		"end_column state fingerprint path field");
	assert_string_equal(keys_of(arena, json_object_get(item, "submitted")), "text value unit");
	assert_string_equal(keys_of(arena, json_object_get(item, "limit")), "text value unit");
	assert_string_equal(keys_of(arena, json_array_get(json_object_get(tree, "not_judged"), 0)), "code record name waits_for");
	assert_string_equal(keys_of(arena, json_array_get(json_object_get(tree, "files"), 0)), "path sha256");
	json_decref(tree);
	arena_free(arena);
}

static void says_what_the_verdict_says(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	json_t *tree = read_back(arena, "ndjson", "words");
	assert_int_equal(json_integer_value(json_object_get(tree, "schema")), 1);
	assert_string_equal(text_at(tree, "mode"), "self-check");
	assert_string_equal(text_at(tree, "stage"), "application");
	assert_true(json_is_null(json_object_get(tree, "recommended_action")));
	json_t *item = json_array_get(json_object_get(tree, "items"), 0), *part = json_array_get(json_object_get(tree, "parts"), 0);
	assert_string_equal(keys_of(arena, part), "record name item clearance cleared by");
	assert_string_equal(text_at(part, "clearance"), "not cleared (1.03)");
	assert_string_equal(text_at(part, "by"), "1.03");
	assert_true(json_is_false(json_object_get(part, "cleared")));
	assert_string_equal(text_at(item, "number"), "1.03");
	assert_string_equal(text_at(item, "action"), "REJECTED");
	assert_string_equal(text_at(item, "known_by"), "second-hand");
	assert_string_equal(text_at(item, "authority"), "listing");
	json_t *places = json_object_get(item, "places");
	assert_int_equal(json_array_size(places), 2);
	json_t *first = json_array_get(places, 0);
	assert_string_equal(text_at(first, "letter"), "a");
	assert_string_equal(text_at(json_array_get(places, 1), "letter"), "b");
	assert_int_equal(json_integer_value(json_object_get(first, "column")), 2);
	assert_int_equal(json_integer_value(json_object_get(first, "end_column")), 5);
	assert_string_equal(text_at(first, "fingerprint"), "0000000000000abc");
	json_t *project = json_object_get(json_object_get(tree, "values"), "project");
	assert_string_equal(text_at(project, "name"), "words");
	/* "words\nwords\n" */
	assert_string_equal(text_at(json_array_get(json_object_get(tree, "files"), 0), "sha256"),
		"38d48ea0f76dbc41dd2cc55e3fc0a15b2058bb57df74c2485f333260fb77b114");
	json_decref(tree);
	arena_free(arena);
}

static void odd_texts_come_back_as_they_were(void **state)
{
	(void)state;
	static const char *const odd[] = { "</script>\"\\", "\x1b[31m", "屋根 \xe2\x80\xae", "1.5e3", "-0.1", "\"1.25\"" };
	for (size_t i = 0; i < sizeof odd / sizeof *odd; i++) {
		Arena *arena = arena_make();
		json_t *tree = read_back(arena, "json", odd[i]);
		json_t *item = json_array_get(json_object_get(tree, "items"), 0);
		assert_string_equal(text_at(item, "finding"), odd[i]);
		assert_string_equal(text_at(item, "remedy"), odd[i]);
		json_decref(tree);
		arena_free(arena);
	}
}

static const char *printed(Arena *arena, double value)
{
	Out *out = out_make(arena, OUT_TERMINAL);
	put_json(out, json_pack("[f]", value), JSON_COMPACT, arena);
	return out_text(out, NULL);
}

static void reals_are_short_and_exact(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	assert_string_equal(printed(arena, 58.4), "[58.4]");
	assert_string_equal(printed(arena, 0.1), "[0.1]");
	assert_string_equal(printed(arena, 24), "[24.0]");
	assert_string_equal(printed(arena, -1.5e-9), "[-1.5e-09]");
	uint64_t seed = 20260414;
	for (int i = 0; i < 20000; i++) {
		seed = seed * 6364136223846793005u + 1442695040888963407u;
		double value = (double)(seed >> 11) / 9007199254740992.0 * (i % 3 == 0 ? 1e12 : i % 3 == 1 ? 100 : 1e-6);
		ArenaMark mark = arena_mark(arena);
		json_t *tree = json_loads(printed(arena, value), 0, NULL);
		assert_non_null(tree);
		double back = json_real_value(json_array_get(tree, 0));
		assert_memory_equal(&back, &value, sizeof back);
		json_decref(tree);
		arena_back(arena, mark);
	}
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(has_the_keys_of_the_contract),
		cmocka_unit_test(says_what_the_verdict_says),
		cmocka_unit_test(odd_texts_come_back_as_they_were),
		cmocka_unit_test(reals_are_short_and_exact),
	};
	return cmocka_run_group_tests_name("report_json", tests, NULL, NULL) != 0;
}
