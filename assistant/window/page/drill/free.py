"""Free in the house: lay leads, look, switch, wait. Nobody says what comes next."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QPoint, Qt, QTimer
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import (
    QBoxLayout,
    QButtonGroup,
    QHBoxLayout,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from assistant.drill.practice.meter import FUNCTIONS
from assistant.drill.practice.script import seconds
from assistant.drill.practice.sitting import CantDo, Sitting
from assistant.trail.error import TrailError
from assistant.window import look
from assistant.window.page.base import TINY, WIDE, Page
from assistant.window.page.drill.can_do import (
    DO,
    LEADS_TOGETHER,
    LOG,
    LOOK,
    METER,
    ONCE,
    PLATE,
    WAIT,
    listed,
    plate_words,
    said_minutes,
)
from assistant.window.page.drill.foot import FreeFoot
from assistant.window.page.drill.house_view import TITLES, HouseView, drawings
from assistant.window.page.drill.picker import Picker, toggle
from assistant.window.page.drill.slots import Slots
from assistant.window.text import label

MODES = ((METER, "&Meter"), (LOOK, "&Look"), (DO, "D&o"), (WAIT, "&Wait"), (LOG, "So &far"))
NEXTS = {METER: "&Read", LOOK: "Loo&k at it", DO: "Do &it", WAIT: "Wait so lon&g", LOG: "&Read"}
SAY_FIRST = "First say what you expect: a value, a range (50-100), or a word (OL, dead)."


class FreePage(Page):
    """`finish` is asked for by its button; the room shows what comes then."""

    takes_digits = False
    keeps_line = True

    def __init__(
        self,
        sitting: Sitting,
        predict: bool,
        finish: Callable[[], None],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(None, parent)
        self.sitting, self.predict, self.finish = sitting, predict, finish
        self.vocabulary = sitting.library.vocabulary
        self.mode_of_work = METER
        self.practice = label("", look.SMALL, bold=True)
        said = f"\u201c{sitting.drill.words}\u201d {sitting.drill.senses}".strip()
        self.says = label(said, look.BODY)
        self.column.setSpacing(4)
        self.column.addWidget(self.practice)
        self.column.addWidget(self.says)
        self.across = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self.across.setSpacing(12)
        self.across.addLayout(self._left(), 5)
        self.across.addLayout(self._right(), 4)
        self.column.addLayout(self.across, 1)
        self._lay_foot()
        self.work(METER)
        self._tell_time()

    # -- laying out

    def _left(self) -> QVBoxLayout:
        column = QVBoxLayout()
        column.setSpacing(4)
        tabs = QHBoxLayout()
        tabs.setSpacing(4)
        self.tabs = QButtonGroup(self)
        names = drawings(self.vocabulary)
        self.view = HouseView(self.vocabulary, names[0] if names else "control")
        for name in names:
            button = toggle(TITLES[name])
            button.setChecked(name == names[0])
            button.clicked.connect(lambda _=False, name=name: self.turn_to(name))
            button.setObjectName(name)
            self.tabs.addButton(button)
            tabs.addWidget(button)
        self.view.laid.connect(self.lay)
        column.addLayout(tabs)
        column.addWidget(self.view, 1)
        return column

    def _right(self) -> QVBoxLayout:
        column = QVBoxLayout()
        column.setSpacing(4)
        row = QHBoxLayout()
        row.setSpacing(4)
        self.modes: dict[str, QPushButton] = {}
        group = QButtonGroup(self)
        for name, words in MODES:
            button = toggle(words)
            button.clicked.connect(lambda _=False, name=name: self.work(name))
            group.addButton(button)
            self.modes[name] = button
            row.addWidget(button)
        column.addLayout(row)
        self.slots = Slots(self.sitting)
        self.slots.turned.connect(self._turn_to_slot)
        column.addWidget(self.slots)
        self.picker = Picker("Points", heading=False, least=70)
        self.picker.picked.connect(self.took)
        self.picker.moved.connect(lambda _: self._say_next())
        self.picker.several.connect(
            lambda count: self.say(f"{count} fit. Nothing was done: pick one with the arrows, then Enter.")
        )
        column.addWidget(self.picker, 1)
        return column

    def _lay_foot(self) -> None:
        self.foot_line = FreeFoot(self.enter, self.finish, self._stood)
        self.display, self.expected = self.foot_line.display, self.foot_line.expected
        self.ends = self.foot_line.end
        self.own.addLayout(self.foot_line)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        QTimer.singleShot(0, self, self._say_slots)

    def fold(self, mode: str) -> None:
        """In a tiny window what is worked with stands above the drawing, the end of the drill below it."""
        super().fold(mode)
        if not hasattr(self, "across"):
            return
        tiny = mode == TINY
        self.across.setDirection(
            QBoxLayout.Direction.BottomToTop if tiny else QBoxLayout.Direction.LeftToRight
        )
        self.next_button.setMinimumWidth(96 if tiny else 170)  # one width for all its words
        self.view.setMinimumHeight(200 if tiny else 140)
        self.column.removeWidget(self.ends)
        end = self.foot_line.fold(tiny)
        if tiny:
            self.column.addWidget(end)
        self.picker.list.setMinimumHeight(96 if tiny else 70)
        self.says.setFont(look.font(look.LEAD if mode == WIDE else look.BODY))
        self.keeps_line = not tiny
        self.say(self.verdict.text())

    # -- choosing

    def first_focus(self) -> QWidget:
        return self.picker.find

    def work(self, name: str) -> None:
        """Meter, look, do, wait, or what was done so far."""
        if name != self.mode_of_work:
            self.say("")  # what was said belongs to what was done before
        self.mode_of_work = name
        self.picker.twice, self.picker.selects = name in ONCE, name != WAIT
        self.modes[name].setChecked(True)
        self.slots.setVisible(name == METER)
        self.expected.setVisible(name in (METER, LOOK) and self.predict)
        self.display.setVisible(name in (METER, LOG))
        if name == METER:
            self.set_slot(self.slots.slot)
        else:
            self.picker.show_items(*listed(self.mode_of_work, self.sitting))
        self._say_next()
        self.picker.careful = name == DO
        self.picker.find.setFocus()
        QTimer.singleShot(0, self, self._into_sight)

    def _into_sight(self) -> None:
        """In a tiny window the row of what to do is the first thing in sight, and the search below it."""
        if self.mode == TINY:
            top = self.modes[METER].mapTo(self.scroll.widget(), QPoint(0, 0)).y()
            self.scroll.verticalScrollBar().setValue(top - 4)
            self.scroll.ensureWidgetVisible(self.picker.find, 0, 4)

    def set_slot(self, name: str) -> None:
        """What the next pick is for: the function, the red lead, or the black one."""
        name = self.slots.turn_to(name)
        functions = {one: function.title for one, function in FUNCTIONS.items()}
        items = functions if name == "function" else self._points()
        title = "Functions of the meter" if name == "function" else f"Points for the {name} lead"
        self.picker.show_items(title, items, self.slots.chosen())
        self._say_slots()

    def _turn_to_slot(self, name: str) -> None:
        """Pressed: what is typed next searches for it."""
        self.set_slot(name)
        self.picker.find.setFocus()

    def took(self, name: str) -> None:
        """Something of the list was picked."""
        if self.mode_of_work == METER:
            self._laid(name)
        elif self.mode_of_work != LOG:
            self.enter()

    def lay(self, point: str) -> None:
        """A tap on the drawing lays the lead whose turn it is."""
        if self.mode_of_work != METER:
            self.work(METER)
        if self.slots.slot == "function":
            self.set_slot("red")
        self._laid(point)

    def turn_to(self, name: str) -> None:
        """Another drawing."""
        for button in self.tabs.buttons():
            button.setChecked(button.objectName() == name)
        self.view.turn_to(name)
        if self.mode_of_work == METER:
            self.set_slot(self.slots.slot)
        if self.mode == TINY:
            self.scroll.ensureWidgetVisible(self.view, 0, 0)

    def _laid(self, name: str) -> None:
        was = self.slots.slot
        after = self.slots.take(name)
        if was != "function":
            drawing = self.vocabulary.points[name].drawing
            if drawing != self.view.drawing and name not in self.view.known:
                self.turn_to(drawing)
        self.display.blank()
        self.set_slot(after)
        self._say_next()

    # -- doing

    def enter(self) -> None:
        """Read, look, do or wait."""
        self.picker.tapped = ""
        try:
            {METER: self._read, LOOK: self._look, DO: self._do, WAIT: self._wait, LOG: lambda: None}[
                self.mode_of_work
            ]()
        except CantDo as problem:
            self.say(str(problem))
        except TrailError as problem:
            self.say(f"It was done, and could not be written down: {problem}")
        self._tell_time()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.work(METER)
        else:
            super().keyPressEvent(event)

    def _foretold(self) -> bool:
        """Whether what is expected was said, where that is asked for."""
        if not self.predict or self.expected.text().strip():
            return True
        self.say(SAY_FIRST)
        self.expected.setFocus()
        return False

    def _read(self) -> None:
        if missing := self.sitting.meter.missing():
            raise CantDo(missing)
        if not self._foretold():
            return
        frames = self.sitting.read(self.expected.text().strip())
        self.say("")
        self.expected.clear()
        self.display.run(frames)

    def _stood(self, text: str) -> None:
        entry = self.sitting.log.entries[-1] if self.sitting.log.entries else None
        expected = f" You expected {entry.expected}." if entry is not None and entry.expected else ""
        self.say(f"{text}.{expected}")

    def _look(self) -> None:
        name = self._present()
        if name == PLATE:
            self.picker.show_items("Rating plate", plate_words(self.sitting))
            return
        if name not in self.sitting.things() or not self._foretold():
            return
        shown = self.sitting.look(name, self.expected.text().strip())
        title = self.sitting.things()[name]
        self.expected.clear()
        self.say(f"{title[:1].upper()}{title[1:]}: {shown}.")

    def _do(self) -> None:
        name = self._present()
        if not name:
            raise CantDo("Pick what to do.")
        if name == LEADS_TOGETHER:
            self.say(f"The two leads held together, on ohms: {self.sitting.leads_together()}.")
            return
        said = self.sitting.acts().get(name, "")
        happened = self.sitting.act(name)
        self.say(f"Done: {said}.{self._heard(happened)}")
        self._list_anew()

    def _wait(self) -> None:
        text = self.picker.chosen or self.picker.find.text().strip()
        if not text:
            raise CantDo("Pick how long, or type a time such as 90 s.")
        happened = self.sitting.wait(seconds(text))
        self.say(f"{text} later.{self._heard(happened) or ' Nothing was heard or seen to happen.'}")
        self._list_anew()

    def _list_anew(self) -> None:
        """Nothing is selected after something was done: a second press does nothing."""
        self.picker.show_items(*listed(self.mode_of_work, self.sitting))
        self.picker.find.setFocus()

    def _heard(self, happened) -> str:
        words = [f"{self.vocabulary.happens.get(name, name)} after {at:.0f} s" for name, at in happened]
        return f" You notice: {'; '.join(words)}." if words else ""

    def _present(self) -> str:
        if not self.picker.chosen and self.picker.list.count() == 1:
            self.picker.list.setCurrentRow(0)
        return self.picker.chosen

    # -- saying

    def _points(self) -> dict[str, str]:
        """Every point, those of the drawing that shows first."""
        points = self.sitting.points()
        here = {name: points[name] for name in self.view.known if name in points}
        return {**here, **points}

    def _say_slots(self) -> None:
        self.slots.say()
        self.view.say_leads(self.slots.laid())

    def _say_next(self) -> None:
        typed = bool(self.picker.find.text().strip())
        ready = self.mode_of_work in ONCE and (typed or bool(self.picker.chosen))
        if self.mode_of_work == METER:
            ready = not self.sitting.meter.missing()
        self.set_next(NEXTS[self.mode_of_work], ready)

    def _tell_time(self) -> None:
        self.practice.setText(
            f"PRACTICE on a simulated house \u00b7 {said_minutes(self.sitting.minutes)} in the house"
        )
