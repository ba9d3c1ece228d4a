"""One trail file, read and verified line by line, without regard to the other files of its visit."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from assistant.trail.chain import FORMAT, START, AlteredError, again, open_line

SECTOR = 512
_HOLE = re.compile(b"\0+")


@dataclass(frozen=True)
class Line:
    """A line that is exactly what was written. `number` counts from 1 in its file; `n` in the visit."""

    file: str
    number: int
    n: int
    fields: dict
    hash: str


@dataclass(frozen=True)
class Damage:
    """A place where a file is not what was written. `number` is the line, None for the file as a whole."""

    file: str
    number: int | None
    words: str

    def __str__(self) -> str:
        return (
            f"{self.file}, line {self.number}: {self.words}" if self.number else f"{self.file}: {self.words}"
        )


@dataclass(eq=False)
class Segment:
    """A trail file. `lines` are those before the first damage; `later` counts the good ones after it."""

    name: str
    visit: str = ""
    format: int = FORMAT
    continues: str = START
    beside: tuple[str, ...] = ()
    first: int = 1
    """The `n` of the file's own first line."""
    lines: list[Line] = field(default_factory=list)
    damage: list[Damage] = field(default_factory=list)
    later: int = 0
    hashes: set[str] = field(default_factory=set)
    torn: int | None = None
    """Where the torn last line begins, in bytes; None where the file ends with a whole line."""
    size: int = 0

    @property
    def newer(self) -> bool:
        return self.format > FORMAT


def read_segment(name: str, data: bytes) -> Segment:
    """Everything that one file tells. Never raises: what is wrong stands in `damage`."""
    out = Segment(name, size=len(data))
    end = _end_of_whole_lines(data)
    if end < len(data):
        out.torn = end
    known: list[str] | None = []
    for number, line in enumerate(data[:end].split(b"\n")[:-1], start=1):
        known = _take(out, number, line, known)
    return out


def _take(out: Segment, number: int, line: bytes, known: list[str] | None) -> list[str] | None:
    """Adds one line to the segment; returns the hashes that the next line may follow.

    After an altered line that is the hash stored in it or the one that its text gives now, whichever was
    spared; None after a line that can't be read at all. So one altered line is named, not all after it.
    """
    try:
        fields, stored = open_line(line)
    except AlteredError as problem:
        _damaged(out, number, f"this line was altered: {problem}")
        return None
    if number == 1:
        if not _head(out, fields):
            return None
        known = [out.continues]
    tried = [again(tip, fields) for tip in known or []]
    if known is not None and line not in [written for written, _ in tried]:
        _damaged(out, number, _what_happened(out, fields["n"]))
        return [stored, *(tip for _, tip in tried)]
    out.hashes.add(stored)
    if out.damage:
        out.later += 1
    elif out.lines and fields["n"] != out.lines[-1].n + 1:
        _damaged(out, number, "its number does not follow the line before")
    else:
        out.lines.append(Line(out.name, number, fields["n"], fields, stored))
    return [stored]


def _what_happened(out: Segment, n: int) -> str:
    if out.lines and not out.damage and n != out.lines[-1].n + 1:
        return "this line was altered, or lines before it were taken out, after it was written"
    return "this line was altered after it was written"


def _head(out: Segment, fields: dict) -> bool:
    """Takes what the first line says of its file; False, and damage, where it says nothing of the kind."""
    continues, beside, version = (
        fields.get("continues", START),
        fields.get("beside", []),
        fields.get("format"),
    )
    fits = (
        fields.get("kind") == "trail"
        and isinstance(fields.get("visit"), str)
        and isinstance(version, int)
        and isinstance(continues, str)
        and continues.isascii()
        and isinstance(beside, list)
        and all(isinstance(tip, str) for tip in beside)
    )
    if not fits:
        _damaged(out, 1, "the first line does not say what file this is")
        return False
    out.visit, out.format, out.continues = fields["visit"], version, continues
    out.beside, out.first = tuple(beside), fields["n"]
    return True


def _damaged(out: Segment, number: int, words: str) -> None:
    out.damage.append(Damage(out.name, number, words))


def _end_of_whole_lines(data: bytes) -> int:
    """Where the last whole line ends. A power cut can also leave a last line with whole sectors of zeros in
    it, its line end included; a line as it was written never holds a zero byte."""
    end = data.rfind(b"\n") + 1
    if end < len(data) or not end:
        return end
    start = data.rfind(b"\n", 0, end - 1) + 1
    holes = list(_HOLE.finditer(data, start, end))
    if holes and all(_edge(hole.start(), start, end) and _edge(hole.end(), start, end) for hole in holes):
        return start
    return end


def _edge(at: int, start: int, end: int) -> bool:
    return at in (start, end) or at % SECTOR == 0
