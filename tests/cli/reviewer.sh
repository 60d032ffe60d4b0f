#!/bin/sh
# SPDX-License-Identifier: MIT
# The reviewer's file: his slips are told to him and refuse the review; what he closed, kept and added stands in the letter.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

# review TEXT...: the reviewer's file of the clean submittal's round 1, with more lines behind its head.
review() {
	printf 'for: MC-1042\nround: 1\nreceived: 2026-04-15\n' >"$scratch/review.yaml"
	printf '%s\n' "$@" >>"$scratch/review.yaml"
}

# refused TEXT: the clean submittal is not reviewed, and standard error says why at the file's place.
refused() {
	run 2 review "$examples/clean.yaml" --reviewer review.yaml
	empty out
	has err "$1"
}

own() {
	review 'own:' "  - action: $1" '    where: Main roof' '    finding: valley shown without cleat' "    basis: $2" \
		'    remedy: show the cleat' "    answer_by: $3"
}

own 'SHRUG' 'common practice, no published source' contractor
refused "review.yaml:5:13: SHRUG is no action [REV-02]"
own 'HOLD' 'common practice, no published source' '""'
refused "review.yaml:10:16: answer_by is not stated [REV-03]"
own 'HOLD' '' contractor
refused "basis is not stated [REV-03]"
review 'returned: 2026-04-14'
refused "review.yaml:4:11: returned on 2026-04-14, before it was received on 2026-04-15 [REV-04]"
review 'items: [{number: "1.01", disposition: closed, reason: 5}' ''
refused "review.yaml"
printf 'for: MC-9999\nround: 1\nreceived: 2026-04-15\n' >"$scratch/review.yaml"
refused "review.yaml:1:6: the reviewer's file is for MC-9999 round 1, not for MC-1042 round 1 [REV-01]"
has err "clean.yaml: not reviewed"

# What may not be waived is not closed; the letter is not written.
printf 'for: MC-1043\nround: 1\nreceived: 2026-04-15\nitems:\n  - {number: "1.01", disposition: closed, reason: as agreed}\n' \
	>"$scratch/review.yaml"
sed 's/^submittal: .*/submittal: MC-1043/' "$examples/wrong-clip.yaml" >"$scratch/clip.yaml"
run 2 review clip.yaml --reviewer review.yaml
empty out
has err "review.yaml:5:14: CLP-01a may not be waived: cure it or have the package withdrawn [REV-05]"

# A paper nobody sent, an item that is not there: said, and the review goes on.
review 'papers: [{number: XX-1, seen: yes}]' 'items: [{number: "1.77", disposition: closed, reason: gone}]'
run 0 review "$examples/clean.yaml" --reviewer review.yaml
has err "paper XX-1 is not in the package [REV-06]"
has err "this report has no item 1.77 [REV-07]"
lacks out "XX-1"
lacks out "1.77"

# Closed: its head says so, nobody is asked to answer, and the words of the reviewer stand apart from the remedy.
sed 's/^\( *\)height: 8 in.*/\1height: 4 in/' "$examples/clean.yaml" >"$scratch/curb.yaml"
review 'items: [{number: "1.01", disposition: closed, reason: measured on site}]'
run 0 review curb.yaml --reviewer review.yaml
has out "1.01  CLOSED  Main roof / RTU-1"
has out "      Reviewer   closed: measured on site"
lacks out "To answer"
lacks out "Open:"
run 0 review curb.yaml --reviewer review.yaml --format lines
starts out "curb.yaml:[0-9]*:[0-9]*: CLOSED: "
review 'items: [{number: "1.01", disposition: answered, reason: letter of 2026-04-20}]'
run 1 review curb.yaml --reviewer review.yaml
has out "1.01  REVISE AND RESUBMIT  Main roof / RTU-1"
has out "Open: 1 REVISE AND RESUBMIT (1.01)."
has out "To answer     contractor 1"

# An own item at an area holds the parts of that area.
own 'MAKE CORRECTIONS NOTED' 'common practice, no published source' contractor
run 0 review "$examples/clean.yaml" --reviewer review.yaml
has out "Notes to follow: 1 MAKE CORRECTIONS NOTED (1.01)."
has out "depends on 1.01"
lacks out "nothing found against it"
finish
