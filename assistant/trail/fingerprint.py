"""The fingerprint of a visit: the hash of its last line, which stands for every line before it."""

from __future__ import annotations

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
