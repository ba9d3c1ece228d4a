"""A whole visit without a mouse, and one without a keyboard: from the list of visits to the signature."""

import pytest
from answers import page_texts, plate_text
from hand import Hand
from PySide6.QtCore import QEvent, QObject, Qt
from scenes import library

from assistant.resources import trees_folder
from assistant.tree.library import read_folder

TREES = {"small": library, "shipped": lambda: read_folder(trees_folder())}
MOST_PAGES = 160
FEWEST = {False: 10, True: 30}
"""Pages that a walk of the small and of the shipped trees has at least, so that one cut short is noticed."""


class Watcher(QObject):
    """Notes every event of a kind that the walk must not use."""

    def __init__(self, app, *kinds) -> None:
        super().__init__(app)
        self.kinds, self.seen = kinds, 0
        app.installEventFilter(self)

    def eventFilter(self, watched, event) -> bool:
        self.seen += event.type() in self.kinds and event.spontaneous()
        return False


@pytest.fixture
def hand(qtbot, window):
    window.begin()
    return Hand(qtbot, window).rest()


@pytest.fixture(params=["small", "shipped"])
def trees(request, desk):
    desk.library = TREES[request.param]()
    desk.shop_path.write_text("may: [breaker_panel, gas, vent]\n")  # said once, so that no walk asks it
    desk.forget_shop()
    return desk.library


# by keyboard


def by_keys(hand, ask) -> None:
    if ask.kind == "look" or (ask.kind == "do" and ask.choices):
        hand.digit(1).enter()
    elif ask.kind == "plate":
        known = hand.driver.vocabulary.plate[ask.plate]
        (hand.digit(1) if known.choices else hand.type(plate_text(known))).enter()
    elif ask.kind == "measure":
        for text in page_texts(ask):
            hand.type(text).enter()
            while getattr(hand.page, "offers", None) is not None and hand.page.offers.isVisible():
                hand.digit(len(hand.page.offers.buttons))
        hand.enter()
    elif ask.kind == "watch":
        hand.enter()
        for number in range(len(ask.body.events)):
            hand.digit(number + 1)
        hand.enter()
        for text in page_texts(ask):
            hand.type(text).enter()
        if not ask.readings:
            hand.enter()
    elif ask.kind == "conclude":
        hand.digit(1).enter()
    elif ask.kind == "choose":
        hand.digit(len(hand.page.choices.buttons)).enter()
    else:
        hand.enter()


def test_a_visit_without_a_mouse(hand, trees, qapp):
    """New visit, every page, the open points, the address, the signature: keys alone."""
    mouse = Watcher(qapp, QEvent.Type.MouseButtonPress, QEvent.Type.TouchBegin)
    hand.enter().digit(1).enter().alt("k")
    pages = walk(hand, by_keys)
    for point in hand.page.points:
        if point.kind in ("undo", "power"):
            hand.page.choices.buttons[point.key].setFocus()
            hand.key(Qt.Key.Key_Space).type("left as found").enter()
    hand.enter()
    hand.type("A. Example").enter().enter().enter().enter()
    hand.type("R. Ortiz").enter().enter()
    assert hand.driver.ask().kind == "signed", hand.verdict
    assert pages >= FEWEST[len(trees.trees) > 10] and mouse.seen == 0
    assert hand.driver.visit.found
    qapp.removeEventFilter(mouse)


def walk(hand, answer) -> int:
    """Answers page after page until the open points are shown; how many pages that took."""
    for count in range(MOST_PAGES):
        if type(hand.page).__name__ == "LeavePage":
            return count
        before = (hand.driver.ask(), len(hand.driver.visit.events), hand.page)
        answer(hand, hand.driver.ask())
        if getattr(hand.page, "warned", False):  # a wait that is not over takes the same key twice
            answer(hand, hand.driver.ask())
        after = (hand.driver.ask(), len(hand.driver.visit.events), hand.page)
        assert after != before, f"stuck at {before[0].kind} {before[0].step}: {hand.verdict}"
    raise AssertionError("the walk does not end")


# by touch


def put(hand, line, text) -> None:
    """A text by the pad alone."""
    if hand.page.pad is None or hand.page.pad.isHidden():
        hand.press("Pad")
    hand.tap(line)
    for letter in text:
        hand.tap(hand.page.pad.keys[letter])


def by_taps(hand, ask) -> None:
    page = hand.page
    if ask.kind in ("look", "conclude", "choose"):
        buttons = list(page.choices.buttons.values())
        hand.tap(buttons[-1 if ask.kind == "choose" else 0])
    elif ask.kind == "do" and ask.choices:
        hand.tap(next(iter(page.results.buttons.values())))
    elif ask.kind == "plate":
        known = hand.driver.vocabulary.plate[ask.plate]
        if known.choices:
            hand.tap(next(iter(page.choices.buttons.values())))
        else:
            put(hand, page.entry.line, plate_text(known))
    elif ask.kind == "measure":
        lines = [row.entry.line for row in page.rows] if hasattr(page, "rows") else [page.entry.line]
        for line, text in zip(lines, page_texts(ask), strict=True):
            put(hand, line, text)
            hand.tap(page.pad.keys["Enter"])
            while page.offers.isVisible():
                hand.tap(page.offers.buttons[-1])
    elif ask.kind == "watch":
        for button in page.events.values():
            hand.tap(button)
        hand.tap(page.next_button)
        for (entry, _), text in zip(page.lines.values(), page_texts(ask), strict=True):
            put(hand, entry.line, text)
    hand.tap(hand.page.next_button)


def test_a_visit_without_a_keyboard(hand, trees, qapp):
    """The same by taps and the number pad; only a name needs the system's own keyboard."""
    keys = Watcher(qapp, QEvent.Type.KeyPress)
    hand.press("New visit")
    hand.tap(next(iter(hand.page.choices.buttons.values()))).tap(hand.page.next_button).press("Skip")
    pages = walk(hand, by_taps)
    assert pages >= FEWEST[len(trees.trees) > 10] and keys.seen == 0
    assert hand.driver.visit.found
    qapp.removeEventFilter(keys)
    hand.tap(hand.page.next_button).tap(hand.page.next_button)
    assert type(hand.page).__name__ == "SignPage"


def test_every_target_is_large_enough_for_a_glove(hand, trees):
    """44 by 44 at least, wherever something can be pressed, on every page of a walk."""
    hand.press("New visit")
    small = set()

    def look(hand, ask):
        for button in hand.buttons():
            if button.width() < 44 or button.height() < 44:
                small.add(f"{type(hand.page).__name__}: {button.text()} {button.width()}x{button.height()}")
        by_keys(hand, ask)

    hand.digit(1).enter().alt("k")
    walk(hand, look)
    assert not small, "\n".join(sorted(small))
