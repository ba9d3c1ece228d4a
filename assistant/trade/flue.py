"""What natural-gas flue gas carries away: its CO2, the efficiency left, its dew point and its water."""

from __future__ import annotations

import math

from assistant.trade.combustion import AMBIENT_O2, o2
from assistant.trade.constants import ATMOSPHERE
from assistant.trade.entry import Argument, ArgumentError, Result, Source, argument, computation
from assistant.trade.unit import to_si

CO2 = Source(
    "CO2 = ultimate CO2 × (20.9 - O2) / 20.9; 11.8 % for natural gas worked from a published flue-gas table, "
    "propane about 13.8 % from memory",
    "computed",
)
EFFICIENCY = Source(
    "fitted to the 25 cells of US DOE Steam Tip Sheet No. 4, January 2006 (natural gas)", "computed"
)
STEAM = Source(
    "methane burnt gives 1 CO2, 2 H2O and the nitrogen of its air; Magnus formula for saturation", "reasoned"
)
WATER = Source("2 mol of water for each mol of methane, 890.6 kJ/mol", "computed")
LEAST, MOST = to_si(150, "Fdiff"), to_si(650, "Fdiff")
METHANE = 890.6e3
"""Gross heat of a mol of methane, J (from memory)."""


def _ultimate(sense: int | None) -> Argument:
    return argument(
        "ultimate",
        "percent",
        "percent",
        8,
        16,
        11.8,
        sense,
        "CO2 of the fuel burnt with no excess air",
        default=11.8,
    )


@computation(
    "Carbon dioxide from oxygen",
    takes=(o2(-1, 20.9), _ultimate(+1)),
    gives=Result("percent", "percent", "CO2"),
    formula="{ultimate} × (20.9 - {o2}) / 20.9",
    source=CO2,
)
def co2_from_o2(o2: float, ultimate: float) -> float:
    """ultimate × (20.9 - o2) / 20.9 as a fraction. Range: 0 to 20.9 % O2.

    Source: worked from a published table.
    """
    return ultimate * (AMBIENT_O2 - o2) / AMBIENT_O2


@computation(
    "Oxygen from carbon dioxide",
    takes=(
        argument("co2", "percent", "percent", 0, 11.8, 7.9, -1, "carbon dioxide in the dry flue gas"),
        _ultimate(+1),
    ),
    gives=Result("percent", "percent", "O2"),
    formula="20.9 × (1 - {co2} / {ultimate})",
    source=CO2,
)
def o2_from_co2(co2: float, ultimate: float) -> float:
    """20.9 × (1 - co2 / ultimate) as a fraction: the inverse of co2_from_o2.

    Range: 0 to 11.8 % CO2. Raises ArgumentError above the ultimate. Source: as co2_from_o2 (computed).
    """
    if co2 > ultimate * (1 + 1e-9):
        raise ArgumentError(
            "o2_from_co2: 'co2' is more than this fuel can give ('ultimate'); look at the fuel and the "
            "reading. For example co2=7.9percent ultimate=11.8percent.",
            "o2_from_co2",
        )
    return AMBIENT_O2 * (1 - co2 / ultimate)


@computation(
    "Excess air from carbon dioxide",
    takes=(
        argument("co2", "percent", "percent", 4, 11.8, 7.9, -1, "carbon dioxide in the dry flue gas"),
        _ultimate(+1),
    ),
    gives=Result("percent", "percent", "excess air"),
    formula="100 × 8.52381 × {o2} / 100 / (2 - 9.52381 × {o2} / 100)",
    source=Source(
        "O2 that goes with the CO2, then excess "
        "air from O2 (US DOE process-heating tool documentation, ORNL)",
        "read",
    ),
    where={
        "o2": (
            lambda co2, ultimate: AMBIENT_O2 * (1 - min(1.0, co2 / ultimate)),
            "percent",
            "O2 that goes with it",
        )
    },
)
def excess_air_from_co2(co2: float, ultimate: float) -> float:
    """Excess air as a fraction from CO2, by way of the O2 that goes with it. No less than nothing.

    Range: 4 to 11.8 % CO2; below 4 % the sample is diluted. Raises ArgumentError outside. Source: as
    excess_air (read).
    """
    o = AMBIENT_O2 * (1 - min(1.0, co2 / ultimate))
    return 8.52381 * o / (2 - 9.52381 * o)


@computation(
    "Combustion efficiency of natural gas",
    takes=(
        o2(-1, 11, 7),
        argument("stack", "temperature", "F", 100, 900, 380, -1, "flue gas, before any dilution"),
        argument("air", "temperature", "F", -20, 150, 70, +1, "air that the burner takes"),
    ),
    gives=Result("percent", "percent", "efficiency"),
    formula="90.1 - ({stack} - {air}) / 100 × (2.156 + 1.84 × {excess} / 100)",
    where={"excess": (lambda o2, **_: 8.52381 * o2 / (2 - 9.52381 * o2), "percent", "excess air")},
    source=EFFICIENCY,
)
def combustion_efficiency(o2: float, stack: float, air: float) -> float:
    """90.1 - dT/100·(2.156 + 1.84·EA) percent, as a fraction; dT in °F, EA from O2.

    No condensing: not for a 90+ furnace.

    Range: 0 to 11 % O2; stack 150 to 650 °F above the air. Raises ArgumentError outside. Source: our fit to
    DOE Steam Tip Sheet No. 4 (read), within 0.2 point of its cells.
    """
    rise = stack - air
    if not LEAST - 1e-6 <= rise <= MOST + 1e-6:
        raise ArgumentError(
            "combustion_efficiency: 'stack' must be 150 to 650 °F above 'air' (below that the gas condenses "
            "and this does not hold), for example stack=380F air=70F.",
            "combustion_efficiency",
        )
    excess = 8.52381 * o2 / (2 - 9.52381 * o2)
    return (90.1 - rise * 1.8 / 100 * (2.156 + 1.84 * excess)) / 100


def saturation(kelvin: float) -> float:
    """Pressure of saturated water vapour in Pa by the Magnus formula (from memory), -40 to 65 °C."""
    t = kelvin - 273.15
    return 611.2 * math.exp(17.62 * t / (243.12 + t))


def steam_share(excess: float) -> float:
    """Share of water vapour in methane's wet flue gas at an excess air (fraction), dry combustion air."""
    return 2 / (1 + 2 + 2 * excess + 2 * (1 + excess) * 79.1 / 20.9)


@computation(
    "Dew point of the flue gas",
    takes=(
        o2(-1, 15, 5),
        argument(
            "pressure",
            "pressure",
            "psi",
            8,
            16,
            14.696,
            +1,
            "barometer (absolute)",
            default=ATMOSPHERE / to_si(1, "psi"),
        ),
    ),
    gives=Result("temperature", "F", "dew point"),
    formula="temperature at which water saturates its share of the flue gas at {o2} % O2 and {pressure} psi",
    source=STEAM,
)
def flue_dew_point(o2: float, pressure: float) -> float:
    """Saturation temperature in K of 2 / (wet volumes of methane's flue gas); dry combustion air.

    Range: 0 to 15 % O2. Above it a vent stays dry, below it a condensing furnace earns its name. Source:
    reasoned.
    """
    excess = 8.52381 * o2 / (2 - 9.52381 * o2)
    log = math.log(steam_share(excess) * pressure / 611.2)
    return 273.15 + 243.12 * log / (17.62 - log)


@computation(
    "Water that the flue gas can give",
    takes=(
        argument("input", "heat_rate", "Btuh", 0, 1e6, 100_000, +1, "fired input"),
        argument(
            "caught",
            "percent",
            "percent",
            0,
            100,
            100,
            +1,
            "half to three quarters in a 90 to 96 % furnace",
            default=100,
        ),
    ),
    gives=Result("mass_flow", "lbh", "condensate"),
    formula="{input} × 9.41 / 100000 × {caught} / 100",
    source=WATER,
)
def condensate(input: float, caught: float) -> float:  # noqa: A002  # the trade's word for it
    """2 × 18.015 g of water for each 890.6 kJ, times the share caught, in kg/s.

    Range: 0 to 1,000,000 Btu/h, 0 to 100 %. Raises ArgumentError outside. Source: combustion of methane
    (computed); the share caught is common practice.
    """
    return input / METHANE * 2 * 0.018015 * caught
