"""Flue gas of a natural-gas burner: air-free CO, excess air, stack rise."""

from __future__ import annotations

from assistant.trade.entry import Argument, Result, Source, argument, computation

AIR_FREE = Source("CO air-free = CO × 20.9 / (20.9 - O2); worked example read in a published text", "read")
EXCESS = Source(
    "excess air = 8.52381·o / (2 - 9.52381·o), o = O2 fraction of the dry flue gas; US DOE process-heating "
    "tool documentation (ORNL)",
    "read",
)
AMBIENT_O2 = 0.209


def o2(sense: int | None, high: float = 15, example: float = 7) -> Argument:
    """Oxygen as the analyser shows it."""
    return argument(
        "o2", "percent", "percent", 0, high, example, sense, "oxygen in the dry flue gas, undiluted"
    )


@computation(
    "Carbon monoxide, air-free",
    takes=(argument("co", "concentration", "ppm", 0, 10_000, 60, +1, "CO in the undiluted flue gas"), o2(+1)),
    gives=Result("concentration", "ppm", "CO air-free"),
    formula="{co} × 20.9 / (20.9 - {o2})",
    source=AIR_FREE,
)
def co_air_free(co: float, o2: float) -> float:
    """co × 20.9 / (20.9 - o2) as a fraction (shown in ppm). Refuses O2 above 15 %: the sample is diluted.

    Range: 0 to 10,000 ppm, 0 to 15 %. Raises ArgumentError outside. Source: published formula and example
    (read).
    """
    return co * AMBIENT_O2 / (AMBIENT_O2 - o2)


@computation(
    "Excess air from oxygen",
    takes=(o2(+1),),
    gives=Result("percent", "percent", "excess air"),
    formula="100 × 8.52381 × {o2} / 100 / (2 - 9.52381 × {o2} / 100)",
    source=EXCESS,
)
def excess_air(o2: float) -> float:
    """8.52381·o / (2 - 9.52381·o) as a fraction, natural gas (methane).

    The short form O2/(20.9 - O2) reads 12 % high.

    Range: 0 to 15 % O2. Raises ArgumentError outside. Source: US DOE process-heating tool documentation
    (read).
    """
    return 8.52381 * o2 / (2 - 9.52381 * o2)


@computation(
    "Stack temperature over return air",
    takes=(
        argument(
            "stack", "temperature", "F", -40, 1200, 380, +1, "flue gas in the vent, before any dilution"
        ),
        argument("return_air", "temperature", "F", -40, 200, 68, -1, "return air"),
    ),
    gives=Result("temperature_difference", "Fdiff", "stack rise"),
    formula="{stack} - {return_air}",
    source=Source("the stack follows the return air: judge the difference", "common practice"),
)
def stack_minus_return(stack: float, return_air: float) -> float:
    """stack - return_air in K. Range: -40 to 1200 °F and -40 to 200 °F. Source: common practice."""
    return stack - return_air
