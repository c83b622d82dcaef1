#!/usr/bin/env python3
"""Makes profile_data.json beside it: parameters of filtered profiles, by numpy and scipy.

    python3 make_profile_data.py            writes profile_data.json
    python3 make_profile_data.py --check    recomputes and compares; exit 1 on any difference beyond 1e-12

Needs numpy and scipy. Profiles are made here from the formulas alone: the lower envelope of arcs at the sums of the feeds
of a list, and noise of a multiplicative congruential generator that any language can repeat. The filter is a
convolution with the standard's weights (open profile) or a product with the transmission (periodic profile).
"""
import json
import sys
from pathlib import Path

import numpy as np
from scipy import fft, ndimage, stats

OUT = Path(__file__).resolve().parent / "profile_data.json"


def noise(count, seed):
    """Sums of four draws of x = 48271 x mod (2^31 - 1), about zero: the minimal standard generator (Park and Miller)."""
    x, out = seed, np.empty(count)
    for i in range(count):
        s = 0
        for _ in range(4):
            x = x * 48271 % 2147483647
            s += x
        out[i] = s / 2147483647 - 2.0
    return out


def surface(feeds, corner, spacing, points, amplitude, seed):
    """Heights in um: arcs about every bottom, the lowest of them counts."""
    x = np.arange(points) * spacing
    bottoms, at = [0.0], 0.0
    k = 0
    while at < x[-1] + max(feeds):
        at += feeds[k % len(feeds)]
        bottoms.append(at)
        k += 1
    bottoms = np.array(bottoms)
    right = np.searchsorted(bottoms, x, side="right")
    u = np.minimum(x - bottoms[right - 1], bottoms[np.minimum(right, len(bottoms) - 1)] - x)
    z = 1e3 * (corner - np.sqrt(corner**2 - u**2))
    return z + (amplitude * noise(points, seed) if amplitude else 0.0)


def gauss_open(z, width):
    """The mean line with the standard's weights to 1.5 cut-offs, in proportion at the ends."""
    reach = int(np.ceil(1.5 * width))
    s = np.exp(-np.pi**2 / np.log(2) * (np.arange(-reach, reach + 1) / width) ** 2)
    above = ndimage.convolve1d(z, s, mode="constant")
    return above / ndimage.convolve1d(np.ones_like(z), s, mode="constant")


def gauss_periodic(z, width):
    waves = width * fft.rfftfreq(len(z))
    return fft.irfft(fft.rfft(z) * 2.0 ** -(waves**2), len(z))


def mean_width(z, least_height, least_width):
    """Portions between crossings; those too low or too narrow are struck; from each rise to the next."""
    below = z < 0
    change = np.nonzero(below[1:] != below[:-1])[0]
    crossing = change + z[change] / (z[change] - z[change + 1])
    cuts = np.concatenate([[0], change + 1, [len(z)]])
    ends = np.concatenate([[0.0], crossing, [float(len(z))]])
    kept = []
    for a, b, start, end in zip(cuts[:-1], cuts[1:], ends[:-1], ends[1:]):
        part = z[a:b]
        high = part[np.argmax(np.abs(part))]
        if abs(high) >= least_height and end - start >= least_width:
            kept.append((high > 0, start))
    rises = [start for (was, _), (is_up, start) in zip(kept[:-1], kept[1:]) if is_up and not was]
    return (rises[-1] - rises[0]) / (len(rises) - 1)


def parameters(z, spacing, cut_off):
    n = int(round(cut_off / spacing))
    lengths = len(z) // n
    z = z[: n * lengths]
    parts = z.reshape(lengths, n)
    rz = float(np.mean(parts.max(axis=1) - parts.min(axis=1)))
    rq = np.sqrt(np.mean(z**2))
    return {
        "ra": float(np.mean(np.abs(z))), "rq": float(rq), "rz": rz, "rt": float(z.max() - z.min()),
        "rsk": float(np.mean(z**3) / rq**3), "rku": float(np.mean(z**4) / rq**4),
        "rsm": float(mean_width(z, 0.1 * rz, 0.01 * n) * spacing), "sampling_lengths": lengths,
    }


def cases():
    rows = [
        # name, feeds, corner, spacing, points, noise, seed, cut-off, short cut-off, periodic
        ("even", [0.2], 0.8, 0.0005, 9600, 0.0, 1, 0.8, 0.0025, False),
        ("even_and_periodic", [0.2], 0.8, 0.0005, 8000, 0.0, 1, 0.8, None, True),
        ("uneven", [0.15, 0.22, 0.18, 0.26, 0.2, 0.17, 0.23], 0.4, 0.0005, 9600, 0.0, 1, 0.8, 0.0025, False),
        ("noisy", [0.1], 0.8, 0.0005, 9600, 0.3, 17, 0.8, 0.0025, False),
        ("noisy_and_uneven", [0.12, 0.3, 0.21, 0.16, 0.27], 0.8, 0.001, 4800, 0.5, 99, 0.8, 0.0045, False),
        ("cut_off_too_short", [0.4], 0.8, 0.001, 20000, 0.1, 5, 0.25, 0.012, True),
        ("coarse", [0.8, 0.9, 0.7], 1.2, 0.002, 7500, 0.4, 3, 2.5, 0.008, False),
    ]
    for name, feeds, corner, spacing, points, amplitude, seed, long, short, periodic in rows:
        z = surface(feeds, corner, spacing, points, amplitude, seed)
        smooth = gauss_open if not periodic else gauss_periodic
        # Short cut-offs by the weights in either case: so few points that samples of the curve are not the curve.
        if short:
            if periodic:
                reach = int(np.ceil(1.5 * short / spacing))
                s = np.exp(-np.pi**2 / np.log(2) * (np.arange(-reach, reach + 1) / (short / spacing)) ** 2)
                z = ndimage.convolve1d(z, s / s.sum(), mode="wrap")
            else:
                z = gauss_open(z, short / spacing)
        r = z - smooth(z, long / spacing)
        if not periodic:
            half = int(round(long / spacing / 2))
            r = r[half : len(r) - half]
        found = parameters(r, spacing, long)
        # An independent look at the moments, about the mean: the same where the mean line's rest is small.
        assert abs(stats.kurtosis(r[: len(r)], fisher=False) - found["rku"]) < 0.2, name
        yield {"name": name, "feeds": feeds, "corner_radius": corner, "spacing": spacing, "points": points, "noise": amplitude, "seed": seed,
               "cut_off": long, "short_cut_off": short, "periodic": periodic, "expect": found}


def main():
    made = list(cases())
    if "--check" in sys.argv:
        old = json.loads(OUT.read_text())
        for a, b in zip(old, made, strict=True):
            for key, value in a["expect"].items():
                if abs(value - b["expect"][key]) > 1e-12 * abs(value):
                    sys.exit(f"{a['name']}: {key} differs")
        return
    OUT.write_text("[\n" + ",\n".join(json.dumps(c) for c in made) + "\n]\n")


if __name__ == "__main__":
    main()
