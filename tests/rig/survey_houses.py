"""Simulated houses with known zoning, leaks and crossings, surveyed with anemometers of three qualities.

A house is read once without error: one thermostat's fan alone after the other, and nobody, at every register.
An anemometer then shows each flow off by as much as its accuracy allows (drawn evenly) and nothing below its
floor. What the survey concludes is held against what was built in.
"""

from __future__ import annotations

from dataclasses import dataclass
from random import Random

from assistant.quantity.units import from_si
from assistant.rig.house import Rig
from assistant.rig.unit import REFERENCE, varied, with_features
from assistant.trade.registry import call
from assistant.trade.zone.reason import reason
from assistant.trade.zone_survey import CONCLUSIONS, SURE, survey_of

SETTLED = 120
"""Seconds after a change until the dampers stand."""
QUALITIES = {"hot wire": (0.03, 5.0), "vane": (0.10, 10.0), "cheap vane": (0.20, 25.0)}
"""Name -> accuracy as a share of the reading, and the cfm below which it shows nothing."""
RIGHT, WRONG, OPEN = "right", "wrong", "undecided"


@dataclass(frozen=True)
class Built:
    """`changes`: settings of the house. `wanted`: groups of conclusions, one of each group must be told.
    `allowed`: conclusions that are as true. `moved`: register -> the thermostat that it answers (None: any).
    """

    name: str
    changes: dict
    wanted: tuple[frozenset[str], ...] = ()
    allowed: frozenset[str] = frozenset()
    moved: dict[str, str | None] | None = None


def _one(*names: str) -> tuple[frozenset[str], ...]:
    return (frozenset(names),)


ALSO_OPEN = frozenset({"always_open"})
KINDS = (
    Built("as drawn", {}),
    Built("2a hangs on zone 3", {"ducts2.hangs_on": "3"}, _one("other_duct"), moved={"2a": "3"}),
    Built("2a hangs on zone 1", {"ducts2.hangs_on": "1"}, _one("other_duct"), moved={"2a": "1"}),
    Built("2a on two ducts", {"ducts2.also_on": 3}, _one("two_in_one", "follows"), moved={"2a": None}),
    Built(
        "2a before its damper", {"damper2.before": 1.0}, _one("two_in_one", "always_open"), moved={"2a": None}
    ),
    Built(
        "dampers 2 and 3 crossed", {"zone_panel.crossed": 1}, _one("other_duct"),
        moved={"2a": "3", "2b": "3", "3a": "2"},
    ),
    Built(
        "thermostats 2 and 3 crossed", {"zone_panel.stats_crossed": 1}, _one("other_duct"),
        moved={"2a": "3", "2b": "3", "3a": "2"},
    ),
    Built(
        "thermostats 2 and 3 paired", {"zone_panel.stats_paired": 1}, _one("one_zone"),
        moved={"2a": None, "2b": None, "3a": None},
    ),
    *(
        Built(f"damper {z} stays open", {f"damper{z}.dead": 1}, _one("stays_open"), ALSO_OPEN)
        for z in (1, 2, 3)
    ),
    *(Built(f"damper {z} leaks", {f"damper{z}.closed": 150.0}, _one("leaks")) for z in (1, 2, 3)),
    Built(
        "zone 3 leaks into 2a", {"ducts2.leak": 0.5}, _one("leaks", "two_in_one", "follows", "shared_leak")
    ),
    Built("zone 2's fan is called", {"zone2.r_g_ohm": 0.2}, _one("caller"), frozenset({"stays_open"})),
    Built("called behind the panel", {"humidifier.interlock": 1, "humidifier.demand": 1}, _one("behind")),
)  # fmt: skip


@dataclass(frozen=True)
class Read:
    """What a house's registers pass without error, m3/s by (caller, register), and whose each is drawn."""

    built: Built
    flows: dict[tuple[str, str], float]
    drawn: dict[str, str]


def house(built: Built, number: int) -> Read:
    """The house of that number: another plate each time, the same zoning."""
    unit = REFERENCE if number == 0 else varied(REFERENCE, Random(number))
    changes = {"thermostat.set": "satisfied", **built.changes}
    rig = Rig(with_features(unit, {"zone_panel": "yes"}), changes=changes, arrives_after=10)
    flows: dict[tuple[str, str], float] = {}
    for caller in ("1", "2", "3", "nobody"):
        for zone in (1, 2, 3):
            fan = "on" if str(zone) == caller else "auto"
            rig.people().set(zone, {"call": "off", "fan": fan, "moisture": "not asked"})
        rig.wait(SETTLED if caller != "nobody" else 3 * SETTLED)
        for register, air in rig.machine.zoning.registers(rig.machine).items():
            flows[caller, register] = air
    return Read(built, flows, {register: str(zone) for register, zone in rig.registers().items()})


def typed(read: Read, share: float, floor: float, chance: Random) -> dict[str, object]:
    """The survey as an anemometer of that quality gives it."""
    rows = []
    for caller in ("1", "2", "3", "nobody"):
        shown = []
        for register in read.drawn:
            air = from_si(read.flows[caller, register], "cfm") * (1 + chance.uniform(-share, share))
            shown.append(f"{air:.0f}" if air >= floor else "0")
        rows.append(f"{caller}:{','.join(shown)}")
    return {
        "fan": "/".join(rows),
        "registers": ",".join(read.drawn),
        "drawn": ",".join(read.drawn.values()),
        "accuracy": share,
        "floor": floor / 2118.88,
    }


def judged(read: Read, given: dict[str, object]) -> list[tuple[str, str]]:
    """(what, right or wrong or undecided) for each conclusion and each register's zone."""
    answer = call("zone_survey", given)
    built = read.built
    said = {key: answer[key] >= SURE for key in CONCLUSIONS}
    open_ = {key: 1 - SURE < answer[key] < SURE for key in CONCLUSIONS}
    out = []
    for group in built.wanted:
        hit, maybe = any(said[key] for key in group), any(open_[key] for key in group)
        out.append((" or ".join(sorted(group)), RIGHT if hit else OPEN if maybe else WRONG))
    asked = frozenset().union(*built.wanted) | built.allowed
    others = [key for key in CONCLUSIONS if key not in asked]
    out += [(key, WRONG if said[key] else OPEN if open_[key] else RIGHT) for key in others]
    moved = built.moved or {}
    for register, place in reason(survey_of(**given)).places.items():
        wanted = moved.get(register, read.drawn[register])
        if register in moved and wanted is None:
            continue
        sure = place.confidence >= SURE and place.zone is not None
        out.append(("zone", (RIGHT if place.zone == wanted else WRONG) if sure else OPEN))
    return out
