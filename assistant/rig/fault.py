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

NOMINAL = "nominal"


@dataclass(frozen=True)
class Deed:
    """One change of one component. `degree` fixes it; otherwise it takes the fault's own."""

    part: str
    change: str
    degree: str | None = None

    @property
    def words(self) -> str:
        """Component and change, as a file of faults lists them."""
        component = COMPONENTS[self.part]
        return f"{component.title}: {component.changes[self.change].words}"

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

    def sort(self, degree: str = NOMINAL) -> Settings:
        """What of it only says of what sort the house is: a sound house may be so too."""
        return {
            name: value
            for name, value in self.settings(degree).items()
            for part, _, setting in [name.partition(".")]
            if setting in COMPONENTS[part].sort
        }

    def harm(self, degree: str = NOMINAL) -> Settings:
        """What its consequence sets."""
        given: Settings = {}
        for deed in self.consequence.deeds if self.consequence else ():
            given.update(deed.settings(degree))
        return given
