"""One drill: what the customer says, the house and its plate, and what is wrong in it, long hidden."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from random import Random

from assistant.drill.case import nominal
from assistant.rig.fault import Fault
from assistant.rig.house import Rig
from assistant.rig.unit import REFERENCE, Unit, varied, with_features

EASY, USUAL, HARD = "easy", "usual", "hard"
DIFFICULTIES = (EASY, USUAL, HARD)
FAULT, NOTHING, ARRIVAL, OUT = "fault", "nothing wrong", "works on arrival", "everybody out"
ENDINGS = (FAULT, NOTHING, ARRIVAL, OUT)
TURNS_TRIED = 60
"""How many beginnings of a fault that comes and goes are tried for one in which it is away."""


@dataclass(frozen=True)
class Drill:
    """`words` are the customer's. `senses`: what is noticed on the doorstep. `plate` holds values in SI by
    the names of house.yaml that differ from the usual plate; `another` draws another plate and size. `title`
    tells what is wrong and is for the foreman.
    """

    name: str
    title: str
    complaint: str
    words: str
    difficulty: str = USUAL
    ending: str = FAULT
    fault: Fault | None = None
    degree: str = ""
    hazard: str = ""
    senses: str = ""
    house: Mapping[str, str] = field(default_factory=dict)
    plate: Mapping[str, float] = field(default_factory=dict)
    another: int = 0
    seed: int = 1
    origin: str = "shipped"

    @property
    def how_bad(self) -> str:
        """The degree of its fault."""
        return self.degree or (nominal(self.fault) if self.fault else "")

    def unit(self) -> Unit:
        """The furnace and house."""
        needed = {**self.house, **(self.fault.house if self.fault else {})}
        unit = with_features(REFERENCE, needed)
        if self.another:
            unit = varied(unit, Random(self.another))
        return with_plate(unit, self.plate)

    def rig(self) -> Rig:
        """The house as it stands when the apprentice arrives; instruments have errors."""
        rig = self._rig(self.seed)
        if self.ending == ARRIVAL:
            seeds = iter(range(self.seed + 1, self.seed + TURNS_TRIED))
            while rig.present and (seed := next(seeds, None)) is not None:
                rig = self._rig(seed)
        return rig

    def _rig(self, seed: int) -> Rig:
        if self.fault is None:
            return Rig(self.unit(), seed=seed, exact=False)
        return Rig(self.unit(), self.fault, self.how_bad, seed, exact=False)


PLATE_FIELDS = {
    "supply_volts": "rated_volts",
    "input": "input",
    "static_rated": "static_rated",
    "manifold": "manifold",
    "pressure_stamp": "stamp",
    "limit_opens": "limit_opens",
    "inducer_amps": "inducer_amps",
    "igniter_volts": "igniter_volts",
    "meter_dial": "dial",
    "heating_value": "heating_value",
    "transformer_va": "transformer_va",
}
"""Plate value -> the furnace's own field."""
PAIRS = {
    "rise_min": ("rise", 0),
    "rise_max": ("rise", 1),
    "inlet_min": ("inlet", 0),
    "inlet_max": ("inlet", 1),
}


def takes_plate(name: str) -> bool:
    """Whether a house can be given this plate value."""
    return name in PLATE_FIELDS or name in PAIRS


def with_plate(unit: Unit, values: Mapping[str, float]) -> Unit:
    """The furnace with these plate values (SI); others stay. A pair that would stand upside down too."""
    changed: dict[str, object] = {
        PLATE_FIELDS[name]: value for name, value in values.items() if name in PLATE_FIELDS
    }
    for name, (both, place) in PAIRS.items():
        if name in values:
            pair = list(changed.get(both, getattr(unit, both)))
            pair[place] = values[name]
            changed[both] = tuple(pair)
    for both in ("rise", "inlet"):
        if both in changed and changed[both][0] >= changed[both][1]:
            del changed[both]
    return replace(unit, **changed)
