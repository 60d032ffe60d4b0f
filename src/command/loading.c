/* SPDX-License-Identifier: MIT
 * What a run reads once. Faults are printed at their places; a faulty edition stays on the shelf as faulty.
 */
#include "loading.h"

#include "builtin.h"
#include "command.h"
#include "file.h"
#include "report.h"
#include "say.h"

#include <string.h>

enum { FILE_LIMIT = 4 * 1024 * 1024 };

static void print_faults(Arena *arena, const Complaints *faults)
{
	Out *out = out_make(arena, OUT_TERMINAL);
	write_faults(out, faults);
	send_error(out);
}

bool load_registers(Loaded *loaded, const char *folder)
{
	Complaints faults = { .arena = loaded->arena };
	loaded->registers = read_registers(loaded->arena, folder, loaded->reference, &faults);
	if (loaded->registers == NULL)
		print_faults(loaded->arena, &faults);
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
		print_faults(loaded->arena, &faults);
		say_error(arena_printf(loaded->arena, "the criteria %s are refused as a whole; nothing was judged by them", name));
	}
	return shelf;
}

/* ---- files of YAML ---- */

Node *load_yaml(Arena *arena, const char *path, uint16_t id, const Source **source, Complaints *complaints)
{
	const char *bytes = "", *why = NULL;
	size_t length = 0;
	FileState state = file_read(arena, path, FILE_LIMIT, &bytes, &length, &why);
	if (state != FILE_READ) {
		bytes = "";
		length = 0;
	}
	*source = source_make(arena, path, bytes, length, id);
	Place whole = { .source = id };
	switch (state) {
	case FILE_READ:
		return read_yaml(arena, *source, complaints);
	case FILE_NOT_OPENED:
		complain(complaints, MESSAGE_FIL_01, whole, (About){ .value = why });
		break;
	case FILE_NOT_REGULAR:
		complain(complaints, MESSAGE_FIL_02, whole, (About){ 0 });
		break;
	case FILE_TOO_LARGE:
		complain(complaints, MESSAGE_FIL_03, whole, (About){ .want = "4 MiB" });
		break;
	}
	complaints->broken = true;
	return NULL;
}

/* The reviewer's mistakes are his own matter: they are told here and never stand in a letter to the contractor. */
bool load_review(Loaded *loaded, const char *path)
{
	Arena *arena = loaded->arena;
	Complaints faults = { .arena = arena };
	Node *root = load_yaml(arena, path, SOURCE_REVIEWER, &loaded->review_source, &faults);
	faults.source = &loaded->review_source;
	faults.sources = 1;
	if (root != NULL && !faults.broken)
		loaded->review = read_review(arena, root, loaded->review_source, loaded->reference, &faults);
	if (loaded->review != NULL && faults.count == 0)
		check_review(loaded->review, &faults);
	if (faults.count > 0)
		print_faults(loaded->arena, &faults);
	return faults.count == 0 && loaded->review != NULL;
}

/* A sheet that cannot be read whole is not used at all: a reply lost would look like none given. */
bool load_replies(Loaded *loaded, const char *path)
{
	const char *bytes = "", *why = NULL;
	size_t length = 0;
	FileState state = file_read(loaded->arena, path, FILE_LIMIT, &bytes, &length, &why);
	if (state != FILE_READ) {
		say_error(arena_printf(loaded->arena, "%s: %s", path, state == FILE_NOT_OPENED ? why
			: state == FILE_TOO_LARGE ? "larger than 4 MiB" : "no regular file"));
		return false;
	}
	const Source *source = source_make(loaded->arena, path, bytes, length, SOURCE_REPLIES);
	Complaints faults = { .arena = loaded->arena, .source = &source, .sources = 1 };
	loaded->replies = read_replies(loaded->arena, source, &faults);
	if (loaded->replies == NULL) {
		print_faults(loaded->arena, &faults);
		say_error(arena_printf(loaded->arena, "%s: the replies are not used", path));
	}
	return loaded->replies != NULL;
}

bool accept_review(Loaded *loaded, const Verdict *verdict)
{
	if (verdict->cases->review == NULL)
		return true;
	Complaints faults = { .arena = verdict->cases->arena, .source = &loaded->review_source, .sources = 1 };
	bool accepted = check_reviewed(verdict, &faults);
	if (faults.count > 0)
		print_faults(loaded->arena, &faults);
	return accepted;
}
