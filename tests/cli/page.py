#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Reads the page of a review and holds it against the letter and the JSON of the same program: markup that closes, anchors that
lead somewhere, every item with its number, every word of the letter, and a plan whose lengths are those of the roof within half a
percent. page.py PROGRAM FILE"""
import collections
import html.parser
import json
import re
import subprocess
import sys
import xml.etree.ElementTree

program, path = sys.argv[1:]
VOID = {"meta", "br", "hr", "img", "col", "link", "input"}
MOST_APART = 0.005
faults = []


def fault(text):
    faults.append(text)


def run(*words):
    return subprocess.run([program, *words], capture_output=True, text=True, check=False).stdout


class Page(html.parser.HTMLParser):
    """Elements closed in order; texts, ids, links."""

    def __init__(self):
        super().__init__(convert_charrefs=True)
        self.open, self.texts, self.ids, self.links, self.articles = [], [], [], [], {}

    def handle_starttag(self, tag, attrs):
        attributes = dict(attrs)
        if len(attributes) != len(attrs):
            fault(f"an attribute twice in {tag}")
        if tag == "script" or "src" in attributes or any(name.startswith("on") for name in attributes):
            fault(f"{tag} {attrs} may do or fetch something")
        if "href" in attributes:
            self.links.append(attributes["href"])
        if "id" in attributes:
            self.ids.append(attributes["id"])
        if tag == "article":
            self.articles[attributes["id"]] = []
        if tag not in VOID:
            self.open.append((tag, attributes.get("id")))

    def handle_endtag(self, tag):
        if not self.open or self.open[-1][0] != tag:
            fault(f"</{tag}> closes {self.open[-1:]}")
        else:
            self.open.pop()

    def handle_data(self, data):
        if any(tag == "style" for tag, _ in self.open):
            return
        self.texts.append(data)
        for tag, name in self.open:
            if tag == "article":
                self.articles[name].append(data)


def words(text):
    return collections.Counter(word.strip("()[].,;:\"'") for word in text.casefold().split())


def flat(text):
    return " ".join(text.split())


def check_letter(page_text):
    """What wraps in the letter may be broken at a blank only, so its words are those of the page."""
    letter = run("review", path)
    left = words(letter) - words(page_text)
    for word in list(left):
        if re.fullmatch(r"[\^_]*|==+", word):
            del left[word]
    for word in left:
        if word.rstrip(".,;:)") not in page_text.casefold():
            fault(f"the letter says {word!r}, the page does not")


def check_items(page, report):
    for place, item in enumerate(report["items"], 1):
        number = item["number"]
        anchor = "item-" + (number.replace(".", "-") if number else str(place))
        if anchor not in page.articles:
            fault(f"no article {anchor}")
            continue
        said = flat(" ".join(page.articles[anchor]))
        for part in (number, item["code"], item["finding"], item["remedy"], item["submitted"]["text"], item["limit"]["text"]):
            if part and item["record"] is not None and shown(part) not in said and part is not item["submitted"]["text"]:
                fault(f"item {number} {item['code']} does not say {part!r}")


def shown(text):
    return flat(text)


# ---- the plan ----


def number(element, name):
    return float(element.get(name))


def by_class(svg, kind):
    return [e for e in svg.iter() if kind in (e.get("class") or "").split()]


def apart(a, b):
    return abs(a - b) > MOST_APART * max(abs(a), abs(b))


def area_of_path(path):
    total = 0
    for piece in path.split("Z"):
        points = [tuple(map(float, p)) for p in re.findall(r"[ML](-?[\d.]+) (-?[\d.]+)", piece)]
        twice = sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(points, points[1:] + points[:1]))
        total += abs(twice) / 2
    return total


def feet(value):
    """A measure as the program takes it: only what the examples use."""
    found = re.fullmatch(r"([\d.]+) (ft|m)", value or "")
    return float(found[1]) * (1 if found[2] == "ft" else 1 / 0.3048) if found else None


def sizes_of(report):
    """Length and width of each warranted roof area, as the submittal has them."""
    values = report["values"]
    for area in values.get("roof_areas") or []:
        if area.get("warranted") in (False, "no"):
            continue
        own, whole = area.get("building") or {}, values.get("building") or {}
        sides = [own.get(side, whole.get(side)) for side in ("length", "width")]
        yield area.get("name"), [feet(side) for side in sides]


def check_plan(svg, size, facts):
    length, width = size
    roof = by_class(svg, "roof")[0]
    scale = number(roof, "width") / length
    if apart(number(roof, "height") / scale, width):
        fault(f"the roof is {number(roof, 'height') / scale} ft wide, not {width}")
    bar = by_class(svg, "scale-bar")[0]
    told = [t for t in svg.iter() if t.tag == "text" and re.match(r"[\d.]+ ft", t.text or "") and apart(number(t, "y"), 0)]
    ends = [t for t in told if abs(number(t, "x") - number(bar, "x2")) < 0.01 and abs(number(t, "y") - number(bar, "y1") - 12) < 1]
    bar_feet = float(ends[0].text.split()[0])
    if apart((number(bar, "x2") - number(bar, "x1")) / scale, bar_feet):
        fault("the scale bar is not as long as it says")
    inch = re.search(r"1 in = ([\d.]+) ft", " ".join(svg.itertext()))
    if apart(100 / float(inch[1]), scale):
        fault("an inch of paper is not so many feet")
    strips = [(number(s, "x2") - number(s, "x1")) / scale for s in by_class(svg, "strip")]
    edge = facts.get(("roof_area", "edge_width"))
    if edge is not None and edge <= length and not any(not apart(strip, edge) for strip in strips):
        fault(f"no strip is {edge} ft wide: {strips}")
    drawn = sorted(area_of_path(p.get("d")) / scale**2 for p in by_class(svg, "area"))
    stated = sorted(v for (record, name), v in facts.items() if name.startswith("plan_area"))
    if drawn and (len(drawn) != len(stated) or any(apart(a, b) for a, b in zip(drawn, stated))):
        fault(f"zones are drawn {drawn} sq ft, not {stated}")
    return scale


def check_openings(svg, scale, area, size):
    """Every opening that says where it stands is there, at its size."""
    length, width = size
    roof = by_class(svg, "roof")[0]
    left, bottom = number(roof, "x"), number(roof, "y") + number(roof, "height")
    symbols = by_class(svg, "opening")
    openings = area.get("penetrations")
    for opening in openings if isinstance(openings, list) else []:
        along, up = feet(opening.get("from_left")), feet(opening.get("from_eave"))
        if along is None or up is None or along > length or up > width:
            continue  # the table says so
        at = (left + along * scale, bottom - up * scale)

        def middle(e):
            if e.tag == "circle":
                return number(e, "cx"), number(e, "cy")
            return number(e, "x") + number(e, "width") / 2, number(e, "y") + number(e, "height") / 2

        near = [e for e in symbols if abs(middle(e)[0] - at[0]) < 0.02 and abs(middle(e)[1] - at[1]) < 0.02]
        across = float(opening["across"].split()[0]) / 12 * scale
        drawn = [2 * number(e, "r") if e.tag == "circle" else number(e, "width") for e in near]
        if not any(not apart(one, across) or abs(one - across) < 0.002 for one in drawn):  # the last digit
            fault(f"{opening.get('name')} does not stand at {at} with {across}")


def check_drawings(text, report):
    plans = []
    for drawing in re.findall(r"<svg.*?</svg>", text, re.S):
        svg = xml.etree.ElementTree.fromstring(drawing)
        if svg.get("class") == "plan":
            plans.append(svg)
        for element in svg.iter():
            if element.tag in ("rect", "circle") and any(number(element, n) < 0 for n in ("width", "height", "r") if element.get(n)):
                fault("a negative size")
            if any(re.search(r"nan|inf", element.get(n) or "") for n in ("x", "y", "x1", "points", "d", "cx")):
                fault("a number that is none")
    sized = [(name, size) for name, size in sizes_of(report) if None not in size]
    if len(sized) != len(plans):
        fault(f"{len(plans)} plans, {len(sized)} areas with length and width")
        return
    calcs = json.loads(run("calcs", "--format", "json", path) or "{}").get("facts", [])
    for (name, size), svg in zip(sized, plans):
        facts = {}
        for fact in calcs:
            if fact["state"] == "known" and (fact["name"] == name or fact["name"].startswith(f"{name} / ")):
                key = fact["fact"] + (" " + fact["name"] if fact["record"] == "zone" else "")
                facts[(fact["record"], key)] = fact["value"]
        scale = check_plan(svg, size, facts)
        areas = [a for a in report["values"]["roof_areas"] if a.get("name") == name]
        check_openings(svg, scale, areas[0], size)


def main():
    text = run("review", "--format", "html", path)
    report = json.loads(run("review", "--format", "json", path))
    page = Page()
    page.feed(text)
    page.close()
    if page.open:
        fault(f"left open: {page.open}")
    if len(set(page.ids)) != len(page.ids):
        fault(f"ids twice: {[i for i, n in collections.Counter(page.ids).items() if n > 1]}")
    for link in page.links:
        if not link.startswith("#") or link[1:] not in page.ids:
            fault(f"{link} leads nowhere")
    page_text = flat(" ".join(page.texts))
    check_items(page, report)
    check_letter(page_text)
    if "http" in text.replace("http-equiv", "").replace("http://x.example", ""):
        fault("something may be fetched")
    for color in re.findall(r"#([0-9a-f]{3}|[0-9a-f]{6})\b", re.search(r"<style>(.*?)</style>", text, re.S)[1]):
        step = len(color) // 3
        if len({color[i : i + step] for i in range(0, len(color), step)}) > 1:
            fault(f"#{color} is no grey")
    if "<h1>NOT JUDGED" not in text:
        check_drawings(text, report)
    for one in faults[:10]:
        print(f"  {one}", file=sys.stderr)
    sys.exit(bool(faults))


main()
