/* SPDX-License-Identifier: MIT
 * What a run reads once. Faults are printed at their places; a faulty edition stays on the shelf as faulty.
 */
#include "loading.h"

#include "builtin.h"
#include "command.h"
#include "file.h"
#include "opening.h"
#include "say.h"

#include <string.h>

bool load_registers(Loaded *loaded, const char *folder)
{
	Complaints faults = { .arena = loaded->arena };
	loaded->registers = read_registers(loaded->arena, folder, loaded->reference, &faults);
	if (loaded->registers == NULL)
		say_faults(loaded->arena, &faults, NULL);
	return loaded->registers != NULL;
}

/* ---- editions ---- */

/* Whether built-in files make an edition of this name: only editions hold criteria.yaml. */
static bool is_builtin_edition(const char *name)
{
	size_t length = strlen(name);
	const Builtin *file;
	for (size_t i = 0; (file = builtin_at(i)) != NULL; i++)
		if (strncmp(file->name, name, length) == 0 && strcmp(file->name + length, "/criteria.yaml") == 0)
			return true;
	return false;
}

const char *edition_names(Arena *arena)
{
	const char *names = NULL;
	const Builtin *file;
	for (size_t i = 0; (file = builtin_at(i)) != NULL; i++) {
		const char *slash = strchr(file->name, '/');
		if (slash == NULL || strcmp(slash, "/criteria.yaml") != 0)
			continue;
		const char *name = arena_text(arena, file->name, (size_t)(slash - file->name));
		names = names == NULL ? name : arena_printf(arena, "%s, %s", names, name);
	}
	return names != NULL ? names : "";
}

Shelf *load_criteria(Loaded *loaded, const char *name, bool may_be_folder)
{
	if (!(may_be_folder && file_is_folder(name)) && !is_builtin_edition(name))
		return NULL;
	for (Shelf *shelf = loaded->shelf; shelf != NULL; shelf = shelf->next)
		if (strcmp(shelf->name, name) == 0)
			return shelf;
	Shelf *shelf = TAKE(loaded->arena, Shelf, 1);
	shelf->name = arena_text(loaded->arena, name, strlen(name));
	shelf->next = loaded->shelf;
	loaded->shelf = shelf;
	Complaints faults = { .arena = loaded->arena };
	shelf->criteria = read_criteria(loaded->arena, shelf->name, loaded->reference, &faults);
	if (shelf->criteria == NULL) {
		say_faults(loaded->arena, &faults, NULL);
		say_error(arena_printf(loaded->arena, "the criteria %s are refused as a whole; nothing was judged by them", name));
	}
	return shelf;
}

/* ---- files of YAML ---- */

Node *load_yaml(Arena *arena, const char *path, uint16_t id, const Source **source, Complaints *complaints)
{
	*source = open_file(arena, &(Opening){ path, id, SUBMITTAL_MIB }, complaints);
	return complaints->broken ? NULL : read_yaml(arena, *source, complaints);
}

/* The reviewer's mistakes are his own matter: they are told here and never stand in a letter to the contractor. */
bool load_review(Loaded *loaded, const char *path)
{
	Arena *arena = loaded->arena;
	Complaints faults = { .arena = arena };
	Node *root = load_yaml(arena, path, SOURCE_REVIEWER, &loaded->review_source, &faults);
	if (root != NULL && !faults.broken)
		loaded->review = read_review(arena, root, loaded->review_source, loaded->reference, &faults);
	if (loaded->review != NULL && faults.count == 0)
		check_review(loaded->review, &faults);
	if (faults.count > 0)
		say_faults(arena, &faults, loaded->review_source);
	return faults.count == 0 && loaded->review != NULL;
}

/* A sheet that cannot be read whole is not used at all: a reply lost would look like none given. */
bool load_replies(Loaded *loaded, const char *path)
{
	Complaints faults = { .arena = loaded->arena };
	const Source *source = open_file(loaded->arena, &(Opening){ path, SOURCE_REPLIES, SUBMITTAL_MIB }, &faults);
	loaded->replies = faults.broken ? NULL : read_replies(loaded->arena, source, &faults);
	if (loaded->replies == NULL) {
		say_faults(loaded->arena, &faults, source);
		say_error(arena_printf(loaded->arena, "%s: the replies are not used", path));
	}
	return loaded->replies != NULL;
}

bool accept_review(Loaded *loaded, const Verdict *verdict)
{
	if (verdict->cases->review == NULL)
		return true;
	Complaints faults = { .arena = verdict->cases->arena }; /* not that of the run, which other threads use */
	bool accepted = check_reviewed(verdict, &faults);
	if (faults.count > 0)
		say_faults(faults.arena, &faults, loaded->review_source);
	return accepted;
}
