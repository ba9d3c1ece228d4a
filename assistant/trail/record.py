"""The recorder: one visit's folder, opened for writing. Every event goes through `append`, which returns
only when the event is on the medium."""

from __future__ import annotations

import secrets
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

from assistant.trail import keep as keeping
from assistant.trail import lock as locking
from assistant.trail.clock import now
from assistant.trail.encode import to_object
from assistant.trail.error import ReadOnlyError, TrailError, not_saved
from assistant.trail.file import TrailFile
from assistant.trail.files import DISK, Files
from assistant.trail.fork import FORKED, joined, sides_of
from assistant.trail.practice import MARK, refuse
from assistant.trail.read import COPY, Trail, read_trail
from assistant.trail.recover import recover
from assistant.walk.event import Event, Exported, Note, Opened, Recovered, Signed, Unknown

AFTER_SIGNING = (Exported, Note, Recovered, Unknown)
"""What may still be added to a visit that is signed."""


class Recorder:
    """Made by `create` or `open`. `read_only` is the sentence that says why nothing can be added, or None."""

    def __init__(
        self,
        folder: Path,
        file: TrailFile,
        files: Files,
        lock: Any,
        signed: bool = False,
        read_only: str | None = None,
    ) -> None:
        self.folder, self.read_only, self.signed = folder, read_only, signed
        self._file, self._files, self._lock = file, files, lock

    @staticmethod
    def create(
        folder: Path, library: Any, opened: Opened, *, files: Files = DISK, lock: Callable = locking.take
    ) -> Recorder:
        """A new visit in a new folder: the texts that it will be walked with, then its first line.

        `library.texts` are kept as `opened.files` names them (all of them where it names none).
        Raises TrailError where the folder is not empty or the disk doesn't take it.
        """
        folder = Path(folder)
        _empty_folder(folder, files)
        held = lock(folder)
        try:
            named = opened.files or {file: keeping.sha256(text) for file, text in library.texts.items()}
            for file, name in named.items():
                if keeping.keep(folder, library.texts[file], files) != name:
                    raise TrailError(
                        f"{file} changed while the visit was being opened. Begin the visit again."
                    )
            mark = MARK if opened.practice else None
            file = TrailFile(files, folder, secrets.token_hex(8), 1, program=opened.program, mark=mark)
            out = Recorder(folder, file, files, held)
            out.append(replace(opened, files=dict(named)))
        except BaseException:
            held.release()
            raise
        return out

    @staticmethod
    def open(
        folder: Path,
        *,
        files: Files = DISK,
        lock: Callable = locking.take,
        take_over: bool = False,
        join: str | None = None,
        clock: Callable[[], str] = now,
    ) -> tuple[Recorder, list[Event], list[str]]:
        """A visit to go on with: its recorder, its events, and remarks in sentences.

        `join` names the person who has read what was written elsewhere at the same time. A torn last line
        is set aside first. An altered visit, one of a newer version, one written on two computers that
        nobody joined and one in a folder that can't be written to open for reading only. Raises LockedError
        where another window has it, and TrailError for a drill's trail: that is practice and no visit.
        """
        folder = Path(folder)
        trail = read_trail(folder, files)
        refuse(trail, folder)
        if not trail.entries and not trail.damage and not trail.newer:
            raise TrailError(f"Nothing was recorded in {folder}: the visit was never begun.")
        held, reason = None, _why_reading_only(trail, join)
        if reason is None:
            try:
                held = lock(folder, take_over)
            except ReadOnlyError as problem:
                reason = str(problem)
        if held is None:
            return (
                Recorder(folder, _writer(files, folder, trail), files, None, trail.signed, reason),
                trail.events,
                [*trail.remarks, *([reason] if reason not in trail.remarks else [])],
            )
        try:
            return _go_on(folder, files, held, clock, join)
        except BaseException:
            held.release()
            raise

    @property
    def visit(self) -> str:
        return self._file.visit

    @property
    def tip(self) -> str:
        """The hash of the last saved line: the visit's fingerprint as it stands."""
        return self._file.tip

    def append(self, event: Event, copies: dict | None = None) -> str:
        """Writes the event, syncs it, and only then returns its hash. `copies` are limits, verdicts and
        next steps as worked out now, for readers without the program; they are never read back as truth.

        Raises TrailError where the disk doesn't take it (it can be tried again) or nothing may be added any
        more.
        """
        if self.read_only:
            raise ReadOnlyError(self.read_only)
        if self._lock is None:
            raise TrailError("This visit is closed. Open it again from the list.")
        if self.signed and not isinstance(event, AFTER_SIGNING):
            raise ReadOnlyError("This visit is signed and closed. Begin a new visit for anything further.")
        fields = to_object(event)
        tip = self._file.append({**fields, COPY: copies} if copies else fields)
        self.signed = self.signed or isinstance(event, Signed)
        return tip

    def keep(self, data: bytes) -> str:
        """Keeps a photo or another file with the visit; its hash is for the event that names it."""
        self._may_add()
        return keeping.keep(self.folder, data, self._files)

    def keep_person(self, person: dict[str, str]) -> str:
        self._may_add()
        return keeping.keep_person(self.folder, person, self._files)

    def close(self) -> None:
        self._file.close()
        if self._lock is not None:
            self._lock.release()
            self._lock = None

    def __enter__(self) -> Recorder:
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def _may_add(self) -> None:
        if self.read_only:
            raise ReadOnlyError(self.read_only)


def kept_library(folder: Path, opened: Opened, files: Files = DISK) -> Any:
    """The library that a visit was begun with, made from its kept texts: the visit is walked on these,
    whatever the tree files say by now. Raises TrailError where one of them is gone or altered."""
    from assistant.tree.library import from_texts

    return from_texts(keeping.kept_texts(Path(folder), opened.files, files))


def _go_on(
    folder: Path, files: Files, held: Any, clock: Callable[[], str], join: str | None
) -> tuple[Recorder, list, list[str]]:
    trail = read_trail(folder, files)  # again: what another window wrote before it let go of the lock counts
    events, remarks = trail.events, trail.remarks
    reason = _why_reading_only(trail, join)
    set_aside = recover(folder, trail, clock(), files) if reason is None else []
    if reason is None and (sides := sides_of(trail)):
        set_aside = [*set_aside, joined(sides, join or "", clock())]
    out = Recorder(folder, _writer(files, folder, trail), files, held, trail.signed, reason)
    for event in set_aside:
        out.append(event)
        events.append(event)
    return out, events, remarks


def _why_reading_only(trail: Trail, join: str | None) -> str | None:
    """A visit that two computers wrote at the same time is joined by a person, never by itself."""
    if trail.damage or trail.newer:
        return trail.remarks[0]
    return FORKED if join is None and sides_of(trail) else None


def _writer(files: Files, folder: Path, trail: Trail) -> TrailFile:
    unnamed = tuple(side.tip for side in trail.beside if not side.named)
    return TrailFile(files, folder, trail.visit, len(trail.segments) + 1, trail.tip, trail.n, unnamed)


def _empty_folder(folder: Path, files: Files) -> None:
    try:
        if not files.is_folder(folder):
            files.make_folder(folder)
            files.sync_folder(folder.parent)
        elif files.names(folder):
            raise TrailError(f"The folder {folder} is not empty: a new visit needs a folder of its own.")
    except OSError as problem:
        raise not_saved(problem, folder) from problem
