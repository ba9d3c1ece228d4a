"""Names that are markup, formulas, right to left, emoji, half characters or endless, in every file that the
program writes for somebody else: whole, readable, and run by nothing.
"""

from __future__ import annotations

import csv
import io
import json
from dataclasses import replace
from functools import cache
from xml.etree import ElementTree as ET

import pytest

from assistant.drill.practice.record import Done
from assistant.drill.practice.record import to_csv as drills_csv
from assistant.past.calls import FindingCount, NeverChanged, StepCost, as_csv
from assistant.plain import harmless, one_line
from assistant.report import invoice
from assistant.report.chart_svg import to_svg
from assistant.report.csv import HEADS, to_csv
from assistant.report.html import to_html
from assistant.report.outline import foot
from assistant.report.pdf import to_pdf
from assistant.report.sheet_pdf import PrintedSheet
from assistant.report.sheet_pdf import to_pdf as worked_out_pdf
from assistant.report.survey_form import write_form
from assistant.report.tell import tell
from assistant.report.text import WIDTH, to_text
from assistant.tree.chart.marks import Chart, Words
from assistant.tree.chart.marks import Sheet as ChartSheet
from assistant.walk.event import Advised, AsFound, AsLeft, Filled, Note, Opened, Paused
from assistant.walk.survey_sheet import Sheet
from assistant.walk.visit import fold
from tests.played import at, demo_until, play
from tests.report.pdf_reader import pages, squeezed
from tests.report.test_formats import ALLOWED, Reader

AWKWARD = {
    "markup": "<script>alert('x')</script>\"><img src=x onerror=alert(1)>",
    "formula": "=cmd|'/C calc'!A0",
    "formula after a tab": "\t=HYPERLINK(1)",
    "right to left": "\u202e021 V\u202c \u05e9\u05dc\u05d5\u05dd \u0645\u0631\u062d\u0628\u0627",
    "emoji": "\U0001f525 \U0001f468\u200d\U0001f469\u200d\U0001f467 Flat 3",
    "half a character": "\ud83d half \udd25",
    "control": "a\x00b\x1b[31mc\r\nd\u2028e",
    "endless word": "x" * 10_000,
    "endless words": "word " * 2_000,
}
MOST = 2_000
"""Letters that a line of a sheet takes; more is refused with a sentence."""
words_of = pytest.mark.parametrize("words", AWKWARD.values(), ids=AWKWARD)


@cache
def visit_with(words):
    """A visit up to its repair, the words wherever somebody can type some."""
    visit = play(demo_until("- act.set_igniter"))
    opened = replace(visit.events[0], complaints=(("no_heat", words), ("zone_spillover", words)))
    assert isinstance(opened, Opened)
    more = [
        Note(at(200), words),
        AsFound(at(201), {"thermostat": words, "fan": words}),
        AsLeft(at(202), {"thermostat": words}),
        Filled(at(203), "unit", {"make": words[:MOST], "serial": words[:MOST]}),
        Filled(at(204), "order", {"number": words[:MOST], "supplier": words[:MOST]}),
        Filled(at(205), "triage", {"most": words[:MOST], "cold": words[:MOST]}),
        Advised(at(206), words, words, words, "declined"),
        Paused(at(207), words),
    ]
    for event in more:
        visit = fold(visit, event)
    return replace(visit, events=(opened, *visit.events[1:]))


@cache
def story_with(words):
    visit = visit_with(words)
    return tell(list(visit.events), visit.library, "0123456789abcdef" * 4, {"name": words, "address": words})


def table(text, columns=None):
    """The rows of a CSV text; no cell is one that a spreadsheet works out."""
    rows = list(csv.reader(io.StringIO(text)))
    assert {len(row) for row in rows} == {columns or len(rows[0])}
    for cell in (cell for row in rows[1:] for cell in row):
        assert "\n" not in cell and "\r" not in cell and "\0" not in cell
        assert harmless(cell) == cell, cell[:40]
    return rows


@words_of
def test_pdf(qapp, words):
    made = pages(to_pdf(story_with(words)))
    for page in made:
        assert squeezed(foot(story_with(words))) in squeezed(page.text)
        assert all(50 <= x <= page.width - 50 and 40 <= y <= page.height - 20 for x, y in page.spots)
    if words.isascii():
        whole = squeezed("".join(page.text for page in made))
        assert squeezed(one_line(words))[:500] in whole


@words_of
def test_html(words):
    read = Reader(to_html(story_with(words)))
    assert read.tags <= ALLOWED and not [name for name in read.attributes if name.startswith("on")]
    assert read.open == []
    assert one_line(words) in "".join(read.texts)


@words_of
def test_text(words):
    text = to_text(story_with(words))
    assert all(len(line) <= WIDTH for line in text.splitlines())
    assert not any(ord(sign) < 32 and sign != "\n" for sign in text)
    assert squeezed(one_line(words)) in squeezed(text)
    text.encode("utf-8")


@words_of
def test_csv(words):
    text = to_csv(story_with(words))
    *_, note = (row for row in table(text, len(HEADS)) if row[2] == "note")
    assert note[HEADS.index("answer")] == harmless(words)
    text.encode("utf-8")


@words_of
def test_parts_and_minutes(words):
    visit = visit_with(words)
    rows = table(invoice.to_csv(visit, list(visit.events), words), len(invoice.HEADS))
    assert rows[1][1] == harmless(words)
    bill = json.loads(invoice.to_json(visit, list(visit.events), words))
    assert bill["unit"]["serial"] == bill["order"]["number"] == words[:MOST]
    assert bill["visit"] == words


@words_of
def test_counts(words):
    rows = [FindingCount(words, words, words, 1, 1, 0, 0, 0)]
    assert table(as_csv(rows))[1][2] == harmless(words)
    assert table(as_csv([StepCost(words, words, 5, 1.0, 5.0)]))[1][1] == harmless(words)
    assert table(as_csv([NeverChanged(words, words, 5, words, 1.0)]))[1][3] == harmless(words)


@words_of
def test_drills(words):
    done = Done(words, at(0), words, words, words, words, True, True, None, 3, 2, 0, 0, 5.0, 6.0, words)
    assert table(drills_csv([done]))[1][1] == harmless(words)


@words_of
def test_survey_form(qapp, tmp_path, words):
    file = tmp_path / "form.pdf"
    write_form(file, Sheet(thermostats=[words, "den"], registers=[words, "hall"], drawn={words: "den"}))
    (page,) = pages(file.read_bytes())
    assert all(0 <= x <= page.width for x, _ in page.spots)
    assert "hall" in page.text


@words_of
def test_sheet_of_the_workbench(qapp, words):
    sheet = PrintedSheet(words, [(words, words, words)], [(words, words)], words, words, words, words)
    (page,) = pages(worked_out_pdf(sheet))
    assert page.fonts


@words_of
def test_diagram_of_a_tree(words):
    chart = Chart(words, 200.0, 200.0, (ChartSheet(1, [Words(1.0, 1.0, words, 8.0)]),))
    root = ET.fromstring(to_svg(chart).encode("utf-8"))
    texts = [element.text for element in root.iter() if element.tag.endswith("text")]
    assert texts == [one_line(words)]
