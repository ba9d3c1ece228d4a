"""Short ways to any page of a visit, for tests and pictures: the same events that a person's answers make."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from assistant.trail.live import LiveVisit
from assistant.tree.library import Library, read_folder
from assistant.walk.event import Concluded, Did, GoOn, PlateRead, Read, Saw, Typed
from assistant.window.session import Driver

FOLDER = Path(__file__).parent / "small"
AT = "2026-11-25T09:14:00-05:00"
DEAD = {
    "live_before": "121.4",
    "hot_neutral": "0",
    "hot_ground": "0",
    "neutral_ground": "0",
    "live_after": "121.2",
}


@cache
def library() -> Library:
    """The tests' own small library; an AssertionError names its problems."""
    made = read_folder(FOLDER)
    assert not made.problems, "\n".join(map(str, made.problems))
    return made


class Scene:
    """A visit on disk in `folder`, and a driver whose clock stands still at 9:14."""

    def __init__(self, folder: Path, *complaints: str, trees: Library | None = None) -> None:
        trees = trees or library()
        names = complaints or ("no_heat",)
        words = tuple((name, trees.vocabulary.complaints[name].words) for name in names)
        self.driver = Driver(LiveVisit.start(folder, trees, words, at=AT), now=lambda: AT)

    @property
    def ask(self):
        return self.driver.ask()

    def send(self, event) -> Scene:
        self.driver.send(event)
        return self

    def saw(self, value: str) -> Scene:
        return self.send(Saw(AT, self.ask.step, value))

    def typed(self, text: str) -> Scene:
        ask = self.ask
        return self.send(Read(AT, ask.step, {ask.readings[0].name or ask.step.split(".")[1]: Typed(text)}))

    def typed_all(self, readings: dict[str, str]) -> Scene:
        return self.send(Read(AT, self.ask.step, {name: Typed(text) for name, text in readings.items()}))

    def did(self) -> Scene:
        return self.send(Did(AT, self.ask.step, 60.0))

    def plate(self, text: str) -> Scene:
        return self.send(PlateRead(AT, self.ask.plate, text))

    def go_on(self) -> Scene:
        return self.send(GoOn(AT, self.ask.step))

    # places of the small tree, by the page they show

    def to_plate(self) -> Scene:
        return self.saw("still")

    def to_volts(self) -> Scene:
        return self.to_plate().plate("120")

    def to_stat(self) -> Scene:
        return self.to_volts().typed("118.4")

    def to_wait(self) -> Scene:
        return self.to_stat().did()

    def to_dead_proof(self) -> Scene:
        return self.to_wait().did()

    def to_ohms(self) -> Scene:
        return self.to_dead_proof().typed_all(DEAD)

    def to_finding(self) -> Scene:
        return self.to_ohms().typed("OL")

    def to_conclude(self) -> Scene:
        return self.to_finding().go_on().saw("clean")

    def to_repair(self) -> Scene:
        return self.to_conclude().send(Concluded(AT, self.ask.step, "worn"))

    def to_proof(self) -> Scene:
        return self.to_repair().did().did()

    def to_proved(self) -> Scene:
        return self.to_proof().typed("119.6")

    def to_manifold(self) -> Scene:
        return self.saw("turning").plate("3.5")

    def to_watch(self) -> Scene:
        return self.to_manifold().typed("3.4")
