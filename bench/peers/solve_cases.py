"""Solves every case in cases/ twice, by two different methods, and keeps the first in results/.

    /usr/bin/python3 bench/peers/solve_cases.py [name ...]

DOP853 starts afresh at every corner of the road and at every output time, so no output is interpolated; LSODA (RK45 for
cars with friction) starts afresh at the corners only and gives its outputs by its own interpolation. On every stretch the road is held on one smooth piece.
"""
import json
import math
import pathlib
import platform
import sys
import time

import numpy as np
import scipy
from scipy.integrate import solve_ivp

import ride_model

HERE = pathlib.Path(__file__).resolve().parent
FIRST = {"method": "DOP853", "rtol": 1e-11, "atol": 1e-13, "max_step": 2.5e-4}
SECOND = {"method": "LSODA", "rtol": 1e-11, "atol": 1e-13, "max_step": 1e-3}
# A slider that begins or ceases to slide is a corner in the state, where LSODA's memory of past steps brings it to a halt.
SECOND_WITH_FRICTION = {"method": "RK45", "rtol": 1e-10, "atol": 1e-12, "max_step": 1e-3}


def solve(model, outputs, options, stop_at_outputs):
    """Outputs' lines and states at the given times, from rest at trim."""
    corners = [t for t in model.road.corner_times() if outputs[0] < t < outputs[-1]]
    breaks = sorted(set([outputs[0], outputs[-1]] + corners + (list(outputs) if stop_at_outputs else [])))
    y = np.zeros(model.size)
    states = {outputs[0]: y}
    evaluations = 0
    for t0, t1 in zip(breaks, breaks[1:]):
        pieces = model.road.pieces_at((t0 + t1) / 2)
        wanted = [t for t in outputs if t0 < t <= t1]
        run = solve_ivp(model.rhs, (t0, t1), y, args=(pieces,), t_eval=sorted(set(wanted + [t1])), **options)
        if run.status != 0:
            raise RuntimeError(f"{options['method']} stopped in [{t0}, {t1}]: {run.message}")
        evaluations += run.nfev
        for t, column in zip(run.t, run.y.T):
            states[t] = column
        y = run.y[:, -1]
    kept = np.array([states[t] for t in outputs])
    return np.array([model.outputs(t, s) for t, s in zip(outputs, kept)]), kept, evaluations


def differences(model, a, b):
    """Largest difference of each kind of output, over the largest value of that kind (loads: change from static)."""
    kinds = {}
    for i, name in enumerate(model.columns()[1:], start=1):
        kinds.setdefault(name.split(" ")[0].split("_")[0], []).append(i)
    table = {}
    for kind, at in kinds.items():
        peak = np.max(np.abs(a[:, at] - (model.N if kind == "load" else 0.0)))
        table[kind] = float(np.max(np.abs(a[:, at] - b[:, at])) / peak) if peak > 1e-9 else 0.0
    return table


def one(path):
    model = ride_model.load(path)
    case = model.case
    rate = case["outputs_per_second"]
    outputs = [k / rate for k in range(round(case["duration"] * rate) + 1)]
    began = time.perf_counter()
    first, states, evals1 = solve(model, outputs, FIRST, True)
    middle = time.perf_counter()
    other = SECOND_WITH_FRICTION if "friction" in case["front"] else SECOND
    second, _, evals2 = solve(model, outputs, other, False)
    ended = time.perf_counter()
    name = path.stem
    table = ",".join(model.columns()) + "\n" + "".join(",".join(f"{x:.12g}" for x in line) + "\n" for line in first)
    (HERE / "results" / f"{name}.csv").write_text(table, encoding="utf-8")
    travels = np.array([model.travels(s) for s in states])
    loads = first[:, -len(model.N):]
    facts = {
        "case": name,
        "solver": f"SciPy {scipy.__version__} solve_ivp DOP853, NumPy {np.__version__}, Python {platform.python_version()}",
        "tolerances": {k: v for k, v in FIRST.items() if k != "method"},
        "second_solver": other["method"], "second_tolerances": {k: v for k, v in other.items() if k != "method"},
        "static_loads": model.N.tolist(),
        "road_corner_times": model.road.corner_times(),
        "outputs_on_a_road_corner": [t for t in outputs if any(math.isclose(t, c, abs_tol=1e-9) for c in model.road.corner_times())],
        "least_load_at_outputs": loads.min(axis=0).tolist(),
        "greatest_load_at_outputs": loads.max(axis=0).tolist(),
        "least_travel_at_outputs": travels.min(axis=0).tolist(),
        "greatest_travel_at_outputs": travels.max(axis=0).tolist(),
        "greatest_abs_theta": float(np.max(np.abs(first[:, 2]))),
        "greatest_abs_phi": float(np.max(np.abs(first[:, 3]))) if len(model.N) == 4 else 0.0,
        "difference_over_peak": differences(model, first, second),
    }
    (HERE / "results" / f"{name}.json").write_text(json.dumps(facts, indent=1) + "\n", encoding="utf-8")
    worst = max(facts["difference_over_peak"].values())
    print(f"{name}: worst difference {worst:.1e} of peak; DOP853 {evals1} calls {middle - began:.1f} s, {other['method']} {evals2} calls {ended - middle:.1f} s", flush=True)


if __name__ == "__main__":
    wanted = sys.argv[1:]
    for path in sorted((HERE / "cases").glob("*.json")):
        if not wanted or path.stem in wanted:
            one(path)
