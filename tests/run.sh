#!/bin/sh
# SPDX-License-Identifier: MIT
# Runs test programs and then the scripts of tests/. Of a program that passes, cmocka's closing line is shown; of the first that
# fails, everything, and the run ends. UNDER may name a program to run them under; BUILD is the folder of the programs.
set -u
output=$(mktemp) || exit 2
trap 'rm -f "$output"' EXIT

fail() {
	cat "$output"
	echo "FAILED: $1"
	exit 1
}

for program in "$@"; do
	# shellcheck disable=SC2086 # UNDER holds a command with its options
	${UNDER:-} "$program" >"$output" 2>&1 || fail "$program"
	printf '%-28s %s\n' "${program##*/}" "$(grep -a 'PASSED' "$output")"
	grep -a 'SKIPPED' "$output"
done
for script in tests/*.sh; do
	case ${script##*/} in
	run.sh | lint.sh) continue ;;
	esac
	BUILD=$BUILD sh "$script" >"$output" 2>&1 || fail "$script"
	printf '%-28s %s\n' "${script##*/}" "$(tail -n 1 "$output")"
done
exit 0
