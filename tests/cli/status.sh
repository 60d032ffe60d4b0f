#!/bin/sh
# SPDX-License-Identifier: MIT
# The exit status: 0 nothing at or above the gate, 1 something, 2 could not be judged.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

run 0 review "$examples/clean.yaml"
starts out "SELF-CHECK, NOT AN APPROVAL"
lacks out "Recommended action"
empty err
run 1 review "$examples/wrong-clip.yaml"
has out "[CLP-01a]"
run 2 review missing.yaml
has out "missing.yaml:1:1: the file cannot be read"
has err "seamstamp: missing.yaml: could not be judged"
run 2 review
has err "review needs a FILE"
run 2 review /dev/null
has out "FIL-02"

# The gate: any worse action counts, no milder one does; its words in either case, with hyphens or blanks.
run 1 review "$examples/wrong-clip.yaml" --gate REJECTED
run 0 review "$examples/wrong-clip.yaml" --gate not-eligible
run 0 review "$examples/wrong-clip.yaml" --gate "NOT ELIGIBLE"
run 0 review "$examples/import-parts.yaml" --gate=conflict
run 1 review "$examples/import-parts.yaml" --gate hold
run 2 review "$examples/clean.yaml" --gate MILD
has err "the actions are: NOT ELIGIBLE, REJECTED"

# An expired listing is expired by the day given, not by the clock.
run 2 review "$examples/clean.yaml" --as-of 2026-02-30
has err "--as-of takes a day"
run 1 review "$examples/clean.yaml" --as-of 2031-01-01
has out "Judged as of  2031-01-01"

# A full disk.
if [ -c /dev/full ]; then
	last="seamstamp review > /dev/full"
	"$program" review "$examples/clean.yaml" >/dev/full 2>"$scratch/err"
	status=$?
	[ "$status" -eq 2 ] || fault "status $status, not 2"
	has err "seamstamp: cannot write: standard output"
fi
finish
