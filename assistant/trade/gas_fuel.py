"""What the two household gases bring: heat in a cubic foot, weight against air, air they need, CO2 they can
give.
"""

from __future__ import annotations

from assistant.trade.entry import Result, Source, choice, computation
from assistant.trade.unit import to_si

FUELS = {"natural": (1029, 0.60, 9.52, 0.118), "propane": (2500, 1.50, 23.8, 0.138)}
"""Btu/ft³, specific gravity, ft³ of air for each ft³, ultimate CO2."""
HEAT = Source(
    "heating values 1,029 and 2,500 Btu/ft³ quoting the Federal Register of 21 March 2007, air for methane "
    "from US DOE tool documentation (read); gravity, air and CO2 of propane",
    "from memory",
)


@computation(
    "What a household gas brings",
    takes=(choice("fuel", tuple(FUELS), "the gas"),),
    gives={
        "heating_value": Result("heating_value", "btuft3", "heating value"),
        "gravity": Result("ratio", "", "specific gravity"),
        "air": Result("ratio", "", "cubic feet of air for each cubic foot"),
        "ultimate": Result("percent", "percent", "CO2 with no excess air"),
    },
    formula="usual values of {fuel} gas",
    source=HEAT,
)
def fuel_data(fuel: str) -> dict[str, float]:
    """Usual values: heating value (J/m³), specific gravity, air need, ultimate CO2.

    The utility knows its own gas.

    Range: natural or propane. Raises ArgumentError otherwise. Source: Federal Register 2007 and US DOE as
    quoted (read); gravity, propane's air and CO2 from memory.
    """
    heat, gravity, air, ultimate = FUELS[fuel]
    return {"heating_value": to_si(heat, "btuft3"), "gravity": gravity, "air": air, "ultimate": ultimate}
