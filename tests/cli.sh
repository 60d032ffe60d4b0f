#!/bin/sh
# SPDX-License-Identifier: MIT
# The program as its users call it: runs every script of tests/cli/. BUILD names the folder of the program.
set -u
count=0
for script in tests/cli/*.sh; do
	[ "$script" = tests/cli/common.sh ] && continue
	sh "$script" || { echo "FAILED: $script"; exit 1; }
	count=$((count + 1))
done
echo "$count scripts passed"
