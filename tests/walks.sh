#!/bin/sh
# SPDX-License-Identifier: MIT
# What the README tells its readers to do, done from beginning to end: runs every script of tests/walks/.
set -u
count=0
for script in tests/walks/*.sh; do
	sh "$script" || { echo "FAILED: $script"; exit 1; }
	count=$((count + 1))
done
echo "$count walks passed"
