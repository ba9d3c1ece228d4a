"""The zone survey as a computation: who blows where, each conclusion with how sure it is."""

from __future__ import annotations

from assistant.trade.entry import ArgumentError, Result, Source, argument, computation, line
from assistant.trade.zone.reason import Answer, by_zone, reason
from assistant.trade.zone.survey import NOBODY, Anemometer, Survey
from assistant.trade.zone_sheet import DRAWN, MODES, UNREAD, BadSheet, cells_of, names_of, rows_of

NAME = "zone_survey"
ROWS = (
    "rows caller:air,air with / between them, nobody for the idle call; air in cfm, none, some, full, "
    "or - for not read"
)
SURE = 0.90
"""How sure a conclusion or its opposite must be to be told; between the two it is open."""

SAME_AIR = "the same air"
CONCLUSIONS: dict[str, tuple[str, str]] = {
    "other_duct": ("on another zone's duct", "a register hangs on another zone's duct"),
    "two_in_one": ("one zone that is two", "one zone is two"),
    "stays_open": ("damper stays open", "a damper stays open whoever calls"),
    "follows": ("opens with another", "a zone opens with another's call"),
    "always_open": ("open in every call", "a register blows in every call and is drawn nowhere"),
    "shared_leak": ("shared leak", "two zones leak into each other"),
    "leaks": ("damper leaks", "a damper does not shut tight"),
    "one_zone": ("two thermostats, one zone", "two thermostats drive one zone"),
    "caller": ("call nobody made", "a zone is called and nobody asked"),
    "behind": ("call behind the panel", "the blower is called behind the panel"),
    "stranger": ("not of this system", "a register's air is not of this system"),
    "still": ("not of this system", "a register is still in every call"),
}
"""Named result -> (the reasoning's kind of finding, words)."""


UNDECIDED = "not decided"


def _percent(words: str) -> Result:
    return Result("percent", "percent", words, UNDECIDED)


@computation(
    title="Zone survey",
    takes=[
        line("fan", ROWS, "den:120,0,8/bed:0,110,0/nobody:0,0,0", "the fan column", ""),
        line("heat", ROWS, "den:120,0,8/bed:0,110,0", "the heat column", ""),
        line("cool", ROWS, "den:120,0,8/bed:0,110,0", "the cooling column", ""),
        line("humidity", ROWS, "nobody:0,95,0", "moisture asked for, heat and cooling off", ""),
        line("purge", ROWS, "nobody:0,0,0", "after a call, purge over", ""),
        line("registers", "names with commas between them", "den_1,bed_1,hall", "the registers' names", ""),
        line(
            DRAWN,
            "one caller for each register, - where nobody knows",
            "den,bed,den",
            "whose each should be",
            "",
        ),
        argument(
            "accuracy", "percent", "percent", 0.1, 50, 10, None, "the anemometer's accuracy", default=10
        ),
        argument("floor", "airflow", "cfm", 0, 100, 10, None, "the least it shows", default=10),
    ],
    gives={
        "plan": Result("words", "", "who blows where"),
        **{key: _percent(words) for key, (_, words) in CONCLUSIONS.items()},
        "read_next": Result("words", "", "what would settle the rest"),
    },
    formula="each register with the thermostat whose call moves most air there",
    source=Source(
        "Bayes over zones, each reading with its anemometer's uncertainty; shares of the open flow from 10 % "
        "(worth a look) and 40 % (open)",
        "reasoned",
    ),
)
def zone_survey(
    fan: str,
    heat: str,
    cool: str,
    humidity: str,
    purge: str,
    registers: str,
    drawn: str,
    accuracy: float,
    floor: float,
) -> dict[str, object]:
    """How sure each conclusion is (0 to 1), the plan and what to read next in words. None is "not decided":
    no register hangs on the wrong duct where nobody said whose it should be.

    `fan` to `purge`: rows of air by call, at least one. `drawn`: the zone that each register should be of.
    `accuracy`: share of reading; `floor`: m³/s under which the anemometer shows nothing. Raises ArgumentError
    for rows that can't be understood. Source: reasoned; checked against matrices worked by hand and against
    simulated houses. Range: any number of zones and registers, accuracy 0.1 to 50 %, floor 0 to 100 cfm.
    """
    survey = survey_of(
        fan=fan,
        heat=heat,
        cool=cool,
        humidity=humidity,
        purge=purge,
        registers=registers,
        drawn=drawn,
        accuracy=accuracy,
        floor=floor,
    )
    answer = reason(survey)
    sure: dict[str, float | None] = {key: sureness(answer, key) for key in CONCLUSIONS}
    unsaid = [register for register in survey.registers if register not in survey.claimed]
    if unsaid and sure["other_duct"] < SURE:
        sure["other_duct"] = None
    ask = [f"whose {', '.join(unsaid)} should be, by the drawing or by who lives there"] if unsaid else []
    return {
        "plan": "; ".join(by_zone(answer)),
        **sure,
        "read_next": "; ".join([*answer.settle, *ask]) or "nothing",
    }


def sureness(answer: Answer, key: str) -> float:
    """How sure the answer is of that named result; never quite, as an anemometer is not all
    that can be wrong.
    """
    found = [f for f in answer.findings if f.kind == CONCLUSIONS[key][0]]
    if key in ("stranger", "still"):
        found = [f for f in found if (SAME_AIR in f.words) == (key == "stranger")]
    return min(0.999, max((f.confidence for f in found), default=0.0))


def survey_of(
    registers: str = "", drawn: str = "", accuracy: float = 0.10, floor: float = 0.00472, **columns: str
) -> Survey:
    """The survey that the arguments write. Raises ArgumentError."""
    try:
        rows = {mode: rows_of(columns[mode]) for mode in MODES if columns.get(mode, "").strip()}
        if not rows:
            raise BadSheet("a survey has at least one column; write for example fan=den:120,0/bed:0,110")
        zones, names, flows = cells_of(rows, names_of(registers))
        if not zones:
            raise BadSheet(f"a survey has at least one thermostat that calls, beside {NOBODY}")
        claimed = names_of(drawn)
        if len(claimed) > len(names):
            raise BadSheet(f"{len(claimed)} registers are drawn and {len(names)} were read")
        return Survey(
            zones,
            names,
            flows,
            tuple(rows),
            {r: zone for r, zone in zip(names, claimed, strict=False) if zone not in UNREAD},
            meter=Anemometer(accuracy, floor),
        )
    except ValueError as problem:
        raise ArgumentError(f"{NAME}: {problem}", NAME) from None


def span(sure: float | None) -> tuple[float, float]:
    """What a conclusion may be worth: itself where it or its opposite is sure, otherwise anything."""
    if sure is None:
        return 0.0, 1.0
    return (sure, sure) if sure >= SURE or sure <= 1 - SURE else (0.0, 1.0)
