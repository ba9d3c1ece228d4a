"""Carbon monoxide in the room: what each level demands.

Headache, nausea, a drowsy child or a sick pet: all out at any.
"""

from __future__ import annotations

from assistant.trade.entry import Result, Source, argument, computation
from assistant.trade.unit import to_si

LEVELS = Source(
    "9 ppm US EPA outdoor 8-hour limit; 30 ppm IRC 2018 Appendix D (read); 70 ppm everyone out (from "
    "memory); any rise above outdoors means a vented furnace spills",
    "common practice",
)
STEPS = (
    (70, "everyone out", "everyone out now, call the emergency services from outside, take no more readings"),
    (
        30,
        "stop",
        "open up, shut the appliance down and keep it off until the source is found; no work beside it",
    ),
    (
        9,
        "find the source",
        "open up and find the source; tied to the appliance and steady, it is off until found",
    ),
    (
        2,
        "above outdoors",
        "a vented furnace that raises the room's CO at all is spilling or leaking: find it",
    ),
)
ALARM = Source(
    "UL 2034: 70 ppm for 60 to 240 min, 150 ppm 10 to 50 min, 400 ppm 4 to 15 min; silent at 30 ppm for 30 "
    "days (as summarised in two places)",
    "read",
)
ALARMS = ((400, 15), (150, 50), (70, 240))


@computation(
    "What carbon monoxide in the room demands",
    takes=(
        argument(
            "co", "concentration", "ppm", 0, 10_000, 12, None, "CO in the room, monitor zeroed outdoors"
        ),
        argument("outdoors", "concentration", "ppm", 0, 100, 0, None, "CO outdoors", default=0),
    ),
    gives={
        "word": Result("words", "", "level"),
        "demands": Result("words", "", "it demands"),
        "above": Result("concentration", "ppm", "above outdoors"),
    },
    formula="{co} against 70, 30 and 9 ppm; {co} - {outdoors} against 2 ppm",
    source=LEVELS,
)
def room_co(co: float, outdoors: float) -> dict[str, float | str]:
    """The first level reached: 70, 30, 9 ppm, or 2 ppm above outdoors; as fractions.

    Anyone ill: out at any reading.

    Range: 0 to 10,000 ppm. Raises ArgumentError outside. Source: EPA and IRC Appendix D (read), 70 from
    memory, the rise above outdoors common practice. The stricter of two rules stands.
    """
    above, slack = co - outdoors, 1e-12
    for ppm, word, demands in STEPS:
        reached = above if word == "above outdoors" else co
        if reached >= to_si(ppm, "ppm") - slack:
            return {"word": word, "demands": demands, "above": above}
    return {"word": "background", "demands": "nothing; keep the monitor on", "above": above}


@computation(
    "When a household alarm must have sounded",
    takes=(argument("co", "concentration", "ppm", 0, 10_000, 70, None, "steady CO in the room"),),
    gives={
        "minutes": Result("duration", "min", "at the latest after"),
        "word": Result("words", "", "meaning"),
    },
    formula="{co} against 70, 150 and 400 ppm",
    source=ALARM,
)
def alarm_time(co: float) -> dict[str, float | str]:
    """Longest time to alarm in s at 70, 150 and 400 ppm; infinite below 70 ppm: a silent alarm proves nothing
    there.

    Range: 0 to 10,000 ppm. Raises ArgumentError outside. Source: UL 2034 as summarised (read).
    """
    for ppm, minutes in ALARMS:
        if co >= to_si(ppm, "ppm") - 1e-12:
            return {"minutes": 60.0 * minutes, "word": "a working alarm sounds"}
    return {"minutes": float("inf"), "word": "a working alarm may stay silent: its silence proves nothing"}
