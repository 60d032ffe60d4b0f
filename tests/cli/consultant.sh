#!/bin/sh
# SPDX-License-Identifier: MIT
# What a sceptical consultant disputed, in the program's own words: each was wrong, or misleading, once.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

# clean EDIT...: reviews the clean submittal after edits of sed.
clean() {
	edits=
	for edit; do edits="$edits$edit; "; done
	sed "$edits" "$examples/clean.yaml" >"$scratch/disputed.yaml"
	run "${status:-1}" review disputed.yaml
	tr '\n' ' ' <"$scratch/out" | tr -s ' ' >"$scratch/line"
}

# Nobody asks for the grade of steel of plywood: the kind of support is the difference.
clean 's/^      item: deck-22/      item: other/; s/kind: steel deck/kind: plywood/; /^      grade: 33 ksi/d; /^      tensile: 45 ksi/d' \
	's|^      thickness: 22 ga|      thickness: 19/32 in|'
has line "the support is plywood; tested-210 was tested on steel deck"
lacks line "grade of steel"

# No ground weakens the wind, and no map gives 60 mph.
clean 's/^    factor: 1.0/    factor: 0.5/'
has line "0.5"
has line "FRM-"
clean 's/basic_speed: 115 mph/basic_speed: 60 mph/'
has line "FRM-"

# A hip roof's letter that says nothing of hips is not said to give 17.1 psf there.
clean 's/shape: gable/shape: hip/; s/slope: "1:12"/slope: "4:12"/'
has line "no engineer's letter states the uplift in zone 2r"
lacks line "zone 2r: 17.1 psf in the letter"

# An older standard has no partially open buildings: that is the reason, not the overhang.
clean 's/enclosure: enclosed/enclosure: partially open/; s/ASCE 7-16/ASCE 7-10/'
has line "this load standard has no internal pressure for this enclosure"
lacks line "no figure gives the pressure of this overhang"

# Under the later standard it has the internal pressure of an enclosed one, so neither paper is the stricter.
status=0 clean '0,/enclosure: enclosed/s//enclosure: partially open/; s/ASCE 7-16/ASCE 7-22/'
has line "the letter asks for no less"

# Where the overhang makes it fail, the finding says so.
clean 's/slope: "1:12"/slope: "4:12"/; s/ASCE 7-16/ASCE 7-22/; s/^  mean_roof_height: 26.5 ft/  mean_roof_height: 24 ft/'
has line "report-33 at a factor of 2; the overhang at the eave governs"

# Two figures are permitted from 60 to 90 ft: the sheet says which was taken.
sed 's/eave_height: 24 ft/eave_height: 75 ft/' "$examples/clean.yaml" >"$scratch/high.yaml"
run 0 calcs high.yaml
tr '\n' ' ' <"$scratch/out" | tr -s ' ' >"$scratch/line"
has line "those of higher buildings are taken; the others are permitted as well"
has line "note: figure 30.5-1"
finish
