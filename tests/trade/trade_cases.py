"""Reads the published answers of tests/outside/data/trade_*.yaml as test cases, in SI.

A case: id, call (the computation), given {argument: "number unit", word or list}, expect (one "number unit",
or results by name), tol in the unit of `expect`, why the tolerance is honest, source, status (read, memory,
computed, oracle, common practice: carried over from the source, never upgraded). `wrong: yes` marks a
published answer that carries an error: the computation must differ from it by more than the tolerance.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import yaml

from assistant.trade.registry import REGISTRY
from assistant.trade.unit import known, to_si

FOLDER = Path(__file__).parent.parent / "outside" / "data"
STATUS = {"read", "memory", "computed", "oracle", "common practice"}


@dataclass(frozen=True)
class Case:
    name: str
    call: str
    given: dict
    expect: object
    tol: float
    wrong: bool
    row: dict


def value(text):
    """ "12 inwc" -> SI float; a list element by element; anything else is a word."""
    if isinstance(text, list):
        return tuple(value(item) for item in text)
    if isinstance(text, (int, float)):
        return float(text)
    number, _, unit = text.partition(" ")
    try:
        return to_si(float(number), unit.strip()) if not unit or known(unit.strip()) else text
    except ValueError:
        return text


def span(text, tol) -> float:
    """The tolerance in SI, given in the unit of `text`."""
    if not isinstance(text, str) or " " not in text:
        return float(tol)
    unit = text.partition(" ")[2].strip()
    return abs(to_si(float(tol), unit) - to_si(0.0, unit)) if known(unit) else 0.0


def rows(pattern: str = "trade_*.yaml") -> list[dict]:
    found = []
    for path in sorted(FOLDER.glob(pattern)):
        data = yaml.safe_load(path.read_text(encoding="utf-8"))
        found += [{**row, "file": path.name} for row in data.get("cases", [])]
    return found


def given(row: dict) -> dict:
    """The arguments of a row; words stay words where the computation takes a choice."""
    words = {a.name for a in REGISTRY[row["call"]].arguments if a.choices}
    return {k: v if k in words else value(v) for k, v in row["given"].items()}


def cases() -> list[Case]:
    """Every row that calls a computation."""
    return [
        Case(
            f"{row['file'][6:-5]}-{row['id']}",
            row["call"],
            given(row),
            row["expect"],
            row.get("tol", 0),
            bool(row.get("wrong")),
            row,
        )
        for row in rows()
        if "call" in row
    ]
