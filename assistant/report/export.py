"""Reports as files: one that was asked for, or all four beside each other.

An export is an event of the visit; the fingerprint on its pages is the signature's, or the trail's tip
before that event where the visit is not signed.
"""

from __future__ import annotations

import contextlib
import os
from collections.abc import Callable
from pathlib import Path

from assistant.errors import UserError
from assistant.report import invoice
from assistant.report.csv import to_csv
from assistant.report.drawing import CannotDrawError
from assistant.report.html import to_html
from assistant.report.load import story_of, visit_of
from assistant.report.story import Photo, Story
from assistant.report.text import to_text
from assistant.trail.clock import now
from assistant.trail.error import LockedError, TrailError
from assistant.trail.record import Recorder
from assistant.walk.event import Event, Exported

NOT_RECORDED = "The report is written, which could not be recorded in the visit."
Send = Callable[[Event], object]
FORMATS = ("pdf", "html", "txt", "csv")


def write_all(visit: Path, out: Path, paper: str = "letter", send: Send | None = None) -> str | None:
    """report.pdf, report.html, report.txt and report.csv in `out`, and parts and minutes for an invoice
    program as parts.csv and parts.json; a sentence where one could not be
    written (the others are there then) or the export could not be recorded. Raises UserError where none can
    be written.

    `send` records the export where the visit is open here already (a live visit's own `send`); without it,
    whoever has the visit open in this program records it.
    """
    story = story_of(Path(visit))
    said, written = None, []
    for kind in ("html", "txt", "csv", "pdf"):
        file = Path(out) / f"report.{kind}"
        try:
            _save(file, render(story, kind, paper))
        except CannotDrawError as problem:
            said = str(problem)
        else:
            written.append(file.name)
    written += _parts(Path(visit), Path(out))
    not_recorded = _record(Path(visit), ", ".join(written), story, send)
    return said or not_recorded


def _parts(visit: Path, out: Path) -> list[str]:
    """parts.csv and parts.json in `out`; their names."""
    folded, events = visit_of(visit)
    name = visit.resolve().name
    table, bill = invoice.to_csv(folded, events, name), invoice.to_json(folded, events, name)
    _save(out / "parts.csv", b"\xef\xbb\xbf" + table.encode("utf-8", "replace"))
    _save(out / "parts.json", bill.encode("utf-8", "replace"))
    return ["parts.csv", "parts.json"]


def write_one(visit: Path, file: Path, paper: str = "letter", send: Send | None = None) -> str | None:
    """The report in the format that the file's ending names. A sentence where the export could not be
    recorded in the visit, the report being there all the same. Raises UserError (CannotDrawError,
    TrailError among them)."""
    kind = Path(file).suffix.lower().removeprefix(".")
    if kind not in FORMATS:
        raise UserError(
            f"'{file}' should end in {', '.join(f'.{known}' for known in FORMATS)}; that names its format."
        )
    story = story_of(Path(visit))
    _save(Path(file), render(story, kind, paper))
    return _record(Path(visit), Path(file).name, story, send)


def render(story: Story, kind: str, paper: str = "letter") -> bytes:
    """The story in a format of FORMATS. Raises CannotDrawError for a PDF where nothing can be drawn."""
    if kind == "pdf":
        from assistant.report.pdf import to_pdf

        return to_pdf(story, paper)
    if kind == "html":
        return to_html(story, _shrink).encode("utf-8")
    if kind == "csv":
        return b"\xef\xbb\xbf" + to_csv(story).encode("utf-8")  # the mark by which spreadsheets know UTF-8
    return to_text(story).encode("utf-8")


def _shrink(photo: Photo) -> bytes | None:
    """A small photo, or None where photos can't be drawn here: the page then names it."""
    from assistant.report.photo import shrink

    try:
        return shrink(photo)
    except CannotDrawError:
        return None


def _save(file: Path, data: bytes) -> None:
    """Written beside, then renamed: an older report stays whole where the disk is full."""
    beside = file.with_name(f".{file.name}.part")
    try:
        with beside.open("wb") as out:
            out.write(data)
            out.flush()
            os.fsync(out.fileno())
        beside.replace(file)
    except OSError as problem:
        with contextlib.suppress(OSError):
            beside.unlink()
        raise UserError(f"{file} could not be written ({problem.strerror}).") from problem


def _record(visit: Path, names: str, story: Story, send: Send | None) -> str | None:
    """Adds the export to the visit's trail; a sentence where that can't be done."""
    event = Exported(now(), names, story.fingerprint)
    try:
        if send is not None:
            send(event)
            return None
        recorder, _, _ = Recorder.open(visit)
        with recorder:
            recorder.append(event)
    except LockedError as problem:
        return None if problem.here else f"{NOT_RECORDED} {problem}"  # whoever has it open here records it
    except TrailError as problem:
        return f"{NOT_RECORDED} {problem}"
    return None
