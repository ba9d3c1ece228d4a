"""Visits to tell: the small house of the walk's tests, walked to different ends."""

from __future__ import annotations

from dataclasses import replace

from assistant.report.tell import tell
from assistant.report.text import to_text
from assistant.walk.event import (
    AsFound,
    Back,
    InstrumentUsed,
    Note,
    Opened,
    Paused,
    Resumed,
    Settled,
    Signed,
    TakeUp,
)
from assistant.walk.visit import asked, begin, fold
from tests.walk.small import DEAD, Walker, library

FINGERPRINT = "0123456789abcdef" * 4
PERSON = {"name": "Mx Example", "address": "12 Sample Street"}


class Clock(Walker):
    """The small walker, with a time that goes on and the customer's own words."""

    def __init__(self, *complaints):
        self.minutes = 0
        self.visit = begin(library())
        self.send(Opened("", complaints or (("no_heat", "The bedroom is cold"),)))

    def send(self, event):
        self.minutes += 1
        at = f"2026-11-25T{9 + self.minutes // 60:02d}:{self.minutes % 60:02d}:30-05:00"
        self.visit = fold(self.visit, replace(event, at=at))
        return self

    def story(self, **more):
        more = {"person": PERSON, **more}
        return tell(list(self.visit.events), self.visit.library, FINGERPRINT, **more)

    def finish(self, waited=600):
        """Everything that is asked from a finding on, answered so that the repair is proved; `waited`
        seconds of the ten minutes that its proof asks for."""
        self.go_on().saw("dirty")
        while (ask := asked(self.visit)).kind in ("do", "measure"):
            if ask.kind == "do":
                self.did(waited)
            elif ask.step.startswith("make_dead"):
                self.typed_all(DEAD)
            else:
                self.typed("119")
        return self


def repaired():
    """Two complaints; slips, a changed mind, a pause, a note; repaired, proved, settled and signed."""
    clock = Clock(("no_heat", "The bedroom is cold"), ("noise", "It rattles"))
    clock.send(AsFound("", {"fan": "still", "filter": "not looked at"}))
    clock.send(InstrumentUsed("", "clamp meter 2"))
    clock.saw("turning").send(Back("", "cold_house.fan", "slip"))
    clock.saw("still").plate(supply_volts="120")
    clock.typed("111,7").send(Back("", "cold_house.volts", "changed"))
    clock.typed("118.4").make_dead()
    clock.send(Note("", "Door held by tape", "cold_house.ohms"))
    clock.typed("OL")
    clock.send(Paused("", "waiting for a part")).send(Resumed("", "B. Technician"))
    clock.finish()
    clock.send(TakeUp("", "noise")).send(Settled("", "noise", "a loose cover, tightened"))
    return clock.send(Signed("", "A. Technician"))


def customers_text(story):
    """The first page as text."""
    whole = to_text(story)
    return whole[: whole.index("THE TRAIL")]


def row(story, words, **fields):
    found = [r for r in story.rows if r.asked == words and all(getattr(r, k) == v for k, v in fields.items())]
    assert len(found) == 1, found
    return found[0]
