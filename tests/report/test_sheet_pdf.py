"""A sheet on one page of paper, whatever it holds; and the row that the report has for it."""

from __future__ import annotations

import pytest
from pdf_reader import pages, title
from told import Clock

from assistant.report.sheet_pdf import PrintedSheet, to_pdf
from assistant.trade.entry import example_text, range_text
from assistant.trade.plotted import plot_of
from assistant.trade.registry import REGISTRY
from assistant.trade.sheet import work_out
from assistant.walk.event import WorkedOut


def sheet(name: str, times: int = 1) -> PrintedSheet:
    entry = REGISTRY[name]
    texts = {a.name: example_text(a).partition("=")[2] for a in entry.arguments}
    worked = work_out(entry, texts)
    return PrintedSheet(
        entry.title,
        [(f"{a.title}: {a.words}", texts[a.name], range_text(a)) for a in entry.arguments] * times,
        [(r.words, r.text) for r in worked.results],
        worked.formula,
        str(entry.source),
        "Worked out by hand",
        "For qualified persons.",
        plot_of(name, worked.values, {r.key: r.value for r in worked.results}),
    )


@pytest.mark.parametrize("paper", ["letter", "a4"])
@pytest.mark.parametrize("name", ["heat_rise", "duct_system", "breaker_trip_window", "zone_survey"])
def test_one_page_with_everything_on_it(name, paper):
    """Formula, numbers, source and foot, none of it outside the paper."""
    made = sheet(name)
    data = to_pdf(made, paper)
    (page,) = pages(data)

    assert title(data) == made.title
    assert page.width == pytest.approx(612 if paper == "letter" else 595, abs=1)
    text = page.text.replace("\\n", " ")
    for words in (made.title[:20], made.results[0][0], "For qualified persons.", made.source[:20]):
        assert words.split()[0] in text
    assert all(0 <= x <= page.width and 0 <= y <= page.height for x, y in page.spots)


def test_more_than_a_page_can_hold_stays_one_page():
    """The smallest type, one page: nothing raises."""
    assert len(pages(to_pdf(sheet("duct_system", times=6)))) == 1


def test_the_report_tells_what_was_worked_out():
    """What, the result, the formula with the numbers and where it comes from."""
    clock = Clock()
    formula = "heat rise = supply - return air = 120 - 68 = 52 °F"
    clock.send(
        WorkedOut("", "heat_rise", {"supply": "120 F"}, "heat rise 52 °F", formula, "the plate (read)")
    )
    told = clock.story().rows[-1]

    assert told.asked == "Worked out by hand: Temperature rise through the furnace"
    assert told.answer == f"heat rise 52 °F – {formula}. Source: the plate (read)."
