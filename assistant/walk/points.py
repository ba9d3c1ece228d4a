"""Open points: everything of this visit that is not closed, as one list folded from its events.

The pause list, the hand-over page and the sign-off read this list and no other.
"""

from __future__ import annotations

from assistant.tree.model import Finding
from assistant.walk.ask import Found, OpenPoint
from assistant.walk.follow import repairs
from assistant.walk.state import Visit

NOT_CLOSED = {
    "open": "not settled",
    "walking": "not finished",
    "found": "found, not yet proved repaired",
    "stopped": "stopped for safety",
}
BLOCKING = ("undo", "power")
NOT_KNOWN_ON = "was off when the work was interrupted; not known to be on again"
POWER_WORDS = {"off": "switched off, not proved dead", "dead": "proved dead and still off"}


def open_points(visit: Visit) -> tuple[OpenPoint, ...]:
    """What is open now, the things that must be put back first."""
    points = [_undo(visit, entry) for entry in visit.house.undone]
    for complaint in visit.complaints:
        if complaint.status in NOT_CLOSED:
            known = visit.vocabulary.complaints.get(complaint.name)
            title = known.title if known else complaint.name
            words = f"{title}: {complaint.note or NOT_CLOSED[complaint.status]}"
            points.append(OpenPoint(f"complaint.{complaint.name}", "complaint", words))
    position = visit.position
    if position is not None and position.stage == "stop" and visit.complaint is None:
        page = visit.vocabulary.stops.get(position.page or "")
        points.append(OpenPoint("stop", "stop", f"{page.title if page else 'Stopped'} Not cleared yet"))
    for found in _last_of_each_step(visit):
        points += _of_finding(visit, found)
    for circuit, state in visit.house.circuits.items():
        known = visit.vocabulary.circuits[circuit]
        fed_by_one_off = visit.house.circuits.get(known.fed_by or "") in POWER_WORDS
        if state in POWER_WORDS and known.restore is not None and not fed_by_one_off:
            points.append(OpenPoint(f"power.{circuit}", "power", f"{known.title}: {POWER_WORDS[state]}"))
    points += _not_known_on(visit)
    return tuple(OpenPoint(p.key, p.kind, p.words, visit.left.get(p.key)) for p in points)


def blocks_signing(visit: Visit) -> tuple[OpenPoint, ...]:
    """What must be put back or switched on again before anybody signs, or left with a reason: jumpers, a held
    door switch, levers, ports, gas, modes, power.
    """
    return tuple(point for point in open_points(visit) if point.kind in BLOCKING and point.left is None)


def _not_known_on(visit: Visit) -> list[OpenPoint]:
    """Circuits that were off when the work was interrupted and that nobody has switched on since. Where a
    stop page holds, that it is off is said there.
    """
    if any(complaint.status == "stopped" for complaint in visit.complaints):
        return []
    house, circuits = visit.house, visit.vocabulary.circuits
    off = [name for name in sorted(house.left_off) if house.circuits.get(name) == "unknown"]
    return [
        OpenPoint(f"power.{name}", "power", f"{circuits[name].title}: {NOT_KNOWN_ON}")
        for name in off
        if circuits[name].restore is not None and circuits[name].fed_by not in off
    ]


def _undo(visit: Visit, entry) -> OpenPoint:
    acts = visit.vocabulary.acts
    words = acts[entry.undo].say if entry.undo in acts else entry.undo
    return OpenPoint(f"undo.{entry.act}", "undo", words)


def _last_of_each_step(visit: Visit) -> list[Found]:
    return list({found.step: found for found in visit.found}.values())


def _of_finding(visit: Visit, found: Found) -> list[OpenPoint]:
    if not isinstance(found.finding, Finding):
        words = f"{found.finding.finding}: not repaired, left off"
        return [OpenPoint(f"finding.{found.step}", "part", words)]
    if found.proof == "proved":
        if not found.cut_short:
            return []
        words = f"once more in full: {'; '.join(found.cut_short)}"
        return [OpenPoint(f"proof.{found.step}.wait", "proof", words)]
    if not found.finding.fault or found.proof == "none":
        return []
    points = []
    walked = {cause.tree for cause in found.causes}
    if found.concluded is None:
        titles = {
            name: visit.library.trees[name].title for name in found.finding.causes if name not in walked
        }
        points += [
            OpenPoint(f"cause.{found.step}.{name}", "cause", f"{found.finding.title}: {title}")
            for name, title in titles.items()
        ]
    points += [
        OpenPoint(f"part.{found.step}.{act}", "part", visit.vocabulary.acts[act].say)
        for act in repairs(found)
        if act not in found.repaired
    ]
    if found.finding.proof is not None:
        title = visit.library.trees[found.finding.proof].title
        failed = ": failed" if found.proof == "not_proved" else ""
        points.append(OpenPoint(f"proof.{found.step}", "proof", f"{title}{failed}"))
    return points
