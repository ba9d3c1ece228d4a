"""A sheet on one page of paper."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.report.sheet_pdf import PrintedSheet, to_pdf
from assistant.trade.entry import Entry, range_text
from assistant.trade.figure import with_unit as value_with_unit
from assistant.trade.plotted import Plot
from assistant.trade.sheet import Worked
from assistant.trade.systems import SI
from assistant.trail.clock import now
from assistant.walk.bench import with_unit
from assistant.window.page.bench.field import Field
from assistant.window.session import Driver
from assistant.window.words import QUALIFIED, day


def printed(
    entry: Entry,
    fields: Sequence[Field],
    worked: Worked,
    plot: Plot | None,
    system: str,
    driver: Driver | None,
) -> bytes:
    """The PDF's bytes; fields that were left empty and have a usual value are told in one line."""
    rows, usual = [], []
    for field in fields:
        a = field.argument
        text = field.text.strip()
        if text:
            said = text if a.choices or a.kind == "text" else with_unit(text, field.unit, a.many)
            rows.append((f"{a.title}: {a.words}", said, range_text(a)))
        elif a.default not in (None, ()):
            usual.append(f"{a.title} {_usual(field)}")
    at = driver.now() if driver is not None else now()
    about = f"Worked out by hand, {day(at)}"
    if usual:
        rows.append(("left at their usual values", ", ".join(usual), ""))
    results = [(each.words, each.text) for each in worked.results]
    sheet = PrintedSheet(
        entry.title, rows, results, worked.formula, str(entry.source), about, QUALIFIED, plot
    )
    return to_pdf(sheet, "a4" if system == SI else "letter")


def _usual(field: Field) -> str:
    """The value that an empty field stands for, in the unit of its field."""
    a = field.argument
    if a.choices or a.kind == "text":
        return str(a.default)
    values = a.default if a.many else (a.default,)
    return ", ".join(value_with_unit(value, field.unit) for value in values)
