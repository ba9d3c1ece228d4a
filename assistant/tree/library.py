"""A library: the vocabulary and all trees of a folder, or of the texts kept with a visit.

At the top of the folder lie house.yaml, cautions.yaml and sources.yaml; below it one folder for each purpose,
complaint/, procedure/, cause/ and proof/, with the tree files. A tree's name is its file's stem.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from pathlib import Path, PurePosixPath

from assistant.house.load import FILES, load_house
from assistant.house.model import Vocabulary
from assistant.house.place import Problem
from assistant.tree.folder import read_texts
from assistant.tree.load import load_tree
from assistant.tree.model import PURPOSES, Call, Finding, Step, Tree


@dataclass(frozen=True)
class Library:
    """`trees` by name, those without a problem only; `texts` by path below the folder, as bytes; `problems`
    of loading, sorted. Whether trees fit together is for assistant/tree/check to say.
    """

    vocabulary: Vocabulary
    trees: dict[str, Tree] = field(default_factory=dict)
    texts: dict[str, bytes] = field(default_factory=dict)
    problems: tuple[Problem, ...] = ()

    def step(self, address: str) -> tuple[Tree, Step]:
        """Tree and step of an address such as no_heat.volts. Raises KeyError where there is none."""
        tree, _, step = address.partition(".")
        if tree not in self.trees or step not in self.trees[tree].steps:
            raise KeyError(f"there is no step '{address}'")
        return self.trees[tree], self.trees[tree].steps[step]

    def reach(self, names: Iterable[str]) -> list[str]:
        """The trees that a walk from these ones can read, themselves included, sorted: what they call, the
        causes and proofs of their findings, and every circuit's procedures, which the walker puts in front by
        itself. Trees that are handed over to are other walks. Names without a tree are left out.
        """
        waiting = list(names)
        for circuit in self.vocabulary.circuits.values():
            waiting += [circuit.make_dead, circuit.restore or ""]
        found: set[str] = set()
        while waiting:
            name = waiting.pop()
            if name in found or name not in self.trees:
                continue
            found.add(name)
            for step in self.trees[name].steps.values():
                if isinstance(step, Call):
                    waiting.append(step.tree)
                elif isinstance(step, Finding):
                    waiting += [*step.causes, step.proof or ""]
        return sorted(found)

    def closure(self, names: Iterable[str]) -> dict[str, str]:
        """Path -> sha256 of every file that a walk from these trees can read, the house files included."""
        paths = [self.trees[name].file for name in self.reach(names)]
        return {
            path: hashlib.sha256(self.texts[path]).hexdigest()
            for path in sorted([*paths, *(name for name in FILES if name in self.texts)])
        }


def read_folder(path: Path | str) -> Library:
    """The library of a folder. Never raises: what can't be read is a problem."""
    return from_texts(*read_texts(Path(path)))


def from_texts(texts: Mapping[str, bytes], problems: Iterable[Problem] = ()) -> Library:
    """The library of these texts, by path below a library's folder (with /). Never raises."""
    found = list(problems)
    vocabulary, house_problems = load_house({name: texts[name] for name in FILES if name in texts})
    found += house_problems
    if any(problem.rule == "yaml" for problem in house_problems):
        # Without one of the house files every name in every tree would be told as unknown.
        return Library(vocabulary, {}, dict(texts), tuple(sorted(set(found))))
    trees: dict[str, Tree] = {}
    files: dict[str, str] = {}
    for file in sorted(texts):
        if file in FILES:
            continue
        parts = PurePosixPath(file).parts
        stem = PurePosixPath(file).stem
        if misplaced := _misplaced(file, parts):
            found.append(misplaced)
            continue
        if stem in files:
            message = f"there is another tree '{stem}' in {files[stem]}; a name is used once in all folders"
            found.append(Problem(file, 1, 1, "name", message))
            continue
        files[stem] = file
        tree, tree_problems = load_tree(texts[file], file, vocabulary)
        found += tree_problems
        if tree is None:
            continue
        if tree.purpose != parts[0]:
            message = f"a tree with 'purpose: {tree.purpose}' lies in {tree.purpose}/, not in {parts[0]}/"
            found.append(Problem.at(tree.place, "folder", message))
            continue
        trees[tree.name] = tree
    return Library(vocabulary, trees, dict(texts), tuple(sorted(set(found))))


def _misplaced(file: str, parts: tuple[str, ...]) -> Problem | None:
    """Why a file can't be one of a library, or None: it is folder/name.yaml with a purpose's folder."""
    if len(parts) == 2 and parts[0] in PURPOSES and file == "/".join(parts) and file.endswith(".yaml"):
        return None
    folders, house = ", ".join(f"{purpose}/" for purpose in PURPOSES), ", ".join(FILES)
    message = f"a tree file lies in one of {folders} and ends in .yaml; beside these folders lie only {house}"
    return Problem(file, 1, 1, "folder", message)
