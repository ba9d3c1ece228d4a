"""The PDF, read back: every text is on a page, inside the margins, with the fingerprint and number of its
page."""

from __future__ import annotations

import pytest

from assistant.plain import one_line
from assistant.report.outline import foot, outline
from assistant.report.pdf import to_pdf
from assistant.report.photo import LONGEST, shrink
from assistant.report.story import Photo
from assistant.walk.event import AsFound, Note, Signed
from tests.report.pdf_reader import images, pages, squeezed, title
from tests.report.told import Clock, repaired

# ISO 216 A4 is 210 x 297 mm; US Letter is 8.5 x 11 in (ANSI Y14.1); 72 points to the inch
SIZES = {"letter": (612, 792), "a4": (210 / 25.4 * 72, 297 / 25.4 * 72)}


def texts(block):
    """Every text of a block."""
    for name in ("text", "caption"):
        if hasattr(block, name):
            yield getattr(block, name)
    for item in getattr(block, "items", ()):
        yield from (item,) if isinstance(item, str) else item
    yield from getattr(block, "heads", ())
    for row in getattr(block, "rows", ()):
        for cell in row:
            yield from (cell.text, *cell.small)


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_every_text_is_on_a_page_of_the_right_size(qapp, paper):
    story = repaired().story()
    found = pages(to_pdf(story, paper))
    assert all((page.width, page.height) == pytest.approx(SIZES[paper], abs=0.5) for page in found)
    whole = squeezed("".join(page.text for page in found))
    for block in outline(story):
        for text in texts(block):
            assert squeezed(text) in whole, text


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_each_page_has_the_fingerprint_and_its_number_and_keeps_its_margins(qapp, paper):
    story = repaired().story()
    found = pages(to_pdf(story, paper))
    assert len(found) > 2
    for number, page in enumerate(found, start=1):
        assert squeezed(foot(story)) in squeezed(page.text)
        assert f"Page{number}of{len(found)}" in squeezed(page.text)
        assert page.fonts
        for x, y in page.spots:
            assert 50 <= x <= page.width - 50
            assert 40 <= y <= page.height - 20


def test_the_customers_part_and_the_trail_begin_on_pages_of_their_own(qapp):
    found = pages(to_pdf(repaired().story()))
    assert found[0].text.startswith("Your heating: what we found")
    assert "Voltage at the element" in found[0].text
    assert squeezed("What is still to do") in squeezed(found[0].text)
    assert [page.text.startswith("The trail") for page in found].count(True) == 1


def test_a_table_over_pages_repeats_its_head(qapp):
    clock = Clock()
    for number in range(120):
        clock.send(Note("", f"note {number}"))
    found = pages(to_pdf(clock.story()))
    with_notes = [page for page in found if "note" in page.text]
    assert len(with_notes) > 2
    assert all("AskedAnswerVerdictandlimit" in squeezed(page.text) for page in with_notes)
    whole = squeezed("".join(page.text for page in found))
    assert all(f"note{number}" in whole for number in range(120))


def test_a_heading_is_never_the_last_thing_on_a_page(qapp):
    """However much stands before it."""
    for notes in range(0, 40, 3):
        clock = Clock()
        for number in range(notes):
            clock.send(Note("", f"note {number}"))
        for page in pages(to_pdf(clock.send(Note("", "the plate", photo="ab" * 32)).story())):
            body = page.text.partition("Fingerprint 0123")[0].rstrip()
            assert not body.endswith(
                ("Step by step", "Photos", "Verdict and limit", "Complaints", "(SHA-256)")
            )


def test_a_text_longer_than_a_page_goes_over_pages_and_nothing_is_lost(qapp):
    words = " ".join(f"word{number}" for number in range(2000))
    found = pages(to_pdf(Clock().send(Note("", words)).story()))
    whole = squeezed("".join(page.text for page in found))
    assert all(f"word{number}" in whole for number in range(2000))
    for page in found:
        assert all(y <= page.height - 20 for _, y in page.spots)


def test_a_text_that_nobody_reads_is_cut_and_says_where_the_rest_stands(qapp):
    found = pages(to_pdf(Clock().send(Note("", "y" * 100_000)).story()))
    assert "therestof100000charactersstandsinthetrail" in squeezed("".join(page.text for page in found))


@pytest.mark.parametrize(
    "words", ["", "\x00", "x" * 3000, "\u05d0\u05d1\u05d2 12 V", "\u202e", "\ud800", "a\nb", "\U0001f525"]
)
def test_any_text_can_be_drawn(qapp, words):
    clock = Clock(("no_heat", words or "cold")).send(Note("", words))
    found = pages(to_pdf(clock.story(person={"name": words})))
    assert found
    for page in found:
        assert all(x <= page.width - 50 for x, _ in page.spots)
    if words.isascii() and words.isprintable():
        assert squeezed(words) in squeezed("".join(page.text for page in found))


def test_signs_of_the_trade_are_in_the_shipped_font(qapp):
    signs = (
        "118.4 \u00b0F \u2126 \u03a9 \u00b5A \u0394 \u2212 \u2264 \u00b1 \u00bd \u2013 \u2713 \u2610 \u201c"
    )
    text = "".join(page.text for page in pages(to_pdf(Clock().send(Note("", signs)).story())))
    for sign in signs:
        assert sign in text or one_line(sign) == ""


def photo_bytes(qapp, width, height, kind="JPEG"):
    from PySide6.QtCore import QBuffer
    from PySide6.QtGui import QColor, QImage

    image = QImage(width, height, QImage.Format.Format_RGB32)
    image.fill(QColor("#7799bb"))
    image.setText("Description", "12 Sample Street")
    buffer = QBuffer()
    buffer.open(QBuffer.OpenModeFlag.WriteOnly)
    image.save(buffer, kind)
    return bytes(buffer.data())


@pytest.mark.parametrize("kind", ["JPEG", "PNG"])
def test_a_photo_comes_small_and_without_what_the_camera_wrote(qapp, kind):
    data = photo_bytes(qapp, 3000, 2000, kind)
    assert b"Sample Street" in data
    small = shrink(Photo("ab" * 32, "", "", data))
    from PySide6.QtGui import QImage

    made = QImage.fromData(small)
    assert (made.width(), made.height()) == (LONGEST, 666)
    assert b"Sample" not in small


def test_a_photo_is_drawn_with_its_words(qapp):
    clock = Clock().send(AsFound("", {}, ("ab" * 32,))).send(Note("", "the burnt plug", photo="cd" * 32))
    data = {"ab" * 32: photo_bytes(qapp, 1600, 1200), "cd" * 32: photo_bytes(qapp, 900, 2500)}
    made = to_pdf(clock.story(photos=data))
    found = pages(made)
    assert sum(page.images for page in found) == 2
    assert len(images(made)) == 2
    assert b"Sample" not in made
    where = next(page for page in found if "theburntplug\u00b7" in squeezed(page.text))
    assert where.images


@pytest.mark.qt_log_ignore("JPEG")
@pytest.mark.parametrize(
    "data", [b"", b"not a picture", b"\xff\xd8\xff\xe0" + b"\0" * 200, b"\x89PNG\r\n\x1a\n" + b"x" * 50]
)
def test_a_broken_photo_is_said_and_breaks_nothing(qapp, data):
    clock = Clock().send(Note("", "the plate", photo="ab" * 32))
    text = squeezed("".join(page.text for page in pages(to_pdf(clock.story(photos={"ab" * 32: data})))))
    assert "nopicturethatcanbeshown" in text


def test_the_title_names_the_visit_and_nobody(qapp):
    made = to_pdf(repaired().story())
    assert title(made) == "Heating visit of 2026-11-25T09:01:30-05:00"
    assert b"Mx Example" not in made


def test_three_hundred_rows_are_all_there(qapp):
    clock = Clock()
    for number in range(300):
        clock.send(Note("", f"A note of usual length about the thing that was seen, number {number}"))
    story = clock.send(Signed("", "A. Technician")).story()
    text = squeezed("".join(page.text for page in pages(to_pdf(story))))
    assert [n for n in range(300) if squeezed(f"thing that was seen, number {n}") not in text] == []


def test_the_customers_part_of_a_pdf_ends_with_lines_to_sign_on(qapp):
    made = pages(to_pdf(repaired().story()))
    trail = next(i for i, page in enumerate(made) if "Thetrail:" in squeezed(page.text))
    text = squeezed(made[trail - 1].text)
    assert squeezed("Customer's signature") in text
    assert text.index(squeezed("Customer's signature")) > text.index(squeezed("What is still to do"))
    assert not any(squeezed("Customer's signature") in squeezed(page.text) for page in made[trail:])


def test_lines_to_sign_on_never_stand_alone_on_a_page(qapp):
    """However much stands before them: a signature under nothing signs nothing."""
    for lines in range(16, 52, 2):
        person = {f"line {number}": f"said {number}" for number in range(lines)}
        made = pages(to_pdf(Clock().saw("still").story(person=person)))
        (text,) = [t for page in made if "Customer'ssignature" in (t := squeezed(page.text))]
        assert text.index("Whatisstilltodo") < text.index("Customer'ssignature"), lines
