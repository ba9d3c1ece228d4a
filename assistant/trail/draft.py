"""What is being filled in and not answered yet, such as a survey or a sheet: beside the trail, and no part of
it.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from pathlib import Path

from assistant.trail.files import DISK, Files, write_whole

NAME = "draft.json"


def keep_draft(folder: Path, step: str, name: str, text: str, files: Files = DISK) -> bool:
    """Keeps it, or takes it away where the text is blank. False where the disk does not take it: the window
    has it still.
    """
    drafts = _all(folder, files)
    key = f"{step} {name}"
    if text:
        drafts[key] = text
    elif drafts.pop(key, None) is None:
        return True
    try:
        write_whole(files, Path(folder) / NAME, json.dumps(drafts).encode("ascii"))
    except OSError:
        return False
    return True


def draft_of(folder: Path, step: str, name: str, files: Files = DISK) -> str:
    """What was being filled in; empty where there is nothing."""
    return _all(folder, files).get(f"{step} {name}", "")


def drafts_of(folder: Path, files: Files = DISK) -> dict[tuple[str, str], str]:
    """Everything that was being filled in: (page or step, name) -> text."""
    return {tuple(key.split(" ", 1)): text for key, text in _all(folder, files).items() if " " in key}


def keep_drafts(folder: Path, drafts: Mapping[tuple[str, str], str], files: Files = DISK) -> bool:
    """Keeps all of these at once, blank ones taken away, others left as they are. False where the disk does
    not take it.
    """
    known = _all(folder, files)
    new = dict(known)
    for (step, name), text in drafts.items():
        if text.strip():
            new[f"{step} {name}"] = text
        else:
            new.pop(f"{step} {name}", None)
    if new == known:
        return True
    try:
        if new:
            write_whole(files, Path(folder) / NAME, json.dumps(new).encode("ascii"))
        else:
            files.remove(Path(folder) / NAME)
    except OSError:
        return False
    return True


def _all(folder: Path, files: Files) -> dict[str, str]:
    try:
        found = json.loads(files.read(Path(folder) / NAME))
    except (OSError, ValueError):
        return {}
    return {str(key): str(value) for key, value in found.items()} if isinstance(found, dict) else {}
