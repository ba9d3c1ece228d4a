"""Cautions and stop pages (cautions.yaml) and sources (sources.yaml)."""

from __future__ import annotations

from assistant.house.desk import Desk
from assistant.house.fields import Form, spoken
from assistant.house.model import MARKS, Caution, Source, StopPage
from assistant.house.reader import Fields
from assistant.quantity.kind import KINDS

SIGNAL_WORDS = ("danger", "warning", "caution", "notice")
"""ANSI Z535.6 and ISO 3864 (from memory), the gravest first."""
MOST_LINES = 3
"""Of a stop page: what can be read from two metres while leaving."""


def cautions(section: Fields | None, desk: Desk) -> dict[str, Caution]:
    """`cautions:` with their signal words."""

    def build(name: str, form: Form) -> Caution | None:
        word = desk.one_of(form.text("word", need=True), SIGNAL_WORDS, "a signal word")
        short, full = form.words("short", need=True), form.words("full", need=True)
        return Caution(name, word, short, full, form.place()) if word and short and full else None

    return desk.forms(section, "caution", build)


def stops(section: Fields | None, desk: Desk) -> dict[str, StopPage]:
    """`stops:`, at most `MOST_LINES` lines each."""

    def build(name: str, form: Form) -> StopPage:
        title = form.words("title") or spoken(name)
        lines = form.texts("lines", need=True)
        also = form.texts("also", single=True)
        no_heat = form.yes("no_heat")
        cleared_by = tuple(text.value for text in form.texts("cleared_by", single=True))
        if len(lines) > MOST_LINES:
            desk.problems.add(
                lines[MOST_LINES].place,
                "value",
                f"stop page '{name}' has {len(lines)} lines; at most "
                f"{MOST_LINES} can be read from two metres, the rest goes into 'also'",
            )
        return StopPage(
            name,
            title,
            tuple(t.value for t in lines),
            tuple(t.value for t in also),
            form.place(),
            no_heat,
            cleared_by,
        )

    return desk.forms(section, "stop page", build)


def sources(section: Fields | None, desk: Desk) -> dict[str, Source]:
    """The sources, at the top of their file, with their marks."""

    def build(name: str, form: Form) -> Source | None:
        title = form.words("title", need=True)
        number, year, where = (form.words(field) or "" for field in ("number", "year", "place"))
        mark = desk.one_of(form.text("mark", need=True), MARKS, "a mark")
        kinds = (desk.one_of(text, KINDS, "a quantity") for text in form.texts("limits", single=True))
        limits = tuple(kind for kind in kinds if kind is not None)
        if title is None or mark is None:
            return None
        return Source(name, title, number, year, where, mark, form.place(), limits)

    return desk.forms(section, "source", build)
