"""What follows a finding: its causes, the person's conclusion, the repair, the proof of repair.

A part's causes are walked before it is fitted, so that the new part does not fail too. 'Worn' and 'not found'
are full answers, with the causes ruled out beside them.
"""

from __future__ import annotations

from dataclasses import replace

from assistant.tree.model import Finding, Return, Stop
from assistant.walk.ask import Cause, Found
from assistant.walk.path import CUT_SHORT, ended, pop, push, stopped
from assistant.walk.state import Frame, Position, Visit

CONCLUSIONS = ("worn", "not found")


def reached(visit: Visit, step: Finding | Stop, at: str) -> Visit:
    """The walk has come to a finding (or to a stop that is one)."""
    position = visit.position
    assert position is not None and visit.complaint is not None
    top = position.top
    facts = tuple(
        visit.readings[top.names[name]]
        for name in step.shows
        if name in top.names and (verdict := visit.readings[top.names[name]].verdict) and verdict.decided
    )
    found = Found(top.address, visit.complaint, step, facts, at)
    visit = replace(visit, found=visit.found + (found,))
    if isinstance(step, Stop):
        return stopped(visit, step.page)
    return visit.at(replace(position, stage="finding")).with_status(visit.complaint, "found")


def leave_finding(visit: Visit) -> Visit:
    """On from the finding's page: nothing to mend, or the first cause."""
    finding = visit.found[-1].finding
    assert isinstance(finding, Finding)
    if not finding.fault:
        # Where nothing was measured nothing is settled: the tree only says that it can't help here.
        return ended(_with(visit, proof="none"), "settled" if finding.shows else "open", finding.reason)
    return _cause(visit, 0)


def back_from_cause(visit: Visit, back: Return) -> Visit:
    """A cause tree has come back."""
    position = visit.position
    assert position is not None
    tree = visit.library.trees[position.top.tree]
    causes = visit.found[-1].causes + (Cause(tree.name, tree.title, back.outcome, back),)
    return _cause(pop(_with(visit, causes=causes)), position.index + 1)


def concluded(visit: Visit, answer: str) -> Visit:
    """The person has said why it failed, where no cause was found."""
    return _repair(_with(visit, concluded=answer), 0)


def repaired(visit: Visit, act: str) -> Visit:
    """One act of the repair is done."""
    position = visit.position
    assert position is not None
    done = visit.found[-1].repaired + (act,)
    return _repair(_with(visit, repaired=done), position.index + 1)


def back_from_proof(visit: Visit, back: Return) -> Visit:
    """The proof of repair has come back."""
    position = visit.position
    assert position is not None
    read = [taken for taken in visit.path[position.index :] if not taken.inserted and not taken.undecided]
    records = tuple(record for taken in read for record in taken.records)
    short = [taken for taken in read if CUT_SHORT in taken.answer]
    cut = tuple(f"{_asked_of(visit, taken.step)}: {taken.answer}" for taken in short)
    visit = pop(_with(visit, proof=back.outcome, proof_records=records, cut_short=cut))
    if back.outcome == "proved":
        return ended(visit, "proved")
    return ended(visit, "open", "the proof of repair failed: walk the complaint again")


def _asked_of(visit: Visit, address: str) -> str:
    """What a step asks for, in its own words."""
    _, step = visit.step(address)
    return getattr(step, "ask", address)


def repairs(found: Found) -> tuple[str, ...]:
    """The acts to do, the cause's first: what killed the part goes before the new part comes."""
    acts = [
        act for cause in found.causes if cause.back and cause.outcome == "found" for act in cause.back.repair
    ]
    own = found.finding.repair if isinstance(found.finding, Finding) else ()
    return tuple(dict.fromkeys([*acts, *own]))


def _cause(visit: Visit, index: int) -> Visit:
    found = visit.found[-1]
    assert isinstance(found.finding, Finding)
    if index < len(found.finding.causes):
        tree = visit.library.trees[found.finding.causes[index]]
        visit = visit.at(replace(_position(visit), stage="cause", index=index))
        return push(visit, Frame(tree.name, tree.start, "cause"))
    if found.finding.causes and not any(cause.outcome == "found" for cause in found.causes):
        return visit.at(replace(_position(visit), stage="conclude"))
    return _repair(visit, 0)


def _repair(visit: Visit, index: int) -> Visit:
    found = visit.found[-1]
    if index < len(repairs(found)):
        position = _position(visit)
        top = replace(position.top, tried=())
        return visit.at(replace(position, stack=position.stack[:-1] + (top,), stage="repair", index=index))
    assert isinstance(found.finding, Finding)
    if found.finding.proof is None:
        return ended(_with(visit, proof="none"), "settled")
    tree = visit.library.trees[found.finding.proof]
    visit = visit.at(replace(_position(visit), stage="proof", index=len(visit.path)))
    return push(visit, Frame(tree.name, tree.start, "proof"))


def _position(visit: Visit) -> Position:
    assert visit.position is not None
    return visit.position


def _with(visit: Visit, **changes) -> Visit:
    return replace(visit, found=visit.found[:-1] + (replace(visit.found[-1], **changes),))
