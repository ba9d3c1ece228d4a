"""A house's duct system put together from what a technician can list, and what one open zone alone sees of
it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from assistant.trade.duct_link import Constant, Damper, Link, Table
from assistant.trade.duct_network import ROOM, Solved, solve_network


@dataclass(frozen=True)
class Branch:
    """One run to a register: its losses in order, its zone, the damper's diameter (m) and opening, and its
    trunk.

    `trunk` is None where the run leaves the plenum itself. `zone` is None for a run without a damper.
    `closed` is the coefficient of the shut damper.
    """

    name: str
    losses: tuple
    zone: str | None = None
    damper: float | None = None
    opening: float = 1.0
    trunk: str | None = None
    closed: float = 1e6


@dataclass(frozen=True)
class House:
    """Fan, the losses on its way (return duct, filter, coil), trunks by name, branches, and a bypass if there
    is one.

    Every loss is something with `at(flow)` (duct_link). The bypass leads from the supply plenum to before the
    filter.
    """

    fan: Table | Constant
    return_duct: tuple
    filter: tuple
    coil: tuple
    branches: tuple[Branch, ...]
    trunks: Mapping[str, tuple]
    bypass: tuple | None = None


def links_of(house: House) -> list[Link]:
    """The house as links; "return" lies before the filter, "inlet" before the blower, "outlet" after it."""
    out = [Link("return duct", ROOM, "return", house.return_duct)]
    inlet = "return"
    if house.filter:
        out.append(Link("filter", "return", "inlet", house.filter))
        inlet = "inlet"
    outlet = "outlet" if house.coil else "plenum"
    out.append(Link("blower", inlet, outlet, fan=house.fan))
    if house.coil:
        out.append(Link("coil", "outlet", "plenum", house.coil))
    out += [Link(name, "plenum", f"end of {name}", losses) for name, losses in house.trunks.items()]
    for b in house.branches:
        losses = b.losses
        if b.damper is not None and (b.opening < 1.0 or not losses):
            losses = (*losses, Damper(b.damper, b.opening, closed=b.closed))
        out.append(Link(b.name, f"end of {b.trunk}" if b.trunk else "plenum", ROOM, losses))
    if house.bypass:
        out.append(Link("bypass", "plenum", "return", house.bypass))
    return out


def run(house: House) -> Solved:
    """Flows and pressures of the house as it stands. Raises NotSolved."""
    return solve_network(links_of(house))


def with_zones(house: House, open_zones: Sequence[str]) -> House:
    """The house with the dampers of those zones open and all others shut; runs without a zone stay."""
    return replace(
        house,
        branches=tuple(
            b if b.zone is None else replace(b, opening=1.0 if b.zone in open_zones else 0.0)
            for b in house.branches
        ),
    )


def zones_of(house: House) -> list[str]:
    """The zones of the house in the order of their first branch."""
    return list(dict.fromkeys(b.zone for b in house.branches if b.zone is not None))


def alone(house: House, zone: str) -> Solved:
    """What the house does with one zone open alone.

    Raises NotSolved, KeyError for a zone that it does not have.
    """
    if zone not in zones_of(house):
        raise KeyError(zone)
    return run(with_zones(house, [zone]))
