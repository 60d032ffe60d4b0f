#!/bin/sh
# SPDX-License-Identifier: MIT
# Files, folders, standard input; a bad file does not stop the rest.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

mkdir -p "$scratch/jobs/inner" "$scratch/none"
cp "$examples/clean.yaml" "$scratch/jobs/1.yaml"
cp "$examples/wrong-clip.yaml" "$scratch/jobs/inner/2.yml"
printf 'form: 1\nsubmittal: X\nproject: {name: Y\nstage: bid\n' >"$scratch/jobs/0-broken.yaml"
echo "not a form" >"$scratch/jobs/notes.txt"

run 2 review jobs --format lines
has out "jobs/0-broken.yaml:"
has out "jobs/inner/2.yml:"
lacks out "notes.txt"
has err "jobs/0-broken.yaml: could not be judged"
has err "3 reviewed: 1 with nothing at NOT REVIEWED or worse, 1 with something, 1 could not be judged"
run 2 review jobs --format lines --quiet
lacks err "reviewed"
run 2 review jobs/0-broken.yaml "$examples/clean.yaml"
starts out "NOT JUDGED"
has out "MC-1042"
lacks out "Recommended"
run 2 review none
has err "no .yaml or .yml file"
run 2 review nowhere "$examples/clean.yaml"
has out "MC-1042"

# In a file that breaks, what stands before the break is told too.
printf 'form: 1\nsubmittal: X\nprojct: Z\nwind: {exposure: C\nstage: bid\n' >"$scratch/broken.yaml"
run 2 review broken.yaml --format lines
has out "projct"
lacks out "MIS-0"

# Standard input.
last="seamstamp review -"
"$program" review - --format lines <"$examples/wrong-clip.yaml" >"$scratch/out" 2>"$scratch/err"
status=$?
[ "$status" -eq 1 ] || fault "status $status, not 1"
starts out "\(./\)\?-:[0-9]*:"
: >"$scratch/empty.yaml"
run 2 review empty.yaml
has out "[FIL-04]"

# Criteria that are not there, asked for by the submittal: a name, never a path.
sed 's/^criteria: .*/criteria: ..\/elsewhere/' "$examples/clean.yaml" >"$scratch/elsewhere.yaml"
run 2 review elsewhere.yaml
has out "[FIL-05]"
has out "name one of: sample-2026"

# A faulty edition is refused whole, every fault at its place.
mkdir "$scratch/criteria"
cp data/sample-2026/* "$scratch/criteria/"
run 0 review "$examples/clean.yaml" --criteria criteria
has out "criteria criteria"
sed 's/,clip_hole,/,clip_hola,/; s/^CLP-02,REJECTED/CLP-02,REJECTD/' data/sample-2026/rules.csv >"$scratch/criteria/rules.csv"
run 2 review "$examples/clean.yaml" --criteria criteria
empty out
has err "criteria/rules.csv:"
has err "^^^"
has err "refused as a whole"
run 2 why CLP-02 --criteria criteria
has err "criteria/rules.csv:"

# The reviewer's file makes it a review; of several submittals it speaks of one.
cat >"$scratch/review.yaml" <<'END'
for: MC-1042
round: 1
received: 2026-04-15
END
run 0 review "$examples/clean.yaml" --reviewer review.yaml
starts out "Recommended action: "
lacks out "SELF-CHECK"
has out "Judged as of  2026-04-15"
run 1 review "$examples/wrong-clip.yaml" "$examples/clean.yaml" --reviewer review.yaml
has out "SELF-CHECK"
has out "Recommended action: "
run 2 review "$examples/wrong-clip.yaml" "$examples/bid.yaml" --reviewer review.yaml
has err "none of these submittals is the one"
printf 'for: MC-1042\nround: 1\nrecieved: 2026-04-15\n' >"$scratch/review.yaml"
run 2 review "$examples/clean.yaml" --reviewer review.yaml
empty out
has err "review.yaml:3:1:"
finish
