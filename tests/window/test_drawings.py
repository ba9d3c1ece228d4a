"""The base drawings: every point of the vocabulary is an element, and the marks land on it."""

import re

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QImage
from PySide6.QtSvg import QSvgRenderer

from assistant.resources import trees_folder
from assistant.tree.library import read_folder
from assistant.window import drawing, flags, words

LIBRARY = read_folder(trees_folder())
VOCABULARY = LIBRARY.vocabulary
DRAWINGS = sorted({point.drawing for point in VOCABULARY.points.values()})


@pytest.mark.parametrize("name", sorted(VOCABULARY.points))
def test_every_point_is_an_element_of_its_drawing(qapp, name):
    """With bounds of its own, inside the drawing."""
    renderer = QSvgRenderer(str(drawing.folder() / f"{VOCABULARY.points[name].drawing}.svg"))
    assert renderer.elementExists(name)
    box = drawing.bounds(renderer, name)
    assert 4 <= box.width() <= 30 and renderer.viewBoxF().contains(box)


@pytest.mark.parametrize("name", DRAWINGS)
def test_no_two_points_lie_on_each_other(qapp, name):
    """A finger or a flag must tell them apart."""
    renderer = QSvgRenderer(str(drawing.folder() / f"{name}.svg"))
    spots = [
        (point, drawing.bounds(renderer, point).center())
        for point, known in VOCABULARY.points.items()
        if known.drawing == name
    ]
    for index, (one, here) in enumerate(spots):
        for other, there in spots[index + 1 :]:
            assert (here - there).manhattanLength() > 12, f"{one} and {other}"


@pytest.mark.parametrize("name", DRAWINGS)
def test_a_drawing_is_two_inks_and_no_opacity(name):
    """Opacity would be flattened or break a PDF; any other colour would not follow a dark palette."""
    text = drawing.read(name)
    assert "opacity" not in text and "rgba" not in text and "<image" not in text
    assert set(re.findall(r"#[0-9a-fA-F]{3,8}", text)) <= {drawing.INK, drawing.PAPER, drawing.FAINT}


@pytest.mark.parametrize("name", DRAWINGS)
def test_a_drawing_says_in_words_what_it_shows(name):
    """Title and description, for whoever reads the file aloud."""
    assert "<title>" in drawing.read(name) and "<desc>" in drawing.read(name)


def test_the_marks_are_drawn_on_their_points(at):
    """Around each point's middle, pixels of the marking ink."""
    from assistant.window import look

    hand = at("to_volts")
    view = hand.page.picture
    image = view.grab().toImage()
    ink = look.inks(view.palette()).accent
    for point in view.points:
        spot = view.spot(point)
        ring = [
            image.pixelColor(int(spot.x() + dx), int(spot.y() + dy))
            for dx in range(-9, 10)
            for dy in range(-9, 10)
        ]
        assert any(_near(colour, ink) for colour in ring), point


def _near(one, other):
    return all(abs(a - b) < 40 for a, b in zip(one.getRgb()[:3], other.getRgb()[:3], strict=True))


def test_the_drawing_has_its_words(at):
    """The same in text: which lead goes where."""
    hand = at("to_volts")
    assert (
        hand.page.picture.accessibleName()
        == "Drawing. Leads: 1 to blower plug, hot, 2 to blower plug, neutral"
    )


def test_flags_keep_off_the_ink_and_off_each_other(qapp):
    """On an empty sheet with one black bar: both flags miss the bar, the other spot and each other."""
    from PySide6.QtCore import QPointF
    from PySide6.QtGui import QColor, QPainter

    sheet = QImage(300, 200, QImage.Format.Format_Grayscale8)
    sheet.fill(255)
    paint = QPainter(sheet)
    bar = QRectF(100, 60, 150, 30)
    paint.fillRect(bar, QColor("black"))
    paint.end()
    spots = [QPointF(120, 100), QPointF(140, 100)]
    one, other = flags.places(spots, sheet)
    assert not one.intersects(bar) and not other.intersects(bar) and not one.intersects(other)
    assert not one.contains(spots[1]) and not other.contains(spots[0])


def test_the_drawing_with_most_of_the_points_is_taken(qapp):
    """R and C are on the control drawing, the blower's plug on the other."""
    assert drawing.choose(VOCABULARY, ("r", "c")) == "control"
    assert drawing.choose(VOCABULARY, ("blower.line", "blower.neutral")) == "line_voltage"
    assert drawing.choose(VOCABULARY, ()) is None


@pytest.mark.parametrize("tree", sorted(LIBRARY.trees))
def test_every_reading_of_the_trees_can_be_marked(qapp, tree):
    """Each point of each reading is in the drawing that its step would show, or the step says the place
    in words.
    """
    from assistant.tree.model import readings_of

    for step in LIBRARY.trees[tree].steps.values():
        for reading in readings_of(step):
            if reading.at and all(point in VOCABULARY.points for point in reading.at):
                assert drawing.choose(VOCABULARY, reading.at) is not None
                assert words.leads(VOCABULARY, reading.at)
