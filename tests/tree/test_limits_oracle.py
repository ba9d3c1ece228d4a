"""Limits against Python's own grammar and its fractions: an oracle that shares no code with them."""

import ast
import operator
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.house.place import Place
from assistant.quantity.interval import Interval
from assistant.tree.limits import BadLimit, evaluate, parse_limit, unit_of

PLACE = Place("f", 1, 1)
NAMES = ("a", "b", "c")
WORK = {ast.Add: operator.add, ast.Sub: operator.sub, ast.Mult: operator.mul, ast.Div: operator.truediv}

numbers = st.decimals(min_value=0, max_value=9999, places=2, allow_nan=False).map(
    lambda d: format(d.normalize(), "f")
)
expressions = st.recursive(
    numbers | st.sampled_from(NAMES),
    lambda inner: (
        st.builds("{} {} {}".format, inner, st.sampled_from("+-*/"), inner)
        | st.builds("({})".format, inner)
        | st.builds("-{}".format, inner)
        | st.builds("({} {} {})".format, inner, st.sampled_from("+-*/"), inner)
    ),
    max_leaves=12,
)
values = st.decimals(min_value=-500, max_value=500, places=2, allow_nan=False).map(float)


def python_says(text: str, env: dict[str, Fraction]) -> Fraction | None:
    """The same text by Python's grammar (precedence and association), in fractions; None where it divides by
    0.
    """

    def work(node: ast.expr) -> Fraction:
        if isinstance(node, ast.Constant):
            return Fraction(ast.get_source_segment(text, node))
        if isinstance(node, ast.Name):
            return env[node.id]
        if isinstance(node, ast.UnaryOp):
            return -work(node.operand)
        return WORK[type(node.op)](work(node.left), work(node.right))

    try:
        return work(ast.parse(text, mode="eval").body)
    except ZeroDivisionError:
        return None


@settings(max_examples=400)
@given(expressions, st.tuples(values, values, values))
def test_on_single_values_it_is_the_rounded_fraction(text, given_values):
    env = dict(zip(NAMES, given_values, strict=True))
    expected = python_says(text, {name: Fraction(repr(value)) for name, value in env.items()})
    try:
        limit = parse_limit(text, PLACE)
    except BadLimit:
        assert text.count("-") > 20 or text.count("(") > 20  # nested deeper than a limit may be
        return
    got = evaluate(limit, {name: Interval.exact(value) for name, value in env.items()}, "V")
    if expected is None:
        assert not got.finite
    else:
        assert got == Interval.exact(float(expected))


@settings(max_examples=400)
@given(
    expressions,
    st.tuples(*[st.tuples(values, values)] * 3),
    st.tuples(*[st.fractions(0, 1, max_denominator=20)] * 3),
)
def test_on_intervals_it_holds_every_value_inside(text, ends, shares):
    spans = [tuple(sorted(pair)) for pair in ends]
    inside = [
        Fraction(repr(low)) + share * (Fraction(repr(high)) - Fraction(repr(low)))
        for (low, high), share in zip(spans, shares, strict=True)
    ]
    expected = python_says(text, dict(zip(NAMES, inside, strict=True)))
    try:
        limit = parse_limit(text, PLACE)
    except BadLimit:
        return
    got = evaluate(limit, {name: Interval(*span) for name, span in zip(NAMES, spans, strict=True)}, "V")
    if expected is not None:
        slack = 1e-15 * abs(expected)
        assert got.lo - slack <= expected <= got.hi + slack


signs = st.text(alphabet="ab01.9eE+-*/(), Vf%_$'\"\\\x00é", max_size=60)
pieces = st.lists(
    st.sampled_from(
        [
            "a",
            "b",
            "1",
            "0.5",
            "1e9",
            "5 V",
            "70 F",
            "heat_rise(",
            "difference(",
            "(",
            ")",
            "+",
            "-",
            "*",
            "/",
            ",",
            " ",
            "inwc",
            "9" * 30,
            "1e-12",
            "supply",
        ]
    ),
    max_size=40,
).map("".join)


@settings(max_examples=400)
@given(signs | pieces | st.text(max_size=60))
def test_any_text_is_a_limit_or_bad(text):
    try:
        limit = parse_limit(text, PLACE)
        unit_of(limit, {"a": "ac_voltage", "b": "temperature", "supply": "temperature"})
    except BadLimit as bad:
        problem = bad.problem(PLACE)
        assert problem.message
        assert 1 <= problem.column <= len(text) + 1
    else:
        got = evaluate(limit, {"a": Interval(1, 2)}, "F")
        assert got.lo <= got.hi


@settings(max_examples=200)
@given(
    pieces,
    st.dictionaries(
        st.sampled_from(["a", "b", "supply"]),
        st.tuples(st.floats(allow_nan=False), st.floats(allow_nan=False)),
    ),
)
def test_evaluating_never_raises(text, ends):
    env = {name: Interval(min(pair), max(pair)) for name, pair in ends.items()}
    try:
        limit = parse_limit(text, PLACE)
    except BadLimit:
        return
    got = evaluate(limit, env, "C")
    assert got.lo <= got.hi
