#!/usr/bin/python3
# SPDX-License-Identifier: MIT
# Our tree of every example and test case against another YAML reader, which is told to keep every value as the text it is.
# usage: yaml_against.py TEST_PROGRAM FILE...     (the program is the built tests/unit/read_yaml.c)
import json
import subprocess
import sys

import yaml

program, files = sys.argv[1], sys.argv[2:]
lines = subprocess.run([program, "--dump", *files], check=True, capture_output=True).stdout.decode("utf-8").split("\n")
compared = wrong = 0
for path, line in zip(files, lines):
    if not line:
        continue  # refused, in whole or in part
    with open(path, "rb") as file:
        other = yaml.load(file.read(), Loader=yaml.BaseLoader)
    compared += 1
    if json.loads(line) != other:
        wrong += 1
        print(f"{path}: read differently\n  {line}\n  {json.dumps(other, ensure_ascii=False)}")
print(f"{compared} of {len(files)} files compared, {wrong} read differently")
sys.exit(wrong > 0 or compared == 0)
