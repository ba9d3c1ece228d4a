"""How a visit begins: with a complaint, on the telephone, as a call-back, or as a visit to a healthy unit."""

from __future__ import annotations

from typing import TYPE_CHECKING

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
        self.call: dict[str, str] = {}
        self.interrupted: dict[str, str] = {}
        """A call left for the list: the next caller's sheet begins empty, and this one is offered."""

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
            left = self.interrupted
            whose = ", ".join(left[name] for name in ("name", "address") if left.get(name)) or "no name yet"
            page = TelephonePage(self.window.desk.library.vocabulary, self.call, whose if left else "")
            page.again.connect(self._take_up_call)
            page.begun.connect(self.called)
            page.left.connect(self.choose)
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
        self.call.clear()
        tune_up = not complaints and not self.sheets.get("triage")
        self.forget()
        window.show_visit(driver)
        if said:
            window.page.say(said)
        if driver.ask().kind == "stop":
            return
        window.open("earlier" if driver.visit.past else "baseline" if tune_up else "as_found")

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

    def _take_up_call(self) -> None:
        self.call, self.interrupted = dict(self.interrupted), {}
        self.open("telephone")

    def _back(self) -> None:
        if self.call:
            self.interrupted, self.call = dict(self.call), {}
        self.forget()
        self.window.show_start()


def recall(window: Window, driver: Driver) -> bool:
    """Our earlier visits to this address or unit into the trail, where they are not there yet; whether any
    was found. Raises Refused.
    """
    serial = driver.visit.sheets.get("unit", {}).get("serial", "")
    found = window.desk.earlier(driver.person().get("address", ""), serial, driver.folder)
    if not found or found == driver.visit.past:
        return False
    driver.send(Recalled(driver.now(), found))
    return True
