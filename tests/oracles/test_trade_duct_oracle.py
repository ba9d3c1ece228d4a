"""Friction and duct networks against fluids and scipy, which share no line with the program."""

from __future__ import annotations

import math
from pathlib import Path

import pytest
import yaml

from assistant.trade.friction import darcy
from assistant.trade.registry import call
from assistant.trade.unit import from_si, to_si

fluids = pytest.importorskip("fluids")
optimize = pytest.importorskip("scipy.optimize")

DATA = yaml.safe_load(
    (Path(__file__).parents[1] / "outside/data/trade_house.yaml").read_text(encoding="utf-8")
)
FOOT, INCH, WATER, CFM = 0.3048, 0.0254, 249.08891, 0.3048**3 / 60
DENSITY = DATA["density"] * 0.45359237 / FOOT**3
VISCOSITY = DATA["viscosity"] * 0.45359237 / FOOT


@pytest.mark.parametrize("relative", [0.0, 1e-6, 1e-5, 1e-4, 5e-4, 1e-3, 5e-3, 0.02, 0.05])
@pytest.mark.parametrize(
    ("reynolds", "tol"),
    [
        (4000, 0.03),
        (6000, 5e-5),
        (1e4, 2e-8),
        (3e4, 1e-9),
        (1e5, 1e-9),
        (1e6, 1e-9),
        (1e7, 1e-9),
        (1e8, 1e-9),
    ],
)
def test_colebrook(reynolds, tol, relative):
    """Colebrook's equation is solved exactly by both, 1e-9; near 4,000 the joint to the laminar law still
    shows, most in a very rough duct.
    """
    assert darcy(reynolds, relative) == pytest.approx(fluids.Clamond(reynolds, relative, False), rel=tol)


@pytest.mark.parametrize("reynolds", [10, 500, 1000, 1500])
def test_laminar(reynolds):
    """64/Re is 64/Re; 1e-5 where the joint begins."""
    assert darcy(reynolds, 1e-4) == pytest.approx(64 / reynolds, rel=1e-5)
    assert fluids.friction_factor(reynolds, 1e-4) == pytest.approx(64 / reynolds, rel=1e-12)


@pytest.mark.parametrize("reynolds", [1900, 2000, 2100, 2400, 2800, 3200, 3600, 3990, 5000, 2e4])
def test_the_joint_between_laminar_and_turbulent(reynolds):
    """The same joint as Churchill's of 1977, whose own turbulent law lies up to 3 % from Colebrook's."""
    assert darcy(reynolds, 1e-4) == pytest.approx(fluids.friction.Churchill_1977(reynolds, 1e-4), rel=0.03)


@pytest.mark.parametrize(
    ("cfm", "inches"), [(50, 5), (100, 6), (200, 8), (400, 10), (800, 12), (1200, 16), (2000, 18)]
)
def test_friction_of_a_duct(cfm, inches):
    """Darcy-Weisbach with their factor, our density and viscosity: 1e-6, constants to seven digits."""
    flow, diameter = cfm * CFM, inches * INCH
    velocity = flow / (math.pi / 4 * diameter**2)
    factor = fluids.Clamond(DENSITY * velocity * diameter / VISCOSITY, 0.0003 * FOOT / diameter, False)
    expected = factor / diameter * DENSITY * velocity**2 / 2

    assert call("friction_rate", {"airflow": flow, "diameter": diameter}) == pytest.approx(expected, rel=1e-6)


def test_round_elbows():
    """Their methods for a smooth bend scatter from 0.18 to 0.36; the handbook values lie at the low end."""
    for ratio in (1.0, 1.5):
        ours = call("round_elbow", {"ratio": ratio})
        theirs = fluids.bend_rounded(Di=12 * INCH, angle=90, Re=7e4, bend_diameters=ratio, method="Rennels")

        assert 0.4 * theirs < ours < 1.2 * theirs


def duct_drop(diameter: float, length: float, k: float, flow: float) -> float:
    """Pa, by fluids alone; inches, feet, m³/s."""
    d = diameter * INCH
    velocity = abs(flow) / (math.pi / 4 * d * d)
    reynolds = DENSITY * velocity * d / VISCOSITY
    if reynolds == 0:
        return 0.0
    relative = DATA["roughness"] * FOOT / d
    factor = 64 / reynolds if reynolds < 2040 else fluids.Clamond(reynolds, relative, False)
    return math.copysign((factor * length * FOOT / d + k) * DENSITY * velocity**2 / 2, flow)


def power_drop(part: dict, flow: float) -> float:
    return math.copysign(
        part["drop"] * WATER * (abs(flow) / (part["airflow"] * CFM)) ** part["exponent"], flow
    )


def damper_drop(diameter: float, flow: float) -> float:
    area = math.pi / 4 * (diameter * INCH) ** 2
    return math.copysign(1e6 * DENSITY / 2 * (flow / area) ** 2, flow)


def fan_flow(static: float) -> float:
    """Airflow at a rise in Pa, linear in the table, the ends carried on."""
    s, q = [x * WATER for x in DATA["fan"]["static"]], [x * CFM for x in DATA["fan"]["airflow"]]
    i = next((i for i in range(1, len(s) - 1) if static < s[i]), len(s) - 1)
    return q[i - 1] + (q[i] - q[i - 1]) * (static - s[i - 1]) / (s[i] - s[i - 1])


def outside(open_zones: list[str], bypass: bool, measured: dict | None = None) -> dict[str, float]:
    """The house solved by scipy: unknown are the pressures at inlet, outlet, plenum, return and both trunk
    ends. `measured` gives the return duct by a drop that was read instead of by its size.
    """

    def back_drop(q: float) -> float:
        return duct_drop(**_duct(DATA["return"]), flow=q) if measured is None else power_drop(measured, q)

    def through(drop, pressure: float) -> float:
        return optimize.brentq(lambda q: drop(q) - pressure, -3.0, 3.0, xtol=1e-15, rtol=1e-14)

    def flows(p) -> dict[str, float]:
        back, inlet, outlet, plenum, north, south = p
        end = {"north": north, "south": south}
        out = {
            "return": through(back_drop, -back),
            "filter": through(lambda q: power_drop(DATA["filter"], q), back - inlet),
            "blower": fan_flow(outlet - inlet),
            "coil": through(lambda q: power_drop(DATA["coil"], q), outlet - plenum),
        }
        for name, trunk in DATA["trunks"].items():
            out[name] = through(lambda q, t=trunk: duct_drop(**_duct(t), flow=q), plenum - end[name])
        for b in DATA["branches"]:
            shut = b["zone"] not in open_zones
            out[b["name"]] = through(
                lambda q, b=b, shut=shut: (
                    duct_drop(**_duct(b), flow=q)
                    + power_drop(DATA["grille"], q)
                    + (damper_drop(b["diameter"], q) if shut else 0.0)
                ),
                end[b["trunk"]],
            )
        out["bypass"] = through(lambda q: power_drop(DATA["bypass"], q), plenum - back) if bypass else 0.0
        return out

    def unbalance(p) -> list[float]:
        q = flows(p)
        at = {n: sum(q[b["name"]] for b in DATA["branches"] if b["trunk"] == n) for n in DATA["trunks"]}
        return [
            q["return"] + q["bypass"] - q["filter"],
            q["filter"] - q["blower"],
            q["blower"] - q["coil"],
            q["coil"] - q["north"] - q["south"] - q["bypass"],
            q["north"] - at["north"],
            q["south"] - at["south"],
        ]

    found = optimize.root(unbalance, [-20, -45, 90, 55, 40, 40], tol=1e-12)
    assert max(map(abs, found.fun)) < 1e-9
    p = found.x
    return {
        **{k: v / CFM for k, v in flows(p).items()},
        "tesp": (p[2] - p[1]) / WATER,
        "plenum": p[3] / WATER,
    }


def _duct(part: dict) -> dict:
    return {key: part[key] for key in ("diameter", "length", "k")}


@pytest.mark.parametrize("state", DATA["states"], ids=lambda s: s["state"].replace(" ", "-"))
def test_the_kept_house_is_what_scipy_gives(state):
    """What is kept as data for the plain run is what the libraries give today: 1e-4 cfm."""
    got = outside(state["open"], state["bypass"])

    for name, value in state["flows"].items():
        assert got[name] == pytest.approx(value, abs=1e-3)
    assert got["tesp"] == pytest.approx(state["tesp"], abs=1e-6)
    assert got["plenum"] == pytest.approx(state["plenum"], abs=1e-6)


@pytest.mark.parametrize("case", DATA["measured"], ids=lambda c: c["state"].replace(" ", "-"))
def test_the_whole_system_by_name(case):
    """duct_system against scipy, each run's flow and what is kept for the plain run: 2e-5, as the house."""
    got = outside(case["open"], case["bypass"], DATA["measured_return"])
    runs = DATA["branches"]
    given = {
        "diameters": [to_si(b["diameter"], "in") for b in runs],
        "lengths": [to_si(b["length"], "ft") for b in runs],
        "zones": [["up", "down", "east"].index(b["zone"]) + 1.0 for b in runs],
        "coefficients": [b["k"] for b in runs],
        "leaves": [["north", "south"].index(b["trunk"]) + 1.0 for b in runs],
        "trunk_diameters": [to_si(t["diameter"], "in") for t in DATA["trunks"].values()],
        "trunk_lengths": [to_si(t["length"], "ft") for t in DATA["trunks"].values()],
        "trunk_coefficients": [t["k"] for t in DATA["trunks"].values()],
        "statics": [to_si(s, "inwc") for s in DATA["fan"]["static"]],
        "airflows": [to_si(q, "cfm") for q in DATA["fan"]["airflow"]],
        "return_drop": to_si(DATA["measured_return"]["drop"], "inwc"),
        "filter_exponent": DATA["filter"]["exponent"],
        "bypass": to_si(DATA["bypass"]["airflow"], "cfm") if case["bypass"] else 0.0,
        "open_zone": float(case["open_zone"]),
    }
    ours = call("duct_system", given)

    for branch, flow in zip(runs, ours["flows"], strict=True):
        assert from_si(flow, "cfm") == pytest.approx(got[branch["name"]], rel=2e-5, abs=1e-3)
    told = (("airflow", "blower", "cfm"), ("static", "tesp", "inwc"), ("plenum", "plenum", "inwc"))
    for name, key, unit in told:
        assert from_si(ours[name], unit) == pytest.approx(got[key], rel=2e-5)
        assert case[key] == pytest.approx(got[key], abs=1e-4)


def test_capacity_by_root_finding():
    """duct_flow against brentq on fluids' factor: 1e-6."""
    for inches, rate in ((6, 0.08), (10, 0.1), (18, 0.06)):
        target = to_si(rate, "inwc100ft")
        flow = optimize.brentq(
            lambda q, d=inches, t=target: duct_drop(d, 1 / FOOT, 0.0, q) - t, 1e-4, 5.0, xtol=1e-14
        )

        got = call("duct_flow", {"diameter": inches * INCH, "rate": target})
        assert from_si(got, "cfm") == pytest.approx(flow / CFM, rel=1e-6)
