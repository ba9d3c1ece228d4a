"""How long a duct network and a zone survey take, beside the same work done with scipy and numpy written out.

Run: python tests/campaign/trade_speed.py [repeats]. Needs scipy and numpy (the extra `oracles`). Prints the
median of the repeats and how far the two answers are apart; exit code 1 where they disagree.
"""

from __future__ import annotations

import math
import statistics
import sys
import time
from collections.abc import Callable
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

import numpy as np
from scipy import optimize, special

from assistant.trade.constants import FOOT, INCH_WATER, KELVIN_AT_70F, STANDARD_DENSITY
from assistant.trade.duct_house import Branch, House, run, with_zones
from assistant.trade.duct_link import Duct, Power, Table
from assistant.trade.friction import viscosity
from assistant.trade.unit import to_si
from assistant.trade.zone.reason import reason
from assistant.trade.zone.survey import Anemometer, Cell, Survey

ZONES, REGISTERS, MODES = 8, 40, ("heat", "cool", "fan", "humidity")
FAN = tuple(
    (to_si(s, "inwc"), to_si(q, "cfm"))
    for s, q in zip(
        (0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8),
        (2700, 2620, 2530, 2420, 2300, 2160, 1980, 1760),
        strict=True,
    )
)


def house() -> House:
    """8 zones, 40 runs on 8 trunks, filter, coil, bypass."""

    def duct(inches, feet, k):
        return Duct(to_si(inches, "in"), to_si(feet, "ft"), k)

    grille = Power(to_si(0.02, "inwc"), to_si(100, "cfm"))
    branches = tuple(
        Branch(
            f"r{i}",
            (duct((6, 7, 8)[i % 3], 8 + i % 17, 1.5 + 0.02 * i), grille),
            f"zone {i % ZONES}",
            to_si((6, 7, 8)[i % 3], "in"),
            1.0,
            f"trunk {i % ZONES}",
        )
        for i in range(REGISTERS)
    )
    return House(
        Table(FAN),
        (duct(22, 20, 1.5),),
        (Power(to_si(0.12, "inwc"), to_si(2000, "cfm"), 1.4),),
        (Power(to_si(0.16, "inwc"), to_si(2000, "cfm"), 1.9),),
        branches,
        {f"trunk {z}": (duct(10, 12 + z, 0.6),) for z in range(ZONES)},
        (Power(to_si(0.3, "inwc"), to_si(500, "cfm")),),
    )


def written_out(h: House) -> Callable[[], float]:
    """The same network as one square system for scipy.optimize.root: flows of all links and pressures of all
    nodes.

    Unknowns are scaled to order one, the friction factor is solved for all ducts at once. Gives the blower's
    flow.
    """
    ducts = [
        h.return_duct[0],
        *(h.trunks[f"trunk {z}"][0] for z in range(ZONES)),
        *(b.losses[0] for b in h.branches),
    ]
    d = np.array([x.diameter for x in ducts])
    length = np.array([x.length for x in ducts])
    k = np.array([x.coefficient for x in ducts])
    area = math.pi / 4 * d * d
    mu, rough = viscosity(KELVIN_AT_70F), 0.0003 * FOOT
    grille = h.branches[0].losses[1]
    s, q = (np.array(c) for c in zip(*FAN, strict=True))

    def drops(flow):
        v = flow / area
        re = np.maximum(STANDARD_DENSITY * np.abs(v) * d / mu, 1e-6)
        x = -1.8 * np.log10((rough / d / 3.7) ** 1.11 + 6.9 / re)
        for _ in range(4):
            inside = np.maximum(rough / d / 3.7 + 2.51 * x / re, 1e-12)
            x = x - (x + 2 * np.log10(inside)) / (1 + 2 * 2.51 / (re * inside * math.log(10)))
        f = 8 * ((8 / re) ** 12 + ((8 * x * x) ** 8 + (37530 / re) ** 16) ** -1.5) ** (1 / 12)
        return (f * length / d + k) * STANDARD_DENSITY * v * np.abs(v) / 2

    def power(part, flow):
        return part.drop * np.sign(flow) * (np.abs(flow) / part.flow) ** part.exponent

    def unbalance(u):
        flow, p = u[: 1 + ZONES + REGISTERS] * 0.1, u[1 + ZONES + REGISTERS : -2] * 50
        blower, by = u[-2:]
        back, inlet, outlet, plenum, *ends = p
        ends = np.array(ends)
        dp = drops(flow)
        runs = flow[1 + ZONES :]
        home = np.arange(REGISTERS) % ZONES
        rise = outlet - inlet
        fan = np.interp(rise, s, q) + np.where(rise < s[0], (rise - s[0]) * (q[1] - q[0]) / (s[1] - s[0]), 0)
        return np.concatenate(
            (
                [
                    (dp[0] + back) / 50,
                    (power(h.filter[0], blower) - back + inlet) / 50,
                    (fan - blower) * 10,
                    (power(h.coil[0], blower) - outlet + plenum) / 50,
                    (power(h.bypass[0], by) - plenum + back) / 50,
                ],
                (dp[1 : 1 + ZONES] - plenum + ends) / 50,
                (dp[1 + ZONES :] + power(grille, runs) - ends[home]) / 50,
                [(flow[0] + by - blower) * 10, (blower - by - flow[1 : 1 + ZONES].sum()) * 10],
                (flow[1 : 1 + ZONES] - np.bincount(home, runs, ZONES)) * 10,
            )
        )

    start = np.concatenate(
        (np.full(1 + ZONES + REGISTERS, 0.3), [-0.3, -0.8, 2.2, 1.2], np.full(ZONES, 0.8), [0.9, 0.1])
    )
    start[0] = 9.0

    def solve() -> float:
        found = optimize.root(unbalance, start, tol=1e-11)
        if np.abs(found.fun).max() > 1e-7:
            raise ArithmeticError(found.message)
        return float(found.x[-2])

    return solve


def survey() -> Survey:
    """8 zones by 40 registers in four modes, one damper that stays open."""
    zones = tuple(f"zone {i}" for i in range(ZONES))
    flows = {}
    for m in MODES:
        for j, z in enumerate(zones):
            for i in range(REGISTERS):
                own, stuck = i % ZONES == j, i % ZONES == 3
                flow = 200.0 + i if own else 110.0 + i if stuck else 0.0
                flows[Cell(m, z, f"r{i}")] = to_si(flow, "cfm")
    return Survey(zones, tuple(f"r{i}" for i in range(REGISTERS)), flows, MODES)


def survey_written_out(s: Survey) -> Callable[[], list[int]]:
    """The heart of the survey in numpy: chances of every zone for every register, and how open each looks
    elsewhere.
    """
    read = np.array([[[s.flows[Cell(m, z, r)] for r in s.registers] for z in s.zones] for m in s.modes])
    meter: Anemometer = s.meter

    def work() -> list[int]:
        value = np.where(read < meter.floor, meter.floor / 2, read)
        u = np.where(
            read < meter.floor,
            meter.floor / math.sqrt(12),
            np.hypot(meter.share * read, meter.floor / 2) / math.sqrt(3),
        )
        off = (value[:, :, None] - value[:, None]) / np.hypot(u[:, :, None], u[:, None])
        beats = special.ndtr(off)
        beats[:, np.arange(ZONES), np.arange(ZONES)] = 1.0
        still = special.ndtr((value - 1.5 * meter.floor) / np.hypot(u, meter.floor / 4))
        weight = np.maximum(1e-12, beats.prod(axis=2) * still).prod(axis=0)
        place = (weight / weight.sum(axis=0)).argmax(axis=0)
        own = value[:, place, np.arange(REGISTERS)]
        own_u = u[:, place, np.arange(REGISTERS)]
        for share in (0.1, 0.4):
            special.ndtr((value - share * own[:, None]) / np.hypot(u, share * own_u[:, None]))
        return place.tolist()

    return work


def median(work: Callable[[], object], repeats: int) -> tuple[float, object]:
    """Median time of a call in milliseconds, and its answer."""
    times = []
    answer = work()
    for _ in range(repeats):
        begin = time.perf_counter()
        answer = work()
        times.append(1000 * (time.perf_counter() - begin))
    return statistics.median(times), answer


def main(repeats: int) -> int:
    """Prints the two comparisons."""
    h = house()
    ours, solved = median(lambda: run(h), repeats)
    theirs, blower = median(written_out(h), max(3, repeats // 4))
    apart = abs(solved.flow["blower"] / blower - 1)
    zone, _ = median(lambda: run(with_zones(h, ["zone 0"])), repeats)
    print(
        f"duct network, {REGISTERS} runs, {ZONES} trunks, bypass: {ours:.2f} ms in {solved.steps} steps; one "
        f"zone open {zone:.2f} ms; scipy.optimize.root {theirs:.2f} ms; ratio {ours / theirs:.2f}; apart "
        f"{apart:.1e}"
    )
    s = survey()
    mine, answer = median(lambda: reason(s), repeats)
    numpy_time, places = median(survey_written_out(s), repeats)
    same = [p.zone for p in answer.places.values()] == [s.zones[i] for i in places]
    print(
        f"zone survey, {ZONES} zones by {REGISTERS} registers, {len(MODES)} modes: {mine:.1f} ms with "
        f"findings and words; numpy, places and openings only {numpy_time:.2f} ms; ratio "
        f"{mine / numpy_time:.0f}; {'same places' if same else 'DIFFERENT PLACES'}"
    )
    print(f"an inch of water is {INCH_WATER:.2f} Pa in both; {repeats} repeats, medians")
    return 0 if apart < 1e-5 and same else 1


if __name__ == "__main__":
    sys.exit(main(int(sys.argv[1]) if len(sys.argv) > 1 else 40))
