"""How a visit begins: with a complaint, on the telephone, as a call-back, or as a visit to a healthy unit."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from assistant.trail.calls import Call
from assistant.trail.clock import now
from assistant.trail.error import TrailError
from assistant.walk.earlier_visit import Past
from assistant.walk.event import Filled, Person, Recalled
from assistant.window.page.new_visit import NewVisitPage
from assistant.window.page.visit.telephone import TelephonePage
from assistant.window.refused import Refused
from assistant.window.session import Driver

if TYPE_CHECKING:
    from assistant.window.frame import Window

SAME_UNIT = ("kind", "make", "model", "serial", "made", "warranty")


class Beginning:
    """Keeps what was written down before there is a visit: a call that is interrupted loses nothing."""

    def __init__(self, window: Window) -> None:
        self.window = window
        self.person: dict[str, str] = {}
        self.sheets: dict[str, dict[str, str]] = {}
        self.call: Call | None = None
        """The call that is written down; one left for the list is let go of, and offered there."""

    def forget(self) -> None:
        """Nothing of another visit is carried over."""
        self.person, self.sheets = {}, {}

    def choose(self) -> None:
        """Which complaint."""
        page = NewVisitPage(self.window.desk.library.vocabulary)
        page.begun.connect(self.begin)
        page.left.connect(self._back)
        page.opens.connect(self.open)
        self.window._put(page)

    def open(self, name: str) -> None:
        if name == "telephone":
            desk = self.window.desk
            self.call = self.call or Call(desk.calls, now())
            page = TelephonePage(desk.library.vocabulary, self.call, desk.interrupted(self.call.folder))
            page.again.connect(self.take_up_call)
            page.begun.connect(self.called)
            page.left.connect(self.choose)
            page.thrown.connect(self._throw_away)
            self.window._put(page)
        elif name == "tune_up":
            self.begin(())
        else:
            self.window.open(name)

    def called(self, person: dict[str, str], answers: dict[str, str], stop: str) -> None:
        """The call is over: choose the complaint, or, where everybody must leave, write it down at once."""
        self.person = dict(person)
        self.sheets = {"triage": dict(answers)} if answers else {}
        if stop:
            self.begin(())
        else:
            self.choose()

    def again(self, driver: Driver) -> None:
        """A call-back to where `driver`'s visit was: same person, same unit, our work of last time."""
        self.person = driver.person()
        unit = driver.visit.sheets.get("unit", {})
        self.sheets = {"unit": {name: unit[name] for name in SAME_UNIT if name in unit}} if unit else {}
        self.window.new_visit(fresh=False)

    def begin(self, complaints: tuple[tuple[str, str], ...]) -> None:
        """A new visit with these complaints and what was written down before it."""
        window = self.window
        try:
            driver = window.desk.begin(complaints)
        except Refused as problem:
            window.page.say(str(problem))
            return
        said = self._written(driver)
        if self.call is not None:
            self.call.drop()
            self.call = None
        tune_up = not complaints and not self.sheets.get("triage")
        self.forget()
        window.show_visit(driver)
        if said:
            window.page.say(said)
        if driver.ask().kind == "stop":
            return
        known = bool(driver.visit.past or driver.perhaps)
        window.open("earlier" if known else "baseline" if tune_up else "as_found")

    def _written(self, driver: Driver) -> str:
        """What was asked before the visit, into its trail; a sentence where the disk did not take it."""
        try:
            if self.person:
                driver.send(Person(driver.now(), driver.keep_person(self.person)))
            for name, answers in self.sheets.items():
                driver.send(Filled(driver.now(), name, answers))
            recall(self.window, driver)
        except Refused as problem:
            return str(problem)
        return ""

    def take_up_call(self, folder: Path) -> None:
        """Go on with a call that was interrupted, in this window or before the program was last closed."""
        self.let_go()
        try:
            self.call = Call.open(folder)
        except TrailError as problem:
            self.window.page.say(str(problem))
            return
        self.open("telephone")

    def let_go(self) -> None:
        """The call waits on disk for whoever goes on with it."""
        if self.call is not None:
            self.call.keep()
            self.call.let_go()
            self.call = None

    def _throw_away(self) -> None:
        if self.call is not None:
            self.call.drop()
            self.call = None
        self.forget()
        self.window.show_start("The call was thrown away.")

    def _back(self) -> None:
        self.let_go()
        self.forget()
        self.window.show_start()


def recall(window: Window, driver: Driver) -> bool:
    """Our earlier visits to this address or unit into the trail, where they are not there yet; whether any
    was found. Raises Refused.
    """
    serial = driver.visit.sheets.get("unit", {}).get("serial", "")
    found = window.desk.earlier(driver.person().get("address", ""), serial, driver.folder)
    merged = together(found, driver.visit.past)
    known = [driver.folder, *(driver.folder.parent / past.visit for past in merged)] if driver.folder else []
    driver.perhaps = window.desk.perhaps(driver.person(), known)
    if not found or merged == driver.visit.past:
        return False
    driver.send(Recalled(driver.now(), merged))
    return True


def together(found: tuple[Past, ...], known: tuple[Past, ...]) -> tuple[Past, ...]:
    """All of them once, the latest first; what a person said belongs here stays."""
    names = {past.visit for past in found}
    kept = [past for past in known if past.visit not in names]
    return tuple(sorted((*found, *kept), key=lambda past: past.began, reverse=True)) if kept else found
