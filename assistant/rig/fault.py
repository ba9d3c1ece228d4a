"""A fault: what is done to which components, how badly, for how long, and what a good technician finds.

Faults are data. Only they know the names of findings; the machine knows components.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from random import Random

from assistant.house.place import Place
from assistant.rig.part import DEGREES, Settings, applied
from assistant.rig.parts import COMPONENTS
from assistant.rig.unit import FEATURES

NOMINAL = "nominal"


@dataclass(frozen=True)
class Deed:
    """One change of one component. `degree` fixes it; otherwise it takes the fault's own."""

    part: str
    change: str
    degree: str | None = None

    def settings(self, degree: str) -> Settings:
        """What it sets; `nominal` where the change has no such degree."""
        known = COMPONENTS[self.part].changes[self.change].degrees
        wanted = self.degree or degree
        return applied(COMPONENTS[self.part], self.change, wanted if wanted in known else NOMINAL)


@dataclass(frozen=True)
class ComesAndGoes:
    """An intermittent fault: present for `there` seconds, away for `away` seconds, in turns."""

    there: float
    away: float

    def times(self, random: Random) -> float:
        """Where in the turn the house stands when it begins to call, s."""
        return random.uniform(0.0, self.there + self.away)


@dataclass(frozen=True)
class Consequence:
    """What the cause does to another component after so many seconds of running, and again to a new one."""

    after: float
    deeds: tuple[Deed, ...]


@dataclass(frozen=True)
class Fault:
    """`finding` is the bare name that a good technician reaches for `complaint`, `cause` the root cause's.

    `also` are other findings that are as right (a named ambiguity, with its reason in the file). `elsewhere`:
    what is right to find where the customer's words were another complaint, by that complaint. `absent`:
    the right finding while an intermittent fault is away. `house`: features that the house must have.
    `degrees`: those that make the complaint. `found`: how it has left the house (a
    tripped breaker). `places`: where the file writes the complaints, findings and causes that it names.
    """

    name: str
    title: str
    complaint: str
    finding: str
    cause: str | None
    deeds: tuple[Deed, ...]
    degrees: tuple[str, ...]
    place: Place
    also: tuple[str, ...] = ()
    elsewhere: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    house: Mapping[str, str] = field(default_factory=dict)
    comes_and_goes: ComesAndGoes | None = None
    absent: str | None = None
    consequence: Consequence | None = None
    found: tuple[Deed, ...] = ()
    places: Mapping[str, Place] = field(default_factory=dict)

    def right(self, complaint: str) -> tuple[str, ...]:
        """The findings that are right where somebody was called with this complaint."""
        own = (self.finding, *self.also) if complaint == self.complaint else ()
        return (*own, *self.elsewhere.get(complaint, ()))

    def left(self) -> Settings:
        """How the house stands when somebody comes, beside the fault: a breaker that has tripped."""
        given: Settings = {}
        for deed in self.found:
            given.update(deed.settings(NOMINAL))
        return given

    def __deepcopy__(self, _memo: dict) -> Fault:
        return self

    def settings(self, degree: str = NOMINAL) -> Settings:
        """What the fault sets, its consequence not counted. Raises KeyError for a degree that is none."""
        if degree not in DEGREES:
            raise KeyError(degree)
        given: Settings = {}
        for deed in self.deeds:
            given.update(deed.settings(degree))
        return given

    def harm(self, degree: str = NOMINAL) -> Settings:
        """What its consequence sets."""
        given: Settings = {}
        for deed in self.consequence.deeds if self.consequence else ():
            given.update(deed.settings(degree))
        return given


def components() -> str:
    """Every component, the changes that it can take and their degrees, the houses that there are, what the
    fields of a fault mean, and one whole example of a file.
    """
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
    lines += [f"    {name}: {', '.join(values)}" for name, values in FEATURES.items()]
    lines += ["", "Fields of a fault:", ""]
    lines += [f"    {name}: {words}" for name, words in FIELDS.items()]
    return "\n".join([*lines, "", "A whole file:", "", EXAMPLE])


FIELDS = {
    "title": "what is wrong, in a sentence; must be there",
    "complaint": "the complaint that it makes; must be there",
    "finding": "the step of the complaint's tree that is right to end at; must be there",
    "also": "other steps that are as right, or a list for each complaint that may be told of it",
    "cause": "the cause tree that finds why it failed; without it no cause is there to find",
    "change": "what is done to which parts, together; must be there",
    "degree": "in a change: how badly this one, whatever the fault's own degree is",
    "degrees": "how badly in all; every degree that its changes have where it is not said",
    "found": "what it has done before anybody came, such as [{part: breaker, change: tripped}]",
    "house": "features that its house must have; what its parts ask for is there without saying",
    "intermittent": "it comes and goes: for how long it is there and away, each with its unit",
    "absent": "the step that is right while it is away; needed with intermittent",
    "consequence": "what it does to other parts after so long, with a unit, and again to a new part",
}

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
