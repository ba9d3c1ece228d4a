"""The photos that an event names, by the hash they are kept under: for reports, checks and erasing alike."""

from __future__ import annotations

from assistant.walk.event import AsFound, AsLeft, Event, Filled, Note


def photos_of(event: Event) -> tuple[str, ...]:
    """In the order they were taken; empty for an event that carries none."""
    if isinstance(event, Note):
        return (event.photo,) if event.photo else ()
    return event.photos if isinstance(event, (AsFound, AsLeft, Filled)) else ()
