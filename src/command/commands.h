/* SPDX-License-Identifier: MIT
 * What each command does with its arguments; each gives the exit status.
 */
#ifndef COMMAND_COMMANDS_H
#define COMMAND_COMMANDS_H

#include "command.h"

int command_review(const Arguments *arguments);
int command_calcs(const Arguments *arguments);
int command_options(const Arguments *arguments);
int command_takeoff(const Arguments *arguments);
int command_order(const Arguments *arguments);
int command_log(const Arguments *arguments);
int command_criteria(const Arguments *arguments);
int command_form(const Arguments *arguments);
int command_why(const Arguments *arguments);

#endif
