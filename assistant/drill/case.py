"""One sample of a proof: a tree, a fault or none, how bad it is, in which house, read with which errors."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass
from random import Random

from assistant.rig.fault import NOMINAL, Fault
from assistant.rig.part import Settings, Value
from assistant.rig.unit import FEATURES, PLAIN, REFERENCE, SELDOM, Unit, varied, with_features

OTHER_HOUSE = 0.25
"""How often a noisy sample has what the plain house has not: a zone panel, a float, another vent."""
OF_THE_BLOWER = (
    "blower_motor", "capacitor", "blower_rotor", "blower_cooling", "blower_harness", "blower_leads", "wheel",
)
"""A fault in one of these that says nothing of the blower is the plain house's: a motor with electronics
has no capacitor to fail.
"""  # fmt: skip
HEALTHY = "healthy"
HEALTHY_PER_SAMPLE = 5
"""Healthy houses walked for each noisy sample that a fault gets, beside one for each feature of a house."""


@dataclass(frozen=True)
class Case:
    """`fault` is a name, or "healthy". `features`: what a healthy house has; a name with a dot is a setting
    that says of what sort it is. `noisy`: another plate and house, instruments with errors, and the
    accuracy of each counted by the walk. `wholly`: repairs and the proof of repair are walked too.
    """

    tree: str
    fault: str
    degree: str = NOMINAL
    number: int = 0
    noisy: bool = False
    wholly: bool = False
    features: tuple[tuple[str, Value], ...] = ()

    def seed(self, seed: int) -> int:
        """A number of its own, whatever else is walked beside it."""
        words = f"{seed}/{self.tree}/{self.fault}/{self.degree}/{self.number}/{self.noisy}"
        return int.from_bytes(hashlib.sha256(words.encode()).digest()[:6], "big")


def cases(
    tree: str, complaint: str, faults: Mapping[str, Fault], samples: int, seed: int, healthy: bool = True
) -> list[Case]:
    """All samples for one tree: every fault that makes its complaint at each degree without noise, wholly
    walked at its usual one, and `samples` times with noise; every other fault once; healthy houses if wanted.
    """
    made: list[Case] = []
    for name, fault in faults.items():
        usual = nominal(fault)
        if fault.complaint != complaint:
            made.append(Case(tree, name, usual))
            continue
        made += [Case(tree, name, degree, wholly=degree == usual) for degree in fault.degrees]
        for number in range(samples):
            degree = Random(f"{seed}/{name}/{number}").choice(fault.degrees)
            made.append(Case(tree, name, degree, number, noisy=True))
    return made + healthy_houses(tree, samples) if healthy else made


def healthy_houses(tree: str, samples: int) -> list[Case]:
    """The plain house, one house for each other feature, and noisy ones."""
    made = [Case(tree, HEALTHY)]
    made += [
        Case(tree, HEALTHY, features=((feature, value),))
        for feature, values in FEATURES.items()
        for value in values[1:]
    ]
    return made + [Case(tree, HEALTHY, number=n, noisy=True) for n in range(samples * HEALTHY_PER_SAMPLE)]


def nominal(fault: Fault) -> str:
    """The fault's usual degree: nominal, or the first that makes the complaint."""
    return NOMINAL if NOMINAL in fault.degrees else fault.degrees[0]


def features_of(fault: Fault) -> tuple[tuple[str, Value], ...]:
    """What the fault's house must have and of what sort it is, in order: what a sound house beside it is to
    be like.
    """
    return tuple(sorted({**fault.house, **fault.sort(nominal(fault))}.items()))


def sort_of(case: Case) -> Settings:
    """Of what sort the case's house is, as settings."""
    return {name: value for name, value in case.features if "." in name}


def house_of(case: Case, fault: Fault | None, seed: int) -> Unit:
    """The furnace and house of a sample."""
    needed = dict(fault.house) if fault else {n: value for n, value in case.features if "." not in n}
    if not case.noisy:
        return with_features(REFERENCE, needed)
    random = Random(case.seed(seed))
    features = dict(PLAIN)
    for name in (name for name in FEATURES if name not in SELDOM):
        values = FEATURES[name]
        if random.random() < OTHER_HOUSE:
            features[name] = random.choice(values)
    if fault is not None and any(deed.part in OF_THE_BLOWER for deed in fault.deeds):
        features["blower"] = PLAIN["blower"]
    return varied(with_features(REFERENCE, {**features, **needed}), random)
