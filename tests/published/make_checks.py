#!/usr/bin/env python3
"""Makes checks.json beside it: 50-digit arithmetic from first principles, deterministic.

    python3 make_checks.py            writes checks.json
    python3 make_checks.py --check    recomputes and compares with the file; exit 1 on any difference

Needs mpmath, and uncertainties for two of the cases of that topic. Inputs are written once, as text with units, and parsed here: what the script computes from is what the
file says. Values of kind "published" are literals; wherever a formula exists they are compared with it on the spot.
"""
import json
import sys
from pathlib import Path

from mpmath import acos, asin, atan, atan2, cos, cosh, cot, erfc, exp, findroot, floor, gamma, log, loggamma, matrix, mp, mpf, nstr, pi, quad, sin, sinh, sqrt, tan, tanh, workdps

mp.dps = 50
OUT = Path(__file__).resolve().parent / "checks.json"
CASES = []

# ------------------------------------------------------------------------------------------------ units
IN, FT, LB, GN = mpf("0.0254"), mpf("0.3048"), mpf("0.45359237"), mpf("9.80665")
LBF = LB * GN
UNITS = {
    "": 1, "mm": mpf("1e-3"), "m": 1, "cm": mpf("1e-2"), "um": mpf("1e-6"), "nm": mpf("1e-9"), "in": IN, "uin": IN / 10**6, "ft": FT,
    "mm^2": mpf("1e-6"), "in^2": IN**2, "mm^4": mpf("1e-12"),
    "m/min": mpf(1) / 60, "m/s": 1, "ft/min": FT / 60, "mm/min": mpf("1e-3") / 60, "in/min": IN / 60,
    "rpm": mpf(1) / 60, "Hz": 1,                       # revolutions per second
    "mm/rev": mpf("1e-3"), "in/rev": IN, "mm/turn": mpf("1e-3"),
    "N": 1, "kN": 1000, "lbf": LBF, "MPa": 10**6, "GPa": 10**9, "psi": LBF / IN**2, "ksi": 1000 * LBF / IN**2,
    "N/m": 1, "N/mm": 1000, "N/um": 10**6, "kN/mm": 10**6, "lbf/in": LBF / IN,
    "N*m/rad": 1, "kN*m/rad": 1000, "N/A": 1,
    "W": 1, "kW": 1000, "hp": 550 * FT * LBF, "N*m": 1, "lbf*ft": LBF * FT, "lbf*in": LBF * IN,
    "cm^3/min": mpf("1e-6") / 60, "in^3/min": IN**3 / 60, "mm^3/s": mpf("1e-9"),
    "hp/(in^3/min)": 550 * FT * LBF / (IN**3 / 60),
    "deg": pi / 180, "arcmin": pi / 10800, "rad": 1, "s": 1, "min": 60,
    "kg": 1, "lb": LB, "kg/m^3": 1, "lb/in^3": LB / IN**3, "K": 1, "um/(m*K)": mpf("1e-6"), "J/(kg*K)": 1,
    "percent": mpf("0.01"), "turns/min": mpf(1) / 60, "in/ft": mpf(1) / 12, "1/mm": 1000,
}


def si(text):
    """'40 mm' -> 0.04; a bare number is dimensionless; a list is a list."""
    if isinstance(text, list):
        return [si(t) for t in text]
    if isinstance(text, (int, bool)):
        return mpf(text)
    number, _, unit = text.partition(" ")
    return mpf(number) * UNITS[unit]


def out(value, unit, digits=20):
    """20 significant digits, fixed notation."""
    v = value / UNITS[unit]
    if abs(v) < mpf(10) ** -35:                            # nothing here is that small: a rounding rest of an exact zero
        v = mpf(0)
    t = nstr(v, digits, strip_zeros=True, min_fixed=-25, max_fixed=25)
    if t.endswith(".0"):
        t = t[:-2]
    return (t + " " + unit).strip()


def case(id, topic, kind, source, inputs, expect, tol_rel=None, tol_abs=None, note=None):
    """expect: name -> (value in SI, unit) | literal text | number | bool. tol_abs: name -> text, or one text for all."""
    assert all(c["id"] != id for c in CASES), id
    assert kind in ("published", "derived", "common-practice", "from-memory"), kind
    e = {}
    for k, v in expect.items():
        if isinstance(v, tuple):
            e[k] = out(*v)
        elif isinstance(v, list):
            e[k] = [out(*x) if isinstance(x, tuple) else x for x in v]
        else:
            e[k] = v
    c = {"id": id, "topic": topic, "kind": kind, "source": source, "inputs": inputs, "expect": e}
    if tol_abs is not None:
        c["tol_abs"] = tol_abs
    elif tol_rel is not None:
        c["tol_rel"] = tol_rel
    else:
        c["tol_rel"] = 1e-12
    if note:
        c["note"] = note
    CASES.append(c)
    return c


def agree(value, literal, rel=None, abs_=None, what=""):
    """A literal from memory against the formula: raises when they differ."""
    lit = si(literal)
    ok = abs(value - lit) <= (abs(lit) * mpf(rel) if rel is not None else si(abs_))
    assert ok, f"{what}: formula {nstr(value, 12)} against literal {literal}"


DEF = "derived from the definition"

# What a case of kind "derived" is derived from.
SECTIONS = {1: "speed, feed, time", 3: "Kienzle's law", 4: "corner arc and light cut", 5: "power, torque, drive", 6: "theoretical finish",
            10: "bars", 11: "spring of the bar", 12: "vibration", 14: "centre holes", 15: "heat", 16: "tool life", 17: "tapers", 18: "dials", 19: "facing",
            20: "height of the tool", 22: "uncertainty, probability, aim", 23: "gripping", 24: "overhang of the tool", 25: "parting"}


def fm(section):
    return f"derived ({SECTIONS[section]})"


def spindle(vc, d):
    return vc / (pi * d)


def kienzle(kc11, mc, ap, f, kappa, r=None):
    h = f * sin(kappa)
    b = ap / sin(kappa)
    return kc11 * b * h * (h / mpf("1e-3")) ** (-mc)


def arc_end(ap, r):
    return 2 * asin(sqrt(ap / (2 * r)))


def engaged(ap, f, r, kappa):
    """Exact: arc start, arc end, edge length, area, ridge, straight piece."""
    t1 = -asin(f / (2 * r))
    if ap <= r * (1 - cos(kappa)):
        t2, s = arc_end(ap, r), mpf(0)
    else:
        t2, s = kappa, (ap - r * (1 - cos(kappa))) / sin(kappa)
    ridge = f * r - f / 2 * sqrt(r**2 - f**2 / 4) - r**2 * asin(f / (2 * r))
    return t1, t2, r * (t2 - t1) + s, ap * f - ridge, ridge, s


def area_by_quad(ap, f, r):
    """Area of a light cut by integrating between the outlines (independent of the closed form)."""
    last = lambda x: r - sqrt(r * r - (x + f) ** 2) if x + f < r else r
    this = lambda x: r - sqrt(r * r - x * x)
    end = sqrt(2 * r * ap - ap**2)                     # this turn meets the old surface
    a = quad(lambda x: last(x) - this(x), [-f / 2, end - f])
    return a + quad(lambda x: ap - this(x), [end - f, end])


def edge_force(kc11, mc, ap, f, r, kappa, kn=1):
    """Main, passive, feed force along arc and straight piece; thickness f sin th ."""
    p = 1 - mc
    k = kc11 * mpf("1e-3") ** mc
    light = ap <= r * (1 - cos(kappa)) and r > 0
    t2 = arc_end(ap, r) if light else kappa
    F = k * r * f ** p
    # integral of sin^p cos in closed form; sin^p and sin^(p+1) by quadrature after th = u^4 (smooths the end)
    if r > 0:
        q = lambda e: quad(lambda u: sin(u**4) ** e * 4 * u**3, [0, t2 ** mpf("0.25")])
        fc, fp, ff = F * q(p), F * sin(t2) ** (p + 1) / (p + 1), F * q(p + 1)
    else:
        fc = fp = ff = mpf(0)
    if not light:
        s = (ap - r * (1 - cos(kappa))) / sin(kappa)
        g = k * s * (f * sin(kappa)) ** p
        fc, fp, ff = fc + g, fp + g * cos(kappa), ff + g * sin(kappa)
    return fc, kn * fp, kn * ff


def finish(f, r, kappa, kappa2):
    """Regime and R_t in closed form; R_a, R_q by integrating the profile piece by piece."""
    swapped = kappa2 > kappa
    if swapped:
        kappa, kappa2 = kappa2, kappa
    if r > 0 and f <= 2 * r * sin(kappa2):
        regime, xr = "arc", f / 2
        rt = r - sqrt(r * r - f * f / 4)
    elif r > 0 and f <= r * (1 - cos(kappa + kappa2)) / sin(kappa2):
        regime = "arc and major edge" if swapped else "arc and minor edge"
        phi = acos(1 - f * sin(kappa2) / r) - kappa2
        rt, xr = r * (1 - cos(phi)), r * sin(phi)
    else:
        regime = "edges only"
        rt = r + (f - r * (1 / sin(kappa) + 1 / sin(kappa2))) / (cot(kappa) + cot(kappa2))
        xr = r * sin(kappa) + (rt - r * (1 - cos(kappa))) * cot(kappa) if kappa < pi / 2 else r
    kappa = min(kappa, pi / 2)                             # beyond 90 deg only matters where the ridge overhangs
    lead = lambda x: r - sqrt(r * r - x * x) if x <= r * sin(kappa) else r * (1 - cos(kappa)) + (x - r * sin(kappa)) * tan(kappa)
    trail = lambda u: r - sqrt(r * r - u * u) if u <= r * sin(kappa2) else r * (1 - cos(kappa2)) + (u - r * sin(kappa2)) * tan(kappa2)
    z = lambda x: lead(x) if x <= xr else trail(f - x)
    # the two sides meet
    wall = regime == "edges only" and kappa >= pi / 2
    assert abs(trail(f - xr) - rt) < mpf(10) ** -35, regime
    assert wall or abs(lead(xr) - rt) < mpf(10) ** -35, regime
    cuts = sorted({mpf(0), min(xr, r * sin(kappa)), xr, max(xr, f - r * sin(kappa2)), f})
    mean = quad(z, cuts) / f
    # crossings of the mean line: one on each side, both outlines rise from their bottom
    def cross(side, hi):
        knee = r * sin(kappa if side is lead else kappa2)
        low = side(min(knee, hi))
        if mean <= low:
            return sqrt(r * r - (r - mean) ** 2)
        if side is lead and wall:
            return knee
        k = kappa if side is lead else kappa2
        return knee + (mean - r * (1 - cos(k))) / tan(k)
    x1, x2 = cross(lead, xr), f - cross(trail, f - xr)
    cuts2 = sorted(set(cuts) | {x1, x2})
    ra = quad(lambda x: abs(z(x) - mean), cuts2) / f
    rq = sqrt(quad(lambda x: (z(x) - mean) ** 2, cuts) / f)
    sk = quad(lambda x: (z(x) - mean) ** 3, cuts) / f / rq**3
    ku = quad(lambda x: (z(x) - mean) ** 4, cuts) / f / rq**4
    return regime, rt, ra, rq, mean, sk, ku


def arc_closed(f, r):
    a = f / (2 * r)
    m = (sqrt(1 - a * a) + asin(a) / a) / 2
    c = sqrt(1 - m * m)
    return r - sqrt(r * r - f * f / 4), r / a * (asin(c) - m * c), r * sqrt(1 - a * a / 3 - m * m)


def inertia(d, bore=0):
    return pi / 64 * (d**4 - bore**4)


def flex(sections, E, p, q, kc=None, kth=None):
    """Unit-load integral of chuck-held bar, exact per section by quadrature of a quadratic (Gauss is exact)."""
    end, x, s = min(p, q), mpf(0), mpf(0)
    for d, length, bore in sections:
        a, b = x, min(x + length, end)
        if b > a:
            prim = lambda t: p * q * t - (p + q) * t**2 / 2 + t**3 / 3
            s += (prim(b) - prim(a)) / (E * inertia(d, bore))
        x += length
    return s + (1 / kc if kc else 0) + (p * q / kth if kth else 0)


def propped(sections, E, a, props, kc=None, kth=None):
    """Deflection under a unit force at a, and the prop forces. props: [(x, stiffness or None)]."""
    f = lambda p, q: flex(sections, E, p, q, kc, kth)
    n = len(props)
    A, B = matrix(n, n), matrix(n, 1)
    for i in range(n):
        for j in range(n):
            A[i, j] = f(props[i][0], props[j][0])
        if props[i][1]:
            A[i, i] += 1 / props[i][1]
        B[i] = f(props[i][0], a)
    R = mp.lu_solve(A, B)
    return f(a, a) - sum(R[j] * f(props[j][0], a) for j in range(n)), [R[j] for j in range(n)]


def between(sections, E, a, kA=None, kB=None):
    L = sum(s[1] for s in sections)
    b = L - a
    s, x = mpf(0), mpf(0)
    for d, length, bore in sections:
        lo, hi = x, x + length
        if min(hi, a) > lo:
            s += quad(lambda t: (t * b / L) ** 2, [lo, min(hi, a)]) / (E * inertia(d, bore))
        if hi > max(lo, a):
            s += quad(lambda t: ((L - t) * a / L) ** 2, [max(lo, a), hi]) / (E * inertia(d, bore))
        x = hi
    return s + ((b / L) ** 2 / kA if kA else 0) + ((a / L) ** 2 / kB if kB else 0)


def by_elements(sections, E, a, holding, kc=None, kth=None, kt=None, kA=None):
    """The same by exact cubic beam elements (stiffness method), independent of the unit-load integrals."""
    cuts = {mpf(0), a}
    x = mpf(0)
    for s in sections:
        x += s[1]
        cuts.add(x)
    z = sorted(cuts)
    n = 2 * len(z)
    K = matrix(n, n)
    ends = [sum(s[1] for s in sections[:i + 1]) for i in range(len(sections))]
    for e in range(len(z) - 1):
        mid, l = (z[e] + z[e + 1]) / 2, z[e + 1] - z[e]
        d, _, b = sections[next(i for i, x in enumerate(ends) if mid < x)]
        k = E * inertia(d, b) / l**3
        m = [[12, 6 * l, -12, 6 * l], [6 * l, 4 * l * l, -6 * l, 2 * l * l], [-12, -6 * l, 12, -6 * l], [6 * l, 2 * l * l, -6 * l, 4 * l * l]]
        for i in range(4):
            for j in range(4):
                K[2 * e + i, 2 * e + j] += k * m[i][j]
    fixed = set()
    def support(dof, k):
        if k is None:
            fixed.add(dof)
        else:
            K[dof, dof] += k
    if holding == "between centres":
        support(0, kA), support(n - 2, kt)
    else:
        support(0, kc), support(1, kth)
        if holding == "chuck and centre":
            support(n - 2, kt)
    free = [i for i in range(n) if i not in fixed]
    A = matrix(len(free), len(free))
    for i, p in enumerate(free):
        for j, q in enumerate(free):
            A[i, j] = K[p, q]
    F = matrix(len(free), 1)
    dof = 2 * z.index(a)
    if dof in fixed:
        return mpf(0)
    F[free.index(dof)] = 1
    return mp.lu_solve(A, F)[free.index(dof)]


def units_cases():
    src = "NIST SP 811, appendix B (exact by definition of inch, pound and standard gravity), from memory"
    t = "units"
    case("units-inch", t, "published", src, {"length": "1 in"}, {"length": "25.4 mm"}, 1e-15)
    case("units-microinch", t, "published", src, {"roughness": "63 uin"}, {"roughness": "1.6002 um"}, 1e-15)
    case("units-pound-force", t, "published", src, {"force": "1 lbf"}, {"force": "4.4482216152605 N"}, 1e-15)
    agree(UNITS["lbf"], "4.4482216152605 N", rel="1e-14", what="lbf")
    case("units-psi", t, "published", src, {"stress": "1 psi"}, {"stress": "0.006894757293168361 MPa"}, 1e-14)
    agree(UNITS["psi"], "0.006894757293168361 MPa", rel="1e-15", what="psi")
    case("units-horsepower", t, "published", src, {"power": "1 hp"}, {"power": "745.69987158227022 W"}, 1e-15, note="550 ft lbf/s")
    agree(UNITS["hp"], "745.69987158227022 W", rel="1e-16", what="hp")
    case("units-foot-per-minute", t, "published", src, {"cutting_speed": "100 ft/min"}, {"cutting_speed": "30.48 m/min"}, 1e-15)
    case("units-feed", t, "derived", DEF, {"feed": "0.008 in/rev"}, {"feed": (si("0.008 in/rev"), "mm/rev")}, 1e-15)
    case("units-torque", t, "derived", DEF, {"torque": "10 lbf*ft"}, {"torque": (si("10 lbf*ft"), "N*m")})
    case("units-stiffness", t, "derived", DEF, {"stiffness": "100000 lbf/in"}, {"stiffness": (si("100000 lbf/in"), "N/um")})
    case("units-density", t, "derived", DEF, {"density": "0.284 lb/in^3"}, {"density": (si("0.284 lb/in^3"), "kg/m^3")})
    case("units-unit-power", t, "derived", DEF, {"unit_power": "1 hp/(in^3/min)"}, {"specific_force": (UNITS["hp/(in^3/min)"], "MPa")})
    case("units-removal-rate", t, "derived", DEF, {"removal_rate": "1 in^3/min"}, {"removal_rate": (si("1 in^3/min"), "cm^3/min")})


def speed_cases():
    t = "speed"
    src = fm(1) + ": n = v_c/(pi d)"
    for i, (d, v) in enumerate([("40 mm", "90 m/min"), ("6.35 mm", "25 m/min"), ("250 mm", "120 m/min"), ("1.5 in", "300 ft/min"),
                                ("5 in", "80 ft/min"), ("0.25 in", "100 ft/min"), ("50 mm", "400 ft/min"), ("2 in", "120 m/min")], 1):
        case(f"speed-rpm-{i}", t, "derived", src, {"diameter": d, "cutting_speed": v}, {"spindle_speed": (spindle(si(v), si(d)), "rpm")})
    for i, (d, n, u) in enumerate([("63 mm", "500 rpm", "m/min"), ("1 in", "1200 rpm", "ft/min"), ("12.7 mm", "2000 rpm", "ft/min"), ("3.25 in", "355 rpm", "m/min")], 1):
        case(f"speed-vc-{i}", t, "derived", src, {"diameter": d, "spindle_speed": n}, {"cutting_speed": (pi * si(d) * si(n), u)})
    case("speed-inch-constant", t, "derived", src, {"diameter": "1 in", "cutting_speed": "1 ft/min"}, {"spindle_speed": (spindle(si("1 ft/min"), si("1 in")), "rpm")}, note="the shop's 3.82; 12/pi")
    case("speed-shop-rule", t, "common-practice", "common practice, no source: n = 4 V/d", {"diameter": "1 in", "cutting_speed": "100 ft/min"}, {"spindle_speed": "400 rpm"}, 0.05,
         note="4.7 % above the exact 381.97 rpm; a plausibility check only")
    steps = ["63 rpm", "90 rpm", "125 rpm", "180 rpm", "250 rpm", "355 rpm", "500 rpm", "710 rpm", "1000 rpm", "1400 rpm"]
    for i, (d, v) in enumerate([("40 mm", "30 m/min"), ("25 mm", "95 m/min"), ("80 mm", "25 m/min"), ("1.25 in", "90 ft/min")], 1):
        ideal = spindle(si(v), si(d))
        pick = [s for s in steps if si(s) <= ideal][-1]
        j = steps.index(pick)
        case(f"speed-step-{i}", "spindle-step", "derived", fm(1) + ": highest step that the wanted cutting speed does not forbid", {"diameter": d, "cutting_speed": v, "steps": steps},
             {"ideal": (ideal, "rpm"), "spindle_speed": pick, "cutting_speed": (pi * si(d) * si(pick), "m/min"),
              "next_step_cutting_speed": (pi * si(d) * si(steps[j + 1]), "m/min")})
    case("speed-chuck-limit", "spindle-step", "derived", fm(1), {"diameter": "12 mm", "cutting_speed": "150 m/min", "chuck_speed_limit": "2500 rpm"},
         {"ideal": (spindle(si("150 m/min"), si("12 mm")), "rpm"), "spindle_speed": "2500 rpm", "cutting_speed": (pi * si("12 mm") * si("2500 rpm"), "m/min"), "governed_by": "chuck"})
    phi_, n1 = mpf(10) ** (mpf(3) / 20), si("45 rpm")
    case("speed-geometric-series", "speed", "derived", "ISO 3 (R20/3), exact ratio 10^(3/20)", {"first": "45 rpm", "ratio_exponent": "0.15", "steps": 12},
         {"last": (n1 * phi_**11, "rpm"), "ratio": (phi_, ""), "largest_speed_loss": (1 - 1 / phi_, "")})
    t = "time"
    case("time-cut-1", t, "derived", fm(1) + ": t = l/(f n)", {"length": "120 mm", "run_in": "2 mm", "run_out": "0 mm", "feed": "0.2 mm/rev", "spindle_speed": "640 rpm"},
         {"time": (si("122 mm") / (si("0.2 mm/rev") * si("640 rpm")), "s")})
    case("time-cut-2", t, "derived", fm(1), {"length": "6.5 in", "run_in": "0.1 in", "run_out": "0 in", "feed": "0.008 in/rev", "spindle_speed": "355 rpm"},
         {"time": (si("6.6 in") / (si("0.008 in/rev") * si("355 rpm")), "s")})
    case("time-feed-rate-1", t, "derived", fm(1) + ": v_f = f n", {"feed": "0.15 mm/rev", "spindle_speed": "710 rpm"}, {"feed_rate": (si("0.15 mm") * si("710 rpm"), "mm/min")})
    case("time-feed-rate-2", t, "derived", fm(1), {"feed": "0.004 in/rev", "spindle_speed": "1000 rpm"}, {"feed_rate": (si("0.004 in") * si("1000 rpm"), "in/min")})
    case("time-handwheel-1", t, "derived", fm(1) + ": turns per minute = f n / travel per turn", {"feed": "0.08 mm/rev", "spindle_speed": "500 rpm", "travel_per_turn": "16 mm/turn"},
         {"handwheel": (si("0.08 mm") * si("500 rpm") / si("16 mm"), "turns/min")})
    case("time-handwheel-2", t, "derived", fm(1) + ": a diameter dial of 4 mm per turn moves the slide 2 mm", {"feed": "0.05 mm/rev", "spindle_speed": "710 rpm", "dial_per_turn": "4 mm", "dial_reads": "diameter"},
         {"handwheel": (si("0.05 mm") * si("710 rpm") / si("2 mm"), "turns/min")})
    for i, (d0, ap, f, n) in enumerate([("40 mm", "2 mm", "0.25 mm/rev", "500 rpm"), ("2 in", "0.1 in", "0.012 in/rev", "400 rpm")], 1):
        do, a, ff, nn = si(d0), si(ap), si(f), si(n)
        q = pi * ((do / 2) ** 2 - (do / 2 - a) ** 2) * ff * nn
        case(f"time-removal-rate-{i}", t, "derived", fm(1) + ": exact annulus", {"diameter": d0, "depth_of_cut": ap, "feed": f, "spindle_speed": n},
             {"removal_rate": (q, "cm^3/min" if i == 1 else "in^3/min"), "short_form": (a * ff * pi * do * nn, "cm^3/min" if i == 1 else "in^3/min"), "ratio": (do / (do - a), "")})


def force_cases():
    t = "force"
    src = fm(3) + ": straight edge, K = 1"
    rows = [("1780 MPa", "0.17", "2 mm", "0.2 mm/rev", "90 deg"), ("2220 MPa", "0.14", "3 mm", "0.3 mm/rev", "75 deg"), ("2500 MPa", "0.26", "1.5 mm", "0.15 mm/rev", "95 deg"),
            ("780 MPa", "0.18", "1 mm", "0.1 mm/rev", "60 deg"), ("1160 MPa", "0.26", "4 mm", "0.4 mm/rev", "45 deg"), ("2350 MPa", "0.21", "0.08 in", "0.010 in/rev", "93 deg"),
            ("700 MPa", "0.25", "0.1 in", "0.012 in/rev", "60 deg"), ("1411 MPa", "0.39", "2.5 mm", "0.25 mm/rev", "90 deg")]
    for i, (kc, m, ap, f, k) in enumerate(rows, 1):
        F = kienzle(si(kc), si(m), si(ap), si(f), si(k))
        h, b = si(f) * sin(si(k)), si(ap) / sin(si(k))
        case(f"force-kienzle-{i}", t, "derived", src, {"specific_force": kc, "exponent": m, "depth_of_cut": ap, "feed": f, "cutting_edge_angle": k, "corner_radius": "0 mm"},
             {"main_force": (F, "N" if "mm" in ap else "lbf"), "chip_thickness": (h, "mm"), "chip_width": (b, "mm"), "specific_force_at_h": (F / (h * b), "MPa")})
    case("force-unit-chip", t, "derived", "definition of k_c1.1: h = b = 1 mm", {"specific_force": "1990 MPa", "exponent": "0.26", "depth_of_cut": "1 mm", "feed": "1 mm/rev", "cutting_edge_angle": "90 deg", "corner_radius": "0 mm"},
         {"main_force": "1990 N"})
    case("force-edge-angle-scaling", t, "derived", fm(3) + ": F_c ~ (sin kappa)^-m at the same depth and feed", {"exponent": "0.25", "cutting_edge_angle": "45 deg", "against": "90 deg"},
         {"ratio": (sin(pi / 4) ** mpf("-0.25"), "")})
    rake = "from memory of German machining text books, unverified page: K_gamma = 1 - 0.015 (gamma - gamma_ref)/deg"
    case("force-rake-steel", t, "from-memory", rake, {"rake": "0 deg", "reference_rake": "6 deg"}, {"factor": "1.09"}, 1e-12, note="equals (109 - 1.5 gamma)/100")
    case("force-rake-iron", t, "from-memory", rake, {"rake": "-6 deg", "reference_rake": "2 deg"}, {"factor": "1.12"}, 1e-12, note="equals (103 - 1.5 gamma)/100")
    case("force-rake-high", t, "from-memory", rake, {"rake": "20 deg", "reference_rake": "6 deg"}, {"factor": "0.79"}, 1e-12)
    kv = "from memory of German machining text books, unverified page: K_v = 2.023 v^-0.153 up to 100 m/min, 1.380 v^-0.07 above (v in m/min)"
    case("force-speed-factor-50", t, "from-memory", kv, {"cutting_speed": "50 m/min"}, {"factor": (mpf("2.023") * mpf(50) ** mpf("-0.153"), "")})
    case("force-speed-factor-100", t, "from-memory", kv, {"cutting_speed": "100 m/min"}, {"factor": "1.0"}, 1e-3, note="both branches give 1 within 0.1 %")
    case("force-speed-factor-200", t, "from-memory", kv, {"cutting_speed": "200 m/min"}, {"factor": (mpf("1.380") * mpf(200) ** mpf("-0.07"), "")})
    kb = "from memory of Koenig and Essel 1973 as reprinted in Klocke, Fertigungsverfahren 1, unverified page (Ck45N)"
    b, h = mpf("2.5"), mpf("0.3")
    case("force-three-components", t, "from-memory", kb, {"depth_of_cut": "2.5 mm", "feed": "0.3 mm/rev", "cutting_edge_angle": "90 deg", "main": ["1659 MPa", "0.79"], "feed_set": ["521 MPa", "0.51"], "passive_set": ["309 MPa", "0.60"]},
         {"main_force": (1659 * b * h ** mpf("0.79"), "N"), "feed_force": (521 * b * h ** mpf("0.51"), "N"), "passive_force": (309 * b * h ** mpf("0.60"), "N")},
         note="each set is (k_1.1, 1 - m); shows the order of the shares F_f/F_c and F_p/F_c")
    ap, f, v, P = si("2 mm"), si("0.25 mm/rev"), si("110 m/min"), si("2.4 kW")
    kc = mpf("0.8") * P / (ap * f * v)
    case("force-from-power", t, "derived", fm(3) + ": measured instead of tabled", {"power": "2.7 kW", "idle_power": "0.3 kW", "efficiency": "0.8", "depth_of_cut": "2 mm", "feed": "0.25 mm/rev", "cutting_edge_angle": "90 deg",
         "mean_cutting_speed": "110 m/min", "exponent": "0.26"}, {"specific_force_at_h": (kc, "MPa"), "specific_force": (kc * mpf("0.25") ** mpf("0.26"), "MPa")})
    F = si("2500 MPa") * si("3 mm") * si("0.08 mm") * mpf("0.08") ** mpf("-0.26")
    case("force-parting", t, "derived", fm(25) + ", K_shape = 1", {"specific_force": "2500 MPa", "exponent": "0.26", "width": "3 mm", "feed": "0.08 mm/rev"}, {"main_force": (F, "N")})
    t = "force-components"
    case("components-straight-45", t, "derived", fm(3) + ": normal to the edge", {"main_force": "1000 N", "normal_ratio": "0.5", "cutting_edge_angle": "45 deg", "corner_radius": "0 mm"},
         {"feed_force": (500 * sin(pi / 4), "N"), "passive_force": (500 * cos(pi / 4), "N")})
    case("components-straight-90", t, "derived", fm(3), {"main_force": "1000 N", "normal_ratio": "0.5", "cutting_edge_angle": "90 deg", "corner_radius": "0 mm"}, {"feed_force": "500 N", "passive_force": "0 N"}, tol_abs="1e-9 N")
    case("components-straight-75", t, "derived", fm(3), {"main_force": "1200 N", "normal_ratio": "0.6", "cutting_edge_angle": "75 deg", "corner_radius": "0 mm"},
         {"feed_force": (720 * sin(5 * pi / 12), "N"), "passive_force": (720 * cos(5 * pi / 12), "N")})

    t = "light-cut"
    src = fm(4) + ": integral along the edge, h = f sin(theta), normal ratio 0.5"
    rows = [("2220 MPa", "0.14", "0.2 mm", "0.1 mm/rev", "0.8 mm", "95 deg"), ("2220 MPa", "0.14", "0.05 mm", "0.1 mm/rev", "0.8 mm", "95 deg"), ("2500 MPa", "0.26", "0.4 mm", "0.2 mm/rev", "0.4 mm", "90 deg"),
            ("1780 MPa", "0.17", "1.5 mm", "0.2 mm/rev", "0.8 mm", "95 deg"), ("1780 MPa", "0.17", "2 mm", "0.25 mm/rev", "0.4 mm", "75 deg"), ("1780 MPa", "0.17", "3 mm", "0.3 mm/rev", "1.2 mm", "45 deg"),
            ("700 MPa", "0.25", "0.010 in", "0.004 in/rev", "0.03125 in", "93 deg"), ("1160 MPa", "0.26", "0.3 mm", "0.15 mm/rev", "1.2 mm", "60 deg"), ("780 MPa", "0.18", "0.1 mm", "0.05 mm/rev", "0.2 mm", "91 deg")]
    for i, (kc, m, ap, f, r, k) in enumerate(rows, 1):
        fc, fp, ff = edge_force(si(kc), si(m), si(ap), si(f), si(r), si(k), mpf("0.5"))
        u = "N"
        case(f"light-force-{i}", t, "derived", src, {"specific_force": kc, "exponent": m, "depth_of_cut": ap, "feed": f, "corner_radius": r, "cutting_edge_angle": k, "normal_ratio": "0.5"},
             {"main_force": (fc, u), "passive_force": (fp, u), "feed_force": (ff, u), "effective_angle": (atan2(ff, fp), "deg")}, 1e-10,
             note="a_p <= r(1 - cos kappa): arc only" if si(ap) <= si(r) * (1 - cos(si(k))) else "arc and straight piece")
    # area-weighted direction, closed form
    for i, (ap, r) in enumerate([("0.8 mm", "0.8 mm"), ("0.2 mm", "0.8 mm"), ("0.02 mm", "1.2 mm")], 1):
        t2 = arc_end(si(ap), si(r))
        fc, fp, ff = edge_force(mpf(1), mpf(0), si(ap), si("0.1 mm"), si(r), pi / 2)
        k = atan((t2 - sin(t2) * cos(t2)) / sin(t2) ** 2)
        assert abs(atan2(ff, fp) - k) < mpf(10) ** -25
        case(f"light-direction-area-{i}", t, "derived", fm(4) + ": exponent 0, tan kappa_e = (th - sin th cos th)/sin^2 th", {"depth_of_cut": ap, "corner_radius": r, "cutting_edge_angle": "90 deg", "exponent": "0"},
             {"arc_end": (t2, "deg"), "effective_angle": (k, "deg")}, 1e-11)
    for i, (ap, f, r, k) in enumerate([("0.2 mm", "0.1 mm/rev", "0.8 mm", "95 deg"), ("2 mm", "0.25 mm/rev", "0.8 mm", "95 deg"), ("1.5 mm", "0.2 mm/rev", "1.2 mm", "75 deg"), ("0.02 in", "0.006 in/rev", "0.03125 in", "90 deg")], 1):
        t1, t2, le, area, ridge, s = engaged(si(ap), si(f), si(r), si(k))
        R, F, A = si(r), si(f), si(ap)
        if s == 0:
            assert abs(area_by_quad(A, F, R) - area) < mpf(10) ** -30
            chord = (t1 + t2) / 2
        else:
            rt = R - sqrt(R * R - F * F / 4)
            chord = atan2(A - rt, R * sin(t2) + s * cos(si(k)) + F / 2)
        case(f"light-geometry-{i}", t, "derived", fm(4) + ": exact engagement; chord direction after Colwell 1954, from memory", {"depth_of_cut": ap, "feed": f, "corner_radius": r, "cutting_edge_angle": k, "minor_cutting_edge_angle": "10 deg"},
             {"arc_start": (t1, "deg"), "arc_end": (t2, "deg"), "edge_length": (le, "mm"), "chip_area": (area, "mm^2"), "ridge_area": (ridge, "mm^2"), "equivalent_chip_thickness": (area / le, "mm"), "chord_angle": (chord, "deg")}, 1e-10)
    for i, (ap, f, r) in enumerate([("0.2 mm", "0.1 mm/rev", "0.8 mm"), ("0.05 mm", "0.08 mm/rev", "0.4 mm"), ("0.005 in", "0.003 in/rev", "0.015625 in")], 1):
        A, F, R = si(ap), si(f), si(r)
        x = sqrt(2 * R * A - A * A)
        hm = R - sqrt(R * R + F * F - 2 * F * x)
        # independent: largest of the exact local thickness limited by the old surface
        xq = x - F
        th = atan2(xq, R - A)
        assert abs(R + F * sin(th) - sqrt(R * R - F * F * cos(th) ** 2) - hm) < mpf(10) ** -35
        assert F <= x
        case(f"light-thickest-{i}", t, "derived", fm(4) + ": h_max, the form of Blake and Scattergood 1990 (from memory), derived again", {"depth_of_cut": ap, "feed": f, "corner_radius": r},
             {"largest_chip_thickness": (hm, "um"), "approximation": (F * x / R, "um")}, 1e-10)
    for i, (hm, f, r) in enumerate([("8 um", "0.1 mm/rev", "0.8 mm"), ("15 um", "0.05 mm/rev", "0.4 mm")], 1):
        a = si(r) * (1 - sqrt(1 - (si(hm) / si(f)) ** 2))
        case(f"light-least-depth-{i}", t, "derived", fm(4) + ": f sin(theta_2) = h_min", {"least_chip_thickness": hm, "feed": f, "corner_radius": r}, {"least_depth": (a, "um")}, 1e-11)
    case("light-direction-limit", t, "derived", fm(4) + ": very light cut, tan kappa_e = theta_2 (p + 1)/(p + 2)", {"exponent": "0.25"}, {"ratio_angle_to_arc_end": (mpf("1.75") / mpf("2.75"), "")}, 1e-6)


def power_cases():
    t = "power"
    F, d, ap, v = si("1200 N"), si("50 mm"), si("2 mm"), None
    n = si("700 rpm")
    dm = d - ap
    P = F * pi * dm * n
    case("power-1", t, "derived", fm(5) + ": mean diameter", {"main_force": "1200 N", "diameter": "50 mm", "depth_of_cut": "2 mm", "spindle_speed": "700 rpm", "efficiency": "0.8"},
         {"power": (P, "W"), "torque": (F * dm / 2, "N*m"), "motor_power": (P / mpf("0.8"), "W")})
    case("power-2", t, "derived", fm(5) + ": P = F v", {"main_force": "300 lbf", "cutting_speed": "330 ft/min"}, {"power": (si("300 lbf") * si("330 ft/min"), "hp")}, note="300 * 330/33000 = 3")
    case("power-3", t, "derived", fm(5) + ": P = F v", {"main_force": "1000 N", "cutting_speed": "60 m/min"}, {"power": "1000 W"}, 1e-14)
    case("power-4", t, "derived", fm(5), {"main_force": "250 lbf", "diameter": "3 in", "depth_of_cut": "0 in"}, {"torque": (si("250 lbf") * si("1.5 in"), "lbf*ft")})
    PN, nb = si("1.5 kW"), si("1400 rpm")
    for i, nn in enumerate(["350 rpm", "1400 rpm", "2800 rpm"], 1):
        n = si(nn)
        case(f"power-drive-{i}", t, "derived", fm(1) + ": constant torque below base speed, constant power above", {"rated_power": "1.5 kW", "base_speed": "1400 rpm", "spindle_speed": nn},
             {"power": (PN * min(1, n / nb), "W"), "torque": (PN / (2 * pi * nb) * min(1, nb / n), "N*m")})
    u, Q = si("0.8 hp/(in^3/min)"), si("3 in^3/min")
    case("power-unit-power", t, "derived", fm(3) + ": unit power", {"unit_power": "0.8 hp/(in^3/min)", "removal_rate": "3 in^3/min"}, {"power": (u * Q, "hp"), "specific_force": (u, "MPa")}, 1e-12)
    case("power-largest-depth", t, "derived", fm(3) + " and P = F v: sharp corner, speed at the outer diameter", {"specific_force": "1780 MPa", "exponent": "0.17", "feed": "0.2 mm/rev", "cutting_edge_angle": "90 deg", "cutting_speed": "100 m/min", "power": "1.2 kW"},
         {"depth_of_cut": (si("1.2 kW") / si("100 m/min") / (si("1780 MPa") * si("0.2 mm") * mpf("0.2") ** mpf("-0.17")), "mm")})


def finish_cases():
    src = fm(6) + ": R_t closed form, R_a and R_q by integrating the exact profile (50 digits)"
    t = "finish-arc"
    rows = [("0.2 mm/rev", "0.8 mm", "95 deg", "10 deg"), ("0.12 mm/rev", "0.4 mm", "93 deg", "27 deg"), ("0.05 mm/rev", "0.8 mm", "95 deg", "5 deg"), ("0.3 mm/rev", "1.2 mm", "75 deg", "15 deg"),
            ("0.4 mm/rev", "0.4 mm", "90 deg", "35 deg"), ("0.004 in/rev", "0.03125 in", "95 deg", "5 deg"), ("0.008 in/rev", "0.015625 in", "90 deg", "30 deg"), ("0.01 mm/rev", "2.4 mm", "95 deg", "5 deg"),
            ("0.001 mm/rev", "3.2 mm", "95 deg", "5 deg"), ("1.2 mm/rev", "0.8 mm", "60 deg", "60 deg")]
    for i, (f, r, k, k2) in enumerate(rows, 1):
        reg, rt, ra, rq, mean, sk, ku = finish(si(f), si(r), si(k), si(k2))
        assert reg == "arc", (i, reg)
        c = arc_closed(si(f), si(r))
        assert abs(c[0] - rt) + abs(c[1] - ra) + abs(c[2] - rq) < mpf(10) ** -28, i
        u = "um" if "mm" in f else "uin"
        case(f"finish-arc-{i}", t, "derived", src + "; agrees with the closed forms", {"feed": f, "corner_radius": r, "cutting_edge_angle": k, "minor_cutting_edge_angle": k2},
             {"regime": "arc", "rt": (rt, u), "rz": (rt, u), "ra": (ra, u), "rq": (rq, u)}, 1e-11,
             note="series needed: the closed forms lose digits here" if si(f) / si(r) < mpf("0.01") else None)
    lim = fm(6) + ": small-feed limits"
    case("finish-limit-rt", t, "derived", lim, {"feed": "0.1 mm/rev", "corner_radius": "0.8 mm"}, {"rt": "1.5625 um", "ra": (si("0.1 mm") ** 2 / (18 * sqrt(3) * si("0.8 mm")), "um"), "rq": (si("0.1 mm") ** 2 / (12 * sqrt(5) * si("0.8 mm")), "um")}, 2e-3,
         note="f^2/(8r), f^2/(18 sqrt 3 r), f^2/(12 sqrt 5 r): approximations, hence the tolerance")

    case("finish-limit-ratios", t, "derived", lim, {}, {"rt_over_ra": (9 * sqrt(3) / 4, ""), "rq_over_ra": (3 * sqrt(3) / (2 * sqrt(5)), ""), "skewness": (2 * sqrt(5) / 7, ""), "kurtosis": (mpf(15) / 7, "")}, 1e-3,
         note="parabolic profile; compare the exact arc at f/r <= 0.05")
    reg, rt, ra, rq, mean, sk, ku = finish(si("0.25 mm"), si("0.8 mm"), pi / 2, pi / 9)
    case("finish-arc-moments", t, "derived", src, {"feed": "0.25 mm/rev", "corner_radius": "0.8 mm", "cutting_edge_angle": "90 deg", "minor_cutting_edge_angle": "20 deg"},
         {"skewness": (sk, ""), "kurtosis": (ku, "")}, 1e-10)

    t = "finish-edge"
    rows = [("0.25 mm/rev", "0.8 mm", "95 deg", "5 deg"), ("0.3 mm/rev", "0.2 mm", "75 deg", "15 deg"), ("0.5 mm/rev", "0.4 mm", "45 deg", "20 deg"), ("0.012 in/rev", "0.015625 in", "75 deg", "8 deg"),
            ("0.35 mm/rev", "0.4 mm", "20 deg", "75 deg"), ("0.5 mm/rev", "0.2 mm", "90 deg", "30 deg")]
    for i, (f, r, k, k2) in enumerate(rows, 1):
        reg, rt, ra, rq, mean, sk, ku = finish(si(f), si(r), si(k), si(k2))
        assert reg == ("arc and major edge" if i == 5 else "arc and minor edge"), (i, reg)
        u = "um" if "mm" in f else "uin"
        case(f"finish-minor-{i}", t, "derived", src, {"feed": f, "corner_radius": r, "cutting_edge_angle": k, "minor_cutting_edge_angle": k2},
             {"regime": reg, "rt": (rt, u), "rz": (rt, u), "ra": (ra, u), "rq": (rq, u)}, 1e-11, note="minor angle larger than major: mirror image" if si(k2) > si(k) else None)
    rows = [("0.2 mm/rev", "0 mm", "45 deg", "15 deg"), ("0.1 mm/rev", "0 mm", "90 deg", "10 deg"), ("0.5 mm/rev", "0.05 mm", "60 deg", "30 deg"), ("0.020 in/rev", "0.002 in", "75 deg", "20 deg"), ("0.4 mm/rev", "0.1 mm", "30 deg", "30 deg"), ("0.005 in/rev", "0 in", "60 deg", "30 deg")]
    for i, (f, r, k, k2) in enumerate(rows, 1):
        F, R, K, K2 = si(f), si(r), si(k), si(k2)
        u = "um" if "mm" in f else "uin"
        reg, rt, ra, rq, mean, sk, ku = finish(F, R, K, K2)
        assert reg == "edges only", (i, reg)
        if R == 0:
            assert abs(rt - F / (cot(K) + cot(K2))) + abs(ra - rt / 4) + abs(rq - rt / (2 * sqrt(3))) < mpf(10) ** -30
        case(f"finish-edges-{i}", t, "derived", src, {"feed": f, "corner_radius": r, "cutting_edge_angle": k, "minor_cutting_edge_angle": k2},
             {"regime": reg, "rt": (rt, u), "ra": (ra, u), "rq": (rq, u)}, 1e-11)
    R, K, K2 = si("0.4 mm"), si("75 deg"), si("15 deg")
    case("finish-regime-limits", t, "derived", fm(6), {"corner_radius": "0.4 mm", "cutting_edge_angle": "75 deg", "minor_cutting_edge_angle": "15 deg"},
         {"arc_up_to_feed": (2 * R * sin(K2), "mm/rev"), "edges_from_feed": (R * (1 - cos(K + K2)) / sin(K2), "mm/rev"), "rt_at_first": (R * (1 - cos(K2)), "um"), "rt_at_second": (R * (1 - cos(K)), "um")})
    case("finish-overhang", t, "derived", fm(6) + ": kappa above 90 deg", {"feed": "0.2 mm/rev", "corner_radius": "0 mm", "cutting_edge_angle": "95 deg", "minor_cutting_edge_angle": "10 deg"},
         {"rt": (si("0.2 mm") / (cot(si("95 deg")) + cot(si("10 deg"))), "um"), "rt_with_90_deg": (si("0.2 mm") * tan(si("10 deg")), "um")})

    t = "finish-inverse"
    s2 = fm(6) + ": inverse"
    for i, (rt, r, k, k2) in enumerate([("6.3 um", "0.8 mm", "95 deg", "10 deg"), ("10 um", "0.4 mm", "95 deg", "5 deg"), ("63 uin", "0.03125 in", "95 deg", "30 deg"), ("40 um", "0.02 mm", "60 deg", "30 deg")], 1):
        RT, R, K, K2 = si(rt), si(r), si(k), si(k2)
        if RT <= R * (1 - cos(K2)):
            f = 2 * sqrt(2 * R * RT - RT**2)
        elif RT <= R * (1 - cos(min(K, pi / 2))):
            f = R * (1 - cos(acos(1 - RT / R) + K2)) / sin(K2)
        else:
            f = (RT - R) * (cot(K) + cot(K2)) + R * (1 / sin(K) + 1 / sin(K2))
        reg, back, *_ = finish(f, R, K, K2)
        assert abs(back - RT) < mpf(10) ** -35
        case(f"finish-feed-for-rt-{i}", t, "derived", s2, {"rt": rt, "corner_radius": r, "cutting_edge_angle": k, "minor_cutting_edge_angle": k2}, {"feed": (f, "mm/rev" if "mm" in r else "in/rev"), "regime": reg})
    for i, (ra, r, k, k2) in enumerate([("1.6 um", "0.8 mm", "95 deg", "10 deg"), ("0.8 um", "0.4 mm", "95 deg", "27 deg"), ("3.2 um", "0.8 mm", "95 deg", "5 deg"), ("63 uin", "0.03125 in", "95 deg", "30 deg"), ("32 uin", "0.015625 in", "93 deg", "30 deg"), ("6.3 um", "0.05 mm", "45 deg", "30 deg")], 1):
        RA, R, K, K2 = si(ra), si(r), si(k), si(k2)
        g = lambda f: finish(f, R, K, K2)[2] - RA
        f0 = sqrt(18 * sqrt(3) * R * RA)
        f = findroot(g, (f0 * mpf("0.5"), f0 * mpf("3")), solver="anderson", tol=mpf(10) ** -70, verify=False)
        reg, rt, back, *_ = finish(f, R, K, K2)
        assert abs(back - RA) < mpf(10) ** -25, (i, nstr(back - RA))
        case(f"finish-feed-for-ra-{i}", t, "derived", s2 + ", root of the exact R_a", {"ra": ra, "corner_radius": r, "cutting_edge_angle": k, "minor_cutting_edge_angle": k2},
             {"feed": (f, "mm/rev" if "mm" in r else "in/rev"), "regime": reg}, 1e-10)


def transfer(length, EI, mu, w):
    """Euler beam transfer matrix for (y, y', M = EI y'', V = EI y''')."""
    if w == 0:
        raise ValueError
    k = (mu * w * w / EI) ** mpf("0.25")
    x = k * length
    S, C, s, c = sinh(x), cosh(x), sin(x), cos(x)
    a, b, cc, d = (C + c) / 2, (S + s) / 2, (C - c) / 2, (S - s) / 2
    return matrix([[a, b / k, cc / (EI * k**2), d / (EI * k**3)],
                   [k * d, a, b / (EI * k), cc / (EI * k**2)],
                   [EI * k**2 * cc, EI * k * d, a, b / k],
                   [EI * k**3 * b, EI * k**2 * cc, k * d, a]])


def first_frequency(sections, E, rho, start, end, kth=None, k_end=None, guess=None):
    """First natural frequency in Hz. start: clamp | pin | spring(kth); end: free | pin | spring(k_end)."""
    def det(w):
        T = mp.eye(4)
        for d, length, bore in sections:
            T = transfer(length, E * inertia(d, bore), rho * pi / 4 * (d**2 - bore**2), w) * T
        # two free start states as columns
        if start == "clamp":
            cols = [[0, 0, 1, 0], [0, 0, 0, 1]]
        elif start == "pin":
            cols = [[0, 1, 0, 0], [0, 0, 0, 1]]
        else:                                              # pinned with a rotational spring: M = k y'
            cols = [[0, 1, kth, 0], [0, 0, 0, 1]]
        e = [T * matrix(c) for c in cols]
        if end == "free":
            rows = [lambda v: v[2], lambda v: v[3]]
        elif end == "pin":
            rows = [lambda v: v[0], lambda v: v[2]]
        else:                                              # spring at the end: V = EI y''' = k y (sign: restoring)
            rows = [lambda v: v[2], lambda v: v[3] - k_end * v[0]]
        return rows[0](e[0]) * rows[1](e[1]) - rows[0](e[1]) * rows[1](e[0])
    # scan upwards for the first change of sign
    w = guess * mpf("0.02")
    last = det(w)
    while True:
        w2 = w * mpf("1.05")
        now = det(w2)
        if last * now < 0:
            break
        w, last = w2, now
        assert w < guess * 50
    return findroot(det, (w, w2), solver="anderson", tol=mpf(10) ** -60, maxsteps=200, verify=False) / (2 * pi)


# ------------------------------------------------------------------------------------------------ cases: bars
E_ST, RHO_ST = "210 GPa", "7850 kg/m^3"



def secs(rows):
    return [(si(d), si(l), si(b[0]) if b else mpf(0)) for d, l, *b in rows]


def as_inputs(rows):
    return [{"diameter": d, "length": l, **({"bore": b[0]} if b else {})} for d, l, *b in rows]


def beam_cases():
    t = "beam"
    E = si(E_ST)
    sm = "any strength of materials text (Roark's Formulas for Stress and Strain; Timoshenko), from memory; beam table coefficient"
    # coefficients: L = d chosen so that F L^3/(EI) is a round number is not needed: dimensionless
    def coeff(fn):
        d, L = si("20 mm"), si("200 mm")
        return fn([(d, L, mpf(0))], L) * E * inertia(d) / L**3
    rows = [
        ("cantilever-end", "1/3", coeff(lambda s, L: flex(s, E, L, L)), mpf(1) / 3),
        ("simply-supported-middle", "1/48", coeff(lambda s, L: between(s, E, L / 2)), mpf(1) / 48),
        ("propped-middle", "7/768", coeff(lambda s, L: propped(s, E, L / 2, [(L, None)])[0]), mpf(7) / 768),
    ]
    for name, frac, got, want in rows:
        assert abs(got - want) < mpf(10) ** -40, name
        case(f"beam-coefficient-{name}", t, "published", sm, {"case": name}, {"coefficient": (want, "")}, 1e-12, note=f"deflection under the load = {frac} F L^3/(E I)")
    L = mpf(1)
    a = 2 - sqrt(2)
    case("beam-coefficient-propped-worst", t, "published", sm + " (0.0098 at 0.414 L from the prop)", {"case": "chuck and centre, load moving"}, {"at_over_length": (a, ""), "coefficient": (a**3 * (1 - a) ** 2 * (4 - a) / 12, "")}, 1e-12)
    agree(a**3 * (1 - a) ** 2 * (4 - a) / 12, "0.0098", abs_="0.00005", what="propped worst")
    # own weight
    for name, c, digits in [("cantilever", mpf(1) / 8, "1/8"), ("simply supported", mpf(5) / 384, "5/384")]:
        case(f"beam-weight-{name.replace(' ', '-')}", t, "published", sm, {"case": name}, {"coefficient": (c, "")}, 1e-12, note=f"largest sag = {digits} w L^4/(E I)")
    g = lambda x: (x**2 * (3 - 5 * x + 2 * x**2)) / 48         # fixed at 0, propped at 1, w = EI = L = 1
    xm = findroot(lambda x: 6 * x - 15 * x**2 + 8 * x**3, mpf("0.58"))
    agree(g(xm), "0.0054", abs_="0.00005", what="propped weight")
    case("beam-weight-propped", t, "published", sm + " (w L^4/(185 E I))", {"case": "chuck and centre"}, {"coefficient": (g(xm), ""), "at_over_length": (xm, "")}, 1e-10)

    src = fm(10) + ": unit-load integral, agrees with beam elements"
    def one(id, rows, holding, at, force, springs=None, E_=E_ST, unit="um", extra=None, note=None, tol=1e-11):
        S, F, A = secs(rows), si(force), si(at)
        sp = springs or {}
        kc, kth, kt = (si(sp[k]) if k in sp else None for k in ("chuck_stiffness", "chuck_rotational_stiffness", "centre_stiffness"))
        L = sum(s[1] for s in S)
        exp_ = {}
        if holding == "chuck":
            c = flex(S, si(E_), A, A, kc, kth)
        elif holding == "chuck and centre":
            c, R = propped(S, si(E_), A, [(L, kt)], kc, kth)
            exp_["centre_force"] = (R[0] * F, "N")
        else:
            c = between(S, si(E_), A, si(sp["head_stiffness"]) if "head_stiffness" in sp else None, kt)
        fe = by_elements(S, si(E_), A, holding, kc, kth, kt, si(sp["head_stiffness"]) if "head_stiffness" in sp else None)
        assert abs(fe - c) < abs(c) * mpf(10) ** -30, (id, nstr(fe), nstr(c))
        exp_ = {"deflection": (c * F, unit), "diameter_error": (2 * c * F, unit), **exp_}
        case(id, t, "derived", src, {"youngs_modulus": E_, "sections": as_inputs(rows), "holding": holding, "at": at, "force": force, **sp}, exp_, tol, note=note)

    one("beam-chuck-1", [("20 mm", "100 mm")], "chuck", "100 mm", "100 N")
    one("beam-chuck-2", [("20 mm", "100 mm")], "chuck", "60 mm", "100 N")
    one("beam-chuck-3", [("1 in", "6 in")], "chuck", "6 in", "50 lbf", E_="30000 ksi", unit="in")
    one("beam-chuck-tube", [("30 mm", "150 mm", "20 mm")], "chuck", "150 mm", "200 N", E_="70 GPa")
    one("beam-chuck-springs", [("25 mm", "120 mm")], "chuck", "110 mm", "150 N", {"chuck_stiffness": "40 N/um", "chuck_rotational_stiffness": "120 kN*m/rad"})
    one("beam-centre-1", [("20 mm", "300 mm")], "chuck and centre", "150 mm", "100 N")
    one("beam-centre-2", [("20 mm", "300 mm")], "chuck and centre", "175.73593128807147 mm", "100 N", note="the worst station, (2 - sqrt 2) L")
    one("beam-centre-3", [("20 mm", "300 mm")], "chuck and centre", "300 mm", "100 N", {"centre_stiffness": "20 N/um"})
    one("beam-centre-4", [("32 mm", "500 mm")], "chuck and centre", "420 mm", "300 N", {"chuck_stiffness": "50 N/um", "chuck_rotational_stiffness": "200 kN*m/rad", "centre_stiffness": "15 N/um"})
    one("beam-centre-5", [("0.75 in", "12 in")], "chuck and centre", "7 in", "40 lbf", {"centre_stiffness": "100000 lbf/in"}, E_="10000 ksi", unit="in")
    one("beam-between-1", [("25 mm", "400 mm")], "between centres", "200 mm", "120 N")
    one("beam-between-2", [("25 mm", "400 mm")], "between centres", "100 mm", "120 N", {"head_stiffness": "30 N/um", "centre_stiffness": "15 N/um"})
    step3 = [("40 mm", "60 mm"), ("25 mm", "50 mm"), ("12 mm", "30 mm")]
    one("beam-stepped-chuck-1", step3, "chuck", "140 mm", "100 N")
    one("beam-stepped-chuck-2", step3, "chuck", "95 mm", "100 N", note="load inside the middle section")
    one("beam-stepped-centre-1", step3, "chuck and centre", "110 mm", "100 N")
    one("beam-stepped-centre-2", [("30 mm", "40 mm"), ("45 mm", "80 mm", "15 mm"), ("28 mm", "120 mm"), ("18 mm", "60 mm")], "chuck and centre", "200 mm", "250 N",
        {"chuck_stiffness": "60 N/um", "chuck_rotational_stiffness": "250 kN*m/rad", "centre_stiffness": "18 N/um"})
    one("beam-stepped-between-1", [("20 mm", "80 mm"), ("36 mm", "200 mm"), ("24 mm", "120 mm")], "between centres", "150 mm", "200 N")
    one("beam-stepped-between-2", [("0.5 in", "3 in"), ("1 in", "8 in"), ("0.75 in", "5 in")], "between centres", "12 in", "30 lbf", {"head_stiffness": "150000 lbf/in", "centre_stiffness": "80000 lbf/in"}, E_="29500 ksi", unit="in")
    one("beam-plastic", [("20 mm", "80 mm")], "chuck", "80 mm", "20 N", E_="2.8 GPa", unit="mm", note="a plastic bar: about 75 times softer than steel")
    # profile along a bar
    S = secs([("20 mm", "200 mm")])
    st = ["25 mm", "50 mm", "100 mm", "150 mm", "200 mm"]
    case("beam-stations-chuck", t, "derived", src, {"youngs_modulus": E_ST, "sections": as_inputs([("20 mm", "200 mm")]), "holding": "chuck", "at": st, "force": "80 N"},
         {"deflection": [(flex(S, E, si(a), si(a)) * 80, "um") for a in st]}, 1e-11)
    case("beam-stations-centre", t, "derived", src, {"youngs_modulus": E_ST, "sections": as_inputs([("20 mm", "200 mm")]), "holding": "chuck and centre", "at": st, "force": "80 N"},
         {"deflection": [(propped(S, E, si(a), [(si("200 mm"), None)])[0] * 80, "um") for a in st]}, tol_abs="1e-12 um")
    # several loads: superposition
    S = secs(step3)
    lo = [("50 mm", "120 N"), ("100 mm", "-40 N"), ("140 mm", "60 N")]
    case("beam-several-loads", t, "derived", src, {"youngs_modulus": E_ST, "sections": as_inputs(step3), "holding": "chuck", "loads": [{"at": a, "force": F} for a, F in lo], "look_at": "140 mm"},
         {"deflection": (sum(flex(S, E, si(a), si("140 mm")) * si(F) for a, F in lo), "um")}, 1e-11)
    # steady: second prop
    S = secs([("22 mm", "600 mm")])
    c, R = propped(S, E, si("420 mm"), [(si("600 mm"), None), (si("300 mm"), si("25 N/um"))])
    case("beam-steady", t, "derived", src, {"youngs_modulus": E_ST, "sections": as_inputs([("22 mm", "600 mm")]), "holding": "chuck and centre", "steady_at": "300 mm", "steady_stiffness": "25 N/um", "at": "420 mm", "force": "100 N"},
         {"deflection": (c * 100, "um"), "centre_force": (R[0] * 100, "N"), "steady_force": (R[1] * 100, "N")}, 1e-10)
    # away from the load
    S = secs([("20 mm", "120 mm")])
    case("beam-away-from-load", t, "derived", src, {"youngs_modulus": E_ST, "sections": as_inputs([("20 mm", "120 mm")]), "holding": "chuck", "at": "80 mm", "force": "100 N", "look_at": "120 mm"}, {"deflection": (flex(S, E, si("80 mm"), si("120 mm")) * 100, "um")})
    # cone: d from 30 at the chuck to 20 at the end
    E_, L_, d0, d1 = E, si("150 mm"), si("30 mm"), si("20 mm")
    cone = quad(lambda x: (L_ - x) ** 2 / (E_ * pi / 64 * (d0 + (d1 - d0) * x / L_) ** 4), [0, L_])
    # closed form for the end load: with u = d, ... = 64 L^3/(3 pi E d0^3 d1)
    assert abs(cone - 64 * L_**3 / (3 * pi * E_ * d0**3 * d1)) < mpf(10) ** -40
    case("beam-cone", t, "derived", "strength of materials texts; derived: 64 F L^3/(3 pi E d_0^3 d_1), d_0 at the chuck", {"youngs_modulus": E_ST, "diameter_at_chuck": "30 mm", "diameter_at_end": "20 mm", "length": "150 mm", "at": "150 mm", "force": "100 N"}, {"deflection": (cone * 100, "um")})
    case("beam-own-weight", t, "derived", src, {"youngs_modulus": E_ST, "density": RHO_ST, "sections": as_inputs([("25 mm", "500 mm")]), "holding": "chuck"},
         {"sag_at_end": (si(RHO_ST) * pi / 4 * si("25 mm") ** 2 * GN * si("0.5 m") ** 4 / (8 * E * inertia(si("25 mm"))), "um")}, 1e-11, note="standard gravity 9.80665 m/s^2")
    case("beam-second-moment", t, "derived", "pi (D^4 - d^4)/64", {"diameter": "30 mm", "bore": "20 mm"}, {"second_moment": (inertia(si("30 mm"), si("20 mm")), "mm^4")})
    # flexibilities to springs
    kc, kth = si("30 N/um"), si("100 kN*m/rad")
    S = secs([("30 mm", "150 mm")])
    e1, e2 = (2 * 120 * flex(S, E, a, a, kc, kth) for a in (si("50 mm"), si("150 mm")))
    case("beam-stiffness-from-taper", t, "derived", src + ", last point: solve 1/k_c + a^2/k_th at two stations", {"youngs_modulus": E_ST, "sections": as_inputs([("30 mm", "150 mm")]), "holding": "chuck", "force": "120 N", "at": ["50 mm", "150 mm"],
         "diameter_error": [out(e1, "um", 30), out(e2, "um", 30)]}, {"chuck_stiffness": "30 N/um", "chuck_rotational_stiffness": "100 kN*m/rad"}, 1e-9)

    t = "diameter-error"
    s11 = fm(11)
    case("diameter-error-tangential", t, "derived", s11 + ": 2(sqrt((R + delta)^2 + v^2) - R)", {"diameter": "10 mm", "passive_deflection": "20 um", "tangential_deflection": "60 um"},
         {"diameter_error": (2 * (sqrt((si("5 mm") + si("20 um")) ** 2 + si("60 um") ** 2) - si("5 mm")), "um")})
    mu = mpf("400") / mpf("1600")
    q = mu / (1 + mu)
    case("diameter-error-spring-passes", t, "derived", s11, {"set_depth": "0.5 mm", "cutting_stiffness": "400 N/mm", "system_stiffness": "1600 N/mm", "passes": "4"},
         {"ratio": (q, ""), "left_after": [(si("0.5 mm") * q**j, "um") for j in (1, 2, 3, 4)], "true_depth_of_first": (si("0.5 mm") / (1 + mu), "mm")})
    case("diameter-error-equal-infeed", t, "derived", s11 + ": a q (1 - q^j)/(1 - q), limit a mu", {"set_depth": "0.2 mm", "cutting_stiffness": "300 N/mm", "system_stiffness": "2000 N/mm", "passes": "5"},
         {"left_after": [(si("0.2 mm") * (lambda q: q * (1 - q**j) / (1 - q))(mpf(300) / 2300), "um") for j in (1, 2, 3, 5)], "limit": (si("0.2 mm") * mpf("0.15"), "um")})
    mu = mpf("0.15")
    case("diameter-error-light-after-heavy", t, "derived", s11 + ": (a_set + left)/(1 + mu)", {"previous_set_depth": "1 mm", "set_depth": "0.1 mm", "cutting_stiffness": "300 N/mm", "system_stiffness": "2000 N/mm"},
         {"left_before": (si("1 mm") * mu / (1 + mu), "um"), "true_depth": ((si("0.1 mm") + si("1 mm") * mu / (1 + mu)) / (1 + mu), "um")}, note="one heavy pass only before: the light cut takes more than dialled")
    # nonlinear: light cut on an end-loaded bar
    kc, m, f, r, kap, kn = si("2220 MPa"), mpf("0.14"), si("0.1 mm"), si("0.4 mm"), si("95 deg"), mpf("0.5")
    S = secs([("16 mm", "90 mm")])
    C = flex(S, E, si("90 mm"), si("90 mm"))
    aset = si("0.3 mm")
    a = findroot(lambda a: a + C * edge_force(kc, m, a, f, r, kap, kn)[1] - aset, (si("0.2 mm"), si("0.3 mm")), solver="anderson", tol=mpf(10) ** -40, verify=False)
    left1 = aset - a
    a2 = findroot(lambda a: a + C * edge_force(kc, m, a, f, r, kap, kn)[1] - left1, (left1 / 4, left1), solver="anderson", tol=mpf(10) ** -40, verify=False)
    case("diameter-error-light-cut", t, "derived", s11 + " with the light cut: a + C F_p(a) = a_set by root finding", {"specific_force": "2220 MPa", "exponent": "0.14", "feed": "0.1 mm/rev", "corner_radius": "0.4 mm", "cutting_edge_angle": "95 deg", "normal_ratio": "0.5",
         "youngs_modulus": E_ST, "sections": as_inputs([("16 mm", "90 mm")]), "holding": "chuck", "at": "90 mm", "set_depth": "0.3 mm"},
         {"true_depth": (a, "um"), "left_after_first": (left1, "um"), "left_after_spring_pass": (left1 - a2, "um"), "diameter_error": (2 * left1, "um")}, 1e-8, note="bar taken as 16 mm throughout, rigid chuck")
    case("diameter-error-tailstock", t, "derived", s11, {"larger_at_tail": "0.06 mm", "distance_measured": "150 mm", "length_between_centres": "400 mm"}, {"move_tailstock_towards_tool": (si("0.03 mm") * 400 / 150, "mm")})


def vibration_cases():
    t = "vibration"
    bl = "Blevins, Formulas for Natural Frequency and Mode Shape (1979), from memory"
    lam = {"cantilever": findroot(lambda x: cos(x) * cosh(x) + 1, 1.875), "chuck and centre": findroot(lambda x: tan(x) - tanh(x), 3.9266), "between centres": pi, "fixed and fixed": findroot(lambda x: cos(x) * cosh(x) - 1, 4.73)}
    lit = {"cantilever": "1.87510407", "chuck and centre": "3.92660231", "between centres": "3.14159265", "fixed and fixed": "4.73004074"}
    for k, v in lam.items():
        agree(v, lit[k], abs_="0.00000001", what=k)
        case(f"vibration-lambda-{k.replace(' ', '-')}", t, "published", bl, {"case": k}, {"lambda": (v, ""), "lambda_squared": (v * v, "")}, 1e-8)
    E, rho = si(E_ST), si(RHO_ST)
    def uni(d, L, l, b=mpf(0)):
        return l**2 / (2 * pi * L**2) * sqrt(E * inertia(d, b) / (rho * pi / 4 * (d * d - b * b)))
    for i, (d, L, k, start, end) in enumerate([("20 mm", "150 mm", "cantilever", "clamp", "free"), ("20 mm", "600 mm", "chuck and centre", "clamp", "pin"), ("25 mm", "1 m", "between centres", "pin", "pin"), ("0.75 in", "30 in", "chuck and centre", "clamp", "pin")], 1):
        f = uni(si(d), si(L), lam[k])
        g = first_frequency([(si(d), si(L), mpf(0))], E, rho, start, end, guess=2 * pi * f)
        assert abs(f - g) < f * mpf(10) ** -25, (i, nstr(f), nstr(g))
        case(f"vibration-uniform-{i}", t, "derived", fm(12) + "; agrees with the transfer matrix", {"youngs_modulus": E_ST, "density": RHO_ST, "sections": as_inputs([(d, L)]), "holding": "chuck" if k == "cantilever" else k},
             {"first_frequency": (f, "Hz"), "first_critical_speed": (f, "rpm")})
    f = uni(si("30 mm"), si("800 mm"), pi, si("24 mm"))
    case("vibration-tube", t, "derived", fm(12), {"youngs_modulus": E_ST, "density": RHO_ST, "sections": as_inputs([("30 mm", "800 mm", "24 mm")]), "holding": "between centres"}, {"first_critical_speed": (f, "rpm")})
    for i, (rows, hold, start, end) in enumerate([([("40 mm", "100 mm"), ("20 mm", "150 mm")], "chuck", "clamp", "free"), ([("30 mm", "200 mm"), ("22 mm", "200 mm"), ("16 mm", "100 mm")], "chuck and centre", "clamp", "pin"),
                                                ([("20 mm", "150 mm"), ("40 mm", "300 mm"), ("25 mm", "150 mm")], "between centres", "pin", "pin")], 1):
        S = secs(rows)
        L = sum(s[1] for s in S)
        guess = 2 * pi * uni(max(s[0] for s in S), L, lam["cantilever" if hold == "chuck" else hold])
        f = first_frequency(S, E, rho, start, end, guess=guess)
        case(f"vibration-stepped-{i}", t, "derived", fm(12) + ": transfer matrix, 50 digits", {"youngs_modulus": E_ST, "density": RHO_ST, "sections": as_inputs(rows), "holding": hold}, {"first_frequency": (f, "Hz"), "first_critical_speed": (f, "rpm")}, 1e-9,
             note="Euler beam, no shear, no rotary inertia; an approximate method may use its stated error as tolerance")
    d, L, kth = si("20 mm"), si("150 mm"), si("100 kN*m/rad")
    S = [(d, L, mpf(0))]
    f = first_frequency(S, E, rho, "spring", "free", kth=kth, guess=2 * pi * uni(d, L, lam["cantilever"]))
    lm = sqrt(2 * pi * f * L**2 / sqrt(E * inertia(d) / (rho * pi / 4 * d * d)))
    res = 1 + cos(lm) * cosh(lm) - E * inertia(d) * lm / (kth * L) * (sin(lm) * cosh(lm) - cos(lm) * sinh(lm))
    assert abs(res) < mpf(10) ** -20, nstr(res)
    case("vibration-chuck-spring", t, "derived", fm(12) + ": transfer matrix; agrees with the characteristic equation given there", {"youngs_modulus": E_ST, "density": RHO_ST, "sections": as_inputs([("20 mm", "150 mm")]), "holding": "chuck", "chuck_rotational_stiffness": "100 kN*m/rad"},
         {"first_critical_speed": (f, "rpm")}, 1e-9)
    d, L, kt = si("25 mm"), si("700 mm"), si("10 N/um")
    f = first_frequency([(d, L, mpf(0))], E, rho, "clamp", "spring", k_end=kt, guess=2 * pi * uni(d, L, lam["cantilever"]))
    case("vibration-centre-spring", t, "derived", fm(12) + ": transfer matrix", {"youngs_modulus": E_ST, "density": RHO_ST, "sections": as_inputs([("25 mm", "700 mm")]), "holding": "chuck and centre", "centre_stiffness": "10 N/um"}, {"first_critical_speed": (f, "rpm")}, 1e-9)
    case("vibration-rayleigh", t, "derived", "Rayleigh quotient with the static shape under own weight, uniform cantilever: lambda^2 = sqrt(162/13)", {"case": "cantilever"}, {"lambda_squared": (sqrt(mpf(162) / 13), ""), "over_exact": (sqrt(mpf(162) / 13) / lam["cantilever"] ** 2, "")}, 1e-9, note="an upper bound, 0.4 % high")
    case("vibration-rayleigh-between", t, "derived", "Rayleigh quotient with the static shape under own weight, simply supported", {"case": "between centres"}, {"lambda_squared": (sqrt(mpf(3024) / 31), "")}, 1e-9, note="exact pi^2 = 9.8696; 0.07 % high")
    # check the two quotients by integration
    y = lambda x: x**4 - 4 * x**3 + 6 * x**2
    assert abs(24 * quad(y, [0, 1]) / quad(lambda x: y(x) ** 2, [0, 1]) - mpf(162) / 13) < mpf(10) ** -30
    y2 = lambda x: x**4 - 2 * x**3 + x
    assert abs(24 * quad(y2, [0, 1]) / quad(lambda x: y2(x) ** 2, [0, 1]) - mpf(3024) / 31) < mpf(10) ** -30
    M, d, L = si("2 kg"), si("20 mm"), si("200 mm")
    m = rho * pi / 4 * d * d * L
    case("vibration-end-mass", t, "derived", fm(12) + ": Rayleigh with the end-load shape, 33/140", {"youngs_modulus": E_ST, "density": RHO_ST, "sections": as_inputs([("20 mm", "200 mm")]), "holding": "chuck", "end_mass": "2 kg"},
         {"first_frequency": (sqrt(3 * E * inertia(d) / (L**3 * (M + 33 * m / 140))) / (2 * pi), "Hz")}, 1e-9)
    case("vibration-imbalance", t, "derived", fm(12) + ": e r^2/(1 - r^2)", {"eccentricity": "50 um", "spindle_speed": "900 rpm", "first_critical_speed": "1500 rpm"}, {"whip": (si("50 um") * mpf("0.36") / mpf("0.64"), "um")})


class Elements:
    """A bar of cylinders and cones by beam elements (stiffness method): the stiffness of an element is the inverse of its
    flexibility, integrated at 50 digits, so that the nodes are exact. Independent of the unit-load integrals above."""

    def __init__(self, rows, E, holding, springs, steadies, nodes=(), density=None):
        self.rows, self.E, self.density = rows, E, density
        x, cuts = mpf(0), [mpf(0)]
        for r in rows:
            x += r["length"]
            cuts.append(x)
        for a in (*nodes, *(a for a, _ in steadies)):
            if min(abs(a - c) for c in cuts) > mpf(10) ** -40:
                cuts.append(a)
        self.z = sorted(cuts)
        n = 2 * len(self.z)
        self.K, self.F, fixed = matrix(n, n), matrix(n, 1), set()
        for e in range(len(self.z) - 1):
            self.element(e)
        def hold(dof, k):
            if k is None:
                fixed.add(dof)
            else:
                self.K[dof, dof] += k
        hold(0, springs.get("head"))
        if holding != "between centres":
            hold(1, springs.get("tilt"))
        if holding != "chuck":
            hold(n - 2, springs.get("centre"))
        for a, k in steadies:
            hold(2 * self.node(a), k)
        self.free = [i for i in range(n) if i not in fixed]

    def node(self, a):
        return min(range(len(self.z)), key=lambda i: abs(self.z[i] - a))

    def shape(self, e):
        """Outside diameter as a function of the place in element e, and the bore."""
        mid, x = (self.z[e] + self.z[e + 1]) / 2, mpf(0)
        for r in self.rows:
            if mid < x + r["length"]:
                d0, d1, x0, l = r["diameter"], r["end"], self.z[e] - x, r["length"]
                return (lambda t: d0 + (d1 - d0) * (x0 + t) / l), r["bore"]
            x += r["length"]

    def element(self, e):
        l = self.z[e + 1] - self.z[e]
        d, b = self.shape(e)
        soft = lambda t: 1 / (self.E * inertia(d(t), b))
        q = lambda g: quad(g, [0, l / 2, l])
        # cantilever fixed at the left: end deflection and slope under an end force and an end moment
        a11, a12, a22 = q(lambda t: (l - t) ** 2 * soft(t)), q(lambda t: (l - t) * soft(t)), q(soft)
        k22 = matrix([[a11, a12], [a12, a22]]) ** -1
        # forces at the left balance those at the right: F1 = -F2, M1 = -M2 - F2 l
        T = matrix([[-1, 0], [-l, -1]])
        k12 = T * k22
        k11 = k12 * T.T
        i = 2 * e
        for p in range(2):
            for r in range(2):
                self.K[i + p, i + r] += k11[p, r]
                self.K[i + p, i + 2 + r] += k12[p, r]
                self.K[i + 2 + p, i + r] += k12[r, p]
                self.K[i + 2 + p, i + 2 + r] += k22[p, r]
        if self.density is not None:
            w = lambda t: self.density * GN * pi / 4 * (d(t) ** 2 - b**2)
            near, slope = d(mpf(0)), d(mpf(1)) - d(mpf(0))
            powers = [near**2 - b**2, 2 * near * slope, slope**2]
            moment = lambda t: self.density * GN * pi / 4 * sum(a * ((l ** (k + 2) - t ** (k + 2)) / (k + 2) - t * (l ** (k + 1) - t ** (k + 1)) / (k + 1)) for k, a in enumerate(powers))
            end = matrix([q(lambda t: moment(t) * (l - t) * soft(t)), q(lambda t: moment(t) * soft(t))])
            right = k22 * end                              # what holds the right end back, taken off again
            left = matrix([q(w), q(lambda t: w(t) * t)]) + T * right
            for p in range(2):
                self.F[i + p] += left[p]
                self.F[i + 2 + p] += right[p]

    def solve(self, extra):
        """extra: {dof: load}; the deflections and slopes of all nodes."""
        n = len(self.free)
        A, B = matrix(n, n), matrix(n, 1)
        for i, p in enumerate(self.free):
            B[i] = self.F[p] + extra.get(p, 0)
            for j, r in enumerate(self.free):
                A[i, j] = self.K[p, r]
        u, out_ = mp.lu_solve(A, B), [mpf(0)] * (2 * len(self.z))
        for i, p in enumerate(self.free):
            out_[p] = u[i]
        return out_


def any_bar_cases():
    t, E = "beam", si(E_ST)
    src = fm(10) + ": beam elements of exact flexibility, 50 digits"
    bars = {
        "pin": [("30 mm", "40 mm"), ("24 mm", "90 mm"), ("12 mm", "35 mm")],
        "spindle": [("30 mm", "40 mm"), ("45 mm", "80 mm", "15 mm"), ("28 mm", "120 mm"), ("18 mm", "60 mm")],
        "taper": [("30 mm", "50 mm"), ("30 mm", "120 mm", None, "14 mm"), ("14 mm", "30 mm")],
        "bored-taper": [("40 mm", "60 mm", "20 mm"), ("40 mm", "150 mm", "20 mm", "21 mm"), ("26 mm", "60 mm", "20 mm", "40 mm")],
        "long": [("1 in", "10 in"), ("3/4 in", "8 in"), ("1.25 in", "6 in", None, "1 in")],
    }
    springs = {"chuck_stiffness": "40 N/um", "chuck_rotational_stiffness": "150 kN*m/rad", "centre_stiffness": "15 N/um"}
    def size(text):
        if text and "/" in text:
            a, b = text.split(" ")[0].split("/")
            return mpf(a) / mpf(b) * UNITS[text.split(" ")[1]]
        return si(text)
    def parts(name):
        rows = [(*r, None, None)[:4] for r in bars[name]]
        told = [{"diameter": d, "length": l, **({"bore": b} if b else {}), **({"end_diameter": e} if e else {})} for d, l, b, e in rows]
        return told, [{"diameter": size(d), "length": size(l), "bore": size(b) if b else mpf(0), "end": size(e or d)} for d, l, b, e in rows]
    def told_springs(holding, sprung):
        if not sprung:
            return {}, {}
        keys = {"chuck": ["chuck_stiffness", "chuck_rotational_stiffness"], "chuck and centre": list(springs), "between centres": ["chuck_stiffness", "centre_stiffness"]}[holding]
        names = {"chuck_stiffness": "head", "chuck_rotational_stiffness": "tilt", "centre_stiffness": "centre"}
        said = {k: springs[k] for k in keys}
        return said, {names[k]: si(v) for k, v in said.items()}
    plan = [("pin", "chuck", False, []), ("pin", "chuck and centre", True, []), ("spindle", "between centres", True, []), ("taper", "chuck", True, []), ("taper", "chuck and centre", False, []),
            ("bored-taper", "chuck and centre", True, []), ("bored-taper", "between centres", False, []), ("long", "chuck and centre", True, [("11 in", "25 N/um")]), ("long", "between centres", False, [("8 in", None), ("15 in", "20 N/um")]),
            ("spindle", "chuck", True, [("200 mm", "30 N/um")]), ("long", "chuck", False, [("20 in", None)])]
    for i, (name, holding, sprung, steadies) in enumerate(plan, 1):
        told, rows = parts(name)
        said, k = told_springs(holding, sprung)
        L = sum(r["length"] for r in rows)
        unit = "in" if name == "long" else "mm"
        at = [nstr(L * j / 12 / UNITS[unit], 6) + " " + unit for j in range(1, 13)]
        at[-1] = nstr(L / UNITS[unit], 6) + " " + unit
        held = [(si(a), si(s) if s else None) for a, s in steadies]
        bar = Elements(rows, E, holding, k, held, [si(a) for a in at])
        bent = [100 * bar.solve({2 * bar.node(si(a)): mpf(1)})[2 * bar.node(si(a))] for a in at]
        largest = max(bent) / UNITS["um"]
        case(f"beam-any-{i}-{name}", t, "derived", src, {"youngs_modulus": E_ST, "sections": told, "holding": holding, **said,
             **({"steadies": [{"at": a, **({"stiffness": s} if s else {})} for a, s in steadies]} if steadies else {}), "at": at, "force": "100 N"},
             {"deflection": [(b, "um") for b in bent]}, tol_abs=nstr(largest * mpf("1e-12"), 3, min_fixed=-40, max_fixed=40) + " um", note="tolerance: 1e-12 of the largest deflection")
    for i, (name, holding, sprung, steadies) in enumerate([("pin", "chuck", True, []), ("taper", "chuck and centre", True, []), ("bored-taper", "between centres", False, []), ("long", "chuck and centre", False, [("11 in", "25 N/um")])], 1):
        told, rows = parts(name)
        said, k = told_springs(holding, sprung)
        L = sum(r["length"] for r in rows)
        unit = "in" if name == "long" else "mm"
        at = [nstr(L * j / 8 / UNITS[unit], 6) + " " + unit for j in range(1, 9)]
        held = [(si(a), si(s) if s else None) for a, s in steadies]
        loads = [{"at": at[2], "force": "80 N"}, {"at": at[5], "force": "-30 N"}, {"at": at[4], "moment": "2.5 N*m"}]
        bar = Elements(rows, E, holding, k, held, [si(a) for a in at], si(RHO_ST))
        extra = {2 * bar.node(si(at[2])): mpf(80), 2 * bar.node(si(at[5])): mpf(-30), 2 * bar.node(si(at[4])) + 1: mpf("2.5")}
        bent = [bar.solve(extra)[2 * bar.node(si(a))] for a in at]
        largest = max(abs(b) for b in bent) / UNITS["um"]
        case(f"beam-loaded-{i}-{name}", t, "derived", src, {"youngs_modulus": E_ST, "density": RHO_ST, "sections": told, "holding": holding, **said,
             **({"steadies": [{"at": a, **({"stiffness": s} if s else {})} for a, s in steadies]} if steadies else {}), "loads": loads, "look_at": at},
             {"deflection": [(b, "um") for b in bent]}, tol_abs=nstr(largest * mpf("1e-12"), 3, min_fixed=-40, max_fixed=40) + " um", note="own weight too; tolerance: 1e-12 of the largest deflection")


def cone_frequency(d0, d1, L, E, rho):
    """First frequency of a cone clamped at its end of diameter d0, in Hz, by Ritz: w = sum c_k x^(k+2), all integrals exact.
    Converges from above; two sizes of the sum must agree."""
    def size(n):
        # diameter in units of d0, x in units of L: D = 1 + s x
        s = d1 / d0 - 1
        fourth = [mpf(1), 4 * s, 6 * s**2, 4 * s**3, s**4]
        second = [mpf(1), 2 * s, s**2]
        K, M = matrix(n, n), matrix(n, n)
        for i in range(n):
            for j in range(n):
                K[i, j] = (i + 2) * (i + 1) * (j + 2) * (j + 1) * sum(c / (i + j + k + 1) for k, c in enumerate(fourth))
                M[i, j] = sum(c / (i + j + 4 + k + 1) for k, c in enumerate(second))
        v = matrix([mpf(1)] * n)
        for _ in range(16):                                # inverse iteration: the squares of the frequencies are 1 to 10 or more
            v = mp.lu_solve(K, M * v)
            v = v / mp.norm(v)
        return (v.T * K * v)[0] / (v.T * M * v)[0]
    a, b = size(24), size(28)
    assert abs(a - b) < b * mpf(10) ** -11, nstr(a / b - 1)
    return sqrt(b * E * d0**2 / 16 / rho) / (2 * pi * L**2)


def whirl_of_cones():
    t, E, rho = "vibration", si(E_ST), si(RHO_ST)
    for i, (d0, d1, l) in enumerate([("30 mm", "20 mm", "200 mm"), ("40 mm", "10 mm", "250 mm")], 1):
        D, L = si(d0), si(l)
        f = cone_frequency(D, si(d1), L, E, rho)
        case(f"vibration-cone-{i}", t, "derived", fm(12) + ": Ritz with 28 powers of x, 50 digits", {"youngs_modulus": E_ST, "density": RHO_ST, "sections": [{"diameter": d0, "length": l, "end_diameter": d1}], "holding": "chuck"},
             {"first_critical_speed": (f, "rpm")}, 1e-9)
    # a nearly pointed cone against the coefficient of the whole cone
    case("vibration-whole-cone", t, "published", "Kirchhoff 1879: clamped whole cone, w = 8.719 sqrt(E I_0/(rho A_0))/L^2, from memory", {"youngs_modulus": E_ST, "density": RHO_ST, "sections": [{"diameter": "1 m", "length": "10 m", "end_diameter": "0.1 mm"}], "holding": "chuck"},
         {"first_critical_speed": (mpf("8.719") * sqrt(E * si("1 m") ** 2 / 16 / rho) / (2 * pi * 100), "rpm")}, 1e-3, note="the tip is 1/10000 of the foot")
    # a steady in the middle of a bar between centres: the half bar's mode between its ends
    d, L = si("20 mm"), si("800 mm")
    f = pi**2 / (2 * pi * (L / 2) ** 2) * sqrt(E * d * d / 16 / rho)
    case("vibration-steady-middle", t, "derived", fm(12) + ": a rigid steady in the middle is a node of the second mode", {"youngs_modulus": E_ST, "density": RHO_ST, "sections": [{"diameter": "20 mm", "length": "800 mm"}], "holding": "between centres", "steadies": [{"at": "400 mm"}]},
         {"first_critical_speed": (f, "rpm")}, 1e-9)



def least_chip_cases():
    t = "least-chip"
    br = "Brammertz 1961, Industrie-Anzeiger 83, from memory; derived again"
    B = lambda f, r, h: f * f / (8 * r) + h / 2 * (1 + r * h / (f * f))
    for i, (f, r, h) in enumerate([("0.1 mm/rev", "0.8 mm", "5 um"), ("0.03 mm/rev", "0.8 mm", "5 um"), ("0.2 mm/rev", "0.4 mm", "10 um"), ("0.003 in/rev", "0.03125 in", "200 uin")], 1):
        case(f"least-chip-rth-{i}", t, "derived", br, {"feed": f, "corner_radius": r, "least_chip_thickness": h}, {"rt": (B(si(f), si(r), si(h)), "um" if "mm" in f else "uin")})
    fs = sqrt(2 * si("0.8 mm") * si("5 um"))
    assert abs(B(fs, si("0.8 mm"), si("5 um")) - si("5 um")) < mpf(10) ** -40
    case("least-chip-best-feed", t, "derived", br + ": f* = sqrt(2 r h_min), R_th = h_min", {"corner_radius": "0.8 mm", "least_chip_thickness": "5 um"}, {"feed": (fs, "mm/rev"), "rt": "5 um"})
    S = 4 * si("0.8 mm") * (si("8 um") - si("2 um"))
    f2 = S + sqrt(S * S - 4 * si("0.8 mm") ** 2 * si("4 um") ** 2)
    assert abs(B(sqrt(f2), si("0.8 mm"), si("4 um")) - si("8 um")) < mpf(10) ** -40
    case("least-chip-inverse", t, "derived", br, {"rt": "8 um", "corner_radius": "0.8 mm", "least_chip_thickness": "4 um"}, {"feed": (sqrt(f2), "mm/rev")})
    case("least-chip-edge-45", t, "from-memory", "stagnation at 45 deg, L'vov, from memory", {"edge_radius": "20 um"}, {"least_chip_thickness": (si("20 um") * (1 - cos(pi / 4)), "um")})
    case("least-chip-edge-37", t, "from-memory", "neutral angle 37.6 deg, Basuray, Misra and Lal 1977, Wear 43, from memory", {"edge_radius": "20 um"}, {"least_chip_thickness": (si("20 um") * (1 - cos(si("37.6 deg"))), "um")})
    case("least-chip-friction", t, "from-memory", "h_min = r_n (1 - cos(45 deg - beta/2)), Son et al. 2005, from memory", {"edge_radius": "20 um", "friction_angle": "30 deg"}, {"least_chip_thickness": (si("20 um") * (1 - cos(pi / 6)), "um")})

    t = "finish-uneven"
    def uneven(feeds, r):
        L = sum(feeds)
        prof = lambda x: r - sqrt(r * r - x * x)
        pieces = [quad(prof, [-f / 2, f / 2]) for f in feeds]
        mean = sum(pieces) / L
        xc = sqrt(r * r - (r - mean) ** 2)
        ra = sq = mpf(0)
        for f in feeds:
            x = min(xc, f / 2)
            ra += 2 * quad(lambda t: abs(prof(t) - mean), [0, x, f / 2]) if x < f / 2 else 2 * quad(lambda t: abs(prof(t) - mean), [0, f / 2])
            sq += 2 * quad(lambda t: (prof(t) - mean) ** 2, [0, f / 2])
        return max(prof(f / 2) for f in feeds), ra / L, sqrt(sq / L), mean
    for i, (fs, r) in enumerate([(["0.1 mm/rev", "0.2 mm/rev"], "0.8 mm"), (["0.12 mm/rev", "0.15 mm/rev", "0.18 mm/rev", "0.14 mm/rev", "0.16 mm/rev"], "0.4 mm"), (["0.05 mm/rev", "0.05 mm/rev", "0.25 mm/rev"], "0.8 mm"), (["0.003 in/rev", "0.006 in/rev", "0.0045 in/rev"], "0.03125 in")], 1):
        rt, ra, rq, mean = uneven([si(f) for f in fs], si(r))
        u = "um" if "mm" in r else "uin"
        case(f"finish-uneven-{i}", t, "derived", "derived (uneven feed): exact arcs, lengths as weights, one common mean line; the list repeats", {"feeds": fs, "corner_radius": r, "minor_cutting_edge_angle": "30 deg", "cutting_edge_angle": "95 deg"},
             {"rt": (rt, u), "ra": (ra, u), "rq": (rq, u)}, 1e-10, note="mean line over one repeat of the list; no filter")


def texture_cases():
    t = "texture"
    src = "ISO 1302 (1978 and 1992 editions), roughness grade numbers, from memory"
    N = ["0.025", "0.05", "0.1", "0.2", "0.4", "0.8", "1.6", "3.2", "6.3", "12.5", "25", "50"]
    U = ["1", "2", "4", "8", "16", "32", "63", "125", "250", "500", "1000", "2000"]
    for i, (a, b) in enumerate(zip(N, U), 1):
        case(f"texture-grade-n{i}", t, "published", src, {"grade": f"N{i}"}, {"ra": a + " um", "ra_inch": b + " uin"}, 1e-12, note="the inch value is the standard's rounded partner, within 2 % of the metric one")
        agree(si(b + " uin"), a + " um", rel="0.021", what="N grade")
    for i, (ra, g) in enumerate([("1.5 um", "N7"), ("1.6 um", "N7"), ("1.61 um", "N8"), ("0.02 um", "N1"), ("50 uin", "N7")], 1):
        case(f"texture-grade-of-{i}", t, "derived", DEF + ": smallest grade whose R_a is not below the value", {"ra": ra}, {"grade": g})
    s4 = "ISO 4288:1996 table 1 (R_a, non-periodic), from memory"
    for ra, lr, ln in [("0.015 um", "0.08 mm", "0.4 mm"), ("0.05 um", "0.25 mm", "1.25 mm"), ("0.8 um", "0.8 mm", "4 mm"), ("2 um", "0.8 mm", "4 mm"), ("3.2 um", "2.5 mm", "12.5 mm"), ("12.5 um", "8 mm", "40 mm")]:
        case(f"texture-cutoff-ra-{ra.split()[0]}", t, "published", s4, {"ra": ra}, {"cutoff": lr, "evaluation_length": ln}, 1e-12, note="upper end belongs to the row")
    s5 = "ISO 4288:1996 table 2 (R_z, non-periodic), from memory"
    for rz, lr in [("0.3 um", "0.25 mm"), ("6.3 um", "0.8 mm"), ("25 um", "2.5 mm"), ("100 um", "8 mm")]:
        case(f"texture-cutoff-rz-{rz.split()[0]}", t, "published", s5, {"rz": rz}, {"cutoff": lr}, 1e-12)
    s6 = "ISO 4288:1996 table 3 (R_Sm, periodic), from memory"
    for f, lr in [("0.03 mm", "0.08 mm"), ("0.1 mm", "0.25 mm"), ("0.2 mm", "0.8 mm"), ("0.5 mm", "2.5 mm"), ("0.13 mm", "0.25 mm")]:
        case(f"texture-cutoff-rsm-{f.split()[0]}", t, "published", s6, {"rsm": f}, {"cutoff": lr}, 1e-12, note="a turned surface: R_Sm = feed")
    sg = "ISO 16610-21 Gaussian filter, from memory; 2^-(Lc/lambda)^2"
    al = sqrt(log(2) / pi)
    case("texture-gauss-alpha", t, "published", sg, {}, {"alpha": (al, "")}, 1e-12, note="0.4697 in the standard")
    agree(al, "0.4697", abs_="0.00005", what="alpha")
    for i, (lam, lc) in enumerate([("0.8 mm", "0.8 mm"), ("0.2 mm", "0.8 mm"), ("0.4 mm", "0.8 mm"), ("2.5 mm", "0.8 mm"), ("8 um", "2.5 um")], 1):
        m = mpf(2) ** (-((si(lc) / si(lam)) ** 2))
        assert abs(m - exp(-pi * (al * si(lc) / si(lam)) ** 2)) < mpf(10) ** -40
        case(f"texture-gauss-{i}", t, "derived", sg, {"wavelength": lam, "cutoff": lc}, {"mean_line_transmission": (m, ""), "roughness_transmission": (1 - m, "")}, 1e-13)
    # the ideal parabola profile through both filters, by its Fourier series
    f, r, lc, ls = si("0.2 mm"), si("0.8 mm"), si("0.8 mm"), si("2.5 um")
    def rms(lam_c, lam_s, kmax=400):
        s = mpf(0)
        for k in range(1, kmax + 1):
            lam = f / k
            h = (1 - mpf(2) ** (-((lam_c / lam) ** 2))) * (mpf(2) ** (-((lam_s / lam) ** 2)) if lam_s else 1)
            s += (f * f / (2 * pi**2 * r * k * k) * h) ** 2 / 2
        return sqrt(s)
    case("texture-filtered-rq-1", t, "derived", "derived (Fourier series of the parabola through both filters)", {"feed": "0.2 mm/rev", "corner_radius": "0.8 mm", "cutoff": "0.8 mm", "short_cutoff": "2.5 um", "profile": "parabola"}, {"rq": (rms(lc, ls), "um")}, 1e-9)
    f = si("0.4 mm")
    case("texture-filtered-rq-2", t, "derived", "derived (Fourier series of the parabola through both filters)", {"feed": "0.4 mm/rev", "corner_radius": "0.8 mm", "cutoff": "0.25 mm", "short_cutoff": "2.5 um", "profile": "parabola"}, {"rq": (rms(si("0.25 mm"), ls), "um")}, 1e-9,
         note="cut-off too short for this feed: R_q drops; infinite profile, no end effects")


CENTRE_A = [("1", "2.12", "0.97", "0.9"), ("1.25", "2.65", "1.21", "1.1"), ("1.6", "3.35", "1.52", "1.4"), ("2", "4.25", "1.95", "1.8"), ("2.5", "5.3", "2.42", "2.2"), ("3.15", "6.7", "3.07", "2.8"),
            ("4", "8.5", "3.90", "3.5"), ("5", "10.6", "4.85", "4.4"), ("6.3", "13.2", "5.98", "5.5"), ("8", "17", "7.79", "7.0"), ("10", "21.2", "9.70", "8.7")]
CENTRE_B = [("1", "2.12", "3.15", "1.27"), ("1.25", "2.65", "4", "1.60"), ("1.6", "3.35", "5", "1.99"), ("2", "4.25", "6.3", "2.54"), ("2.5", "5.3", "8", "3.20"), ("3.15", "6.7", "10", "4.03"),
            ("4", "8.5", "12.5", "5.05"), ("5", "10.6", "16", "6.41"), ("6.3", "13.2", "18", "7.36"), ("8", "17", "22.4", "9.36"), ("10", "21.2", "28", "11.66")]


def support_cases():
    t = "support"
    src = "common practice, no source"
    for i, (ld, adv) in enumerate([("2.5", "chuck"), ("8", "chuck and centre"), ("16", "chuck, centre and steady")], 1):
        case(f"support-rule-{i}", t, "common-practice", src, {"overhang_over_diameter": ld}, {"advice": adv}, note="second opinion only; the computed error decides")
    t = "centre"
    s = "ISO 866 / ISO 6411 (form A), from memory; cone depth checked against the geometry of a 60 deg cone"
    for d, D2, cone, pil in CENTRE_A:
        l = (mpf(D2) - mpf(d)) / 2 / tan(pi / 6)
        assert abs(l - mpf(cone)) <= mpf("0.0075"), (d, nstr(l, 6), cone)
        if d in ("1", "2", "2.5", "3.15", "4", "6.3", "10"):
            case(f"centre-a-{d}", t, "published", s, {"form": "A", "pilot_diameter": d + " mm"}, {"countersink_diameter": D2 + " mm", "cone_depth": cone + " mm"}, tol_abs="0.008 mm", note="standard rounds to 0.01 mm")
    s = "ISO 2540 / ISO 6411 (form B), from memory; checked against 60 deg cone plus 120 deg chamfer"
    for d, D2, D3, l in CENTRE_B:
        g = (mpf(D2) - mpf(d)) / 2 / tan(pi / 6) + (mpf(D3) - mpf(D2)) / 2 / tan(pi / 3)
        assert abs(g - mpf(l)) <= mpf("0.0085"), (d, nstr(g, 6), l)
        if d in ("2", "4", "6.3"):
            case(f"centre-b-{d}", t, "published", s, {"form": "B", "pilot_diameter": d + " mm"}, {"countersink_diameter": D2 + " mm", "guard_diameter": D3 + " mm", "depth_to_cone_end": l + " mm"}, tol_abs="0.008 mm")
    case("centre-cone-geometry", t, "derived", fm(14), {"pilot_diameter": "2.5 mm", "countersink_diameter": "5.3 mm"}, {"cone_depth": (si("2.8 mm") * sqrt(3) / 2, "mm")})
    case("centre-inch-no3", t, "published", "ASME B94.11M plain combined drill and countersink, from memory", {"size": "3"}, {"body_diameter": "0.25 in", "pilot_diameter": "0.109375 in"}, 1e-9)
    case("centre-inch-no5", t, "published", "ASME B94.11M plain combined drill and countersink, from memory", {"size": "5"}, {"body_diameter": "0.4375 in", "pilot_diameter": "0.1875 in"}, 1e-9)
    case("centre-push-out", t, "derived", fm(14) + ": radial force on a 60 deg centre, no friction", {"radial_force": "600 N"}, {"axial_force": (600 * tan(pi / 6), "N")})
    case("centre-push-out-friction", t, "derived", fm(14) + ": radial force on a 60 deg centre, tan(30 deg - atan mu)", {"radial_force": "600 N", "friction": "0.15"}, {"axial_force": (600 * tan(pi / 6 - atan(mpf("0.15"))), "N")})
    case("centre-pressure", t, "derived", fm(14) + ": projected ring", {"axial_force": "800 N", "pilot_diameter": "4 mm", "countersink_diameter": "8.5 mm"}, {"mean_pressure": (800 / (pi / 4 * (si("8.5 mm") ** 2 - si("4 mm") ** 2)), "MPa")})
    case("centre-pressure-side", t, "derived", fm(14) + ": projected trapezium", {"radial_force": "200 N", "pilot_diameter": "4 mm", "countersink_diameter": "8.5 mm"},
         {"mean_pressure": (200 / ((si("8.5 mm") + si("4 mm")) / 2 * (si("4.5 mm") * sqrt(3) / 2)), "MPa")})
    case("centre-spindle-speed", t, "derived", fm(1) + ": speed from the countersink diameter", {"countersink_diameter": "6.7 mm", "cutting_speed": "20 m/min"}, {"spindle_speed": (spindle(si("20 m/min"), si("6.7 mm")), "rpm")})
    al, L, dT, d = si("11.5 um/(m*K)"), si("400 mm"), 15, si("30 mm")
    grow, area = al * L * dT, lambda d, b=0: pi / 4 * (d * d - b * b)
    E, k = si(E_ST), si("20 N/um")
    case("centre-growth", t, "derived", fm(14), {"expansion": "11.5 um/(m*K)", "length": "400 mm", "temperature_rise": "15 K", "diameter": "30 mm", "youngs_modulus": E_ST, "centre_axial_stiffness": "20 N/um"},
         {"growth": (grow, "um"), "load_rise": (grow / (L / (E * area(d)) + 1 / k), "N"), "buckling_load": (pi**2 * E * inertia(d) / L**2, "kN")})
    case("centre-growth-tube", t, "derived", fm(14), {"expansion": "11.5 um/(m*K)", "length": "400 mm", "temperature_rise": "15 K", "diameter": "30 mm", "bore": "20 mm", "youngs_modulus": E_ST, "centre_axial_stiffness": "20 N/um"},
         {"growth": (grow, "um"), "load_rise": (grow / (L / (E * area(d, si("20 mm"))) + 1 / k), "N"), "buckling_load": (pi**2 * E * inertia(d, si("20 mm")) / L**2, "kN")})
    t = "heat"
    case("heat-diameter", t, "derived", fm(15), {"expansion": "23.4 um/(m*K)", "diameter": "60 mm", "temperature_rise": "20 K"}, {"growth": (si("23.4 um/(m*K)") * si("60 mm") * 20, "um")})
    case("heat-diameter-inch", t, "derived", fm(15), {"expansion": "11.5 um/(m*K)", "diameter": "2 in", "temperature_rise": "10 K"}, {"growth": (si("11.5 um/(m*K)") * si("2 in") * 10, "in")})
    case("heat-size-at-20", t, "derived", fm(15) + ": d/(1 + alpha dT), exactly", {"expansion": "23.4 um/(m*K)", "measured": "60.028 mm", "temperature_rise": "20 K"}, {"diameter": (si("60.028 mm") / (1 + si("23.4 um/(m*K)") * 20), "mm")})
    m = si("7850 kg/m^3") * pi / 4 * si("40 mm") ** 2 * si("100 mm")
    case("heat-rise", t, "derived", fm(15), {"power": "1.2 kW", "fraction": "0.1", "time": "60 s", "density": "7850 kg/m^3", "diameter": "40 mm", "length": "100 mm", "specific_heat": "470 J/(kg*K)"}, {"temperature_rise": (120 * 60 / (m * 470), "K"), "mass": (m, "kg")})


def dial_cases():
    t = "dial"
    src = fm(18) + ": whole divisions"
    rows = [  # id, reads, slide travel per mark, marks per turn, wanted change on diameter, unit
        ("1", "diameter", "0.025 mm", 100, "7.35 mm"), ("2", "radius", "0.05 mm", 80, "12.4 mm"), ("3", "radius", "0.02 mm", 200, "3 mm"), ("4", "diameter", "0.0005 in", 200, "0.237 in"),
        ("5", "radius", "0.001 in", 100, "0.5 in"), ("6", "radius", "0.05 mm", 60, "0.33 mm"), ("7", "diameter", "0.01 mm", 250, "4.98 mm"), ("8", "radius", "0.001 in", 125, "0.131 in")]
    for i, reads, q, N, dd in rows:
        marks = floor(si(dd) / (2 * si(q)) + mpf(10) ** -30)
        rest = si(dd) - marks * 2 * si(q)
        turns = floor(marks / N)
        mark = marks - turns * N
        u = q.split()[1]
        per = si(q) * (2 if reads == "diameter" else 1)
        case(f"dial-{i}", t, "derived", src, {"dial_reads": reads, "slide_travel_per_mark": q, "marks_per_turn": N, "diameter_to_remove": dd},
             {"marks": int(marks), "turns": int(turns), "mark": int(mark), "reading_on_dial": (mark * per, u), "reading_with_turns": (marks * per, u), "left_on_diameter": (rest, u)}, tol_abs="1e-12 " + u, note="rounded so that metal is left")
    case("dial-wrong-kind", t, "derived", fm(18), {"dial_reads": "radius", "operator_thinks": "diameter", "slide_travel_per_mark": "0.05 mm", "marks_turned": 40}, {"wanted_removal": "2 mm", "true_removal": "4 mm"}, 1e-12)
    case("dial-wrong-kind-2", t, "derived", fm(18), {"dial_reads": "diameter", "operator_thinks": "radius", "slide_travel_per_mark": "0.025 mm", "marks_turned": 40}, {"wanted_removal": "4 mm", "true_removal": "2 mm"}, 1e-12, note="a mark of this dial says 0.05 mm; forty say 2 mm")
    case("dial-missed-turn", t, "derived", fm(18), {"dial_reads": "radius", "slide_travel_per_mark": "0.05 mm", "marks_per_turn": 80, "turns_missed": 1}, {"diameter_error": "8 mm"}, 1e-12)
    case("dial-from-zero-negative", t, "derived", src, {"marks": -30, "marks_per_turn": 100}, {"turns": -1, "mark": 70}, tol_abs=0, note="floor division: the mark under the line is 70")
    case("dial-inch-on-metric", t, "derived", fm(18), {"slide_travel_per_mark": "0.02 mm", "diameter_to_remove": "0.1 in"}, {"marks": 63, "left_on_diameter": "0.02 mm"}, tol_abs="1e-12 mm")


def general_tolerance_cases():
    t = "iso2768"
    s = "ISO 2768-1:1989 table 1, from memory"
    for L, f, m, c, v in [("2 mm", "0.05", "0.1", "0.2", None), ("20 mm", "0.1", "0.2", "0.5", "1"), ("100 mm", "0.15", "0.3", "0.8", "1.5"), ("250 mm", "0.2", "0.5", "1.2", "2.5"), ("6 mm", "0.05", "0.1", "0.3", "0.5"), ("30 mm", "0.1", "0.2", "0.5", "1")]:
        case(f"iso2768-{L.split()[0]}", t, "published", s, {"length": L}, {k: x + " mm" for k, x in (("fine", f), ("medium", m), ("coarse", c), ("very_coarse", v)) if x}, tol_abs="0 mm", note="plus or minus; upper end belongs to the range")


def preferred_cases():
    t = "preferred"
    R = {5: "1 1.6 2.5 4 6.3", 10: "1 1.25 1.6 2 2.5 3.15 4 5 6.3 8", 20: "1 1.12 1.25 1.4 1.6 1.8 2 2.24 2.5 2.8 3.15 3.55 4 4.5 5 5.6 6.3 7.1 8 9",
         40: "1 1.06 1.12 1.18 1.25 1.32 1.4 1.5 1.6 1.7 1.8 1.9 2 2.12 2.24 2.36 2.5 2.65 2.8 3 3.15 3.35 3.55 3.75 4 4.25 4.5 4.75 5 5.3 5.6 6 6.3 6.7 7.1 7.5 8 8.5 9 9.5"}
    for n, row in R.items():
        xs = row.split()
        assert len(xs) == n
        for k, x in enumerate(xs):
            assert abs(mpf(x) / mpf(10) ** (mpf(k) / n) - 1) < mpf("0.0127"), (n, x)
        case(f"preferred-r{n}", t, "published", "ISO 3 preferred numbers, from memory; each within 1.3 % of 10^(k/n)", {"series": f"R{n}"}, {"values": xs}, 1e-12)
    case("preferred-corner-radii", t, "published", "ISO 1832 designation of indexable inserts, corner radius in tenths of a millimetre, from memory", {"codes": ["02", "04", "08", "12", "16", "24", "32"]}, {"corner_radii": [f"{x} mm" for x in ("0.2", "0.4", "0.8", "1.2", "1.6", "2.4", "3.2")]}, 1e-12)
    case("preferred-corner-radii-inch", t, "published", "ANSI B212.4 corner radius in 64ths of an inch, from memory", {"codes": ["1", "2", "3", "4", "6"]}, {"corner_radii": [f"{x} in" for x in ("0.015625", "0.03125", "0.046875", "0.0625", "0.09375")]}, 1e-12)


def life_cases():
    t = "tool-life"
    src = "Taylor 1907, Trans. ASME 28, from memory: v T^n = C"
    C, n = si("60 m/min"), mpf("0.125")
    case("life-taylor-1", t, "derived", src, {"constant": "60 m/min", "exponent": "0.125", "life": "60 min"}, {"cutting_speed": (C / mpf(60) ** n, "m/min")}, note="T in minutes; constant = speed for one minute of life")
    case("life-taylor-2", t, "derived", src, {"constant": "300 m/min", "exponent": "0.25", "cutting_speed": "180 m/min"}, {"life": ((mpf(300) / 180) ** 4 * 60, "min")})
    case("life-taylor-3", t, "derived", src, {"constant": "900 ft/min", "exponent": "0.25", "cutting_speed": "500 ft/min"}, {"life": ((mpf(900) / 500) ** 4 * 60, "min")})
    for i, (nn, s) in enumerate([("0.125", "1.1"), ("0.25", "1.1"), ("0.5", "1.2")], 1):
        case(f"life-speed-change-{i}", t, "derived", src, {"exponent": nn, "speed_ratio": s}, {"life_ratio": (mpf(s) ** (-1 / mpf(nn)), "")})
    case("life-exponent-from-two", t, "derived", src, {"speeds": ["40 m/min", "30 m/min"], "lives": ["20 min", "120 min"]}, {"exponent": (log(mpf(40) / 30) / log(mpf(6)), ""), "constant": (si("40 m/min") * mpf(20) ** (log(mpf(40) / 30) / log(mpf(6))), "m/min")})
    Tc = (1 / mpf("0.25") - 1) * (mpf(1) + mpf(3))
    case("life-least-cost", t, "derived", fm(16) + ": T = (1/n - 1)(t_c + C_t/C_m)", {"exponent": "0.25", "constant": "300 m/min", "change_time": "1 min", "tool_cost_over_machine_rate": "3 min"}, {"life": (Tc * 60, "min"), "cutting_speed": (si("300 m/min") / Tc ** mpf("0.25"), "m/min")})
    Tp = (1 / mpf("0.125") - 1) * mpf("2.5")
    case("life-most-parts", t, "derived", fm(16) + ": T = (1/n - 1) t_c", {"exponent": "0.125", "constant": "60 m/min", "change_time": "2.5 min"}, {"life": (Tp * 60, "min"), "cutting_speed": (si("60 m/min") / Tp ** mpf("0.125"), "m/min")})
    # the optimum really is one: cost with t_m = 1/v
    k = mpf(4)
    cost = lambda v: 1 / v + k * (1 / v) / (300 / v) ** 4
    v = 300 / Tc ** mpf("0.25")
    assert cost(v) < cost(v * mpf("1.001")) and cost(v) < cost(v * mpf("0.999"))
    for mat, nn in [("high speed steel", "0.125"), ("carbide", "0.25"), ("ceramic", "0.5")]:
        case(f"life-exponent-{mat.replace(' ', '-')}", t, "from-memory", "text-book typical values, from memory, unverified page", {"tool": mat}, {"exponent": nn}, tol_rel=0.5, note="typical; spread 0.08 to 0.17, 0.2 to 0.4, 0.4 to 0.7")


MORSE = [("0", "19.212", "1.49067"), ("1", "20.047", "1.42872"), ("2", "20.020", "1.43065"), ("3", "19.922", "1.43768"), ("4", "19.254", "1.48755"), ("5", "19.002", "1.50723"), ("6", "19.180", "1.49330")]


def taper_cases():
    t = "taper"
    s = "ISO 296 Morse tapers (ratio 1:x), from memory; half angle derived"
    arc = {"0": "89.45", "1": "85.7167", "2": "85.8333", "3": "86.2667", "4": "89.25", "5": "90.4333", "6": "89.6"}   # minutes, handbook tables
    for no, x, half in MORSE:
        a = atan(1 / (2 * mpf(x)))
        agree(a, arc[no] + " arcmin", abs_="0.06 arcmin", what="Morse " + no)
        case(f"taper-morse-{no}", t, "published", s, {"taper": f"Morse {no}", "ratio": x}, {"half_angle": (a, "deg")}, 1e-6, note=f"handbook tables: 1 deg {nstr(mpf(arc[no]) - 60, 4)} min within 0.06 min")
    a = atan(mpf(7) / 48)
    agree(a, "497.83 arcmin", abs_="0.05 arcmin", what="7/24")
    case("taper-7-24", t, "published", "ISO 7388 steep taper 7:24, from memory (8 deg 17 min 50 s)", {"taper": "7:24"}, {"half_angle": (a, "deg")}, 1e-6)
    for i, (D, d, l) in enumerate([("40 mm", "30 mm", "100 mm"), ("1.25 in", "1 in", "6 in"), ("25 mm", "24 mm", "50 mm")], 1):
        x = (si(D) - si(d)) / (2 * si(l))
        case(f"taper-angle-{i}", t, "derived", fm(17), {"large_diameter": D, "small_diameter": d, "length": l}, {"half_angle": (atan(x), "deg"), "ratio": (1 / (2 * x), "")})
    case("taper-per-foot", t, "derived", fm(17), {"large_diameter": "1.25 in", "small_diameter": "1 in", "length": "6 in"}, {"taper_per_foot": "0.5 in"}, 1e-12)
    for i, (D, d, l, L) in enumerate([("40 mm", "38 mm", "80 mm", "300 mm"), ("1.5 in", "1.4 in", "4 in", "12 in")], 1):
        x = (si(D) - si(d)) / (2 * si(l))
        case(f"taper-setover-{i}", t, "derived", fm(17), {"large_diameter": D, "small_diameter": d, "length": l, "length_between_centres": L},
             {"setover": (si(L) * sin(atan(x)), "mm" if "mm" in D else "in"), "usual_form": (si(L) * x, "mm" if "mm" in D else "in")})
    for i, (r, a) in enumerate([("10", asin(mpf("0.1"))), ("20", asin(mpf("0.05"))), ("2", asin(mpf("0.5"))), ("100", asin(mpf("0.01")))], 1):
        case(f"taper-compound-{i}", t, "derived", fm(17) + ": travel t moves the tool in by t sin(theta)", {"travel_over_radial_infeed": r}, {"angle": (a, "deg")})
    case("taper-compound-travel", t, "derived", fm(17), {"angle": "5.75 deg", "travel": "0.05 mm"}, {"radial_infeed": (si("0.05 mm") * sin(si("5.75 deg")), "um"), "axial_shift": (si("0.05 mm") * cos(si("5.75 deg")), "um")})


def facing_cases():
    t = "facing"
    v, f, R = si("150 m/min"), si("0.2 mm/rev"), si("60 mm")
    rc = v / (2 * pi * si("2000 rpm"))
    case("facing-constant-speed", t, "derived", fm(19), {"diameter": "120 mm", "cutting_speed": "150 m/min", "feed": "0.2 mm/rev", "highest_speed": "2000 rpm"},
         {"clamp_diameter": (2 * rc, "mm"), "time": (pi * (R**2 - rc**2) / (f * v) + rc / (f * si("2000 rpm")), "s"), "speed_at_start": (v / (2 * pi * R), "rpm")})
    num = quad(lambda x: 1 / (f * min(si("2000 rpm"), v / (2 * pi * x))), [0, rc, R])
    assert abs(num - (pi * (R**2 - rc**2) / (f * v) + rc / (f * si("2000 rpm")))) < mpf(10) ** -30
    case("facing-fixed-speed", t, "derived", fm(19), {"diameter": "80 mm", "spindle_speed": "500 rpm", "feed": "0.1 mm/rev"}, {"time": (si("40 mm") / (si("0.1 mm") * si("500 rpm")), "s"), "cutting_speed_outside": (pi * si("80 mm") * si("500 rpm"), "m/min"), "cutting_speed_at_10_mm": (pi * si("10 mm") * si("500 rpm"), "m/min")})
    case("facing-bored", t, "derived", fm(19), {"diameter": "4 in", "bore": "1 in", "cutting_speed": "400 ft/min", "feed": "0.008 in/rev"}, {"time": (pi * (si("2 in") ** 2 - si("0.5 in") ** 2) / (si("0.008 in") * si("400 ft/min")), "s")})
    case("facing-pip", t, "derived", fm(19), {"height_error": "0.3 mm"}, {"pip_diameter": "0.6 mm"}, 1e-12)
    t = "tool-height"
    R0, D, e = si("20 mm"), si("15 mm"), si("1 mm")
    R = sqrt((sqrt(R0**2 - e**2) - D) ** 2 + e**2)
    case("tool-height-size", t, "derived", fm(20), {"zeroed_at_diameter": "40 mm", "moved_in": "15 mm", "height_error": "1 mm"}, {"diameter": (2 * R, "mm"), "diameter_error": (2 * (R - (R0 - D)), "um")})
    case("tool-height-rake", t, "derived", fm(20), {"diameter": "10 mm", "height_error": "0.5 mm"}, {"rake_change": (asin(mpf("0.1")), "deg")})


def grip_tool_cases():
    t = "grip"
    src = fm(23) + ", common practice shaped after VDI 3106, from memory"
    case("grip-needed", t, "derived", src, {"main_force": "1500 N", "cut_diameter": "60 mm", "grip_diameter": "50 mm", "friction": "0.15", "safety": "2"}, {"grip_force": (2 * 1500 * mpf("1.2") / mpf("0.15"), "N")})
    n = sqrt(mpf(2) / 3 * 30000 / (3 * mpf("0.6") * mpf("0.06"))) / (2 * pi)
    case("grip-highest-speed", t, "derived", src, {"grip_at_rest": "30 kN", "jaws": 3, "jaw_mass": "0.6 kg", "jaw_mass_radius": "60 mm"}, {"spindle_speed": (n, "rpm")})
    om = 2 * pi * si("1200 rpm")
    case("grip-at-speed", t, "derived", src, {"grip_at_rest": "30 kN", "jaws": 3, "jaw_mass": "0.6 kg", "jaw_mass_radius": "60 mm", "spindle_speed": "1200 rpm"}, {"grip_force": (30000 - 3 * mpf("0.6") * mpf("0.06") * om**2, "kN")})
    t = "tool"
    F, l, b, h, E = 800, si("30 mm"), si("16 mm"), si("16 mm"), si(E_ST)
    case("tool-shank", t, "derived", fm(24) + ": 4 F l^3/(E b h^3)", {"force": "800 N", "overhang": "30 mm", "shank_width": "16 mm", "shank_height": "16 mm", "youngs_modulus": E_ST}, {"deflection": (4 * F * l**3 / (E * b * h**3), "um")})
    F, l, d = 200, si("80 mm"), si("16 mm")
    case("tool-boring-bar", t, "derived", fm(10), {"force": "200 N", "overhang": "80 mm", "bar_diameter": "16 mm", "youngs_modulus": E_ST}, {"deflection": (F * l**3 / (3 * E * inertia(d)), "um")})
    for name, r in [("tool-overhang-shank", "1.5"), ("tool-overhang-boring-steel", "4")]:
        case(name, t, "common-practice", "common practice, no source", {"kind": name.split("-", 2)[2]}, {"largest_overhang_over_height_or_diameter": r}, 0.25, note="a guideline; check that a larger overhang raises a caution")


def Phi(x):
    return erfc(-x / sqrt(2)) / 2


def phi(x):
    return exp(-x * x / 2) / sqrt(2 * pi)


def uncertainty_cases():
    t = "uncertainty"
    gum = "JCGM 100:2008 (GUM)"
    for name, a, div in [("uniform", "10 um", sqrt(3)), ("triangular", "10 um", sqrt(6)), ("arcsine", "10 um", sqrt(2))]:
        case(f"uncertainty-{name}", t, "published", gum + ", 4.3, from memory", {"distribution": name, "half_width": a}, {"standard_uncertainty": (si(a) / div, "um")})
    case("uncertainty-resolution", t, "published", gum + ", F.2.2.1, from memory: 0.29 q", {"resolution": "10 um"}, {"standard_uncertainty": (si("10 um") / sqrt(12), "um")})
    case("uncertainty-gum-h1", t, "published", gum + ", example H.1 (end gauge), from memory: 32 nm, nu 16, U99 93 nm", {"components": ["0.025 um", "0.0097 um", "0.0029 um", "0.0166 um"], "degrees_of_freedom": ["18", "25.6", "50", "2"], "t99": "2.92"},
         {"combined": "0.032 um", "effective_degrees_of_freedom": "16", "expanded": "0.093 um"}, tol_abs={"combined": "0.0005 um", "effective_degrees_of_freedom": "1", "expanded": "0.001 um"}, note="the GUM truncates nu to 16; unrounded 16.75")
    c = [mpf(x) for x in ("25", "9.7", "2.9", "16.6")]
    u = sqrt(sum(x * x for x in c))
    nu = u**4 / sum(x**4 / v for x, v in zip(c, (18, mpf("25.6"), 50, 2)))
    assert abs(u - 32) < mpf("0.5") and 16 <= nu < 17, (u, nu)
    case("uncertainty-welch", t, "derived", gum + ", G.4: Welch-Satterthwaite", {"components": ["0.025 um", "0.0097 um", "0.0029 um", "0.0166 um"], "degrees_of_freedom": ["18", "25.6", "50", "2"]}, {"combined": (u * mpf("1e-9"), "um"), "effective_degrees_of_freedom": (nu, "")})
    for nu_, v95, v9545 in [(1, "12.71", "13.97"), (5, "2.57", "2.65"), (10, "2.23", "2.28"), (20, "2.09", "2.13"), (50, "2.01", "2.05")]:
        case(f"uncertainty-t-{nu_}", t, "published", gum + ", table G.2, from memory", {"degrees_of_freedom": nu_}, {"t_95": v95, "t_95_45": v9545}, tol_abs="0.005")
        for p, lit in (("0.95", v95), ("0.9545", v9545)):
            agree(t_quantile(mpf(p), nu_), lit, abs_="0.0051", what=f"t {nu_} {p}")
    comps = [("instrument", "uniform", "4 um", 1, sqrt(3)), ("setting a mark", "uniform", "5 um", 2, sqrt(3)), ("backlash left", "uniform", "3 um", 2, sqrt(3)), ("heat", "uniform", "2 um", 1, sqrt(3)), ("repeatability", "normal", "3 um", 1, mpf(1))]
    u2 = sum((k * si(a) / d) ** 2 for _, _, a, k, d in comps)
    case("uncertainty-budget", t, "derived", gum + ", 5.1.2; " + fm(22), {"components": [{"name": n, "distribution": dist, "half_width_or_sd": a, "sensitivity": k} for n, dist, a, k, _ in comps]}, {"combined": (sqrt(u2), "um"), "expanded_k2": (2 * sqrt(u2), "um"),
         "largest_share": "setting a mark", "largest_share_of_variance": ((2 * si("5 um") / sqrt(3)) ** 2 / u2, "percent")}, note="on diameter; cross-slide components count twice")
    r = mpf("0.6")
    case("uncertainty-correlated", t, "derived", gum + ", 5.2.2", {"components": ["3 um", "4 um"], "sensitivities": ["1", "1"], "correlation": "0.6"}, {"combined": (sqrt(9 + 16 + 2 * 12 * r) * mpf("1e-6"), "um")})

    t = "probability"
    for z, lit in [("1", "0.682689492137"), ("1.96", "0.950004209704"), ("2", "0.954499736104"), ("3", "0.997300203937")]:
        agree(2 * Phi(mpf(z)) - 1, lit, abs_="1e-12", what="normal")
        case(f"probability-normal-{z}", t, "published", "normal distribution tables (any)", {"k": z}, {"inside": (2 * Phi(mpf(z)) - 1, "")}, 1e-11)
    for i, (L, U, mu, sd) in enumerate([("39.984 mm", "40 mm", "39.992 mm", "4 um"), ("39.984 mm", "40 mm", "39.995 mm", "4 um"), ("24.967 mm", "24.98 mm", "24.972 mm", "6 um"), ("0.9990 in", "1.0000 in", "0.9996 in", "0.0003 in")], 1):
        l, u, m, s = (si(x) for x in (L, U, mu, sd))
        case(f"probability-zone-{i}", t, "derived", fm(22) + ", shaft", {"lower": L, "upper": U, "mean": mu, "standard_deviation": sd}, {"good": (Phi((u - m) / s) - Phi((l - m) / s), ""), "scrap": (Phi((l - m) / s), ""), "rework": (Phi(-(u - m) / s), "")}, 1e-10)
    G = lambda z: z * Phi(z) + phi(z)
    a, s = mpf(5), mpf(3)
    F = lambda x: s / (2 * a) * (G((x + a) / s) - G((x - a) / s))
    chk = quad(lambda y: Phi((mpf(6) - y) / s), [-a, a]) / (2 * a)
    assert abs(F(mpf(6)) - chk) < mpf(10) ** -30
    case("probability-uniform-and-normal", t, "derived", fm(22) + ": closed form of the sum; agrees with quadrature", {"half_width": "5 um", "standard_deviation": "3 um", "limits": ["-6 um", "6 um"]}, {"inside": (F(mpf(6)) - F(mpf(-6)), "")}, 1e-11)
    case("probability-cpk", t, "derived", fm(22), {"lower": "39.984 mm", "upper": "40 mm", "mean": "39.994 mm", "standard_deviation": "2 um"}, {"cp": (mpf(16) / 12, ""), "cpk": "1"}, 1e-9)
    case("probability-guard-2017", t, "published", "ISO 14253-1:2017 default 95 % conformance probability, from memory: g = 1.65 u", {"standard_uncertainty": "3 um", "lower": "39.984 mm", "upper": "40 mm"}, {"guard_band": "4.95 um", "accept_from": "39.98895 mm", "accept_to": "39.99505 mm"}, tol_abs="0.05 um")
    case("probability-guard-1998", t, "published", "ISO 14253-1:1998 and 2013, from memory: g = U", {"expanded_uncertainty": "5 um", "lower": "39.984 mm", "upper": "40 mm"}, {"guard_band": "5 um", "accept_from": "39.989 mm", "accept_to": "39.995 mm"}, 1e-12)

    t = "aim"
    for i, (L, U, sd, cs, cr) in enumerate([("39.984 mm", "40 mm", "4 um", "10", "1"), ("24.967 mm", "24.98 mm", "3 um", "20", "1"), ("0.9990 in", "1.0000 in", "0.0002 in", "5", "1"), ("39.984 mm", "40 mm", "4 um", "1", "1")], 1):
        l, u, s = si(L), si(U), si(sd)
        m = (l + u) / 2 + s * s / (u - l) * log(mpf(cs) / mpf(cr))
        cost = lambda x: mpf(cs) * Phi((l - x) / s) + mpf(cr) * Phi((x - u) / s)
        for e in ("1e-3", "-1e-3", "0.1", "-0.1"):
            assert cost(m) < cost(m + s * mpf(e))
        unit = L.split()[1]
        case(f"aim-{i}", t, "derived", fm(22) + ": aim = middle + s^2/(U - L) ln(c_s/c_r)", {"lower": L, "upper": U, "standard_deviation": sd, "scrap_price": cs, "rework_price": cr}, {"aim": (m, unit), "expected_price": (cost(m), ""), "price_at_middle": (cost((l + u) / 2), "")}, 1e-10)


def t_quantile(p, nu):
    """Two-sided t quantile."""
    from mpmath import betainc
    x = findroot(lambda q: betainc(mpf(nu) / 2, mpf(1) / 2, 0, nu / (nu + q * q), regularized=True) - (1 - p), (mpf("1.5"), mpf(14)), solver="anderson", tol=mpf(10) ** -30, verify=False)
    return x


def t_beyond(t, nu):
    """Share of Student's law beyond +-t, by integrating its density: independent of the incomplete beta function."""
    c = gamma((nu + 1) / 2) / gamma(nu / 2) / sqrt(pi * nu) if nu < 10**4 else exp(loggamma((nu + 1) / 2) - loggamma(nu / 2)) / sqrt(pi * nu)
    # s = t sinh-like stretch: the tail of a power law is integrated over its logarithm.
    f = lambda w: c * (1 + exp(2 * w) / nu) ** (-(nu + 1) / 2) * exp(w)
    lo = log(t)
    return 2 * quad(f, [lo, lo + 1, lo + 2, lo + 4, lo + 8, lo + 16, lo + 32, lo + 64, lo + 128])


def own_uncertainty_cases():
    """More of the same topics: t over a grid, far tails of normal and uniform together, their best aim, propagation by another library."""
    t = "uncertainty"
    ps = ["0.5", "0.9", "0.9545", "0.999999"]
    for nu in ("1.5", "3", "8.3", "16.75", "50", "999.5", "1000000"):
        ts = []
        for p in ps:
            # Of the double nearest to p: 1 - p has no more digits than that.
            g = lambda s: log(t_beyond(exp(s), mpf(nu)) / (1 - mpf(float(p))))
            with workdps(15):
                near, far = log(mpf("0.3")), log(mpf(10) ** 7)
                for _ in range(40):
                    half = (near + far) / 2
                    near, far = (half, far) if g(half) > 0 else (near, half)
            ts.append((exp(findroot(g, (near, near + mpf(10) ** -8), solver="secant", tol=mpf(10) ** -60)), ""))
        case(f"uncertainty-t-grid-{nu}", t, "derived", "derived (Student's density integrated, its root)", {"degrees_of_freedom": nu, "confidences": ps}, {"coverage_factors": ts}, 1e-12)
    # The same budget through a general-purpose package for uncertainties, which knows nothing of sizes.
    from uncertainties import correlated_values_norm
    for name, parts, rs in [("independent", [("3 um", "1"), ("5 um", "2"), ("0.7 um", "-2"), ("2 um", "0.36")], {}),
                            ("correlated", [("3 um", "1"), ("5 um", "2"), ("0.7 um", "-2"), ("2 um", "0.36")], {(0, 1): "0.4", (1, 3): "-0.7", (2, 3): "0.2"})]:
        r = [[1.0 if i == j else float(rs.get((min(i, j), max(i, j)), "0")) for j in range(4)] for i in range(4)]
        x = correlated_values_norm([(0.0, float(u.split()[0])) for u, _ in parts], r)
        total = sum(float(c) * v for (_, c), v in zip(parts, x))
        case(f"uncertainty-propagated-{name}", t, "derived", "the general-purpose Python package uncertainties 3.2.3 (correlated_values_norm)",
             {"components": [u for u, _ in parts], "sensitivities": [c for _, c in parts], "correlations": [[i, j, v] for (i, j), v in rs.items()]}, {"combined": (mpf(total.std_dev) * mpf("1e-6"), "um")}, 1e-12)
    t = "probability"
    src = "derived (closed form of the sum, with 200 digits; narrow ones also by quadrature)"
    for i, (L, U, mu, u, a) in enumerate([("1 mm", "1.02 mm", "1.009 mm", "3 um", "5 um"), ("1 mm", "1.04 mm", "1.02 mm", "2 um", "0.1 um"), ("1.008 mm", "1.032 mm", "1.02 mm", "1 um", "4 um"),
                                          ("1 mm", "1.025 mm", "1.01 mm", "1.5 um", "0.001 um"), ("1 mm", "1.02 mm", "1.01 mm", "0.01 um", "12 um"), ("1 mm", "1.01 mm", "1.02 mm", "2 um", "3 um"), ("0.05 in", "0.051 in", "0.0504 in", "0.0001 in", "0.0003 in")], 1):
        l, h, m, s, w = (si(x) for x in (L, U, mu, u, a))
        # Far out G is a small difference: more digits than elsewhere.
        with workdps(200):
            G = lambda z: z * Phi(z) + phi(z)
            below = lambda e: s / (2 * w) * (G((e + w) / s) - G((e - w) / s))
            good, scrap, rework = below(h - m) - below(l - m), below(l - m), below(m - h)
        if w < 10 * s:
            assert abs(good - quad(lambda y: Phi((h - m - y) / s) - Phi((l - m - y) / s), [-w, 0, w]) / (2 * w)) < mpf(10) ** -30
        case(f"probability-both-{i}", t, "derived", src, {"lower": L, "upper": U, "mean": mu, "standard_deviation": u, "half_width": a}, {"good": (good, ""), "scrap": (scrap, ""), "rework": (rework, "")}, 1e-9)
    # A spread known from few measurements: Student's density, integrated.
    for i, (L, U, mu, u, nu) in enumerate([("34.975 mm", "35 mm", "34.9875 mm", "6 um", "2"), ("1 mm", "1.02 mm", "1.012 mm", "3 um", "1"), ("1 mm", "1.02 mm", "1.009 mm", "2 um", "4.7"), ("1 mm", "1.02 mm", "1.01 mm", "4 um", "29"), ("1 mm", "1.01 mm", "1.015 mm", "2 um", "9"), ("1.25 in", "1.251 in", "1.2506 in", "0.0002 in", "6")]):
        l, h, m, s, n = *(si(x) for x in (L, U, mu, u)), mpf(nu)
        below = lambda e: t_beyond(-e / s, n) / 2 if e < 0 else 1 - t_beyond(e / s, n) / 2
        scrap, rework = below(l - m), below(m - h)
        case(f"probability-few-{i}", t, "derived", "derived (Student's density integrated)", {"lower": L, "upper": U, "mean": mu, "standard_deviation": u, "degrees_of_freedom": nu}, {"good": (1 - scrap - rework, ""), "scrap": (scrap, ""), "rework": (rework, "")}, 1e-9)
    t = "aim"
    for i, (L, U, u, a, cs, cr) in enumerate([("1 mm", "1.02 mm", "3 um", "5 um", "10", "1"), ("1 mm", "1.02 mm", "1 um", "9 um", "4", "1"), ("1 mm", "1.02 mm", "4 um", "0.2 um", "1", "3"), ("0.05 in", "0.051 in", "0.0001 in", "0.0003 in", "20", "1")], 1):
        l, h, s, w = (si(x) for x in (L, U, u, a))
        f = lambda x: (Phi((x + w) / s) - Phi((x - w) / s)) / (2 * w)
        G = lambda z: z * Phi(z) + phi(z)
        F = lambda x: s / (2 * w) * (G((x + w) / s) - G((x - w) / s))
        cost = lambda x: mpf(cs) * F(l - x) + mpf(cr) * F(x - h)
        m = findroot(lambda x: log(mpf(cr) * f(x - h) / (mpf(cs) * f(x - l))), (l + (h - l) / 1000, h - (h - l) / 1000), solver="ridder", tol=mpf(10) ** -40, verify=False)
        for e in ("1e-3", "-1e-3", "0.1", "-0.1"):
            assert cost(m) < cost(m + s * mpf(e))
        case(f"aim-both-{i}", t, "derived", "derived (stationary point of the expected price, normal and uniform spread)", {"lower": L, "upper": U, "standard_deviation": u, "half_width": a, "scrap_price": cs, "rework_price": cr},
             {"aim": (m, L.split()[1]), "expected_price": (cost(m), ""), "price_at_middle": (cost((l + h) / 2), "")}, 1e-9)


def chip_cases():
    t = "chip"
    for i, (ap, f, ok) in enumerate([("2 mm", "0.25 mm/rev", True), ("2 mm", "0.05 mm/rev", False), ("0.5 mm", "0.3 mm/rev", False)], 1):
        case(f"chip-window-{i}", t, "common-practice", "common practice, no source: a_p/f about 4 to 10, extremes 3 to 15", {"depth_of_cut": ap, "feed": f}, {"ratio": (si(ap) / si(f), ""), "inside_window": ok}, 1e-9)
    case("chip-rough-feed", t, "common-practice", "common practice, no source: f at most 0.8 r_eps", {"corner_radius": "0.8 mm"}, {"largest_feed": "0.64 mm/rev"}, 1e-9)


# ------------------------------------------------------------------------------------------------ ISO 286
EDGES = [3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500]
FINE = [3, 6, 10, 14, 18, 24, 30, 40, 50, 65, 80, 100, 120, 140, 160, 180, 200, 225, 250, 280, 315, 355, 400, 450, 500]
IT = {
    1: "0.8 1 1 1.2 1.5 1.5 2 2.5 3.5 4.5 6 7 8", 2: "1.2 1.5 1.5 2 2.5 2.5 3 4 5 7 8 9 10", 3: "2 2.5 2.5 3 4 4 5 6 8 10 12 13 15", 4: "3 4 4 5 6 7 8 10 12 14 16 18 20",
    5: "4 5 6 8 9 11 13 15 18 20 23 25 27", 6: "6 8 9 11 13 16 19 22 25 29 32 36 40", 7: "10 12 15 18 21 25 30 35 40 46 52 57 63", 8: "14 18 22 27 33 39 46 54 63 72 81 89 97",
    9: "25 30 36 43 52 62 74 87 100 115 130 140 155", 10: "40 48 58 70 84 100 120 140 160 185 210 230 250", 11: "60 75 90 110 130 160 190 220 250 290 320 360 400",
    12: "100 120 150 180 210 250 300 350 400 460 520 570 630", 13: "140 180 220 270 330 390 460 540 630 720 810 890 970", 14: "250 300 360 430 520 620 740 870 1000 1150 1300 1400 1550",
    15: "400 480 580 700 840 1000 1200 1400 1600 1850 2100 2300 2500", 16: "600 750 900 1100 1300 1600 1900 2200 2500 2900 3200 3600 4000"}
IT = {k: [mpf(x) for x in v.split()] for k, v in IT.items()}
ITMUL = {5: 7, 6: 10, 7: 16, 8: 25, 9: 40, 10: 64, 11: 100, 12: 160, 13: 250, 14: 400, 15: 640, 16: 1000}
COARSE_DEV = {   # main ranges; a to h: magnitude of es (negative), k to p: ei
    "d": "20 30 40 50 65 80 100 120 145 170 190 210 230", "e": "14 20 25 32 40 50 60 72 85 100 110 125 135", "f": "6 10 13 16 20 25 30 36 43 50 56 62 68", "g": "2 4 5 6 7 9 10 12 14 15 17 18 20",
    "k": "0 1 1 1 2 2 2 3 3 4 4 4 5", "m": "2 4 6 7 8 9 11 13 15 17 20 21 23", "n": "4 8 10 12 15 17 20 23 27 31 34 37 40", "p": "6 12 15 18 22 26 32 37 43 50 56 62 68"}
FINE_DEV = {     # fine ranges; a to c: magnitude of es, r to zc: ei; "-" none
    "a": "270 270 280 290 290 300 300 310 320 340 360 380 410 460 520 580 660 740 820 920 1050 1200 1350 1500 1650", "b": "140 140 150 150 150 160 160 170 180 190 200 220 240 260 280 310 340 380 420 480 540 600 680 760 840",
    "c": "60 70 80 95 95 110 110 120 130 140 150 170 180 200 210 230 240 260 280 300 330 360 400 440 480", "r": "10 15 19 23 23 28 28 34 34 41 43 51 54 63 65 68 77 80 84 94 98 108 114 126 132",
    "s": "14 19 23 28 28 35 35 43 43 53 59 71 79 92 100 108 122 130 140 158 170 190 208 232 252", "t": "- - - - - - 41 48 54 66 75 91 104 122 134 146 166 180 196 218 240 268 294 330 360",
    "u": "18 23 28 33 33 41 48 60 70 87 102 124 144 170 190 210 236 258 284 315 350 390 435 490 540", "v": "- - - - 39 47 55 68 81 102 120 146 172 202 228 252 284 310 340 385 425 475 530 595 660",
    "x": "20 28 34 40 45 54 64 80 97 122 146 178 210 248 280 310 350 385 425 475 525 590 660 740 820", "y": "- - - - - 63 75 94 114 144 174 214 254 300 340 380 425 470 520 580 650 730 820 920 1000",
    "z": "26 35 42 50 60 73 88 112 136 172 210 258 310 365 415 465 520 575 640 710 790 900 1000 1100 1250", "za": "32 42 52 64 77 98 118 148 180 226 274 335 400 470 535 600 670 740 820 920 1000 1150 1300 1450 1600",
    "zb": "40 50 67 90 108 136 160 200 242 300 360 445 525 620 700 780 880 960 1050 1200 1300 1500 1650 1850 2100", "zc": "60 80 97 130 150 188 218 274 325 405 480 585 690 800 900 1000 1150 1250 1350 1550 1700 1900 2100 2400 2600"}
J_SHAFT = {"j5": "-2 -2 -2 -3 -4 -5 -7 -9 -11 -13 -16 -18 -20", "j6": "-2 -2 -2 -3 -4 -5 -7 -9 -11 -13 -16 -18 -20", "j7": "-4 -4 -5 -6 -8 -10 -12 -15 -18 -21 -26 -28 -32"}     # ei
J_HOLE = {"J6": "2 5 5 6 8 10 13 16 18 22 25 29 33", "J7": "4 6 8 10 12 14 18 22 26 30 36 39 43", "J8": "6 10 12 15 20 24 28 34 41 47 55 60 66"}                             # ES
HOLE_LIT = {     # ES of transition and interference holes, literals to hold against the Delta rule
    "K6": "0 2 2 2 2 3 4 4 4 5 5 7 8", "K7": "0 3 5 6 6 7 9 10 12 13 16 17 18", "K8": "0 5 6 8 10 12 14 16 20 22 25 28 29", "M6": "-2 -1 -3 -4 -4 -4 -5 -6 -8 -8 -9 -10 -10", "M7": "-2 0 0 0 0 0 0 0 0 0 0 0 0",
    "M8": "-2 2 1 2 4 5 5 6 8 9 9 11 11", "N6": "-4 -5 -7 -9 -11 -12 -14 -16 -20 -22 -25 -26 -27", "N7": "-4 -4 -4 -5 -7 -8 -9 -10 -12 -14 -14 -16 -17", "N8": "-4 -2 -3 -3 -3 -3 -4 -4 -4 -5 -5 -5 -6",
    "N9": "-4 0 0 0 0 0 0 0 0 0 0 0 0", "P6": "-6 -9 -12 -15 -18 -21 -26 -30 -36 -41 -47 -51 -55", "P7": "-6 -8 -9 -11 -14 -17 -21 -24 -28 -33 -36 -41 -45", "P9": "-6 -12 -15 -18 -22 -26 -32 -37 -43 -50 -56 -62 -68"}


def ints(s):
    return [None if x == "-" else mpf(x) for x in s.split()]


def geo(edges, i):
    lo = edges[i - 1] if i else 1
    return sqrt(mpf(lo) * edges[i])


def step_of(edges, nominal):
    return next(i for i, e in enumerate(edges) if nominal <= e)


def tolerance_unit(D):
    return mpf("0.45") * D ** (mpf(1) / 3) + mpf("0.001") * D


def it_formula(g, i):
    D = geo(EDGES, i)
    if g >= 5:
        return ITMUL[g] * tolerance_unit(D)
    it1 = mpf("0.8") + mpf("0.02") * D
    return it1 * (7 * tolerance_unit(D) / it1) ** (mpf(g - 1) / 4)


def zone(nominal, cls):
    """(upper, lower) deviation in um from the tables; shafts small letters, holes capital."""
    letter, grade = cls.rstrip("0123456789"), int(cls[len(cls.rstrip("0123456789")):])
    i, fi = step_of(EDGES, nominal), step_of(FINE, nominal)
    t = IT[grade][i]
    low = letter.lower()
    base = lambda: ints(COARSE_DEV[low])[i] if low in COARSE_DEV else ints(FINE_DEV[low])[fi]
    if low == "js":
        return t / 2, -t / 2
    if low == "h":
        return (mpf(0), -t) if letter == "h" else (t, mpf(0))
    if letter in "abcdefg":
        return -base(), -base() - t
    if letter in "ABCDEFG":
        return base() + t, base()
    if letter == "j":
        e = mpf(J_SHAFT[cls].split()[i])
        return e + t, e
    if letter == "J":
        e = mpf(J_HOLE[cls].split()[i])
        return e, e - t
    ei = base()
    if letter == "k" and not 4 <= grade <= 7:
        ei = mpf(0)
    if letter == low:
        return ei + t, ei
    delta = t - IT[grade - 1][i] if nominal > 3 else mpf(0)
    if low in ("k", "m", "n") and grade <= 8 or low not in ("k", "m", "n") and grade <= 7:
        es = -ei + delta
    elif low == "n" and nominal > 3:
        es = mpf(0)
    else:
        es = -ei
    if cls == "M6" and 250 < nominal <= 315:
        es = mpf(-9)
    return es, es - t


# Classes in common use, whose whole tables are cases.
COMMON = ("a11 b11 c9 c11 d8 d9 d10 d11 e7 e8 e9 f6 f7 f8 g5 g6 h5 h6 h7 h8 h9 h10 h11 h12 h13 j5 j6 j7 js5 js6 js7 js9 k5 k6 k7 k8 m5 m6 m7 n5 n6 n7 p6 p7 r6 r7 s6 s7 t6 u6 u7 v6 x6 y7 z6 za8 zb9 zc10 "
          "A11 B11 C11 D8 D9 D10 E7 E8 E9 F6 F7 F8 G6 G7 H5 H6 H7 H8 H9 H10 H11 H12 H13 J6 J7 J8 JS6 JS7 JS9 K6 K7 K8 M6 M7 M8 N6 N7 N8 N9 P6 P7 P9 R6 R7 S6 S7 T7 U7 X7 Z8").split()


def defined(end, cls):
    """Whether the table has a value there."""
    low = cls.rstrip("0123456789").lower()
    return low not in FINE_DEV or FINE_DEV[low].split()[step_of(FINE, end)] != "-"


def iso286_cases():
    t = "iso286"
    s1 = "ISO 286-1 standard tolerance grades table, from memory; held against 7 i, 10 i, ... by the script"
    for nominal, g in [("2", 6), ("3", 7), ("5", 11), ("8", 10), ("15", 7), ("18", 8), ("25", 5), ("30", 6), ("31", 6), ("40", 9), ("63", 7), ("80", 10), ("100", 8), ("160", 6), ("200", 11), ("280", 7), ("350", 12), ("450", 13), ("500", 5)]:
        v = IT[g][step_of(EDGES, mpf(nominal))]
        case(f"iso286-it{g}-{nominal}", t, "published", s1, {"nominal": nominal + " mm", "grade": g}, {"tolerance": out(v * mpf("1e-6"), "um")}, tol_abs="0 um")
    for nominal, g in [("25", 7), ("100", 6), ("400", 11)]:
        i = step_of(EDGES, mpf(nominal))
        case(f"iso286-unit-{nominal}", t, "derived", "ISO 286-1 (1988) formula, from memory: i = 0.45 D^(1/3) + 0.001 D", {"nominal": nominal + " mm", "grade": g},
             {"mean_diameter": (geo(EDGES, i) * mpf("1e-3"), "mm"), "tolerance_unit": (tolerance_unit(geo(EDGES, i)) * mpf("1e-6"), "um"), "unrounded_tolerance": (it_formula(g, i) * mpf("1e-6"), "um")}, 1e-12)
    s2 = "ISO 286-2 limit deviations, from memory; held against the formulas by the script"
    zones = ["40 h6", "25 h7", "30 g6", "30 H7", "20 k6", "50 m6", "60 n6", "35 p6", "12 f7", "80 js6", "100 e8", "16 d9", "45 r6", "70 s6", "10 H8", "25 K7", "50 M7", "30 N7", "18 P7", "300 M6", "40 N9", "6 F8", "120 G7", "250 H6",
             "3 h9", "3 K7", "2 N7", "55 c11", "400 H11", "90 u6", "28 t6", "8 x8", "65 K8", "150 D10", "22 E9", "160 JS7", "35 j6", "75 J7", "500 P6", "24 s7", "5 P9", "10 k9"]
    for z in zones:
        nom, cls = z.split()
        u, l = zone(mpf(nom), cls)
        case(f"iso286-{nom}{cls}", t, "published", s2, {"nominal": nom + " mm", "class": cls},
             {"upper_deviation": out(u * mpf("1e-6"), "um"), "lower_deviation": out(l * mpf("1e-6"), "um"), "largest": out((mpf(nom) + u / 1000) * mpf("1e-3"), "mm"), "smallest": out((mpf(nom) + l / 1000) * mpf("1e-3"), "mm"), "tolerance": out((u - l) * mpf("1e-6"), "um")}, tol_abs="1e-9 mm")
    for nom, cls in [("1 in", "h6"), ("2 in", "H7"), ("0.5 in", "f7")]:
        mm = si(nom) * 1000
        u, l = zone(mm, cls)
        case(f"iso286-inch-{nom.split()[0]}{cls}", t, "published", s2 + "; nominal converted exactly, then the metric range", {"nominal": nom, "class": cls},
             {"upper_deviation": out(u * mpf("1e-6"), "um"), "lower_deviation": out(l * mpf("1e-6"), "um"), "largest": out(si(nom) + u * mpf("1e-6"), "in"), "smallest": out(si(nom) + l * mpf("1e-6"), "in")}, tol_abs="1e-9 mm")
    for nom, H, h in [("30", "H7", "g6"), ("30", "H7", "p6"), ("50", "H7", "k6"), ("80", "H8", "f7"), ("100", "H7", "s6"), ("20", "H9", "d9")]:
        (HU, HL), (su, sl) = zone(mpf(nom), H), zone(mpf(nom), h)
        case(f"iso286-fit-{nom}{H}{h}", t, "derived", "ISO 286 deviations as above; largest = ES - ei, smallest = EI - es", {"nominal": nom + " mm", "hole": H, "shaft": h},
             {"largest_clearance": out((HU - sl) * mpf("1e-6"), "um"), "smallest_clearance": out((HL - su) * mpf("1e-6"), "um")}, tol_abs="1e-9 mm", note="negative: interference")
    # Whole tables of the classes in common use, at the upper end of every range: um.
    for cls in COMMON:
        ends = [e for e in (FINE if cls.rstrip("0123456789").lower() in FINE_DEV else EDGES) if defined(e, cls)]
        both = [zone(mpf(e), cls) for e in ends]
        case(f"iso286-table-{cls}", t, "published", s2, {"nominals": [f"{e} mm" for e in ends], "class": cls},
             {"upper_deviations": [(u * mpf("1e-6"), "um") for u, _ in both], "lower_deviations": [(l * mpf("1e-6"), "um") for _, l in both]}, tol_abs="1e-9 mm")
    # literal hole tables against the rule
    for cls, row in HOLE_LIT.items():
        for i, e in enumerate(EDGES):
            got = zone(mpf(e), cls)[0]
            assert got == mpf(row.split()[i]), (cls, e, nstr(got), row.split()[i])



def main():
    for group in (units_cases, speed_cases, force_cases, power_cases, finish_cases, least_chip_cases, beam_cases, any_bar_cases, vibration_cases, whirl_of_cones, texture_cases, support_cases, dial_cases, general_tolerance_cases,
                  preferred_cases, chip_cases, life_cases, taper_cases, facing_cases, grip_tool_cases, iso286_cases, uncertainty_cases, own_uncertainty_cases):
        group()
    # The source of a case on the line above its values.
    dump = lambda x: json.dumps(x, ensure_ascii=True)
    lines = []
    for c in CASES:
        first = dump({k: c[k] for k in ("id", "topic", "kind")})[:-1]
        source = dump({"source": c["source"]})[1:-1]
        rest = dump({k: v for k, v in c.items() if k not in ("id", "topic", "kind", "source")})[1:]
        lines.append(f"{first},\n {source},\n {rest}")
    text = "[\n" + ",\n".join(lines) + "\n]\n"
    if "--check" in sys.argv:
        same = OUT.exists() and OUT.read_text() == text
        print("the file agrees" if same else "THE FILE DIFFERS")
        sys.exit(0 if same else 1)
    OUT.write_text(text)
    print(len(CASES), "cases")


if __name__ == "__main__":
    main()
