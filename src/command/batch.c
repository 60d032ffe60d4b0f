/* SPDX-License-Identifier: MIT
 * Threads that work and one that shows. A thread takes the next piece only while fewer than WINDOW wait to be shown, so that
 * finished results cannot pile up behind a slow one.
 */
#include "batch.h"
#include "fail.h"

#include <pthread.h>
#include <sched.h>
#include <signal.h>
#include <time.h>

enum { WINDOW = 64, LOOK_MS = 200 };

typedef struct {
	Arena *arena;
	ArenaMark start;
	void *result;
	bool done;
} Slot;

typedef struct {
	const Batch *batch;
	pthread_mutex_t taking, lock; /* taking: held over `next`, which may wait for a list, and taken before `lock` */
	pthread_cond_t made, shown_one;
	Slot slot[WINDOW];
	size_t taken, shown;
	bool ended; /* nothing is left to take */
} Line;

unsigned processors(void)
{
	cpu_set_t set;
	CPU_ZERO(&set);
	int count = sched_getaffinity(0, sizeof set, &set) == 0 ? CPU_COUNT(&set) : 1;
	return count < 1 ? 1 : count > MOST_JOBS ? MOST_JOBS : (unsigned)count;
}

/* The slot of the next result, once there is room; NULL when nothing is left. */
static Slot *wait_for_room(Line *line)
{
	pthread_mutex_lock(&line->lock);
	while (!line->ended && line->taken - line->shown >= WINDOW)
		pthread_cond_wait(&line->shown_one, &line->lock);
	Slot *slot = line->ended ? NULL : &line->slot[line->taken % WINDOW];
	pthread_mutex_unlock(&line->lock);
	return slot;
}

static Slot *fill_slot(Line *line, Slot *slot)
{
	if (slot->arena == NULL) {
		slot->arena = arena_make();
		slot->start = arena_mark(slot->arena);
	}
	slot->result = line->batch->next(line->batch->user, slot->arena);
	bool more = slot->result != NULL;
	pthread_mutex_lock(&line->lock);
	line->taken += more;
	line->ended = !more;
	if (!more)
		pthread_cond_broadcast(&line->made);
	pthread_mutex_unlock(&line->lock);
	return more ? slot : NULL;
}

/* The next slot with something to do; NULL when nothing is left. */
static Slot *take_slot(Line *line)
{
	pthread_mutex_lock(&line->taking);
	Slot *slot = wait_for_room(line);
	if (slot != NULL)
		slot = fill_slot(line, slot);
	pthread_mutex_unlock(&line->taking);
	return slot;
}

static void *work_on(void *data)
{
	Line *line = data;
	Arena *own = arena_make();
	ArenaMark start = arena_mark(own);
	for (Slot *slot; (slot = take_slot(line)) != NULL;) {
		line->batch->work(line->batch->user, slot->result, slot->arena, own);
		arena_back(own, start);
		pthread_mutex_lock(&line->lock);
		slot->done = true;
		pthread_cond_signal(&line->made);
		pthread_mutex_unlock(&line->lock);
	}
	arena_free(own);
	return NULL;
}

/* ---- the thread that shows ---- */

static void signals_to_end(sigset_t *signals)
{
	sigemptyset(signals);
	sigaddset(signals, SIGINT);
	sigaddset(signals, SIGTERM);
	sigaddset(signals, SIGHUP);
}

/* A signal that waits ends the run here, between two results, where what was shown is whole. */
static void end_if_asked(const sigset_t *signals)
{
	sigset_t waiting;
	sigpending(&waiting);
	for (int signal = 1; signal < NSIG; signal++)
		if (sigismember(signals, signal) == 1 && sigismember(&waiting, signal) == 1)
			pthread_sigmask(SIG_UNBLOCK, signals, NULL);
}

/* Waits for the next result, but looks up now and then. */
static void wait_for_one(Line *line)
{
	struct timespec until;
	clock_gettime(CLOCK_REALTIME, &until);
	until.tv_nsec += LOOK_MS * 1000000L;
	until.tv_sec += until.tv_nsec / 1000000000L;
	until.tv_nsec %= 1000000000L;
	pthread_cond_timedwait(&line->made, &line->lock, &until);
}

static void show_all(Line *line, const sigset_t *signals)
{
	pthread_mutex_lock(&line->lock);
	while (!line->ended || line->shown < line->taken) {
		Slot *slot = &line->slot[line->shown % WINDOW];
		end_if_asked(signals);
		if (line->shown == line->taken || !slot->done) {
			wait_for_one(line);
			continue;
		}
		pthread_mutex_unlock(&line->lock);
		line->batch->show(line->batch->user, slot->result);
		arena_back(slot->arena, slot->start);
		pthread_mutex_lock(&line->lock);
		slot->done = false;
		line->shown++;
		pthread_cond_broadcast(&line->shown_one);
	}
	pthread_mutex_unlock(&line->lock);
}

void run_batch(const Batch *batch)
{
	Line line = { .batch = batch, .taking = PTHREAD_MUTEX_INITIALIZER, .lock = PTHREAD_MUTEX_INITIALIZER,
		.made = PTHREAD_COND_INITIALIZER, .shown_one = PTHREAD_COND_INITIALIZER };
	pthread_t thread[MOST_JOBS];
	sigset_t signals, before;
	unsigned jobs = batch->jobs < 1 ? 1 : batch->jobs > MOST_JOBS ? MOST_JOBS : batch->jobs, running = 0;
	signals_to_end(&signals);
	pthread_sigmask(SIG_BLOCK, &signals, &before); /* the threads take it over: only this one looks */
	while (running < jobs && pthread_create(&thread[running], NULL, work_on, &line) == 0)
		running++;
	if (running == 0)
		fail("no thread could be started", NULL);
	show_all(&line, &signals);
	for (unsigned i = 0; i < running; i++)
		pthread_join(thread[i], NULL);
	for (size_t i = 0; i < WINDOW; i++)
		arena_free(line.slot[i].arena);
	pthread_sigmask(SIG_SETMASK, &before, NULL);
}
