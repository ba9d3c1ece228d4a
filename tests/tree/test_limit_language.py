"""Limits: what they read, what they refuse, and what they come to on intervals."""

import math
from fractions import Fraction

import pytest

from assistant.house.place import Place
from assistant.quantity.interval import Interval
from assistant.quantity.kind import to_si
from assistant.tree.limits import BadLimit, evaluate, parse_limit, parse_quantity

PLACE = Place("complaint/x.yaml", 7, 20)


def limit(text):
    return parse_limit(text, PLACE)


def value(text, unit="V", **env):
    return evaluate(limit(text), env, unit)


def refusal(text):
    with pytest.raises(BadLimit) as caught:
        limit(text)
    return caught.value.problem(PLACE)


def test_a_limit_keeps_its_text_its_place_and_what_it_uses():
    read = limit("0.9 * supply_volts - heat_rise(warm, cold) / heat_rise(cold, warm) + supply_volts")
    assert read.text.startswith("0.9 *")
    assert read.place == PLACE
    assert read.names == ("supply_volts", "warm", "cold")
    assert read.functions == ("heat_rise",)
    assert not read.plain
    assert limit("-(low - -high) * heat_rise(-warm, 2 / cold)").names == ("low", "high", "warm", "cold")
    assert limit("-heat_rise(warm, cold)").functions == ("heat_rise",)
    assert not limit("-(2 V)").plain


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("12", 12),
        ("0.5", 0.5),
        ("1e3", 1000),
        ("1.5E-3", 0.0015),
        ("-3", -3),
        ("--3", 3),
        ("2 + 3 * 4", 14),
        ("(2 + 3) * 4", 20),
        ("2 - 3 - 4", -5),
        ("24 / 4 / 2", 3),
        ("-(2 + 1)", -3),
        ("2 * -3", -6),
        ("0", 0),
        ("1/3", 1 / 3),
        ("0.1 + 0.2", 0.3),
        ("  7 ", 7),
        ("1\n+ 1", 2),
    ],
)
def test_plain_numbers_are_in_the_unit_of_the_reading(text, number):
    assert limit(text).plain
    assert value(text, "V") == Interval.exact(number)
    assert value(text, "mV") == Interval.exact(to_si(number, "mV"))


@pytest.mark.parametrize(
    ("text", "unit", "si"),
    [
        ("5 V", "V", 5.0),
        ("5V", "V", 5.0),
        ("500 mV", "V", 0.5),
        # NIST SP 811 (2008), appendix B.8: inch of water (conventional) 2.490 889 E+02 Pa.
        ("1 inwc", "Pa", 249.08891),
        # NIST SP 811 (2008), section B.9 and ITS-90: 32 F = 273.15 K, 1 F difference = 5/9 K.
        ("32 F", "C", 273.15),
        ("-40 F", "C", 233.15),
        ("-40 C", "F", 233.15),
        ("9 Fdiff", "K", 5.0),
        ("90 percent", "percent", 0.9),
        ("2 min", "s", 120.0),
    ],
)
def test_a_number_with_a_unit_is_that_in_any_reading(text, unit, si):
    assert not limit(text).plain
    got = value(text, unit)
    assert got.lo == got.hi == pytest.approx(si, rel=1e-12)


def test_a_limit_and_the_same_number_typed_are_the_same_float():
    assert value("0.85 * v", v=Interval.exact(24.0)).lo == 20.4
    assert value("1.1 * v", v=Interval.exact(120.0)).lo == 132.0
    assert value("0.1 inwc", "inwc").lo == to_si(0.1, "inwc") == value("0.1", "inwc").lo
    assert value("68", "F").lo == to_si(68, "F")


def test_names_are_intervals():
    v = Interval(110, 120)
    assert value("0.9 * v", v=v) == Interval(99, 108)
    assert value("v - 10 V", v=v) == Interval(100, 110)
    assert value("120 V - v", v=v) == Interval(0, 10)
    assert value("-v", v=v) == Interval(-120, -110)
    assert value("v / 2", v=v) == Interval(55, 60)
    assert value("v * w", v=Interval(-1, 2), w=Interval(-3, 4)) == Interval(-6, 8)
    assert value("v / w", v=Interval(1, 2), w=Interval(4, 5)) == Interval(0.2, 0.5)


def test_what_can_not_be_known_is_anything():
    anything = Interval(-math.inf, math.inf)
    assert value("v") == anything
    assert value("5 / v", v=Interval(-1, 1)) == anything
    assert value("5 / v", v=Interval(0, 1)) == anything
    assert value("1 / 0") == anything
    assert value("1 / 0 * 0") == anything
    assert value("0 * (1 / v)", v=Interval(-1, 1)) == anything
    top, bottom = Interval(math.inf, math.inf), Interval(-math.inf, -math.inf)
    assert value("v + w", v=top, w=bottom) == anything
    assert value("v + w", v=bottom, w=top) == anything
    assert value("v + w", v=top, w=top) == top
    assert value("v - w", v=bottom, w=top) == bottom
    assert value("heat_rise(a, b)", "K", a=Interval(300, 9000), b=Interval(290, 290)) == anything
    assert value("no_such(a)", a=Interval(1, 2)) == anything
    assert value("supply_impedance(a, a, a)", a=Interval(1, 2)) == anything


def test_infinite_ends_stay_outwards():
    ol = Interval(40.0, math.inf)
    assert value("r + 1", r=ol) == Interval(41, math.inf)
    assert value("r * 2", r=ol) == Interval(80, math.inf)
    assert value("r * -2", r=ol) == Interval(-math.inf, -80)
    assert value("r - r", r=ol) == Interval(-math.inf, math.inf)
    assert value("r * 0", r=ol) == Interval(0, 0)
    assert value("1 / r", r=ol) == Interval(0, 0.025)


def test_the_greatest_numbers_end_outwards_and_never_raise():
    big = Interval.exact(1e308)
    got = value("v * v", v=big)
    assert got.hi == math.inf
    assert got.lo > 1e308
    assert value(" * ".join(["v"] * 50), v=big).hi == math.inf
    assert value("-v * v", v=big).lo == -math.inf
    assert value("*".join(["1e12"] * 50)).hi == math.inf


def test_functions_of_the_registry_are_bounded_over_their_intervals():
    # Definition of temperature rise: supply less return.
    got = value("heat_rise(a, b)", "K", a=Interval(320, 330), b=Interval(290, 291))
    assert (got.lo, got.hi) == (pytest.approx(29), pytest.approx(40))
    # Plate rating over volts: 40 VA at 24 V is 1.667 A, handbook arithmetic I = S / V.
    assert value("transformer_load_amps(va, 24 V)", "A", va=Interval.exact(40.0)).lo == pytest.approx(
        1.6667, abs=1e-4
    )


@pytest.mark.parametrize(
    ("text", "column", "words"),
    [
        ("", 20, "missing"),
        ("5 +", 23, "missing"),
        ("* 5", 20, "missing before '*'"),
        ("()", 21, "missing"),
        ("(5", 20, "not closed"),
        ("5)", 21, "without its ("),
        ("f(5", 21, "not closed"),
        ("f(5,", 24, "missing"),
        ("a b", 22, "a sign is missing"),
        ("(a) 5", 24, "a sign is missing"),
        ("f(a b)", 24, "a sign or a )"),
        ("5 volts", 22, "write 'V'"),
        ("5 Vlts", 22, "no unit"),
        ("5 in.w.c.", 24, "can't stand"),
        ("3 supply_volts", 22, "write a *"),
        ("5 %", 22, "percent"),
        ("70 °F", 23, "write F"),
        ("2 ** 3", 22, "'**'"),
        ("2 // 3", 22, "'//'"),
        ("2 ^ 3", 22, "powers"),
        ("a < b", 22, "'under'"),
        ("a == b", 22, "'under'"),
        (">5", 20, "'under'"),
        ("017", 20, "write 17"),
        ("1_000", 21, "write 1000"),
        ("1,000", 21, "write 1000"),
        (".5", 20, "0.5"),
        ("5.", 21, "0.5"),
        ("0x1F", 21, "no unit"),
        ("1e999", 20, "numbers lie between"),
        ("9" * 40, 20, "no number"),
        ("1e-99", 20, "numbers lie between"),
        ("1e99999999999999", 20, "numbers lie between"),
        ("a.b", 21, "can't stand"),
        ("a[0]", 21, "can't stand"),
        ("'a'", 20, "no quotes"),
        ("$circuit", 20, "circuit"),
        ("−5", 20, "keyboard"),
        ("2 × 3", 22, "write *"),
        ("a\x00", 21, "can't stand"),
        ("é", 20, "can't stand"),
        ("5 V V", 24, "a sign is missing"),
        ("+5", 20, "missing before '+'"),
        ("inf", 20, ""),
        ("5 # c", 22, "can't stand"),
        ("__import__('os')", 31, "no quotes"),
        ("lambda: 5", 26, "can't stand"),
        ("a if b else c", 22, "sign is missing"),
    ],
)
def test_what_a_limit_can_not_be_is_said_where_it_stands(text, column, words):
    if text == "inf":
        assert limit(text).names == ("inf",)  # a name like any other, which no tree knows
        return
    problem = refusal(text)
    assert (problem.file, problem.line) == ("complaint/x.yaml", 7)
    assert problem.column == column
    assert words in problem.message
    assert problem.rule in ("limit", "number", "unit")


@pytest.mark.parametrize(
    "text",
    [
        "(" * 5000 + "1" + ")" * 5000,
        "-" * 10_000 + "1",
        "f(" * 2000 + "1" + ")" * 2000,
        "1" + "+1" * 100_000,
        "a" * 1_000_000,
        "9" * 1_000_000,
        "(" * 21 + "1" + ")" * 21,
        "- " * 25 + "a",
        "1" + "+1" * 60,
        "1e" + "9" * 200,
        "9" * 290 + "e9",
    ],
)
def test_long_deep_and_huge_limits_end_in_an_error(text):
    assert len(refusal(text).message) < 300


def test_the_deepest_limit_is_worked_out():
    assert value("(" * 20 + "1" + ")" * 20) == Interval.exact(1)
    assert value("+".join(["1"] * 50)) == Interval.exact(50)
    assert value("-" * 20 + "v", v=Interval.exact(3)) == Interval.exact(3)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("5 min", (5.0, "min")),
        ("-0.1 inwc", (-0.1, "inwc")),
        ("20", (20.0, "count")),
        ("60  Hz", (60.0, "Hz")),
        ("5 minutes", None),
        ("five", None),
        ("", None),
        ("5 V V", None),
        ("1e999 V", None),
        ("V", None),
        ("017 V", None),
    ],
)
def test_a_quantity_of_a_tree_file(text, expected):
    assert parse_quantity(text) == expected


EXTREMES = (-math.inf, -1e308, -1.0, 0.0, 1e-300, 1.0, 1e308, math.inf)
SPANS = [Interval(low, high) for low in EXTREMES for high in EXTREMES if low <= high]


@pytest.mark.parametrize(
    "text", ["a + b", "a - b", "a * b", "a / b", "-a", "a * b - b / a", "a - b + a", "1 / a * b"]
)
def test_at_the_extremes_every_possible_value_is_inside(text):
    read = limit(text)
    for a in SPANS:
        for b in SPANS:
            got = evaluate(read, {"a": a, "b": b}, "V")
            assert got.lo <= got.hi
            for x in {a.lo, a.hi} - {math.inf, -math.inf}:
                for y in {b.lo, b.hi} - {math.inf, -math.inf}:
                    try:
                        exact = eval(text, {"a": Fraction(repr(x)), "b": Fraction(repr(y))})
                    except ZeroDivisionError:
                        continue
                    slack = abs(exact) / 10**15 + Fraction(1, 10**310)
                    assert got.lo == -math.inf or Fraction(got.lo) - slack <= exact, (a, b, got)
                    assert got.hi == math.inf or exact <= Fraction(got.hi) + slack, (a, b, got)
