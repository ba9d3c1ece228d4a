"""The supply as a meter sees it: class of the service voltage, drop under load, impedance of the path."""

from __future__ import annotations

from assistant.trade.bounds import size
from assistant.trade.entry import Result, Source, argument, computation

OHM = Source("Ohm's law: the source impedance is the fall of voltage over the rise of current", "reasoned")
SERVICE = Source(
    "ANSI C84.1 service voltage, Range A ±5 % (as quoted in COMAR 20.50.07.02), Range B 91.7 % to 105.8 % "
    "(as quoted in Power Quality in Electrical Systems, p. 18)",
    "read",
)


def _no_load(example: float):
    return argument("no_load", "ac_voltage", "V", 1, 700, example, +1, "voltage before the load comes on")


def _loaded(example: float):
    return argument("loaded", "ac_voltage", "V", 0, 700, example, -1, "voltage at the same points under load")


@computation(
    "Fall of the voltage under load, in percent",
    takes=(_no_load(121.5), _loaded(117.0)),
    gives=Result("percent", "percent", "drop"),
    formula="100 × ({no_load} - {loaded}) / {no_load}",
    source=OHM,
)
def drop_percent(no_load: float, loaded: float) -> float:
    """(no_load - loaded) / no_load as a fraction; volts. Negative when the voltage rises under load.

    Range: no_load 1 to 700 V, loaded 0 to 700 V. Raises ArgumentError outside. Source: arithmetic (reasoned).
    """
    return (no_load - loaded) / no_load


@computation(
    "Impedance of the supply from two readings",
    takes=(
        _no_load(121.5),
        _loaded(117.0),
        argument(
            "amps", "ac_current", "A", 0.1, 400, 9, None, "rise of the current between the two readings"
        ),
    ),
    gives=Result("resistance", "ohm", "impedance"),
    formula="({no_load} - {loaded}) / {amps}",
    source=OHM,
)
def supply_impedance(no_load: float, loaded: float, amps: float) -> float:
    """(no_load - loaded) / amps in ohm; volts, amperes. What stands between the panel's source and the load.

    Range: 1 to 700 V, 0.1 to 400 A. Negative where the voltage rises under load: then look at the neutral.
    Raises ArgumentError outside. Source: Ohm's law (reasoned).
    """
    return (no_load - loaded) / amps


@computation(
    "Difference of the two legs of a 120/240 V service",
    takes=(
        argument("leg_1", "ac_voltage", "V", 0, 350, 121, None, "line 1 to neutral"),
        argument("leg_2", "ac_voltage", "V", 0, 350, 119, None, "line 2 to neutral"),
    ),
    gives=Result("ac_voltage", "V", "leg difference"),
    formula="abs({leg_1} - {leg_2})",
    source=Source("0 to 4 V usual, above 8 V suspect the neutral", "common practice"),
    enclose=lambda leg_1, leg_2: size(leg_1 - leg_2),
)
def leg_difference(leg_1: float, leg_2: float) -> float:
    """|leg_1 - leg_2| in volts. A leg that rises while the other falls under load points to the neutral.

    Range: 0 to 350 V. Raises ArgumentError outside. Source: common practice for what is usual.
    """
    return abs(leg_1 - leg_2)


CLASSES = ("range A", "range B only", "outside range B")


@computation(
    "Class of the service voltage",
    takes=(
        argument("volts", "ac_voltage", "V", 0, 700, 121, None, "sustained voltage at the service"),
        argument("nominal", "ac_voltage", "V", 100, 600, 120, None, "nominal voltage of the system"),
    ),
    gives={
        "word": Result("words", "", "class"),
        "percent": Result("percent", "percent", "of nominal"),
        "a_low": Result("ac_voltage", "V", "range A from"),
        "a_high": Result("ac_voltage", "V", "range A to"),
        "b_low": Result("ac_voltage", "V", "range B from"),
        "b_high": Result("ac_voltage", "V", "range B to"),
    },
    formula="where {volts} stands in 95 to 105 % (range A) and 91.7 to 105.8 % (range B) of {nominal}",
    source=SERVICE,
)
def service_voltage_class(volts: float, nominal: float) -> dict[str, float | str]:
    """Range A: 0.95 to 1.05 of nominal, range B: 110/120 to 127/120 of nominal, ends included; volts.

    Gives `word` (one of CLASSES), `percent` of nominal and the four limits. Local rules differ. Range: 0 to
    700 V, nominal 100 to 600 V. Raises ArgumentError outside. Source: ANSI C84.1 as quoted (read).
    """
    limits = {
        "a_low": 0.95 * nominal,
        "a_high": 1.05 * nominal,
        "b_low": 110 / 120 * nominal,
        "b_high": 127 / 120 * nominal,
    }
    slack = 1e-9 * nominal  # 0.95 × 240 is 228 to a person, whatever the last bit says
    word = CLASSES[2]
    if limits["b_low"] - slack <= volts <= limits["b_high"] + slack:
        word = CLASSES[1]
    if limits["a_low"] - slack <= volts <= limits["a_high"] + slack:
        word = CLASSES[0]
    return {"word": word, "percent": volts / nominal, **limits}
