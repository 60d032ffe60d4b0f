#!/bin/sh
# SPDX-License-Identifier: MIT
# The blank form reads back without a reader's message; the page of keys is the one in docs/.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

for stage in bid application order close-out; do
	run 0 form --blank --stage "$stage"
	has out "stage: $stage"
	has out "# CAUTIONS"
	cp "$scratch/out" "$scratch/$stage.yaml"
	run 1 review "$stage.yaml" --format lines
	for family in FIL YML FRM TAB; do lacks out "[$family-"; done
	has out "unknown: "
done

# Uncommented, all of it still reads: every example is a value of its key.
sed 's/^\( *\)# \(\(- \)\{0,1\}[a-z_]*:\)/\1\2/' "$scratch/application.yaml" >"$scratch/whole.yaml"
run 1 review whole.yaml --format lines
for family in FIL YML FRM; do lacks out "[$family-"; done

run 0 form --reference
cmp -s "$scratch/out" docs/form.md || fault "docs/form.md is not what the program prints"
has out "| \`thickness\` |"
run 2 form
has err "form needs --blank or --reference"
run 2 form --blank --reference
run 2 form --blank --stage never
has err "bid, application, order or close-out"
run 2 form --reference --stage bid
run 2 form --blank extra
finish
