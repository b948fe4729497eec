"""Predict a mix from a palette profile with plain arithmetic: python3 predict_mix.py PROFILE.json blue=1 white=3
Prints nm, reflectance factor as the profile's geometry reads it, and its standard deviation (docs/profile-format.md).
"""
import cmath, json, math, sys

profile = json.load(open(sys.argv[1], encoding="utf-8"))
assert profile["format"] == "palette-profile" and profile["version"] == 1, "a version 1 palette profile is needed"
masses = {name: float(grams) for name, grams in (part.rsplit("=", 1) for part in sys.argv[2:])}
tubes = {tube["id"]: tube for tube in profile["tubes"]}
share = {name: grams / sum(masses.values()) for name, grams in masses.items()}
surface, frame, n = profile["surface"], profile.get("frameDoubt", {}), len(profile["wavelengths"])

def reading(i, moved=lambda tube: (0, 0), reframed={}, missed=0):
    # at wavelength i, where ln K and ln S of the tubes move by `moved`, surface and crowding by `reframed`, ln q by `missed`
    k1, k2, escape, haze = (surface.get(c, 0) + reframed.get(c, 0) for c in ("k1", "k2", "escape", "haze"))
    crowding = profile.get("crowding", 0) + reframed.get("crowding", 0)
    crowd = {t: 1 + crowding * (1 - c) if t == profile["white"] else 1 for t, c in share.items()}
    K = sum(c * tubes[t]["K"][i] * cmath.exp(moved(t)[0]) for t, c in share.items())
    S = sum(c * crowd[t] * tubes[t]["S"][i] * cmath.exp(moved(t)[1]) for t, c in share.items())
    q = K / S * cmath.exp(missed)
    R = 1 / (1 + q + cmath.sqrt(q * q + 2 * q))
    gain = escape if surface["form"] == "45/0" else (1 - k1) * (1 - k2)
    return haze + (k1 if surface["form"] == "specular-included" else 0) + gain * R / (1 - k2 * R)

h = 1e-30j  # a step along the imaginary axis gives a slope to the last digit: f'(x) = Im f(x + ih) / h

def step(column, i):
    return column[i] * h, column[n + i] * h

for i, nm in enumerate(profile["wavelengths"]):
    doubt = profile["discrepancy"]
    parts = [reading(i, missed=doubt["sdLnKS"][i] * h).imag, doubt.get("sdHaze", 0) * h.imag]
    for tube in share:
        for column in tubes[tube]["covariance"]["own"]:
            parts.append(reading(i, lambda t: step(column, i) if t == tube else (0, 0)).imag)
    for j in range(len(profile["tubes"][0]["covariance"]["shared"])):
        d = {name: column[j] * h for name, column in frame.items()}
        parts.append(reading(i, lambda t: step(tubes[t]["covariance"]["shared"][j], i), d).imag)
    print(nm, repr(reading(i).real), repr(math.sqrt(sum((part / h.imag) ** 2 for part in parts))))
