#!/bin/sh
# SPDX-License-Identifier: MIT
# A letter below the computed uplift: the engineer is asked, and told which inputs give his figures. The figures here were worked
# out with a pocket calculator from the standards' formulas (115 mph, Exposure C, 24 ft, 600 ft above the sea; 75 ft by the older
# edition), at allowable level and 10 sq ft unless said, and typed.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

# letter INTERIOR FIELD PERIMETER CORNER EDIT...: the clean submittal with these pressures in its letter, and more edits.
letter() {
	pressures="s/interior: 17.1 psf/interior: $1 psf/; s/field: 29.8 psf/field: $2 psf/; s/perimeter: 39.3 psf/perimeter: $3 psf/"
	pressures="$pressures; s/corner: 53.5 psf/corner: $4 psf/"
	shift 4
	edits=
	for edit; do edits="$edits; $edit"; done
	sed "$pressures$edits" "$examples/clean.yaml" >"$scratch/letter.yaml"
	run 1 review letter.yaml
	tr '\n' ' ' <"$scratch/out" | tr -s ' ' >"$scratch/line"
}

# told WORDS: what the remedy says.
told() {
	has line "Remedy engineer to confirm the inputs or correct the letter; within 1 psf its figures are those of $1 Answer by engineer"
}

letter 12.0 20.9 27.5 37.5
told "Exposure B"
letter 17.1 23.2 30.9 36.7
told "effective area 100 sq ft"
letter 17.1 29.8 39.3 53.5 's/level: ASD/level: strength/'
told "allowable level"
letter 15.5 27.0 35.6 48.5 's/^    height: 24 ft/    height: 15 ft/'
told "height 15 ft"
# The older edition and its low figures at 75 ft, which a roof 120 ft wide may take.
high='s/eave_height: 24 ft/eave_height: 75 ft/; s/ASCE 7-16/ASCE 7-10/; s/^    height: 24 ft/    height: 75 ft/'
letter 24.3 24.3 40.7 61.3 "$high"
told "the figures of low buildings"
letter 32.5 32.5 51.0 69.5 "$high"
lacks out "ENG-22"
letter 20 21 22 23
has line "no edition, exposure, enclosure, height, area or load level that was tried gives its figures, nor any two of them"
finish
