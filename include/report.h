/* SPDX-License-Identifier: MIT
 * A report format: one name, one function, one file.
 */
#ifndef REPORT_H
#define REPORT_H

#include "complaint.h"
#include "criteria.h"
#include "gaps.h"
#include "log.h"
#include "offers.h"
#include "order.h"
#include "out.h"
#include "node.h"
#include "reference.h"
#include "registers.h"
#include "sheet.h"
#include "takeoff.h"
#include "verdict.h"

/* How the reports of several submittals stand in one output: one behind the other, with a rule between two, or only one. */
typedef enum { REPORT_LINES, REPORT_PAGES, REPORT_ALONE } ReportFrame;

/* A submittal that could not be judged, and where it broke. */
typedef struct {
	const char *file, *code, *why;
	uint32_t line, column;
} Unread;

/* What a document can say at its end, whatever the order in which its submittals were reviewed. */
typedef struct {
	const Criteria **edition; /* by which they were judged, each once */
	uint32_t editions, edition_room;
	Unread *unread;
	uint32_t unreads, unread_room;
	const Reference *reference;
} Gathered;

/* Where the reports of several submittals are one document: what stands before the first, between two that are not empty, and
 * behind the last. */
typedef struct {
	void (*begin)(Out *out, Arena *arena);
	const char *between;
	void (*end)(Out *out, const Gathered *gathered, Arena *arena);
} ReportDocument;

typedef struct {
	const char *name, *title;
	void (*write)(Out *out, const Verdict *verdict, Arena *arena);
	OutEscape escape;
	ReportFrame frame;
	const ReportDocument *document; /* NULL: none */
} ReportFormat;

/* The format of a name, or NULL; the format number `i`, or NULL after the last. */
const ReportFormat *report_format(const char *name);
const ReportFormat *report_format_at(size_t i);

/* ---- the pages of other commands ---- */

/* What a page is printed from; a command fills in its own. */
typedef struct {
	const Sheet *sheet;
	const Takeoff *takeoff;
	const Offers *offers;
	const OrderList *order_list; /* as read */
	const Order *order;
	const Earlier *approved; /* the report an order is held against; NULL: none was given */
	const Verdict *approved_verdict;
	const SubmittalLog *log;
	const EditionCheck *edition;
} Page;

typedef struct {
	const char *page, *name; /* "calcs", "json" */
	void (*write)(Out *out, const Page *page, Arena *arena);
	OutEscape escape;
} PageFormat;

/* The format of a name, or NULL; the names of all of a page, joined by commas. */
const PageFormat *page_format(const char *page, const char *name);
const char *page_formats_listed(const char *page, Arena *arena);

/* ---- pages printed from the tables ---- */

/* What a page may cite. */
typedef struct {
	const Criteria *criteria;
	const Reference *reference;
	const Registers *registers; /* may be NULL */
	Node *example; /* the clean submittal, whose records are named in examples; may be NULL */
} Library;

/* Whose cautions, and the literal that each of their lines begins with ("# " in a YAML file). */
typedef struct {
	const char *command, *lead;
} CautionsFor;
void write_cautions(Out *out, const Reference *reference, CautionsFor what, Arena *arena);

/* A submittal to fill in: what is due at the stage says `unknown`, the rest stands in comments. */
void write_blank_form(Out *out, Stage stage, Arena *arena);

/* Every key of every record, in Markdown. */
void write_form_reference(Out *out, Arena *arena);

/* What a rule or a message asks, and an example of each outcome; false if no code is called so, or begins so before a letter. */
bool write_why(Out *out, const Library *library, const char *code, Arena *arena);

/* The codes `why` knows: number `i` from 0, NULL after the last. */
const char *why_code_at(const Criteria *criteria, size_t i);

/* Each fault at its place, with the line it stands in. */
void write_faults(Out *out, const Complaints *faults);

#endif
