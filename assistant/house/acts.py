"""Acts, conditions, parts, hazards and complaints of house.yaml."""

from __future__ import annotations

from pathlib import PurePosixPath

from assistant.house.around import cautions_of, needed, words_of
from assistant.house.desk import Desk, ring
from assistant.house.fields import NAME, Form, one_text, spoken, text_items
from assistant.house.model import Act, Complaint, Part, Vocabulary
from assistant.house.reader import Fields

STATES = ("off", "live")
"""What an act can make of a circuit; only a proof makes it dead."""
_OWN_FIELDS = (
    "say", "undo", "fits", "counts", "needs", "opens", "plate", "caution", "words", "sees", "good", "stop",
    "settings", "rests", "warns",
)  # fmt: skip


def acts(section: Fields | None, desk: Desk) -> dict[str, Act]:
    """`acts:`, each with what it sets, needs and is undone by."""
    circuits = desk.names.get("circuits") or ()
    for circuit in circuits:
        if circuit in _OWN_FIELDS:
            desk.problems.add(
                section.place if section else desk.names["circuits"][circuit],
                "name",
                f"a circuit can't be named '{circuit}': acts have a field of that name",
            )

    def build(name: str, form: Form) -> Act | None:
        say = form.words("say", need=True)
        form.may_have(circuits)
        sets = {}
        for circuit in circuits:
            if circuit not in _OWN_FIELDS and form.has(circuit):
                state = desk.one_of(
                    form.text(circuit), STATES, f"the state of circuit '{circuit}' after an act"
                )
                if state:
                    sets[circuit] = state
        undo = desk.known(form.text("undo"), "acts", "act")
        fits = desk.known(form.text("fits"), "parts", "part")
        counts = form.text("counts")
        if counts and not NAME.fullmatch(counts.value):
            desk.problems.add(
                counts.place,
                "name",
                f"'{counts.value[:40]}' can't name a tally; write one word such as reset",
            )
        needs = needed(form, desk)
        opens = desk.known(form.text("opens"), "openings", "opening")
        known = (desk.known(text, "plate", "plate value") for text in form.texts("plate", single=True))
        anew = tuple(value for value in known if value)
        tally = counts.value if counts else None
        caution, words = cautions_of(form, desk), words_of(form)
        warned = (desk.known(text, "cautions", "caution") for text in form.texts("warns", single=True))
        return Act(
            name,
            say or "",
            sets,
            undo,
            fits,
            tally,
            form.place(),
            needs,
            opens,
            anew,
            caution,
            words,
            *_shown_by(name, form, desk),
            tuple(text.value for text in form.texts("settings", single=True)),
            form.yes("rests"),
            tuple(caution for caution in warned if caution),
        )

    built = desk.forms(section, "act", build)
    for name, act in built.items():
        circle = ring(name, lambda at: built[at].undo if at in built else None)
        if circle and name == min(circle):
            desk.problems.add(act.place, "circle", f"acts undo each other in a circle: {' -> '.join(circle)}")
    return built


def _shown_by(name: str, form: Form, desk: Desk) -> tuple[str | None, str | None, str | None]:
    """What an act shows when it is done, which of its values is good, and the stop page of the others."""
    sees = desk.known(form.text("sees"), "seen", "thing")
    good = form.text("good", need=sees is not None)
    stop = desk.known(form.text("stop", need=sees is not None), "stops", "stop page")
    if good is not None and not form.has("sees"):
        desk.problems.add(good.place, "missing", f"act '{name}' has a good result but no 'sees'")
    return sees, good.value if good else None, stop


def agree(vocabulary: Vocabulary, desk: Desk) -> None:
    """Notes what acts name and the rest of the house does not have: results, settings."""
    sheet = vocabulary.sheets.get("settings")
    for act in vocabulary.acts.values():
        thing = vocabulary.seen.get(act.sees or "")
        if thing is not None and act.good and act.good not in thing.values:
            known = ", ".join(thing.values)
            desk.problems.add(act.place, "name", f"'{act.good[:40]}' is none of: {known}")
        for name in act.settings:
            if sheet is None or name not in sheet.questions:
                desk.problems.add(act.place, "name", f"'{name[:40]}' is asked on no sheet of settings")


def conditions(section: Fields | None, desk: Desk) -> dict[str, tuple[str, ...]]:
    """Condition -> the readings that show it normal."""
    return {
        name: tuple(text.value for text in text_items(node, f"condition '{name}'", desk.problems))
        for name, node in desk.each(section, "condition")
    }


def parts(section: Fields | None, desk: Desk) -> dict[str, Part]:
    """`parts:` that can be condemned."""

    def build(name: str, form: Form) -> Part:
        title = form.words("title") or spoken(name)
        safety = form.yes("safety")
        guards = desk.known(form.text("guards"), "conditions", "condition")
        costs = form.yes("costs", default=True)
        if safety and not form.has("guards"):
            desk.problems.add(
                form.place(),
                "missing",
                f"part '{name}' is a safety, so it needs 'guards': the condition "
                "that must be shown normal before it is condemned",
            )
        matches = tuple(text.value for text in form.texts("matches"))
        plate = tuple(p for t in form.texts("plate") if (p := desk.known(t, "plate", "plate value")))
        together = tuple(text.value for text in form.texts("together"))
        dies_of = tuple(text.value for text in form.texts("dies_of", single=True))
        return Part(name, title, safety, guards, form.place(), costs, matches, plate, together, dies_of)

    return desk.forms(section, "part", build)


def hazards(section: Fields | None, desk: Desk) -> dict[str, str]:
    """Hazard -> its stop page."""
    pages = {}
    for name, node in desk.each(section, "hazard"):
        page = desk.known(one_text(node, f"the stop page of '{name}'", desk.problems), "stops", "stop page")
        if page:
            pages[name] = page
    return pages


def complaints(section: Fields | None, desk: Desk) -> dict[str, Complaint]:
    """`complaints:` as the customer says them."""

    def build(name: str, form: Form) -> Complaint:
        title = form.words("title") or spoken(name)
        words = form.words("words", need=True)
        tree = form.text("tree")
        stem = None
        if tree is not None:
            stem = PurePosixPath(tree.value).name.removesuffix(".yaml")
            if not NAME.fullmatch(stem) or tree.value not in (stem, f"{stem}.yaml"):
                desk.problems.add(
                    tree.place,
                    "name",
                    f"'{tree.value[:60]}' is no tree file; write its name without "
                    "folders, such as no_heat.yaml",
                )
        return Complaint(name, title, words or title, stem, form.place())

    return desk.forms(section, "complaint", build)
