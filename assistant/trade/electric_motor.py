"""A motor against its plate: the voltage it may have, the torque left, what it draws when it can't turn."""

from __future__ import annotations

from bisect import bisect_right

from assistant.trade.entry import Argument, Result, Source, argument, choice, computation

TOLERANCE = Source(
    "NEMA MG 1-12.44.1 (condensed MG 1-2011, section 9.9.1, p. 13): ±10 % volts, ±5 % hertz, sum of the two "
    "at most 10 %, at rated load",
    "read",
)
TORQUE = Source("NEMA MG 1-12.44.2: torque of an induction motor follows the square of its voltage", "read")
CODE = Source("National Electrical Code Table 430.7(B), locked-rotor code letters", "read")
DERATING = Source("published motor voltage-imbalance curve; another copy gives 0.90 at 3 %", "read")
LETTERS = {
    "A": (0, 3.14), "B": (3.15, 3.54), "C": (3.55, 3.99), "D": (4.0, 4.49), "E": (4.5, 4.99),
    "F": (5.0, 5.59), "G": (5.6, 6.29), "H": (6.3, 7.09), "J": (7.1, 7.99), "K": (8.0, 8.99),
    "L": (9.0, 9.99), "M": (10.0, 11.19),
    "N": (11.2, 12.49), "P": (12.5, 13.99), "R": (14.0, 15.99), "S": (16.0, 17.99), "T": (18.0, 19.99),
    "U": (20.0, 22.39),
}  # fmt: skip
"""kVA for each horsepower, least and most. V (22.4 and more) has no upper end and is left out."""
DERATE = (
    (0.0, 1.0), (0.005, 1.0), (0.015, 0.97), (0.02, 0.95), (0.025, 0.93), (0.03, 0.89), (0.035, 0.85),
    (0.04, 0.82), (0.045, 0.78), (0.05, 0.76),
)  # fmt: skip
"""Unbalance of the three voltages -> factor on the rated power."""


def _plate(sense: int | None, example: float = 115) -> Argument:
    return argument("plate", "ac_voltage", "V", 10, 700, example, sense, "voltage on the motor's plate")


@computation(
    "Voltage that a motor's plate allows",
    takes=(_plate(None),),
    gives={"low": Result("ac_voltage", "V", "from"), "high": Result("ac_voltage", "V", "to")},
    formula="90 to 110 % of {plate}",
    source=TOLERANCE,
)
def motor_voltage_window(plate: float) -> dict[str, float]:
    """0.90 and 1.10 of the plate's voltage, running at rated load. Range: 10 to 700 V.

    Source: NEMA MG 1 (read).
    """
    return {"low": 0.90 * plate, "high": 1.10 * plate}


@computation(
    "Voltage and frequency of a motor against its plate, together",
    takes=(
        argument("volts", "ac_voltage", "V", 0, 1000, 218.3, None, "voltage at the motor, running"),
        _plate(None, 230),
        argument("hertz", "frequency", "Hz", 0, 100, 60, None, "measured frequency", default=60),
        argument("plate_hertz", "frequency", "Hz", 40, 70, 60, None, "frequency on the plate", default=60),
    ),
    gives={
        "sum": Result("percent", "percent", "sum of both deviations"),
        "volts": Result("percent", "percent", "volts"),
        "hertz": Result("percent", "percent", "hertz"),
        "word": Result("words", "", "judgement"),
    },
    formula="|{volts} - {plate}| / {plate} + |{hertz} - {plate_hertz}| / {plate_hertz}",
    source=TOLERANCE,
)
def motor_supply(volts: float, plate: float, hertz: float, plate_hertz: float) -> dict[str, float | str]:
    """|dV|/V + |df|/f as a fraction, and each with its sign; V, Hz.

    Allowed: 10 %, 5 % and together 10 %, ends included.

    Range: 0 to 1,000 V, plate 10 to 700 V. Raises ArgumentError outside. Source: NEMA MG 1-12.44.1 (read).
    """
    dv, df = volts / plate - 1, hertz / plate_hertz - 1
    total, slack = abs(dv) + abs(df), 1e-9
    ok = abs(dv) <= 0.10 + slack and abs(df) <= 0.05 + slack and total <= 0.10 + slack
    return {
        "sum": total,
        "volts": dv,
        "hertz": df,
        "word": "inside the plate's tolerance" if ok else "outside it",
    }


@computation(
    "Torque left at a voltage",
    takes=(
        argument("volts", "ac_voltage", "V", 0, 700, 103.5, +1, "voltage at the motor under load"),
        _plate(-1),
    ),
    gives=Result("percent", "percent", "torque"),
    formula="100 × ({volts} / {plate})^2",
    source=TORQUE,
)
def torque_at_voltage(volts: float, plate: float) -> float:
    """(volts / plate)² as a fraction: 81 % at 90 % volts. Range: 0 to 700 V.

    Source: NEMA MG 1-12.44.2 (read).
    """
    return (volts / plate) ** 2


@computation(
    "Locked-rotor current from the code letter",
    takes=(
        choice("letter", ("L", *[x for x in LETTERS if x != "L"]), "code letter on the plate"),
        argument("horsepower", "count", "", 0.01, 200, 0.5, None, "rated horsepower"),
        argument("volts", "ac_voltage", "V", 100, 1000, 115, None, "rated voltage"),
    ),
    gives={"least": Result("ac_current", "A", "least"), "most": Result("ac_current", "A", "most")},
    formula="kVA per horsepower at {letter} × {horsepower} × 1000 / {volts}",
    source=CODE,
)
def locked_rotor_amps(letter: str, horsepower: float, volts: float) -> dict[str, float]:
    """kVA/hp × hp × 1000 / V at both ends of the letter's band, single phase, in A.

    Most split-capacitor blowers carry no letter and lock at only 1.5 to 2.5 times the plate's amps (from
    memory). Range: 0.01 to 200 hp, 100 to 1,000 V. Raises ArgumentError outside. Source: NEC Table 430.7(B)
    (read).
    """
    low, high = LETTERS[letter]
    return {"least": low * horsepower * 1000 / volts, "most": high * horsepower * 1000 / volts}


@computation(
    "Derating of a three-phase motor for voltage unbalance",
    takes=(argument("unbalance", "percent", "percent", 0, 5, 2, -1, "unbalance of the three line voltages"),),
    gives=Result("percent", "percent", "power left"),
    formula="published curve at {unbalance}",
    source=DERATING,
)
def unbalance_derating(unbalance: float) -> float:
    """Factor on rated power, linear between the ten published points.

    Three-phase motors only: a house has none.

    Range: 0 to 5 %; above, the motor must not run. Raises ArgumentError outside. Source: published curve
    (read).
    """
    i = min(bisect_right([x for x, _ in DERATE], unbalance), len(DERATE) - 1)
    (x0, y0), (x1, y1) = DERATE[i - 1], DERATE[i]
    return y0 + (y1 - y0) * min(1.0, (unbalance - x0) / (x1 - x0))


@computation(
    "Extra heat of a three-phase motor from voltage unbalance",
    takes=(
        argument("unbalance", "percent", "percent", 0, 5, 3.5, +1, "unbalance of the three line voltages"),
    ),
    gives=Result("percent", "percent", "more temperature rise"),
    formula="2 × {unbalance}^2",
    source=Source(
        "NEMA MG 1 rule: percent more temperature rise is twice the square of the percent unbalance",
        "from memory",
    ),
)
def unbalance_heating(unbalance: float) -> float:
    """2 × (percent unbalance)² percent, as a fraction. Range: 0 to 5 %.

    Source: NEMA MG 1 rule of thumb (from memory).
    """
    return 2 * (100 * unbalance) ** 2 / 100
