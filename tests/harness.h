/* SPDX-License-Identifier: MIT
 * Harness: the built-in sample edition, and the whole pipeline run in process over nodes that a test has edited.
 */
#ifndef HARNESS_H
#define HARNESS_H

#include "check.h"

#include "builtin.h"
#include "file.h"
#include "pipeline.h"

#include <stdlib.h>
#include <stdio.h>

typedef struct {
	Arena *run;
	const Reference *reference;
	const Criteria *criteria;
	const Registers *registers;
} World;

/* Prints every complaint, so that a failed load says why. */
static inline void print_complaints(const Complaints *complaints)
{
	for (uint32_t i = 0; i < complaints->count; i++) {
		const Complaint *c = &complaints->at[i];
		print_error("%u:%u: %s: %s\n", c->place.line, c->place.column, message_of(c->id)->code,
			complaint_text(c, message_of(c->id)->finding, complaints->arena));
	}
}

/* The world of an edition: a built-in name or a folder. `criteria` is NULL if it is faulty; `*faults` tells. */
static inline World world_of(const char *edition, Complaints *faults)
{
	World world = { .run = arena_make() };
	*faults = (Complaints){ .arena = world.run };
	world.reference = read_reference(world.run);
	world.criteria = read_criteria(world.run, edition, world.reference, faults);
	Complaints register_faults = { .arena = world.run };
	world.registers = read_registers(world.run, NULL, world.reference, &register_faults);
	print_complaints(&register_faults);
	return world;
}

static inline World world_make(void)
{
	Complaints faults;
	World world = world_of("sample-2026", &faults);
	print_complaints(&faults);
	assert_non_null(world.criteria);
	assert_non_null(world.registers);
	return world;
}

/* The nodes of a built-in file, such as "examples/clean.yaml". */
static inline Node *builtin_nodes(Arena *arena, const char *name, const Source **source)
{
	const Builtin *file = builtin_find(name);
	assert_non_null(file);
	*source = source_make(arena, name, file->bytes, (size_t)(file->end - file->bytes), SOURCE_SUBMITTAL);
	Complaints complaints = { .arena = arena };
	Node *root = read_yaml(arena, *source, &complaints);
	print_complaints(&complaints);
	assert_int_equal(complaints.count, 0);
	assert_non_null(root);
	return root;
}

/* The line of a path in these nodes, or of `at` itself where it is a line; 0 if it leads nowhere. */
static inline uint32_t line_at(Node *root, const char *at)
{
	if (at[0] >= '0' && at[0] <= '9')
		return (uint32_t)strtoul(at, NULL, 10);
	const Node *node = node_at(root, at);
	return node != NULL ? node->place.line : 0;
}

/* Reviews nodes as the program would. */
static inline Verdict *review_nodes(const World *world, Arena *arena, Node *root, const Source *source)
{
	Complaints complaints = { .arena = arena };
	Submittal *submittal = read_submittal(arena, root, source, world->reference, &complaints);
	Inputs inputs = { .submittal = submittal, .criteria = world->criteria, .reference = world->reference,
		.registers = world->registers, .as_of = INT32_MIN };
	Verdict *verdict = judge(arena, resolve(arena, &inputs), &complaints, source);
	advise(verdict, arena);
	return verdict;
}

static inline void print_items(const Verdict *verdict)
{
	for (uint32_t i = 0; i < verdict->items; i++)
		print_error("  %s %s (%s) line %u: %s\n", verdict->item[i].code, action_words(verdict->item[i].action),
			verdict->item[i].name ? verdict->item[i].name : "", verdict->item[i].spots ? verdict->item[i].spot[0].place.line : 0,
			verdict->item[i].finding);
}

/* Puts a value at a path: "-" deletes, a text in brackets or braces is YAML, all else is one scalar. */
static inline bool edit_nodes(Arena *arena, Node *root, const char *path, const char *value)
{
	if (strcmp(value, "-") == 0)
		return node_delete(root, path);
	if (value[0] != '{' && value[0] != '[')
		return node_set(arena, root, path, value);
	const Node *old = node_at(root, path);
	Source *source = source_make(arena, path, value, strlen(value), SOURCE_SUBMITTAL);
	Complaints complaints = { .arena = arena };
	Node *node = read_yaml(arena, source, &complaints);
	print_complaints(&complaints);
	assert_int_equal(complaints.count, 0);
	if (old != NULL)
		node->place = old->place;
	return node_graft(arena, root, path, node);
}

/* Reviews a file, its nodes as well for who asks for places in them. */
static inline Verdict *review_nodes_of(const World *world, Arena *arena, const char *path, Node **root)
{
	const char *bytes, *why;
	size_t length;
	assert_int_equal(file_read(arena, path, 4 << 20, &bytes, &length, &why), FILE_READ);
	const Source *source = source_make(arena, path, bytes, length, SOURCE_SUBMITTAL);
	Complaints complaints = { .arena = arena };
	*root = read_yaml(arena, source, &complaints);
	assert_non_null(*root);
	Submittal *submittal = read_submittal(arena, *root, source, world->reference, &complaints);
	Inputs inputs = { .submittal = submittal, .criteria = world->criteria, .reference = world->reference,
		.registers = world->registers, .as_of = INT32_MIN };
	Verdict *verdict = judge(arena, resolve(arena, &inputs), &complaints, source);
	advise(verdict, arena);
	return verdict;
}

static inline Verdict *review_path(const World *world, Arena *arena, const char *path)
{
	Node *root;
	return review_nodes_of(world, arena, path, &root);
}

#endif
