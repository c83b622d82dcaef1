#!/usr/bin/env python3
"""Column calls of the shared library beside numpy's bare expressions, in one process, on one core, over the same rows.

    columns.py LIBRARY HEADER PEER

LIBRARY is the shared library, HEADER its header (the numbers of quantities and units), PEER a library with
`peer_straight_edge_force`, the same work in plain C with the power function of C's library. `against_numpy.rs` builds
and names all three.

Each call is timed twice: with answers alone, and with a status for every row, as a caller wants who must know which rows
are bad; numpy looks at no value. numpy's expression is timed as one writes it, and again with memory for everything it
makes laid out before the clock runs, which is the least that numpy can take. Sides take turns, and the best round counts.
"""
import ctypes
import re
import sys
import time

try:
    import numpy as np
except ImportError:
    sys.exit(3)

library, peer = ctypes.CDLL(sys.argv[1]), ctypes.CDLL(sys.argv[3])
with open(sys.argv[2], encoding="utf-8") as header:
    numbers = {name: int(number) for name, number in re.findall(r"\b(TW_\w+) = (\d+),", header.read())}
units = [name for name in numbers if name.startswith("TW_UNIT_")]


class Column(ctypes.Structure):
    """tw_column, and tw_out_column, which is laid out as it."""
    _fields_ = [("data", ctypes.c_void_p), ("stride_bytes", ctypes.c_size_t), ("count", ctypes.c_size_t),
                ("quantity", ctypes.c_int32), ("unit", ctypes.c_int32)]


def column(array, quantity, kind, unit=None):
    """The kind's first unit is the trade's."""
    name = f"TW_UNIT_{kind}_{unit}" if unit else next(unit for unit in units if unit.startswith(f"TW_UNIT_{kind}_"))
    return Column(array.ctypes.data, 8, len(array), numbers[f"TW_QUANTITY_{quantity}"], numbers[name])


def call(name, inputs, output, status):
    function = getattr(library, name)
    place, stride = (None, 0) if status is None else (status.ctypes.data, 4)
    given = [*map(ctypes.byref, inputs), ctypes.byref(output), ctypes.c_void_p(place), ctypes.c_size_t(stride), None]

    def work():
        if function(*given):
            sys.exit(f"{name}: a status that is not TW_OK")

    return work


def into(steps, count):
    """Steps `(operation, *operands)` into memory laid out before; a string names what an earlier step made."""
    made = {}
    work = []
    for name, operation, *operands in steps:
        target = made.setdefault(name, np.empty(count))
        work.append((operation, [made[o] if isinstance(o, str) else o for o in operands], target))

    def run():
        for operation, operands, target in work:
            operation(*operands, out=target)
        return target

    return run


def best_of(sides, rounds):
    best = [np.inf] * len(sides)
    for turn in range(rounds):
        for at in range(len(sides)):
            # Whoever comes first warms the caches: take turns.
            side = (at + turn) % len(sides)
            start = time.perf_counter()
            sides[side]()
            best[side] = min(best[side], time.perf_counter() - start)
    return best


def kernels(count):
    """Name, columns, what is written, the bare expression, its steps, the least ratio wanted."""
    spread = lambda low, high, step: low + (high - low) * (np.arange(count) * step % 1.0)
    v, d = spread(5.0, 40.0, 0.618033988749895), spread(40.0, 160.0, 0.754877666246693)
    f, r = spread(0.05, 0.4, 0.618033988749895), spread(0.4, 1.6, 0.754877666246693)
    n, length, a = spread(100.0, 2000.0, 0.569840290998053), spread(10.0, 400.0, 0.618033988749895), spread(0.1, 3.0, 0.5698)
    alpha, rise = spread(8.0, 24.0, 0.618033988749895), spread(1.0, 60.0, 0.569840290998053)
    thou, feet = d / 0.0254, v / 0.3048
    one = np.array([38.0])
    diameter, radius = column(d, "DIAMETER", "LENGTH"), column(r, "CORNER_RADIUS", "LENGTH")
    speed, spindle = column(v, "CUTTING_SPEED", "CUTTING_SPEED"), column(n, "SPINDLE_SPEED", "SPINDLE_SPEED")
    feed, depth = column(f, "FEED", "FEED"), column(a, "DEPTH_OF_CUT", "LENGTH")
    out = ("SPINDLE_SPEED", "SPINDLE_SPEED")
    yield ("spindle_speed_for", "tw_spindle_speed_for_column", [speed, diameter], out,
           lambda: 1000 * v / (np.pi * d),
           [("n", np.multiply, v, 1000.0), ("p", np.multiply, d, np.pi), ("n", np.divide, "n", "p")])
    yield ("spindle_speed_for, one diameter", "tw_spindle_speed_for_column", [speed, column(one, "DIAMETER", "LENGTH")], out,
           lambda: 1000 * v / (np.pi * 38.0),
           [("n", np.multiply, v, 1000.0), ("n", np.divide, "n", np.pi * 38.0)])
    yield ("spindle_speed_for, inch units", "tw_spindle_speed_for_column",
           [column(feet, "CUTTING_SPEED", "CUTTING_SPEED", "FOOT_PER_MINUTE"), column(thou, "DIAMETER", "LENGTH", "THOUSANDTH_INCH")], out,
           lambda: 1000 * (feet * 0.3048) / (np.pi * (thou * 0.0254)),
           [("n", np.multiply, feet, 0.3048), ("n", np.multiply, "n", 1000.0), ("p", np.multiply, thou, 0.0254),
            ("p", np.multiply, "p", np.pi), ("n", np.divide, "n", "p")])
    yield ("arc_height", "tw_arc_height_column", [feed, radius], ("RT", "ROUGHNESS"),
           lambda: 1000 * (r - np.sqrt(r * r - f * f / 4)),
           [("q", np.multiply, f, f), ("q", np.divide, "q", 4.0), ("s", np.multiply, r, r), ("s", np.subtract, "s", "q"),
            ("s", np.sqrt, "s"), ("s", np.subtract, r, "s"), ("s", np.multiply, "s", 1000.0)])
    yield ("cutting_speed_of", "tw_cutting_speed_of_column", [spindle, diameter], ("CUTTING_SPEED", "CUTTING_SPEED"),
           lambda: np.pi * d * n / 1000,
           [("v", np.multiply, d, np.pi), ("v", np.multiply, "v", n), ("v", np.divide, "v", 1000.0)])
    yield ("feed_rate_of", "tw_feed_rate_of_column", [feed, spindle], ("FEED_RATE", "FEED_RATE"),
           lambda: f * n, [("x", np.multiply, f, n)])
    yield ("time_of_cut", "tw_time_of_cut_column", [column(length, "LENGTH", "LENGTH"), feed, spindle], ("TIME", "TIME"),
           lambda: 60 * length / (f * n),
           [("t", np.multiply, length, 60.0), ("p", np.multiply, f, n), ("t", np.divide, "t", "p")])
    yield ("diameter_growth", "tw_diameter_growth_column",
           [diameter, column(alpha, "EXPANSION", "THERMAL_EXPANSION"), column(rise, "RISE", "RISE_OF_TEMPERATURE")], ("GROWTH", "LENGTH"),
           lambda: d * alpha * rise * 1e-6,
           [("g", np.multiply, d, alpha), ("g", np.multiply, "g", rise), ("g", np.multiply, "g", 1e-6)])
    yield ("mean_diameter", "tw_mean_diameter_column", [diameter, depth], ("DIAMETER", "LENGTH"),
           lambda: d - a, [("m", np.subtract, d, a)])
    yield ("removal_rate_of", "tw_removal_rate_of_column", [diameter, depth, feed, spindle], ("REMOVAL_RATE", "REMOVAL_RATE"),
           lambda: np.pi * (d - a) * a * f * n / 1000,
           [("q", np.subtract, d, a), ("q", np.multiply, "q", np.pi), ("q", np.multiply, "q", a), ("q", np.multiply, "q", f),
            ("q", np.multiply, "q", n), ("q", np.divide, "q", 1000.0)])


def near(name, ours, theirs):
    # The same formula with its factors in another order: a few last digits apart. r - sqrt(r^2 - f^2/4) is the exception,
    # it subtracts numbers that are up to 2 r^2/(f^2/4) = 8000 times what is left of them, which ours does not.
    tolerance = 1e-11 if name == "arc_height" else 2e-15
    off = np.abs(ours / theirs - 1).max()
    if not off <= tolerance:
        sys.exit(f"{name}: ours and numpy's are {off:e} apart, more than {tolerance:e}")


def simple(count, rounds):
    size = f"{count:,} rows".replace(",", " ")
    for name, function, inputs, (quantity, kind), expression, steps in kernels(count):
        answers, status = np.empty(count), np.ones(count, dtype=np.int32)
        written = column(answers, quantity, kind)
        alone, told = call(function, inputs, written, None), call(function, inputs, written, status)
        laid_out = into(steps, count)
        for work in [alone, told]:
            answers[:] = np.nan
            work()
            near(name, answers, expression())
            near(name, answers, laid_out())
        if status.any():
            sys.exit(f"{name}: a good row with a status")
        times = [best * 1e9 / count for best in best_of([alone, told, expression, laid_out], rounds)]
        print(f"columns/{name:<32} {size:>14}: {times[0]:5.2f} ns/row, with row_status {times[1]:5.2f}; numpy {times[2]:5.2f}, "
              f"into laid out memory {times[3]:5.2f}; ratio {times[0] / times[2]:.2f} and {times[1] / times[2]:.2f}, goal 0.5")


def force(count, rounds):
    spread = lambda low, high, step: low + (high - low) * (np.arange(count) * step % 1.0)
    a, f = spread(0.1, 3.0, 0.618033988749895), spread(0.05, 0.4, 0.754877666246693)
    angle = spread(45.0, 95.0, 0.569840290998053)
    kc, m = np.array([1780.0]), np.array([0.17])
    inputs = [column(kc, "SPECIFIC_FORCE", "STRESS"), column(m, "EXPONENT", "PLAIN_NUMBER"), column(a, "DEPTH_OF_CUT", "LENGTH"),
              column(f, "FEED", "FEED"), column(angle, "CUTTING_EDGE_ANGLE", "ANGLE")]
    answers, theirs, status = np.empty(count), np.empty(count), np.ones(count, dtype=np.int32)
    written = column(answers, "MAIN_FORCE", "FORCE")
    alone = call("tw_straight_edge_force_column", inputs, written, None)
    told = call("tw_straight_edge_force_column", inputs, written, status)
    loop = peer.peer_straight_edge_force
    given = [ctypes.c_double(1780.0), ctypes.c_double(0.17),
             *(ctypes.c_void_p(x.ctypes.data) for x in [a, f, angle, theirs]), ctypes.c_size_t(count)]
    expression = lambda: 1780.0 * a * f * (f * np.sin(np.radians(angle))) ** -0.17
    for work in [alone, told]:
        answers[:] = np.nan
        work()
        loop(*given)
        for other in [theirs, expression()]:
            off = np.abs(answers / other - 1).max()
            # Power and sine of three libraries, each of them within a last digit or two.
            if not off <= 4e-15:
                sys.exit(f"straight_edge_force: {off:e} apart")
    if status.any():
        sys.exit("straight_edge_force: a good row with a status")
    times = [best * 1e9 / count for best in best_of([alone, told, lambda: loop(*given), expression], rounds)]
    size = f"{count:,} rows".replace(",", " ")
    print(f"columns/{'straight_edge_force':<32} {size:>14}: {times[0]:5.2f} ns/row, with row_status {times[1]:5.2f}; "
          f"C {times[2]:5.2f}; numpy {times[3]:5.2f}; to C {times[0] / times[2]:.2f} and {times[1] / times[2]:.2f}, goal 1.1")


for rows, turns in [(100_000, 200), (1_000_000, 40)]:
    simple(rows, turns)
    force(rows, turns // 4)
