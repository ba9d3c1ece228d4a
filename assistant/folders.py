"""Where the program may keep what belongs to a person, by the custom of each system. Creates nothing."""

from __future__ import annotations

import os
import sys
from pathlib import Path

HOME_VARIABLE = "FAULT_TRAIL_HOME"
CACHE_VARIABLE = "FAULT_TRAIL_CACHE"


def user_folder() -> Path:
    """The folder for visits, shop settings and crash notes of this user; it need not exist yet.

    FAULT_TRAIL_HOME names another one, for a shop that keeps its visits on a shared disk, and for tests.
    """
    chosen = os.environ.get(HOME_VARIABLE)
    if chosen:
        return Path(chosen).expanduser()
    home = Path(os.path.expanduser("~"))  # noqa: PTH111 - Path.home() raises where there is no home
    if sys.platform == "win32":
        return Path(os.environ.get("LOCALAPPDATA") or home / "AppData" / "Local") / "Fault Trail"
    if sys.platform == "darwin":
        return home / "Library" / "Application Support" / "Fault Trail"
    return Path(os.environ.get("XDG_DATA_HOME") or home / ".local" / "share") / "fault-trail"


def cache_folder() -> Path:
    """The folder for what is worked out from the visits and may be deleted: this computer's own, never on a
    shared disk. It need not exist yet. FAULT_TRAIL_CACHE names another one.
    """
    chosen = os.environ.get(CACHE_VARIABLE)
    if chosen:
        return Path(chosen).expanduser()
    home = Path(os.path.expanduser("~"))  # noqa: PTH111 - Path.home() raises where there is no home
    if sys.platform == "win32":
        return Path(os.environ.get("LOCALAPPDATA") or home / "AppData" / "Local") / "Fault Trail" / "Cache"
    if sys.platform == "darwin":
        return home / "Library" / "Caches" / "Fault Trail"
    return Path(os.environ.get("XDG_CACHE_HOME") or home / ".cache") / "fault-trail"
