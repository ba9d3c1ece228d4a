"""The values that a step's limits and computes can reach: plate values and readings of the same tree."""

from __future__ import annotations

from assistant.quantity.interval import Interval
from assistant.quantity.kind import to_si
from assistant.tree.limits import parse_quantity
from assistant.tree.model import Compute, Step, bands_of, readings_of
from assistant.walk.ask import Record
from assistant.walk.judge import limit_names
from assistant.walk.state import Frame, Visit

NOT_READABLE = "not readable"


def env_of(visit: Visit, frame: Frame) -> dict[str, Interval]:
    """Name -> value (SI). A plate value that nobody could read, or that was not asked yet, is its whole
    range.
    """
    env: dict[str, Interval] = {}
    for name, value in visit.vocabulary.plate.items():
        known = visit.plate.get(name)
        env[name] = known.value if isinstance(known, Record) else value.span
    env.update({name: visit.readings[index].value for name, index in frame.names.items()})
    return env


def names_of(step: Step) -> list[str]:
    """Every name that judging the step needs, in order."""
    names = limit_names(bands_of(step))
    for reading in readings_of(step):
        names += limit_names((), reading.safe)
    if isinstance(step, Compute):
        names += step.texts
    return list(dict.fromkeys(names))


def plate_missing(visit: Visit, step: Step) -> list[str]:
    """Plate values that this step's limits need and that were neither read nor found unreadable."""
    return [name for name in names_of(step) if name in visit.vocabulary.plate and name not in visit.plate]


def unreadable(visit: Visit, step: Step) -> bool:
    """Whether a limit of this step rests on a plate value that nobody could read."""
    return any(visit.plate.get(name) == NOT_READABLE for name in names_of(step))


def argument(text: str, frame: Frame, visit: Visit, env: dict[str, Interval]) -> Interval | None:
    """A compute's argument: a name of this tree, a plate value, or a number and unit. None: not known."""
    if text in frame.names:
        return visit.readings[frame.names[text]].value
    if text in visit.vocabulary.plate:
        return env[text]
    parsed = parse_quantity(text)
    return None if parsed is None else Interval.exact(to_si(*parsed))
