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
	*outputs = (Outputs){ .arena = arguments->arena };
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
		if (strstr(outputs->at[i].format->name, "json") != NULL || outputs->at[i].format->document != NULL)
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
	if (first && output->format->document != NULL)
		output->format->document->begin(out, outputs->arena);
	else if (is_json(output->format) && outputs->array)
		out_literal(out, first ? "[\n" : ",\n", 2);
	else if (output->format->frame == REPORT_PAGES && !first)
		SAY(out, "\n====================================================================================================\n\n");
}

static void close_frame(Out *out, const Output *output, const Outputs *outputs)
{
	const ReportDocument *document = output->format->document;
	if (document != NULL && outputs->reports == 0)
		document->begin(out, outputs->arena);
	if (document != NULL && document->end != NULL)
		document->end(out, &outputs->gathered, outputs->arena);
	if (!is_json(output->format) || !outputs->array)
		return;
	if (outputs->reports == 0)
		SAY(out, "[\n");
	SAY(out, "]\n");
}

/* ---- documents ---- */

static void gather_edition(Outputs *outputs, const Criteria *criteria)
{
	Gathered *gathered = &outputs->gathered;
	for (uint32_t i = 0; i < gathered->editions; i++)
		if (gathered->edition[i] == criteria)
			return;
	gathered->edition = arena_more(outputs->arena, (void *)gathered->edition, gathered->editions, &gathered->edition_room,
		sizeof *gathered->edition);
	gathered->edition[gathered->editions++] = criteria;
}

/* Where a file breaks nothing is read any more, so the break is the last item. */
static void gather_unread(Outputs *outputs, const Verdict *verdict)
{
	Gathered *gathered = &outputs->gathered;
	const Finding *item = verdict->items > 0 ? &verdict->item[verdict->items - 1] : NULL;
	const char *why = item != NULL ? item->finding : "the criteria are faulty";
	Unread unread = { .file = arena_text(outputs->arena, verdict->source->name, strlen(verdict->source->name)),
		.code = item != NULL ? item->code : NULL, .why = arena_text(outputs->arena, why, strlen(why)) };
	if (item != NULL) {
		unread.line = item->spot[0].place.line;
		unread.column = item->spot[0].place.column;
	}
	gathered->unread = arena_more(outputs->arena, gathered->unread, gathered->unreads, &gathered->unread_room,
		sizeof *gathered->unread);
	gathered->unread[gathered->unreads++] = unread;
}

static void gather(Outputs *outputs, const Verdict *verdict)
{
	outputs->gathered.reference = verdict->cases->reference;
	if (verdict->broken_file)
		gather_unread(outputs, verdict);
	else
		gather_edition(outputs, verdict->cases->criteria);
}

/* A report that is empty leaves no gap between its neighbors. */
static void add_to_document(Out *out, Output *output, const Verdict *verdict, Arena *arena)
{
	const ReportDocument *document = output->format->document;
	Out *report = out_make(arena, output->format->escape);
	size_t length;
	output->format->write(report, verdict, arena);
	const char *text = out_text(report, &length);
	if (length > 0 && output->begun)
		out_literal(out, document->between, strlen(document->between));
	out_literal(out, text, length);
	output->begun |= length > 0;
}

void outputs_add(Outputs *outputs, const Verdict *verdict, Arena *arena)
{
	gather(outputs, verdict);
	for (uint32_t i = 0; i < outputs->count; i++) {
		Output *output = &outputs->at[i];
		Out *out = output->whole != NULL ? output->whole : out_make(arena, output->format->escape);
		put_frame(out, output, outputs);
		if (output->format->document != NULL)
			add_to_document(out, output, verdict, arena);
		else
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
