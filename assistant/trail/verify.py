"""Is this visit what was written, and is it all there? In sentences, with the exit code of the verify
command.

A chain shows that a line was altered. It can't show that the last lines were taken off, or that the whole
visit was written anew: for that there is the signature's line, and the fingerprint on the paper in the
customer's hands.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from assistant.trail.error import TrailError
from assistant.trail.files import DISK, Files
from assistant.trail.fingerprint import fingerprint, matches, short, signature
from assistant.trail.keep import NotKeptError, kept
from assistant.trail.photos import photos_of
from assistant.trail.practice import WORDS
from assistant.trail.read import Trail, read_trail
from assistant.walk.event import Exported, Opened, Person

FINE, DEFECT, COULD_NOT = 0, 1, 2


@dataclass(frozen=True)
class Checked:
    """`code` 0: unaltered and closed; 1: altered, or not closed; 2: could not be checked."""

    folder: Path
    code: int
    sentences: tuple[str, ...]
    fingerprint: str = ""


def verify(folder: Path, on_paper: str | None = None, files: Files = DISK) -> Checked:
    """Checks every line and every kept file of a visit. `on_paper` is a fingerprint printed on a report: it
    is looked for among all lines, which also finds a visit that was written anew. Never raises."""
    folder = Path(folder)
    try:
        if not files.is_folder(folder):
            return Checked(folder, COULD_NOT, ("there is no such visit folder.",))
        trail = read_trail(folder, files)
    except TrailError as problem:
        return Checked(folder, COULD_NOT, (str(problem),))
    if not trail.segments:
        return Checked(folder, COULD_NOT, ("there is no trail in this folder.",))
    if trail.practice:
        return Checked(folder, COULD_NOT, (WORDS, *(str(damage) for damage in trail.damage)))
    defects = [str(damage) for damage in trail.damage] + list(_loose_ends(trail))
    remarks = []
    for defect, words in _kept_files(folder, trail, files):
        (defects if defect else remarks).append(words)
    if on_paper is not None:
        found, words = _on_paper(trail, on_paper)
        (remarks if found else defects).insert(0, words)
    whole = not defects
    if whole and not trail.signed:
        defects.append(
            "not signed yet: every line here is as it was written, but the last lines may be missing, and "
            "nothing in the files could show it."
        )
    elif whole and signature(trail) is None:
        remarks.append("more was written after the signature, which does not cover it.")
    if trail.newer and not trail.damage:
        return Checked(
            folder, COULD_NOT, ("written by a newer version of the program: this one can't check it.",)
        )
    told = [_summary(trail)] if whole else []
    said = tuple(told + defects + remarks + _clock(trail))
    return Checked(folder, DEFECT if defects else FINE, said, fingerprint(trail))


def _summary(trail: Trail) -> str:
    count = sum(len(part.lines) for part in trail.segments)
    of = " of the signature" if signature(trail) else ""
    return (
        f"{count} lines in {len(trail.segments)} file{'s' * (len(trail.segments) > 1)}, none altered; "
        f"fingerprint{of} {short(fingerprint(trail))}."
    )


def _on_paper(trail: Trail, on_paper: str) -> tuple[bool, str]:
    """(was it found, sentence) for the fingerprint that is printed on a report."""
    place = next((place for place, tip in enumerate(trail.tips) if matches(on_paper, tip)), None)
    if place is None:
        return False, (
            f"no line of this visit has the fingerprint '{on_paper}': the paper belongs to another visit, "
            "or this one was written anew."
        )
    line, signed = trail.lines[place], signature(trail)
    if signed is not None and signed.line.hash == line.hash:
        what = "the line of the signature"
    elif place == len(trail.lines) - 1:
        what = "the last line"
    else:
        what = "an earlier line of this visit, and more was written after that"
    return True, f"the fingerprint on the paper matches: it is {what} ({line.file}, line {line.number})."


def _loose_ends(trail: Trail) -> Iterator[str]:
    for part in trail.torn:
        yield (
            f"{part.name}: the last line is not whole. It was being written when the program or the power "
            "stopped (opening the visit sets it aside), or its end was altered."
        )
    for side in trail.beside:
        if not side.named:
            yield (
                f"{side.file}, line {side.number}: {side.count} line{'s' * (side.count > 1)} were written at "
                "the same time as another file of this visit; nobody has opened the visit since."
            )
    places = {tip: place for place, tip in enumerate(trail.tips)}
    for entry in trail.entries:
        if isinstance(entry.event, Exported):
            place = places.get(entry.event.fingerprint)
            if place is None or place >= places[entry.line.hash]:
                where = f"{entry.line.file}, line {entry.line.number}"
                yield f"{where}: the fingerprint of the export is not this visit's."


def _kept_files(folder: Path, trail: Trail, files: Files) -> Iterator[tuple[bool, str]]:
    """(is it a defect, sentence) for every kept file that is not there as it was kept."""
    for entry in trail.entries:
        event = entry.event
        if isinstance(event, Opened):
            named = [(file, name) for file, name in event.files.items()]
        elif isinstance(event, Person):
            named = [("the person's data", event.kept)]
        else:
            named = [("a photo", name) for name in photos_of(event)]
        told = [(what, _not_as_kept(folder, name, files)) for what, name in named]
        for what, problem in told:
            if problem is not None:
                gone = isinstance(problem, NotKeptError)
                yield isinstance(event, Opened) or not gone, f"{what}: {problem}"


def _not_as_kept(folder: Path, name: str, files: Files) -> TrailError | None:
    try:
        kept(folder, name, files)
    except TrailError as problem:
        return problem
    return None


def _clock(trail: Trail) -> list[str]:
    return [words for words in trail.remarks if words.startswith("The clock")]
