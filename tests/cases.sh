#!/bin/sh
# SPDX-License-Identifier: MIT
# Whole outputs: each folder of tests/cases/text/ holds command.txt, the arguments of seamstamp in one line, and expected.txt, what
# it prints and its status. With --accept the expected texts are rewritten; the difference is the review.
set -u
program=${BUILD:-build}/seamstamp
output=$(mktemp) || exit 2
trap 'rm -f "$output"' EXIT
count=0
failed=0
for folder in tests/cases/text/*/; do
	[ -f "$folder/command.txt" ] || continue
	# shellcheck disable=SC2046 # arguments are words without blanks
	NO_COLOR=1 "$program" $(cat "$folder/command.txt") >"$output" 2>&1
	echo "status $?" >>"$output"
	count=$((count + 1))
	if [ "${1:-}" = --accept ]; then
		cmp -s "$output" "$folder/expected.txt" || { cp "$output" "$folder/expected.txt"; echo "rewritten: ${folder}expected.txt"; }
	elif ! diff -u "$folder/expected.txt" "$output"; then
		failed=$((failed + 1))
	fi
done
[ "$count" -gt 0 ] || { echo "no cases"; exit 1; }
[ "$failed" -eq 0 ] || { echo "$failed of $count outputs are not as expected; after reading the differences: make accept"; exit 1; }
echo "$count outputs as expected"
