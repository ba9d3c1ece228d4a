"""All drills that can be worked: those that come with the program, and those that the shop's foreman made."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

from assistant.drill.practice.drill import NOTHING, Drill
from assistant.drill.practice.drill_file import load_drills
from assistant.errors import UserError
from assistant.folders import user_folder
from assistant.house.model import Vocabulary
from assistant.house.place import Problem
from assistant.quantity.units import from_si
from assistant.resources import resources_folder
from assistant.rig.fault import Fault
from assistant.rig.fault_file import load_faults, shipped

OWN_DRILLS, OWN_FAULTS = "made", "faults"


def drills_folder() -> Path:
    """Where this user's drills and what came of them are kept; never among the visits."""
    return user_folder() / "drills"


def all_faults() -> tuple[dict[str, Fault], list[Problem]]:
    """Every fault that a drill may name: the shipped ones, those made for drills, and the foreman's."""
    found, problems = shipped()
    places = [resources_folder() / "drills" / OWN_FAULTS, drills_folder() / OWN_FAULTS]
    for place in places:
        for path in sorted(place.glob("*.yaml")) if place.is_dir() else ():
            faults, wrong = load_faults(_bytes(path), path.name)
            problems += wrong
            found = {**faults, **found}
    return found, problems


def all_drills(vocabulary: Vocabulary, faults: Mapping[str, Fault]) -> tuple[dict[str, Drill], list[Problem]]:
    """Every drill by name, and what is wrong in their files."""
    found: dict[str, Drill] = {}
    problems: list[Problem] = []
    places = [(path, "shipped") for path in sorted((resources_folder() / "drills").glob("*.yaml"))] + [
        (path, "made here") for path in sorted((drills_folder() / OWN_DRILLS).glob("*.yaml"))
    ]
    for path, origin in places:
        drills, wrong = load_drills(_bytes(path), path.name, faults, vocabulary, origin)
        problems += wrong
        found = {**drills, **found}
    return found, problems


def from_fault(fault: Fault, vocabulary: Vocabulary, degree: str = "") -> Drill:
    """A drill made of a fault of a file: the complaint's own words."""
    words = vocabulary.complaints[fault.complaint].words
    return Drill(
        fault.name, fault.title, fault.complaint, words, fault=fault, degree=degree, origin="a fault file"
    )


def save(drill: Drill, vocabulary: Vocabulary, fault_text: str = "", folder: Path | None = None) -> Drill:
    """Keep a drill that the foreman made; `fault_text` is its own fault's file. The drill as now called.
    Raises UserError where it can't be written.
    """
    root = folder or drills_folder()
    name = drill.name
    number = 2
    while (root / OWN_DRILLS / f"{name}.yaml").exists():
        name = f"{drill.name}_{number}"
        number += 1
    named = replace(drill, name=name)
    try:
        (root / OWN_DRILLS).mkdir(parents=True, exist_ok=True)
        if fault_text:
            (root / OWN_FAULTS).mkdir(parents=True, exist_ok=True)
            (root / OWN_FAULTS / f"{drill.fault.name}.yaml").write_text(fault_text, encoding="utf-8")
        (root / OWN_DRILLS / f"{name}.yaml").write_text(written(named, vocabulary), encoding="utf-8")
    except OSError as problem:
        raise UserError(f"The drill can't be kept in {root} ({problem.strerror}).") from problem
    return named


def written(drill: Drill, vocabulary: Vocabulary) -> str:
    """A drill as its file writes it."""
    fields = [
        ("title", _quoted(drill.title)),
        ("complaint", drill.complaint),
        ("words", _quoted(drill.words)),
        ("difficulty", drill.difficulty),
        ("ending", drill.ending if drill.ending != NOTHING or drill.fault is None else ""),
        ("fault", drill.fault.name if drill.fault else ""),
        ("degree", drill.degree),
        ("hazard", drill.hazard),
        ("senses", _quoted(drill.senses) if drill.senses else ""),
        ("another", str(drill.another or "")),
        ("seed", str(drill.seed)),
    ]
    lines = ["format: 1", "drills:", f"  {drill.name}:"]
    lines += [f"    {name}: {value}" for name, value in fields if value]
    if drill.house:
        lines.append("    house:")
        lines += [f"      {name}: {_quoted(value)}" for name, value in drill.house.items()]
    if drill.plate:
        lines.append("    plate:")
        for name, value in drill.plate.items():
            lines.append(f"      {name}: {_quoted(f'{from_si(value, vocabulary.plate[name].unit):.6g}')}")
    return "\n".join(lines) + "\n"


def good(words: str) -> str:
    """A name for a file and a drill, made of words."""
    plain = re.sub(r"[^a-z0-9]+", "_", words.lower()).strip("_")[:40].strip("_")
    return plain if plain and plain[0].isalpha() else f"drill_{plain}".rstrip("_")


def _quoted(text: str) -> str:
    one_line = " ".join(text.split())
    return '"' + one_line.replace("\\", "\\\\").replace('"', '\\"') + '"'


def _bytes(path: Path) -> bytes:
    try:
        return path.read_bytes()
    except OSError as problem:
        raise UserError(f"{path} can't be read ({problem.strerror}).") from problem
