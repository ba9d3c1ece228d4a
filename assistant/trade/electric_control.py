"""The 24 V control circuit: what the transformer carries, what reaches the coil, what the flame rod says."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.trade.entry import Result, Source, argument, computation

RATING = Source("volt-amperes are volts times amperes", "reasoned")
LOADING = Source("keep the sum of the loads at or under 80 % of the transformer's rating", "common practice")
SAG = Source(
    "linear transformer model, regulation 10 % of rated voltage from no load to full load", "from memory"
)
COIL = Source("voltage divider of source, wire and coil resistance", "reasoned")


def _volts(example: float = 24, sense: int | None = -1):
    return argument("volts", "ac_voltage", "V", 1, 300, example, sense, "voltage of the secondary")


def _rating(sense: int | None = +1):
    return argument("rating", "apparent_power", "VA", 1, 1000, 40, sense, "the transformer's rating")


@computation(
    "Secondary current that a transformer may carry",
    takes=(_rating(), _volts()),
    gives=Result("ac_current", "A", "rated current"),
    formula="{rating} / {volts}",
    source=RATING,
)
def transformer_load_amps(rating: float, volts: float) -> float:
    """rating / volts in amperes; also the current of any load given in VA. 40 VA at 24 V: 1.67 A.

    Range: 1 to 1000 VA, 1 to 300 V. Raises ArgumentError outside. Source: definition (reasoned).
    """
    return rating / volts


@computation(
    "Load on a transformer from its secondary amps and volts",
    takes=(
        argument("amps", "ac_current", "A", 0, 50, 1.2, +1, "secondary current, everything driving"),
        _volts(25, +1),
    ),
    gives=Result("apparent_power", "VA", "load"),
    formula="{amps} × {volts}",
    source=RATING,
)
def transformer_load_va(amps: float, volts: float) -> float:
    """amps × volts in volt-amperes. Range: 0 to 50 A, 1 to 300 V. Raises ArgumentError outside. Source:

    definition.
    """
    return amps * volts


@computation(
    "Load on a transformer as a share of its rating",
    takes=(
        argument("amps", "ac_current", "A", 0, 50, 1.2, +1, "secondary current, everything driving"),
        _volts(25, +1),
        _rating(-1),
    ),
    gives=Result("percent", "percent", "loading"),
    formula="100 × {amps} × {volts} / {rating}",
    source=LOADING,
)
def transformer_load_percent(amps: float, volts: float, rating: float) -> float:
    """amps × volts / rating as a fraction. Above 80 % is too much to leave, above 100 % is the fault.

    Range: 0 to 50 A, 1 to 300 V, 1 to 1000 VA. Raises ArgumentError outside. Source: 80 % is common practice.
    """
    return amps * volts / rating


@computation(
    "Load of a list of coils and dampers as a share of the rating",
    takes=(
        argument(
            "loads",
            "apparent_power",
            "VA",
            0,
            500,
            (9, 7, 12, 4),
            +1,
            "each load that can be on at once",
            many=True,
        ),
        _rating(-1),
    ),
    gives=Result("percent", "percent", "loading"),
    formula="100 × the sum of {loads} / {rating}",
    source=LOADING,
)
def control_load_percent(loads: Sequence[float], rating: float) -> float:
    """Sum of the loads over the rating, as a fraction; volt-amperes. Inclusive: exactly 80 % passes.

    Range: each 0 to 500 VA, rating 1 to 1000 VA. Raises ArgumentError outside. Source: common practice for 80
    %.
    """
    return sum(loads) / rating


@computation(
    "Secondary voltage that a primary and a load should give",
    takes=(
        argument("primary", "ac_voltage", "V", 0, 600, 114, +1, "voltage at the primary"),
        argument("loading", "percent", "percent", 0, 200, 100, -1, "load over rating"),
        argument("rated_primary", "ac_voltage", "V", 12, 600, 120, -1, "primary on the plate", default=120),
        argument("rated_secondary", "ac_voltage", "V", 5, 600, 24, +1, "secondary on the plate", default=24),
        argument(
            "regulation", "percent", "percent", 0, 50, 10, None, "rise from full load to none", default=10
        ),
    ),
    gives=Result("ac_voltage", "V", "secondary"),
    formula="{primary} × {rated_secondary} / {rated_primary} × (1 + {regulation} / 100 × (1 - {loading} / "
    "100))",
    source=SAG,
)
def transformer_sag(
    primary: float, loading: float, rated_primary: float, rated_secondary: float, regulation: float
) -> float:
    """primary × ratio × (1 + regulation × (1 - loading)) in volts:

    27.7 V at 126 V unloaded, 22.8 V at 114 V full.

    Range: 0 to 600 V, loading 0 to 200 %, regulation 0 to 50 %. Raises ArgumentError outside. Source: linear
    model, regulation about 10 % (from memory): read the result as an expectation, never as a limit.
    """
    return primary * rated_secondary / rated_primary * (1 + regulation * (1 - loading))


@computation(
    "Voltage at a coil behind source and wire",
    takes=(
        argument("source_volts", "ac_voltage", "V", 0, 300, 26, +1, "open-circuit voltage of the secondary"),
        argument("source_resistance", "resistance", "ohm", 0, 100, 1.44, -1, "resistance of the source"),
        argument("wire_resistance", "resistance", "ohm", 0, 1000, 1.1655, -1, "wire, out and back"),
        argument(
            "coil_impedance", "resistance", "ohm", 0.1, 1e5, 72, +1, "impedance of the coil when pulled in"
        ),
    ),
    gives=Result("ac_voltage", "V", "coil voltage"),
    formula="{source_volts} × {coil_impedance} / "
    "({coil_impedance} + {wire_resistance} + {source_resistance})",
    source=COIL,
)
def coil_volts(
    source_volts: float, source_resistance: float, wire_resistance: float, coil_impedance: float
) -> float:
    """Voltage divider in volts and ohm; the coil is taken as a resistance, which reads low rather than high.

    Range: 0 to 300 V, coil 0.1 ohm and up. Raises ArgumentError outside. Source: Ohm's law (reasoned).
    """
    return source_volts * coil_impedance / (coil_impedance + wire_resistance + source_resistance)


@computation(
    "Window in which a coil works",
    takes=(argument("rated", "ac_voltage", "V", 1, 600, 24, None, "voltage on the coil"),),
    gives={"low": Result("ac_voltage", "V", "from"), "high": Result("ac_voltage", "V", "to")},
    formula="85 to 110 % of {rated}",
    source=Source(
        "TM 5-683, section 5-3: alternating-current contactor coils, 85 to 110 % of rated voltage", "read"
    ),
)
def coil_window(rated: float) -> dict[str, float]:
    """0.85 and 1.10 of the rated voltage. Range: 1 to 600 V. Raises ArgumentError outside. Source:

    TM 5-683 (read).
    """
    return {"low": 0.85 * rated, "high": 1.10 * rated}


@computation(
    "Fuse of a class 2 source that is not inherently limited",
    takes=(argument("volts", "ac_voltage", "V", 20, 150, 24, -1, "highest voltage of the source"),),
    gives=Result("ac_current", "A", "largest fuse"),
    formula="100 / {volts}",
    source=Source(
        "National Electrical Code chapter 9 Table 11(A), 100 / Vmax, as explained in a published article",
        "read",
    ),
)
def class_2_fuse(volts: float) -> float:
    """100 / volts in amperes. Range: 20 to 150 V. Raises ArgumentError outside. Source:

    NEC Table 11(A) quoted (read).
    """
    return 100.0 / volts


FLAME = ("good", "marginal", "too weak", "current with no flame: leakage or gas that does not stop")


@computation(
    "What a flame current says",
    takes=(
        argument("microamps", "dc_current", "uA", 0, 200, 3.5, None, "DC in series with the rod's wire"),
        argument("idle", "dc_current", "uA", 0, 200, 0, None, "the same with the gas off", default=0),
    ),
    gives={"word": Result("words", "", "judgement"), "net": Result("dc_current", "uA", "flame current")},
    formula="{microamps} - {idle}, against 1 and 2 µA; {idle} against 0.1 µA",
    source=Source("1 to 10 µA is read in a training text; the split at 2 and 0.1 µA", "common practice"),
)
def flame_current(microamps: float, idle: float) -> dict[str, float | str]:
    """At least 2 µA good, 1 to 2 marginal, under 1 too weak;

    above 0.1 µA with the gas off is its own finding.

    The board's own drop-out value comes first. Range: 0 to 200 µA. Raises ArgumentError outside. Source: 1 to
    10 µA read in a training text, the rest common practice.
    """
    net = microamps - idle
    if idle > 0.1e-6:
        return {"word": FLAME[3], "net": net}
    return {"word": FLAME[0] if net >= 2e-6 else FLAME[1] if net >= 1e-6 else FLAME[2], "net": net}


@computation(
    "Voltage that a dead wire shows by coupling",
    takes=(
        argument("supply", "ac_voltage", "V", 0, 700, 120, +1, "voltage of the wire beside it"),
        argument("coupling", "capacitance", "nF", 0, 100, 0.5, +1, "capacitance between the wires"),
        argument("meter", "resistance", "kohm", 0.1, 1e5, 1e4, +1, "what the meter presents"),
        argument("frequency", "frequency", "Hz", 40, 70, 60, +1, "line frequency", default=60),
    ),
    gives=Result("ac_voltage", "V", "reading"),
    formula="{supply} divided between the coupling ({coupling} at {frequency}) and the meter ({meter})",
    source=Source("capacitive divider: V·R / sqrt(R² + Xc²)", "reasoned"),
)
def ghost_volts(supply: float, coupling: float, meter: float, frequency: float) -> float:
    """supply·wRC / sqrt(1 + (wRC)²) in volts: why a high-impedance meter reads 106 V on a dead wire.

    Range: 0 to 700 V, 0 to 100 nF, 100 ohm to 100 Mohm, 40 to 70 Hz. Raises ArgumentError outside.
    Source: circuit theory (reasoned).
    """
    ratio = 2 * 3.141592653589793 * frequency * meter * coupling
    return supply * ratio / (1 + ratio * ratio) ** 0.5
