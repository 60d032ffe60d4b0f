/* SPDX-License-Identifier: MIT
 * Registers: what the panel maker keeps from day to day, apart from the edition.
 */
#ifndef REGISTERS_H
#define REGISTERS_H

#include "form.h"

#define REGISTER_TABLES(TABLE) \
	TABLE(approvals, Approval, "approvals.csv") \
	TABLE(variances, Variance, "variances.csv") \
	TABLE(installers, Installer, "installers.csv") \
	TABLE(machines, Machine, "machines.csv")

typedef struct Registers {
	const char *folder;
#define REGISTER_MEMBER(member, R, file) struct { uint32_t count; const R *row; const Source *source; } member;
	REGISTER_TABLES(REGISTER_MEMBER)
#undef REGISTER_MEMBER
	const Source *const *source;
	uint32_t count;
} Registers;

#endif
