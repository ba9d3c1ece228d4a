"""The whole tree as a diagram: where the walk is in it, what is wrong in its file, any step by its words."""

from __future__ import annotations

from dataclasses import dataclass, field

from PySide6.QtCore import Qt
from PySide6.QtGui import QHideEvent, QKeyEvent
from PySide6.QtWidgets import QPushButton, QWidget

from assistant.errors import UserError
from assistant.house.place import Problem
from assistant.tree.chart.faults import sorted_to_steps
from assistant.tree.chart.sheets import Walked, draw
from assistant.tree.chart.wording import details
from assistant.tree.library import Library
from assistant.tree.model import PURPOSES, Call, Step, Tree, question_of
from assistant.window import files
from assistant.window.chart_view import STEP, ChartView
from assistant.window.desk import Desk
from assistant.window.flow import Flow
from assistant.window.line import Line
from assistant.window.look import TARGET
from assistant.window.page.aside.base import AsidePage
from assistant.window.page.base import TINY
from assistant.window.session import Driver
from assistant.window.tree_watch import TreeWatch

PAN = 0.35
"""Share of the window by which an arrow key moves."""
PANS = {Qt.Key.Key_Left: (-PAN, 0), Qt.Key.Key_Right: (PAN, 0), Qt.Key.Key_Up: (0, -PAN),
        Qt.Key.Key_Down: (0, PAN), Qt.Key.Key_PageUp: (0, -0.9), Qt.Key.Key_PageDown: (0, 0.9)}


@dataclass
class Drawn:
    """What is drawn: a library and the tree's name in it, and what is wrong in its file."""

    library: Library
    name: str
    problems: list[Problem] = field(default_factory=list)
    from_disk: bool = False

    @property
    def tree(self) -> Tree:
        return self.library.trees[self.name]


class TreePage(AsidePage):
    """`watch` reads the folder of the trees; None where nothing is looked for there."""

    title = "The tree"
    takes_digits = False

    def __init__(self, driver: Driver | None, library: Library, watch: TreeWatch | None = None,
                 parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        self.heading.hide()
        self.column.setSpacing(6)
        self.inside = _inside(driver)
        name = next((one for one in self.inside if one in library.trees), "")
        name = name or next((one for one in _names(library)), "")
        self.drawn = Drawn(library, name) if name else None
        self.only_path = False
        self.found: list[str] = []
        self._at = -1
        self.view = ChartView()
        self.find = Line("Find a step")
        self.find.setPlaceholderText("find: a word of a question or finding, a step's name or number")
        self.find.textChanged.connect(self._search)
        self.find.returnPressed.connect(self.next_found)
        self.find.down.connect(self.view.setFocus)
        self.column.addWidget(self.find)
        self.column.addWidget(self.view, 1)
        self.view.picked.connect(self._tell)
        self.buttons = Flow()
        self._make_buttons(library)
        self.own.addLayout(self.buttons)
        self.watch = watch
        if watch is not None:
            watch.setParent(self)
            watch.read.connect(self._read)
        if self.drawn is None:
            self.say("There is no tree that could be drawn.")

    def _make_buttons(self, library: Library) -> None:
        several = len(list(_names(library))) > 1
        self.folded: list[QPushButton] = []
        for words, says, does, wanted in (
            ("+ Larger", "Larger (+)", lambda: self.view.zoom(STEP), True),
            ("- Smaller", "Smaller (-)", lambda: self.view.zoom(1 / STEP), True),
            ("Here", "Here: where the walk is (Home)", self.go_here, self.walked.here is not None),
            ("Path only", "Path only: fold the rest away (F)", self.fold_path, bool(self.walked.steps)),
            ("Errors", "Errors: go to the next step that the checker finds wrong (E)", self.next_error,
             self.drawn is not None),
            ("Other tree", "Other tree (T)", self.next_tree, several),
            ("Print", "Print: save as a PDF for the wall (P)", self.print_it, True),
        ):
            button = QPushButton(words)
            button.setAccessibleName(says)
            button.setToolTip(says)
            button.setMinimumHeight(TARGET)
            button.clicked.connect(lambda _=False, does=does: does())
            if wanted:
                self.buttons.addWidget(button)
                if words not in ("+ Larger", "- Smaller"):
                    self.folded.append(button)
            else:
                button.setParent(self)
                button.hide()

    # what is drawn

    @property
    def walked(self) -> Walked:
        """What of the drawn tree this visit has walked, and where it stands in it."""
        return _walked(self.driver, self.drawn.name) if self.drawn else Walked()

    def draw(self) -> None:
        """Lays the tree out anew."""
        if self.drawn is None:
            return
        tree, library = self.drawn.tree, self.drawn.library
        walked = self.walked
        kept = frozenset(walked.steps) if self.only_path and walked.steps else None
        titles = {other.name: other.title for other in library.trees.values()}
        faults = sorted_to_steps(self.drawn.problems, tree)
        self.view.show_chart(draw(tree, library.vocabulary, titles, "a3", walked, faults, kept))
        self._search(self.find.text(), go=False)

    def showEvent(self, event) -> None:
        super().showEvent(event)
        if not self.view.chart.sheets:
            self.draw()
            self.go_here()
        if self.watch is not None:
            self.watch.start()

    def hideEvent(self, event: QHideEvent) -> None:
        if self.watch is not None:
            self.watch.stop()
        super().hideEvent(event)

    def _read(self, library: Library, problems: list[Problem]) -> None:
        """The folder was read: its problems, and its tree where nothing walks an older text."""
        if self.drawn is None:
            return
        name = self.drawn.name
        if name not in library.trees:
            of_it = [one for one in problems if one.file == self.drawn.tree.file or one.file.endswith("/")]
            self.say(f"The file can't be drawn as it is now: {of_it[0]}" if of_it else "The file is gone.")
            return
        same = library.trees[name] == self.drawn.tree
        changed = not same or self.drawn.from_disk
        mine = [one for one in problems if one.file == library.trees[name].file]
        if same and mine == self.drawn.problems:
            return
        self.drawn = Drawn(library, name, mine, changed)
        self.draw()
        walks = not same and name in self.inside
        older = "This is the file as it is now; the visit goes on with the text it began with. "
        self.say((older if walks else "") + self._errors_said())

    def _errors_said(self) -> str:
        number = len(self.drawn.problems) if self.drawn else 0
        if not number:
            return "The checker finds nothing wrong in this file."
        errors = "error" if number == 1 else "errors"
        return f"The checker finds {number} {errors} in this file; E goes to the next."

    # what a person does

    def first_focus(self) -> QWidget:
        return self.view

    def go_here(self) -> None:
        """To the step that is asked now, else to the start."""
        if self.drawn is None:
            return
        here = self.walked.here
        if not (here and self.view.go_to(here)):
            self.view.go_to(self.drawn.tree.start)

    def fold_path(self) -> None:
        self.only_path = not self.only_path and bool(self.walked.steps)
        self.draw()
        self.go_here()
        alone = "Only the runs of steps that the path goes through; F unfolds the rest."
        self.say(alone if self.only_path else "")

    def next_error(self) -> None:
        if self.drawn is None:
            return
        wrong = list(sorted_to_steps(self.drawn.problems, self.drawn.tree).items())
        if not wrong:
            self.say(self._errors_said())
            return
        self._at = (self._at + 1) % len(wrong)
        step, said = wrong[self._at]
        self.view.mark((step,))
        self.view.go_to(step)
        self.say(f"Step {self._at + 1} of {len(wrong)} that is wrong, {step}: {said[0]}")

    def next_tree(self) -> None:
        if self.drawn is None:
            return
        known = [name for name in self.inside if name in self.drawn.library.trees]
        names = list(dict.fromkeys([*known, *_names(self.drawn.library)]))  # where the visit stands first
        name = names[(names.index(self.drawn.name) + 1) % len(names)]
        self.drawn = Drawn(self.drawn.library, name)
        self.draw()
        self.go_here()
        self.say(self.drawn.tree.title + (" - the walk is in it" if self.walked.here else ""))

    def next_found(self) -> None:
        if not self.found:
            self.say("No step has these words." if self.find.text().strip() else "")
            return
        self.found = [*self.found[1:], self.found[0]]
        self._show_found()

    def _search(self, text: str, go: bool = True) -> None:
        words = text.lower().split()
        number = self.view.chart.step_of(text.strip())
        steps = self.drawn.tree.steps.items() if words and self.drawn else ()
        self.found = [number] if number else [
            name for name, step in steps
            if all(word in f"{name} {question_of(step)} {self._said_of(step)}".lower() for word in words)]
        self.view.mark(tuple(self.found))
        if go and words:
            if self.found:
                self._show_found()
            else:
                self.say("No step has these words.")

    def _said_of(self, step: Step) -> str:
        """What its box says besides its question."""
        library = self.drawn.library if self.drawn else None
        called = library.trees.get(step.tree) if library and isinstance(step, Call) else None
        small = " ".join(details(step, library.vocabulary)) if library else ""
        return f"{called.title} {small}" if called else small

    def _show_found(self) -> None:
        name = self.found[0]
        self.view.mark(tuple(self.found))
        self.view.go_to(name)
        more = f" - {len(self.found)} found, Enter goes to the next" if len(self.found) > 1 else ""
        self._tell(name, more)

    def _tell(self, step: str, more: str = "") -> None:
        if self.drawn is not None and step in self.drawn.tree.steps:
            self.say(f"{step}: {question_of(self.drawn.tree.steps[step])}{more}", sure=False)

    def print_it(self) -> None:
        """Saves a PDF with a page for each sheet."""
        if self.drawn is None:
            return
        path = files.pick_file(self, f"{self.drawn.name}.pdf", "PDF (*.pdf)")
        if path is None:
            return
        from assistant.report.chart_pdf import to_pdf

        try:
            path.write_bytes(to_pdf(self.view.chart, "a3"))
            self.say(f"{len(self.view.chart.sheets)} sheets of A3 are in {path}.")
        except (OSError, UserError) as problem:
            self.say(f"It can't be saved there: {problem}")

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = event.key()
        plain = {Qt.Key.Key_F: self.fold_path, Qt.Key.Key_E: self.next_error, Qt.Key.Key_T: self.next_tree,
                 Qt.Key.Key_P: self.print_it, Qt.Key.Key_Home: self.go_here, Qt.Key.Key_0: self.view.fit,
                 Qt.Key.Key_Slash: self.find.setFocus}
        if key in PANS:
            self.view.move_by(*PANS[key])
        elif key in (Qt.Key.Key_Plus, Qt.Key.Key_Equal):
            self.view.zoom(STEP)
        elif key == Qt.Key.Key_Minus:
            self.view.zoom(1 / STEP)
        elif key in plain and not event.modifiers() & Qt.KeyboardModifier.AltModifier:
            plain[key]()
        else:
            super().keyPressEvent(event)

    def fold(self, mode: str) -> None:
        super().fold(mode)
        if hasattr(self, "find"):
            for thing in (self.find, *self.folded):  # the keys do the same where there is no room
                thing.setVisible(mode != TINY)


def open_tree(desk: Desk, driver: Driver | None) -> TreePage:
    """The page of the tree that is walked, or of the first complaint's; its folder is looked after."""
    library = driver.library if driver is not None else desk.library
    return TreePage(driver, library, TreeWatch(desk.tree_folder))


def _names(library: Library):
    """Trees in the order in which somebody looks for one: complaints first."""
    return (tree.name for tree in sorted(library.trees.values(), key=lambda one: PURPOSES.index(one.purpose)))


def _inside(driver: Driver | None) -> list[str]:
    """The trees that a visit stands in: what it goes through now first, then what leads there, the
    complaint's last; none without a visit."""
    position = driver.visit.position if driver is not None else None
    return [frame.tree for frame in reversed(position.stack)] if position is not None else []


def _walked(driver: Driver | None, name: str) -> Walked:
    """What of a tree a visit has walked. Where it stands in a tree that this one goes through, the step that
    leads there is where it is."""
    if driver is None or driver.visit.position is None:
        return Walked()
    visit = driver.visit
    here = next((frame.step for frame in reversed(visit.position.stack) if frame.tree == name), None)
    ways = {(one.step.partition(".")[2], one.way) for one in visit.path
            if one.step.startswith(f"{name}.") and one.way is not None}
    steps = {step for way in ways for step in way} | ({here} if here else set())
    return Walked(frozenset(ways), frozenset(steps), here)
