#!/usr/bin/env python3
"""SciPy beside our solver: one adaptive finger, wrist angle by wrist angle, as a bound-constrained minimisation.

Reads a reference case of a single adaptive finger on a cylinder and minimises the stored energy of docs/physics.md with
scipy.optimize.minimize(method="SLSQP"), analytic gradient and the stops as bounds. Each wrist angle starts from the
state of the one before. Units inside: mm, N, rad, N·mm.

    python3 finger_slsqp.py CASE.json [--repeats N] [--no-polish]

Prints JSON. Two timings per angle: SLSQP alone, and SLSQP with the polish (Newton on the free variables, Hessian by
central differences of the analytic gradient). "worst" compares both with the closing curves of the case.
Only what this case needs is modelled; a case with a slot, bars, friction, locks or another object is refused.
"""
import argparse
import json
import platform
import statistics
import sys
import time

import numpy as np
import scipy
from scipy.optimize import minimize

ENERGY = 100.0  # N·mm that count as 1, so that the minimum is of order 1
LENGTH = 10.0   # mm of carriage travel that count as 1


def turn(p, angle):
    c, s = np.cos(angle), np.sin(angle)
    return np.array([c * p[0] - s * p[1], s * p[0] + c * p[1]])


def left(p):
    return np.array([-p[1], p[0]])


def direction(angle):
    return np.array([np.cos(angle), np.sin(angle)])


class Finger:
    """Potential of the case; unknowns phi [rad], s [LENGTH mm], q1 q2 q3 [rad]."""

    def __init__(self, case):
        hand, held = case["input"]["hand"], case["input"]["object"]
        finger = hand["fingers"][0]
        unknown = [
            len(hand["fingers"]) != 1 and "more than one finger",
            "slot" in hand["crank"] and "a slot",
            finger["joints"]["kind"] != "adaptive" and "a coupled finger",
            finger["drive"]["kind"] != "arm" and "a drive pin",
            any(hand.get("friction", {}).values()) and "friction",
            bool(case["input"].get("locks")) and "locks",
            held["kind"] != "cylinder" and "an object that is no cylinder",
            finger.get("dip_fused", False) and "a fused joint",
        ]
        if any(unknown):
            sys.exit("This program cannot read the case: it has " + ", ".join(u for u in unknown if u) + ".")
        crank, rail = hand["crank"], hand["carriage"]
        self.anchor = np.array(hand["pull_link"]["anchor_mm"])
        self.fulcrum = np.array(crank["fulcrum_mm"])
        self.input = crank["input_arm_mm"] * direction(np.radians(crank["input_angle_deg"]))
        self.output = np.array(crank["output_pin_mm"])
        self.rail, self.along = np.array(rail["rest_mm"]), direction(np.radians(rail["direction_deg"]))
        self.pull_k = hand["pull_link"]["stiffness_n_per_mm"]
        self.transfer_k = hand["transfer_link"]["stiffness_n_per_mm"]
        self.cord_k = finger["pull"]["stiffness_n_per_mm"]
        self.pull_rest = np.linalg.norm(self.fulcrum + self.input - self.anchor)
        self.transfer_rest = np.linalg.norm(self.rail - self.fulcrum - self.output)
        n = (self.fulcrum + self.input - self.anchor) / self.pull_rest
        # The crank turns the way that keeps the pull link's length as the wrist flexes.
        self.sense = 1.0 if (-n @ left(self.anchor)) * (n @ left(self.input)) < 0 else -1.0
        self.mcp = np.array(finger["mcp_mm"])
        self.segments, self.half = np.array(finger["segments_mm"]), np.array(finger["half_thickness_mm"])
        self.open = np.radians(finger["open_deg"])
        self.arms = np.array(finger["drive"]["arm_mm"])
        self.rate, self.preload = np.array(finger["spring_nmm_per_rad"]), np.array(finger["spring_preload_nmm"])
        self.pad_k = finger["pad_n_per_mm"]
        palm = hand["palm"]
        t = direction(np.radians(palm["direction_deg"]))
        self.radius = held["diameter_mm"] / 2
        self.centre = np.array(palm["point_mm"]) + held["palm_station_mm"] * t + self.radius * np.array([t[1], -t[0]])
        high = [crank["stop_deg"], None, *(r[1] for r in finger["range_deg"])]
        self.bounds = [(0.0, rail["travel_mm"] / LENGTH if h is None else np.radians(h)) for h in high]

    def energy(self, x, theta):
        """Scaled potential and its gradient."""
        phi, s, q = x[0], x[1] * LENGTH, x[2:]
        g = np.zeros(5)
        arm = turn(self.input, self.sense * phi)
        v = self.fulcrum + arm - turn(self.anchor, theta)
        length = np.hypot(*v)
        pull = self.pull_k * (length - self.pull_rest)
        total = 0.5 * pull * (length - self.pull_rest)
        g[0] += pull * self.sense * (v @ left(arm)) / length
        out = turn(self.output, self.sense * phi)
        v = self.rail + s * self.along - self.fulcrum - out
        length = np.hypot(*v)
        transfer = self.transfer_k * (length - self.transfer_rest)
        total += 0.5 * transfer * (length - self.transfer_rest)
        g[0] -= transfer * self.sense * (v @ left(out)) / length
        g[1] += transfer * (v @ self.along) / length
        stretch = s - self.arms @ q
        if stretch > 0:
            total += 0.5 * self.cord_k * stretch**2
            g[1] += self.cord_k * stretch
            g[2:] -= self.cord_k * stretch * self.arms
        total += q @ (self.preload + 0.5 * self.rate * q)
        g[2:] += self.preload + self.rate * q
        total += self.contacts(q, g)
        g[1] *= LENGTH
        return total / ENERGY, g / ENERGY

    def contacts(self, q, g):
        total, angle, joint, joints = 0.0, 0.0, self.mcp, []
        for i in range(3):
            angle -= self.open[i] + q[i]
            e = direction(angle)
            joints.append(joint)
            station = min(max((self.centre - joint) @ e, 0.0), self.segments[i])
            point = joint + station * e
            gap = point - self.centre
            distance = np.hypot(*gap)
            overlap = self.radius + self.half[i] - distance
            if overlap > 0:
                total += 0.5 * self.pad_k * overlap**2
                # Moving along the segment leaves the distance unchanged to first order, so the point moves as one of the body.
                for j in range(i + 1):
                    g[2 + j] += self.pad_k * overlap * (gap @ left(point - joints[j])) / distance
            joint = joint + self.segments[i] * e
        return total


def projected(x, g, bounds):
    """Gradient with what the stops carry taken off."""
    out = g.copy()
    for i, (low, high) in enumerate(bounds):
        if (x[i] <= low and g[i] > 0) or (x[i] >= high and g[i] < 0):
            out[i] = 0.0
    return out


def slsqp(finger, x, theta):
    result = minimize(finger.energy, x, args=(theta,), jac=True, method="SLSQP", bounds=finger.bounds,
                      options={"ftol": 1e-15, "maxiter": 1000})
    low, high = np.array(finger.bounds).T
    return np.clip(result.x, low, high), result.nit


def polish(finger, x, theta):
    """Newton on the variables that no stop holds; a variable that meets a stop stays there."""
    x, best = x.copy(), np.inf
    low, high = np.array(finger.bounds).T
    x[np.abs(x - low) < 1e-7] = 0.0
    near = np.abs(x - high) < 1e-7
    x[near] = high[near]
    for _ in range(30):
        g = finger.energy(x, theta)[1]
        r = projected(x, g, finger.bounds)
        size = np.max(np.abs(r))
        if size == 0 or (size >= 0.5 * best and size < 1e-10):
            break
        best = min(best, size)
        held = ((x <= low) & (g > 0)) | ((x >= high) & (g < 0))
        free = np.flatnonzero(~held)
        hessian = np.empty((free.size, free.size))
        for k, i in enumerate(free):
            h = np.zeros(5)
            h[i] = 1e-6
            hessian[:, k] = ((finger.energy(x + h, theta)[1] - finger.energy(x - h, theta)[1]) / 2e-6)[free]
        step = np.linalg.solve(0.5 * (hessian + hessian.T), -r[free])
        x[free] += step
        x = np.clip(x, low, high)
    return x


def follow(finger, thetas, polished):
    """States, seconds and SLSQP iterations at each angle."""
    x, rows = np.zeros(5), []
    for theta in thetas:
        start = time.perf_counter()
        x, iterations = slsqp(finger, x, theta)
        if polished:
            x = polish(finger, x, theta)
        seconds = time.perf_counter() - start
        rest = np.max(np.abs(projected(x, finger.energy(x, theta)[1], finger.bounds)))
        rows.append((x.copy(), seconds, iterations, rest))
    return rows


def apart(rows, closing):
    """Greatest distance of the states from the case's own."""
    name = next(iter(closing["joints_deg"]))
    crank = max(abs(np.degrees(r[0][0]) - c) for r, c in zip(rows, closing["crank_deg"]))
    carriage = max(abs(r[0][1] * LENGTH - c) for r, c in zip(rows, closing["carriage_mm"]))
    joints = max(np.max(np.abs(np.degrees(r[0][2:]) - c)) for r, c in zip(rows, closing["joints_deg"][name]))
    return {"crank_deg": float(crank), "carriage_mm": float(carriage), "joints_deg": float(joints)}


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("case", help="reference case, JSON")
    parser.add_argument("--repeats", type=int, default=5, help="runs over which the median is taken")
    parser.add_argument("--no-polish", action="store_true", help="SLSQP alone")
    options = parser.parse_args()
    with open(options.case, encoding="utf-8") as stream:
        case = json.load(stream)
    finger, closing = Finger(case), case["expected"]["closing"]
    degrees = closing["theta_deg"]
    thetas = np.radians(degrees)
    report = {"case": case["name"], "python": platform.python_version(), "numpy": np.__version__, "scipy": scipy.__version__,
              "repeats": options.repeats}
    for label, polished in [("slsqp", False)] + ([] if options.no_polish else [("slsqp_polished", True)]):
        runs = [follow(finger, thetas, polished) for _ in range(options.repeats)]
        medians = [statistics.median(run[k][1] for run in runs) for k in range(len(degrees))]
        report[label] = {
            "worst": apart(runs[0], closing),
            "median_seconds_per_angle": statistics.median(medians),
            "seconds_for_all_angles": sum(medians),
            "angles": [{"theta_deg": d, "crank_deg": float(np.degrees(x[0])), "carriage_mm": float(x[1] * LENGTH),
                        "joints_deg": [float(v) for v in np.degrees(x[2:])], "seconds": m, "iterations": int(n), "gradient": float(rest)}
                       for d, (x, _, n, rest), m in zip(degrees, runs[0], medians)],
        }
    json.dump(report, sys.stdout, indent=1)
    print()


if __name__ == "__main__":
    main()
