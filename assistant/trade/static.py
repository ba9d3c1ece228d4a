"""Static pressures around the air handler: the total, its four parts, a vacuum against its stamp."""

from __future__ import annotations

from assistant.trade.entry import ArgumentError, Result, Source, argument, computation

TOTAL = Source(
    "total external static = supply static plus the size of return static, all parts outside the blower",
    "common practice",
)
STAMP = Source(
    "measured vacuum must beat the switch's stamped value; which of closing or opening point is stamped "
    "stands on the switch",
    "common practice",
)


def _static(name: str, example: float, sense: int | None, words: str):
    return argument(name, "pressure", "inwc", 0, 6, example, sense, words, unsigned=True)


@computation(
    "Total external static pressure",
    takes=(
        _static("supply_static", 0.3, +1, "after the blower, before anything outside the cabinet"),
        _static("return_static", 0.25, +1, "before the blower, after filter; a minus sign changes nothing"),
    ),
    gives=Result("pressure", "inwc", "total external static"),
    formula="{supply_static} + {return_static}",
    source=TOTAL,
)
def total_external_static(supply_static: float, return_static: float) -> float:
    """|supply_static| + |return_static| in Pa, against the room. Signs are ignored:

    a return reads below the room.

    Range: 0 to 6 in. w.c. each. Raises ArgumentError outside. Source: common practice.
    """
    return abs(supply_static) + abs(return_static)


@computation(
    "Total external static split in four",
    takes=(
        _static("return_duct", 0.15, None, "before the filter"),
        _static("blower_inlet", 0.35, None, "after the filter, before the blower"),
        _static("blower_outlet", 0.45, None, "after the blower, before the coil"),
        _static("supply_duct", 0.20, None, "after the coil"),
    ),
    gives={
        "total": Result("pressure", "inwc", "total"),
        "return": Result("pressure", "inwc", "return duct"),
        "filter": Result("pressure", "inwc", "filter"),
        "coil": Result("pressure", "inwc", "coil"),
        "supply": Result("pressure", "inwc", "supply duct"),
        "largest": Result("words", "", "largest part"),
    },
    formula="{return_duct} + ({blower_inlet} - {return_duct}) + ({blower_outlet} - {supply_duct}) + "
    "{supply_duct}",
    source=TOTAL,
)
def static_split(
    return_duct: float, blower_inlet: float, blower_outlet: float, supply_duct: float
) -> dict[str, float | str]:
    """Return, filter, coil and supply parts in Pa from four readings against the room; signs are ignored.

    They add up to |blower_inlet| + |blower_outlet|. Range: 0 to 6 in. w.c. each. Raises ArgumentError where
    the filter or the coil would come out below zero (probes or hoses exchanged). Source: common practice.
    """
    before, inlet, outlet, after = (abs(v) for v in (return_duct, blower_inlet, blower_outlet, supply_duct))
    if inlet < before or outlet < after:
        part = "filter" if inlet < before else "coil"
        raise ArgumentError(
            f"static_split: the {part} would drop less than nothing; two readings are exchanged or one is a "
            "slip. For example return_duct=0.15inwc blower_inlet=0.35inwc blower_outlet=0.45inwc "
            "supply_duct=0.20inwc.",
            "static_split",
        )
    parts = {"return": before, "filter": inlet - before, "coil": outlet - after, "supply": after}
    return {"total": inlet + outlet, **parts, "largest": max(parts, key=parts.get)}


def _margin(unit_low: float):
    return (
        argument(
            "measured",
            "pressure",
            "inwc",
            0,
            10,
            0.95,
            +1,
            "vacuum at the switch, both hoses as fitted",
            unsigned=True,
        ),
        argument(
            "stamped",
            "pressure",
            "inwc",
            unit_low,
            10,
            0.60,
            -1,
            "value stamped on the switch",
            unsigned=True,
        ),
    )


@computation(
    "How far the vacuum beats the pressure switch",
    takes=_margin(0.01),
    gives=Result("pressure", "inwc", "margin"),
    formula="{measured} - {stamped}",
    source=STAMP,
)
def pressure_margin(measured: float, stamped: float) -> float:
    """|measured| - |stamped| in Pa; signs are ignored, both are vacuums. Negative: the switch can't close.

    Range: 0 to 10 in. w.c., stamp 0.01 to 10. Raises ArgumentError outside. Source: common practice (0.1 in.
    w.c. or 15 % wanted; on a stamp of 0.10 the first asks for double, on 2.5 for almost nothing: say which
    rule wins).
    """
    return abs(measured) - abs(stamped)


@computation(
    "How far the vacuum beats the pressure switch, in percent of the stamp",
    takes=_margin(0.01),
    gives=Result("percent", "percent", "margin"),
    formula="100 × ({measured} - {stamped}) / {stamped}",
    source=STAMP,
)
def pressure_margin_percent(measured: float, stamped: float) -> float:
    """(|measured| - |stamped|) / |stamped|, a fraction. Range as pressure_margin. Source: common practice."""
    return (abs(measured) - abs(stamped)) / abs(stamped)
