"""The window: one column of attention, the path at its left, and one page at a time.

A step's page is built from what the visit asks and thrown away once it is answered. Pages opened from it lie
over it, and it waits underneath with whatever was typed. The trail is the truth; the window only shows it.
"""

from __future__ import annotations

import contextlib
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent
from PySide6.QtGui import QCloseEvent, QKeySequence, QResizeEvent, QShortcut
from PySide6.QtWidgets import QHBoxLayout, QMainWindow, QStackedWidget, QVBoxLayout, QWidget

from assistant.window import look
from assistant.window.awake import Awake
from assistant.window.desk import Desk, OpenElsewhere
from assistant.window.head import Head
from assistant.window.keys import ACTIONS, AT_START, CLOSE
from assistant.window.margin import Margin
from assistant.window.page.base import NARROW, TINY, WIDE, Page
from assistant.window.page.start import NoticePage, StartPage
from assistant.window.refused import Refused
from assistant.window.text import banner

if TYPE_CHECKING:
    from assistant.walk.ask import Ask
    from assistant.window.beginning import Beginning
    from assistant.window.session import Driver

WITHOUT_VISIT = ("hazard", "help", "sheet", *(action.name for action in AT_START))
OVER = ("hazard", "help", "drawing", "sheet", "more", *(action.name for action in AT_START))
"""Pages only looked at: opened from another page beside the walk, they lie over it and lead back to it."""


class Window(QMainWindow):
    """`desk` gives visits. Nothing is shown before `begin` or `show_visit`."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = desk
        self.driver: Driver | None = None
        self.beginning: Beginning | None = None
        self.awake = Awake()
        self.mode = NARROW
        self._before: tuple[Ask, str | None] | None = None
        self.room = None
        self.setWindowTitle("Fault Trail")
        self.setMinimumSize(480, 280)
        self.head = Head()
        self.head.opens.connect(self.open)
        self.margin = Margin()
        self.margin.asked.connect(lambda step: self.open("back", step))
        self.stack = QStackedWidget()
        middle = QWidget()
        column = QVBoxLayout(middle)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.head)
        across = QHBoxLayout()
        across.setSpacing(0)
        across.addWidget(self.margin)
        across.addWidget(self.stack, 1)
        column.addLayout(across, 1)
        self.setCentralWidget(middle)
        for action in (*ACTIONS, *AT_START, CLOSE):
            shortcut = QShortcut(QKeySequence(action.key), self)
            shortcut.activated.connect(lambda name=action.name: self.open(name))
        self._fold()

    @property
    def page(self) -> Page | None:
        """The page on top."""
        return self.stack.currentWidget()

    @property
    def step_page(self) -> Page | None:
        """The page of what is asked, which may lie under another."""
        return self.stack.widget(0)

    def begin(self) -> None:
        """The notice at the very first start, then the list of visits."""
        if self.desk.first_time():
            page = NoticePage()
            page.left.connect(lambda: (self.desk.notice_read(), self.show_start()))
            self._put(page)
        else:
            self.show_start()

    def warm_up(self) -> None:
        """Load what the first visit needs, while the list of visits is already there to be read."""
        from assistant.window import open_page  # noqa: F401 - loading it is the point

        len(self.desk.library.trees)

    def show_start(self, said: str = "") -> None:
        self.close_visit()
        page = StartPage(self.desk)
        page.picked.connect(self.take_up)
        page.call.connect(self.take_up_call)
        page.opens.connect(lambda name: self.new_visit() if name == "new" else self.open(name))
        self._put(page)
        if said:
            page.say(said)

    def new_visit(self, fresh: bool = True) -> None:
        """Which complaint; `fresh` forgets what was written down for another one."""
        problems = self.desk.problems
        if problems or not self.desk.library.vocabulary.complaints:
            wrong = str(problems[0]) if problems else "there are none"
            self.page.say(f"No new visit with these trees before they are mended: {wrong}")
            return
        from assistant.window.beginning import Beginning

        self.beginning = self.beginning or Beginning(self)
        if fresh:
            self.beginning.forget()
        self.beginning.choose()

    def take_up_call(self, folder: Path) -> None:
        """A telephone call from the list, where it was interrupted."""
        from assistant.window.beginning import Beginning

        self.beginning = self.beginning or Beginning(self)
        self.beginning.forget()
        self.beginning.take_up_call(folder)

    def take_up(self, folder: Path, take_over: bool = False, join: str | None = None) -> None:
        """A visit from the list, where it stopped."""
        try:
            self.show_visit(self.desk.take_up(folder, take_over, join))
        except OpenElsewhere as problem:
            self.page.offer_to_take_over(str(problem), lambda: self.take_up(folder, True))
        except Refused as problem:
            self.page.say(str(problem))

    def show_visit(self, driver: Driver) -> None:
        self.close_visit()
        self.driver = driver
        driver.setParent(self)
        driver.changed.connect(self._answered)
        self.awake.keep()
        self.show_ask()
        from assistant.walk.around import sent_out

        typed = ", ".join(driver.unsaved())
        unsaved = [f"Typed before and not saved yet: {typed}. It stands there still."] if typed else []
        for remark in (*unsaved, *getattr(driver.live, "remarks", ()), *sent_out(driver.visit)):
            self.page.column.insertWidget(0, banner(remark))

    def show_ask(self) -> None:
        """A fresh page for what is asked now."""
        from assistant.window import open_page
        from assistant.window.page.may_open import MayOpenPage

        ask = self.driver.ask()
        if ask.untold and not self.driver.read_only and self.driver.practice is None:
            page = MayOpenPage(self.driver, self.desk, ask)
        else:
            page = open_page.for_ask(self.driver, ask)
        self.driver.shown = len(self.driver.visit.history)
        page.left.connect(self.show_ask)
        page.opens.connect(self.open)
        if hasattr(page, "joins"):
            page.joins.connect(lambda name, folder=self.driver.folder: self._join(folder, name))
        if self.driver.practice is not None:
            page = self.driver.practice.dressed(page, ask)
        self._put(page)

    def show_page(self, page: Page) -> None:
        """A page that belongs to no visit, and no other."""
        page.opens.connect(self.open)
        self._put(page)

    def lay_page(self, page: Page) -> None:
        """A page over the present one, which waits underneath."""
        self._lay(page)

    def unlay_page(self) -> None:
        """Back to what waits underneath."""
        if self.stack.count() > 1:
            self._drop(self.stack.count() - 1)
            self.stack.setCurrentIndex(self.stack.count() - 1)
        elif self.driver is not None:
            self.show_ask()

    def drills(self) -> None:
        """Practice on a simulated house; not while a visit is open."""
        if self.driver is None:
            from assistant.window.page.drill.room import DrillRoom

            self.room = self.room or DrillRoom(self)
            if self.room.busy:
                self.page.say("A drill is under way. End it first.")
            else:
                self.room.lobby()

    def _join(self, folder: Path, name: str) -> None:
        """Go on with a visit that two computers wrote, once somebody has read both sides."""
        self.driver.close()
        self.take_up(folder, join=name)

    def open(self, name: str, step: str | None = None) -> None:
        """A page beside the walk, by the name of its action."""
        if name == "call_back" and self.driver is not None:
            self.come_back()
            return
        if name == CLOSE.name:
            if self.driver is not None:
                self.show_start()
            return
        if self.driver is None and name.partition(":")[0] not in WITHOUT_VISIT:
            return
        if name == "drills":
            self.drills()
            return
        practice = self.driver.practice if self.driver is not None else None
        if practice is not None and not practice.allows(name):
            self.page.say("Not in a drill: that belongs to a visit.")
            return
        if (
            self.driver is not None
            and self.driver.visit.signed is not None
            and name not in ("help", "hazard")
        ):
            return
        if self.stack.count() == 1:
            self._before = self._asked()
        picture = getattr(self.step_page, "picture", None)
        from assistant.window import open_page

        page = open_page.aside(name, self.driver, self.desk, step, picture)
        page.left.connect(self.back_to_it)
        page.opens.connect(self.open)
        if hasattr(page, "shown"):
            page.shown.connect(self._show_stop)
            if self.room is not None:
                page.shown.connect(self.room.call_out)
        page.looked_at = name.partition(":")[0] in OVER
        self._drop(2 if page.looked_at and self._waits_beneath() else 1)
        self._lay(page)

    def _waits_beneath(self) -> bool:
        """Whether a page beside the walk lies open that may hold something typed."""
        return self.stack.count() > 1 and not self.stack.widget(1).looked_at

    def back_to_it(self) -> None:
        """Back from a page beside the walk; what is asked may have changed meanwhile."""
        if self._asked() != self._before:
            self.show_ask()
            return
        beneath = max(1, self.stack.count() - 1)
        self._drop(beneath)
        self.stack.setCurrentIndex(beneath - 1)
        self._told()

    def _asked(self) -> tuple[Ask, str | None] | None:
        """What the step's page was made from: while it is the same, that page stays as it is."""
        return (self.driver.ask(), self.driver.visit.instrument) if self.driver is not None else None

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fold()

    def changeEvent(self, event: QEvent) -> None:
        """The system turned dark, light or to high contrast: the sheet follows."""
        super().changeEvent(event)
        if event.type() in (QEvent.Type.PaletteChange, QEvent.Type.ApplicationPaletteChange):
            look.follow_palette()

    def closeEvent(self, event: QCloseEvent) -> None:
        if self.room is not None:
            self.room.close()
        self.close_visit()
        if self.beginning is not None:
            self.beginning.let_go()
        self.desk.close()
        self.awake.let_go()
        super().closeEvent(event)

    def come_back(self) -> None:
        """A call-back: a new visit to where the open one was."""
        from assistant.window.beginning import Beginning

        self.beginning = self.beginning or Beginning(self)
        self.beginning.again(self.driver)

    def _show_stop(self, page: str) -> None:
        """What to do in danger, before there is a visit to record it in."""
        from assistant.walk.ask import Ask
        from assistant.window.page.stop import StopPage

        told = StopPage(None, Ask("stop", page=page), self.desk.library.vocabulary)
        told.left.connect(self.back_to_it)
        self._drop(1)
        self._lay(told)

    def _put(self, page: Page) -> None:
        """This page and no other."""
        self._lay(page)
        while self.stack.count() > 1:
            self._remove(self.stack.widget(0))
        self._told()

    def _lay(self, page: Page) -> None:
        page.fold(self.mode)
        self.stack.addWidget(page)
        self.stack.setCurrentWidget(page)

    def _drop(self, keep: int) -> None:
        while self.stack.count() > keep:
            self._remove(self.stack.widget(self.stack.count() - 1))

    def _remove(self, page: QWidget) -> None:
        self.stack.removeWidget(page)
        page.hide()
        page.deleteLater()

    def _answered(self) -> None:
        """An answer is on disk: the path shows it while the page still shows its verdict. Where it says whose
        house or which unit this is, our earlier visits there are looked up.
        """
        from assistant.walk.event import Filled, Person

        last = self.driver.visit.events[-1]
        if isinstance(last, Person) or (isinstance(last, Filled) and last.sheet == "unit"):
            from assistant.window.beginning import recall

            with contextlib.suppress(Refused):
                recall(self, self.driver)
        self.head.strip.show_path(self.driver)
        self.margin.show_path(self.driver)

    def _told(self) -> None:
        self.head.show_visit(self.driver)
        if self.driver is not None:
            self.margin.show_path(self.driver)
        self.margin.setVisible(self.driver is not None and self.mode == WIDE)

    def _fold(self) -> None:
        wide, tall = self.width(), self.height()
        mode = WIDE if wide >= look.WIDE else TINY if wide < look.TINY[0] or tall < look.TINY[1] else NARROW
        if mode != self.mode:
            self.mode = mode
            for index in range(self.stack.count()):
                self.stack.widget(index).fold(mode)
        self.head.fold(mode)
        self.margin.setVisible(self.driver is not None and mode == WIDE)

    def close_visit(self) -> None:
        """Let go of the visit; the page that shows stays."""
        if self.driver is not None:
            self.driver.close()
            self.driver.deleteLater()
            self.driver = None
