"""What a page of a zoned house asks for: who is to call, which zone is touched, which wires come off.

Only the words of the page are known here. What it does not say stays as the page before left it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass

FOUND, OFF, MOIST, DRY, AUTO = "as found", "all off", "moisture asked", "moisture not asked", "fan to auto"
OTHER, OWN, EVERY, STROKE, TURNS = "other alone", "own alone", "every zone", "fresh stroke", "in turn"
EACH_FAN, EACH_COOL, EACH_HEAT = "each fan alone", "each cooling alone", "each heat alone"
SMALL_HEAT, ALL_HEAT, AFTER = "smallest heats", "every zone heats", "after the call"

SITUATIONS: tuple[tuple[str, str], ...] = (
    (EACH_COOL, r"each zone's cooling call alone"),
    (EACH_HEAT, r"each zone's heat call alone"),
    (EACH_FAN, r"each zone's fan alone|one thermostat's fan alone"),
    (SMALL_HEAT, r"smallest zone heating alone|cut-out lamp lights|highest with the smallest zone alone"),
    (ALL_HEAT, r"every zone open and the unit heating"),
    (AFTER, r"purge over|from the end of the call"),
    (TURNS, r"from zone to zone|driven in turn|every damper driv|every damper once|each damper alone while"),
    (STROKE, r"fresh stroke|stroke of that damper|while it shuts|driven as before|one stroke"),
    (AUTO, r"fan set to auto"),
    (DRY, r"moisture no longer asked"),
    (MOIST, r"moisture (still )?asked for"),
    (EVERY, r"all zones open|every zone open"),
    (OWN, r"(its own|quiet) zone's fan (on )?alone"),
    (
        OTHER,
        r"other zone('s fan)?( on)? (alone|only)|other zone's (fan )?alone|the other zone calling|same call"
        r"|another zone's fan|smallest (zone )?alone|other zone still calls|other zone only",
    ),
    (OFF, r"heat and cooling off|every zone off|everything off"),
    (FOUND, r"as found"),
)
"""The first that fits decides: what is done in several calls stands before what is done in one."""

EVERY_ZONE = r"zone by zone|highest of all zones|of all zones"
QUIET_ZONE = r"of the quiet zone"
SWITCHED_ON = r"zone that you switched on|whose thermostat is on"


@dataclass(frozen=True)
class Asked:
    """`who` is one of the situations, or None: as it was. `held`: lowest, highest or nothing."""

    who: str | None
    zone: str
    """"every", "quiet", "other" or "that" one, for a zone's terminals."""


def asked_for(own: str, page: Iterable[str]) -> Asked:
    """What a reading's own words ask for, else its page's in order."""
    texts = [text.lower() for text in (own, *page)]
    return Asked(_first(texts, SITUATIONS), _zone(texts))


def situation(page: Iterable[str]) -> str | None:
    """Who is to call, by the words of a page; None where it says nothing."""
    return _first([text.lower() for text in page], SITUATIONS)


def _first(texts: list[str], table: tuple[tuple[str, str], ...]) -> str | None:
    for text in texts:
        for name, words in table:
            if re.search(words, text):
                return name
    return None


def _zone(texts: list[str]) -> str:
    table = (("every", EVERY_ZONE), ("quiet", QUIET_ZONE), ("other", SWITCHED_ON))
    return _first(texts, table) or "that"


LIFTS: tuple[tuple[str, tuple[str, ...]], ...] = (
    (r"wires back on the panel, both legs off", ("actuator",)),
    (r"wires still off the panel, and off at the actuator", ("damper open", "damper close", "actuator")),
    (r"damper's wires lifted off the panel", ("damper open", "damper close")),
    (r"both damper wires lifted", ("damper open", "damper close")),
    (r"opening (wire|terminal with its wire) lifted", ("damper open",)),
    (r"take its opening wire off", ()),
    (r"g wire lifted off the panel", ("zone g",)),
    (r"wires lifted off the furnace board", ("furnace",)),
    (r"wires to the furnace lifted", ("panel out",)),
)


def lifts(page: Iterable[str]) -> tuple[str, ...] | None:
    """Which wires are off for these readings; None where the page lifts none."""
    text = " / ".join(page).lower()
    return next((wires for words, wires in LIFTS if re.search(words, text)), None)


def off_base(page: Iterable[str]) -> bool:
    """Whether the thermostat is taken off its base for these readings."""
    return bool(re.search(r"thermostat off its base|thermostat off\b", " / ".join(page).lower()))


def arm_pushed(page: Iterable[str]) -> bool:
    """Whether somebody pushes the bypass open meanwhile."""
    return bool(re.search(r"arm pushed", " / ".join(page).lower()))
