/* SPDX-License-Identifier: MIT
 * Finding and changing nodes by path.
 */
#include "check.h"

#include "node.h"

/* roof_areas: [{name: Main roof, clips: [{item: clip-a}]}], stage: order */
static Node *sample(Arena *arena)
{
	Node *root = TAKE(arena, Node, 1), *list = TAKE(arena, Node, 1), *area = TAKE(arena, Node, 1), *clips = TAKE(arena, Node, 1);
	Node *clip = TAKE(arena, Node, 1);
	root->kind = area->kind = clip->kind = NODE_MAP;
	list->kind = clips->kind = NODE_LIST;
	area->place = (Place){ .line = 3, .column = 5 };
	assert_true(node_graft(arena, root, "roof_areas", list));
	assert_true(node_graft(arena, root, "roof_areas.0", area));
	assert_true(node_set(arena, root, "roof_areas.0.name", "Main roof"));
	assert_true(node_graft(arena, root, "roof_areas.0.clips", clips));
	assert_true(node_graft(arena, root, "roof_areas.0.clips.0", clip));
	assert_true(node_set(arena, root, "roof_areas.0.clips.0.item", "clip-a"));
	assert_true(node_set(arena, root, "stage", "order"));
	return root;
}

static void paths_lead_to_values(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	Node *root = sample(arena);
	assert_string_equal(node_at(root, "roof_areas.0.name")->text, "Main roof");
	assert_string_equal(node_at(root, "roof_areas.0.clips.0.item")->text, "clip-a");
	assert_int_equal(node_at(root, "roof_areas.0.clips")->kind, NODE_LIST);
	assert_int_equal(node_at(root, "roof_areas.0.clips")->count, 1);
	assert_ptr_equal(node_at(root, ""), root);
	assert_ptr_equal(node_find(root, "stage"), node_at(root, "stage"));
	assert_int_equal(node_at(root, "roof_areas.0.name")->place.line, 3);
	arena_free(arena);
}

static void paths_that_lead_nowhere(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	Node *root = sample(arena);
	static const char *const no[] = { "roof", "roof_areas.1", "roof_areas.x", "roof_areas.0.clips.1.item", "stage.0",
		"stage.order.x", "roof_areas.0.name.x", "roof_areas..name", "roof_areas.4294967296.name" };
	for (size_t i = 0; i < sizeof no / sizeof *no; i++) {
		assert_null(node_at(root, no[i]));
		assert_false(node_delete(root, no[i]));
	}
	assert_null(node_find(root, "stag"));
	assert_null(node_find(node_find(root, "stage"), "x"));
	assert_false(node_set(arena, root, "roof_areas.0.clips.2.item", "x"));
	assert_false(node_set(arena, root, "stage.x", "x"));
	arena_free(arena);
}

static void values_are_changed_in_place(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	Node *root = sample(arena);
	uint32_t count = root->count;
	assert_true(node_set(arena, root, "roof_areas.0.name", "Canopy"));
	assert_string_equal(node_at(root, "roof_areas.0.name")->text, "Canopy");
	assert_int_equal(node_at(root, "roof_areas.0.name")->length, 6);
	assert_true(node_set(arena, root, "roof_areas.0.clips.0.item", "clip-b"));
	assert_string_equal(node_at(root, "roof_areas.0.clips.0.item")->text, "clip-b");
	assert_int_equal(root->count, count);
	assert_true(node_set(arena, root, "made", "new"));
	assert_int_equal(root->count, count + 1);
	assert_false(node_set(arena, root, "made", "[a]"));
	assert_false(node_set(arena, root, "made", "{a: b}"));
	assert_string_equal(node_at(root, "made")->text, "new");
	/* a value in place of a list element keeps those behind it */
	assert_true(node_set(arena, root, "roof_areas.0.clips.1", "second"));
	assert_true(node_set(arena, root, "roof_areas.0.clips.0", "first"));
	assert_string_equal(node_at(root, "roof_areas.0.clips.1")->text, "second");
	assert_int_equal(node_at(root, "roof_areas.0.clips")->count, 2);
	arena_free(arena);
}

static void keys_and_elements_are_taken_out(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	Node *root = sample(arena);
	assert_true(node_delete(root, "roof_areas.0.name"));
	assert_null(node_at(root, "roof_areas.0.name"));
	assert_non_null(node_at(root, "roof_areas.0.clips.0.item"));
	assert_true(node_delete(root, "roof_areas.0.clips.0"));
	assert_int_equal(node_at(root, "roof_areas.0.clips")->count, 0);
	assert_true(node_delete(root, "roof_areas"));
	assert_int_equal(root->count, 1);
	assert_string_equal(root->first->text, "stage");
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(paths_lead_to_values),
		cmocka_unit_test(paths_that_lead_nowhere),
		cmocka_unit_test(values_are_changed_in_place),
		cmocka_unit_test(keys_and_elements_are_taken_out),
	};
	return cmocka_run_group_tests(tests, NULL, NULL) != 0;
}
