"""The README's pictures, from the demo visit: `python tests/campaign/readme_pictures.py [FOLDER]`.

Walks resources/demo/visit.yaml up to a step and takes a picture of the window there; the report's first page
is drawn from the finished visit. FOLDER is resources/demo when not given.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from PySide6.QtCore import QEventLoop, Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit

from assistant.house.reader import read
from assistant.resources import resources_folder, trees_folder
from assistant.trail.live import LiveVisit
from assistant.tree.library import read_folder
from assistant.walk.entries import events_of, read_entries
from assistant.window.app import dress
from assistant.window.desk import Desk
from assistant.window.frame import Window
from assistant.window.session import Driver

STOPS = {
    "dead-proof": ("make_dead.proof", "120.5"),
    "reading": ("no_heat.igniter_volts", "119.4"),
    "watch": ("no_heat.cycle", None),
    "finding": ("no_heat.igniter_open", None),
}
"""Picture -> the entry before which it is taken, and what is typed there."""


def settle(milliseconds: int = 80) -> None:
    """Let layouts and focus come to rest."""
    loop = QEventLoop()
    QTimer.singleShot(milliseconds, loop.quit)
    loop.exec()


def visit_up_to(folder: Path, entry_key: str | None) -> LiveVisit:
    """The demo visit, walked until the entry of that name would come."""
    demo = resources_folder() / "demo" / "visit.yaml"
    entries, problems = read_entries(read(demo.read_bytes(), str(demo)))
    assert not problems
    library = read_folder(trees_folder())
    words = {c.name: c.words for c in library.vocabulary.complaints.values()}
    live = LiveVisit.start(folder, library, tuple((n, words[n]) for n in ("no_heat", "zone_spillover")))
    for entry in entries:
        if entry.key == entry_key:
            break
        for make in events_of(entry, "2026-11-25T09:14:00-05:00"):
            if (event := make(live.visit)) is not None:
                live.send(event)
    return live


def main(folder: Path) -> None:
    """Write every picture into `folder`."""
    app = QApplication([])
    dress(app)
    with tempfile.TemporaryDirectory() as scratch:
        for number, (name, (key, text)) in enumerate(STOPS.items()):
            window = Window(Desk(Path(scratch) / "shelf"))
            window.resize(1024, 600)
            window.show()
            window.show_visit(Driver(visit_up_to(Path(scratch) / f"visit{number}", key)))
            settle()
            field = window.focusWidget()
            if text is not None and isinstance(field, QLineEdit):
                QTest.keyClicks(field, text)
                if name == "reading":
                    QTest.keyClick(field, Qt.Key.Key_Return)
            settle()
            window.grab().save(str(folder / f"{name}.png"))
            window.close()
        visit = Path(scratch) / "whole"
        visit_up_to(visit, None).close()
        from assistant.report.export import write_one

        write_one(visit, visit / "report.pdf")
        subprocess.run(["pdftoppm", "-r", "60", "-png", "-l", "1", "-singlefile", str(visit / "report.pdf"),
                        str(folder / "report")], check=True)
    print(f"{len(STOPS) + 1} pictures in {folder}")


if __name__ == "__main__":
    main(Path(sys.argv[1]) if len(sys.argv) > 1 else resources_folder() / "demo")
