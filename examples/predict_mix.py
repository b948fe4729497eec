"""Predict a mix from a palette profile with plain arithmetic: python3 predict_mix.py PROFILE.json blue=1 white=3
Prints nm, reflectance factor as the profile's geometry reads it, and its standard deviation (docs/profile-format.md).
"""
import json, math, sys

profile = json.load(open(sys.argv[1], encoding="utf-8"))
assert profile["format"] == "palette-profile" and profile["version"] == 1, "a version 1 palette profile is needed"
masses = {name: float(grams) for name, grams in (part.rsplit("=", 1) for part in sys.argv[2:])}
tubes = {tube["id"]: tube for tube in profile["tubes"]}
share = {name: grams / sum(masses.values()) for name, grams in masses.items()}
surface, n = profile["surface"], len(profile["wavelengths"])
form, k1, k2, haze = surface["form"], surface["k1"], surface["k2"], surface["haze"]
gain = surface["escape"] if form == "45/0" else (1 - k1) * (1 - k2)
floor = haze + (k1 if form == "specular-included" else 0)

crowd = {t: 1 + profile.get("crowding", 0) * (1 - c) if t == profile["white"] else 1 for t, c in share.items()}
K = [sum(c * tubes[t]["K"][i] for t, c in share.items()) for i in range(n)]
S = [sum(c * crowd[t] * tubes[t]["S"][i] for t, c in share.items()) for i in range(n)]
q = [k / s for k, s in zip(K, S)]
R = [1 / (1 + v + math.sqrt(v * v + 2 * v)) for v in q]
Rm = [floor + gain * r / (1 - k2 * r) for r in R]

# dRm/dlnq = dRm/dR * dR/dq * q, with dR/dq = -2 R^2 / (1 - R^2)
slope = [gain / (1 - k2 * r) ** 2 * -2 * r * r / (1 - r * r) * v for r, v in zip(R, q)]

def moved(tube, column, i):
    # change of ln q at wavelength i when ln K and ln S of the tube move by a column of its covariance factor
    t = tubes[tube]
    return share[tube] * (t["K"][i] / K[i] * column[i] - crowd[tube] * t["S"][i] / S[i] * column[n + i])

missed = profile["discrepancy"]
variance = [(slope[i] * missed["sdLnKS"][i]) ** 2 + missed.get("sdHaze", 0) ** 2 for i in range(n)]
for tube in share:
    for column in tubes[tube]["covariance"]["own"]:
        variance = [v + (slope[i] * moved(tube, column, i)) ** 2 for i, v in enumerate(variance)]
for j in range(len(profile["tubes"][0]["covariance"]["shared"])):
    for i in range(n):
        variance[i] += (slope[i] * sum(moved(t, tubes[t]["covariance"]["shared"][j], i) for t in share)) ** 2
for nm, r, v in zip(profile["wavelengths"], Rm, variance):
    print(nm, repr(r), repr(math.sqrt(v)))
