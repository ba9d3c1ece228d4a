"""HTML, text and CSV: hostile texts stay texts."""

from __future__ import annotations

import csv
import io
from html.parser import HTMLParser

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.plain import harmless, one_line
from assistant.report.csv import HEADS, to_csv
from assistant.report.html import escape, to_html
from assistant.report.text import WIDTH, to_text
from assistant.walk.event import Note, Typed
from tests.report.told import FINGERPRINT, Clock, repaired

HOSTILE = [
    "<script>alert(1)</script>",
    '"><img src=x onerror=alert(1)>',
    "</td></table><h1>gone",
    "&lt;b&gt; &amp; 5 < 6",
    "' onmouseover='x",
    "<!-- -->",
    "]]>",
    "=cmd|'/C calc'!A0",
    "\u202e0.021 V\u202c",
    "line\nbreak\ttab\x00nul\x1b[31m",
    "\ud800 half",
    "\u05d0\u05d1 12 V \u0645\u0631\u062d\u0628\u0627",
    "x" * 5000,
]
ALLOWED = {
    "html", "head", "meta", "title", "style", "body", "h1", "h2", "h3", "p", "bdi", "ul", "li", "dl", "dt",
    "dd", "table", "colgroup", "col", "thead", "tbody", "tr", "th", "td", "small", "s", "footer", "figure",
    "img", "figcaption", "div",
}  # fmt: skip


class Reader(HTMLParser):
    """The tags, attributes and texts that a browser's reader sees."""

    def __init__(self, text):
        super().__init__(convert_charrefs=True)
        self.tags, self.attributes, self.texts, self.open = set(), set(), [], []
        self.feed(text)
        self.close()

    def handle_starttag(self, tag, attrs):
        self.tags.add(tag)
        self.attributes |= {name for name, _ in attrs}
        if tag not in ("meta", "col", "img"):
            self.open.append(tag)

    def handle_endtag(self, tag):
        assert self.open.pop() == tag

    def handle_data(self, data):
        if self.open and self.open[-1] != "style":
            self.texts.append(data)

    def handle_comment(self, data):
        raise AssertionError("a comment came in")


def story_with(words):
    """The words wherever a person can type some."""
    clock = Clock(("no_heat", words))
    clock.send(Note("", words))
    clock.saw("still").plate(supply_volts="120")
    clock.typed("118.4", instrument=words)
    return clock.story(person={"name": words, words: "x"}, remarks=[words])


@pytest.mark.parametrize("words", HOSTILE)
def test_html_holds_any_text_as_text(words):
    page = to_html(story_with(words))
    found = Reader(page)
    assert found.open == []
    assert found.tags <= ALLOWED
    assert found.attributes <= {
        "lang", "charset", "colspan", "name", "content", "http-equiv", "class", "style", "scope", "alt",
        "src",
    }  # fmt: skip
    seen = " ".join(found.texts)
    assert seen.count(one_line(words)) >= 4
    page.encode("utf-8")


def test_html_asks_nothing_of_anybody():
    page = to_html(repaired().story())
    for word in ("http:", "https:", "//", "<script", "url(", "@import"):
        assert word not in page
    assert "default-src 'none'" in page


def test_html_keeps_each_text_to_its_own_direction():
    """What was typed stands inside bdi (HTML standard, 4.5.24: text whose direction is set apart from what
    is round it), and marks that turn a line round are left out."""
    words = "\u202e\u05d0 12 V\u202c"
    page = to_html(story_with(words))
    assert "\u202e" not in page
    for start in range(len(page)):
        if page.startswith("\u05d0 12 V", start) and 'alt="' not in page[start - 40 : start]:
            assert (
                page[:start].endswith(("<bdi>", "\u201c", "name: ")) or "<bdi>" in page[start - 200 : start]
            )


@given(st.text(max_size=60))
def test_escaped_text_reads_back_as_it_was(text):
    reader = Reader(f"<p>{escape(text)}</p>")
    assert "".join(reader.texts) == one_line(text)
    assert reader.tags == {"p"}
    # and inside an attribute
    assert Reader(f'<p class="{escape(text)}"></p>').attributes == {"class"}


@given(st.text(max_size=60))
def test_a_line_has_no_control_character(text):
    line = one_line(text)
    assert len(line.splitlines()) <= 1
    assert all(ord(letter) >= 32 and not 0x7F <= ord(letter) < 0xA0 for letter in line)
    assert not set(line) & set("\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069\u200e\u200f\u061c")
    assert one_line(line) == line
    line.encode("utf-8")


@pytest.mark.parametrize("words", HOSTILE)
def test_text_keeps_to_its_width(words):
    page = to_text(story_with(words))
    assert all(len(line) <= WIDTH for line in page.splitlines())
    assert all(line == line.rstrip() for line in page.splitlines())
    assert page.count("Fingerprint") >= 2
    page.encode("utf-8")


@pytest.mark.parametrize("words", HOSTILE)
def test_csv_reads_back_with_every_row(words):
    story = story_with(words)
    rows = list(csv.reader(io.StringIO(to_csv(story), newline="")))
    assert tuple(rows[0]) == HEADS
    assert len(rows) == 1 + sum(max(1, len(row.measured)) for row in story.rows)
    assert all(len(row) == len(HEADS) for row in rows)
    assert all(row[-1] == FINGERPRINT for row in rows[1:])
    note = next(row for row in rows if row[2] == "note")
    assert note[5] == harmless(words)


# OWASP, "CSV Injection" (from memory): cells that begin with = + - @, tab or carriage return are worked out
@pytest.mark.parametrize(
    "formula",
    [
        "=1+1",
        "=cmd|'/C calc'!A0",
        "+cmd()",
        "-2+3+cmd|' /C calc'!A0",
        "@SUM(A1)",
        "\t=1+1",
        "\r=1+1",
        " =1+1",
        "-A1",
        "+1+1",
        "-1-cmd",
        "=HYPERLINK(1)",
    ],
)
def test_a_formula_gets_an_apostrophe(formula):
    assert harmless(formula).startswith("'")


@pytest.mark.parametrize(
    "number", ["-0.15", "-0,15", "+3", "-0.15 in. w.c.", "118.4 V", "-12 \u00b0F", "", "OL", "4.5-6"]
)
def test_a_number_stays_a_number(number):
    assert harmless(number) == number


@given(st.text(alphabet="=+-@\t\r\n 0123456789.,()AZ|!%'", max_size=12))
def test_no_cell_is_worked_out(text):
    cell = harmless(text)
    if cell[:1] in tuple("=+-@\t\r"):
        # only a signed number with a unit at most
        number = cell[1:].replace(",", ".")
        assert cell[0] in "+-"
        assert number[:1].isdigit()
        assert not set(cell[1:]) & set("=+-@()|!'")


def test_a_negative_reading_is_a_number_in_the_csv():
    clock = Clock().send(Note("", "-0.15"))
    assert '"-0.15"' in to_csv(clock.story())


@settings(max_examples=25)
@given(st.text(max_size=200))
def test_any_typed_text_is_told_in_every_format(text):
    story = story_with(text)
    assert story.complaints[0][0] == "No heat"
    assert any(row.kind == "note" and row.answer == text for row in story.rows)
    for page in (to_html(story), to_text(story), to_csv(story)):
        assert page.encode("utf-8").count(b"118.4") >= 1


def test_typed_text_is_told_as_typed():
    clock = Clock().saw("still").plate(supply_volts="120").typed("  118,4 ")
    story = clock.story()
    reading = next(m for row in story.rows for m in row.measured)
    assert reading.typed == "  118,4 "
    assert '"118,4"' in to_csv(story)
    assert Typed("  118,4 ") in [t for e in clock.visit.events for t in getattr(e, "readings", {}).values()]
