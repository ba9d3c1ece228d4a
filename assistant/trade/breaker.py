"""What a breaker of a given rating must do at a measured current, and its own insulation."""

from __future__ import annotations

import math

from assistant.trade.entry import Result, Source, argument, computation

CALIBRATION = Source(
    "UL 489 calibration: holds 100 %, trips at 135 % within 1 h and at 200 % within 2 min up to 30 A (read); "
    "2 h above 50 A, 4 and 6 min above 30 and 50 A",
    "from memory",
)
INSULATION = Source(
    "TM 5-683 / NAVFAC MO-116 / AFJMAN 32-1083, 1995, chapter 5: test at 500 V or 1.5 times the rating, "
    "under 1 Mohm for each kV of test voltage is unsafe",
    "read",
)
WORDS = ("must hold", "may hold or trip: no limit is set", "must trip in time")


def at_200_percent(rating: float) -> float:
    """Longest time to trip at twice the rating, s."""
    return 120.0 if rating <= 30 else 240.0 if rating <= 50 else 360.0


@computation(
    "What a breaker must do at a measured current",
    takes=(
        argument("amps", "ac_current", "A", 0, 2000, 40, None, "steady current through it"),
        argument("rating", "ac_current", "A", 10, 100, 20, None, "rating on the handle"),
    ),
    gives={
        "word": Result("words", "", "judgement"),
        "multiple": Result("percent", "percent", "of the rating"),
        "longest": Result("duration", "min", "longest time to trip"),
    },
    formula="100 × {amps} / {rating} against 100, 135 and 200 %",
    source=CALIBRATION,
)
def breaker_trip_window(amps: float, rating: float) -> dict[str, float | str]:
    """At most 100 %: must hold. From 135 %: must trip within 1 h (2 h above 50 A). From 200 %: 2, 4 or 6 min.

    Between 100 and 135 % the standard asks for nothing and `longest` is infinite. A hot panel trips earlier.
    A breaker is no test instrument: never close one onto a load that is not tested. Range: 0 to 2,000 A, 10
    to 100 A. Raises ArgumentError outside. Source: UL 489 as summarised (read, see mark).
    """
    multiple = amps / rating
    if multiple <= 1 + 1e-9:
        return {"word": WORDS[0], "multiple": multiple, "longest": math.inf}
    if multiple < 1.35 - 1e-9:
        return {"word": WORDS[1], "multiple": multiple, "longest": math.inf}
    longest = at_200_percent(rating) if multiple >= 2 - 1e-9 else 3600.0 if rating <= 50 else 7200.0
    return {"word": WORDS[2], "multiple": multiple, "longest": longest}


@computation(
    "Insulation that a breaker must have",
    takes=(argument("rated", "ac_voltage", "V", 50, 1000, 240, None, "rated voltage of the breaker"),),
    gives={
        "test": Result("dc_voltage", "V", "test voltage"),
        "least": Result("insulation", "Mohm", "at least"),
    },
    formula="500 or 1.5 × {rated}, and 1 Mohm for each 1000 V of that",
    source=INSULATION,
)
def breaker_insulation(rated: float) -> dict[str, float]:
    """Test voltage max(500 V, 1.5 × rated) and 1 Mohm per kV of it, in ohm. Conductors off first.

    Range: 50 to 1,000 V. Raises ArgumentError outside. Source: TM 5-683 chapter 5 (read).
    """
    test = max(500.0, 1.5 * rated)
    return {"test": test, "least": 1e6 * test / 1000}
