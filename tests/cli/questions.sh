#!/bin/sh
# SPDX-License-Identifier: MIT
# `review --format questions`: the conflicts and what designer and engineer must answer, alone, grouped by who must answer.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

run 1 review "$examples/spec-conflict.yaml" --format questions
starts out "QUESTIONS ON A ROOF SUBMITTAL"
has out "TO THE DESIGNER: Example Design Office (invented)"
lacks out "TO THE ENGINEER"
has out 'section 07 41 13, paragraph 2.7.B: "underlay-special or nothing else"'
has out "      Paragraph asks  underlay-special"
has out "      Program asks    item asked for is in the catalogue, or an approval of it is in force"
has out "      Proposed        accept bonded EPDM washers"
has out "      Paragraph asks  at least 30 yr"
has out "      Submitted       20 yr"
has out "[ ] as proposed  [ ] otherwise:"
has out "CAUTIONS"
[ "$(grep -c '^      Question ' "$scratch/out")" -eq 3 ] || fault "not three questions"
[ "$(grep -c 'Answered by' "$scratch/out")" -eq 1 ] || fault "not one group"

# What is no conflict and waits for the contractor is no question; a letter that is not there is one to the engineer.
run 1 review "$examples/messy-reroof.yaml" --format questions
has out "TO THE ENGINEER"
has out "[ENG-01]"
lacks out "[FST-01]"
[ "$(grep -c '^      Question ' "$scratch/out")" -eq 1 ] || fault "not one question"

# The two sides of a letter and the submittal it is for; the designer stands before the engineer.
sed -e '/^specification:/,/^roof_areas:/s/    term: 20 yr/    term: 30 yr/' -e '/^engineering:/,/^specification:/s/    exposure: C/    exposure: B/' \
	"$examples/clean.yaml" >"$scratch/two.yaml"
run 1 review two.yaml --format questions
has out "      Letter says     B"
has out "      Submittal says  C"
[ "$(grep -n 'TO THE DESIGNER' "$scratch/out" | cut -d: -f1)" -lt "$(grep -n 'TO THE ENGINEER' "$scratch/out" | cut -d: -f1)" ] ||
	fault "the designer does not come first"

# Of two issuers neither is the paragraph's own; a slope of the letter stands beside the submittal's; two manuals ask which governs.
sed -e 's/^  workmanship_issuer: Sample Panel Works/  workmanship_issuer: Example Roofing/' -e 's/^      letter: "1:12"/      letter: "1.5:12"/' \
	-e 's/^  detail_manuals: none/  detail_manuals: [First Manual (invented), Second Manual (invented)]/' -e 's/^    scope: structure/    scope: not stated/' \
	"$examples/clean.yaml" >"$scratch/papers.yaml"
run 1 review papers.yaml --format questions
has out "      Must agree with Sample Panel Works (invented)"
has out "      Letter says     1.5:12"
has out "      Submittal says  1:12"
has out "      Proposed        say which manual governs where they differ"
has out "      Asked for       anything but not stated"
[ "$(grep -c 'CONFLICT' "$scratch/out")" -eq 3 ] || fault "not three conflicts"

run 0 review "$examples/clean.yaml" --format questions
has out "No question: nothing found here"
printf 'form: [\n' >"$scratch/cut.yaml"
run 2 review cut.yaml --format questions
starts out "NOT JUDGED"
has out "CAUTIONS"
finish
