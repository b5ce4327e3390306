"""Works a hundred cards out again by other means than the program's and compares.

    cargo run -p flapwright-motion --example motion_cases | python tests/outside/motion_check.py

The program uses closed forms, one input angle and virtual work. Here every leaf is a free rigid
body in the plane with three coordinates, held by constraints:
- poses: scipy's fsolve on the constraints, followed step by step from the closed door;
- hand force: the equilibrium of forces on all bodies with the reactions of the constraints;
- lift and spring moment: the same, with a moment on the input in place of the hand;
- a fall: solve_ivp on the accelerations of all coordinates with their constraint forces.
Lengths in mm, forces in N, moments in N·mm until printed.
"""

import json
import sys
from math import cos, hypot, pi, sin

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import fsolve

G = 9806.65  # mm/s2
RELATIVE = 1e-6


def turn(angle, place):
    return np.array(
        [cos(angle) * place[0] - sin(angle) * place[1], sin(angle) * place[0] + cos(angle) * place[1]]
    )


class Door:
    """Bodies and constraints of one case. x holds (o, y, angle) of each body's mass centre."""

    def __init__(self, case):
        self.case = case
        self.bodies = [self.body(parts) for parts in case["masses"]]
        self.centres = [b[1] for b in self.bodies]
        kind, numbers = next(iter(case["bodies"].items()))
        self.pins, self.links, self.joints = [], [], []
        if kind == "FixedAxis":
            self.pins = [(0, self.place(numbers["axis"]))]
            self.input = ("body", 0)
        elif kind == "Parallel":
            box, door = self.place(numbers["box_pivot"]), self.place(numbers["door_pivot"])
            off = np.array([-numbers["second_back"], -numbers["second_down"]])
            self.links = [(0, box, door), (0, box + off, door + off)]
            self.input = ("link", 0)
        elif kind == "Folding":
            joint = np.array([case["back_o"][0] - numbers["joint_behind"], case["joint_y"]])
            pin = np.array(
                [case["back_o"][1] - numbers["link_behind"], case["joint_y"] - numbers["link_below_joint"]]
            )
            self.pins = [(0, self.place(numbers["axis"]))]
            self.joints = [(0, 1, joint)]
            self.links = [(1, self.place(numbers["link_box"]), pin)]
            self.input = ("body", 0)
        else:
            self.links = [
                (0, self.place(numbers["box_first"]), self.place(numbers["door_first"])),
                (0, self.place(numbers["box_second"]), self.place(numbers["door_second"])),
            ]
            self.input = ("link", 0)
        self.strut = case["strut"]["Strut"]
        self.strut_box = np.array(
            [case["front"] - self.strut["box_back"], case["underside"] - self.strut["box_down"]]
        )
        y = case["underside"] - self.strut["door_down"]
        self.strut_leaf = 1 if len(self.bodies) > 1 and y < case["bottoms"][0] else 0
        self.strut_door = np.array([case["back_o"][self.strut_leaf] - self.strut["door_back"], y])
        self.grip = (len(self.bodies) - 1, np.array(case["grip"]))

    def place(self, pivot):
        return np.array(
            [self.case["front"] - pivot["back"]["All"], self.case["underside"] - pivot["down"]["All"]]
        )

    @staticmethod
    def body(parts):
        mass = sum(p["mass"] for p in parts)
        centre = sum(p["mass"] * np.array([p["o"], p["y"]]) for p in parts) / mass
        inertia = sum(
            p["mass"]
            * ((p["high"] ** 2 + p["thick"] ** 2) / 12 + (p["o"] - centre[0]) ** 2 + (p["y"] - centre[1]) ** 2)
            for p in parts
        )
        return mass, centre, inertia

    def closed(self):
        return np.array([n for c in self.centres for n in (c[0], c[1], 0.0)])

    def point(self, x, body, place):
        """A closed place carried along, with its Jacobian and the arm from the mass centre."""
        arm = turn(x[3 * body + 2], place - self.centres[body])
        jacobian = np.zeros((2, len(x)))
        jacobian[0, 3 * body], jacobian[1, 3 * body + 1] = 1.0, 1.0
        jacobian[:, 3 * body + 2] = [-arm[1], arm[0]]
        return x[3 * body : 3 * body + 2] + arm, jacobian, arm

    def constraints(self, x):
        """Values, Jacobian, and for each row the part of its second derivative made by speeds."""
        values, rows, fast = [], [], []
        for body, place in self.pins:
            at, jac, arm = self.point(x, body, place)
            for axis in (0, 1):
                values.append(at[axis] - place[axis])
                rows.append(jac[axis])
                fast.append(lambda v, a=arm, b=body, i=axis: -a[i] * v[3 * b + 2] ** 2)
        for one, two, place in self.joints:
            (at, jac, arm), (at2, jac2, arm2) = self.point(x, one, place), self.point(x, two, place)
            for axis in (0, 1):
                values.append(at[axis] - at2[axis])
                rows.append(jac[axis] - jac2[axis])
                fast.append(
                    lambda v, a=arm, b=one, c=arm2, d=two, i=axis: -a[i] * v[3 * b + 2] ** 2
                    + c[i] * v[3 * d + 2] ** 2
                )
        for body, box, place in self.links:
            at, jac, arm = self.point(x, body, place)
            line = at - box
            length = hypot(*(place - box))
            values.append((line @ line - length**2) / 2 / length)
            rows.append(line @ jac / length)
            fast.append(
                lambda v, l=line, j=jac, a=arm, b=body, n=length: (
                    (j @ v) @ (j @ v) - l @ a * v[3 * b + 2] ** 2
                )
                / n
            )
        return np.array(values), np.array(rows), fast

    def input_angle(self, x):
        """Input angle and its row."""
        kind, index = self.input
        if kind == "body":
            row = np.zeros(len(x))
            row[3 * index + 2] = 1.0
            return x[3 * index + 2], row
        body, box, place = self.links[index]
        at, jac, _ = self.point(x, body, place)
        line, start = at - box, place - box
        angle = np.arctan2(start[0] * line[1] - start[1] * line[0], start @ line)
        return angle, np.array([-line[1], line[0]]) @ jac / (line @ line)

    def at_input(self, x, target):
        def equations(y):
            angle, _ = self.input_angle(y)
            away = (angle - target + pi) % (2 * pi) - pi
            return np.append(self.constraints(y)[0], away * 300.0)

        def slope(y):
            return np.vstack([self.constraints(y)[1], self.input_angle(y)[1] * 300.0])

        found, info, status, words = fsolve(equations, x, fprime=slope, xtol=1e-14, full_output=True)
        assert np.abs(info["fvec"]).max() < 1e-8, (status, words, info["fvec"])
        return found

    def strut_row(self, x):
        at, jac, _ = self.point(x, self.strut_leaf, self.strut_door)
        line = at - self.strut_box
        length = hypot(*line)
        return length, line @ jac / length

    def gas(self, length):
        s = self.strut
        shrink = (1 - 1 / s["progression"]) / s["stroke"]
        force = s["force"] / (1 - shrink * (s["extended"] - length)) + s["friction"]
        return force * (self.case["celsius"] + 273.15) / 293.15

    def weight(self, x):
        forces = np.zeros(len(x))
        for i, (mass, _, _) in enumerate(self.bodies):
            forces[3 * i + 1] = -mass * G / 1000.0  # N
        return forces

    def balance(self, x, forces, row):
        """The factor of `row` that holds `forces`, with the reactions of the constraints."""
        rows = np.vstack([self.constraints(x)[1], row])
        return np.linalg.solve(rows.T, -forces)[-1]

    def hand_row(self, x):
        """Row of a unit force at the handle along its own path, + opening."""
        rows = np.vstack([self.constraints(x)[1], self.input_angle(x)[1]])
        velocity = np.linalg.solve(rows, np.append(np.zeros(len(rows) - 1), 1.0))
        _, jac, _ = self.point(x, *self.grip)
        path = jac @ velocity
        return (path / hypot(*path)) @ jac


def near(name, found, expected, scale, relative=RELATIVE):
    error = abs(found - expected) / max(abs(expected), scale)
    if not error <= relative:
        raise SystemExit(f"{name}: {found!r} here, {expected!r} there, off by {error:.2e}")
    return error


def check_places(door, case):
    worst = 0.0
    x, before = door.closed(), 0.0
    for place in case["places"]:
        for angle in np.linspace(before, place["input"], 12)[1:]:
            x = door.at_input(x, angle)
        before = place["input"]
        for i, (angle, out, up) in enumerate(place["leaves"]):
            expected = turn(angle, door.centres[i]) + np.array([out, up])
            worst = max(worst, near("o", x[3 * i], expected[0], 100.0))
            worst = max(worst, near("y", x[3 * i + 1], expected[1], 100.0))
            worst = max(worst, near("angle", x[3 * i + 2], angle, 1.0))
        length, strut = door.strut_row(x)
        worst = max(worst, near("strut", length, place["strut_length"], 1.0))
        pieces, gas, rubs = case["pieces"], door.gas(length), door.strut["friction"]
        _, input_row = door.input_angle(x)
        lift = door.balance(x, door.weight(x), input_row) / 1000.0
        spring = -door.balance(x, pieces * gas * strut, input_row) / 1000.0
        worst = max(worst, near("lift moment", lift, place["lift"], 1.0))
        worst = max(worst, near("spring moment", spring, place["spring"], 1.0))
        # The rod rubs against the way it moves: opening it lengthens or shortens with the arm.
        way = np.sign(place["strut_arm"])
        hand = door.hand_row(x)
        for name, sign in (("opening", -1.0), ("closing", 1.0)):
            push = door.weight(x) + pieces * (gas + sign * way * rubs) * strut
            force = door.balance(x, push, hand)
            worst = max(worst, near(name, force, place[name], 1.0))
    return worst


def check_fall(door, case):
    fall = case["fall"]
    if fall is None:
        return None
    x = door.closed()
    for angle in np.linspace(0.0, case["end"] / 2, 40)[1:]:
        x = door.at_input(x, angle)
    masses = np.array([n for mass, _, inertia in door.bodies for n in (mass, mass, inertia)])
    size = len(x)

    def slope(_, state):
        at, speed = state[:size], state[size:]
        _, rows, fast = door.constraints(at)
        length, strut = door.strut_row(at)
        rubs = -np.sign(strut @ speed) * door.strut["friction"] if np.any(speed) else 0.0
        if not np.any(speed):
            rubs = np.sign(strut @ door_way(at)) * door.strut["friction"]
        # N on mm and kg: 1 N moves 1 kg by 1000 mm/s2.
        forces = 1000.0 * (door.weight(at) + case["pieces"] * (door.gas(length) + rubs) * strut)
        system = np.block([[np.diag(masses), rows.T], [rows, np.zeros((len(rows), len(rows)))]])
        right = np.append(forces, [-f(speed) for f in fast])
        return np.append(speed, np.linalg.solve(system, right)[:size])

    def door_way(at):
        rows = np.vstack([door.constraints(at)[1], door.input_angle(at)[1]])
        return np.linalg.solve(rows, np.append(np.zeros(len(rows) - 1), 1.0))

    def shut(_, state):
        return door.input_angle(state[:size])[0]

    shut.terminal, shut.direction = True, -1
    start = np.append(x, np.zeros(size))
    run = solve_ivp(slope, (0, 30), start, method="DOP853", rtol=1e-11, atol=1e-10, events=shut)
    assert run.status == 1, run.message
    state = run.y_events[0][0]
    speed = door.input_angle(state[:size])[1] @ state[size:]
    return max(
        near("time of a fall", run.t_events[0][0], fall["time"], 1e-3),
        near("speed of a fall", speed, fall["input_speed"], 1e-3),
    )


def main():
    cases = [json.loads(line) for line in sys.stdin]
    worst, worst_fall, falls = 0.0, 0.0, 0
    for case in cases:
        door = Door(case)
        worst = max(worst, check_places(door, case))
        fall = check_fall(door, case)
        if fall is not None:
            worst_fall, falls = max(worst_fall, fall), falls + 1
    assert len(cases) >= 100 and falls >= 40, (len(cases), falls)
    print(
        f"{len(cases)} cards agree within {worst:.1e} (poses, strut lengths, moments, hand forces), "
        f"{falls} falls within {worst_fall:.1e}"
    )


if __name__ == "__main__":
    main()
