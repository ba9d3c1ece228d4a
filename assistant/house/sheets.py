"""What is asked around the walk (house.yaml) and the plan for a house left without heat (cautions.yaml)."""

from __future__ import annotations

from fractions import Fraction

from assistant.house.desk import Desk
from assistant.house.fields import Form, one_text, spoken
from assistant.house.model import MARKS, Known, Question, Sheet, Tonight
from assistant.house.numbers import number
from assistant.house.quantity_fields import quantity, unit_for
from assistant.house.reader import Fields
from assistant.quantity.kind import KINDS
from assistant.quantity.units import exact_si

SHEETS = ("triage", "before", "unit", "settings", "order", "healthy", "outlook", "tonight")
"""The sheets that the program has a page for."""
MOST_SPREAD = 100


def sheets(section: Fields | None, desk: Desk) -> dict[str, Sheet]:
    """`sheets:`, each a title, a mark and its questions in the order of the page."""

    def build(name: str, form: Form) -> Sheet | None:
        if name not in SHEETS:
            known = ", ".join(SHEETS)
            desk.problems.add(
                form.place(), "name", f"there is no page for a sheet '{name}'; write one of {known}"
            )
        title = form.words("title") or spoken(name)
        mark = desk.one_of(form.text("mark", need=True), MARKS, "a mark")
        say = form.words("say") or ""
        questions = desk.forms(form.fields("ask", need=True), "question", lambda n, f: _question(n, f, desk))
        return Sheet(name, title, say, questions, mark, form.place()) if mark else None

    return desk.forms(section, "sheet", build)


def _question(name: str, form: Form, desk: Desk) -> Question:
    words = form.words("words", need=True) or spoken(name)
    hint = form.words("hint") or ""
    choices = tuple(text.value for text in form.texts("choices"))
    out: dict[str, str] = {}
    leave = form.fields("leave")
    for answer, node in leave.entries.items() if leave else ():
        place = leave.keys[answer]
        page = desk.known(
            one_text(node, f"the stop page of '{answer[:40]}'", desk.problems), "stops", "stop page"
        )
        if choices and answer not in choices:
            desk.problems.add(place, "name", f"'{answer[:40]}' is no choice of this question")
        elif page:
            out[answer] = page
    kind = unit = None
    over = page_over = None
    at: tuple[str, ...] = ()
    if form.has("quantity"):
        kind = quantity(form, desk)
        unit = unit_for(form, kind, desk)
        at = tuple(p for t in form.texts("at") if (p := desk.known(t, "points", "point")))
        limit = number(form.get("over"), "'over'", desk.problems)
        page_over = desk.known(form.text("over_page", need=limit is not None), "stops", "stop page")
        over = float(exact_si(limit, unit)) if limit is not None and unit else None
    return Question(name, words, hint, choices, out, kind, unit, at, over, page_over, form.place())


def known(section: Fields | None, desk: Desk) -> dict[str, Known]:
    """`baseline:`, the readings of a visit to a healthy unit, in the order to take them."""

    def build(name: str, form: Form) -> Known | None:
        words = form.words("words", need=True)
        kind = quantity(form, desk)
        unit = unit_for(form, kind, desk)
        at = tuple(p for t in form.texts("at", need=True) if (p := desk.known(t, "points", "point")))
        hint = form.words("hint") or ""
        caution = tuple(
            c for t in form.texts("caution") if (c := desk.known(t, "cautions", "caution")) is not None
        )
        if words is None or kind is None or unit is None or not at:
            return None
        return Known(name, words, kind, unit, at, hint, caution, form.place())

    return desk.forms(section, "reading of a healthy unit", build)


def spreads(section: Fields | None, desk: Desk) -> tuple[dict[str, float], str]:
    """`spread:`, by how much a healthy unit's reading may differ another day: quantity -> share of it, and
    the mark."""
    if section is None:
        return {}, ""
    form = Form(section, "'spread'", desk.problems)
    mark = desk.one_of(form.text("mark", need=True), MARKS, "a mark") or ""
    found: dict[str, float] = {}
    for name in section.entries:
        if name == "mark":
            continue
        value = number(form.get(name), f"the spread of {name}", desk.problems)
        if name not in KINDS:
            desk.problems.add(section.keys[name], "name", f"'{name[:40]}' is no quantity")
        elif value is not None and not 0 < value <= MOST_SPREAD:
            desk.problems.add(
                section.keys[name], "number", f"a spread is a percentage from 0 to {MOST_SPREAD}"
            )
        elif value is not None:
            found[name] = float(value / Fraction(100))
    form.close()
    return found, mark


MARKED = ("parts", "baseline")
"""The sections of house.yaml whose facts carry one mark for all of them."""


def marks(section: Fields | None, desk: Desk) -> dict[str, str]:
    """`marks:`, section -> how well its facts are known."""
    found = {}
    for name, node in desk.each(section, "mark"):
        if name not in MARKED:
            known = ", ".join(MARKED)
            desk.problems.add(section.keys[name], "name", f"'{name[:40]}' carries no mark here, only {known}")
            continue
        mark = desk.one_of(one_text(node, f"the mark of {name}", desk.problems), MARKS, "a mark")
        if mark:
            found[name] = mark
    return found


def tonight(section: Fields | None, desk: Desk) -> Tonight | None:
    """`tonight:`, what to do in a house that is left without heat."""
    if section is None:
        return None
    form = Form(section, "'tonight'", desk.problems)
    title = form.words("title", need=True)
    mark = desk.one_of(form.text("mark", need=True), MARKS, "a mark")
    parts = {
        name: tuple(t.value for t in form.texts(name, need=True)) for name in ("freeze", "heat", "people")
    }
    form.close()
    return Tonight(title, mark=mark, **parts) if title and mark else None
