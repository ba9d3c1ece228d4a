"""Every step of the shipped trees as a page: no word cut off, nothing wider than the window, at three
sizes.
"""

import pytest
from hand import Hand
from PySide6.QtCore import QEvent
from PySide6.QtWidgets import QApplication, QLabel
from scenes import Scene

from assistant.resources import trees_folder
from assistant.tree.library import read_folder
from assistant.tree.model import Look, readings_of
from assistant.walk.ask import Ask
from assistant.walk.asked import KINDS
from assistant.window import open_page

LIBRARY = read_folder(trees_folder())
SIZES = {"1024x600": (1024, 600, 1), "512x300": (512, 300, 1), "1360x820": (1360, 820, 5)}
"""Width, height, and that every so many steps are shown: where there is room, a fifth of them is enough."""
ASKED = [
    (tree, step) for tree in LIBRARY.trees.values() for step in tree.steps.values() if type(step) in KINDS
]


def ask_of(tree, step) -> Ask:
    """The question as the walk would ask it, every plate value unread."""
    return Ask(
        KINDS[type(step)],
        f"{tree.name}.{step.common.name}",
        tree,
        step,
        "line" if tree.takes else None,
        readings=readings_of(step),
        say=step.ask,
        choices=tuple(step.choices) if isinstance(step, Look) else (),
        complaint="no_heat",
        env={name: value.span for name, value in LIBRARY.vocabulary.plate.items()},
    )


@pytest.mark.parametrize("size", SIZES.values(), ids=SIZES)
def test_no_word_is_cut_and_nothing_is_too_wide(qtbot, window, tmp_path, size):
    """Labels are as tall as their words need; the page never needs a scroll bar sideways."""
    driver = Scene(tmp_path / "visit", "no_heat", trees=LIBRARY).driver
    window.show_visit(driver)
    width, height, every = size
    window.resize(width, height)
    Hand(qtbot, window).rest()
    wrong = []
    for tree, step in ASKED[::every]:
        page = open_page.for_ask(driver, ask_of(tree, step))
        window._put(page)
        QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)  # or 1,700 pages stay: a gigabyte
        for _ in range(3):
            QApplication.processEvents()
        wrong += [
            f"{tree.name}.{step.common.name}: cut: {label.text()[:60]}"
            for label in page.findChildren(QLabel)
            if label.isVisible()
            and label.wordWrap()
            and label.height() < label.heightForWidth(label.width()) - 1
        ]
        if page.scroll.widget().width() > page.scroll.viewport().width():
            wrong.append(f"{tree.name}.{step.common.name}: wider than the page")
    assert len(ASKED) > 200
    assert not wrong, "\n".join(wrong)
