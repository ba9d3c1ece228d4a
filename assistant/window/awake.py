"""Asks the system to keep the screen on while a visit is open, where it has a plain call for it. Never
fails.
"""

from __future__ import annotations

import shutil
import subprocess
import sys
from typing import Any

_SYSTEM, _DISPLAY, _CONTINUOUS = 0x1, 0x2, 0x80000000


class Awake:
    """`keep` from the first visit on, `let_go` at the end; both may be called any number of times."""

    def __init__(self) -> None:
        self._held: Any = None

    def keep(self) -> None:
        if self._held is not None:
            return
        try:
            self._held = _ask()
        except Exception:  # noqa: BLE001 - a screen that goes dark is no reason to stop a visit
            self._held = False

    def let_go(self) -> None:
        held, self._held = self._held, None
        try:
            if held == "windows":
                _windows(_CONTINUOUS)
            elif isinstance(held, subprocess.Popen):
                held.terminate()
                held.wait(timeout=2)
            elif isinstance(held, tuple):
                interface, cookie = held
                interface.call("UnInhibit", cookie)
        except Exception:  # noqa: BLE001 - the same
            return


def _ask() -> Any:
    if sys.platform == "win32":
        _windows(_CONTINUOUS | _SYSTEM | _DISPLAY)
        return "windows"
    if sys.platform == "darwin":
        tool = shutil.which("caffeinate")
        return subprocess.Popen([tool, "-d"]) if tool else False
    return _free_desktop()


def _windows(flags: int) -> None:
    import ctypes

    ctypes.windll.kernel32.SetThreadExecutionState(flags)


def _free_desktop() -> Any:
    """The screen saver's own call over the session bus, as the free desktops offer it (from memory)."""
    import os

    if not os.environ.get("DBUS_SESSION_BUS_ADDRESS"):
        return False
    from PySide6.QtDBus import QDBusConnection, QDBusInterface, QDBusMessage

    bus = QDBusConnection.sessionBus()
    if not bus.isConnected():
        return False
    interface = QDBusInterface(
        "org.freedesktop.ScreenSaver", "/org/freedesktop/ScreenSaver", "org.freedesktop.ScreenSaver", bus
    )
    interface.setTimeout(500)
    answer = interface.call("Inhibit", "Fault Trail", "a visit is open")
    if answer.type() == QDBusMessage.MessageType.ReplyMessage and answer.arguments():
        return interface, answer.arguments()[0]
    return False
