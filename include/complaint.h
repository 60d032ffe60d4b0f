/* SPDX-License-Identifier: MIT
 * Complaint: what a reader noticed, as data. Nothing is printed where it is noticed; judge/ turns complaints into items.
 */
#ifndef COMPLAINT_H
#define COMPLAINT_H

#include "action.h"
#include "record.h"

typedef enum {
#define MESSAGE(name, ...) MESSAGE_##name,
#include "messages.def"
	MESSAGE_COUNT
} MessageId;

typedef struct {
	const char *name, *code;
	Action action;
	const char *finding, *remedy, *why;
} Message;

const Message *message_of(MessageId id);

typedef struct {
	const char *key, *value, *want; /* fill {key}, {value}, {want}; NULL where not used */
	Place also; /* fills {also}; line 0: none */
	const char *where; /* the record it stands in, for people: "Main roof / clips / 2"; may be NULL */
	const Field *accounts_for; /* a misspelt key stands for the key suggested, which is not missing then; may be NULL */
	const void *row; /* the record in which accounts_for counts */
} About;

typedef struct {
	MessageId id;
	Place place;
	About about;
} Complaint;

typedef struct {
	Arena *arena;
	Complaint *at;
	uint32_t count, room;
	uint32_t suggestions; /* made so far, at most 50 */
	bool broken; /* the file as a whole could not be judged: status 2 */
	const Source *const *source; /* of tables: the files in which the places stand, by their ids; NULL for a submittal */
	uint32_t sources;
} Complaints;

void complain(Complaints *complaints, MessageId id, Place place, About about);

/* The finding or remedy of a complaint with its braces filled. */
const char *complaint_text(const Complaint *complaint, const char *template_text, Arena *arena);

#endif
