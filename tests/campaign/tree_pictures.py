"""Pictures of the complaints' diagrams: every sheet for the wall, and the page with a walk in it:
`python tests/campaign/tree_pictures.py FOLDER [TREE...]` (a temporary folder when not given).

The page stands in the middle of a recorded walk: as it opens, smaller, larger, a sheet in the window, the
path alone, words searched for, a changed file with an error, and one that can't be read. QT_SCALE_FACTOR=2
gives the same at twice the scale.
"""

from __future__ import annotations

import os
import shutil
import sys
import tempfile
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "window"))
sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from pictures import settle
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QImage, QPainter
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from scenes import AT

from assistant.house.reader import read
from assistant.report.chart_paint import paint
from assistant.report.chart_svg import INKS
from assistant.resources import trees_folder
from assistant.trail.live import LiveVisit
from assistant.tree.chart.sheets import draw
from assistant.tree.library import Library, read_folder
from assistant.walk.entries import events_of, read_entries
from assistant.window import look
from assistant.window.app import dress
from assistant.window.desk import Desk
from assistant.window.frame import Window
from assistant.window.page.aside.tree import TreePage
from assistant.window.session import Driver

WALKS = Path(__file__).resolve().parents[1] / "trees" / "walks"
WALKED = {"no_heat": "limit_bad", "tripped_breaker": "transformer_short", "blower_silent": "module_dead",
          "zone_spillover": "actuator_dead"}
"""The recorded walk of each tree in whose middle its page stands."""
SHARE = 0.7
SIZES = {"small": (1024, 600, "light"), "dark": (1024, 600, "dark"), "wide": (1920, 1080, "light"),
         "tiny": (512, 300, "light")}
SCALE, PATIENCE = 1.4, 300
"""Pixels to a point of a sheet, and tenths of a second until a changed file is on the page."""


def sheets(folder: Path, library: Library, tree: str) -> None:
    """A picture of each sheet of a tree on A3."""
    titles = {other.name: other.title for other in library.trees.values()}
    chart = draw(library.trees[tree], library.vocabulary, titles)
    inks = {name: QColor(value) for name, value in INKS.items()}
    for sheet in chart.sheets:
        image = QImage(round(chart.width * SCALE), round(chart.height * SCALE), QImage.Format.Format_RGB32)
        image.fill(QColor("white"))
        painter = QPainter(image)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.scale(SCALE, SCALE)
        paint(painter, sheet, "DejaVu Sans", inks)
        painter.end()
        image.save(str(folder / f"{tree}-sheet-{sheet.number:02d}.png"))


def walked(folder: Path, library: Library, tree: str) -> Driver:
    """A visit in the middle of the tree's recorded walk."""
    path = WALKS / tree / f"{WALKED[tree]}.yaml"
    entries, problems = read_entries(read(path.read_bytes(), str(path)))
    assert not problems, problems
    live = LiveVisit.start(folder, library, ((tree, library.vocabulary.complaints[tree].words),), at=AT)
    driver = Driver(live, now=lambda: AT)
    for entry in entries[: round(len(entries) * SHARE)]:
        for make in events_of(entry, AT):
            event = make(live.visit)
            if event is not None:
                driver.send(event)
    return driver


def until(said: str, page: TreePage) -> None:
    """Wait until the page says it."""
    for _ in range(PATIENCE):
        if said in page.verdict.text():
            return
        settle(100)
    raise AssertionError(f"the page never said {said!r}: {page.verdict.text()!r}")


def spoiled(text: str) -> str:
    """A tree's text without its first caution and its first causes."""
    lines = text.splitlines()
    for field in ("caution:", "causes:"):
        del lines[next(number for number, line in enumerate(lines) if line.strip().startswith(field))]
    return "\n".join(lines)


def page_of(folder: Path, name: str, window: Window, tree: str, file: Path) -> None:
    """The page in each of its states."""
    page = window.page

    def shot(state: str, *keys: Qt.Key) -> None:
        for key in keys:
            QTest.keyClick(page, key)
        settle()
        window.grab().save(str(folder / f"{tree}-{name}-{state}.png"))

    if page.drawn.name != tree:
        shot("procedure")
        QTest.keyClick(page, Qt.Key.Key_T)
    shot("opens")
    shot("smaller", *[Qt.Key.Key_Minus] * 4)
    shot("larger", *[Qt.Key.Key_Plus] * 8)
    shot("sheet", Qt.Key.Key_0)
    shot("path-only", Qt.Key.Key_Plus, Qt.Key.Key_Plus, Qt.Key.Key_F)
    QTest.keyClick(page, Qt.Key.Key_F)
    page.find.setText("transformer")
    shot("found")
    page.find.setText("")
    while page.watch.reading:
        settle(100)
    text = file.read_text(encoding="utf-8")
    file.write_text(spoiled(text), encoding="utf-8")
    until("The checker finds 2 errors", page)
    shot("changed")
    shot("error", Qt.Key.Key_E)
    file.write_text(text[:200] + "\n  : [", encoding="utf-8")
    until("can't be drawn as it is now", page)
    shot("not-readable")


def main(folder: Path, trees: list[str]) -> None:
    folder.mkdir(parents=True, exist_ok=True)
    app, library = QApplication([]), read_folder(trees_folder())
    light = app.palette()
    for tree in trees or list(WALKED):
        dress(app, light)
        sheets(folder, library, tree)
        for name, (wide, tall, colours) in SIZES.items():
            dress(app, light if colours == "light" else look.dark_palette())
            with tempfile.TemporaryDirectory() as root:
                copy = shutil.copytree(trees_folder(), Path(root) / "trees")
                desk = Desk(Path(root) / "shelf", copy)
                desk.library, desk.problems = library, []
                desk.first_time = lambda: False
                driver = walked(Path(root) / "visit", library, tree)
                window = Window(desk)
                window.resize(wide, tall)
                window.show()
                window.show_visit(driver)
                settle()
                window.open("tree")
                settle()
                page_of(folder, name, window, tree, copy / library.trees[tree].file)
                window.close()
                window.deleteLater()
                driver.close()
                settle(1)


if __name__ == "__main__":
    where = Path(sys.argv[1]) if len(sys.argv) > 1 else Path(tempfile.mkdtemp(prefix="fault-trail-trees-"))
    main(where, sys.argv[2:])
    print(f"{len(list(where.glob('*.png')))} pictures in {where}")
