"""Answers to the step that is asked: each takes the visit past it, or raises and changes nothing."""

from __future__ import annotations

from dataclasses import replace

from assistant.tree.model import Do, Look, Measure, Reading, Watch, Way
from assistant.tree.power import proves_dead
from assistant.walk.ask import Ask, Record
from assistant.walk.asked import asked
from assistant.walk.decide import decide
from assistant.walk.env import env_of, unreadable
from assistant.walk.event import Cannot, Did, Read, Saw, StillTrue, Typed, Watched
from assistant.walk.follow import repaired
from assistant.walk.house import acted, proved_dead
from assistant.walk.path import CUT_SHORT, go, stopped, write_down
from assistant.walk.reading import earlier, reused, take
from assistant.walk.sense import doubts
from assistant.walk.state import BadAnswer, OutOfOrder, Visit
from assistant.walk.survey import surveyed


def read(visit: Visit, event: Read) -> Visit:
    """Readings of a measure step."""
    step = _expected(visit, event.step, "measure")
    assert isinstance(step, Measure)
    if step.survey:
        return _measured(visit, step, (surveyed(visit, step, event.readings, event.at),), event.at)
    records = _records(visit, step.readings, step.common.name, event.readings, event.at, step.group)
    return _measured(visit, step, records, event.at)


def still_true(visit: Visit, event: StillTrue) -> Visit:
    """The earlier readings of this very step, taken as they were."""
    step = _expected(visit, event.step, "measure")
    assert isinstance(step, Measure) and visit.position is not None
    if not asked(visit).offer:
        raise BadAnswer("There is no earlier reading of this that still counts. Take it now.")
    env = env_of(visit, visit.position.top)
    records = []
    for reading in step.readings:
        record = earlier(visit, reading)
        assert record is not None
        records.append(reused(visit, reading, _name(reading, step.common.name), record, env))
    return _measured(visit, step, tuple(records), event.at)


def saw(visit: Visit, event: Saw) -> Visit:
    """What was seen, heard or smelled."""
    step = _expected(visit, event.step, "look")
    assert isinstance(step, Look)
    if event.value not in step.choices:
        raise BadAnswer(f"'{event.value}' is not one of: {', '.join(step.choices)}.")
    way = step.choices[event.value]
    return go(write_down(visit, "look", event.value, way, event.at), way.to)


def watched(visit: Visit, event: Watched) -> Visit:
    """A start watched as it happened: the first event missing decides, else the readings."""
    step = _expected(visit, event.step, "watch")
    assert isinstance(step, Watch)
    unknown = [name for name in event.events if name not in step.events]
    if unknown:
        raise BadAnswer(f"'{unknown[0]}' is not watched here; watched are: {', '.join(step.events)}.")
    typed = {name: t for name, t in event.readings.items() if t.text.strip()}
    records = _records(visit, step.readings, step.common.name, typed, event.at, False, partial=True)
    happens = visit.vocabulary.happens
    missing = next((name for name in step.events if name not in event.events), None)
    words = "; ".join(
        f"{happens.get(name, name)} {event.events[name]:g} s" for name in step.events if name in event.events
    )
    if missing is not None:
        words = f"{words}; " if words else ""
        words += f"did not happen: {happens.get(missing, missing)}"
    words += "".join(f"; doubtful: {said}" for said in doubts(step, event.events, visit.vocabulary))
    if missing is not None:
        if (unsafe := decide(records, _stops(step.readings, records), None).unsafe) is not None:
            return stopped(write_down(visit, "watch", words, None, event.at, records), unsafe)
        way = step.missing[missing]
        return go(write_down(visit, "watch", words, way, event.at, records), way.to)
    return _decided(visit, step, "watch", words, records, event.at)


def did(visit: Visit, event: Did) -> Visit:
    """Something done: an act of the tree, or one of the repair."""
    ask = asked(visit)
    if ask.kind != "do" or ask.step != event.step:
        raise OutOfOrder(f"{event.step} is not the thing to do now")
    if event.saw and not _good(visit, ask, event.saw):
        words = f"{event.saw}: to be put right and done again"
        return write_down(visit, "do", words, None, event.at, undecided=True, address=ask.step)
    number = event.number.strip()
    fits = visit.vocabulary.acts[ask.act].fits if ask.act else None
    if number and fits:
        visit = replace(visit, numbers={**visit.numbers, fits: number})
    shown = "".join(f", {said}" for said in (event.saw, f"part number {number}" if number else "") if said)
    if ask.step.startswith("act."):
        act = ask.step.split(".", 1)[1]
        visit = write_down(visit, "do", f"done{shown}", None, event.at, address=ask.step)
        visit = after_act(visit, act, ask.step, event.at)
        return repaired(visit, act)
    step = ask.body
    assert isinstance(step, Do)
    words = f"done{shown}"
    if step.wait is not None:
        waited = event.waited or 0.0
        words = f"done{shown}, waited {waited:g} s"
        if waited < step.wait:
            words += f" of {step.wait:g} s: {CUT_SHORT}"
    visit = write_down(visit, "do", words, step.then, event.at)
    if step.act:
        visit = after_act(visit, step.act, event.step, event.at)
    return go(visit, step.then.to)


def _good(visit: Visit, ask: Ask, saw: str) -> bool:
    """Whether what an act showed is good. Raises BadAnswer where it can't show that."""
    if saw not in ask.choices:
        known = f"is not one of: {', '.join(ask.choices)}" if ask.choices else "is not asked here"
        raise BadAnswer(f"'{saw[:40]}' {known}.")
    return saw == visit.vocabulary.acts[ask.act or ""].good


def not_good_before(visit: Visit, step: str) -> bool:
    """Whether the last try of something to do was not good: it is asked again, or the work stops."""
    last = visit.history[-1] if visit.history else None
    return last is not None and last.step == step and last.verb == "do" and last.undecided


def after_act(visit: Visit, act: str, step: str, at: str) -> Visit:
    """The visit after an act: its house, without the plate values that left with a part."""
    gone = visit.vocabulary.acts[act].plate
    plate = {name: value for name, value in visit.plate.items() if name not in gone}
    return replace(visit, house=acted(visit.house, visit.vocabulary, act, step, at), plate=plate)


def cannot(visit: Visit, event: Cannot) -> Visit:
    """The step can't be taken: its declared way on."""
    ask = asked(visit)
    if ask.step != event.step or ask.kind not in ("look", "watch", "measure", "do"):
        raise OutOfOrder(f"{event.step} is not asked now")
    way = getattr(ask.body, "cannot", None)
    act = visit.vocabulary.acts.get(ask.act or "")
    if act is not None and act.stop and not_good_before(visit, ask.step):
        words = f"not good: {event.why}" if event.why else "not good"
        visit = write_down(visit, "do", words, None, event.at, undecided=True, address=ask.step)
        return stopped(visit, act.stop)
    if not isinstance(way, Way):
        raise BadAnswer("The walk can't go on without this. Do it, go back, or pause the visit.")
    words = f"can't be taken: {event.why}" if event.why else "can't be taken"
    return go(write_down(visit, ask.kind, words, way, event.at, undecided=True), way.to)


def _measured(visit: Visit, step: Measure, records: tuple[Record, ...], at: str) -> Visit:
    words = "; ".join(f"{record.echo}: {record.verdict.words}" for record in records if record.verdict)
    return _decided(visit, step, "measure", words, records, at)


def _decided(
    visit: Visit, step: Measure | Watch, verb: str, words: str, records: tuple[Record, ...], at: str
) -> Visit:
    """The visit past a page of readings: on its way, stopped, or asked once more where too close to call."""
    position = visit.position
    assert position is not None
    decision = decide(records, _stops(step.readings, records), step.then)
    if decision.unsafe is not None:
        return stopped(write_down(visit, verb, words, None, at, records), decision.unsafe)
    if decision.close:
        again = position.retaking == position.top.address or verb == "watch"
        if not again and not unreadable(visit, step):
            visit = write_down(
                visit, verb, f"{words}, to be taken once more", None, at, records, undecided=True
            )
            assert visit.position is not None
            return visit.at(replace(visit.position, retaking=position.top.address))
        way = step.cannot if unreadable(visit, step) and step.cannot else step.close or step.cannot
        visit = write_down(visit, verb, words, way, at, records, undecided=True)
        return go(visit, way.to) if way else stopped(visit, None)
    if decision.way is None:
        raise BadAnswer("This answer has no way on in the tree. Pause the visit and tell the office.")
    visit = write_down(visit, verb, words, decision.way, at, records, undecided=not decision.sure)
    circuits = proves_dead(step, position.top.circuit)
    if circuits and decision.sure and step.then is not None and decision.way.to == step.then.to:
        visit = replace(visit, house=proved_dead(visit.house, circuits))
    return go(visit, decision.way.to)


def _records(
    visit: Visit,
    readings: tuple[Reading, ...],
    step_name: str,
    typed: dict[str, Typed],
    at: str,
    group: bool,
    partial: bool = False,
) -> tuple[Record, ...]:
    assert visit.position is not None
    names = [_name(reading, step_name) for reading in readings]
    unknown = [name for name in typed if name not in names]
    if unknown:
        raise BadAnswer(f"'{unknown[0]}' is not read here; asked for: {', '.join(names) or 'nothing'}.")
    env = env_of(visit, visit.position.top)
    records = []
    for reading, name in zip(readings, names, strict=True):
        if name not in typed:
            if partial:
                continue
            raise BadAnswer(
                f"'{reading.ask}' is still missing. Fill it in, or choose that it can't be taken."
            )
        try:
            record = take(visit, reading, name, typed[name], env, at, len(records))
        except BadAnswer as problem:
            raise BadAnswer(f"{reading.ask}: {problem}" if group else str(problem)) from None
        env[name] = record.value
        records.append(record)
    return tuple(records)


def _stops(readings: tuple[Reading, ...], records: tuple[Record, ...]) -> tuple[str | None, ...]:
    pages = {reading.name: reading.safe.stop if reading.safe else None for reading in readings}
    return tuple(pages.get(record.name, next(iter(pages.values()), None)) for record in records)


def _name(reading: Reading, step_name: str) -> str:
    return reading.name or step_name


def _expected(visit: Visit, address: str, kind: str):
    ask = asked(visit)
    if ask.kind != kind or ask.step != address:
        raise OutOfOrder(f"{address} is not asked now (asked: {ask.kind} {ask.step})")
    return ask.body
