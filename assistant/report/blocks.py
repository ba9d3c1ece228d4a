"""What a report is made of: headings, paragraphs, lists, tables, photos, lines to sign on."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Union

from assistant.report.story import Photo


@dataclass(frozen=True)
class Heading:
    """`level` 1 begins a part on a page of its own, 2 a section, 3 what belongs to one thing."""

    text: str
    level: int = 2


@dataclass(frozen=True)
class Words:
    """A paragraph. `weight`: plain, strong, small, faint (small and grey) or notice (framed)."""

    text: str
    weight: str = "plain"


@dataclass(frozen=True)
class Points:
    """A list. `mark`: dot, done (a tick) or open (an empty box)."""

    items: tuple[str, ...]
    mark: str = "dot"


@dataclass(frozen=True)
class Pairs:
    """Names and their values, one beside the other; `share` of the width in percent is for the names."""

    items: tuple[tuple[str, str], ...]
    share: int = 28


@dataclass(frozen=True)
class Cell:
    """Lines of a table cell; `struck` for what was taken back, `small` for what stands beside it, `faint`
    for where it stands in the trees."""

    text: str
    small: tuple[str, ...] = ()
    struck: bool = False
    faint: tuple[str, ...] = ()

    @property
    def empty(self) -> bool:
        return not self.text and not self.small and not self.faint


@dataclass(frozen=True)
class Table:
    """`widths` are shares of the page's width, together 100. An empty last cell leaves its room to the one
    before."""

    heads: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...]
    widths: tuple[int, ...]


@dataclass(frozen=True)
class Picture:
    """A photo with the words below it. `drawn`: the report says the same in words beside it."""

    photo: Photo
    caption: str
    drawn: bool = False


@dataclass(frozen=True)
class Pictures:
    """Two photos side by side, such as found and left; one may be missing."""

    items: tuple[Picture | None, Picture | None]


@dataclass(frozen=True)
class ToSign:
    """Ruled lines to write on, side by side, with the words below each."""

    names: tuple[str, ...]


Block = Union[Heading, Words, Points, Pairs, Table, Picture, Pictures, ToSign]
