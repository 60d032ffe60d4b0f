#!/usr/bin/env python3
"""Second opinion on roof uplift: random buildings with expected answers, CSV on standard output.

Written from the wind page alone (section numbers below are its sections).  Every constant is
typed here; nothing is shared with the program that is checked.
    python3 wind.py --rows 20000 --seed 7 > out.csv
"""
import argparse
import csv
import math
import random
import sys

E10, E16, E22 = "ASCE 7-10", "ASCE 7-16", "ASCE 7-22"
EDITIONS = (E10, E16, E22)

COLUMNS = [
    "edition", "shape", "slope_in_12", "height_ft", "least_ft", "greatest_ft", "exposure",
    "speed_mph", "ground_ft", "hill", "hill_height_ft", "hill_half_length_ft",
    "hill_distance_ft", "enclosure", "parapet_ft", "exposure_b_floor", "zone", "area_sq_ft",
    "figure", "kz", "kzt", "ke", "kd", "q_psf", "gcp_uplift", "gcpi", "strength_psf", "asd_psf",
    "gcp_overhang", "overhang_psf",
]

# ---------------------------------------------------------------- velocity pressure, section 1

KD = 0.85              # 1.1, components and cladding of buildings (second-hand)
LEAST_STRENGTH = 16.0  # 2.4, psf at strength level (second-hand)
STRENGTH_TO_ASD = 0.6  # 2.8

# 1.2: k, then (alpha, zg ft) by exposure.
K_OLD, K_NEW = 2.01, 2.41
PROFILE_OLD = {"B": (7.0, 1200.0), "C": (9.5, 900.0), "D": (11.5, 700.0)}
PROFILE_NEW = {"B": (7.5, 3280.0), "C": (9.8, 2460.0), "D": (11.5, 1935.0)}


def kz_at(edition, exposure, height, floor_b):
    """1.2 power law; 1.3: ASCE 7-10 never goes below 30 ft in Exposure B (memory), the later
    editions only when asked to."""
    z = max(height, 15.0)
    if exposure == "B" and (edition == E10 or floor_b):
        z = max(z, 30.0)
    k = K_NEW if edition == E22 else K_OLD
    alpha, zg = (PROFILE_NEW if edition == E22 else PROFILE_OLD)[exposure]
    if z > zg:
        return k
    return k * (z / zg) ** (2.0 / alpha)


def ke_at(edition, ground):
    """1.4; none in ASCE 7-10; 1.0 below sea level (memory)."""
    if edition == E10 or ground <= 0.0:
        return 1.0
    return math.exp(-0.0000362 * ground)


# 1.5: c by exposure, gamma, mu upwind, mu downwind.
HILLS = {
    "ridge": ({"B": 1.30, "C": 1.45, "D": 1.55}, 3.0, 1.5, 1.5),
    "escarpment": ({"B": 0.75, "C": 0.85, "D": 0.95}, 2.5, 1.5, 4.0),
    "hill": ({"B": 0.95, "C": 1.05, "D": 1.15}, 4.0, 1.5, 1.5),
}


def kzt_at(exposure, hill, rise, half_length, distance, height):
    """1.5.  The two numeric conditions are from memory in the page; those on the surroundings
    are taken as met."""
    if hill == "none":
        return 1.0
    ratio = rise / half_length
    if ratio < 0.2 or rise < (60.0 if exposure == "B" else 15.0):
        return 1.0
    c, gamma, mu_up, mu_down = HILLS[hill]
    length = half_length
    if ratio > 0.5:
        ratio, length = 0.5, 2.0 * rise
    mu = mu_down if distance > 0.0 else mu_up
    k1 = c[exposure] * ratio
    k2 = max(0.0, 1.0 - abs(distance) / (mu * length))
    k3 = math.exp(-gamma * height / length)
    return (1.0 + k1 * k2 * k3) ** 2


def q_at(edition, kz, kzt, ke, speed):
    """1.1: as the edition defines it, so ASCE 7-22 carries no Kd here."""
    q = 0.00256 * kz * kzt * ke * speed * speed
    return q if edition == E22 else q * KD


GCPI = {"enclosed": 0.18, "partially enclosed": 0.55, "partially open": 0.18, "open": 0.0}  # 2.3


def pressure(edition, q, gcp, gcpi):
    """Net uplift at strength level, positive upward, never under the minimum of 2.4."""
    p = q * (gcp + gcpi)
    if edition == E22:
        p *= KD
    return max(p, LEAST_STRENGTH)


# ---------------------------------------------------------------- curves, section 2.6
# Corner points (area sq ft, uplift coefficient), sign turned so that uplift is positive.

FLAT_10 = {"1": [(10, 1.0), (100, 0.9)], "2": [(10, 1.8), (100, 1.1)],
           "3": [(10, 2.8), (100, 1.1)]}                                   # 30.4-2A
SLOPED_10 = {"1": [(10, 0.9), (100, 0.8)], "2": [(10, 1.7), (100, 1.2)],
             "3": [(10, 2.6), (100, 2.0)]}                                 # 30.4-2B
STEEP_10 = {"1": [(10, 1.0), (100, 0.8)], "2": [(10, 1.2), (100, 1.0)],
            "3": [(10, 1.2), (100, 1.0)]}                                  # 30.4-2C
MONO_A = {"1": [(10, 1.1)], "2": [(10, 1.3), (100, 1.2)], "2'": [(10, 1.6), (100, 1.5)],
          "3": [(10, 1.8), (100, 1.2)], "3'": [(10, 2.6), (100, 1.6)]}     # 5A, all editions
MONO_B = {"1": [(10, 1.3), (100, 1.1)], "2": [(10, 1.6), (100, 1.2)],
          "3": [(10, 2.9), (100, 2.0)]}                                    # 5B, all editions
FLAT_16 = {"1'": [(100, 0.9), (1000, 0.4)], "1": [(10, 1.7), (500, 1.0)],
           "2": [(10, 2.3), (500, 1.4)], "3": [(10, 3.2), (500, 1.4)]}     # 30.3-2A, 7-16 and 7-22
TALL = {"1": [(10, 1.4), (500, 0.9)], "2": [(10, 2.3), (500, 1.6)],
        "3": [(10, 3.2), (500, 2.3)]}                                      # 2.6.4


def same(curve, *zones):
    return {z: curve for z in zones}


GABLE_16_B = {**same([(20, 2.0), (100, 0.5)], "1", "2e"),
              **same([(10, 3.0), (250, 1.0)], "2n", "2r", "3e"),
              **same([(10, 3.6), (100, 1.8)], "3r")}
GABLE_16_C = {**same([(20, 1.5), (300, 0.8)], "1", "2e"),
              **same([(10, 2.5), (150, 1.2)], "2n", "2r", "3e"),
              **same([(4, 3.6), (50, 1.8)], "3r")}
GABLE_16_D = {**same([(10, 1.8), (100, 0.8)], "1", "2e", "2r"),
              **same([(10, 2.0), (200, 1.0)], "2n", "3r"),
              **same([(2, 3.2), (300, 1.0)], "3e")}
HIP_16_E_TALL = {"1": [(20, 1.8), (100, 1.0)], "2r": [(10, 2.4), (200, 1.3)],
                 **same([(10, 2.6), (200, 1.4)], "2e", "3")}               # h/B >= 0.8
HIP_16_E_LOW = {"1": [(20, 1.3), (100, 1.0)], "2r": [(10, 2.4), (200, 1.3)],
                **same([(10, 1.8), (200, 1.1)], "2e", "3")}                # h/B <= 0.5
HIP_16_G = {"1": [(10, 1.4), (100, 0.8)],
            **same([(10, 2.0), (200, 1.0)], "2e", "2r", "3")}


def hip_16_h(t):
    """30.3-2H: both ends of each line move with the roof angle t, degrees."""
    return {"1": [(10, 0.6175 + 0.0200 * t), (200, 0.0950 + 0.0135 * t)],
            "2e": [(2, 0.067 * t - 0.2), (280 - 5 * t, 0.8)],
            "2r": [(5, 0.082 * t - 1.0), (100, 1.0)],
            "3": [(9 - 0.135 * t, 0.108 * t - 1.25), (50, 1.0)]}


GABLE_22_B = {"1": [(10, 2.0), (300, 0.5)], "2": [(10, 2.7), (200, 1.0)],
              "3": [(10, 3.6), (100, 1.8)]}
GABLE_22_C = {"1": [(10, 1.5), (200, 0.8)], "2": [(10, 2.5), (100, 1.2)],
              "3": [(10, 3.0), (100, 1.4)]}
GABLE_22_D = {"1": [(10, 1.8), (100, 0.8)], "2": [(10, 2.0), (200, 1.0)],
              "3": [(10, 2.5), (200, 1.0)]}
HIP_22_E = {"1": [(10, 1.8), (200, 0.8)], "2": [(10, 2.4), (200, 1.3)],
            "3": [(10, 2.6), (200, 1.4)]}
HIP_22_F = {"1": [(10, 1.4), (100, 0.8)], **same([(10, 2.0), (100, 1.0)], "2", "3")}
HIP_22_G = {"1": [(10, 1.5), (100, 0.7)], "2": [(10, 1.8), (100, 0.8)],
            "3": [(10, 2.4), (100, 1.0)]}


# ---------------------------------------------------------------- overhangs, 2.6 and 2.7
# Both faces in one curve, uplift positive; None where the page has none.

OVER_FLAT_10 = {**same([(10, 1.7), (100, 1.6), (500, 1.1)], "1", "2"), "3": [(10, 2.8), (100, 0.8)]}
OVER_SLOPED_10 = {"2": [(10, 2.2)], "3": [(10, 3.7), (100, 2.5)]}
OVER_STEEP_10 = same([(10, 2.0), (100, 1.8)], "2", "3")
OVER_FLAT_16 = {**same([(10, 1.7), (100, 1.6), (500, 1.0)], "1", "1'"), "2": [(10, 2.3), (500, 1.1)],
                "3": [(10, 3.2), (500, 1.1)]}                              # also 7-22
OVER_GABLE_16 = {
    "2B": {**same([(20, 2.5), (100, 1.5)], "1", "2e"), **same([(10, 3.5), (250, 2.0)], "2n", "2r"),
           "3e": [(10, 4.1), (250, 1.5)], "3r": [(10, 4.7), (100, 2.3)]},  # conflict, 2.9 item 3
    "2C": {**same([(20, 2.0), (300, 1.8)], "1", "2e"), **same([(10, 3.0), (150, 2.2)], "2n", "2r"),
           "3e": [(10, 3.6), (150, 1.7)], "3r": [(4, 4.7), (50, 2.3)]},
    "2D": {**same([(10, 2.6), (100, 1.6)], "1", "2e", "2r"), **same([(10, 2.8), (200, 1.8)], "2n", "3r"),
           "3e": [(2, 4.0), (300, 1.8)]}}
OVER_HIP_16_TALL = {"1": [(20, 2.3), (100, 2.0)], "2r": [(10, 2.9), (200, 2.3)],
                    "2e": [(10, 3.1), (200, 2.4)], "3": [(10, 3.7), (200, 1.9)]}
OVER_HIP_16_LOW = {"1": [(20, 1.8), (100, 2.0)], "2r": [(10, 2.9), (200, 2.3)],
                   "2e": [(10, 2.3), (200, 2.1)], "3": [(10, 2.9), (200, 1.6)]}
OVER_HIP_16_G = {"1": [(10, 1.9), (100, 1.8)], **same([(10, 2.5), (200, 2.0)], "2e", "2r"),
                 "3": [(10, 3.1), (200, 1.5)]}
WALL_LOW, WALL_HIGH = [(10, 1.0), (500, 0.7)], [(20, 0.9), (500, 0.6)]


def weight_of(r):
    """h/B between 0.5 and 0.8."""
    return min(1.0, max(0.0, (r - 0.5) / (0.8 - 0.5)))


def overhang_of(edition, shape, theta, height, least, zone, area):
    """GCp of an overhang, uplift positive, or None."""
    tail = figure_of(edition, shape, theta, height).split("-", 1)[1]
    if tail in ("1", "5A", "5B") and not (edition == E22 and theta > 7.0):
        return None
    if tail == "2A":
        return on_curve((OVER_FLAT_10 if edition == E10 else OVER_FLAT_16)[zone], area)
    if edition == E22:
        roof = gcp_of(edition, shape, theta, height, least, 0.0, zone, area)
        return roof + on_curve(WALL_HIGH if height > 60.0 else WALL_LOW, area)
    if edition == E10:
        curves = OVER_SLOPED_10 if tail == "2B" else OVER_STEEP_10
        return on_curve(curves[zone], area) if zone in curves else None
    if shape == "gable":
        return on_curve(OVER_GABLE_16[tail][zone], area)
    if tail == "2E":
        w = weight_of(height / least)
        return (1.0 - w) * on_curve(OVER_HIP_16_LOW[zone], area) + w * on_curve(OVER_HIP_16_TALL[zone], area)
    if tail == "2G":
        return on_curve(OVER_HIP_16_G[zone], area)
    return on_curve(hip_16_h(theta)[zone], area) + 0.8


def on_curve(corners, area):
    """0.3: a plateau, a straight line in log10(area), a plateau."""
    if area <= corners[0][0]:
        return corners[0][1]
    for (a0, g0), (a1, g1) in zip(corners, corners[1:]):
        if area < a1:
            return g0 + (g1 - g0) * math.log10(area / a0) / math.log10(a1 / a0)
    return corners[-1][1]


def angle_of(slope_in_12):
    return math.degrees(math.atan(slope_in_12 / 12.0))


def figure_of(edition, shape, theta, height):
    """Name of the figure, or None when the page has none for this roof (2.5, 2.6)."""
    if theta > 45.0:
        return None
    if height > 60.0 and theta <= (10.0 if edition == E10 else 7.0):
        return {E10: "30.6-1", E16: "30.5-1", E22: "30.4-1"}[edition]
    stem = "30.4-" if edition == E10 else "30.3-"
    if shape == "monoslope":
        if theta > 30.0:
            return None
        return stem + ("2A" if theta <= 3.0 else "5A" if theta <= 10.0 else "5B")
    if theta <= 7.0:
        return stem + "2A"
    if shape == "flat":
        return None
    if edition == E10:
        if theta <= 27.0:
            return "30.4-2B"
        return "30.4-2C" if shape == "gable" else None
    band = 0 if theta <= 20.0 else 1 if theta <= 27.0 else 2
    if shape == "gable":
        return stem + ("2B", "2C", "2D")[band]
    return stem + (("2E", "2G", "2H") if edition == E16 else ("2E", "2F", "2G"))[band]


def sets_of(edition, shape, figure, theta, height, least):
    """The curve sets of one figure with weights that add to 1: two sets where the page asks for
    an interpolation, else one."""
    tail = figure.split("-", 1)[1]
    if tail == "1":
        return [(1.0, TALL)]
    if tail == "5A":
        return [(1.0, MONO_A)]
    if tail == "5B":
        return [(1.0, MONO_B)]
    if tail == "2A":
        return [(1.0, FLAT_10 if edition == E10 else FLAT_16)]
    if edition == E10:
        return [(1.0, SLOPED_10 if tail == "2B" else STEEP_10)]
    if shape == "gable":
        table = ({"2B": GABLE_16_B, "2C": GABLE_16_C, "2D": GABLE_16_D} if edition == E16
                 else {"2B": GABLE_22_B, "2C": GABLE_22_C, "2D": GABLE_22_D})
        return [(1.0, table[tail])]
    if edition == E16:
        if tail == "2G":
            return [(1.0, HIP_16_G)]
        if tail == "2H":
            return [(1.0, hip_16_h(theta))]
        r = height / least
        if r <= 0.5:
            return [(1.0, HIP_16_E_LOW)]
        if r >= 0.8:
            return [(1.0, HIP_16_E_TALL)]
        w = (r - 0.5) / (0.8 - 0.5)
        return [(1.0 - w, HIP_16_E_LOW), (w, HIP_16_E_TALL)]
    if tail == "2E":
        return [(1.0, HIP_22_E)]
    if tail == "2F":
        return [(1.0, HIP_22_F)]
    w = (theta - 27.0) / 18.0
    return [(1.0 - w, HIP_22_F), (w, HIP_22_G)]


def read_as(edition, shape, figure, theta, parapet, zone):
    """The zone whose curve is read: parapet relief on flat figures (2.5), and zone 3 of
    ASCE 7-10 hip roofs up to 25 degrees (2.5)."""
    if zone == "3":
        if figure.split("-", 1)[1] in ("2A", "1") and parapet >= 3.0:
            return "2"
        if edition == E10 and shape == "hip" and figure == "30.4-2B" and theta <= 25.0:
            return "2"
    return zone


def gcp_of(edition, shape, theta, height, least, parapet, zone, area):
    figure = figure_of(edition, shape, theta, height)
    zone = read_as(edition, shape, figure, theta, parapet, zone)
    return sum(w * on_curve(s[zone], area)
               for w, s in sets_of(edition, shape, figure, theta, height, least))


def expect(row):
    """Add the expected columns to a row of inputs."""
    theta = angle_of(row["slope_in_12"])
    edition, shape, height = row["edition"], row["shape"], row["height_ft"]
    row["figure"] = figure_of(edition, shape, theta, height)
    row["kz"] = kz_at(edition, row["exposure"], height, row["exposure_b_floor"] == "yes")
    row["kzt"] = kzt_at(row["exposure"], row["hill"], row["hill_height_ft"],
                        row["hill_half_length_ft"], row["hill_distance_ft"], height)
    row["ke"] = ke_at(edition, row["ground_ft"])
    row["kd"] = KD
    row["q_psf"] = q_at(edition, row["kz"], row["kzt"], row["ke"], row["speed_mph"])
    row["gcp_uplift"] = gcp_of(edition, shape, theta, height, row["least_ft"],
                               row["parapet_ft"], row["zone"], row["area_sq_ft"])
    row["gcpi"] = GCPI[row["enclosure"]]
    row["strength_psf"] = pressure(edition, row["q_psf"], row["gcp_uplift"], row["gcpi"])
    row["asd_psf"] = STRENGTH_TO_ASD * row["strength_psf"]
    over = overhang_of(edition, shape, theta, height, row["least_ft"], row["zone"], row["area_sq_ft"])
    row["gcp_overhang"], row["overhang_psf"] = "", ""
    if over is not None:
        row["gcp_overhang"] = over
        row["overhang_psf"] = pressure(edition, row["q_psf"], over, row["gcpi"])
    return row


# ---------------------------------------------------------------- random rows

def edge_slope(theta):
    """A slope whose angle is not above theta in any usual way of computing it, and exactly theta
    in as many of them as can be, so that 'up to and including' has one answer."""
    if theta == 45.0:
        return 12.0                              # exact in all of them that start from atan
    s = 12.0 * math.tan(math.radians(theta))
    best, most = None, -1
    for _ in range(64):
        r = math.atan(s / 12.0)
        forms = (math.degrees(r), r * 180.0 / math.pi, r / math.pi * 180.0,
                 math.atan2(s, 12.0) * 180.0 / math.pi)
        tangent = math.tan(theta * math.pi / 180.0)
        under = (s <= 12.0 * tangent and s / 12.0 <= tangent and r <= math.radians(theta)
                 and max(forms) <= theta)
        if under and sum(f == theta for f in forms) > most:
            best, most = s, sum(f == theta for f in forms)
        s = math.nextafter(s, 0.0)
    return best


EDGE_SLOPE = {t: edge_slope(float(t)) for t in (3, 7, 10, 20, 25, 27, 30, 45)}


def top_angle(edition, shape):
    return {"flat": 7.0, "gable": 45.0, "hip": 27.0 if edition == E10 else 45.0,
            "monoslope": 30.0}[shape]


def bands(edition, shape):
    inner = {"flat": [], "gable": [7, 20, 27] if edition != E10 else [7, 10, 27],
             "hip": [7, 20, 27] if edition != E10 else [7, 25],
             "monoslope": [3, 10]}[shape]
    ends = [0.0] + [float(t) for t in inner] + [top_angle(edition, shape)]
    return list(zip(ends, ends[1:]))


def plain_slope(rng, edition, shape):
    lo, hi = rng.choice(bands(edition, shape))
    if rng.random() < 0.3:                       # slopes people write: quarter inches
        quarters = [n / 4.0 for n in range(1, 49)
                    if lo < angle_of(n / 4.0) <= hi]
        if quarters:
            return rng.choice(quarters)
    return 12.0 * math.tan(math.radians(rng.uniform(lo + 0.01, hi - 0.01)))


def slope_at_edge(rng, edition, shape):
    top = top_angle(edition, shape)
    t = rng.choice([e for e in {"flat": (7,), "gable": (7, 10, 20, 27, 45),
                                "hip": (7, 10, 20, 25, 27, 45),
                                "monoslope": (3, 7, 10, 20, 27, 30)}[shape] if e <= top])
    step = rng.choice((0.0, -1e-9, 1e-9) if t < top else (0.0, -1e-9))
    return EDGE_SLOPE[t] + step


def plain_height(rng):
    u = rng.random()
    if u < 0.10:
        return rng.uniform(8.0, 15.0)
    if u < 0.35:
        return rng.uniform(15.0, 30.0)
    if u < 0.65:
        return rng.uniform(30.0, 60.0)
    if u < 0.75:
        return float(rng.choice((10, 12, 15, 20, 24, 25, 30, 35, 40, 45, 50, 55, 65, 75, 90)))
    if u < 0.90:
        return rng.uniform(60.0, 90.0)
    return rng.uniform(90.0, 500.0)


def ground_cover(rng, exposure):
    """Hill columns."""
    if rng.random() < 0.6:
        return "none", 0.0, 0.0, 0.0
    hill = rng.choice(("ridge", "escarpment", "hill"))
    limit = 60.0 if exposure == "B" else 15.0
    u = rng.random()
    if u < 0.15:                                 # on, just under or just over the least rise
        rise = limit + rng.choice((0.0, -0.001, 0.001))
        half = rise / rng.uniform(0.21, 0.9)
    elif u < 0.30:                               # on or about the ratios 0.2 and 0.5
        half = float(rng.choice((400, 500, 800, 1000)))
        rise = half * rng.choice((0.2, 0.2, 0.5)) + rng.choice((0.0, -0.001, 0.001))
    else:
        rise = rng.uniform(8.0, 400.0)
        half = rise / rng.uniform(0.12, 1.2)
    distance = rng.choice((0.0, rng.uniform(-2.0, 2.0) * half, rng.uniform(-2.0, 5.0) * half))
    return hill, rise, half, distance


def height_at_edge(rng, edition, exposure):
    """Heights where the power law of an exposure begins or ends, and 30 ft, where the floor of
    Exposure B lies (1.2, 1.3); one in five well above the end, where it stays."""
    top = (PROFILE_NEW if edition == E22 else PROFILE_OLD)[exposure][1]
    if rng.random() < 0.2:
        return top + rng.uniform(1.0, 500.0)
    return rng.choice((15.0, 30.0, 30.0, top)) + rng.choice((0.0, 1e-6, -1e-6))


def plan_size(rng, edition, shape, figure, height, zone):
    """Least and greatest plan dimension, large enough for the zone to exist."""
    if edition == E16 and shape == "hip" and figure.endswith("2E"):
        r = rng.choice((0.5, 0.8, rng.uniform(0.5, 0.8), rng.uniform(0.5, 0.8),
                        rng.uniform(0.2, 1.3)))
        least = height / r
    else:
        least = rng.uniform(20.0, 300.0)
        if figure == "30.3-2A" and zone in ("1", "1'"):
            least = max(least, (2.4 if zone == "1'" else 1.2) * height + rng.uniform(5.0, 60.0))
    return least, least * rng.choice((1.0, rng.uniform(1.0, 4.0)))


def one_row(rng, kind):
    """kind 0: no special care; 1: slope on a band edge; 2: area on a curve corner; 3: height 60;
    4: height where an exposure begins, ends or has its floor."""
    edition = rng.choice(EDITIONS)
    exposure = rng.choice("BBCD" if kind == 4 else "BCD")
    shape = rng.choice(("flat", "gable", "gable", "hip", "hip", "monoslope"))
    slope = (slope_at_edge if kind == 1 else plain_slope)(rng, edition, shape)
    height = plain_height(rng)
    if kind == 3:
        height = 60.0 + rng.choice((0.0, 1e-6, -1e-6))
    if kind == 4:
        height = height_at_edge(rng, edition, exposure)
    if kind == 1 and rng.random() < 0.6:
        height = rng.uniform(10.0, 60.0)
    theta = angle_of(slope)
    figure = figure_of(edition, shape, theta, height)
    # The plan dimension does not matter for which zones and corners there are.
    zones = sets_of(edition, shape, figure, theta, height, 100.0)
    zone = rng.choice(sorted(zones[0][1]))
    if kind == 2:
        area = float(rng.choice(rng.choice(zones)[1][zone])[0])
    elif rng.random() < 0.25:
        area = float(rng.choice((2, 5, 10, 20, 50, 100, 200, 500, 1000)))
    else:
        area = math.exp(rng.uniform(math.log(0.5), math.log(2000.0)))
    least, greatest = plan_size(rng, edition, shape, figure, height, zone)
    hill, rise, half, distance = ground_cover(rng, exposure)
    enclosures = ["enclosed", "enclosed", "partially enclosed", "open"]
    if edition != E10:
        enclosures.append("partially open")      # 2.3: only from ASCE 7-16 on
    return {
        "edition": edition, "shape": shape, "slope_in_12": slope, "height_ft": height,
        "least_ft": least, "greatest_ft": greatest, "exposure": exposure,
        "speed_mph": float(rng.randint(85, 250)) if rng.random() < 0.7
        else rng.uniform(85.0, 250.0),
        "ground_ft": rng.choice((0.0, 0.0, -50.0, rng.uniform(0.0, 9000.0))),
        "hill": hill, "hill_height_ft": rise, "hill_half_length_ft": half,
        "hill_distance_ft": distance, "enclosure": rng.choice(enclosures),
        "parapet_ft": rng.choice((0.0, 0.0, 0.0, 2.999999, 3.0, rng.uniform(0.5, 5.0))),
        "exposure_b_floor": rng.choice(("yes", "no")), "zone": zone, "area_sq_ft": area,
    }


def rows(count, seed):
    rng = random.Random(seed)
    for n in range(count):
        # one row in three is special: the four kinds in turn, corners twice
        yield expect(one_row(rng, (1, 2, 3, 2, 4)[n // 3 % 5] if n % 3 == 0 else 0))


def text(value):
    return repr(value) if isinstance(value, float) else str(value)


def main():
    ask = argparse.ArgumentParser(description="random roofs with expected uplift, as CSV")
    ask.add_argument("--rows", type=int, default=1000)
    ask.add_argument("--seed", type=int, default=1)
    want = ask.parse_args()
    out = csv.writer(sys.stdout, lineterminator="\n")
    out.writerow(COLUMNS)
    for row in rows(want.rows, want.seed):
        out.writerow([text(row[c]) for c in COLUMNS])


if __name__ == "__main__":
    main()
