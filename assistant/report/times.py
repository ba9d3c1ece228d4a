"""Times as they stand on paper. A text that is no time stays as it is."""

from __future__ import annotations

from assistant.trail.clock import moment

MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip


def day(at: str) -> str:
    """For a customer: November 25, 2026."""
    when = moment(at)
    return f"{MONTHS[when.month - 1]} {when.day}, {when.year}" if when else at


def full(at: str) -> str:
    """For the trail: 2026-11-25 09:14 (-05:00)."""
    hour, date = clock(at)
    return f"{date.partition(' ')[0]} {hour} {date.partition(' ')[2]}" if date else at


def clock(at: str) -> tuple[str, str]:
    """A time as two short lines: hour and minute, then day and offset. The second is empty where it is no
    time. The seconds stay in the table for a spreadsheet."""
    when = moment(at)
    if when is None:
        return at, ""
    text = when.isoformat()
    return text[11:16], f"{text[:10]} ({text[-6:]})"
