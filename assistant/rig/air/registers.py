"""Registers and what each hangs on: its own zone's duct, another's, the trunk ahead of the dampers.

A zone's duct divides its air among its branches by their shares. What a fault does to ducts is a branch
moved, doubled or leaking; flows then follow from the network of ducts.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from assistant.rig.part import Settings
from assistant.rig.unit import Unit

REGISTERS: dict[str, int] = {"1a": 1, "1b": 1, "2a": 2, "2b": 2, "3a": 3}
"""Register -> zone as built. 2a is the one that the customer speaks of."""
COMPLAINED = "2a"
TRUNK = "trunk"
AREA = 0.0372
"""Free area of a register of the reference house, m2 (0.4 ft2)."""
REFERENCE_FLOW = 0.559


def area(unit: Unit) -> float:
    """Free area of each register, m2: sized for the unit's air."""
    return AREA * unit.design_flow / REFERENCE_FLOW


@dataclass(frozen=True)
class Branch:
    """A branch from a zone's duct (or the trunk) to a register: its share of that duct's design air."""

    register: str
    source: str
    share: float


def branches(v: Settings) -> list[Branch]:
    """Every branch as the ducts stand."""
    out = []
    for register, zone in REGISTERS.items():
        share = 1.0 / sum(z == zone for z in REGISTERS.values())
        source = str(zone)
        if register == COMPLAINED:
            moved = v["ducts2.hangs_on"]
            if moved != "own":
                source = str(moved)
            before = float(v["damper2.before"])
            if before:
                out.append(Branch(register, TRUNK, share * before))
                share *= 1 - before
            if v["ducts2.also_on"]:
                out.append(Branch(register, str(int(v["ducts2.also_on"])), 0.4))
            if v["ducts2.leak"]:
                out.append(Branch(register, str(int(v["ducts2.leak_from"])), float(v["ducts2.leak"])))
        out.append(Branch(register, source, share))
    return out


def shares(found: list[Branch]) -> dict[str, float]:
    """Source -> the sum of its branches' shares; one as built."""
    total: dict[str, float] = {}
    for branch in found:
        total[branch.source] = total.get(branch.source, 0.0) + branch.share
    return total


def flows(found: list[Branch], runs: Mapping[str, float]) -> dict[str, float]:
    """Register -> its air, m3/s, from what each source carries."""
    total = shares(found)
    out = dict.fromkeys(REGISTERS, 0.0)
    for branch in found:
        out[branch.register] += runs.get(branch.source, 0.0) * branch.share / total[branch.source]
    return out
