"""What was erased of a visit, and when: a small file beside the trail, for whoever looks for it later.

The trail itself is not touched, so its chain stays whole: it holds hashes of what was erased, and the
customer's own words of the complaint and any note, which are part of the record.
"""

from __future__ import annotations

import json
from dataclasses import asdict, dataclass
from pathlib import Path

from assistant.trail.error import TrailError, not_read, not_saved
from assistant.trail.files import DISK, Files, write_whole

NAME = "erased.json"


@dataclass(frozen=True)
class Erased:
    """One thing that is gone. `what`: "customer's data", "photo" or "report"; `name`: its hash or file."""

    at: str
    by: str
    what: str
    name: str


def erased(folder: Path, files: Files = DISK) -> list[Erased]:
    """What was erased of this visit, in order. Raises TrailError where the list can't be read."""
    try:
        found = json.loads(files.read(Path(folder) / NAME))
    except FileNotFoundError:
        return []
    except OSError as problem:
        raise not_read(problem, Path(folder) / NAME) from problem
    except ValueError as problem:
        raise TrailError(f"{Path(folder) / NAME} can't be read: it was altered.") from problem
    fields = ("at", "by", "what", "name")
    if not isinstance(found, list) or not all(isinstance(each, dict) for each in found):
        raise TrailError(f"{Path(folder) / NAME} can't be read: it was altered.")
    return [Erased(*(str(each.get(field, "")) for field in fields)) for each in found]


def note_erased(folder: Path, gone: list[Erased], files: Files = DISK) -> None:
    """Adds to the list. Raises TrailError where the disk does not take it."""
    listed = [asdict(each) for each in (*erased(folder, files), *gone)]
    try:
        write_whole(files, Path(folder) / NAME, json.dumps(listed, indent=1).encode("ascii") + b"\n")
    except OSError as problem:
        raise not_saved(problem, Path(folder)) from problem


def in_words(gone: list[Erased]) -> str:
    """Such as "Erased on 2026-11-25 by A. Foreman: the customer's data, 2 photos.", or nothing."""
    if not gone:
        return ""
    counts = {
        what: sum(each.what == what for each in gone) for what in dict.fromkeys(each.what for each in gone)
    }
    said = ", ".join(
        f"the {what}" if what == "customer's data" else f"{count} {what}{'s' * (count > 1)}"
        for what, count in counts.items()
    )
    by = f" by {gone[-1].by}" if gone[-1].by else ""
    return f"Erased on {gone[-1].at[:10]}{by}: {said}."
