"""The duct network against answers solved outside, against itself balanced by hand, and in words."""

from __future__ import annotations

import math
import random

import pytest
import yaml
from trade_cases import FOLDER

from assistant.trade.duct_fittings import CLASSES, closed_damper_loss
from assistant.trade.duct_house import Branch, House, alone, run, with_zones, zones_of
from assistant.trade.duct_link import Constant, Damper, Duct, Link, Power, Table
from assistant.trade.duct_network import ROOM, NotSolved, solve_network
from assistant.trade.duct_words import capacity_words, survey_words, zone_words
from assistant.trade.registry import call
from assistant.trade.unit import from_si, to_si

DATA = yaml.safe_load((FOLDER / "trade_network.yaml").read_text(encoding="utf-8"))


def cfm(value: float) -> float:
    return to_si(value, "cfm")


def inwc(value: float) -> float:
    return to_si(value, "inwc")


def fan() -> Table:
    return Table(tuple(zip(map(inwc, DATA["fan"]["static"]), map(cfm, DATA["fan"]["airflow"]), strict=True)))


def published(state: dict) -> House:
    closed = state["closed"]
    if closed in CLASSES:
        closed = closed_damper_loss(closed)
    branches = tuple(
        Branch(
            name,
            (Power(inwc(DATA["branch_drop"]), cfm(b["airflow"])),),
            name,
            to_si(b["damper"], "in"),
            state["opening"][name],
            None,
            closed,
        )
        for name, b in DATA["branches"].items()
    )
    back, by = DATA["return"], DATA["bypass"]
    return House(
        fan(),
        (Power(inwc(back["drop"]), cfm(back["airflow"])),),
        (),
        (),
        branches,
        {},
        (Power(inwc(by["drop"]), cfm(by["airflow"])),) if state["bypass"] else None,
    )


@pytest.mark.parametrize("state", DATA["states"], ids=lambda s: s["state"].replace(" ", "-"))
def test_the_published_network(state):
    """Every figure that the outside solver printed comes back: half of its last digit, 0.6 cfm at the
    branches, where the coefficient of a leakage class is itself known to 1 %.
    """
    solved = run(published(state))

    assert from_si(solved.flow["blower"], "cfm") == pytest.approx(
        state["total"], abs=0.5 if state["bypass"] else 0.05
    )
    assert from_si(solved.fan_rise, "inwc") == pytest.approx(state["tesp"], abs=0.0006)
    assert from_si(solved.pressure["plenum"], "inwc") == pytest.approx(state["supply"], abs=0.0006)
    for name in ("A", "B", "C"):
        digit = 0.05 if isinstance(state[name], float) else 0.6
        assert from_si(solved.flow[name], "cfm") == pytest.approx(state[name], abs=digit)
    if state["bypass"]:
        assert from_si(solved.flow["bypass"], "cfm") == pytest.approx(state["by"], abs=0.5)


def house(chance: random.Random, zones: int = 4, runs: int = 20, bypass: bool = True, motor=None) -> House:
    """A made-up house: trunks, real ducts of several sizes, filter, coil, a bypass."""
    trunks = {f"trunk {i}": (Duct(to_si(12, "in"), chance.uniform(3, 9), 0.5),) for i in range(2)}
    branches = tuple(
        Branch(
            f"register {i}",
            (
                Duct(to_si(chance.choice((5, 6, 7, 8)), "in"), chance.uniform(2, 12), 2.0),
                Power(inwc(0.03), cfm(100)),
            ),
            f"zone {i % zones}",
            to_si(chance.choice((6, 7, 8)), "in"),
            1.0,
            f"trunk {i % 2}",
        )
        for i in range(runs)
    )
    return House(
        motor or fan(),
        (Duct(to_si(16, "in"), 6, 1.5),),
        (Power(inwc(0.15), cfm(1000), 1.4),),
        (Power(inwc(0.2), cfm(1000), 1.9),),
        branches,
        trunks,
        (Power(inwc(0.5), cfm(300)),) if bypass else None,
    )


@pytest.mark.parametrize("seed", range(12))
def test_air_is_neither_made_nor_lost(seed):
    """What flows into each node flows out, and the drops along every way to the rooms add up to the fan's
    rise.
    """
    h = house(random.Random(seed))
    for zone in zones_of(h):
        solved = run(with_zones(h, [zone]))
        flow, at = solved.flow, solved.pressure
        supplied = sum(flow[b.name] for b in h.branches)

        assert flow["blower"] == pytest.approx(flow["return duct"] + flow["bypass"], rel=1e-9)
        assert flow["return duct"] == pytest.approx(supplied, rel=1e-9)
        passed = sum(
            sum(loss.at(flow[name])[0] for loss in losses)
            for name, losses in (("return duct", h.return_duct), ("filter", h.filter), ("coil", h.coil))
        )
        assert solved.fan_rise == pytest.approx(passed + at["plenum"], rel=1e-6)
        for b in h.branches:
            drop = sum(loss.at(flow[b.name])[0] for loss in b.losses)
            if b.zone == zone:
                assert drop == pytest.approx(at[f"end of {b.trunk}"], rel=1e-6)


def test_one_open_zone_alone_pushes_the_static_up():
    """Shutting dampers never lowers the plenum's pressure nor raises the blower's air."""
    h = house(random.Random(3), bypass=False)
    every = run(h)
    for zone in zones_of(h):
        one = alone(h, zone)

        assert one.pressure["plenum"] > every.pressure["plenum"]
        assert one.flow["blower"] < every.flow["blower"]


def test_a_constant_airflow_fan_holds_and_then_gives_up():
    """It holds its flow while its air power allows; past that the product of flow and rise is the limit."""
    free = house(random.Random(5), motor=Constant(cfm(800)))
    bound = house(random.Random(5), bypass=False, motor=Constant(cfm(800), limit=40.0))

    held, given_up = run(free), alone(bound, "zone 0")

    assert held.held is True
    assert held.flow["blower"] == pytest.approx(cfm(800))
    assert given_up.held is False
    assert given_up.flow["blower"] < cfm(800)
    assert given_up.flow["blower"] * given_up.fan_rise == pytest.approx(40.0, rel=1e-9)


def test_the_network_agrees_with_the_operating_point():
    """Two ways to one answer: the network's own solver and the bisection of operating_point, to rounding."""
    point = call(
        "operating_point",
        {
            "system_static": inwc(0.45),
            "system_airflow": cfm(1000),
            "statics": tuple(map(inwc, DATA["fan"]["static"])),
            "airflows": tuple(map(cfm, DATA["fan"]["airflow"])),
        },
    )
    solved = solve_network(
        [
            Link("blower", "in", "out", fan=fan()),
            Link("ducts", "out", ROOM, (Power(inwc(0.45), cfm(1000)),)),
            Link("back", ROOM, "in", (Power(1e-9, cfm(1000)),)),
        ]
    )

    assert solved.flow["blower"] == pytest.approx(point["airflow"], rel=1e-9)
    assert solved.fan_rise == pytest.approx(point["static"], rel=1e-8)


def test_duct_and_damper_of_the_network_are_those_of_the_bench():
    """The link's duct and damper give the drops that the registry's computations give."""
    flow, inches = cfm(400), to_si(10, "in")
    area = math.pi / 4 * inches**2

    assert Duct(inches, 30.48).at(flow)[0] == pytest.approx(
        call("duct_friction", {"airflow": flow, "diameter": inches, "length": 30.48})
    )
    assert Damper(inches, 0.4).at(flow)[0] == pytest.approx(
        call("fitting_loss", {"coefficient": call("damper_loss", {"opening": 0.4}), "velocity": flow / area})
    )


def test_a_part_that_leads_nowhere_gets_a_sentence():
    """A dead end, or a fan that nothing returns to, is no crash."""
    with pytest.raises(NotSolved):
        solve_network([Link("blower", "in", "out", fan=Constant(0.4))])
    with pytest.raises(ValueError, match="one name"):
        solve_network([Link("a", ROOM, "x", (Power(1, 1),)), Link("a", "x", ROOM, (Power(1, 1),))])


def test_the_answer_in_words_carries_the_numbers():
    """One paragraph for each zone, with flows, static, velocities and what passes the shut dampers."""
    state = next(s for s in DATA["states"] if s["state"] == "A calls with leaking class III dampers")
    said = zone_words(published(state), "A")

    assert said == (
        "With A open alone the blower moves 780 cfm against 0.69 in. w.c. total external static; the plenum "
        "stands at 0.57 in. w.c. It gets A 756 cfm at 963 fpm. Past all shut dampers together go 24 cfm."
    )
    assert set(survey_words(published(state))) == {"A", "B", "C"}


def test_ducts_that_can_never_carry_it_are_told():
    """Wanted against what the ducts carry at the rated static: 992.5 x sqrt(0.5 / 0.443) is 1054 cfm."""
    h = published(DATA["states"][0])

    assert "carry 1054 cfm" in capacity_words(h, cfm(1400), inwc(0.5))
    assert "can never move that much air" in capacity_words(h, cfm(1400), inwc(0.5))
    assert capacity_words(h, cfm(1000), inwc(0.5)).endswith("enough.")


HOUSE = yaml.safe_load((FOLDER / "trade_house.yaml").read_text(encoding="utf-8"))


def duct_of(part: dict) -> Duct:
    return Duct(to_si(part["diameter"], "in"), to_si(part["length"], "ft"), part["k"])


def power_of(part: dict) -> Power:
    return Power(inwc(part["drop"]), cfm(part["airflow"]), part["exponent"])


@pytest.mark.parametrize("state", HOUSE["states"], ids=lambda s: s["state"].replace(" ", "-"))
def test_a_house_of_real_ducts_solved_outside(state):
    """Trunks, eight runs, filter, coil, dampers and bypass as scipy and fluids solve them (oracle): 0.002 %
    and a thousandth of a cfm; the outside answer is kept to 0.0001 cfm, and viscosity and density agree to
    seven digits.
    """
    table = Table(
        tuple(zip(map(inwc, HOUSE["fan"]["static"]), map(cfm, HOUSE["fan"]["airflow"]), strict=True))
    )
    branches = tuple(
        Branch(
            b["name"],
            (duct_of(b), power_of(HOUSE["grille"])),
            b["zone"],
            to_si(b["diameter"], "in"),
            1.0 if b["zone"] in state["open"] else 0.0,
            b["trunk"],
        )
        for b in HOUSE["branches"]
    )
    solved = run(
        House(
            table,
            (duct_of(HOUSE["return"]),),
            (power_of(HOUSE["filter"]),),
            (power_of(HOUSE["coil"]),),
            branches,
            {name: (duct_of(t),) for name, t in HOUSE["trunks"].items()},
            (power_of(HOUSE["bypass"]),) if state["bypass"] else None,
        )
    )

    names = {"return": "return duct"}
    for name, flow in state["flows"].items():
        got = from_si(solved.flow[names.get(name, name)], "cfm")
        assert got == pytest.approx(flow, rel=2e-5, abs=1e-3)
    assert from_si(solved.fan_rise, "inwc") == pytest.approx(state["tesp"], rel=2e-5)
    assert from_si(solved.pressure["plenum"], "inwc") == pytest.approx(state["plenum"], rel=2e-5)
