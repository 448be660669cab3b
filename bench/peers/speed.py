"""Times general-purpose solvers on case b for 4 s of travel and prints a table: ms per run, calls, pitch error.

    /usr/bin/python3 bench/peers/speed.py [output.md]

A SciPy row shows the loosest of rtol 1e-3 ... 1e-8 (atol = rtol/1000) whose pitch is within 1e-4 of its peak over the kept
3 s at 100 Hz; the compiled peers run at the settings they print.
"""
import pathlib
import statistics
import subprocess
import sys
import time

import numpy as np
from scipy.integrate import odeint, solve_ivp

import ride_model
from compiled_saloon import right_hand_side

HERE = pathlib.Path(__file__).resolve().parent
CASE, KEPT = HERE / "cases" / "b-saloon-hump.json", HERE / "results" / "b-saloon-hump.csv"
SECONDS, WANTED = 4.0, 1e-4
TIMES = np.arange(round(SECONDS * 100) + 1) / 100
THETA = np.loadtxt(KEPT, delimiter=",", skiprows=1, usecols=2)


def error(theta):
    return float(np.max(np.abs(theta[:len(THETA)] - THETA)) / np.max(np.abs(THETA)))


def median_ms(run, runs):
    took = []
    for _ in range(runs):
        began = time.perf_counter()
        run()
        took.append(1e3 * (time.perf_counter() - began))
    return statistics.median(took)


def by_tolerance(solver, runs):
    """(tolerance, ms, calls, error) at the loosest tolerance that is good enough."""
    for exponent in range(3, 9):
        theta, calls = solver(10.0 ** -exponent)
        if error(theta) <= WANTED:
            return f"rtol 1e-{exponent}", median_ms(lambda: solver(10.0 ** -exponent), runs), calls, error(theta)
    raise RuntimeError("no tolerance tried was good enough")


def ivp(rhs, method):
    def solver(tolerance):
        run = solve_ivp(rhs, (0.0, SECONDS), np.zeros(14), method=method, rtol=tolerance, atol=tolerance * 1e-3, t_eval=TIMES, max_step=0.01)
        return run.y[1], run.nfev
    return solver


def classic(rhs):
    def solver(tolerance):
        y, more = odeint(rhs, np.zeros(14), TIMES, tfirst=True, rtol=tolerance, atol=tolerance * 1e-3, hmax=0.01, full_output=True)
        return y[:, 1], int(more["nfe"][-1])
    return solver


def external():
    """Rows of the compiled peers, as they print them; a peer whose library is missing stops the run."""
    build = HERE / "build"
    build.mkdir(exist_ok=True)
    subprocess.run(["g++", "-O3", "-march=native", HERE / "odeint_ab4.cpp", "-o", build / "odeint_ab4"], check=True)
    subprocess.run(["gcc", "-O3", "-march=native", HERE / "cvode_case.c", "-o", build / "cvode_case",
                    "-lsundials_cvode", "-lsundials_nvecserial", "-lm"], check=True)
    for steps in ("16", "32"):
        yield [build / "odeint_ab4", KEPT, str(SECONDS), "200", steps]
    for method in ("adams", "bdf"):
        yield [build / "cvode_case", KEPT, "1e-5", "1e-8", str(SECONDS), "50", method]
        yield [build / "cvode_case", KEPT, "1e-4", "1e-7", str(SECONDS), "50", method]
        yield [build / "cvode_case", KEPT, "1e-11", "1e-13", str(SECONDS), "5", method]


def main():
    model = ride_model.load(CASE)
    compiled = right_hand_side(CASE)
    compiled(0.0, np.zeros(14))

    def plain(t, y):
        return model.rhs(t, y, model.road.pieces_at(t))

    lines = ["| solver | setting | ms per run | calls | pitch error / peak |", "|---|---|---|---|---|"]
    rows = [("SciPy solve_ivp RK45, NumPy right-hand side", ivp(plain, "RK45"), 3),
            ("SciPy solve_ivp LSODA, NumPy right-hand side", ivp(plain, "LSODA"), 3),
            ("SciPy solve_ivp RK45, numba right-hand side", ivp(compiled, "RK45"), 5),
            ("SciPy solve_ivp LSODA, numba right-hand side", ivp(compiled, "LSODA"), 11),
            ("SciPy odeint (LSODA), numba right-hand side", classic(compiled), 21)]
    for name, solver, runs in rows:
        setting, ms, calls, off = by_tolerance(solver, runs)
        lines.append(f"| {name} | {setting} | {ms:.3g} | {calls} | {off:.1e} |")
        print(lines[-1], flush=True)
    lines += ["", "```"]
    for command in external():
        said = subprocess.run(command, check=True, capture_output=True, text=True).stdout.strip()
        lines.append(said)
        print(said, flush=True)
    lines.append("```")
    if len(sys.argv) > 1:
        pathlib.Path(sys.argv[1]).write_text("\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
