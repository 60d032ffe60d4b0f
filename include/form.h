/* SPDX-License-Identifier: MIT
 * The rows of form.def as structs and as record kinds. A number's unit is part of its member's name: `panel->thickness_in`
 * exists, `panel->thickness_mm` does not compile.
 */
#ifndef FORM_H
#define FORM_H

#include "record.h"

#define RECORD(R, name) typedef struct R { Given given;
#define NAME(R, key, ...) Text key;
#define TEXT_AS(R, member, ...) Text member;
#define TEXTS(R, key, ...) Texts key;
#define WORD_AS(R, member, ...) Word member;
#define NUMBER(R, key, unit, ...) Number key##_##unit;
#define SIZE(R, key, ...) Number key##_in;
#define DATE(R, key, ...) Date key;
#define YES(R, key, ...) Yes key;
#define MARK(R, key, ...) Text key;
#define BY_ZONE(R, key, unit, ...) ByZone key##_##unit;
#define ONE(R, key, T, ...) T key;
#define LIST(R, key, T, ...) union { List list; struct { Given given; uint32_t count; T *row; } of; } key;
#define END(R) } R;
#include "form.def"

typedef enum {
#define RECORD(R, name) KIND_##name,
#include "form.def"
	RECORD_KINDS
} RecordKind;

#define RECORD(R, name) extern const Record R##_record;
#include "form.def"

/* Whether a kind is one of the parts; RECORD_KINDS stands for every kind of part. */
bool is_part(RecordKind kind);

/* The record of a kind. */
const Record *record_of(RecordKind kind);

/* Whether a word was said and is this one. */
bool is_word(const Word *word, const char *text);

#endif
