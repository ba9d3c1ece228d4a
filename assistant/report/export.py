"""Reports as files: one that was asked for, or all of them beside each other.

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
PARTS = ("csv", "json")
"""Formats of parts and minutes."""
MARK = b"\xef\xbb\xbf"
"""By which spreadsheets know UTF-8."""


def write_all(visit: Path, out: Path, paper: str = "letter", send: Send | None = None) -> str | None:
    """report.pdf, report.html, report.txt and report.csv in `out`, and parts and minutes for an invoice
    program as parts.csv and parts.json.

    A sentence where the PDF can't be drawn (the others are there then) or the export could not be recorded.
    Raises UserError where a file can't be written; older ones are as they were.

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
    for kind in PARTS:
        write_parts(visit, out / f"parts.{kind}")
    return [f"parts.{kind}" for kind in PARTS]


def write_parts(visit: Path, file: Path) -> None:
    """Parts and minutes of a visit for an invoice program, as the file's ending says. It is no report, and
    nothing of it is recorded in the visit. Raises UserError.
    """
    kind = Path(file).suffix.lower().removeprefix(".")
    if kind not in PARTS:
        raise UserError(f"'{file}' should end in .csv or .json; that names its format.")
    folded, events = visit_of(Path(visit))
    name = Path(visit).resolve().name
    if kind == "csv":
        _save(Path(file), MARK + invoice.to_csv(folded, events, name).encode("utf-8", "replace"))
    else:
        _save(Path(file), invoice.to_json(folded, events, name).encode("utf-8", "replace"))


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
        return MARK + to_csv(story).encode("utf-8")
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
