"""What another computer wrote of a visit at the same time, in words for a person."""

from __future__ import annotations

from dataclasses import fields

from assistant.trail.error import TrailError
from assistant.trail.fork import Side, sides_of
from assistant.trail.read import read_trail
from assistant.walk.event import Event, Typed
from assistant.window.session import Driver
from assistant.window.words import clock, plain


def written_elsewhere(driver: Driver) -> list[Side]:
    """Empty where nobody else wrote, or it was read and joined before."""
    if driver.folder is None:
        return []
    try:
        return sides_of(read_trail(driver.folder))
    except TrailError:
        return []


def event_words(event: Event) -> str:
    """Such as "9:14 saw: no heat light: three flashes"."""
    said = []
    for field in fields(event):
        value = getattr(event, field.name)
        if field.name == "at" or value in (None, "", (), {}):
            continue
        if isinstance(value, dict):
            said.append(", ".join(f"{plain(str(name))} {_text(each)}" for name, each in value.items()))
        elif isinstance(value, Typed):
            said.append(value.text)
        else:
            said.append(plain(str(value)))
    return f"{clock(event.at)} {plain(type(event).__name__).lower()}: {'; '.join(said)}"


def _text(value: object) -> str:
    return value.text if isinstance(value, Typed) else str(value)
