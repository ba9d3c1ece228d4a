"""A visit's folder read for a report: its events, the trees it was walked with, what is kept of person and
photos."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from assistant.report.rows import told
from assistant.report.story import Story
from assistant.report.tell import tell
from assistant.trail.erased import erased, in_words
from assistant.trail.error import TrailError
from assistant.trail.fingerprint import fingerprint
from assistant.trail.keep import kept, person
from assistant.trail.photos import photos_of
from assistant.trail.practice import refuse
from assistant.trail.read import Trail, read_trail
from assistant.trail.record import kept_library
from assistant.walk.event import Event, Opened, Person
from assistant.walk.state import Visit

ORDER = ("name", "address", "phone", "email", "shop", "licence", "make", "model", "serial")
"""As on an envelope, then who came and what stands there; anything else follows."""


def story_of(folder: Path) -> Story:
    """Raises TrailError where there is no visit, or a tree text that it was walked with is gone, and for a
    drill's trail: practice gives no report to hand to anybody.
    """
    trail = read_trail(Path(folder))
    refuse(trail, Path(folder))
    opened = next((event for event in trail.events if isinstance(event, Opened)), None)
    if opened is None:
        raise TrailError(
            f"There is no visit in {folder}." if not trail.damage else f"{folder}: {trail.remarks[0]}"
        )
    library = kept_library(folder, opened)
    story = tell(
        trail.events,
        library,
        fingerprint(trail),
        _person(folder, trail),
        _photos(folder, trail),
        [*trail.remarks, *_erased(folder)],
    )
    return replace(story, zone_picture=_zone_picture(story))


def _zone_picture(story: Story) -> bytes | None:
    """The plan of the last zone survey, drawn; None where there was none or nothing can be drawn here."""
    if story.zones is None:
        return None
    from assistant.report.drawing import CannotDrawError

    try:
        from assistant.report.zone_plan import picture

        return picture(list(story.zones.plan))
    except (ImportError, CannotDrawError):
        return None  # the table beside it says the same


def _erased(folder: Path) -> list[str]:
    """A sentence for what was erased of this visit, so that a gap is not taken for a loss."""
    try:
        said = in_words(erased(folder))
    except TrailError as problem:
        said = str(problem)
    return [said] if said else []


def visit_of(folder: Path) -> tuple[Visit, list[Event]]:
    """A visit's events, and what they come to as far as they can be followed. Raises as `story_of` does."""
    trail = read_trail(Path(folder))
    refuse(trail, Path(folder))
    opened = next((event for event in trail.events if isinstance(event, Opened)), None)
    if opened is None:
        raise TrailError(f"There is no visit in {folder}.")
    return told(kept_library(folder, opened), trail.events).visit, trail.events


def _person(folder: Path, trail: Trail) -> dict[str, str]:
    known = next((event for event in reversed(trail.events) if isinstance(event, Person)), None)
    try:
        found = (person(folder, known.kept) if known else None) or {}
    except TrailError:
        return {}
    names = [name for name in ORDER if name in found] + sorted(set(found) - set(ORDER))
    return {name: found[name] for name in names}


def _photos(folder: Path, trail: Trail) -> dict[str, bytes]:
    found = {name: _kept(folder, name) for event in trail.events for name in photos_of(event)}
    return {name: data for name, data in found.items() if data is not None}


def _kept(folder: Path, name: str) -> bytes | None:
    try:
        return kept(folder, name)
    except TrailError:
        return None
