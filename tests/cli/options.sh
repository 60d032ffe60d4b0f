#!/bin/sh
# SPDX-License-Identifier: MIT
# Commands and options: help, suggestions, no abbreviations, values that are wrong.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

run 0
has out "seamstamp review mine.yaml"
run 0 --help
has out "seamstamp review mine.yaml"
run 0 --version
starts out "seamstamp [0-9]"
run 0 help review
starts out "seamstamp review \[OPTION\]"

for command in review form why; do
	run 0 "$command" --help
	starts out "seamstamp $command \[OPTION\]"
	has out "--help"
	has out "Status: 0"
	empty err
	run 0 "$command" -h
	run 0 "$command" whatever --help
done
run 0 review --help
for option in criteria register reviewer as-of format sheet output gate units quiet previous reports replies jobs files-from; do has out "--$option"; done
for option in blank stage; do lacks out "--$option"; done

run 2 reveiw "$examples/clean.yaml"
has err "did you mean review?"
run 2 "$examples/clean.yaml"
has err "to review a file: seamstamp review"
run 2 review --fromat text "$examples/clean.yaml"
has err "no option --fromat; did you mean --format?"
run 2 review --form text "$examples/clean.yaml"
has err "no option --form"
run 2 review -q "$examples/clean.yaml"
has err "no option -q"
run 2 review --stage bid "$examples/clean.yaml"
has err "no option --stage"
run 2 review "$examples/clean.yaml" --gate
has err "--gate needs ACTION behind it"
run 2 review "$examples/clean.yaml" --quiet=yes
has err "--quiet takes no value"
run 2 review "$examples/clean.yaml" --gate HOLD --gate REJECTED
has err "--gate is given twice"
run 2 review "$examples/clean.yaml" --format jsn
has err "did you mean json?"
run 2 review "$examples/clean.yaml" --units metric
has err "--units takes us or si"
run 2 review "$examples/clean.yaml" --criteria nowhere
has err "one of: sample-2026"

# Behind -- a word is a file, whatever it looks like.
cp "$examples/clean.yaml" "$scratch/--quiet"
run 0 review -- --quiet
has out "MC-1042"

# What a user types comes back escaped.
run 2 "$(printf 'a\033[31mb')"
has err 'a\x1b[31mb'
finish
