"""What became of something that was typed: nothing, a reading, a question back, or a sentence.

The typed text itself is kept by whoever asked; none of these replaces it.
"""

from __future__ import annotations

from dataclasses import dataclass

from assistant.quantity.interval import Interval

_QUOTED = 40


@dataclass(frozen=True)
class Blank:
    """Nothing was typed: "no reading", which is not a zero."""


@dataclass(frozen=True)
class Understood:
    """A reading. `interval` and `resolution_si` are in SI; `unit` is the one it was typed in.

    `echo` is what the screen shows before it counts. `resolution_si` is one step of the last digit typed (0.1
    V for 118.4 V; of the finer end for a spread), None where digits say nothing, as in 3/8 in. `over_range`
    is an OL: the interval runs from the top of the meter's range to infinity. Where that top isn't known,
    `top_known` is False and the low end is 0, which stands for "from the last limit up".
    """

    interval: Interval
    unit: str
    echo: str
    resolution_si: float | None = None
    over_range: bool = False
    top_known: bool = True
    kind: str = ""


@dataclass(frozen=True)
class Doubt:
    """It can be read in more than one way. Each of `choices` is a text that is understood; a person picks."""

    message: str
    choices: tuple[str, ...]


@dataclass(frozen=True)
class NotUnderstood:
    """`message` says what was wrong and what to write instead."""

    message: str


Meaning = Blank | Understood | Doubt | NotUnderstood


class UnclearError(Exception):
    """Carries a Doubt or a NotUnderstood out of the middle of reading an entry; never leaves this room."""

    def __init__(self, meaning: Doubt | NotUnderstood) -> None:
        super().__init__(meaning.message)
        self.meaning = meaning


def refuse(message: str) -> UnclearError:
    """To raise: the entry is not understood, for the reason in `message`."""
    return UnclearError(NotUnderstood(message))


def quoted(text: str) -> str:
    """The typed text in quotation marks, shortened, with anything that can't be shown as "?"."""
    shown = "".join(c if c.isprintable() else "?" for c in text[:_QUOTED])
    return f'"{shown}..."' if len(text) > _QUOTED else f'"{shown}"'
