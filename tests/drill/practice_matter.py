"""Small drills for the tests of practice: few faults, so that other houses are gone through quickly."""

from __future__ import annotations

from functools import cache

from houses import FEW, library

from assistant.drill.practice.drill import Drill
from assistant.drill.practice.drill_file import load_drills
from assistant.rig.fault import Fault
from assistant.rig.fault_file import load_faults

ALSO = b"""\
format: 1
faults:
  gas_about:
    title: Gas in the room
    complaint: no_heat
    finding: gas_stays
    change: [{part: room, change: gas}]
  now_and_then:
    title: The inducer's wire makes contact when it likes
    complaint: no_heat
    finding: inducer_wire
    absent: works_now
    change: [{part: inducer_harness, change: hot open}]
    intermittent: {there: 30 min, away: 30 min}
"""
DRILLS = b"""\
format: 1
drills:
  cold:
    title: The igniter is broken
    complaint: no_heat
    difficulty: easy
    words: It tries and gives up.
    fault: cracked_element
  dark:
    title: The service switch is off
    complaint: no_heat
    difficulty: hard
    words: We cleaned the basement.
    fault: handle_off
  sound:
    title: Nothing is wrong
    complaint: no_heat
    words: It smelled once.
  smell:
    title: Gas in the room
    complaint: no_heat
    ending: everybody out
    hazard: gas_smell
    words: No heat, and it smells on the stairs.
    senses: You smell gas.
    fault: gas_about
  comes_back:
    title: The inducer's wire makes contact when it likes
    complaint: no_heat
    ending: works on arrival
    words: It was cold this morning.
    fault: now_and_then
"""


@cache
def faults() -> dict[str, Fault]:
    """The few faults."""
    return {**load_faults(FEW, "few.yaml")[0], **load_faults(ALSO, "also.yaml")[0]}


@cache
def drills() -> dict[str, Drill]:
    """The few drills."""
    found, problems = load_drills(DRILLS, "drills.yaml", faults(), library().vocabulary)
    assert not problems
    return found
