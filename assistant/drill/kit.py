"""What the hand carries: the instruments of a usual truck, with the accuracy that their makers state.

Percent of reading and counts are those of middle-priced instruments of the trade (common practice). The same
list is the shop's of the visit, so that the walk widens each reading by what its instrument may be wrong.
"""

from __future__ import annotations

from assistant.quantity.instrument import Instrument
from assistant.quantity.shop import read_instruments

LOW, HIGH, NULLED, FOUR_LEADS, CLAMP, LEAKAGE, REST = (
    "multimeter, low impedance",
    "multimeter",
    "multimeter, leads nulled",
    "milliohm meter",
    "clamp, ten turns",
    "leakage clamp",
    "other instruments",
)

TRUCK: list[dict] = [
    {
        "name": LOW,
        "covers": ["ac_voltage", "dc_voltage"],
        "percent": "1 %",
        "counts": 3,
        "impedance": "low",
    },
    {
        "name": HIGH,
        "covers": ["ac_voltage", "dc_voltage", "resistance", "dc_current", "capacitance", "frequency"],
        "percent": "1 %",
        "counts": {"ac_voltage": 3, "dc_voltage": 3, "resistance": 3, "dc_current": 2, "capacitance": 3,
                   "frequency": 1},
        "range_top": {"resistance": "40 Mohm"},
        "impedance": "high",
        "lead_resistance": "0.2 ohm",
    },
    {
        "name": NULLED,
        "covers": ["resistance"],
        "percent": "1 %",
        "counts": 3,
        "range_top": {"resistance": "40 Mohm"},
        "impedance": "high",
    },
    {
        "name": FOUR_LEADS,
        "covers": ["resistance"],
        "percent": "0.5 %",
        "counts": 3,
        "range_top": {"resistance": "200 ohm"},
        "impedance": "high",
    },
    {"name": CLAMP, "covers": ["ac_current"], "percent": "2 %", "counts": 1},
    {"name": LEAKAGE, "covers": ["ac_current"], "percent": "2 %", "counts": 3},
    {
        "name": REST,
        "covers": [
            "pressure", "temperature", "percent", "concentration", "duration", "length", "insulation",
            "power", "airflow", "velocity", "speed",
        ],
        "percent": {"pressure": "1 %", "temperature": "0.3 %", "percent": "2 %", "concentration": "5 %",
                    "insulation": "3 %", "power": "2 %", "airflow": "5 %", "velocity": "3 %"},
        "counts": {"pressure": 1, "temperature": 8, "percent": 2, "concentration": 2, "duration": 2,
                   "length": 5, "insulation": 3, "power": 2, "airflow": 2, "velocity": 2},
    },
]  # fmt: skip

STATED, _ = read_instruments(TRUCK)
PERFECT: dict[str, Instrument] = {
    name: Instrument(
        name,
        known.covers,
        range_top=known.range_top,
        impedance=known.impedance,
        lead_resistance=known.lead_resistance,
    )
    for name, known in STATED.items()
}
"""The same without error, for walks in which nothing but the fault may speak."""


def named_for(kind: str, meter: str | None) -> str:
    """Which of them reads a quantity the way the note beside the reading asks for."""
    words = (meter or "").lower()
    if kind in ("ac_voltage", "dc_voltage"):
        return LOW if "low impedance" in words else HIGH
    if kind == "resistance":
        return FOUR_LEADS if "four leads" in words else NULLED if "nulled" in words else HIGH
    if kind == "ac_current":
        return LEAKAGE if "leakage" in words else CLAMP
    return HIGH if kind in STATED[HIGH].covers else REST
