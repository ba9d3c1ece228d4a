"""The limits that decide what a customer pays for, held against a second statement of them (limits*.yaml).

A band that is moved by a few percent still orders, still checks and still walks; only a second statement of
its number sees it.
"""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml
from sound_furnace import shipped

from assistant.quantity.interval import Interval
from assistant.quantity.kind import to_si
from assistant.tree.limits import evaluate, parse_quantity
from assistant.tree.model import Compute, Reading, readings_of

FILES = [yaml.safe_load(path.read_text(encoding="utf-8"))
         for path in sorted(Path(__file__).parent.glob("limits*.yaml"))]
STATED = {
    "plate": {name: text for one in FILES for name, text in one.get("plate", {}).items()},
    "bands": [row for one in FILES for row in one.get("bands", [])],
    "safe": [row for one in FILES for row in one.get("safe", [])],
}


def in_si(text: str) -> float:
    number, unit = parse_quantity(text)
    return to_si(number, unit)


PLATE = {name: Interval.exact(in_si(text)) for name, text in STATED["plate"].items()}


def judged(row: dict) -> Reading | Compute:
    _, step = shipped().step(row["step"])
    if isinstance(step, Compute):
        assert step.result == row["reading"]
        return step
    return next(one for one in readings_of(step) if (one.name or step.common.name) == row["reading"])


@pytest.mark.parametrize("row", STATED["bands"], ids=lambda row: f"{row['step']} {row['band']}")
def test_a_band_ends_where_its_source_says(row: dict):
    what = judged(row)
    band = next(band for band in what.bands if band.label == row["band"])
    assert band.under is not None
    limit = evaluate(band.under, PLATE, what.unit)
    assert limit.lo == pytest.approx(in_si(row["value"]), rel=1e-9), row["source"]
    assert limit.hi == limit.lo


@pytest.mark.parametrize("row", STATED["safe"], ids=lambda row: f"{row['step']} {row['reading']}")
def test_work_stops_where_its_source_says(row: dict):
    what = judged(row)
    assert isinstance(what, Reading) and what.safe is not None and what.safe.under is not None
    limit = evaluate(what.safe.under, PLATE, what.unit)
    assert limit.lo == pytest.approx(in_si(row["value"]), rel=1e-9), row["source"]


def test_what_is_marked_as_read_says_what_was_read():
    for source in shipped().vocabulary.sources.values():
        assert source.title
        if source.mark == "read":
            told = f"{source.title} {source.where}"
            assert source.number or any(word in told for word in ("article", "sheet", "text", "copy", "page"))


BY_SOURCE = yaml.safe_load((Path(__file__).parent / "by_source.yaml").read_text(encoding="utf-8"))["sources"]


def limits_of(what: Reading | Compute, shared: str | None):
    """Every limit of a reading or computed value, with the source that it cites and its label."""
    for band in what.bands:
        if band.under is not None:
            yield band.under, band.source or what.source or shared, band.label
    safe = getattr(what, "safe", None)
    for limit in (safe.over, safe.under) if safe is not None else ():
        if limit is not None:
            yield limit, safe.source or what.source, "safe"


@pytest.mark.parametrize("source", BY_SOURCE)
def test_a_limit_is_what_its_source_says(source: str):
    values = [in_si(text) for text in BY_SOURCE[source]]
    cited = 0
    for tree in shipped().trees.values():
        for step in tree.steps.values():
            page = [one for _, one in step.page] if isinstance(step, Compute) else readings_of(step)
            for what in page:
                for under, cites, label in limits_of(what, getattr(step, "source", None)):
                    if cites != source:
                        continue
                    cited += 1
                    limit = evaluate(under, PLATE, what.unit)
                    assert any(limit.lo == pytest.approx(value, rel=1e-6) for value in values), (
                        f"{tree.name}.{step.common.name}: '{label}' ends at {under.text}")
    assert cited, f"no limit cites {source}"
