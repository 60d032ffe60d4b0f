/* SPDX-License-Identifier: MIT
 * Reads reports back. Lines of NDJSON are read through a window that grows with the longest line, not with their number.
 */
#include "reports.h"

#include "file.h"
#include "opening.h"
#include "say.h"
#include "walk.h"

#include <errno.h>
#include <fcntl.h>
#include <string.h>
#include <unistd.h>

enum { FIRST_WINDOW = 256 * 1024 };

typedef struct {
	const TakeReport *take;
	Arena *arena; /* of one report */
	bool failed;
} Reading;

static void fail_file(Reading *reading, const char *path, const char *why)
{
	say_error(arena_printf(reading->arena, "%s: %s", path, why));
	reading->failed = true;
}

/* Hands a report over, or says why it is none. */
static void take_report(Reading *reading, const Earlier *report, const Source *source, const Complaints *faults)
{
	if (report != NULL) {
		reading->take->take(reading->take->user, report, reading->arena);
		return;
	}
	say_faults(reading->arena, faults, source);
	fail_file(reading, source->name, "no report that can be used");
}

static void read_json_file(Reading *reading, const char *path)
{
	Complaints faults = { .arena = reading->arena };
	const Source *source;
	const Earlier *report = open_report(reading->arena, &(Opening){ path, SOURCE_PREVIOUS, REPORT_MIB }, &source, &faults);
	take_report(reading, report, source, &faults);
}

static void read_json_line(Reading *reading, const char *name, const char *text, size_t length)
{
	Complaints faults = { .arena = reading->arena };
	const Source *source = source_make(reading->arena, name, text, length, SOURCE_PREVIOUS);
	take_report(reading, read_earlier(reading->arena, source, &faults), source, &faults);
}

/* ---- one report a line ---- */

typedef struct {
	int from;
	char *bytes;
	size_t room, at, used;
	bool ended;
	Arena *arena; /* of the window */
} Window;

static void widen(Window *window)
{
	char *wider = arena_take(window->arena, window->room * 2, 1);
	memcpy(wider, window->bytes, window->used);
	window->bytes = wider;
	window->room *= 2;
}

/* False when reading failed. */
static bool read_more(Window *window)
{
	memmove(window->bytes, window->bytes + window->at, window->used - window->at);
	window->used -= window->at;
	window->at = 0;
	if (window->used == window->room)
		widen(window);
	ssize_t got;
	do
		got = read(window->from, window->bytes + window->used, window->room - window->used);
	while (got < 0 && errno == EINTR);
	window->ended = got <= 0;
	window->used += got > 0 ? (size_t)got : 0;
	return got >= 0;
}

/* The length of the next line; false at the end, and with `*why` where it cannot be read. */
static bool next_line(Window *window, size_t *length, const char **why)
{
	size_t looked = 0;
	for (;;) {
		const char *start = window->bytes + window->at;
		const char *end = memchr(start + looked, '\n', window->used - window->at - looked);
		*length = end != NULL ? (size_t)(end - start) : window->used - window->at;
		if (end != NULL || (window->ended && *length > 0))
			return true;
		if (window->ended)
			return false;
		looked = *length;
		if (looked > (size_t)REPORT_MIB * 1024 * 1024)
			*why = "one of its lines is longer than any report";
		else if (!read_more(window))
			*why = "it cannot be read to its end";
		if (*why != NULL)
			return false;
	}
}

static void read_lines(Reading *reading, const char *path, int from)
{
	Window window = { .from = from, .arena = arena_make(), .room = FIRST_WINDOW };
	window.bytes = arena_take(window.arena, window.room, 1);
	const char *why = NULL;
	size_t length;
	for (uint32_t line = 1; next_line(&window, &length, &why); line++) {
		ArenaMark mark = arena_mark(reading->arena);
		const char *text = arena_text(reading->arena, window.bytes + window.at, length);
		if (strspn(text, " \t\r") < length)
			read_json_line(reading, arena_printf(reading->arena, "%s, line %u", path, line), text, length);
		arena_back(reading->arena, mark);
		window.at += length + (window.at + length < window.used);
	}
	if (why != NULL)
		fail_file(reading, path, why);
	arena_free(window.arena);
}

static const char *const lines[] = { ".ndjson", NULL };

static void read_one(Reading *reading, const char *path)
{
	ArenaMark mark = arena_mark(reading->arena);
	if (strcmp(path, "-") == 0) {
		read_lines(reading, "standard input", STDIN_FILENO);
	} else if (!walk_wants(lines, path)) {
		read_json_file(reading, path);
	} else {
		int from = open(path, O_RDONLY | O_CLOEXEC | O_NOCTTY);
		if (from < 0)
			fail_file(reading, path, "it cannot be opened");
		else
			read_lines(reading, path, from);
		if (from >= 0)
			close(from);
	}
	arena_back(reading->arena, mark);
}

static void read_folder(Reading *reading, const char *folder)
{
	Arena *arena = arena_make();
	Walk *walk = walk_begin(arena, folder, walk_reports);
	uint32_t found = 0;
	for (const char *path = walk != NULL ? walk_next(walk) : NULL; path != NULL; path = walk_next(walk), found++)
		read_one(reading, path);
	if (walk == NULL)
		fail_file(reading, folder, "the folder cannot be opened");
	else if (found == 0)
		fail_file(reading, folder, "no .json or .ndjson file stands in this folder");
	arena_free(arena);
}

bool read_reports(const char *const *operand, uint32_t operands, const TakeReport *take)
{
	Reading reading = { .take = take, .arena = arena_make() };
	for (uint32_t i = 0; i < operands; i++)
		if (strcmp(operand[i], "-") != 0 && file_is_folder(operand[i]))
			read_folder(&reading, operand[i]);
		else
			read_one(&reading, operand[i]);
	arena_free(reading.arena);
	return !reading.failed;
}
