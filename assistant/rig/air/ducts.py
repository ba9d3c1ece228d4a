"""Ducts behind the blower: zones with dampers beside each other, a bypass, and one return with filter and
coil.

All losses but the filter's go with the square of the flow, so that branches beside each other add up as their
conductances (flow at one pascal) and the plenum's pressure follows in one step from the flow that is pushed
in; only a bypass that opens with pressure takes a few rounds. Flows in m3/s, pressures in Pa.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from assistant.trade.duct_fittings import CLOSED, blade_loss

DENSITY = 1.2014
TIGHTEST = 0.995


@dataclass(frozen=True)
class Run:
    """One zone's ducts: `drop` at `flow` with its damper open; a round damper of `diameter` (m) in series.

    `opening` 0 to 1; `closed` is the coefficient of the shut blade (1e6 a tight one). `before`: share of its
    register's air that is taken off ahead of the damper. `diameter` None: no damper.
    """

    name: str
    drop: float
    flow: float
    diameter: float | None = None
    opening: float = 1.0
    closed: float = CLOSED
    before: float = 0.0

    def conductance(self) -> float:
        """Flow at one pascal."""
        plain = self.drop / self.flow**2
        free = self.flow * self.before / math.sqrt(self.drop) if self.before else 0.0
        if self.diameter is None:
            return 1 / math.sqrt(plain)
        blade = (
            max(self.closed, 1.0)
            if self.opening <= 0
            else min(blade_loss(self.opening, "opposed"), self.closed)
        )
        area = math.pi / 4 * self.diameter**2
        damper = blade * DENSITY / (2 * area * area)
        return 1 / math.sqrt(plain / max(1 - self.before, 1e-3) ** 2 + damper) + free


@dataclass(frozen=True)
class Bypass:
    """From the supply plenum to before the filter: `most` is its conductance wide open.

    It opens from `opens` Pa of plenum pressure and is wide open at 1.3 times that; `stuck` fixes its opening.
    """

    most: float
    opens: float
    stuck: float | None = None

    def conductance(self, plenum: float) -> float:
        """Flow at one pascal with that pressure in the plenum."""
        if self.stuck is not None:
            return self.most * self.stuck
        return self.most * min(max((plenum - self.opens) / (0.3 * self.opens), 0.0), 1.0)


@dataclass(frozen=True)
class Path:
    """Everything but the blower. `back`: return, Pa per (m3/s)^2; `strainer`: filter's drop at a flow, and
    its exponent; `coil` as `back`.
    """

    back: float
    strainer: tuple[float, float, float]
    coil: float
    runs: tuple[Run, ...]
    bypass: Bypass | None = None


@dataclass(frozen=True)
class Flows:
    """What the blower's flow `total` makes: pressures against the rooms, flow of each run and of the
    bypass.
    """

    total: float
    before_filter: float
    before_blower: float
    after_furnace: float
    plenum: float
    runs: dict[str, float]
    bypass: float

    @property
    def lift(self) -> float:
        """What the blower must lift, Pa."""
        return self.after_furnace - self.before_blower


def flows(path: Path, total: float, conductances: Sequence[float] | None = None) -> Flows:
    """Pressures and flows for a flow through the blower."""
    each = list(conductances) if conductances is not None else [run.conductance() for run in path.runs]
    open_to_rooms = sum(each)
    if total <= 0:
        return Flows(0.0, 0.0, 0.0, 0.0, 0.0, {run.name: 0.0 for run in path.runs}, 0.0)
    # What leaves to the rooms comes back through the return: its drop is back * (open_to_rooms)^2 * plenum.
    pulled = path.back * open_to_rooms**2

    def passed(plenum: float) -> tuple[float, float]:
        out = open_to_rooms * math.sqrt(plenum)
        round_about = (
            path.bypass.conductance(plenum) * math.sqrt(plenum * (1 + pulled)) if path.bypass else 0.0
        )
        return out, round_about

    plenum = (total / open_to_rooms) ** 2
    if path.bypass:
        low, high = 0.0, plenum
        for _ in range(50):
            plenum = (low + high) / 2
            low, high = (plenum, high) if sum(passed(plenum)) < total else (low, plenum)
    out, round_about = passed(plenum)
    before_filter = -path.back * out**2
    drop, flow, exponent = path.strainer
    before_blower = before_filter - drop * (total / flow) ** exponent
    return Flows(
        total,
        before_filter,
        before_blower,
        plenum + path.coil * total**2,
        plenum,
        {run.name: g * math.sqrt(plenum) for run, g in zip(path.runs, each, strict=True)},
        round_about,
    )


def meet(path: Path, lift: Callable[[float], float], most: float) -> Flows:
    """Where a blower, by its lift in Pa at a flow, and the ducts agree. `most`: more than any flow."""
    each = [run.conductance() for run in path.runs]
    low, high = 0.0, most
    for _ in range(45):
        q = (low + high) / 2
        low, high = (q, high) if lift(q) > flows(path, q, each).lift else (low, q)
    return flows(path, q, each)


def shut(blocked: float) -> float:
    """What a blocked share of an opening's area does to its resistance."""
    return 1 / (1 - min(blocked, TIGHTEST)) ** 2
