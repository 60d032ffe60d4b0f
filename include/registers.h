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

/* Whether an approval is of the package as a whole: its item is the submittal's number, plain or behind the word. */
bool is_package_approval(const Approval *row, const Submittal *submittal);

/* Whether it is for a project of this name, or for all. */
bool is_approval_for(const Approval *row, const Text *project);

#endif
