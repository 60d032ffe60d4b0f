/* SPDX-License-Identifier: MIT
 * Where the reports of one run go. The frame around several reports (an array's brackets, the rule between two letters) is made
 * here, so that a format knows one submittal only.
 */
#include "outputs.h"

#include "say.h"
#include "suggest.h"

#include <string.h>

static bool is_json(const ReportFormat *format)
{
	return strcmp(format->name, "json") == 0;
}

static void say_no_format(const Arguments *arguments, const char *name)
{
	const char *names[32], *all = "";
	size_t count = 0;
	for (const ReportFormat *f; (f = report_format_at(count)) != NULL && count < 32; count++) {
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

static const ReportFormat *format_for(const Arguments *arguments, const Wanted *wanted, Batching batch)
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

static bool open_output(Outputs *outputs, const Arguments *arguments, const Wanted *wanted, Batching batch)
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
	outputs->at[outputs->count++] = (Output){ .format = format, .path = standard ? NULL : wanted->path };
	return true;
}

bool outputs_open(Outputs *outputs, const Arguments *arguments, Batching batch)
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

bool outputs_need_drawings(const Outputs *outputs)
{
	for (uint32_t i = 0; i < outputs->count; i++)
		if (strcmp(outputs->at[i].format->name, "html") == 0)
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

bool outputs_need_outcomes(const Outputs *outputs)
{
	for (uint32_t i = 0; i < outputs->count; i++)
		if (strcmp(outputs->at[i].format->name, "junit") == 0)
			return true;
	return false;
}

static void send_part(Outputs *outputs, Output *output, const char *text, size_t length)
{
	if (output->path == NULL) {
		send_text(text, length);
		return;
	}
	if (output->file == NULL)
		output->file = file_begin(outputs->arena, output->path);
	file_add(output->file, text, length);
}

static void send_literal(Outputs *outputs, Output *output, const char *literal)
{
	send_part(outputs, output, literal, strlen(literal));
}

/* ---- documents of several submittals ---- */

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

static const char *kept(Arena *arena, const char *text)
{
	return text != NULL ? arena_text(arena, text, strlen(text)) : NULL;
}

static void gather_unread(Outputs *outputs, const Unread *unread)
{
	Gathered *gathered = &outputs->gathered;
	gathered->unread = arena_more(outputs->arena, gathered->unread, gathered->unreads, &gathered->unread_room,
		sizeof *gathered->unread);
	Unread *own = &gathered->unread[gathered->unreads++];
	*own = *unread;
	own->file = kept(outputs->arena, unread->file);
	own->why = kept(outputs->arena, unread->why);
}

static void gather(Outputs *outputs, const Finished *finished)
{
	outputs->gathered.reference = finished->reference;
	if (finished->criteria == NULL)
		gather_unread(outputs, &finished->unread);
	else
		gather_edition(outputs, finished->criteria);
}

/* Where a file breaks nothing is read any more, so the break is the last item. */
static Unread unread_of(const Verdict *verdict, Arena *keep)
{
	const Finding *item = verdict->items > 0 ? &verdict->item[verdict->items - 1] : NULL;
	Unread unread = { .file = kept(keep, verdict->source->name), .code = item != NULL ? item->code : NULL,
		.why = kept(keep, item != NULL ? item->finding : "the criteria are faulty") };
	if (item != NULL) {
		unread.line = item->spot[0].place.line;
		unread.column = item->spot[0].place.column;
	}
	return unread;
}

static void send_begin(Outputs *outputs, Output *output)
{
	Out *out = out_make(outputs->arena, output->format->escape);
	size_t length;
	output->format->document->begin(out, outputs->arena);
	const char *text = out_text(out, &length);
	send_part(outputs, output, text, length);
}

static void send_end(Outputs *outputs, Output *output)
{
	Out *out = out_make(outputs->arena, output->format->escape);
	size_t length;
	output->format->document->end(out, &outputs->gathered, outputs->arena);
	const char *text = out_text(out, &length);
	send_part(outputs, output, text, length);
}

/* ---- one submittal after the other ---- */

/* What stands before a report: the beginning of all, or what divides two. A report that is empty leaves no gap in a document. */
static void send_frame(Outputs *outputs, Output *output, bool empty)
{
	bool first = outputs->reports == 0;
	const ReportDocument *document = output->format->document;
	if (document != NULL) {
		if (first)
			send_begin(outputs, output);
		if (!empty && output->begun)
			send_literal(outputs, output, document->between);
		output->begun |= !empty;
	} else if (is_json(output->format) && outputs->array) {
		send_literal(outputs, output, first ? "[\n" : ",\n");
	} else if (output->format->frame == REPORT_PAGES && !first) {
		send_literal(outputs, output,
			"\n====================================================================================================\n\n");
	}
}

void outputs_write(const Outputs *outputs, const Verdict *verdict, Finished *finished, Arena *keep)
{
	finished->reference = verdict->cases->reference;
	finished->criteria = verdict->broken_file ? NULL : verdict->cases->criteria;
	if (verdict->broken_file)
		finished->unread = unread_of(verdict, keep);
	for (uint32_t i = 0; i < outputs->count; i++) {
		const ReportFormat *format = outputs->at[i].format;
		Out *out = out_make(keep, format->escape);
		format->write(out, verdict, verdict->cases->arena);
		finished->text[i] = out_text(out, &finished->length[i]);
	}
}

void outputs_send(Outputs *outputs, const Finished *finished)
{
	gather(outputs, finished);
	for (uint32_t i = 0; i < outputs->count; i++) {
		Output *output = &outputs->at[i];
		send_frame(outputs, output, finished->length[i] == 0);
		send_part(outputs, output, finished->text[i], finished->length[i]);
	}
	outputs->reports++;
}

static void close_output(Outputs *outputs, Output *output)
{
	const ReportDocument *document = output->format->document;
	if (document != NULL && outputs->reports == 0)
		send_begin(outputs, output);
	if (document != NULL && document->end != NULL)
		send_end(outputs, output);
	if (is_json(output->format) && outputs->array)
		send_literal(outputs, output, outputs->reports == 0 ? "[\n]\n" : "]\n");
	send_literal(outputs, output, "");
	if (output->file != NULL)
		file_end(output->file);
}

void outputs_close(Outputs *outputs)
{
	for (uint32_t i = 0; i < outputs->count; i++)
		close_output(outputs, &outputs->at[i]);
	flush_out();
}
