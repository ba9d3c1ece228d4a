"""The files of a library's folder as bytes. Nothing outside the folder is opened, whatever lies in it."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

from assistant.house.encoding import LARGEST
from assistant.house.place import Problem

MOST_FILES = 5_000
MOST_BYTES = 4 * LARGEST
"""Of all files together."""


def read_texts(root: Path) -> tuple[dict[str, bytes], list[Problem]]:
    """Every YAML file below `root` by its path there (with /), and what could not be read. Never raises.

    Names that begin with a dot and files of other kinds are passed over. A link counts as what it leads to
    where that lies inside `root`, and is a problem where it does not.
    """
    texts: dict[str, bytes] = {}
    problems: list[Problem] = []
    size = 0
    try:
        inside = root.resolve(strict=True)
        for path in _files(inside):
            file = path.relative_to(inside).as_posix()
            found = _bytes(path, inside)
            if isinstance(found, bytes):
                texts[file] = found
                size += len(found)
            else:
                problems.append(Problem(file, 1, 1, "folder", found))
            if len(texts) > MOST_FILES or size > MOST_BYTES:
                message = f"more than {MOST_FILES:,} files or {MOST_BYTES:,} bytes; the rest is not read"
                problems.append(Problem(file, 1, 1, "folder", message))
                break
    except (OSError, RuntimeError, ValueError) as error:
        problems.append(Problem(str(root), 1, 1, "folder", f"the folder can't be read: {_reason(error)}"))
    return texts, problems


def _files(inside: Path) -> Iterator[Path]:
    def fail(error: OSError) -> None:
        raise error

    for folder, folders, names in os.walk(inside, onerror=fail):
        folders[:] = sorted(name for name in folders if not name.startswith("."))
        linked = [name for name in folders if Path(folder, name).is_symlink()]
        for name in sorted([*names, *linked]):
            path = Path(folder, name)
            if not name.startswith(".") and (path.suffix in (".yaml", ".yml") or name in linked):
                yield path


def _bytes(path: Path, inside: Path) -> bytes | str:
    """The file's bytes, or the reason why they are not taken."""
    try:
        if not path.resolve(strict=True).is_relative_to(inside):
            return "this is a link to something outside the folder; put the file itself here"
        if not path.is_file():
            return "this is no ordinary file"
        if path.stat().st_size > LARGEST:
            return f"the file has more than {LARGEST:,} bytes"
        return path.read_bytes()
    except (OSError, RuntimeError) as error:
        return f"the file can't be read: {_reason(error)}"


def _reason(error: Exception) -> str:
    return getattr(error, "strerror", None) or str(error)
