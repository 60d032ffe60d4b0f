#!/bin/sh
# SPDX-License-Identifier: MIT
# docs/review.schema.json describes what is printed: no key that it does not know, none that it asks for and is not there. Whether
# each value fits is asked of another's validator by `make check-formats`.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

cat >"$scratch/walk.py" <<'END'
import json, sys

schema = json.load(open(sys.argv[1]))

def followed(part, value):
    """The description that a value falls under: of several, that of its type."""
    while "$ref" in part or "oneOf" in part:
        if "$ref" in part:
            part = schema["$defs"][part["$ref"].rsplit("/")[-1]]
        else:
            kind = {dict: "object", list: "array", type(None): "null"}.get(type(value), "string")
            choices = [schema["$defs"][c["$ref"].rsplit("/")[-1]] if "$ref" in c else c for c in part["oneOf"]]
            part = next(c for c in choices if kind in c["type"])
    return part

def walk(part, value, path):
    part = followed(part, value)
    if isinstance(value, dict) and "properties" in part:
        for key in value:
            assert key in part["properties"], f"{path}.{key} is not described"
        for key in part["required"]:
            assert key in value, f"{path}.{key} is missing"
        for key in value:
            walk(part["properties"][key], value[key], f"{path}.{key}")
    if isinstance(value, list):
        for one in value:
            walk(part["items"], one, path + "[]")
    if "enum" in part:
        assert value in part["enum"], f"{path}: {value}"

for line in sys.stdin:
    walk(schema, json.loads(line), "review")
assert schema["$schema"] == "https://json-schema.org/draft/2020-12/schema"
END
walk() {
	python3 "$scratch/walk.py" docs/review.schema.json <"$scratch/out" >"$scratch/told" 2>&1 || fault "$(tail -n 1 "$scratch/told")"
}

run 1 review "$examples" --format ndjson
[ "$(wc -l <"$scratch/out")" -ge 15 ] || fault "fewer lines than examples"
walk
printf 'for: MC-1043\nround: 1\nreceived: 2026-04-15\n' >"$scratch/review.yaml"
run 1 review "$examples/wrong-clip.yaml" --format ndjson --reviewer review.yaml
walk
: >"$scratch/empty.yaml"
run 2 review empty.yaml --format ndjson
walk

# The walk itself notices both faults.
run 1 review "$examples/wrong-clip.yaml" --format ndjson
sed 's/"finding"/"found"/' "$scratch/out" >"$scratch/out2"
if python3 "$scratch/walk.py" docs/review.schema.json <"$scratch/out2" 2>/dev/null; then fault "a key that is not described is not noticed"; fi
sed 's/"order_line"/"orders"/' "$scratch/out" >"$scratch/out2"
if python3 "$scratch/walk.py" docs/review.schema.json <"$scratch/out2" 2>/dev/null; then fault "a key that is missing is not noticed"; fi
finish
