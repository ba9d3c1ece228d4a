"""The registry keeps its word: signatures, ranges, directions, bounds, formulas and errors of every
computation.
"""

from __future__ import annotations

import ast
import inspect
import math
import random
import re
import sys
from pathlib import Path

import pytest

from assistant.quantity.interval import Interval
from assistant.quantity.kind import KINDS
from assistant.trade.entry import ANY, CHOICE, MARKS, TEXT, ArgumentError, example_text, range_text
from assistant.trade.registry import REGISTRY, TOPICS, call, explain, on_intervals
from assistant.trade.unit import from_si, known, to_si

ENTRIES = list(REGISTRY.values())
OWN_KINDS = {ANY, CHOICE, TEXT, "words", "ratio", "energy", "density", "sensible_factor", "friction_rate",
             "fan_power", "mass_flow"}  # fmt: skip
"""Kinds that only formulas speak; everything else is a kind that a reading can be."""
ONE_NUMBER = [e for e in ENTRIES if not e.results]
DIRECTED = [(e, a) for e in ONE_NUMBER for a in e.arguments if a.sense is not None]


TRIES = 4000
"""Values that contradict each other are drawn again, so often at most."""


def examples(entry) -> dict[str, object]:
    return {a.name: a.example for a in entry.arguments}


def one(a, chance: random.Random) -> float:
    """Somewhere in the argument's range, its ends and its lower decades as likely as its middle."""
    pick = chance.randrange(4)
    if pick == 0:
        return chance.choice((a.low, a.high))
    if pick == 1:
        return a.low + (a.high - a.low) * 10 ** chance.uniform(-6, 0)
    return chance.uniform(a.low, a.high)


def anything(a, chance: random.Random):
    """Anything that the argument may be."""
    if a.choices:
        return chance.choice(a.choices)
    if a.many:
        return tuple(one(a, chance) for _ in range(chance.randint(1, 5)))
    return one(a, chance) * (chance.choice((1, -1)) if a.unsigned else 1)


def numbers_of(outcome) -> list:
    """Everything that came out, lists taken apart."""
    several = outcome.values() if isinstance(outcome, dict) else [outcome]
    return [n for value in several for n in (value if isinstance(value, tuple) else (value,))]


def named(entry):
    return entry.name


@pytest.mark.parametrize("entry", ENTRIES, ids=named)
def test_the_declaration_is_the_function(entry):
    """Arguments stand in the order of the function's own, each with words and a valid example; the docstring
    is a specification: ranges, and where the formula comes from.
    """
    named = list(inspect.signature(entry.function).parameters)
    assert named in ([a.name for a in entry.arguments], ["given"])
    assert "Source:" in entry.function.__doc__
    assert "Range:" in entry.function.__doc__ or "Range as" in entry.function.__doc__
    assert entry.source.mark in MARKS
    assert entry.title[0].isupper()
    for a in entry.arguments:
        assert a.words
        assert a.kind in KINDS or a.kind in OWN_KINDS
        assert a.choices or known(a.unit) or a.unit == ""
        assert a.sense in (1, -1, 0, None)
    for result in (entry.results or {"": entry.result}).values():
        assert result.kind in KINDS or result.kind in OWN_KINDS
        assert result.unit == "" or known(result.unit)
        if result.kind in KINDS and result.unit in KINDS[result.kind].units:
            continue
        assert result.kind in OWN_KINDS or result.unit in ("percent", "C", "uA", "F"), result


@pytest.mark.parametrize("entry", ENTRIES, ids=named)
def test_the_example_works(entry):
    """Every example gives a finite answer, by the function, by name, and explained with the numbers in it."""
    outcome = call(entry.name, examples(entry))

    assert all(isinstance(n, str) or math.isfinite(n) for n in numbers_of(outcome))
    assert entry.function(*examples(entry).values()) == outcome
    assert entry.formula in explain(entry.name, examples(entry))
    assert "{" not in explain(entry.name, examples(entry))


def test_every_computation_of_every_topic_is_listed():
    """No function declared in a topic module is missing from the registry, and no name is used twice."""
    declared = [
        value.entry.name
        for topic in TOPICS
        for value in vars(topic).values()
        if hasattr(value, "entry") and value.__module__ == topic.__name__
    ]

    assert sorted(declared) == sorted(REGISTRY)
    assert len(declared) == len(set(declared))


@pytest.mark.parametrize(("entry", "a"), DIRECTED, ids=lambda x: x.name)
def test_the_result_follows_each_argument_as_declared(entry, a):
    """With all else held, the result never falls (+1), never rises (-1) or does not move (0) as the argument
    rises: 40 pairs for each argument, the same on every run."""
    chance, seen = random.Random(f"{entry.name} {a.name}"), 0
    for _ in range(TRIES):
        if seen == 40:
            break
        base = {b.name: anything(b, chance) for b in entry.arguments}
        there = anything(a, chance)
        if a.many:
            there = (there[0], *base[a.name][1:])
        low, high = sorted(
            (base[a.name], there), key=lambda v: abs(v[0] if a.many else v) if a.unsigned else v
        )
        try:
            below = call(entry.name, {**base, a.name: low})
            above = call(entry.name, {**base, a.name: high})
        except ArgumentError:
            continue  # values that contradict each other: the sentence is tested elsewhere
        seen += 1
        slack = 1e-9 * max(abs(below), abs(above))  # rounding of long formulas, far below any reading's digit
        if a.sense == 1:
            assert above >= below - slack, (base, there)
        elif a.sense == -1:
            assert above <= below + slack, (base, there)
        else:
            assert above == below
    assert seen == 40


@pytest.mark.parametrize("entry", [e for e in ONE_NUMBER if e.enclose or e.monotone], ids=named)
def test_the_bound_holds_every_result(entry):
    """Any values inside the intervals give a result inside the bound: 40 boxes, the same on every run."""
    chance, seen = random.Random(entry.name), 0
    for _ in range(TRIES):
        if seen == 40:
            break
        spans, inside = {}, {}
        for a in entry.arguments:
            if a.choices:
                spans[a.name] = inside[a.name] = anything(a, chance)
                continue
            ends = [
                sorted((one(a, chance), one(a, chance))) for _ in range(chance.randint(1, 4) if a.many else 1)
            ]
            items = tuple(Interval(low, high) for low, high in ends)
            points = tuple(chance.choice((low, high, chance.uniform(low, high))) for low, high in ends)
            spans[a.name], inside[a.name] = (items, points) if a.many else (items[0], points[0])
        try:
            bound, result = on_intervals(entry.name, spans), call(entry.name, inside)
        except ArgumentError:
            continue
        seen += 1
        slack = 1e-9 * max(abs(result), abs(bound.lo), abs(bound.hi))
        assert bound.lo - slack <= result <= bound.hi + slack, inside
    assert seen == 40


@pytest.mark.parametrize("entry", ONE_NUMBER, ids=named)
def test_an_exact_reading_gives_an_exact_bound(entry):
    """Intervals of width zero give the plain result: nothing is widened on the way."""
    exact = {
        name: v
        if isinstance(v, str)
        else tuple(map(Interval.exact, v))
        if isinstance(v, tuple)
        else Interval.exact(v)
        for name, v in examples(entry).items()
    }

    bound = on_intervals(entry.name, exact)

    assert bound.middle == pytest.approx(call(entry.name, examples(entry)), rel=1e-12)
    assert bound.width <= 1e-12 * abs(bound.hi)


def test_a_span_without_a_direction_is_refused_by_name():
    """A width on an argument that follows no one direction is no silent guess: the sentence names the
    argument.
    """
    with pytest.raises(ArgumentError, match=r"'exponent'.*direction"):
        on_intervals(
            "system_static",
            {
                "static": Interval.exact(100),
                "airflow": Interval.exact(0.5),
                "new_airflow": Interval.exact(0.4),
                "exponent": Interval(1.9, 2.0),
            },
        )


def test_over_range_never_enters_a_computation():
    """A reading known only to be above the meter's range has no end and is refused with a sentence."""
    with pytest.raises(ArgumentError, match="no end"):
        on_intervals(
            "winding_unbalance",
            {"first": Interval(4e7, math.inf), "second": Interval.exact(3), "third": Interval.exact(3)},
        )


def test_a_display_of_nought_is_not_refused_for_half_a_count():
    """0.00 A plus or minus half a count begins at zero, not below it."""
    assert on_intervals(
        "transformer_load_va", {"amps": Interval(-0.005, 0.005), "volts": Interval.exact(24)}
    ) == (Interval(0.0, 0.12))


@pytest.mark.parametrize("entry", ENTRIES, ids=named)
def test_every_argument_is_guarded_by_a_sentence(entry):
    """Out of range, no number, missing, surplus: a sentence with the argument, its range and an example each
    time.
    """
    for a in entry.arguments:
        bad = ["nonsense"] if a.choices else [math.nan, math.inf, "12", True, None]
        if a.kind == TEXT:
            bad = [12.0, None]
        elif not a.choices:
            bad += [a.high + 1 + abs(a.high)] + ([] if a.unsigned else [a.low - 1 - abs(a.low)])
        if a.many:
            bad = [(b,) for b in bad] + [()]
        for value in bad:
            with pytest.raises(ArgumentError) as refused:
                call(entry.name, {**examples(entry), a.name: value})
            said = str(refused.value)
            assert f"'{a.name}'" in said
            assert range_text(a) in said
            assert example_text(a) in said
            assert refused.value.argument is a
        if a.default is None:
            with pytest.raises(ArgumentError, match=rf"'{a.name}'.*missing"):
                call(entry.name, {k: v for k, v in examples(entry).items() if k != a.name})
    with pytest.raises(ArgumentError, match="frobnication"):
        call(entry.name, {**examples(entry), "frobnication": 1.0})


@pytest.mark.parametrize("entry", ENTRIES, ids=named)
def test_limits_at_the_ends(entry):
    """At both ends of each range the answer is a number, or a sentence where values contradict each other."""
    for a in entry.arguments:
        for end in a.choices or (a.low, a.high):
            try:
                outcome = call(entry.name, {**examples(entry), a.name: (end,) if a.many else end})
            except ArgumentError:
                continue
            assert not any(isinstance(n, float) and math.isnan(n) for n in numbers_of(outcome))


def test_an_unknown_name_gets_the_nearest():
    """A slip of the key in a computation's name gets the names that are near."""
    with pytest.raises(ArgumentError, match="heat_rise"):
        call("heat_rize", {})


IN_WORDS = {
    "probability_under", "probability_between", "false_accept",
    "winding_unbalance", "unbalance", "control_load_percent", "ghost_volts", "unbalance_derating",
    "capacitors_parallel", "capacitors_series", "largest_overcurrent_device", "device_for_load",
    "branch_load", "wire_insulation_at_60", "traverse_flow", "blower_airflow", "friction_factor",
    "duct_flow", "ducts_carry",
    "duct_size", "rectangular_width", "available_static",
    "mitred_elbow", "round_elbow", "damper_loss",
    "closed_damper_loss", "bypass_flow", "altitude_derate", "derated_input", "flue_dew_point", "least_draft",
}  # fmt: skip
"""Computations whose formula is a sentence: tables, lists, roots."""


@pytest.mark.parametrize("entry", ONE_NUMBER, ids=named)
def test_the_formula_gives_what_the_function_gives(entry):
    """The printed formula, worked out in display units, is the function (constants printed to four digits:
    0.3 %).
    """
    text = entry.template
    full = examples(entry)
    for a in entry.arguments:
        if not a.choices and not a.many:
            value = abs(full[a.name]) if a.unsigned else full[a.name]
            text = text.replace("{" + a.name + "}", f"({from_si(value, a.unit)!r})")
    for key, (function, unit, _) in entry.where.items():
        text = text.replace("{" + key + "}", f"({from_si(function(**full), unit)!r})")
    text = text.replace("×", "*").replace("^", "**")
    words = set(re.findall(r"[a-zA-Z_]{2,}", text)) - {"sqrt", "abs", "exp", "ln"}
    assert (entry.name in IN_WORDS) == bool(words or "," in text or "µ" in text)
    if entry.name in IN_WORDS:
        return

    got = eval(text, {"__builtins__": {}}, {"sqrt": math.sqrt, "abs": abs, "exp": math.exp, "ln": math.log})

    assert got == pytest.approx(from_si(call(entry.name, full), entry.result.unit), rel=3e-3, abs=1e-9)


def test_explained_in_one_line():
    """The formula, the numbers, the answer with its unit."""
    assert explain("heat_rise", {"supply": to_si(120, "F"), "return_air": to_si(68, "F")}) == (
        "heat rise = supply - return air = 120 - 68 = 52 °F"
    )
    assert explain(
        "difference",
        {"first": to_si(7.2, "inwc"), "second": to_si(6.8, "inwc")},
        {"first": "inwc", "second": "inwc"},
        "inwc",
    ) == ("difference = first - second = 7.2 - 6.8 = 0.4 in. w.c.")


def test_the_bench_stands_on_the_standard_library():
    """No module of the trade imports anything but Python's own library and the rooms below it."""
    folder = Path(inspect.getfile(REGISTRY["heat_rise"].function.__wrapped__)).parent
    for path in folder.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            names = (
                [a.name for a in node.names]
                if isinstance(node, ast.Import)
                else ([node.module] if isinstance(node, ast.ImportFrom) else [])
            )
            for name in names:
                top, _, rest = name.partition(".")
                assert top in sys.stdlib_module_names or rest.partition(".")[0] in ("trade", "quantity"), path
