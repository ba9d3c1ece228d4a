"""A compute step may give a list, a word, and name one of several results."""

from __future__ import annotations

import math

import pytest

from assistant.quantity.kind import from_si, to_si
from assistant.trade.registry import call
from assistant.tree.library import from_texts
from assistant.tree.load import load_tree
from assistant.walk.event import Opened, PlateRead, Read, Typed
from assistant.walk.visit import asked, begin, fold
from tests.walk.small import AT, library

TREE = """
format: 1
purpose: complaint
title: Load of a list
start: loads
steps:
  loads:
    measure: The loads
    readings:
      first: {ask: First, quantity: apparent_power, unit: VA}
      second: {ask: Second, quantity: apparent_power, unit: VA}
    then: share
  share:
    compute: control_load_percent
    from: {loads: [first, second, 5 VA], rating: 40 VA}
    name: share
    bands:
      - {under: 80, is: within, then: ducts}
      - {is: over, then: ducts}
    source: custom
  ducts:
    compute: duct_system
    from: {diameters: [6 in, 8 in], lengths: [20 ft, 12 ft], zones: [1, 2], held: 900 cfm, open_zone: 1}
    gives: static
    name: alone
    then: end
  end: {stop: leave_the_house}
"""


@pytest.fixture(scope="module")
def visit():
    small = library()
    stops = next(iter(small.vocabulary.stops))
    text = TREE.replace("leave_the_house", stops)
    complaint = next(name for name, c in small.vocabulary.complaints.items() if c.tree)
    path = next(p for p in small.texts if p.endswith(f"{small.vocabulary.complaints[complaint].tree}.yaml"))
    made = from_texts({**small.texts, path: text.encode()})
    assert not made.problems, "\n".join(map(str, made.problems))
    visit = fold(begin(made), Opened(AT, ((complaint, complaint),)))
    while asked(visit).kind == "plate":
        visit = fold(visit, PlateRead(AT, asked(visit).plate, "120"))
    return fold(visit, Read(AT, asked(visit).step, {"first": Typed("10"), "second": Typed("20-22")}))


def test_each_reading_of_a_list_counts(visit):
    """(10 + 21 + 5) / 40 = 90 %, and the width of the one that wandered comes through: 1 / sqrt(3), twice."""
    record = next(r for r in visit.readings if r.name == "share")

    assert record.value.middle == pytest.approx(0.9)
    assert record.value.width == pytest.approx(2 * 2 * (1 / math.sqrt(3)) / 40)
    assert "10, 21, 5" in record.computed


def test_one_of_several_results_is_taken(visit):
    """What the duct system gives under that name, in the unit that the registry shows it in."""
    record = next(r for r in visit.readings if r.name == "alone")
    wanted = call(
        "duct_system",
        {
            "diameters": [to_si(6, "in"), to_si(8, "in")],
            "lengths": [to_si(20, "ft"), to_si(12, "ft")],
            "zones": [1.0, 2.0],
            "held": to_si(900, "cfm"),
            "open_zone": 1.0,
        },
    )

    assert (record.kind, record.unit) == ("pressure", "inwc")
    assert record.value.middle == pytest.approx(wanted["static"])
    assert from_si(record.value.middle, "inwc") > 0.5


def test_a_name_in_a_list_must_be_read_first():
    """The loader keeps what was written, list and words as they are."""
    tree, problems = load_tree(TREE.encode(), "t.yaml", library().vocabulary)

    assert [str(p) for p in problems if "leave_the_house" not in str(p)] == []
    if tree is not None:
        assert tree.steps["share"].texts == ["first", "second", "5 VA", "40 VA"]
