"""What an apprentice did, one line each, and what was unsafe about it."""

from __future__ import annotations

from dataclasses import dataclass, field

LOOK, READ, ACT, WAIT, WATCH, OTHER = "look", "read", "act", "wait", "watch", "other"


@dataclass
class Entry:
    """`first` and `last` bound the calls that it made on the house; `told` are the numbers of those whose
    answer the apprentice was given. `expected` is what they said before they looked.
    """

    kind: str
    words: str
    shown: str = ""
    expected: str = ""
    quantity: str = ""
    points: tuple[str, ...] = ()
    step: str = ""
    minute: float = 0.0
    first: int = 0
    last: int = 0
    told: tuple[int, ...] = ()
    blind: str = ""
    """Why what was shown says nothing about the house (a blown meter fuse)."""
    aside: bool = False
    """Whether it was for safety, for the cause or for the proof of repair: no way to the finding."""
    guards: bool = False
    """Whether it guards people (gas in the room, a flame that stays, a meter shown to work): that it told
    nothing new is no fault of it."""
    parted: bool | None = None
    """Whether expectation and reading parted; None where nothing was expected or a person has to judge."""

    @property
    def asks(self) -> bool:
        """Whether it asked the house something."""
        return self.kind in (LOOK, READ, WATCH)


@dataclass(frozen=True)
class Unsafe:
    """Something that could have hurt somebody or harmed the house; `rule` names it, `entry` is its number."""

    rule: str
    what: str
    why: str
    entry: int = -1


@dataclass
class Log:
    """Everything so far. `finding`, `cause` and `sentence` are the apprentice's."""

    entries: list[Entry] = field(default_factory=list)
    unsafe: list[Unsafe] = field(default_factory=list)
    finding: str = ""
    first_finding: str = ""
    cause: str = ""
    sentence: str = ""

    def mark_unsafe(self, rule: str, what: str, why: str) -> None:
        """Note something unsafe at the latest entry, each thing once an entry."""
        made = Unsafe(rule, what, why, len(self.entries) - 1)
        if made not in self.unsafe:
            self.unsafe.append(made)
