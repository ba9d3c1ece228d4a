"""Our own earlier visits to the same address or unit, found on the shelf and summed up for today's.

The same place is the same address, written alike but for case, spaces and punctuation, or the same serial
number. Practice is never one of them. Nothing here writes.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable
from pathlib import Path

from assistant.trail.clock import sortable
from assistant.trail.error import TrailError
from assistant.trail.read import read_trail
from assistant.trail.record import kept_library
from assistant.trail.shelf import Shelved
from assistant.walk.earlier_visit import Past
from assistant.walk.event import Opened
from assistant.walk.past import summed_up
from assistant.walk.state import BadAnswer, OutOfOrder
from assistant.walk.visit import begin, fold

MOST = 6
"""Earlier visits that are told: the latest ones."""
SHORTEST = 6
"""Letters and digits that an address or a serial number must have to mean one place."""


def same_place(
    listed: Iterable[Shelved], address: str, serial: str = "", but: Path | None = None
) -> list[Path]:
    """The folders of the visits there, the latest first; `but` is the visit of today."""
    here, unit = place(address), place(serial)
    found = []
    for each in listed:
        if but is not None and each.folder == but:
            continue
        same_address = here and here == place(dict(each.person).get("address", ""))
        if same_address or (unit and unit == place(dict(each.unit).get("serial", ""))):
            found.append(each)
    found.sort(key=lambda each: (sortable(each.last), each.folder.name), reverse=True)
    return [each.folder for each in found]


def recall(folders: Iterable[Path]) -> tuple[Past, ...]:
    """What each of these visits came to, at most MOST; one that can't be followed, or is practice, is left
    out."""
    found = []
    for folder in folders:
        past = past_of(folder)
        if past is not None:
            found.append(past)
        if len(found) == MOST:
            break
    return tuple(found)


def past_of(folder: Path) -> Past | None:
    """One visit summed up as far as it can be followed; None for practice and for what can't be read."""
    try:
        events = read_trail(folder).events
        opened = next((event for event in events if isinstance(event, Opened)), None)
        if opened is None or opened.practice:
            return None
        visit = begin(kept_library(folder, opened))
    except TrailError:
        return None
    for event in events:
        try:
            visit = fold(visit, event)
        except (BadAnswer, OutOfOrder, KeyError):
            break
    return summed_up(visit, folder.name)


def plain(text: str) -> str:
    """An address or serial number with nothing in it but letters and digits, in small letters."""
    return re.sub(r"[\W_]+", "", unicodedata.normalize("NFKC", text)).casefold()


def place(text: str) -> str:
    """What tells one address or serial number from another; empty where it is too short to mean one place."""
    found = plain(text)
    return found if len(found) >= SHORTEST else ""
