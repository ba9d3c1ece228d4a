"""A sheet worked out from typed texts, found by a word, and drawn: the same answers as the computation
itself.
"""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.trade.entry import example_text
from assistant.trade.plotted import MAKERS, in_units, plot_of
from assistant.trade.registry import REGISTRY, call
from assistant.trade.search import find
from assistant.trade.sheet import work_out
from assistant.trade.systems import SI, SI_FOR, US, in_system, units_of
from assistant.trade.unit import from_si, known, to_si

ENTRIES = list(REGISTRY.values())


def typed(entry) -> dict[str, str]:
    return {a.name: example_text(a).partition("=")[2] for a in entry.arguments}


@pytest.mark.parametrize("entry", ENTRIES, ids=lambda e: e.name)
def test_typed_examples_give_what_the_function_gives(entry):
    """The texts through the sheet, and the values straight into the function: the same, in US units and
    SI.
    """
    worked = work_out(entry, typed(entry))
    outcome = call(entry.name, {a.name: a.example for a in entry.arguments})
    several = outcome if entry.results else {"result": outcome}

    assert worked.done, worked.problem or worked.missing
    for shown in worked.results:
        wanted = several[shown.key]
        if isinstance(wanted, float) and math.isfinite(wanted):
            assert shown.value == pytest.approx(wanted, rel=2e-3)  # examples are printed in four figures
        elif isinstance(wanted, str):
            assert shown.value == wanted
    assert work_out(entry, typed(entry), {}, SI).done


@pytest.mark.parametrize(
    ("name", "texts", "units", "said"),
    [
        ("heat_rise", {"supply": "120", "return_air": "20 C"}, {}, "heat rise 52 °F"),
        (
            "heat_rise",
            {"supply": "50", "return_air": "20"},
            {"supply": "C", "return_air": "C"},
            "heat rise 54 °F",
        ),
        ("difference", {"first": "7.2 inwc", "second": "6.8 inwc"}, {}, "difference 0.4 in. w.c."),
        ("difference", {"first": "120", "second": "68"}, {"first": "F", "second": "F"}, "difference 52 °F"),
        ("unbalance", {"windings": "10, 10.4,9.9"}, {}, "unbalance 2.97 %"),
        ("unbalance", {"windings": "10 10.4 9.9"}, {}, "unbalance 2.97 %"),
        ("unbalance", {"windings": "462 V 463 V 455 V"}, {}, "unbalance 1.087 %"),
        ("duct_flow", {"diameter": "10", "rate": "0,08"}, {}, "carries 385.8 cfm"),
        ("clocked_input", {"dial": "1/2", "seconds": "29", "heating_value": "1000"}, {}, "input 62069 Btu/h"),
        ("capacitance", {"amps": "1.4", "volts": "370-380"}, {}, "capacitance 9.903 µF"),
        ("real_power", {"volts": "120", "amps": "0", "power_factor": "60"}, {}, "power 0 W"),
    ],
)
def test_as_a_technician_types(name, texts, units, said):
    assert work_out(REGISTRY[name], texts, units).said == said


@pytest.mark.parametrize(
    ("name", "texts", "needle"),
    [
        ("heat_rise", {"supply": "warm", "return_air": "68"}, "not a reading"),
        ("heat_rise", {"supply": "1,200", "return_air": "68"}, "thousands mark"),
        ("heat_rise", {"supply": "900", "return_air": "68"}, "from -40 to 400 °F"),
        ("heat_rise", {"supply": "OL", "return_air": "68"}, ""),
        ("difference", {"first": "7 V", "second": "3 A"}, "one kind"),
        ("difference", {"first": "lots", "second": "3"}, "no reading"),
        (
            "system_static",
            {"static": "1", "airflow": "900", "new_airflow": "800", "exponent": "1,500"},
            "1.500",
        ),
        (
            "system_static",
            {"static": "1", "airflow": "900", "new_airflow": "800", "exponent": "1/0"},
            "nought",
        ),
        ("unbalance", {"windings": "10,x"}, "no reading"),
        ("duct_system", {"diameters": "6,7", "lengths": "9", "zones": "1,1"}, "'lengths' has 1 values"),
        (
            "static_split",
            {"return_duct": ".5", "blower_inlet": ".2", "blower_outlet": "1", "supply_duct": ".2"},
            "exchanged",
        ),
    ],
)
def test_what_can_not_be_used_gets_a_sentence(name, texts, needle):
    worked = work_out(REGISTRY[name], texts)
    assert not worked.done
    assert needle in worked.problem
    assert worked.problem


def test_what_is_missing_is_named_and_usual_values_are_not():
    assert work_out(REGISTRY["heat_rise"], {"supply": "120"}).missing == ("return air",)
    assert work_out(REGISTRY["air_density"], {}).done


@settings(max_examples=150, deadline=None)
@given(st.sampled_from(["heat_rise", "difference", "unbalance", "duct_system", "system_static"]), st.data())
def test_no_text_ever_raises(name, data):
    """Any text in any field: worked out, missing, or a sentence."""
    entry = REGISTRY[name]
    text = st.text(max_size=12) | st.sampled_from(
        ["1e999", "-", "1/0", ",", "½", "1,000,000", "9" * 400, "nan"]
    )
    texts = {a.name: data.draw(text) for a in entry.arguments[:3]}
    worked = work_out(entry, texts)
    assert worked.done or worked.problem or worked.missing


def test_a_technician_types_amps():
    names = [entry.name for entry in find("amps")]
    assert {"capacitance", "motor_amps", "breaker_trip_window"} <= set(names)
    assert "heat_rise" not in names
    assert [e.name for e in find("capacitor amps")][:2] == ["capacitor_amps", "capacitance"]
    assert find("zzz") == []
    assert len(find("")) == len(REGISTRY)
    assert "heat_rise" in [e.name for e in find("rise blorp")]


@pytest.mark.parametrize("entry", ENTRIES, ids=lambda e: e.name)
def test_everything_is_found_by_its_own_title(entry):
    assert entry in find(entry.title)[:12]


def test_each_unit_of_one_system_measures_what_that_of_the_other_does():
    """The pair stands for the same quantity: there and back is where it began."""
    for us, si in SI_FOR.items():
        assert known(si)
        assert from_si(to_si(from_si(to_si(3.0, us), si), si), us) == pytest.approx(3.0)
    assert in_system("V", SI) == "V"
    assert units_of(REGISTRY["heat_rise"].argument("supply")) == ("F", "C")


PLOTTED = (
    "system_static", "system_flow", "operating_point", "duct_system", "static_left", "constant_airflow_watts",
    "duct_friction", "friction_rate", "duct_flow", "duct_size", "breaker_trip_window",
)  # fmt: skip


def test_what_is_plotted_is_tested():
    plot_of("heat_rise", {}, {})
    assert set(MAKERS) == set(PLOTTED)


@pytest.mark.parametrize("name", PLOTTED)
def test_a_plot_passes_through_the_reading(name):
    """The example's own place lies on one of the curves of its plot, in both systems of units."""
    entry = REGISTRY[name]
    values = {a.name: a.example for a in entry.arguments}
    outcome = call(name, values)
    plot = plot_of(name, values, outcome if isinstance(outcome, dict) else {"result": outcome})
    own = next(mark for mark in plot.marks if mark.own)

    assert plot.spoken
    assert plot.x.low <= own.x <= plot.x.high
    assert plot.y.low <= own.y <= plot.y.high
    assert min(distance(plot, curve, own) for curve in plot.curves) < 0.02
    si = in_units(plot, SI)
    mark = next(mark for mark in si.marks if mark.own)
    assert to_si(mark.x, si.x.unit) == pytest.approx(to_si(own.x, plot.x.unit))
    assert in_units(plot, US) == plot


def distance(plot, curve, mark) -> float:
    """The least distance of the mark from the curve's lines, as a share of the sheet."""

    def place(x, y):
        out = []
        for axis, value in ((plot.x, x), (plot.y, y)):
            if axis.log:
                out.append(math.log(max(value, axis.low / 10) / axis.low) / math.log(axis.high / axis.low))
            else:
                out.append((value - axis.low) / (axis.high - axis.low))
        return out

    px, py = place(mark.x, mark.y)
    best = math.inf
    for (a, b), (c, d) in zip(curve.points, curve.points[1:], strict=False):
        (x0, y0), (x1, y1) = place(a, b), place(c, d)
        length = (x1 - x0) ** 2 + (y1 - y0) ** 2
        t = min(1.0, max(0.0, ((px - x0) * (x1 - x0) + (py - y0) * (y1 - y0)) / length)) if length else 0.0
        best = min(best, math.hypot(px - x0 - t * (x1 - x0), py - y0 - t * (y1 - y0)))
    return best
