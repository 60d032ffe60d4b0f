/* SPDX-License-Identifier: MIT
 * The sheet of the panels: what was measured on the coil against what it is sold as, and how wide a pan it makes.
 */
#include "fetch.h"

double panel_measured_percent_percent(Case *panel)
{
	double measured = GIVEN(panel, panel, Panel, measured_thickness_in);
	double nominal = GIVEN(panel, panel, Panel, thickness_in);
	return ready(panel) ? 100 * measured / nominal : 0;
}

/* A pure number: inches over inches. */
double panel_width_over_thickness_one(Case *panel)
{
	double width = GIVEN(panel, panel, Panel, width_in);
	double thickness = GIVEN(panel, panel, Panel, thickness_in);
	return ready(panel) ? width / thickness : 0;
}
