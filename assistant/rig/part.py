"""What the simulated house is made of: components, their settings as built, and what can go wrong with each.

A setting is one number or word that the physics reads, such as `igniter.cold_ohm`. A change (open, stuck,
wet) puts other values into settings, in up to three degrees. Fault files name components, changes and
degrees and nothing else, so every fault acts through physics.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

Value = float | str
Settings = dict[str, Value]

class Plain(dict):
    """Settings whose values are numbers and words: a copy of a house copies them in one go."""

    def __deepcopy__(self, _memo: dict) -> Plain:
        return Plain(self)


DEGREES = ("mild", "nominal", "severe")


@dataclass(frozen=True)
class Change:
    """Something that can happen to a component: `degrees` maps mild, nominal or severe to new settings.

    `nominal` is always there. Settings of another component are written with its name: "hose.water".
    """

    words: str
    degrees: Mapping[str, Mapping[str, Value]]


@dataclass(frozen=True)
class Component:
    """One part of the house. `settings` hold their values as built; `changes` are by name. `house`: features
    without which a house has no such part. `sort`: settings that say of what sort it is, and not how it is.
    """

    name: str
    title: str
    settings: Mapping[str, Value]
    changes: Mapping[str, Change] = field(default_factory=dict)
    house: Mapping[str, str] = field(default_factory=dict)
    sort: frozenset[str] = frozenset()


def change(
    words: str,
    mild: Mapping[str, Value] | None = None,
    nominal: Mapping[str, Value] | None = None,
    severe: Mapping[str, Value] | None = None,
) -> Change:
    """A change with those of its degrees that are given."""
    given = {"mild": mild, "nominal": nominal, "severe": severe}
    return Change(words, {name: dict(values) for name, values in given.items() if values is not None})


def graded(words: str, setting: str, mild: Value, nominal: Value, severe: Value) -> Change:
    """A change of one setting in three degrees."""
    return change(words, {setting: mild}, {setting: nominal}, {setting: severe})


def settings_of(components: Mapping[str, Component]) -> Settings:
    """All settings as built, by "component.setting"."""
    return {f"{c.name}.{name}": value for c in components.values() for name, value in c.settings.items()}


def applied(component: Component, change_name: str, degree: str) -> Settings:
    """The settings that a change of a component sets, by full name. Raises KeyError for an unknown one."""
    degrees = component.changes[change_name].degrees
    return {
        name if "." in name else f"{component.name}.{name}": value for name, value in degrees[degree].items()
    }
