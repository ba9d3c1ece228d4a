"""What is written down around the walk: sheets, how it is left, recommendations. None of it is a finding.

An answer of a sheet after which everybody leaves stops the work at once, as a hazard does.
"""

from __future__ import annotations

from dataclasses import replace

from assistant.house.model import Question, Sheet
from assistant.quantity.entry import Blank, Understood, understand
from assistant.quantity.kind import KINDS
from assistant.walk.cleared import said_cleared
from assistant.walk.event import Advised, AsLeft, Filled, PutDown, Typed
from assistant.walk.given import put_down
from assistant.walk.path import stopped
from assistant.walk.state import BadAnswer, Visit

ANSWERS = ("", "accepted", "declined", "thinks about it")
TOP_ANSWERED = 2000
"""Characters of one line: more is pasted by mistake."""


def filled(visit: Visit, event: Filled) -> Visit:
    """The visit with these answers. Numbers with points count as readings put down. Raises BadAnswer."""
    sheet = visit.vocabulary.sheets.get(event.sheet)
    if sheet is None:
        raise BadAnswer(f"The trees of this visit have no sheet '{event.sheet}'.")
    page = None
    for name, text in event.answers.items():
        question = sheet.questions.get(name)
        if question is None:
            raise BadAnswer(f"'{name}' is not asked on the sheet '{sheet.title}'.")
        if trouble := trouble_with(question, text):
            raise BadAnswer(f"{question.words}: {trouble}")
        page = page or leads_out(question, text)
        if question.at and question.kind and question.unit and text.strip():
            typed = typed_in(question.kind, question.unit, text)
            visit = put_down(visit, PutDown(event.at, question.kind, question.at, typed))
    known = {name: text for name, text in event.answers.items() if text.strip()}
    visit = replace(
        visit, sheets={**visit.sheets, event.sheet: {**visit.sheets.get(event.sheet, {}), **known}}
    )
    return stopped(visit, page) if page else visit


def trouble_with(question: Question, text: str) -> str:
    """Why an answer can't be taken, in a sentence; empty where it can, or nothing was written."""
    if not text.strip():
        return ""
    if len(text) > TOP_ANSWERED:
        return f"that is longer than {TOP_ANSWERED} characters; write the rest as a note."
    if question.choices and text not in question.choices:
        return f"'{text[:40]}' is not one of: {', '.join(question.choices)}."
    if question.kind and question.unit:
        got = understand(text, question.kind, question.unit)
        if not isinstance(got, Understood):
            return "write the number." if isinstance(got, Blank) else got.message
    return ""


def leads_out(question: Question, text: str) -> str | None:
    """The stop page that this answer leads to, or None."""
    if text in question.leave:
        return question.leave[text]
    if question.over is not None and question.kind and question.unit:
        got = understand(text, question.kind, question.unit)
        if isinstance(got, Understood) and got.interval.hi > question.over:
            return question.over_page
    return None


def unanswered(sheet: Sheet, answers: dict[str, str]) -> tuple[str, ...]:
    """The questions of a sheet that nobody answered, in their words."""
    return tuple(q.words for name, q in sheet.questions.items() if not answers.get(name, "").strip())


def left_so(visit: Visit, event: AsLeft) -> Visit:
    """How it is left; what was said before and not said again stays."""
    before = visit.as_left
    seen = {**(before.seen if before else {}), **event.seen}
    photos = (before.photos if before else ()) + event.photos
    return replace(visit, as_left=AsLeft(event.at, seen, tuple(dict.fromkeys(photos))))


def advised(visit: Visit, event: Advised) -> Visit:
    """A recommendation, or the answer to one. Raises BadAnswer where it says nothing or has no reason."""
    if not event.what.strip():
        raise BadAnswer("Say what you recommend.")
    if not event.why.strip():
        raise BadAnswer("Say why: a recommendation without a reason is not one.")
    if event.answer not in ANSWERS:
        raise BadAnswer(f"'{event.answer}' is not one of: {', '.join(ANSWERS[1:])}.")
    rest = tuple(each for each in visit.advice if each.what != event.what)
    return replace(visit, advice=(*rest, event))


def typed_in(kind: str, unit: str, text: str) -> Typed:
    """As typed in a page's own unit: readings put down are understood in the quantity's first one."""
    plain = understand(text, kind, KINDS[kind].units[0])
    own = understand(text, kind, unit)
    same = isinstance(plain, Understood) and isinstance(own, Understood) and plain.interval == own.interval
    return Typed(text if same else f"{text} {unit}")


def sent_out(visit: Visit) -> list[str]:
    """What was answered on the telephone that sends everybody out, in a sentence each: whoever drives there
    must know it before the door.
    """
    sheet = visit.vocabulary.sheets.get("triage")
    said = visit.sheets.get("triage", {})
    if sheet is None:
        return []
    out = []
    after = f" Cleared since, by {cleared}." if (cleared := said_cleared(visit)) else ""
    for name, question in sheet.questions.items():
        page = visit.vocabulary.stops.get(leads_out(question, said.get(name, "")) or "")
        if page is not None:
            asked = f"On the telephone: {question.words} {said[name]}."
            out.append(f"{asked} {page.title} Ask before you go in.{after}")
    return out
