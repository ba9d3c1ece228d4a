"""What a file of faults can name, as a list to read: components and their changes, the houses that there are,
what the fields of a fault mean, and one whole example of a file.
"""

from __future__ import annotations

from assistant.rig.parts import COMPONENTS
from assistant.rig.unit import FEATURES


def components() -> str:
    """All of it."""
    lines = ["Components, what can happen to each, and how badly:", ""]
    for component in COMPONENTS.values():
        needs = ", ".join(f"{name}: {value}" for name, value in component.house.items())
        lines.append(
            f"{component.name}: {component.title}" + (f" (in a house with {needs})" if needs else "")
        )
        lines += [
            f"    {name}: {change.words} ({', '.join(change.degrees)})"
            for name, change in component.changes.items()
        ]
    lines += ["", "Features of a house; the first of each is how it is built where a fault does not say:", ""]
    for name, values in FEATURES.items():
        title, words = HOUSES[name]
        lines.append(f"    {name}: {', '.join(values)}")
        lines += [f"        {line}" for line in (title, *(f"{v}: {w}" for v, w in words.items()))]
    lines += ["", PLATES, "", "Fields of a fault:", ""]
    lines += [f"    {name}: {words}" for name, words in FIELDS.items()]
    return "\n".join([*lines, "", NAMES, "", "A whole file:", "", EXAMPLE])


HOUSES: dict[str, tuple[str, dict[str, str]]] = {
    "kind": (
        "the furnace, by its flue",
        {
            "eighty": "a metal vent, room air, no condensate",
            "condensing": "plastic intake and exhaust, a drain with a trap",
        },
    ),
    "zone_panel": ("a zone panel with three zones between thermostats and furnace", {}),
    "float": ("a float switch in the 24 V wiring, at the condensate or cooling coil's pan", {}),
    "plug_fuse": ("a plug fuse in the box of the service switch", {}),
    "blower": (
        "the blower's motor",
        {
            "psc": "split capacitor, speed taps at line voltage",
            "electronic": "constant airflow, line voltage always on, told what to do by 24 V",
            "torque": "constant torque, line voltage always on, speed taps at 24 V",
            "level": "constant airflow, told by pulses or a level from the board",
            "data": "told by the board over data wires",
        },
    ),
    "aux": ("where the auxiliary limit sits, or what stands in its place", {}),
    "meter": ("whether the gas meter's dial can be read, to clock the input", {}),
    "panel_cover": ("whether the shop's people may open the electrical panel's cover", {}),
    "others": ("what else hangs on the furnace's branch: nothing, or a condensate pump", {}),
    "feed": ("wired to a service switch, or by cord and plug", {}),
}
"""What each feature is, and the values whose names do not say it."""

PLATES = """\
What stands on the rating plate (input, 115 or 120 V, pressures, stamps) can't be asked for: the samples with
noise vary it. No furnace is built for 240 V."""

FIELDS = {
    "title": "what is wrong, in a sentence; must be there",
    "complaint": "the complaint that it makes; must be there",
    "finding": "the step of the complaint's tree that is right to end at; must be there",
    "also": "other steps that are as right, or a list for each complaint that may be told of it",
    "cause": "the cause tree that finds why it failed; without it no cause is there to find",
    "change": "what is done to which parts, together; must be there",
    "degree": "in a change: how badly this one, whatever the fault's own degree is",
    "degrees": "how badly in all; every degree that its changes have where it is not said",
    "found": "how it has left the house: what has opened, such as [{part: breaker, change: tripped}]",
    "house": "features that its house must have; what its parts and complaint ask for is there anyway",
    "intermittent": "it comes and goes: for how long it is there and away, each with its unit",
    "absent": "the step that is right while it is away; needed with intermittent",
    "consequence": "what it does to other parts after so long, with a unit, and again to a new part",
}

NAMES = """\
The names that finding, also, absent and cause take: prove TREE --findings.

Write a cause where the tree asks for it and the house holds it: a staple behind a blown fuse, water behind a
dead board, the nest in a blocked vent. A part that only wore out has none, and a walk that names one all the
same counts as "cause not named". --findings shows which causes each finding asks for."""

EXAMPLE = """\
format: 1
faults:
  cracked_element:
    title: The igniter is broken
    complaint: no_heat
    finding: name_of_the_step_that_says_so
    cause: name_of_the_cause
    change: [{part: igniter, change: open}]
  stapled_cable:
    title: A staple through R and C takes the 24 V fuse, and the next one too
    complaint: no_heat
    finding: name_of_the_step_that_says_so
    cause: name_of_the_cause
    change: [{part: cable, change: R-C short}]
  small_ducts:
    title: Ducts too small for the unit push air past shut dampers, and the limit opens too
    complaint: zone_spillover
    finding: name_of_the_step_that_says_so
    also: {no_heat: [name_of_what_is_right_there]}
    house: {zone_panel: "yes"}
    change: [{part: ducts2, change: all small}]
  now_and_then:
    title: The inducer's pin makes contact when it likes
    complaint: no_heat
    finding: name_of_the_step_that_says_so
    absent: name_of_the_step_that_says_nothing_was_found
    house: {kind: condensing}
    change: [{part: inducer_harness, change: hot open}]
    intermittent: {there: 20 min, away: 40 min}
  water_on_the_board:
    title: The humidifier drips on the board until its inducer relay dies
    complaint: no_heat
    finding: name_of_the_step_that_says_so
    cause: name_of_the_cause
    degrees: [nominal]
    change: [{part: water, change: from humidifier}]
    consequence: {after: 10 min, change: [{part: board, change: no inducer output}]}
  nail_in_the_wall:
    title: A nail joins hot and neutral, and has opened the breaker
    complaint: tripped_breaker
    finding: name_of_the_step_that_says_so
    change: [{part: branch_hot, change: across, degree: severe}]
    found: [{part: breaker, change: tripped}]
"""
