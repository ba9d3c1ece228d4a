"""One walk as lines to read: each question, what was answered, and the minutes that the step takes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from assistant.drill.case import HEALTHY, Case, nominal
from assistant.drill.outcome import Outcome, cause_named, judged
from assistant.drill.trial import walked
from assistant.errors import UserError
from assistant.house.nearest import suggestion
from assistant.rig.fault import NOMINAL, Fault
from assistant.rig.part import DEGREES
from assistant.tree.library import Library
from assistant.tree.model import Call, Compute, Finding, Stop
from assistant.walk.ask import Taken

ACT = "act."
CLOSE = "too close to call"


def case_of(words: str, trees: Mapping[str, str], faults: Mapping[str, Fault], number: int | None) -> Case:
    """FAULT or FAULT:DEGREE as a case, walked wholly; `trees` holds each tree that may be walked with its
    complaint, `number` a sample with noise. Raises UserError for what is none.
    """
    name, colon, degree = words.partition(":")
    fault = faults.get(name)
    if fault is None and name != HEALTHY:
        raise UserError(f"There is no fault '{name}'{suggestion(name, [*faults, HEALTHY])}.")
    usual = nominal(fault) if fault else NOMINAL
    if colon and degree not in (fault.degrees if fault else DEGREES):
        known = ", ".join(fault.degrees if fault else DEGREES)
        raise UserError(f"The fault '{name}' has no degree '{degree}'; there is {known}.")
    own = [tree for tree, complaint in trees.items() if fault and complaint == fault.complaint]
    if not own and len(trees) != 1:
        raise UserError(f"Say in which tree to walk '{name}': {', '.join(sorted(trees))}.")
    tree = next(iter(trees)) if len(trees) == 1 else own[0]
    return Case(tree, name, degree or usual, number or 0, noisy=number is not None, wholly=tree in own)


def walk_lines(
    case: Case, library: Library, complaint: str, fault: Fault | None, seed: int
) -> tuple[str, list[str]]:
    """The verdict of the walk of `case`, and its lines with what came of it and what was right."""
    outcome, taken = walked(case, library, complaint, fault, seed)
    house = f"sample {case.number} with noise, seed {seed}" if case.noisy else "the plain house, no noise"
    title = f" - {fault.title}" if fault else ""
    lines = [f"{case.fault} ({case.degree}){title}", f"walked in {case.tree}, {house}", "", "   min"]
    total = 0.0
    for one in taken:
        minutes, question = _step(library, one)
        total += minutes
        close = f" ({CLOSE})" if one.undecided and CLOSE not in str(one.answer) else ""
        lines.append(f"{total:6.1f}  {one.step}: {question}")
        lines.append(f"            {_short(one.answer)}{close}")
    verdict = judged(outcome, fault, complaint)
    return verdict, [*lines, "", *_came(outcome, library, fault, verdict, complaint)]


def _step(library: Library, taken: Taken) -> tuple[float, str]:
    """Minutes (none where it was known already) and the question."""
    if taken.step.startswith(ACT):
        act = library.vocabulary.acts.get(taken.step.removeprefix(ACT))
        return 0.0, _short(act.say if act else taken.step)
    step = library.step(taken.step)[1]
    minutes = 0.0 if taken.passed else step.common.minutes or 0.0
    words = getattr(step, "ask", None) or getattr(step, "title", None)
    if isinstance(step, Compute):
        words = f"worked out: {step.result or step.function}"
    elif isinstance(step, Call):
        words = library.trees[step.tree].title
    return minutes, _short(words or step.common.why or "")


def _came(
    outcome: Outcome, library: Library, fault: Fault | None, verdict: str, complaint: str
) -> Iterator[str]:
    step = library.trees[outcome.case.tree].steps.get(outcome.end)
    said = step.title if isinstance(step, Finding) else step.finding if isinstance(step, Stop) else None
    if outcome.kind == "open":
        said = f"no finding{f', stop page {outcome.page}' if outcome.page else ''}"
    yield f"ends at {outcome.end}: {said or outcome.kind.replace('_', ' ')}"
    right = f" (right is {' or '.join(fault.right(complaint)) or 'another complaint'})" if fault else ""
    yield f"verdict: {verdict}{right}"
    yield f"minutes up to there: {outcome.minutes:.0f}, readings: {outcome.readings}"
    if outcome.condemns:
        yield f"part condemned: {outcome.condemns}"
    named = cause_named(outcome, fault)
    if named is not None:
        wanted = (fault.cause if fault else None) or "none"
        yield f"causes found: {', '.join(outcome.causes) or 'none'} (right is {wanted})"
    if outcome.proof:
        yield f"proof of repair: {outcome.proof.replace('_', ' ')}"
    for words in outcome.left:
        yield f"still wrong in the house: {words}"
    for words in outcome.undone:
        yield f"could not be read or done: {words}"
    for words in outcome.mishaps:
        yield f"harm done: {words}"


def _short(words: object) -> str:
    return " ".join(str(words).split())
