"""Seven-degree-of-freedom ride model, for checking other programs; SI units; axes and signs of ISO 8855.

Coordinates q = [z, theta, phi, front pair, rear pair], changes from the static trim: z up, theta nose-down, phi right side down.
A pair is (u_left, u_right) with independent suspension and (u_axle, alpha) with a solid axle, where a point of the axle at
lateral place y has the height u_axle + (y - y_centre)*alpha.

Everything is assembled by virtual work: an element with travel a.q and force F (positive = pushes the body up, the wheel
down) adds -a*F to the generalised forces. The row of a suspension element at (x, y) is d/dq of u(y) - (z - x*theta + y*phi).
"""
import json

import numpy as np

from roads import Road

CORNERS = ("FL", "FR", "RL", "RR")


class Axle:
    def __init__(self, spec, first):
        self.spec, self.first = spec, first
        self.x, self.y = spec["x"], (spec["y_left"], spec["y_right"])
        self.solid = spec["kind"] == "solid"
        self.centre = sum(self.y) / 2

    def place(self, element, side):
        """Lateral place of an element: the wheel's, or half the element's base from the middle of a solid axle."""
        if not self.solid:
            return self.y[side]
        return self.centre + (0.5 if side == 0 else -0.5) * self.spec[element + "_base"]

    def wheel_row(self, y, side):
        row = np.zeros(7)
        if self.solid:
            row[self.first], row[self.first + 1] = 1.0, y - self.centre
        else:
            row[self.first + side] = 1.0
        return row

    def travel_row(self, y, side):
        row = self.wheel_row(y, side)
        row[:3] -= (1.0, -self.x, y)
        return row

    def trim_at(self, y, side):
        """Travel at trim of a point at y. On a solid axle it lies on the line between the wheels' travels."""
        left, right = self.spec.get("S_trim_left", 0.0), self.spec.get("S_trim_right", 0.0)
        if not self.solid:
            return (left, right)[side]
        return right + (left - right) * (y - self.y[1]) / (self.y[0] - self.y[1])


def widened(table):
    """The damper table with its end slopes carried on to +-1000 m/s, for a plain linear look-up."""
    v, f = np.array(table["velocity"], float), np.array(table["force"], float)
    lo = f[0] + (f[1] - f[0]) / (v[1] - v[0]) * (-1e3 - v[0])
    hi = f[-1] + (f[-1] - f[-2]) / (v[-1] - v[-2]) * (1e3 - v[-1])
    return np.r_[-1e3, v, 1e3], np.r_[lo, f, hi]


class RideModel:
    def __init__(self, case):
        self.case = case
        body = case["body"]
        self.mass, self.g = body["mass"], case.get("gravity", 9.80665)
        self.axles = [Axle(case["front"], 3), Axle(case["rear"], 5)]
        self.wheelbase = self.axles[0].x - self.axles[1].x
        self.road = Road(case["road"], case["speed"], self.wheelbase)
        corners = [(a, side) for a in self.axles for side in (0, 1)]

        def each(get):
            return np.array([get(a, side) for a, side in corners])

        def rows(element):
            return each(lambda a, s: a.travel_row(a.place(element, s), s))

        wheel = each(lambda a, s: a.travel_row(a.y[s], s))
        self.U = each(lambda a, s: a.wheel_row(a.y[s], s))
        self.rows = np.vstack([rows("spring"), rows("damper"), rows("stop"), wheel])
        self.spring_trim = each(lambda a, s: a.trim_at(a.place("spring", s), s))
        self.stop_trim = each(lambda a, s: a.trim_at(a.place("stop", s), s))

        self.poly = each(lambda a, s: list(a.spec["spring"]) + [0.0] * (3 - len(a.spec["spring"]))).T
        self.ratio = each(lambda a, s: a.spec.get("spring_ratio", [1.0, 0.0, 0.0])).T
        gas = [a.spec.get("gas", {"force": 0.0, "area_per_volume": 0.0, "exponent": 1.0}) for a, _ in corners]
        self.gas_force, self.gas_share, self.gas_exponent = (np.array([g[k] for g in gas]) for k in ("force", "area_per_volume", "exponent"))
        self.damper_trim = each(lambda a, s: a.trim_at(a.place("damper", s), s))
        self.damper_ratio = each(lambda a, s: a.spec.get("damper_ratio", [1.0, 0.0, 0.0])).T
        self.spring_at_trim = self._springs(self.spring_trim)
        self.dampers = [widened(a.spec["damper"]) for a in self.axles]
        self._flatten_stops(corners)
        self.stop_at_trim = self._stops(self.stop_trim)
        rub = [a.spec.get("friction", {"force": 0.0, "pre_sliding": 1.0}) for a, _ in corners]
        self.fc = np.array([r["force"] for r in rub])
        self.give = np.array([r["pre_sliding"] for r in rub])
        self.kt = each(lambda a, s: a.spec["tyre"]["stiffness"])
        self.ct = each(lambda a, s: a.spec["tyre"]["damping"])

        # Whatever is linear in q alone: anti-roll bars, the elastic link, and gravity on the tilting body (which pushes it over).
        self.K = np.zeros((7, 7))
        for i, a in enumerate(self.axles):
            twist = wheel[2 * i] - wheel[2 * i + 1]
            self.K += a.spec.get("anti_roll_bar", 0.0) * np.outer(twist, twist)
        link = case.get("elastic")
        if link:
            for side in (0, 1):
                both = link["ratio_front"] * wheel[side] + link["ratio_rear"] * wheel[2 + side]
                self.K += link["rate"] * np.outer(both, both)
        self.K[1, 1] -= self.mass * self.g * body["h_pitch"]
        self.K[2, 2] -= self.mass * self.g * body["h_roll"]
        self.open_gas = case.get("gas_line")
        self.fluid = case.get("fluid")
        self.rubs = bool(self.fc.any())
        self.size = 14 + (4 if self.fluid else 0) + (4 if self.rubs else 0)

        inertia = np.zeros((7, 7))
        inertia[0, 0] = self.mass
        inertia[1, 1], inertia[2, 2] = body["Iyy"], body["Ixx"]
        inertia[1, 2] = inertia[2, 1] = -body["Pxy"]
        for a in self.axles:
            pair = (a.spec["axle_mass"], a.spec["axle_inertia"]) if a.solid else (a.spec["wheel_mass"],) * 2
            inertia[a.first, a.first], inertia[a.first + 1, a.first + 1] = pair
        self.inverse_inertia = np.linalg.inv(inertia)
        self.N = self.static_loads()
        self.clear = -self.N / self.kt

    def static_loads(self):
        """Tyre loads at trim: the sprung weight by levers along x, then along y (each axle's resultant under the
        centre of gravity), and half of each axle's own weight on either wheel."""
        loads = []
        for a, other in (self.axles, self.axles[::-1]):
            sprung = self.mass * self.g * other.x / (other.x - a.x)
            span = a.y[0] - a.y[1]
            left = 0.5 if span == 0 else -a.y[1] / span
            own = self.g * (a.spec["axle_mass"] / 2 if a.solid else a.spec["wheel_mass"])
            loads += [sprung * left + own, sprung * (1 - left) + own]
        return np.array(loads)

    def _springs(self, S):
        """Springs at the wheel: travel x of the spring by the integral of its ratio, a polynomial and a gas in x, force times the ratio."""
        r0, r1, r2 = self.ratio
        x = S * (r0 + S * (r1 / 2 + S * r2 / 3))
        k1, k2, k3 = self.poly
        law = ((k3 * x + k2) * x + k1) * x + self.gas_force * (1.0 - self.gas_share * x) ** -self.gas_exponent
        return (r0 + S * (r1 + S * r2)) * law

    def _flatten_stops(self, corners):
        terms = []
        for i, (a, _) in enumerate(corners):
            for key, sign in (("bump_stop", 1.0), ("rebound_stop", -1.0)):
                terms += [(i, sign, t["clearance"], t["coefficient"], t["exponent"]) for t in a.spec.get(key, [])]
        self.has_stops = bool(terms)
        if terms:
            index, self.sign, self.gap, self.coefficient, self.exponent = map(np.array, zip(*terms))
            self.scatter = np.zeros((4, len(terms)))
            self.scatter[index, range(len(terms))] = 1.0
            self.stop_index = index

    def _stops(self, S):
        """Sum of C*p^e over the terms touched; p is how far the travel has gone past the clearance."""
        if not self.has_stops:
            return np.zeros(4)
        past = np.maximum(self.sign * S[self.stop_index] - self.gap, 0.0)
        return self.scatter @ (self.sign * self.coefficient * past ** self.exponent)

    def tyre_loads(self, t, q, v, pieces):
        """max(0, N + k t + c dt/dt), and nothing at all while the tyre is clear of the road."""
        f, fd, r, rd = self.road.under(t, pieces)
        left, right = self.road.left, self.road.right
        squash = np.array([f * left, f * right, r * left, r * right]) - self.U @ q
        rate = np.array([fd * left, fd * right, rd * left, rd * right]) - self.U @ v
        load = np.maximum(self.N + self.kt * squash + self.ct * rate, 0.0)
        return np.where(squash <= self.clear, 0.0, load)

    def rhs(self, t, y, pieces):
        q, v = y[:7], y[7:14]
        s, sd = self.rows @ q, self.rows @ v
        force = np.empty(16)
        force[0:4] = self._springs(self.spring_trim + s[0:4]) - self.spring_at_trim
        S = self.damper_trim + s[4:8]
        ratio = self.damper_ratio[0] + S * (self.damper_ratio[1] + S * self.damper_ratio[2])
        force[4:6] = ratio[:2] * np.interp(ratio[:2] * sd[4:6], *self.dampers[0])
        force[6:8] = ratio[2:] * np.interp(ratio[2:] * sd[6:8], *self.dampers[1])
        force[8:12] = self._stops(self.stop_trim + s[8:12]) - self.stop_at_trim
        out = np.empty(self.size)
        force[12:16] = 0.0
        if self.rubs:
            # The stretch of the spring in series with the slider; it follows the travel unless it is full and the travel goes on.
            stretch = y[-4:]
            slides = (np.abs(stretch) >= self.give) & (stretch * sd[12:16] > 0.0)
            out[-4:] = np.where(slides, 0.0, sd[12:16])
            force[12:16] = self.fc * np.clip(stretch / self.give, -1.0, 1.0)
        if self.fluid:
            self._fluid(y, s[12:16], force, out)
        if self.open_gas:
            self._open_gas(s[12:16], force)
        general = self.U.T @ (self.tyre_loads(t, q, v, pieces) - self.N) - self.rows.T @ force - self.K @ q
        out[:7] = v
        out[7:14] = self.inverse_inertia @ general
        return out

    def _fluid(self, y, s, force, out):
        """Two displacers a side on one line; extra states: volume passed to the rear and its flow, left then right."""
        x = self.fluid
        for side in (0, 1):
            volume, flow = y[14 + 2 * side], y[15 + 2 * side]
            pf = self._pressure("front", x["area_front"] * s[side] - volume)
            pr = self._pressure("rear", x["area_rear"] * s[2 + side] + volume)
            force[12 + side] += x["area_front"] * pf
            force[14 + side] += x["area_rear"] * pr
            out[14 + 2 * side] = flow
            out[15 + 2 * side] = (pf - pr - x["resistance"] * flow) / x["inertance"]

    def _pressure(self, end, taken_up):
        """Change of pressure at an end of the line: a constant compliance, or a gas of V (p V^n constant) at an absolute pressure."""
        x = self.fluid
        if "gas_pressure_" + end in x:
            return x["gas_pressure_" + end] * ((1.0 - taken_up / x["gas_volume_" + end]) ** -x["exponent"] - 1.0)
        return taken_up / x["compliance_" + end]

    def _open_gas(self, s, force):
        """One gas for both displacers of a side: the line between them is wide open."""
        x = self.open_gas
        for side in (0, 1):
            taken_up = x["area_front"] * s[side] + x["area_rear"] * s[2 + side]
            pressure = x["pressure"] * ((1.0 - taken_up / x["volume"]) ** -x["exponent"] - 1.0)
            force[12 + side] += x["area_front"] * pressure
            force[14 + side] += x["area_rear"] * pressure

    def columns(self):
        return (["t [s]", "z [m]", "theta [rad]", "phi [rad]"] + [f"u_{c} [m]" for c in CORNERS]
                + ["zdd [m/s2]", "thetadd [rad/s2]", "phidd [rad/s2]"] + [f"load_{c} [N]" for c in CORNERS])

    def outputs(self, t, y):
        """One line of results; at a road corner with the slope that begins there."""
        pieces = self.road.pieces_at(t)
        q, v = y[:7], y[7:14]
        return np.r_[t, q[:3], self.U @ q, self.rhs(t, y, pieces)[7:10], self.tyre_loads(t, q, v, pieces)]

    def travels(self, y):
        """Travel S of the stops, from the reference state (at the stop's own place)."""
        return self.stop_trim + self.rows[8:12] @ y[:7]


def load(path):
    with open(path, encoding="utf-8") as stream:
        case = json.load(stream)
    if case["model"] == "half":
        from half_model import HalfModel
        return HalfModel(case)
    return RideModel(case)
