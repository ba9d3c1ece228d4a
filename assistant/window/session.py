"""The window's one handle on a visit: what is asked, what a text would mean, and sending an answer.

An answer is tried, written and synced before the next question shows (assistant/trail/live.py). Widgets judge
nothing; they ask here.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

from PySide6.QtCore import QObject, Signal

from assistant.errors import UserError
from assistant.house.model import Vocabulary
from assistant.trail.clock import now as wall_clock
from assistant.trail.draft import draft_of, keep_draft
from assistant.trail.error import TrailError
from assistant.trail.keep import person
from assistant.tree.library import Library
from assistant.tree.model import Reading
from assistant.walk.ask import Ask
from assistant.walk.event import Event, Exported
from assistant.walk.state import BadAnswer, OutOfOrder, Visit
from assistant.walk.visit import asked
from assistant.walk.weigh import Weighed, weigh, weigh_loose, weigh_reading
from assistant.window.drafts import Drafts, unsaved
from assistant.window.refused import Refused


class Driver(QObject):
    """One open visit. `changed` is sent after every answer that was taken.

    `live` is the visit with its recorder (assistant/trail/live.py); `now` gives the time with its offset, and
    tests put their own clock in.
    """

    changed = Signal()
    practice: Any = None
    """The drill that this is part of (assistant/window/page/drill/room.py); None on a visit."""

    def __init__(self, live: Any, now: Callable[[], str] = wall_clock, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.live, self.now = live, now
        kept = None if self.read_only or self.visit.signed is not None else self.folder
        self.drafts = Drafts(kept, self.library.trees, self)
        """What was typed and not sent yet: (page or step, name) -> text. A page built anew finds it here."""
        self._cautioned: dict[str, tuple] = {}
        self.perhaps: list[tuple[Path, str]] = []
        """Visits that may have been here too (assistant/window/desk.py), offered to be looked at."""
        self.shown = len(self.visit.history)
        """How many steps the person has seen; what the walk did by itself after them is told on the next
        page.
        """

    @property
    def visit(self) -> Visit:
        return self.live.visit

    @property
    def recorder(self) -> Any:
        return self.live.recorder

    @property
    def library(self) -> Library:
        return self.visit.library

    @property
    def vocabulary(self) -> Vocabulary:
        return self.visit.library.vocabulary

    @property
    def folder(self) -> Path | None:
        return getattr(self.recorder, "folder", None)

    @property
    def read_only(self) -> str | None:
        """Why nothing can be added to this visit, or None."""
        return getattr(self.recorder, "read_only", None)

    def ask(self) -> Ask:
        return asked(self.visit)

    def weigh(self, name: str, text: str) -> Weighed:
        return weigh(self.visit, name, text)

    def weigh_reading(self, reading: Reading, text: str, env: dict) -> Weighed:
        """The same for one reading of a page, with what is typed above it already in `env`."""
        return weigh_reading(reading, text, env, self.visit)

    def weigh_loose(self, kind: str, unit: str, text: str) -> Weighed:
        return weigh_loose(kind, unit, text)

    def send(self, event: Event) -> None:
        """Take an answer. Raises Refused with a sentence; then nothing has changed, on disk or here."""
        try:
            self.live.send(event)
        except (BadAnswer, TrailError) as problem:
            raise Refused(str(problem)) from problem
        except OutOfOrder as problem:
            raise Refused(
                f"This page is no longer what is asked ({problem}). Esc brings the question."
            ) from problem
        self.changed.emit()

    def keep(self, data: bytes) -> str:
        """Keep a picture or another file with the visit; its hash. Raises Refused."""
        try:
            return self.recorder.keep(data)
        except TrailError as problem:
            raise Refused(str(problem)) from problem

    def keep_photo(self, data: bytes, name: str) -> str:
        """Keep a photo, made small and without what the camera wrote beside it; its hash. Raises Refused."""
        from assistant.report.photo import for_keeping

        try:
            return self.keep(for_keeping(data, name))
        except UserError as problem:
            raise Refused(str(problem)) from problem

    def keep_person(self, person: dict[str, str]) -> str:
        try:
            return self.recorder.keep_person(person)
        except TrailError as problem:
            raise Refused(str(problem)) from problem

    def export(self, folder: Path, paper: str) -> str:
        """The reports written into `folder`, recorded in the trail; what became of it, in a sentence."""
        from assistant.report.export import write_all

        tip = self.recorder.tip
        try:
            said = write_all(self.folder, folder, paper=paper)
            self.send(Exported(self.now(), f"report, {paper}", tip))
        except (UserError, Refused, TrailError) as problem:
            return str(problem)
        except OSError as problem:
            return f"The report can't be written to {folder} ({problem.strerror}). Choose another folder."
        return said or f"The report is in {folder}."

    def person(self) -> dict[str, str]:
        """The customer's data as kept with the visit; empty where there are none, or they were erased."""
        if self.visit.person is None or self.folder is None:
            return {}
        try:
            return person(self.folder, self.visit.person) or {}
        except TrailError:
            return {}

    def instrument(self, kind: str) -> str:
        """The name of the instrument that a reading of this kind is taken with now; empty where none is
        known.
        """
        known = self.visit.shop.instrument(kind, self.visit.instrument)
        return known.name if known is not None else ""

    def caution_is_new(self, name: str) -> bool:
        """Whether this caution was not yet shown in full since power last changed."""
        return self._cautioned.get(name) != self._power()

    def cautions_seen(self, names: tuple[str, ...]) -> None:
        for name in names:
            self._cautioned[name] = self._power()

    def draft(self, step: str, name: str, text: str) -> None:
        """Keep what is being filled in over a long time, on disk where that can be; blank takes it away."""
        self.drafts[step, name] = text
        if self.folder is not None and not self.read_only:
            keep_draft(self.folder, step, name, text)

    def drafted(self, step: str, name: str) -> str:
        """What was being filled in, in this window or before the program was last closed."""
        known = self.drafts.get((step, name))
        return known if known is not None or self.folder is None else draft_of(self.folder, step, name)

    def unsaved(self) -> list[str]:
        """The pages in which something stands that was typed, now or before this visit was opened, and never
        saved.
        """
        sheets = self.vocabulary.sheets

        def known(page: str, name: str) -> str:
            if page.startswith("sheet."):
                return self.visit.sheets.get(page.removeprefix("sheet."), {}).get(name, "")
            held = {"as_found": self.visit.as_found, "as_left": self.visit.as_left}.get(page)
            return held.seen.get(name, "") if held is not None else ""

        return unsaved(
            self.drafts, known, lambda name: sheets[name].title if name in sheets else name.capitalize()
        )

    def close(self) -> None:
        self.drafts.keep()
        self.live.close()

    def _power(self) -> tuple:
        house = self.visit.house
        return tuple(sorted(house.circuits.items())), tuple(sorted(house.epochs.items()))
