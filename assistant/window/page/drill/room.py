"""The way through a drill in the window: list, work, end, debrief. Visits know nothing of it."""

from __future__ import annotations

import sys
from itertools import chain
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QProcess

from assistant.drill.practice import record
from assistant.drill.practice.along import Along
from assistant.drill.practice.answers import answerable
from assistant.drill.practice.debrief import Debrief, Soon, debrief
from assistant.drill.practice.drill import Drill
from assistant.drill.practice.drills import all_drills, all_faults
from assistant.drill.practice.entry import OTHER, Entry
from assistant.drill.practice.houses import Houses
from assistant.drill.practice.make import of_visit
from assistant.drill.practice.sitting import Sitting
from assistant.drill.practice.unfinished import keep_unfinished
from assistant.errors import UserError
from assistant.resources import PACKAGE
from assistant.trail.clock import now
from assistant.trail.error import TrailError
from assistant.trail.keep import person
from assistant.trail.live import LiveVisit
from assistant.trail.read import read_trail
from assistant.trail.record import kept_library
from assistant.trail.shelf import SIGNED
from assistant.walk.ask import Ask
from assistant.walk.event import Opened, TakeUp
from assistant.walk.state import BadAnswer, OutOfOrder
from assistant.walk.visit import begin, fold
from assistant.window.page.base import Page
from assistant.window.page.drill.along import ALLOWED, DrillDriver, dress
from assistant.window.page.drill.end import EndPage
from assistant.window.page.drill.foreman import ForemanPage
from assistant.window.page.drill.free import FreePage
from assistant.window.page.drill.history import HistoryPage
from assistant.window.page.drill.kept import KeptPage
from assistant.window.page.drill.later import Keep, Later, keeps
from assistant.window.page.drill.lobby import TREE, LobbyPage
from assistant.window.page.drill.paper import debrief_pdf
from assistant.window.page.drill.told import ToldPage
from assistant.window.refused import Refused
from assistant.window.words import day

if TYPE_CHECKING:
    from assistant.window.frame import Window

AT_END = ("choose", "leave", "notes", "paused", "signed")
"""What a walk asks when it is at its end: in a drill the end page comes instead."""


class DrillRoom(QObject):
    """One window's drills. `faults` and `drills` are read anew each time the list shows."""

    def __init__(self, window: Window) -> None:
        super().__init__(window)
        self.window = window
        self.who = ""
        self.began = self.called = ""
        self.folder: Path | None = None
        self.work: Sitting | Along | None = None
        self.page: FreePage | None = None
        self.trail: record.PracticeTrail | None = None
        self.predict = True
        self.preparing: QProcess | None = None
        self.draft: tuple[tuple[str, str], tuple[str, str, str]] | None = None
        self.houses: Houses | None = None
        self.later = Later(lambda: self.busy, self)

    @property
    def library(self):
        """The trees that visits are walked with, too."""
        return self.window.desk.library

    @property
    def busy(self) -> bool:
        """Whether a drill is under way."""
        return self.work is not None and self.work.ended is None

    # -- the list

    def lobby(self, said: str = "") -> None:
        """Every drill."""
        self._leave_work()
        self.faults, wrong = all_faults()
        drills, also = all_drills(self.library.vocabulary, self.faults)
        here = {name: drill for name, drill in drills.items() if answerable(drill, self.library)}
        page = LobbyPage(here, self.library.vocabulary, self.who)
        page.begun.connect(self.begin)
        page.left.connect(self.window.show_start)
        page.foreman.connect(self.foreman)
        page.looks_back.connect(self.look_back)
        self.window.show_page(page)
        self.later.take_up(self.library, self.faults, drills)
        problems = [*wrong, *also]
        if said or problems:
            page.say(said or f"A drill is left out: {problems[0]}")

    def foreman(self) -> None:
        """Make drills."""
        page = ForemanPage(self.library, self._finished, self._of_visit)
        page.left.connect(self.lobby)
        page.prepares.connect(lambda: self.prepare(page))
        self.window.show_page(page)

    def prepare(self, page: Page) -> None:
        """The shortest good paths, in a program of its own: minutes, once for a text of the trees."""
        if self.preparing is not None:
            page.say("It is under way already.")
            return
        self.preparing = QProcess(self)
        self.preparing.setWorkingDirectory(str(PACKAGE.parent))
        self.preparing.finished.connect(self._prepared)
        self.preparing.start(sys.executable, ["-m", "assistant", "drill", "--prepare"])
        page.say("Under way. Drills can go on meanwhile; until then the tree's own walk stands for them.")

    def _prepared(self, code: int) -> None:
        self.preparing = None
        if self.window.page is not None:
            done = "are worked out" if code == 0 else "could not be worked out"
            self.window.page.say(f"The shortest good paths {done}.")

    def look_back(self, who: str) -> None:
        """An apprentice's drills over time."""
        page = HistoryPage(who or self.who)
        page.left.connect(self.lobby)
        page.opened.connect(self.read_again)
        self.window.show_page(page)

    def read_again(self, done: record.Done) -> None:
        """The debrief of a drill that was ended some time ago."""
        page = KeptPage(done)
        page.left.connect(lambda: self.look_back(done.apprentice))
        self.window.show_page(page)

    # -- the work

    def begin(self, drill: Drill, who: str, way: str) -> None:
        """One drill, one apprentice, one way."""
        self.who, self.began, self.called = who, now(), ""
        self.draft = None
        self.predict = record.asks_to_predict()
        try:
            self.folder = record.new_folder(who, drill)
            if way == TREE:
                self._begin_tree(drill)
            else:
                self._begin_free(drill)
            self.houses = Houses(drill, self.faults)
            self.houses.begin()
        except (UserError, TrailError, BadAnswer) as problem:
            self.window.page.say(str(problem))

    def _begin_tree(self, drill: Drill) -> None:
        said = ((drill.complaint, drill.words),)
        live = LiveVisit.start(self.folder, self.library, said, at=now(), practice=True)
        self.work = Along(drill, self.library, live)
        driver = DrillDriver(self.work)
        driver.practice = self
        self.window.show_visit(driver)

    def _begin_free(self, drill: Drill) -> None:
        self.trail = record.PracticeTrail(self.folder, self.library, drill)
        self.work = Sitting(drill, self.library)
        self.work.told = self.trail.note
        self.page = FreePage(self.work, self.predict, self.finish)
        self.window.show_page(self.page)

    def dressed(self, page: Page, ask: Ask) -> Page:
        """A page of the walk with the drill's line above it; the end page where the walk is over."""
        if ask.kind in AT_END:
            page.deleteLater()
            return self._end_page()
        dress(page, self.window.driver, self.predict, self.finish)
        return page

    def allows(self, name: str) -> bool:
        """Whether a page beside the walk is open in a drill."""
        return name.partition(":")[0] in ALLOWED

    # -- the end

    def call_out(self, page: str) -> None:
        """Hazard was pressed in free work, and this is its stop page: that is the apprentice's answer."""
        if not isinstance(self.work, Sitting) or self.work.ended is not None:
            return
        hazards = self.library.vocabulary.hazards
        name = next((name for name, stop in hazards.items() if stop == page), "")
        if name:
            self.work.log.entries.append(Entry(OTHER, f"Called out: {name.replace('_', ' ')}"))
            self.called = f"hazard.{name}"

    def finish(self) -> None:
        """Ask for finding, cause and sentence; the work waits underneath."""
        self.window.lay_page(self._end_page())

    def _end_page(self) -> EndPage:
        work = self.work
        finding, cause = work.found() if isinstance(work, Along) else (self.called, "")
        along = isinstance(work, Along)
        page = EndPage(
            work.drill,
            self.library,
            *self._drafted(finding, cause),
            walk=work.causes() if along else (),
            may_walk_again=along and work.can_walk_again(),
        )
        page.walked_again.connect(self._walk_again)
        page.changed.connect(lambda: self._draft(page, finding, cause))
        page.said.connect(self.tell)
        page.left_open.connect(lambda: self.lobby("It was left unfinished, and is counted nowhere."))
        page.left.connect(self.window.unlay_page)
        return page

    def _walk_again(self) -> None:
        """What comes and goes is walked again, from a start that fails."""
        driver = self.window.driver
        try:
            driver.send(TakeUp(driver.now(), self.work.drill.complaint))
        except Refused as problem:
            self.window.page.say(str(problem))
            return
        self.window.show_ask()

    def _draft(self, page: EndPage, finding: str, cause: str) -> None:
        """What is written on the end page stays while the house is gone back to."""
        self.draft = ((finding, cause), (page.findings.chosen, page.causes.chosen, page.sentence.text()))

    def _drafted(self, finding: str, cause: str) -> tuple[str, str, str]:
        """What the end page begins with: the draft, but finding and cause of the walk where they are new."""
        base, draft = self.draft or ((finding, cause), (finding, cause, ""))
        return draft if base == (finding, cause) else (finding, cause, draft[2])

    def tell(self, finding: str, cause: str, sentence: str) -> None:
        """The debrief."""
        work = self.work
        if work is None or work.ended is not None:
            return
        work.conclude(finding, cause, sentence)
        if self.trail is not None:
            self._note(f"Found: {finding}; cause: {cause or 'none'}; to the customer: {sentence.strip()}")
        drill, who, began = work.drill, self.who, self.began
        if self.houses is not None:
            self.houses.end()
        steps = debrief(work, self.library, self.faults, houses=self.houses)
        soon = next(steps)
        keep = keeps(self.folder, who, began, work)
        page = ToldPage(
            chain((soon,), steps),
            "How it went",
            lambda told: debrief_pdf(drill, who, began, told),
        )
        page.left.connect(lambda: self._leave_told(page, keep))
        page.done.connect(lambda told: self._keep(page, keep, told))
        self.let_go()
        self.window.show_page(page)
        self._keep(page, keep, soon)
        self._keep(page, lambda _: keep_unfinished(self.folder, who, began, work), soon)

    def _keep(self, page: ToldPage, keep: Keep, told: Debrief | Soon) -> None:
        try:
            keep(told)
        except UserError as problem:
            page.say(str(problem))

    def _leave_told(self, page: ToldPage, keep: Keep) -> None:
        """The answer is kept; a debrief that is not ready yet is made ready meanwhile."""
        said = ""
        if page.told is None:
            page.timer.stop()
            self.later.add(page.steps, keep)
            said = "The drill is kept. Its debrief is made ready meanwhile."
        self.lobby(said)

    def _note(self, words: str) -> None:
        try:
            self.trail.say(words)
        except TrailError as problem:
            self.window.page.say(str(problem))

    def let_go(self) -> None:
        """The trail is closed; a walk's driver with it."""
        if self.trail is not None:
            self.trail.close()
            self.trail = None
        self.window.close_visit()

    def close(self) -> None:
        """The window closes: nothing goes on behind it."""
        self.later.stop()
        self._leave_work()
        if self.preparing is not None:
            self.preparing.finished.disconnect()
            self.preparing.kill()
            self.preparing.waitForFinished(2000)

    def _leave_work(self) -> None:
        self.let_go()
        if self.houses is not None:
            self.houses.end()
            self.houses = None
        self.work = self.page = None

    # -- the shop's visits

    def _finished(self) -> dict[str, str]:
        """Signed visits that found something, in the words of the complaint and the day."""
        found = {}
        for one in self.window.desk.visits():
            if one.state == SIGNED:
                said = "; ".join(words for _, words in one.complaints)
                found[str(one.folder)] = f"{day(one.began)}: {said}"
        return found

    def _of_visit(self, folder: str, difficulty: str) -> Drill:
        trail = read_trail(Path(folder))
        opened = next((event for event in trail.events if isinstance(event, Opened)), None)
        if opened is None or trail.practice:
            raise UserError("That is no visit.")
        visit = begin(kept_library(Path(folder), opened))
        for event in trail.events:
            try:
                visit = fold(visit, event)
            except (BadAnswer, OutOfOrder):
                break
        data = {}
        if visit.person is not None:
            data = person(Path(folder), visit.person) or {}
        return of_visit(visit, self.faults, data, difficulty)
