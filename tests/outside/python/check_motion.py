"""Works random doors out again by other means than the program's and compares the answers.

    cargo run -p flapwright-motion --example motion_cases > cases.json
    python check_motion.py cases.json

The program has closed forms, one input angle and virtual work. Here each leaf and each arm is a
free body of the plane with three coordinates, held by pins. README.md says what is done for each
quantity. Lengths in metres inside, angles in radians, forces in newtons.
"""

import argparse
import json
import sys
from collections import defaultdict

import numpy as np
from scipy.integrate import solve_ivp
from scipy.interpolate import CubicHermiteSpline
from scipy.optimize import fsolve

GRAVITY = 9.80665
MM = 1e-3
LEVELS = ["Low", "Likely", "High"]
TOLERANCE = 1e-6

# A difference is divided by the larger of the expected value and this: what counts as near zero.
FLOORS = {
    "angle of a leaf": 0.01,  # rad
    "shift of a leaf": 1.0,  # mm
    "turn of a leaf": 0.01,  # rad per rad
    "rate of a leaf": 1.0,  # mm per rad
    "strut length": 1.0,  # mm
    "strut arm": 1.0,  # mm
    "strut force": 1.0,  # N
    "lift moment, energy": 0.1,  # N m
    "lift moment, equilibrium": 0.1,
    "spring moment": 0.1,
    "friction": 0.1,
    "hand force opening": 0.1,  # N
    "hand force closing": 0.1,
    "time of a release": 1e-3,  # s
    "input speed of a release": 1e-3,  # rad/s
    "handle speed of a release": 1e-3,  # m/s
}
# Two roads to the same figure in this file must meet this closely before either is compared.
OWN_TOLERANCE = 1e-8
# Largest distance by which the pins may have come apart at the end of a release, m.
DRIFT = 1e-8
# Rate at which a pin that has come apart is drawn together again, 1/s.
STABILISER = 40.0
# Complex step: so small that its square vanishes.
STEP = 1e-30
# Longest step of the walk from one place to the next, radians of the input.
WALK = 0.04


class Mismatch(Exception):
    """An answer of the program's that is not found here, or a case that makes no sense here."""


def turn(angle, place):
    c, s = np.cos(angle), np.sin(angle)
    return np.array([c * place[0] - s * place[1], s * place[0] + c * place[1]])


def length_of(vector):
    """Euclidean length, also of a complex step."""
    return np.sqrt(vector[0] * vector[0] + vector[1] * vector[1])


class Pin:
    """Two bodies turn about one place; a body None is the box."""

    def __init__(self, one, two, place):
        self.one, self.two, self.place = one, two, np.array(place)

    def values(self, door, x):
        return door.carried(x, self.one, self.place) - door.carried(x, self.two, self.place)


class Track:
    """A point of a body goes where a smooth curve over the body's angle takes it."""

    def __init__(self, body, place, rows):
        angles = np.radians([row["degrees"] for row in rows])
        shifts = np.array([[row["out"], row["up"]] for row in rows]) * MM
        # At each row the slope of the parabola through it and its neighbours.
        slopes = np.gradient(shifts, angles, axis=0, edge_order=2 if len(rows) > 2 else 1)
        self.body, self.place = body, np.array(place)
        self.curve = CubicHermiteSpline(angles, shifts, slopes)
        self.slope = self.curve.derivative()

    def values(self, door, x):
        angle = x[3 * self.body + 2]
        shift = self.curve(angle.real).T
        if np.iscomplexobj(x):
            shift = shift + 1j * angle.imag * self.slope(angle.real).T
        return door.carried(x, self.body, self.place) - door.carried(x, None, self.place) - shift


class Door:
    """One case as free bodies: the leaves from the top down, then the arms."""

    def __init__(self, given):
        self.given = given
        card, door = given["card"], given["door"]
        self.size = card["size"]
        self.linkage = card["linkage"]
        front = door["side_front"] if self.linkage["front"] == "SideFront" else door["frame_front"]
        self.front, self.underside = front * MM, door["underside"] * MM
        self.leaves = door["leaves"]
        self.origins = []  # closed place of each body's reference point
        for leaf in self.leaves:
            total = sum(part["mass"][1] for part in leaf["parts"])
            middle = sum(part["mass"][1] * self.closed_part(leaf, part) for part in leaf["parts"])
            self.origins.append(middle / total)
        self.constraints = []
        self.build(self.linkage["bodies"])
        self.size_of_x = 3 * len(self.origins)
        self.read_lift(card["lift"], card["per"], given["state"])
        last = self.leaves[-1]
        if door["handle"] is None:
            grip = [(last["back"] + last["front"]) / 2, last["bottom"]]
        else:
            grip = [last["front"] + door["handle"]["projection"] / 2, door["handle"]["y"]]
        self.grip_leaf, self.grip = len(self.leaves) - 1, np.array(grip) * MM

    # ---- from the card to bodies and pins

    def number(self, value):
        return (value["All"] if "All" in value else value["BySize"][self.size]) * MM

    def place(self, pivot):
        return np.array(
            [self.front - self.number(pivot["back"]), self.underside - self.number(pivot["down"])]
        )

    @staticmethod
    def closed_part(leaf, part):
        return np.array([leaf["back"] + part["ahead"], leaf["bottom"] + part["up"]]) * MM

    def arm(self, start, end, carrier):
        """A massless body from the box to a leaf; its number."""
        self.origins.append((start + end) / 2)
        number = len(self.origins) - 1
        self.constraints += [Pin(number, None, start), Pin(number, carrier, end)]
        return number

    def build(self, bodies):
        (kind, given), = bodies.items()
        back = [leaf["back"] * MM for leaf in self.leaves]
        if kind == "FixedAxis":
            self.constraints.append(Pin(0, None, self.place(given["axis"])))
            self.input = 0
        elif kind == "PoseTable":
            self.constraints.append(Track(0, self.place(given["reference"]), given["poses"]))
            self.input = 0
        elif kind == "Parallel":
            start, end = self.place(given["box_pivot"]), self.place(given["door_pivot"])
            off = -np.array([given["second_back"], given["second_down"]]) * MM
            self.input = self.arm(start, end, 0)
            self.arm(start + off, end + off, 0)
        elif kind == "Folding":
            joint_y = self.given["door"]["joint"] * MM
            joint = [back[0] - given["joint_behind"] * MM, joint_y]
            pin = np.array(
                [back[1] - given["link_behind"] * MM, joint_y - given["link_below_joint"] * MM]
            )
            self.constraints.append(Pin(0, None, self.place(given["axis"])))
            self.constraints.append(Pin(0, 1, joint))
            self.arm(self.place(given["link_box"]), pin, 1)
            self.input = 0
        elif kind == "TwoArms":
            self.input = self.arm(self.place(given["box_first"]), self.place(given["door_first"]), 0)
            self.arm(self.place(given["box_second"]), self.place(given["door_second"]), 0)
        else:
            raise Mismatch(f"bodies of an unknown kind {kind!r}")

    def read_lift(self, lift, per, state):
        self.spring = self.strut = None
        if "Spring" in lift:
            share = state["pieces"] / 2 if per == "PerPair" else state["pieces"]
            rows = lift["Spring"]["table"]
            setting = state["setting"]
            self.spring = (
                [row["degrees"] for row in rows],
                [share * (row["weakest"] * (1 - setting) + row["strongest"] * setting) for row in rows],
            )
            self.spring_friction = share * lift["Spring"]["friction"]
            return
        self.strut = given = lift["Strut"]
        self.strut_box = np.array(
            [self.front - given["box_back"] * MM, self.underside - given["box_down"] * MM]
        )
        y = self.underside - given["door_down"] * MM
        self.strut_leaf = 1 if len(self.leaves) > 1 and y < self.leaves[0]["bottom"] * MM else 0
        x = (self.leaves[self.strut_leaf]["back"] - given["door_back"]) * MM
        self.strut_door = np.array([x, y])
        self.pieces, self.kelvin = state["pieces"], state["celsius"] + 273.15

    # ---- geometry

    def closed(self):
        return np.array([number for place in self.origins for number in (*place, 0.0)])

    def carried(self, x, body, place):
        """Where a place of a closed body has gone. x may hold one pose a column."""
        if body is None:
            return place if x.ndim == 1 else place[:, None]
        return x[3 * body : 3 * body + 2] + turn(x[3 * body + 2], place - self.origins[body])

    def gaps(self, x):
        """By how much the pins are open, m."""
        return np.concatenate([constraint.values(self, x) for constraint in self.constraints])

    def pins(self, x):
        """Jacobian of the gaps, by complex steps: exact to rounding."""
        return self.gaps(x[:, None] + 1j * STEP * np.eye(len(x))).imag / STEP

    def pins_in_motion(self, x, speed):
        """Jacobian of the gaps, and the part of their second derivative in time that the speeds
        alone make: the slope of (Jacobian times speeds) along the speeds, by differences of fourth
        order of exact slopes."""
        h, size = 1e-4, len(x)
        ahead = x[:, None] + speed[:, None] * (h * np.array([-2.0, -1.0, 1.0, 2.0]))
        poses = np.hstack([x[:, None] + 1j * STEP * np.eye(size), ahead + 1j * STEP * speed[:, None]])
        slopes = self.gaps(poses).imag / STEP
        return slopes[:, :size], slopes[:, size:] @ np.array([1.0, -8.0, 8.0, -1.0]) / (12 * h)

    def input_row(self):
        row = np.zeros(self.size_of_x)
        row[3 * self.input + 2] = 1.0
        return row

    def system(self, x):
        """Jacobian of the pins and of the input angle: square, and regular where the door can
        only go one way."""
        return np.vstack([self.pins(x), self.input_row()])

    def way(self, x):
        """How all coordinates change per radian of the input."""
        right = np.zeros(self.size_of_x)
        right[-1] = 1.0
        return np.linalg.solve(self.system(x), right)

    def at(self, x, target):
        """The pose at an input angle near the one of x. The pins are closed by fsolve."""

        def equations(y):
            return np.append(self.gaps(y), y[3 * self.input + 2] - target)

        guess = x + self.way(x) * (target - x[3 * self.input + 2])
        found, info, _, words = fsolve(
            equations, guess, fprime=self.system, xtol=1e-15, full_output=True
        )
        # The last digits: one step of Newton from where fsolve has stopped.
        found = found - np.linalg.solve(self.system(found), equations(found))
        if np.abs(equations(found)).max() > 1e-13:
            raise Mismatch(f"does not close at {np.degrees(target):.3f} degrees: {words}")
        return found

    def walk(self, x, target):
        """From the pose x to an input angle in short steps. The closed door's branch is kept: a
        branch ends where the system is singular, so its determinant never changes sign."""
        sign = np.sign(np.linalg.det(self.system(x)))
        start = x[3 * self.input + 2]
        steps = int(np.ceil(abs(target - start) / WALK)) + 1
        for angle in np.linspace(start, target, steps)[1:]:
            x = self.at(x, angle)
            if np.sign(np.linalg.det(self.system(x))) != sign:
                raise Mismatch(f"the branch flips before {np.degrees(angle):.3f} degrees")
        return x

    # ---- forces

    def energy(self, x, level):
        """Potential energy of the parts, each at its own place, J."""
        return sum(
            GRAVITY * part["mass"][level] * self.carried(x, body, self.closed_part(leaf, part))[1]
            for body, leaf in enumerate(self.leaves)
            for part in leaf["parts"]
        )

    def weight(self, x, level):
        """Forces of gravity on all coordinates: each part pulls where it is."""
        forces = np.zeros(len(x))
        for body, leaf in enumerate(self.leaves):
            for part in leaf["parts"]:
                pull = -GRAVITY * part["mass"][level]
                lever = self.carried(x, body, self.closed_part(leaf, part)) - x[3 * body : 3 * body + 2]
                forces[3 * body + 1] += pull
                forces[3 * body + 2] += lever[0] * pull
        return forces

    def factor(self, x, forces, row, system=None):
        """The factor of `row` that keeps the bodies at rest under `forces`, with the reactions of
        the pins found at the same time."""
        system = self.system(x) if system is None else system
        rows = np.vstack([system[:-1], row])
        return np.linalg.solve(rows.T, -forces)[-1]

    def strut_length(self, x):
        return length_of(self.carried(x, self.strut_leaf, self.strut_door) - self.strut_box)

    def strut_row(self, x):
        """Forces on all coordinates of a strut that pushes with 1 N."""
        at = self.carried(x, self.strut_leaf, self.strut_door)
        line = (at - self.strut_box) / self.strut_length(x)
        lever = at - x[3 * self.strut_leaf : 3 * self.strut_leaf + 2]
        row = np.zeros(len(x))
        row[3 * self.strut_leaf : 3 * self.strut_leaf + 2] = line
        row[3 * self.strut_leaf + 2] = lever[0] * line[1] - lever[1] * line[0]
        return row

    def gas(self, length, strict=True):
        """Force with which the gas of one strut pushes, N.

        The nominal force is that of the extended rod moving out at 20 degrees, so the rod's
        friction is off it. It goes with 1 / (V0 - A x); V0 is such that it has grown by the
        progression after the whole stroke. The gas pushes with that and the friction together, in
        proportion to its absolute temperature."""
        strut = self.strut
        pressed = strut["extended"] - length / MM
        if strict and not -1e-6 <= pressed <= strut["stroke"] + 1e-6:
            raise Mismatch(f"the strut is {length / MM} mm long and cannot be")
        if strut["progression"] > 1.0:
            # Volume in millimetres of rod: v0 / (v0 - stroke) = progression.
            volume = strut["stroke"] * strut["progression"] / (strut["progression"] - 1.0)
            nominal = strut["force"] * volume / (volume - pressed)
        else:
            nominal = strut["force"]
        return (nominal + strut["friction"]) * self.kelvin / 293.15

    def lifting(self, x, strict=True):
        """Forces of springs or struts on all coordinates, friction left out."""
        if self.spring is not None:
            degrees = np.degrees(x[3 * self.input + 2])
            return np.interp(degrees, *self.spring) * self.input_row()
        return self.pieces * self.gas(self.strut_length(x), strict) * self.strut_row(x)

    def rubbing(self, x, way):
        """Forces of friction on all coordinates when everything moves along `way`."""
        if self.spring is not None:
            return -np.sign(way[3 * self.input + 2]) * self.spring_friction * self.input_row()
        row = self.strut_row(x)
        return -np.sign(row @ way) * self.pieces * self.strut["friction"] * row


class Report:
    """Compares and keeps the largest difference of each quantity."""

    def __init__(self):
        self.largest = defaultdict(float)
        self.counts = defaultdict(int)

    def compare(self, quantity, found, expected, where):
        error = abs(found - expected) / max(abs(expected), FLOORS[quantity])
        self.counts[quantity] += 1
        # Not-a-number is larger than anything.
        self.largest[quantity] = max(self.largest[quantity], error if error == error else np.inf)
        if not error <= TOLERANCE:
            raise Mismatch(
                f"{quantity} {where}: {found!r} here, {expected!r} from the program; "
                f"relative difference {error:.2e}"
            )


def own(what, one, two, floor):
    error = abs(one - two) / max(abs(two), floor)
    if not error <= OWN_TOLERANCE:
        raise Mismatch(f"{what}: the two roads of this check give {one!r} and {two!r}")


def check_places(door, answers, report):
    x = door.closed()
    for place in answers["places"]:
        where = f"at s = {place['s']}"
        end = np.radians(door.linkage["end_degrees"])
        own("input angle", place["input"], end * place["s"], 1.0)
        x = door.walk(x, end * place["s"])
        system, way = door.system(x), door.way(x)
        check_leaves(door, x, way, place, report, where)
        check_forces(door, x, (system, way), place, report, where)


def check_leaves(door, x, way, place, report, where):
    for body, leaf in enumerate(place["leaves"]):
        angle = x[3 * body + 2]
        stepped = x + 1j * STEP * way

        def shift(y, body=body):
            return y[3 * body : 3 * body + 2] - turn(y[3 * body + 2], door.origins[body])

        report.compare("angle of a leaf", angle, leaf["angle"], where)
        report.compare("turn of a leaf", way[3 * body + 2], leaf["turn"], where)
        for axis in (0, 1):
            report.compare("shift of a leaf", shift(x)[axis] / MM, leaf["shift"][axis], where)
            rate = shift(stepped)[axis].imag / STEP
            report.compare("rate of a leaf", rate / MM, leaf["rate"][axis], where)


def check_forces(door, x, movement, place, report, where):
    system, way = movement
    row = door.input_row()
    stepped = x + 1j * STEP * way
    lift = []
    for level, expected in enumerate(place["lift"]):
        slope = door.energy(stepped, level).imag / STEP
        # A moment on the input in place of the hand holds the weight.
        held = door.factor(x, door.weight(x, level), row, system)
        own("lift moment", slope, held, 0.1)
        report.compare("lift moment, energy", slope, expected, where)
        report.compare("lift moment, equilibrium", held, expected, where)
        lift.append(slope)
    spring = -door.factor(x, door.lifting(x), row, system)
    report.compare("spring moment", spring, place["spring"], where)
    friction = door.factor(x, door.rubbing(x, way), row, system)
    report.compare("friction", friction, place["friction"], where)
    if (door.strut is None) != (place["strut"] is None):
        raise Mismatch(f"{where}: one side has a strut and the other has none")
    if door.strut is not None:
        length = door.strut_length(x)
        arm = door.strut_length(stepped).imag / STEP
        report.compare("strut length", length / MM, place["strut"]["length"], where)
        report.compare("strut arm", arm / MM, place["strut"]["arm"], where)
        report.compare("strut force", door.gas(length), place["strut"]["force"], where)
    path = door.carried(stepped, door.grip_leaf, door.grip).imag / STEP
    check_hand(door, x, (system, way, path), (lift, spring, friction), place, report, where)


def check_hand(door, x, movement, moments, place, report, where):
    """The hand pushes along the handle's path. Once by virtual work, once by the equilibrium of
    all forces on all bodies."""
    system, way, path = movement
    lift, spring, friction = moments
    leverage = length_of(path)
    # A force of 1 N at the handle along its path, on all coordinates.
    hand = np.zeros(len(x))
    lever = door.carried(x, door.grip_leaf, door.grip) - x[3 * door.grip_leaf : 3 * door.grip_leaf + 2]
    if leverage > 0.0:
        along = path / leverage
        hand[3 * door.grip_leaf : 3 * door.grip_leaf + 2] = along
        hand[3 * door.grip_leaf + 2] = lever[0] * along[1] - lever[1] * along[0]
    for quantity, sign in (("opening", 1.0), ("closing", -1.0)):
        for level, expected in enumerate(place[quantity]):
            if expected is None:
                if leverage >= 0.02 * (1 + 1e-9):
                    raise Mismatch(f"{where}: no leverage from the program, {leverage} m here")
                continue
            if leverage < 0.02 * (1 - 1e-9):
                raise Mismatch(f"{where}: leverage from the program, only {leverage} m here")
            work = (lift[level] - spring + sign * friction) / leverage
            forces = door.weight(x, level) + door.lifting(x) + door.rubbing(x, sign * way)
            force = door.factor(x, forces, hand, system)
            own("hand force", work, force, 1.0)
            report.compare(f"hand force {quantity}", force, expected, where)


def check_release(door, answer, report):
    """The equations of motion of all coordinates with the forces of the pins, in time."""
    level = LEVELS.index(answer["level"])
    end = np.radians(door.linkage["end_degrees"])
    x = door.walk(door.closed(), end * answer["s"])
    size, leaves = len(x), len(door.leaves)
    masses = np.zeros(size)
    centres = []
    for body, leaf in enumerate(door.leaves):
        parts = [(part["mass"][level], door.closed_part(leaf, part), part) for part in leaf["parts"]]
        total = sum(mass for mass, _, _ in parts)
        centre = sum(mass * place for mass, place, _ in parts) / total
        inertia = 0.0
        for mass, place, part in parts:
            own_part = (part["high"] ** 2 + part["thick"] ** 2) * MM**2 / 12
            inertia += mass * (own_part + (place - centre) @ (place - centre))
        masses[3 * body : 3 * body + 3] = total, total, inertia
        centres.append(centre)
    # The bodies' coordinates are now those of the centres of mass at this level.
    for body, centre in enumerate(centres):
        x[3 * body : 3 * body + 2] = door.carried(x, body, centre)
    origins, door.origins = door.origins, centres + door.origins[leaves:]
    sense = -1.0 if answer["closes"] else 1.0
    row = door.input_row()

    def slope(_, state):
        at, speed = state[:size], state[size:]
        gaps, (pins, bent) = door.gaps(at), door.pins_in_motion(at, speed)
        forces = door.weight(at, level)
        if not answer["bare"]:
            way = np.linalg.solve(np.vstack([pins, row]), np.append(np.zeros(len(pins)), sense))
            # A trial step may go a little beyond the ends of the stroke.
            forces = forces + door.lifting(at, strict=False) + door.rubbing(at, way)
        forces = forces - door.linkage["damping"] * (row @ speed) * row
        # Pins that have come apart by rounding are drawn together (Baumgarte).
        right = -bent - 2 * STABILISER * (pins @ speed) - STABILISER**2 * gaps
        whole = np.block([[np.diag(masses), pins.T], [pins, np.zeros((len(pins), len(pins)))]])
        return np.append(speed, np.linalg.solve(whole, np.append(forces, right))[:size])

    target = 0.0 if answer["closes"] else end

    def arrived(_, state):
        return state[3 * door.input + 2] - target

    arrived.terminal, arrived.direction = True, sense
    start = np.append(x, np.zeros(size))
    run = solve_ivp(slope, (0, 25), start, method="DOP853", rtol=1e-10, atol=1e-11, events=arrived)
    if run.status != 1:
        raise Mismatch(f"the released door does not arrive: {run.message}")
    state = run.y_events[0][0]
    at, speed = state[:size], state[size:]
    drift = np.abs(door.gaps(at)).max()
    stepped = at + 1j * STEP * speed
    path = length_of(door.carried(stepped, door.grip_leaf, door.grip).imag / STEP)
    door.origins = origins
    if drift > DRIFT:
        raise Mismatch(f"the pins have come apart by {drift} m")
    where = f"from s = {answer['s']}"
    report.compare("time of a release", run.t_events[0][0], answer["time"], where)
    report.compare("input speed of a release", row @ speed, answer["input_speed"], where)
    report.compare("handle speed of a release", sense * path, answer["handle_speed"], where)


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("cases", nargs="?", default="-", help="what motion_cases printed; - for stdin")
    name = parser.parse_args().cases
    source = sys.stdin if name == "-" else open(name, encoding="utf-8")
    with source:
        cases = [json.loads(line) for line in source if line.strip()]
    report, kinds, passed, failed, releases = Report(), defaultdict(int), 0, 0, 0
    for number, case in enumerate(cases, 1):
        kinds[case["input"]["kind"]] += 1
        try:
            door = Door(case["input"])
            check_places(door, case["answers"], report)
            if case["answers"]["release"] is not None:
                check_release(door, case["answers"]["release"], report)
                releases += 1
            passed += 1
        except Mismatch as mismatch:
            failed += 1
            print(f"case {number} ({case['input']['kind']}): {mismatch}")
    print(f"{len(cases)} cases: " + ", ".join(f"{count} {kind}" for kind, count in kinds.items()))
    print(f"{releases} releases in time")
    print(f"{'quantity':28} {'compared':>8}  largest relative difference")
    for quantity, floor in FLOORS.items():
        print(f"{quantity:28} {report.counts[quantity]:8d}  {report.largest[quantity]:.1e}")
    if len(cases) < 100 or len(kinds) < 5 or releases < 45:
        failed += 1
        print("too few cases, kinds or releases: is the input whole?")
    print(f"{passed} passed, {failed} failed")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
