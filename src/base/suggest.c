/* SPDX-License-Identifier: MIT
 * The nearest word by edit distance: letters changed, left out, put in, or two neighbors swapped. Letters of either case are
 * one, and a blank, a hyphen and an underscore are one. Texts are bounded, so that the table fits the stack and time stays small.
 */
#include "suggest.h"

#include <ctype.h>
#include <stdbool.h>
#include <string.h>

enum { LONGEST = 40, MOST_EDITS = 3 };

static char folded(char c)
{
	return c == ' ' || c == '-' ? '_' : (char)tolower((unsigned char)c);
}

static int least(int a, int b)
{
	return a < b ? a : b;
}

static int edits(const char *a, size_t a_length, const char *b, size_t b_length)
{
	int cost[LONGEST + MOST_EDITS + 1][LONGEST + MOST_EDITS + 1];
	for (size_t i = 0; i <= a_length; i++)
		cost[i][0] = (int)i;
	for (size_t j = 0; j <= b_length; j++)
		cost[0][j] = (int)j;
	for (size_t i = 1; i <= a_length; i++)
		for (size_t j = 1; j <= b_length; j++) {
			char x = folded(a[i - 1]), y = folded(b[j - 1]);
			int best = least(cost[i - 1][j], cost[i][j - 1]) + 1;
			best = least(best, cost[i - 1][j - 1] + (x != y));
			if (i > 1 && j > 1 && x == folded(b[j - 2]) && y == folded(a[i - 2]))
				best = least(best, cost[i - 2][j - 2] + 1);
			cost[i][j] = best;
		}
	return cost[a_length][b_length];
}

int suggest(const char *text, const char *const *word, size_t count)
{
	size_t length = strlen(text);
	if (length > LONGEST)
		return -1;
	int bound = least((int)length / 3, MOST_EDITS), nearest = -1;
	for (size_t i = 0; i < count && bound >= 0; i++) {
		size_t other = strlen(word[i]);
		size_t apart = other > length ? other - length : length - other;
		if (apart > (size_t)bound)
			continue;
		int n = edits(text, length, word[i], other);
		if (n <= bound) {
			nearest = (int)i;
			bound = n - 1; /* only a nearer one goes before it */
		}
	}
	return nearest;
}
