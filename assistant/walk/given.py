"""Values that are given without being asked by a step: readings put down in any order, and the rating
plate's.
"""

from __future__ import annotations

from dataclasses import replace

from assistant.quantity.entry import Blank, Understood, understand
from assistant.quantity.kind import KINDS, show
from assistant.walk.ask import Record
from assistant.walk.env import NOT_READABLE
from assistant.walk.event import PlateRead, PutDown, Typed
from assistant.walk.reading import identity_epochs, own_part, understood, widened
from assistant.walk.state import BadAnswer, Visit


def put_down(visit: Visit, event: PutDown) -> Visit:
    """A reading put down out of order. Raises BadAnswer with a sentence."""
    if event.kind not in KINDS:
        raise BadAnswer(f"'{event.kind}' is not a quantity; there are: {', '.join(KINDS)}.")
    unknown = [point for point in event.points if point not in visit.vocabulary.points]
    if unknown or not event.points:
        raise BadAnswer(f"'{(unknown or [''])[0]}' is not a point that the drawings know.")
    unit = KINDS[event.kind].units[0]
    got, typed = understood(visit, event.typed, event.kind, unit)
    value = widened(visit, typed, got)
    epochs = identity_epochs(visit, event.points)
    if event.typed.ago is not None:  # taken before the last switching, for all we know
        epochs = tuple((circuit, max(0, epoch - 1)) for circuit, epoch in epochs)
    record = Record(
        "",
        event.kind,
        unit,
        event.points,
        epochs,
        typed,
        value,
        got.echo,
        None,
        event.at,
        parts=own_part(value, len(visit.readings)),
        exact=value == got.interval,
    )
    return replace(
        visit, readings=visit.readings + (record,), put_down=visit.put_down + (len(visit.readings),)
    )


def plate_read(visit: Visit, event: PlateRead) -> Visit:
    """A value of the rating plate. Raises BadAnswer with a sentence when no plate can carry it."""
    value = visit.vocabulary.plate.get(event.name)
    if value is None:
        raise BadAnswer(
            f"'{event.name}' is not a plate value; there are: {', '.join(visit.vocabulary.plate)}."
        )
    if event.text.strip().lower() == NOT_READABLE:
        return replace(visit, plate={**visit.plate, event.name: NOT_READABLE})
    got = understand(event.text, value.kind, value.unit)
    if not isinstance(got, Understood):
        raise BadAnswer(
            "Type the value, or choose 'not readable'." if isinstance(got, Blank) else got.message
        )
    if not got.interval.within(value.span):
        span = f"{show(value.span.lo, value.unit)} to {show(value.span.hi, value.unit)}"
        raise BadAnswer(f"{got.echo} can't stand on a plate as {value.title} ({span}). Look again.")
    if value.choices and not any(abs(choice - got.interval.middle) < 1e-9 for choice in value.choices):
        known = ", ".join(show(choice, value.unit) for choice in value.choices)
        raise BadAnswer(f"{value.title} is one of {known} (got {got.echo}). Look again.")
    record = Record(
        event.name, value.kind, value.unit, (), (), Typed(event.text), got.interval, got.echo, None, event.at
    )
    return replace(visit, plate={**visit.plate, event.name: record})
