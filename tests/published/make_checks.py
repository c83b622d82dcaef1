#!/usr/bin/env python3
"""Makes checks.json beside it: 50-digit arithmetic from first principles, deterministic.

    python3 make_checks.py            writes checks.json
    python3 make_checks.py --check    recomputes and compares with the file; exit 1 on any difference

Needs mpmath. Inputs are written once, as text with units, and parsed here: what the script computes from is what the
file says. Values of kind "published" are literals; wherever a formula exists they are compared with it on the spot.
"""
import json
import sys
from pathlib import Path

from mpmath import acos, asin, atan, atan2, cos, cot, exp, findroot, floor, log, matrix, mp, mpf, nstr, pi, quad, sin, sqrt, tan

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
            10: "bars", 14: "centre holes", 18: "dials"}


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


# ------------------------------------------------------------------------------------------------ cases: bars
E_ST = "210 GPa"



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
        ("propped-middle", "7/768", coeff(lambda s, L: propped(s, E, L / 2, [(L, None)])[0]), mpf(7) / 768),
    ]
    for name, frac, got, want in rows:
        assert abs(got - want) < mpf(10) ** -40, name
        case(f"beam-coefficient-{name}", t, "published", sm, {"case": name}, {"coefficient": (want, "")}, 1e-12, note=f"deflection under the load = {frac} F L^3/(E I)")
    L = mpf(1)
    a = 2 - sqrt(2)
    case("beam-coefficient-propped-worst", t, "published", sm + " (0.0098 at 0.414 L from the prop)", {"case": "chuck and centre, load moving"}, {"at_over_length": (a, ""), "coefficient": (a**3 * (1 - a) ** 2 * (4 - a) / 12, "")}, 1e-12)
    agree(a**3 * (1 - a) ** 2 * (4 - a) / 12, "0.0098", abs_="0.00005", what="propped worst")
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
    one("beam-plastic", [("20 mm", "80 mm")], "chuck", "80 mm", "20 N", E_="2.8 GPa", unit="mm", note="a plastic bar: about 75 times softer than steel")
    # profile along a bar
    S = secs([("20 mm", "200 mm")])
    st = ["25 mm", "50 mm", "100 mm", "150 mm", "200 mm"]
    case("beam-stations-chuck", t, "derived", src, {"youngs_modulus": E_ST, "sections": as_inputs([("20 mm", "200 mm")]), "holding": "chuck", "at": st, "force": "80 N"},
         {"deflection": [(flex(S, E, si(a), si(a)) * 80, "um") for a in st]}, 1e-11)
    case("beam-stations-centre", t, "derived", src, {"youngs_modulus": E_ST, "sections": as_inputs([("20 mm", "200 mm")]), "holding": "chuck and centre", "at": st, "force": "80 N"},
         {"deflection": [(propped(S, E, si(a), [(si("200 mm"), None)])[0] * 80, "um") for a in st]}, tol_abs="1e-12 um")


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
    case("centre-spindle-speed", t, "derived", fm(1) + ": speed from the countersink diameter", {"countersink_diameter": "6.7 mm", "cutting_speed": "20 m/min"}, {"spindle_speed": (spindle(si("20 m/min"), si("6.7 mm")), "rpm")})


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


def chip_cases():
    t = "chip"
    for i, (ap, f, ok) in enumerate([("2 mm", "0.25 mm/rev", True), ("2 mm", "0.05 mm/rev", False)], 1):  # the lower end of the window: not here
        case(f"chip-window-{i}", t, "common-practice", "common practice, no source: a_p/f about 4 to 10, extremes 3 to 15", {"depth_of_cut": ap, "feed": f}, {"ratio": (si(ap) / si(f), ""), "inside_window": ok}, 1e-9)
    case("chip-rough-feed", t, "common-practice", "common practice, no source: f at most 0.8 r_eps", {"corner_radius": "0.8 mm"}, {"largest_feed": "0.64 mm/rev"}, 1e-9)


def main():
    for group in (units_cases, speed_cases, force_cases, power_cases, finish_cases, least_chip_cases, beam_cases, texture_cases, support_cases, dial_cases, general_tolerance_cases,
                  preferred_cases, chip_cases):
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
