"""A bypass between supply and return of a zoned system: how much it must carry and what that does to the
heat.
"""

from __future__ import annotations

from assistant.trade.entry import Argument, Result, Source, argument, computation

BALANCE = Source(
    "what the equipment must move less what the smallest zone, leaks and a dump take (mass balance)",
    "reasoned",
)
MIXING = Source(
    "steady recirculation: rise over (1 - bypass share); constant output, an upper bound", "reasoned"
)


def _flow(name: str, example: float, sense: int, words: str, default=None) -> Argument:
    return argument(name, "airflow", "cfm", 0, 20_000, example, sense, words, default=default)


def _share(sense: int) -> Argument:
    return argument(
        "bypassed", "percent", "percent", 0, 90, 30, sense, "share of the air that goes through the bypass"
    )


@computation(
    "Air that a bypass must carry",
    takes=(
        _flow("least", 1200, +1, "least airflow of the equipment"),
        _flow("zone", 400, -1, "smallest zone alone"),
        _flow("leak", 0, -1, "past shut dampers", 0),
        _flow("dump", 0, -1, "sent elsewhere on purpose", 0),
    ),
    gives=Result("airflow", "cfm", "bypass"),
    formula="{least} - {zone} - {leak} - {dump}, zero at least",
    source=BALANCE,
)
def bypass_flow(least: float, zone: float, leak: float, dump: float) -> float:
    """least - zone - leak - dump in m³/s, zero at least.

    A public page that asks for the zone's flow fails the balance.

    Range: 0 to 20,000 cfm each. Raises ArgumentError outside. Source: mass balance (reasoned).
    """
    return max(0.0, least - zone - leak - dump)


def _room() -> Argument:
    return argument("room", "temperature", "F", 32, 110, 70, +1, "air that comes back from the rooms")


def _rise(example: float) -> Argument:
    return argument(
        "rise", "temperature_difference", "Fdiff", 0, 150, example, +1, "rise at the equipment itself"
    )


@computation(
    "Supply temperature with a bypass, heating",
    takes=(_room(), _rise(60), _share(+1)),
    gives=Result("temperature", "F", "supply"),
    formula="{room} + {rise} / (1 - {bypassed} / 100)",
    source=MIXING,
)
def bypass_supply_heating(room: float, rise: float, bypassed: float) -> float:
    """room + rise / (1 - share) in K: 60 °F rise and 40 % bypass end at 170 °F, and the limit trips.

    Range: 0 to 90 %. Raises ArgumentError outside. Source: steady mixing (reasoned), an upper bound.
    """
    return room + rise / (1 - bypassed)


@computation(
    "Supply temperature with a bypass, cooling",
    takes=(
        _room(),
        argument("fall", "temperature_difference", "Fdiff", 0, 60, 20, -1, "fall at the coil itself"),
        _share(-1),
    ),
    gives=Result("temperature", "F", "supply"),
    formula="{room} - {fall} / (1 - {bypassed} / 100)",
    source=MIXING,
)
def bypass_supply_cooling(room: float, fall: float, bypassed: float) -> float:
    """room - fall / (1 - share) in K: 20 °F and 30 % end at 41 °F, near a frozen coil. Range: 0 to 90 %.

    Raises ArgumentError outside. Source: steady mixing (reasoned).
    """
    return room - fall / (1 - bypassed)
