"""Flows and pressures of a duct system with any number of trunks, branches, dampers, a bypass and one fan.

The gradient method of network analysis (Todini and Pilati, 1987, from memory): Newton's method on link flows
and node pressures together. Each step is one sparse linear solve at the nodes; flow is conserved at every
node from the first step on, and what is left is the pressure balance along each link.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from assistant.trade.duct_link import Constant, Link
from assistant.trade.linear import order, solve

ROOM = "room"
FIRST_FLOW = 0.05
"""Flow with which every link starts, m³/s (about 100 cfm)."""


class NotSolved(ArithmeticError):
    """No steady state was found: a part that hangs loose, or a fan without a way round."""


@dataclass(frozen=True)
class Solved:
    """`flow` of each link in m³/s (its own direction), `pressure` of each node in Pa against the rooms.

    `fan_rise`: what the fan lifts, Pa. `held`: whether a constant-airflow fan still holds its flow (None:
    another fan).
    """

    flow: dict[str, float]
    pressure: dict[str, float]
    fan_rise: float
    held: bool | None
    steps: int


def solve_network(links: Sequence[Link], tolerance: float = 1e-10) -> Solved:
    """Steady flows of the network. Raises NotSolved where none is found, ValueError for names that repeat.

    `tolerance`: largest unbalance of pressure along any link, as a share of the largest drop.
    """
    names = [link.name for link in links]
    if len(set(names)) != len(names):
        raise ValueError("two links of a network must not have one name")
    fan = next((link for link in links if link.fan is not None), None)
    if fan is not None and isinstance(fan.fan, Constant):
        held = _newton(links, fan, tolerance, fixed=fan.fan.flow)
        if held.fan_rise * fan.fan.flow <= fan.fan.limit:
            return held
    return _newton(links, fan, tolerance, fixed=None)


def _newton(links: Sequence[Link], fan: Link | None, tolerance: float, fixed: float | None) -> Solved:
    nodes = sorted({n for link in links for n in (link.start, link.end)} - {ROOM})
    place = {n: i for i, n in enumerate(nodes)}
    moving = [link for link in links if not (fixed is not None and link is fan)]
    ends = [(place.get(link.start, -1), place.get(link.end, -1)) for link in moving]
    push = [0.0] * len(nodes)
    if fixed is not None:
        for node, sign in ((fan.start, -1.0), (fan.end, 1.0)):
            if node != ROOM:
                push[place[node]] += sign * fixed
    flow = [FIRST_FLOW] * len(moving)
    drops = [_drop(link, q) for link, q in zip(moving, flow, strict=True)]
    sequence = order(_pattern(len(nodes), ends))
    for step in range(1, 101):
        rows: list[dict[int, float]] = [{i: 0.0} for i in range(len(nodes))]
        right = list(push)
        carried = []
        for q, (drop, slope), (a, b) in zip(flow, drops, ends, strict=True):
            ease = 1 / slope
            still = q - drop * ease  # what the link would carry with no pressure across it
            carried.append((still, ease))
            if a >= 0:
                rows[a][a] += ease
                right[a] -= still
            if b >= 0:
                rows[b][b] += ease
                right[b] += still
            if a >= 0 and b >= 0:
                rows[a][b] = rows[a].get(b, 0.0) - ease
                rows[b][a] = rows[b].get(a, 0.0) - ease
        try:
            pressure = [*solve(rows, right, sequence), 0.0]  # the last, at -1, is the rooms
        except ZeroDivisionError:
            raise NotSolved("a part of the duct system leads nowhere") from None
        across = [pressure[a] - pressure[b] for a, b in ends]
        flow = [still + ease * p for (still, ease), p in zip(carried, across, strict=True)]
        if not all(map(math.isfinite, flow)):
            break
        drops = [_drop(link, q) for link, q in zip(moving, flow, strict=True)]
        off = max(abs(drop - p) for (drop, _), p in zip(drops, across, strict=True))
        if off <= tolerance * max(1e-9, *(abs(drop) for drop, _ in drops)):
            return _solved(moving, flow, nodes, pressure[:-1], fan, fixed, step)
    raise NotSolved("the flows of this duct system do not settle; look for a fan without a way round")


def _pattern(count: int, ends: Sequence[tuple[int, int]]) -> list[dict[int, float]]:
    rows: list[dict[int, float]] = [{i: 1.0} for i in range(count)]
    for a, b in ends:
        if a >= 0 and b >= 0:
            rows[a][b] = rows[b][a] = 1.0
    return rows


def _drop(link: Link, flow: float) -> tuple[float, float]:
    """Drop from start to end at a flow of either sign, and its slope; a fan's is its rise, turned round."""
    if link.fan is not None:
        rise, slope = link.fan.rise(flow)
        return -rise, slope
    drop = slope = 0.0
    for loss in link.losses:
        d, s = loss.at(abs(flow))
        drop, slope = drop + d, slope + s
    return (drop if flow >= 0 else -drop), slope


def _solved(moving, flow, nodes, pressure, fan, fixed, step) -> Solved:
    flows = {link.name: q for link, q in zip(moving, flow, strict=True)}
    at = {ROOM: 0.0, **dict(zip(nodes, pressure, strict=True))}
    held = None
    rise = 0.0
    if fan is not None:
        rise = at[fan.end] - at[fan.start]
        if isinstance(fan.fan, Constant):
            held = fixed is not None
        if fixed is not None:
            flows[fan.name] = fixed
    return Solved(flows, at, rise, held, step)
