#!/usr/bin/python3
# SPDX-License-Identifier: MIT
# Working days against Python's calendar, which walks day by day: over years, leap days, weekends and holidays.
# usage: workdays_against.py TEST_PROGRAM    (the program is the built tests/unit/base_date.c)
import datetime
import random
import subprocess
import sys

DAY = datetime.timedelta(days=1)
chance = random.Random(2026)
cases = []
for _ in range(3000):
    first = datetime.date(1999, 1, 1) + DAY * chance.randrange(12000)
    last = first + DAY * chance.randrange(-5, 400)
    holidays = sorted(first + DAY * chance.randrange(-30, 430) for _ in range(chance.randrange(12)))
    cases.append((first, last, holidays))

lines = "".join(" ".join(str(d) for d in (first, last, *holidays)) + "\n" for first, last, holidays in cases)
said = subprocess.run([sys.argv[1], "--workdays"], input=lines.encode(), check=True, capture_output=True).stdout.decode().split("\n")
wrong = 0
for (first, last, holidays), line in zip(cases, said):
    days, at, reached = 0, first, first
    while at < last:
        at += DAY
        if at.isoweekday() <= 5 and at not in holidays:
            days, reached = days + 1, at
    if line != f"{days} {reached}":
        wrong += 1
        print(f"{first} to {last} with {[str(h) for h in holidays]}: {line}, not {days} {reached}")
print(f"{len(cases)} spans of working days compared, {wrong} differ")
sys.exit(wrong > 0 or len(said) != len(cases) + 1)
