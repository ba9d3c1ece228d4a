"""The parts that were fitted on a visit, with their numbers: for customer, warranty desk and invoice."""

from __future__ import annotations

from assistant.report.measured import plain_name
from assistant.report.story import PartFitted
from assistant.walk.state import Visit


def fitted(visit: Visit) -> tuple[PartFitted, ...]:
    """In the order they were fitted. The visit knows the number of the last one of a kind."""
    out = []
    last = {part: place for place, (part, _) in enumerate(visit.house.fitted)}
    for place, (name, at) in enumerate(visit.house.fitted):
        known = visit.vocabulary.parts.get(name)
        number = visit.numbers.get(name, "") if last[name] == place else ""
        out.append(
            PartFitted(
                name, known.title if known else plain_name(name), at, number, known.costs if known else True
            )
        )
    return tuple(out)
