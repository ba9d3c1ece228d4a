"""What an entry would mean, before anything is committed: for the line under the field while typing."""

from __future__ import annotations

from dataclasses import dataclass

from assistant.quantity.entry import Blank, Doubt, NotUnderstood, Understood, understand
from assistant.quantity.interval import Interval
from assistant.quantity.kind import show
from assistant.tree.model import Measure, Reading
from assistant.walk.ask import Verdict
from assistant.walk.asked import asked
from assistant.walk.judge import judge
from assistant.walk.reading import implausible, meant
from assistant.walk.state import Visit
from assistant.walk.survey import weigh_cell, weigh_line


@dataclass(frozen=True)
class Weighed:
    """`message` is what to say when there is nothing to judge: not understood, in doubt, or implausible.

    `choices` are what may have been meant; picking one types it. `blank` is an empty field.
    """

    understood: Understood | None = None
    verdict: Verdict | None = None
    message: str = ""
    choices: tuple[str, ...] = ()
    blank: bool = False
    doubtful: bool = False
    implausible: bool = False

    @property
    def ready(self) -> bool:
        """Whether Enter may commit it without a further question."""
        return self.understood is not None and not self.implausible


def weigh(visit: Visit, name: str, text: str) -> Weighed:
    """What `text` would mean for the reading called `name` of the step asked now (plate values included)."""
    ask = asked(visit)
    if ask.kind == "plate" and ask.plate is not None:
        plate = visit.vocabulary.plate[ask.plate]
        return _plain(understand(text, plate.kind, plate.unit))
    body = ask.body
    own = body.common.name if body is not None else ""
    if isinstance(body, Measure) and body.survey:
        return _survey(body, name, text)
    reading = next((r for r in ask.readings if (r.name or own) == name), None)
    if reading is None:
        return Weighed(message=f"'{name}' is not read here.")
    return weigh_reading(reading, text, ask.env, visit)


def weigh_reading(reading: Reading, text: str, env: dict, visit: Visit | None = None) -> Weighed:
    """The same for any reading, with the values that its limits use and the visit's instruments."""
    instrument = visit.shop.instrument(reading.kind, visit.instrument) if visit else None
    top = instrument.range_top.get(reading.kind) if instrument else None
    got = understand(text, reading.kind, reading.unit, top)
    if not isinstance(got, Understood):
        return _plain(got)
    value = instrument.widen(got) if instrument else got.interval
    if (doubt := implausible(reading, got)) is not None:
        return Weighed(got, message=doubt, choices=meant(reading, got), implausible=True)
    known = {name for limit in _limits(reading) for name in limit.names}
    if not known <= set(env):
        return Weighed(got)  # a limit rests on a reading of the same page that is not typed yet
    return Weighed(got, judge(value, reading.bands, env, reading.unit, reading.safe, got.top_known))


def _survey(step: Measure, name: str, text: str) -> Weighed:
    """A whole survey on one line, or one of its cells."""
    reading = step.readings[0]
    if name == (reading.name or step.common.name):
        got, message = weigh_line(text)
        return _plain(got) if got is not None else Weighed(message=message)
    cell = weigh_cell(reading, text)
    if cell.flow is None or (cell.problem and cell.choices):
        return Weighed(message=cell.problem, choices=cell.choices, blank=not cell.problem)
    words = cell.flow if isinstance(cell.flow, str) else show(cell.flow, reading.unit)
    value = Interval.exact(0.0 if isinstance(cell.flow, str) else cell.flow)
    got = Understood(value, reading.unit, words, None, False)
    return Weighed(got, message=cell.problem, implausible=bool(cell.problem))


def weigh_loose(kind: str, unit: str, text: str) -> Weighed:
    """The same for a reading put down out of order: nothing to judge it by yet."""
    return _plain(understand(text, kind, unit))


def _limits(reading: Reading):
    limits = [band.under for band in reading.bands]
    if reading.safe:
        limits += [reading.safe.over, reading.safe.under]
    return [limit for limit in limits if limit is not None]


def _plain(got) -> Weighed:
    if isinstance(got, Understood):
        return Weighed(got)
    if isinstance(got, Blank):
        return Weighed(blank=True)
    if isinstance(got, Doubt):
        return Weighed(message=got.message, choices=got.choices, doubtful=True)
    assert isinstance(got, NotUnderstood)
    return Weighed(message=got.message)
