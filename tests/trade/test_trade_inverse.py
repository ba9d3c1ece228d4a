"""Computations that undo each other do so over their whole range; units of any kind commute with them."""

from __future__ import annotations

import random

import pytest

from assistant.trade.registry import REGISTRY, call
from assistant.trade.unit import to_si

PAIRS = [
    # computation, the argument it is solved for, the inverse, its argument that takes the result
    ("capacitor_amps", "capacitance", "capacitance", "amps"),
    ("airflow_from_rise", "heat", "heat_from_airflow", "airflow"),
    ("rise_from_airflow", "heat", "heat_from_airflow", "rise"),
    ("airflow_from_rise", "rise", "rise_from_airflow", "airflow"),
    ("velocity_pressure", "velocity", "velocity_from_pressure", "pressure"),
    ("friction_rate", "airflow", "duct_flow", "rate"),
    ("friction_rate", "diameter", "duct_size", "rate"),
    ("equivalent_diameter", "width", "rectangular_width", "diameter"),
    ("co2_from_o2", "o2", "o2_from_co2", "co2"),
    ("clocked_input", "seconds", "dial_seconds", "plate"),
    ("voltage_drop_percent", "length", "longest_run", "drop"),
    ("system_static", "new_airflow", "system_flow", "new_static"),
    ("discharge_time", "resistance", "discharge_resistor", "seconds"),
]


def near(a, chance: random.Random):
    """A value within a quarter of the argument's example, where a pair's two ranges overlap."""
    return a.example if a.choices else min(a.high, max(a.low, a.example * chance.uniform(0.8, 1.25)))


@pytest.mark.parametrize(("there", "argument", "back", "carries"), PAIRS, ids=lambda x: x)
def test_the_inverse_inverts(there, argument, back, carries):
    """f then g gives what f began with, for 40 values around each example (rounding only: 1e-9)."""
    chance = random.Random(there + back)
    shared = {a.name for a in REGISTRY[back].arguments} - {carries}
    for _ in range(40):
        values = {a.name: near(a, chance) for a in REGISTRY[there].arguments}
        result = call(there, values)

        got = call(back, {**{k: v for k, v in values.items() if k in shared}, carries: result})

        assert got == pytest.approx(values[argument], rel=1e-9)


@pytest.mark.parametrize(
    ("name", "usual", "other"),
    [
        (
            "airflow_from_rise",
            {"heat": (64_000, "Btuh"), "rise": (60, "Fdiff"), "altitude": (5000, "ft")},
            {"heat": (18.756548491, "kW"), "rise": (33.33333333333, "K"), "altitude": (1524, "m")},
        ),
        (
            "clocked_input",
            {"dial": (1, "ft3"), "seconds": (60, "s"), "heating_value": (1000, "btuft3")},
            {"dial": (0.028316846592, "m3"), "seconds": (1, "min"), "heating_value": (37.258945811, "MJm3")},
        ),
        (
            "heat_rise",
            {"supply": (122, "F"), "return_air": (68, "F")},
            {"supply": (50, "C"), "return_air": (20, "C")},
        ),
        (
            "duct_flow",
            {"diameter": (10, "in"), "rate": (0.08, "inwc100ft")},
            {"diameter": (254, "mm"), "rate": (0.653776666667, "Pam")},
        ),
    ],
)
def test_units_commute(name, usual, other):
    """The same reading in another unit is the same answer (its numbers are typed to ten digits)."""
    one = call(name, {k: to_si(*v) for k, v in usual.items()})
    two = call(name, {k: to_si(*v) for k, v in other.items()})

    assert two == pytest.approx(one, rel=1e-8)
