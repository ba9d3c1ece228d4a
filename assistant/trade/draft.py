"""Draft of a natural-draft vent: how strong it must be for the weather."""

from __future__ import annotations

from assistant.trade.entry import Result, Source, argument, computation

DRAFT = Source(
    "least draft by outdoor temperature: 2.5 Pa below 10 °F, 2.75 - T/40 Pa to 90 °F, 0.5 Pa above (2015 "
    "IECC Appendix RA)",
    "from memory",
)


def least(kelvin: float) -> float:
    """Least draft in Pa, as a size, at an outdoor temperature in kelvin."""
    fahrenheit = kelvin * 1.8 - 459.67
    return min(2.5, max(0.5, 2.75 - fahrenheit / 40))


@computation(
    "Least draft for the weather",
    takes=(argument("outdoors", "temperature", "F", -60, 130, 40, -1, "outdoor temperature"),),
    gives=Result("pressure", "Pa", "least draft, as a size"),
    formula="2.75 - {outdoors} / 40, from 0.5 to 2.5",
    source=DRAFT,
)
def least_draft(outdoors: float) -> float:
    """2.75 - °F/40 Pa, held between 0.5 and 2.5: the vent must pull at least so much (reading below the
    room).

    Range: -60 to 130 °F. Raises ArgumentError outside. Source: 2015 IECC Appendix RA (from memory).
    """
    return least(outdoors)
