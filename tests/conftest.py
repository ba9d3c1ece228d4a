"""What every test stands on: no screen, no trace in the user's folders, nothing left behind by a window."""

import os
import tempfile

# Before anything imports Qt: with neither a display nor this, Qt ends pytest as a whole.
os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
# For the programs that tests start; pytest does the same for itself.
os.environ.setdefault("PYTHONFAULTHANDLER", "1")
# No test may write where a person's visits lie.
_USER_FOLDER = tempfile.TemporaryDirectory(prefix="fault-trail-tests-")
os.environ["FAULT_TRAIL_HOME"] = _USER_FOLDER.name
os.environ["FAULT_TRAIL_CACHE"] = f"{_USER_FOLDER.name}/cache"

import traceback  # noqa: E402
import weakref  # noqa: E402

import pytest  # noqa: E402
from hypothesis import HealthCheck, settings  # noqa: E402

# In CI the same examples every time, so that a red run is red again; and no deadline, as two busy cores tell
# nothing about a function. At a desk new examples are tried each time.
settings.register_profile(
    "ci", derandomize=True, deadline=None, print_blob=True, suppress_health_check=[HealthCheck.too_slow]
)
settings.register_profile("desk", deadline=None)
settings.load_profile("ci" if os.environ.get("CI") else "desk")

GUI_FIXTURES = {"qtbot", "qapp", "qtmodeltester"}


LONGEST = "test_every_step.py"
"""The file that takes longest: begun last it would keep one core busy after all others are done."""


def pytest_collection_modifyitems(items):
    """Marks the tests that need a QApplication, so that `-m "not gui"` is the quick round; what takes longest
    comes first.
    """
    for item in items:
        if GUI_FIXTURES & set(getattr(item, "fixturenames", ())):
            item.add_marker("gui")
    items.sort(key=lambda item: (item.path.name != LONGEST, item.path.parent.name != "window"))


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(item, call):
    """Notes how the test's own part ended, for the fixture below."""
    report = yield
    if report.when == "call":
        item.stash[PASSED] = report.passed
    return report


PASSED = pytest.StashKey[bool]()


@pytest.fixture(scope="session", autouse=True)
def one_application(request):
    """A program that a test starts in this process would make a smaller application of its own, in which no
    later test of the window can run.
    """
    request.getfixturevalue("qapp")


@pytest.fixture(autouse=True)
def nothing_left_behind(request):
    """Fails a test of the window that leaves a top-level widget or a running timer behind it.

    A left-over makes some later test fail, in another file and only in some order. A widget is handed to
    `qtbot.addWidget`, or closed and deleted; a timer is stopped or has a parent that is deleted.
    """
    if request.node.get_closest_marker("gui") is None:
        yield
        return
    request.getfixturevalue("qapp")
    from PySide6.QtCore import QTimer
    from PySide6.QtWidgets import QApplication

    before = {id(widget) for widget in QApplication.topLevelWidgets()}
    started = weakref.WeakKeyDictionary()
    start = QTimer.start

    def start_and_note(timer, *arguments):
        started[timer] = "".join(traceback.format_stack(limit=4)[:-1])
        return start(timer, *arguments)

    QTimer.start = start_and_note
    yield
    QTimer.start = start
    if not request.node.stash.get(PASSED, False):
        return  # a failed test holds its widgets in its traceback
    left = _left_widgets(before) + _left_timers(started)
    if left:
        pytest.fail("left behind by this test:\n" + "\n".join(left), pytrace=False)


def _left_widgets(before):
    import gc

    from PySide6.QtCore import QCoreApplication, QEvent
    from PySide6.QtWidgets import QApplication

    def widgets():
        # A tool tip is Qt's own and goes by itself.
        return [
            widget
            for widget in QApplication.topLevelWidgets()
            if id(widget) not in before
            and widget.parent() is None
            and widget.metaObject().className() != "QTipLabel"
        ]

    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)
    if widgets():
        gc.collect()  # a cycle of Python's holds some; only looked for when needed, as it takes long
    return [f"  top-level widget {widget!r}" for widget in widgets()]


def _left_timers(started):
    import shiboken6

    return [
        f"  running timer {timer!r}, started at\n{where}"
        for timer, where in list(started.items())
        if shiboken6.isValid(timer) and timer.isActive()
    ]
