"""Every page of the demo visits' reports as a picture: python tests/campaign/report_pages.py [FOLDER].

Walks each file of resources/demo, with name, address and photos of our own invention, writes its reports on
Letter and A4, and turns each page into a PNG with pdftoppm (poppler). Where chromium is installed the HTML is
taken too, light and dark. Prints the pages of each and ends with 1 where a page holds next to nothing.
"""

# ruff: noqa: E402  run as a script, from a checkout

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
from dataclasses import replace
from datetime import datetime, timedelta
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from assistant.house.reader import read
from assistant.report.drawing import ready
from assistant.report.export import write_all
from assistant.report.photo import for_keeping
from assistant.trail.live import LiveVisit
from assistant.tree.library import Library, read_folder
from assistant.walk.entries import complaints_of, events_of, read_entries
from assistant.walk.event import AsFound, AsLeft, Filled, Note, Person

DEMOS = ("visit", "gas_stop", "waiting", "zone_survey", "three_days", "tune_up")
BEGAN = datetime.fromisoformat("2026-11-25T09:14:00-05:00")
PERSON = {
    "name": "R. Sample",
    "address": "14 Sample Street, back door",
    "phone": "555 0114",
    "shop": "Example Heating",
    "licence": "EX-2204",
}
RESOLUTION = 75
"""Dots an inch of the pictures."""
LEAST_WORDS = 25
"""A page with fewer, its foot among them, is one that somebody turns over for nothing."""


def photo(words: str, shade: int) -> bytes:
    """A made-up photograph: a panel with a lamp and its words."""
    from PySide6.QtCore import QBuffer, QIODevice, QRect, Qt
    from PySide6.QtGui import QColor, QFont, QImage, QPainter

    image = QImage(1200, 900, QImage.Format.Format_RGB32)
    image.fill(QColor(shade, shade, shade))
    painter = QPainter(image)
    painter.fillRect(QRect(150, 120, 900, 560), QColor("#3d6b4f"))
    painter.setBrush(QColor("#e8b53a"))
    painter.drawEllipse(860, 200, 90, 90)
    painter.setPen(Qt.GlobalColor.white)
    painter.setFont(QFont(ready(), 40))
    painter.drawText(QRect(150, 700, 1000, 180), Qt.TextFlag.TextWordWrap, words)
    painter.end()
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    image.save(buffer, "JPEG", 90)
    return for_keeping(bytes(buffer.data()), "demo.jpg")


def walked(folder: Path, demo: Path, library: Library, minutes: float = 1.0) -> None:
    """The demo's answers as a visit in `folder`, `minutes` apart, with a person and photos."""
    entries, problems = read_entries(read(demo.read_bytes(), str(demo)))
    assert not problems, problems
    complaints = library.vocabulary.complaints
    trees = {known.tree: known.name for known in complaints.values() if known.tree}
    names = complaints_of(entries, trees)
    when = BEGAN
    live = LiveVisit.start(
        folder, library, tuple((n, complaints[n].words) for n in names), at=BEGAN.isoformat()
    )
    live.send(Person(when.isoformat(), live.recorder.keep_person(PERSON)))
    for entry in entries:
        when += timedelta(minutes=minutes)
        for make in events_of(entry, when.isoformat()):
            event = make(live.visit)
            if isinstance(event, (AsFound, AsLeft)):
                words = "as found" if isinstance(event, AsFound) else "as left"
                shades = ((150, "the panel"), (90, "the vestibule"))
                kept = tuple(live.recorder.keep(photo(f"{what}, {words}", shade)) for shade, what in shades)
                event = replace(event, photos=kept)
            if isinstance(event, Filled) and event.sheet == "unit":
                event = replace(event, photos=(live.recorder.keep(photo("the rating plate", 60)),))
            if event is not None:
                live.send(event)
                if isinstance(event, Note) and not event.photo:
                    live.send(
                        Note(event.at, "What it looked like", photo=live.recorder.keep(photo("a note", 120)))
                    )
    live.close()


def pictures(pdf: Path, stem: Path) -> list[Path]:
    """A PNG of each page, in place of older ones."""
    for old in stem.parent.glob(f"{stem.name}-*.png"):
        old.unlink()
    subprocess.run(["pdftoppm", "-r", str(RESOLUTION), "-png", pdf, stem], check=True)
    return sorted(stem.parent.glob(f"{stem.name}-*.png"))


def words_of(pdf: Path) -> list[int]:
    """How many words stand on each page."""
    text = subprocess.run(
        ["pdftotext", "-layout", pdf, "-"], check=True, capture_output=True, text=True
    ).stdout
    return [len(page.split()) for page in text.split("\f")[:-1]]


def screens(html: Path, out: Path) -> None:
    """The HTML as a browser shows it, light and dark."""
    for look, more in (
        ("light", []),
        ("dark", ["--force-dark-mode", "--blink-settings=preferredColorScheme=0"]),
    ):
        command = ["chromium", "--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", *more]
        size = ["--window-size=900,1800", f"--screenshot={out / f'{html.parent.name}-{look}.png'}"]
        subprocess.run([*command, *size, html.as_uri()], check=True, capture_output=True)


def main(folder: str | None = None) -> int:
    out = Path(folder or tempfile.mkdtemp(prefix="report-pages-"))
    library, thin = read_folder(ROOT / "trees"), []
    for name in DEMOS:
        visit = out / name
        shutil.rmtree(visit, ignore_errors=True)
        walked(visit, ROOT / "resources" / "demo" / f"{name}.yaml", library)
        for paper in ("letter", "a4"):
            to = visit / paper
            to.mkdir()
            said = write_all(visit, to, paper)
            assert said is None, said
            made, words = pictures(to / "report.pdf", out / f"{name}-{paper}"), words_of(to / "report.pdf")
            print(f"{name}, {paper}: {len(made)} pages, words on each {words}")
            thin += [f"{name}, {paper}, page {n}" for n, many in enumerate(words, 1) if many < LEAST_WORDS]
        shutil.copy(visit / "letter" / "report.html", visit / "report.html")
        if shutil.which("chromium"):
            screens(visit / "report.html", out)
    print(f"pages with next to nothing on them: {', '.join(thin) or 'none'}")
    print(f"The pictures are in {out}.")
    return bool(thin)


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:2]))
