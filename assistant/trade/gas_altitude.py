"""What a furnace may burn at altitude, by a named rule."""

from __future__ import annotations

from assistant.trade.constants import FOOT
from assistant.trade.entry import Argument, Result, Source, argument, choice, computation

RULE = Source(
    "NFPA 54 (2015) Table E.1.1(d), 4 % for each 1,000 ft above sea level, as told in a trade magazine of "
    "2015 (read); no derate up to 2,000 ft from memory",
    "from memory",
)
RULES = ("from-sea-level", "above-2000-ft")


def _altitude(sense: int | None) -> Argument:
    return argument("altitude", "length", "ft", -1000, 15_000, 5280, sense, "height above sea level")


def _rule() -> Argument:
    return choice("rule", RULES, "what the 4 % are counted from", default=RULES[0])


def share_off(height: float, rule: str) -> float:
    """Fraction of the input to take off at a height in metres."""
    feet = height / FOOT
    if feet <= 2000:
        return 0.0
    return 0.04 * (feet if rule == RULES[0] else feet - 2000) / 1000


@computation(
    "Input to take off for altitude",
    takes=(_altitude(+1), _rule()),
    gives=Result("percent", "percent", "taken off"),
    formula="4 % for each 1000 ft of {altitude}, counted {rule}; nothing up to 2000 ft",
    source=RULE,
)
def altitude_derate(altitude: float, rule: str) -> float:
    """Fraction off: 0.04 for each 1,000 ft, from sea level (usual) or only what is above 2,000 ft; m.

    The furnace's own instructions and the authority come first. Range: -1,000 to 15,000 ft. Raises
    ArgumentError outside. Source: NFPA 54 table as told (read), threshold from memory.
    """
    return share_off(altitude, rule)


@computation(
    "Input that the plate allows at altitude",
    takes=(
        argument("plate", "heat_rate", "Btuh", 1000, 1e6, 80_000, +1, "input on the rating plate"),
        _altitude(-1),
        _rule(),
    ),
    gives=Result("heat_rate", "Btuh", "allowed input"),
    formula="{plate} × (1 - 4 % for each 1000 ft of {altitude}, counted {rule}; nothing up to 2000 ft)",
    source=RULE,
)
def derated_input(plate: float, altitude: float, rule: str) -> float:
    """plate × (1 - share off) in W; W, m. Range as altitude_derate. Source: as altitude_derate."""
    return plate * (1 - share_off(altitude, rule))
