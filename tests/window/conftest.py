"""A hand that types and taps on a real window, and short ways to any page."""

from __future__ import annotations

import pytest
from hand import Flashes, Hand
from PySide6.QtWidgets import QApplication
from scenes import Scene, library

from assistant.house.reader import read
from assistant.trail.live import LiveVisit
from assistant.walk.entries import events_of, read_entries
from assistant.window.app import dress
from assistant.window.desk import Desk
from assistant.window.frame import Window
from assistant.window.page import base
from assistant.window.session import Driver
from tests.played import at as moment
from tests.played import shipped


@pytest.fixture(autouse=True)
def dressed(qapp):
    """The program's own font, style and sheet, in the light palette; whatever a test changed is put back."""
    palette = QApplication.style().standardPalette()
    if qapp.palette() != palette or not qapp.styleSheet():
        dress(qapp, palette)


@pytest.fixture(autouse=True)
def no_window_of_its_own(qapp):
    """Nothing but the window is ever shown by itself: a widget made visible before it has a parent
    flashes up.
    """
    watch = Flashes(qapp)
    yield
    qapp.removeEventFilter(watch)
    assert not watch.seen, f"shown without a parent: {watch.seen}"


@pytest.fixture(autouse=True)
def quick(monkeypatch):
    """This hand is faster than a person: no wait after a page came up, but where a test is about it."""
    monkeypatch.setattr(base, "SETTLE", 0.0)


@pytest.fixture
def desk(tmp_path):
    """A shelf of the test's own and the small trees; the notice was read long ago."""
    made = Desk(tmp_path / "home" / "visits")
    made.library = library()
    made.problems = []
    made.notice_read()
    return made


@pytest.fixture
def window(qtbot, desk):
    """An empty window of 1024 by 600."""
    made = Window(desk)
    qtbot.addWidget(made)
    made.resize(1024, 600)
    with qtbot.waitExposed(made):
        made.show()
    made.activateWindow()
    qtbot.waitUntil(made.isActiveWindow)
    return made


@pytest.fixture
def scene(desk):
    """A visit in the shelf, to be brought to a page."""

    def begin(*complaints, name="visit"):
        desk.shelf.mkdir(parents=True, exist_ok=True)
        return Scene(desk.shelf / name, *complaints)

    return begin


@pytest.fixture
def at(qtbot, window, scene):
    """`at("to_volts")`: a hand on the window that shows that page."""

    def come(way="", *complaints):
        visit = scene(*complaints)
        if way:
            getattr(visit, way)()
        window.show_visit(visit.driver)
        hand = Hand(qtbot, window)
        hand.rest()
        return hand

    return come


@pytest.fixture
def go(qtbot, window, desk):
    """`go(entries)`: a hand on a window with a visit on the shipped trees that these entries were sent to."""
    desk.library = shipped()

    def come(text="[]", complaints=(("no_heat", "The furnace does not heat."),), name="visit"):
        desk.shelf.mkdir(parents=True, exist_ok=True)
        live = LiveVisit.start(desk.shelf / name, shipped(), complaints, at=moment(0))
        entries, problems = read_entries(read(text.encode(), "entries.yaml"))
        assert not problems
        for entry in entries:
            for make in events_of(entry, moment(len(live.visit.events))):
                if (event := make(live.visit)) is not None:
                    live.send(event)
        window.show_visit(Driver(live, now=lambda: moment(500)))
        return Hand(qtbot, window).rest()

    return come
