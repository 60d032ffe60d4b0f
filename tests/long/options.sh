#!/bin/sh
# SPDX-License-Identifier: MIT
# Every construction of a small catalogue on five roofs, written out and reviewed, against what `options` offers.
set -u
python3=/usr/bin/python3
[ -x "$python3" ] || python3=python3
"$python3" tests/long/options.py "$BUILD/seamstamp"
