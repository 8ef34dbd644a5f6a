"""Kappa by statsmodels.

Reads lines "cohen" or "fleiss" with the number of rows, each followed by the rows of the table, and
writes kappa.
"""
import sys

import numpy as np
from statsmodels.stats.inter_rater import cohens_kappa, fleiss_kappa

lines = iter(sys.stdin.read().splitlines())
for heading in lines:
    which, rows = heading.split()
    table = np.array([[int(n) for n in next(lines).split()] for _ in range(int(rows))])
    if which == "cohen":
        print(repr(float(cohens_kappa(table, return_results=False))))
    else:
        print(repr(float(fleiss_kappa(table, method="fleiss"))))
