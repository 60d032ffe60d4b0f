/* SPDX-License-Identifier: MIT
 * Judging: what the files of judge/ share while one submittal is judged.
 *
 * Everything found becomes a Raw: one code at one record. What a rule waits for becomes a Wait. At the end raws are held back,
 * sorted and grouped into the findings of the verdict, so that nothing points into the verdict before it stands.
 */
#ifndef JUDGE_JUDGE_H
#define JUDGE_JUDGE_H

#include "hash.h"
#include "history.h"
#include "verdict.h"

enum {
	MOST_ITEMS = 10000,
	MOST_RAWS = 100000, /* before grouping */
	MOST_NOT_YETS = 10000,
	MOST_WAITS = 100000,
	MOST_TEXT = 200,    /* bytes of one value as quoted in a finding */
	MOST_ACCOUNTS = 64, /* readers suggest a key for the first 50 */
	MOST_TOLD = 20      /* places whose own words are put into one finding */
};

/* Where something stands in the order of the form, whatever the order of keys in the file. */
typedef struct {
	uint32_t area;                /* from 1; 0: the submittal itself */
	uint32_t outer, index, inner; /* offset of the list in its record, number in the list, offset in the record */
} Position;

typedef enum { WAIT_VALUE, WAIT_REASON, WAIT_BORROWED } WaitKind;

/* One thing that rules wait for. */
typedef struct Wait {
	const void *key[2]; /* the Given asked for, or a record and what is missing there */
	WaitKind kind;
	const Given *given; /* NULL where no field is known */
	const Field *field;
	const Case *at;
	const char *what, *reason; /* in words, where there is no field; why refused */
	uint64_t *rules;           /* one bit a rule */
	uint32_t raw;              /* number + 1 of the raw that asks for it */
	bool not_due;              /* the form does not ask for it at this stage */
	struct Wait *next;
} Wait;

/* One code at one record. */
typedef struct {
	FoundBy found_by;
	Action action;
	MessageId message; /* of what is missing or refused */
	const Rule *rule;
	const Complaint *complaint;
	const OwnItem *own;
	const Case *judged, *where; /* the case of the rule, and the record it is shown at */
	const Case *area;           /* of a reader's message whose record is not known: its roof area, if that is */
	const Field *field;         /* what is missing, or what the rule stands at */
	const char *what, *reason;  /* of what is missing: the value in words; an example, a party or a reason */
	Place place;
	Position position;
	uint32_t number; /* order of finding */
	uint32_t cause;  /* number + 1 of the raw it waits for, by `after` */
	uint32_t item;   /* number + 1 of the group it ended in */
	Wait *wait;      /* of a value: the rules that wait for it */
	const About *about; /* of FOUND_BY_ROUNDS: fills the message */
	const EarlierItem *earlier; /* the item of an earlier round that it is */
	uint32_t earlier_place;
	ItemState state;
	const char *note; /* why it is in that state */
} Raw;

/* A rule that could not be judged; becomes a NotYet when items are numbered. */
typedef struct {
	const Rule *rule;
	const Case *where;
	const Wait *wait;
	uint32_t cause; /* number + 1 of a raw */
} Open;

/* One item on the way: the raws in it. */
typedef struct {
	Raw **raw;
	uint32_t raws, room;
	uint64_t *rules; /* that wait for it, one bit each */
} Group;

/* What a comparison is about, or a rule wants it to be about: a code of each word, 0 where it is open. */
typedef struct {
	uint32_t with, part, attribute;
} Subject;

/* Where one rule is met. */
typedef struct {
	Spot *at;
	uint32_t count, room;
} Mets;

typedef struct {
	Arena *arena;
	Cases *cases;
	const Complaints *complaints;
	Verdict *verdict;
	Stage stage;
	Raw **raw;
	uint32_t raws, raw_room;
	uint32_t left_out; /* raws beyond the limit */
	bool rejects;      /* an open item rejects the whole package */
	Assumption *assumed;
	uint32_t assumed_room;
	Assumption *aside; /* said not to apply */
	uint32_t aside_room;
	Hash *waits, *texts;          /* by their key; equal texts once */
	Hash *broken;                 /* raws of broken rules by rule and record */
	Hash *messages;               /* raws of readers by place */
	Raw *accounts[MOST_ACCOUNTS]; /* readers' messages that account for a missing key */
	uint32_t accounting;
	Wait *first_wait, *last_wait;
	uint32_t wait_count;
	Open *open;
	uint32_t opens, open_room;
	Raw **sorted; /* raws not held back, in order */
	uint32_t sorted_count;
	Group *group;
	uint32_t groups, group_room;
	const WaitingList *const *waiting[RECORD_KINDS]; /* waiting lists by kind */
	uint32_t waitings[RECORD_KINDS];
	Subject *subject; /* of each comparison */
	Mets *mets;       /* NULL: nobody asks where rules are met */
	const History *history; /* NULL: no earlier report, or that of a bid */
	struct Matching *matching; /* match.c's own */
	Hash *taken_out, *missing_keys, *shown; /* made when the first asks */
	Hash *outcomes; /* how each rule came out at each record; NULL where no round needs it */
} Judging;

/* ---- judge.c ---- */

/* A new raw, or NULL beyond the limit; its action counts all the same. Pointers to raws stay good. */
Raw *raw_add(Judging *judging, const Raw *raw);

/* One rule over its records, once the judging has begun. */
Judging judging_begun(Arena *arena, Cases *cases);
void judge_rule(Judging *judging, const Rule *rule);

/* ---- subjects.c ---- */

void fill_subjects(Judging *judging);
Subject subject_of_rule(const Rule *rule);

/* Whether a comparison can be what a rule wants: false only if some word differs. */
static inline bool may_be(const Subject *is, const Subject *wanted)
{
	return (is->with == wanted->with || is->with == 0 || wanted->with == 0) &&
	       (is->part == wanted->part || is->part == 0 || wanted->part == 0) &&
	       (is->attribute == wanted->attribute || is->attribute == 0 || wanted->attribute == 0);
}

/* ---- waits.c ---- */

/* The wait for a value, a reason or a construction; made if need be; NULL beyond the limit. */
Wait *wait_for(Judging *judging, const Wait *wanted);

/* The wait for a value if there is one. */
Wait *wait_found(const Judging *judging, const Given *given);

/* Notes that a rule could not be judged at a case (NULL: the list of its records waits), and what it waits for. */
void wait_tested(Judging *judging, const Rule *rule, const Case *at, const Tested *tested);
void wait_list(Judging *judging, const Rule *rule, const WaitingList *list);
void open_add(Judging *judging, const Open *open);

/* What a wait is called in the list of rules not judged. */
const char *wait_words(const Judging *judging, const Wait *wait);

/* Items for refused facts and borrowed capacities. */
void raise_waits(Judging *judging);

/* ---- missing.c ---- */

/* An item for what is missing at a record. `raw` has message, where, field, what and reason. */
Raw *raise_missing(Judging *judging, const Raw *raw, Wait *wait);
void find_missing(Judging *judging);

/* ---- readers.c ---- */

void add_complaints(Judging *judging);

/* The raw of the reader's message that stands for an unreadable value, or accounts for a missing key. */
Raw *complaint_at(Judging *judging, const Place *place);
Raw *complaint_for(Judging *judging, const Field *field, const void *row, const void *submitted);

/* ---- place.c ---- */

/* The record something found at a case is shown at: of a comparison its part, of a role or paper the record that lacks it. */
const Case *stands_at(const Case *at);
/* Whether a value is one of the record's own. */
bool stands_in(const Case *at, const Given *given);
Position position_of(const Case *where, const Given *given);
int position_compare(const Position *a, const Position *b);

/* The place of a value, if it stands in the submittal, else of the nearest record that has one. */
Place place_of(const Case *where, const Given *given);

/* "support.thickness": the record a field belongs to and its key; "the thickness"-like words of its title. */
const char *field_path(const Field *field, Arena *arena);
const char *field_words(const Field *field, Arena *arena);
const char *lower_first(const char *title, Arena *arena);
const char *kind_words(RecordKind kind, Arena *arena);

/* ---- wording.c ---- */

/* A broken rule at the cases of one item. */
typedef struct {
	const Rule *rule;
	const Case *const *at;
	uint32_t count;
	Tested tested; /* at the first */
	Side submitted, limit;
	int digits;
} Told;

void tell(Told *told, Arena *arena);
const char *told_text(const Told *told, const Wording *wording, const Advice *advice, Arena *arena);

/* ---- sides.c ---- */

/* Text cut to MOST_TEXT bytes between characters. */
const char *cut_text(const char *text, Arena *arena);
typedef struct {
	const Operand *operand;
	Unit unit; /* of `number` */
	int digits;
} Shown;
const char *value_text(const OperandValue *value, const Shown *shown, const Reference *reference, Arena *arena);
Unit unit_of(const OperandValue *value, const Operand *operand);

/* As typed; NULL where it was not. */
const char *typed_text(const OperandValue *value, const Operand *operand);
void tell_sides(Told *told, Arena *arena);

/* ---- rounds ---- */

/* How a rule came out at the record where its items stand, over all that it was judged on there: bits. */
enum { CAME_MET = 1, CAME_BROKEN = 2, CAME_WAITING = 4, CAME_NOT_APPLICABLE = 8 };
void note_outcome(Judging *judging, const Rule *rule, const Case *judged, TestOutcome outcome);
unsigned outcome_of(const Judging *judging, const Rule *rule, const Case *where);

/* Raws for papers the reviewer has not seen, and for what the round before shows: what changed; raws matched with earlier
 * items, and those of earlier items that were not found again; the variances of the register; replies and conditions; at last
 * these matched as well. */
void raise_unseen(Judging *judging);
void raise_changes(Judging *judging);
void match_earlier(Judging *judging);
void raise_replies(Judging *judging);
void apply_variances(Judging *judging);
void match_late(Judging *judging);

/* Whether a place of an earlier item is settled in this round, though nothing of it was found: sets state and note. */
void settle_place(Judging *judging, Raw *raw, bool is_double);

/* Whether a reply names a paper that the reviewer has seen, by which a condition is shown done; that paper, or NULL. */
const char *shown_by(Judging *judging, const EarlierItem *item);
bool is_paper_seen(const Judging *judging, const char *number);
const char *shown_words(Judging *judging, const char *paper);

/* A raw of one of these messages. */
Raw *raise_of_round(Judging *judging, const Raw *raw, MessageId message, About about);

/* Whether something of a record, or of what stands around it in its roof area, was taken out since the round before. */
bool is_taken_out(Judging *judging, const Case *where);

/* The texts of an item that only an earlier round found. */
void fill_carried(Judging *judging, const Raw *raw, Finding *item);
void settle_items(Judging *judging);

uint64_t fingerprint_of(const char *code, const char *path, const char *field);

/* What tells two things at one record apart: the field, else what is missing, else the record and key a reader names. */
const char *spot_field(const Raw *raw, Arena *arena);

/* What this item printed as submitted and as allowed. */
void tell_raw(const Raw *raw, Told *told, Arena *arena);

/* ---- the rest ---- */

const char *raw_code(const Raw *raw);

/* Who is named by `by others`. */
const char *missing_party(const Raw *raw);
KnownBy basis_known_by(const Reference *reference, const char *basis);

/* Which rules are broken where; the raw of a broken cause of a rule at a case, by `after`, or NULL. */
void note_broken(Judging *judging);
const Raw *cause_of(const Judging *judging, const Rule *rule, const Case *judged);
void hold_back(Judging *judging);
void group_raws(Judging *judging);
void number_items(Judging *judging);

/* The texts of one item from its raws; `number.c` has given it its number. */
void fill_item(Judging *judging, const Group *group, Finding *item);
void add_own_items(Judging *judging);

/* Whether the reviewer's file is for this submittal and round. */
bool is_review_for(const Review *review, const Submittal *submittal);

/* What a disposition makes of an item, and whether it may: what no variance waives, no disposition closes. */
ItemState state_for(const char *disposition);
bool may_dispose(const Finding *item, ItemState state);

/* The item of a number such as 1.03; NULL if this report has none. */
Finding *item_numbered(const Verdict *verdict, const char *number);
void apply_dispositions(Judging *judging);
void find_unverified(Judging *judging);
void clear_parts(Judging *judging);
void conclude(Judging *judging);

#endif
