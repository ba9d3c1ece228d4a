"""The time now, with its offset from UTC, and times read back. The only clock that trail/ reads."""

from __future__ import annotations

from datetime import datetime


def now() -> str:
    """Local time to the second with its offset, such as 2026-11-25T09:14:03-05:00."""
    return datetime.now().astimezone().isoformat(timespec="seconds")


def moment(at: str) -> datetime | None:
    """The point in time that `at` names; None where it is no time with an offset."""
    try:
        found = datetime.fromisoformat(at[:-1] + "+00:00" if at.endswith("Z") else at)
    except ValueError:
        return None
    return found if found.tzinfo is not None else None


def set_back(before: str, after: str) -> bool:
    """True where the later line carries the earlier time: the clock was set back between them."""
    first, second = moment(before), moment(after)
    return first is not None and second is not None and second < first
