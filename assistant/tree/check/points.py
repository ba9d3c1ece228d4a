"""What the points of a reading say: which circuits it touches, and whether it is taken across a switch."""

from __future__ import annotations

import re

from assistant.house.model import Vocabulary
from assistant.tree.model import Reading

OHMS = frozenset({"resistance", "insulation", "capacitance"})
"""Taken with the meter's own current: on anything live they read wrong and can kill the meter."""
VOLTS = frozenset({"ac_voltage", "dc_voltage"})
ENERGIZED = VOLTS | {"ac_current", "dc_current", "power", "apparent_power", "frequency"}
"""Mean something only while the circuit is live."""

ALONG = re.compile(r"\b(along|across|end to end)\b", re.IGNORECASE)
"""Words of a reading from one end of something to its other."""

_RETURN = re.compile(r"(neutral|common|c)(_.*)?")


def circuits_at(vocabulary: Vocabulary, reading: Reading) -> list[str]:
    """The circuits that a reading's points lie on, each once."""
    known = [vocabulary.points[point].circuit for point in reading.at if point in vocabulary.points]
    return [circuit for circuit in dict.fromkeys(known) if circuit is not None]


def is_ground(vocabulary: Vocabulary, point: str) -> bool:
    """Whether a point is a ground."""
    return point in vocabulary.points and vocabulary.points[point].of == "ground"


def is_return(vocabulary: Vocabulary, point: str) -> bool:
    """Whether a point is where the current goes back: a ground, or one whose last word is neutral, common or
    c."""
    return is_ground(vocabulary, point) or _RETURN.fullmatch(point.rpartition(".")[2]) is not None


def across(vocabulary: Vocabulary, reading: Reading) -> str | None:
    """The circuit of a voltage taken across something (a switch, a fuse, a safety) and not to the return;
    None for every other reading. The pairs that prove a circuit dead are taken to the return by their
    meaning."""
    if reading.kind not in VOLTS or len(reading.at) != 2:
        return None
    circuits = {vocabulary.points[point].circuit for point in reading.at if point in vocabulary.points}
    circuit = next(iter(circuits), None)
    if len(circuits) != 1 or circuit is None or any(is_return(vocabulary, point) for point in reading.at):
        return None
    pairs = [set(pair) for pair in vocabulary.circuits[circuit].pairs]
    return None if set(reading.at) in pairs else circuit


def fed_points(vocabulary: Vocabulary, reading: Reading) -> list[str]:
    """The points that a voltage reading shows live when it is not in its lowest band: those read to the
    return."""
    if reading.kind not in VOLTS or len(reading.at) != 2:
        return []
    first, second = reading.at
    if is_return(vocabulary, second) and not is_return(vocabulary, first):
        return [first]
    if is_return(vocabulary, first) and not is_return(vocabulary, second):
        return [second]
    return []
