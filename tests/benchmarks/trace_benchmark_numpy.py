"""Processor seconds that numpy's plain expression takes for F0 of 10,000 traces of 3,600 samples, one thread.

One trace at a time, as the program takes them; the best of five passes.
"""
import time

import numpy as np

TRACES, SAMPLES = 10_000, 3_600
random = np.random.default_rng(1)
second = np.arange(SAMPLES, dtype=float)
course = 20 + 114.5 * np.minimum(second / 900, 1) * np.minimum((3600 - second) / 1800, 1)
seconds = second + random.uniform(-0.2, 0.2, (TRACES, SAMPLES))
celsius = course + random.uniform(-0.2, 0.2, (TRACES, SAMPLES))

best = float("inf")
for _ in range(5):
    began = time.process_time()
    total = 0.0
    for t, c in zip(seconds, celsius):
        total += np.trapz(10 ** ((c - 121.1) / 10), t) / 60
    best = min(best, time.process_time() - began)
print(best)
