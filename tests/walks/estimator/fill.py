#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""What the estimator does by hand: puts the first construction that was offered for the bid into the submittal, and into the
engineer's letter, which is written for it. fill.py SUBMITTAL OFFERS > FILLED"""
import json
import sys

import yaml


class Plain(yaml.SafeLoader):
    """Every scalar as it is typed."""


Plain.yaml_implicit_resolvers = {}
PLACES = {"1'": "interior", "1": "field", "2": "perimeter", "3": "corner"}

with open(sys.argv[1], encoding="utf-8") as file:
    package = yaml.load(file, Plain)
with open(sys.argv[2], encoding="utf-8") as file:
    made = json.load(file)["constructions"][0]
spacing = {PLACES[z["zone"]]: f"{z['greatest_spacing']:g} in" for z in made["zones"]}
area, letter = package["roof_areas"][0], package["engineering"][0]
area["tests"] = [{"listing": made["class"], "for": "class"}, {"listing": made["capacity"], "for": "capacity"}]
own = ("color", "length", "end_laps", "end_laps_at", "see", "side_movement")
area["panel"] = {"item": made["panel"], "supplied_by": "panel maker"} | {k: area["panel"][k] for k in own}
for clip in area["clips"]:
    if clip["use"] == "running":
        kept = {k: clip[k] for k in ("use", "bears_on", "room_to_grow", "see")}
        clip.clear()
        clip.update(kept | {"item": made["clip"], "supplied_by": "panel maker", "spacing": spacing})
for screw in area["fasteners"]:
    if screw["use"] == "clip":
        screw.clear()
        screw.update({"use": "clip", "item": made["fastener"], "supplied_by": "panel maker", "per": f"{made['per_clip']:g}"})
letter["clip_spacing"] = dict(spacing)
letter["assumes"] = {"clip": made["clip"], "fastener_size": "#12", "per_clip": f"{made['per_clip']:g}"}
yaml.safe_dump(package, sys.stdout, sort_keys=False)
