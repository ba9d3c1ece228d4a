"""No network: the program in a namespace without any interface, and under a trace of its system calls.

Starts the window offscreen, replays the demo visit and writes its reports. Fails if any internet socket is
used.
"""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).parents[2]
WINDOW = """
import sys
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication
app = QApplication(sys.argv)
QTimer.singleShot(2000, app.quit)
from assistant.window.app import run
run(sys.argv)
print('window closed')
"""
USED = re.compile(r"^\[?.*\b(connect|bind|sendto|sendmsg)\(.*AF_INET6?")


def commands(home: Path) -> dict[str, list[str]]:
    """What is run: a window that is shown and closed, and a whole visit with its reports."""
    return {
        "window": [sys.executable, "-c", WINDOW],
        "replay": [
            sys.executable,
            "-m",
            "assistant",
            "replay",
            str(ROOT / "resources/demo/visit.yaml"),
            "--out",
            str(home / "visit"),
        ],
    }


def main() -> int:
    """0 when nothing reached for a network."""
    if shutil.which("strace") is None or shutil.which("unshare") is None:
        print("strace and unshare are needed")
        return 2
    bad = 0
    for name in ("window", "replay"):
        with tempfile.TemporaryDirectory() as folder:
            home = Path(folder)
            trace = home / "trace"
            environment = {
                **os.environ,
                "QT_QPA_PLATFORM": "offscreen",
                "FAULT_TRAIL_HOME": str(home / "home"),
                "PYTHONPATH": str(ROOT),
            }
            run = ["unshare", "--net", "strace", "-f", "-e", "trace=network", "-o", str(trace)]
            done = subprocess.run(
                [*run, *commands(home)[name]],
                env=environment,
                capture_output=True,
                text=True,
                check=False,
                cwd=ROOT,
            )
            lines = trace.read_text(errors="replace").splitlines()
            used = [line for line in lines if USED.search(line)]
            print(
                f"{name}: exit {done.returncode}, {len(lines)} socket calls traced, {len(used)} to a network"
            )
            for line in used[:5]:
                print("  ", line)
            bad += done.returncode != 0 or bool(used)
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
