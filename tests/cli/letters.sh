#!/bin/sh
# SPDX-License-Identifier: MIT
# What people send beside the letter: requests for prior approval, the reply sheet, the schedule.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

# coast.yaml has two items that need the panel maker's written word: steel clips and steel screws near salt water.
run 1 review "$examples/coast.yaml" --format requests
[ "$(grep -c '^REQUEST FOR PRIOR APPROVAL' "$scratch/out")" -eq 2 ] || fault "not two requests"
has out "REQUEST FOR PRIOR APPROVAL 1 of 2"
has out "Item            1.04  HOLD  [CLP-07]"
has out "To              Sample Panel Works (invented)"
has out "From            Example Roofing (invented)"
has out "made for: steel"
has out "travel: 2 in"
has out "Else allowed    stainless steel"
has out "engineering letter EL-88"
has out "[ ] accepted on the condition below"
has out "CAUTIONS"
run 0 review "$examples/clean.yaml" --format requests
has out "None: no open item"

# The reply sheet has each open item once, and room for the answer.
run 1 review "$examples/coast.yaml" --format replies
[ "$(wc -l <"$scratch/out")" -eq 7 ] || fault "not a head and six items"
has out "submittal,item,action,code,where,finding,submitted,allowed,remedy,answer by,reply,paper"
has out '"MC-1053","1.03","REJECTED","LIF-02","Main roof / clip-a-float (A5, detail 1); Main roof / clip-a-fixed (A5, detail 2)"'
has out ',"contractor","",""'
run 1 review "$examples/bid.yaml" --format replies
[ "$(wc -l <"$scratch/out")" -eq 1 ] || fault "a bid has no numbers to reply to"

# The schedule names exact parts, spacings and hashes, and leaves out what is not cleared.
run 0 review "$examples/clean.yaml" --format schedule
has out "NOT AN APPROVAL"
has out "clip          clip-a-float: "
has out "zone 1' (interior): 24 in"
has out "zone 3 (corner): 12 in"
has out "$(sha256sum "$examples/clean.yaml" | cut -d' ' -f1)"
lacks out "NOT IN IT"
run 1 review "$examples/messy-reroof.yaml" --format schedule
has out "as it is nothing would be approved: 14 items are in the way"
has out "wood-screw-10x1: NOT IN IT, not cleared (1.12)"
has out "1.14          Porch / underlay-felt-30: felt lies against the metal without a slip sheet"
has out "clip spacing  NOT IN IT, with the clips"
sed 's/^\(  - name: Porch\)/\1\n    warranted: no/; /name: Porch/,$ s/^    warranted: yes$//' "$examples/messy-reroof.yaml" >"$scratch/without.yaml"
run 1 review without.yaml --format schedule
has out "roof area     Porch"
printf 'form: 1\nsubmittal: {\n' >"$scratch/broken.yaml"
for format in requests schedule replies; do
	run 2 review broken.yaml --format $format
	lacks out "ROOF AREA"
done
finish
