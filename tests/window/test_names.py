"""Accessible names: not empty, unique on the page, and containing the visible words of what they name."""

import re

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractScrollArea,
    QLineEdit,
    QListWidget,
    QPlainTextEdit,
    QWidget,
)

from assistant.window.keys import ACTIONS

WAYS = (
    "",
    "to_plate",
    "to_volts",
    "to_manifold",
    "to_wait",
    "to_dead_proof",
    "to_watch",
    "to_finding",
    "to_conclude",
    "to_repair",
    "to_proved",
)


def named(window):
    """Everything in sight that a person can act on or that takes the focus."""
    kinds = (QAbstractButton, QLineEdit, QListWidget, QPlainTextEdit)
    return [
        widget
        for widget in window.findChildren(QWidget)
        if widget.isVisible()
        and (isinstance(widget, kinds) or widget.focusPolicy() & Qt.FocusPolicy.TabFocus)
        and not (isinstance(widget, QAbstractScrollArea) and widget.focusPolicy() == Qt.FocusPolicy.NoFocus)
    ]


def spoken(widget) -> str:
    """What a screen reader says: the accessible name, or a button's own words."""
    return widget.accessibleName() or (
        getattr(widget, "text", str)() if isinstance(widget, QAbstractButton) else ""
    )


def check(window):
    names = {}
    for widget in named(window):
        name = spoken(widget).replace("&&", "\0").replace("&", "").replace("\0", "&")
        assert name.strip(), f"{type(widget).__name__} has no name"
        assert name not in names, f"two things are called {name!r}"
        names[name] = widget
        shown = widget.text() if isinstance(widget, QAbstractButton) else ""
        words = re.findall(
            r"\w+",
            shown.replace("&&", "").replace("&", "").rstrip("…").rsplit(" ", 1)[0]
            if shown.endswith("…")
            else shown.replace("&", ""),
        )
        missing = [word for word in words if word not in name]
        assert not missing, f"{name!r} lacks the visible words {missing}"
    return list(names)


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("size", [(1024, 600), (1360, 820)], ids=["narrow", "wide"])
def test_every_step_page(at, way, size):
    """In both layouts."""
    hand = at(way)
    hand.window.resize(*size)
    hand.rest()
    assert len(check(hand.window)) >= 3


@pytest.mark.parametrize("name", [action.name for action in ACTIONS] + ["person", "sign"])
def test_every_page_beside_the_walk(at, name):
    """Opened over a step."""
    hand = at("to_dead_proof")
    hand.window.open(name)
    hand.rest()
    check(hand.window)


def test_the_pages_without_a_visit(qtbot, window, scene):
    """The list, the new visit."""
    from hand import Hand

    scene().driver.close()
    window.begin()
    hand = Hand(qtbot, window).rest()
    check(window)
    hand.press("New visit")
    check(window)


def test_questions_back_and_the_pad(at):
    """What comes and goes within a page."""
    hand = at("to_volts")
    hand.page.toggle_pad(hand.page.entry.line)
    hand.rest()
    check(hand.window)
    hand.type("1184").enter()
    check(hand.window)


def test_a_measure_page_as_a_screen_reader_meets_it(at):
    """The list of one page, word for word: a change of it is meant."""
    assert check(at("to_volts").window) == [
        "The path so far: 1. What does the blower do, with the call on for two minutes?: still",
        "Still unproved: 2 (F3)",
        "More (F12)",
        "Hazard (F8)",
        "Save",
        "Voltage at the blower motor's plug, with the call on",
        "Can't take it",
        "Won't hold steady",
        "Pad of numbers",
    ]


def test_the_verdict_is_spoken(at):
    """As text and as the name of its line."""
    hand = at("to_volts").type("118.4").enter()
    assert hand.page.verdict.accessibleName() == "Verdict: 118.4 V – supplied"


@pytest.mark.parametrize("way", WAYS)
def test_tab_reaches_everything_and_is_never_caught(at, way):
    """Round the whole page and back to the beginning."""
    from PySide6.QtWidgets import QApplication

    hand = at(way)
    first = QApplication.focusWidget()
    met = {first}
    for _ in range(60):
        hand.key(Qt.Key.Key_Tab)
        if QApplication.focusWidget() is first:
            break
        met.add(QApplication.focusWidget())
    else:
        raise AssertionError("Tab never comes back")
    wanted = {w for w in named(hand.window) if w.isEnabled() and w.focusPolicy() & Qt.FocusPolicy.TabFocus}
    assert wanted <= met, [spoken(w) for w in wanted - met]


@pytest.mark.parametrize("way", WAYS)
def test_no_mnemonic_is_given_twice(at, way):
    """Alt and a letter always means one thing."""
    hand = at(way)
    letters = [button.shortcut().toString() for button in hand.buttons() if not button.shortcut().isEmpty()]
    assert len(letters) == len(set(letters)), letters
