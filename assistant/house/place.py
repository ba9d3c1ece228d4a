"""Where something stands in a file, and what is wrong there."""

from __future__ import annotations

from dataclasses import dataclass, field


@dataclass(frozen=True, order=True)
class Place:
    """A position in a text file; line and column count from 1, column in characters."""

    file: str
    line: int
    column: int


@dataclass(frozen=True, order=True)
class Problem:
    """One thing to mend: where it is, the rule it breaks, and what to write instead."""

    file: str
    line: int
    column: int
    rule: str
    message: str
    path: tuple[str, ...] = field(default=(), compare=False)
    """The questions of the shortest walk on which it happens, one a line, with their answers; empty where it
    is no matter of paths."""

    @staticmethod
    def at(place: Place, rule: str, message: str, path: tuple[str, ...] = ()) -> Problem:
        return Problem(place.file, place.line, place.column, rule, message, path)

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}: {self.rule}: {self.message}"
