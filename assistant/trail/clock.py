"""The time now, with its offset from UTC, and times read back. The only clock that trail/ reads."""

from __future__ import annotations

from datetime import datetime, timezone

YEARS = range(1900, 9000)
"""What a clock can show, however wrong: days can be added to these."""


def now() -> str:
    """Local time to the second with its offset, such as 2026-11-25T09:14:03-05:00."""
    return datetime.now().astimezone().isoformat(timespec="seconds")


def moment(at: str) -> datetime | None:
    """The point in time that `at` names; None where it is no time with an offset, or of a year that no clock
    shows.
    """
    try:
        found = datetime.fromisoformat(at[:-1] + "+00:00" if at.endswith("Z") else at)
    except ValueError:
        return None
    return found if found.tzinfo is not None and found.year in YEARS else None


def sortable(at: str) -> str:
    """A text by which times sort as they happened, whatever their offset; `at` itself where it is no time."""
    when = moment(at)
    return when.astimezone(timezone.utc).isoformat(timespec="seconds") if when else at


def set_back(before: str, after: str) -> bool:
    """True where the later line carries the earlier time: the clock was set back between them."""
    first, second = moment(before), moment(after)
    return first is not None and second is not None and second < first
