/* SPDX-License-Identifier: MIT
 * Screw sizes to diameters: numbers by the reference table of screws, fractions as the inches they are.
 */
#include "quantity.h"

#include <string.h>
#include <strings.h>

/* `12` of `#12`, `No. 12`, `no 12`; NULL if no such sign stands in front. */
static const char *behind_sign(const char *text)
{
	size_t n = *text == '#' ? 1 : strncasecmp(text, "no.", 3) == 0 ? 3 : strncasecmp(text, "no", 2) == 0 ? 2 : 0;
	const char *at = text + n;
	while (*at == ' ')
		at++;
	return n > 0 ? at : NULL;
}

static double numbered(const char *number, const Reference *reference)
{
	char size[4] = "#";
	size_t length = strspn(number, "0123456789");
	if (reference == NULL || length == 0 || length > 2 || number[length] != '\0')
		return 0;
	memcpy(size + 1, number, length);
	return screw_diameter(reference, size);
}

bool read_screw_size(const char *text, size_t length, const Reference *reference, double *diameter_in)
{
	char plain[QUANTITY_LONGEST];
	if (!plain_text(text, length, plain) || *plain == '-')
		return false;
	const char *number = behind_sign(plain);
	if (number != NULL) {
		*diameter_in = numbered(number, reference);
		return *diameter_in > 0;
	}
	Quantity q = read_quantity(text, length, UNIT_in, diameter_in);
	/* A fraction without a unit is the name of a size; a plain 12 may be a number or millimeters. */
	return (q == QUANTITY_READ || (q == QUANTITY_BARE && strchr(plain, '/') != NULL)) && *diameter_in > 0;
}
