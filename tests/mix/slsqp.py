"""A general-purpose optimiser on the same problem, for comparison: scipy's SLSQP over amounts that sum to 1.

Reads one JSON object from standard input: K and S (tube by tube, 36 numbers), the surface (floor, gain, k2), weights
(three rows, divided by the white), targets (Lab), families (lists of tube indices) and starts per family. Writes, per
target, the least CIEDE2000 of each family, and the seconds of processor
time taken.
"""
import json
import sys
import time

import numpy as np
from scipy.optimize import minimize


def f(t):
    return np.where(t > (6 / 29) ** 3, np.cbrt(t), t / (3 * (6 / 29) ** 2) + 4 / 29)


def ciede2000(one, two):
    """G. Sharma, W. Wu, E. N. Dalal, Color Research and Application 30 (2005) 21-30."""
    (L1, a1, b1), (L2, a2, b2) = one, two
    C = (np.hypot(a1, b1) + np.hypot(a2, b2)) / 2
    G = 0.5 * (1 - np.sqrt(C**7 / (C**7 + 25.0**7)))
    a1p, a2p = (1 + G) * a1, (1 + G) * a2
    C1, C2 = np.hypot(a1p, b1), np.hypot(a2p, b2)
    h1 = np.degrees(np.arctan2(b1, a1p)) % 360 if C1 > 0 else 0.0
    h2 = np.degrees(np.arctan2(b2, a2p)) % 360 if C2 > 0 else 0.0
    dh = 0.0
    hm = h1 + h2
    if C1 * C2 > 0:
        dh = h2 - h1
        if dh > 180:
            dh -= 360
        elif dh < -180:
            dh += 360
        hm = (h1 + h2) / 2 if abs(h1 - h2) <= 180 else ((h1 + h2 + 360) / 2 if h1 + h2 < 360 else (h1 + h2 - 360) / 2)
    dH = 2 * np.sqrt(C1 * C2) * np.sin(np.radians(dh / 2))
    Lm, Cm = (L1 + L2) / 2, (C1 + C2) / 2
    T = (1 - 0.17 * np.cos(np.radians(hm - 30)) + 0.24 * np.cos(np.radians(2 * hm))
         + 0.32 * np.cos(np.radians(3 * hm + 6)) - 0.20 * np.cos(np.radians(4 * hm - 63)))
    SL = 1 + 0.015 * (Lm - 50) ** 2 / np.sqrt(20 + (Lm - 50) ** 2)
    SC = 1 + 0.045 * Cm
    SH = 1 + 0.015 * Cm * T
    RT = (-np.sin(np.radians(60 * np.exp(-(((hm - 275) / 25) ** 2)))) * 2 * np.sqrt(Cm**7 / (Cm**7 + 25.0**7)))
    l, c, h = (L2 - L1) / SL, (C2 - C1) / SC, dH / SH
    return np.sqrt(max(0.0, l * l + c * c + h * h + RT * c * h))


def main():
    job = json.load(sys.stdin)
    K, S, W = (np.array(job[k]) for k in ("K", "S", "weights"))
    surface = job["surface"]

    def lab(x, tubes):
        k, s = x @ K[tubes], x @ S[tubes]
        r = surface["floor"] + surface["gain"] * s / (k + (1 - surface["k2"]) * s + np.sqrt(k * (k + 2 * s)))
        fx, fy, fz = f(W @ r)
        return 116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)

    out = []
    for target in job["targets"]:
        began = time.process_time()
        best = []
        for tubes, starts in zip(job["families"], job["starts"]):
            least = np.inf
            for start in starts:
                found = minimize(
                    lambda x: ciede2000(target, lab(np.maximum(x, 0), tubes)) ** 2,
                    np.array(start) / np.sum(start),
                    method="SLSQP",
                    bounds=[(0, 1)] * len(tubes),
                    constraints=[{"type": "eq", "fun": lambda x: np.sum(x) - 1}],
                    options={"maxiter": 200, "ftol": 1e-9},
                )
                least = min(least, float(found.fun))
            best.append(float(np.sqrt(max(0.0, least))))
        out.append({"deltaE00": best, "seconds": time.process_time() - began})
    json.dump(out, sys.stdout)


if __name__ == "__main__":
    main()
