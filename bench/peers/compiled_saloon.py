"""Case b-saloon-hump as a scalar right-hand side compiled by numba, numbers read from the case file."""
import json
import math

import numba
import numpy as np


def right_hand_side(path):
    """f(t, y) of the case, compiled."""
    with open(path, encoding="utf-8") as stream:
        case = json.load(stream)
    body, axles, road = case["body"], (case["front"], case["rear"]), case["road"]
    if road["shape"] != "round-top" or road["tracks"] != "both":
        raise ValueError(f"{path}: this code knows a round-top hump on both tracks only")
    g, mass, iyy, ixx = case["gravity"], body["mass"], body["Iyy"], body["Ixx"]
    tilt, lean = mass * g * body["h_pitch"], mass * g * body["h_roll"]
    x = np.array([a["x"] for a in axles])
    yw = np.array([a["y_left"] for a in axles])
    base = x[0] - x[1]
    own = np.array([a["wheel_mass"] for a in axles])
    n = mass * g * np.array([-x[1], x[0]]) / base / 2 + own * g
    k = np.array([a["spring"][0] for a in axles])
    bar = np.array([a["anti_roll_bar"] for a in axles])
    kt, ct = axles[0]["tyre"]["stiffness"], axles[0]["tyre"]["damping"]
    tv = np.array([a["damper"]["velocity"] for a in axles])
    tf = np.array([a["damper"]["force"] for a in axles])
    bump = np.array([[[s["clearance"], s["coefficient"]] for s in a["bump_stop"]] for a in axles])
    rebound = np.array([[[s["clearance"], s["coefficient"]] for s in a["rebound_stop"]] for a in axles])
    speed, hump, width = case["speed"], road["height"], road["length"]
    radius = (width * width / 4 + hump * hump) / (2 * hump)

    @numba.njit(cache=False)
    def rhs(t, y):
        d = np.empty(14)
        d[:7] = y[7:]
        lift, pitch, roll = 0.0, tilt * y[1], lean * y[2]
        s, v = np.empty(2), np.empty(2)
        for a in range(2):
            at = speed * t - (base if a else 0.0)
            height = rate = 0.0
            if 0.0 <= at < width:
                root = math.sqrt(radius * radius - (at - width / 2) ** 2)
                height, rate = root - (radius - hump), -speed * (at - width / 2) / root
            for i in range(2):
                side = -yw[a] if i else yw[a]
                s[i] = y[3 + 2 * a + i] - (y[0] - x[a] * y[1] + side * y[2])
                v[i] = y[10 + 2 * a + i] - (y[7] - x[a] * y[8] + side * y[9])
            for i in range(2):
                w, side = 2 * a + i, (-yw[a] if i else yw[a])
                j = 0
                while j < tv.shape[1] - 2 and v[i] > tv[a, j + 1]:
                    j += 1
                force = k[a] * s[i] + bar[a] * (s[i] - s[1 - i])
                force += tf[a, j] + (tf[a, j + 1] - tf[a, j]) / (tv[a, j + 1] - tv[a, j]) * (v[i] - tv[a, j])
                for m in range(bump.shape[1]):
                    force += bump[a, m, 1] * max(s[i] - bump[a, m, 0], 0.0)
                for m in range(rebound.shape[1]):
                    force -= rebound[a, m, 1] * max(-s[i] - rebound[a, m, 0], 0.0)
                squash = height - y[3 + w]
                load = 0.0
                if squash > -n[a] / kt:
                    load = max(0.0, n[a] + kt * squash + ct * (rate - y[10 + w]))
                lift += force
                pitch -= x[a] * force
                roll += side * force
                d[10 + w] = (load - n[a] - force) / own[a]
        d[7], d[8], d[9] = lift / mass, pitch / iyy, roll / ixx
        return d

    return rhs
