#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Puts every construction that `options` offers for an example into the example, and reviews it: nothing may be found against its
panel, clip, screw, zones or listings; one step wider in any zone must give an item. Of many constructions a dozen are put in.
offers.py PROGRAM EXAMPLE"""
import copy
import json
import subprocess
import sys

import yaml

program, example = sys.argv[1:]
ABOUT = ("zone", "test", "comparison", "panel")


def run(*words, text=None):
    return subprocess.run([program, *words], input=text, capture_output=True, text=True, check=False)


class Plain(yaml.SafeLoader):
    """Every scalar as it is typed."""


Plain.yaml_implicit_resolvers = {}


def spoken(package):
    return json.loads(run("review", "-", "--format", "json", text=yaml.safe_dump(package, sort_keys=False)).stdout)


def troubles(report, clip, screw):
    bad = []
    for item in report["items"]:
        if item["action"] in ("NOT REVIEWED", "ADVISORY", "MAKE CORRECTIONS NOTED", "FIELD VERIFY") or item["code"].startswith("MIS-"):
            continue
        for place in item["places"]:
            named = place["record"] in ("clip", "fastener") and (clip in place["name"] or screw in place["name"])
            if (place["record"] in ABOUT or named) and "#" not in place["name"]:
                bad.append((item["code"], place["name"]))
    return bad


def build(package, made, spacing):
    new = copy.deepcopy(package)
    area = next(a for a in new["roof_areas"] if a["name"] == made["area"])
    kept = [t for t in area.get("tests", []) if t["for"] not in ("class", "capacity")]
    area["tests"] = [{"listing": made["capacity"], "for": "capacity"}, {"listing": made["class"], "for": "class"}] + kept
    keep = {"item", "color", "length", "end_laps", "supplied_by", "side_movement"}
    area["panel"] = {k: v for k, v in area["panel"].items() if k in keep} | {"item": made["panel"], "supplied_by": "panel maker"}
    others = [c for c in area.get("clips", []) if c["use"] != "running"]
    area["clips"] = [{"item": made["clip"], "use": "running", "spacing": spacing, "supplied_by": "panel maker"}] + others
    others = [f for f in area.get("fasteners", []) if f["use"] != "clip"]
    area["fasteners"] = [{"item": made["fastener"], "use": "clip", "per": "%g" % made["per_clip"], "supplied_by": "panel maker"}] + others
    return new


with open(example, encoding="utf-8") as file:
    package = yaml.load(file, Plain)
offers = json.loads(run("options", example, "--format", "json").stdout)
faults = 0
tried = offers["constructions"][::len(offers["constructions"]) // 12 + 1]
for made in tried:
    spacing = {z["zone"]: "%g in" % z["greatest_spacing"] for z in made["zones"]}
    bad = troubles(spoken(build(package, made, spacing)), made["clip"], made["fastener"])
    if bad:
        faults += 1
        print(made["panel"], made["clip"], made["fastener"], made["capacity"], "is offered, and", bad)
first = offers["constructions"][0] if offers["constructions"] else None
for zone in first["zones"] if first else []:
    spacing = {z["zone"]: "%g in" % (z["greatest_spacing"] + (1 if z is zone else 0)) for z in first["zones"]}
    if not troubles(spoken(build(package, first, spacing)), first["clip"], first["fastener"]):
        faults += 1
        print("zone", zone["zone"], "one inch wider than offered gives no item")
print(len(tried), "constructions of", example, "reviewed,", faults, "faults")
sys.exit(1 if faults or not offers["constructions"] else 0)
