"""Starting up: the shipped font, the style, the clock of nothing, the screen kept on."""

import subprocess
import sys

import pytest
from PySide6.QtGui import QFontDatabase, QFontInfo

from assistant.resources import resources_folder
from assistant.window import app as program
from assistant.window import awake


def test_the_shipped_font_is_loaded_and_used(qapp):
    """A machine without any font would draw boxes without a word."""
    for name in program.FONT_FILES:
        assert QFontDatabase.addApplicationFont(str(resources_folder() / "font" / name)) >= 0
    assert QFontInfo(qapp.font()).family() == program.FONT


def test_the_font_comes_with_its_licence():
    """Free to be shipped, unchanged."""
    text = (resources_folder() / "font" / "LICENCE.txt").read_text(encoding="utf-8")
    assert "Permission is hereby granted, free of charge" in text and "Version 2.37".lower() in text.lower()


SYMBOLS = "°Ωµ±≤≥–“”✓⌫½▢☐…·"


def test_every_sign_used_is_in_the_font(qapp):
    """No box where a degree, an ohm or a tick should stand."""
    from PySide6.QtGui import QFontMetricsF

    from assistant.window import look

    measure = QFontMetricsF(look.font())
    missing = [sign for sign in SYMBOLS if not measure.inFontUcs4(ord(sign))]
    assert not missing


START = """
import os, sys
os.environ["QT_QPA_PLATFORM"] = "offscreen"
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication
from assistant.window import app
made = QApplication([])
QTimer.singleShot(300, made.closeAllWindows)
sys.exit(app.run([]))
"""


def test_the_program_opens_and_closes(tmp_path):
    """A fresh process: the window comes up, is closed, and the exit code is 0."""
    import os

    done = subprocess.run(
        [sys.executable, "-c", START],
        capture_output=True,
        text=True,
        timeout=60,
        env={**os.environ, "FAULT_TRAIL_HOME": str(tmp_path)},
        check=False,
    )
    assert done.returncode == 0, done.stderr
    assert "Traceback" not in done.stderr


def test_a_mistake_of_the_programs_own_is_a_sentence(at, tmp_path, monkeypatch):
    """No traceback on the screen, a note for whoever mends it, and the visit goes on."""
    monkeypatch.setenv("FAULT_TRAIL_HOME", str(tmp_path))
    hand = at("to_volts").type("118.4")
    try:
        raise RuntimeError("no such thing")
    except RuntimeError as error:
        program.crashed(hand.window)(type(error), error, error.__traceback__)
    assert hand.verdict and "Traceback" not in hand.verdict
    assert hand.page.entry.text == "118.4"
    assert hand.enter().page.saved


def test_keeping_the_screen_on_never_fails(monkeypatch):
    """Whatever the system answers, or does not."""
    held = awake.Awake()
    monkeypatch.setattr(awake, "_ask", lambda: (_ for _ in ()).throw(OSError("no such call")))
    held.keep()
    held.let_go()
    held.let_go()
    monkeypatch.setattr(awake, "_ask", lambda: "windows")
    held.keep()
    held.let_go()  # no windll here: nothing happens


def test_the_screen_is_asked_once_and_let_go_at_the_end(at, monkeypatch):
    """From the first visit until the window closes."""
    asked = []
    monkeypatch.setattr(awake, "_ask", lambda: asked.append(1) or "held")
    hand = at("to_volts")
    hand.window.show_ask()
    hand.window.awake.keep()
    assert asked == [1]
    hand.window.close()
    assert hand.window.awake._held is None


def test_closing_the_window_frees_the_visit(at):
    """The lock is gone; another window can open it."""
    from assistant.trail.live import LiveVisit

    hand = at("to_volts")
    folder = hand.driver.folder
    hand.window.close()
    live = LiveVisit.take_up(folder)
    assert not live.recorder.read_only
    live.close()


@pytest.mark.parametrize("pages", [40])
def test_pages_do_not_pile_up(at, pages):
    """One page of a step is alive at a time, however long the walk."""
    from PySide6.QtWidgets import QLabel

    hand = at("to_volts")
    hand.window.show_ask()
    hand.rest()
    before = len(hand.window.findChildren(QLabel))
    for _ in range(pages):
        hand.window.show_ask()
    hand.rest()
    assert hand.window.stack.count() == 1
    assert len(hand.window.findChildren(QLabel)) == before


def test_none_keeps_its_references(qapp):
    """A known fault of one Qt binding on this Python loses a reference to None at every call, and ends in
    an abort after some thousand of them.
    """
    from PySide6.QtWidgets import QLabel

    label = QLabel()
    before = sys.getrefcount(None)
    for _ in range(1000):
        label.setText("x")
    assert sys.getrefcount(None) > before - 500
    label.deleteLater()
