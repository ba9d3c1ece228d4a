"""What is waited for: the parts still to be fitted with the data they are chosen by, and what is done first
next time.
"""

from __future__ import annotations

from dataclasses import dataclass

from assistant.house.model import Part
from assistant.tree.model import Finding
from assistant.walk.ask import Found, Record
from assistant.walk.follow import repairs
from assistant.walk.past import fitted_before
from assistant.walk.points import open_points
from assistant.walk.state import Visit

UNKNOWN_AGAIN = "Every circuit counts as not known. Switch off and prove dead before a hand goes in."
NOT_READ = "not read yet"


@dataclass(frozen=True)
class Wanted:
    """One part that is waited for. `plate` is (value, what was read). `causes_open`: why the old one failed
    is not answered yet. `before`: when we fitted one here before."""

    part: str
    title: str
    finding: str
    matches: tuple[str, ...]
    plate: tuple[tuple[str, str], ...]
    together: tuple[str, ...]
    causes_open: bool = False
    before: tuple[str, ...] = ()


def wanted(visit: Visit) -> tuple[Wanted, ...]:
    """The parts of every finding that is not proved repaired, each once."""
    found: dict[str, Wanted] = {}
    for each in {f.step: f for f in visit.found}.values():
        for name in _parts(visit, each):
            known = visit.vocabulary.parts.get(name)
            if known is not None:
                found.setdefault(name, _wanted(visit, known, each))
    return tuple(found.values())


def next_time(visit: Visit) -> tuple[str, ...]:
    """What to do when it goes on, in order, by whoever comes: what is put back and switched on again comes
    after the repair, not before.
    """
    first = visit.sheets.get("order", {}).get("first", "")
    points = open_points(visit)
    kinds = ("cause", "part", "proof", "undo", "power", "complaint")
    rest = [point.words for kind in kinds for point in points if point.kind == kind]
    return tuple(dict.fromkeys(filter(None, (first, UNKNOWN_AGAIN, *rest))))


def _parts(visit: Visit, found: Found) -> list[str]:
    """What a finding still wants fitted: its own part where its repair fits it, and what its causes want."""
    finding = found.finding
    if not isinstance(finding, Finding) or not finding.fault or found.proof in ("proved", "none"):
        return []
    acts = visit.vocabulary.acts
    names = [acts[act].fits for act in repairs(found) if act in acts and act not in found.repaired]
    return [name for name in dict.fromkeys(names) if name]


def _wanted(visit: Visit, part: Part, found: Found) -> Wanted:
    plate = []
    for name in part.plate:
        known = visit.vocabulary.plate.get(name)
        held = visit.plate.get(name)
        text = held.echo if isinstance(held, Record) else held or NOT_READ
        plate.append((known.title if known else name, text))
    assert isinstance(found.finding, Finding)
    open_causes = bool(found.finding.causes) and not found.concluded
    walked = {cause.tree for cause in found.causes}
    open_causes = open_causes and not set(found.finding.causes) <= walked
    return Wanted(
        part.name,
        part.title,
        found.finding.title,
        part.matches,
        tuple(plate),
        part.together,
        open_causes,
        tuple(at for _, at in fitted_before(visit, part.name)),
    )
