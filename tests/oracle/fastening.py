#!/usr/bin/env python3
"""Second opinion on fastening, tested pressures and thermal movement: CSV on standard output.

Written from the mechanics page (section numbers below are its sections).  One row is one small
question; `kind` says which columns are filled, `expected` is the answer or the word refused.
    python3 fastening.py --rows 20000 --seed 7 > out.csv
"""
import argparse
import csv
import math
import random
import sys

INPUTS = [
    "steel_grade", "tc_in", "screw_d_in", "fu2_ksi",                  # pull-out
    "t1_in", "head_d_in", "fu1_ksi", "one_sided",                     # pull-over
    "pts_lb", "screws_per_clip",                                      # tension, per clip
    "wood_g", "penetration_in",                                       # withdrawal
    "pressure_psf", "panel_width_in", "clip_spacing_in",              # clip load
    "test_spacings_in", "test_pressures_psf", "method",               # tested pressures
    "ultimate_psf", "safety_factor",                                  # allowable
    "alpha_per_f_1e6", "length_ft", "fixed_at", "t_max_f", "t_min_f", "t_install_f",
]
COLUMNS = ["kind"] + INPUTS + ["expected", "unit"]
REFUSED = "refused"

OMEGA_SCREW = 3.0                       # 2.1 (read)
GUIDE_ONE, GUIDE_MORE = 3.00, 2.25      # 2.2, guide practice (the 2.25 is from memory)
LEAST_D, MOST_D = 0.08, 0.25            # section 0 item 2: range of the steel screw equations
HEAD_CAP = 0.5                          # 2.1 (memory)
ECCENTRIC = 0.5                         # 2.1
WIND_DURATION = 1.6                     # 2.3
# 3.3, SS grades: Fy, Fu in ksi (memory).  Grade 80 is sheet of low ductility, 2.1 (memory).
GRADES = {33: (33.0, 45.0), 37: (37.0, 52.0), 40: (40.0, 55.0), 50: (50.0, 65.0),
          80: (80.0, 82.0)}


# ---------------------------------------------------------------- formulas

def design_fu(grade):
    """2.1: grade 80 is taken at three quarters, at most 62 ksi; others as tabulated."""
    fu = GRADES[grade][1]
    return min(0.75 * fu, 62.0) if grade == 80 else fu


def pullout(tc, d, fu2):
    """Nominal pull-out of one screw, lb."""
    if not LEAST_D <= d <= MOST_D:
        return REFUSED
    return 0.85 * tc * d * fu2 * 1000.0


def pullover(t1, head, fu1, one_sided):
    """Nominal pull-over of one screw, lb."""
    full = 1.5 * t1 * min(head, HEAD_CAP) * fu1 * 1000.0
    return full * ECCENTRIC if one_sided else full


def tension(tc, d, fu2, t1, head, fu1, one_sided, pts):
    """Nominal tension of one screw; pts None where no screw strength is known."""
    out = pullout(tc, d, fu2)
    if out == REFUSED:
        return REFUSED
    limits = [out, pullover(t1, head, fu1, one_sided)]
    if pts is not None:
        limits.append(pts)
    return min(limits)


def guide_factor(screws):
    return GUIDE_ONE if screws == 1 else GUIDE_MORE


def wood_screw(g, d):
    """lb per inch of thread penetration, before duration."""
    return 2850.0 * g ** 2 * d


def lag(g, d):
    """lb per inch of thread penetration without the tapered tip, before duration."""
    return 1800.0 * g ** 1.5 * d ** 0.75


def clip_load(p, width_in, spacing_in):
    return p * (width_in / 12.0) * (spacing_in / 12.0)


def tested_pressure(spacings, pressures, s, method):
    """4.6.  Neighbouring tests only; closer than the closest test earns nothing; wider than the
    widest has no value."""
    if s > spacings[-1]:
        return REFUSED
    if s <= spacings[0]:
        return pressures[0]
    n = next(i for i in range(1, len(spacings)) if s <= spacings[i])
    s1, s2, p1, p2 = spacings[n - 1], spacings[n], pressures[n - 1], pressures[n]
    if s == s2:
        return p2
    part = (s - s1) / (s2 - s1)
    line = p1 + part * (p2 - p1)
    reaction = (p1 * s1 + part * (p2 * s2 - p1 * s1)) / s
    power = p1 * (s / s1) ** (math.log(p2 / p1) / math.log(s2 / s1))
    return {"L": line, "R": reaction, "P": power, "least": min(reaction, power)}[method]


def allowable(ultimate, factor):
    """4.4."""
    return ultimate / factor


def movement(alpha_1e6, length_ft, fixed_at, high, low):
    """5.1, 5.3: inches, for the run from the fixed point to the free end."""
    run = length_ft * 12.0 * (0.5 if fixed_at == "middle" else 1.0)
    return alpha_1e6 * 1e-6 * run * (high - low)


# ---------------------------------------------------------------- random rows

SCREWS = (0.138, 0.164, 0.190, 0.216, 0.242, 0.250)                        # 1.1
PTS = {0.138: 419.0, 0.164: 586.0, 0.190: 1158.0, 0.216: 2325.0, 0.250: 3201.0}
THICK = (0.0179, 0.0239, 0.0295, 0.0329, 0.0358, 0.0418, 0.0474, 0.0538, 0.0598)
WOODS = (0.35, 0.36, 0.37, 0.42, 0.43, 0.46, 0.49, 0.50, 0.51, 0.55, 0.67, 0.73)
PANELS = (0.4375, 0.46875, 0.59375, 0.71875)
LAGS = (0.25, 0.3125, 0.375, 0.4375, 0.5, 0.625, 0.75)
ALPHAS = (6.5, 12.8, 13.0, 9.4, 9.8, 12.2, 9.6, 8.9, 16.3)                 # 5.1


def pick(rng, words, low, high):
    return rng.choice(words) if rng.random() < 0.6 else rng.uniform(low, high)


def some_screw(rng, row):
    u = rng.random()
    if u < 0.10:
        row["screw_d_in"] = rng.choice((0.3125, 0.2500001, 0.0799999))
    elif u < 0.22:
        row["screw_d_in"] = rng.choice((0.08, 0.25))
    else:
        row["screw_d_in"] = pick(rng, SCREWS, LEAST_D, MOST_D)


def pullout_inputs(rng, row):
    some_screw(rng, row)
    row["tc_in"] = pick(rng, THICK, 0.015, 0.12)
    row["fu2_ksi"] = pick(rng, (45.0, 52.0, 55.0, 65.0), 40.0, 80.0)


def pullover_inputs(rng, row):
    row["t1_in"] = pick(rng, THICK, 0.015, 0.12)
    row["head_d_in"] = pick(rng, (0.3125, 0.340, 0.409, 0.5, 0.5000001, 0.625), 0.3125, 0.75)
    row["fu1_ksi"] = pick(rng, (45.0, 52.0, 55.0, 65.0), 40.0, 80.0)
    row["one_sided"] = rng.choice(("yes", "no"))


def tension_inputs(rng, row):
    pullout_inputs(rng, row)
    pullover_inputs(rng, row)
    if rng.random() < 0.8:
        row["pts_lb"] = PTS.get(row["screw_d_in"], rng.uniform(150.0, 3500.0))


def nominal(row):
    return tension(row["tc_in"], row["screw_d_in"], row["fu2_ksi"], row["t1_in"],
                   row["head_d_in"], row["fu1_ksi"], row["one_sided"] == "yes",
                   row.get("pts_lb"))


def k_pullout(rng, row):
    pullout_inputs(rng, row)
    return pullout(row["tc_in"], row["screw_d_in"], row["fu2_ksi"])


def k_low_ductility_fu(rng, row):
    row["steel_grade"] = rng.choice((80, 80, *GRADES))
    return design_fu(row["steel_grade"])


def k_low_ductility_pullout(rng, row):
    some_screw(rng, row)
    row["steel_grade"] = rng.choice((80, 80, *GRADES))
    row["tc_in"] = pick(rng, THICK, 0.015, 0.12)
    return pullout(row["tc_in"], row["screw_d_in"], design_fu(row["steel_grade"]))


def k_pullover(rng, row):
    pullover_inputs(rng, row)
    return pullover(row["t1_in"], row["head_d_in"], row["fu1_ksi"], row["one_sided"] == "yes")


def k_tension(rng, row):
    tension_inputs(rng, row)
    return nominal(row)


def k_screw_allowable(rng, row):
    tension_inputs(rng, row)
    pnt = nominal(row)
    return pnt if pnt == REFUSED else pnt / OMEGA_SCREW


def k_clip_allowable(rng, row):
    tension_inputs(rng, row)
    row["screws_per_clip"] = rng.randint(1, 4)
    pnt = nominal(row)
    return pnt if pnt == REFUSED else row["screws_per_clip"] * pnt / OMEGA_SCREW


def k_clip_guide_allowable(rng, row):
    tension_inputs(rng, row)
    row["screws_per_clip"] = rng.randint(1, 4)
    pnt = nominal(row)
    if pnt == REFUSED:
        return pnt
    return row["screws_per_clip"] * pnt / guide_factor(row["screws_per_clip"])


def k_wood_screw_per_inch(rng, row):
    row["wood_g"] = pick(rng, WOODS, 0.3, 0.8)
    row["screw_d_in"] = pick(rng, SCREWS, 0.1, 0.4)
    return wood_screw(row["wood_g"], row["screw_d_in"])


def k_wood_screw(rng, row):
    per_inch = k_wood_screw_per_inch(rng, row)
    row["penetration_in"] = pick(rng, PANELS, 0.3, 3.0)
    return per_inch * row["penetration_in"] * WIND_DURATION


def k_lag_per_inch(rng, row):
    row["wood_g"] = pick(rng, WOODS, 0.3, 0.8)
    row["screw_d_in"] = pick(rng, LAGS, 0.25, 1.0)
    return lag(row["wood_g"], row["screw_d_in"])


def k_lag(rng, row):
    per_inch = k_lag_per_inch(rng, row)
    row["penetration_in"] = pick(rng, (1.0, 1.5, 2.0), 0.5, 6.0)
    return per_inch * row["penetration_in"] * WIND_DURATION


def k_clip_load(rng, row):
    row["pressure_psf"] = pick(rng, (30.0, 45.0, 52.5, 60.0, 90.0), 9.6, 200.0)
    row["panel_width_in"] = pick(rng, (12.0, 16.0, 18.0, 24.0), 8.0, 30.0)
    row["clip_spacing_in"] = pick(rng, (12.0, 18.0, 24.0, 36.0, 48.0, 60.0), 3.0, 72.0)
    return clip_load(row["pressure_psf"], row["panel_width_in"], row["clip_spacing_in"])


def k_tested_pressure(rng, row):
    count = rng.choice((1, 2, 2, 2, 3, 4, 5))
    whole = rng.random() < 0.6
    if whole:
        spacings = sorted(float(s) for s in rng.sample(range(6, 73, 6), count))
    else:
        spacings = sorted(rng.uniform(4.0, 72.0) for _ in range(count))
    pressures = [rng.uniform(60.0, 220.0)]
    for _ in spacings[1:]:                       # never rising with spacing, sometimes level
        pressures.append(pressures[-1] * rng.choice((1.0, *([rng.uniform(0.3, 1.0)] * 5))))
    if whole:
        pressures = [float(max(5, round(p * 2.0) / 2.0)) for p in pressures]
    u = rng.random()
    if u < 0.15:
        s = rng.choice(spacings)                 # on a test
    elif u < 0.25:
        s = spacings[-1] + rng.choice((0.001, 1.0, 12.0))
    elif u < 0.35:
        s = spacings[0] * rng.uniform(0.3, 1.0)
    elif u < 0.40:
        s = rng.choice(spacings) + rng.choice((-0.001, 0.001))
    else:
        s = rng.uniform(spacings[0], spacings[-1])
    row["test_spacings_in"] = ";".join(map(repr, spacings))
    row["test_pressures_psf"] = ";".join(map(repr, pressures))
    row["clip_spacing_in"] = s
    row["method"] = rng.choice(("L", "R", "P", "least", "least"))
    return tested_pressure(spacings, pressures, s, row["method"])


def k_allowable_from_ultimate(rng, row):
    row["ultimate_psf"] = pick(rng, (60.0, 75.0, 105.0, 120.0, 150.0), 20.0, 300.0)
    row["safety_factor"] = pick(rng, (1.65, 1.67, 2.0, 3.0), 1.5, 3.0)
    return allowable(row["ultimate_psf"], row["safety_factor"])


def thermal_inputs(rng, row):
    row["alpha_per_f_1e6"] = pick(rng, ALPHAS, 6.0, 18.0)
    row["length_ft"] = pick(rng, (40.0, 60.0, 100.0, 150.0), 5.0, 300.0)
    row["fixed_at"] = rng.choice(("eave", "ridge", "middle"))
    row["t_max_f"] = pick(rng, (150.0, 170.0, 180.0), 120.0, 190.0)
    row["t_min_f"] = pick(rng, (-20.0, -10.0, 0.0, 30.0), -40.0, 40.0)
    row["t_install_f"] = pick(rng, (60.0, 70.0), row["t_min_f"], row["t_max_f"])


def thermal(row, high, low):
    return movement(row["alpha_per_f_1e6"], row["length_ft"], row["fixed_at"], row[high],
                    row[low])


def k_expansion(rng, row):
    thermal_inputs(rng, row)
    return thermal(row, "t_max_f", "t_install_f")


def k_contraction(rng, row):
    thermal_inputs(rng, row)
    return thermal(row, "t_install_f", "t_min_f")


def k_movement(rng, row):
    thermal_inputs(rng, row)
    return thermal(row, "t_max_f", "t_min_f")


KINDS = {
    "pullout": (k_pullout, "lb"),
    "low_ductility_fu": (k_low_ductility_fu, "ksi"),
    "low_ductility_pullout": (k_low_ductility_pullout, "lb"),
    "pullover": (k_pullover, "lb"),
    "tension": (k_tension, "lb"),
    "screw_allowable": (k_screw_allowable, "lb"),
    "clip_allowable": (k_clip_allowable, "lb"),
    "clip_guide_allowable": (k_clip_guide_allowable, "lb"),
    "wood_screw_per_inch": (k_wood_screw_per_inch, "lb/in"),
    "wood_screw": (k_wood_screw, "lb"),
    "lag_per_inch": (k_lag_per_inch, "lb/in"),
    "lag": (k_lag, "lb"),
    "clip_load": (k_clip_load, "lb"),
    "tested_pressure": (k_tested_pressure, "psf"),
    "allowable_from_ultimate": (k_allowable_from_ultimate, "psf"),
    "expansion": (k_expansion, "in"),
    "contraction": (k_contraction, "in"),
    "movement": (k_movement, "in"),
}
# tested pressures have the most cases, so they come up four times as often
ORDER = list(KINDS) + ["tested_pressure"] * 3


def text(value):
    return repr(value) if isinstance(value, float) else str(value)


def main():
    ask = argparse.ArgumentParser(description="fastening questions with answers, as CSV")
    ask.add_argument("--rows", type=int, default=1000)
    ask.add_argument("--seed", type=int, default=1)
    want = ask.parse_args()
    rng = random.Random(want.seed)
    out = csv.writer(sys.stdout, lineterminator="\n")
    out.writerow(COLUMNS)
    for n in range(want.rows):
        kind = ORDER[n % len(ORDER)]
        make, unit = KINDS[kind]
        row = {"kind": kind, "unit": unit}
        row["expected"] = make(rng, row)
        out.writerow([text(row.get(c, "")) for c in COLUMNS])


if __name__ == "__main__":
    main()
