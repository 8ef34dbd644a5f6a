"""F by numpy's trapezoid rule.

Reads lines "reference z", each followed by a line of seconds and a line of degrees Celsius, and
writes F in minutes and the cumulative F at the middle sample.
"""
import sys

import numpy as np

lines = sys.stdin.read().splitlines()
for heading, seconds, celsius in zip(lines[0::3], lines[1::3], lines[2::3]):
    reference, z = map(float, heading.split())
    t = np.array(seconds.split(), dtype=float)
    rate = 10 ** ((np.array(celsius.split(), dtype=float) - reference) / z)
    middle = len(t) // 2
    print(repr(float(np.trapz(rate, t)) / 60),
          repr(float(np.trapz(rate[:middle + 1], t[:middle + 1])) / 60))
