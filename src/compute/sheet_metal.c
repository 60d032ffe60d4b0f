/* SPDX-License-Identifier: MIT
 * The sheet of the panels: what was measured on the coil against what it is sold as.
 */
#include "fetch.h"

double panel_measured_percent_percent(Case *panel)
{
	double measured = GIVEN(panel, panel, Panel, measured_thickness_in);
	double nominal = GIVEN(panel, panel, Panel, thickness_in);
	return ready(panel) ? 100 * measured / nominal : 0;
}
