#!/bin/sh
# SPDX-License-Identifier: MIT
# Runs the scripts of tests/ and test programs, as many at a time as there are processors, and shows them in order. Of a program
# that passes, cmocka's closing line is shown; of one that fails, everything. UNDER may name a program to run them under; BUILD is
# the folder of the programs.
set -u
folder=$(mktemp -d) || exit 2
trap 'rm -rf "$folder"' EXIT
export UNDER="${UNDER:-}" BUILD folder

scripts() {
	for script in tests/*.sh; do
		case ${script##*/} in
		run.sh | lint.sh) ;;
		*) echo "$script" ;;
		esac
	done
}

# The scripts take longest and are started first; of the programs the short ones, which begin with base, last.
# shellcheck disable=SC2016 # the inner shell expands it
{
	scripts
	printf '%s\n' "$@" | sort -r
} | xargs -P "$(nproc)" -I TEST sh -c '
	case $1 in
	*.sh) sh "$1" ;;
	*) $UNDER "$1" ;;
	esac >"$folder/${1##*/}.out" 2>&1
	echo $? >"$folder/${1##*/}.status"' sh TEST

# shown TEST LINES: what a test printed, or all of it where it failed.
failed=0
shown() {
	name=${1##*/}
	if [ "$(cat "$folder/$name.status" 2>/dev/null)" != 0 ]; then
		cat "$folder/$name.out"
		echo "FAILED: $1"
		failed=1
	else
		printf '%-28s %s\n' "$name" "$2"
	fi
}

for program in "$@"; do
	shown "$program" "$(grep -a 'PASSED' "$folder/${program##*/}.out")"
	grep -a 'SKIPPED' "$folder/${program##*/}.out"
done
for script in $(scripts); do
	shown "$script" "$(tail -n 1 "$folder/${script##*/}.out")"
done
exit $failed
