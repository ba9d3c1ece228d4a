"""The Python, the window library and the packages that the program stands on are sound ones."""

import sys
from importlib import metadata

import pytest


def test_calls_that_return_nothing_keep_their_reference_to_none(qtbot):
    """A window library that drops one reference to None a call ends the program after some 5,000 calls.

    PySide6 6.12.0 does so on Python 3.11 and older (found by counting here; from 3.12 on None is immortal).
    """
    from PySide6.QtWidgets import QLabel

    label = QLabel()
    qtbot.addWidget(label)
    before = sys.getrefcount(None)
    for _ in range(1000):
        label.setText("x")
    assert sys.getrefcount(None) > before - 500


@pytest.mark.parametrize("name", ["PySide6.QtWidgets", "PySide6.QtSvg", "PySide6.QtPrintSupport"])
def test_the_small_window_library_has_all_that_is_used(name):
    """Essentials is enough; the full one would take 400 MB more."""
    __import__(name)


def test_the_yaml_reader_has_its_fast_parser():
    """Without the C parser a tree of 5,000 steps takes four times as long to open."""
    import yaml

    assert yaml.__with_libyaml__


def test_letters_can_be_drawn(qapp):
    """Where no font is found Qt draws boxes, in the window and in the report, without any warning."""
    from PySide6.QtGui import QFontInfo

    assert QFontInfo(qapp.font()).family()


def test_installed_packages_are_those_that_were_tried():
    """Each installed package that resources/constraints.txt names has the version that is named there."""
    from packaging.requirements import Requirement

    from assistant.resources import resources_folder

    text = (resources_folder() / "constraints.txt").read_text(encoding="utf-8")
    wanted = [Requirement(line) for line in text.splitlines() if line and not line.startswith("#")]
    differ, seen = [], 0
    for requirement in wanted:
        if requirement.marker is not None and not requirement.marker.evaluate():
            continue
        try:
            version = metadata.version(requirement.name)
        except metadata.PackageNotFoundError:
            continue  # hatchling is needed for building only, the oracles only in CI
        seen += 1
        if requirement.name != "setuptools" and not requirement.specifier.contains(version):
            differ.append(f"{requirement.name} is {version}, {requirement.specifier} was tried")
    assert seen >= 10
    assert not differ
