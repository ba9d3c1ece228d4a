"""Where visits come from: the shelf on disk, the trees that new ones are walked with, the first start."""

from __future__ import annotations

from functools import cached_property
from pathlib import Path

from assistant.resources import trees_folder
from assistant.trail.clock import now
from assistant.trail.error import TrailError
from assistant.trail.live import LiveVisit
from assistant.trail.names import folder_name
from assistant.trail.shelf import Shelved, make_shelf, shelf_folder, visits
from assistant.tree.library import Library, read_folder
from assistant.walk.state import BadAnswer
from assistant.window.session import Driver, Refused

MARK = "notice-was-read"


class Desk:
    """`shelf` and `trees` are folders; the user's own and the shipped ones when not given."""

    def __init__(self, shelf: Path | None = None, trees: Path | None = None) -> None:
        self.shelf = shelf or shelf_folder()
        self._trees = trees

    @cached_property
    def library(self) -> Library:
        """The trees of new visits, loaded when first needed."""
        return read_folder(self._trees or trees_folder())

    def visits(self) -> list[Shelved]:
        """Every visit, the latest first. Raises Refused where the list can't be read."""
        try:
            return visits(self.shelf)
        except TrailError as problem:
            raise Refused(str(problem)) from problem

    def begin(self, complaints: tuple[tuple[str, str], ...]) -> Driver:
        """A new visit with these complaints (name, the customer's words). Raises Refused."""
        at = now()
        try:
            make_shelf(self.shelf)
            folder = self.shelf / folder_name(at, tuple(name for name, _ in complaints))
            return Driver(LiveVisit.start(folder, self.library, complaints, at=at))
        except (TrailError, BadAnswer) as problem:
            raise Refused(str(problem)) from problem

    def take_up(self, folder: Path) -> Driver:
        """A visit from the list, where it stopped. Raises Refused."""
        try:
            return Driver(LiveVisit.take_up(folder))
        except (TrailError, BadAnswer) as problem:
            raise Refused(str(problem)) from problem

    def first_time(self) -> bool:
        """Whether the notice was never put away on this shelf."""
        return not (self.shelf.parent / MARK).exists()

    def notice_read(self) -> None:
        """Remember it; where that can't be written down, it is shown again next time."""
        try:
            self.shelf.parent.mkdir(parents=True, exist_ok=True)
            (self.shelf.parent / MARK).write_text(now() + "\n", encoding="ascii")
        except OSError:
            pass
