/* SPDX-License-Identifier: MIT
 * Files that were named on the command line, each opened once and told about in the same words.
 */
#include "opening.h"

#include "file.h"
#include "report.h"
#include "say.h"

const Source *open_file(Arena *arena, const Opening *opening, Complaints *complaints)
{
	const char *bytes = "", *why = NULL;
	size_t length = 0;
	FileState state = file_read(arena, opening->path, (size_t)opening->mib * 1024 * 1024, &bytes, &length, &why);
	bool is_read = state == FILE_READ;
	const Source *source = source_make(arena, opening->path, is_read ? bytes : "", is_read ? length : 0, opening->id);
	Place whole = { .source = opening->id };
	if (state == FILE_NOT_OPENED)
		complain(complaints, MESSAGE_FIL_01, whole, (About){ .value = why });
	else if (state == FILE_NOT_REGULAR)
		complain(complaints, MESSAGE_FIL_02, whole, (About){ 0 });
	else if (state == FILE_TOO_LARGE)
		complain(complaints, MESSAGE_FIL_03, whole, (About){ .want = arena_printf(arena, "%u MiB", opening->mib) });
	complaints->broken |= !is_read;
	return source;
}

const Earlier *open_report(Arena *arena, const Opening *opening, const Source **source, Complaints *faults)
{
	*source = open_file(arena, opening, faults);
	return faults->broken ? NULL : read_earlier(arena, *source, faults);
}

const Out *faults_text(Arena *arena, const Complaints *faults, const Source *source)
{
	Complaints told = *faults;
	if (source != NULL) {
		told.source = &source;
		told.sources = 1;
	}
	Out *out = out_make(arena, OUT_TERMINAL);
	write_faults(out, &told);
	return out;
}

void say_faults(Arena *arena, const Complaints *faults, const Source *source)
{
	send_error(faults_text(arena, faults, source));
}
