"""Whether a window can open on this machine: the display and the system libraries that Qt needs.

Qt ends the whole process where it can't open a display, so this is asked before Qt is loaded. Standard
library only, and readable by Python 3.8: resources/ready.py asks here before anything is installed.
"""

import os
import re
import sys

# What Qt needs on a bare Debian 12 to draw at all, and besides on a real X screen; tried on one with python3
# and nothing else, where both lines are enough.
DRAWING_PACKAGES = ("libgl1", "libegl1", "libglib2.0-0", "libdbus-1-3", "libfontconfig1", "libxkbcommon0")
SCREEN_PACKAGES = (
    "libxcb-cursor0", "libxcb-icccm4", "libxcb-keysyms1", "libxcb-shape0", "libxkbcommon-x11-0",
)  # fmt: skip


def no_display():
    """The sentence to show when this machine has no display to open a window on, otherwise None.

    Windows and macOS always have one. On Linux an X or a Wayland display is named in the environment;
    whoever names another platform for Qt to draw on (QT_QPA_PLATFORM) knows what they do.
    """
    if not sys.platform.startswith("linux"):
        return None
    if any(os.environ.get(name) for name in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")):
        return None
    return (
        "There is no display to open a window on; the same visit runs without one:"
        " `python -m assistant replay ENTRIES.yaml --out FOLDER`, in a checkout"
        " `python3 resources/ready.py run replay ENTRIES.yaml --out FOLDER`."
    )


def install_line(packages):
    """The one line to type on Debian and its relatives."""
    return "sudo apt-get install -y --no-install-recommends " + " ".join(packages)


def missing_library(said):
    """The sentence for an import that failed with the text `said`, or None when no system library lacks.

    The text is the loader's: "libGL.so.1: cannot open shared object file: No such file or directory".
    """
    found = re.search(r"(lib[\w.+-]+\.so[\w.]*): cannot open shared object file", said)
    if not found:
        return None
    line = install_line(DRAWING_PACKAGES + SCREEN_PACKAGES)
    return (
        f"The system library {found.group(1)} is missing, which Qt needs to draw. On Debian and its relatives"
        f" type this line, then the same command again:\n    {line}"
    )
