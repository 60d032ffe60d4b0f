/* SPDX-License-Identifier: MIT
 * Files by their names in a folder or among the built-in ones. A file that cannot be read is a complaint about it as a whole; its
 * source stays, empty, so that the complaint has a name to print.
 */
#include "folder.h"

#include "builtin.h"
#include "file.h"

#include <assert.h>
#include <string.h>

enum { FILE_LIMIT = 4 * 1024 * 1024 };

Folder folder_of(const Loading *loading, const char *name, uint16_t first)
{
	bool is_path = strchr(name, '/') != NULL || file_is_folder(name);
	return (Folder){ .loading = loading, .name = name, .builtin = !is_path, .first = first };
}

static const char *path_in(const Folder *folder, const char *file)
{
	size_t length = strlen(folder->name);
	while (length > 1 && folder->name[length - 1] == '/')
		length--;
	return arena_printf(folder->loading->arena, "%.*s/%s", (int)length, folder->name, file);
}

static FileState read_bytes(const Folder *folder, const char *path, const char **bytes, size_t *length, const char **why)
{
	*why = "no such file is built in";
	if (!folder->builtin)
		return file_read(folder->loading->arena, path, FILE_LIMIT, bytes, length, why);
	const Builtin *builtin = builtin_find(path);
	if (builtin == NULL)
		return FILE_NOT_OPENED;
	*bytes = builtin->bytes;
	*length = (size_t)(builtin->end - builtin->bytes);
	return FILE_READ;
}

const Source *folder_file(Folder *folder, const char *name, bool *read)
{
	Complaints *complaints = folder->loading->complaints;
	const char *path = path_in(folder, name), *bytes = "", *why = NULL;
	size_t length = 0;
	FileState state = read_bytes(folder, path, &bytes, &length, &why);
	*read = state == FILE_READ;
	if (!*read) {
		bytes = "";
		length = 0;
	}
	assert(folder->sources < FOLDER_FILES);
	uint16_t id = (uint16_t)(folder->first + folder->sources);
	const Source *source = source_make(folder->loading->arena, path, bytes, length, id);
	folder->source[folder->sources++] = source;
	Place whole = { .source = id };
	if (state == FILE_NOT_OPENED)
		complain(complaints, MESSAGE_TAB_16, whole, (About){ .value = why });
	else if (state == FILE_NOT_REGULAR)
		complain(complaints, MESSAGE_FIL_02, whole, (About){ 0 });
	else if (state == FILE_TOO_LARGE)
		complain(complaints, MESSAGE_TAB_17, whole, (About){ .want = "4 MiB" });
	return source;
}

void folder_table(Folder *folder, const char *file, Rows *rows)
{
	bool read;
	rows->source = folder_file(folder, file, &read);
	if (read)
		read_table(folder->loading, rows);
}

const Source *const *folder_sources(const Folder *folder)
{
	const Source **source = TAKE(folder->loading->arena, const Source *, folder->sources);
	memcpy(source, folder->source, folder->sources * sizeof *source);
	return source;
}
