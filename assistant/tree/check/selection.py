"""Which library a file or folder belongs to, and which of its trees are meant.

A folder with a house.yaml is a library of its own. A folder or file below one belongs to it. Anything else is
checked as if it lay among the trees that come with the program, in place of a tree of the same name.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from assistant.errors import UserError
from assistant.house.encoding import LARGEST
from assistant.tree.check import check, stem
from assistant.tree.library import Library, from_texts, read_folder
from assistant.tree.model import PURPOSES, Finding, Stop, Tree

HOUSE = "house.yaml"
_PURPOSE = re.compile(rb"^purpose:\s*[\"']?(\w+)", re.MULTILINE)


@dataclass(frozen=True)
class Selection:
    """A library, and the files of it that are meant, each with the path to show for it."""

    library: Library
    shown: Mapping[str, str] = field(default_factory=dict)
    whole: bool = False
    """The library as a whole is meant, with whatever is wrong in it."""


def select(path: Path, shipped: Path) -> Selection:
    """What a path given by a person means. Raises UserError where nothing can be read there."""
    if not path.exists():
        raise UserError(f"There is no file or folder {str(path)!r}.")
    folder = path if path.is_dir() else path.parent
    root = next((above for above in (folder, *folder.resolve().parents) if (above / HOUSE).is_file()), None)
    if root is not None:
        return _of_root(path, root)
    files = [path] if path.is_file() else sorted(path.rglob("*.yaml"))
    if not files:
        raise UserError(f"There is no tree file (a name that ends in .yaml) in {str(path)!r}.")
    return _among(files, read_folder(shipped))


def _of_root(path: Path, root: Path) -> Selection:
    library = read_folder(root)
    top, meant = root.resolve(), path.resolve()
    if meant == top:
        return Selection(library, {file: str(path / file) for file in library.texts}, True)
    base = meant.relative_to(top).as_posix()
    shown = {file: str(path / file[len(base) + 1:]) for file in library.texts if file.startswith(base + "/")}
    if base in library.texts:
        shown[base] = str(path)
    if not shown:
        raise UserError(f"{str(path)!r} is no file of the library in {str(root)!r}; trees end in .yaml.")
    return Selection(library, shown)


def _among(files: list[Path], shipped: Library) -> Selection:
    """The shipped library with these files in it."""
    places = {stem(file): file for file in shipped.texts}
    texts, shown = dict(shipped.texts), {}
    for path in files:
        data = _bytes(path)
        twin = next((other for file, other in shown.items() if stem(file) == path.stem), None)
        if twin is not None:
            raise UserError(f"{twin!r} and {str(path)!r} are trees of one name; check them one at a time.")
        file = places.get(path.stem) or f"{_purpose(data)}/{path.name}"
        if _purpose(data) != file.partition("/")[0]:
            texts.pop(file, None)  # the same name, made for something else: it takes the place of that tree
            file = f"{_purpose(data)}/{path.name}"
        texts[file], shown[file] = data, str(path)
    return Selection(from_texts(texts), shown)


def _bytes(path: Path) -> bytes:
    try:
        if path.stat().st_size > LARGEST:
            raise UserError(f"{str(path)!r} has more than {LARGEST:,} bytes; a tree file is far smaller.")
        return path.read_bytes()
    except OSError as error:
        raise UserError(f"{str(path)!r} can't be read: {error.strerror or error}.") from error


def _purpose(data: bytes) -> str:
    found = _PURPOSE.search(data)
    word = found.group(1).decode(errors="replace") if found else ""
    return word if word in PURPOSES else PURPOSES[0]


def listing(selection: Selection) -> list[dict]:
    """One entry a tree, sorted by name, as `check --json` writes it. What is wrong in the house files stands
    in an entry of its own, named for the file; it is left out while nothing is wrong."""
    problems: dict[str, list[dict]] = {}
    for problem in check(selection.library):
        if problem.file in selection.shown or selection.whole:
            problems.setdefault(problem.file, []).append({
                "file": selection.shown.get(problem.file, problem.file), "line": problem.line,
                "column": problem.column, "rule": problem.rule, "message": problem.message,
                "path": list(problem.path)})
    trees = {tree.file: tree for tree in selection.library.trees.values()}
    files = [file for file in selection.shown if "/" in file or file in problems]
    files += [file for file in problems if file not in selection.shown]
    return sorted((_entry(file, trees.get(file), problems.get(file, [])) for file in files),
                  key=lambda entry: (entry["tree"], entry["purpose"]))


def _entry(file: str, tree: Tree | None, problems: list[dict]) -> dict:
    folder = file.rpartition("/")[0]
    steps = tree.steps if tree else {}
    return {
        "tree": stem(file),
        "purpose": tree.purpose if tree else folder if folder in PURPOSES else "house",
        "steps": len(steps),
        "findings": sorted(f"{stem(file)}.{name}" for name, step in steps.items() if _found(step)),
        "problems": problems,
    }


def _found(step: object) -> bool:
    return isinstance(step, Finding) or (isinstance(step, Stop) and step.finding is not None)
