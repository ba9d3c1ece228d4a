"""The fingerprint of a visit: the hash of a line, which stands for every line before it.

A signed visit is known by its signature's line: a report written later moves the last line, and must not
move what the customer's paper says. A visit that is not signed is known by its last line.
"""

from __future__ import annotations

from assistant.trail.read import Entry, Trail
from assistant.walk.event import Exported, Recovered, Signed

GROUPS = 6


def short(tip: str) -> str:
    """For paper: the first 24 hex digits (96 bits) in groups of four, such as 3f9a 2c1b 77e0 15d4 9a8c
    0b21."""
    return " ".join(tip[4 * group : 4 * group + 4] for group in range(GROUPS))


def matches(written: str, tip: str) -> bool:
    """True where what stands on paper (short or whole, in any spacing or case) belongs to `tip`.

    Less than the short form proves nothing and never matches.
    """
    digits = "".join(written.lower().replace("-", " ").split())
    return len(digits) >= 4 * GROUPS and tip.startswith(digits)


def signature(trail: Trail) -> Entry | None:
    """The signature that stands for the whole visit: the last one, where nothing followed but reports being
    written and lines set aside. None where the work went on after it, for it does not cover that."""
    for entry in reversed(trail.entries):
        if isinstance(entry.event, Signed):
            return entry
        if not isinstance(entry.event, (Exported, Recovered)):
            return None
    return None


def fingerprint(trail: Trail) -> str:
    """What stands on paper: the hash of the signature's line, or of the last line where none stands for
    all."""
    signed = signature(trail)
    return signed.line.hash if signed else trail.tip
