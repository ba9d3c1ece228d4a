"""Everything that was done to a simulated house, noted as it was done, so that it can be done to another."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from assistant.quantity.entry import Understood, understand
from assistant.quantity.kind import KINDS
from assistant.rig.house import CannotMeasure, NotDone, Rig

SHARE = 0.05
LEAST = {
    "ac_voltage": 1.0,
    "dc_voltage": 0.1,
    "resistance": 1.0,
    "ac_current": 0.05,
    "dc_current": 3e-7,
    "pressure": 10.0,
    "temperature": 4.0,
    "percent": 0.01,
    "concentration": 1e-5,
    "duration": 5.0,
    "insulation": 1e4,
    "capacitance": 3e-7,
}
"""Two displays closer than this share, or this much (SI), a person would call the same (reasoned)."""
TIMES = 6.0
"""Two events of a start closer in time than this, in s, are called the same."""
_NUMBER = re.compile(r"-?\d")


@dataclass(frozen=True)
class Call:
    """One thing done: `kind` is see, measure, held, act or wait; `gave` what came back (None: it can't be
    done there).
    """

    kind: str
    what: tuple
    gave: object


class NotedRig:
    """A rig whose calls are noted; to a hand it looks like the rig itself."""

    def __init__(self, rig: Rig) -> None:
        self.rig = rig
        self.calls: list[Call] = []
        self.begun = rig.time

    def __getattr__(self, name: str):
        """Whatever else a hand asks of a rig: the time, the plate, the furnace as built."""
        if name == "rig":
            raise AttributeError(name)
        return getattr(self.rig, name)

    @property
    def minutes(self) -> float:
        """Simulated minutes since the apprentice arrived."""
        return (self.rig.time - self.begun) / 60

    def see(self, thing: str) -> str:
        """What a thing looks like. Raises KeyError."""
        return self._noted("see", (thing,))

    def measure(self, kind: str, points: Sequence[str], instrument=None) -> str:
        """What the display shows. Raises CannotMeasure."""
        return self._noted("measure", (kind, tuple(points), instrument))

    def held(self, points: Sequence[str], instrument, last: bool = False) -> str:
        """The highest that a clamp left on a wire shows."""
        return self._noted("held", (tuple(points), instrument, last))

    def act(self, name: str) -> None:
        """Do something. Raises NotDone."""
        self._noted("act", (name,))

    def wait(self, seconds: float) -> list[tuple[str, float]]:
        """Let time pass; what happened meanwhile."""
        return self._noted("wait", (seconds,))

    def _noted(self, kind: str, what: tuple):
        try:
            gave = getattr(self.rig, kind)(*what)
        except (CannotMeasure, NotDone, KeyError):
            self.calls.append(Call(kind, what, None))
            raise
        self.calls.append(Call(kind, what, tuple(gave) if isinstance(gave, list) else gave))
        return gave


def again(call: Call, rig: Rig) -> object:
    """The same thing done to another house; None where it can't be done there."""
    try:
        gave = getattr(rig, call.kind)(*call.what)
    except (CannotMeasure, NotDone, KeyError):
        return None
    return tuple(gave) if isinstance(gave, list) else gave


def alike(call: Call, other: object) -> bool:
    """Whether a person would call both answers the same."""
    gave = call.gave
    if call.kind == "act":
        return True
    if gave is None or other is None:
        return gave is other
    if call.kind == "see":
        return gave == other
    if call.kind == "wait":
        return _same_events(gave, other)
    kind = "ac_current" if call.kind == "held" else call.what[0]
    return same_display(kind, str(gave), str(other))


def _same_events(one, two) -> bool:
    names = [name for name, _ in one]
    return names == [name for name, _ in two] and all(
        abs(a - b) <= TIMES for (_, a), (_, b) in zip(one, two, strict=True)
    )


def same_display(kind: str, one: str, two: str) -> bool:
    """Whether two displays show the same as far as a person goes."""
    a, b = number(kind, one), number(kind, two)
    if a is None or b is None:
        return one == two
    return abs(a - b) <= max(SHARE * max(abs(a), abs(b)), LEAST.get(kind, 0.0))


def number(kind: str, shown: str) -> float | None:
    """The value on a display in SI; None where it shows no number (OL, Err)."""
    if not _NUMBER.search(shown) or kind not in KINDS:
        return None
    got = understand(shown, kind, KINDS[kind].units[0])
    return got.interval.lo if isinstance(got, Understood) and not got.over_range else None
