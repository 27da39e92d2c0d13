"""The reference cases with the solvers of a Python library.

Usage: scipy_peer.py DIRECTORY-OF-TABLES RTOL REPETITIONS
Prints the same columns as cvode.c: problem, method, rtol, median ms,
right-hand sides, greatest error over the table in K and in conversion.
"""
import csv
import statistics
import sys
import time
from math import cbrt, exp

import numpy as np
from scipy.integrate import solve_ivp

GAS, SOLID, LIQUID = 8.314462618, 0.194605, 0.018015
NAMES = ["R1", "R2", "R3", "R4a", "R4b", "R5", "R6", "R8", "R9"]


def table(directory, name):
    with open(f"{directory}/{name}", newline="") as f:
        return list(csv.DictReader(f))


def rate(t, y, p, s):
    dose, heap, ua, coolant, stirring = s
    temperature = y[3]
    k = p["kref"] * exp(-p["Ea"] / GAS * (1 / temperature - 1 / p["Tref"]))
    c = max(0.0, (p["nHF0"] - p["nuHF"] * y[2]) / p["V"])
    ns = max(0.0, y[0])
    r = k * c * ns
    if p["law"] == 2:
        r *= p["eps"] + y[2] / p["ntot"]
    elif p["law"] == 3:
        r = k * c * cbrt(ns) ** 2 * cbrt(p["ntot"])
    q = ua * (temperature - coolant)
    vapour = 0.0
    if p["aev"]:
        vapour = p["aev"] * exp(-p["Hv"] / GAS * (1 / temperature - 1 / p["Tb"]))
        vapour += p["Kb"] / p["Hv"] * max(0.0, temperature - p["Tb"])
    heat = (p["mL"] - LIQUID * y[5]) * p["cpL"] + (y[0] + y[1] + y[2]) * SOLID * p["cpS"] + p["Cv"]
    power = p["dH"] * r - q - dose * SOLID * p["cpS"] * (temperature - p["Td"]) + stirring - p["Hv"] * vapour
    return [-r if heap else dose - r, dose if heap else 0.0, r, power / heat, q, vapour]


def run(p, segments, method, rtol, dense):
    n = 1e-2 * rtol * p["ntot"]
    atol = [n, n, n, 0.1 * rtol, n * p["dH"], 1e-2 * rtol]
    y, calls, out = np.array([p.get("ns0", 0.0), 0, 0, p["T0"], 0, 0]), 0, []
    for s in segments:
        if s["resuspend"] != 0:
            y = np.array([y[0] + y[1], 0, *y[2:]])
        inputs = (s["dose_mol_s"], s["heap"], s["ua_w_k"], s["coolant_k"], s["stirring_w"])
        span = (s["start_s"], s["end_s"])
        sol = solve_ivp(rate, span, y, method=method, rtol=rtol, atol=atol, args=(p, inputs), dense_output=dense)
        y, calls = sol.y[:, -1], calls + sol.nfev
        out.append((span, sol.sol))
    return out, calls


def main(directory, rtol, repetitions):
    parameters, segments = {}, {}
    for r in table(directory, "parameters.csv"):
        parameters.setdefault(r["case"], {})[r["parameter"]] = float(r["value"])
    for r in table(directory, "segments.csv"):
        numbers = {k: float(v) for k, v in r.items() if k not in ("case", "status")}
        segments.setdefault(r["case"], []).append(numbers)
    rows = table(directory, "trajectories.csv")
    for name in NAMES:
        p, segs = parameters[name], segments[name]
        dosed = p.get("ns0", 0.0) + sum(s["dose_mol_s"] * (s["end_s"] - s["start_s"]) for s in segs)
        for method in ("LSODA", "Radau", "BDF", "RK45"):
            out, calls = run(p, segs, method, rtol, True)
            kelvin = conversion = 0.0
            for r in rows:
                t = float(r["t_s"])
                if r["case"] != name or t == 0:
                    continue
                y = next(sol(t) for (a, b), sol in out if a < t <= b)
                kelvin = max(kelvin, abs(y[3] - float(r["temperature_k"])))
                conversion = max(conversion, abs(y[2] - float(r["reacted_mol"])) / dosed)
            times = []
            for _ in range(repetitions):
                start = time.perf_counter()
                run(p, segs, method, rtol, False)
                times.append((time.perf_counter() - start) * 1e3)
            ms = statistics.median(times)
            print(f"{name},scipy {method},{rtol:g},{ms:.3f},{calls},{kelvin:.1e},{conversion:.1e}")


if __name__ == "__main__":
    main(sys.argv[1], float(sys.argv[2]), int(sys.argv[3]))
