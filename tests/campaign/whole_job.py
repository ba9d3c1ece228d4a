"""One whole job of our own invention through the real window, by keys: the telephone call, before starting, a
walk without heat, a part ordered, the visit waiting, taken up on the third day by another person, the part
fitted and proved, a recommendation, leaving, signed.

`python tests/campaign/whole_job.py FOLDER [WIDTHxHEIGHT]` saves a picture of each stage and the report's
pages there (a temporary folder when not given). Readings come from the simulated house. QT_SCALE_FACTOR=2
and QT_QPA_PLATFORM=xcb work as for the other pictures; DARK=1 gives the dark palette.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
from datetime import datetime, timedelta
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "window"))
sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from hand import ESCAPE, Hand
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QLineEdit

from assistant.drill.case import Case, house_of
from assistant.drill.hand import Hand as HouseHand
from assistant.drill.kit import PERFECT
from assistant.resources import resources_folder
from assistant.rig.fault_file import load_faults
from assistant.rig.house import Rig
from assistant.walk.event import Cannot, Concluded, Did, Event, PlateRead, Read, Saw, Watched
from assistant.window import look
from assistant.window.app import dress
from assistant.window.desk import Desk
from assistant.window.frame import Window
from assistant.window.page import base
from assistant.window.page.do import DoPage

FAULT, TREE = "inducer_burnt", "no_heat"
BEGAN = datetime.now().astimezone().replace(microsecond=0)
MOST = 400
"""Answers before the job is taken to go round in a circle."""


class Job:
    """A window, a hand on it, a simulated house, and a folder for pictures."""

    def __init__(self, root: Path, pictures: Path, size: tuple[int, int]) -> None:
        self.root, self.pictures, self.size = root, pictures, size
        self.count = 0
        self.clock = BEGAN
        path = resources_folder() / "faults" / f"{TREE}.yaml"
        fault = load_faults(path.read_bytes(), path.name)[0][FAULT]
        case = Case(TREE, FAULT)
        self.rig = Rig(house_of(case, fault, 1), fault, case.degree, 1, exact=True)
        self.house = HouseHand(self.rig, PERFECT)
        self.window: Window | None = None
        self.open()

    def open(self) -> None:
        """The program is started."""
        if self.window is not None:
            self.window.close()
            self.window.deleteLater()
        desk = Desk(self.root / "visits")
        desk.notice_read()
        self.window = Window(desk)
        self.window.resize(*self.size)
        self.window.show()
        self.window.activateWindow()
        self.hand = Hand(None, self.window)
        self.window.begin()
        self.rest()

    def rest(self) -> None:
        self.hand.rest()
        if self.window.driver is not None:
            self.window.driver.now = self.now

    def now(self) -> str:
        """A minute later at each answer."""
        self.clock += timedelta(minutes=1)
        return self.clock.isoformat()

    def picture(self, name: str) -> None:
        self.rest()
        self.count += 1
        self.window.grab().save(str(self.pictures / f"{self.count:02d}-{name}.png"))

    def write(self, **lines: str) -> None:
        """Type into the lines of a page, by its questions' names; a choice is answered by its digit."""
        page = self.window.page
        known = page.lines if isinstance(getattr(page, "lines", None), dict) else None
        fields = known or {}
        for part in getattr(page, "parts", None) or ([] if known is not None else [page.lines]):
            fields |= part.fields
        for name, text in lines.items():
            field = fields[name]
            if isinstance(field, QLineEdit):
                field.setFocus()
                self.hand.type(text)
            else:
                field.first().setFocus()
                self.hand.digit(list(field.buttons).index(text) + 1)
        self.rest()

    # the walk

    def answer(self) -> None:
        """What is asked now, answered on the page by keys with what the house shows."""
        self.rest()
        event = self.house.event(self.window.driver.visit)
        page, before = self.window.page, len(self.window.driver.visit.events)
        self.by_keys(page, event)
        if len(self.window.driver.visit.events) == before:
            said = page.verdict.text()
            raise AssertionError(f"{self.hand.step}: {type(page).__name__} took no answer ({event}): {said}")

    def by_keys(self, page, event: Event) -> None:
        hand = self.hand
        if isinstance(event, Cannot):
            hand.alt("c").digit(1)
        elif isinstance(event, (Saw, Concluded)):
            value = event.value if isinstance(event, Saw) else event.answer
            hand.digit(list(page.choices.buttons).index(value) + 1).enter()
        elif isinstance(event, PlateRead):
            self.plate(page, event)
        elif isinstance(event, Read):
            self.readings(page, event)
        elif isinstance(event, Watched):
            self.watch(page, event)
        elif isinstance(event, Did):
            self.do(page)
        else:
            hand.enter()

    def plate(self, page, event: PlateRead) -> None:
        if page.choices is not None:
            wanted = next(i for i, value in enumerate(page.choices.buttons) if value.split()[0] == event.text)
            self.hand.digit(wanted + 1).enter()
        else:
            self.hand.type(event.text).enter()

    def readings(self, page, event: Read) -> None:
        for typed in event.readings.values():
            self.hand.type(typed.text).enter()
            self.insist(page)
        self.hand.enter()

    def insist(self, page) -> None:
        """It really shows that."""
        if page.offers.buttons:
            self.hand.digit(len(page.offers.buttons))

    def watch(self, page, event: Watched) -> None:
        page.clock = lambda: 0.0
        self.hand.enter()
        for name, at in sorted(event.events.items(), key=lambda pair: pair[1]):
            page.clock = lambda at=at: at
            self.hand.digit(list(page.events).index(name) + 1)
        self.hand.enter()
        for typed in event.readings.values():
            self.hand.type(typed.text).enter()
        if self.window.page is page:
            self.hand.enter()

    def do(self, page: DoPage) -> None:
        if page.wait is not None:
            page.clock = lambda: page.begun + page.wait + 1
        if page.results is not None:
            self.hand.digit(1)
        if page.fitting is not None:
            self.hand.alt("a")
        self.hand.enter()

    def walk_to(self, end, pictures: dict[str, str]) -> None:
        """On until `end(ask)`; a picture at each step of `pictures` (step or kind -> name), once."""
        shown = set()
        for _ in range(MOST):
            self.rest()
            ask = self.window.driver.ask()
            key = next((k for k in (ask.step, ask.kind) if k in pictures and k not in shown), None)
            if key:
                shown.add(key)
                self.picture(pictures[key])
            if end(ask):
                return
            self.answer()
        raise AssertionError(f"no end after {MOST} answers, at {self.hand.step}")


def first_day(job: Job) -> None:
    """From the telephone to the part that is waited for."""
    hand = job.hand
    hand.press("New visit").press("On the telephone")
    job.write(smell="no", ill="no", name="Mx Example", address="12 Sample Lane, Apt. 3", phone="518 555 0100")
    job.write(water="no", most="a baby, eight months", cold="61 F, one plug-in heater")
    job.write(thermostat="yes", switch="on", filter="not looked at", vent="yes", said="hummed, then quiet")
    job.picture("telephone")
    hand.alt("g").digit(1)
    job.picture("complaint")
    hand.enter()
    job.rest()
    job.write(code_light="two flashes", service_switch="on", thermostat="HEAT 68, room 61, schedule on")
    job.picture("as-found")
    hand.alt("v")
    job.window.open("before")
    job.write(monitor="zeroed outdoors", room_gas="0", room_co="2", outside="clear, 24 F")
    job.write(says_yes="the tenant, owner by telephone", up_to="400")
    job.picture("before-starting")
    hand.alt("v")
    job.window.open("unit")
    job.rest()
    job.write(kind="furnace, closet", make="Northfield", model="NF-90", serial="NF 04411", made="10/2016")
    job.write(warranty="10/2026, heat exchanger only")
    job.picture("unit")
    hand.alt("v")
    hand.key(Qt.Key.Key_R, Qt.KeyboardModifier.ControlModifier)
    job.picture("around")
    hand.key(ESCAPE)
    wanted = {
        "look": "walk-first-look",
        "watch": "walk-watch",
        "make_dead.proof": "walk-dead-proof",
        "finding": "finding",
        "conclude": "why-did-it-fail",
    }
    job.walk_to(lambda ask: ask.step.startswith("act.fit_"), wanted)
    job.picture("part-not-here")


def waits(job: Job) -> None:
    """The part is ordered; the night is prepared; the visit waits."""
    hand = job.hand
    job.window.open("tonight")
    job.rest()
    job.write(done="furnace off, tag on, gas cock closed", people="the baby, at the neighbour's")
    job.write(heat="two plug-in heaters lent", told="the tenant; the office", freeze="shown and understood")
    job.write(back="the day after tomorrow, 9:00", number="518 555 0111")
    job.picture("no-heat-tonight")
    hand.alt("v")
    hand.key(Qt.Key.Key_F9)
    job.picture("pause")
    hand.digit(1).enter()
    if type(job.window.page).__name__ == "PausePage":  # something is held: it is put back for the night
        hand.alt("b").alt("n")
    job.rest()
    job.write(number="IND-3380", supplier="the parts counter", due="tomorrow evening")
    job.write(first="bring the sealant for the vent joint")
    job.picture("waiting-for-the-part")
    if job.window.page.held is not None and job.window.page.held.missing():
        hand.alt("b")
    hand.alt("n")
    assert job.window.driver.ask().kind == "paused", job.window.page.verdict.text()
    job.picture("paused")


def third_day(job: Job) -> None:
    """Another person, another program: fitted, proved, a recommendation, left as found, signed."""
    job.clock += timedelta(days=2)
    job.open()
    hand = job.hand
    job.picture("list-on-the-third-day")
    hand.enter()
    job.rest()
    hand.type("B. Second")
    job.picture("taken-up-by-another")
    hand.enter()
    job.picture("every-circuit-unknown")
    wanted = {"act.fit_inducer": "fit-the-part"}
    job.walk_to(lambda ask: ask.kind in ("choose", "leave", "stop"), wanted)
    job.picture("proved")
    job.window.open("proof")
    job.picture("before-and-after")
    hand.key(ESCAPE)
    job.window.open("advise")
    job.rest()
    job.write(what="Reroute the vent's drain", why="its water reached the new inducer's place")
    job.write(number="water mark, photo 3", answer="thinks about it")
    job.picture("recommend")
    hand.alt("v")
    hand.key(ESCAPE)


def leaves(job: Job, out: Path) -> None:
    hand = job.hand
    hand.key(Qt.Key.Key_F10)
    job.picture("open-points")
    for _ in range(12):
        page = job.window.page
        blocking = [p for p in page.points if p.kind in ("undo", "power") and p.left is None]
        if not blocking:
            break
        hand.digit(page.points.index(blocking[0]) + 1).type("seen to, and looked at again").enter()
    hand.alt("n")
    job.rest()
    if job.window.page.title == "As left":
        hand.alt("e")
        job.picture("as-left")
        hand.alt("v")
    job.picture("for-whom")
    hand.alt("n")
    job.rest()
    job.picture("sign")
    hand.enter()
    job.picture("sign-once-more")
    hand.enter()
    job.rest()
    assert job.window.driver.visit.signed == "B. Second", job.window.page.verdict.text()
    job.picture("signed")
    print(job.window.driver.export(out, "letter"))


def main(folder: Path, size: tuple[int, int]) -> None:
    """The job, its pictures and the report's pages into `folder`."""
    folder.mkdir(parents=True, exist_ok=True)
    app = QApplication([])
    dress(app, look.dark_palette() if os.environ.get("DARK") else None)
    base.SETTLE = 0.0  # the hand is faster than a person
    with tempfile.TemporaryDirectory() as root:
        os.environ["FAULT_TRAIL_CACHE"] = f"{root}/cache"
        shutil.copy(resources_folder() / "shop.yaml", Path(root) / "shop.yaml")
        job = Job(Path(root), folder, size)
        for part in (first_day, waits, third_day):
            part(job)
        leaves(job, folder)
        job.window.close()
    report = next(folder.glob("*.pdf"), None)
    if report is not None and shutil.which("pdftoppm"):
        subprocess.run(["pdftoppm", "-r", "70", "-png", str(report), str(folder / "report")], check=True)


if __name__ == "__main__":
    where = Path(sys.argv[1]) if len(sys.argv) > 1 else Path(tempfile.mkdtemp(prefix="fault-trail-job-"))
    wide, _, tall = (sys.argv[2] if len(sys.argv) > 2 else "1024x600").partition("x")
    main(where, (int(wide), int(tall)))
    print(f"{len(list(where.glob('*.png')))} pictures in {where}")
