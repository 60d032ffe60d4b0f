/* SPDX-License-Identifier: MIT
 * What a row of the log says in numbers.
 */
#include "log.h"

uint32_t log_in_the_way(const LogRow *row)
{
	uint32_t count = 0;
	for (int action = 0; action < ACTION_COUNT; action++)
		count += action <= ACTION_NOT_REVIEWED ? row->open[action] : 0;
	return count;
}

bool log_days(const SubmittalLog *log, const LogRow *row, int32_t *days)
{
	int32_t end = row->until != NO_DAY ? row->until : log->as_of;
	*days = row->since != NO_DAY && end != NO_DAY ? end - row->since : 0;
	return row->since != NO_DAY && end != NO_DAY && end >= row->since;
}

bool log_margin(const SubmittalLog *log, const LogRow *row, int32_t *days)
{
	*days = row->needed_by != NO_DAY && log->as_of != NO_DAY ? row->needed_by - log->as_of : 0;
	return row->needed_by != NO_DAY && log->as_of != NO_DAY;
}
