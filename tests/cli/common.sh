# shellcheck shell=sh
# SPDX-License-Identifier: MIT
# What the scripts share: running the program and asking for its status and its two outputs. Source it first, `finish` last.
set -u
LC_ALL=C.UTF-8
export LC_ALL
case ${BUILD:=build} in
/*) program=$BUILD/seamstamp ;;
*) program=$PWD/$BUILD/seamstamp ;;
esac
# shellcheck disable=SC2034 # the scripts use it
examples=$PWD/examples
scratch=$(mktemp -d) || exit 2
trap 'rm -rf "$scratch"' EXIT
faults=0

fault() {
	echo "  $last: $1" >&2
	faults=$((faults + 1))
}

# run STATUS WORD...: runs the program in the scratch folder; its outputs are in the files out and err.
run() {
	wanted=$1
	shift
	last="seamstamp $*"
	(cd "$scratch" && "$program" "$@" >out 2>err </dev/null)
	status=$?
	[ "$status" -eq "$wanted" ] || fault "status $status, not $wanted"
}

# has FILE TEXT: the file holds the text; starts FILE TEXT: its first line begins so; lacks FILE TEXT; empty FILE.
has() {
	grep -qF -e "$2" "$scratch/$1" || fault "$1 has no \"$2\""
}

lacks() {
	if grep -qF -e "$2" "$scratch/$1"; then fault "$1 has \"$2\""; fi
}

starts() {
	head -n 1 "$scratch/$1" | grep -q "^$2" || fault "$1 does not start with \"$2\""
}

empty() {
	[ ! -s "$scratch/$1" ] || fault "$1 is not empty"
}

finish() {
	[ "$faults" -eq 0 ] || exit 1
	exit 0
}
