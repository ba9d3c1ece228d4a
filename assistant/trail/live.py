"""A visit that is going on: the pure fold and its recorder, kept in step.

An event is first tried on the pure visit, so that nothing that can't be taken reaches the disk; then it is
written and synced; only then does the visit move. Window, replay and drill all send their events through
here.
"""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from assistant import __version__
from assistant.quantity.kind import show_interval
from assistant.trail.clock import now
from assistant.trail.error import TrailError
from assistant.trail.record import Recorder, kept_library
from assistant.tree.library import Library
from assistant.walk.ask import Ask, Record
from assistant.walk.cleared import may_go_on
from assistant.walk.event import Event, Opened, Resumed, Signed
from assistant.walk.points import blocks_signing
from assistant.walk.visit import BadAnswer, OutOfOrder, Visit, asked, begin, fold


class LiveVisit:
    """Made by `start` or `take_up`. `visit` is what all events so far amount to."""

    def __init__(self, visit: Visit, recorder: Recorder, remarks: Iterable[str] = ()) -> None:
        self.visit, self.recorder, self.remarks = visit, recorder, list(remarks)

    @staticmethod
    def start(
        folder: Path, library: Library, complaints: tuple[tuple[str, str], ...], at: str | None = None, **more
    ) -> LiveVisit:
        """A new visit in a new folder. `complaints`: (name, the customer's words). Raises TrailError,
        BadAnswer.
        """
        trees = [known.tree for name, _ in complaints if (known := library.vocabulary.complaints.get(name))]
        opened = Opened(
            at or now(),
            complaints,
            library.closure([tree for tree in trees if tree]),
            program=__version__,
            **more,
        )
        visit = fold(begin(library), opened)
        return LiveVisit(visit, Recorder.create(folder, library, opened))

    @staticmethod
    def take_up(folder: Path, **more) -> LiveVisit:
        """A visit found on disk, walked on the trees it was begun with. Raises TrailError.

        Events that this version can't place are left where they stand; a remark says so, and nothing is
        added.
        """
        recorder, events, remarks = Recorder.open(folder, **more)
        opened = next((event for event in events if isinstance(event, Opened)), None)
        if opened is None:
            recorder.close()
            raise TrailError(f"{folder}: {remarks[0] if remarks else 'nothing can be read here.'}")
        visit = begin(kept_library(folder, opened))
        for number, event in enumerate(events, 1):
            try:
                visit = fold(visit, event)
            except (BadAnswer, OutOfOrder) as problem:
                remark = f"Line {number} of this visit can't be followed ({problem}). It opens to read only."
                recorder.read_only = remark
                remarks.append(remark)
                break
        return LiveVisit(visit, recorder, remarks)

    def ask(self) -> Ask:
        """What is asked now."""
        return asked(self.visit)

    def send(self, event: Event) -> None:
        """Take an answer. Raises BadAnswer, OutOfOrder or TrailError; then nothing has changed, here or on
        disk.
        """
        if isinstance(event, Signed):
            may_sign(self.visit)
        if not self._practice:
            may_go_on(self.visit, event)
        moved = fold(self.visit, event)
        self.recorder.append(event, _copies(self.visit, moved))
        self.visit = moved

    def go_on_after_interruption(self) -> None:
        """A visit that was neither paused nor signed was interrupted: closed, or the computer stopped. Nobody
        knows what was switched meanwhile, so it is taken up again as after a pause. Raises TrailError.
        """
        visit = self.visit
        if visit.signed is None and visit.paused is None and not self.recorder.read_only and visit.events:
            self.send(Resumed(now()))

    @property
    def _practice(self) -> bool:
        """Whether this is a drill: nobody comes to clear a simulated house."""
        opened = self.visit.events[0] if self.visit.events else None
        return isinstance(opened, Opened) and opened.practice

    def close(self) -> None:
        """Let go of the visit's folder."""
        self.recorder.close()


def may_sign(visit: Visit) -> None:
    """Raises BadAnswer while something must be put back or switched on again. Asked of who signs now: a visit
    that was signed under an older rule still opens.
    """
    blocking = blocks_signing(visit)
    if blocking:
        words = "; ".join(point.words for point in blocking)
        raise BadAnswer(f"Not signed: still to be put back: {words}. Do it, or say why it stays.")


def _copies(before: Visit, after: Visit) -> dict | None:
    """What the event came to, for a reader without the program: never read back as truth."""
    taken = after.history[len(before.history) :]
    if not taken:
        return None
    copies: dict = {"steps": [{"step": t.step, "answer": t.answer, "way": t.way} for t in taken]}
    limits = [limit for t in taken for record in t.records for limit in _limits(record)]
    if limits:
        copies["limits"] = limits
    settles = [f"{record.name}: {record.settles}" for t in taken for record in t.records if record.settles]
    if settles:
        copies["settles"] = settles
    ask = asked(after)
    copies["next"] = ask.step or ask.kind
    return copies


def _limits(record: Record) -> list[str]:
    verdict = record.verdict
    if verdict is None:
        return []
    return [
        f"{record.name} under {show_interval(edge, record.unit)}: {band.label}"
        for band, edge in zip(verdict.bands, verdict.edges, strict=True)
        if edge is not None
    ]
