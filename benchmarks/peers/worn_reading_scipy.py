#!/usr/bin/env python3
"""Writes packages/core/reference/recover/worn-reading.csv: the logarithm of the density of a reading at a worn place,
by scipy's exponnorm and by mpmath at 60 digits. Needs Debian's python3-scipy and python3-mpmath.

    python3 benchmarks/peers/worn_reading_scipy.py > packages/core/reference/recover/worn-reading.csv
"""
import csv
import sys

import mpmath
import scipy
from scipy.stats import exponnorm

mpmath.mp.dps = 60


def exact(above, u, wear):
    y, s, l = mpmath.mpf(above), mpmath.mpf(u), mpmath.mpf(wear)
    inside = mpmath.erfc((y / s + s / l) / mpmath.sqrt(2))
    return mpmath.log(inside / 2 / l) + y / l + s * s / (2 * l * l)


out = csv.writer(sys.stdout, lineterminator="\n")
out.writerow(["above_mm", "u_mm", "wear_mm", "log_density_scipy", "log_density_60_digits", "scipy_version"])
for u in ("0.0005", "0.004", "0.05"):
    for wear in ("0.000001", "0.0002", "0.002", "0.03", "0.3", "50"):
        for z in ("-4000", "-60", "-12", "-3", "-0.5", "0", "0.5", "3", "12", "60", "400"):
            above = float(z) * float(u)
            by_scipy = exponnorm.logpdf(-above, float(wear) / float(u), loc=0, scale=float(u))
            by_digits = exact(repr(above), u, wear)
            out.writerow([repr(above), u, wear, f"{by_scipy:.12g}", mpmath.nstr(by_digits, 15), scipy.__version__])
