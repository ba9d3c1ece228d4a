"""What the visit asks now: a view of its state, worked out without changing it."""

from __future__ import annotations

from assistant.tree.model import Do, Finding, HandOver, Look, Measure, Step, Stop, Tree, Watch, readings_of
from assistant.walk.ask import Ask
from assistant.walk.env import env_of, plate_missing
from assistant.walk.follow import CONCLUSIONS, repairs
from assistant.walk.reading import earlier
from assistant.walk.state import Visit

UNFINISHED = ("open", "walking", "found", "stopped")
KINDS = {Look: "look", Watch: "watch", Measure: "measure", Do: "do"}


def asked(visit: Visit) -> Ask:
    """What a driver shows or answers now."""
    if visit.signed is not None:
        return Ask("signed")
    if visit.paused is not None:
        return Ask("paused", say=visit.paused)
    position = visit.position
    if position is None or position.stage == "done":
        return _between(visit)
    if position.stage == "notes":
        return Ask("notes", complaint=visit.complaint, say=_title(visit, visit.complaint))
    address = position.top.address if position.stack else ""
    if position.stage == "stop":
        found = visit.found[-1] if visit.found and visit.found[-1].step == address else None
        return Ask("stop", address, page=position.page, finding=found, complaint=visit.complaint)
    if position.stage == "handed_over":
        return Ask("handed_over", address, complaint=position.to, say=_title(visit, position.to))
    if position.stage == "finding":
        tree, step = visit.step(address)
        return Ask("finding", address, tree, step, finding=visit.found[-1], complaint=visit.complaint)
    if position.stage == "conclude":
        found = visit.found[-1]
        say = (
            f"None of the usual causes was found for: {_finding_title(found.finding)}. What do you conclude?"
        )
        return Ask(
            "conclude",
            f"cause.{found.step.split('.')[1]}",
            finding=found,
            say=say,
            choices=CONCLUSIONS,
            complaint=visit.complaint,
        )
    if position.stage == "repair" and len(position.stack) == 1:
        act = visit.vocabulary.acts[repairs(visit.found[-1])[position.index]]
        return Ask(
            "do",
            f"act.{act.name}",
            say=act.say,
            finding=visit.found[-1],
            complaint=visit.complaint,
            choices=results_of(visit, act.name),
            act=act.name,
        )
    return _step(visit)


def _step(visit: Visit) -> Ask:
    position = visit.position
    assert position is not None
    top = position.top
    tree, step = visit.step(top.address)
    reason = next((frame.reason for frame in position.stack if frame.why == "front"), None)
    env = env_of(visit, top)
    missing = plate_missing(visit, step)
    if missing:
        plate = visit.vocabulary.plate[missing[0]]
        return Ask(
            "plate",
            top.address,
            tree,
            step,
            plate=plate.name,
            say=plate.title,
            env=env,
            complaint=visit.complaint,
        )
    assert not isinstance(step, (Stop, Finding, HandOver))
    readings = readings_of(step)
    offer = ()
    proving = any(frame.why == "proof" for frame in position.stack)  # what was read before proves no repair
    plain = isinstance(step, Measure) and not step.verifies and not step.survey
    if plain and not position.retaking and not proving:
        known = [earlier(visit, reading) for reading in readings]
        offer = tuple(k for k in known if k is not None) if all(known) else ()
    act = step.act if isinstance(step, Do) else None
    choices = tuple(step.choices) if isinstance(step, Look) else results_of(visit, act, tree, step)
    return Ask(
        KINDS[type(step)],
        top.address,
        tree,
        step,
        top.circuit,
        reason,
        readings,
        offer,
        position.retaking == top.address,
        say=step.ask,
        choices=choices,
        complaint=visit.complaint,
        env=env,
        untold=visit.shop.untold(step.common.opens),
        act=act,
    )


def results_of(
    visit: Visit, act: str | None, tree: Tree | None = None, step: Step | None = None
) -> tuple[str, ...]:
    """What an act can show when it is done; empty where it shows nothing, or the step after it asks."""
    known = visit.vocabulary.acts.get(act or "")
    if known is None or known.sees is None:
        return ()
    after = tree.steps.get(step.then.to) if tree is not None and isinstance(step, Do) else None
    if isinstance(after, Look) and after.sees == known.sees:
        return ()
    return visit.vocabulary.seen[known.sees].values


def _between(visit: Visit) -> Ask:
    """No walk under way: the complaints that are not settled yet, or nothing left to ask."""
    unfinished = tuple(c.name for c in visit.complaints if c.status in UNFINISHED)
    if not visit.complaints:
        return Ask("choose", say="What does the customer say?")
    if unfinished:
        return Ask("choose", choices=unfinished, say="Which complaint next?")
    return Ask("leave", say="Nothing is left to ask. Look at the open points, then hand over.")


def _title(visit: Visit, complaint: str | None) -> str:
    known = visit.vocabulary.complaints.get(complaint or "")
    return known.title if known else (complaint or "")


def _finding_title(finding: Finding | Stop) -> str:
    return finding.title if isinstance(finding, Finding) else finding.finding or ""
