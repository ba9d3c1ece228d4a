"""The files of a visit put in order by the tips they continue: no clock and no file name is asked."""

from __future__ import annotations

from dataclasses import dataclass

from assistant.trail.chain import START
from assistant.trail.segment import Damage, Line, Segment


@dataclass(frozen=True)
class Beside:
    """Lines that another computer wrote at the same time, from an earlier line on. `named`: a later writer of
    this visit has seen them and said so in its first line."""

    file: str
    number: int
    count: int
    tip: str
    named: bool


@dataclass(frozen=True)
class Order:
    """The longest way from the first line, in order, and everything that does not fit into it."""

    visit: str
    lines: tuple[Line, ...]
    damage: tuple[Damage, ...]
    beside: tuple[Beside, ...]


def put_in_order(segments: list[Segment]) -> Order:
    """The order of all verified lines. Numbers run on from file to file, so the longest way is the one that
    ends with the highest number."""
    damage = [each for part in segments for each in part.damage]
    homes = {line.hash: (part, place) for part in segments for place, line in enumerate(part.lines)}
    known = {tip for part in segments for tip in part.hashes}
    begun = [part for part in segments if part.lines]
    roots = [part for part in begun if part.continues == START]
    for part in begun:
        if part.continues == START:
            if part is not roots[0]:
                damage.append(Damage(part.name, None, f"a second beginning; the first is in {roots[0].name}"))
        elif part.continues not in known:
            damage.append(Damage(part.name, None, "the lines that this file continues are missing"))
        elif part.continues in homes:
            damage += _misfit(part, *homes[part.continues])
    damage += [
        Damage(part.name, None, "the lines of another computer that this file names are missing")
        for part in begun
        if not known.issuperset(part.beside)
    ]
    joined = [part for part in begun if _leads_back(part, roots[:1], homes)]
    if not joined:
        return Order("", (), tuple(damage), ())
    last = min(joined, key=lambda part: (-part.lines[-1].n, part.name))
    way = _way_to(last, homes)
    on_way = {line.hash for line in way}
    named = {tip for part in joined if part.lines[0].hash in on_way for tip in part.beside}
    beside = []
    for part in joined:
        left = [line for line in part.lines if line.number > 1 and line.hash not in on_way]
        if left:
            beside.append(Beside(part.name, left[0].number, len(left), left[-1].hash, left[-1].hash in named))
    return Order(roots[0].visit, tuple(way), tuple(damage), tuple(beside))


def _misfit(part: Segment, before: Segment, place: int) -> list[Damage]:
    if part.visit != before.visit:
        return [Damage(part.name, 1, "this file belongs to another visit")]
    if part.first != before.lines[place].n + 1:
        return [Damage(part.name, 1, "its number does not follow the line that it continues")]
    return []


def _leads_back(part: Segment, root: list[Segment], homes: dict[str, tuple[Segment, int]]) -> bool:
    seen: list[Segment] = []
    while part not in root:
        if part in seen or part.continues not in homes:
            return False
        seen.append(part)
        part = homes[part.continues][0]
    return True


def _way_to(part: Segment, homes: dict[str, tuple[Segment, int]]) -> list[Line]:
    way = list(part.lines)
    while part.continues != START:
        part, place = homes[part.continues]
        way = part.lines[: place + 1] + way
    return way
