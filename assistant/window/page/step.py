"""The common part of every step: what came before it, the question, why, cautions, how, and the drawing."""

from __future__ import annotations

from PySide6.QtWidgets import QLineEdit, QPushButton, QVBoxLayout, QWidget

from assistant.house.cautions import SIGNAL_WORDS
from assistant.house.model import Caution
from assistant.tree.model import Common, Reading
from assistant.walk.ask import Ask, Taken
from assistant.walk.bench import just_worked_out
from assistant.walk.event import Cannot
from assistant.walk.past import Earlier, asked_off, earlier_of
from assistant.window import drawing, look, words
from assistant.window.caution import CautionSign
from assistant.window.keys import BY_NAME
from assistant.window.pad import Pad
from assistant.window.page.base import TINY, WIDE, Page
from assistant.window.page.offers import Offers
from assistant.window.session import Driver
from assistant.window.text import banner, label, row_of
from assistant.window.unproved import UnprovedList

CANNOT = ("No access", "No meter for it", "Not mine to open", "Not safe here", "Another reason")


class StepPage(Page):
    """Shows one Ask. Subclasses add what is answered."""

    cautions_folded = False
    """Whether cautions stand in one line each until asked for: where the fields need to be in sight."""
    fields_first = False
    """Whether the fields stand above the words that say how: where several must be in sight."""
    teaches = True
    gravest_first = False
    """Whether only the gravest caution stands in full (in a wide window the two gravest): the rest comes with
    the next page.
    """

    def __init__(self, driver: Driver, ask: Ask, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        self.ask = ask
        self.common: Common | None = ask.body.common if ask.body is not None else None
        self.offers = Offers()
        self.offers.toggled.connect(self._crowding_changed)
        self.foot_column.insertWidget(0, self.offers)
        self.pad: Pad | None = None
        self._told_before()
        if ask.in_front:
            self.add(banner(ask.in_front))
        self.question = label(words.spoken(ask, driver.vocabulary), look.QUESTION)
        self.add(self.question)
        self.essential = label("", bold=True)
        self.folded_way: QPushButton | None = None
        self.cautions: list[CautionSign] = []
        self._spare: list[tuple[CautionSign, CautionSign]] = []
        """Cautions that stand in one line, and in full where the window is wide."""
        self.why: QWidget | None = None
        if self.common is not None and self.common.why and self.teaches:
            self.why = self.add(label(self.fill(self.common.why), look.BODY, soft=True))
        self.add(self.essential)
        self.show_essential()
        self._told()
        self.column.addLayout(self.beside, 1)
        self._draw(self.points())
        self.unproved = UnprovedList(driver)
        self.side_column.addWidget(self.unproved, 1)

    def points(self) -> tuple[str, ...]:
        """The points to mark on the drawing."""
        points = self.common.at if self.common is not None else ()
        return points or (self.ask.readings[0].at if len(self.ask.readings) == 1 else ())

    def show_essential(self, *more: str) -> None:
        """What has to be seen without scrolling: where the leads go, the meter, the power."""
        act = self.driver.vocabulary.acts.get(self.ask.act or "")
        needs = self.common.needs if self.common is not None else act.needs if act else {}
        said = [*more, words.power(self.driver.vocabulary, needs, self.ask.circuit)]
        self.essential.setText("\n".join(part for part in said if part))
        self.essential.setVisible(bool(self.essential.text()))

    def fill(self, text: str) -> str:
        return words.fill(text, self.driver.vocabulary, self.ask.circuit)

    def earlier_reading(self, reading: Reading) -> Earlier | None:
        """The reading of an earlier visit to lay beside this one; none where the circuit is off."""
        if asked_off(self.ask.body):
            return None
        name = reading.name or (self.common.name if self.common else "")
        return earlier_of(self.driver.visit, reading.kind, reading.at, f"{self.ask.step}.{name}")

    def key(self, name: str) -> tuple[str, str]:
        """Where the draft of a field of this page is kept."""
        return self.ask.step, name

    def seen(self) -> None:
        """The cautions of this page count as read once the person answers; folded ones that were never
        opened do not, and the next page shows them in full.
        """
        if self.folded_way is None or self._unfolded:
            short = {sign.caution.name for sign, _ in self._spare if not self._whole(sign)}
            self.driver.cautions_seen(tuple(name for name in self.caution_names() if name not in short))

    def ask_why_not(self, back_to: QWidget) -> None:
        """Why it can't be taken; every answer goes the same way in the tree."""
        self.offers.ask(
            "Why can't it be taken?", [(why, lambda why=why: self.cannot(why)) for why in CANNOT], back_to
        )

    def cannot(self, why: str) -> None:
        self.seen()
        if self.record(Cannot(self.driver.now(), self.ask.step, why)):
            self.left.emit()

    def cannot_button(self, text: str = "&Can't take it") -> QPushButton:
        """The button for it, hidden where the tree knows no way on without an answer."""
        button = QPushButton(text)
        button.setMinimumHeight(look.TARGET)
        button.clicked.connect(lambda: self.ask_why_not(self.first_focus()))
        if getattr(self.ask.body, "cannot", None) is None:
            button.hide()  # never shown before it has a parent: it would be a window for a moment
        return button

    def stops(self) -> bool:
        """What was just saved is unsafe: STOP and the title of what to do now stand in the foot."""
        ask = self.driver.ask()
        if ask.kind != "stop":
            return False
        told = self.driver.vocabulary.stops.get(ask.page or "")
        self.say_stop(told.title if told else "leave it off")
        return True

    def choose(self, digit: int) -> None:
        self.offers.pick(digit)

    def toggle_pad(self, line: QLineEdit) -> None:
        """The number pad above the field, or away again."""
        if self.pad is None:
            self.pad = Pad()
            self.pad.hide()
            self.pad.entered.connect(self.enter)
            self.foot_column.insertWidget(self.foot_column.indexOf(self.verdict), self.pad)
        self.pad.line = line
        self.pad.setVisible(self.pad.isHidden())
        self.crowded()
        line.setFocus()

    def _crowding_changed(self) -> None:
        if self.mode == TINY and not self.offers.isHidden():
            self.scroll.verticalScrollBar().setValue(0)
        self.crowded()

    def fold(self, mode: str) -> None:
        """In a tiny window a question back stands at the top of the page and not in the foot."""
        super().fold(mode)
        for short, full in getattr(self, "_spare", ()):
            short.setVisible(not self._whole(short))
            full.setVisible(self._whole(short))
        if hasattr(self, "offers"):
            shown = not self.offers.isHidden()
            self.offers.setParent(None)
            (self.column if mode == TINY else self.foot_column).insertWidget(0, self.offers)
            self.offers.setVisible(shown)

    @property
    def crowding(self) -> bool:
        """Whether the pad or a question back takes room in the foot."""
        return (self.pad is not None and not self.pad.isHidden()) or not self.offers.isHidden()

    def crowded(self) -> None:
        """Called when that changes: a page with a scale puts it away meanwhile."""

    def _told_before(self) -> None:
        """What the walk worked out or passed over since the last page."""
        for taken in self.driver.visit.history[self.driver.shown :]:
            said = passed_words(self.driver, taken)
            if said:
                self.add(banner(said))
        if just_worked_out(self.driver.visit) in self.driver.visit.history[self.driver.shown :]:
            action = BY_NAME["workbench"]
            button = QPushButton(f"On the workbench ({action.key})")
            button.setMinimumHeight(look.TARGET)
            button.clicked.connect(lambda: self.opens.emit(action.name))
            self.add(row_of(button))

    def _whole(self, short: CautionSign) -> bool:
        """Whether this one stands in full: a wide window has room for a second one."""
        return self.mode == WIDE and short is self._spare[0][0]

    def caution_names(self) -> tuple[str, ...]:
        """Those of the step and of the act that it is."""
        own = self.common.caution if self.common is not None else ()
        act = self.driver.vocabulary.acts.get(self.ask.act or "")
        return tuple(dict.fromkeys((*own, *((*act.caution, *act.warns) if act else ()))))

    def _told(self) -> None:
        known = self.driver.vocabulary.cautions
        self._caution([known[name] for name in self.caution_names() if name in known])
        if not self.fields_first:
            self._how()

    def _caution(self, cautions: list[Caution]) -> None:
        """Full ones beside the drawing; where the fields need that room, one line each and a button."""
        new = [self.driver.caution_is_new(each.name) for each in cautions]
        folded = self.cautions_folded
        self.cautions = [
            CautionSign(each, full and not folded) for each, full in zip(cautions, new, strict=True)
        ]
        if not folded:
            full = [sign for sign in self.cautions if sign.full]
            spare = sorted(full, key=lambda sign: SIGNAL_WORDS.index(sign.caution.word))[1:]
            for sign in self.cautions:
                self.words.addWidget(sign)
                if self.gravest_first and sign in spare:
                    short = CautionSign(sign.caution, False)
                    self.words.addWidget(short)
                    self._spare.append((short, sign))
            return
        rows = QVBoxLayout()
        rows.setSpacing(2)
        self._unfolded = False
        self._full_cautions = [CautionSign(each, True) for each in cautions]
        for sign in (*self.cautions, *self._full_cautions):
            if sign.full:
                sign.hide()
            rows.addWidget(sign)
        self.column.insertLayout(self.column.indexOf(self.essential) + 1, rows)
        if cautions:
            self.folded_way = QPushButton("Cautions in &full")
            self.folded_way.setCheckable(True)
            self.folded_way.setMinimumHeight(look.TARGET)
            self.folded_way.toggled.connect(self._unfold)

    def _unfold(self, full: bool) -> None:
        """The whole messages, or one line each again."""
        self._unfolded = True
        for sign in (*self.cautions, *self._full_cautions):
            sign.setVisible(sign.full == full)
        if full:
            self.scroll.verticalScrollBar().setValue(0)

    def _how(self) -> None:
        for line in self.common.how if self.common is not None else ():
            self.words.addWidget(label(self.fill(line)))

    def close_words(self) -> None:
        """What stands below the page's own fields: how, where it was not told yet, and what an apprentice
        asks.
        """
        if self.fields_first:
            self._how()
        if self.common is not None and self.common.teach and self.teaches:
            self._teach(self.fill(self.common.teach))
        self.words.addStretch(1)

    def _teach(self, said: str) -> None:
        """The two sentences for the apprentice, shut until asked for."""
        button = QPushButton("E&xplain")
        button.setCheckable(True)
        button.setMinimumHeight(look.TARGET)
        text = label(said)
        text.hide()
        button.toggled.connect(text.setVisible)
        row = row_of(button)
        self.words.addWidget(row)
        self.words.addWidget(text)

    def _draw(self, points: tuple[str, ...]) -> None:
        name = drawing.choose(self.driver.vocabulary, points)
        if name is None:
            return
        view = drawing.DrawingView(name, points, words.leads(self.driver.vocabulary, points))
        view.pressed.connect(lambda: self.opens.emit("drawing"))
        self.place_picture(view)


def retake_words(driver: Driver, said: str) -> str:
    """Why the same is asked once more, and what would settle it."""
    taken = driver.visit.history[-1] if driver.visit.history else None
    settles = [record.settles for record in taken.records if record.settles] if taken else []
    return " ".join([said, *dict.fromkeys(settles)])


def passed_words(driver: Driver, taken: Taken) -> str:
    """What to say on the next page about a step that asked nothing; empty where there is nothing to say."""
    if taken.verb == "compute":
        record = taken.records[0] if taken.records else None
        if record is None:
            return taken.answer[:1].upper() + taken.answer[1:] + "."
        verdict = f" – {record.verdict.words}" if record.verdict and record.verdict.bands else ""
        settles = f". {record.settles}" if record.settles else ""
        return f"Worked out: {record.computed or record.echo}{verdict}{settles}"
    if taken.passed:
        asked = words.question_at(driver.library, taken.step)
        return f"Passed over: {asked} ({taken.answer})"
    return ""
