"""Start to the first painted window, over an empty PySide6 window: fresh processes, taken in turn."""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).parents[2]
TURNS = 15

PAINTED = """
import sys
from PySide6.QtCore import QEvent, QObject
from PySide6.QtWidgets import QApplication, QWidget
class First(QObject):
    def eventFilter(self, watched, event):
        if event.type() == QEvent.Type.Paint and isinstance(watched, QWidget) and watched.isWindow():
            print('painted', flush=True)
            QApplication.instance().quit()
            QApplication.instance().removeEventFilter(self)
        return False
"""
EMPTY = (
    PAINTED
    + """
app = QApplication(sys.argv)
first = First(); app.installEventFilter(first)
window = QWidget(); window.resize(1024, 600); window.show()
app.exec()
"""
)
PROGRAM = (
    PAINTED
    + """
app = QApplication(sys.argv)
first = First(); app.installEventFilter(first)
from assistant.window.app import run
run(sys.argv)
"""
)


def seconds(code: str, home: str) -> float:
    """From the start of a process to its first paint."""
    environment = {
        **os.environ,
        "QT_QPA_PLATFORM": "offscreen",
        "FAULT_TRAIL_HOME": home,
        "PYTHONPATH": str(ROOT),
    }
    began = time.perf_counter()
    process = subprocess.Popen(
        [sys.executable, "-c", code],
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        env=environment,
        text=True,
    )
    assert process.stdout is not None
    line = process.stdout.readline()
    took = time.perf_counter() - began
    process.wait(60)
    process.stdout.close()
    if line.strip() != "painted":
        raise SystemExit("the window was never painted")
    return took


def main() -> None:
    """Print both medians and their ratio."""
    with tempfile.TemporaryDirectory() as home:
        for code in (EMPTY, PROGRAM):
            seconds(code, home)  # both warm
        empty, program = [], []
        for _ in range(TURNS):
            empty.append(seconds(EMPTY, home))
            program.append(seconds(PROGRAM, home))
    one, other = statistics.median(empty), statistics.median(program)
    print(f"empty PySide6 window: {one * 1000:.0f} ms (median of {TURNS})")
    print(f"Fault Trail's first window: {other * 1000:.0f} ms (median of {TURNS})")
    print(f"ratio: {other / one:.2f}")


if __name__ == "__main__":
    main()
