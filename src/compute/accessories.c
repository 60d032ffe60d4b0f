/* SPDX-License-Identifier: MIT
 * What stands on the roof: whether the panel maker accepts it for what it is used for.
 */
#include "fetch.h"
#include "text.h"

/* An item of the catalogue is accepted for the uses its row names, all else by a letter of approval. */
double accessory_use_accepted_yes(Case *accessory)
{
	double in_catalogue = OF(accessory, part_in_catalogue_yes);
	const char *kind = GIVEN(accessory, accessory, Accessory, kind);
	if (!ready(accessory))
		return 0;
	if (in_catalogue == 0)
		return OF(accessory, part_approved_yes);
	const Accessory *row = accessory->catalogue;
	if (!is_value(&row->accepted_for.given))
		return REFUSE(accessory, "the catalogue names no use for it");
	note(accessory, row->accepted_for.text);
	return is_among(kind, row->accepted_for.text);
}
