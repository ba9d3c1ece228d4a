"""shop.yaml beside the shelf: the shop's instruments, the default for each quantity, what may be opened.

What it says when a visit opens enters the trail; a later change of the file changes no visit.
"""

from __future__ import annotations

from pathlib import Path

from assistant.folders import user_folder
from assistant.house.reader import Fields, Items, Node, Text, Unreadable, read
from assistant.trail.error import TrailError
from assistant.trail.files import DISK, write_whole
from assistant.walk.shop import read_shop

NAME = "shop.yaml"
WORDS = ("instruments", "defaults", "may")


def shop_data(path: Path | None = None) -> tuple[dict, list[str]]:
    """The shop's own file as plain data for the visit's first event, and a sentence for each mistake in it.

    No file is no mistake: nothing is known of the instruments then. Never raises.
    """
    path = path or user_folder() / NAME
    try:
        node = read(path.read_bytes(), str(path))
    except FileNotFoundError:
        return {}, []
    except OSError as problem:
        return {}, [f"{path} can't be read ({problem.strerror}), so no instrument's accuracy is known."]
    except Unreadable as unreadable:
        return {}, [str(problem) for problem in unreadable.problems]
    data = _plain(node)
    if not isinstance(data, dict):
        return {}, [f"{path}: begin with `instruments:` and a list of them."]
    unknown = [word for word in data if word not in WORDS]
    problems = [f"{path}: '{word}' is not known; there are: {', '.join(WORDS)}." for word in unknown]
    known = {word: data[word] for word in WORDS if word in data}
    return known, problems + [f"{path}: {sentence}" for sentence in read_shop(known)[1]]


def say_may(path: Path, may: list[str]) -> None:
    """Writes into the shop's file what its people may open, where it does not say it yet. Raises TrailError
    where it can't be written."""
    known, _ = shop_data(path)
    if "may" in known:
        return
    line = f"may: [{', '.join(may)}]\n"
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        before = path.read_bytes().decode("utf-8") if path.exists() else ""
        gap = "" if not before or before.endswith("\n") else "\n"
        write_whole(DISK, path, (before + gap + line).encode("utf-8"))
    except (OSError, UnicodeDecodeError) as problem:
        raise TrailError(f"{path} can't be written: {problem}.") from problem


def _plain(node: Node) -> object:
    if isinstance(node, Fields):
        return {name: _plain(value) for name, value in node.entries.items()}
    if isinstance(node, Items):
        return [_plain(item) for item in node.items]
    assert isinstance(node, Text)
    return node.value
