"""Case h by the full model against the half model: both sides of the full one coincide (y = 0) and carry half of everything.

Two codes written apart must agree. Prints the largest difference over the peak; ends in an error above 1e-8.
"""
import copy
import json
import sys

import numpy as np

from half_model import HalfModel
from ride_model import RideModel
from solve_cases import HERE, SECOND_WITH_FRICTION, solve


def both_sides(axle):
    half = copy.deepcopy(axle)
    half.update(kind="independent", y_left=0.0, y_right=0.0, wheel_mass=axle["wheel_mass"] / 2)
    half["spring"] = [k / 2 for k in axle["spring"]]
    half["damper"]["force"] = [f / 2 for f in axle["damper"]["force"]]
    half["tyre"] = {k: v / 2 for k, v in axle["tyre"].items()}
    half["friction"]["force"] /= 2
    for stop in half["bump_stop"] + half["rebound_stop"]:
        stop["coefficient"] /= 2
    half["S_trim_left"] = half["S_trim_right"] = axle["S_trim"]
    return half


case = json.loads((HERE / "cases" / "h-two-wheeler.json").read_text(encoding="utf-8"))
full = copy.deepcopy(case)
full["body"].update(Ixx=20.0, Pxy=0.0, h_roll=0.0)
full["front"], full["rear"] = both_sides(case["front"]), both_sides(case["rear"])
times = [k / 100 for k in range(301)]
a, _, _ = solve(HalfModel(case), times, SECOND_WITH_FRICTION, False)
b, _, _ = solve(RideModel(full), times, SECOND_WITH_FRICTION, False)
pairs = {"z": (a[:, 1], b[:, 1]), "theta": (a[:, 2], b[:, 2]), "u_F": (a[:, 3], b[:, 4]), "u_R": (a[:, 4], b[:, 7]),
         "zdd": (a[:, 5], b[:, 8]), "thetadd": (a[:, 6], b[:, 9]),
         "load_F": (a[:, 7], b[:, 11] + b[:, 12]), "load_R": (a[:, 8], b[:, 13] + b[:, 14])}
worst = max(np.max(np.abs(x - y)) / np.max(np.abs(x)) for x, y in pairs.values())
print(f"half model against full model, case h: {worst:.1e} of peak")
sys.exit(worst > 1e-8)
