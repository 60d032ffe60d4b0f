/* SPDX-License-Identifier: MIT
 * How much more a review costs than reading: both over the same copies of the examples, in one process, by turns.
 *
 * The bound is opening, reading and taking the events of libyaml; the review is all stages and the text, in CPU time of this
 * process. The middle of the ratios of all rounds counts. Beside it stands the limit of the design, and whether it is held. The
 * status is 1 only above a guard, which is the limit where it is held, else about 1.3 times what was measured when it was set: a
 * loaded machine shall not fail, a change that costs a third more shall.
 */
#include "file.h"
#include "pipeline.h"
#include "report.h"

#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>
#include <yaml.h>

enum { COPIES = 300, ROUNDS = 9, LARGEST = 4 * 1024 * 1024 };
enum { STAGE_FILE, STAGE_NODES, STAGE_RECORDS, STAGE_RESOLVE, STAGE_JUDGE, STAGE_ADVISE, STAGE_WRITE, STAGES };

/* What one review needs of the run; `path` are the copies. */
typedef struct {
	Arena *run, *own;
	const Reference *reference;
	const Criteria *criteria;
	const Registers *registers;
	const char *criteria_sha256; /* once a run, as in the program */
	const char **path;
	size_t paths, events, bytes, items;
	char *buffer;
	bool by_stage; /* asks the clock after every stage, which costs time itself */
	double stage[STAGES], last;
} Bench;

static _Noreturn void stop(const char *what)
{
	fprintf(stderr, "bench: %s\n", what);
	exit(2);
}

static double cpu_seconds(void)
{
	struct timespec now;
	clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
	return (double)now.tv_sec + (double)now.tv_nsec * 1e-9;
}

/* ---- the bound ---- */

static size_t read_bare(Bench *bench, const char *path)
{
	struct stat what;
	int from = open(path, O_RDONLY | O_CLOEXEC);
	if (from < 0 || fstat(from, &what) != 0 || what.st_size > LARGEST)
		stop("a copy cannot be opened");
	ssize_t got = read(from, bench->buffer, (size_t)what.st_size);
	close(from);
	if (got != what.st_size)
		stop("a copy cannot be read");
	return (size_t)got;
}

static void take_events(Bench *bench, size_t length)
{
	yaml_parser_t parser;
	if (!yaml_parser_initialize(&parser))
		stop("no memory");
	yaml_parser_set_input_string(&parser, (const unsigned char *)bench->buffer, length);
	for (bool at_end = false; !at_end; bench->events++) {
		yaml_event_t event;
		/* one example shows what YAML does to a file; it ends early for both sides */
		if (!yaml_parser_parse(&parser, &event))
			break;
		at_end = event.type == YAML_STREAM_END_EVENT;
		yaml_event_delete(&event);
	}
	yaml_parser_delete(&parser);
}

static double time_bound(Bench *bench)
{
	bench->events = bench->bytes = 0;
	double start = cpu_seconds();
	for (size_t i = 0; i < bench->paths; i++) {
		size_t length = read_bare(bench, bench->path[i]);
		take_events(bench, length);
		bench->bytes += length;
	}
	return cpu_seconds() - start;
}

/* ---- the review ---- */

static void stage_ends(Bench *bench, int stage)
{
	if (!bench->by_stage)
		return;
	double now = cpu_seconds();
	bench->stage[stage] += now - bench->last;
	bench->last = now;
}

static size_t review_one(Bench *bench, const char *path, const ReportFormat *format)
{
	Arena *arena = bench->own;
	const char *bytes, *why;
	size_t length, written;
	bench->last = bench->by_stage ? cpu_seconds() : 0;
	if (file_read(arena, path, LARGEST, &bytes, &length, &why) != FILE_READ)
		stop("a copy cannot be read");
	Complaints complaints = { .arena = arena };
	const Source *source = source_make(arena, path, bytes, length, SOURCE_SUBMITTAL);
	stage_ends(bench, STAGE_FILE);
	Node *root = read_yaml(arena, source, &complaints);
	stage_ends(bench, STAGE_NODES);
	Submittal *submittal = read_submittal(arena, root, source, bench->reference, &complaints);
	stage_ends(bench, STAGE_RECORDS);
	Inputs inputs = { .submittal = submittal, .criteria = bench->criteria, .reference = bench->reference,
		.registers = bench->registers, .as_of = INT32_MIN };
	Cases *cases = resolve(arena, &inputs);
	stage_ends(bench, STAGE_RESOLVE);
	Verdict *verdict = judge(arena, cases, &complaints, source);
	stage_ends(bench, STAGE_JUDGE);
	advise(verdict, arena);
	stage_ends(bench, STAGE_ADVISE);
	verdict->criteria_sha256 = bench->criteria_sha256;
	if (strcmp(format->name, "text") != 0)
		take_fingerprints(verdict, arena);
	Out *out = out_make(arena, format->escape);
	format->write(out, verdict, arena);
	stage_ends(bench, STAGE_WRITE);
	bench->items += verdict->items;
	out_text(out, &written);
	return written;
}

static double time_review(Bench *bench, const ReportFormat *format, size_t *written)
{
	*written = bench->items = 0;
	double start = cpu_seconds();
	for (size_t i = 0; i < bench->paths; i++) {
		ArenaMark mark = arena_mark(bench->own);
		*written += review_one(bench, bench->path[i], format);
		arena_back(bench->own, mark);
	}
	return cpu_seconds() - start;
}

/* ---- rounds ---- */

static int by_size(const void *a, const void *b)
{
	double x = *(const double *)a, y = *(const double *)b;
	return (x > y) - (x < y);
}

typedef struct {
	const char *name;
	double limit, guard;
} Bound;

static const Bound bounds[] = { { "text", 1.5, 6.2 }, { "ndjson", 4, 8.4 } };

static double middle_of(double *values)
{
	qsort(values, ROUNDS, sizeof *values, by_size);
	return values[ROUNDS / 2];
}

/* Prints two lines; whether the guard holds. */
static bool compare(Bench *bench, const Bound *at)
{
	const ReportFormat *format = report_format(at->name);
	double ratio[ROUNDS], bound[ROUNDS], review[ROUNDS];
	size_t written;
	if (format == NULL)
		stop("a format is missing");
	time_bound(bench);
	time_review(bench, format, &written);
	for (int i = 0; i < ROUNDS; i++) {
		bound[i] = time_bound(bench);
		review[i] = time_review(bench, format, &written);
		ratio[i] = review[i] / bound[i];
	}
	double files = (double)bench->paths, middle = middle_of(ratio);
	printf("%-7s %6.1f us a file, the bound %6.1f us: %.2f times (%.2f to %.2f); %.1f items, %.0f bytes out\n", at->name,
		middle_of(review) / files * 1e6, middle_of(bound) / files * 1e6, middle, ratio[0], ratio[ROUNDS - 1],
		(double)bench->items / files, (double)written / files);
	printf("%-7s limit %.1f: %s; guard %.1f: %s\n", at->name, at->limit, middle <= at->limit ? "held" : "not held", at->guard,
		middle <= at->guard ? "held" : "not held");
	return middle <= at->guard;
}

/* Where the time goes, in microseconds a file. */
static void print_stages(Bench *bench)
{
	static const char *const name[STAGES] = { "file", "nodes", "records", "resolve", "judge", "advise", "text" };
	size_t written;
	bench->by_stage = true;
	time_review(bench, report_format("text"), &written);
	bench->by_stage = false;
	printf("by stage:");
	for (int i = 0; i < STAGES; i++)
		printf(" %s %.1f%s", name[i], bench->stage[i] / (double)bench->paths * 1e6, i + 1 < STAGES ? "," : " us\n");
}

/* ---- the copies ---- */

static const char *copy_example(Bench *bench, const char *folder, const char *from, size_t number)
{
	const char *bytes, *why;
	size_t length;
	ArenaMark mark = arena_mark(bench->own);
	if (file_read(bench->own, from, LARGEST, &bytes, &length, &why) != FILE_READ)
		stop("an example cannot be read");
	const char *path = arena_printf(bench->run, "%s/%05zu.yaml", folder, number);
	file_write(path, bytes, length);
	arena_back(bench->own, mark);
	return path;
}

static void make_copies(Bench *bench, const char *folder)
{
	const char *const *example;
	size_t count;
	if (!file_walk(bench->run, "examples", &example, &count) || count == 0)
		stop("no examples: run at the top folder");
	bench->paths = COPIES;
	bench->path = TAKE(bench->run, const char *, bench->paths);
	for (size_t i = 0; i < bench->paths; i++)
		bench->path[i] = copy_example(bench, folder, example[i % count], i);
	printf("%d copies of %zu examples\n", COPIES, count);
}

int main(void)
{
	Bench bench = { .run = arena_make(), .own = arena_make() };
	Complaints faults = { .arena = bench.run };
	bench.buffer = arena_take(bench.run, LARGEST, 1);
	double start = cpu_seconds();
	bench.reference = read_reference(bench.run);
	bench.criteria = read_criteria(bench.run, "sample-2026", bench.reference, &faults);
	bench.registers = read_registers(bench.run, NULL, bench.reference, &faults);
	if (bench.reference == NULL || bench.criteria == NULL || bench.registers == NULL)
		stop("the sample edition cannot be loaded");
	printf("criteria and registers loaded in %.1f ms\n", (cpu_seconds() - start) * 1e3);
	char folder[] = "/tmp/seamstamp-bench-XXXXXX";
	if (mkdtemp(folder) == NULL)
		stop("no folder for the copies");
	make_copies(&bench, folder);
	bench.criteria_sha256 = criteria_hash(bench.criteria, bench.run);
	bool holds = true;
	for (size_t j = 0; j < sizeof bounds / sizeof *bounds; j++)
		holds = compare(&bench, &bounds[j]) && holds;
	print_stages(&bench);
	double files = (double)bench.paths;
	printf("a file: %.0f bytes, %.0f events\n", (double)bench.bytes / files, (double)bench.events / files);
	for (size_t i = 0; i < bench.paths; i++)
		unlink(bench.path[i]);
	rmdir(folder);
	arena_free(bench.own);
	arena_free(bench.run);
	if (!holds)
		printf("bench: above the guard\n");
	return holds ? 0 : 1;
}
