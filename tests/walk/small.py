"""A small house and tree of the tests' own: one line circuit, a heater element, a fan."""

from __future__ import annotations

from pathlib import Path

from assistant.tree.library import read_folder
from assistant.walk.event import (
    Did,
    GoOn,
    Opened,
    PlateRead,
    Read,
    Saw,
    Typed,
)
from assistant.walk.visit import asked, begin, fold

FOLDER = Path(__file__).parent / "small"

DEAD = {
    "live_before": "121",
    "hot_neutral": "0",
    "hot_ground": "0",
    "neutral_ground": "0",
    "r_c": "0",
    "live_after": "121",
}

AT = "2026-11-25T09:00:00-05:00"


def library():
    """The small library; raises AssertionError with its problems if it has any."""
    made = read_folder(FOLDER)
    assert not made.problems, "\n".join(str(p) for p in made.problems)
    return made


class Walker:
    """Drives a visit in few words."""

    def __init__(self, *complaints: str) -> None:
        names = complaints or ("no_heat",)
        self.visit = fold(begin(library()), Opened(AT, tuple((name, name) for name in names)))

    @property
    def ask(self):
        return asked(self.visit)

    @property
    def step(self) -> str:
        return self.ask.step

    def send(self, event):
        self.visit = fold(self.visit, event)
        return self

    def saw(self, value: str):
        return self.send(Saw(AT, self.step, value))

    def typed(self, text: str, **more):
        ask = self.ask
        name = ask.readings[0].name or ask.step.split(".")[1]
        return self.send(Read(AT, ask.step, {name: Typed(text, **more)}))

    def typed_all(self, readings: dict[str, str]):
        return self.send(Read(AT, self.step, {name: Typed(text) for name, text in readings.items()}))

    def did(self, waited: float | None = None):
        return self.send(Did(AT, self.step, waited))

    def plate(self, **values: str):
        for name, text in values.items():
            self.send(PlateRead(AT, name, text))
        return self

    def go_on(self):
        return self.send(GoOn(AT, self.step))

    def make_dead(self):
        """Walks the make-dead procedure that stands in front now."""
        assert self.step == "make_dead.stat"
        return self.did().did().typed_all(DEAD)

    def to_ohms(self):
        """From the start to the ohms step, the circuit proved dead on the way."""
        return self.saw("still").plate(supply_volts="120").typed("118.4").make_dead()

    def to_finding(self):
        return self.to_ohms().typed("OL")
