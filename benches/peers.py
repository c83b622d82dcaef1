#!/usr/bin/env python3
"""The peers of `against_numpy.rs`: the same data through numpy and scipy, timed on one core.

    peers.py gaussian IN OUT WIDTH ROUNDS   mean line of heights for a cut-off of WIDTH points, by FFT
    peers.py bar IN OUT STEP ROUNDS         deflection per force at all stations, STEP mm apart, by the force method with
                                            prefix sums, from 1/(E I) of the cells in 1/(N mm2)
    peers.py draws IN OUT COUNT ROUNDS      COUNT sums of one draw of each component of IN: a positive number is the deviation
                                            of a normal one, a negative one the half width of a uniform one; OUT is their
                                            mean and standard deviation
    peers.py least_time IN OUT DIVISIONS ROUNDS
                                            least time of an invented division into passes; IN holds feeds in mm/rev (as many
                                            as its first number says), then spindle steps in rpm; OUT is the time in s

Reads doubles from IN, writes doubles to OUT, prints the best time of ROUNDS in milliseconds.
"""
import sys
import time

import numpy as np
from scipy import fft

task, source, out, rounds = sys.argv[1], np.fromfile(sys.argv[2]), sys.argv[3], int(float(sys.argv[5]))


def gaussian(z, width):
    # The transmission is made before the clock runs.
    transmission = 2.0 ** -((width * fft.rfftfreq(len(z))) ** 2)
    return lambda: fft.irfft(fft.rfft(z, workers=1) * transmission, len(z), workers=1)


def bar(soft, step):
    x = step * np.arange(len(soft) + 1)
    chuck, tilt, centre = 1 / 40e3, 1 / 150e6, 1 / 15e3    # mm/N, 1/(N mm), mm/N

    def work():
        s0 = np.cumsum(soft) * step
        s1 = np.cumsum(soft * (x[1:] ** 2 - x[:-1] ** 2)) / 2
        s2 = np.cumsum(soft * (x[1:] ** 3 - x[:-1] ** 3)) / 3
        a, end = x[1:], x[-1]
        here = a * a * s0 - 2 * a * s1 + s2 + chuck + a * a * tilt
        there = end * a * s0 - (end + a) * s1 + s2 + chuck + end * a * tilt
        return here - there * there / (there[-1] + centre)

    return work


def draws(components, count):
    rng = np.random.default_rng(1)

    def work():
        total, size = np.zeros(int(count)), 8192
        # In blocks that stay near the processor.
        for at in range(0, len(total), size):
            block = total[at:at + size]
            for c in components:
                block += c * rng.standard_normal(len(block)) if c > 0 else c * (2 * rng.random(len(block)) - 1)
        return np.array([total.mean(), total.std()])

    return work


def least_time(lists, divisions):
    count, divisions = int(lists[0]), int(divisions)
    feeds, steps = lists[1:1 + count], lists[1 + count:] / 60
    finished, division, length, lost, deepest = 55.0, 0.05, 200.0, 25.0, 100
    corner, highest, watt = 0.8, 0.008, 3000.0

    def work():
        depths = np.arange(1, min(divisions, deepest) + 1)
        left = np.arange(1, divisions + 1)
        # Of all feeds and steps by their rate, the quickest first, the first that is allowed.
        rate = (feeds[:, None] * steps).ravel()
        order = np.argsort(-rate)
        times = np.append(length / rate[order] + lost, np.inf)
        f, n = np.repeat(feeds, len(steps))[order], np.tile(steps, len(feeds))[order]
        force = 2100.0 * division * depths[:, None] * f ** 0.74
        speed = np.pi * (finished + 2 * division * left[:, None]) / 1000 * n

        def quickest(depth, before, most_force, most_speed, feed):
            v, main = speed[before - 1], force[depth - 1]
            allowed = (main <= most_force) & (v <= most_speed) & (main * v <= watt) & feed
            return times[np.where(allowed.any(axis=1), allowed.argmax(axis=1), len(rate))]

        smooth = corner - np.sqrt(np.maximum(corner ** 2 - f ** 2 / 4, 0)) <= highest
        finish = quickest(depths, depths, 350.0, 2.8, smooth)
        finish[depths < 2] = np.inf
        best = np.full(divisions + 1, np.inf)
        for r in left:
            a = depths[:r]
            rough = quickest(a, np.full(len(a), r), 1800.0, 2.0, True) + best[r - a]
            best[r] = min(rough.min(), finish[r - 1] if r <= len(depths) else np.inf)
        return best[-1:]

    return work


work = {"gaussian": gaussian, "bar": bar, "draws": draws, "least_time": least_time}[task](source, float(sys.argv[4]))
best = np.inf
for _ in range(rounds):
    start = time.perf_counter()
    answer = work()
    best = min(best, time.perf_counter() - start)
answer.tofile(out)
print(best * 1e3)
