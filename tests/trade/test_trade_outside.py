"""The trade's computations against answers published outside it (tests/outside/data/trade_*.yaml)."""

from __future__ import annotations

import pytest
from trade_cases import STATUS, cases, rows, span, value

from assistant.trade.registry import REGISTRY, call

CASES = cases()


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_published_answer(case):
    """The computation gives the published answer within the tolerance that the case argues for."""
    result = call(case.call, case.given)
    expected = case.expect if isinstance(case.expect, dict) else {"": case.expect}
    got = result if isinstance(result, dict) else {"": result}
    for name, text in expected.items():
        if isinstance(got[name], str):
            assert got[name] == text
            continue
        wanted = value(text)
        tol = case.tol[name] if isinstance(case.tol, dict) else case.tol
        allowed = span(text, tol) * (1 + 1e-9) + 1e-12 * abs(wanted)
        if case.wrong:
            assert abs(got[name] - wanted) > allowed, "a published error is reproduced"
        else:
            assert abs(got[name] - wanted) <= allowed


def test_every_computation_has_an_outside_answer():
    """No computation stands in the registry without an answer from outside (one that is right, not only a
    wrong one).
    """
    checked = {case.call for case in CASES if not case.wrong}
    checked |= {"zone_survey"}  # against matrices worked by hand, in test_trade_zone_sheet.py

    assert sorted(set(REGISTRY) - checked) == []


@pytest.mark.parametrize("row", rows(), ids=lambda row: str(row.get("id") or row.get("case")))
def test_every_case_says_where_it_comes_from(row):
    """Each value names its source and how well it is known, argues its tolerance, and holds no address."""
    assert row["source"]
    assert row["status"] in STATUS
    if row.get("tol"):
        assert row["why"]
    assert "http" not in str(row)
    assert "www." not in str(row)


def test_ids_are_unique():
    """A case can be named without doubt."""
    names = [case.name for case in CASES]

    assert len(names) == len(set(names))
