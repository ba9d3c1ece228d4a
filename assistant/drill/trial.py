"""One walk of one tree in one simulated house, from the first question to its end."""

from __future__ import annotations

from dataclasses import replace

from assistant.drill.case import Case, house_of
from assistant.drill.hand import AT, Hand, Stuck
from assistant.drill.kit import PERFECT, STATED, TRUCK
from assistant.drill.outcome import Outcome
from assistant.rig.fault import Fault
from assistant.rig.house import Rig
from assistant.tree.library import Library
from assistant.tree.model import Finding, Return, Tree, Way
from assistant.walk.ask import Ask, Taken
from assistant.walk.event import GoOn, Opened, TakeUp
from assistant.walk.state import Visit
from assistant.walk.visit import asked, begin, fold

MOST_ANSWERS = 600
MOST_WALKS = 3
"""Walks of one complaint in one visit, where a stop page asks to walk it again."""
ENDS = ("finding", "stop", "handed_over", "choose", "leave", "notes")
AGAIN = "walk this complaint again"


def tried(case: Case, library: Library, complaint: str, fault: Fault | None, seed: int) -> Outcome:
    """The outcome of one sample."""
    return walked(case, library, complaint, fault, seed)[0]


def walked(
    case: Case, library: Library, complaint: str, fault: Fault | None, seed: int
) -> tuple[Outcome, tuple[Taken, ...]]:
    """The outcome of one sample, and all steps answered on the way to it, causes and proof with them."""
    rig = Rig(house_of(case, fault, seed), fault, case.degree, case.seed(seed), exact=not case.noisy)
    hand = Hand(rig, STATED if case.noisy else PERFECT, case.noisy)
    visit = opened(library, complaint, stated=case.noisy)
    stuck = ""
    try:
        visit, ask = until_end(visit, hand, library)
    except Stuck as stop:
        stuck, visit, ask = str(stop), stop.visit, Ask("stuck")
    ended = _ended(case, visit, ask, library, case.tree)
    present = hand.met
    if ask.kind == "finding" and isinstance(ask.body, Finding) and ask.body.fault:
        try:
            visit = after_finding(visit, hand, case.wholly)
        except Stuck as stop:
            stuck, visit = str(stop), stop.visit
    return _with_repair(ended, visit, rig, hand, present, stuck), _walked(visit)


def opened(library: Library, complaint: str, stated: bool = False) -> Visit:
    """A visit just opened with one complaint, with the hand's instruments where their accuracy counts."""
    words = library.vocabulary.complaints[complaint].words
    shop = {"instruments": TRUCK} if stated else {}
    return fold(begin(library), Opened(AT, ((complaint, words),), shop=shop))


def until_end(visit: Visit, hand: Hand, library: Library) -> tuple[Visit, Ask]:
    """On to the finding, stop or hand-over. Where a stop page says so, the complaint is walked again."""
    for _ in range(MOST_ANSWERS):
        ask = asked(visit)
        if ask.kind not in ENDS:
            visit = hand.answer(visit)
            continue
        if not _again(ask, library) or len(visit.walks) + 1 >= MOST_WALKS or visit.complaint is None:
            return visit, ask
        visit = fold(fold(visit, GoOn(AT, ask.step)), TakeUp(AT, visit.complaint))
    raise Stuck(f"no end after {MOST_ANSWERS} answers, at {asked(visit).step}", visit)


def _again(ask: Ask, library: Library) -> bool:
    if ask.kind != "stop" or ask.finding is not None:
        return False
    return any(AGAIN in line.lower() for line in library.vocabulary.stops[ask.page or ""].lines)


def after_finding(visit: Visit, hand: Hand, wholly: bool) -> Visit:
    """Causes and repairs, and the proof of repair where it is wanted."""
    for _ in range(MOST_ANSWERS):
        position = visit.position
        ask = asked(visit)
        if position is None or position.stage in ("done", "stop", "handed_over", "walking"):
            return visit
        if position.stage == "proof" and not wholly:
            return visit
        if ask.kind in ENDS and ask.kind != "finding":
            return visit
        visit = hand.answer(visit)
    raise Stuck(f"no end after {MOST_ANSWERS} answers, at {asked(visit).step}", visit)


def _walked(visit: Visit) -> tuple[Taken, ...]:
    """All steps answered in this visit's walks, in order."""
    return tuple(taken for walk in visit.walks for taken in walk.taken) + visit.path


def minutes_of(library: Library, path: tuple[Taken, ...]) -> float:
    """Minutes that the steps of a path say they take; what was known already takes none."""
    taken = (one for one in path if not one.passed)
    return sum(library.step(one.step)[1].common.minutes or 0.0 for one in taken)


def minutes_of_tree(tree: Tree) -> float:
    """Minutes of a procedure walked straight through: its answered steps up to the first return."""
    total, name = 0.0, tree.start
    for _ in tree.steps:
        step = tree.steps[name]
        if isinstance(step, Return):
            break
        total += step.common.minutes or 0.0
        then = getattr(step, "then", None)
        if not isinstance(then, Way):
            break
        name = then.to
    return total


def _ended(case: Case, visit: Visit, ask: Ask, library: Library, tree: str) -> Outcome:
    path = _walked(visit)
    finding = ask.finding.finding if ask.finding else None
    kind = "open"
    if ask.kind == "finding" or (ask.kind == "stop" and finding is not None):
        kind = "nothing" if isinstance(finding, Finding) and not finding.fault else "finding"
    elif ask.kind == "handed_over":
        kind = "handed_over"
    steps = tuple(
        (name, one.undecided)
        for one in path
        if one.verb in ("measure", "compute", "watch")
        for stem, _, name in [one.step.partition(".")]
        if stem == tree
    )
    return Outcome(
        case,
        kind,
        ask.step.partition(".")[2],
        ask.page or "",
        getattr(finding, "condemns", None),
        minutes_of(library, path),
        sum(1 for one in path if not one.passed for record in one.records if record.computed is None),
        steps,
    )


def _with_repair(outcome: Outcome, visit: Visit, rig: Rig, hand: Hand, present: bool, stuck: str) -> Outcome:
    found = visit.found[-1] if visit.found and outcome.kind == "finding" else None
    causes = tuple(cause.tree for cause in found.causes if cause.outcome == "found") if found else ()
    repaired = bool(found and (found.repaired or found.proof))
    return replace(
        outcome,
        causes=causes,
        asked_causes=bool(found and found.causes),
        cured=rig.cured if repaired else None,
        left=rig.left if repaired else (),
        proof=(found.proof or "") if found else "",
        present=present,
        undone=tuple(hand.undone) + ((stuck,) if stuck else ()),
        mishaps=tuple(rig.mishaps),
    )
