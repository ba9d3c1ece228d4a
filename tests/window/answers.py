"""Answers that keep a walk going, for whatever is asked: in the normal band where a reading has one."""

from __future__ import annotations

from assistant.quantity.interval import Interval
from assistant.quantity.kind import from_si
from assistant.tree.limits import evaluate
from assistant.tree.model import Reading


def reading_text(reading: Reading, env: dict[str, Interval]) -> str:
    """A value well inside the normal band (where none is normal: the last of a known live, else the
    first), typed in the reading's unit.
    """
    if not reading.bands:
        return "0"
    usual = len(reading.bands) - 1 if reading.known_live else 0
    index = next((i for i, band in enumerate(reading.bands) if band.normal), usual)
    under = reading.bands[index].under
    high = evaluate(under, env, reading.unit).middle if under else None
    below = reading.bands[index - 1].under if index else None
    low = evaluate(below, env, reading.unit).middle if below else None
    if low is None:
        value = high / 2 if high > 0 else high - 1
    elif high is None:
        value = low + max(abs(low) * 0.1, 1e-3)
    else:
        value = (low + high) / 2
    return f"{from_si(value, reading.unit):.4g}"


def plate_text(value) -> str:
    """A value from the middle of what the plate can say."""
    number = value.choices[0] if value.choices else value.span.middle
    return f"{from_si(number, value.unit):.6g}"


def page_texts(ask, env=None) -> list[str]:
    """One text for each reading of a page, those above already counted."""
    known = dict(ask.env)
    out = []
    for reading in ask.readings:
        text = reading_text(reading, known)
        out.append(text)
        if reading.name:
            from assistant.quantity.kind import to_si

            known[reading.name] = Interval.exact(to_si(float(text), reading.unit))
    return out
