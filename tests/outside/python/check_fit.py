"""Fits made readings of a hand scale again with scipy's curve_fit and compares the answers.

    cargo run -p flapwright-motion --example fit_cases > fit.json
    python check_fit.py fit.json

The program solves by singular values; `scipy.optimize.curve_fit` iterates from a start of its own
(Levenberg and Marquardt) and reckons its covariance from the Jacobian. Friction and its uncertainty
are numpy's mean and standard error.
"""

import argparse
import json
import sys

import numpy as np
from scipy.optimize import curve_fit

# Five terms over a hundred degrees are nearly dependent: some digits go there.
TOLERANCE = {"coefficient": 1e-8, "covariance": 1e-8, "friction": 1e-12, "curve": 1e-9, "band": 1e-8}

SHAPES = [
    lambda q: np.ones_like(q),
    np.cos,
    np.sin,
    lambda q: np.cos(2 * q),
    lambda q: np.sin(2 * q),
]


def curve(terms):
    def through(q, *coefficients):
        return sum(c * shape(q) for c, shape in zip(coefficients, SHAPES[:terms], strict=True))

    return through


def differences(case):
    read = {name: np.array([it[name] for it in case["readings"]]) for name in case["readings"][0]}
    angles, lever = np.radians(read["degrees"]), read["lever"] * 1e-3
    spring = read["weight_moment"] - (read["raising"] + read["lowering"]) / 2 * lever
    friction = (read["raising"] - read["lowering"]) / 2 * lever
    fitted, covariance = curve_fit(
        curve(case["terms"]),
        angles,
        spring,
        p0=np.full(case["terms"], 0.5),
        jac=lambda q, *_: np.column_stack([shape(q) for shape in SHAPES[: case["terms"]]]),
        xtol=1e-15,
        ftol=1e-15,
    )
    size = np.abs(fitted).max()
    yield "coefficient", np.abs(fitted - case["coefficients"]).max() / size
    yield "covariance", np.abs(covariance - case["covariance"]).max() / np.abs(covariance).max()
    error = friction.std(ddof=1) / np.sqrt(len(friction))
    yield "friction", abs(friction.mean() - case["friction"]) / friction.mean()
    yield "friction", abs(error - case["friction_uncertainty"]) / error
    q = np.radians(50.0)
    yield "curve", abs(curve(case["terms"])(q, *fitted) - case["at_50"]) / size
    row = np.array([float(shape(q)) for shape in SHAPES[: case["terms"]]])
    band = np.sqrt(row @ covariance @ row)
    yield "band", abs(band - case["at_50_uncertainty"]) / band
    yield "coefficient", float(case["rank"] != case["terms"])


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("cases")
    with open(parser.parse_args().cases, encoding="utf-8") as file:
        cases = [json.loads(line) for line in file]
    worst = dict.fromkeys(TOLERANCE, 0.0)
    for case in cases:
        for name, by in differences(case):
            # A NaN is worse than anything.
            worst[name] = max(worst[name], by if by == by else np.inf)
    for name, by in worst.items():
        print(f"{name}: worst {by:.2e}, allowed {TOLERANCE[name]:.0e}")
    wrong = [name for name, by in worst.items() if by > TOLERANCE[name]]
    if not cases or wrong:
        sys.exit(f"{len(cases)} cases, wrong: {', '.join(wrong)}")
    print(f"{len(cases)} fits agree with scipy.optimize.curve_fit")


if __name__ == "__main__":
    main()
