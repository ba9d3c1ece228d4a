"""On to the next question: everything between two questions that needs no person.

Procedures are put in front where the house is not as the step needs it, calls are entered and left, computes
are worked out, readings put down earlier answer the steps they fit. It stops where a person is asked.
"""

from __future__ import annotations

from dataclasses import replace

from assistant.tree import power
from assistant.tree.model import VERBS, Call, Compute, Do, Finding, HandOver, Measure, Return, Step, Stop
from assistant.walk.ask import Record
from assistant.walk.compute import worked_out
from assistant.walk.decide import decide
from assistant.walk.env import env_of, plate_missing
from assistant.walk.follow import back_from_cause, back_from_proof, reached, repairs
from assistant.walk.house import already, lacking
from assistant.walk.path import go, pop, push, stopped, write_down
from assistant.walk.reading import identity_epochs, reused, same_spot
from assistant.walk.state import BadAnswer, Frame, Visit
from assistant.walk.survey import concluded

WALKING = ("walking", "cause", "proof")
STATE_WORDS = {"dead": "proved dead", "off": "switched off", "live": "switched on"}


def settle(visit: Visit, at: str) -> Visit:
    """The visit moved on to its next question. Every move ends a step or enters a tree, and neither has
    circles.
    """
    while (moved := _once(visit, at)) is not None:
        visit = moved
    return visit


def _once(visit: Visit, at: str) -> Visit | None:
    position = visit.position
    if position is None or not position.stack:
        return None
    if position.stage == "repair" and len(position.stack) == 1:
        act = visit.vocabulary.acts[repairs(visit.found[-1])[position.index]]
        return _put_in_front(visit, act.needs)
    if position.stage not in WALKING and position.stage != "repair":
        return None
    top = position.top
    _, step = visit.step(top.address)
    if isinstance(step, Return):
        return _come_back(visit, step)
    if (moved := _not_ours(visit, step, at)) is not None:
        return moved
    needs = power.needs_of(step, top.circuit)
    if (moved := _put_in_front(visit, needs)) is not None:
        return moved
    if isinstance(step, Call):
        return _enter(visit, step)
    if isinstance(step, HandOver):
        moved = visit.at(replace(position, stage="handed_over", to=step.complaint))
        return moved.with_status(visit.complaint, "handed_over", step.complaint)
    if isinstance(step, (Finding, Stop)):
        if isinstance(step, Stop) and step.finding is None:
            return stopped(visit, step.page)
        return reached(visit, step, at)
    if plate_missing(visit, step):
        return None
    if isinstance(step, Compute):
        return _compute(visit, step, at)
    if position.hold or position.retaking:
        return None
    if isinstance(step, Do) and step.act and already(visit.house, visit.vocabulary, step.act):
        return go(write_down(visit, "do", "already done", step.then, at, passed=True), step.then.to)
    if isinstance(step, Measure) and not step.verifies and not step.survey:
        return _answered_before(visit, step, at)
    return None


def _not_ours(visit: Visit, step: Step, at: str) -> Visit | None:
    """The visit on the way of a step that opens what this shop's people may not open; None for others."""
    barred = [name for name in step.common.opens if not visit.shop.may_open(name)]
    way = getattr(step, "cannot", None)
    if not barred or way is None:
        return None
    titles = " and ".join(visit.vocabulary.openings.get(name, name) for name in barred)
    words = f"not done: this shop's people do not open {titles}"
    verb = next(word for word, kind in VERBS.items() if isinstance(step, kind))
    return go(write_down(visit, verb, words, way, at, passed=True, undecided=True), way.to)


def _put_in_front(visit: Visit, needs: dict[str, str]) -> Visit | None:
    """The visit with the procedure of the first unmet need in front, or None where all is met."""
    position = visit.position
    assert position is not None
    for circuit, wanted in lacking(visit.house, needs):
        known = visit.vocabulary.circuits[circuit]
        procedure = known.restore if wanted == "live" else known.make_dead
        if any(frame.tree == procedure for frame in position.stack):
            continue  # we are inside it: it sees to its own needs
        if (
            procedure is None
            or procedure not in visit.library.trees
            or (circuit, wanted) in position.top.tried
        ):
            return stopped(visit, None)
        top = replace(position.top, tried=position.top.tried + ((circuit, wanted),))
        visit = visit.at(replace(position, stack=position.stack[:-1] + (top,)))
        reason = f"What comes next needs this circuit {STATE_WORDS[wanted]}: {known.title}."
        start = visit.library.trees[procedure].start
        return push(
            visit, Frame(procedure, start, "front", circuit, reason=reason, asked_for=(circuit, wanted))
        )
    return None


def _enter(visit: Visit, step: Call) -> Visit:
    """Into the called tree, unless it is a circuit's procedure and the circuit is so already."""
    circuit = visit.vocabulary.circuits.get(step.circuit or "")
    if circuit is not None and "done" in step.then:
        state = visit.house.circuits[circuit.name]
        if (step.tree == circuit.make_dead and state == "dead") or (
            step.tree == circuit.restore and state == "live"
        ):
            return go(visit, step.then["done"].to)
    tree = visit.library.trees[step.tree]
    return push(visit, Frame(tree.name, tree.start, "call", step.circuit))


def _come_back(visit: Visit, step: Return) -> Visit:
    position = visit.position
    assert position is not None
    frame = position.top
    if frame.why == "cause":
        return back_from_cause(visit, step)
    if frame.why == "proof":
        return back_from_proof(visit, step)
    visit = pop(visit)
    if frame.why == "front":
        return visit if step.outcome == "done" else stopped(visit, None)
    assert visit.position is not None
    _, caller = visit.step(visit.position.top.address)
    assert isinstance(caller, Call)
    return go(visit, caller.then[step.outcome].to)


def _compute(visit: Visit, step: Compute, at: str) -> Visit:
    assert visit.position is not None
    top = visit.position.top
    result = concluded(visit, top, step, at) if step.results else worked_out(visit, top, step, at)
    if isinstance(result, str):
        way = step.cannot or step.close
        visit = write_down(visit, "compute", f"not worked out: {result}", way, at, undecided=True)
        return go(visit, way.to) if way else stopped(visit, None)
    results = result if isinstance(result, tuple) else (result,)
    decision = decide(results, (None,) * len(results), step.then)
    way = decision.way or step.close or step.cannot
    words = "; ".join(f"{one.echo}: {one.verdict.words}" for one in results if one.verdict)
    visit = write_down(
        visit,
        "compute",
        words,
        way,
        at,
        results,
        undecided=not (decision.way and decision.sure),
    )
    return go(visit, way.to) if way else stopped(visit, None)


def _answered_before(visit: Visit, step: Measure, at: str) -> Visit | None:
    """The visit past a step whose readings were all put down before it was asked; None to ask it."""
    assert visit.position is not None
    env = env_of(visit, visit.position.top)
    records: list[Record] = []
    used: list[int] = []
    for reading in step.readings:
        index = _put_down_for(visit, reading, used)
        if index is None:
            return None
        try:
            records.append(
                reused(visit, reading, reading.name or step.common.name, visit.readings[index], env)
            )
        except BadAnswer:
            return None
        used.append(index)
    decision = decide(
        tuple(records), tuple(r.safe.stop if r.safe else None for r in step.readings), step.then
    )
    if decision.way is None and decision.unsafe is None:
        return None  # too close to call: the step itself takes it again
    rest = tuple(index for index in visit.put_down if index not in used)
    words = "; ".join(f"{record.echo}: {record.verdict.words}" for record in records if record.verdict)
    visit = replace(visit, put_down=rest)
    visit = write_down(
        visit, "measure", words, decision.way, at, tuple(records), passed=True, undecided=not decision.sure
    )
    return stopped(visit, decision.unsafe) if decision.way is None else go(visit, decision.way.to)


def _put_down_for(visit: Visit, reading, used: list[int]) -> int | None:
    epochs = identity_epochs(visit, reading.at)
    for index in reversed(visit.put_down):
        record = visit.readings[index]
        if (
            index not in used
            and record.kind == reading.kind
            and reading.at
            and record.epochs == epochs
            and same_spot(record.kind, record.points, reading.at)
        ):
            return index
    return None
