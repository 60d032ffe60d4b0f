/* SPDX-License-Identifier: MIT
 * What a batch goes through. A folder is walked where it is named, in the list as on the command line.
 */
#include "errands.h"

#include "file.h"
#include "listing.h"

#include <string.h>

bool errands_begin(Errands *errands, const Arguments *arguments, const char **why)
{
	const char *list = arguments->value[OPTION_files_from];
	*errands = (Errands){ .arguments = arguments, .arena = arena_make() };
	if (list != NULL)
		errands->listing = listing_open(arguments->arena, list);
	*why = list != NULL && errands->listing == NULL ? arena_printf(arguments->arena, "%s: the list cannot be opened", list) : NULL;
	errands->start = arena_mark(errands->arena);
	return *why == NULL;
}

/* A name becomes a file, or a folder that is walked from now on. */
static bool take_name(Errands *errands, const char *name, Errand *errand, Arena *arena)
{
	if (strcmp(name, "-") == 0 || !file_is_folder(name)) {
		*errand = (Errand){ .path = name };
		return true;
	}
	arena_back(errands->arena, errands->start);
	errands->folder = name;
	errands->in_folder = 0;
	errands->walk = walk_begin(errands->arena, name, walk_submittals);
	*errand = (Errand){ .fault = arena_printf(arena, "%s: the folder cannot be opened", name) };
	return errands->walk == NULL;
}

/* The next file of the folder that is on; false when it is through and had one. */
static bool walk_on(Errands *errands, Errand *errand, Arena *arena)
{
	const char *path = walk_next(errands->walk);
	if (path != NULL) {
		errands->in_folder++;
		*errand = (Errand){ .path = arena_text(arena, path, strlen(path)) };
		return true;
	}
	errands->walk = NULL;
	*errand = (Errand){ .fault = arena_printf(arena, "%s: no .yaml or .yml file stands in this folder", errands->folder) };
	return errands->in_folder == 0;
}

/* What ends the list: nothing, a fault while it was read, or that it named nothing: an empty gate must not stay open. */
static bool end_list(Errands *errands, Errand *errand, Arena *arena)
{
	const char *list = errands->arguments->value[OPTION_files_from];
	bool failed = listing_failed(errands->listing), bare = errands->listed == 0;
	listing_close(errands->listing);
	errands->listing = NULL;
	*errand = (Errand){ .fault = arena_printf(arena, "%s: the list %s", strcmp(list, "-") == 0 ? "standard input" : list,
		failed ? "cannot be read to its end" : "names no file") };
	return failed || bare;
}

static bool take_listed(Errands *errands, Errand *errand, Arena *arena)
{
	bool too_long;
	const char *name = listing_next(errands->listing, arena, &too_long);
	if (too_long) {
		*errand = (Errand){ .fault = "a path of the list is too long for any file" };
		return true;
	}
	if (name == NULL)
		return end_list(errands, errand, arena);
	errands->listed++;
	/* The name of a folder must outlast the arena of one report. */
	if (file_is_folder(name))
		name = arena_text(errands->arguments->arena, name, strlen(name));
	return take_name(errands, name, errand, arena);
}

bool errands_next(Errands *errands, Errand *errand, Arena *arena)
{
	for (;;) {
		if (errands->walk != NULL) {
			if (walk_on(errands, errand, arena))
				return true;
		} else if (errands->operand < errands->arguments->operands) {
			if (take_name(errands, errands->arguments->operand[errands->operand++], errand, arena))
				return true;
		} else if (errands->listing == NULL) {
			return false;
		} else if (take_listed(errands, errand, arena)) {
			return true;
		}
	}
}

void errands_end(Errands *errands)
{
	listing_close(errands->listing);
	arena_free(errands->arena);
}
