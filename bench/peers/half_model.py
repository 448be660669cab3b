"""Four-degree-of-freedom half model (two wheels in one track), written out term by term and apart from ride_model.py."""
import numpy as np

from roads import Road


def damper(table, v):
    """Piecewise linear through the table's points, the end slopes carried on."""
    vs, fs = table["velocity"], table["force"]
    i = 0
    while i < len(vs) - 2 and v > vs[i + 1]:
        i += 1
    return fs[i] + (fs[i + 1] - fs[i]) / (vs[i + 1] - vs[i]) * (v - vs[i])


def stops(axle, S):
    up = sum(t["coefficient"] * (S - t["clearance"]) ** t["exponent"] for t in axle["bump_stop"] if S > t["clearance"])
    down = sum(t["coefficient"] * (-S - t["clearance"]) ** t["exponent"] for t in axle["rebound_stop"] if -S > t["clearance"])
    return up - down


def spring(axle, S):
    return sum(k * S ** (n + 1) for n, k in enumerate(axle["spring"]))


class HalfModel:
    size = 10

    def __init__(self, case):
        self.case, body, g = case, case["body"], case.get("gravity", 9.80665)
        self.front, self.rear = case["front"], case["rear"]
        self.M, self.I, self.tilt = body["mass"], body["Iyy"], body["mass"] * g * body["h_pitch"]
        b, c = self.front["x"], -self.rear["x"]
        self.road = Road(case["road"], case["speed"], b + c)
        self.N = np.array([self.M * g * c / (b + c) + self.front["wheel_mass"] * g,
                           self.M * g * b / (b + c) + self.rear["wheel_mass"] * g])

    @staticmethod
    def friction(axle, stretch, sd):
        """A spring in series with a slider: its force, and the rate of its stretch."""
        give, force = axle["friction"]["pre_sliding"], axle["friction"]["force"]
        slides = abs(stretch) >= give and stretch * sd > 0.0
        return force * min(1.0, max(-1.0, stretch / give)), 0.0 if slides else sd

    @staticmethod
    def suspension(axle, s, sd):
        s0 = axle.get("S_trim", 0.0)
        return (spring(axle, s0 + s) - spring(axle, s0) + stops(axle, s0 + s) - stops(axle, s0)
                + damper(axle["damper"], sd))

    @staticmethod
    def tyre(axle, N, t, td):
        k, c = axle["tyre"]["stiffness"], axle["tyre"]["damping"]
        return 0.0 if t <= -N / k else max(0.0, N + k * t + c * td)

    def tyre_loads(self, t, y, pieces):
        hf, hfd, hr, hrd = self.road.under(t, pieces)
        return (self.tyre(self.front, self.N[0], hf - y[2], hfd - y[6]),
                self.tyre(self.rear, self.N[1], hr - y[3], hrd - y[7]))

    def rhs(self, t, y, pieces):
        z, th, uf, ur, zd, thd, ufd, urd, ef, er = y
        xf, xr = self.front["x"], self.rear["x"]
        sdf, sdr = ufd - (zd - xf * thd), urd - (zd - xr * thd)
        rubf, efd = self.friction(self.front, ef, sdf)
        rubr, erd = self.friction(self.rear, er, sdr)
        Ff = self.suspension(self.front, uf - (z - xf * th), sdf) + rubf
        Fr = self.suspension(self.rear, ur - (z - xr * th), sdr) + rubr
        Lf, Lr = self.tyre_loads(t, y, pieces)
        return np.array([zd, thd, ufd, urd, (Ff + Fr) / self.M, (-xf * Ff - xr * Fr + self.tilt * th) / self.I,
                         (Lf - self.N[0] - Ff) / self.front["wheel_mass"], (Lr - self.N[1] - Fr) / self.rear["wheel_mass"], efd, erd])

    def columns(self):
        return ["t [s]", "z [m]", "theta [rad]", "u_F [m]", "u_R [m]", "zdd [m/s2]", "thetadd [rad/s2]", "load_F [N]", "load_R [N]"]

    def outputs(self, t, y):
        pieces = self.road.pieces_at(t)
        return np.r_[t, y[:4], self.rhs(t, y, pieces)[4:6], self.tyre_loads(t, y, pieces)]

    def travels(self, y):
        return np.array([a.get("S_trim", 0.0) + u - (y[0] - a["x"] * y[1])
                         for a, u in ((self.front, y[2]), (self.rear, y[3]))])
