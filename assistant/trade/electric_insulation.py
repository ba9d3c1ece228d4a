"""Insulation resistance: referred to one temperature by a named convention, its growth in a minute, its
limit.

Two published conventions disagree (halving for each 10 °C, to 40 °C; halving for each 15 °C, to 25 °C), and
wire has its own table. There is no default: each computation is named for the one it uses.
"""

from __future__ import annotations

from bisect import bisect_right

from assistant.trade.entry import Argument, Result, Source, argument, choice, computation
from assistant.trade.unit import to_si

TEN = Source("IEEE 43 clause 6.3, thermoplastic insulation: R40 = R × 0.5^((40 - t)/10)", "from memory")
FIFTEEN = Source("MIL-M-17413A(NAVY): corrected to 25 °C, doubles for each 15 °C fall", "read")
WIRE = Source("FED-STD-228A Table I, p. 169: factors that refer to 60 °F", "read")
ARMY = Source("TM 55-1905-223-24-17, p. 2-40: at least 5.0 Mohm, 60 s over 10 s at least 1.15", "read")
FACTORS = {
    "R-or-RW": (
        0.60, 0.63, 0.67, 0.71, 0.75, 0.79, 0.82, 0.86, 0.90, 0.95, 1.00, 1.05, 1.10, 1.16, 1.22, 1.28,
        1.34, 1.41, 1.48, 1.55, 1.63, 1.71, 1.80, 1.89, 1.98, 2.08, 2.18, 2.29, 2.40, 2.52, 2.65,
    ),
    "T-or-TW": (
        0.79, 0.81, 0.82, 0.84, 0.86, 0.88, 0.90, 0.92, 0.95, 0.97, 1.00, 1.03, 1.06, 1.10, 1.14, 1.19,
        1.23, 1.27, 1.33, 1.39, 1.46, 1.55, 1.67, 1.78, 1.91, 2.06, 2.23, 2.39, 2.56, 2.75, 2.93,
    ),
    "RH": (
        0.73, 0.76, 0.78, 0.80, 0.83, 0.86, 0.88, 0.91, 0.94, 0.97, 1.00, 1.03, 1.07, 1.10, 1.13, 1.17,
        1.20, 1.24, 1.28, 1.32, 1.36, 1.40, 1.45, 1.50, 1.55, 1.59, 1.64, 1.69, 1.75, 1.80, 1.86,
    ),
}  # fmt: skip
"""Factor for each °F from 50 to 80 by wire type."""
DEGREES = tuple(to_si(50 + i, "F") for i in range(31))


def _insulation(sense: int | None = +1, example: float = 10) -> Argument:
    return argument("insulation", "insulation", "Mohm", 0, 1e5, example, sense, "reading after one minute")


def _temperature(sense: int | None, unit: str, low: float, high: float, example: float) -> Argument:
    return argument(
        "temperature", "temperature", unit, low, high, example, sense, "temperature of the winding"
    )


@computation(
    "Insulation at 40 °C, halving each 10 °C",
    takes=(_insulation(), _temperature(+1, "C", -20, 120, 20)),
    gives=Result("insulation", "Mohm", "at 40 °C"),
    formula="{insulation} × 0.5^((40 - {temperature}) / 10)",
    source=TEN,
)
def insulation_at_40(insulation: float, temperature: float) -> float:
    """R × 0.5^((40 °C - t)/10) in ohm; K. Range: -20 to 120 °C. Raises ArgumentError outside.

    Source: IEEE 43 (memory).
    """
    return insulation * 0.5 ** ((313.15 - temperature) / 10)


@computation(
    "Insulation at 25 °C, halving each 15 °C",
    takes=(_insulation(+1, 100), _temperature(+1, "C", -20, 120, 40)),
    gives=Result("insulation", "Mohm", "at 25 °C"),
    formula="{insulation} × 0.5^((25 - {temperature}) / 15)",
    source=FIFTEEN,
)
def insulation_at_25(insulation: float, temperature: float) -> float:
    """R × 0.5^((25 °C - t)/15) in ohm; K. Range: -20 to 120 °C. Raises ArgumentError outside.

    Source: MIL-M-17413A (read).
    """
    return insulation * 0.5 ** ((298.15 - temperature) / 15)


@computation(
    "Wire insulation at 60 °F",
    takes=(
        _insulation(+1, 100),
        _temperature(+1, "F", 50, 80, 70),
        choice("wire", tuple(FACTORS), "type of wire insulation"),
    ),
    gives=Result("insulation", "Mohm", "at 60 °F"),
    formula="{insulation} × the factor of {wire} at {temperature}",
    source=WIRE,
)
def wire_insulation_at_60(insulation: float, temperature: float, wire: str) -> float:
    """R × the table's factor, linear between whole °F, in ohm; K. Range: 50 to 80 °F.

    Source: FED-STD-228A (read).
    """
    row = FACTORS[wire]
    i = min(max(bisect_right(DEGREES, temperature + 1e-9) - 1, 0), len(row) - 2)
    share = (temperature - DEGREES[i]) / (DEGREES[i + 1] - DEGREES[i])
    return insulation * (row[i] + share * (row[i + 1] - row[i]))


@computation(
    "Growth of insulation from ten seconds to a minute",
    takes=(
        argument("sixty", "insulation", "Mohm", 0, 1e5, 6.9, +1, "reading at 60 s"),
        argument("ten", "insulation", "Mohm", 0.001, 1e5, 6.0, -1, "reading at 10 s"),
    ),
    gives=Result("ratio", "", "ratio"),
    formula="{sixty} / {ten}",
    source=ARMY,
)
def insulation_growth(sixty: float, ten: float) -> float:
    """sixty / ten, a plain number; at least 1.15 passes. Range: to 100 Gohm.

    Source: TM 55-1905-223-24-17 (read).
    """
    return round(sixty / ten, 12)


VERDICTS = ("good", "watch", "poor: do not leave it running", "grounded")


@computation(
    "What a winding's insulation to frame says",
    takes=(_insulation(None, 4.9),),
    gives={"word": Result("words", "", "judgement")},
    formula="{insulation} against 5, 1 and 0.1 Mohm",
    source=Source(
        "5 Mohm from TM 55-1905-223-24-17 p. 2-40 (read); 1 Mohm the old one-megohm rule; 0.1 Mohm",
        "common practice",
    ),
)
def winding_insulation(insulation: float) -> dict[str, str]:
    """At least 5 Mohm good, 1 to 5 watch, 0.1 to 1 poor, under 0.1 grounded; ohm, 500 V DC, electronics
    unplugged.

    IEEE 43 leaves motors under 1 hp out, so these limits are borrowed. Range: 0 to 100 Gohm. Raises
    ArgumentError outside. Source: as named in the entry.
    """
    limits = (5e6, 1e6, 1e5)
    return {"word": next((VERDICTS[i] for i, limit in enumerate(limits) if insulation >= limit), VERDICTS[3])}


@computation(
    "Leakage through insulation",
    takes=(
        argument("volts", "dc_voltage", "V", 0, 1000, 500, +1, "voltage across it"),
        argument("insulation", "insulation", "Mohm", 0.0001, 1e5, 5, -1, "insulation resistance"),
    ),
    gives=Result("dc_current", "uA", "leakage"),
    formula="{volts} / {insulation}",
    source=Source("Ohm's law", "reasoned"),
)
def leakage_current(volts: float, insulation: float) -> float:
    """volts / insulation in A. Range: 0 to 1,000 V, 100 ohm and up. Raises ArgumentError outside.

    Source: reasoned.
    """
    return volts / insulation


@computation(
    "Least insulation by the old winding rule",
    takes=(argument("rated", "ac_voltage", "V", 0, 15000, 240, +1, "rated line voltage"),),
    gives=Result("insulation", "Mohm", "at least"),
    formula="{rated} / 1000 + 1",
    source=Source("IEEE 43-1974 as quoted: kV + 1 megohm at 40 °C, machines of 1 hp and more", "read"),
)
def least_insulation(rated: float) -> float:
    """(kV + 1) Mohm in ohm, at 40 °C. Fractional-horsepower motors lie outside the rule.

    Range: 0 to 15 kV. Raises ArgumentError outside. Source: IEEE 43-1974 (read).
    """
    return (rated / 1000 + 1) * 1e6
