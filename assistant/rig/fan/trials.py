"""What takes a person time to see of a blower: ten starts, and every mode one after the other."""

from __future__ import annotations

from typing import TYPE_CHECKING

from assistant.rig.fan.looks import does

if TYPE_CHECKING:
    from assistant.rig.house import Rig

STARTS, RESTS, RAMPS, HEATS = 10, 60.0, 40.0, 240.0
GOOD = "blows well"


def starts(rig: Rig) -> str:
    """The blower called from standstill ten times."""
    hands = rig.machine.hands
    before = {name: hands[name] for name in ("fan", "fan_held", "stat")}
    good = True
    for _ in range(STARTS):
        hands.update(fan="auto", stat="off")
        rig.pass_time(RESTS)
        hands.update(fan="on", fan_held=False)
        rig.pass_time(RAMPS)
        good = good and does(rig.machine) == GOOD
    hands.update(before)
    rig.pass_time(1.0)
    return "all started" if good else "one failed"


def modes(rig: Rig) -> str:
    """Fan, heat and cooling, each until the blower should have answered."""
    hands = rig.machine.hands
    before = {name: hands[name] for name in ("fan", "fan_held", "stat")}
    good = True
    for given, seconds in (
        ({"stat": "off", "fan": "on"}, RAMPS),
        ({"stat": "call", "fan": "auto"}, HEATS),
        ({"stat": "off", "fan": "on"}, RAMPS),  # a cooling call asks for the fan as well
    ):
        hands.update(stat="off", fan="auto", fan_held=False)
        rig.pass_time(2 * RESTS)
        hands.update(given)
        rig.pass_time(seconds)
        good = good and does(rig.machine) == GOOD
    hands.update(before)
    rig.pass_time(1.0)
    return "right in each" if good else "wrong in one"


TRIALS = {"blower.starts": starts, "blower.modes": modes}
