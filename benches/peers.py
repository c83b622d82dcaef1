#!/usr/bin/env python3
"""The peer of the Gaussian filter: the same data through scipy's FFT, timed on one core.

    peers.py HEIGHTS MEAN_LINE WIDTH ROUNDS

Reads doubles from HEIGHTS, writes their mean line for a cut-off of WIDTH points to MEAN_LINE, prints the best of ROUNDS in
milliseconds. The transmission is made before the clock runs.
"""
import sys
import time

import numpy as np
from scipy import fft

heights, out, width, rounds = sys.argv[1], sys.argv[2], float(sys.argv[3]), int(sys.argv[4])
z = np.fromfile(heights)
transmission = 2.0 ** -((width * fft.rfftfreq(len(z))) ** 2)
best = np.inf
for _ in range(rounds):
    start = time.perf_counter()
    line = fft.irfft(fft.rfft(z, workers=1) * transmission, len(z), workers=1)
    best = min(best, time.perf_counter() - start)
line.tofile(out)
print(best * 1e3)
