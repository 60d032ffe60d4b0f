/* SPDX-License-Identifier: MIT
 * Where the reports of one run go. The frame around several reports (an array's brackets, the rule between two letters) is made
 * here, so that a format knows one submittal only.
 */
#include "outputs.h"

#include "file.h"
#include "say.h"
#include "suggest.h"

#include <string.h>

static bool is_json(const ReportFormat *format)
{
	return strcmp(format->name, "json") == 0;
}

static void say_no_format(const Arguments *arguments, const char *name)
{
	const char *names[16], *all = "";
	size_t count = 0;
	for (const ReportFormat *f; (f = report_format_at(count)) != NULL && count < 16; count++) {
		names[count] = f->name;
		all = arena_printf(arguments->arena, "%s%s%s", all, count > 0 ? ", " : "", f->name);
	}
	int nearest = suggest(name, names, count);
	const char *hint = nearest >= 0 ? arena_printf(arguments->arena, "; did you mean %s?", names[nearest]) : "";
	say_usage(arguments->command, arena_printf(arguments->arena, "no format %s%s (there are: %s)", name, hint, all));
}

/* --sheet turns text and html into those of the sheet. */
static const char *format_name(const Arguments *arguments, const Wanted *wanted)
{
	const char *name = wanted->format != NULL ? wanted->format : "text";
	if (arguments->value[OPTION_sheet] == NULL)
		return name;
	return strcmp(name, "text") == 0 ? "sheet" : strcmp(name, "html") == 0 ? "sheet-html" : name;
}

static const ReportFormat *format_for(const Arguments *arguments, const Wanted *wanted, Batch batch)
{
	const char *name = format_name(arguments, wanted);
	const ReportFormat *format = report_format(name);
	if (format == NULL) {
		say_no_format(arguments, name);
		return NULL;
	}
	if (is_json(format) && batch == A_FOLDER)
		return report_format("ndjson");
	if (format->frame != REPORT_ALONE || batch == ONE_FILE)
		return format;
	say_usage(arguments->command, arena_printf(arguments->arena, "a page of %s holds one submittal; name one file", name));
	return NULL;
}

static bool open_output(Outputs *outputs, const Arguments *arguments, const Wanted *wanted, Batch batch)
{
	const ReportFormat *format = format_for(arguments, wanted, batch);
	if (format == NULL)
		return false;
	outputs->array = batch == SEVERAL_FILES;
	bool standard = wanted->path == NULL || strcmp(wanted->path, "-") == 0;
	for (uint32_t i = 0; i < outputs->count; i++) {
		const char *other = outputs->at[i].path;
		if (standard ? other != NULL : other == NULL || strcmp(other, wanted->path) != 0)
			continue;
		say_usage(arguments->command, arena_printf(arguments->arena, "two formats go to %s; give each an --output of its own",
			standard ? "standard output" : wanted->path));
		return false;
	}
	if (!standard && overwrites_input(arguments, wanted->path)) {
		say_usage(arguments->command, arena_printf(arguments->arena, "--output %s would overwrite what this run reads", wanted->path));
		return false;
	}
	Output *output = &outputs->at[outputs->count++];
	*output = (Output){ .format = format, .path = standard ? NULL : wanted->path };
	if (!standard) {
		output->arena = arena_make();
		output->whole = out_make(output->arena, format->escape);
	}
	return true;
}

bool outputs_open(Outputs *outputs, const Arguments *arguments, Batch batch)
{
	*outputs = (Outputs){ .count = 0 };
	static const Wanted letter = { NULL, NULL };
	if (arguments->outputs == 0)
		return open_output(outputs, arguments, &letter, batch);
	for (uint32_t i = 0; i < arguments->outputs; i++)
		if (!open_output(outputs, arguments, &arguments->wanted[i], batch))
			return false;
	return true;
}

bool outputs_need_hash(const Outputs *outputs)
{
	for (uint32_t i = 0; i < outputs->count; i++)
		if (strstr(outputs->at[i].format->name, "json") != NULL)
			return true;
	return false;
}

bool outputs_need_site_checks(const Outputs *outputs)
{
	for (uint32_t i = 0; i < outputs->count; i++)
		if (strncmp(outputs->at[i].format->name, "sheet", strlen("sheet")) == 0)
			return true;
	return false;
}

/* What stands before the first report, and between two. */
static void put_frame(Out *out, const Output *output, const Outputs *outputs)
{
	bool first = outputs->reports == 0;
	if (is_json(output->format) && outputs->array)
		out_literal(out, first ? "[\n" : ",\n", 2);
	else if (output->format->frame == REPORT_PAGES && !first)
		SAY(out, "\n====================================================================================================\n\n");
}

static void close_frame(Out *out, const Output *output, const Outputs *outputs)
{
	if (!is_json(output->format) || !outputs->array)
		return;
	if (outputs->reports == 0)
		SAY(out, "[\n");
	SAY(out, "]\n");
}

void outputs_add(Outputs *outputs, const Verdict *verdict, Arena *arena)
{
	for (uint32_t i = 0; i < outputs->count; i++) {
		Output *output = &outputs->at[i];
		Out *out = output->whole != NULL ? output->whole : out_make(arena, output->format->escape);
		put_frame(out, output, outputs);
		output->format->write(out, verdict, arena);
		if (output->whole == NULL)
			send_out(out);
	}
	outputs->reports++;
}

void outputs_drop(Outputs *outputs)
{
	for (uint32_t i = 0; i < outputs->count; i++)
		arena_free(outputs->at[i].arena);
}

void outputs_close(Outputs *outputs)
{
	Arena *arena = arena_make();
	for (uint32_t i = 0; i < outputs->count; i++) {
		Output *output = &outputs->at[i];
		Out *out = output->whole != NULL ? output->whole : out_make(arena, output->format->escape);
		close_frame(out, output, outputs);
		if (output->whole == NULL) {
			send_out(out);
			continue;
		}
		size_t length;
		const char *text = out_text(out, &length);
		file_write(output->path, text, length);
		arena_free(output->arena);
	}
	flush_out();
	arena_free(arena);
}
