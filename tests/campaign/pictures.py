"""Pictures of every page, light and dark, at 1024x600 and wide: `python tests/campaign/pictures.py
FOLDER` (a temporary one when not given).

QT_SCALE_FACTOR=2 gives the same at twice the scale, QT_QPA_PLATFORM=xcb under Xvfb the same on a real screen.
"""

from __future__ import annotations

import os
import sys
import tempfile
from collections.abc import Callable, Iterator
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "window"))
sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from PySide6.QtCore import QEventLoop, QTimer
from PySide6.QtWidgets import QApplication
from scenes import AT, Scene, library

from assistant.walk.event import Hazard, Note, Paused, Signed
from assistant.window import look
from assistant.window.app import dress
from assistant.window.desk import Desk
from assistant.window.frame import Window

SIZES = {"small": (1024, 600), "wide": (1360, 820), "tiny": (512, 300)}


def settle(milliseconds: int = 30) -> None:
    """Let layouts and focus come to rest."""
    loop = QEventLoop()
    QTimer.singleShot(milliseconds, loop.quit)
    loop.exec()


def scenes(root: Path) -> Iterator[tuple[str, Callable[[Window], None]]]:
    """(name, what brings a window there)."""
    count = iter(range(10_000))

    def scene(*complaints: str) -> Scene:
        return Scene(root / f"visit{next(count)}", *complaints)

    def at(way: str, *more) -> Callable[[Window], None]:
        return lambda window: window.show_visit(
            getattr(scene(*more), way)().driver if way else scene(*more).driver
        )

    def aside(way: str, name: str) -> Callable[[Window], None]:
        def come(window: Window) -> None:
            at(way)(window)
            window.open(name)

        return come

    def typed(way: str, text: str, enters: int = 1) -> Callable[[Window], None]:
        def come(window: Window) -> None:
            at(way)(window)
            settle()
            window.page.entry.write(text)
            for _ in range(enters):
                window.page.enter()

        return come

    def sheet(name: str, **texts: str) -> Callable[[Window], None]:
        def come(window: Window) -> None:
            window.show_start()
            window.open(f"sheet:{name}")
            for field in window.page.fields:
                field.write(texts.get(field.argument.name, field.text))

        return come

    def event(made) -> Callable[[Window], None]:
        def come(window: Window) -> None:
            window.show_visit(scene().to_volts().send(made).driver)

        return come

    def rows(window: Window) -> None:
        at("to_dead_proof")(window)
        for row, text in zip(window.page.rows, ("121.4", "0", "0", "3.2"), strict=False):
            row.entry.write(text)
            window.page._entered(row)

    def watching(window: Window) -> None:
        at("to_watch")(window)
        page = window.page
        page.clock = lambda: 100.0
        page.start()
        page.clock = lambda: 112.4
        page.happened("inducer.runs")
        page.clock = lambda: 131.0
        page.happened("ignitor.glows")
        page.tick()
        page.timer.stop()

    def watched(window: Window) -> None:
        watching(window)
        window.page.enter()

    def picked(window: Window) -> None:
        at("")(window)
        settle()
        window.page.choose(2)

    def pad(window: Window) -> None:
        at("to_volts")(window)
        window.page.toggle_pad(window.page.entry.line)

    def why_not(window: Window) -> None:
        at("to_volts")(window)
        window.page.cannot_way.click()

    yield "notice", lambda window: (setattr(window.desk, "first_time", lambda: True), window.begin())
    yield "start", lambda window: window.show_start()
    yield (
        "new",
        lambda window: (
            window.show_start(),
            window.new_visit(),
            window.page.choose(1),
            window.page.choose(2),
        ),
    )
    yield "look", picked
    yield "plate", at("to_plate")
    yield "measure", at("to_volts")
    yield "measure-judged", typed("to_volts", "104.5")
    yield "measure-implausible", typed("to_volts", "1184")
    yield "measure-doubt", typed("to_volts", "1,200")
    yield "measure-close", typed("to_volts", "107-109")
    yield "measure-pad", pad
    yield "measure-cannot", why_not
    yield "manifold", at("to_manifold")
    yield "do", at("to_stat")
    yield "do-wait", at("to_wait")
    yield "dead-proof", rows
    yield "ohms", at("to_ohms")
    yield "watch", at("to_watch")
    yield "watch-running", watching
    yield "watch-over", watched
    yield "finding", at("to_finding")
    yield "conclude", at("to_conclude")
    yield "proof", at("to_proof")
    yield "stop", event(Hazard(AT, "gas_smell"))
    yield "paused", event(Paused(AT, "Waiting for a part: motor ordered"))
    yield "choose", at("to_proved", "no_heat", "zone_spillover")
    yield "settle", lambda window: window.show_visit(scene("zone_spillover").driver)
    yield "leave", lambda window: (at("to_finding")(window), window.open("leave"))
    yield "signed", lambda window: window.show_visit(scene().to_proved().send(Signed(AT, "R. Ortiz")).driver)
    yield (
        "notes",
        lambda window: (
            window.show_visit(scene().send(Note(AT, "Water mark on the wall.")).driver),
            window.open("notes"),
        ),
    )
    for name in (
        "put_down",
        "unproved",
        "back",
        "as_found",
        "take_along",
        "hazard",
        "pause",
        "drawing",
        "instrument",
        "more",
        "help",
        "person",
        "sign",
    ):
        yield name, aside("to_dead_proof", name)
    yield "workbench", lambda window: (window.show_start(), window.open("workbench"))
    yield "bench-rise", sheet("heat_rise", supply="132", return_air="70")
    yield "bench-wrong", sheet("heat_rise", supply="1,200", return_air="900")
    yield "bench-friction", sheet("friction_rate", airflow="520", diameter="10")
    yield "bench-breaker", sheet("breaker_trip_window", amps="33", rating="20")
    yield "bench-margin", sheet("static_left", watts="420", limit="640", static="0.62")
    yield "bench-meeting", sheet(
        "operating_point",
        system_static="0.5",
        system_airflow="1000",
        statics="0.1, 0.3, 0.5, 0.7",
        airflows="1150, 1045, 950, 775",
    )
    yield "bench-ducts", sheet("duct_system", diameters="7, 7, 6, 8", lengths="12,18,10,9", zones="1,1,2,2")


def demo(folder: Path) -> None:
    """The demo visit on the shipped trees, each question as it is asked, in the wide window."""
    from assistant.house.reader import read
    from assistant.resources import resources_folder, trees_folder
    from assistant.trail.live import LiveVisit
    from assistant.tree.library import read_folder
    from assistant.walk.entries import complaints_of, events_of, read_entries
    from assistant.window.session import Driver

    library = read_folder(trees_folder())
    path = resources_folder() / "demo" / "visit.yaml"
    entries, problems = read_entries(read(path.read_bytes(), str(path)))
    assert not problems, problems
    complaints = library.vocabulary.complaints
    names = complaints_of(entries, {c.tree: c.name for c in complaints.values() if c.tree})
    with tempfile.TemporaryDirectory() as root:
        live = LiveVisit.start(
            Path(root) / "demo", library, tuple((n, complaints[n].words) for n in names), at=AT
        )
        driver = Driver(live, now=lambda: AT)
        window = Window(Desk(Path(root) / "visits"))
        window.resize(*SIZES["wide"])
        window.show()
        window.show_visit(driver)
        shown = None
        for number, entry in enumerate(entries):
            if driver.ask() != shown:
                shown = driver.ask()
                window.show_ask()
                settle()
                name = (shown.step or shown.kind).replace(".", "-")
                window.grab().save(str(folder / f"demo-{number:02d}-{name}.png"))
            for make in events_of(entry, AT):
                event = make(live.visit)
                if event is not None:
                    window.page.driver.send(event)
        window.close()


def main(folder: Path, only: list[str]) -> None:
    """Every page into `folder`, or those named in `only`; `demo` alone gives the demo visit."""
    folder.mkdir(parents=True, exist_ok=True)
    app = QApplication([])
    if only == ["demo"]:
        dress(app, app.palette())
        demo(folder)
        return
    light = app.palette()
    for colours, palette in (("light", light), ("dark", look.dark_palette())):
        dress(app, palette)
        for size, (wide, tall) in SIZES.items():
            with tempfile.TemporaryDirectory() as root:
                desk = Desk(Path(root) / "shelf")
                desk.library = library()
                desk.problems = []
                desk.first_time = lambda: False
                for visit in ("first", "second"):
                    Scene(desk.shelf / visit).to_volts().driver.close()
                for name, come in scenes(Path(root)):
                    if only and name not in only:
                        continue
                    window = Window(desk)
                    window.resize(wide, tall)
                    window.show()
                    come(window)
                    settle()
                    window.grab().save(str(folder / f"{size}-{colours}-{name}.png"))
                    window.close()
                    window.deleteLater()
                    settle(1)


if __name__ == "__main__":
    where = Path(sys.argv[1]) if len(sys.argv) > 1 else Path(tempfile.mkdtemp(prefix="fault-trail-pictures-"))
    main(where, sys.argv[2:])
    print(f"{len(list(where.glob('*.png')))} pictures in {where}")
