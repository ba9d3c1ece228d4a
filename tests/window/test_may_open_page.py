"""What the shop may open is asked once, kept in its file, and never asked again."""

import sys
from dataclasses import replace

from PySide6.QtCore import Qt
from scenes import Scene

from assistant.resources import trees_folder
from assistant.trail.shop_file import shop_data
from assistant.tree.library import Library, read_folder


def library():
    known = read_folder(trees_folder())
    tree = replace(known.trees["tripped_breaker"], start="may_open")
    return Library(known.vocabulary, {**known.trees, tree.name: tree}, known.texts, [])


def test_it_is_asked_once_and_kept(qtbot, window, desk):
    hand_module = sys.modules["hand"]
    desk.shelf.mkdir(parents=True)
    desk.shop_path.write_text("instruments: []")
    scene = Scene(desk.shelf / "one", "tripped_breaker", trees=library())
    window.show_visit(scene.driver)
    hand = hand_module.Hand(qtbot, window).rest()
    assert type(hand.page).__name__ == "MayOpenPage"
    assert all(button.height() >= 44 for button in hand.page.buttons.values())
    assert all(button.accessibleName() == button.text() for button in hand.page.buttons.values())
    hand.digit(2)
    assert hand.page.buttons["gas"].text().endswith("yes, we may")
    hand.key(Qt.Key.Key_Return)
    said, problems = shop_data(desk.shop_path)
    assert (said["may"], said["instruments"], problems) == (["gas"], [], [])
    assert scene.driver.visit.path[-1].way == "size_low"
    assert type(hand.page).__name__ != "MayOpenPage"
    assert desk.shop[0]["may"] == ["gas"]
