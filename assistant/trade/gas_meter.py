"""Clocking a gas meter: from a turn of its dial to the input, and that input against the rating plate."""

from __future__ import annotations

from assistant.trade.entry import Argument, Result, Source, argument, computation

CLOCK = Source(
    "ft³/h = 3600 × dial / seconds; Btu/h = ft³/h × heating value; worked examples read in three published "
    "texts",
    "read",
)


def dial(sense: int | None) -> Argument:
    """The gas that passed the meter."""
    return argument(
        "dial", "volume", "ft3", 0.01, 1000, 2, sense, "gas that passed: one turn of the dial, or several"
    )


def seconds(sense: int | None) -> Argument:
    """The time that it took."""
    return argument("seconds", "duration", "s", 1, 7200, 92.7, sense, "time it took, nothing else burning")


def heating_value(sense: int | None) -> Argument:
    """Heat in a cubic foot of the gas, asked of the utility."""
    return argument(
        "heating_value", "heating_value", "btuft3", 300, 3500, 1030, sense, "from the gas utility"
    )


def plate(sense: int | None) -> Argument:
    """The rated input."""
    return argument("plate", "heat_rate", "Btuh", 1000, 1e6, 80_000, sense, "input on the rating plate")


@computation(
    "Gas flow from the meter",
    takes=(dial(+1), seconds(-1)),
    gives=Result("gas_flow", "cfh", "gas flow"),
    formula="3600 × {dial} / {seconds}",
    source=CLOCK,
)
def gas_flow_from_meter(dial: float, seconds: float) -> float:
    """dial / seconds in m³/s; m³, s. Range: 0.01 to 1000 ft³, 1 s to 2 h. Raises ArgumentError outside.

    Source: read.
    """
    return dial / seconds


@computation(
    "Input from gas flow",
    takes=(argument("flow", "gas_flow", "cfh", 0, 2000, 77.7, +1, "gas flow"), heating_value(+1)),
    gives=Result("heat_rate", "Btuh", "input"),
    formula="{flow} × {heating_value}",
    source=CLOCK,
)
def gas_input(flow: float, heating_value: float) -> float:
    """flow × heating_value in W; m³/s, J/m³. Range: 0 to 2000 ft³/h, 300 to 3500 Btu/ft³. Source: read.

    Raises ArgumentError outside. A guessed heating value makes the answer no better than 2 to 3 %.
    """
    return flow * heating_value


@computation(
    "Input from the meter",
    takes=(dial(+1), seconds(-1), heating_value(+1)),
    gives=Result("heat_rate", "Btuh", "input"),
    formula="3600 × {dial} × {heating_value} / {seconds}",
    source=CLOCK,
)
def clocked_input(dial: float, seconds: float, heating_value: float) -> float:
    """dial × heating_value / seconds in W; m³, s, J/m³. Furnace at high fire 5 to 10 minutes, all else off.

    Range: 0.01 to 1000 ft³, 1 s to 2 h, 300 to 3500 Btu/ft³. Raises ArgumentError outside. Source: read.
    """
    return dial * heating_value / seconds


@computation(
    "Seconds that a turn of the dial should take",
    takes=(dial(+1), heating_value(+1), plate(-1)),
    gives=Result("duration", "s", "expected time"),
    formula="3600 × {dial} × {heating_value} / {plate}",
    source=CLOCK,
)
def dial_seconds(dial: float, heating_value: float, plate: float) -> float:
    """dial × heating_value / plate in s; m³, J/m³, W. The inverse of clocked_input.

    Range as clocked_input. Raises ArgumentError outside. Source: read.
    """
    return dial * heating_value / plate


@computation(
    "Input against the plate",
    takes=(argument("input", "heat_rate", "Btuh", 0, 1e6, 84_273, +1, "clocked input"), plate(-1)),
    gives=Result("percent", "percent", "over the plate"),
    formula="100 × ({input} - {plate}) / {plate}",
    source=Source("within 5 % of the plate and never over it", "common practice"),
)
def input_against_plate(input: float, plate: float) -> float:  # noqa: A002  # the trade's word for it
    """(input - plate) / plate as a fraction: 0 is on the plate, +5 % is over, negative is under. W.

    Range: 0 to 1,000,000 Btu/h, plate from 1,000. Raises ArgumentError outside. Source: common practice for
    what is allowed.
    """
    return (input - plate) / plate
