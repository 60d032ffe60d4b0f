/* SPDX-License-Identifier: MIT
 * Every example on disk, in order of name, but the one whose YAML is meant to be wrong.
 */
#ifndef EXAMPLES_H
#define EXAMPLES_H

#include "harness.h"

#include "file.h"

#include <glob.h>

typedef struct {
	glob_t found;
	size_t next;
} Examples;

static inline void examples_open(Examples *all)
{
	all->next = 0;
	assert_int_equal(glob("examples/*.yaml", 0, NULL, &all->found), 0);
	assert_true(all->found.gl_pathc >= 15);
}

/* The next example, or NULL after the last. */
static inline const char *examples_next(Examples *all)
{
	while (all->next < all->found.gl_pathc) {
		const char *path = all->found.gl_pathv[all->next++];
		if (strcmp(path, "examples/yaml-mistakes.yaml") != 0)
			return path;
	}
	globfree(&all->found);
	return NULL;
}

/* Its nodes, without a complaint. */
static inline Node *example_nodes(Arena *arena, const char *path, const Source **source)
{
	const char *bytes, *why;
	size_t length;
	assert_int_equal(file_read(arena, path, 4 << 20, &bytes, &length, &why), FILE_READ);
	*source = source_make(arena, path, bytes, length, SOURCE_SUBMITTAL);
	Complaints complaints = { .arena = arena };
	Node *root = read_yaml(arena, *source, &complaints);
	print_complaints(&complaints);
	assert_int_equal(complaints.count, 0);
	return root;
}

#endif
